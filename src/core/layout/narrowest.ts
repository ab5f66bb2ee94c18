/** The narrowest piece a start would leave, without laying it: no counts, no areas of the rest, and an end as soon as a piece
 *  is too narrow. Thousands of starts are looked at in the time some dozens are laid. */
import type { Walls } from './box-walls.ts'
import { BoxClip } from './clip.ts'
import type { Family, Lattice } from './lattice.ts'
import { LEAST_CELL_MM2 } from './lay.ts'
import type { Laid } from './prepare.ts'

/** Corners of floors with more walls are left to the layouts: each is clipped by all walls. */
const MOST_WALLS = 100
/** A wall leaning less than this is square to the pattern's axes [mm]. */
const SQUARE_MM = 1e-3

export class Narrowest {
  private readonly walls: Walls
  private readonly lattice: Lattice
  private readonly outlines: readonly Float64Array[]
  private readonly order: number[]
  private readonly wallAt: Int32Array
  private readonly next: Int32Array
  private readonly cut = new LineCut()
  private readonly box = new BoxClip()
  private readonly meet: (family: number, i: number, j: number) => void
  // The start and the wall looked at, the narrowest piece yet, where to stop, and modules that wait to be clipped: family, u, v.
  private u = 0
  private v = 0
  private wall = 0
  private leastMm = Infinity
  private enoughMm = 0
  private slackMm = 0
  private readonly waiting: number[] = []

  /** @param squareToo  whether walls square to the axes are looked at as well; rows know their cuts without */
  constructor({ walls, lattice }: Laid, squareToo: boolean) {
    this.walls = walls
    this.lattice = lattice
    this.outlines = lattice.families.map(outlineOf)
    const all = Array.from(walls.u0, (_, w) => w)
    const runs = all.map((w) => [Math.abs(walls.u1[w]! - walls.u0[w]!), Math.abs(walls.v1[w]! - walls.v0[w]!)] as const)
    this.order = all.filter((w) => squareToo || (runs[w]![0] >= SQUARE_MM && runs[w]![1] >= SQUARE_MM))
    this.order.sort((p, q) => Math.hypot(...runs[q]!) - Math.hypot(...runs[p]!) || p - q)
    this.wallAt = Int32Array.from(all)
    this.next = Int32Array.from(all, (w) => (w + 1 < all.length ? w + 1 : -1))
    this.meet = (family, i, j) => this.look(family, i, j)
  }

  /** The narrowest piece at slanted walls with the lattice moved to (u, v); `fromMm` where none is narrower. What is under
   *  `enoughMm` may be any such value: looking stops there. A piece that a move of the lattice by `slackMm` does away with is none. Modules that two walls meet far from a corner of the room may
   *  hold narrower pieces yet. [mm] */
  at(u: number, v: number, fromMm: number, enoughMm: number, slackMm = 0): number {
    const { walls, lattice, waiting } = this
    waiting.length = 0
    this.u = u
    this.v = v
    this.leastMm = fromMm
    this.enoughMm = enoughMm
    this.slackMm = slackMm
    for (let k = 0; k < this.order.length && this.leastMm >= enoughMm; k++) {
      const w = this.order[k]!
      this.wall = w
      this.cut.along(walls.u1[w]! - walls.u0[w]!, walls.v1[w]! - walls.v0[w]!)
      lattice.along(walls.u0[w]! - u, walls.v0[w]! - v, walls.u1[w]! - u, walls.v1[w]! - v, this.meet)
      // What has ruled out one start rules out many of the next: it comes first.
      if (this.leastMm < enoughMm && k > 0) {
        this.order.splice(k, 1)
        this.order.unshift(w)
      }
    }
    for (let k = 0; k < waiting.length && this.leastMm >= enoughMm; k += 3)
      this.clip(waiting[k]!, waiting[k + 1]!, waiting[k + 2]!)
    return this.leastMm
  }

  /** Cuts a tile by the line of the wall; what an end of the wall lies in waits for the clip. */
  private look(family: number, i: number, j: number): void {
    if (this.leastMm < this.enoughMm) return
    const { lattice, walls, cut, wall: w } = this
    const kind = lattice.families[family]!
    const [ou, ov] = [lattice.originU(family, i, j) + this.u, lattice.originV(family, i, j) + this.v]
    const met = cut.by(this.outlines[family]!, walls.u0[w]! - ou, walls.v0[w]! - ov)
    if (met === 'end' && this.slackMm === 0 && this.wallAt.length <= MOST_WALLS) this.wait(family, ou, ov)
    if (met !== 'through' || cut.areaMm2 < LEAST_CELL_MM2 || cut.areaMm2 > kind.tileMm2 - LEAST_CELL_MM2) return
    if (cut.depthMm < this.slackMm) return
    if (cut.extentMm < this.leastMm) this.leastMm = cut.extentMm
  }

