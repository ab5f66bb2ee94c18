/** `ask --data FILE`: the job memory in that SQLite file; an answer comes back only when its entries are durable. */
import type { Tools } from '../../src/answer/brief.ts'
import type { Entry, Message } from '../../src/message.ts'
import type { Reply } from '../../src/reply.ts'
import { learning } from '../learning.ts'
import { memoryRules } from '../memory-rules.ts'
import { Keeper } from '../stores/keep.ts'
import { openStore } from '../stores/open.ts'
import type { Failure, Json } from '../stores/store.ts'
import { notKept, type OnBug, workSafely } from '../working.ts'

export async function inFile(file: string, tools: Tools, onBug: OnBug, onLost: (failure: Failure) => void) {
  const store = await openStore({ in: 'file', file }, memoryRules())
  const keeper = new Keeper(store)
  const learned = learning(store)
  return {
    async answer(channel: string, said: Message): Promise<Reply> {
      const message = { ...said, learned: await learned.of(channel) }
      let forget = false
      let kept: readonly Entry[] = []
      const done = await keeper.answer(channel, message, (memory) => {
        const worked = workSafely(message, memory, tools, onBug)
        forget = worked.forget === true
        kept = worked.entries
        return worked as unknown as { reply: Json; entries: [] }
      })
      if (done.state === 'kept') learned.kept(channel, kept)
      if (forget && done.state === 'kept') {
        const forgotten = await store.forget(channel)
        if (!forgotten.ok) onLost(forgotten.failure)
      }
      const reply = done.reply as unknown as Reply
      if (done.state !== 'lost') return reply
      if (done.failure) onLost(done.failure)
      return notKept(reply, tools)
    },
    close: () => store.close(),
  }
}
