/** Reminders that come again: a number of them ahead, each a reminder of its own in the store and sent once. */

import { MOST_PROMISED } from '../../jobs/fold.ts'
import type { Promised } from '../../jobs/memory.ts'
import { momentIn } from '../../language/moments.ts'
import { type Every, everyIn, spanIn } from '../../language/spans.ts'
import type { Brief } from '../topic.ts'

/** How many are set ahead: two weeks of days or of working days, two months of weeks, a shift of spans. */
const AHEAD: Readonly<Record<Every, number>> = { day: 14, 'other-day': 10, workday: 10, week: 8, span: 12 }
/** Where no hour is told: when the day's work starts. */
const MORNING = 7
const LEAST_SPAN_H = 0.25
/** Spans are not counted past the evening: nobody wants one at three in the night. */
const EVENING = 21
const SATURDAY = 6

export type Series = { readonly every: Every; readonly dueMs: readonly number[] }

/** When a reminder is to come again and again; null where the message wants one only. Empty where no more can run.
 *  @param running  how many are to come already */
export function seriesIn(brief: Pick<Brief, 'heard' | 'now' | 'zone' | 'libraries'>, running: number): Series | null {
  const every = everyIn(brief.heard)?.means
  if (every === undefined) return null
  const most = Math.max(0, Math.min(AHEAD[every], MOST_PROMISED - running))
  const now = zoned(brief)
  const times = every === 'span' ? spans(brief, now, most) : days(brief, now, every, most)
  return { every, dueMs: times.map((at) => at.epochMilliseconds) }
}

function zoned({ now, zone }: Pick<Brief, 'now' | 'zone'>): Temporal.ZonedDateTime {
  const offset = /([+-]\d\d:?\d\d)(?:\[|$)/.exec(now)?.[1] ?? 'UTC'
  return Temporal.Instant.from(now).toZonedDateTimeISO(zone ?? offset)
}

function spans(brief: Pick<Brief, 'heard'>, now: Temporal.ZonedDateTime, most: number): Temporal.ZonedDateTime[] {
  const stepH = Math.max(LEAST_SPAN_H, spanIn(brief.heard)?.h ?? 1)
  const all = Array.from({ length: most }, (_, k) => now.add({ minutes: Math.round((k + 1) * stepH * 60) }))
  const today = all.filter((at) => at.toPlainDate().equals(now.toPlainDate()) && at.hour < EVENING)
  return today.length > 0 ? today : all.slice(0, 1)
}

function days(
  brief: Pick<Brief, 'heard' | 'now' | 'zone' | 'libraries'>,
  now: Temporal.ZonedDateTime,
  every: Every,
  most: number,
): Temporal.ZonedDateTime[] {
  // Seen from the day's start, a bare "at 7" is the morning's, also where it is asked in the afternoon.
  const midnight = now.startOfDay().toString({ timeZoneName: 'never' })
  const { heard, libraries } = brief
  const told = momentIn(heard, () => libraries.times(heard.reader.lexicon.locale.code), midnight, brief.zone, false)
  const from = told
    ? Temporal.Instant.from(told.iso).toZonedDateTimeISO(now.timeZoneId)
    : now.startOfDay().with({ hour: MORNING })
  const step = every === 'week' ? 7 : every === 'other-day' ? 2 : 1
  const list: Temporal.ZonedDateTime[] = []
  // Days are added by the calendar, so that seven stays seven where the clocks change.
  for (let k = 0; list.length < most; k++) {
    const at = from.add({ days: k * step })
    const works = every !== 'workday' || at.dayOfWeek < SATURDAY
    if (works && Temporal.ZonedDateTime.compare(at, now) > 0) list.push(at)
  }
  return list
}

/** What reminders of one series have in common; others stand alone. */
export const seriesOf = ({ id }: Pick<Promised, 'id'>): string => id.split('+')[0]
