/** Cutting by length: edge profiles and trim from bars, and base from floor tile. */
import { fine, type Outcome, refuse, within } from '../../problem.ts'
import { type CutPlan, type PieceWanted, STOCK_SIDE } from './order.ts'
import { planCuts } from './plan.ts'

export type LengthsOrder = {
  readonly stockMm: number
  readonly kerfMm: number
  readonly runs: readonly { readonly lengthMm: number; readonly qty: number }[]
}

export type LengthsPlan = {
  readonly bars: number
  readonly bound: number
  readonly proven: boolean
  readonly plan: readonly { readonly times: number; readonly lengthsMm: readonly number[] }[]
  /** Places where a run longer than a bar is butted together. */
  readonly butts: number
  /** What is left of all bars, saw dust included [mm]. */
  readonly wasteMm: number
}

const MOST_RUN_MM = 1_000_000

/** The fewest bars for runs of trim. A run longer than a bar is whole bars and one piece. Bars 1 to 20,000 mm, runs up to
 *  1 km, kerf 0 to 50 mm.
 *  @problem out-of-range, missing, too-much-work as planCuts */
export function cutLengths(order: LengthsOrder): Outcome<LengthsPlan> {
  const stock = within(STOCK_SIDE, order.stockMm)
  if (!stock.ok) return stock
  const pieces: PieceWanted[] = []
  let butts = 0
  for (const { lengthMm, qty } of order.runs) {
    const run = within({ field: 'run', unit: 'mm', min: 0.01, max: MOST_RUN_MM }, lengthMm)
    if (!run.ok) return run
    const { whole, rest } = parted(lengthMm, order.stockMm, 0)
    butts += qty * (whole - (rest ? 0 : 1))
    pieces.push(...strips(whole, rest, order.stockMm, qty, 1))
  }
  const planned = planCuts({
    stockWMm: order.stockMm,
    stockHMm: 1,
    kerfMm: order.kerfMm,
    pieces,
    turn: 'none',
    maxATile: null,
  })
  if (!planned.ok) return planned
  const { stockTiles, bound, proven, plan } = planned.value
  const used = order.runs.reduce((sum, r) => sum + r.lengthMm * r.qty, 0)
  return fine({
    bars: stockTiles,
    bound,
    proven,
    plan: plan.map(({ times, cut }) => ({ times, lengthsMm: cut.map((p) => p.wMm) })),
    butts,
    wasteMm: stockTiles * order.stockMm - used,
  })
}

export type BaseOrder = {
  readonly tileLengthMm: number
  readonly tileWidthMm: number
  readonly heightMm: number
  readonly jointMm: number
  readonly kerfMm: number
  readonly runs: readonly { readonly lengthMm: number; readonly qty: number }[]
}

/** Base cut from floor tile, the moulded edge up and the sawn one to the floor: the two long edges of a tile give two
 *  strips where both fit. Each run is full strips and one piece, with a joint between.
 *  @problem out-of-range base higher than the tile is wide, and as planCuts */
export function baseFromTile(order: BaseOrder): Outcome<CutPlan> {
  const height = within({ field: 'base_height', unit: 'mm', min: 1, max: order.tileWidthMm }, order.heightMm)
  if (!height.ok) return height
  const pieces: PieceWanted[] = []
  for (const { lengthMm, qty } of order.runs) {
    const run = within({ field: 'run', unit: 'mm', min: 0.01, max: MOST_RUN_MM }, lengthMm)
    if (!run.ok) return run
    if (!(order.tileLengthMm + order.jointMm >= 1))
      return refuse('out-of-range', {
        field: 'tile_length',
        value: order.tileLengthMm,
        min: 1,
        max: STOCK_SIDE.max,
        unit: 'mm',
      })
    const { whole, rest } = parted(lengthMm, order.tileLengthMm, order.jointMm)
    for (const strip of strips(whole, rest, order.tileLengthMm, qty, order.heightMm))
      pieces.push({ ...strip, factory: ['top'] })
  }
  return planCuts({
    stockWMm: order.tileLengthMm,
    stockHMm: order.tileWidthMm,
    kerfMm: order.kerfMm,
    pieces,
    turn: 'half',
    maxATile: null,
  })
}

/** A run in whole lengths and what is left of it, a joint between each two. */
function parted(runMm: number, lengthMm: number, jointMm: number): { whole: number; rest: number } {
  const whole = Math.floor((runMm + jointMm) / (lengthMm + jointMm) + 1e-9)
  const rest = runMm - whole * (lengthMm + jointMm)
  return { whole, rest: rest > 0.01 ? rest : 0 }
}

function strips(whole: number, rest: number, lengthMm: number, qty: number, hMm: number): PieceWanted[] {
  const all = [
    { wMm: lengthMm, hMm, qty: whole * qty },
    { wMm: rest, hMm, qty: rest ? qty : 0 },
  ]
  return all.filter((p) => p.qty > 0)
}
