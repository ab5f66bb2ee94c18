/** The order in the search's own terms: whole units, every size grown by one kerf. k pieces side by side need k - 1
 *  kerfs, so sizes w + kerf in a tile of width W + kerf fit exactly when the pieces with their kerfs fit in W. */
import type { CutOrder, PieceWanted, Side, Turn } from './order.ts'

export const LEFT = 1
export const RIGHT = 2
export const BOTTOM = 4
export const TOP = 8
export const ALL_SIDES = LEFT | RIGHT | BOTTOM | TOP

/** The extents of a piece or a group, grown by a kerf, and the tile sides it must touch (a bit set). */
export type Box = { readonly w: number; readonly h: number; readonly needs: number }

/** One way a piece can lie; `turned` by a quarter. */
export type Pose = Box & { readonly turned: boolean }

/** Pieces of one size and one set of factory sides. */
export type Kind = {
  readonly piece: number
  readonly qty: number
  readonly poses: readonly Pose[]
  readonly area: number
}

export type Shop = {
  readonly w: number
  readonly h: number
  readonly area: number
  readonly kinds: readonly Kind[]
  readonly pieces: number
  /** The most pieces from one tile. */
  readonly max: number
  readonly unitsPerMm: number
}

const BIT: Record<Side, number> = { left: LEFT, right: RIGHT, bottom: BOTTOM, top: TOP }
/** Where each side goes under a quarter turn, counter-clockwise. */
const QUARTER: Record<Side, Side> = { left: 'bottom', bottom: 'right', right: 'top', top: 'left' }

/** Units a mm so that every size is whole: 1 to 1000 where that is exact, else a nanometre. */
function unitsFor(sizes: readonly number[]): number {
  const exact = [1, 10, 100, 1000].find((u) => sizes.every((s) => Math.abs(s * u - Math.round(s * u)) < 1e-7))
  return exact ?? 1_000_000
}

/** The poses of a piece that can be cut from the tile at all: a piece that must touch two opposite sides has to span it. */
function posesOf(
  piece: PieceWanted,
  turn: Turn,
  stock: { w: number; h: number },
  grown: (mm: number) => number,
): Pose[] {
  const quarters = turn === 'none' ? [0] : turn === 'half' ? [0, 2] : [0, 1, 2, 3]
  const poses: Pose[] = []
  for (const n of quarters) {
    const w = grown(n % 2 ? piece.hMm : piece.wMm)
    const h = grown(n % 2 ? piece.wMm : piece.hMm)
    let needs = 0
    for (const side of piece.factory ?? []) {
      let at = side
      for (let i = 0; i < n; i++) at = QUARTER[at]
      needs |= BIT[at]
    }
    // A piece that spans the tile touches both sides wherever it lies.
    if (w === stock.w) needs &= ~(LEFT | RIGHT)
    if (h === stock.h) needs &= ~(BOTTOM | TOP)
    const torn = (needs & LEFT && needs & RIGHT) || (needs & BOTTOM && needs & TOP)
    if (w > stock.w || h > stock.h || torn) continue
    if (!poses.some((p) => p.w <= w && p.h <= h && (p.needs & needs) === p.needs))
      poses.push({ w, h, needs, turned: n % 2 === 1 })
  }
  return poses
}

/** The order in units, equal pieces together, largest first; the index of a piece that cannot be cut so, if there is one. */
export function openShop(order: CutOrder): Shop | { readonly impossible: number } {
  const wanted = order.pieces.flatMap((piece, index) => (piece.qty > 0 ? [{ piece, index }] : []))
  const unitsPerMm = unitsFor([
    order.stockWMm,
    order.stockHMm,
    order.kerfMm,
    ...wanted.flatMap(({ piece }) => [piece.wMm, piece.hMm]),
  ])
  // Rounded down, so that thirds of a tile do not fall out of it for want of a nanometre.
  const units = (mm: number) => Math.floor(mm * unitsPerMm + 1e-3)
  const kerf = units(order.kerfMm)
  const grown = (mm: number) => units(mm) + kerf
  const stock = { w: grown(order.stockWMm), h: grown(order.stockHMm) }
  const kinds = new Map<string, { piece: number; qty: number; poses: Pose[]; area: number }>()
  for (const { piece, index } of wanted) {
    const poses = posesOf(piece, order.turn, stock, grown)
    if (poses.length === 0) return { impossible: index }
    const key = poses
      .map((p) => `${p.w} ${p.h} ${p.needs}`)
      .sort()
      .join()
    const known = kinds.get(key)
    if (known) known.qty += piece.qty
    else kinds.set(key, { piece: index, qty: piece.qty, poses, area: poses[0]!.w * poses[0]!.h })
  }
  const list = [...kinds.values()].sort((a, b) => b.area - a.area || b.poses[0]!.w - a.poses[0]!.w)
  const pieces = list.reduce((n, k) => n + k.qty, 0)
  const max = Math.min(order.maxATile ?? pieces, pieces)
  return { w: stock.w, h: stock.h, area: stock.w * stock.h, kinds: list, pieces, max, unitsPerMm }
}

/** The single number that decides whether pieces fit together, where there is one: no two of them can lie one above the
 *  other, so only widths add up (or heights, the other way round), and no piece must touch a side. */
export function oneWay(
  shop: Shop,
): { readonly sizes: number[]; readonly capacity: number; readonly upright: boolean } | null {
  if (shop.kinds.some((k) => k.poses.some((p) => p.needs))) return null
  const least = (side: 'w' | 'h') => {
    const sizes = shop.kinds.flatMap((k) => Array(Math.min(k.qty, 2)).fill(Math.min(...k.poses.map((p) => p[side]))))
    const [a = 0, b = Number.POSITIVE_INFINITY] = sizes.sort((x, y) => x - y)
    return a + b
  }
  const sizes = (side: 'w' | 'h') => shop.kinds.map((k) => Math.min(...k.poses.map((p) => p[side])))
  if (least('h') > shop.h) return { sizes: sizes('w'), capacity: shop.w, upright: false }
  if (least('w') > shop.w) return { sizes: sizes('h'), capacity: shop.h, upright: true }
  return null
}
