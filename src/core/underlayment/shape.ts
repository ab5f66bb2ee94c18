/** Floors as rings of points, and what sheet goods ask of them: pieces in a rectangle, runs along a line. */
import { Clipper, FillRule, type Paths64 } from 'clipper2-ts'

export type Point = { readonly x: number; readonly y: number }
export type Ring = readonly Point[]
/** First ring the floor, the others holes; corners in mm, either way round. */
export type Floor = readonly Ring[]
export type Box = { readonly left: number; readonly bottom: number; readonly right: number; readonly top: number }
/** A stretch of a line that lies on the floor. */
export type Stretch = readonly [from: number, to: number]

/** Whole steps a mm for the clipping library, which works in whole numbers: 0.01 mm. */
const STEPS_PER_MM = 100
/** Pieces under this are rounding, not material. [mm²] */
const SPECK_MM2 = 1

/** Area inside a ring, positive when it runs counter-clockwise. [mm²] */
export function ringAreaMm2(ring: Ring): number {
  let twice = 0
  for (let i = 0; i < ring.length; i++) {
    const a = ring[i]!
    const b = ring[(i + 1) % ring.length]!
    twice += a.x * b.y - b.x * a.y
  }
  return twice / 2
}

/** Area of a floor less its holes. [mm²] */
export const floorAreaMm2 = (floor: Floor): number =>
  floor.reduce((sum, ring, i) => sum + (i === 0 ? 1 : -1) * Math.abs(ringAreaMm2(ring)), 0)

/** Length round a ring. [mm] */
export const ringLengthMm = (ring: Ring): number =>
  ring.reduce((sum, a, i) => {
    const b = ring[(i + 1) % ring.length]!
    return sum + Math.hypot(b.x - a.x, b.y - a.y)
  }, 0)

/** The same ring, counter-clockwise. */
export const counterClockwise = (ring: Ring): Ring => (ringAreaMm2(ring) < 0 ? ring.toReversed() : ring)

/** The upright box round some points. */
export function boxOf(points: Ring): Box {
  const xs = points.map((p) => p.x)
  const ys = points.map((p) => p.y)
  return { left: Math.min(...xs), bottom: Math.min(...ys), right: Math.max(...xs), top: Math.max(...ys) }
}

/** A rectangular floor with its corner at 0,0. */
export const rectangle = (widthMm: number, heightMm: number): Floor => [
  [
    { x: 0, y: 0 },
    { x: widthMm, y: 0 },
    { x: widthMm, y: heightMm },
    { x: 0, y: heightMm },
  ],
]

/** The floor with x and y exchanged, so that what runs along x can run along y. */
export const transposed = (floor: Floor): Floor => floor.map((ring) => ring.map(({ x, y }) => ({ x: y, y: x })))

/** True when the box lies wholly on the floor: no wall passes through it and its middle is inside. */
export function boxIsInside(floor: Floor, box: Box): boolean {
  for (const ring of floor)
    for (let i = 0; i < ring.length; i++) if (edgeEnters(ring[i]!, ring[(i + 1) % ring.length]!, box)) return false
  return pointIsInside(floor, { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 })
}

/** True when a wall runs through the open inside of the box (touching its edge does not count). */
function edgeEnters(a: Point, b: Point, box: Box): boolean {
  let from = 0
  let to = 1
  const dx = b.x - a.x
  const dy = b.y - a.y
  for (const [p, q] of [
    [-dx, a.x - box.left],
    [dx, box.right - a.x],
    [-dy, a.y - box.bottom],
    [dy, box.top - a.y],
  ] as const) {
    if (p === 0) {
      if (q <= 0) return false
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  return to - from > 1e-12
}

/** Even-odd rule over all rings. */
export function pointIsInside(floor: Floor, at: Point): boolean {
  let inside = false
  for (const ring of floor)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!
      const b = ring[(i + 1) % ring.length]!
      if (a.y > at.y !== b.y > at.y && at.x < a.x + ((at.y - a.y) / (b.y - a.y)) * (b.x - a.x)) inside = !inside
    }
  return inside
}

const toPaths = (floor: Floor): Paths64 =>
  floor.map((ring) => ring.map(({ x, y }) => ({ x: Math.round(x * STEPS_PER_MM), y: Math.round(y * STEPS_PER_MM) })))

/** What of the box is floor: each connected piece with its area and its own box; holes taken off. */
export function piecesIn(floor: Floor, box: Box): { areaMm2: number; box: Box }[] {
  if (boxIsInside(floor, box)) return [{ areaMm2: (box.right - box.left) * (box.top - box.bottom), box }]
  const frame: Ring = rectangle(box.right - box.left, box.top - box.bottom)[0]!.map(({ x, y }) => ({
    x: x + box.left,
    y: y + box.bottom,
  }))
  const cut = Clipper.intersect(toPaths(floor), toPaths([frame]), FillRule.EvenOdd).map((path) =>
    path.map(({ x, y }) => ({ x: x / STEPS_PER_MM, y: y / STEPS_PER_MM })),
  )
  const outers = cut.filter((ring) => ringAreaMm2(ring) > 0)
  const holes = cut.filter((ring) => ringAreaMm2(ring) < 0)
  return outers
    .map((ring) => {
      const mine = holes.filter((hole) => pointIsInside([ring], hole[0]!))
      return { areaMm2: floorAreaMm2([ring, ...mine]), box: boxOf(ring) }
    })
    .filter((piece) => piece.areaMm2 > SPECK_MM2)
}

/** The stretches of the level line at `y` with floor on both sides of it: along a wall there is no seam. */
export function stretchesAlong(floor: Floor, y: number): Stretch[] {
  const above = crossings(floor, (v) => v > y, y)
  const below = crossings(floor, (v) => v >= y, y)
  return shared(above, below)
}

function crossings(floor: Floor, isAbove: (v: number) => boolean, y: number): Stretch[] {
  const xs: number[] = []
  for (const ring of floor)
    for (let i = 0; i < ring.length; i++) {
      const a = ring[i]!
      const b = ring[(i + 1) % ring.length]!
      if (isAbove(a.y) !== isAbove(b.y)) xs.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x))
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
