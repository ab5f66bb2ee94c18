/** Tile: places on the floor, pieces to buy, boxes, weight. */
import { LEAST_JOINT_MM } from '../core/joints.ts'
import { moduleM2, type TileShape, withSpares } from '../core/tile.ts'
import type { Tile } from '../facts.ts'
import { area, count, type Phrase, percent, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { byTiling, joinParts, type TiledPart } from './by-tiling.ts'
import { floorNotes, floorSum, roomName, roomPhrase } from './floors.ts'
import { offsetWarnings } from './layout-extras.ts'
import type { LaidFloor } from './plan.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { type BySize, type Counted, fromArea, fromRooms } from './tile-count.ts'
import { areaToBuy, boxesOnly, type PatternRule, patternRule, sparesOnly } from './tile-spares.ts'
import { type Brief, sourceOf, type Told, type TopicAnswer } from './topic.ts'

const WIDEST_JOINT_MM = 50.8

const MOST_TILES = 5_000_000

/** Tiles of each size for the rooms that take it. */
export const tile: TopicAnswer = (brief) => {
  const told = byTiling(brief, tileAlike, joinTiles)
  return told.ok ? fine(withExtra(brief, told.value)) : told
}

/** "2 extra boxes": on top of what the floor takes; of boxes on hand nothing is said here. */
function withExtra({ heard }: Brief, told: Told): Told {
  const extra = heard.facts.haveBoxes
  if (extra === undefined || !heard.has('spare') || heard.has('have', 'left')) return told
  const boxes = told.values?.['tile_boxes']
  const line =
    typeof boxes === 'number'
      ? say('tile.extra-boxes', { n: count(extra), all: count(boxes + extra) })
      : say('tile.extra-unboxed', { n: count(extra) })
  return { ...told, details: [line, ...(told.details ?? [])] }
}

function joinTiles(parts: readonly TiledPart[]): Told {
  const spares = new Set(parts.map(({ told }) => told.values?.['spare_pct']))
  const list = parts.map(({ brief, told }) => {
    const boxed = told.values?.['tile_boxes'] === undefined ? 'tile.part' : 'tile.part-boxes'
    return say(spares.size > 1 ? `${boxed}-spares` : boxed, {
      ...told.answer.args,
      rooms: (brief.facts.rooms ?? []).map(roomName),
    })
  })
  const joined = joinParts(parts)
  return {
    ...joined,
    answer: say(spares.size > 1 ? 'tile.by-room' : 'tile.by-room-spares', {
      list,
      spares: parts[0].told.answer.args['spares'],
    }),
    details: parts.flatMap(({ told }) => told.details ?? []),
  }
}

function tileAlike(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { facts } = brief
  const known = knownTile(facts) ?? sheetOfMosaic(brief, assumed)
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  if (!known && brief.heard.has('spare') && !facts.boxM2)
    return fine(floor.value ? areaToBuy(brief, floor.value.areaM2) : sparesOnly(brief))
  if (!known && facts.boxM2 && floor.value) return boxesOnly(brief, facts.boxM2, floor.value.areaM2)
  if (!known) return refuse('question', { question: 'tile' })
  if (!floor.value) return refuse('question', { question: 'area' })
  if (facts.pattern?.name === 'two-size' && facts.pattern.smallMm === undefined)
    return refuse('question', { question: 'small-size' })
  const jointMm = jointOf(brief, assumed)
  if (jointMm > WIDEST_JOINT_MM)
    return refuse('out-of-range', { field: 'joint', value: jointMm, min: 0, max: WIDEST_JOINT_MM, unit: 'mm' })
  if (jointMm >= known.widthMm)
    return refuse('out-of-range', { field: 'joint', value: jointMm, min: 0, max: known.widthMm / 2, unit: 'mm' })
  const rule = patternRule(brief, facts.pattern)
  const sparePct = facts.sparePct ?? rule.spare.value * 100
  if (!(sparePct >= 0 && sparePct <= 100))
    return refuse('out-of-range', { field: 'spares', value: sparePct, min: 0, max: 100 })
  if (facts.sparePct === undefined) assumed.push(say('assumed.spares', { spares: percent(sparePct) }))
  const shape: TileShape = {
    shape: known.shape === 'hexagon' ? 'hexagon' : 'rectangle',
    // A hexagon counts across its sides, whichever of its measures was told beside.
    lengthMm: known.shape === 'hexagon' ? known.widthMm : known.lengthMm,
    widthMm: known.widthMm,
    // A sheet's size holds the joint to the next one.
    jointMm: inSheets(brief) ? 0 : jointMm,
  }
  if (floor.value.areaM2 / moduleM2(shape) > MOST_TILES)
    return refuse('too-much-work', { what: count(Math.round(floor.value.areaM2 / moduleM2(shape))) })
  const counted = floor.value.shaped ? fromRooms(brief, known, jointMm, sparePct, shape) : null
  const result = counted ?? fromArea(brief, floor.value.areaM2, shape, rule, sparePct)
  return result.ok ? fine(tell(brief, known, jointMm, sparePct, floor.value, result.value, rule, assumed)) : result
}

/** "64 tiles of 18x18 and 70 of 6x6": the two sizes of a pattern. */
function sizesPhrase(bySize: BySize, sparePct: number, metric: boolean): Phrase {
  const [large, small] = bySize.map(({ tile, tiles }) => {
    const pieces = withSpares(tiles, sparePct / 100)
    return { n: count(pieces.ok ? pieces.value : tiles), tile: tilePhrase(tile, metric) }
  })
  return say('tile.two-sizes', {
    count: large.n,
    tile: large.tile,
    few: small.n,
    small: small.tile,
    spares: percent(sparePct),
  })
}

/** A long tile offset too far, a joint narrower than any, and a room no larger than its tile. */
function warningsOf(brief: Brief, known: Tile, jointMm: number, laid: LaidFloor | null): Phrase[] {
  const warnings = offsetWarnings(laid)
  if (jointMm < LEAST_JOINT_MM - 0.1) warnings.push(say('tile.joint-least', { least: small(LEAST_JOINT_MM) }))
  const narrow = (brief.facts.rooms ?? []).some((r) =>
    r.pieces.some((p) => p.sign === 1 && !p.outside && Math.min(p.lengthMm, p.widthMm) < known.widthMm),
  )
  if (narrow) warnings.push(say('tile.room-smaller'))
  return warnings
}

/** What the layout says in a reply about tile: places, the narrowest cut, off-cuts. */
function laidLines(laid: LaidFloor): Phrase[] {
  const { cells, whole, cut, reuse, smallestCutMm } = laid
  return [
    say(reuse.offcutsReused > 0 ? 'tile.places-reused' : 'tile.places', {
      cells: count(cells),
      whole: count(whole),
      cut: count(cut),
      reused: count(reuse.offcutsReused),
    }),
    ...(smallestCutMm === null ? [] : [say('tile.worst-cut', { cut: small(smallestCutMm) })]),
  ]
}

/** Keys of the contract that a layout fills. */
export const laidValues = (laid: LaidFloor): Readonly<Record<string, number | undefined>> => ({
  joint_length_m: laid.jointLengthM,
  tile_cells: laid.cells,
  tile_whole: laid.whole,
  tile_cut: laid.cut,
  smallest_cut_mm: laid.smallestCutMm ?? undefined,
  offcuts_reused: laid.reuse.offcutsReused,
})

/** Mosaic comes on sheets, and a size told beside them is theirs. */
const SHEET_MM = 304.8

/** "45 sf of penny tile, how many sheets": a foot square each, where nobody said. */
function sheetOfMosaic({ facts, has }: Brief, assumed: Phrase[]): Tile | null {
  if (!has('mosaic') || !has('sheet') || (facts.tile?.lengthMm ?? 0) > 0) return null
  assumed.push(say('assumed.sheet', { length: small(SHEET_MM), width: small(SHEET_MM) }))
  return { ...facts.tile, shape: 'mosaic', lengthMm: SHEET_MM, widthMm: SHEET_MM }
}

const inSheets = ({ has }: Brief): boolean => has('mosaic') && has('sheet')

function tell(
  brief: Brief,
  known: Tile,
  jointMm: number,
  sparePct: number,
  floor: { areaM2: number; perimeterM: number; shaped: boolean },
  counted: Counted,
  rule: PatternRule,
  assumed: Phrase[],
): Told {
  const size = tilePhrase(known, brief.metric)
  const rooms = brief.facts.rooms ?? []
  const details = [
    say(rooms.length > 0 ? 'tile.floor-rooms' : 'tile.floor-area', {
      rooms: rooms.map(roomPhrase),
      area: area(floor.areaM2),
      joint: small(jointMm),
    }),
    ...(counted.laid ? laidLines(counted.laid) : []),
  ]
  return {
    topic: 'tile',
    answer: counted.bySize
      ? sizesPhrase(counted.bySize, sparePct, brief.metric)
      : say(counted.boxes !== null ? 'tile.answer-boxes' : inSheets(brief) ? 'tile.answer-sheets' : 'tile.answer', {
          count: count(counted.count),
          boxes: count(counted.boxes ?? 0),
          tile: size,
          spares: percent(sparePct),
        }),
    details,
    assumed: [
      ...assumed,
      ...floorNotes(brief.facts),
      ...(brief.facts.pattern || known.shape === 'hexagon'
        ? []
        : [say('assumed.pattern', { pattern: word('pattern-stacked') })]),
    ],
    sources: [sourceOf(rule.spare)],
    warnings: warningsOf(brief, known, jointMm, counted.laid),
    working: counted.working,
    values: {
      area_m2: floor.areaM2,
      ...(floor.perimeterM > 0 ? { perimeter_m: floor.perimeterM } : {}),
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      tile_thickness_mm: known.thicknessMm,
      joint_mm: jointMm,
      tile_count: counted.count,
      ...(counted.laid ? laidValues(counted.laid) : {}),
      tile_boxes: counted.boxes ?? undefined,
      ...(inSheets(brief) ? { sheets: counted.count } : {}),
      spare_pct: sparePct,
    },
    offers: ['math', 'picture', 'keep'],
  }
}
