/** Grout: the volume of the joints, the powder that fills it, and which grout suits joint and tile. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { type Spread, times, wholePacks } from './spread.ts'

export const TILE_EDGE: Range = { field: 'tile', unit: 'mm', min: 5, max: 5000 }
export const JOINT: Range = { field: 'joint', unit: 'mm', min: 0.5, max: 50 }
export const JOINT_DEPTH: Range = { field: 'joint-depth', unit: 'mm', min: 1, max: 100 }
export const JOINT_LENGTH: Range = { field: 'joint-length', unit: 'm', min: 0, max: 10_000_000 }
export const JOINT_VOLUME: Range = { field: 'joint-volume', unit: 'l', min: 0, max: 10_000_000 }
export const PACK_MASS: Range = { field: 'bag', unit: 'kg', min: 0.1, max: 2000 }

export type JointGrid = { readonly lengthMm: number; readonly widthMm: number; readonly jointMm: number }

function checkedGrid(grid: JointGrid, depthMm: number): Outcome<JointGrid> {
  const shortMm = Math.min(grid.lengthMm, grid.widthMm)
  const checks = [
    within(TILE_EDGE, grid.lengthMm),
    within(TILE_EDGE, grid.widthMm),
    within({ ...JOINT, max: Math.min(JOINT.max, shortMm / 2) }, grid.jointMm),
    within(JOINT_DEPTH, depthMm),
  ]
  for (const check of checks) if (!check.ok) return check
  return fine(grid)
}

/** Joint volume of an area by the usual short formula: (L + W) / (L W) x joint x depth. [l/m2]
 *  A little high always, since crossings count twice: 1.2 % for 300 x 600 at 3 mm. A hexagon F across flats has the
 *  joints of a square of side F.
 *  @param grid TILE_EDGE; JOINT, at most half the tile's short edge    @param depthMm JOINT_DEPTH, the tile's thickness
 *  @problem out-of-range    @source geometry    @example 300 x 600, 3, depth 10: 0.150 l/m2 */
export function jointVolumeLPerM2(grid: JointGrid, depthMm: number): Outcome<number> {
  const ok = checkedGrid(grid, depthMm)
  if (!ok.ok) return ok
  const { lengthMm: l, widthMm: w, jointMm: j } = grid
  return fine(((l + w) / (l * w)) * j * depthMm)
}

/** Share of a floor's area that is joint: 1 - L W / ((L + j)(W + j)). [1] */
export const jointShare = ({ lengthMm: l, widthMm: w, jointMm: j }: JointGrid): number =>
  1 - (l * w) / ((l + j) * (w + j))

/** The joint volume of an area without the short formula's excess: jointShare x depth. [l/m2]
 *  @param grid as for jointVolumeLPerM2    @problem out-of-range    @source geometry
 *  @example 300 x 600, 3, depth 10: 0.1483 l/m2 */
export function jointVolumeExactLPerM2(grid: JointGrid, depthMm: number): Outcome<number> {
  const ok = checkedGrid(grid, depthMm)
  return ok.ok ? fine(jointShare(grid) * depthMm) : ok
}

/** Joint volume where the joints were measured on the layout. [l]
 *  @param jointLengthM JOINT_LENGTH    @param jointMm JOINT    @param depthMm JOINT_DEPTH
 *  @problem out-of-range    @source geometry    @example 100 m of 3 x 10 mm: 3 l */
export function jointVolumeL(jointLengthM: number, jointMm: number, depthMm: number): Outcome<number> {
  const checks = [within(JOINT_LENGTH, jointLengthM), within(JOINT, jointMm), within(JOINT_DEPTH, depthMm)]
  for (const check of checks) if (!check.ok) return check
  return fine((jointLengthM * jointMm * depthMm) / 1000)
}

export type GroutNeed = {
  readonly volumeL: number
  readonly kg: Spread
  /** Not rounded. */
  readonly bags: Spread
  /** Whole bags, or whole kits: for the usual use, and for the heaviest. */
  readonly bagsToBuy: number
  readonly bagsSafe: number
}

