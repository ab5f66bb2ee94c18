/** What a drain sees of a floor, and the shortest way along the floor to what it does not see.
 *  Seen parts fan out from the drain in triangles; each hidden pocket hangs on one corner, and every shortest way into
 *  it bends round that corner, so the pocket is fanned from there in turn. Exact, without a grid. */
import { distance as apartMm, type Point, type Ring } from '../floor/rings.ts'

/** A triangle of the floor in which the shortest way is straight from `from`, itself `awayMm` from the drain. */
export type Fan = { readonly from: Point; readonly awayMm: number; readonly near: Point; readonly far: Point }

const TOUCH_MM = 1e-6
const SAME_TURN = 1e-12
/** Ends nearer than this are the same point. */
const JOINED_MM = 1e-3

/** Fans that cover the floor once. The ring runs counter-clockwise; the drain is inside it or on its edge. */
export function fansFrom(ring: Ring, drain: Point): Fan[] {
  const fans: Fan[] = []
  const pockets: { ring: Ring; from: Point; awayMm: number }[] = [{ ring, from: drain, awayMm: 0 }]
  // Each pocket has a corner fewer to hide behind; the count is a guard against rounding only.
  for (let left = 4 * ring.length + 4; pockets.length && left > 0; left--) {
    const { ring: part, from, awayMm } = pockets.pop()!
    const seen = triangles(part, from)
    for (const { a, b } of seen) fans.push({ from, awayMm, near: a, far: b })
    for (const pocket of hidden(part, from, seen)) {
      const more = apartMm(pocket.corner, from)
      pockets.push({ ring: pocket.ring, from: pocket.corner, awayMm: awayMm + more })
    }
  }
  return fans
}

type Seen = { readonly edge: number; readonly a: Point; readonly b: Point }

/** Triangles from the eye to the walls it sees, counter-clockwise; a and b lie on wall `edge`. */
function triangles(ring: Ring, eye: Point): Seen[] {
  const { start, span } = openAngle(ring, eye)
  const turns = [0, span]
  for (const p of ring) {
    if (apartMm(p, eye) < TOUCH_MM) continue
    const turn = positive(Math.atan2(p[1] - eye[1], p[0] - eye[0]) - start)
    if (turn > SAME_TURN && turn < span - SAME_TURN) turns.push(turn)
  }
  turns.sort((p, q) => p - q)
  const seen: Seen[] = []
  for (let i = 1; i < turns.length; i++) {
    const [from, to] = [turns[i - 1]!, turns[i]!]
    if (to - from < SAME_TURN) continue
    const edge = firstWall(ring, eye, start + (from + to) / 2)
    if (edge < 0) continue
    const a = hit(ring, edge, eye, start + from)
    const b = hit(ring, edge, eye, start + to)
    const last = seen.at(-1)
    if (last && last.edge === edge) seen[seen.length - 1] = { edge, a: last.a, b }
    else seen.push({ edge, a, b })
  }
  return seen
}

/** The angle open to the eye: all round inside the floor, the corner's own at a corner, half a turn on a wall. */
function openAngle(ring: Ring, eye: Point): { start: number; span: number } {
  const out = ring.findIndex((p, i) => wallStartsAt(p, ring[(i + 1) % ring.length]!, eye))
  if (out < 0) return { start: Math.PI / 7, span: 2 * Math.PI }
  const direction = (p: Point) => Math.atan2(p[1] - eye[1], p[0] - eye[0])
  const start = direction(ring[(out + 1) % ring.length]!)
  if (apartMm(ring[out]!, eye) >= TOUCH_MM) return { start, span: Math.PI }
  return { start, span: positive(direction(ring[(out + ring.length - 1) % ring.length]!) - start) }
}

