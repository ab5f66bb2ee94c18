/** A box of the lattice, or the hexagon in it, cut by the walls that cross it, by horizontal bands: in a band no wall begins or ends, so between
 *  walls lie plain trapezoids. Bands are robust where loops are not: walls on the box's border, corners on corners. */

import { BoxWalls, isSame, SAME_MM, type Walls } from './box-walls.ts'
import type { Family } from './lattice.ts'

/** One piece of the box inside the floor. */
export type ClipPiece = {
  readonly areaMm2: number
  readonly minU: number
  readonly maxU: number
  readonly minV: number
  readonly maxV: number
  /** Its trapezoids, where asked for: [v, left, right] at the foot, then at the head. */
  readonly bands: readonly Trapezoid[]
}

export type Trapezoid = readonly [va: number, la: number, ra: number, vb: number, lb: number, rb: number]

export class BoxClip {
  /** Area inside the floor [mm²]. */
  areaMm2 = 0
  /** Length of the box's border inside the floor, what lies on a wall not counted [mm]. */
  borderMm = 0
  /** Walls that really run through the box or along its border. */
  walls = 0

  private a = 0
  private b = 0
  private hexagon = false
  private readonly within = new BoxWalls()
  private readonly breaks: number[] = []
  // Trapezoids: band, left and right at the band's foot and head.
  private regions = 0
  private readonly band: number[] = []
  private readonly la: number[] = []
  private readonly ra: number[] = []
  private readonly lb: number[] = []
  private readonly rb: number[] = []
  private readonly active: number[] = []
  private readonly state: number[] = []
  private readonly footState: number[] = []
  private readonly headState: number[] = []
  private readonly parent: number[] = []

  /** Clips the box with corner (ou, ov) and sides a, b, or the hexagon in it, by walls given as a chain of numbers. */
  clip(
    walls: Walls,
    head: number,
    wallAt: Int32Array,
    next: Int32Array,
    ou: number,
    ov: number,
    a: number,
    b: number,
    shape: Family['shape'],
  ): void {
    this.a = a
    this.b = b
    this.hexagon = shape === 'hexagon'
    this.regions = 0
    this.areaMm2 = 0
    this.borderMm = 0
    this.within.begin(a, b, this.hexagon)
    for (let e = head; e >= 0; e = next[e]!) {
      const w = wallAt[e]!
      this.within.take(walls.u0[w]! - ou, walls.v0[w]! - ov, walls.u1[w]! - ou, walls.v1[w]! - ov)
    }
    this.walls = this.within.count
    if (this.walls === 0) return
    this.cutBands()
    this.fillBands()
    this.measure()
  }

  /** Whether a place is inside the floor, by the trapezoids of the last clip. */
  holds(u: number, v: number): boolean {
    for (let r = 0; r < this.regions; r++) {
      const va = this.breaks[this.band[r]!]!
      const vb = this.breaks[this.band[r]! + 1]!
      if (v < va || v >= vb) continue
      const t = (v - va) / (vb - va)
      if (u >= this.la[r]! + t * (this.lb[r]! - this.la[r]!) && u <= this.ra[r]! + t * (this.rb[r]! - this.ra[r]!))
        return true
    }
    return false
  }

  /** The connected pieces of the last clip; parts that meet in a point only are two. */
  pieces(withBands: boolean): ClipPiece[] {
    this.join()
    const found = new Map<
      number,
      { -readonly [K in Exclude<keyof ClipPiece, 'bands'>]: number } & { bands: Trapezoid[] }
    >()
    for (let r = 0; r < this.regions; r++) {
      const root = this.rootOf(r)
      const [va, vb] = [this.breaks[this.band[r]!]!, this.breaks[this.band[r]! + 1]!]
      const [la, ra, lb, rb] = [this.la[r]!, this.ra[r]!, this.lb[r]!, this.rb[r]!]
      let piece = found.get(root)
      if (!piece) {
        piece = { areaMm2: 0, minU: Infinity, maxU: -Infinity, minV: Infinity, maxV: -Infinity, bands: [] }
        found.set(root, piece)
      }
      piece.areaMm2 += ((ra - la + rb - lb) / 2) * (vb - va)
      piece.minU = Math.min(piece.minU, la, lb)
      piece.maxU = Math.max(piece.maxU, ra, rb)
      piece.minV = Math.min(piece.minV, va)
      piece.maxV = Math.max(piece.maxV, vb)
      if (withBands) piece.bands.push([va, la, ra, vb, lb, rb])
    }
    return [...found.values()]
  }

