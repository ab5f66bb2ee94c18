/** Points, rings and floors in millimetres: x to the right, y up (towards the top wall), turns counter-clockwise. */
import { fine, type Outcome, type Range, refuse } from '../../problem.ts'

/** A point: x and y [mm]. */
export type Point = readonly [xMm: number, yMm: number]
/** Corners in order, closed without repeating the first. */
export type Ring = readonly Point[]

/** What is to be tiled: outer rings run counter-clockwise and holes clockwise, whatever their order, so the floor always
 *  lies to the left of every edge; several outer rings make a floor in parts. Rings neither cross nor overlap. */
export type Floor = { readonly rings: readonly Ring[] }

export type Box = { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }

/** Where a corner may lie [mm]: half a kilometre from zero. */
export const PLACE: Range = { field: 'floor-place', unit: 'mm', min: -500_000, max: 500_000 }
/** Corners a floor may have. */
export const CORNERS: Range = { field: 'floor-corners', unit: '', min: 3, max: 10_000 }
/** A floor smaller than this holds no tile [mm²]. */
export const LEAST_FLOOR_MM2 = 1

/** Area of a ring, positive where it runs counter-clockwise. [mm²] */
export function ringArea(ring: Ring): number {
  // Measured from the first corner: large coordinates would cost digits.
  const [x0, y0] = ring[0] ?? [0, 0]
  let twice = 0
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i]!
    const [bx, by] = ring[(i + 1) % ring.length]!
    twice += (ax - x0) * (by - y0) - (bx - x0) * (ay - y0)
  }
  return twice / 2
}

/** Length round a ring. [mm] */
export function ringLength(ring: Ring): number {
  return ring.reduce((sum, p, i) => sum + distance(p, ring[(i + 1) % ring.length]!), 0)
}

export const distance = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** Area of the floor, holes taken off. [mm²] */
export const floorArea = (floor: Floor): number => floor.rings.reduce((sum, ring) => sum + ringArea(ring), 0)

/** Length of the outer walls; holes are not counted. [mm] */
export const floorPerimeter = (floor: Floor): number =>
  floor.rings.reduce((sum, ring) => sum + (ringArea(ring) > 0 ? ringLength(ring) : 0), 0)

/** The upright box round all corners. [mm] */
export function boxOf(rings: readonly Ring[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const ring of rings)
    for (const [x, y] of ring) {
      if (x < minX) minX = x
      if (x > maxX) maxX = x
      if (y < minY) minY = y
      if (y > maxY) maxY = y
    }
  return { minX, minY, maxX, maxY }
}

/** Whether a point lies within the ring, by counting crossings to the right. */
export function ringHolds(ring: Ring, [x, y]: Point): boolean {
  let inside = false
  for (let i = 0; i < ring.length; i++) {
    const [ax, ay] = ring[i]!
    const [bx, by] = ring[(i + 1) % ring.length]!
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  }
  return inside
}

/** Whether a point lies on the floor. */
export const floorHolds = (floor: Floor, point: Point): boolean =>
  floor.rings.reduce((inside, ring) => (ringHolds(ring, point) ? !inside : inside), false)

/** Corners without doubles (closer than 1 µm) and without the first repeated at the end. */
export function tidyRing(ring: Ring): Ring {
  const kept = ring.filter((p, i) => i === 0 || distance(p, ring[i - 1]!) > 1e-3)
  while (kept.length > 1 && distance(kept[0]!, kept[kept.length - 1]!) <= 1e-3) kept.pop()
  return kept
}

export const reversed = (ring: Ring): Ring => ring.toReversed()

/** A ring turned so that its area has the wanted sign. */
export const running = (ring: Ring, sign: 1 | -1): Ring => (ringArea(ring) * sign < 0 ? reversed(ring) : ring)

/** Every corner moved by the same way. */
export const movedRing = (ring: Ring, dx: number, dy: number): Ring => ring.map(([x, y]) => [x + dx, y + dy] as const)
export const movedFloor = (floor: Floor, dx: number, dy: number): Floor => ({
  rings: floor.rings.map((ring) => movedRing(ring, dx, dy)),
})

/** The corners as numbers in range, or why not. Checked before any other work.
 *  @problem too-much-work more corners than CORNERS; not-a-number; out-of-range beyond PLACE */
export function soundCorners(rings: readonly Ring[]): Outcome<readonly Ring[]> {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0)
  if (count > CORNERS.max) return refuse('too-much-work', { what: 'corners', count, limit: CORNERS.max })
  for (const ring of rings)
    for (const point of ring)
      for (const value of [point[0], point[1]]) {
        if (typeof value !== 'number' || !Number.isFinite(value)) return refuse('bad-floor', { why: 'not-a-number' })
        if (value < PLACE.min || value > PLACE.max)
          return refuse('out-of-range', { field: PLACE.field, value, min: PLACE.min, max: PLACE.max, unit: 'mm' })
      }
  return fine(rings)
}
