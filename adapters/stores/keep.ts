/** Answers each message once and keeps what it changes: the one way from an adapter to the store. */
import type { Entry } from '../../src/message.ts'
import { type Failure, type Json, kept, type Reminder, type Store } from './store.ts'

/** What answering a message yields, before it is kept. */
export type Worked<R extends Json> = {
  readonly reply: R
  readonly entries: readonly Entry[]
  readonly reminders?: readonly Reminder[]
  readonly cancels?: readonly string[]
}

export type Conversed<R extends Json> = {
  readonly reply: R
  /** `kept` now; `already` kept before (a redelivery: `reply` is the recorded one, where it is still there); `lost`: it
   *  could be answered but not kept, from the last memory known. */
  readonly state: 'kept' | 'already' | 'lost'
  readonly failure: Failure | null
  /** Entries of the job that this version could not read. */
  readonly skipped: number
}

/** How often an answer is worked out again because another instance added to the channel meanwhile. */
const TRIES = 50

/** Takes the messages of a channel one after the other, of different channels at once. */
export class Keeper<Memory> {
  readonly #store: Store<Memory>
  readonly #queues = new Map<string, Promise<unknown>>()

  constructor(store: Store<Memory>) {
    this.#store = store
  }

  /** Answers a message from its channel's memory, and comes back when the answer is durable or cannot be made so.
   *  @param work  pure; called again when the channel moved on while it was kept */
  answer<R extends Json>(
    channel: string,
    message: { readonly id: string; readonly now: string },
    work: (memory: Memory) => Worked<R>,
  ): Promise<Conversed<R>> {
    const before = this.#queues.get(channel) ?? Promise.resolve()
    const turn = before.then(() => this.#answer(channel, message, work))
    const settled = turn.catch(() => {})
    this.#queues.set(channel, settled)
    settled.then(() => {
      if (this.#queues.get(channel) === settled) this.#queues.delete(channel)
    })
    return turn
  }

  async #answer<R extends Json>(
    channel: string,
    message: { readonly id: string; readonly now: string },
    work: (memory: Memory) => Worked<R>,
  ): Promise<Conversed<R>> {
    let failure: Failure = { code: 'failed', detail: 'the channel kept moving on' }
    for (let tries = 0; tries < TRIES; tries++) {
      // What is remembered needs no look at the store: should it be out of date, the append says so and adds nothing.
      const recalled = this.#store.recall(channel)
      const loaded = recalled ? kept(recalled) : await this.#store.load(channel, message.id)
      if (!loaded.ok) {
        failure = loaded.failure
        break
      }
      const { memory, last, skipped, answered } = loaded.value
      if (answered)
        return { reply: (answered.reply as R | null) ?? work(memory).reply, state: 'already', failure: null, skipped }
      const worked = work(memory)
      const appended = await this.#store.append(channel, {
        ...worked,
        messageId: message.id,
        at: message.now,
        after: last,
      })
      if (!appended.ok) return { reply: worked.reply, state: 'lost', failure: appended.failure, skipped }
      if (appended.value.state === 'kept') return { reply: worked.reply, state: 'kept', failure: null, skipped }
      if (appended.value.state === 'already')
        return { reply: (appended.value.reply as R | null) ?? worked.reply, state: 'already', failure: null, skipped }
    }
    return { reply: work(this.#store.lastKnown(channel)).reply, state: 'lost', failure, skipped: 0 }
  }
}