  /** Heights at which a wall begins or ends, sorted, doubles dropped. */
  private cutBands(): void {
    const { breaks, b, within } = this
    breaks.length = 0
    breaks.push(0, b)
    if (this.hexagon) breaks.push(b / 4, (3 * b) / 4)
    for (let w = 0; w < this.walls; w++) {
      breaks.push(within.v0[w]!)
      if (within.dir[w] !== 0) breaks.push(within.v1[w]!)
    }
    breaks.sort(ascending)
    let kept = 1
    for (let k = 1; k < breaks.length; k++) if (breaks[k]! - breaks[kept - 1]! > SAME_MM) breaks[kept++] = breaks[k]!
    if (kept === 1) kept = 2
    breaks.length = kept
    breaks[kept - 1] = b
  }

  /** Trapezoids band by band. A band without a wall is inside or outside as its neighbours tell. */
  private fillBands(): void {
    const bands = this.breaks.length - 1
    for (let k = 0; k < bands; k++) {
      const va = this.breaks[k]!
      const vb = this.breaks[k + 1]!
      this.gather(va, vb)
      if (this.active.length > 0) {
        this.state[k] = 2
        this.trapezoids(k, va, vb)
      } else {
        const told = this.toldByLevels(va, vb)
        this.state[k] =
          told >= 0 ? told : k > 0 ? (this.state[k - 1] === 2 ? this.headState[k - 1]! : this.state[k - 1]!) : -1
        if (this.state[k] === 1) this.whole(k)
      }
    }
    // Empty bands at the foot learn from the first one above that knows.
    for (let k = bands - 2; k >= 0; k--) {
      if (this.state[k] !== -1) continue
      this.state[k] = this.state[k + 1] === 2 ? this.footState[k + 1]! : this.state[k + 1]!
      if (this.state[k] === 1) this.whole(k)
    }
  }

  private gather(va: number, vb: number): void {
    const { active, within } = this
    active.length = 0
    for (let w = 0; w < this.walls; w++)
      if (within.dir[w] !== 0 && within.v0[w]! <= va + SAME_MM && within.v1[w]! >= vb - SAME_MM) active.push(w)
    if (active.length > 1) {
      const mid = (va + vb) / 2
      active.sort((p, q) => within.at(p, mid) - within.at(q, mid))
    }
  }

  private trapezoids(k: number, va: number, vb: number): void {
    const { active, a, within } = this
    const [inA, inB] = [within.inAt(va), within.inAt(vb)]
    let inside = within.dir[active[0]!] === 1 ? 1 : 0
    let [la, lb] = [inA, inB]
    let [footGap, headGap] = [-1, -1]
    let [pa, pb] = [inA, inB]
    for (let n = 0; n <= active.length; n++) {
      const end = n === active.length
      const ua = end ? a - inA : within.at(active[n]!, va)
      const ub = end ? a - inB : within.at(active[n]!, vb)
      if (ua - pa > footGap) {
        footGap = ua - pa
        this.footState[k] = inside > 0 ? 1 : 0
      }
      if (ub - pb > headGap) {
        headGap = ub - pb
        this.headState[k] = inside > 0 ? 1 : 0
      }
      const after = end ? 0 : inside - within.dir[active[n]!]!
      if (inside > 0 && after <= 0) this.region(k, la, ua, lb, ub)
      if (inside <= 0 && after > 0) [la, lb] = [ua, ub]
      inside = after
      pa = ua
      pb = ub
    }
  }

