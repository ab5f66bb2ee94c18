/** What sheet goods ask of a floor: the pieces of it in a box, and the stretches of it along a line. */
import { Clipper, FillRule, type Paths64 } from 'clipper2-ts'
import { type Box, boxOf, type Floor, floorHolds, type Point, type Ring, ringArea, ringHolds } from '../floor/rings.ts'

/** A stretch of a line that lies on the floor. */
export type Stretch = readonly [from: number, to: number]

/** Whole steps a mm for the clipping library, which works in whole numbers: 0.01 mm. */
const STEPS_PER_MM = 100
/** Pieces under this are rounding, not material. [mm²] */
const SPECK_MM2 = 1

/** The corners of a box, counter-clockwise. */
export const ringOf = ({ minX, minY, maxX, maxY }: Box): Ring => [
  [minX, minY],
  [maxX, minY],
  [maxX, maxY],
  [minX, maxY],
]

/** A rectangular floor with its corner at 0,0. */
export const rectangle = (widthMm: number, heightMm: number): Floor => ({
  rings: [ringOf({ minX: 0, minY: 0, maxX: widthMm, maxY: heightMm })],
})

/** The floor with x and y exchanged, so that what runs along x can run along y. */
export const transposed = (floor: Floor): Floor => ({
  rings: floor.rings.map((ring) => ring.map(([x, y]): Point => [y, x]).reverse()),
})

/** True when the box lies wholly on the floor: no wall passes through it and its middle is inside. */
export function boxIsInside(floor: Floor, box: Box): boolean {
  for (const ring of floor.rings)
    for (let i = 0; i < ring.length; i++) if (wallEnters(ring[i]!, ring[(i + 1) % ring.length]!, box)) return false
  return floorHolds(floor, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2])
}

/** True when a wall runs through the open inside of the box (touching its edge does not count). */
function wallEnters(a: Point, b: Point, box: Box): boolean {
  let from = 0
  let to = 1
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  for (const [p, q] of [
    [-dx, a[0] - box.minX],
    [dx, box.maxX - a[0]],
    [-dy, a[1] - box.minY],
    [dy, box.maxY - a[1]],
  ] as const) {
    if (p === 0) {
      if (q <= 0) return false
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  return to - from > 1e-12
}

const toPaths = (rings: readonly Ring[]): Paths64 =>
  rings.map((ring) => ring.map(([x, y]) => ({ x: Math.round(x * STEPS_PER_MM), y: Math.round(y * STEPS_PER_MM) })))

/** What of the box is floor: each connected piece with its area and its own box; holes taken off. */
export function piecesIn(floor: Floor, box: Box): { areaMm2: number; box: Box }[] {
  const room = plainRoom(floor)
  if (room) return commonBox(room, box)
  if (boxIsInside(floor, box)) return [{ areaMm2: (box.maxX - box.minX) * (box.maxY - box.minY), box }]
  const cut = Clipper.intersect(toPaths(floor.rings), toPaths([ringOf(box)]), FillRule.EvenOdd).map((path) =>
    path.map(({ x, y }): Point => [x / STEPS_PER_MM, y / STEPS_PER_MM]),
  )
  const holes = cut.filter((ring) => ringArea(ring) < 0)
  return cut
    .filter((ring) => ringArea(ring) > 0)
    .map((ring) => {
      const mine = holes.filter((hole) => ringHolds(ring, hole[0]!))
      return { areaMm2: [ring, ...mine].reduce((sum, r) => sum + ringArea(r), 0), box: boxOf([ring]) }
    })
    .filter((piece) => piece.areaMm2 > SPECK_MM2)
}

/** The box that an upright rectangular floor is; null for any other. Most rooms are, and need no clipping. */
function plainRoom({ rings }: Floor): Box | null {
  const ring = rings[0]!
  if (rings.length !== 1 || ring.length !== 4) return null
  const box = boxOf(rings)
  const isCorner = ([x, y]: Point) => (x === box.minX || x === box.maxX) && (y === box.minY || y === box.maxY)
  return ring.every(isCorner) && Math.abs(ringArea(ring)) > 0 ? box : null
}

function commonBox(a: Box, b: Box): { areaMm2: number; box: Box }[] {
  const box = {
    minX: Math.max(a.minX, b.minX),
    minY: Math.max(a.minY, b.minY),
    maxX: Math.min(a.maxX, b.maxX),
    maxY: Math.min(a.maxY, b.maxY),
  }
  const areaMm2 = Math.max(0, box.maxX - box.minX) * Math.max(0, box.maxY - box.minY)
  return areaMm2 > SPECK_MM2 ? [{ areaMm2, box }] : []
}

/** The stretches of the level line at `y` with floor on both sides of it: along a wall there is no seam. */
export function stretchesAlong(floor: Floor, y: number): Stretch[] {
  const above = crossings(floor, (v) => v > y, y)
  const below = crossings(floor, (v) => v >= y, y)
  return shared(above, below)
}

function crossings(floor: Floor, isAbove: (v: number) => boolean, y: number): Stretch[] {
  const xs: number[] = []
  for (const ring of floor.rings)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!
      const b = ring[(i + 1) % ring.length]!
      if (isAbove(a[1]) !== isAbove(b[1])) xs.push(a[0] + ((y - a[1]) / (b[1] - a[1])) * (b[0] - a[0]))
    }
  xs.sort((p, q) => p - q)
  return Array.from({ length: xs.length >> 1 }, (_, i) => [xs[2 * i]!, xs[2 * i + 1]!] as const)
}

/** What two sorted lists of stretches have in common. */
export function shared(one: readonly Stretch[], other: readonly Stretch[]): Stretch[] {
  const both: Stretch[] = []
  for (const [a, b] of one)
    for (const [c, d] of other) {
      const from = Math.max(a, c)
      const to = Math.min(b, d)
      if (to > from) both.push([from, to])
    }
  return both
}

export const totalMm = (stretches: readonly Stretch[]): number => stretches.reduce((sum, [a, b]) => sum + b - a, 0)
