/** The ride home from the yard: mass, trips, axles and tongue, pallets, and what one person should not lift. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const PAYLOAD: Range = { field: 'payload', unit: 'kg', min: 20, max: 40_000 }
const MOST_PIECES = 20_000

/** Like pieces: a bag, a box. */
export type Load = { readonly name: string; readonly kgEach: number; readonly pieces: number }

export const massOf = (loads: readonly Load[]): number => loads.reduce((sum, l) => sum + l.kgEach * l.pieces, 0)

export type Trips = { readonly trips: number; readonly kg: number; readonly fullestKg: number }

/** Trips that carry whole bags and boxes, heaviest first, none split.
 *  @param payloadKg  PAYLOAD: the sticker's payload less people and tools
 *  @problem out-of-range (also a piece heavier than the payload), too-much-work
 *  @source best fit decreasing: at least mass / payload
 *  @example 40 bags of 22.7 kg in a 600 kg pickup: 26 a trip, 2 trips */
export function tripsFor(loads: readonly Load[], payloadKg: number): Outcome<Trips> {
  const payload = within(PAYLOAD, payloadKg)
  if (!payload.ok) return payload
  const kg = massOf(loads)
  if (!(kg >= 0) || loads.some((l) => !(l.pieces >= 0 && l.kgEach >= 0)))
    return refuse('out-of-range', { field: 'mass', value: kg, min: 0, max: 1e6, unit: 'kg' })
  const pieces = loads.reduce((sum, l) => sum + Math.ceil(l.pieces), 0)
  if (pieces > MOST_PIECES) return refuse('too-much-work', { what: 'pieces' })
  const trips: number[] = []
  for (const load of loads.toSorted((a, b) => b.kgEach - a.kgEach)) {
    const fits = within({ field: 'piece-mass', unit: 'kg', min: 0, max: payloadKg }, load.kgEach)
    if (!fits.ok) return fits
    for (let i = 0; i < Math.ceil(load.pieces); i++) {
      let best = -1
      for (let t = 0; t < trips.length; t++)
        if (trips[t]! + load.kgEach <= payloadKg + 1e-9 && (best < 0 || trips[t]! > trips[best]!)) best = t
      if (best < 0) trips.push(load.kgEach)
      else trips[best]! += load.kgEach
    }
  }
  return fine({ trips: trips.length, kg, fullestKg: trips.length ? Math.max(...trips) : 0 })
}

/** What a load adds to each axle of a truck, by levers about the front axle.
 *  @param behindFrontMm  from the front axle to the load's middle; beyond the wheelbase the front is lightened
 *  @problem out-of-range
 *  @source statics: moments about the front axle
 *  @example 500 kg over a 3.6 m wheelbase, 3.0 m back: rear 416.7, front 83.3 kg */
export function axleShare(
  loadKg: number,
  wheelbaseMm: number,
  behindFrontMm: number,
): Outcome<{ frontKg: number; rearKg: number }> {
  for (const check of [
    within({ field: 'wheelbase', unit: 'mm', min: 1000, max: 10_000 }, wheelbaseMm),
    within({ field: 'load-place', unit: 'mm', min: 0, max: 15_000 }, behindFrontMm),
    within({ ...PAYLOAD, field: 'mass', min: 0 }, loadKg),
  ])
    if (!check.ok) return check
  const rearKg = (loadKg * behindFrontMm) / wheelbaseMm
  return fine({ frontKg: loadKg - rearKg, rearKg })
}

/** What a trailer's load presses on the hitch, by levers about the trailer's axle.
 *  @param aheadOfAxleMm  load's middle before the axle (behind it: negative, the tongue lifts)
 *  @param hitchMm  axle to hitch
 *  @problem out-of-range
 *  @source statics; 10 to 15 % of the trailer's mass on the tongue is common practice, no source
 *  @example 800 kg, 0.4 m ahead, hitch 3.2 m from the axle: 100 kg, 12.5 % */
export function tongueShare(
  loadKg: number,
  hitchMm: number,
  aheadOfAxleMm: number,
): Outcome<{ tongueKg: number; pct: number }> {
  for (const check of [
    within({ field: 'hitch', unit: 'mm', min: 500, max: 10_000 }, hitchMm),
    within({ field: 'load-place', unit: 'mm', min: -5000, max: 5000 }, aheadOfAxleMm),
    within({ ...PAYLOAD, field: 'mass', min: 1 }, loadKg),
  ])
    if (!check.ok) return check
  const pct = (100 * aheadOfAxleMm) / hitchMm
  return fine({ tongueKg: (loadKg * pct) / 100, pct })
}

/** Pallets for bags or boxes, by count and by what a pallet may carry. */
export const pallets = (pieces: number, perPallet: number, kgEach: number, mostKg: number): number =>
  Math.ceil(pieces / Math.max(1, Math.min(perPallet, Math.floor(mostKg / kgEach))) - 1e-9)

export type Lift = {
  /** Hands ahead of the ankles, hands above the floor at the start, and how far they travel up or down [mm]. */
  readonly reachMm: number
  readonly fromMm: number
  readonly travelMm: number
  /** Twist to the side [degrees], 0 to 135. */
  readonly twistDeg?: number
  /** Multipliers for how often and how well gripped, 0 to 1; 1 is a rare lift with good handles. */
  readonly frequency?: number
  readonly grip?: number
}

const MM_PER_IN = 25.4
const KG_PER_LB = 0.45359237

/** Weight that most healthy people may lift in that way, and how many times that the load is.
 *  Reach below 10 in counts as 10, travel below 10 in as 10; beyond 25 in of reach nothing may be lifted.
 *  @problem out-of-range
 *  @source NIOSH 94-110 (revised lifting equation): 51 lb x HM x VM x DM x AM x FM x CM
 *  @example reach 15, from 6, travel 30 in: 24.5 lb; a 50 lb bag is 2.04 times that */
export function liftingLimit(loadKg: number, lift: Lift): Outcome<{ limitKg: number; index: number }> {
  for (const check of [
    within({ field: 'reach', unit: 'mm', min: 0, max: 25 * MM_PER_IN }, lift.reachMm),
    within({ field: 'lift-height', unit: 'mm', min: 0, max: 70 * MM_PER_IN }, lift.fromMm),
    within({ field: 'lift-travel', unit: 'mm', min: 0, max: 70 * MM_PER_IN }, lift.travelMm),
    within({ field: 'twist', unit: 'deg', min: 0, max: 135 }, lift.twistDeg ?? 0),
    within({ field: 'frequency', unit: '', min: 0.01, max: 1 }, lift.frequency ?? 1),
    within({ field: 'grip', unit: '', min: 0.01, max: 1 }, lift.grip ?? 1),
  ])
    if (!check.ok) return check
  const reach = Math.max(10, lift.reachMm / MM_PER_IN)
  const travel = Math.max(10, lift.travelMm / MM_PER_IN)
  const vertical = 1 - 0.0075 * Math.abs(lift.fromMm / MM_PER_IN - 30)
  const limitLb =
    51 *
    (10 / reach) *
    vertical *
    (0.82 + 1.8 / travel) *
    (1 - 0.0032 * (lift.twistDeg ?? 0)) *
    (lift.frequency ?? 1) *
    (lift.grip ?? 1)
  const limitKg = limitLb * KG_PER_LB
  return fine({ limitKg, index: loadKg / limitKg })
}
