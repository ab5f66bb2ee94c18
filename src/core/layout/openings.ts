/** Openings moved so that their finished edges fall on joints of the wall's layout. All in mm, from the wall's left end and foot. */
import { nicheTiles, onJoints } from '../floor/walls.ts'
import { courseShifts } from './courses.ts'
import type { LayoutSpec } from './spec.ts'

export type OnWall = { readonly lengthMm: number; readonly heightMm: number; readonly spec: LayoutSpec }
export type Moved = {
  readonly fromLeftMm: number
  readonly fromFootMm: number
  readonly widthMm: number
  readonly heightMm: number
  /** Whole tiles across and up; null for an opening that keeps its size. */
  readonly tiles: readonly [number, number] | null
}

/** How far the course in which a height lies is moved. */
function shiftAt({ spec }: OnWall, y: number): number {
  const shifts = courseShifts(spec.pattern, spec.tile.lengthMm + spec.jointMm)
  const course = Math.round((y - spec.originMm[1]) / (spec.tile.widthMm + spec.jointMm))
  return shifts[((course % shifts.length) + shifts.length) % shifts.length]!
}

/** The place nearest to the one wanted, a module at a time, that lies on the wall; null where none does. */
function onWall(from: number, clear: number, module: number, span: number, edge: number): number | null {
  let at = from
  while (at < edge && at + clear + module <= span - edge + 1e-6) at += module
  while (at + clear > span - edge + 1e-6 && at - module >= edge - 1e-6) at -= module
  return at >= edge - 1e-6 && at + clear <= span - edge + 1e-6 ? at : null
}

/** A niche of whole tiles, all four edges on joints, nearest to the size and the place wanted; null where the wall has no room.
 *  With moved rows its sides are on joints in the course it stands on and every one that is moved alike. */
export function nicheOnJoints(
  wall: OnWall,
  widthMm: number,
  heightMm: number,
  fromLeftMm: number,
  fromFootMm: number,
): Moved | null {
  const { tile, jointMm, originMm, wallGapMm } = wall.spec
  const up = onJoints(fromFootMm, heightMm, tile.widthMm, jointMm, originMm[1])
  const y = onWall(up.fromMm, up.clearMm, tile.widthMm + jointMm, wall.heightMm, wallGapMm)
  if (y === null) return null
  const first = originMm[0] + shiftAt(wall, y + jointMm)
  // Centred on the place wanted, so that a rounded size grows or shrinks on both sides.
  const clear = nicheTiles(widthMm, tile.lengthMm, jointMm) * (tile.lengthMm + jointMm) + jointMm
  const across = onJoints(fromLeftMm + (widthMm - clear) / 2, widthMm, tile.lengthMm, jointMm, first)
  const x = onWall(across.fromMm, across.clearMm, tile.lengthMm + jointMm, wall.lengthMm, wallGapMm)
  return x === null
    ? null
    : { fromLeftMm: x, fromFootMm: y, widthMm: across.clearMm, heightMm: up.clearMm, tiles: [across.tiles, up.tiles] }
}

/** The place nearest to `from` at which the low or the high edge of a span meets a tile's edge across a joint. */
function nearestEdge(from: number, size: number, side: number, joint: number, first: number): number {
  const module = side + joint
  const snap = (value: number, at: number): number => at + Math.round((value - at) / module) * module
  // The low edge where the tile before it ends, or the high edge where the tile behind it begins.
  const low = snap(from, first - joint)
  const high = snap(from + size, first) - size
  return Math.abs(low - from) <= Math.abs(high - from) ? low : high
}

/** An opening that keeps its size (a box, a window), moved the least way that puts one of its sides and its foot or head on joints. */
export function boxOnJoints(
  wall: OnWall,
  widthMm: number,
  heightMm: number,
  fromLeftMm: number,
  fromFootMm: number,
): Moved | null {
  const { tile, jointMm, originMm, wallGapMm } = wall.spec
  const y = nearestEdge(fromFootMm, heightMm, tile.widthMm, jointMm, originMm[1])
  const first =
    originMm[0] +
    shiftAt(
      wall,
      Math.floor((y + heightMm / 2 - originMm[1]) / (tile.widthMm + jointMm)) * (tile.widthMm + jointMm) + originMm[1],
    )
  const x = nearestEdge(fromLeftMm, widthMm, tile.lengthMm, jointMm, first)
  const seen = onWall(x, widthMm, tile.lengthMm + jointMm, wall.lengthMm, wallGapMm)
  const high = onWall(y, heightMm, tile.widthMm + jointMm, wall.heightMm, wallGapMm)
  return seen === null || high === null ? null : { fromLeftMm: seen, fromFootMm: high, widthMm, heightMm, tiles: null }
}

/** The crossing of a vertical and a level joint's centre lines nearest to a point: there a round hole is four nipped corners. */
export function crossingNear(wall: OnWall, fromLeftMm: number, fromFootMm: number): readonly [number, number] {
  const { tile, jointMm, originMm } = wall.spec
  const nearest = (value: number, side: number, first: number): number => {
    const at = first - jointMm / 2
    return at + Math.round((value - at) / (side + jointMm)) * (side + jointMm)
  }
  const y = nearest(fromFootMm, tile.widthMm, originMm[1])
  return [nearest(fromLeftMm, tile.lengthMm, originMm[0] + shiftAt(wall, y + jointMm / 2)), y]
}
