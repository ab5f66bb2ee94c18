/** Lays a pattern on a floor and counts exactly.
 *
 *  Only modules that a wall meets are looked at. Modules cover the plane, so the ones wholly inside are known without a look:
 *  floor area less the area of the met modules, divided by a module's, is their whole number. Work grows with the cuts alone. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { inset } from '../floor/combine.ts'
import { type Floor, floorArea, type Point, soundCorners } from '../floor/rings.ts'
import { BoxClip, type ClipPiece, type Walls } from './clip.ts'
import { type Family, type Lattice, latticeOf } from './lattice.ts'
import { MetModules } from './met.ts'
import { seedOf } from './random.ts'
import { type LayoutSpec, soundSpec } from './spec.ts'
import { StraightCut } from './straight.ts'

/** A cell with less floor than this takes no tile, and a tile that loses less is whole [mm²]. */
export const LEAST_CELL_MM2 = 3

export type Layout = {
  /** Places that take a whole or a cut tile. */
  readonly cells: number
  readonly whole: number
  readonly cut: number
  /** Pieces in the cut cells: a cell split by a wall holds several. */
  readonly cutPieces: number
  /** Face of all tiles and pieces laid [mm²]. */
  readonly tileAreaMm2: number
  /** The floor before the wall gap [mm²]. */
  readonly floorAreaMm2: number
  /** Centre lines of the joints inside the floor, each point once, the wall gap not counted [mm]. */
  readonly jointLengthMm: number
  /** Least width of a cut piece, its smaller extent along the tile's own axes; null without cuts [mm]. */
  readonly smallestCutMm: number | null
  readonly originMm: Point
  /** Whole and cut places of each size, where the pattern has two. */
  readonly bySize?: readonly { readonly whole: number; readonly cut: number }[]
}

/** A place that a wall meets, with what of its tile is on the floor. */
export type MetCell = {
  readonly family: number
  readonly i: number
  readonly j: number
  /** Corner of the tile in lattice coordinates. */
  readonly u: number
  readonly v: number
  /** The tile's sides along u and v. */
  readonly tileA: number
  readonly tileB: number
  readonly turned: boolean
  readonly whole: boolean
  readonly pieces: readonly ClipPiece[]
  /** Numbers of the stretches of wall that meet the module. */
  readonly walls: readonly number[]
}

/** A floor made ready: walls in lattice coordinates and the way back. */
export type Laid = {
  readonly floor: Floor
  readonly lattice: Lattice
  readonly walls: Walls
  readonly toFloor: (u: number, v: number) => Point
  readonly toLattice: (point: Point) => Point
  readonly areaMm2: number
}

type Listener = {
  readonly tell: (cell: MetCell, laid: Laid) => void
  readonly tellBare: (family: number, i: number, j: number) => void
}

/** Meetings of walls and modules above which a layout is refused. */
export const MOST_MEETINGS = 1_000_000
/** Wall-by-band steps above which a layout is refused. */
export const MOST_STEPS = 30_000_000

/** The exact layout of a floor.
 *  @param floor as `floorOf` gives it: rings that do not cross
 *  @problem out-of-range for a number of the spec; too-much-work by an estimate, before any work; nothing-left after the gap */
export function lay(floor: Floor, spec: LayoutSpec): Outcome<Layout> {
  const ready = prepare(floor, spec)
  if (!ready.ok) return ready
  return count(ready.value, floor, spec, null)
}

/** As `lay`, telling of each met cell that takes a tile, and of those met that take none. */
export function layWith(
  floor: Floor,
  spec: LayoutSpec,
  tell: (cell: MetCell, laid: Laid) => void,
  tellBare: (family: number, i: number, j: number) => void = () => {},
): Outcome<Layout> {
  const ready = prepare(floor, spec)
  return ready.ok ? count(ready.value, floor, spec, { tell, tellBare }) : ready
}

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

function meet(laid: Laid): MetModules {
  const { walls, lattice } = laid
  const total = walls.u0.length
  const met = new MetModules(total * 4)
  let wall = 0
  const add = (family: number, i: number, j: number) => met.add(wall, family, i, j)
  for (; wall < total; wall++) lattice.along(walls.u0[wall]!, walls.v0[wall]!, walls.u1[wall]!, walls.v1[wall]!, add)
  return met
}

