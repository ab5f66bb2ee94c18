/** The walls that run through a box of the lattice or along its border, or through the hexagon in it, cut off at its sides. */
import { standIn } from './hexagon.ts'

/** Closer than this is the same place [mm]. */
export const SAME_MM = 1e-6
/** Walls this close to the border are put on it [mm]. */
const SNAP_MM = 2e-6

const snap = (value: number, far: number): number =>
  Math.abs(value) < SNAP_MM ? 0 : Math.abs(value - far) < SNAP_MM ? far : value

/** Stretches of wall in lattice coordinates, the floor on their left. */
export type Walls = {
  readonly u0: Float64Array
  readonly v0: Float64Array
  readonly u1: Float64Array
  readonly v1: Float64Array
}

/** Walls in the box's own coordinates, each from its lower end. */
export class BoxWalls {
  count = 0
  readonly u0: number[] = []
  readonly v0: number[] = []
  readonly u1: number[] = []
  readonly v1: number[] = []
  /** 1 up, -1 down, 0 level. */
  readonly dir: number[] = []
  /** Of a level wall: 1 to the right, -1 to the left. */
  readonly flow: number[] = []
  private a = 0
  private b = 0
  private hexagon = false
  // The shares of a wall between which it is inside.
  private from = 0
  private to = 1

  /** An empty box with sides a, b, or the hexagon in it. */
  begin(a: number, b: number, hexagon: boolean): void {
    this.a = a
    this.b = b
    this.hexagon = hexagon
    this.count = 0
  }

  /** Takes the part of a wall inside the box, if any. */
  take(pu: number, pv: number, qu: number, qv: number): void {
    const { a, b } = this
    const [su, sv, tu, tv] = [snap(pu, a), snap(pv, b), snap(qu, a), snap(qv, b)]
    const du = tu - su
    const dv = tv - sv
    this.from = 0
    this.to = 1
    if (!(this.reaches(su, du) && this.reaches(a - su, -du) && this.reaches(sv, dv) && this.reaches(b - sv, -dv)))
      return
    if (this.hexagon && !this.reachesHexagon(su, sv, du, dv)) return
    const { from, to } = this
    if (from >= to) return
    this.add(
      clamp(from === 0 ? su : su + from * du, a),
      clamp(from === 0 ? sv : sv + from * dv, b),
      clamp(to === 1 ? tu : su + to * du, a),
      clamp(to === 1 ? tv : sv + to * dv, b),
    )
  }

  /** Leaves of a wall what lies on the inner side of a line: `here` inside it at the wall's beginning, `run` more at its end.
   *  False where all of it is outside along the line. */
  private reaches(here: number, run: number): boolean {
    if (run === 0) return here >= 0
    const share = -here / run
    if (run > 0) {
      if (share > this.from) this.from = share
    } else if (share < this.to) this.to = share
    return true
  }

  /** The four slanting sides: a corner of the box lies a half of a, a quarter of b outside them. */
  private reachesHexagon(su: number, sv: number, du: number, dv: number): boolean {
    const [p, q] = [2 / this.a, 4 / this.b]
    return (
      this.reaches(p * su + q * sv - 1, p * du + q * dv) &&
      this.reaches(-p * su + q * sv + 1, -p * du + q * dv) &&
      this.reaches(p * su - q * sv + 3, p * du - q * dv) &&
      this.reaches(-p * su - q * sv + 5, -p * du - q * dv)
    )
  }

  private add(cu0: number, cv0: number, cu1: number, cv1: number): void {
    const rise = cv1 - cv0
    const run = cu1 - cu0
    const level = Math.abs(rise) <= SAME_MM
    if (level && Math.abs(run) <= SAME_MM) return
    const w = this.count++
    const up = rise >= 0
    this.u0[w] = up ? cu0 : cu1
    this.v0[w] = up ? cv0 : cv1
    this.u1[w] = up ? cu1 : cu0
    this.v1[w] = up ? cv1 : cv0
    this.dir[w] = level ? 0 : up ? 1 : -1
    this.flow[w] = run > 0 ? 1 : -1
  }

  /** u of a wall at a height. */
  at(w: number, v: number): number {
    const rise = this.v1[w]! - this.v0[w]!
    const t = Math.max(0, Math.min(1, (v - this.v0[w]!) / rise))
    return this.u0[w]! + t * (this.u1[w]! - this.u0[w]!)
  }

  /** How far the left border stands in from the box at a height; the right one does the same. */
  inAt(v: number): number {
    return this.hexagon ? standIn(v, this.a, this.b) : 0
  }

  /** How much of a wall lies on the hexagon's sides, the floor within. */
  onSide(w: number): number {
    const [v0, v1] = [this.v0[w]!, this.v1[w]!]
    const [in0, in1, middle] = [this.inAt(v0), this.inAt(v1), this.inAt((v0 + v1) / 2)]
    // A wall over a corner of the hexagon is on no one side.
    if (!isSame((in0 + in1) / 2, middle)) return 0
    const left = this.dir[w] === -1 && isSame(this.u0[w]!, in0) && isSame(this.u1[w]!, in1)
    const right = this.dir[w] === 1 && isSame(this.u0[w]!, this.a - in0) && isSame(this.u1[w]!, this.a - in1)
    return left || right ? Math.hypot(this.u1[w]! - this.u0[w]!, v1 - v0) : 0
  }
}

const clamp = (value: number, far: number): number => (value < 0 ? 0 : Math.min(value, far))
export const isSame = (p: number, q: number): boolean => Math.abs(p - q) < 2 * SNAP_MM
