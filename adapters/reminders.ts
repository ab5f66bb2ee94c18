/** The reminders' clock: sends what is due, each once, also after a restart, a sleeping laptop or a store that was away,
 *  and beside other instances on the same store. */
import { randomUUID } from 'node:crypto'
import type { Claimed, Failure, Json, Kept, Store } from './stores/store.ts'

export type AboutReminder = {
  readonly id: string
  /** When it was due [ms since 1970]. */
  readonly dueMs: number
  /** Whether it comes so long after it was due that the message should say so. */
  readonly late: boolean
  /** Whether an instance may have died while it sent this one. With `id` a platform can be asked to drop a second one. */
  readonly again: boolean
}

/** Sends one reminder. `gone`: the channel is no more, or shut to us, and it is not tried again. A throw, or a promise
 *  rejected, is tried again later. */
export type Deliver = (channel: string, body: Json, about: AboutReminder) => Promise<'sent' | 'gone'>

export type ReminderClockOptions = {
  readonly store: Pick<
    Store<unknown>,
    'claimDue' | 'holdReminder' | 'finishReminder' | 'releaseReminder' | 'nextReminder'
  >
  readonly deliver: Deliver
  /** The shell's clock [ms since 1970]. */
  readonly now: () => number
  /** Longest pause between two looks at the store [ms]. */
  readonly everyMs?: number
  /** How long a reminder is one instance's before another may take it [ms]; prolonged while it is being sent. */
  readonly holdMs?: number
  /** Told of what a log should hold: a store out of reach, a platform that refused. */
  readonly onTrouble?: (trouble: Failure | unknown) => void
}

/** A reminder this long over its time says so [ms]. */
const LATE_MS = 2 * 60_000
const EVERY_MS = 5_000
const HOLD_MS = 60_000
/** The pause before the second try, doubled for each further one up to the longest [ms]. */
const FIRST_RETRY_MS = 5_000
const LONGEST_RETRY_MS = 15 * 60_000
const AT_ONCE = 50

export class ReminderClock {
  readonly #options: ReminderClockOptions
  readonly #holder = randomUUID()
  #timer: NodeJS.Timeout | null = null
  #running = false
  #scan: Promise<number> = Promise.resolve(0)

  constructor(options: ReminderClockOptions) {
    this.#options = options
  }

  start(): void {
    if (this.#running) return
    this.#running = true
    this.#wake(0)
  }

  /** Comes back when what was being sent is sent; nothing new is taken. */
  async stop(): Promise<void> {
    this.#running = false
    if (this.#timer) clearTimeout(this.#timer)
    await this.#scan
  }

  /** Sends all that is due now, and returns how many went out. One look at a time: a second call waits for the first. */
  scan(): Promise<number> {
    this.#scan = this.#scan.then(() => this.#sendDue())
    return this.#scan
  }

  #wake(afterMs: number): void {
    this.#timer = setTimeout(async () => {
      await this.scan()
      const { now, store, everyMs = EVERY_MS } = this.#options
      const next = await store.nextReminder()
      if (!this.#running) return
      const untilNext = next.ok && next.value !== null ? next.value - now() : everyMs
      this.#wake(Math.min(everyMs, Math.max(20, untilNext)))
    }, afterMs)
    this.#timer.unref()
  }

  async #sendDue(): Promise<number> {
    const { store, now, holdMs = HOLD_MS } = this.#options
    let sent = 0
    for (;;) {
      const next = this.#told(await store.nextReminder())
      if (next === null || next > now()) return sent
      const claimed = this.#told(await store.claimDue(this.#holder, now(), now() + holdMs, AT_ONCE))
      if (claimed === null || claimed.length === 0) return sent
      const byChannel = Map.groupBy(claimed, (one) => one.channel)
      const counts = await Promise.all(
        [...byChannel.values()].map(async (ones) => {
          let count = 0
          for (const one of ones) if (await this.#send(one, ones)) count++
          return count
        }),
      )
      sent += counts.reduce((a, b) => a + b, 0)
    }
  }

  /** Sends one; `ours` are those of its channel, which wait their turn and are held meanwhile. */
  async #send(one: Claimed, ours: readonly Claimed[]): Promise<boolean> {
    const { store, deliver, now, holdMs = HOLD_MS, onTrouble } = this.#options
    const waiting = ours.slice(ours.indexOf(one))
    const hold = async () => {
      for (const each of waiting) await store.holdReminder(this.#holder, each.channel, each.id, now() + holdMs)
    }
    // A turn that was long in coming may have lost its hold, or been cancelled or put off since.
    const mine = await store.holdReminder(this.#holder, one.channel, one.id, now() + holdMs)
    if (mine.ok && !mine.value) return false
    const holding = setInterval(() => void hold().catch(() => {}), holdMs / 3)
    holding.unref()
    try {
      const late = now() - one.dueMs > LATE_MS
      await deliver(one.channel, one.body, { id: one.id, dueMs: one.dueMs, late, again: one.attempt > 1 })
    } catch (trouble) {
      onTrouble?.(trouble)
      const pauseMs = Math.min(LONGEST_RETRY_MS, FIRST_RETRY_MS * 2 ** Math.min(20, one.attempt - 1))
      this.#told(await store.releaseReminder(this.#holder, one.channel, one.id, now() + pauseMs))
      return false
    } finally {
      clearInterval(holding)
    }
    await this.#finish(one)
    return true
  }

  /** Marks one as sent. Where the store is away at this moment, goes on trying while the hold lasts. */
  async #finish({ channel, id }: Claimed): Promise<void> {
    const { store, now, holdMs = HOLD_MS } = this.#options
    const giveUpMs = now() + holdMs
    for (let tries = 1; ; tries++) {
      const finished = await store.finishReminder(this.#holder, channel, id)
      if (finished.ok || now() > giveUpMs || tries >= 20) {
        this.#told(finished)
        return
      }
      await new Promise((resolve) => setTimeout(resolve, 50 * tries))
    }
  }

  #told<T>(kept: Kept<T>): T | null {
    if (kept.ok) return kept.value
    this.#options.onTrouble?.(kept.failure)
    return null
  }
}
