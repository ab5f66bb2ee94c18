/** One message worked out for a store: the reply, and its entries with who, when and the message id. */
import { type Answer, answer, type Tools } from '../src/answer.ts'
import type { Memory, NewEntry } from '../src/jobs/memory.ts'
import type { Entry, Message } from '../src/message.ts'
import type { Reply } from '../src/reply.ts'

export type Work = { readonly reply: Reply; readonly entries: readonly Entry[] }

const entryOf = (message: Message, entry: NewEntry, part: number): Entry => ({
  at: message.now,
  person: message.person,
  ...(message.personName ? { personName: message.personName } : {}),
  messageId: message.id,
  part,
  ...entry,
})

export function work(message: Message, memory: Memory, tools: Tools): Work {
  const { reply, entries }: Answer = answer(message, memory, tools)
  return { reply, entries: entries.map((entry, part) => entryOf(message, entry, part)) }
}
