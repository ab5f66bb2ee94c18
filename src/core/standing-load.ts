/** What stands on a finished floor: its weight on its legs, on their pads and over its footprint. */
import { fine, type Outcome, type Range, within } from '../problem.ts'

export const STANDING_KG: Range = { field: 'weight', unit: 'kg', min: 1, max: 20_000 }
export const LEGS: Range = { field: 'legs', unit: '', min: 1, max: 24 }

const G = 9.80665

export type Standing = {
  readonly kg: number
  readonly legs: number
  /** Face of the pad under one leg. [m2] */
  readonly padM2: number | null
  readonly footprintM2: number | null
}

export type StandingLoad = {
  readonly legKg: number
  /** On an uneven floor one leg of four and more hangs, and the others carry it. */
  readonly worstLegKg: number
  /** Under the worst leg's pad. */
  readonly padKpa: number | null
  readonly averageKpa: number | null
}

/** Weight on each leg and under it. [kg, kPa]
 *  @param standing kg STANDING_KG, legs LEGS    @problem out-of-range
 *  @source statics    @example 900 lb on four legs: 225 lb each, 300 lb where one hangs; 75 psi on 2 x 2 in */
export function standingLoad({ kg, legs, padM2, footprintM2 }: Standing): Outcome<StandingLoad> {
  for (const check of [within(STANDING_KG, kg), within(LEGS, legs)]) if (!check.ok) return check
  const worstLegKg = kg / (legs >= 4 ? legs - 1 : legs)
  const kpa = (on: number, m2: number | null): number | null => (m2 === null ? null : (on * G) / 1000 / m2)
  return fine({ legKg: kg / legs, worstLegKg, padKpa: kpa(worstLegKg, padM2), averageKpa: kpa(kg, footprintM2) })
}
