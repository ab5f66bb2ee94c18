/** What a crew measured, found in its words: joists, straightedge gaps, heights on a grid, diagonals, voids, calipers. */
import { type FigureWords, numberOf, partsAsFigures } from './rule-numbers.ts'

/** Words of a locale; each is a regular-expression alternation without groups. */
export type MeasureWords = {
  readonly joist: string
  readonly onCentre: string
  readonly psf: string
  readonly live: string
  readonly dead: string
  readonly species: Readonly<Record<'spf' | 'dfl' | 'other', string>>
  readonly grades: Readonly<Record<'1' | '2' | 'other', string>>
  readonly gaps: string
  readonly heights: string
  readonly spacing: string
  readonly sixteenths: string
  readonly eighths: string
  readonly diagonals: string
  readonly marks: string
  readonly voids: string
  readonly vary: string
  readonly calipers: string
  readonly warp: string
  readonly lifted: string
  readonly holes: string
  readonly thick: string
  readonly sheathing: string
  readonly range: string
  readonly tube: string
  readonly to: string
}

const NEVER = '(?!)'
export const NO_MEASURE_WORDS: MeasureWords = {
  joist: NEVER,
  onCentre: NEVER,
  psf: NEVER,
  live: NEVER,
  dead: NEVER,
  species: { spf: NEVER, dfl: NEVER, other: NEVER },
  grades: { '1': NEVER, '2': NEVER, other: NEVER },
  gaps: NEVER,
  heights: NEVER,
  spacing: NEVER,
  sixteenths: NEVER,
  eighths: NEVER,
  diagonals: NEVER,
  marks: NEVER,
  voids: NEVER,
  vary: NEVER,
  calipers: NEVER,
  warp: NEVER,
  lifted: NEVER,
  holes: NEVER,
  thick: NEVER,
  sheathing: NEVER,
  range: NEVER,
  tube: NEVER,
  to: NEVER,
}

export type SaidJoists = {
  readonly nominal: string
  readonly spacingMm: number | null
  readonly spanMm: number | null
  readonly species: 'spf' | 'dfl' | 'other' | null
  readonly grade: '1' | '2' | 'other' | null
  readonly livePsf: number | null
  readonly deadPsf: number | null
}
/** Sheathing over joists: the layers as told, none where their thickness is asked for. */
export type SaidSheathing = { readonly layersMm: readonly number[]; readonly spacingMm: number | null }
export type SaidVoids = { readonly count: number; readonly lengthMm: number; readonly widthMm: number }
export type SaidGrid = { readonly heightsMm: readonly (readonly number[])[]; readonly stepMm: number | null }
export type SaidSquare =
  | { readonly is: 'diagonals'; readonly mm: readonly number[] }
  | { readonly is: 'marks'; readonly aMm: number; readonly bMm: number; readonly acrossMm: number }

export type Measures = {
  readonly joists: SaidJoists | null
  readonly sheathing: SaidSheathing | null
  /** Gaps under one edge, two or more. */
  readonly gapsMm: readonly number[]
  readonly grid: SaidGrid | null
  readonly square: SaidSquare | null
  readonly voids: SaidVoids | null
  /** Contact of lifted tiles, two or more. [%] */
  readonly contactsPct: readonly number[]
  readonly lifted: boolean
  /** One dimension of several tiles. */
  readonly calipersMm: readonly number[]
  readonly variationMm: number | null
  readonly warpMm: number | null
  readonly slabMm: number | null
  /** Humidity readings, two or more. [%] */
  readonly humiditiesPct: readonly number[]
  /** How many holes or probes were set. */
  readonly holes: number | null
}

const N = String.raw`(?:\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)`
const START = String.raw`(?<![\p{L}\p{N}/.])`
const END = String.raw`(?![\p{L}])`
const INCH = 25.4
const FOOT = 304.8

/** Each measurement is looked for when it is asked for: a message holds one or two of them.
 *  @param text with its lines; @param plain the same by plainWords */
