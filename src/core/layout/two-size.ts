/** A large square tile with a small one at its corners. Modules of two sizes in turn cover the plane for any two sizes: each
 *  large one with the small one at its right, moved on by (A, B) and (-B, A). */
import { type Family, type Lattice, meetsBox, NEAR_MM, within } from './lattice.ts'

const square = (tileMm: number, jointMm: number): Family => {
  const side = tileMm + jointMm
  const half = jointMm / 2
  return {
    shape: 'box',
    a: side,
    b: side,
    insetU: half,
    insetV: half,
    tileA: tileMm,
    tileB: tileMm,
    turned: false,
    moduleMm2: side * side,
    tileMm2: tileMm * tileMm,
  }
}

/** @param largeMm side of the large tile  @param smallMm side of the small one, less than the large one's */
export function twoSizes(largeMm: number, smallMm: number, jointMm: number): Lattice {
  const families = [square(largeMm, jointMm), square(smallMm, jointMm)]
  const [A, B] = [families[0]!.a, families[1]!.a]
  const whole = A * A + B * B
  const startU = (f: number) => (f === 0 ? 0 : A)
  const originU = (f: number, i: number, j: number) => startU(f) + i * A - j * B
  const originV = (_f: number, i: number, j: number) => i * B + j * A
  return {
    families,
    swapped: false,
    originU,
    originV,
    along: (u0, v0, u1, v1, meet) => {
      for (let f = 0; f < 2; f++) {
        const side = families[f]!.a
        // A module's corner in steps i and j: its box reaches so far from its own numbers.
        const steps = (u: number, v: number): readonly [number, number] => [
          ((u - startU(f)) * A + v * B) / whole,
          (v * A - (u - startU(f)) * B) / whole,
        ]
        const [i0, j0] = steps(u0, v0)
        const [i1, j1] = steps(u1, v1)
        const near = (NEAR_MM * (A + B)) / whole
        const [reachI, belowJ, aboveJ] = [(side * (A + B)) / whole, (side * B) / whole, (side * A) / whole]
        const last = Math.floor(Math.max(j0, j1) + belowJ + near)
        for (let j = Math.ceil(Math.min(j0, j1) - aboveJ - near); j <= last; j++) {
          const [s0, s1] = within(j0, j1, j - belowJ - near, j + aboveJ + near)
          if (s0 > s1) continue
          const [p, q] = [i0 + s0 * (i1 - i0), i0 + s1 * (i1 - i0)]
          const to = Math.floor(Math.max(p, q) + near)
          for (let i = Math.ceil(Math.min(p, q) - reachI - near); i <= to; i++) {
            const [ou, ov] = [originU(f, i, j), originV(f, i, j)]
            if (meetsBox(u0, v0, u1, v1, ou, ov, ou + side, ov + side)) meet(f, i, j)
          }
        }
      }
    },
  }
}
