/** Figures that belong to the things around the tile: found by the words they stand beside. */
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'
import { unitAt } from '../../language/lexicon.ts'
import type { Dimension, Quantity } from '../../language/measures.ts'
import type { UnitName } from '../../units/names.ts'

/** Farther from its word than this a figure belongs to something else. */
const REACH = 5
/** A comma or another figure between a word and a figure parts them. */
const PARTED = 3

/** How far a figure stands from the nearest word of a meaning, in tokens; null beyond reach. */
function distanceTo(heard: Heard, q: Quantity, concepts: readonly Concept[]): number | null {
  let best: number | null = null
  for (const mark of heard.marks) {
    if (!concepts.includes(mark.concept)) continue
    const last = mark.first + mark.count - 1
    const [from, to] = last < q.first ? [last + 1, q.first] : [q.last + 1, mark.first]
    let distance = Math.max(0, to - from) + (last < q.first ? 0.4 : 0)
    for (let i = from; i < to; i++)
      if (/^[,;\n.]$/.test(heard.reader.sign(i)) || heard.reader.number(i)) distance += PARTED
    if (distance <= REACH && (best === null || distance < best)) best = distance
  }
  return best
}

/** The figure of one of these dimensions nearest to a word of these meanings. */
export function figureNear(
  heard: Heard,
  dimensions: readonly Dimension[],
  ...concepts: readonly Concept[]
): Quantity | null {
  let best: { q: Quantity; distance: number } | null = null
  for (const q of alone(heard)) {
    if (!dimensions.includes(q.dimension)) continue
    const distance = distanceTo(heard, q, concepts)
    if (distance !== null && (!best || distance < best.distance)) best = { q, distance }
  }
  return best?.q ?? null
}

/** A length in mm near a word: a bare figure is inches, or millimetres to a metric crew. */
export function lengthNear(heard: Heard, metric: boolean, ...concepts: readonly Concept[]): number | null {
  const q = figureNear(heard, ['length', 'none'], ...concepts)
  return q ? lengthMm(q, metric) : null
}

export const lengthMm = (q: Quantity, metric: boolean): number =>
  q.si !== null && q.dimension === 'length' ? q.si : metric && !q.token.fraction && q.n >= 3 ? q.n : q.n * 25.4

/** The figures that are no part of a size. */
export function alone(heard: Heard): Quantity[] {
  const inSizes = new Set(heard.sizes.flatMap((size) => size.item.parts.map((part) => part.first)))
  return heard.quantities.filter((q) => !inSizes.has(q.first))
}

/** The unit a figure is told for: "120 sf a day", "1/4 in per ft", "20 mm/m". */
export function toldPer(heard: Heard, q: Quantity): UnitName | null {
  const { reader } = heard
  let isPer = false
  for (let i = q.last + 1; i <= q.last + 3; i++) {
    const unit = isPer ? unitAt(reader.lexicon, reader.tokens, i)?.unit : undefined
    if (unit) return unit
    if (!reader.is(i, 'per', 'each', 'the') && reader.sign(i) !== '/') return null
    isPer = true
  }
  return null
}
