/** How much patch or leveller a floor takes, and whether grinding a hump saves most of it. */
import { fine, type Outcome, type Range, within } from '../../problem.ts'
import { gridDepthMm, gridWidthMm, type HeightGrid } from './grid.ts'

/** A surface z = a x + b y + c over the grid. */
export type Plane = { readonly a: number; readonly b: number; readonly c: number }

export const BAG_YIELD: Range = { field: 'bag-yield', unit: 'l', min: 1, max: 60 }

/** The level surface through the highest reading. */
export const levelPlane = (grid: HeightGrid): Plane => ({ a: 0, b: 0, c: Math.max(...grid.heightsMm.flat()) })

/** The plane that lies on the floor's high points and follows its slope: above every reading, and as low as it can
 *  be over the middle of the grid; of several such planes, nearly the one with the least gap. */
export function restingPlane(grid: HeightGrid): Plane {
  const points = grid.heightsMm.flatMap((row, j) => row.map((z, i) => [i * grid.stepXMm, j * grid.stepYMm, z] as const))
  const [midX, midY] = [gridWidthMm(grid) / 2, gridDepthMm(grid) / 2]
  const spread = (a: number, b: number) => {
    let [most, least] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    for (const [x, y, z] of points) {
      const off = z - a * (x - midX) - b * (y - midY)
      most = Math.max(most, off)
      least = Math.min(least, off)
    }
    return { most, least }
  }
  const cost = (a: number, b: number) => {
    const { most, least } = spread(a, b)
    return most + TIE_BREAK * (most - least)
  }
  const heights = grid.heightsMm.flat()
  const rise = Math.max(...heights) - Math.min(...heights)
  const steepest = (2 * rise) / Math.min(grid.stepXMm, grid.stepYMm)
  const bestB = (a: number) => lowest((b) => cost(a, b), steepest)
  const a = lowest((tried) => cost(tried, bestB(tried)), steepest)
  const b = bestB(a)
  return { a, b, c: spread(a, b).most - a * midX - b * midY }
}

/** Small enough not to lift the plane: it only chooses among planes that touch one high point in the middle. */
const TIE_BREAK = 1e-3

/** Volume between floor and target where the floor lies under it: the integral of max(0, target - height). [l]
 *  Exact where a cell lies wholly under or over the target; cells that the target cuts are summed in 64 strips.
 *  @param grid heights [mm]
 *  @param target a plane [mm] */
export function fillVolumeL(grid: HeightGrid, target: Plane): number {
  return overCells(grid, target, (depths, cell) => stripMean(depths, (d0, d1) => positiveMean(d0, d1)) * cell) / 1e6
}

/** Area of the floor that stands above the target. [m2] */
export function areaAboveM2(grid: HeightGrid, target: Plane): number {
  return (
    overCells(grid, target, (depths, cell) => stripMean(depths, (d0, d1) => 1 - positiveShare(d0, d1)) * cell) / 1e6
  )
}

export type Fill = {
  /** Into the limit: to a plane on the high points, less the limit; it keeps the floor's slope. */
  readonly intoLimitL: number
  /** To level, at the highest reading. */
  readonly levelL: number
  readonly areaM2: number
  /** Grinding that saves at least half of the filler from at most a tenth of the floor, or null. */
  readonly grind: { readonly areaM2: number; readonly depthMm: number; readonly fillL: number } | null
}

/** The filler for both targets, and whether to grind first.
 *  @param limitMm allowed gap under the long edge
 *  @source grind-or-fill: at most a tenth of the floor, at most 6 mm deep, saving half: common practice, no source */
export function fillFor(grid: HeightGrid, limitMm: number): Fill {
  const resting = restingPlane(grid)
  const intoLimitL = fillVolumeL(grid, lower(resting, limitMm))
  const areaM2 = (gridWidthMm(grid) * gridDepthMm(grid)) / 1e6
  return { intoLimitL, levelL: fillVolumeL(grid, levelPlane(grid)), areaM2, grind: grinding(grid, resting, limitMm) }
}

/** Bags to buy for a volume, a trace of rounding forgiven.
 *  @param yieldL wet yield of one bag [l], BAG_YIELD
 *  @problem out-of-range */
