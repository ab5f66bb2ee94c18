/** A box of the lattice, or the hexagon in it, cut by the walls that cross it, by horizontal bands: in a band no wall begins or ends, so between
 *  walls lie plain trapezoids. Bands are robust where loops are not: walls on the box's border, corners on corners. */

import { standIn } from './hexagon.ts'
import type { Family } from './lattice.ts'

/** Closer than this is the same place [mm]. */
const SAME_MM = 1e-6
/** Walls this close to the border are put on it [mm]. */
const SNAP_MM = 2e-6

const snap = (value: number, far: number): number =>
  Math.abs(value) < SNAP_MM ? 0 : Math.abs(value - far) < SNAP_MM ? far : value

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

/** Stretches of wall in lattice coordinates, the floor on their left. */
export type Walls = {
  readonly u0: Float64Array
  readonly v0: Float64Array
  readonly u1: Float64Array
  readonly v1: Float64Array
}

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
  // Walls within the box, local coordinates; dir: 1 up, -1 down, 0 level (then flow: 1 to the right, -1 to the left).
  private readonly wu0: number[] = []
  private readonly wv0: number[] = []
  private readonly wu1: number[] = []
  private readonly wv1: number[] = []
  private readonly dir: number[] = []
  private readonly flow: number[] = []
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
    this.walls = 0
    this.regions = 0
    this.areaMm2 = 0
    this.borderMm = 0
    for (let e = head; e >= 0; e = next[e]!) {
      const w = wallAt[e]!
      this.take(walls.u0[w]! - ou, walls.v0[w]! - ov, walls.u1[w]! - ou, walls.v1[w]! - ov)
    }
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

  /** Takes the part of a wall inside the box, if any. */
  private take(pu: number, pv: number, qu: number, qv: number): void {
    const { a, b } = this
    const [su, sv, tu, tv] = [snap(pu, a), snap(pv, b), snap(qu, a), snap(qv, b)]
    const du = tu - su
    const dv = tv - sv
    let from = 0
    let to = 1
    if (du === 0) {
      if (su < 0 || su > a) return
    } else {
      const [x, y] = du > 0 ? [-su / du, (a - su) / du] : [(a - su) / du, -su / du]
      if (x > from) from = x
      if (y < to) to = y
    }
    if (dv === 0) {
      if (sv < 0 || sv > b) return
    } else {
      const [x, y] = dv > 0 ? [-sv / dv, (b - sv) / dv] : [(b - sv) / dv, -sv / dv]
      if (x > from) from = x
      if (y < to) to = y
    }
    if (this.hexagon) {
      // Inside all four slanting sides: a corner of the box lies a half of a, a quarter of b outside them.
      const [p, q] = [2 / a, 4 / b]
      for (const [cu, cv, c] of [
        [p, q, -1],
        [-p, q, 1],
        [p, -q, 3],
        [-p, -q, 5],
      ] as const) {
        const here = cu * su + cv * sv + c
        const run = cu * du + cv * dv
        if (run === 0) {
          if (here < 0) return
        } else if (run > 0) from = Math.max(from, -here / run)
        else to = Math.min(to, -here / run)
      }
    }
    if (from >= to) return
    const cu0 = clamp(from === 0 ? su : su + from * du, a)
    const cv0 = clamp(from === 0 ? sv : sv + from * dv, b)
    const cu1 = clamp(to === 1 ? tu : su + to * du, a)
    const cv1 = clamp(to === 1 ? tv : sv + to * dv, b)
    const rise = cv1 - cv0
    const run = cu1 - cu0
    const level = Math.abs(rise) <= SAME_MM
    if (level && Math.abs(run) <= SAME_MM) return
    const w = this.walls++
    const up = rise >= 0
    this.wu0[w] = up ? cu0 : cu1
    this.wv0[w] = up ? cv0 : cv1
    this.wu1[w] = up ? cu1 : cu0
    this.wv1[w] = up ? cv1 : cv0
    this.dir[w] = level ? 0 : up ? 1 : -1
    this.flow[w] = run > 0 ? 1 : -1
  }

  /** Heights at which a wall begins or ends, sorted, doubles dropped. */
  private cutBands(): void {
    const { breaks, b } = this
    breaks.length = 0
    breaks.push(0, b)
    if (this.hexagon) breaks.push(b / 4, (3 * b) / 4)
    for (let w = 0; w < this.walls; w++) {
      breaks.push(this.wv0[w]!)
      if (this.dir[w] !== 0) breaks.push(this.wv1[w]!)
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
    const { active } = this
    active.length = 0
    for (let w = 0; w < this.walls; w++)
      if (this.dir[w] !== 0 && this.wv0[w]! <= va + SAME_MM && this.wv1[w]! >= vb - SAME_MM) active.push(w)
    if (active.length > 1) {
      const mid = (va + vb) / 2
      active.sort((p, q) => this.at(p, mid) - this.at(q, mid))
    }
  }

  /** u of a wall at a height. */
  private at(w: number, v: number): number {
    const rise = this.wv1[w]! - this.wv0[w]!
    const t = Math.max(0, Math.min(1, (v - this.wv0[w]!) / rise))
    return this.wu0[w]! + t * (this.wu1[w]! - this.wu0[w]!)
  }

  /** How far the left border stands in from the box at a height; the right one does the same. */
  private inAt(v: number): number {
    return this.hexagon ? standIn(v, this.a, this.b) : 0
  }

  private trapezoids(k: number, va: number, vb: number): void {
    const { active, a } = this
    const [inA, inB] = [this.inAt(va), this.inAt(vb)]
    let inside = this.dir[active[0]!] === 1 ? 1 : 0
    let [la, lb] = [inA, inB]
    let [footGap, headGap] = [-1, -1]
    let [pa, pb] = [inA, inB]
    for (let n = 0; n <= active.length; n++) {
      const end = n === active.length
      const ua = end ? a - inA : this.at(active[n]!, va)
      const ub = end ? a - inB : this.at(active[n]!, vb)
      if (ua - pa > footGap) {
        footGap = ua - pa
        this.footState[k] = inside > 0 ? 1 : 0
      }
      if (ub - pb > headGap) {
        headGap = ub - pb
        this.headState[k] = inside > 0 ? 1 : 0
      }
      const after = end ? 0 : inside - this.dir[active[n]!]!
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
    const [inA, inB] = [this.inAt(this.breaks[k]!), this.inAt(this.breaks[k + 1]!)]
    this.region(k, inA, this.a - inA, inB, this.a - inB)
  }

  /** 1 or 0 where a level wall bounds the band, else -1. */
  private toldByLevels(va: number, vb: number): number {
    for (let w = 0; w < this.walls; w++) {
      if (this.dir[w] !== 0) continue
      if (Math.abs(this.wv0[w]! - va) <= SAME_MM) return this.flow[w] === 1 ? 1 : 0
      if (Math.abs(this.wv0[w]! - vb) <= SAME_MM) return this.flow[w] === 1 ? 0 : 1
    }
    return -1
  }

  private measure(): void {
    const { a, b } = this
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
      const run = Math.abs(this.wu1[w]! - this.wu0[w]!)
      if (this.dir[w] === 0) {
        if (this.flow[w] === 1 && this.wv0[w] === 0) border -= run
        if (this.flow[w] === -1 && this.wv0[w] === b) border -= run
      } else if (this.hexagon) {
        border -= this.onSide(w)
      } else if (run <= SAME_MM) {
        const rise = this.wv1[w]! - this.wv0[w]!
        if (this.dir[w] === -1 && this.wu0[w] === 0) border -= rise
        if (this.dir[w] === 1 && this.wu0[w] === a) border -= rise
      }
    }
    this.borderMm = border
  }

  /** The hexagon's sides that bound a trapezoid. */
  private slantedBorder(r: number, k: number, height: number): number {
    const [inA, inB] = [this.inAt(this.breaks[k]!), this.inAt(this.breaks[k + 1]!)]
    const side = Math.hypot(inB - inA, height)
    const left = isSame(this.la[r]!, inA) && isSame(this.lb[r]!, inB)
    const right = isSame(this.ra[r]!, this.a - inA) && isSame(this.rb[r]!, this.a - inB)
    return (left ? side : 0) + (right ? side : 0)
  }

  /** How much of a wall lies on the hexagon's sides, the floor within. */
  private onSide(w: number): number {
    const [v0, v1] = [this.wv0[w]!, this.wv1[w]!]
    const [in0, in1, middle] = [this.inAt(v0), this.inAt(v1), this.inAt((v0 + v1) / 2)]
    // A wall over a corner of the hexagon is on no one side.
    if (!isSame((in0 + in1) / 2, middle)) return 0
    const left = this.dir[w] === -1 && isSame(this.wu0[w]!, in0) && isSame(this.wu1[w]!, in1)
    const right = this.dir[w] === 1 && isSame(this.wu0[w]!, this.a - in0) && isSame(this.wu1[w]!, this.a - in1)
    return left || right ? Math.hypot(this.wu1[w]! - this.wu0[w]!, v1 - v0) : 0
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

const clamp = (value: number, far: number): number => (value < 0 ? 0 : Math.min(value, far))
const isSame = (p: number, q: number): boolean => Math.abs(p - q) < 2 * SNAP_MM
const ascending = (p: number, q: number): number => p - q
