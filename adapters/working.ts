/** One message worked out for a store: the reply, and its entries with who, when and the message id. */

import type { Tools } from '../src/answer/brief.ts'
import { type Answer, answer } from '../src/answer.ts'
import type { Memory, NewEntry } from '../src/jobs/memory.ts'
import type { Entry, Message } from '../src/message.ts'
import { refuse } from '../src/problem.ts'
import type { Reply } from '../src/reply.ts'
import { problemReply, speakerOf } from '../src/speak.ts'

/** `forget`: all about the channel is to be deleted once the answer is out. */
export type Work = { readonly reply: Reply; readonly entries: readonly Entry[] } & Pick<
  Answer,
  'reminders' | 'cancels' | 'forget'
>

/** Told of an exception, which is always a bug: its stack belongs into the log. */
export type OnBug = (error: unknown) => void

const entryOf = (message: Message, entry: NewEntry, part: number): Entry => ({
  at: message.now,
  person: message.person,
  ...(message.personName ? { personName: message.personName } : {}),
  messageId: message.id,
  part,
  ...entry,
})

export function work(message: Message, memory: Memory, tools: Tools): Work {
  const answered: Answer = answer(message, memory, tools)
  return { ...answered, entries: answered.entries.map((entry, part) => entryOf(message, entry, part)) }
}

/** The same for people: a bug gives one fixed sentence, and nothing is kept of that message. */
export function workSafely(message: Message, memory: Memory, tools: Tools, onBug: OnBug): Work {
  try {
    return work(message, memory, tools)
  } catch (error) {
    onBug(error)
    const language = memory.talk?.language ?? tools.settings.defaults.language
    const speaker = speakerOf(tools.languages, language, false, message, null)
    return { reply: problemReply(refuse('internal').problem, 'help', speaker), entries: [] }
  }
}

/** "I could answer but not keep it", in the reply's own language, with the answer still given. */
export function notKept(reply: Reply, tools: Tools): Reply {
  const sentence = tools.languages.locale(reply.language).phrases['problem.not-kept']
  return { ...reply, warnings: [...reply.warnings, sentence] }
}
