/** Numbers between units, by mathjs: it gets a number and two unit names of this table, never a crew's text. */

import type { MathLibrary } from './libraries.ts'
import type { UnitName } from './names.ts'

const NAMES: Partial<Record<UnitName, string>> = {
  in: 'inch',
  ft: 'foot',
  yd: 'yard',
  mm: 'mm',
  mil: 'mil',
  cm: 'cm',
  m: 'm',
  sqin: 'sqin',
  sqft: 'sqft',
  sqyd: 'sqyd',
  sqmm: 'mm2',
  sqcm: 'cm2',
  sqm: 'm2',
  cuin: 'cuin',
  cuft: 'cuft',
  cuyd: 'cuyd',
  cum: 'm3',
  l: 'liter',
  ml: 'milliliter',
  gal: 'gallon',
  qt: 'quart',
  pt: 'pint',
  cup: 'cup',
  floz: 'fluidounce',
  lb: 'lbm',
  oz: 'oz',
  kg: 'kg',
  g: 'g',
  ton: 'ton',
  f: 'degF',
  c: 'degC',
  second: 'second',
  minute: 'minute',
  hour: 'hour',
  day: 'day',
  week: 'week',
  psf: 'lbf/sqft',
  kpa: 'kPa',
}

/** A number of one unit in another of the same dimension; null where either has no counterpart. */
export function convert(n: number, from: UnitName, to: UnitName, math: MathLibrary): number | null {
  const [a, b] = [NAMES[from], NAMES[to]]
  if (a === undefined || b === undefined) return null
  return math.unit(n, a).toNumber(b)
}

/** Adds lengths exactly, as fractions of an inch. [in]
 *  @example 12'6 + 3'4 1/2: 190.5 in */
export function sumInches(
  parts: readonly { readonly sign: 1 | -1; readonly inches: string | number }[],
  math: MathLibrary,
): number {
  return parts
    .reduce(
      (sum, part) => (part.sign === 1 ? sum.add(math.fraction(part.inches)) : sum.sub(math.fraction(part.inches))),
      math.fraction(0),
    )
    .valueOf()
}
