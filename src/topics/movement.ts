/** Movement joints of a laid floor: how many, where, what fills them, by exposure. */

import { boxOf, type Floor } from '../core/floor/rings.ts'
import { type Exposure, movementSpacingM } from '../core/joints.ts'
import { type MovementPlan, movementJoints, type SlabJoint, sealantTubes } from '../core/layout/lines.ts'
import type { Facts } from '../facts.ts'
import { count, type Phrase, run, say } from '../phrase.ts'
import { type LaidFloor, WALL_GAP_MM } from './plan.ts'
import type { Brief } from './topic.ts'

export type Movement = {
  readonly plans: readonly (MovementPlan | null)[]
  readonly insideMm: number
  readonly perimeterMm: number
  readonly lines: number
  readonly ofSlab: number
  readonly lowM: number
  readonly highM: number
  /** The crew has not said whether there is sun, wet or heat, and the floor is long enough for it to matter. */
  readonly ask: boolean
}

export function exposureOf(brief: Brief): Exposure {
  if (brief.facts.exterior) return 'exterior'
  if (brief.has('heated')) return 'heated'
  if (brief.has('sun')) return 'sun'
  return brief.facts.wet === 'wet' ? 'wet' : 'interior'
}

/** The slab's joints by their distance from the left or bottom wall. */
function slabJointsIn(floor: Floor, facts: Facts): SlabJoint[] {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  return (facts.slabJoints ?? []).map(({ from, mm }) => {
    const along = from === 'left' || from === 'right' ? ('x' as const) : ('y' as const)
    const span = along === 'x' ? maxX - minX : maxY - minY
    return { along, fromLowMm: from === 'left' || from === 'bottom' ? mm : span - mm }
  })
}

export function movementOf(laid: LaidFloor, exposure: Exposure, facts: Facts): Movement {
  const { lowM, highM } = movementSpacingM(exposure)
  const plans = laid.rooms.map((r) => {
    const plan = movementJoints(r.floor, r.start.spec, highM * 1000, slabJointsIn(r.floor, facts))
    return plan.ok ? plan.value : null
  })
  const sum = (of: (p: MovementPlan) => number): number =>
    plans.reduce((total, p, k) => total + (p ? of(p) * laid.rooms[k].room.count : 0), 0)
  const longestMm = Math.max(
    ...laid.rooms.map(({ floor }) => {
      const { minX, minY, maxX, maxY } = boxOf(floor.rings)
      return Math.max(maxX - minX, maxY - minY)
    }),
  )
  const told = exposure !== 'interior' || facts.wet !== undefined
  return {
    plans,
    insideMm: sum((p) => p.insideMm),
    perimeterMm: sum((p) => p.perimeterMm),
    lines: sum((p) => p.joints.length),
    ofSlab: sum((p) => p.joints.filter((j) => j.ofSlab).length),
    lowM,
    highM,
    ask: !told && longestMm > movementSpacingM('sun').lowM * 1000,
  }
}

export function movementLines(m: Movement): Phrase[] {
  const tubes = sealantTubes(m.insideMm + m.perimeterMm, WALL_GAP_MM, WALL_GAP_MM)
  const args = {
    perimeter: run(m.perimeterMm),
    inside: run(m.insideMm),
    lines: count(m.lines),
    low: run(m.lowM * 1000),
    high: run(m.highM * 1000),
    tubes: count(tubes.ok ? tubes.value : 0),
    rod: run(m.insideMm + m.perimeterMm),
  }
  const sun = movementSpacingM('sun')
  return [
    say(m.lines > 0 ? 'layout.movement' : 'layout.soft-perimeter', args),
    ...(m.ofSlab > 0 ? [say('layout.slab-joints', { lines: count(m.ofSlab) })] : []),
    ...(m.ask ? [say('layout.ask-exposure', { low: run(sun.lowM * 1000), high: run(sun.highM * 1000) })] : []),
  ]
}
