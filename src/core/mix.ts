/** Mixing: water for a powder, how long it lives, and how much to mix and to spread at once. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { ageRate, CURE_TEMPERATURE } from './age.ts'
import { type Spread, times } from './spread.ts'
import { AREA } from './stock.ts'

export const POWDER: Range = { field: 'powder', unit: 'kg', min: 0.001, max: 100_000 }
export const PACE: Range = { field: 'pace', unit: 'm2/h', min: 0.01, max: 1000 }
export const LITRES_PER_M2: Range = { field: 'consumption', unit: 'l/m2', min: 0.001, max: 150 }

/** Water for a weight of powder, a part of a bag as well as many. [l]
 *  @param powderKg POWDER    @param waterLPerKg from the sheet [l/kg]
 *  @problem out-of-range    @example half a 20 kg bag at 0.22 to 0.26 l/kg: 2.2 to 2.6 l */
export function waterL(powderKg: number, waterLPerKg: Spread): Outcome<Spread> {
  const powder = within(POWDER, powderKg)
  return powder.ok ? fine(times(waterLPerKg, powderKg)) : powder
}

/** Sun, wind or more than `hotC` on the work: open time and pot life shrink. */
export type Weather = { readonly c: number; readonly sunOrWind: boolean }
export type HotRule = { readonly hotC: number; readonly hotFactor: number }

const isHot = (weather: Weather, rule: HotRule): boolean => weather.c > rule.hotC + 0.05

export type PotLifeInput = {
  /** At the reference temperature [min]. */
  readonly sheetMin: Spread
  readonly referenceC: number
  /** Cement is scaled by its rate; the rest keeps to its sheet, halved when hot. */
  readonly setting: 'cement' | 'rapid' | 'epoxy' | 'drying'
  readonly activationLowK: number
  readonly activationHighK: number
  readonly hot: HotRule
}

/** How long a bucket can be used at a temperature. [min]
 *  Warm: divided by the rate of hardening (equivalent age), and at most half the sheet's above `hotC`. Cold: the
 *  sheet's own, for cold mortar is not better mortar.
 *  @param c of the mix [C], CURE_TEMPERATURE
 *  @problem out-of-range
 *  @source ASTM C1074 for the rate; half when hot: common practice, no source */
export function potLifeMin(input: PotLifeInput, c: number): Outcome<Spread> {
  const inside = within(CURE_TEMPERATURE, c)
  if (!inside.ok) return inside
  const { sheetMin, referenceC, activationLowK, activationHighK, hot } = input
  const cap = isHot({ c, sunOrWind: false }, hot) ? hot.hotFactor : 1
  const share = (activationK: number) =>
    input.setting === 'cement' ? Math.min(cap, 1 / ageRate(c, referenceC, activationK)) : cap
  return fine({
    low: sheetMin.low * share(activationHighK),
    usual: sheetMin.usual * share((activationLowK + activationHighK) / 2),
    high: sheetMin.high * share(activationLowK),
  })
}

/** How long combed mortar takes a tile [min]: half in sun, wind or heat. The touch test decides.
 *  @param weather c CURE_TEMPERATURE    @problem out-of-range    @source common practice, no source */
export function openTimeMin(sheetMin: Spread, weather: Weather, hot: HotRule): Outcome<Spread> {
  const inside = within(CURE_TEMPERATURE, weather.c)
  if (!inside.ok) return inside
  return fine(times(sheetMin, weather.sunOrWind || isHot(weather, hot) ? hot.hotFactor : 1))
}

export type BatchInput = {
  readonly areaLeftM2: number
  /** [m2/h] */
  readonly paceM2PerH: number
  readonly potLifeMin: number
  /** Of combed mortar; null for grout. [min] */
  readonly openTimeMin: number | null
  /** What the bed, or the joints, take [l/m2]. */
  readonly consumptionLPerM2: number
  /** What a kilogram of powder makes [l/kg]. */
  readonly yieldLPerKg: number
  /** [l/kg]; null takes no water. */
  readonly waterLPerKg: Spread | null
}

export type Batch = {
  readonly areaM2: number
  readonly limitedBy: 'pot-life' | 'area-left'
  readonly volumeL: number
  readonly powderKg: number
  readonly waterL: Spread | null
  /** The most to comb before setting tile into it; null for grout. [m2] */
  readonly spreadM2: number | null
}

/** How much to mix for the next stretch, and how much to spread at once.
 *  Mix: min(pot life x pace, area left) x consumption. Spread: open time x pace.
 *  @param input areaLeftM2 AREA, paceM2PerH PACE, consumptionLPerM2 LITRES_PER_M2, times above 0 to 10000 min
 *  @problem out-of-range    @source arithmetic; common practice, no source
 *  @example 2 m2/h, 90 min, 10 m2 left, 6 l/m2: 3 m2, 18 l */
export function batch(input: BatchInput): Outcome<Batch> {
  const checks = [
    within(AREA, input.areaLeftM2),
    within(PACE, input.paceM2PerH),
    within(LITRES_PER_M2, input.consumptionLPerM2),
    within({ field: 'pot-life', unit: 'min', min: 0.1, max: 10_000 }, input.potLifeMin),
    within({ field: 'open-time', unit: 'min', min: 0.1, max: 10_000 }, input.openTimeMin ?? 1),
    within({ field: 'yield', unit: 'l/kg', min: 0.05, max: 10 }, input.yieldLPerKg),
  ]
  for (const check of checks) if (!check.ok) return check
  const inPotLifeM2 = (input.potLifeMin / 60) * input.paceM2PerH
  const areaM2 = Math.min(inPotLifeM2, input.areaLeftM2)
  const volumeL = areaM2 * input.consumptionLPerM2
  const powderKg = volumeL / input.yieldLPerKg
  return fine({
    areaM2,
    limitedBy: inPotLifeM2 < input.areaLeftM2 ? 'pot-life' : 'area-left',
    volumeL,
    powderKg,
    waterL: input.waterLPerKg === null ? null : times(input.waterLPerKg, powderKg),
    spreadM2: input.openTimeMin === null ? null : Math.min(areaM2, (input.openTimeMin / 60) * input.paceM2PerH),
  })
}
