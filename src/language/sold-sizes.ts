/** Sizes tile and sheets are sold in. */

/** Sizes tile is sold in, in inches, shorter side first. Common practice, no source. */
const TILE_INCHES = new Set(
  '1x1 2x2 3x3 4x4 6x6 8x8 9x9 10x10 12x12 13x13 16x16 18x18 20x20 24x24 32x32 36x36 48x48 2x4 2x6 2x8 2x10 3x6 3x9 3x12 4x8 4x10 4x12 4x16 6x12 6x24 6x36 6x40 6x48 7x48 8x10 8x12 8x16 8x20 8x24 8x32 8x36 8x40 8x48 9x36 9x48 10x14 10x60 12x18 12x24 12x36 12x48 15x30 16x24 16x32 18x36 20x40 24x36 24x48 32x64'.split(
    ' ',
  ),
)

/** Sizes tile is sold in, in centimetres, shorter side first. Common practice, no source. */
const TILE_CM = new Set(
  '10x10 15x15 20x20 25x25 30x30 33x33 40x40 45x45 50x50 60x60 80x80 90x90 100x100 120x120 10x20 10x30 15x60 15x90 20x40 20x60 20x120 25x40 30x60 30x90 40x80 45x90 60x120 80x160'.split(
    ' ',
  ),
)

const bySide = (a: number, b: number): string => `${Math.min(a, b)}x${Math.max(a, b)}`

export const isTypicalTile = (a: number, b: number): boolean => TILE_INCHES.has(bySide(a, b))

/** A size tile is sold in by the centimetre and not by the inch. */
export const isCentimetreTile = (a: number, b: number): boolean =>
  Math.min(a, b) >= 30 && TILE_CM.has(bySide(a, b)) && !isTypicalTile(a, b) && bySide(a, b) !== '30x60'

/** A tile told in bare centimetres or millimetres, which no tile of inches is. */
export const isTileInMetric = (a: number, b: number): boolean =>
  !isTypicalTile(a, b) && Math.min(a, b) >= 20 && (TILE_CM.has(bySide(a, b)) || TILE_CM.has(bySide(a / 10, b / 10)))

export const isSoldAsTile = (a: number, b: number, metric: boolean): boolean =>
  isTypicalTile(a, b) || (metric && TILE_CM.has(bySide(a, b)))

/** Sizes underlayment is sold in, in feet, shorter side first; and boards told in inches. Common practice, no source. */
export const SHEETS = new Set('2x3 2x4 3x4 3x5 3x6 4x4 4x8 4x5 4x6 36x60 48x96 24x48 36x48 48x48'.split(' '))
