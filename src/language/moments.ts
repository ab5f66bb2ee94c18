/** Clock times in a message, through chrono-node: its components, never its Date, with the quantities blanked out first. */
import type { TimeFound, TimeLibrary } from '../units/libraries.ts'
import type { Heard } from './hear.ts'

/** The text with every figure that is a measure, a size or a temperature blanked: chrono reads "1/8" as 8 January. */
export function timeText(heard: Heard): string {
  const text = heard.plain.text.split('')
  for (const item of heard.items) {
    const measured =
      item.parts.length > 1 ||
      (item.parts[0].dimension !== 'none' && item.parts[0].dimension !== 'time') ||
      item.parts[0].token.fraction
    if (!measured) continue
    const [from, to] = [heard.tokens[item.first].from, heard.tokens[item.last].to]
    for (let i = from; i < to; i++) text[i] = ' '
  }
  return text
    .join('')
    .replaceAll('tday', 'today')
    .replaceAll(/\b(?:tmrw|tmw)\b/g, 'tomorrow')
    .replaceAll(/\b(?:yday|yest)\b/g, 'yesterday')
}

const CLOCK = /\d\s?[ap]\.?\s?m?\b|\d:\d\d|o'?clock/

/** Whether it is worth loading chrono at all. */
export const mentionsTime = (heard: Heard): boolean =>
  heard.has('time-word', 'day-word', 'ago', 'at') || CLOCK.test(heard.plain.text)

export type Moment = { readonly iso: string; readonly dated: boolean }

/** The first moment told in the message, as an instant in the asker's zone.
 *  Something done is the latest such time that has passed; something to come the next one. Null where none is told. */
export function momentIn(
  heard: Heard,
  library: () => TimeLibrary,
  nowIso: string,
  zone: string | null,
  past: boolean,
): Moment | null {
  if (!mentionsTime(heard)) return null
  const offset = /([+-]\d\d:?\d\d)(?:\[|$)/.exec(nowIso)?.[1] ?? (nowIso.endsWith('Z') ? '+00:00' : '+00:00')
  const now = Temporal.Instant.from(nowIso).toZonedDateTimeISO(zone ?? offset)
  const found = library().find(timeText(heard), {
    instant: new Date(now.epochMilliseconds),
    timezone: now.offsetNanoseconds / 6e10,
  })
  const best = found.find((f) => f.isCertain('hour')) ?? found.find((f) => f.isCertain('day') || f.isCertain('weekday'))
  if (!best) return null
  return resolve(best, now, past)
}

/** The bare "at 3" of a crew means the working day. */
const WORKDAY_STARTS = 6

function resolve(found: TimeFound, now: Temporal.ZonedDateTime, past: boolean): Moment {
  const get = (c: string): number => found.get(c) ?? 0
  const dated = found.isCertain('day') || found.isCertain('weekday') || found.isCertain('month')
  let hour = found.isCertain('hour') ? get('hour') : 12
  if (found.isCertain('hour') && !found.isCertain('meridiem') && hour > 0 && hour < WORKDAY_STARTS) hour += 12
  let at = now.with({
    year: get('year') || now.year,
    month: get('month') || now.month,
    day: get('day') || now.day,
    hour,
    minute: found.isCertain('minute') ? get('minute') : 0,
    second: 0,
    millisecond: 0,
    microsecond: 0,
    nanosecond: 0,
  })
  const later = Temporal.ZonedDateTime.compare(at, now) > 0
  if (past && later && (!dated || found.isCertain('weekday')))
    at = at.subtract({ days: found.isCertain('weekday') ? 7 : 1 })
  // "set 5 hours ago" comes with certain hour and day: it is already right.
  if (!past && !later && !dated) at = at.add({ days: 1 })
  return { iso: at.toString({ timeZoneName: 'never', smallestUnit: 'second' }), dated }
}
