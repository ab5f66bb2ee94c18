/** Lays a pattern on a floor and counts exactly.
 *
 *  Only modules that a wall meets are looked at. Modules cover the plane, so the ones wholly inside are known without a look:
 *  floor area less the area of the met modules, divided by a module's, is their whole number. Work grows with the cuts alone. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { type Floor, floorArea, type Point } from '../floor/rings.ts'
import { BoxClip, type ClipPiece } from './clip.ts'
import { insideOf } from './inside.ts'
import type { Family } from './lattice.ts'
import { MetModules } from './met.ts'
import { type Laid, prepare } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'
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

type Listener = {
  readonly tell: (cell: MetCell, laid: Laid) => void
  readonly tellBare: (family: number, i: number, j: number) => void
}

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
  const { lattice } = laid
  const met = meet(laid)
  const steps = bandSteps(met)
  if (steps > MOST_STEPS) return refuse('too-much-work', { what: 'cuts', count: steps, limit: MOST_STEPS })
  const sum = countMet(laid, met, listener)
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

/** What the met modules hold, one by one. */
function countMet(laid: Laid, met: MetModules, listener: Listener | null): Sums {
  const { lattice, walls } = laid
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
  return sum
}

/** Half of a module's border: each side lies between two modules. */
const halfBorder = ({ shape, a, b }: Family): number => (shape === 'hexagon' ? a * Math.sqrt(3) : a + b)

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
