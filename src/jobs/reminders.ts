/** Reminders that follow from an answer: a wait that ends, a bucket that is ready or over. Data with words for on time and late. */
import { instant, type Phrase, say } from '../phrase.ts'
import type { Promised } from './memory.ts'

export type Reminding = {
  /** Unique in its channel; the same id again moves it. */
  readonly id: string
  readonly about: Promised['about']
  /** ISO 8601 with offset. */
  readonly at: string
  readonly due: Phrase
  /** What is said where it comes late. */
  readonly late: Phrase
}

const WAITS = ['grout', 'walk', 'heavy', 'water'] as const

/** The waits among the values of an answer that end after now.
 *  @param start ISO 8601 with offset: tells two floors apart; null where it is not known */
export function remindersOf(
  values: Readonly<Record<string, unknown>>,
  start: string | null,
  when: { readonly now: string },
  only: readonly string[] = [],
): Reminding[] {
  const now = Temporal.Instant.from(when.now)
  const seen = new Set<string>()
  return WAITS.flatMap((about): Reminding[] => {
    const at = values[`${about}_at`]
    if (typeof at !== 'string' || (only.length > 0 && !only.includes(about))) return []
    if (Temporal.Instant.compare(Temporal.Instant.from(at), now) <= 0) return []
    // Walk and grout, load and water often end together: one message says it.
    if (only.length === 0 && seen.has(at)) return []
    seen.add(at)
    return [waiting(about, at, start ?? at)]
  })
}

export const waiting = (about: Promised['about'], at: string, start: string): Reminding => ({
  id: `${about}@${start}`,
  about,
  at,
  due: say(`remind.due-${about}`),
  late: say(`remind.late-${about}`, { at: instant(at) }),
})
