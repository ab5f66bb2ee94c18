/** A slab or screed: how old, how dry, how it was tested. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

export const SLAB_AREA: Range = { field: 'area', unit: 'm2', min: 0.1, max: 100_000 }
export const SLAB_THICKNESS: Range = { field: 'slab', unit: 'mm', min: 25, max: 1000 }
export const SCREED_THICKNESS: Range = { field: 'screed', unit: 'mm', min: 10, max: 150 }
export const RELATIVE_HUMIDITY: Range = { field: 'humidity', unit: '%', min: 0, max: 100 }
/** Moisture vapour emission: 1 lb per 1,000 ft² in 24 h is 56.5 µg/(m² s). Kept in the unit the kits print. */
export const EMISSION: Range = { field: 'emission', unit: 'lb/1000ft2/24h', min: 0, max: 40 }

/** One thousand square feet, the area that one more test place stands for. [m2] */
const THOUSAND_SQUARE_FEET_M2 = 92.90304

/** Test holes for in-situ relative humidity: three for the first 1,000 ft², one more for each further 1,000 ft².
 *  @param areaM2 SLAB_AREA  @source ASTM F2170, as reported (references 6.19, 6.20) */
export function humidityHoles(areaM2: number): Outcome<number> {
  const good = within(SLAB_AREA, areaM2)
  return good.ok ? fine(2 + Math.max(1, Math.ceil(areaM2 / THOUSAND_SQUARE_FEET_M2 - 1e-9))) : good
}

/** Depth of those holes: 40 % of the slab where it dries from one face, 20 % where from both. [mm]
 *  @param slabMm SLAB_THICKNESS  @source ASTM F2170, as reported */
export function holeDepthMm(slabMm: number, dryingFaces: 1 | 2): Outcome<number> {
  const good = within(SLAB_THICKNESS, slabMm)
  return good.ok ? fine(slabMm * (dryingFaces === 1 ? 0.4 : 0.2)) : good
}

/** Drying days of a calcium sulfate screed: 1 a mm to 40 mm, then 2 a mm; a reading decides, not the calendar. [d]
 *  @param screedMm SCREED_THICKNESS  @source NHBC Standards 9.3.5 (2022) */
export function screedDays(screedMm: number): Outcome<number> {
  const good = within(SCREED_THICKNESS, screedMm)
  return good.ok ? fine(Math.min(screedMm, 40) + 2 * Math.max(0, screedMm - 40)) : good
}

export type MoistureVerdict = {
  readonly worst: number
  /** Readings over the strictest usual limit, and over the loosest. */
  readonly verdict: 'pass' | 'fail' | 'sheet'
  readonly usualLow: number
  readonly usualHigh: number
  /** Null where the area is not known. */
  readonly holesNeeded: number | null
  readonly enoughHoles: boolean | null
}

/** Judges readings by the worst of them, against the range that data sheets commonly set.
 *  Under the range's low end: pass. Over its high end: fail. Between: the mortar's or membrane's own sheet says.
 *  @param range the usual limits, low and high, in the readings' unit
 *  @problem missing, out-of-range */
export function judgeMoisture(
  readings: readonly number[],
  kind: 'humidity' | 'emission',
  range: { readonly low: number; readonly high: number },
  areaM2: number | null = null,
): Outcome<MoistureVerdict> {
  if (readings.length === 0) return refuse('missing', { field: kind })
  for (const reading of readings) {
    const good = within(kind === 'humidity' ? RELATIVE_HUMIDITY : EMISSION, reading)
    if (!good.ok) return good
  }
  const worst = Math.max(...readings)
  const holes = areaM2 === null ? null : humidityHoles(areaM2)
  if (holes !== null && !holes.ok) return holes
  const holesNeeded = holes?.value ?? null
  return fine({
    worst,
    verdict: worst <= range.low ? 'pass' : worst > range.high ? 'fail' : 'sheet',
    usualLow: range.low,
    usualHigh: range.high,
    holesNeeded,
    enoughHoles: holesNeeded === null ? null : readings.length >= holesNeeded,
  })
}
