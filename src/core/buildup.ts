/** How high the new floor comes and what that does to doors, appliances, flanges and thresholds; what it weighs. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const LAYER: Range = { field: 'layer', unit: 'mm', min: 0, max: 500 }
/** Standard gravity, for kPa from kg. [m/s²] */
const GRAVITY = 9.80665

/** One layer; a bed is a range, as its ridges are pressed to somewhere between. */
export type Layer = {
  readonly name: string
  readonly lowMm: number
  readonly highMm: number
  /** Null where nothing is known of its weight. [kg/L] */
  readonly kgPerL: number | null
}

export type Height = { readonly lowMm: number; readonly usualMm: number; readonly highMm: number }

/** Height of a stack of layers, as a range with its middle.
 *  @param layers  LAYER each, low not above high
 *  @problem out-of-range, missing
 *  @source a sum
 *  @example 1/4 in board on 3 to 4 mm of bed, 9 mm tile on 3 to 5 mm: 21.4 to 24.4 mm */
export function stackHeight(layers: readonly Layer[]): Outcome<Height> {
  if (!layers.length) return refuse('missing', { field: 'layers' })
  for (const layer of layers) {
    const low = within(LAYER, layer.lowMm)
    if (!low.ok) return low
    const high = within({ ...LAYER, min: layer.lowMm }, layer.highMm)
    if (!high.ok) return high
  }
  const lowMm = layers.reduce((sum, l) => sum + l.lowMm, 0)
  const highMm = layers.reduce((sum, l) => sum + l.highMm, 0)
  return fine({ lowMm, usualMm: (lowMm + highMm) / 2, highMm })
}

/** Mass on each square metre and as a load. Weights are of the thick side, to be safe.
 *  @problem out-of-range, missing
 *  @source thickness x density; kPa by standard gravity, 1 psf = 47.88026 Pa
 *  @example 10 mm porcelain at 2.35 kg/L: 23.5 kg/m², 0.230 kPa, 4.81 psf */
export function deadLoad(layers: readonly Layer[]): Outcome<{ kgPerM2: number; kpa: number; unknown: string[] }> {
  const height = stackHeight(layers)
  if (!height.ok) return height
  const kgPerM2 = layers.reduce((sum, l) => sum + l.highMm * (l.kgPerL ?? 0), 0)
  const unknown = layers.filter((l) => l.kgPerL === null).map((l) => l.name)
  return fine({ kgPerM2, kpa: (kgPerM2 * GRAVITY) / 1000, unknown })
}

/** Load of a mass spread over an area. [kPa] */
export const spreadLoad = (kg: number, areaM2: number): number => (kg * GRAVITY) / areaM2 / 1000

/** What to take off a door so that it clears the new floor. Negative: so much is left over.
 *  @param gapMm  under the door now, to the floor that stays under the new one  @param clearMm  wanted above the new floor
 *  @example gap 10 mm, rise 22 mm, 6 mm clear: cut 18 mm */
export const doorCutMm = (gapMm: number, riseMm: number, clearMm: number): number => riseMm + clearMm - gapMm

export type ApplianceFit = {
  /** Left above it when it stands on the new floor with its feet all in [mm]; below 0 it does not go in. */
  readonly spareMm: number
  /** It goes in now, and it can be drawn out again over the tile in front of it. */
  readonly goesIn: boolean
  readonly comesOut: boolean
}

/** Does an appliance fit under a counter, and will it still come out?
 *  Where tile stops in front of it the appliance must be lifted over the edge: its least height plus the tile's rise
 *  has to pass under the counter.
 *  @param openingMm  old floor to counter  @param leastMm  appliance with its feet turned in
 *  @param tiledUnder  the tile runs under it  @param clearMm  kept free above it
 *  @problem out-of-range
 *  @source geometry
 *  @example opening 876, rise 24, least 838, tiled under: 14 mm left */
export function applianceFit(
  openingMm: number,
  riseMm: number,
  leastMm: number,
  tiledUnder: boolean,
  clearMm = 0,
): Outcome<ApplianceFit> {
  const size: Range = { field: 'opening', unit: 'mm', min: 100, max: 3000 }
  for (const check of [
    within(size, openingMm),
    within({ ...size, field: 'appliance' }, leastMm),
    within(LAYER, riseMm),
  ])
    if (!check.ok) return check
  const overTile = openingMm - riseMm - leastMm - clearMm
  const spareMm = tiledUnder ? overTile : openingMm - leastMm - clearMm
  return fine({ spareMm, goesIn: spareMm >= 0, comesOut: overTile >= 0 })
}

/** What a toilet flange needs: the part of the rise that it does not already stand proud of.
 *  @param flangeAboveOldMm  top of the flange above the old floor  @param wantedAboveNewMm  above the new one, 0 to 10
 *  @source common practice, no source: on top of the new floor, up to 1/4 in above it
 *  @example flange 6 mm above, rise 22 mm: 16 mm of ring to bring it flush */
export const flangeRingMm = (riseMm: number, flangeAboveOldMm: number, wantedAboveNewMm = 0): number =>
  Math.max(0, riseMm + wantedAboveNewMm - flangeAboveOldMm)

export type StepRule = {
  /** Change of height that may stay upright [mm]. */
  readonly uprightMm: number
  /** Change of height that may be bevelled [mm]; above it a ramp is due. */
  readonly bevelMm: number
  /** Run a unit of rise for the bevel and for the ramp. */
  readonly bevelRun: number
  readonly rampRun: number
}
export type StepVerdict = { readonly kind: 'level' | 'upright' | 'bevel' | 'ramp'; readonly runMm: number }

/** What a change of height at a doorway asks for, and the run it takes.
 *  @param stepMm  either way; 0 to 500
 *  @problem out-of-range
 *  @source the rule is data with its own source
 *  @example rule 6.4 / 12.7 mm, bevel 1:2: 10 mm asks for a bevel of 20 mm at 1:2 */
export function stepAt(stepMm: number, rule: StepRule): Outcome<StepVerdict> {
  const step = within({ ...LAYER, field: 'step' }, Math.abs(stepMm))
  if (!step.ok) return step
  if (step.value < 0.5) return fine({ kind: 'level', runMm: 0 })
  if (step.value <= rule.uprightMm + 0.05) return fine({ kind: 'upright', runMm: 0 })
  if (step.value <= rule.bevelMm + 0.05) return fine({ kind: 'bevel', runMm: step.value * rule.bevelRun })
  return fine({ kind: 'ramp', runMm: step.value * rule.rampRun })
}
