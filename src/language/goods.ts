/** Sheets and rolls of underlayment: the kind by its word, the size by its sides or by its area. */
import type { SheetGoods } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Draft } from './figure.ts'
import { type Mark, unitAt } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'
import type { Loose } from './singles.ts'
import type { Size } from './sizes.ts'

/** The ids of config/around.json, by the word that names them; the narrower word first. */
const KINDS: readonly [Concept, string][] = [
  ['cork', 'cork'],
  ['foam', 'foam'],
  ['fibre-cement', 'fibre-cement'],
  ['crack-membrane', 'crack-membrane'],
  ['waterproofing', 'sheet-membrane'],
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

type Said = {
  readonly sizes: readonly Size[]
  readonly loose: readonly Loose[]
  readonly marks: readonly Mark[]
  readonly reader: Reader
  readonly metric: boolean
}

const isOfPiece = ({ q, nouns }: Loose): boolean =>
  q.dimension === 'area' && nouns.some((n) => n.mark.concept === 'roll' || n.mark.concept === 'sheet')

/** What a message says of underlayment; null where it only names a kind and nothing it comes in.
 *  An area beside "rolls" is a roll's own; where the roll has sides, or no other area is told, it is the floor's. */
export function readGoods({ sizes, loose, marks, reader, metric }: Said, draft: Draft): SheetGoods | null {
  const has = (...concepts: readonly Concept[]) => marks.some((m) => concepts.includes(m.concept))
  const kind = KINDS.find(([concept]) => has(concept))?.[1]
  const size = sizes.find((s) => s.role === 'sheet')
  const beside = loose.find(isOfPiece)
  const floorKnown = draft.areaM2 !== undefined || sizes.some((s) => s.role === 'room')
  const isFloor = beside !== undefined && !floorKnown && (size !== undefined || !directlyBefore(beside, reader))
  if (isFloor) draft.areaM2 = beside.q.si as number
  const m2 = isFloor ? null : (beside?.q.si ?? bareRollM2(reader, draft))
  if (!size && !m2 && !(kind && has('sheet', 'roll'))) return null
  const sides = size ? sidesMm(size.item.parts, metric) : null
  const shaped = sides && sides[0] >= ROLL_SHAPE * sides[1] ? 'roll' : undefined
  const form = has('roll') ? 'roll' : has('sheet') ? 'sheet' : (shaped ?? (sides ? 'sheet' : undefined))
  return {
    ...(kind ? { kind } : {}),
    ...(form ? { form } : {}),
    ...(sides ? { lengthMm: sides[0], widthMm: sides[1] } : {}),
    ...(!sides && m2 ? { m2 } : {}),
  }
}

/** "54 sf rolls": the figure stands right before the word, or a "per" ties them. */
function directlyBefore({ q }: Loose, reader: Reader): boolean {
  for (let i = q.last + 1; i <= q.last + 3; i++) {
    if (reader.is(i, 'roll', 'sheet')) return true
    if (!reader.is(i, 'per', 'each', 'the') && reader.sign(i) !== '/') return false
  }
  return false
}

/** "rolls are 323": a bare figure of rolls is in the unit of the floor's area. [m²] */
function bareRollM2(reader: Reader, draft: Draft): number | null {
  if (draft.areaM2 === undefined) return null
  for (let i = 2; i < reader.tokens.length; i++) {
    const number = reader.number(i)
    const said = reader.is(i - 1, 'is', 'holds', 'cover') && reader.is(i - 2, 'roll', 'sheet')
    if (!number || !said || number.value < 10 || reader.unit(i + 1, number)) continue
    return reader.tokens.some((_, k) => unitAt(reader.lexicon, reader.tokens, k)?.unit === 'sqm')
      ? number.value
      : number.value * 0.09290304
  }
  return null
}

/** The kind that a message names, whatever else it says of it. */
export const goodsKind = (has: (...concepts: readonly Concept[]) => boolean): string | undefined =>
  KINDS.find(([concept]) => has(concept))?.[1]
