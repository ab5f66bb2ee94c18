/** Is this a floor? Crossing, touching, empty and misplaced rings are told apart, each a value of its own. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import {
  boxOf,
  distance,
  type Floor,
  LEAST_FLOOR_MM2,
  type Point,
  type Ring,
  ringArea,
  ringHolds,
  running,
  soundCorners,
  tidyRing,
} from './rings.ts'

/** Why rings are no floor; `bad-floor` carries one of these as `why`. */
export const FLOOR_FAULTS = [
  'no-rings',
  'too-few-corners',
  'not-a-number',
  'no-area',
  'crosses-itself',
  'touches-itself',
  'rings-cross',
  'rings-touch',
  'hole-outside',
  'walk-open',
  'no-such-corner',
  'does-not-fit',
  'diagonal-impossible',
] as const
export type FloorFault = (typeof FLOOR_FAULTS)[number]

/** Closer than this counts as touching [mm]. */
const TOUCH_MM = 1e-3

type Edge = {
  readonly ring: number
  readonly index: number
  readonly a: Point
  readonly b: Point
  readonly last: number
}

/** The floor of an outer ring and its holes, each in any turning direction.
 *  @problem bad-floor with `why` one of FLOOR_FAULTS and `where` [mm]; too-much-work; out-of-range */
export function floorOf(outer: Ring, holes: readonly Ring[] = []): Outcome<Floor> {
  const sound = soundCorners([outer, ...holes])
  if (!sound.ok) return sound
  const tidy = sound.value.map(tidyRing)
  for (const ring of tidy) {
    if (ring.length < 3) return refuse('bad-floor', { why: 'too-few-corners', where: ring[0] ?? null })
    if (Math.abs(ringArea(ring)) >= LEAST_FLOOR_MM2) continue
    const fault = crossing([ring]) // a bow tie's two halves cancel: the crossing is what to tell
    return refuse('bad-floor', fault?.why === 'crosses-itself' ? fault : { why: 'no-area', where: ring[0] })
  }
  const rings = tidy.map((ring, i) => running(ring, i === 0 ? 1 : -1))
  const fault = crossing(rings)
  if (fault) return refuse('bad-floor', fault)
  for (let h = 1; h < rings.length; h++) {
    if (!ringHolds(rings[0]!, rings[h]![0]!)) return refuse('bad-floor', { why: 'hole-outside', where: rings[h]![0] })
    for (let k = 1; k < rings.length; k++)
      if (k !== h && ringHolds(rings[k]!, rings[h]![0]!))
        return refuse('bad-floor', { why: 'rings-cross', where: rings[h]![0] })
  }
  return fine({ rings })
}

/** Rings as they come in, the first the floor and the others holes.
 *  @problem as floorOf */
export function floorOfRings(rings: readonly Ring[]): Outcome<Floor> {
  const [outer, ...holes] = rings
  return outer ? floorOf(outer, holes) : refuse('bad-floor', { why: 'no-rings' })
}

/** Several floors kept apart as one, where they do not overlap.
 *  @problem bad-floor rings-cross, rings-touch */
export function floorInParts(parts: readonly Floor[]): Outcome<Floor> {
  const rings = parts.flatMap((part) => part.rings)
  if (rings.length === 0) return refuse('bad-floor', { why: 'no-rings' })
  const fault = crossing(rings)
  return fault ? refuse('bad-floor', fault) : fine({ rings })
}

/** The first place where edges cross or touch that should not; edges are swept from left to right. */
function crossing(rings: readonly Ring[]): { why: FloorFault; where: Point } | null {
  const edges: Edge[] = rings.flatMap((ring, r) =>
    ring.map((a, index) => ({ ring: r, index, a, b: ring[(index + 1) % ring.length]!, last: ring.length - 1 })),
  )
  edges.sort((p, q) => Math.min(p.a[0], p.b[0]) - Math.min(q.a[0], q.b[0]))
  let open: Edge[] = []
  for (const edge of edges) {
    const left = Math.min(edge.a[0], edge.b[0]) - TOUCH_MM
    open = open.filter((other) => Math.max(other.a[0], other.b[0]) >= left)
    for (const other of open) {
      const met = meeting(edge, other)
      if (met) return met
    }
    open.push(edge)
  }
  return null
}

function meeting(p: Edge, q: Edge): { why: FloorFault; where: Point } | null {
  const low = Math.min(p.a[1], p.b[1]) - TOUCH_MM
  const high = Math.max(p.a[1], p.b[1]) + TOUCH_MM
  if (Math.max(q.a[1], q.b[1]) < low || Math.min(q.a[1], q.b[1]) > high) return null
  const own = p.ring === q.ring
  const step = Math.abs(p.index - q.index)
  if (own && (step === 1 || step === p.last)) return foldedBack(p, q)
  const crosses = side(p, q.a) * side(p, q.b) < 0 && side(q, p.a) * side(q, p.b) < 0
  if (crosses) return { why: own ? 'crosses-itself' : 'rings-cross', where: crossPoint(p, q) }
  const touch = [q.a, q.b].find((c) => nearTo(p, c)) ?? [p.a, p.b].find((c) => nearTo(q, c))
  return touch ? { why: own ? 'touches-itself' : 'rings-touch', where: touch } : null
}

/** Neighbouring edges share a corner; they may not lie on each other. */
function foldedBack(p: Edge, q: Edge): { why: FloorFault; where: Point } | null {
  const shared = distance(p.b, q.a) <= TOUCH_MM ? p.b : p.a
  const far = (e: Edge) => (distance(e.a, shared) > TOUCH_MM ? e.a : e.b)
  const [u, v] = [far(p), far(q)]
  if (p.last === 2) return null // a triangle's edges all meet; its area was looked at
  if (nearTo(p, v) || nearTo(q, u)) return { why: 'touches-itself', where: shared }
  return null
}

const side = (e: Edge, [x, y]: Point): number => (e.b[0] - e.a[0]) * (y - e.a[1]) - (e.b[1] - e.a[1]) * (x - e.a[0])

function nearTo({ a, b }: Edge, [x, y]: Point): boolean {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(a[0] + t * dx - x, a[1] + t * dy - y) <= TOUCH_MM
}

function crossPoint(p: Edge, q: Edge): Point {
  const [sa, sb] = [side(q, p.a), side(q, p.b)]
  const t = sa / (sa - sb)
  return [p.a[0] + t * (p.b[0] - p.a[0]), p.a[1] + t * (p.b[1] - p.a[1])]
}

/** The smallest upright box round the floor. [mm] */
export const floorBox = (floor: Floor) => boxOf(floor.rings)
