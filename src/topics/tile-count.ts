/** Tiles to buy: counted on the floor as it is laid, or by area. */
import { boxesFor, moduleM2, type TileShape, tilesForArea, withSpares } from '../core/tile.ts'
import type { Tile } from '../facts.ts'
import { count, number, type Phrase, percent, say } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import { type LaidFloor, laidFor } from './plan.ts'
import { boxOf, type PatternRule, patternRule } from './tile-spares.ts'
import type { Brief } from './topic.ts'

export type Counted = {
  readonly count: number
  readonly boxes: number | null
  readonly laid: LaidFloor | null
  readonly bySize?: BySize
  readonly working: readonly Phrase[]
}

/** Tiles of each size, the large one first. */
export type BySize = NonNullable<LaidFloor['bySize']>

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

/** Counted on the floor as it is laid; null where only an area is known or the tile is too small to lay one by one. */
export function fromRooms(
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

export function fromArea(
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

/** Tiles to buy for a layout, spares in. */
export function tilesToBuy(brief: Brief, laid: LaidFloor): number | undefined {
  const sparePct = brief.facts.sparePct ?? patternRule(brief, brief.facts.pattern).spare.value * 100
  const pieces = piecesFor(takenBy(laid), sparePct)
  return pieces.ok ? pieces.value : undefined
}