export function readMeasures(text: string, plain: string, w: MeasureWords, f: FigureWords): Measures {
  const has = (words: string) => new RegExp(`${START}(?:${words})${END}`, 'u').test(plain)
  return {
    get joists() {
      return joistsIn(plain, w, f)
    },
    get sheathing() {
      return sheathingIn(partsAsFigures(plain, f), w, f)
    },
    get gapsMm() {
      return has(w.gaps) ? listIn(plain, f, { least: 2, most: 1.5 * INCH }) : []
    },
    get grid() {
      return has(w.heights) || rowsOf(text).length >= 3 ? gridIn(text, plain, w, f) : null
    },
    get square() {
      return squareIn(plain, w, f, has)
    },
    get voids() {
      return voidsIn(plain, w, f)
    },
    get contactsPct() {
      return contactsIn(plain, f, has(w.lifted))
    },
    get lifted() {
      return has(w.lifted)
    },
    get calipersMm() {
      return has(w.calipers) || has(w.vary) ? listIn(plain, f, { least: 3, from: 2 * INCH, most: 2000 }) : []
    },
    get variationMm() {
      return beside(plain, w.vary, f)
    },
    get warpMm() {
      return beside(plain, w.warp, f)
    },
    get slabMm() {
      return slabIn(plain, w, f)
    },
    get humiditiesPct() {
      return humiditiesIn(plain)
    },
    get holes() {
      return holesIn(plain, w, f)
    },
  }
}

function joistsIn(plain: string, w: MeasureWords, f: FigureWords): SaidJoists | null {
  const size = /(?<![\p{N}.])2 ?(?:x|by) ?(6|8|10|12)s?(?![\p{N}])/u.exec(plain)
  if (!size) return null
  const rest = plain.replace(size[0], ' ; ')
  const spacing = spacingIn(rest, w, f)
  const beyond = spacing ? rest.replace(spacing[0], ' ; ') : rest
  const wood = (['spf', 'dfl', 'other'] as const).find((s) => word(w.species[s]).test(plain)) ?? null
  const grade = (['1', '2', 'other'] as const).find((g) => word(w.grades[g]).test(plain)) ?? null
  const spanMm = longIn(beyond, f)
  const says = new RegExp(`${START}(?:${w.joist})${END}`, 'u').test(plain) || spacing !== null || wood !== null
  if (!says) return null
  return {
    nominal: `2x${size[1]}`,
    spacingMm: spacing ? spacingMm(spacing, f) : null,
    spanMm,
    species: wood,
    grade,
    livePsf: loadIn(plain, w.live, w),
    deadPsf: loadIn(plain, w.dead, w),
  }
}

/** "16 oc", "at 19.2", "400 centres": how far apart the joists are, as it was written. */
function spacingIn(plain: string, w: MeasureWords, f: FigureWords): RegExpExecArray | null {
  const unit = `(${f.inch}|${f.mm}|${f.cm})`
  const bare = `(?<![\\p{N}./])(12|16|19\\.2|24)(?: ?(${f.inch}))?(?= |$)`
  const noLength = `(?! ?(?:${f.foot}|${f.metre}|${w.psf}|${f.pound}|x|\\d+ ?(?:${w.psf})|\\d+/))`
  return (
    new RegExp(`${START}(${N}) ?${unit}? ?(?:${w.onCentre})${END}`, 'u').exec(plain) ??
    new RegExp(`${START}(?:${w.onCentre}) (?:\\p{L}+ )?(${N}) ?${unit}?${END}`, 'u').exec(plain) ??
    new RegExp(`${bare}${noLength}`, 'u').exec(plain)
  )
}

/** Nobody sets joists 100 in apart: such a bare figure is millimetres. */
const LEAST_BARE_MM = 100

function spacingMm(hit: RegExpExecArray, f: FigureWords): number | null {
  return inUnit(hit[1]!, hit[2], f, Number(hit[1]) >= LEAST_BARE_MM ? 1 : INCH)
}

