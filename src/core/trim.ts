/** Walls, base, profiles and stairs: areas with openings, strips from floor tile, lengths cut from stock. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const TRIM_RUN: Range = { field: 'run', unit: 'mm', min: 10, max: 1_000_000 }
export const STOCK_LENGTH: Range = { field: 'stock-length', unit: 'mm', min: 100, max: 20_000 }
export const BASE_HEIGHT: Range = { field: 'base-height', unit: 'mm', min: 20, max: 400 }

const up = (n: number): number => Math.ceil(n - 1e-9)

/** Wall area less its openings. [m²]
 *  @problem out-of-range, nothing-left (openings as large as the wall)
 *  @example 10 x 8 ft less a 3 x 4 ft window: 68 sf */
export function wallArea(
  runMm: number,
  heightMm: number,
  openings: readonly { readonly widthMm: number; readonly heightMm: number }[] = [],
): Outcome<number> {
  for (const check of [within(TRIM_RUN, runMm), within({ ...TRIM_RUN, field: 'wall-height' }, heightMm)])
    if (!check.ok) return check
  const open = openings.reduce((sum, o) => sum + o.widthMm * o.heightMm, 0)
  const left = (runMm * heightMm - open) / 1e6
  return left > 0 ? fine(left) : refuse('nothing-left', { said: 'openings' })
}

export type BasePlan = {
  readonly runMm: number
  readonly tileLengthMm: number
  readonly tileWidthMm: number
  readonly heightMm: number
  readonly jointMm: number
  readonly kerfMm: number
}

/** Base cut from floor tile: strips keep a factory edge up, so a tile gives two at most, one from each long edge.
 *  @param plan  TRIM_RUN, BASE_HEIGHT; the height no more than the tile's width
 *  @problem out-of-range
 *  @source common practice, no source (factory edge up)
 *  @example 30 ft of 4 in base from 12 x 24 in tile: 15 strips, 8 tiles */
export function baseFromTile(plan: BasePlan): Outcome<{ strips: number; tiles: number; stripsATile: 1 | 2 }> {
  const tall = within({ ...BASE_HEIGHT, max: Math.min(BASE_HEIGHT.max, plan.tileWidthMm) }, plan.heightMm)
  const run = within(TRIM_RUN, plan.runMm)
  if (!run.ok) return run
  if (!tall.ok) return tall
  if (!(plan.tileLengthMm > 0))
    return refuse('out-of-range', { field: 'tile-edge', value: plan.tileLengthMm, min: 1, max: 4000, unit: 'mm' })
  const strips = up((plan.runMm + plan.jointMm) / (plan.tileLengthMm + plan.jointMm))
  const stripsATile = 2 * plan.heightMm + plan.kerfMm <= plan.tileWidthMm + 1e-6 ? 2 : 1
  return fine({ strips, tiles: up(strips / stripsATile), stripsATile })
}

export type CutPlan = {
  readonly lengths: number
  /** Least number that any plan could do with. */
  readonly bound: number
  /** Joins in runs longer than the stock. */
  readonly joins: number
  /** What each length is cut into [mm]. */
  readonly cuts: readonly (readonly number[])[]
}

/** Lengths of stock for a list of runs: longest first into the tightest rest.
 *  A run longer than the stock is whole lengths joined, and what is over.
 *  @param runsMm  TRIM_RUN each, at most 2000  @param stockMm  STOCK_LENGTH  @param kerfMm  0 to 10
 *  @problem out-of-range, too-much-work
 *  @source best fit decreasing, within 11/9 of the least plus one (a known bound of bin packing)
 *  @example 2.0, 1.6, 0.9 and 0.4 m from 2.5 m without kerf: 2 lengths (2.0 + 0.4, 1.6 + 0.9) */
