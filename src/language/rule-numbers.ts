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
  readonly psf: string
  readonly onCentre: string
  readonly span: string
  readonly joint: string
  readonly fahrenheit: string
  readonly celsius: string
  readonly hole: string
  readonly tiles: string
  readonly slope: string
  readonly thick: string
  readonly and: string
  /** Spelled parts of a whole. */
  readonly parts: Readonly<Record<string, number>>
  readonly counts: Readonly<Record<string, number>>
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

/** Reads what a rule question carries. Everything it does not find is null or empty. */
export function readFigures(plain: string, words: FigureWords): Figures {
  const text = spelledOut(plain, words)
  const taken: string[] = []
  let rest = text
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const hit = pattern.exec(rest)
    if (!hit) return null
    taken.push(hit[0])
    rest = `${rest.slice(0, hit.index)} ; ${rest.slice(hit.index + hit[0].length)}`
    return hit
  }
  const unit = `(?:${words.inch}|${words.mm}|${words.cm})`
  /** An edge in millimetres has at least three figures. */
  const longUnit = `(?:${words.foot}|${words.metre}|(?<=\\d{3} ?)(?:${words.mm}))`
  const start = '(?<![\\p{L}\\p{N}/.,])'
  const ratio = take(/(?<!\p{L})l ?\/ ?(\d{3,4})/u)
  const tile = take(
    new RegExp(
      `${start}(${NUMBER}) ?(${words.inch}|${words.cm}|${words.mm})? ?(?:x|by|por) ?(${NUMBER})(?: ?(${unit}|${words.foot})(?![\\p{L}]))?`,
      'u',
    ),
  )
  const oneSide = tile
    ? null
    : take(new RegExp(`${start}(${NUMBER})[ -]?(${unit})[ -]?(?:${words.tiles})(?![\\p{L}])`, 'u'))
  const gap = take(
    new RegExp(
      `${start}(${NUMBER}) ?(${unit})?(?: \\p{L}+){0,3}? (?:${words.over}) (?:(?:a|an|any|the|un|una) )?(${NUMBER}|ten|two|diez|dos)[ -]?(${longUnit})(?![\\p{L}])`,
      'u',
    ),
  )
  const edge = gap ? null : take(new RegExp(`${start}(${NUMBER})[ -]?(${longUnit}) ?(?:${words.edge})`, 'u'))
  const humidity = take(
    new RegExp(
      `${start}(${NUMBER}) ?(?:${words.percent})? ?(?:${words.humidity})|(?:${words.humidity}) (?:\\p{L}+ ){0,3}?(\\d{2}(?:[.]\\d+)?)(?![\\d.]| ?[\\p{L}"'/])`,
      'u',
    ),
  )
  const percents = [...text.matchAll(new RegExp(`${start}(${NUMBER}) ?(?:${words.percent})`, 'gu'))]
  const days = take(
    new RegExp(
      `${start}(${NUMBER}|a|an|one|two|three|four|five|six|una|dos|tres) ?(${words.days}|${words.weeks}|${words.months})`,
      'u',
    ),
  )
  const degrees = take(
    new RegExp(
      `(?<![\\p{L}\\p{N}/.,])(-?${NUMBER}) ?(?:(${words.fahrenheit})|(${words.celsius}))(?![\\p{L}\\p{N}])`,
      'u',
    ),
  )
  const pounds = take(new RegExp(`${start}(${NUMBER}) ?(?:${words.pound})`, 'u'))
  const joint = take(
    new RegExp(
      `${start}(${NUMBER}) ?(${unit})? ?(?:${words.joint})|(?:${words.joint}) (?:of |at |is |be |de )?(${NUMBER}) ?(${unit})?`,
      'u',
    ),
  )
  const fall = take(
    new RegExp(
      `${start}(${NUMBER}) ?(${unit})? ?(?:${words.slope}) ?(?:a |an |each |every )?(?:1 )?(${words.foot}|${words.metre})(?![\\p{L}])`,
      'u',
    ),
  )
  const offset =
    /(?<![\p{L}\p{N}/.,])(50 ?\/ ?50|1\/2|1\/3|1\/4|2\/3)(?!\d| ?(?:"|in |inch|joint|grout|gap|notch))/u.exec(rest)
  const decimal = take(/(?<![\p{L}\p{N}/])(0?\.\d+)(?! ?(?:mm|cm|m|in|inch|ft|"))/u)
  const long = take(new RegExp(`${start}(${NUMBER})[ -]?(${words.foot}|${words.metre})(?![\\p{L}])`, 'u'))
  const small = [
    ...rest.matchAll(new RegExp(`${start}(?:(${NUMBER}) ?(${unit})(?![\\p{L}])|(\\d+[ -]\\d+/\\d+|\\d+/\\d+))`, 'gu')),
  ]
  const lengths = small.map((hit) => lengthMm(hit[1] ?? hit[3], hit[2], words)).filter((mm) => mm !== null)
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

/** Spelled fractions and counts as figures: "half" 1/2, "an eighth" 1/8. */
function spelledOut(plain: string, words: FigureWords): string {
  let text = ` ${plain} `
  for (const [said, part] of Object.entries(words.parts)) {
    const figure = `${Math.round(part * 32)}/32`
    const shown = part === 1 / 3 ? '1/3' : part === 2 / 3 ? '2/3' : reduced(figure)
    text = text.replace(new RegExp(`(?<![\\p{L}\\p{N}])(?:an? |una? )?${said}(?![\\p{L}])`, 'gu'), shown)
  }
  return text.trim()
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