const positive = (angle: number): number => ((angle % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI)

/** Distance from a point to a wall. [mm] */
export function toSegmentMm(p: Point, a: Point, b: Point): number {
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / (dx * dx + dy * dy || 1)))
  return Math.hypot(p[0] - a[0] - t * dx, p[1] - a[1] - t * dy)
}

function firstWall(ring: Ring, eye: Point, angle: number): number {
  let best = -1
  let nearest = Number.POSITIVE_INFINITY
  for (let i = 0; i < ring.length; i++) {
    const far = along(ring, i, eye, angle)
    if (far !== null && far > TOUCH_MM && far < nearest) {
      nearest = far
      best = i
    }
  }
  return best
}

/** How far along the ray wall i is met; null where it is missed. */
function along(ring: Ring, i: number, eye: Point, angle: number): number | null {
  const a = ring[i]!
  const b = ring[(i + 1) % ring.length]!
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
  const sideA = ux * (a[1] - eye[1]) - uy * (a[0] - eye[0])
  const sideB = ux * (b[1] - eye[1]) - uy * (b[0] - eye[0])
  if (sideA > 0 === sideB > 0) return null
  const t = sideA / (sideA - sideB)
  return ux * (a[0] + t * (b[0] - a[0]) - eye[0]) + uy * (a[1] + t * (b[1] - a[1]) - eye[1])
}

/** Where a ray meets the line of a wall that it is known to reach, kept within the wall. */
function hit(ring: Ring, i: number, eye: Point, angle: number): Point {
  const a = ring[i]!
  const b = ring[(i + 1) % ring.length]!
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)]
  const across = ux * (b[1] - a[1]) - uy * (b[0] - a[0])
  const t = Math.max(0, Math.min(1, (uy * (a[0] - eye[0]) - ux * (a[1] - eye[1])) / (across || 1)))
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}

type Pocket = { readonly ring: Ring; readonly corner: Point }

/** Parts of the floor between what is seen: the walls from one seen triangle's end to the next one's start. */
function hidden(ring: Ring, eye: Point, seen: readonly Seen[]): Pocket[] {
  const round = withEyesWall(ring, eye, seen)
  const pockets: Pocket[] = []
  for (let i = 0; i < round.length; i++) {
    const one = round[i]!
    const next = round[(i + 1) % round.length]!
    if (apartMm(one.b, next.a) < JOINED_MM) continue
    const walls: Point[] = [one.b]
    for (let edge = one.edge, k = 0; edge !== next.edge && k <= ring.length; k++) {
      edge = (edge + 1) % ring.length
      walls.push(ring[edge]!)
    }
    walls.push(next.a)
    const clean = walls.filter((p, k) => apartMm(p, walls[(k + walls.length - 1) % walls.length]!) > JOINED_MM)
    if (clean.length < 3) continue
    // The nearer end of the gap is the corner that hides what lies behind.
    pockets.push({ ring: clean, corner: apartMm(one.b, eye) <= apartMm(next.a, eye) ? one.b : next.a })
  }
  return pockets
}

/** An eye on the wall sees that wall edge-on: its two ends close the round. */
function withEyesWall(ring: Ring, eye: Point, seen: readonly Seen[]): readonly Seen[] {
  const out = ring.findIndex((p, i) => wallStartsAt(p, ring[(i + 1) % ring.length]!, eye))
  if (out < 0) return seen
  const isCorner = apartMm(ring[out]!, eye) < TOUCH_MM
  const into = isCorner ? (out + ring.length - 1) % ring.length : out
  return [{ edge: out, a: eye, b: ring[(out + 1) % ring.length]! }, ...seen, { edge: into, a: ring[into]!, b: eye }]
}

/** True for the wall that leaves the eye: it starts there, or the eye stands on it short of its end. */
const wallStartsAt = (a: Point, b: Point, eye: Point): boolean =>
  apartMm(a, eye) < TOUCH_MM || (toSegmentMm(eye, a, b) < TOUCH_MM && apartMm(b, eye) >= TOUCH_MM)
