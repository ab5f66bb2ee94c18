/** Packs on hand, used and still needed: the same sums for mortar, grout, leveller and boxes of tile. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { per, type Spread, times, wholePacks } from './spread.ts'

export const AREA: Range = { field: 'area', unit: 'm2', min: 0.0001, max: 1_000_000 }
/** What is left may be nothing. */
export const AREA_LEFT: Range = { ...AREA, min: 0 }
export const PACKS: Range = { field: 'packs', unit: '', min: 0, max: 1_000_000 }

/** Of a pack. */
export const COVERAGE: Range = { field: 'coverage', unit: 'm2', min: 0.0001, max: 1e9 }

/** `enough` at the heaviest use of the range, `tight` at the usual use only, `short` at neither. */
export type Verdict = 'enough' | 'tight' | 'short'

export type Remaining = {
  /** Packs the rest takes, not rounded. */
  readonly needed: Spread
  readonly verdict: Verdict
  /** On hand less needed at the usual use: below 0 it is short. */
  readonly spare: number
  /** Area the stock on hand will cover. [m2] */
  readonly reachesM2: Spread
  /** Whole packs to buy beyond those on hand, at the usual and at the heaviest use. */
  readonly buy: number
  readonly buySafe: number
}

/** Will what is on hand finish what is left?
 *  @param onHand PACKS, parts of a pack too    @param areaLeftM2 AREA_LEFT
 *  @param coverageM2PerPack COVERAGE
 *  @problem out-of-range */
export function remaining(onHand: number, areaLeftM2: number, coverageM2PerPack: Spread): Outcome<Remaining> {
  const packs = within(PACKS, onHand)
  if (!packs.ok) return packs
  const area = within(AREA_LEFT, areaLeftM2)
  if (!area.ok) return area
  const checks = [within(COVERAGE, coverageM2PerPack.low), within(COVERAGE, coverageM2PerPack.high)]
  for (const check of checks) if (!check.ok) return check
  const needed = per(areaLeftM2, coverageM2PerPack)
  const verdict = onHand >= needed.high - 1e-9 ? 'enough' : onHand >= needed.usual - 1e-9 ? 'tight' : 'short'
  return fine({
    needed,
    verdict,
    spare: onHand - needed.usual,
    reachesM2: times(coverageM2PerPack, onHand),
    buy: wholePacks(needed.usual - onHand),
    buySafe: wholePacks(needed.high - onHand),
  })
}

/** What a pack has been covering, waste and all. [m2 a pack]
 *  @param packsUsed 0.01 to PACKS.max    @param areaDoneM2 AREA
 *  @problem out-of-range    @example 3 bags on 12 m2: 4 m2 a bag */
export function coverageFromUse(packsUsed: number, areaDoneM2: number): Outcome<number> {
  const packs = within({ ...PACKS, min: 0.01 }, packsUsed)
  if (!packs.ok) return packs
  const area = within(AREA, areaDoneM2)
  return area.ok ? fine(areaDoneM2 / packsUsed) : area
}
