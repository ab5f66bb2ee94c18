/** Figures with their units: "11'6\"", "3.5 m", "50#", "58F". The rooms, joints and bags come later. */

import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import { type Lexicon, type Mark, unitAt } from './lexicon.ts'
import type { NumberToken, Token } from './tokens.ts'

export type Dimension = 'length' | 'area' | 'volume' | 'mass' | 'temperature' | 'time' | 'percent' | 'load' | 'none'

/** For each unit its dimension and what one of it is in mm, m2, l, kg, degrees C, h, % or kPa.
 *  Sources: the inch, pound, gallon and foot are exact by definition (NIST Handbook 44, appendix C; references 7.11);
 *  1 psf = 47.88026 Pa (NIST SP 811). */
const UNITS: Readonly<Record<UnitName, readonly [Dimension, number]>> = {
  in: ['length', 25.4],
  ft: ['length', 304.8],
  yd: ['length', 914.4],
  mm: ['length', 1],
  mil: ['length', 0.0254],
  cm: ['length', 10],
  m: ['length', 1000],
  sqin: ['area', 0.00064516],
  sqft: ['area', 0.09290304],
  sqyd: ['area', 0.83612736],
  sqmm: ['area', 1e-6],
  sqcm: ['area', 1e-4],
  sqm: ['area', 1],
  cuin: ['volume', 0.016387064],
  cuft: ['volume', 28.316846592],
  cuyd: ['volume', 764.554857984],
  cum: ['volume', 1000],
  l: ['volume', 1],
  ml: ['volume', 0.001],
  gal: ['volume', 3.785411784],
  qt: ['volume', 0.946352946],
  pt: ['volume', 0.473176473],
  cup: ['volume', 0.2365882365],
  floz: ['volume', 0.0295735295625],
  lb: ['mass', 0.45359237],
  oz: ['mass', 0.028349523125],
  kg: ['mass', 1],
  g: ['mass', 0.001],
  ton: ['mass', 907.18474],
  f: ['temperature', 1],
  c: ['temperature', 1],
  degree: ['temperature', 1],
  second: ['time', 1 / 3600],
  minute: ['time', 1 / 60],
  hour: ['time', 1],
  day: ['time', 24],
  week: ['time', 168],
  percent: ['percent', 1],
  psf: ['load', 0.04788026],
  kpa: ['load', 1],
}

export const METRIC: ReadonlySet<UnitName> = new Set([
  'mm',
  'cm',
  'm',
  'sqmm',
  'sqcm',
  'sqm',
  'cum',
  'l',
  'ml',
  'kg',
  'g',
  'c',
  'kpa',
])
export const IMPERIAL: ReadonlySet<UnitName> = new Set([
  'in',
  'ft',
  'yd',
  'mil',
  'sqin',
  'sqft',
  'sqyd',
  'cuin',
  'cuft',
  'cuyd',
  'gal',
  'qt',
  'pt',
  'cup',
  'floz',
  'lb',
  'oz',
  'ton',
  'f',
  'psf',
])

export const dimensionOf = (unit: UnitName): Dimension => UNITS[unit][0]

/** A number of a unit in SI. A bare degree is Fahrenheit from 41 on and Celsius below, as a floor can be. */
export function toSi(n: number, unit: UnitName): number {
  if (unit === 'f' || (unit === 'degree' && n > 40)) return ((n - 32) * 5) / 9
  // Twelve figures are plenty: 24 in is 609.6 mm, not 609.5999999999999.
  return Math.round(n * UNITS[unit][1] * 1e9) / 1e9
}

export type Quantity = {
  readonly n: number
  readonly unit: UnitName | null
  readonly dimension: Dimension
  /** In SI; null without a unit. */
  readonly si: number | null
  /** Tokens it takes, both ends in. */
  readonly first: number
  readonly last: number
  readonly token: NumberToken
  /** Feet and inches written together. */
  readonly compound: boolean
  readonly negative: boolean
}

/** Words after which "in" is no inch: "12x24 in the kitchen". */
const PREPOSITION_BEFORE: readonly Concept[] = [
  'the',
  'room',
  'house-part',
  'metric-word',
  'each',
  'shower',
  'outside-air',
]

export class Reader {
  readonly lexicon: Lexicon
  readonly tokens: readonly Token[]
  private readonly conceptsAt: (Concept[] | undefined)[]

  constructor(lexicon: Lexicon, tokens: readonly Token[], marks: readonly Mark[]) {
    this.lexicon = lexicon
    this.tokens = tokens
    this.conceptsAt = new Array(tokens.length)
    for (const mark of marks)
      for (let k = 0; k < mark.count; k++) {
        const at = mark.first + k
        const here = this.conceptsAt[at]
        if (here) here.push(mark.concept)
        else this.conceptsAt[at] = [mark.concept]
      }
  }

