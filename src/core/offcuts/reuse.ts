/** The trade's rules on top of the cutting: which off-cuts may be used where.
 *
 *  What goes in: every cut piece of a floor by the box around it, measured along the tile's own axes as it lies on the
 *  floor (w along the tile's length axis, x to the right, y up), with the sides that face a neighbouring tile. Those
 *  must be moulded edges; the others go to a wall, a hole or under a trim and may be sawn. The side of a piece that
 *  still lies on its tile's edge and meets a neighbour there is a factory side; a side made by the clip is not. So
 *   - the end of a row at the right wall, full height: w < W, h = H, factory left, top, bottom;
 *   - a piece of the last row under the top wall: w = W, h < H, factory left, right, bottom;
 *   - the corner between them: factory left and bottom;
 *   - a row that one short piece fills from wall to wall: factory top and bottom.
 *  A piece that is no rectangle (notched round a pipe, sawn at an angle) counts by its box, and what falls away inside
 *  the box is not used again. */
import { fine, type Outcome } from '../../problem.ts'
import { type CutPlan, checkOrder, type PieceWanted, type Placed, type TileCut, type Turn } from './order.ts'
import { planCuts } from './plan.ts'

/** `factory-edge`: the trade's own, each piece keeps its moulded edges towards its neighbours, so that a straight row's
 *  tile gives two pieces at most. `any-offcut`: whatever fits. `fresh-tile`: a tile for each cut. Common practice. */
export type ReuseRule = 'factory-edge' | 'any-offcut' | 'fresh-tile'

export type ReuseOrder = {
  readonly tileWMm: number
  readonly tileHMm: number
  readonly kerfMm: number
  readonly pieces: readonly PieceWanted[]
  readonly rule: ReuseRule
  /** `none` for a face with a direction; else how far the crew turns a piece. */
  readonly turn: Turn
}

export type Leftover = { readonly wMm: number; readonly hMm: number; readonly qty: number }

export type Reuse = CutPlan & {
  readonly rule: ReuseRule
  /** Pieces cut from what another piece left: all but the first of each tile. */
  readonly offcutsReused: number
  /** Rectangles that remain, at least 50 mm both ways, largest first. */
  readonly leftOver: readonly Leftover[]
  /** All that is cut away or left, saw dust included [mm2]. */
  readonly wasteMm2: number
}

/** A wet saw with a 3 mm blade; common practice. */
export const DEFAULT_KERF_MM = 3
const LEAST_LEFTOVER_MM = 50

/** The tiles that a floor's cuts take under a rule. A floor without cuts takes none.
 *  @problem as planCuts */
export function reuseOffcuts(order: ReuseOrder): Outcome<Reuse> {
  const wanted = order.pieces.filter((p) => p.qty > 0)
  const cuts = {
    stockWMm: order.tileWMm,
    stockHMm: order.tileHMm,
    kerfMm: order.kerfMm,
    turn: order.turn,
    maxATile: order.rule === 'fresh-tile' ? 1 : null,
    pieces: order.rule === 'factory-edge' ? wanted : wanted.map(({ wMm, hMm, qty }) => ({ wMm, hMm, qty })),
  }
  if (wanted.length === 0) {
    const empty = { stockTiles: 0, bound: 0, proven: true, plan: [] }
    return fine({ ...empty, rule: order.rule, offcutsReused: 0, leftOver: [], wasteMm2: 0 })
  }
  const checked = checkOrder(cuts)
  if (!checked.ok) return checked
  const planned = planCuts(cuts)
  if (!planned.ok) return planned
  const { plan, stockTiles } = planned.value
  const pieces = wanted.reduce((n, p) => n + p.qty, 0)
  const used = wanted.reduce((sum, p) => sum + p.wMm * p.hMm * p.qty, 0)
  return fine({
    ...planned.value,
    rule: order.rule,
    offcutsReused: pieces - stockTiles,
    leftOver: leftOver(plan, order.tileWMm, order.tileHMm, order.kerfMm),
    wasteMm2: stockTiles * order.tileWMm * order.tileHMm - used,
  })
}

type Region = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

function leftOver(plan: readonly TileCut[], w: number, h: number, kerfMm: number): Leftover[] {
  const sizes = new Map<string, { wMm: number; hMm: number; qty: number }>()
  for (const { times, cut } of plan)
    for (const rest of remains(cut, { x: 0, y: 0, w, h }, kerfMm)) {
      if (Math.min(rest.w, rest.h) < LEAST_LEFTOVER_MM) continue
      const key = `${Math.round(rest.w)} ${Math.round(rest.h)}`
      const known = sizes.get(key)
      if (known) known.qty += times
      else sizes.set(key, { wMm: rest.w, hMm: rest.h, qty: times })
    }
  return [...sizes.values()].sort((a, b) => b.wMm * b.hMm - a.wMm * a.hMm)
}

/** What straight cuts leave of a region once its pieces are out. */
function remains(cut: readonly Placed[], region: Region, kerf: number): Region[] {
  if (cut.length === 0) return [region]
  const end = (p: Placed, across: boolean) => (across ? p.xMm + p.wMm : p.yMm + p.hMm)
  for (const across of cut.length > 1 ? [true, false] : []) {
    const start = (p: Placed) => (across ? p.xMm : p.yMm)
    const sorted = cut.toSorted((a, b) => start(a) - start(b))
    let reach = end(sorted[0]!, across)
    for (let i = 1; i < sorted.length; i++) {
      if (start(sorted[i]!) >= reach + kerf - 1e-6) {
        const [near, far] = split(region, across, reach, kerf)
        return [...remains(sorted.slice(0, i), near, kerf), ...remains(sorted.slice(i), far, kerf)]
      }
      reach = Math.max(reach, end(sorted[i]!, across))
    }
  }
  return beyond(cut[0]!, region, kerf)
}

function split({ x, y, w, h }: Region, across: boolean, at: number, kerf: number): [Region, Region] {
  return across
    ? [
        { x, y, w: at - x, h },
        { x: at + kerf, y, w: x + w - at - kerf, h },
      ]
    : [
        { x, y, w, h: at - y },
        { x, y: at + kerf, w, h: y + h - at - kerf },
      ]
}

/** Round a single piece: strips beside it of the region's height, then strips above and below of its own width. */
function beyond(p: Placed, { x, y, w, h }: Region, kerf: number): Region[] {
  return [
    { x, y, w: p.xMm - kerf - x, h },
    { x: p.xMm + p.wMm + kerf, y, w: x + w - p.xMm - p.wMm - kerf, h },
    { x: p.xMm, y, w: p.wMm, h: p.yMm - kerf - y },
    { x: p.xMm, y: p.yMm + p.hMm + kerf, w: p.wMm, h: y + h - p.yMm - p.hMm - kerf },
  ].filter((r) => r.w > 0 && r.h > 0)
}
