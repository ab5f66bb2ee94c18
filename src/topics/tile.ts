/** Tile: places on the floor, pieces to buy, boxes, weight. */

import { LEAST_JOINT_MM } from '../core/joints.ts'
import { type Box, boxesFor, moduleM2, type TileShape, tilesForArea, withSpares } from '../core/tile.ts'
import type { Pattern, Tile } from '../facts.ts'
import { area, count, number, type Phrase, percent, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import type { Figure } from '../settings.ts'
import { byTiling, joinParts, type TiledPart } from './by-tiling.ts'
import { floorNotes, floorSum, roomName, roomPhrase } from './floors.ts'
import { offsetWarnings } from './layout-extras.ts'
import { type LaidFloor, laidFor } from './plan.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { type Brief, sourceOf, type Told, type TopicAnswer } from './topic.ts'

type PatternRule = { readonly spare: Figure; readonly factor: Figure }

function patternRule(brief: Brief, pattern: Pattern | undefined): PatternRule {
  const t = brief.settings.practice.tile
  switch (pattern?.name) {
    case 'diagonal':
      return { spare: t.spareDiagonal, factor: t.factorDiagonal }
    case 'herringbone':
    case 'two-size':
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

/** "how much extra for a diagonal?": the share itself. */
function sparesOnly(brief: Brief): Told {
  const { spare } = patternRule(brief, brief.facts.pattern)
  return {
    topic: 'tile',
    answer: say('tile.spares', {
      usual: percent(spare.value * 100),
      low: percent((spare.low ?? spare.value) * 100),
      high: percent((spare.high ?? spare.value) * 100),
    }),
    sources: [sourceOf(spare)],
    values: { spare_pct: spare.value * 100 },
  }
}

/** "4x12 and 8x10 plus 15 %": how much tile to buy, by its area. */
function areaToBuy(brief: Brief, areaM2: number): Told {
  const { facts } = brief
  const spare = patternRule(brief, facts.pattern).spare
  const spares = facts.sparePct === undefined ? spare.value : facts.sparePct / 100
  const numbers = {
    buy: area(areaM2 * (1 + spares)),
    floor: area(areaM2),
    over: area(areaM2 * spares),
    spares: percent(spares * 100),
  }
  return {
    topic: 'tile',
    answer: say('tile.buy-area', numbers),
    details: [say('tile.buy-box')],
    assumed: facts.sparePct === undefined ? [say('assumed.spares', { spares: percent(spares * 100) })] : [],
    sources: [sourceOf(spare)],
    values: { area_m2: areaM2, spare_pct: spares * 100, buy_m2: areaM2 * (1 + spares) },
  }
}

const boxOf = (brief: Brief): Box | null =>
  brief.facts.boxTiles ? { pieces: brief.facts.boxTiles } : brief.facts.boxM2 ? { areaM2: brief.facts.boxM2 } : null

/** A box's area and the floor's are enough for the boxes: no tile size is needed. */
function boxesOnly(brief: Brief, boxM2: number, areaM2: number): Outcome<Told> {
  const { facts } = brief
  const spare = patternRule(brief, facts.pattern).spare
  const spares = facts.sparePct === undefined ? spare.value : facts.sparePct / 100
  const pieces = withSpares(areaM2 / boxM2, spares)
  if (!pieces.ok) return pieces
  const bare = Math.ceil(areaM2 / boxM2 - 1e-9)
  const have = facts.haveBoxes
  const numbers = {
    boxes: count(pieces.value),
    bare: count(bare),
    area: area(areaM2),
    each: area(boxM2),
    spares: percent(spares * 100),
    have: count(have ?? 0),
    covers: area((have ?? 0) * boxM2),
    more: count(Math.max(0, pieces.value - (have ?? 0))),
  }
  const key =
    have === undefined ? 'boxes' : have < bare ? 'boxes-short' : have < pieces.value ? 'boxes-tight' : 'boxes-enough'
  return fine({
    topic: 'tile',
    answer: say(`tile.${key}`, numbers),
    details: [say('tile.boxes-bare', numbers)],
    assumed: facts.sparePct === undefined ? [say('assumed.spares', { spares: percent(spares * 100) })] : [],
    sources: [sourceOf(spare)],
    values: {
      area_m2: areaM2,
      tile_boxes: pieces.value,
      spare_pct: spares * 100,
      ...(have === undefined ? {} : { boxes_short: Math.max(0, pieces.value - have) }),
    },
  })
}

const WIDEST_JOINT_MM = 50.8
const MOST_TILES = 5_000_000

/** Tiles of each size for the rooms that take it. */
export const tile: TopicAnswer = (brief) => byTiling(brief, tileAlike, joinTiles)

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

type Counted = {
  readonly count: number
  readonly boxes: number | null
  readonly laid: LaidFloor | null
  readonly bySize?: BySize
  readonly working: readonly Phrase[]
}

/** Tiles of each size, the large one first. */
type BySize = NonNullable<LaidFloor['bySize']>

/** Tiles to buy, spares in, of each size by itself. */
function piecesFor(sizes: readonly Pick<BySize[number], 'tiles'>[], sparePct: number): Outcome<number> {
  let all = 0
  for (const { tiles } of sizes) {
    const pieces = withSpares(tiles, sparePct / 100)
    if (!pieces.ok) return pieces
    all += pieces.value
  }
  return fine(all)
}

const takenBy = ({ whole, reuse, bySize }: LaidFloor): readonly Pick<BySize[number], 'tiles'>[] =>
  bySize ?? [{ tiles: whole + reuse.stockTiles }]

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

/** Counted on the floor as it is laid; null where only an area is known or the tile is too small to lay one by one. */
function fromRooms(
  brief: Brief,
  known: Tile,
  jointMm: number,
  sparePct: number,
  shape: TileShape,
): Outcome<Counted> | null {
  const laid = laidFor(brief.facts, known, jointMm)
  if (laid === null) return null
  if (!laid.ok) return laid.problem.code === 'too-much-work' ? null : laid
  const { cells, whole, cut, reuse } = laid.value
  const pieces = piecesFor(takenBy(laid.value), sparePct)
  if (!pieces.ok) return pieces
  const box = laid.value.bySize ? null : boxOf(brief)
  const boxes = box ? boxesFor(pieces.value, shape, box) : null
  if (boxes && !boxes.ok) return boxes
  const numbers = {
    cells: count(cells),
    whole: count(whole),
    cut: count(cut),
    stock: count(reuse.stockTiles),
    reused: count(reuse.offcutsReused),
    spares: percent(sparePct),
    count: count(pieces.value),
  }
  return fine({
    count: pieces.value,
    boxes: boxes?.value ?? null,
    laid: laid.value,
    ...(laid.value.bySize ? { bySize: laid.value.bySize } : {}),
    working: [say('tile.work-places', numbers), say('tile.work-cuts', numbers), say('tile.work-count', numbers)],
  })
}

function fromArea(
  brief: Brief,
  areaM2: number,
  shape: TileShape,
  rule: PatternRule,
  sparePct: number,
): Outcome<Counted> {
  const { pattern } = brief.facts
  if (pattern?.name === 'two-size' && pattern.smallMm !== undefined)
    return pairsForArea(areaM2, shape, pattern.smallMm, sparePct)
  const tiles = tilesForArea(areaM2, shape, {
    patternFactor: rule.factor.value,
    spareShare: sparePct / 100,
    box: boxOf(brief),
  })
  if (!tiles.ok) return tiles
  return fine({
    count: tiles.value.count,
    boxes: tiles.value.boxes,
    laid: null,
    working: [
      say('tile.work-area', {
        area: number(areaM2, 2),
        module: number(moduleM2(shape), 4),
        places: number(tiles.value.places, 1),
        spares: percent(sparePct),
        count: count(tiles.value.count),
      }),
    ],
  })
}

/** As many small tiles as large ones, by the area that one of each takes up. */
function pairsForArea(areaM2: number, large: TileShape, smallMm: number, sparePct: number): Outcome<Counted> {
  const side = Math.min(large.lengthMm, large.widthMm)
  const squares = [side, smallMm].map((mm): TileShape => ({ ...large, lengthMm: mm, widthMm: mm }))
  const pairM2 = squares.reduce((m2, square) => m2 + moduleM2(square), 0)
  const bySize = squares.map(({ lengthMm, widthMm }) => ({ tile: { lengthMm, widthMm }, tiles: areaM2 / pairM2 }))
  const pieces = piecesFor(bySize, sparePct)
  if (!pieces.ok) return pieces
  const numbers = {
    area: number(areaM2, 2),
    module: number(pairM2, 4),
    places: number(areaM2 / pairM2, 1),
    spares: percent(sparePct),
    count: count(pieces.value),
  }
  return fine({
    count: pieces.value,
    boxes: null,
    laid: null,
    bySize,
    working: [say('tile.work-area', numbers)],
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

/** Tiles to buy for a layout, spares in. */
export function tilesToBuy(brief: Brief, laid: LaidFloor): number | undefined {
  const sparePct = brief.facts.sparePct ?? patternRule(brief, brief.facts.pattern).spare.value * 100
  const pieces = piecesFor(takenBy(laid), sparePct)
  return pieces.ok ? pieces.value : undefined
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
