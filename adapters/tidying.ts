/** Drops from the store what is over (`Store.tidy`): once at the start, then about once a day, when nobody is talking. */
import type { Log } from './logging.ts'
import type { Store } from './stores/store.ts'

const MINUTE_MS = 60_000
const DAY_MS = 24 * 60 * MINUTE_MS
/** How long a button's state and a recorded reply are kept [ms]. */
export const KEPT_MS = 30 * DAY_MS
/** Between two looks at the clock [ms]: a sleeping laptop wakes up with timers that slept too. */
const LOOK_MS = 10 * MINUTE_MS
/** Nobody has talked for so long: it is quiet [ms]. */
const QUIET_MS = 10 * MINUTE_MS
/** After so long it is done though it is never quiet [ms]. */
const AT_LAST_MS = 2 * DAY_MS

export type Tidying = {
  /** Told of each message. */
  readonly heard: () => void
  /** Tidies if it is time and quiet. One at a time. */
  readonly look: () => Promise<void>
  readonly stop: () => void
}

/** @param now  the shell's clock [ms since 1970] */
export function keepTidy(store: Pick<Store<unknown>, 'tidy'>, now: () => number, log: Log): Tidying {
  let doneMs = Number.NEGATIVE_INFINITY
  let heardMs = Number.NEGATIVE_INFINITY
  let looking: Promise<void> | null = null
  const tidy = async () => {
    const nowMs = now()
    // A clock put back would otherwise hold everything up for as long.
    if (doneMs > nowMs) doneMs = nowMs
    if (heardMs > nowMs) heardMs = nowMs
    const sinceMs = nowMs - doneMs
    if (sinceMs < DAY_MS || (nowMs - heardMs < QUIET_MS && sinceMs < AT_LAST_MS)) return
    const done = await store.tidy(nowMs, nowMs - KEPT_MS)
    if (done.ok) doneMs = nowMs
    else log.error(done.failure, 'the store could not be tidied')
  }
  const look = () => {
    looking ??= tidy().finally(() => {
      looking = null
    })
    return looking
  }
  void look()
  const timer = setInterval(() => void look(), LOOK_MS)
  timer.unref()
  return {
    heard: () => {
      heardMs = now()
    },
    look,
    stop: () => clearInterval(timer),
  }
}