/** "3/4 ply on 16 centers", "how thick osb for 19.2 oc": told or asked, only where the joists' spacing is told too. */
function sheathingIn(plain: string, w: MeasureWords, f: FigureWords): SaidSheathing | null {
  if (!new RegExp(`${START}(?:${w.sheathing})${END}`, 'u').test(plain)) return null
  const unit = `(${f.inch}|${f.mm})`
  const noun = `(?:\\p{L}+ ){0,2}?(?:${w.sheathing})`
  // "5/8 and 1/2 ply", "subfloor is 3/4"
  const before = new RegExp(`${START}(?:(${N}) ?${unit}? (?:\\p{L}+ )?)?(${N}) ?${unit}? ?${noun}${END}`, 'u').exec(
    plain,
  )
  const after = new RegExp(`${START}(?:${w.sheathing}) (?:\\p{L}+ ){0,2}?(${N}) ?${unit}?(?![\\p{N}/])`, 'u').exec(
    plain,
  )
  const layer = (n: string | undefined, said: string | undefined): number =>
    n === undefined ? Number.NaN : (inUnit(n, said, f, n.includes('/') ? INCH : Number.NaN) ?? Number.NaN)
  const layersIn = (hit: RegExpExecArray): number[] =>
    [layer(hit[1], hit[2]), layer(hit[3], hit[4])].filter((mm) => mm <= THICKEST_MM)
  const told = [before, after].find((hit) => hit !== null && layersIn(hit).length > 0) ?? null
  const rest = told ? plain.replace(told[0], ' ; ') : plain
  const spacing = spacingIn(rest, w, f)
  return { layersMm: told ? layersIn(told) : [], spacingMm: spacing ? spacingMm(spacing, f) : null }
}

/** Sheathing comes no thicker. [mm] */
const THICKEST_MM = 40

/** `#` stands before no word, so a grade may begin with it. */
const word = (words: string): RegExp => new RegExp(`(?<![\\p{L}\\p{N}])(?:${words})(?![\\p{L}\\p{N}])`, 'u')

function loadIn(plain: string, kind: string, w: MeasureWords): number | null {
  const hit =
    new RegExp(`(\\d+) ?(?:${w.psf})? ?(?:${kind})${END}`, 'u').exec(plain) ??
    new RegExp(`(?:${kind}) (?:\\p{L}+ )?(\\d+)(?: ?(?:${w.psf}))?`, 'u').exec(plain)
  return hit ? Number(hit[1]) : null
}

/** A length in feet and inches or metres. [mm] */
function longIn(plain: string, f: FigureWords): number | null {
  const feet = new RegExp(`${START}(${N}) ?-?(?:${f.foot})(?: ?-?(${N}) ?(?:${f.inch})?${END})?`, 'u').exec(plain)
  const inches = feet?.[2] ? numberOf(feet[2])! : 0
  // "12 ft 40 psf": no inches.
  if (feet) return numberOf(feet[1]!)! * FOOT + (inches < 12 ? inches * INCH : 0)
  const metres = new RegExp(`${START}(${N}) ?(?:${f.metre})${END}`, 'u').exec(plain)
  return metres ? numberOf(metres[1]!)! * 1000 : null
}

function inUnit(said: string, unit: string | undefined, f: FigureWords, bare: number): number | null {
  const n = numberOf(said)
  if (n === null) return null
  const is = (words: string) => unit !== undefined && new RegExp(`^(?:${words})$`, 'u').test(unit)
  return n * (is(f.mm) ? 1 : is(f.cm) ? 10 : is(f.metre) ? 1000 : is(f.foot) ? FOOT : is(f.inch) ? INCH : bare)
}

/** The longest run of figures with nothing but commas, "and" and units between them. [mm] */
function listIn(plain: string, f: FigureWords, want: { least: number; from?: number; most: number }): number[] {
  const unit = `(?:${f.inch}|${f.mm}|${f.cm})`
  const run = new RegExp(`${START}${N}(?: ?${unit}${END})?(?:(?: and | |, ?)${N}(?: ?${unit}${END})?)+`, 'gu')
  const one = new RegExp(`(${N})(?: ?(${unit})${END})?`, 'gu')
  const lists = [...plain.matchAll(run)].map(([said]) => {
    const parts = [...said.matchAll(one)]
    const named = parts.find((p) => p[2] !== undefined)?.[2]
    const fractions = parts.some((p) => p[1]!.includes('/'))
    return parts.map(
      (p) => inUnit(p[1]!, p[2] ?? named, f, fractions || (want.from ?? 0) === 0 ? INCH : 1) ?? Number.NaN,
    )
  })
  const good = lists.filter(
    (list) => list.length >= want.least && list.every((mm) => mm >= (want.from ?? 0) && mm <= want.most),
  )
  return good.toSorted((a, b) => b.length - a.length)[0] ?? []
}