  /** Whether the token stands in a word or phrase of one of these meanings. */
  is(i: number, ...concepts: readonly Concept[]): boolean {
    const here = this.conceptsAt[i]
    if (here !== undefined) for (const concept of concepts) if (here.includes(concept)) return true
    return false
  }

  sign(i: number): string {
    const token = this.tokens[i]
    return token?.kind === 'sign' ? token.text : ''
  }

  word(i: number): string {
    const token = this.tokens[i]
    return token?.kind === 'word' ? token.text : ''
  }

  number(i: number): NumberToken | null {
    const token = this.tokens[i]
    return token?.kind === 'number' ? token : null
  }

  /** The unit written at token i, as a sign or a word; a preposition "in" is none. */
  unit(i: number, before: NumberToken): { unit: UnitName; count: number } | null {
    switch (this.sign(i)) {
      case "'":
        return { unit: 'ft', count: 1 }
      case '"':
        return { unit: 'in', count: 1 }
      case '%':
        return { unit: 'percent', count: 1 }
      case '#':
        return { unit: 'lb', count: 1 }
      case '°':
        return this.degrees(i + 1)
    }
    // "3/8 de pulgada", "half of an inch"
    if (before.fraction && this.is(i, 'of')) {
      const skip = this.is(i + 1, 'the') ? 2 : 1
      const part = unitAt(this.lexicon, this.tokens, i + skip)
      return part && part.unit !== 'degree' ? { unit: part.unit, count: part.count + skip } : null
    }
    const dot = this.sign(i) === '.' ? 1 : 0
    const found = unitAt(this.lexicon, this.tokens, i + dot)
    if (!found) return null
    if (found.unit === 'degree')
      return {
        ...this.degrees(i + dot + found.count),
        count: dot + found.count + this.degrees(i + dot + found.count).count - 1,
      }
    if (this.word(i) === 'in' && this.isPreposition(i, before)) return null
    // "12x14 L less 4x6": a letter for the shape, no litres.
    if (found.unit === 'l' && this.is(i + 1, 'minus') && this.sign(i - 2) === 'x') return null
    return { unit: found.unit, count: dot + found.count }
  }

  private degrees(next: number): { unit: UnitName; count: number } {
    const named = unitAt(this.lexicon, this.tokens, next)
    return named && (named.unit === 'f' || named.unit === 'c')
      ? { unit: named.unit, count: 1 + named.count }
      : { unit: 'degree', count: 1 }
  }

  /** Whether the figure at i stands behind feet, or is the second of a pair whose first has a unit: "8ft 9 in", "12 ft x 168 in". */
  private followsUnit(i: number): boolean {
    const before = this.sign(i - 1) === 'x' || this.is(i - 1, 'by') ? i - 2 : i - 1
    if (before < i - 1 && this.number(before)) return false
    return this.isFoot(before)
  }

  private isPreposition(i: number, before: NumberToken): boolean {
    // "its 50 in here"
    if (this.is(i, 'outside-air')) return true
    if (this.is(i + 1, ...PREPOSITION_BEFORE) || (this.is(i, 'in-a') && this.is(i + 1, 'in-a'))) return true
    // "72 in celsius"
    const named = unitAt(this.lexicon, this.tokens, i + 1)
    if (named && dimensionOf(named.unit) === 'temperature') return true
    const next = this.number(i + 1)
    if (next === null || before.fraction || this.followsUnit(i - 1)) return false
    // "12x14 room in 12x24", "50 bags in 3 rooms": a pair or a count after "in".
    return next.from > this.tokens[i].to && this.sign(i + 2) === 'x'
  }

