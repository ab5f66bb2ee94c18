/** Deck mud by parts: sacks of cement and loose sand for a finished volume. */
import { fine, type Outcome, type Range, within } from '../../problem.ts'

export const MUD_VOLUME: Range = { field: 'mud', unit: 'L', min: 0.1, max: 100_000 }
export const SAND_PARTS: Range = { field: 'sand-parts', unit: '', min: 1, max: 8 }

const L_PER_FT3 = 28.316846592
/** Loose ingredients for 27 ft³ (1 yd³) of finished mortar. */
const LOOSE_FT3_PER_YARD = 38
/** One sack of portland cement, 94 lb, is one cubic foot loose. */
export const CEMENT_SACK_KG = 94 * 0.45359237

/** Sacks of cement and litres of loose sand for a finished volume, one part cement to `sandParts` of sand.
 *  @param volumeL  MUD_VOLUME  @param sandParts  SAND_PARTS
 *  @problem out-of-range
 *  @source US Navy Seabee masonry rule "38" (references 1.1 to 1.3)
 *  @example 100 sf at 1 in, 1:3: 2.932 sacks and 8.796 ft³ of sand */
export function mudParts(volumeL: number, sandParts: number): Outcome<{ cementSacks: number; sandL: number }> {
  for (const check of [within(MUD_VOLUME, volumeL), within(SAND_PARTS, sandParts)]) if (!check.ok) return check
  const looseFt3 = ((volumeL / L_PER_FT3) * LOOSE_FT3_PER_YARD) / 27
  const cementSacks = looseFt3 / (1 + sandParts)
  return fine({ cementSacks, sandL: cementSacks * sandParts * L_PER_FT3 })
}

/** Bags of ready-mixed mud, at least one. @param yieldL  finished litres a bag, from its sheet, 2 to 100
 *  @problem out-of-range */
export function mudBags(volumeL: number, yieldL: number): Outcome<number> {
  for (const check of [
    within(MUD_VOLUME, volumeL),
    within({ field: 'bag-yield', unit: 'L', min: 2, max: 100 }, yieldL),
  ])
    if (!check.ok) return check
  return fine(Math.ceil(volumeL / yieldL - 1e-9))
}

/** Cement in a cubic metre of cement and sand mortar. [kg/m3]
 *  @source Government of India CPWD cement-consumption coefficients, sub-head 3.0 (references 1.6) */
const CEMENT_KG_PER_M3: Readonly<Record<number, number>> = { 2: 680, 3: 510, 4: 380, 5: 310, 6: 250 }

/** Cement for a volume by that table, which bulks less than rule 38; null outside it. [kg]
 *  @example 0.2 m3 at 1:4: 76 kg */
export function cementKgByTable(volumeL: number, sandParts: number): number | null {
  const perM3 = CEMENT_KG_PER_M3[sandParts]
  return perM3 === undefined ? null : (volumeL / 1000) * perM3
}
