/** Where to snap a start, measured from real walls, and what it promises in each direction of the room. */
import { boxOf, type Floor, type Point } from '../floor/rings.ts'
import type { Axis, AxisScore } from './axis.ts'
import { type Laid, prepare, turn } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'

/** A chalk line at a tile's edge, by its distance from two real walls. */
export type SnapLine = {
  /** The direction measured along: 'x' from the left wall to a line that runs up, 'y' from the bottom wall. */
  readonly along: 'x' | 'y'
  readonly fromLowMm: number
  readonly fromHighMm: number
}

export type MiddleCorner = {
  readonly fromLeftMm: number
  readonly fromRightMm: number
  readonly fromBottomMm: number
  readonly fromTopMm: number
  readonly angleDeg: number
}

/** What a direction promises, and how far the room may be off before it breaks. */
export type AxisPromise = {
  readonly along: 'x' | 'y'
  readonly tileMm: number
  /** The room from wall to wall. */
  readonly spanMm: number
  /** Whether the worst cut is at least half a tile, and whether it is at least the limit. */
  readonly halfKept: boolean
  readonly leastKept: boolean
  readonly worstMm: number
  readonly lessMm: number
  readonly moreMm: number
}

/** Snap lines and promises, in the room's own directions. */
export function snapped(
  floor: Floor,
  ready: Laid,
  spec: LayoutSpec,
  axes: readonly [Axis, Axis],
  u: AxisScore,
  v: AxisScore,
) {
  const [cos, sin] = turn(spec.angleDeg)
  const square = Math.abs(cos) < 1e-12 || Math.abs(sin) < 1e-12
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const firstLines: SnapLine[] = []
  const middleLines: SnapLine[] = []
  const promises: AxisPromise[] = []
  axes.forEach((axis, k) => {
    if (axis.walls.length === 0 || !square) return
    const score = k === 0 ? u : v
    const lengthwise = (k === 0) !== ready.lattice.swapped
    const along = lengthwise === Math.abs(sin) < 1e-12 ? 'x' : 'y'
    const backwards = along === 'x' ? (lengthwise ? cos : -sin) < 0 : (lengthwise ? sin : cos) < 0
    const [low, high] = along === 'x' ? [minX, maxX] : [minY, maxY]
    const corner = along === 'x' ? spec.originMm[0] : spec.originMm[1]
    const edge = backwards ? corner - axis.tileMm : corner
    const line = (from: number): SnapLine => ({ along, fromLowMm: from, fromHighMm: high - low - from })
    const module = axis.moduleMm
    const clear = spec.wallGapMm - 1e-6
    const first = edge - low - Math.floor((edge - low - clear) / module) * module
    firstLines.push(line(first))
    middleLines.push(line(first + Math.max(0, Math.round(((high - low) / 2 - first) / module)) * module))
    const { worstMm, lessMm, moreMm } = score
    const [halfKept, leastKept] = [worstMm >= axis.tileMm / 2 - 0.01, worstMm >= axis.leastMm - 0.01]
    promises.push({ along, tileMm: axis.tileMm, spanMm: high - low, halfKept, leastKept, worstMm, lessMm, moreMm })
  })
  const margin = (p: AxisPromise) => Math.min(p.lessMm, p.moreMm)
  const tightest = promises.toSorted((p, q) => margin(p) - margin(q))[0]
  const middleCorner = firstLines.length === 2 ? null : cornerNearMiddle(floor, spec)
  return { firstLines, middleLines, middleCorner, promises, measureAgain: tightest?.along ?? null }
}

function cornerNearMiddle(floor: Floor, spec: LayoutSpec): MiddleCorner | null {
  const ready = prepare(floor, spec)
  if (!ready.ok) return null
  const { lattice, toFloor, toLattice } = ready.value
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const [u, v] = toLattice([(minX + maxX) / 2, (minY + maxY) / 2])
  let corner: Point | null = null
  lattice.along(u, v, u, v, (f, i, j) => {
    const { insetU, insetV, tileB, shape } = lattice.families[f]!
    // The lower end of a hexagon's upright side.
    const up = shape === 'hexagon' ? tileB / 4 : 0
    corner ??= toFloor(lattice.originU(f, i, j) + insetU, lattice.originV(f, i, j) + insetV + up)
  })
  const [x, y] = corner ?? [minX, minY]
  return {
    fromLeftMm: x - minX,
    fromRightMm: maxX - x,
    fromBottomMm: y - minY,
    fromTopMm: maxY - y,
    angleDeg: spec.angleDeg,
  }
}
