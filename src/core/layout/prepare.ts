/** A floor made ready to be laid: its walls in the lattice's coordinates and the way back, or a refusal by the estimated work. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { inset } from '../floor/combine.ts'
import { type Floor, floorArea, type Point, soundCorners } from '../floor/rings.ts'
import type { Walls } from './box-walls.ts'
import type { Lattice } from './lattice.ts'
import { latticeOf } from './patterns.ts'
import { seedOf } from './random.ts'
import { type LayoutSpec, soundSpec } from './spec.ts'

/** A floor made ready: walls in lattice coordinates and the way back. */
export type Laid = {
  readonly floor: Floor
  readonly lattice: Lattice
  readonly walls: Walls
  readonly toFloor: (u: number, v: number) => Point
  readonly toLattice: (point: Point) => Point
  readonly areaMm2: number
}

/** Meetings of walls and modules above which a layout is refused. */
export const MOST_MEETINGS = 1_000_000

/** Walls in lattice coordinates, or a refusal by the estimated work. */
export function prepare(floor: Floor, spec: LayoutSpec): Outcome<Laid> {
  const sound = soundSpec(spec)
  if (!sound.ok) return sound
  const corners = soundCorners(floor.rings)
  if (!corners.ok) return corners
  const meetings = estimate(floor, spec)
  if (!(meetings <= MOST_MEETINGS))
    return refuse('too-much-work', { what: 'cuts', count: Math.round(meetings), limit: MOST_MEETINGS })
  const drawnIn = inset(floor, spec.wallGapMm)
  if (!drawnIn.ok) return drawnIn
  return fine(inLattice(drawnIn.value, spec))
}

/** About how many modules the walls meet. */
export function estimate(floor: Floor, spec: LayoutSpec): number {
  const { lengthMm, widthMm } = spec.tile
  const small = spec.pattern.kind === 'two-size' ? spec.pattern.smallMm : Infinity
  const least = Math.min(lengthMm, widthMm, small) + spec.jointMm
  let meetings = 0
  for (const ring of floor.rings)
    for (let k = 0; k < ring.length; k++) {
      const [ax, ay] = ring[k]!
      const [bx, by] = ring[(k + 1) % ring.length]!
      meetings += 2 + (Math.abs(bx - ax) + Math.abs(by - ay)) / least
    }
  return meetings
}

const TURNS: Readonly<Record<number, readonly [cos: number, sin: number]>> = {
  0: [1, 0],
  90: [0, 1],
  180: [-1, 0],
  270: [0, -1],
}

/** Cosine and sine of an angle [degrees], exact at quarter turns. */
export function turn(angleDeg: number): readonly [cos: number, sin: number] {
  const rest = ((angleDeg % 360) + 360) % 360
  return TURNS[rest] ?? [Math.cos((rest * Math.PI) / 180), Math.sin((rest * Math.PI) / 180)]
}

/** To the picometre's neighbourhood: floating noise of a turn must not make a level wall lean. */
const grid = (value: number): number => Math.round(value * 1e6) / 1e6

function inLattice(floor: Floor, spec: LayoutSpec): Laid {
  const [cos, sin] = turn(spec.angleDeg)
  const [ox, oy] = spec.originMm
  const swapped = spec.pattern.kind === 'offset' && spec.pattern.along === 'width'
  const first = latticeOf(
    { ...spec, pattern: spec.pattern.kind === 'random' ? { kind: 'stacked' } : spec.pattern },
    NO_EXTENT,
  )
  const { insetU, insetV } = first.families[0]!
  const total = floor.rings.reduce((sum, ring) => sum + ring.length, 0)
  const walls = {
    u0: new Float64Array(total),
    v0: new Float64Array(total),
    u1: new Float64Array(total),
    v1: new Float64Array(total),
  }
  const toLattice = ([x, y]: Point): Point => {
    const along = (x - ox) * cos + (y - oy) * sin
    const across = (y - oy) * cos - (x - ox) * sin
    return [grid((swapped ? across : along) + insetU), grid((swapped ? along : across) + insetV)]
  }
  let n = 0
  let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity]
  for (const ring of floor.rings) {
    const start = n
    for (const point of ring) {
      const [u, v] = toLattice(point)
      if (u < minU) minU = u
      if (u > maxU) maxU = u
      if (v < minV) minV = v
      if (v > maxV) maxV = v
      walls.u0[n] = u
      walls.v0[n] = v
      n++
    }
    for (let k = start; k < n; k++) {
      const to = k + 1 < n ? k + 1 : start
      walls.u1[k] = walls.u0[to]!
      walls.v1[k] = walls.v0[to]!
    }
  }
  const lattice =
    spec.pattern.kind === 'random' ? latticeOf(spec, { seed: seedOf(floor.rings), minU, maxU, minV, maxV }) : first
  return {
    floor,
    lattice,
    // Swapped axes turn the floor inside out; walls run backwards then.
    walls: swapped ? { u0: walls.u1, v0: walls.v1, u1: walls.u0, v1: walls.v0 } : walls,
    toFloor: (u, v) => {
      const [p, q] = swapped ? [v - insetV, u - insetU] : [u - insetU, v - insetV]
      return [ox + p * cos - q * sin, oy + p * sin + q * cos]
    },
    toLattice,
    areaMm2: floorArea(floor),
  }
}

/** For patterns that ask nothing of the floor. */
export const NO_EXTENT = { seed: 0, minU: 0, maxU: 0, minV: 0, maxV: 0 }
