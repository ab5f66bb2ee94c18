/** Underlayment in rolls: strips side by side across the floor, cut from rolls of a given length. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import { boxOf, type Floor, floorArea } from '../floor/rings.ts'
import { piecesIn, shared, stretchesAlong, totalMm, transposed } from './shape.ts'
import { type Piece, sheetsFor } from './stock.ts'

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

/** Strips on the floor with the fewest rolls, then the shortest seams.
 *  A strip longer than a roll goes on from the next one with a butt joint; a last narrow strip may share a length of roll
 *  with another; a strip is never turned.
 *  @param plan  ROLL_WIDTH, ROLL_LENGTH, ROLL_LAP (less than the width)
 *  @problem out-of-range, bad-floor, too-much-work
 *  @source geometry
 *  @example 12 x 14 ft, rolls 1 m x 5 m: four strips of 14 ft 0 in (4.27 m), one a roll: 4 rolls */
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
  const pieces: Piece[] = []
  let count = 0
  let buttJoints = 0
  let seamMm = 0
  for (let row = 0, bottom = box.minY; bottom < box.maxY - 1e-6; row++, bottom += plan.widthMm - plan.lapMm) {
    if (row > 0) {
      if (bottom + plan.lapMm >= box.maxY - 1e-6 && plan.lapMm > 0) break
      seamMm += totalMm(stretchesAlong(floor, bottom + plan.lapMm / 2))
    }
    const top = bottom + plan.widthMm
    for (const part of piecesIn(floor, { minX: box.minX - 1, maxX: box.maxX + 1, minY: bottom, maxY: top })) {
      count++
      const widthMm = part.box.maxY - part.box.minY
      let from = part.box.minX
      for (; part.box.maxX - from > plan.lengthMm + 1e-6; from += plan.lengthMm) {
        pieces.push({ lengthMm: plan.lengthMm, widthMm })
        buttJoints++
        const joint = stretchesAlong(turned, from + plan.lengthMm)
        seamMm += totalMm(shared(joint, [[part.box.minY, part.box.maxY]]))
      }
      pieces.push({ lengthMm: part.box.maxX - from, widthMm })
    }
  }
  const stock = { lengthMm: plan.lengthMm, widthMm: plan.widthMm }
  return {
    rolls: sheetsFor(pieces, stock, 0, false),
    strips: count,
    buttJoints,
    seamMm,
    areaMm2: floorArea(real),
    along,
  }
}
