/** Tile: places on the floor, pieces to buy, boxes, weight. */
import { type Box, boxesFor, moduleM2, type TileShape, tilesForArea, withSpares } from '../core/tile.ts'
import type { Pattern, Tile } from '../facts.ts'
import { area, count, number, type Phrase, percent, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import type { Figure } from '../settings.ts'
import { floorSum, roomPhrase } from './floors.ts'
import { roomsPlaces } from './places.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

type PatternRule = { readonly spare: Figure; readonly factor: Figure }

function patternRule(brief: Brief, pattern: Pattern | undefined): PatternRule {
  const t = brief.settings.practice.tile
  switch (pattern?.name) {
    case 'diagonal':
      return { spare: t.spareDiagonal, factor: t.factorDiagonal }
    case 'herringbone':
    case 'double-herringbone':
    case 'basketweave':
      return { spare: t.spareHerringbone, factor: t.factorHerringbone }
    case 'offset':
    case 'random':
      return { spare: t.spareOffset, factor: t.factorOffset }
    default:
      return { spare: t.spareStraight, factor: t.factorStraight }
  }
}

const boxOf = (brief: Brief): Box | null =>
  brief.facts.boxTiles ? { pieces: brief.facts.boxTiles } : brief.facts.boxM2 ? { areaM2: brief.facts.boxM2 } : null

const WIDEST_JOINT_MM = 50.8
const MOST_TILES = 5_000_000

export function tile(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { facts } = brief
  const known = knownTile(facts)
  if (!known) return refuse('question', { question: 'tile' })
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
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
    lengthMm: known.lengthMm,
    widthMm: known.widthMm,
    jointMm,
  }
  if (floor.value.areaM2 / moduleM2(shape) > MOST_TILES)
    return refuse('too-much-work', { what: count(Math.round(floor.value.areaM2 / moduleM2(shape))) })
  const counted =
    floor.value.shaped && known.shape !== 'hexagon' ? fromRooms(brief, known, jointMm, sparePct, shape) : null
  const result = counted ?? fromArea(brief, floor.value.areaM2, shape, rule, sparePct)
  return result.ok ? fine(tell(brief, known, jointMm, sparePct, floor.value, result.value, rule, assumed)) : result
}

type Counted = {
  readonly count: number
  readonly boxes: number | null
  readonly cells?: number
  readonly whole?: number
  readonly cut?: number
  readonly smallestCutMm?: number | null
  readonly jointLengthM?: number
  readonly working: Phrase
}

const WALL_GAP_MM = 6

function fromRooms(
  brief: Brief,
  known: Tile,
  jointMm: number,
  sparePct: number,
  shape: TileShape,
): Outcome<Counted> | null {
  const places = roomsPlaces(brief.facts.rooms ?? [], known, jointMm, WALL_GAP_MM, brief.facts.pattern)
  if (!places) return null
  const pieces = withSpares(places.cells, sparePct / 100)
  if (!pieces.ok) return pieces
  const box = boxOf(brief)
  const boxes = box ? boxesFor(pieces.value, shape, box) : null
  if (boxes && !boxes.ok) return boxes
  return fine({
    ...places,
    count: pieces.value,
    boxes: boxes?.value ?? null,
    working: say('tile.work-places', {
      cells: count(places.cells),
      whole: count(places.whole),
      cut: count(places.cut),
      spares: percent(sparePct),
      count: count(pieces.value),
    }),
  })
}

function fromArea(
  brief: Brief,
  areaM2: number,
  shape: TileShape,
  rule: PatternRule,
  sparePct: number,
): Outcome<Counted> {
  const tiles = tilesForArea(areaM2, shape, {
    patternFactor: rule.factor.value,
    spareShare: sparePct / 100,
    box: boxOf(brief),
  })
  if (!tiles.ok) return tiles
  return fine({
    count: tiles.value.count,
    boxes: tiles.value.boxes,
    working: say('tile.work-area', {
      area: number(areaM2, 2),
      module: number(moduleM2(shape), 4),
      places: number(tiles.value.places, 1),
      spares: percent(sparePct),
      count: count(tiles.value.count),
    }),
  })
}

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
    ...(counted.cells !== undefined
      ? [
          say('tile.places', {
            cells: count(counted.cells),
            whole: count(counted.whole as number),
            cut: count(counted.cut as number),
          }),
        ]
      : []),
    ...(counted.smallestCutMm ? [say('tile.worst-cut', { cut: small(counted.smallestCutMm) })] : []),
  ]
  return {
    topic: 'tile',
    answer: say(counted.boxes === null ? 'tile.answer' : 'tile.answer-boxes', {
      count: count(counted.count),
      boxes: count(counted.boxes ?? 0),
      tile: size,
      spares: percent(sparePct),
    }),
    details,
    assumed: [
      ...assumed,
      ...(brief.facts.pattern ? [] : [say('assumed.pattern', { pattern: word('pattern-stacked') })]),
    ],
    sources: [sourceOf(rule.spare)],
    working: [counted.working],
    values: {
      area_m2: floor.areaM2,
      ...(floor.perimeterM > 0 ? { perimeter_m: floor.perimeterM } : {}),
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      tile_thickness_mm: known.thicknessMm,
      joint_mm: jointMm,
      joint_length_m: counted.jointLengthM,
      tile_count: counted.count,
      tile_cells: counted.cells,
      tile_whole: counted.whole,
      tile_cut: counted.cut,
      smallest_cut_mm: counted.smallestCutMm ?? undefined,
      tile_boxes: counted.boxes ?? undefined,
      spare_pct: sparePct,
    },
    offers: ['math', 'picture', 'keep'],
  }
}
