/** Lattices of modules. A module is a tile with half a joint round it; the modules of a pattern cover the plane without gap,
 *  so their borders are the joints' centre lines. Coordinates (u, v) are the lattice's own, half a joint off the tile's corner. */

/** Modules of one size and posture: the module and, inside it at (insetU, insetV), the tile. */
export type Family = {
  /** A box, or the hexagon in the box, tips at its foot and head. */
  readonly shape: 'box' | 'hexagon'
  readonly a: number
  readonly b: number
  readonly insetU: number
  readonly insetV: number
  readonly tileA: number
  readonly tileB: number
  /** Whether the tile lies turned: its length along v. */
  readonly turned: boolean
  readonly moduleMm2: number
  readonly tileMm2: number
}

/** Called with each module that a stretch may meet. */
export type Meet = (family: number, i: number, j: number) => void

export type Lattice = {
  readonly families: readonly Family[]
  /** Whether u and v are swapped against the tile's axes (columns moved along the width). */
  readonly swapped: boolean
  originU(family: number, i: number, j: number): number
  originV(family: number, i: number, j: number): number
  /** Every module whose closed box a straight stretch meets, and perhaps a few that it just misses. */
  along(u0: number, v0: number, u1: number, v1: number, meet: Meet): void
}

/** Stretches this close to a module count as meeting it [mm]. */
export const NEAR_MM = 4e-6

/** The rows of a height that a stretch meets, each with the least and greatest u it has there. */
export function eachRow(
  u0: number,
  v0: number,
  u1: number,
  v1: number,
  height: number,
  row: (j: number, lowU: number, highU: number) => void,
): void {
  const [lowV, highV] = v0 < v1 ? [v0, v1] : [v1, v0]
  const first = Math.floor((lowV - NEAR_MM) / height)
  const last = Math.floor((highV + NEAR_MM) / height)
  const slope = highV - lowV > NEAR_MM ? (u1 - u0) / (v1 - v0) : null
  for (let j = first; j <= last; j++) {
    if (slope === null || first === last) {
      row(j, Math.min(u0, u1), Math.max(u0, u1))
      continue
    }
    const ua = u0 + (Math.max(lowV, j * height - NEAR_MM) - v0) * slope
    const ub = u0 + (Math.min(highV, (j + 1) * height + NEAR_MM) - v0) * slope
    row(j, Math.min(ua, ub), Math.max(ua, ub))
  }
}

/** The part s0 to s1 of a stretch on which a value running from d0 to d1 lies in low to high. */
export function within(d0: number, d1: number, low: number, high: number): readonly [number, number] {
  const run = d1 - d0
  if (Math.abs(run) < 1e-12) return d0 >= low && d0 <= high ? [0, 1] : [1, 0]
  const [p, q] = [(low - d0) / run, (high - d0) / run]
  return [Math.max(0, Math.min(p, q)), Math.min(1, Math.max(p, q))]
}

export function meetsBox(
  u0: number,
  v0: number,
  u1: number,
  v1: number,
  au: number,
  av: number,
  bu: number,
  bv: number,
): boolean {
  const [s0, s1] = within(u0, u1, au - NEAR_MM, bu + NEAR_MM)
  if (s0 > s1) return false
  const [p, q] = within(v0, v1, av - NEAR_MM, bv + NEAR_MM)
  return Math.max(s0, p) <= Math.min(s1, q)
}