export type GroutPowder = {
  /** Dry powder in a litre of joint [kg/l]: not the wet density, which would over-buy by a fifth. */
  readonly powderKgPerJointL: Spread
  readonly bagKg: number
  readonly wasteShare: number
  /** Mortar pressed up may fill the joint, though at least this share of its depth must stay open. [1] */
  readonly openDepthShare: number
}

/** Powder and bags for a joint volume. The low end: joints open to the least depth and no waste; the usual and the
 *  high end: full depth and the waste.
 *  @param volumeL at full depth [l], JOINT_VOLUME    @param powder bagKg PACK_MASS, wasteShare 0 to 1
 *  @problem out-of-range
 *  @source volume x powderKgPerJointL; open to at least 2/3: distributors' association 2008 (config/practice.json) */
export function groutNeed(volumeL: number, powder: GroutPowder): Outcome<GroutNeed> {
  const checks = [
    within(JOINT_VOLUME, volumeL),
    within(PACK_MASS, powder.bagKg),
    within({ field: 'waste', unit: 'share', min: 0, max: 1 }, powder.wasteShare),
  ]
  for (const check of checks) if (!check.ok) return check
  const waste = 1 + powder.wasteShare
  const kg = {
    low: volumeL * powder.powderKgPerJointL.low * powder.openDepthShare,
    usual: volumeL * powder.powderKgPerJointL.usual * waste,
    high: volumeL * powder.powderKgPerJointL.high * waste,
  }
  const bags = times(kg, 1 / powder.bagKg)
  return fine({ volumeL, kg, bags, bagsToBuy: wholePacks(bags.usual), bagsSafe: wholePacks(bags.high) })
}

/** Area a bag of grout fills, waste in. [m2 a bag]
 *  @param lPerM2 joint volume [l/m2], 0.0001 to 1000    @problem out-of-range */
export function groutCoverageM2PerBag(lPerM2: number, powder: GroutPowder): Outcome<Spread> {
  const volume = within({ ...JOINT_VOLUME, min: 0.0001, max: 1000 }, lPerM2)
  if (!volume.ok) return volume
  const perM2 = groutNeed(lPerM2, powder)
  if (!perM2.ok) return perM2
  const { low, usual, high } = perM2.value.bags
  return fine({ low: 1 / high, usual: 1 / usual, high: 1 / low })
}

export type GroutChoice = {
  readonly type: 'unsanded' | 'sanded'
  /** Over 3/8 in: coarser sand. */
  readonly coarse: boolean
  /** Try it on a spare piece first. */
  readonly testPanel: boolean
  readonly because: 'narrow-joint' | 'wide-joint' | 'soft-face'
}

/** Sanded or not, for cement grout.
 *  Under 1/8 in unsanded, from 1/8 in sanded, over 3/8 in coarser sand. A soft face (polished marble, glass, soft
 *  glaze) is scratched by sand: unsanded and a test panel, whatever the width.
 *  @param jointMm JOINT    @problem out-of-range
 *  @source Tile Council FAQ on grout; the soft face: common practice, no source */
export function chooseGrout(
  jointMm: number,
  softFace: boolean,
  limits: { readonly sandedFromMm: number; readonly coarseFromMm: number },
): Outcome<GroutChoice> {
  const joint = within(JOINT, jointMm)
  if (!joint.ok) return joint
  const wide = jointMm >= limits.sandedFromMm - 1e-6
  if (softFace) return fine({ type: 'unsanded', coarse: false, testPanel: true, because: 'soft-face' })
  if (!wide) return fine({ type: 'unsanded', coarse: false, testPanel: false, because: 'narrow-joint' })
  const coarse = jointMm > limits.coarseFromMm + 1e-6
  return fine({ type: 'sanded', coarse, testPanel: false, because: 'wide-joint' })
}
