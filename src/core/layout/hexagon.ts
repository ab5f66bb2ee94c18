/** Regular hexagons, two of their sides upright: rows half a module on from each other. A module is the hexagon with half a joint
 *  round it, a hexagon again. */
import type { Point } from '../floor/rings.ts'
import { eachRow, type Family, type Lattice, NEAR_MM } from './lattice.ts'

const ROOT_3 = Math.sqrt(3)

/** Corner to corner of a hexagon, by what it measures across its sides. */
export const tipToTip = (acrossMm: number): number => (2 * acrossMm) / ROOT_3
const areaOf = (acrossMm: number): number => (ROOT_3 / 2) * acrossMm * acrossMm

/** @param acrossMm across two opposite sides of the tile */
export function hexagons(acrossMm: number, jointMm: number): Lattice {
  const a = acrossMm + jointMm
  const [b, tileB] = [tipToTip(a), tipToTip(acrossMm)]
  const only: Family = {
    shape: 'hexagon',
    a,
    b,
    insetU: jointMm / 2,
    insetV: (b - tileB) / 2,
    tileA: acrossMm,
    tileB,
    turned: false,
    moduleMm2: areaOf(a),
    tileMm2: areaOf(acrossMm),
  }
  const rowMm = (3 * b) / 4
  const shift = (j: number) => (j & 1) * (a / 2)
  return {
    families: [only],
    swapped: false,
    originU: (_f, i, j) => i * a + shift(j),
    originV: (_f, _i, j) => j * rowMm,
    // Rows reach a quarter into each other: a stretch is asked of the rows and of the tips below them.
    along: (u0, v0, u1, v1, meet) => {
      const take = (j: number, low: number, high: number): void => {
        const last = Math.floor((high - shift(j) + NEAR_MM) / a)
        for (let i = Math.floor((low - shift(j) - NEAR_MM) / a); i <= last; i++) meet(0, i, j)
      }
      eachRow(u0, v0, u1, v1, rowMm, take)
      const tipMm = b - rowMm
      eachRow(u0, v0, u1, v1, rowMm, (j, low, high) => {
        const [lowV, highV] = v0 < v1 ? [v0, v1] : [v1, v0]
        if (highV >= j * rowMm - NEAR_MM && lowV <= j * rowMm + tipMm + NEAR_MM) take(j - 1, low, high)
      })
    },
  }
}

/** How far a hexagon's outline stands in from its box at a height: its sides slant over a quarter of the height at each end. */
export function standIn(v: number, a: number, b: number): number {
  const tip = b / 4
  if (v < tip) return (a / 2) * (1 - v / tip)
  return v > b - tip ? (a / 2) * (1 - (b - v) / tip) : 0
}

/** Corners of the hexagon in the box with corner (u, v), counter-clockwise. */
export const hexagonRing = (u: number, v: number, a: number, b: number): Point[] => [
  [u + a / 2, v],
  [u + a, v + b / 4],
  [u + a, v + (3 * b) / 4],
  [u + a / 2, v + b],
  [u, v + (3 * b) / 4],
  [u, v + b / 4],
]
