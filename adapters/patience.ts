/** Trying again with growing pauses. */
import { setTimeout as sleep } from 'node:timers/promises'

/** Pauses in ms: 1 s, doubled each time up to a minute, a little apart for several instances. */
export const pauseMs = (attempt: number, firstMs = 1000, mostMs = 60_000): number =>
  Math.min(mostMs, firstMs * 2 ** attempt) * (0.85 + 0.3 * Math.random())

export type Patience = {
  readonly signal?: AbortSignal
  /** Attempts in all; without it, no end. */
  readonly attempts?: number
  readonly firstMs?: number
  /** False for an error that trying again cannot mend. */
  readonly worthIt: (error: unknown) => boolean
  readonly onPause?: (error: unknown, ms: number, attempt: number) => void
}

/** The task's result; its last error when the attempts are used up, it is not worth it, or the signal is given. */
export async function persist<T>(task: () => Promise<T>, how: Patience): Promise<T> {
  for (let attempt = 0; ; attempt += 1) {
    try {
      return await task()
    } catch (error) {
      const last = how.attempts !== undefined && attempt + 1 >= how.attempts
      if (last || how.signal?.aborted || !how.worthIt(error)) throw error
      const ms = pauseMs(attempt, how.firstMs)
      how.onPause?.(error, Math.round(ms), attempt + 1)
      await sleep(ms, undefined, how.signal ? { signal: how.signal } : {})
    }
  }
}
