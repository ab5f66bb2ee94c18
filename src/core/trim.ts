/** Profiles and stairs: heights, treads and risers. Lengths are cut in offcuts/lengths.ts, walls are in floor/walls.ts. */
import { fine, type Outcome, type Range, within } from '../problem.ts'

const up = (n: number): number => Math.ceil(n - 1e-9)

/** The smallest profile height that reaches the tile's face; null where none in the list does.
 *  @source common practice, no source */
export function profileHeight(tileMm: number, bedUnderMm: number, heightsMm: readonly number[]): number | null {
  const need = tileMm + bedUnderMm
  return heightsMm.toSorted((a, b) => a - b).find((height) => height + 1e-6 >= need) ?? null
}

export type Stairs = {
  readonly risers: number
  readonly treads: number
  readonly widthMm: number
  readonly treadDepthMm: number
  readonly riserHeightMm: number
}

/** Treads and risers: area, nosing length, whole tiles by rows across the stair.
 *  @param stairs  1 to 60 steps, sides 50 to 5000 mm
 *  @problem out-of-range
 *  @example 3 treads of 36 x 11 in and 4 risers of 7 in from 18 x 18 in tile: 2 tiles a tread, 2 strips a riser */
export function stairTiles(
  stairs: Stairs,
  tile: { readonly lengthMm: number; readonly widthMm: number; readonly jointMm: number },
): Outcome<{ areaM2: number; nosingM: number; treadTiles: number; riserTiles: number }> {
  const step: Range = { field: 'steps', unit: '', min: 0, max: 60 }
  const side: Range = { field: 'stair-side', unit: 'mm', min: 50, max: 5000 }
  for (const check of [
    within(step, stairs.risers),
    within(step, stairs.treads),
    within(side, stairs.widthMm),
    within(side, stairs.treadDepthMm),
    within(side, stairs.riserHeightMm),
    within({ ...side, field: 'tile-edge', min: 20 }, tile.lengthMm),
    within({ ...side, field: 'tile-edge', min: 20 }, tile.widthMm),
  ])
    if (!check.ok) return check
  const across = up((stairs.widthMm + tile.jointMm) / (tile.lengthMm + tile.jointMm))
  const rowsOf = (deep: number) => up((deep + tile.jointMm) / (tile.widthMm + tile.jointMm))
  const stripsATile = Math.min(2, Math.max(1, Math.floor((tile.widthMm + 1e-6) / stairs.riserHeightMm)))
  const riserStrips = stairs.risers * across * rowsOf(stairs.riserHeightMm)
  return fine({
    areaM2: (stairs.widthMm * (stairs.treads * stairs.treadDepthMm + stairs.risers * stairs.riserHeightMm)) / 1e6,
    nosingM: (stairs.treads * stairs.widthMm) / 1000,
    treadTiles: stairs.treads * across * rowsOf(stairs.treadDepthMm),
    riserTiles: up(riserStrips / stripsATile),
  })
}
