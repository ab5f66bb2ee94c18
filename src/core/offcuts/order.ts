/** What is to be cut from which tile, and the answer's shape. Sizes as measured; the search works on whole units. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

/** A side of a piece or of a stock tile, as the tile lies: x to the right, y up. */
export type Side = 'left' | 'right' | 'bottom' | 'top'

/** How a piece may be turned against the tile it is cut from: not at all (directional face), by a half turn, or by any
 *  quarter turn. Without factory sides a half turn changes nothing. */
export type Turn = 'none' | 'half' | 'quarter'

/** A piece wanted. `factory` names the sides that must be the tile's own moulded edge: those that face a neighbour. */
export type PieceWanted = {
  readonly wMm: number
  readonly hMm: number
  readonly qty: number
  readonly factory?: readonly Side[]
}

export type CutOrder = {
  readonly stockWMm: number
  readonly stockHMm: number
  /** Width of the saw's cut [mm]; 0 for a snapped cut. */
  readonly kerfMm: number
  readonly pieces: readonly PieceWanted[]
  readonly turn: Turn
  /** The most pieces taken from one tile; null for no limit. */
  readonly maxATile: number | null
}

/** A piece's place in the stock tile, from the tile's lower left corner; `piece` is its index in the order. */
export type Placed = {
  readonly xMm: number
  readonly yMm: number
  readonly wMm: number
  readonly hMm: number
  readonly piece: number
}

/** One way to cut a tile, and how many tiles are cut so. */
export type TileCut = { readonly times: number; readonly cut: readonly Placed[] }

export type CutPlan = {
  readonly stockTiles: number
  /** No plan can do with fewer tiles than this. */
  readonly bound: number
  /** The plan meets the bound. */
  readonly proven: boolean
  readonly plan: readonly TileCut[]
}

export const STOCK_SIDE: Range = { field: 'stock_mm', unit: 'mm', min: 1, max: 20_000 }
export const KERF: Range = { field: 'kerf_mm', unit: 'mm', min: 0, max: 50 }
export const PIECE_COUNT: Range = { field: 'pieces', unit: '', min: 1, max: 10_000 }
export const MAX_A_TILE: Range = { field: 'max_a_tile', unit: '', min: 1, max: 20_000 }
const LEAST_PIECE_MM = 0.01

const whole = (range: Range, value: number): Outcome<number> =>
  Number.isInteger(value)
    ? within(range, value)
    : refuse('out-of-range', { field: range.field, value, min: range.min, max: range.max, unit: range.unit })

/** The first thing wrong with an order, or the order itself.
 *  @problem out-of-range a side, kerf, quantity or limit outside its range, or a piece larger than the tile
 *  @problem missing no pieces at all
 *  @problem too-much-work more pieces than a plan is made for */
export function checkOrder(order: CutOrder): Outcome<CutOrder> {
  for (const check of [
    within(STOCK_SIDE, order.stockWMm),
    within(STOCK_SIDE, order.stockHMm),
    within(KERF, order.kerfMm),
    order.maxATile === null ? fine(0) : whole(MAX_A_TILE, order.maxATile),
  ])
    if (!check.ok) return check
  if (order.pieces.length === 0) return refuse('missing', { field: 'pieces' })
  if (order.pieces.length > PIECE_COUNT.max) return refuse('too-much-work', { what: 'pieces' })
  let pieces = 0
  for (const piece of order.pieces) {
    const qty = whole({ field: 'qty', unit: '', min: 0, max: Number.MAX_SAFE_INTEGER }, piece.qty)
    if (!qty.ok) return qty
    pieces += piece.qty
    const bad = outgrown(order, piece)
    if (bad) return bad
  }
  if (pieces === 0) return refuse('missing', { field: 'pieces' })
  return pieces > PIECE_COUNT.max ? refuse('too-much-work', { what: 'pieces' }) : fine(order)
}

function outgrown(order: CutOrder, { wMm, hMm }: PieceWanted) {
  const [long, short] = [Math.max(order.stockWMm, order.stockHMm), Math.min(order.stockWMm, order.stockHMm)]
  const turned = order.turn === 'quarter'
  const maxW = turned ? long : order.stockWMm
  const maxH = turned ? (wMm > short ? short : long) : order.stockHMm
  const w = within({ field: 'w', unit: 'mm', min: LEAST_PIECE_MM, max: maxW }, wMm)
  if (!w.ok) return w
  const h = within({ field: 'h', unit: 'mm', min: LEAST_PIECE_MM, max: maxH }, hMm)
  return h.ok ? null : h
}
