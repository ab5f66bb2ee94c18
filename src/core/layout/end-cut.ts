/** End cuts along one wall, by hand: a course of whole tiles centred, and the half-tile rule. */
import { fine, type Outcome, refuse } from '../../problem.ts'

export type EndCuts = {
  /** Whole tiles in the course once both ends are cut alike. */
  readonly whole: number
  /** Each end. [mm] 0 where the tiles fill the wall. */
  readonly cutMm: number
  /** What would be left at one end, all whole tiles from the other. [mm] */
  readonly leftMm: number
}

/** Both ends of a course cut alike, no cut under half a tile.
 *  With n whole tiles the rest is shared by two ends; where that gives less than half a tile, one tile is dropped and
 *  each end gets (rest + tile) / 2.
 *  @problem out-of-range  a tile wider than the wall
 *  @source NAVEDTRA 14044 Builder 3 & 2 vol. 2 p. 7-23, fig. 7-26 (references 1.11)
 *  @example 2630 mm, 300 mm tile, no joint: 7 whole and two of 265 mm */
export function endCuts(wallMm: number, tileMm: number, jointMm: number): Outcome<EndCuts> {
  const module = tileMm + jointMm
  if (!(tileMm > 0 && jointMm >= 0 && wallMm >= tileMm))
    return refuse('out-of-range', { field: 'wall', value: wallMm, min: tileMm, max: 1e6, unit: 'mm' })
  const full = Math.floor((wallMm + jointMm + 1e-6) / module)
  const leftMm = Math.max(0, wallMm + jointMm - full * module - jointMm)
  if (leftMm < 1e-6) return fine({ whole: full, cutMm: 0, leftMm: 0 })
  const shared = (wallMm - full * tileMm - (full + 1) * jointMm) / 2
  if (shared >= tileMm / 2) return fine({ whole: full, cutMm: shared, leftMm })
  return fine({ whole: full - 1, cutMm: shared + module / 2, leftMm })
}

/** The cut at each end where a sliver would be left: it and a whole tile, halved. [mm]
 *  @source CTEF tip (references 1.12)    @example 24 in tile, 1 1/2 in sliver: 12 3/4 in */
export const cutFromSliverMm = (tileMm: number, sliverMm: number): number => (tileMm + sliverMm) / 2
