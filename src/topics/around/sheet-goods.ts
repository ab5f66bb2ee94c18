/** Which underlayment is meant, and in what sheets or rolls it comes. */
import type { Concept } from '../../language/concepts.ts'
import type { Quantity } from '../../language/measures.ts'
import { number, type Phrase, quote, say } from '../../phrase.ts'
import type { StockSize, Underlayment } from '../../settings-around.ts'
import type { Brief } from '../topic.ts'

export type Goods = {
  readonly id: string
  readonly underlayment: Underlayment
  readonly form: 'sheet' | 'roll'
  /** The sheet or roll by its sides, or by its area alone. */
  readonly size: { readonly lengthMm: number; readonly widthMm: number } | { readonly m2: number }
  readonly name: Phrase
  readonly assumed: readonly Phrase[]
}

const KINDS: readonly [Concept, string][] = [
  ['cork', 'cork'],
  ['foam', 'foam'],
  ['fibre-cement', 'fibre-cement'],
  ['cement-board', 'cement-board'],
  ['crack-membrane', 'crack-membrane'],
  ['membrane', 'uncoupling-membrane'],
]

/** Sides of a bare pair: feet to 12, inches to 120, else millimetres; a metric crew's small figures are metres. */
function sidesMm(parts: readonly Quantity[], metric: boolean): [number, number] {
  const [a, b] = parts as [Quantity, Quantity]
  const larger = Math.max(a.n, b.n)
  const one = (q: Quantity): number => {
    if (q.si !== null && q.dimension === 'length') return q.si
    if (metric && larger <= 60) return q.n * 1000
    if (larger <= 12) return q.n * 304.8
    if (larger <= 120 && Math.min(a.n, b.n) >= 6) return q.n * 25.4
    return larger > 300 ? q.n : q.n * 304.8
  }
  const sides = [one(a), one(b)]
  return [Math.max(...sides), Math.min(...sides)]
}

/** A strip this many times longer than wide comes on a roll. */
const ROLL_SHAPE = 3

export function goodsOf(brief: Brief): Goods | null {
  const { heard, settings } = brief
  const all = settings.around.underlayments
  const saidSize = heard.sizes.find((size) => size.role === 'sheet')
  const sides = saidSize ? sidesMm(saidSize.item.parts, brief.metric) : null
  const loose = heard.loose.find(
    ({ q, nouns }) =>
      q.dimension === 'area' && nouns.some((n) => n.mark.concept === 'roll' || n.mark.concept === 'sheet'),
  )
  const shapedRoll = sides !== null && sides[0] >= ROLL_SHAPE * sides[1]
  const saidForm = heard.has('roll')
    ? 'roll'
    : heard.has('sheet')
      ? 'sheet'
      : shapedRoll
        ? 'roll'
        : sides
          ? 'sheet'
          : null
  const named = KINDS.find(([concept]) => brief.has(concept))?.[1]
  const id = named ?? (saidForm === 'roll' ? 'uncoupling-membrane' : 'cement-board')
  const underlayment = Object.hasOwn(all, id) ? all[id] : undefined
  if (!underlayment) return null
  const form =
    saidForm ??
    (underlayment.sheets.length && underlayment.rolls.length
      ? underlayment.usual
      : underlayment.sheets.length
        ? 'sheet'
        : 'roll')
  const assumed: Phrase[] = named ? [] : [say('underlayment.assumed-kind', { kind: quote(underlayment.name) })]
  if (sides)
    return {
      id,
      underlayment,
      form,
      size: { lengthMm: sides[0], widthMm: sides[1] },
      name: sizeName(sides, brief.metric),
      assumed,
    }
  if (loose)
    return {
      id,
      underlayment,
      form,
      size: { m2: loose.q.si as number },
      name: say('underlayment.of-area', { area: { is: 'area', m2: loose.q.si as number } }),
      assumed,
    }
  const stock = usualStock(underlayment, form, brief.metric)
  if (!stock) return null
  return {
    id,
    underlayment,
    form,
    size: stock,
    name: say('underlayment.named-size', { size: quote(stock.name) }),
    assumed: [...assumed, say('underlayment.assumed-size', { size: quote(stock.name) })],
  }
}

function usualStock(u: Underlayment, form: 'sheet' | 'roll', metric: boolean): StockSize | undefined {
  const listed = form === 'sheet' ? (u.sheets.length ? u.sheets : u.rolls) : u.rolls.length ? u.rolls : u.sheets
  const inMetric = (s: StockSize) => /m$/.test(s.name)
  return listed.find((s) => inMetric(s) === metric) ?? listed[0]
}

function sizeName([lengthMm, widthMm]: readonly [number, number], metric: boolean): Phrase {
  const [a, b] = [widthMm, lengthMm].map((mm) => mm / 304.8)
  const quarters = [a!, b!].every((n) => Math.abs(n * 4 - Math.round(n * 4)) < 0.02)
  return quarters && !metric
    ? say('underlayment.size-ft', { width: number(a!, 2), length: number(b!, 2) })
    : say('underlayment.size-m', { width: number(widthMm / 1000, 3), length: number(lengthMm / 1000, 3) })
}

export const pieceM2 = (goods: Goods): number =>
  'm2' in goods.size ? goods.size.m2 : (goods.size.lengthMm * goods.size.widthMm) / 1e6
