/** Clock times in a message, through chrono-node: its components, never its Date, with the quantities blanked out first. */
import type { TimeFound, TimeLibrary } from '../units/libraries.ts'
import type { Concept } from './concepts.ts'
import type { Heard } from './heard.ts'
import type { Item } from './items.ts'
import type { Quantity } from './measures.ts'
import { type SpanWords, spokenClocks } from './spans.ts'
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
  for (const { from, to, text: clock } of spokenClocks(heard)) {
    for (let i = from; i < to; i++) text[i] = ''
    text[from] = clock
    for (let i = from; i < to; i++) clocks.add(i)
  }
  for (const item of heard.items) {
    if (clocks.has(heard.tokens[item.first].from)) continue
    const measured =
      item.parts.length > 1 ||
      (item.parts[0].dimension !== 'none' && item.parts[0].dimension !== 'time') ||
      item.parts[0].token.fraction
    if (!measured) continue
    const [from, to] = [heard.tokens[item.first].from, heard.tokens[item.last].to]
    for (let i = from; i < to; i++) text[i] = ' '
    if (item.parts[0].dimension === 'temperature' || isTemperature(heard, item.parts[0])) blankNight(heard, item, text)
  }
  return text.join('')
}

const isTemperature = (heard: Heard, q: Quantity): boolean =>
  q.dimension === 'none' && heard.facts.temperatures !== undefined && !heard.loose.some((l) => l.q === q)

const OF_A_TEMPERATURE: readonly Concept[] = ['night', 'low', 'highest', 'is', 'at', 'the', 'of']

/** "at 7 this morning, night low 45": the night beside a temperature is the temperature's. */
function blankNight(heard: Heard, { first, last }: Item, text: string[]): void {
  const { reader, tokens } = heard
  if (
    ![-3, -2, -1].some((k) => reader.is(first + k, 'low', 'highest', 'night')) &&
    !reader.is(last + 1, 'night', 'low')
  )
    return
  const blank = (i: number): void => {
    for (let k = tokens[i].from; k < tokens[i].to; k++) text[k] = ' '
  }
  for (let i = first - 1; i >= 0 && reader.is(i, ...OF_A_TEMPERATURE); i--) blank(i)
  for (let i = last + 1; i < tokens.length && reader.is(i, 'night', 'low', 'at', 'the'); i++) blank(i)
  for (let i = first; i <= last; i++) blank(i)
}

/** A locale's words for times that its chrono lacks, as patterns over plain text and what chrono reads instead, tried in
 *  order; `#-2` stands for the date two days before. */
export type TimeWords = {
  readonly replace: readonly (readonly [pattern: string, by: string])[]
  /** What shows a clock time without a word: worth loading chrono for. */
  readonly clock: string
  readonly spans: SpanWords
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
  compiledOf(heard.reader.lexicon.locale.times).clock.test(heard.plain.text) ||
  spokenClocks(heard).length > 0

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
    return { iso: isoOf(at), dated: true, clock: true }
  }
  return null
}

export type Moment = {
  readonly iso: string
  readonly dated: boolean
  /** Whether an hour was told, and not just "now" or a day. */
  readonly clock: boolean
}

const isoOf = (at: Temporal.ZonedDateTime): string => at.toString({ timeZoneName: 'never', smallestUnit: 'second' })