  /** The quantity at token i, or null. */
  quantity(i: number): Quantity | null {
    const token = this.number(i)
    if (!token) return null
    const unit = this.unit(i + 1, token)
    const negative = this.isNegative(i)
    const centimetres = unit?.unit === 'm' ? this.number(i + 1 + unit.count) : null
    // "4m20": metres with the centimetres stuck to them.
    if (centimetres && /^\d\d$/.test(centimetres.text) && centimetres.from === this.tokens[i + unit!.count].to) {
      const mm = token.value * 1000 + centimetres.value * 10
      return {
        n: mm / 1000,
        unit: 'm',
        dimension: 'length',
        si: mm,
        first: i,
        last: i + 1 + unit!.count,
        token,
        compound: true,
        negative,
      }
    }
    // "40 lf 1/2 in tile": a running foot takes no inches.
    if (unit?.unit === 'ft' && !this.is(i + 1, 'linear')) {
      const inches = this.inchesAfter(i + 1 + unit.count)
      if (inches) {
        const mm = token.value * 304.8 + inches.value * 25.4
        return {
          n: mm / 304.8,
          unit: 'ft',
          dimension: 'length',
          si: mm,
          first: i,
          last: inches.last,
          token,
          compound: true,
          negative,
        }
      }
    }
    const name = unit?.unit ?? null
    return {
      n: token.value,
      unit: name,
      dimension: name ? dimensionOf(name) : 'none',
      si: name ? toSi(negative && dimensionOf(name) === 'temperature' ? -token.value : token.value, name) : null,
      first: i,
      last: i + (unit?.count ?? 0),
      token,
      compound: false,
      negative,
    }
  }

  /** A minus that stands alone before its figure and after nothing that could be lessened: "-5 x 10". */
  private isNegative(i: number): boolean {
    if (this.sign(i - 1) !== '-' || this.tokens[i - 1].to !== this.tokens[i].from) return false
    const before = this.tokens[i - 2]
    return (
      before === undefined ||
      (before.to < this.tokens[i - 1].from && before.kind === 'word') ||
      before.text === 'x' ||
      before.text === ','
    )
  }

  /** "6\"" after feet: also "-6 1/2\"", "6in", and a bare "6" under twelve where nothing else claims it. */
  private inchesAfter(i: number): { value: number; last: number } | null {
    let at = i
    if (this.sign(at) === '-' || this.is(at, 'and')) at++
    const number = this.number(at)
    if (!number || number.value >= 12) return null
    const unit = this.unit(at + 1, number)
    // "12ft one way": a number word is inches only where it says so, or where a pair goes on: "twelve foot six by nine".
    if (number.spelled && unit?.unit !== 'in' && this.is(at, 'one-way', 'other-way')) return null
    if (unit?.unit === 'in') return { value: number.value, last: at + unit.count }
    const letter = unit !== null && unit.count === 1 && this.word(at + 1) in this.lexicon.locale.wayLetters
    if ((unit !== null && !letter) || at !== i + (this.sign(i) === '-' ? 1 : 0)) return null
    const next = this.tokens[at + 1]
    // "12' 6 x 10'" and "12'6": the bare figure belongs to the feet; "10' 8 a box" and "10' 3x4" do not.
    const stuck = this.tokens[at].from - this.tokens[i - 1].to <= (this.sign(i) === '-' ? 1 : 0)
    if (stuck) return { value: number.value, last: at }
    // "8 ft 4 3/8 plus 3 ft 9 7/8": a sum of lengths.
    const summed = next === undefined || this.is(at + 1, 'plus', 'minus') || /^[-+]$/.test(next.text)
    if (number.fraction && !number.spelled && number.value >= 1 && summed) return { value: number.value, last: at }
    const pairFollows = next?.text === 'x' || this.is(at + 1, 'one-way') || this.is(at + 1, 'by')
    const pairBefore = this.tokens[i - 3]?.text === 'x' || this.is(i - 3, 'by')
    // "... by nine foot four tile": the first of the pair had its inches too.
    const afterInches = number.spelled && this.number(i - 4) !== null && this.isFoot(i - 5)
    const closes =
      afterInches || next === undefined || next.kind === 'sign' || this.is(at + 1, 'room', 'house-part', 'floor')
    return (pairFollows && !this.startsOtherPair(at)) || (pairBefore && closes)
      ? { value: number.value, last: at }
      : null
  }

  private isFoot(i: number): boolean {
    return this.sign(i) === "'" || (this.word(i) !== '' && unitAt(this.lexicon, this.tokens, i)?.unit === 'ft')
  }

  /** "10' 3x4": a figure after the feet that is itself the first of a pair written tight. */
  private startsOtherPair(at: number): boolean {
    const [here, sign, after] = [this.tokens[at], this.tokens[at + 1], this.tokens[at + 2]]
    return sign?.text === 'x' && sign.from === here.to && after?.from === sign.to && this.sign(at + 3) !== "'"
  }
}

/** All quantities of a message, in order, none overlapping. */
export function quantitiesOf(reader: Reader): Quantity[] {
  const found: Quantity[] = []
  let i = 0
  while (i < reader.tokens.length) {
    // "12ft one way": the one counts nothing.
    const quantity = reader.is(i, 'one-way', 'other-way') ? null : reader.quantity(i)
    if (quantity) found.push(quantity)
    i = quantity ? quantity.last + 1 : i + 1
  }
  return found
}
