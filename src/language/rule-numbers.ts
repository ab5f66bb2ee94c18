/** Figures that rules, readings and joists are asked with, found in plain words.
 *  Lengths come out in mm; the words that name units and fractions are the locale's. */

/** Words of a locale for `readFigures`; each is a regular-expression alternation without groups. */
export type FigureWords = {
  readonly inch: string
  readonly foot: string
  readonly mm: string
  readonly cm: string
  readonly metre: string
  /** "in", "over": between a gap and the length it was read over. */
  readonly over: string
  /** "under a": between gaps and the edge. */
  readonly edge: string
  readonly percent: string
  readonly humidity: string
  readonly days: string
  readonly weeks: string
  readonly months: string
  readonly pound: string
  readonly joint: string
  readonly fahrenheit: string
  readonly celsius: string
  readonly tiles: string
  readonly slope: string
  /** "a", "the"; and the spelled numbers that stand before a unit. */
  readonly articles: string
  readonly numerals: string
  /** Spelled parts of a whole. */
  readonly parts: Readonly<Record<string, number>>
  readonly counts: Readonly<Record<string, number>>
}

/** Matches nothing. */
const NEVER = '(?!)'

export const NO_FIGURE_WORDS: FigureWords = {
  inch: NEVER,
  foot: NEVER,
  mm: NEVER,
  cm: NEVER,
  metre: NEVER,
  over: NEVER,
  edge: NEVER,
  percent: NEVER,
  humidity: NEVER,
  days: NEVER,
  weeks: NEVER,
  months: NEVER,
  pound: NEVER,
  joint: NEVER,
  fahrenheit: NEVER,
  celsius: NEVER,
  tiles: NEVER,
  slope: NEVER,
  articles: NEVER,
  numerals: NEVER,
  parts: {},
  counts: {},
}

export type GapOverEdge = { readonly gapMm: number; readonly edgeMm: number }

export type Figures = {
  readonly gap: GapOverEdge | null
  /** Several gaps read under one edge. */
  readonly readingsMm: readonly number[]
  readonly edgeMm: number | null
  readonly percents: readonly number[]
  /** Tile sides where a pair was said, longer first. */
  readonly tileMm: readonly [number, number] | null
  readonly jointMm: number | null
  /** Small lengths that belong to none of the above, in the order said. */
  readonly smallMm: readonly number[]
  readonly offsetPct: number | null
  readonly temperatureC: number | null
  readonly days: number | null
  /** A long length that is no straightedge: a run, a room, a spacing. */
  readonly longMm: number | null
  /** A fall per foot or metre. */
  readonly slopeMmPerM: number | null
  readonly pounds: number | null
  readonly ratio: number | null
  readonly decimal: number | null
}

const NUMBER = String.raw`(?:\d+[ -]\d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?|[.,]\d+)`

