/** Area and outer walls, and the layout itself: where to snap the lines, the worst cut, the cut list, the picture. */

import type { Facts, Tile } from '../facts.ts'
import { area, count, type Phrase, run, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { tilings } from '../room-tiles.ts'
import { byTiling } from './by-tiling.ts'
import { courses, coursesAsked } from './courses.ts'
import { cutRules } from './cut-rules.ts'
import { floorNotes, floorSum, roomPhrase } from './floors.ts'
import {
  cutLines,
  cutTable,
  leftLines,
  nominalLines,
  offsetWarnings,
  patternLines,
  poleLines,
  poleTable,
  sliverJoint,
  wayLines,
  wishesNotKept,
} from './layout-extras.ts'
import { poleLengthMm, rulesCompared } from './layout-route.ts'
import { exposureOf, movementAlone, movementLines, movementOf, softPlaces } from './movement.ts'
import { opening, openingAsked } from './openings.ts'
import { drawingsOf } from './picture.ts'
import { type LaidFloor, type LaidRoom, LEAST_LAID_MM, laidFor } from './plan.ts'
import { pole } from './pole.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { laidValues } from './tile.ts'
import { tilesToBuy } from './tile-count.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'
import { wall, wallAsked } from './wall.ts'

const LAYOUT_WORDS = [
  'layout-word',
  'start-line',
  'cut',
  'hide',
  'full-tiles',
  'picture',
  'which-way',
  'story-pole',
  'sliver-word',
  'cut-list',
  'left-over',
  'slab-joint',
  'movement-word',
  'room-off',
] as const

/** Asked with these, soft joints are one line of a layout. */
const BESIDE_SOFT = ['layout-word', 'start-line', 'cut', 'picture', 'which-way', 'story-pole', 'cut-list'] as const

export function layout(brief: Brief): Outcome<Told> {
  if (coursesAsked(brief)) return courses(brief)
  const opens = openingAsked(brief)
  if (opens) return opening(brief, opens)
  const asked = wallAsked(brief)
  if (asked) return wall(brief, asked)
  const poleMm = poleLengthMm(brief.heard)
  if (poleMm !== null) return pole(brief, poleMm)
  if (rulesCompared(brief.heard)) return cutRules(brief)
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  if (brief.has('movement-word') && !knownTile(brief.facts)) return movementAlone(brief, floor.value.areaM2)
  const wantsLayout = brief.has(...LAYOUT_WORDS) && !brief.heard.has('perimeter', 'area-word')
  return wantsLayout ? layouts(brief) : areaOnly(brief, floor.value.areaM2, floor.value.perimeterM)
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

/** The layout of each tiling; pictures are numbered through. */
function layouts(brief: Brief): Outcome<Told> {
  const told = byTiling(brief, wholeLayout)
  if (!told.ok) return told
  const { drawings = [] } = told.value
  const isOne = tilings(brief.facts).length === 1
  return fine({
    ...told.value,
    drawings: drawings.map((d, k) => ({
      ...d,
      ...(isOne ? {} : { name: `layout-${k + 1}.svg` }),
      ...(brief.has('dark-word') ? { theme: 'dark' as const } : {}),
    })),
  })
}

function wholeLayout(brief: Brief): Outcome<Told> {
  const { facts } = brief
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  const { areaM2, perimeterM } = floor.value ?? { areaM2: 0, perimeterM: 0 }
  const known = knownTile(facts)
  if (!known) return refuse('question', { question: 'tile' })
  if (facts.pattern?.name === 'two-size' && facts.pattern.smallMm === undefined)
    return refuse('question', { question: 'small-size' })
  if (facts.hideBehind && !facts.hideAt) return refuse('question', { question: 'hide-wall' })
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  if (jointMm >= known.widthMm)
    return refuse('out-of-range', { field: 'joint', value: jointMm, min: 0, max: known.widthMm / 2, unit: 'mm' })
  const result = laidFor(facts, known, jointMm)
  if (result === null) return notLaid(facts, known, areaM2)
  if (!result.ok) return result
  const laid = result.value
  const exposure = exposureOf(brief)
  const movement = movementOf(laid, exposure, facts)
  const sliver = sliverJoint(brief, known, jointMm, laid)
  const { rooms } = laid
  const wantsPole = brief.has('story-pole')
  const lines =
    rooms.length > 1
      ? say('layout.room-lines', { room: roomPhrase(rooms[0].room), lines: firstLines(rooms[0]) })
      : firstLines(rooms[0])
  const counts = say('layout.counts', {
    tile: tilePhrase(known, brief.metric),
    cells: count(laid.cells),
    whole: count(laid.whole),
    cut: count(laid.cut),
  })
  const asksCuts = brief.heard.has('how-many') && brief.heard.has('cut', 'full-tiles')
  const margins = brief.heard.has('room-off') ? marginLines(rooms[0]) : []
  const movementTold = movementLines(movement)
  const soft = [...(movement.lines === 0 ? [say('movement.none-inside')] : []), ...movementTold]
  const asksSoft = brief.has('movement-word') && !brief.heard.has(...BESIDE_SOFT)
  return fine({
    topic: asksSoft ? 'joints' : 'layout',
    answer: margins.length > 0 ? margins[0] : asksSoft ? soft[0] : asksCuts ? counts : lines,
    details: asksSoft
      ? [...soft.slice(1), ...softPlaces(movement.plans[0]), lines]
      : [
          ...wayLines(facts, known, rooms[0]),
          ...(wantsPole ? poleLines(rooms[0], jointMm) : []),
          ...(brief.has('cut-list') ? cutLines(laid) : []),
          ...(brief.has('left-over') ? leftLines(laid) : []),
          ...(sliver?.lines ?? []),
          ...margins.slice(1),
          ...(margins.length > 0 ? [lines, counts] : [asksCuts ? lines : counts]),
          ...(laid.smallestCutMm === null ? [] : [say('layout.worst', { cut: small(laid.smallestCutMm) })]),
          ...rooms.slice(1).map((r) => say('layout.room-lines', { room: roomPhrase(r.room), lines: firstLines(r) })),
          ...patternLines(facts, known, jointMm, laid),
          say(reuseRule(laid), {
            reused: count(laid.reuse.offcutsReused),
            stock: count(laid.reuse.stockTiles),
          }),
          ...(facts.directional ? [say('layout.directional')] : []),
          ...wishesNotKept(facts, rooms[0]),
          ...measureAgain(rooms[0]),
          ...nominalLines(facts, known, laid, brief.metric),
          ...movementTold,
        ],
    assumed: [
      ...assumed,
      ...laid.notes,
      ...(facts.pattern || known.shape === 'hexagon'
        ? []
        : [say('assumed.pattern', { pattern: word('pattern-stacked') })]),
      ...(facts.doorAt && !doorSaid(brief) ? [say('layout.assumed-door', { side: word(`side-${facts.doorAt}`) })] : []),
      say('layout.assumed-gap'),
    ],
    warnings: offsetWarnings(laid),
    sources: [sourceOf(brief.settings.practice.tile.spareStraight)],
    working: workings(laid),
    values: {
      ...laidValues(laid),
      tile_count: tilesToBuy(brief, laid),
      area_m2: areaM2,
      perimeter_m: perimeterM,
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      joint_mm: sliver?.jointMm ?? jointMm,
      movement_spacing_m: movement.highM,
      movement_spacing_m_low: movement.lowM,
      movement_spacing_m_high: movement.highM,
      ...(asksSoft ? { movement_lines: movement.close?.lines ?? movement.lines } : {}),
    },
    tables: [cutTable(laid), ...(wantsPole ? [poleTable(rooms[0], jointMm)] : [])],
    drawings: drawingsOf(laid, movement.plans, facts),
    offers: ['math', 'keep'],
  })
}

/** Why nothing was laid: no shape is known, the tile comes by the sheet, or there is too much of it. */
function notLaid(facts: Facts, known: Tile, areaM2: number): Outcome<Told> {
  const shaped = facts.areaM2 === undefined && (facts.rooms ?? []).every((room) => room.areaM2 === undefined)
  if (!shaped) return refuse('question', { question: 'room' })
  const places = (areaM2 * 1e6) / (known.lengthMm * known.widthMm)
  const small = known.lengthMm < LEAST_LAID_MM || known.shape === 'mosaic'
  return small
    ? refuse('question', { question: 'small-tile' })
    : refuse('too-much-work', { what: count(Math.round(places)) })
}

/** A wall was named in this message, so the door is where the crew said. */
const doorSaid = (brief: Brief): boolean =>
  brief.heard.marks.some(
    (m) =>
      m.concept === 'door' &&
      [1, 2, 3, 4, 5].some((k) => brief.heard.reader.is(m.first + m.count - 1 + k, ...SIDE_WORDS)),
  )
const SIDE_WORDS = ['left-side', 'right-side', 'top-side', 'bottom-side'] as const

/** "First line 23 5/8 in from the left wall, 11 in from the bottom wall." */
function firstLines({ start }: LaidRoom): Phrase {
  const [a, b] = start.firstLines
  const line = (l: typeof a): Phrase =>
    say(l.along === 'x' ? 'layout.from-left' : 'layout.from-bottom', { mm: small(l.fromLowMm) })
  if (a && b) return say('layout.first-two', { one: line(a), two: line(b) })
  const corner = start.middleCorner
  if (a && corner)
    return say(a.along === 'x' ? 'layout.first-and-bottom' : 'layout.first-and-left', {
      one: line(a),
      left: small(corner.fromLeftMm),
      bottom: small(corner.fromBottomMm),
    })
  if (a) return say('layout.first-one', { one: line(a) })
  return corner
    ? say('layout.middle', { left: small(corner.fromLeftMm), bottom: small(corner.fromBottomMm) })
    : say('layout.anywhere')
}

/** The rule by which off-cuts are used, and whether the plan is proven to take the fewest tiles. */
function reuseRule({ reuse: { rule, proven, offcutsReused } }: LaidFloor) {
  return rule !== 'fresh-tile' && proven && offcutsReused > 0
    ? (`layout.rule-${rule}-fewest` as const)
    : (`layout.rule-${rule}` as const)
}

function measureAgain({ start }: LaidRoom): Phrase[] {
  const promise = start.promises.find((p) => p.along === start.measureAgain)
  if (!promise) return []
  const marginMm = Math.min(promise.lessMm, promise.moreMm)
  return Number.isFinite(marginMm) && marginMm < 25
    ? [say(promise.along === 'x' ? 'layout.measure-x' : 'layout.measure-y', { margin: small(Math.max(0, marginMm)) })]
    : []
}

/** How far the room may be off in each direction before what the start promises breaks. */
const marginLines = ({ start }: LaidRoom): Phrase[] =>
  start.promises
    .filter(({ lessMm, moreMm }) => Number.isFinite(lessMm) && Number.isFinite(moreMm))
    .toSorted((a, b) => Math.min(a.lessMm, a.moreMm) - Math.min(b.lessMm, b.moreMm))
    .map(({ along, lessMm, moreMm }) =>
      say(along === 'x' ? 'layout.margin-x' : 'layout.margin-y', { less: small(lessMm), more: small(moreMm) }),
    )

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
