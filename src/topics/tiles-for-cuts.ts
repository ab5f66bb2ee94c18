/** The tiles that cut pieces are made from: off-cuts used again, halves of slanting cuts paired. */
import { boxOf, type Floor } from '../core/floor/rings.ts'
import { type CutPiece, cutPieces } from '../core/layout/pieces.ts'
import { inClosedForm } from '../core/layout/rectangle.ts'
import { type CutPieces, rectangleCuts } from '../core/layout/rectangle-cuts.ts'
import { isPlainRectangle, type Start } from '../core/layout/search.ts'
import type { LayoutSpec } from '../core/layout/spec.ts'
import { NO_WISHES, type Wishes } from '../core/layout/wishes.ts'
import { halfOf, pairHalves } from '../core/offcuts/halves.ts'
import type { PieceWanted, Side } from '../core/offcuts/order.ts'
import { DEFAULT_KERF_MM, type Reuse, type ReuseRule, reuseOffcuts } from '../core/offcuts/reuse.ts'
import { fine, type Outcome } from '../problem.ts'

const SIDES: readonly [keyof CutPiece['factory'], Side][] = [
  ['start', 'left'],
  ['end', 'right'],
  ['near', 'bottom'],
  ['far', 'top'],
]

/** A plain rectangle's cuts in closed form; null for any other floor. */
function plainCuts(floor: Floor, spec: LayoutSpec): CutPieces[] | null {
  if (!inClosedForm(spec) || !isPlainRectangle(floor)) return null
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const [x, y] = spec.originMm
  return rectangleCuts(maxX - minX, maxY - minY, { ...spec, originMm: [x - minX, y - minY] })
}

/** A cut piece as the off-cut rules take it: its box, and the moulded sides it keeps. */
const wanted = (piece: Pick<CutPiece, 'lengthMm' | 'widthMm' | 'factory'>, qty: number): PieceWanted => ({
  wMm: piece.lengthMm,
  hMm: piece.widthMm,
  qty,
  factory: SIDES.flatMap(([edge, side]) => (piece.factory[edge] ? [side] : [])),
})

/** Pieces of one size and the same edges are one line of the order. */
function gather(pieces: readonly PieceWanted[]): PieceWanted[] {
  const lines = new Map<string, PieceWanted>()
  for (const p of pieces) {
    const key = `${Math.round(p.wMm * 2)} ${Math.round(p.hMm * 2)} ${p.factory?.join()}`
    const known = lines.get(key)
    lines.set(key, known ? { ...known, qty: known.qty + p.qty } : p)
  }
  return [...lines.values()]
}

export type LayOptions = { readonly rule: ReuseRule; readonly wishes: Wishes; readonly mayTurnFace: boolean }

export const USUAL_OPTIONS: LayOptions = { rule: 'factory-edge', wishes: NO_WISHES, mayTurnFace: true }

/** A cut by its box and the size of tile it comes from, and the piece itself where it was cut out one by one. */
export type Cut = { readonly box: PieceWanted; readonly size: number; readonly piece: CutPiece | null }

/** Whether a room's tile lies across that of another: its cuts are turned before they come out of the same tiles. */
export const liesAcross = (a: LayoutSpec['tile'], b: LayoutSpec['tile']): boolean =>
  a.lengthMm !== a.widthMm && a.lengthMm === b.widthMm && a.widthMm === b.lengthMm

const TURNED: Readonly<Record<Side, Side>> = { left: 'bottom', bottom: 'right', right: 'top', top: 'left' }

const quarterTurned = ({ wMm, hMm, factory = [], ...piece }: PieceWanted): PieceWanted => ({
  ...piece,
  wMm: hMm,
  hMm: wMm,
  factory: factory.map((side) => TURNED[side]),
})