export function cutFromStock(runsMm: readonly number[], stockMm: number, kerfMm = 0): Outcome<CutPlan> {
  const stock = within(STOCK_LENGTH, stockMm)
  if (!stock.ok) return stock
  const kerf = within({ field: 'kerf', unit: 'mm', min: 0, max: 10 }, kerfMm)
  if (!kerf.ok) return kerf
  if (runsMm.length > 2000) return refuse('too-much-work', { what: 'runs' })
  for (const mm of runsMm) {
    const run = within(TRIM_RUN, mm)
    if (!run.ok) return run
  }
  let joins = 0
  const pieces: number[] = []
  for (let run of runsMm) {
    for (; run > stockMm + 1e-6; run -= stockMm, joins++) pieces.push(stockMm)
    pieces.push(run)
  }
  const cuts: { left: number; pieces: number[] }[] = []
  for (const piece of pieces.toSorted((a, b) => b - a)) {
    const fits = cuts.filter((cut) => cut.left + 1e-6 >= piece)
    const into = fits.length ? fits.reduce((best, cut) => (cut.left < best.left ? cut : best)) : null
    const rest = into ?? { left: stockMm, pieces: [] }
    if (!into) cuts.push(rest)
    rest.left -= piece + kerfMm
    rest.pieces.push(piece)
  }
  const total = pieces.reduce((a, b) => a + b, 0)
  return fine({ lengths: cuts.length, bound: up(total / stockMm), joins, cuts: cuts.map((cut) => cut.pieces) })
}

/** The smallest profile height that reaches the tile's face; null where none in the list does.
 *  @source common practice, no source */
export function profileHeight(tileMm: number, bedUnderMm: number, heightsMm: readonly number[]): number | null {
  const need = tileMm + bedUnderMm
  return heightsMm.toSorted((a, b) => a - b).find((height) => height + 1e-6 >= need) ?? null
}

export type Stairs = {
  readonly risers: number
  readonly treads: number
  readonly widthMm: number
  readonly treadDepthMm: number
  readonly riserHeightMm: number
}

/** Treads and risers: area, nosing length, whole tiles by rows across the stair.
 *  @param stairs  1 to 60 steps, sides 50 to 5000 mm
 *  @problem out-of-range
 *  @example 3 treads of 36 x 11 in and 4 risers of 7 in from 18 x 18 in tile: 2 tiles a tread, 2 strips a riser */
export function stairTiles(
  stairs: Stairs,
  tile: { readonly lengthMm: number; readonly widthMm: number; readonly jointMm: number },
): Outcome<{ areaM2: number; nosingM: number; treadTiles: number; riserTiles: number }> {
  const step: Range = { field: 'steps', unit: '', min: 0, max: 60 }
  const side: Range = { field: 'stair-side', unit: 'mm', min: 50, max: 5000 }
  for (const check of [
    within(step, stairs.risers),
    within(step, stairs.treads),
    within(side, stairs.widthMm),
    within(side, stairs.treadDepthMm),
    within(side, stairs.riserHeightMm),
    within({ ...side, field: 'tile-edge', min: 20 }, tile.lengthMm),
    within({ ...side, field: 'tile-edge', min: 20 }, tile.widthMm),
  ])
    if (!check.ok) return check
  const across = up((stairs.widthMm + tile.jointMm) / (tile.lengthMm + tile.jointMm))
  const rowsOf = (deep: number) => up((deep + tile.jointMm) / (tile.widthMm + tile.jointMm))
  const stripsATile = Math.min(2, Math.max(1, Math.floor((tile.widthMm + 1e-6) / stairs.riserHeightMm)))
  const riserStrips = stairs.risers * across * rowsOf(stairs.riserHeightMm)
  return fine({
    areaM2: (stairs.widthMm * (stairs.treads * stairs.treadDepthMm + stairs.risers * stairs.riserHeightMm)) / 1e6,
    nosingM: (stairs.treads * stairs.widthMm) / 1000,
    treadTiles: stairs.treads * across * rowsOf(stairs.treadDepthMm),
    riserTiles: up(riserStrips / stripsATile),
  })
}
