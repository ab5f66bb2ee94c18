/** `ask --data FILE`: the job memory in that SQLite file; an answer comes back only when its entries are durable. */
import type { Tools } from '../../src/answer.ts'
import { emptyMemory, fold } from '../../src/jobs/memory.ts'
import type { Message } from '../../src/message.ts'
import type { Reply } from '../../src/reply.ts'
import { Keeper } from '../stores/keep.ts'
import { openStore } from '../stores/open.ts'
import type { Json } from '../stores/store.ts'
import { work } from '../working.ts'

export async function inFile(file: string, tools: Tools) {
  const store = await openStore({ in: 'file', file }, { fold, emptyMemory })
  const keeper = new Keeper(store)
  return {
    async answer(channel: string, message: Message): Promise<Reply> {
      const done = await keeper.answer(
        channel,
        message,
        (memory) => work(message, memory, tools) as unknown as { reply: Json; entries: [] },
      )
      const reply = done.reply as unknown as Reply
      return done.state === 'lost' ? notKept(reply, tools) : reply
    },
    close: () => store.close(),
  }
}

/** "I could answer but not keep it", in the reply's own language, with the answer still given. */
export function notKept(reply: Reply, tools: Tools): Reply {
  const sentence = tools.languages.locale(reply.language).phrases['problem.not-kept']
  return { ...reply, warnings: [...reply.warnings, sentence] }
}
