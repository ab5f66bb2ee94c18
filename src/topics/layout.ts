/** Area and outer walls, and the layout itself: where to snap the lines, the worst cut, the cut list, the picture. */

import type { Exposure } from '../core/joints.ts'
import { movementSpacingM } from '../core/joints.ts'
import { type MovementPlan, movementJoints, sealantTubes } from '../core/layout/lines.ts'
import { cutList, cutPieces } from '../core/layout/pieces.ts'
import { area, count, type Phrase, run, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { floorNotes, floorSum, roomPhrase } from './floors.ts'
import { drawingsOf } from './picture.ts'
import { type LaidFloor, type LaidRoom, laidFor } from './plan.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { laidValues } from './tile.ts'
import { type Brief, sourceOf, type Table, type Told } from './topic.ts'

export function layout(brief: Brief): Outcome<Told> {
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  const wantsLayout =
    brief.has('layout-word', 'start-line', 'cut', 'hide', 'full-tiles', 'picture') &&
    !brief.heard.has('perimeter', 'area-word')
  return wantsLayout
    ? wholeLayout(brief, floor.value.areaM2, floor.value.perimeterM)
    : areaOnly(brief, floor.value.areaM2, floor.value.perimeterM)
}

function areaOnly(brief: Brief, areaM2: number, perimeterM: number): Outcome<Told> {
  const rooms = brief.facts.rooms ?? []
  const perimeterFirst = brief.has('perimeter') && perimeterM > 0
  const perimeter = say('layout.perimeter', { perimeter: run(perimeterM * 1000) })
  return fine({
    topic: 'layout',
    answer: perimeterFirst ? perimeter : say('layout.area', { area: area(areaM2) }),
    details: [
      ...(rooms.length > 0 ? [say('layout.rooms', { rooms: rooms.map(roomPhrase) })] : []),
      ...(perimeterM > 0 ? [perimeterFirst ? say('layout.area', { area: area(areaM2) }) : perimeter] : []),
    ],
    assumed: floorNotes(brief.facts),
    working: [say('layout.work', { area: { is: 'number', n: areaM2, digits: 3 } })],
    values: { area_m2: areaM2, perimeter_m: perimeterM > 0 ? perimeterM : undefined },
    offers: ['keep'],
  })
}

function wholeLayout(brief: Brief, areaM2: number, perimeterM: number): Outcome<Told> {
  const known = knownTile(brief.facts)
  if (!known) return refuse('question', { question: 'tile' })
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  if (jointMm >= known.widthMm)
    return refuse('out-of-range', { field: 'joint', value: jointMm, min: 0, max: known.widthMm / 2, unit: 'mm' })
  const laid = laidFor(brief.facts, known, jointMm)
  if (laid === null) return refuse('question', { question: 'room' })
  if (!laid.ok) return laid
  const exposure: Exposure = brief.facts.exterior
    ? 'exterior'
    : brief.has('heated')
      ? 'heated'
      : brief.has('sun')
        ? 'sun'
        : brief.facts.wet === 'wet'
          ? 'wet'
          : 'interior'
  const movement = movementOf(laid.value, exposure)
  return fine({
    topic: 'layout',
    answer: firstLines(laid.value.rooms[0]),
    details: [
      say('layout.counts', {
        tile: tilePhrase(known, brief.metric),
        cells: count(laid.value.cells),
        whole: count(laid.value.whole),
        cut: count(laid.value.cut),
      }),
      ...(laid.value.smallestCutMm === null ? [] : [say('layout.worst', { cut: small(laid.value.smallestCutMm) })]),
      ...laid.value.rooms
        .slice(1)
        .map((r) => say('layout.room-lines', { room: roomPhrase(r.room), lines: firstLines(r) })),
      say(`layout.rule-${laid.value.reuse.rule}`, {
        reused: count(laid.value.reuse.offcutsReused),
        stock: count(laid.value.reuse.stockTiles),
      }),
      ...measureAgain(laid.value.rooms[0]),
      ...movementLine(movement),
    ],
    assumed: [
      ...assumed,
      ...laid.value.notes,
      ...(brief.facts.pattern ? [] : [say('assumed.pattern', { pattern: word('pattern-stacked') })]),
      say('layout.assumed-gap'),
    ],
    sources: [sourceOf(brief.settings.practice.tile.spareStraight)],
    working: workings(laid.value),
    values: {
      ...laidValues(laid.value),
      area_m2: areaM2,
      perimeter_m: perimeterM,
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      joint_mm: jointMm,
      movement_spacing_m: movementSpacingM(exposure).highM,
    },
    tables: [cutTable(laid.value)],
    drawings: drawingsOf(laid.value, movement.plans, brief.facts),
    offers: ['math', 'keep'],
  })
}

/** "First line 23 5/8 in from the left wall, 11 in from the bottom wall." */
function firstLines({ start }: LaidRoom): Phrase {
  const [a, b] = start.firstLines
  const line = (l: typeof a): Phrase =>
    say(l.along === 'x' ? 'layout.from-left' : 'layout.from-bottom', { mm: small(l.fromLowMm) })
  if (a && b) return say('layout.first-two', { one: line(a), two: line(b) })
  if (a) return say('layout.first-one', { one: line(a) })
  const corner = start.middleCorner
  return corner
    ? say('layout.middle', { left: small(corner.fromLeftMm), bottom: small(corner.fromBottomMm) })
    : say('layout.anywhere')
}

function measureAgain({ start }: LaidRoom): Phrase[] {
  const promise = start.promises.find((p) => p.along === start.measureAgain)
  if (!promise) return []
  const marginMm = Math.min(promise.lessMm, promise.moreMm)
  return Number.isFinite(marginMm) && marginMm < 25
    ? [say(promise.along === 'x' ? 'layout.measure-x' : 'layout.measure-y', { margin: small(Math.max(0, marginMm)) })]
    : []
}

type Movement = {
  readonly plans: readonly (MovementPlan | null)[]
  readonly insideMm: number
  readonly perimeterMm: number
  readonly lines: number
  readonly lowM: number
  readonly highM: number
}
const SEALANT_MM = 6.35

function movementOf(laid: LaidFloor, exposure: Exposure): Movement {
  const { lowM, highM } = movementSpacingM(exposure)
  const plans = laid.rooms.map((r) => {
    const plan = movementJoints(r.floor, r.start.spec, highM * 1000)
    return plan.ok ? plan.value : null
  })
  const sum = (of: (p: MovementPlan) => number): number => plans.reduce((total, p) => total + (p ? of(p) : 0), 0)
  return {
    plans,
    insideMm: sum((p) => p.insideMm),
    perimeterMm: sum((p) => p.perimeterMm),
    lines: sum((p) => p.joints.length),
    lowM,
    highM,
  }
}

function movementLine(m: Movement): Phrase[] {
  const tubes = sealantTubes(m.insideMm + m.perimeterMm, SEALANT_MM, SEALANT_MM)
  const args = {
    perimeter: run(m.perimeterMm),
    inside: run(m.insideMm),
    lines: count(m.lines),
    low: run(m.lowM * 1000),
    high: run(m.highM * 1000),
    tubes: count(tubes.ok ? Math.ceil(tubes.value) : 0),
  }
  return [say(m.lines > 0 ? 'layout.movement' : 'layout.soft-perimeter', args)]
}

function workings(laid: LaidFloor): Phrase[] {
  return laid.rooms.flatMap((r) => [
    say('layout.work-room', {
      room: roomPhrase(r.room),
      cells: count(r.start.layout.cells),
      whole: count(r.start.layout.whole),
      cut: count(r.start.layout.cut),
      joints: run(r.start.layout.jointLengthMm),
    }),
    ...r.start.promises.map((p) =>
      say('layout.work-axis', { span: run(p.spanMm), tile: small(p.tileMm), worst: small(p.worstMm) }),
    ),
  ])
}

/** The cut list: sizes and how many of each, the largest first. */
function cutTable(laid: LaidFloor): Table {
  const rows = laid.rooms.flatMap((r) => {
    const cuts = cutPieces(r.floor, r.start.spec)
    return cuts.ok
      ? cutList(cuts.value.cuts).map((g) => [
          roomPhrase(r.room),
          small(g.lengthMm),
          small(g.widthMm),
          word(g.rectangle ? 'piece-rectangle' : 'piece-shaped'),
          count(g.count * r.room.count),
        ])
      : []
  })
  const head = [say('table.room'), say('table.length'), say('table.width'), say('table.shape'), say('table.count')]
  return { name: 'cut-list.csv', head, rows }
}