function count(laid: Laid, before: Floor, spec: LayoutSpec, listener: Listener | null): Outcome<Layout> {
  const { lattice, walls } = laid
  const met = meet(laid)
  const steps = bandSteps(met)
  if (steps > MOST_STEPS) return refuse('too-much-work', { what: 'cuts', count: steps, limit: MOST_STEPS })
  const box = new BoxClip()
  const straight = new StraightCut()
  const bySize = lattice.families.map(() => ({ whole: 0, cut: 0 }))
  const sum: Sums = { metMm2: 0, halfBorders: 0, bySize, pieces: 0, tileMm2: 0, smallest: Infinity }
  for (let m = 0; m < met.count; m++) {
    const f = met.family[m]!
    const kind = lattice.families[f]!
    const ou = lattice.originU(f, met.i[m]!, met.j[m]!)
    const ov = lattice.originV(f, met.i[m]!, met.j[m]!)
    const head = met.head[m]!
    const w = met.wallAt[head]!
    const only = listener === null && kind.shape === 'box' && met.next[head]! < 0
    if (only && straight.takes(kind, walls.u0[w]! - ou, walls.v0[w]! - ov, walls.u1[w]! - ou, walls.v1[w]! - ov)) {
      addStraight(sum, straight, kind, f)
      continue
    }
    box.clip(walls, head, met.wallAt, met.next, ou, ov, kind.a, kind.b, kind.shape)
    if (box.walls === 0) continue // only missed: it is wholly inside or outside, and the areas tell which
    sum.metMm2 += box.areaMm2
    sum.halfBorders += box.borderMm / 2
    const { tileMm2 } = kind
    const [u, v] = [ou + kind.insetU, ov + kind.insetV]
    const centreIn = box.holds(kind.insetU + kind.tileA / 2, kind.insetV + kind.tileB / 2)
    box.clip(walls, head, met.wallAt, met.next, u, v, kind.tileA, kind.tileB, kind.shape)
    const areaMm2 = box.walls > 0 ? box.areaMm2 : centreIn ? tileMm2 : 0
    if (areaMm2 < LEAST_CELL_MM2) {
      listener?.tellBare(f, met.i[m]!, met.j[m]!)
      continue
    }
    const whole = areaMm2 > tileMm2 - LEAST_CELL_MM2
    sum.tileMm2 += areaMm2
    const pieces = whole ? [] : box.pieces(listener !== null).filter((piece) => piece.areaMm2 >= LEAST_CELL_MM2)
    if (whole) sum.bySize[f]!.whole++
    else {
      sum.bySize[f]!.cut++
      sum.pieces += pieces.length
      for (const p of pieces) sum.smallest = Math.min(sum.smallest, p.maxU - p.minU, p.maxV - p.minV)
    }
    if (!listener) continue
    const chain: number[] = []
    for (let e = head; e >= 0; e = met.next[e]!) chain.push(met.wallAt[e]!)
    const { tileA, tileB, turned } = kind
    listener.tell(
      { family: f, i: met.i[m]!, j: met.j[m]!, u, v, tileA, tileB, turned, whole, pieces, walls: chain },
      laid,
    )
  }
  const unmetMm2 = laid.areaMm2 - sum.metMm2
  const inside = insideOf(laid, met, unmetMm2)
  const counted = sum.bySize.map(({ whole, cut }, f) => ({ whole: whole + inside[f]!, cut }))
  const insideMm2 = inside.reduce((mm2, n, f) => mm2 + n * lattice.families[f]!.moduleMm2, 0)
  const least = Math.min(...lattice.families.map((kind) => kind.moduleMm2))
  if (inside.some((n) => n < 0) || Math.abs(unmetMm2 - insideMm2) > 0.01 * least)
    return refuse('bad-floor', { why: 'crosses-itself' })
  const total = (of: (f: number) => number): number => inside.reduce((all, _, f) => all + of(f), 0)
  const [whole, cut] = [total((f) => counted[f]!.whole), total((f) => counted[f]!.cut)]
  return fine({
    cells: whole + cut,
    whole,
    cut,
    cutPieces: sum.pieces,
    tileAreaMm2: total((f) => inside[f]! * lattice.families[f]!.tileMm2) + sum.tileMm2,
    floorAreaMm2: floorArea(before),
    jointLengthMm: total((f) => inside[f]! * halfBorder(lattice.families[f]!)) + sum.halfBorders,
    smallestCutMm: sum.smallest === Infinity ? null : sum.smallest,
    originMm: spec.originMm,
    ...(spec.pattern.kind === 'two-size' ? { bySize: counted } : {}),
  })
}