/** A small length within three words of a word. [mm] */
function beside(plain: string, words: string, f: FigureWords): number | null {
  const unit = `(?:${f.inch}|${f.mm})`
  const hit =
    new RegExp(`(?<![\\p{L}])(?:${words})${END}(?: \\p{L}+){0,3}? (${N}) ?(${unit})?(?![\\p{N}/x])`, 'u').exec(plain) ??
    new RegExp(`${START}(${N}) ?(${unit})?(?: \\p{L}+){0,2}? (?:${words})${END}`, 'u').exec(plain)
  const mm = hit ? inUnit(hit[1]!, hit[2], f, hit[1]!.includes('/') || Number(hit[1]) < 1 ? INCH : Number.NaN) : null
  return mm !== null && mm <= 25 ? mm : null
}

function voidsIn(plain: string, w: MeasureWords, f: FigureWords): SaidVoids | null {
  const unit = `(?:${f.inch}|${f.mm}|${f.cm})`
  const size = `(${N}) ?(${unit})? ?(?:x|by) ?(${N})(?: ?(${unit}))?`
  const count = `(?:(\\d+|${Object.keys(f.counts).join('|')}) )?`
  const hit =
    new RegExp(`${START}${count}${size}${END} (?:${w.voids})`, 'u').exec(plain) ??
    new RegExp(`${START}${count}(?:${w.voids}) (?:of |about |at |each |de |como )?${size}`, 'u').exec(plain)
  if (!hit) return null
  const unitSaid = hit[5] ?? hit[3]
  const lengthMm = inUnit(hit[2]!, unitSaid, f, INCH)
  const widthMm = inUnit(hit[4]!, unitSaid, f, INCH)
  if (lengthMm === null || widthMm === null) return null
  return { count: hit[1] ? (f.counts[hit[1]] ?? Number(hit[1])) : 1, lengthMm, widthMm }
}

/** "85 90 88 percent", "85%, 90% and 88%": only where each is a share. */
function contactsIn(plain: string, f: FigureWords, lifted: boolean): number[] {
  const run = new RegExp(
    `${START}\\d{2,3}(?: ?(?:${f.percent}))?(?:(?: and | )\\d{2,3}(?: ?(?:${f.percent}))?)+(?!["'x/.\\d])`,
    'u',
  )
  const said = run.exec(plain)?.[0]
  if (!said || !(lifted || new RegExp(f.percent, 'u').test(said))) return []
  const shares = [...said.matchAll(/\d+/g)].map(([n]) => Number(n))
  return shares.length >= 2 && shares.every((n) => n >= 10 && n <= 100) ? shares : []
}

function slabIn(plain: string, w: MeasureWords, f: FigureWords): number | null {
  const hit = new RegExp(
    `${START}(${N})[ -]?(${f.inch}|${f.mm}|${f.cm})[ -]?(?:\\p{L}+ )?(?:${w.thick})${END}`,
    'u',
  ).exec(plain)
  const after =
    hit ?? new RegExp(`${START}(?:${w.thick}) (?:of |de )?(${N}) ?(${f.inch}|${f.mm}|${f.cm})${END}`, 'u').exec(plain)
  return after ? inUnit(after[1]!, after[2], f, INCH) : null
}

