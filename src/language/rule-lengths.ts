/** Lengths in the words of a rule question: with their units, in lists, beside a word. */
import { type FigureWords, numberOf } from './rule-numbers.ts'

export const N = String.raw`(?:\d+[ -]\d+/\d+|\d+/\d+|\d+(?:\.\d+)?|\.\d+)`

export const START = String.raw`(?<![\p{L}\p{N}/.])`

export const END = String.raw`(?![\p{L}])`

export const INCH = 25.4

export const FOOT = 304.8

/** `#` stands before no word, so a grade may begin with it. */
export const word = (words: string): RegExp => new RegExp(`(?<![\\p{L}\\p{N}])(?:${words})(?![\\p{L}\\p{N}])`, 'u')

/** A length in feet and inches or metres. [mm] */
export function longIn(plain: string, f: FigureWords): number | null {
  const feet = new RegExp(`${START}(${N}) ?-?(?:${f.foot})(?: ?-?(${N}) ?(?:${f.inch})?${END})?`, 'u').exec(plain)
  const inches = feet?.[2] ? numberOf(feet[2])! : 0
  // "12 ft 40 psf": no inches.
  if (feet) return numberOf(feet[1]!)! * FOOT + (inches < 12 ? inches * INCH : 0)
  const metres = new RegExp(`${START}(${N}) ?(?:${f.metre})${END}`, 'u').exec(plain)
  return metres ? numberOf(metres[1]!)! * 1000 : null
}

export function inUnit(said: string, unit: string | undefined, f: FigureWords, bare: number): number | null {
  const n = numberOf(said)
  if (n === null) return null
  const is = (words: string) => unit !== undefined && new RegExp(`^(?:${words})$`, 'u').test(unit)
  return n * (is(f.mm) ? 1 : is(f.cm) ? 10 : is(f.metre) ? 1000 : is(f.foot) ? FOOT : is(f.inch) ? INCH : bare)
}

/** The longest run of figures with nothing but commas, "and" and units between them. [mm] */
export function listIn(plain: string, f: FigureWords, want: { least: number; from?: number; most: number }): number[] {
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
export function beside(plain: string, words: string, f: FigureWords): number | null {
  const unit = `(?:${f.inch}|${f.mm})`
  const hit =
    new RegExp(`(?<![\\p{L}])(?:${words})${END}(?: \\p{L}+){0,3}? (${N}) ?(${unit})?(?![\\p{N}/x])`, 'u').exec(plain) ??
    new RegExp(`${START}(${N}) ?(${unit})?(?: \\p{L}+){0,2}? (?:${words})${END}`, 'u').exec(plain)
  const mm = hit ? inUnit(hit[1]!, hit[2], f, hit[1]!.includes('/') || Number(hit[1]) < 1 ? INCH : Number.NaN) : null
  return mm !== null && mm <= 25 ? mm : null
}

/** Every length of a hand's breadth and more, in order: feet and inches, inches, metres. [mm] */
export function lengthsIn(plain: string, f: FigureWords): number[] {
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
