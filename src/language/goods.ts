/** Sheets and rolls of underlayment: the kind by its word, the size by its sides or by its area. */
import type { SheetGoods } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity } from './measures.ts'
import type { Loose } from './singles.ts'
import type { Size } from './sizes.ts'

/** The ids of config/around.json, by the word that names them; the narrower word first. */
const KINDS: readonly [Concept, string][] = [
  ['cork', 'cork'],
  ['foam', 'foam'],
  ['fibre-cement', 'fibre-cement'],
  ['crack-membrane', 'crack-membrane'],
  ['membrane', 'uncoupling-membrane'],
  ['cement-board', 'cement-board'],
]

/** A strip this many times longer than wide comes on a roll. */
const ROLL_SHAPE = 3

/** Sides of a sheet or roll [mm], the longer first. A bare pair is feet to 12, inches to 120, else millimetres;
 *  a metric crew's small figures are metres. */
function sidesMm([a, b]: readonly Quantity[], metric: boolean): readonly [number, number] {
  const [one, other] = [a as Quantity, b as Quantity]
  const larger = Math.max(one.n, other.n)
  const smaller = Math.min(one.n, other.n)
  const side = (q: Quantity): number => {
    if (q.si !== null && q.dimension === 'length') return q.si
    if (metric && larger <= 60) return q.n * 1000
    if (larger > 300) return q.n
    return larger > 12 && larger <= 120 && smaller > 8 ? q.n * 25.4 : q.n * 304.8
  }
  const sides = [side(one), side(other)] as const
  return [Math.max(...sides), Math.min(...sides)]
}

/** What a message says of underlayment; null where it only names a kind and nothing it comes in. */
export function readGoods(
  sizes: readonly Size[],
  loose: readonly Loose[],
  marks: readonly Mark[],
  metric: boolean,
): SheetGoods | null {
  const has = (...concepts: readonly Concept[]) => marks.some((m) => concepts.includes(m.concept))
  const kind = KINDS.find(([concept]) => has(concept))?.[1]
  const size = sizes.find((s) => s.role === 'sheet')
  const area = loose.find(
    ({ q, nouns }) =>
      q.dimension === 'area' && nouns.some((n) => n.mark.concept === 'roll' || n.mark.concept === 'sheet'),
  )
  if (!size && !area && !(kind && has('sheet', 'roll'))) return null
  const sides = size ? sidesMm(size.item.parts, metric) : null
  const shaped = sides && sides[0] >= ROLL_SHAPE * sides[1] ? 'roll' : undefined
  const form = has('roll') ? 'roll' : has('sheet') ? 'sheet' : (shaped ?? (sides ? 'sheet' : undefined))
  return {
    ...(kind ? { kind } : {}),
    ...(form ? { form } : {}),
    ...(sides ? { lengthMm: sides[0], widthMm: sides[1] } : {}),
    ...(!sides && area ? { m2: area.q.si as number } : {}),
  }
}

/** The kind that a message names, whatever else it says of it. */
export const goodsKind = (has: (...concepts: readonly Concept[]) => boolean): string | undefined =>
  KINDS.find(([concept]) => has(concept))?.[1]
