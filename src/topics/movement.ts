/** Movement joints of a laid floor: how many, where, what fills them, by exposure. */

import { boxOf, type Floor } from '../core/floor/rings.ts'
import { type Exposure, movementSpacingM } from '../core/joints.ts'
import {
  movementLines as linesBetween,
  type MovementPlan,
  movementJoints,
  type SlabJoint,
  sealantTubes,
} from '../core/layout/lines.ts'
import type { Facts } from '../facts.ts'
import { count, type Phrase, room, run, say, word } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import { WALL_GAP_MM } from './laid-spec.ts'
import type { LaidFloor } from './plan.ts'
import type { Brief, Told } from './topic.ts'

export type Movement = {
  readonly plans: readonly (MovementPlan | null)[]
  readonly insideMm: number
  readonly perimeterMm: number
  readonly lines: number
  readonly ofSlab: number
  readonly lowM: number
  readonly highM: number
  /** At the near end of the range, where it takes more of them. */
  readonly close: Lines | null
  /** Under sun, wet or heat, where the crew has said nothing of them and they would make it another count. */
  readonly exposed: {
    readonly wide: Lines
    readonly close: Lines
    readonly lowM: number
    readonly highM: number
  } | null
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

/** Lines of a spacing on all rooms, and how long they are together. */
type Lines = {
  readonly lines: number
  readonly ofSlab: number
  readonly insideMm: number
  readonly perimeterMm: number
}
type Plans = readonly (MovementPlan | null)[]

function plansAt(laid: LaidFloor, spacingM: number, facts: Facts): Plans {
  return laid.rooms.map((r) => {
    const plan = movementJoints(r.floor, r.start.spec, spacingM * 1000, slabJointsIn(r.floor, facts))
    return plan.ok ? plan.value : null
  })
}

function sumOf(laid: LaidFloor, plans: Plans): Lines {
  const sum = (of: (p: MovementPlan) => number): number =>
    plans.reduce((total, p, k) => total + (p ? of(p) * laid.rooms[k].room.count : 0), 0)
  return {
    lines: sum((p) => p.joints.length),
    ofSlab: sum((p) => p.joints.filter((j) => j.ofSlab).length),
    insideMm: sum((p) => p.insideMm),
    perimeterMm: sum((p) => p.perimeterMm),
  }
}

/** A country without rules of its own goes by the North American ones. */
const rulesOf = ({ country }: Facts) => (country === 'other' ? 'US' : country)

export function movementOf(laid: LaidFloor, exposure: Exposure, facts: Facts): Movement {
  const { lowM, highM } = movementSpacingM(exposure, rulesOf(facts))
  const plans = plansAt(laid, highM, facts)
  const at = (spacingM: number): Lines => sumOf(laid, plansAt(laid, spacingM, facts))
  const wide = sumOf(laid, plans)
  const close = lowM < highM ? at(lowM) : wide
  const told = exposure !== 'interior' || facts.wet !== undefined
  const sun = told ? null : movementSpacingM('sun', rulesOf(facts))
  const exposed = sun && { wide: at(sun.highM), close: at(sun.lowM), ...sun }
  return {
    plans,
    ...wide,
    close: close.lines === wide.lines ? null : close,
    lowM,
    highM,
    // Asked only where sun, wet or heat would make another count.
    exposed: exposed && exposed.wide.lines > wide.lines ? exposed : null,
  }
}

const tubesFor = (mm: number): number => {
  const tubes = sealantTubes(mm, WALL_GAP_MM, WALL_GAP_MM)
  return tubes.ok ? tubes.value : 0
}

export function movementLines(m: Movement): Phrase[] {
  const rodMm = m.insideMm + m.perimeterMm
  const args = {
    perimeter: run(m.perimeterMm),
    inside: run(m.insideMm),
    lines: count(m.lines),
    low: run(m.lowM * 1000),
    high: run(m.highM * 1000),
    tubes: count(tubesFor(rodMm)),
    rod: run(rodMm),
  }
  const { close, exposed } = m
  return [
    say(m.lines > 0 ? 'layout.movement' : 'layout.soft-perimeter', args),
    ...(close
      ? [
          say('layout.movement-close', {
            low: args.low,
            lines: count(close.lines),
            inside: run(close.insideMm),
            tubes: count(tubesFor(close.insideMm + close.perimeterMm)),
          }),
        ]
      : []),
    ...(m.ofSlab > 0 ? [say('layout.slab-joints', { lines: count(m.ofSlab) })] : []),
    ...(exposed
      ? [
          say('layout.ask-exposure', {
            low: run(exposed.lowM * 1000),
            high: run(exposed.highM * 1000),
            few: count(exposed.wide.lines),
            many: count(exposed.close.lines),
          }),
        ]
      : []),
  ]
}

const SHOWN = 12

/** Where the joints inside a room stand, from its left and bottom walls; whether tiles are cut along them. */
export function softPlaces(plan: MovementPlan | null): Phrase[] {
  if (!plan) return []
  return (['x', 'y'] as const).flatMap((along) => {
    const joints = plan.joints.filter((j) => j.along === along).toSorted((a, b) => a.fromLowMm - b.fromLowMm)
    if (joints.length === 0) return []
    const onJoints = joints.every((j) => j.onJoint)
    return [
      say(along === 'x' ? 'movement.from-left' : 'movement.from-bottom', {
        places: joints.slice(0, SHOWN).map((j) => room(j.fromLowMm)),
        how: word(onJoints ? 'soft-on-joints' : 'soft-cut'),
      }),
    ]
  })
}

/** Soft joints of a floor whose tile nobody told: how many lines, by the sides alone. */
export function movementAlone(brief: Brief, areaM2: number): Outcome<Told> {
  const exposure = exposureOf(brief)
  const { lowM, highM } = movementSpacingM(exposure, rulesOf(brief.facts))
  const pieces = (brief.facts.rooms ?? []).flatMap((r) => r.pieces.filter((p) => p.sign === 1))
  const linesAt = (spacingM: number): number =>
    pieces.reduce(
      (sum, p) => sum + linesBetween(p.lengthMm, spacingM * 1000) + linesBetween(p.widthMm, spacingM * 1000),
      0,
    )
  const [few, many] = [linesAt(highM), linesAt(lowM)]
  const args = {
    few: count(few),
    many: count(many),
    low: run(lowM * 1000),
    high: run(highM * 1000),
  }
  return fine({
    topic: 'joints',
    answer: say(few === many ? 'movement.alone' : 'movement.alone-range', args),
    details: [say('movement.alone-walls')],
    sources: [{ text: 'TCNA EJ171 (2018)', reported: true }],
    values: {
      area_m2: areaM2,
      movement_spacing_m: highM,
      ...(lowM === highM ? {} : { movement_spacing_m_low: lowM, movement_spacing_m_high: highM }),
      movement_lines: many,
    },
  })
}
