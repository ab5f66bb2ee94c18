/** Clock times in a message, through chrono-node: its components, never its Date, with the quantities blanked out first. */
import type { TimeFound, TimeLibrary } from '../units/libraries.ts'
import type { Heard } from './hear.ts'
import type { NumberToken } from './tokens.ts'

const isClock = (heard: Heard, token: NumberToken): boolean =>
  (token.spelled || token.fraction) &&
  token.value >= 1 &&
  token.value < 13 &&
  heard.marks.some((m) => m.concept === 'at' && heard.tokens[m.first + m.count] === token)

/** "a las dos y media" as "2:30" in the place of its words. */
function writeClock(text: string[], token: NumberToken, clocks: Set<number>): void {
  const hour = Math.floor(token.value)
  const minute = Math.round((token.value - hour) * 60)
  for (let i = token.from; i < token.to; i++) text[i] = ''
  text[token.from] = minute === 0 ? String(hour) : `${hour}:${String(minute).padStart(2, '0')}`
  clocks.add(token.from)
}

/** The text with every figure that is a measure, a size or a temperature blanked: chrono reads "1/8" as 8 January. */
export function timeText(heard: Heard): string {
  const text = heard.plain.text.split('')
  const clocks = new Set<number>()
  for (const token of heard.tokens)
    if (token.kind === 'number' && isClock(heard, token)) writeClock(text, token, clocks)
  for (const item of heard.items) {
    if (clocks.has(heard.tokens[item.first].from)) continue
    const measured =
      item.parts.length > 1 ||
      (item.parts[0].dimension !== 'none' && item.parts[0].dimension !== 'time') ||
      item.parts[0].token.fraction
    if (!measured) continue
    const [from, to] = [heard.tokens[item.first].from, heard.tokens[item.last].to]
    for (let i = from; i < to; i++) text[i] = ' '
  }
  return text.join('')
}

/** A locale's words for times that its chrono lacks, as patterns over plain text and what chrono reads instead, tried in
 *  order; `#-2` stands for the date two days before. */
export type TimeWords = {
  readonly replace: readonly (readonly [pattern: string, by: string])[]
  /** What shows a clock time without a word: worth loading chrono for. */
  readonly clock: string
}

const compiled = new WeakMap<TimeWords, { clock: RegExp; replace: readonly (readonly [RegExp, string])[] }>()

function compiledOf(words: TimeWords): { clock: RegExp; replace: readonly (readonly [RegExp, string])[] } {
  let found = compiled.get(words)
  if (!found) {
    found = {
      clock: new RegExp(words.clock),
      replace: words.replace.map(([pattern, by]) => [new RegExp(pattern, 'g'), by] as const),
    }
    compiled.set(words, found)
  }
  return found
}

/** The text in the words that chrono knows. */
function chronoText(heard: Heard, now: Temporal.ZonedDateTime): string {
  const text = compiledOf(heard.reader.lexicon.locale.times).replace.reduce(
    (said, [pattern, by]) => said.replace(pattern, by),
    timeText(heard),
  )
  return text
    .replace(/#(-?\d+)/g, (_, days) =>
      now
        .add({ days: Number(days) })
        .toPlainDate()
        .toString(),
    )
    .replaceAll('undefined', '')
}

/** Whether it is worth loading chrono at all. */
export const mentionsTime = (heard: Heard): boolean =>
  heard.has('time-word', 'day-word', 'ago', 'at') ||
  compiledOf(heard.reader.lexicon.locale.times).clock.test(heard.plain.text)

/** "5 hours ago", "hace 1,5 horas": exact, decimals kept; chrono loses them in Spanish. Null where no such time is told. */
function agoIn(heard: Heard, now: Temporal.ZonedDateTime): Moment | null {
  for (const q of heard.quantities) {
    // Days go with a clock time ("2 days ago at 3"): those are the library's.
    if (q.dimension !== 'time' || q.si === null || q.unit === 'day' || q.unit === 'week') continue
    const beside = heard.marks.some(
      (m) =>
        m.concept === 'ago' &&
        (m.first + m.count === q.first || m.first === q.last + 1 || m.first + m.count === q.first - 1),
    )
    if (!beside) continue
    const at = now.subtract({ seconds: Math.round(q.si * 3600) })
    return { iso: at.toString({ timeZoneName: 'never', smallestUnit: 'second' }), dated: true }
  }
  return null
}

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
  const ago = past ? agoIn(heard, now) : null
  if (ago) return ago
  const found = library().find(chronoText(heard, now), {
    instant: new Date(now.epochMilliseconds),
    timezone: now.offsetNanoseconds / 6e10,
  })
  const best = found.find((f) => f.isCertain('hour')) ?? found.find((f) => f.isCertain('day') || f.isCertain('weekday'))
  if (!best) return null
  return resolve(best, now, past, saysNight(best, heard))
}

/** The bare "at 3" of a crew means the working day. */
const WORKDAY_STARTS = 6

/** Whether the night stands in the time itself, and not beside it ("at 7 this morning, night low 45"). */
function saysNight(found: TimeFound, heard: Heard): boolean {
  const words = (first: number, count: number): string =>
    heard.tokens
      .slice(first, first + count)
      .map((token) => token.text)
      .join(' ')
  return heard.marks.some((m) => m.concept === 'night' && found.text.includes(words(m.first, m.count)))
}

/** "last night at 7": an hour of the evening. */
const EVENING_STARTS = 5

function resolve(found: TimeFound, now: Temporal.ZonedDateTime, past: boolean, night: boolean): Moment {
  const get = (c: string): number => found.get(c) ?? 0
  const dated = found.isCertain('day') || found.isCertain('weekday') || found.isCertain('month')
  let hour = found.isCertain('hour') ? get('hour') : 12
  if (
    found.isCertain('hour') &&
    !found.isCertain('meridiem') &&
    hour > 0 &&
    (hour < WORKDAY_STARTS || (night && hour < 12 && hour >= EVENING_STARTS))
  )
    hour += 12
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
