/** Mortar contact on lifted tiles: how much, where the voids are, whether the trowel can give it. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

/** Where the tile lies. Shower walls are wet. */
export type ContactPlace = 'dry' | 'wet' | 'exterior' | 'panel-floor' | 'panel-wall'

export const CONTACT: Range = { field: 'contact', unit: '%', min: 0, max: 100 }
export const VOID_SIDE: Range = { field: 'void', unit: 'mm', min: 0, max: 4000 }
/** Fewer lifted tiles are not a check. @source ANSI A108.5 (2011), as reported (references 3.7) */
export const LEAST_LIFTED = 3
const INCH = 25.4

export type ContactCheck = {
  readonly averagePct: number
  readonly lowestPct: number
  readonly lifted: number
  readonly neededPct: number
  /** `not-yet`: fewer than three tiles; a bad first tile still says stop. */
  readonly verdict: 'pass' | 'fail' | 'not-yet'
}

/** Averages the contact of lifted tiles and holds it against the least for the place.
 *  @param contactPct one figure a tile, CONTACT; @param neededPct the least for the place
 *  @problem missing, out-of-range */
export function judgeContact(contactPct: readonly number[], neededPct: number): Outcome<ContactCheck> {
  if (contactPct.length === 0) return refuse('missing', { field: 'contact' })
  for (const pct of contactPct) {
    const good = within(CONTACT, pct)
    if (!good.ok) return good
  }
  const averagePct = contactPct.reduce((sum, pct) => sum + pct, 0) / contactPct.length
  const enough = averagePct >= neededPct - 1e-9
  const verdict = contactPct.length < LEAST_LIFTED ? 'not-yet' : enough ? 'pass' : 'fail'
  return fine({ averagePct, lowestPct: Math.min(...contactPct), lifted: contactPct.length, neededPct, verdict })
}

/** One void seen on a lifted tile. */
export type Void = {
  readonly lengthMm: number
  readonly widthMm: number
  readonly toEdgeMm?: number
  readonly count?: number
}

export type VoidCheck = {
  readonly contactPct: number
  readonly voidPct: number
  readonly largestMm2: number
  /** Voids over 2 in². */
  readonly tooLarge: number
  /** Voids within 2 in of an edge. */
  readonly tooNear: number
  readonly good: boolean
}

/** Good practice, not required by the standard: no void over 2 in², none within 2 in of an edge.
 *  @source a union training institute's article, 2021 (references 3.8) */
export const LARGEST_VOID_MM2 = 2 * INCH ** 2
export const NEAREST_VOID_MM = 2 * INCH

/** Contact and void check of one tile from counted voids: a tile can pass on number and fail on its voids.
 *  @param lengthMm, widthMm the tile; @param voids rectangles round each void
 *  @source vector: three 2 x 2 in voids on 12 x 24 in -> 95.8 %, each void too large (references 13.13)
 *  @problem out-of-range, nothing-left (voids cover more than the tile) */
export function judgeVoids(lengthMm: number, widthMm: number, voids: readonly Void[]): Outcome<VoidCheck> {
  const tileMm2 = lengthMm * widthMm
  let [voidMm2, largestMm2, tooLarge, tooNear] = [0, 0, 0, 0]
  for (const v of voids) {
    for (const side of [v.lengthMm, v.widthMm]) {
      const good = within(VOID_SIDE, side)
      if (!good.ok) return good
    }
    const one = v.lengthMm * v.widthMm
    const times = v.count ?? 1
    voidMm2 += one * times
    largestMm2 = Math.max(largestMm2, one)
    if (one > LARGEST_VOID_MM2 + 0.01) tooLarge += times
    if (v.toEdgeMm !== undefined && v.toEdgeMm < NEAREST_VOID_MM - 0.01) tooNear += times
  }
  if (!(voidMm2 <= tileMm2)) return refuse('nothing-left', { said: 'voids' })
  const voidPct = (100 * voidMm2) / tileMm2
  const contactPct = 100 - voidPct
  return fine({ contactPct, voidPct, largestMm2, tooLarge, tooNear, good: tooLarge === 0 && tooNear === 0 })
}

/** Void area that a contact figure leaves on one tile. [mm2]
 *  @source 12 x 12 in: 80 % leaves 28.8 in², 95 % leaves 7.2 in² (references 3.8) */
export const allowedVoidMm2 = (lengthMm: number, widthMm: number, neededPct: number): number =>
  lengthMm * widthMm * (1 - neededPct / 100)

/** Least bed after embedding: 3/32 in. @source ANSI A108.5 s. 2.2.2, as reported (references 3.4, 3.5) */
export const LEAST_BED_MM = (3 * INCH) / 32
/** Ordinary thin-bed mortar up to 1/4 in, large-and-heavy-tile mortar up to 1/2 in. @source references 3.4 (reported) */
export const MOST_BED_MM = { thin: INCH / 4, large: INCH / 2 } as const

export type TrowelCheck = {
  readonly bedLowMm: number
  readonly bedHighMm: number
  readonly needsMm: number
  readonly capMm: number
  readonly verdict: 'enough' | 'tight' | 'short'
}

/** Is that trowel enough: the bed it leaves (held low to upright) against the least bed plus what tile and floor take up.
 *  @param bedLowMm, bedHighMm bed at 45 and at 90 degrees, from the notch
 *  @param gapMm deepest gap under the tile's own length, warpMm the tile's bow: half of each is filled on average
 *  @problem out-of-range */
export function judgeTrowel(
  bed: { readonly lowMm: number; readonly highMm: number },
  unevenness: { readonly gapMm: number; readonly warpMm: number },
  mortar: keyof typeof MOST_BED_MM,
): Outcome<TrowelCheck> {
  const range: Range = { field: 'bed', unit: 'mm', min: 0, max: 50 }
  for (const n of [bed.lowMm, bed.highMm, unevenness.gapMm, unevenness.warpMm]) {
    const good = within(range, n)
    if (!good.ok) return good
  }
  const needsMm = LEAST_BED_MM + (unevenness.gapMm + unevenness.warpMm) / 2
  const verdict = bed.lowMm >= needsMm - 1e-9 ? 'enough' : bed.highMm >= needsMm - 1e-9 ? 'tight' : 'short'
  return fine({ bedLowMm: bed.lowMm, bedHighMm: bed.highMm, needsMm, capMm: MOST_BED_MM[mortar], verdict })
}

/** Back-butter for contact from an edge of 15 in; it never flattens a floor. @source trade practice (references 12.3) */
export const backButter = (longestEdgeMm: number): boolean => longestEdgeMm >= 15 * INCH - 0.01

/** A square notch to begin with, by the tile's longest edge: 1/4, 3/8, 1/2 in. Lift the first tile and look.
 *  @source common practice, no source; 1/2 in for 12 x 24 in: references 12.3 */
export function startingNotchMm(longestEdgeMm: number): number {
  return longestEdgeMm < 8 * INCH - 0.01 ? INCH / 4 : longestEdgeMm < 15 * INCH - 0.01 ? (3 * INCH) / 8 : INCH / 2
}