/** Half of a module's border: each side lies between two modules. */
const halfBorder = ({ shape, a, b }: Family): number => (shape === 'hexagon' ? a * Math.sqrt(3) : a + b)

/** How many modules of each family lie wholly inside: by area where all have one, told apart by looking where not. */
function insideOf(laid: Laid, met: MetModules, unmetMm2: number): number[] {
  const { families } = laid.lattice
  const inside = families.map(() => 0)
  if (families.every((kind) => Math.abs(kind.moduleMm2 - families[0]!.moduleMm2) < 1e-6)) {
    inside[0] = Math.round(unmetMm2 / families[0]!.moduleMm2)
    return inside
  }
  insideModules(
    laid,
    (f, i, j) => met.has(f, i, j),
    (f) => inside[f]!++,
  )
  return inside
}

/** Lines stop this short of walls, so that they meet nothing beyond [mm]. */
const CLEAR_MM = 1e-4

/** Tells of each module that no wall meets, found by lines drawn over the floor closer than the narrowest one is high. */
export function insideModules(
  { lattice, walls }: Laid,
  isMet: (family: number, i: number, j: number) => boolean,
  tell: (family: number, i: number, j: number) => void,
): void {
  // A hexagon is as wide as its box over the middle half of its height only.
  const reach = (f: number): number => (lattice.families[f]!.shape === 'hexagon' ? 0.25 : 0)
  const step = 0.99 * Math.min(...lattice.families.map((kind, f) => kind.b * (1 - 2 * reach(f))))
  let [low, high] = [Infinity, -Infinity]
  for (const v of walls.v0) {
    if (v < low) low = v
    if (v > high) high = v
  }
  // Rows of hexagons reach into each other, so that one may be met twice by a line.
  const seen = lattice.families[0]!.shape === 'hexagon' ? new Set<number>() : null
  const first = low + step * 0.4637
  for (let n = 0; first + n * step < high; n++) {
    const [v, before] = [first + n * step, first + (n - 1) * step]
    const crossings = crossingsAt(walls, v)
    for (let k = 0; k + 1 < crossings.length; k += 2)
      lattice.along(crossings[k]! + CLEAR_MM, v, crossings[k + 1]! - CLEAR_MM, v, (family, i, j) => {
        const { b } = lattice.families[family]!
        const foot = lattice.originV(family, i, j) + b * reach(family)
        // Told at the first line through it, which lies on the floor as all of it does.
        if (v < foot || before >= foot || v > foot + b * (1 - 2 * reach(family)) || isMet(family, i, j)) return
        const key = i * MOST_ROWS + j
        if (seen?.has(key)) return
        seen?.add(key)
        tell(family, i, j)
      })
  }
}

/** More rows than any floor has modules of 5 mm. */
const MOST_ROWS = 2 ** 22

function crossingsAt({ u0, v0, u1, v1 }: Walls, v: number): number[] {
  const found: number[] = []
  for (let w = 0; w < u0.length; w++)
    if (v0[w]! > v !== v1[w]! > v) found.push(u0[w]! + ((v - v0[w]!) / (v1[w]! - v0[w]!)) * (u1[w]! - u0[w]!))
  return found.sort((p, q) => p - q)
}

type Sums = {
  metMm2: number
  halfBorders: number
  /** By family. */
  readonly bySize: { whole: number; cut: number }[]
  pieces: number
  tileMm2: number
  smallest: number
}

function addStraight(sum: Sums, cut: StraightCut, kind: Family, f: number): void {
  sum.metMm2 += cut.moduleMm2
  sum.halfBorders += cut.borderMm / 2
  const areaMm2 = cut.tileMm2
  if (areaMm2 < LEAST_CELL_MM2) return
  sum.tileMm2 += areaMm2
  if (areaMm2 > kind.tileMm2 - LEAST_CELL_MM2) {
    sum.bySize[f]!.whole++
    return
  }
  sum.bySize[f]!.cut++
  sum.pieces++
  sum.smallest = Math.min(sum.smallest, cut.extentU, cut.extentV)
}

/** Steps the clipping will take, at most: for each module its walls times its bands. */
function bandSteps(met: MetModules): number {
  let steps = 0
  for (let m = 0; m < met.count; m++) {
    let walls = 0
    for (let e = met.head[m]!; e >= 0; e = met.next[e]!) walls++
    steps += walls * (2 * walls + 1)
  }
  return steps
}