/** An instant in a zone, else at the offset it was told with. */
function zonedAt(iso: string, zone: string | null): Temporal.ZonedDateTime {
  const offset = /([+-]\d\d:?\d\d)(?:\[|$)/.exec(iso)?.[1] ?? '+00:00'
  return Temporal.Instant.from(iso).toZonedDateTimeISO(zone ?? offset)
}

/** The first moment told in the message, as an instant in the asker's zone.
 *  Something done is the latest such time that has passed; something to come the next one. Null where none is told.
 *  @param about  what is told anew, "make it 4pm": the same day where no other is told */
export function momentIn(
  heard: Heard,
  library: () => TimeLibrary,
  nowIso: string,
  zone: string | null,
  past: boolean,
  about: string | null = null,
): Moment | null {
  const now = zonedAt(nowIso, zone)
  const before = about === null ? null : zonedAt(about, zone)
  if (!mentionsTime(heard)) return before && bareHour(heard, now, before, past)
  const ago = past ? agoIn(heard, now) : null
  if (ago) return ago
  const found = library().find(chronoText(heard, now), {
    instant: new Date(now.epochMilliseconds),
    timezone: now.offsetNanoseconds / 6e10,
  })
  const best = found.find((f) => f.isCertain('hour')) ?? found.find((f) => f.isCertain('day') || f.isCertain('weekday'))
  if (!best) return null
  return resolve(best, now, past, saysNight(best, heard), before)
}

/** "actually it was 3": a figure alone, where a time is told anew. */
function bareHour(
  heard: Heard,
  now: Temporal.ZonedDateTime,
  before: Temporal.ZonedDateTime,
  past: boolean,
): Moment | null {
  const [bare] = heard.loose
  const hour = bare?.q.n
  const alone = heard.items.length === 1 && heard.loose.length === 1 && bare.nouns.length === 0
  if (!alone || bare.q.dimension !== 'none' || !Number.isInteger(hour) || hour < 1 || hour > 12) return null
  if (!heard.has('make-it', 'no-correction', 'is')) return null
  const found: TimeFound = {
    text: bare.q.token.text,
    index: 0,
    isCertain: (c) => c === 'hour',
    get: (c) => (c === 'hour' ? hour : c === 'minute' ? 0 : null),
  }
  return resolve(found, now, past, false, before)
}

/** The bare "at 3" of a crew means the working day. */
const WORKDAY_STARTS = 6
const WORKDAY_ENDS = 21
/** "remind me Thursday", "tomorrow morning": at the start of the day's work. */
const MORNING = 7

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

function resolve(
  found: TimeFound,
  now: Temporal.ZonedDateTime,
  past: boolean,
  night: boolean,
  before: Temporal.ZonedDateTime | null,
): Moment {
  const get = (c: string): number => found.get(c) ?? 0
  const dated = found.isCertain('day') || found.isCertain('weekday') || found.isCertain('month')
  const day =
    dated || before === null
      ? { year: get('year') || now.year, month: get('month') || now.month, day: get('day') || now.day }
      : { year: before.year, month: before.month, day: before.day }
  let hour = found.isCertain('hour') ? get('hour') : past ? 12 : partOfDay(found, now)
  if (
    found.isCertain('hour') &&
    !found.isCertain('meridiem') &&
    hour > 0 &&
    (hour < WORKDAY_STARTS || (night && hour < 12 && hour >= EVENING_STARTS))
  )
    hour += 12
  let at = now.with({
    ...day,
    hour,
    minute: found.isCertain('minute') ? get('minute') : 0,
    second: 0,
    millisecond: 0,
    microsecond: 0,
    nanosecond: 0,
  })
  const later = Temporal.ZonedDateTime.compare(at, now) > 0
  // What is told anew stays on its day: "make it 4", said before four, is still to come.
  if (past && later && before === null && (!dated || found.isCertain('weekday')))
    at = at.subtract({ days: found.isCertain('weekday') ? 7 : 1 })
  if (!past && !later) {
    // "remind me at 6", said in the afternoon: this evening; "monday at 7": the one that comes.
    const evening = at.add({ hours: 12 })
    const open = found.isCertain('hour') && !found.isCertain('meridiem') && hour < 12 && evening.hour <= WORKDAY_ENDS
    if (open && !dated && Temporal.ZonedDateTime.compare(evening, now) > 0) at = evening
    else if (found.isCertain('weekday')) at = at.add({ days: 7 })
    else if (!dated) at = at.add({ days: 1 })
  }
  const clock = found.isCertain('hour') && Math.abs(now.until(at).total('minutes')) >= 1
  return { iso: isoOf(at), dated, clock }
}

/** The hour of a day told without one: of its afternoon or evening where those were told, else when work starts. */
function partOfDay(found: TimeFound, now: Temporal.ZonedDateTime): number {
  const implied = found.get('hour') ?? MORNING
  const usual = implied === now.hour || implied === 12
  return usual ? MORNING : Math.max(MORNING, implied)
}