/** The value of a number as crews write it: 5, 0.5, 3/16, 1 1/2, 1-1/2. Null where it is none (a zero divisor). */
export function numberOf(said: string): number | null {
  const mixed = /^(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(said.trim())
  if (mixed) {
    const value = Number(mixed[1] ?? 0) + Number(mixed[2]) / Number(mixed[3])
    return Number.isFinite(value) ? value : null
  }
  const value = Number(said.trim().replace(',', '.'))
  return said.trim() !== '' && Number.isFinite(value) ? value : null
}

const compiled = new WeakMap<FigureWords, ReturnType<typeof compile>>()

function patternsOf(words: FigureWords): ReturnType<typeof compile> {
  const known = compiled.get(words)
  if (known) return known
  const made = compile(words)
  compiled.set(words, made)
  return made
}

const START = '(?<![\\p{L}\\p{N}/.,])'
const END = '(?![\\p{L}\\p{N}])'

/** An object whose values are made when they are first looked at: a message needs few of the patterns, and each takes a while. */
function onDemand<T extends object>(make: { readonly [K in keyof T]: () => T[K] }): Readonly<T> {
  const made = {} as T
  for (const key of Object.keys(make) as (keyof T)[])
    Object.defineProperty(made, key, {
      configurable: true,
      get() {
        const value = make[key]()
        Object.defineProperty(made, key, { value })
        return value
      },
    })
  return made
}

function compile(w: FigureWords) {
  const unit = `(?:${w.inch}|${w.mm}|${w.cm})`
  /** An edge in millimetres has at least three figures. */
  const longUnit = `(?:${w.foot}|${w.metre}|(?<=\\d{3} ?)(?:${w.mm}))`
  const re = (source: string, flags = 'u') => new RegExp(source, flags)
  return onDemand({
    ratio: () => /(?<!\p{L})l ?\/ ?(\d{3,4})/u,
    tile: () =>
      re(
        `${START}(${NUMBER}) ?(${w.inch}|${w.cm}|${w.mm})? ?(?:x|by|por) ?(${NUMBER})(?: ?(${unit}|${w.foot})${END})?`,
      ),
    oneSide: () => re(`${START}(${NUMBER})[ -]?(${unit})[ -]?(?:${w.tiles})${END}`),
    gap: () =>
      re(
        `${START}(${NUMBER}) ?(${unit})?(?: \\p{L}+){0,3}? (?:${w.over}) (?:(?:${w.articles}) )?(${NUMBER}|${w.numerals})[ -]?(${longUnit})${END}`,
      ),
    edge: () => re(`${START}(${NUMBER})[ -]?(${longUnit}) ?(?:${w.edge})`),
    humidity: () =>
      re(
        `${START}(${NUMBER}) ?(?:${w.percent})? ?(?:${w.humidity})|(?:${w.humidity}) (?:\\p{L}+ ){0,3}?(\\d{2}(?:[.]\\d+)?)(?![\\d.]| ?["'/]| ?(?:${w.foot}|${w.metre}|${w.mm}|${w.cm}|${w.days}|${w.percent})${END})`,
      ),
    percents: () => re(`${START}(${NUMBER}) ?(?:${w.percent})`, 'gu'),
    days: () => re(`${START}(${NUMBER}|${w.articles}|${w.numerals}) ?(${w.days}|${w.weeks}|${w.months})`),
    degrees: () => re(`${START}(-?${NUMBER}) ?(?:(${w.fahrenheit})|(${w.celsius}))(?![\\p{L}\\p{N}])`),
    pounds: () => re(`${START}(${NUMBER}) ?(?:${w.pound})`),
    joint: () =>
      re(
        `${START}(${NUMBER}) ?(${unit})? ?(?:${w.joint})|(?:${w.joint}) (?:of |at |is |be |de )?(${NUMBER})(?![\\d.,/]| ?-?(?:${w.foot}|${w.metre})${END}) ?(${unit})?`,
      ),
    // "9am" is no 9 a metre.
    fall: () =>
      re(
        `${START}(${NUMBER})(?! ?[ap]\\.? ?m${END}) ?(${unit})? ?(?:${w.slope}) ?(?:(?:${w.articles}|each|every) )?(?:1 )?(${w.foot}|${w.metre})${END}`,
      ),
    offset: () => /(?<![\p{L}\p{N}/.,])(50 ?\/ ?50|1\/2|1\/3|1\/4|2\/3)(?!\d| ?(?:"|in |inch|joint|grout|gap|notch))/u,
    decimal: () => /(?<![\p{L}\p{N}/])(0?\.\d+)(?! ?(?:mm|cm|m|in|inch|ft|"))/u,
    long: () => re(`${START}(${NUMBER})[ -]?(${w.foot}|${w.metre})${END}`),
    small: () => re(`${START}(?:(${NUMBER}) ?(${unit})${END}|(\\d+[ -]\\d+/\\d+|\\d+/\\d+))`, 'gu'),
    anyPart: () => re(`${Object.keys(w.parts).join('|') || NEVER}`),
    parts: () =>
      Object.entries(w.parts).map(
        ([said, part]) =>
          [re(`(?<![\\p{L}\\p{N}])(?:(?:${w.articles}) )?${said}${END}`, 'gu'), fractionOf(part)] as const,
      ),
  })
}

type Patterns = ReturnType<typeof compile>

const spelledOut = (plain: string, p: Patterns): string =>
  p.anyPart.test(plain)
    ? p.parts.reduce(
        (said, [pattern, shown]) => said.replace(pattern, (_, at: number) => apart(said, at) + shown),
        plain,
      )
    : plain

/** "three quarter ply" as "3/4 ply". */
export const partsAsFigures = (plain: string, words: FigureWords): string => spelledOut(plain, patternsOf(words))

/** "8x48 half" is no 48 1/2. */
const apart = (said: string, at: number): string => (/\d $/.test(said.slice(Math.max(0, at - 2), at)) ? ', ' : '')

/** Which figures speak for themselves: a gap over an edge, a fall per foot, a tile with a share of it, a temperature. */
export function tellingFigures(
  plain: string,
  words: FigureWords,
): readonly ('gap' | 'fall' | 'share' | 'heat' | 'cold')[] {
  const p = patternsOf(words)
  const text = spelledOut(plain, p)
  if (!/\d/.test(text)) return []
  const found: ('gap' | 'fall' | 'share' | 'heat' | 'cold')[] = []
  if (p.gap.test(text)) found.push('gap')
  if (p.fall.test(text)) found.push('fall')
  if (p.offset.test(text) && p.tile.test(text)) found.push('share')
  const degrees = p.degrees.exec(text)
  const c = degrees ? celsius(numberOf(degrees[1]!), degrees[3] !== undefined) : null
  if (c !== null) found.push(c < HOT_C ? 'cold' : 'heat')
  return found
}

/** From here on a temperature is asked about for its heat. */
const HOT_C = 29

/** Reads what a rule question carries. Everything it does not find is null or empty.
 *  What one pattern took is gone for the next, so the order is from the most telling to the least. */
export function readFigures(plain: string, words: FigureWords): Figures {
  const p = patternsOf(words)
  const text = spelledOut(plain, p)
  let rest = text
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const hit = pattern.exec(rest)
    if (hit) rest = `${rest.slice(0, hit.index)} ; ${rest.slice(hit.index + hit[0].length)}`
    return hit
  }
  const ratio = take(p.ratio)
  const tile = take(p.tile)
  const oneSide = tile ? null : take(p.oneSide)
  const gap = take(p.gap)
  const edge = gap ? null : take(p.edge)
  const humidity = take(p.humidity)
  const percents = [...text.matchAll(p.percents)]
  const days = take(p.days)
  const degrees = take(p.degrees)
  const pounds = take(p.pounds)
  const joint = take(p.joint)
  const fall = take(p.fall)
  const offset = p.offset.exec(rest)
  const decimal = take(p.decimal)
  const long = take(p.long)
  const lengths = [...rest.matchAll(p.small)]
    .map((hit) => lengthMm(hit[1] ?? hit[3], hit[2], words))
    .filter((mm) => mm !== null)
  return {
    gap: gap ? gapOf(gap, words) : null,
    readingsMm: lengths,
    edgeMm: edge ? lengthMm(edge[1], edge[2], words) : null,
    percents: [
      ...percents.map((hit) => numberOf(hit[1]!)).filter((n) => n !== null),
      ...(humidity ? [numberOf(humidity[1] ?? humidity[2]!)].filter((n) => n !== null) : []),
    ],
    tileMm: tile ? tileOf(tile, words) : oneSide ? squareOf(lengthMm(oneSide[1], oneSide[2], words)) : null,
    jointMm: joint ? lengthMm(joint[1] ?? joint[3], joint[2] ?? joint[4], words) : null,
    smallMm: lengths,
    offsetPct: offset ? (offset[1]!.startsWith('50') ? 50 : 100 * numberOf(offset[1]!)!) : null,
    temperatureC: degrees ? celsius(numberOf(degrees[1]!), degrees[3] !== undefined) : null,
    days: days ? daysOf(days, words) : null,
    longMm: long ? lengthMm(long[1], long[2], words) : null,
    slopeMmPerM: fall ? slopeOf(fall, words) : null,
    pounds: pounds ? numberOf(pounds[1]!) : null,
    ratio: ratio ? Number(ratio[1]) : null,
    decimal: decimal ? numberOf(decimal[1]!) : null,
  }
}

/** A part of a whole as crews write it: 3/16, 1/3. */
function fractionOf(part: number): string {
  for (const under of [3, 32]) {
    const over = Math.round(part * under)
    if (Math.abs(over / under - part) < 1e-9) return reduced(`${over}/${under}`)
  }
  return String(part)
}

function reduced(figure: string): string {
  let [over, under] = figure.split('/').map(Number) as [number, number]
  while (over % 2 === 0 && under % 2 === 0) {
    over /= 2
    under /= 2
  }
  return `${over}/${under}`
}

const is = (unit: string | undefined, words: string): boolean =>
  unit !== undefined && new RegExp(`^(?:${words})$`, 'u').test(unit)

/** A length in mm. Without a unit a fraction is inches; a whole number is no length. */
function lengthMm(said: string | undefined, unit: string | undefined, words: FigureWords): number | null {
  const value = said === undefined ? null : (numberOf(said) ?? words.counts[said] ?? null)
  if (value === null) return null
  if (is(unit, words.mm)) return value
  if (is(unit, words.cm)) return value * 10
  if (is(unit, words.metre)) return value * 1000
  if (is(unit, words.foot)) return value * 304.8
  if (is(unit, words.inch)) return value * 25.4
  return said!.includes('/') || value < 1 ? value * 25.4 : null
}

function gapOf(hit: RegExpExecArray, words: FigureWords): GapOverEdge | null {
  const edgeMm = lengthMm(hit[3], hit[4], words)
  const metric = is(hit[4], words.metre) || is(hit[4], words.mm)
  const bare = hit[2] === undefined && !hit[1]!.includes('/') && numberOf(hit[1]!)! >= 1
  const gapMm = bare ? numberOf(hit[1]!)! * (metric ? 1 : 25.4) : lengthMm(hit[1], hit[2], words)
  return gapMm === null || edgeMm === null || gapMm >= edgeMm / 4 ? null : { gapMm, edgeMm }
}

/** Sides of a tile: no unit reads as inches up to 72 and as mm above; cm only where said. */
function tileOf(hit: RegExpExecArray, words: FigureWords): readonly [number, number] | null {
  const unit = hit[4] ?? hit[2]
  const sides = [numberOf(hit[1]!), numberOf(hit[3]!)]
  if (sides.some((side) => side === null || side <= 0)) return null
  const scale = is(unit, words.mm)
    ? 1
    : is(unit, words.cm)
      ? 10
      : unit || Math.max(...(sides as number[])) <= 72
        ? 25.4
        : 1
  const [a, b] = (sides as [number, number]).map((side) => side * scale) as [number, number]
  return a >= b ? [a, b] : [b, a]
}

function slopeOf(hit: RegExpExecArray, words: FigureWords): number | null {
  const mm = lengthMm(hit[1], hit[2], words)
  if (mm === null) return null
  return is(hit[3], words.foot) ? mm / 0.3048 : mm
}

const squareOf = (sideMm: number | null): readonly [number, number] | null =>
  sideMm === null ? null : [sideMm, sideMm]

const celsius = (value: number | null, isCelsius: boolean): number | null =>
  value === null ? null : isCelsius ? value : (value - 32) / 1.8

function daysOf(hit: RegExpExecArray, words: FigureWords): number | null {
  const count = numberOf(hit[1]!) ?? words.counts[hit[1]!] ?? null
  if (count === null) return null
  return count * (is(hit[2], words.weeks) ? 7 : is(hit[2], words.months) ? 30 : 1)
}