  /** Two walls end in the module of a corner: it is clipped once. */
  private wait(family: number, ou: number, ov: number): void {
    const { waiting } = this
    for (let k = 0; k < waiting.length; k += 3)
      if (waiting[k + 1] === ou && waiting[k + 2] === ov && waiting[k] === family) return
    waiting.push(family, ou, ov)
  }

  private clip(family: number, ou: number, ov: number): void {
    const { insetU, insetV, tileA, tileB, shape, tileMm2 } = this.lattice.families[family]!
    const { box } = this
    box.clip(this.walls, 0, this.wallAt, this.next, ou + insetU, ov + insetV, tileA, tileB, shape)
    if (box.walls === 0 || box.areaMm2 < LEAST_CELL_MM2 || box.areaMm2 > tileMm2 - LEAST_CELL_MM2) return
    for (const piece of box.pieces(false))
      if (piece.areaMm2 >= LEAST_CELL_MM2 + (this.slackMm * this.slackMm) / 2)
        this.leastMm = Math.min(this.leastMm, piece.maxU - piece.minU, piece.maxV - piece.minV)
  }
}

/** Corners of a tile in its module, once round: u and v in turn. */
function outlineOf({ shape, insetU, insetV, tileA, tileB }: Family): Float64Array {
  const shares = shape === 'hexagon' ? [0.5, 0, 1, 0.25, 1, 0.75, 0.5, 1, 0, 0.75, 0, 0.25] : [0, 0, 1, 0, 1, 1, 0, 1]
  return Float64Array.from(shares, (share, k) => (k % 2 === 0 ? insetU + share * tileA : insetV + share * tileB))
}

/** A convex tile cut by a straight wall, the floor on its left. */
class LineCut {
  areaMm2 = 0
  /** The smaller extent of what is kept [mm]. */
  extentMm = 0
  /** How far it reaches from the wall [mm]. */
  depthMm = 0

  // The wall's direction, and its square.
  private du = 0.5
  private dv = 0.5
  private run = 0.5

  /** The wall to cut by, by its direction [mm]. */
  along(du: number, dv: number): void {
    this.du = du
    this.dv = dv
    this.run = du * du + dv * dv
  }

  /** Whether the wall, which begins at (u0, v0), runs through the tile, ends in it, or leaves it alone; the figures are set
   *  where it runs through. */
  by(outline: Float64Array, u0: number, v0: number): 'through' | 'end' | 'alone' {
    const { du, dv, run } = this
    const n = outline.length
    let minU = Infinity
    let maxU = -Infinity
    let minV = Infinity
    let maxV = -Infinity
    let low = Infinity
    let high = -Infinity
    let deepest = 0
    // Twice the area: the outline kept, and the stretch from where it is left (out) to where it is come back to (in).
    let twice = 0
    let outU = 0
    let outV = 0
    let inU = 0
    let inV = 0
    let pu = outline[n - 2]! - u0
    let pv = outline[n - 1]! - v0
    let before = du * pv - dv * pu
    for (let k = 0; k < n; k += 2) {
      const qu = outline[k]! - u0
      const qv = outline[k + 1]! - v0
      const here = du * qv - dv * qu
      if (before >= 0 !== here >= 0) {
        const share = before / (before - here)
        const xu = pu + share * (qu - pu)
        const xv = pv + share * (qv - pv)
        const along = du * xu + dv * xv
        if (along < low) low = along
        if (along > high) high = along
        if (xu < minU) minU = xu
        if (xu > maxU) maxU = xu
        if (xv < minV) minV = xv
        if (xv > maxV) maxV = xv
        if (before >= 0) {
          twice += pu * xv - xu * pv
          outU = xu
          outV = xv
        } else {
          twice += xu * qv - qu * xv
          inU = xu
          inV = xv
        }
      } else if (here >= 0) twice += pu * qv - qu * pv
      if (here >= 0) {
        if (here > deepest) deepest = here
        if (qu < minU) minU = qu
        if (qu > maxU) maxU = qu
        if (qv < minV) minV = qv
        if (qv > maxV) maxV = qv
      }
      pu = qu
      pv = qv
      before = here
    }
    if (high <= 0 || low >= run) return 'alone'
    if (low < 0 || high > run) return 'end'
    this.areaMm2 = (twice + outU * inV - inU * outV) / 2
    this.depthMm = deepest / Math.sqrt(run)
    this.extentMm = Math.min(maxU - minU, maxV - minV)
    return 'through'
  }
}
