/** Joints between tiles and between fields of tile: least width, offset, lippage, movement joints. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const TILE_READING: Range = { field: 'tile-size', unit: 'mm', min: 5, max: 4000 }
export const WARP: Range = { field: 'warp', unit: 'mm', min: 0, max: 10 }
export const JOINT: Range = { field: 'joint', unit: 'mm', min: 0, max: 50 }

const INCH = 25.4
/** "Large format" for joints and offsets: an edge of 15 in or more. @source references 4.12 */
export const LARGE_EDGE_MM = 15 * INCH
/** Never narrower than this. @source ANSI A108.02-2017 s. 4.3.8, as reported */
export const LEAST_JOINT_MM = INCH / 16

/** Greatest spread of one dimension over the tiles measured. [mm]
 *  @param readingsMm one dimension of at least two tiles
 *  @problem missing (fewer than two), out-of-range */
export function sizeVariation(readingsMm: readonly number[]): Outcome<number> {
  if (readingsMm.length < 2) return refuse('missing', { field: 'tile-size' })
  for (const reading of readingsMm) {
    const good = within(TILE_READING, reading)
    if (!good.ok) return good
  }
  return fine(Math.max(...readingsMm) - Math.min(...readingsMm))
}

export type Facing = 'rectified' | 'calibrated' | 'unknown'

export type JointNeeds = {
  /** Actual variation in facial size. */
  readonly variationMm: number
  readonly edgeWarpMm: number
  readonly facing: Facing
  readonly longestEdgeMm: number
  readonly runningBond: boolean
}

export type LeastJoint = {
  readonly jointMm: number
  readonly threeTimesMm: number
  /** The floor by tile type and pattern, edge warp included where it applies. */
  readonly floorMm: number
  readonly governs: 'variation' | 'floor'
}

/** Least joint: three times the variation, and never under the floor for the tile's type and pattern. [mm]
 *  In running bond with a side over 15 in the floor is 1/8 in (rectified) or 3/16 in (calibrated) plus the edge warp.
 *  An unknown facing is taken as calibrated, the wider. Elsewhere the floor is 1/16 in.
 *  @source ANSI A108.02 s. 4.3.8 and 4.3.8.1, as reported (references 4.6 to 4.8)
 *  @example variation 1/16 in -> 3/16 in; rectified 24 in running bond, warp 1/32 -> 5/32 in
 *  @problem out-of-range */
export function leastJoint(needs: JointNeeds): Outcome<LeastJoint> {
  const checks = [within({ ...WARP, field: 'variation' }, needs.variationMm), within(WARP, needs.edgeWarpMm)]
  for (const check of checks) if (!check.ok) return check
  const threeTimesMm = 3 * needs.variationMm
  const long = needs.runningBond && needs.longestEdgeMm > LEAST_OFFSET_SIDE_MM
  const floorMm = long ? (needs.facing === 'rectified' ? INCH / 8 : (3 * INCH) / 16) + needs.edgeWarpMm : LEAST_JOINT_MM
  return fine({
    jointMm: Math.max(threeTimesMm, floorMm),
    threeTimesMm,
    floorMm,
    governs: threeTimesMm > floorMm ? 'variation' : 'floor',
  })
}

/** Sides longer than this may be offset by a third at most. @source ANSI A108.02, as reported (references 4.9) */
export const LEAST_OFFSET_SIDE_MM = 15 * INCH

/** The offset of a stagger as the lesser distance to a neighbour's joint: 70 % is 30 %. [%] */
export const effectiveOffsetPct = (offsetPct: number): number => {
  const part = ((offsetPct % 100) + 100) % 100
  return Math.min(part, 100 - part)
}

/** Greatest offset without a mock-up that owner and specifier accept. [%]
 *  @param offsetSideMm the side along which the rows are shifted */
export const greatestOffsetPct = (offsetSideMm: number): number =>
  offsetSideMm > LEAST_OFFSET_SIDE_MM + 0.01 ? 33 : 50

/** What an offset does to lippage: the warp met where a neighbour's corner lies beside a tile's bow. [mm]
 *  A bow is taken as a parabola over the side: 0 at its ends, the full warp in the middle. Half offset meets it all.
 *  @param offsetPct of the side; @param warpMm measured bow of the tile */
export function warpMetMm(offsetPct: number, warpMm: number): Outcome<number> {
  const good = within(WARP, warpMm)
  const t = effectiveOffsetPct(offsetPct) / 100
  return good.ok ? fine(4 * t * (1 - t) * warpMm) : good
}

export type LippageRule = { readonly widthMm: number; readonly belowMm: number; readonly fromMm: number }

/** Allowed lippage: 1/32 in for joints under 1/4 in, 1/16 in from 1/4 in. @source ANSI A108.02-2013 s. 4.3.7, reported */
export const US_LIPPAGE: LippageRule = { widthMm: INCH / 4, belowMm: INCH / 32, fromMm: INCH / 16 }

/** Allowed lippage for a joint, plus the tile's own measured warp. [mm]
 *  @param jointMm JOINT; @param warpMm WARP */
