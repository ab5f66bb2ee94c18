/** Waits as clock times of the crew. Only what is passed in: no clock, no zone of the machine. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const WAIT: Range = { field: 'wait', unit: 'h', min: 0, max: 20_000 }
export const MINUTE_OF_DAY: Range = { field: 'minute-of-day', unit: 'min', min: 0, max: 1439 }

export type ClockRules = {
  readonly roundMinutes: number
  /** Minutes of the day; the night goes over midnight. The first belongs to it, the last not. */
  readonly nightFromMinute: number
  readonly nightToMinute: number
}

export type Ready = {
  /** ISO 8601 with offset: rounded up, and put to the morning where it fell at night. */
  readonly iso: string
  readonly movedToMorning: boolean
}

const isoOf = (at: Temporal.ZonedDateTime): string => at.toString({ timeZoneName: 'never', smallestUnit: 'second' })

/** An instant in its zone.
 *  @param iso ISO 8601 with offset    @param zone IANA name or offset like `-05:00`; null: the offset of `iso` itself
 *  @problem not-understood  no such instant or zone */
export function zoned(iso: string, zone: string | null): Outcome<Temporal.ZonedDateTime> {
  try {
    const offset = /[+-]\d{2}:?\d{2}(?=$|\[)/.exec(iso)?.[0]
    return fine(Temporal.Instant.from(iso).toZonedDateTimeISO(zone ?? offset ?? 'UTC'))
  } catch {
    return refuse('not-understood', { said: zone === null ? iso : `${iso} ${zone}` })
  }
}

/** The clock time a wait ends at: elapsed hours, so that a change of daylight saving is counted right; then up to
 *  the next `roundMinutes`; then to the next morning where that falls at night.
 *  @param startIso ISO 8601 with offset    @param waitH WAIT    @param zone as for zoned
 *  @problem out-of-range, not-understood
 *  @example 14:10 and 36 h: 2:30 two days on, which is night: 7:00 */
export function readyAt(startIso: string, waitH: number, zone: string | null, rules: ClockRules): Outcome<Ready> {
  const wait = within(WAIT, waitH)
  if (!wait.ok) return wait
  const start = zoned(startIso, zone)
  if (!start.ok) return start
  const minutes = Math.ceil(waitH * 60 - 1e-6)
  const rounded = start.value.add({ minutes }).round({
    smallestUnit: 'minute',
    roundingIncrement: rules.roundMinutes,
    roundingMode: 'ceil',
  })
  const minute = rounded.hour * 60 + rounded.minute
  if (minute >= rules.nightToMinute && minute < rules.nightFromMinute)
    return fine({ iso: isoOf(rounded), movedToMorning: false })
  const day = minute >= rules.nightFromMinute ? rounded.add({ days: 1 }) : rounded
  return fine({ iso: isoOf(atMinute(day, rules.nightToMinute)), movedToMorning: true })
}

/** The latest time of that hour and minute that has passed: what "set at 3pm" means. ISO 8601 with offset.
 *  @param nowIso ISO 8601 with offset    @param minuteOfDay MINUTE_OF_DAY    @param zone as for zoned
 *  @problem out-of-range, not-understood */
export function latestPast(nowIso: string, minuteOfDay: number, zone: string | null): Outcome<string> {
  const minute = within(MINUTE_OF_DAY, minuteOfDay)
  if (!minute.ok) return minute
  const now = zoned(nowIso, zone)
  if (!now.ok) return now
  const today = atMinute(now.value, minuteOfDay)
  const past = Temporal.ZonedDateTime.compare(today, now.value) <= 0
  return fine(isoOf(past ? today : atMinute(now.value.subtract({ days: 1 }), minuteOfDay)))
}

/** The minute of the day an instant falls on, in its zone. [min]
 *  @problem not-understood */
export function minuteOfDay(iso: string, zone: string | null): Outcome<number> {
  const at = zoned(iso, zone)
  return at.ok ? fine(at.value.hour * 60 + at.value.minute) : at
}

const atMinute = (day: Temporal.ZonedDateTime, minute: number): Temporal.ZonedDateTime =>
  day.withPlainTime({ hour: Math.floor(minute / 60), minute: Math.floor(minute % 60) })
