/** The start line that takes the fewest tiles, for a floor nothing is set on yet: what the best-looking start costs is saved. */
import { fine, type Outcome } from '../../problem.ts'
import { boxOf, type Floor, type Point } from '../floor/rings.ts'
import { wallsOf } from '../floor/walls.ts'
import { type Layout, lay } from './lay.ts'
import { estimate } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'

export type LeanStart = { readonly spec: LayoutSpec; readonly layout: Layout; readonly tiles: number }

/** Starts spread over the module, beside those that bring a whole or a half tile to a wall. */
const SPREAD = 6
const MOST_LAID = 150
/** Starts that are cut out in full, the cheapest by their cells. */
const MOST_PLANNED = 16
/** Meetings of walls and modules, and cuts, that all starts together may cost: a large floor is tried from fewer. */
const MEETINGS_FOR_ALL = 60_000
const CUTS_FOR_ALL = 2_500
const LEAST_TRIED = 3

/** @param leastMm  no piece narrower than this [mm]
 *  @param tilesOf  the tiles a start takes, off-cuts reused
 *  @problem as `lay` */
export function leanStart(
  floor: Floor,
  spec: LayoutSpec,
  leastMm: number,
  tilesOf: (spec: LayoutSpec, layout: Layout) => number,
): Outcome<LeanStart | null> {
  const laid: { spec: LayoutSpec; layout: Layout }[] = []
  const most = atMost(MEETINGS_FOR_ALL / estimate(floor, spec), MOST_LAID)
  for (const originMm of originsOf(floor, spec).slice(0, most)) {
    const tried = { ...spec, originMm }
    const layout = lay(floor, tried)
    if (!layout.ok) return layout
    if ((layout.value.smallestCutMm ?? Infinity) >= leastMm - 0.01) laid.push({ spec: tried, layout: layout.value })
  }
  // Whole tiles and half of the cuts: about what a start can come down to.
  const about = ({ layout }: { layout: Layout }): number => layout.whole + layout.cut / 2
  laid.sort((p, q) => about(p) - about(q))
  const cutOut = atMost(CUTS_FOR_ALL / Math.max(1, laid[0]?.layout.cut ?? 1), MOST_PLANNED)
  const planned = laid.slice(0, cutOut).map((one): LeanStart => ({ ...one, tiles: tilesOf(one.spec, one.layout) }))
  return fine(planned.reduce<LeanStart | null>((best, one) => (best && best.tiles <= one.tiles ? best : one), null))
}

const atMost = (work: number, most: number): number => Math.max(LEAST_TRIED, Math.min(most, Math.floor(work)))

function originsOf(floor: Floor, { tile, jointMm, wallGapMm, angleDeg }: LayoutSpec): Point[] {
  const { minX, minY } = boxOf(floor.rings)
  const turned = Math.abs(angleDeg % 180) === 90
  const sides = turned ? [tile.widthMm, tile.lengthMm] : [tile.lengthMm, tile.widthMm]
  const square = angleDeg % 90 === 0
  const walls = wallsOf(floor)
  const on = (axis: 0 | 1, low: number): number[] => {
    const side = sides[axis]!
    const module = side + jointMm
    const starts = Array.from({ length: SPREAD }, (_, k) => (k * module) / SPREAD)
    if (square)
      for (const wall of walls) {
        if (Math.abs(wall.from[axis] - wall.to[axis]) > 1e-3) continue
        const from = wall.from[axis] - low
        starts.push(from + wallGapMm, from - wallGapMm - side, from + wallGapMm - side / 2, from - wallGapMm - side / 2)
      }
    const seen = new Set<number>()
    return starts
      .map((start) => low + (((start % module) + module) % module))
      .filter((start) => {
        const key = Math.round(start * 10)
        return !seen.has(key) && seen.add(key)
      })
  }
  const [xs, ys] = [on(0, minX), on(1, minY)]
  // Those at walls stand last in each list and are the ones that save.
  const all = xs.toReversed().flatMap((x, p) => ys.toReversed().map((y, q) => ({ at: [x, y] as Point, order: p + q })))
  return all.sort((p, q) => p.order - q.order).map(({ at }) => at)
}
