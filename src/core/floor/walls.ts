/** The walls of a floor, and walls that are tiled themselves: a wall is a floor stood upright, x along it and y up. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { boxOf, distance, type Floor, type Point, ringArea } from './rings.ts'
import { lessRectangle, rectangle, type Side } from './shapes.ts'

/** A wall: edge `index` of ring `ring`, from one corner to the next, the floor on its left. */
export type Wall = {
  readonly ring: number
  readonly index: number
  readonly from: Point
  readonly to: Point
  readonly lengthMm: number
  /** The side of the room it stands on, where it runs along an axis. */
  readonly side: Side | null
  /** Whether it bounds a hole. */
  readonly ofHole: boolean
}

/** Walls shorter than this have no side of their own: curves are many short walls. [mm] */
const SQUARE_ENOUGH = 1e-3

/** Every wall of a floor, ring by ring. */
export function wallsOf(floor: Floor): Wall[] {
  return floor.rings.flatMap((ring, r) => {
    const ofHole = ringArea(ring) < 0
    return ring.map((from, index) => {
      const to = ring[(index + 1) % ring.length]!
      return { ring: r, index, from, to, lengthMm: distance(from, to), side: sideOf(from, to), ofHole }
    })
  })
}

function sideOf(from: Point, to: Point): Side | null {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  if (Math.abs(dy) <= SQUARE_ENOUGH * Math.abs(dx)) return dx > 0 ? 'bottom' : 'top'
  if (Math.abs(dx) <= SQUARE_ENOUGH * Math.abs(dy)) return dy > 0 ? 'right' : 'left'
  return null
}

/** The walls that stand on a side of the room, the outermost first; holes' walls are left out. */
export function wallsOn(floor: Floor, side: Side): Wall[] {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const depth = (wall: Wall): number => {
    if (side === 'left') return wall.from[0] - minX
    if (side === 'right') return maxX - wall.from[0]
    return side === 'bottom' ? wall.from[1] - minY : maxY - wall.from[1]
  }
  return wallsOf(floor)
    .filter((wall) => wall.side === side && !wall.ofHole)
    .sort((p, q) => depth(p) - depth(q))
}

/** An opening in a tiled wall: outlet, window, valve or niche. Distances from the left end and from the wall's foot [mm]. */
export type Opening = {
  readonly widthMm: number
  readonly heightMm: number
  readonly fromLeftMm: number
  readonly fromFootMm: number
}

/** A wall with its openings, as a floor.
 *  @problem bad-floor does-not-fit where an opening is not wholly on the wall or two overlap */
export function wallFace(lengthMm: number, heightMm: number, openings: readonly Opening[] = []): Outcome<Floor> {
  let face = rectangle(lengthMm, heightMm)
  for (const { widthMm, heightMm: high, fromLeftMm, fromFootMm } of openings) {
    if (!face.ok) return face
    const box = boxOf(face.value.rings)
    // An opening up to a corner narrows the box; places are counted from the wall's own ends.
    const x = { from: 'low', mm: fromLeftMm - box.minX } as const
    const y = { from: 'low', mm: fromFootMm - box.minY } as const
    const cut = lessRectangle(face.value, widthMm, high, { at: 'inside', x, y })
    face = cut.ok ? fine(cut.value.floor) : cut
  }
  return face
}

/** What lines a niche on each side. [mm] */
export type Lining = {
  readonly boardMm: number
  readonly membraneMm: number
  readonly mortarMm: number
  readonly tileMm: number
}

/** A niche n tiles wide whose finished edges fall on joints: clear opening n (L + j) + j, and the rough opening to frame
 *  n (L + j) + j + 2 (board + membrane + mortar + tile). [mm]
 *  @param tiles 1 or more whole tiles @problem out-of-range
 *  @source derived: n tiles left out, with the joints on both sides of them */
export function niche(
  tiles: number,
  sideMm: number,
  jointMm: number,
  lining: Lining,
): Outcome<{ clearMm: number; roughMm: number }> {
  if (!(Number.isInteger(tiles) && tiles >= 1))
    return refuse('out-of-range', { field: 'niche-tiles', value: tiles, min: 1, max: 100 })
  const clearMm = tiles * (sideMm + jointMm) + jointMm
  const each = lining.boardMm + lining.membraneMm + lining.mortarMm + lining.tileMm
  return fine({ clearMm, roughMm: clearMm + 2 * each })
}

/** The whole number of tiles whose clear opening comes nearest to a wanted one, at least 1. */
export const nicheTiles = (wantedMm: number, sideMm: number, jointMm: number): number =>
  Math.max(1, Math.round((wantedMm - jointMm) / (sideMm + jointMm)))

/** The places of joints' centre lines nearest to both finished edges of a wanted opening, so that it can be moved there.
 *  `firstMm`: where a tile begins on that axis. [mm] */
export function onJoints(
  fromMm: number,
  wantedMm: number,
  sideMm: number,
  jointMm: number,
  firstMm: number,
): { fromMm: number; clearMm: number; tiles: number } {
  const module = sideMm + jointMm
  const tiles = nicheTiles(wantedMm, sideMm, jointMm)
  const k = Math.round((fromMm + jointMm - firstMm) / module)
  return { fromMm: firstMm + k * module - jointMm, clearMm: tiles * module + jointMm, tiles }
}

/** Height of the ledger's top above the floor's low point, so that the bottom course is whole there and is cut down towards the
 *  high point: bottom gap + tile + joint. [mm]
 *  @param riseMm high point less low point along the wall @problem bad-floor does-not-fit where the rise eats the course
 *  @source common practice, no source */
export function ledger(
  sideMm: number,
  jointMm: number,
  bottomGapMm: number,
  riseMm: number,
): Outcome<{ heightMm: number; leastCutMm: number }> {
  const leastCutMm = sideMm - riseMm
  if (!(riseMm >= 0 && leastCutMm > 0)) return refuse('bad-floor', { why: 'does-not-fit' })
  return fine({ heightMm: bottomGapMm + sideMm + jointMm, leastCutMm })
}