export function fillerBags(volumeL: number, yieldL: number): Outcome<number> {
  const good = within(BAG_YIELD, yieldL)
  return good.ok ? fine(Math.ceil(volumeL / yieldL - 1e-6)) : good
}

/** A rough volume from straightedge readings alone. [l]
 *  The floor under an edge is between a ridge (0.5 of the deepest gap) and a bowl (0.67).
 *  @source geometry: triangle 1/2, parabola 2/3 */
export const roughFillL = (areaM2: number, deepestGapMm: number): { lowL: number; highL: number } => ({
  lowL: 0.5 * deepestGapMm * areaM2,
  highL: (2 / 3) * deepestGapMm * areaM2,
})

export const lower = (plane: Plane, byMm: number): Plane => ({ ...plane, c: plane.c - byMm })

const MOST_GROUND = 0.1
const DEEPEST_GRIND_MM = 6

function grinding(grid: HeightGrid, resting: Plane, limitMm: number): Fill['grind'] {
  const before = fillVolumeL(grid, lower(resting, limitMm))
  const whole = (gridWidthMm(grid) * gridDepthMm(grid)) / 1e6
  let [shallow, deep] = [0, DEEPEST_GRIND_MM]
  for (let round = 0; round < 30; round += 1) {
    const depth = (shallow + deep) / 2
    if (areaAboveM2(grid, lower(resting, depth)) <= MOST_GROUND * whole) shallow = depth
    else deep = depth
  }
  const fillL = fillVolumeL(grid, lower(resting, shallow + limitMm))
  const saves = before > 0 && fillL <= before / 2
  return saves ? { areaM2: areaAboveM2(grid, lower(resting, shallow)), depthMm: shallow, fillL } : null
}

/** Where a convex function of one number is least, within [-reach, reach]. */
function lowest(value: (x: number) => number, reach: number): number {
  let [from, to] = [-reach, reach]
  for (let round = 0; round < 60 && to - from > 1e-9; round += 1) {
    const third = (to - from) / 3
    if (value(from + third) <= value(to - third)) to -= third
    else from += third
  }
  return (from + to) / 2
}

type Corners = readonly [number, number, number, number]

/** Sums over the cells, each given the depths of the floor under the target at its four corners. */
function overCells(grid: HeightGrid, target: Plane, sum: (depths: Corners, cellMm2: number) => number): number {
  const { heightsMm: z, stepXMm, stepYMm } = grid
  const depth = (i: number, j: number) => target.a * i * stepXMm + target.b * j * stepYMm + target.c - z[j]![i]!
  let total = 0
  for (let j = 0; j + 1 < z.length; j += 1)
    for (let i = 0; i + 1 < z[0]!.length; i += 1)
      total += sum([depth(i, j), depth(i + 1, j), depth(i, j + 1), depth(i + 1, j + 1)], stepXMm * stepYMm)
  return total
}

const STRIPS = 64

/** The mean over a cell of something known for a straight strip across it, from the strip's two end depths. */
function stripMean([a, b, c, d]: Corners, strip: (d0: number, d1: number) => number): number {
  const oneSided = Math.min(a, b, c, d) >= 0 || Math.max(a, b, c, d) <= 0
  const strips = oneSided ? 1 : STRIPS
  let total = 0
  for (let k = 0; k < strips; k += 1) {
    const t = (k + 0.5) / strips
    total += strip(a + (b - a) * t, c + (d - c) * t)
  }
  return total / strips
}

/** Mean of max(0, depth) along a straight strip. */
function positiveMean(d0: number, d1: number): number {
  if (d0 >= 0 && d1 >= 0) return (d0 + d1) / 2
  if (d0 <= 0 && d1 <= 0) return 0
  const top = Math.max(d0, d1)
  return (top * top) / (2 * Math.abs(d1 - d0))
}

/** Share of a strip where the floor lies at or under the target. */
function positiveShare(d0: number, d1: number): number {
  if (d0 >= 0 && d1 >= 0) return 1
  if (d0 < 0 && d1 < 0) return 0
  return Math.max(d0, d1) / Math.abs(d1 - d0)
}
