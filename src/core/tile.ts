/** Tile for a bare area, where no floor was given to lay out: pieces, spares and boxes. */
import { fine, type Outcome, type Range, within } from '../problem.ts'
import { TILE_EDGE } from './grout.ts'
import { wholePacks } from './spread.ts'
import { AREA } from './stock.ts'

export const SPARES: Range = { field: 'spares', unit: 'share', min: 0, max: 1 }
export const NO_JOINT_TOO: Range = { field: 'joint', unit: 'mm', min: 0, max: 50 }
export const PATTERN_FACTOR: Range = { field: 'pattern-factor', unit: '', min: 1, max: 2 }
export const PIECES: Range = { field: 'pieces', unit: '', min: 1, max: 10_000 }

/** A rectangle, or a regular hexagon by its width across flats (both edges). Sheets of mosaic count as tiles. */
export type TileShape = {
  readonly shape: 'rectangle' | 'hexagon'
  readonly lengthMm: number
  readonly widthMm: number
  readonly jointMm: number
}

/** As the box says it: how many pieces, or what area. */
export type Box = { readonly pieces: number } | { readonly areaM2: number }

const HEXAGON = Math.sqrt(3) / 2

/** Face of one tile. [m2] */
export const faceM2 = ({ shape, lengthMm, widthMm }: TileShape): number =>
  (shape === 'hexagon' ? HEXAGON : 1) * lengthMm * widthMm * 1e-6

/** What one tile takes up with its joint. [m2] */
export const moduleM2 = ({ shape, lengthMm, widthMm, jointMm }: TileShape): number =>
  (shape === 'hexagon' ? HEXAGON : 1) * (lengthMm + jointMm) * (widthMm + jointMm) * 1e-6

/** Pieces to buy for places on the floor, spares in. Whole.
 *  @param places 0 or more    @param spareShare SPARES    @problem out-of-range    @example 108 places, 10 %: 119 */
export function withSpares(places: number, spareShare: number): Outcome<number> {
  const count = within({ field: 'tiles', unit: '', min: 0, max: 100_000_000 }, places)
  if (!count.ok) return count
  const spares = within(SPARES, spareShare)
  return spares.ok ? fine(wholePacks(places * (1 + spareShare))) : spares
}

/** Whole boxes that hold a number of pieces; by area where the box names only that.
 *  @param pieces whole, 0 or more    @param box pieces PIECES, or areaM2 AREA    @problem out-of-range
 *  @example 119 pieces, 8 a box: 15 */
export function boxesFor(pieces: number, tile: TileShape, box: Box): Outcome<number> {
  if ('pieces' in box) {
    const inBox = within(PIECES, box.pieces)
    return inBox.ok ? fine(wholePacks(pieces / box.pieces)) : inBox
  }
  const area = within(AREA, box.areaM2)
  return area.ok ? fine(wholePacks((pieces * faceM2(tile)) / box.areaM2)) : area
}

export type AreaTiles = {
  /** Places, not rounded: area / module. */
  readonly places: number
  /** Pieces to buy, spares in. */
  readonly count: number
  readonly boxes: number | null
}

/** Tile for a bare area: area / module x the pattern's factor, spares added, boxes rounded up.
 *  An estimate: a floor with its sides is laid out and counted instead.
 *  @param areaM2 AREA    @param tile TILE_EDGE, NO_JOINT_TOO    @param patternFactor PATTERN_FACTOR
 *  @param spareShare SPARES    @problem out-of-range
 *  @source geometry; 5 to 15 % spares: National Tile Contractors Association magazine, Nov 2016 p. 28
 *  @example 12 m2 of 600 x 600 at 3 mm, 10 %: 33.0 places, 37 tiles */
export function tilesForArea(
  areaM2: number,
  tile: TileShape,
  options: { readonly patternFactor: number; readonly spareShare: number; readonly box: Box | null },
): Outcome<AreaTiles> {
  const checks = [
    within(AREA, areaM2),
    within(TILE_EDGE, tile.lengthMm),
    within(TILE_EDGE, tile.widthMm),
    within(NO_JOINT_TOO, tile.jointMm),
    within(PATTERN_FACTOR, options.patternFactor),
  ]
  for (const check of checks) if (!check.ok) return check
  const places = (areaM2 / moduleM2(tile)) * options.patternFactor
  const count = withSpares(places, options.spareShare)
  if (!count.ok) return count
  if (options.box === null) return fine({ places, count: count.value, boxes: null })
  const boxes = boxesFor(count.value, tile, options.box)
  return boxes.ok ? fine({ places, count: count.value, boxes: boxes.value }) : boxes
}