export function allowedLippage(jointMm: number, warpMm = 0, rule: LippageRule = US_LIPPAGE): Outcome<number> {
  const joint = within(JOINT, jointMm)
  if (!joint.ok) return joint
  const warp = within(WARP, warpMm)
  return warp.ok ? fine((jointMm < rule.widthMm - 0.01 ? rule.belowMm : rule.fromMm) + warpMm) : warp
}

/** Where the floor lies, for its movement joints. */
export type Exposure = 'interior' | 'sun' | 'wet' | 'heated' | 'exterior' | 'suspended'
export type Country = 'US' | 'UK' | 'AU'

const FOOT_M = 0.3048

/** Farthest apart that movement joints may lie, low and high end of the published range. [m]
 *  @source US: TCNA EJ171 (2018) and NTCA manual 2024/25, as reported (references 4.15, 4.16); UK: BS 5385 as reported
 *  (5.1, 5.2, 5.3); AU: AS 3958.1:2007 from memory (5.10), 4.5 m in sun or moisture, "wider" inside, given here as the UK's */
export function movementSpacingM(exposure: Exposure, country: Country = 'US'): { lowM: number; highM: number } {
  return SPACING_M[country][exposure]
}

const feet = (low: number, high: number) => ({ lowM: low * FOOT_M, highM: high * FOOT_M })
const metres = (lowM: number, highM: number) => ({ lowM, highM })
const SPACING_M: Record<Country, Record<Exposure, { lowM: number; highM: number }>> = {
  US: {
    interior: feet(20, 25),
    sun: feet(8, 12),
    wet: feet(8, 12),
    heated: feet(8, 12),
    exterior: feet(8, 12),
    suspended: feet(12, 12),
  },
  UK: {
    interior: metres(8, 10),
    sun: metres(3, 5),
    wet: metres(8, 10),
    heated: metres(8, 8),
    exterior: metres(3, 5),
    suspended: metres(8, 10),
  },
  AU: {
    interior: metres(8, 10),
    sun: metres(4.5, 4.5),
    wet: metres(4.5, 4.5),
    heated: metres(4.5, 4.5),
    exterior: metres(4.5, 4.5),
    suspended: metres(4.5, 4.5),
  },
}

export const JOINT_SPACING: Range = { field: 'spacing', unit: 'mm', min: 2000, max: 4000 }
export const YEARLY_RANGE: Range = { field: 'temperature-range', unit: 'K', min: 0, max: 120 }

/** Width of an exterior movement joint. [mm]
 *  3/8 in at 8 ft, 1/2 in at 12 ft, straight between; plus 1/16 in for each 15 F that the yearly range exceeds 100 F.
 *  @param spacingMm 8 to 12 ft (JOINT_SPACING); @param yearlyRangeK hottest less coldest surface [K], YEARLY_RANGE
 *  @source TCNA EJ171, as reported (references 4.17)  @example 12 ft, 115 F -> 9/16 in */
export function exteriorJointMm(spacingMm: number, yearlyRangeK: number): Outcome<number> {
  for (const check of [within(JOINT_SPACING, spacingMm), within(YEARLY_RANGE, yearlyRangeK)])
    if (!check.ok) return check
  const [near, far] = [8 * 304.8, 12 * 304.8]
  const between = Math.min(Math.max((spacingMm - near) / (far - near), 0), 1)
  const steps = Math.max(0, Math.ceil((yearlyRangeK * 1.8 - 100) / 15 - 1e-9))
  return fine((3 / 8 + between / 8 + steps / 16) * INCH)
}

/** Movement lines across a length: one fewer than the fields that fit. */
export const movementLines = (lengthM: number, spacingM: number): number =>
  Math.max(0, Math.ceil(lengthM / spacingM - 1e-9) - 1)

export const TUBE: Range = { field: 'tube', unit: 'ml', min: 50, max: 1000 }

/** Length that one tube of sealant fills. [m]
 *  @source geometry; 300 mL at 1/4 x 1/4 in gives 24 ft (references 13.15) */
export function tubeFillsM(widthMm: number, depthMm: number, tubeMl = 300): Outcome<number> {
  const checks = [within(TUBE, tubeMl), within({ ...JOINT, min: 1 }, widthMm), within({ ...JOINT, min: 1 }, depthMm)]
  for (const check of checks) if (!check.ok) return check
  return fine(tubeMl / (widthMm * depthMm))
}

/** Tubes to buy for a length of soft joint, a tenth over for what is tooled off (common practice, no source). */
export function sealantTubes(lengthM: number, widthMm: number, depthMm: number, tubeMl = 300): Outcome<number> {
  const fills = tubeFillsM(widthMm, depthMm, tubeMl)
  return fills.ok ? fine(Math.ceil((lengthM * 1.1) / fills.value - 1e-9)) : fills
}

/** Sealant depth: half the width, 1/8 in at least. [mm] @source references 4.19, an older handbook */
export const sealantDepthMm = (widthMm: number): number => Math.max(INCH / 8, widthMm / 2)