/** Tiles for the cuts: by boxes, or with halves of slanting cuts paired where that takes fewer. A fresh tile each pairs none. */
function reused(cuts: readonly Cut[], stock: LayoutSpec['tile'], { rule, mayTurnFace }: LayOptions): Outcome<Reuse> {
  const planned = (some: readonly Cut[]): Outcome<Reuse> => {
    const pieces = some.map(({ box }) => box)
    return reuseOffcuts({
      tileWMm: Math.max(stock.lengthMm, ...pieces.map((p) => p.wMm)),
      tileHMm: Math.max(stock.widthMm, ...pieces.map((p) => p.hMm)),
      kerfMm: DEFAULT_KERF_MM,
      pieces: gather(pieces),
      rule,
      turn: mayTurnFace ? 'half' : 'none',
    })
  }
  const boxed = planned(cuts)
  if (!boxed.ok || rule === 'fresh-tile') return boxed
  const shaped = cuts.filter(({ piece }) => piece?.shapeMm)
  if (shaped.length === 0) return boxed
  // What falls away inside the box of such a piece might still be of use.
  const asBoxes = fine({ ...boxed.value, proven: false })
  if (shaped.some(({ box }) => box.qty > MOST_ALIKE)) return asBoxes
  const each = cuts.flatMap((cut) =>
    Array.from({ length: cut.piece?.shapeMm ? cut.box.qty : 1 }, () => (cut.piece?.shapeMm ? alone(cut) : cut)),
  )
  const halves = each.map(({ piece }) => {
    const { shapeMm = null, turned = false } = piece ?? {}
    const half = shapeMm?.length === 1 ? halfOf(shapeMm[0], stock.lengthMm, stock.widthMm) : null
    // Planks of the two families of a weave lie in their tiles mirrored to each other: they are not paired.
    return half && turned ? { ...half, direction: half.direction + 180 } : half
  })
  const pairs = pairHalves(halves, DEFAULT_KERF_MM, mayTurnFace)
  if (pairs.length === 0) return asBoxes
  const paired = new Set(pairs.flat())
  const rest = planned(each.flatMap((cut, k) => (paired.has(k) ? [] : [cut])))
  if (!rest.ok || rest.value.stockTiles + pairs.length >= boxed.value.stockTiles) return asBoxes
  return fine({
    ...rest.value,
    stockTiles: rest.value.stockTiles + pairs.length,
    bound: Math.min(boxed.value.bound, rest.value.bound),
    proven: false,
    offcutsReused: rest.value.offcutsReused + pairs.length,
  })
}

/** The cuts of a room, for all rooms alike. @param across whether they are turned, as their tile lies across the first room's
 *  @problem as `cutPieces` */
export function cutsOf(floor: Floor, { spec, layout }: Start, alike: number, across: boolean): Outcome<Cut[]> {
  if (layout.cut === 0) return fine([])
  const boxed = (piece: Pick<CutPiece, 'lengthMm' | 'widthMm' | 'factory'>, qty: number): PieceWanted =>
    across ? quarterTurned(wanted(piece, qty)) : wanted(piece, qty)
  const grouped = plainCuts(floor, spec)
  if (grouped) return fine(grouped.map((cut) => ({ box: boxed(cut, cut.count * alike), size: 0, piece: null })))
  const cuts = cutPieces(floor, spec)
  if (!cuts.ok) return cuts
  const sizeOf = ({ cell }: CutPiece): number => (spec.pattern.kind === 'two-size' ? cell.family : 0)
  return fine(
    cuts.value.cuts.map((piece) => ({
      box: boxed(piece, alike),
      size: sizeOf(piece),
      piece: across ? null : piece,
    })),
  )
}

/** Tiles for the cuts of each size of tile by itself. @problem as `reuseOffcuts` */
export function reusedBySize(
  cuts: readonly Cut[],
  sizes: readonly LayoutSpec['tile'][],
  options: LayOptions,
): Outcome<Reuse[]> {
  const each: Reuse[] = []
  for (const [size, stock] of sizes.entries()) {
    const one = reused(sizes.length === 1 ? cuts : cuts.filter((cut) => cut.size === size), stock, options)
    if (!one.ok) return one
    each.push(one.value)
  }
  return fine(each)
}

/** Tiles that some cut pieces take by a rule, whatever else is laid. @problem as `reuseOffcuts` */
export const tilesForCuts = (
  cuts: readonly CutPiece[],
  stock: LayoutSpec['tile'],
  options: LayOptions,
): Outcome<Reuse> =>
  reused(
    cuts.map((piece) => ({ box: wanted(piece, 1), size: 0, piece })),
    stock,
    options,
  )

const alone = (cut: Cut): Cut => ({ ...cut, box: { ...cut.box, qty: 1 } })

/** Rooms alike beyond this are not paired piece by piece. */
const MOST_ALIKE = 50

/** The cuts of both sizes as one. */
export function together(each: readonly Reuse[]): Reuse {
  const sum = (of: (one: Reuse) => number): number => each.reduce((all, one) => all + of(one), 0)
  return {
    ...each[0],
    stockTiles: sum((one) => one.stockTiles),
    bound: sum((one) => one.bound),
    proven: each.every((one) => one.proven),
    offcutsReused: sum((one) => one.offcutsReused),
    leftOver: each.flatMap((one) => one.leftOver),
    wasteMm2: sum((one) => one.wasteMm2),
    plan: each.flatMap((one) => one.plan),
  }
}
