/** A fold with no meaning, for tests of stores: it keeps the order of what it saw. */
import type { Rules } from '../../../adapters/stores/store.ts'
import type { Entry } from '../../../src/message.ts'

export type Toy = { readonly count: number; readonly sum: number; readonly order: readonly string[] }

export const toyRules: Rules<Toy> = {
  emptyMemory: { count: 0, sum: 0, order: [] },
  fold: (memory, entry) => ({
    count: memory.count + 1,
    sum: memory.sum + (entry.body as { n: number }).n,
    order: [...memory.order, `${entry.messageId}.${entry.part}`].slice(-200),
  }),
  understands: (entry) => entry.version <= 2,
}

export const AT = '2026-11-24T08:30:00-05:00'

export const entry = (messageId: string, n = 1, more: Partial<Entry> = {}): Entry => ({
  at: AT,
  person: 'U1',
  messageId,
  part: 0,
  kind: 'number',
  version: 1,
  body: { n },
  ...more,
})

/** What a message of one entry keeps. */
export const answered = (messageId: string, n = 1, after?: number) => ({
  messageId,
  at: AT,
  entries: [entry(messageId, n)],
  reply: { text: `answer to ${messageId}` },
  ...(after === undefined ? {} : { after }),
})