  private region(k: number, la: number, ra: number, lb: number, rb: number): void {
    if (ra - la <= SAME_MM && rb - lb <= SAME_MM) return
    const r = this.regions++
    this.band[r] = k
    this.la[r] = la
    this.ra[r] = ra
    this.lb[r] = lb
    this.rb[r] = rb
  }

  private whole(k: number): void {
    const [inA, inB] = [this.within.inAt(this.breaks[k]!), this.within.inAt(this.breaks[k + 1]!)]
    this.region(k, inA, this.a - inA, inB, this.a - inB)
  }

  /** 1 or 0 where a level wall bounds the band, else -1. */
  private toldByLevels(va: number, vb: number): number {
    const { within } = this
    for (let w = 0; w < this.walls; w++) {
      if (within.dir[w] !== 0) continue
      if (Math.abs(within.v0[w]! - va) <= SAME_MM) return within.flow[w] === 1 ? 1 : 0
      if (Math.abs(within.v0[w]! - vb) <= SAME_MM) return within.flow[w] === 1 ? 0 : 1
    }
    return -1
  }

  private measure(): void {
    const { a, b, within } = this
    const last = this.breaks.length - 2
    let border = 0
    for (let r = 0; r < this.regions; r++) {
      const k = this.band[r]!
      const height = this.breaks[k + 1]! - this.breaks[k]!
      const [foot, top] = [this.ra[r]! - this.la[r]!, this.rb[r]! - this.lb[r]!]
      this.areaMm2 += ((foot + top) / 2) * height
      if (k === 0) border += foot
      if (k === last) border += top
      if (this.hexagon) border += this.slantedBorder(r, k, height)
      else {
        if (this.la[r] === 0 && this.lb[r] === 0) border += height
        if (this.ra[r] === a && this.rb[r] === a) border += height
      }
    }
    // What lies on a wall is no joint.
    for (let w = 0; w < this.walls; w++) {
      const run = Math.abs(within.u1[w]! - within.u0[w]!)
      if (within.dir[w] === 0) {
        if (within.flow[w] === 1 && within.v0[w] === 0) border -= run
        if (within.flow[w] === -1 && within.v0[w] === b) border -= run
      } else if (this.hexagon) {
        border -= within.onSide(w)
      } else if (run <= SAME_MM) {
        const rise = within.v1[w]! - within.v0[w]!
        if (within.dir[w] === -1 && within.u0[w] === 0) border -= rise
        if (within.dir[w] === 1 && within.u0[w] === a) border -= rise
      }
    }
    this.borderMm = border
  }

  /** The hexagon's sides that bound a trapezoid. */
  private slantedBorder(r: number, k: number, height: number): number {
    const [inA, inB] = [this.within.inAt(this.breaks[k]!), this.within.inAt(this.breaks[k + 1]!)]
    const side = Math.hypot(inB - inA, height)
    const left = isSame(this.la[r]!, inA) && isSame(this.lb[r]!, inB)
    const right = isSame(this.ra[r]!, this.a - inA) && isSame(this.rb[r]!, this.a - inB)
    return (left ? side : 0) + (right ? side : 0)
  }

  /** Joins trapezoids of neighbouring bands that share more than a point. */
  private join(): void {
    const { parent } = this
    for (let r = 0; r < this.regions; r++) parent[r] = r
    for (let r = 0; r < this.regions; r++)
      for (let q = 0; q < this.regions; q++) {
        if (this.band[q] !== this.band[r]! + 1) continue
        const overlap = Math.min(this.rb[r]!, this.ra[q]!) - Math.max(this.lb[r]!, this.la[q]!)
        if (overlap > SAME_MM) parent[this.rootOf(q)] = this.rootOf(r)
      }
  }

  private rootOf(r: number): number {
    let root = r
    while (this.parent[root] !== root) root = this.parent[root]!
    return root
  }
}

const ascending = (p: number, q: number): number => p - q
