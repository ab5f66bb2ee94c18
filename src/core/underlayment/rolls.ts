/** Underlayment in rolls: strips side by side across the floor, cut from rolls of a given length. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import { type Box, boxOf, type Floor, floorArea } from '../floor/rings.ts'
import { piecesIn, shared, stretchesAlong, totalMm, transposed } from './shape.ts'

export const ROLL_WIDTH: Range = { field: 'roll-width', unit: 'mm', min: 100, max: 5000 }
export const ROLL_LENGTH: Range = { field: 'roll-length', unit: 'mm', min: 500, max: 100_000 }
export const ROLL_LAP: Range = { field: 'roll-lap', unit: 'mm', min: 0, max: 300 }
const MOST_STRIPS = 2000

export type RollPlan = {
  readonly widthMm: number
  readonly lengthMm: number
  /** Overlap of neighbouring strips; 0 where edges butt. */
  readonly lapMm: number
  /** Which way the strips run; both are tried without it. */
  readonly along?: 'x' | 'y'
}

export type RollLayout = {
  readonly rolls: number
  readonly strips: number
  /** Places where a strip goes on from another roll. */
  readonly buttJoints: number
  readonly seamMm: number
  readonly areaMm2: number
  readonly along: 'x' | 'y'
}

/** A rest of a roll shorter than this is not laid [mm]. */
const LEAST_PIECE_MM = 300
/** A narrow last strip is pieced together from at most so many widths cut side by side. */
const MOST_SIDE_BY_SIDE = 3

/** Strips on the floor with the fewest rolls, then the shortest seams.
 *  A strip goes on with a butt joint where a roll ends, and the rest of a roll starts the next strip; pieces are never
 *  turned. A narrow last strip is cut side by side from a shorter stretch of roll.
 *  @param plan  ROLL_WIDTH, ROLL_LENGTH, ROLL_LAP (at most half the width)
 *  @problem out-of-range, bad-floor, too-much-work
 *  @source geometry; laying on with butt joints: common practice, no source
 *  @example 12 x 14 ft, rolls 1 m x 5 m: three strips and a narrow one, 17 m of roll: 4 rolls */
export function layRolls(floor: Floor, plan: RollPlan): Outcome<RollLayout> {
  for (const check of [
    within(ROLL_WIDTH, plan.widthMm),
    within(ROLL_LENGTH, plan.lengthMm),
    within({ ...ROLL_LAP, max: Math.min(ROLL_LAP.max, plan.widthMm / 2) }, plan.lapMm),
  ])
    if (!check.ok) return check
  const areaMm2 = floorArea(floor)
  if (!(areaMm2 > 0)) return refuse('bad-floor', { why: 'nothing-left' })
  const box = boxOf(floor.rings)
  const widest = Math.max(box.maxX - box.minX, box.maxY - box.minY)
  if (widest / (plan.widthMm - plan.lapMm) > MOST_STRIPS) return refuse('too-much-work', { what: 'strips' })
  const ways = plan.along ? [plan.along] : (['x', 'y'] as const)
  const laid = ways.map((along) => strips(floor, plan, along))
  return fine(
    laid.reduce((best, next) =>
      next.rolls < best.rolls || (next.rolls === best.rolls && next.seamMm < best.seamMm - 1e-6) ? next : best,
    ),
  )
}

function strips(real: Floor, plan: RollPlan, along: 'x' | 'y'): RollLayout {
  const floor = along === 'x' ? real : transposed(real)
  const turned = transposed(floor)
  const box = boxOf(floor.rings)
  const supply = new Supply(plan)
  let count = 0
  let seamMm = 0
  for (let row = 0, bottom = box.minY; bottom < box.maxY - 1e-6; row++, bottom += plan.widthMm - plan.lapMm) {
    if (row > 0) {
      if (bottom + plan.lapMm >= box.maxY - 1e-6 && plan.lapMm > 0) break
      seamMm += totalMm(stretchesAlong(floor, bottom + plan.lapMm / 2))
    }
    for (const part of piecesIn(floor, stripBox(box, bottom, plan.widthMm))) {
      count++
      const { minX, maxX, minY, maxY } = part.box
      for (const joint of supply.lay(minX, maxX, maxY - minY))
        seamMm += totalMm(shared(stretchesAlong(turned, joint), [[minY, maxY]]))
    }
  }
  const { rolls, buttJoints } = supply
  return { rolls, strips: count, buttJoints, seamMm, areaMm2: floorArea(real), along }
}

const stripBox = (box: Box, bottom: number, widthMm: number): Box => ({
  minX: box.minX - 1,
  maxX: box.maxX + 1,
  minY: bottom,
  maxY: bottom + widthMm,
})

/** Rolls opened one after the other. */
class Supply {
  rolls = 0
  buttJoints = 0
  private leftMm = 0
  private readonly plan: RollPlan

  constructor(plan: RollPlan) {
    this.plan = plan
  }

  /** Lays one strip and tells where along it butt joints fall. */
  lay(fromMm: number, toMm: number, widthMm: number): number[] {
    const sideBySide = Math.min(MOST_SIDE_BY_SIDE, Math.max(1, Math.floor((this.plan.widthMm + 0.01) / widthMm)))
    const joints: number[] = []
    const step = (toMm - fromMm) / sideBySide
    for (let i = 1; i < sideBySide; i++) joints.push(fromMm + i * step)
    for (let at = 0; at < step - 1e-6; ) {
      if (this.leftMm < Math.min(LEAST_PIECE_MM, step - at) - 1e-6) {
        this.rolls++
        this.leftMm = this.plan.lengthMm
      }
      const piece = Math.min(this.leftMm, step - at)
      at += piece
      this.leftMm -= piece
      if (at < step - 1e-6) joints.push(fromMm + at)
    }
    this.buttJoints += joints.length
    return joints
  }
}
