/** Weight of tile by its kind. What it loads, and what a truck and a back may carry: buildup.ts and truck.ts. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { type Spread, times } from './spread.ts'

export const LAYER: Range = { field: 'thickness', unit: 'mm', min: 0, max: 500 }
export const TILE_COUNT: Range = { field: 'tiles', unit: '', min: 0, max: 100_000_000 }
export const DENSITY: Range = { field: 'density', unit: 'kg/m3', min: 10, max: 10_000 }

/** Mass of a layer. [kg/m2]
 *  @param thicknessMm LAYER    @param kgPerM3 DENSITY at each end    @problem out-of-range
 *  @example 10 mm of porcelain at 2350: 23.5 kg/m2 */
export function layerKgPerM2(thicknessMm: number, kgPerM3: Spread): Outcome<Spread> {
  const checks = [within(LAYER, thicknessMm), within(DENSITY, kgPerM3.low), within(DENSITY, kgPerM3.high)]
  for (const check of checks) if (!check.ok) return check
  return fine(times(kgPerM3, thicknessMm / 1000))
}

/** Mass of a number of tiles. [kg]
 *  @param count TILE_COUNT    @param faceM2 face of one tile [m2]    @param thicknessMm, kgPerM3 as for layerKgPerM2
 *  @problem out-of-range */
export function tilesKg(count: number, faceM2: number, thicknessMm: number, kgPerM3: Spread): Outcome<Spread> {
  const tiles = within(TILE_COUNT, count)
  if (!tiles.ok) return tiles
  const perM2 = layerKgPerM2(thicknessMm, kgPerM3)
  return perM2.ok ? fine(times(perM2.value, count * faceM2)) : perM2
}
