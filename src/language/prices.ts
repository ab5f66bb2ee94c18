/** Prices that a crew gives: "$28 a bag of mortar", "tile at $3.50 a foot". */
import type { Price } from '../facts.ts'
import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import { type Mark, unitAt } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'

/** What a price is for, by the word beside it. */
export const PRICED: readonly (readonly [Concept, Price['what']])[] = [
  ['mortar', 'mortar'],
  ['grout', 'grout'],
  ['clip', 'clips'],
  ['wedge', 'wedges'],
  ['tape', 'tape'],
  ['adhesive', 'adhesive'],
  ['sheet', 'underlayment'],
  ['roll', 'underlayment'],
  ['cork', 'underlayment'],
  ['box', 'tile'],
  ['tile', 'tile'],
  ['bag', 'mortar'],
]

/** One of these units as m²: "a foot" of tile is a square one. */
const M2_OF: Partial<Record<UnitName, number>> = {
  sqft: 0.09290304,
  ft: 0.09290304,
  sqm: 1,
  m: 1,
  sqyd: 0.83612736,
}

/** Figures that are money: after a dollar sign, or before "dollars". */
export function moneyIn(quantities: readonly Quantity[], reader: Reader, marks: readonly Mark[]): Quantity[] {
  const named = (q: Quantity) => marks.some((m) => m.concept === 'price' && m.first === q.last + 1 && m.count === 1)
  // "at 2.79 a foot": two figures after the point, and what it is for.
  const told = (q: Quantity) =>
    q.token.decimals === 2 && reader.is(q.first - 1, 'at', 'is') && areaUnit(q, reader) !== null
  const sure = quantities.filter(
    (q) => reader.sign(q.first - 1) === '$' || (q.dimension === 'none' && (named(q) || told(q))),
  )
  // "tile at 3.89/sf, thinset 22 a bag": beside one price the other figure by the bag is one too.
  const byBag = (q: Quantity) =>
    q.dimension === 'none' && reader.is(q.last + 1, 'per', 'each', 'the') && reader.is(q.last + 2, 'bag', 'kit')
  const more = sure.length === 0 ? [] : quantities.filter((q) => !sure.includes(q) && byBag(q))
  return [...sure, ...more]
}

export const readPrices = (quantities: readonly Quantity[], reader: Reader, marks: readonly Mark[]): Price[] =>
  moneyIn(quantities, reader, marks).map((q) => {
    const m2 = areaUnit(q, reader)
    if (m2 !== null) return { what: 'tile', each: q.n / m2, perM2: true }
    // "grout is $30 a bag": the bag says how it is sold, the stuff what it is.
    const near = PRICED.flatMap(([concept, what]) => {
      const gap = gapTo(q, concept, reader, marks)
      return gap === null ? [] : [{ what, gap: concept === 'bag' ? gap + REACH : gap }]
    })
    const best = near.toSorted((a, b) => a.gap - b.gap)[0]
    return { what: best?.what ?? 'tile', each: q.n, perM2: false }
  })

/** "$4.50 a foot", "$3.29/sf": m² in one unit of it; null where the price is by the piece. */
function areaUnit(q: Quantity, reader: Reader): number | null {
  if (q.dimension === 'area') return (q.si as number) / q.n
  for (let i = q.last + 1, isPer = false; i <= q.last + 4; i++) {
    const unit = isPer ? unitAt(reader.lexicon, reader.tokens, i)?.unit : undefined
    if (unit) return M2_OF[unit] ?? null
    if (reader.is(i, 'per', 'each', 'the') || reader.sign(i) === '/') isPer = true
    else if (!reader.is(i, 'price')) return null
  }
  return null
}

const REACH = 5
/** A comma or another figure in between parts a price from a word. */
const PARTED = 4

function gapTo(q: Quantity, concept: Concept, reader: Reader, marks: readonly Mark[]): number | null {
  let best: number | null = null
  for (const mark of marks) {
    if (mark.concept !== concept) continue
    const last = mark.first + mark.count - 1
    const [from, to] = last < q.first ? [last + 1, q.first] : [q.last + 1, mark.first]
    let gap = Math.max(0, to - from)
    for (let i = from; i < to; i++) if (reader.sign(i) === ',' || reader.number(i)) gap += PARTED
    if (gap <= REACH && (best === null || gap < best)) best = gap
  }
  return best
}

/** Newer prices over older ones of the same thing. */
export const newerPrices = (old: readonly Price[], fresh: readonly Price[]): readonly Price[] => [
  ...fresh,
  ...old.filter((price) => !fresh.some((one) => one.what === price.what)),
]
