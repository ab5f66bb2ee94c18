/** Mortar for a floor or wall: from the bed's depth to bags, by the volume a bag makes, not by its weight. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { exactly, per, plus, type Spread, times, wholePacks } from './spread.ts'
import { AREA } from './stock.ts'
import { combedRangeMm, type Notch } from './trowel.ts'

export const UNEVENNESS: Range = { field: 'unevenness', unit: 'mm', min: 0, max: 100 }
export const BED: Range = { field: 'bed', unit: 'mm', min: 0.1, max: 150 }
export const WASTE: Range = { field: 'waste', unit: 'share', min: 0, max: 1 }
export const YIELD: Range = { field: 'yield', unit: 'l', min: 0.05, max: 2000 }

export type BedParts = {
  /** From the trowel. [mm] */
  readonly combedMm: Spread
  /** On the tile's back; nothing without back-buttering. [mm] */
  readonly skimMm: Spread
  /** What hollows of the floor take, as a mean over it. [mm] */
  readonly unevenMm: Spread
  /** The sum, = l/m2. */
  readonly bedMm: Spread
}

export type BedInput = {
  readonly notch: Notch
  readonly anglesDeg: Spread
  /** The skim of back-buttered tile [mm], or null where the back is left bare. */
  readonly skimMm: Spread | null
  /** The deepest gap under the straightedge [mm], UNEVENNESS. */
  readonly deepestGapMm: number
  /** Mean fill as a share of the deepest gap: 0.5 (wedge) to 0.67 (dish). */
  readonly unevenFactor: Spread
}

/** The bed a trowel, a skim and an uneven floor make together. [mm]
 *  The skim's low end is 0: a tight one is pressed out into the ridges.
 *  @problem out-of-range  gap outside UNEVENNESS, angle outside TROWEL_ANGLE
 *  @source geometry; skim and uneven factor: config/practice.json, with what stands there */
export function bedParts(input: BedInput): Outcome<BedParts> {
  const gap = within(UNEVENNESS, input.deepestGapMm)
  if (!gap.ok) return gap
  const combed = combedRangeMm(input.notch, input.anglesDeg)
  if (!combed.ok) return combed
  const skimMm = input.skimMm ?? exactly(0)
  const unevenMm = times(input.unevenFactor, gap.value)
  return fine({ combedMm: combed.value, skimMm, unevenMm, bedMm: plus(plus(combed.value, skimMm), unevenMm) })
}

/** Wet mortar from a kilogram of powder. [l/kg]
 *  (1 + water) / wet density, water in l/kg at 1 kg/l.
 *  @source mass balance    @example 0.24 l/kg, 1.6 kg/l: 0.775 l/kg, 17.6 l from a 50 lb bag */
export const yieldLPerKg = (waterLPerKg: number, wetKgPerL: number): number => (1 + waterLPerKg) / wetKgPerL

/** What a pack makes once mixed [l]: as its sheet says, else from its weight. */
export const packYieldL = (
  pack: { readonly kg: number; readonly yieldL?: number },
  powder: { readonly waterLPerKg: Spread | null; readonly wetKgPerL: number; readonly yieldLPerKg?: number },
): number =>
  pack.yieldL ?? pack.kg * (powder.yieldLPerKg ?? yieldLPerKg(powder.waterLPerKg?.usual ?? 0, powder.wetKgPerL))

export type MortarNeed = {
  readonly volumeL: Spread
  readonly kg: Spread
  /** Not rounded. */
  readonly bags: Spread
  /** Whole bags for the usual use, and for the heaviest. */
  readonly bagsToBuy: number
  readonly bagsSafe: number
  /** Without the waste: what a trowel covers. [m2 a bag] */
  readonly coverageM2PerBag: Spread
  /** Waste in: what a bag finishes, to set against bags on hand. [m2 a bag] */
  readonly finishedM2PerBag: Spread
}

/** Bags for an area at a bed. The low end is the thinnest bed and no waste; the usual and the high end carry the waste.
 *  @param areaM2 AREA    @param bedMm BED    @param pack kg [kg] and yieldL [l], YIELD
 *  @param wasteShare WASTE: what stays in the bucket, on the tools and is scraped off
 *  @problem out-of-range
 *  @source volume = area x bed (1 mm on 1 m2 is 1 l); yield from the sheet or yieldLPerKg */
export function mortarNeed(
  areaM2: number,
  bedMm: Spread,
  pack: { readonly kg: number; readonly yieldL: number },
  wasteShare: number,
): Outcome<MortarNeed> {
  const checks = [
    within(AREA, areaM2),
    within(BED, bedMm.low),
    within(BED, bedMm.high),
    within(YIELD, pack.yieldL),
    within(WASTE, wasteShare),
  ]
  for (const check of checks) if (!check.ok) return check
  const waste = 1 + wasteShare
  const volumeL = { low: areaM2 * bedMm.low, usual: areaM2 * bedMm.usual * waste, high: areaM2 * bedMm.high * waste }
  const bags = times(volumeL, 1 / pack.yieldL)
  return fine({
    volumeL,
    bags,
    kg: times(bags, pack.kg),
    bagsToBuy: wholePacks(bags.usual),
    bagsSafe: wholePacks(bags.high),
    coverageM2PerBag: per(pack.yieldL, bedMm),
    finishedM2PerBag: per(areaM2, bags),
  })
}

/** `certain`: at the usual angle too, not only at the end of the range. */
export type BedWarning =
  | { readonly code: 'bed-thin'; readonly bedMm: number; readonly leastMm: number; readonly certain: boolean }
  | { readonly code: 'bed-thick'; readonly bedMm: number; readonly mostMm: number; readonly certain: boolean }

/** Is the bed inside what the mortar may be?
 *  Thin: what the trowel combs at its lowest, before any skim. Thick: the bed with the deepest hollow filled.
 *  @param leastMm 3/32 in unless the sheet asks for more    @param mostMm the mortar's cap
 *  @source CTEF, reporting ANSI: at least 3/32 in, thin-set to 1/4 in, large-and-heavy-tile mortar to 1/2 in */
export function bedWarnings(parts: BedParts, deepestGapMm: number, leastMm: number, mostMm: number): BedWarning[] {
  const warnings: BedWarning[] = []
  const tolerance = 1e-6
  const { combedMm, skimMm } = parts
  if (combedMm.low < leastMm - tolerance) {
    const certain = combedMm.usual < leastMm - tolerance
    warnings.push({ code: 'bed-thin', bedMm: combedMm.low, leastMm, certain })
  }
  const thickest = combedMm.high + skimMm.high + deepestGapMm
  if (thickest > mostMm + tolerance) {
    const certain = combedMm.usual + skimMm.usual + deepestGapMm > mostMm + tolerance
    warnings.push({ code: 'bed-thick', bedMm: thickest, mostMm, certain })
  }
  return warnings
}
