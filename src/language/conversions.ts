/** Questions of units: "22 m2 to sq ft", "how many liters is 6 quarts", "12'6 + 3'4 1/2". */

import type { UnitName } from '../units/names.ts'
import type { Heard } from './heard.ts'
import { unitAt } from './lexicon.ts'
import { dimensionOf, type Quantity } from './measures.ts'

export type Conversion =
  | { readonly is: 'convert'; readonly from: Quantity | null; readonly to: UnitName }
  | {
      readonly is: 'sum'
      readonly terms: readonly { readonly q: Quantity; readonly sign: 1 | -1 }[]
      readonly divideBy: number
      readonly to: UnitName | null
    }

/** A unit asked for: one that stands by itself, behind "to", "in" or "how many". */
function targetUnit(heard: Heard): { unit: UnitName; at: number } | null {
  const { reader, tokens } = heard
  const taken = new Set<number>()
  for (const q of heard.quantities) for (let i = q.first; i <= q.last; i++) taken.add(i)
  for (let i = 0; i < tokens.length; i++) {
    if (taken.has(i) || tokens[i].kind !== 'word') continue
    const found = unitAt(reader.lexicon, tokens, i)
    if (!found || taken.has(i + found.count - 1)) continue
    // "in" is the preposition unless it is what is asked for.
    if (tokens[i].text === 'in' && !reader.is(i - 1, 'convert-to', 'how-many')) continue
    if (tokens[i].text === 'in' && unitAt(reader.lexicon, tokens, i + 1)) continue
    if (
      reader.is(i - 1, 'convert-to', 'how-many', 'area-word', 'what', 'the') ||
      reader.is(i - 2, 'convert-to') ||
      i === 0
    )
      return { unit: found.unit, at: i }
  }
  return null
}

/** The conversion a message asks for, or null. `talkHasArea`: "what's that in m2" means the last answer's area. */
export function conversionIn(heard: Heard, talkHasArea: boolean): Conversion | null {
  const single = heard.items.filter((i) => i.parts.length === 1).map((i) => i.parts[0])
  if (heard.items.some((i) => i.parts.length > 1)) return null
  const target = targetUnit(heard)
  const sum = sumOf(heard, single, target?.unit ?? null)
  if (sum) return sum
  if (!target) return null
  const dimension = dimensionOf(target.unit)
  if (single.length === 0)
    return talkHasArea && dimension === 'area' ? { is: 'convert', from: null, to: target.unit } : null
  if (single.length > 2) return null
  const from =
    single.find((q) => q.dimension === dimension) ??
    (dimension === 'temperature'
      ? single.find((q) => q.unit === 'degree' || q.dimension === 'none')
      : bareLength(single, dimension))
  if (!from || from.unit === target.unit) return null
  return {
    is: 'convert',
    from: from.dimension === 'none' || from.unit === 'degree' ? withUnit(from, target.unit) : from,
    to: target.unit,
  }
}

/** "3/8 to mm": a bare fraction is inches. */
const bareLength = (single: readonly Quantity[], dimension: string): Quantity | undefined =>
  dimension === 'length' ? single.find((q) => q.dimension === 'none' && (q.token.fraction || q.n < 1)) : undefined

/** A bare figure is in the other scale: "72 in celsius" is Fahrenheit; a bare length is inches. */
function withUnit(q: Quantity, target: UnitName): Quantity {
  if (target === 'c') return { ...q, unit: 'f', dimension: 'temperature' }
  if (target === 'f') return { ...q, unit: 'c', dimension: 'temperature' }
  return { ...q, unit: 'in', dimension: 'length', si: q.n * 25.4 }
}

/** A message that is nothing but lengths with plus and minus between, or a length divided. */
function sumOf(heard: Heard, single: readonly Quantity[], target: UnitName | null): Conversion | null {
  const lengths = single.filter((q) => q.dimension === 'length' || (q.token.fraction && !q.token.spelled))
  if (lengths.length === 0 || heard.has('tile', 'grout', 'mortar', 'joint', 'room', 'thick', 'house-part')) return null
  const { reader } = heard
  const terms: { q: Quantity; sign: 1 | -1 }[] = []
  for (const q of lengths) {
    const before = reader.sign(q.first - 1)
    const minus = before === '-' || reader.is(q.first - 1, 'minus')
    const plus = before === '+' || reader.is(q.first - 1, 'plus', 'and')
    if (terms.length > 0 && !minus && !plus) return null
    terms.push({ q, sign: terms.length > 0 && minus ? -1 : 1 })
  }
  const divideBy = divisor(heard, lengths[lengths.length - 1])
  if (
    terms.length + (divideBy > 1 ? 1 : 0) < 2 ||
    terms.length + (divideBy > 1 && !halved(heard) ? 1 : 0) !== single.length
  )
    return null
  return { is: 'sum', terms, divideBy, to: target && dimensionOf(target) === 'length' ? target : null }
}

const halved = (heard: Heard): boolean => heard.has('half-word')

function divisor(heard: Heard, last: Quantity): number {
  if (halved(heard) && heard.items.length <= 2) return 2
  if (heard.reader.sign(last.last + 1) === '/') {
    const by = heard.reader.number(last.last + 2)
    if (by && by.value > 0) return by.value
  }
  return 1
}
