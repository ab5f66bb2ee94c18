/** Which underlayment is meant, and in what sheets or rolls it comes. */
import type { SheetGoods } from '../../facts.ts'
import { goodsKind } from '../../language/goods.ts'
import { area, named, number, type Phrase, say } from '../../phrase.ts'
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

/** The underlayment of the facts, what is not said filled with what is usual; null where config has no such thing. */
export function goodsOf(brief: Brief): Goods | null {
  const all = brief.settings.around.underlayments
  const said: SheetGoods = brief.facts.goods ?? {}
  const kind = goodsKind(brief.heard.has) ?? said.kind ?? goodsKind(brief.has)
  const isPlywood = goodsKind(brief.heard.has) === undefined && brief.has('plywood', 'osb') && said.form !== 'roll'
  if (isPlywood) return plywood(brief, said)
  const id = kind ?? (said.form === 'roll' ? 'uncoupling-membrane' : 'cement-board')
  const underlayment = Object.hasOwn(all, id) ? all[id] : undefined
  if (!underlayment) return null
  const form = said.form ?? underlayment.usual
  const assumed: Phrase[] = kind ? [] : [say('underlayment.assumed-kind', { kind: goodsName(id, underlayment) })]
  const known = { id, underlayment, form }
  if (said.lengthMm !== undefined && said.widthMm !== undefined) {
    const size = { lengthMm: said.lengthMm, widthMm: said.widthMm }
    return { ...known, size, name: sizeName(size, brief.metric), assumed }
  }
  if (said.m2 !== undefined)
    return { ...known, size: { m2: said.m2 }, name: say('underlayment.of-area', { area: area(said.m2) }), assumed }
  const stock = usualStock(underlayment, form, brief.metric)
  if (!stock) return null
  const size = named(stock.name)
  return {
    ...known,
    size: stock,
    name: say('underlayment.named-size', { size }),
    assumed: [...assumed, say('underlayment.assumed-size', { size })],
  }
}

/** A panel of plywood or OSB, 4 x 8 ft (1220 x 2440 mm) where no size was told; laid as boards are, staggered, with a gap. */
function plywood(brief: Brief, said: SheetGoods): Goods | null {
  const board = brief.settings.around.underlayments['cement-board']
  if (!board) return null
  const size = { lengthMm: said.lengthMm ?? PANEL_MM[0], widthMm: said.widthMm ?? PANEL_MM[1] }
  const name = sizeName(size, brief.metric)
  const assumed = said.lengthMm === undefined ? [say('underlayment.assumed-size', { size: name })] : []
  return {
    id: 'plywood',
    underlayment: { ...board, name: 'plywood', taped: false },
    form: 'sheet',
    size,
    name,
    assumed,
  }
}
const PANEL_MM = [2438.4, 1219.2] as const

/** The first size listed in the crew's units. */
function usualStock(u: Underlayment, form: 'sheet' | 'roll', metric: boolean): StockSize | undefined {
  const [wanted, other] = form === 'sheet' ? [u.sheets, u.rolls] : [u.rolls, u.sheets]
  const listed = wanted.length ? wanted : other
  return listed.find((s) => s.name.endsWith('m') === metric) ?? listed[0]
}

export function sizeName({ lengthMm, widthMm }: { lengthMm: number; widthMm: number }, metric: boolean): Phrase {
  const feet = [widthMm / 304.8, lengthMm / 304.8] as const
  const quarters = feet.every((n) => Math.abs(n * 4 - Math.round(n * 4)) < 0.02)
  return quarters && !metric
    ? say('underlayment.size-ft', { width: number(feet[0], 2), length: number(feet[1], 2) })
    : say('underlayment.size-m', { width: number(widthMm / 1000, 3), length: number(lengthMm / 1000, 3) })
}

/** Whether a size is one that this underlayment is sold in, within 2 %. */
export const isStockSize = (u: Underlayment, lengthMm: number, widthMm: number): boolean =>
  [...u.sheets, ...u.rolls].some(
    (s) => Math.abs(s.lengthMm / lengthMm - 1) < 0.02 && Math.abs(s.widthMm / widthMm - 1) < 0.02,
  )

export const pieceM2 = (goods: Goods): number =>
  'm2' in goods.size ? goods.size.m2 : (goods.size.lengthMm * goods.size.widthMm) / 1e6

/** Kinds that every catalogue has a word for; a crew's own kind keeps the name config gives it. */
const NAMED_KINDS: readonly string[] = [
  'cork',
  'foam',
  'cement-board',
  'fibre-cement',
  'uncoupling-membrane',
  'crack-membrane',
  'sheet-membrane',
  'plywood',
]

export const goodsName = (id: string, underlayment: Underlayment): Phrase | ReturnType<typeof named> =>
  NAMED_KINDS.includes(id) ? say(`goods.${id}`) : named(underlayment.name)
