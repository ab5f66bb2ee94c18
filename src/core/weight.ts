/** Weight of tile and of the layers on a floor, and what one person should lift. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { type Spread, times, wholePacks } from './spread.ts'

export const LAYER: Range = { field: 'thickness', unit: 'mm', min: 0, max: 500 }
export const DENSITY: Range = { field: 'density', unit: 'kg/m3', min: 10, max: 10_000 }
export const PAYLOAD: Range = { field: 'payload', unit: 'kg', min: 10, max: 100_000 }

/** Standard gravity [m/s2], exact. */
const GRAVITY = 9.80665

/** Mass of a layer. [kg/m2]
 *  @param thicknessMm LAYER    @param kgPerM3 DENSITY at each end    @problem out-of-range
 *  @example 10 mm of porcelain at 2350: 23.5 kg/m2 */
export function layerKgPerM2(thicknessMm: number, kgPerM3: Spread): Outcome<Spread> {
  const checks = [within(LAYER, thicknessMm), within(DENSITY, kgPerM3.low), within(DENSITY, kgPerM3.high)]
  for (const check of checks) if (!check.ok) return check
  return fine(times(kgPerM3, thicknessMm / 1000))
}

/** Mass of a number of tiles. [kg]
 *  @param faceM2 face of one tile [m2]    @problem out-of-range */
export function tilesKg(count: number, faceM2: number, thicknessMm: number, kgPerM3: Spread): Outcome<Spread> {
  const perM2 = layerKgPerM2(thicknessMm, kgPerM3)
  return perM2.ok ? fine(times(perM2.value, count * faceM2)) : perM2
}

/** Dead load of a mass spread over a floor. [kPa]
 *  @example 23.5 kg/m2: 0.2305 kPa, 4.813 lb/ft2 */
export const loadKpa = (kgPerM2: number): number => (kgPerM2 * GRAVITY) / 1000

/** Trips for a mass at a payload. Whole.
 *  @param massKg 0 or more    @param payloadKg PAYLOAD    @problem out-of-range */
export function trips(massKg: number, payloadKg: number): Outcome<number> {
  const mass = within({ field: 'mass', unit: 'kg', min: 0, max: 10_000_000 }, massKg)
  if (!mass.ok) return mass
  const payload = within(PAYLOAD, payloadKg)
  return payload.ok ? fine(wholePacks(massKg / payloadKg)) : payload
}

export type Lift = {
  /** Hands out from the ankles, hands above the floor at the start, how far it is raised. [mm] */
  readonly outMm: number
  readonly heightMm: number
  readonly raisedMm: number
  /** Turn of the body [deg]; frequency and grip as multipliers of 0 to 1. */
  readonly turnDeg: number
  readonly frequency: number
  readonly grip: number
}

const IN = 25.4
const LOAD_CONSTANT_KG = 51 * 0.45359237

/** The revised NIOSH limit for one lift. [kg]
 *  51 lb x HM x VM x DM x AM x FM x CM, lengths in inches: HM = 10/H (1 up to 10 in, 0 beyond 25),
 *  VM = 1 - 0.0075 |V - 30|, DM = 0.82 + 1.8/D (1 up to 10 in), AM = 1 - 0.0032 A (0 beyond 135 degrees).
 *  @param lift lengths 0 to 2000 mm, turn 0 to 180 degrees, multipliers 0 to 1    @problem out-of-range
 *  @source NIOSH 94-110; AM and the cut-offs from memory    @example H 15, V 6, D 30 in: 24.53 lb */
export function liftLimitKg(lift: Lift): Outcome<number> {
  const checks = [
    ...[lift.outMm, lift.heightMm, lift.raisedMm].map((mm) =>
      within({ field: 'reach', unit: 'mm', min: 0, max: 2000 }, mm),
    ),
    within({ field: 'turn', unit: 'deg', min: 0, max: 180 }, lift.turnDeg),
    ...[lift.frequency, lift.grip].map((share) => within({ field: 'multiplier', unit: '', min: 0, max: 1 }, share)),
  ]
  for (const check of checks) if (!check.ok) return check
  const [out, height, raised] = [lift.outMm / IN, lift.heightMm / IN, lift.raisedMm / IN]
  const outShare = out > 25 ? 0 : Math.min(1, 10 / Math.max(10, out))
  const heightShare = Math.max(0, 1 - 0.0075 * Math.abs(height - 30))
  const raisedShare = raised <= 10 ? 1 : 0.82 + 1.8 / raised
  const turnShare = lift.turnDeg > 135 ? 0 : 1 - 0.0032 * lift.turnDeg
  return fine(LOAD_CONSTANT_KG * outShare * heightShare * raisedShare * turnShare * lift.frequency * lift.grip)
}