/** "72 74 79": two shares or more one after the other. */
function humiditiesIn(plain: string): number[] {
  const run = /(?<![\p{L}\p{N}/.])\d{2}(?: ?%)?(?:(?: and | y | )\d{2}(?: ?%)?)+(?!["'x/.\d])/u.exec(plain)?.[0]
  return run ? [...run.matchAll(/\d+/g)].map(([n]) => Number(n)).filter((n) => n >= 20) : []
}

function holesIn(plain: string, w: MeasureWords, f: FigureWords): number | null {
  const counts = Object.keys(f.counts).join('|')
  const hit = new RegExp(`${START}(\\d{1,2}|${counts}) (?:rh |\\p{L}+ )?(?:${w.holes})${END}`, 'u').exec(plain)
  return hit ? (f.counts[hit[1]!] ?? Number(hit[1])) : null
}

function squareIn(plain: string, w: MeasureWords, f: FigureWords, has: (words: string) => boolean): SaidSquare | null {
  const marks = new RegExp(`(?:${w.marks})${END}`, 'u').exec(plain)
  const lengths = lengthsIn(marks ? plain.replace(marks[0], ' ') : plain, f)
  if (marks && lengths.length >= 1) {
    const [a, b] = marks[0].split(/[- ]/).map(Number) as [number, number]
    const metric =
      new RegExp(`(?:${f.metre}|${f.mm}|${f.cm})${END}`, 'u').test(plain) && lengths[0]! > 1000 * 4.5 && a === 3
    const scale = metric ? 1000 : FOOT
    return { is: 'marks', aMm: a * scale, bMm: b * scale, acrossMm: lengths.at(-1)! }
  }
  return has(w.diagonals) && lengths.length >= 2 ? { is: 'diagonals', mm: lengths } : null
}

/** Every length of a hand's breadth and more, in order: feet and inches, inches, metres. [mm] */
function lengthsIn(plain: string, f: FigureWords): number[] {
  const pattern = new RegExp(
    `${START}(?:(${N}) ?(?:${f.foot})(?:[ -]?(${N}) ?(?:${f.inch})?${END})?|(${N}) ?(${f.metre}|${f.mm}|${f.cm}|${f.inch})${END})`,
    'gu',
  )
  return [...plain.matchAll(pattern)]
    .map((hit) =>
      hit[1]
        ? numberOf(hit[1])! * FOOT + (hit[2] ? numberOf(hit[2])! * INCH : 0)
        : (inUnit(hit[3]!, hit[4], f, Number.NaN) ?? Number.NaN),
    )
    .filter((mm) => mm >= 100)
}

/** Lines that are nothing but figures, at least two each. */
function rowsOf(text: string): number[][] {
  return text
    .split(/\n|;|\|(?=[^|]*\|)/)
    .map((line) => line.trim().replace(/[,\t|]+/g, ' '))
    .filter((line) => /^[-+\d./ ]+$/.test(line))
    .map((line) => cells(line))
    .filter((row) => row.length >= 2 && row.every(Number.isFinite))
}

function cells(line: string): number[] {
  return [...line.matchAll(/[-+]?(?:\d+-\d+\/\d+|\d+\/\d+|\d*\.?\d+)/g)].map(([said]) => {
    const value = numberOf(said.replace(/^[-+]/, ''))
    return value === null ? Number.NaN : said.startsWith('-') ? -value : value
  })
}

/** Rows of heights, one a line or parted by semicolons, with the unit and the spacing named beside them. */
function gridIn(text: string, plain: string, w: MeasureWords, f: FigureWords): SaidGrid | null {
  const tail = text.replace(/^[^\n:]*:/, '')
  const rows = rowsOf(tail).length >= 2 ? rowsOf(tail) : rowsOf(text)
  if (rows.length < 2) return null
  const has = (words: string) => word(words).test(plain)
  const fractions = rows.some((row) => row.some((n) => !Number.isInteger(n)))
  const scale = has(w.sixteenths)
    ? INCH / 16
    : has(w.eighths)
      ? INCH / 8
      : has(f.mm) && !fractions
        ? 1
        : has(f.mm)
          ? 1
          : INCH
  const step = new RegExp(
    `(?:${w.spacing}) (?:of )?(${N}) ?(${f.foot}|${f.metre}|${f.mm}|${f.cm}|${f.inch})${END}|(${N}) ?(${f.foot}|${f.metre}|${f.mm}|${f.cm}|${f.inch}) (?:${w.spacing})`,
    'u',
  ).exec(plain)
  return {
    heightsMm: rows.map((row) => row.map((n) => n * scale)),
    stepMm: step ? inUnit((step[1] ?? step[3])!, step[2] ?? step[4], f, FOOT) : null,
  }
}
