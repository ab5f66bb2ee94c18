/** What goes with underlayment: counts from a bare area, tape, fasteners, the fill of a membrane's cavities. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

export const FLOOR_AREA: Range = { field: 'area', unit: 'm2', min: 0.01, max: 100_000 }
export const ALLOWANCE: Range = { field: 'allowance', unit: '%', min: 0, max: 50 }
export const PIECE_AREA: Range = { field: 'sheet-area', unit: 'm2', min: 0.01, max: 500 }
export const FASTENER_SPACING: Range = { field: 'fastener-spacing', unit: 'mm', min: 50, max: 600 }

/** Rounding noise must not buy a piece. */
const up = (n: number): number => Math.ceil(n - 1e-9)

/** Sheets or rolls for a floor of which only the area is known, at least the area's own.
 *  @param areaM2  FLOOR_AREA  @param pieceM2  PIECE_AREA, one sheet or roll  @param allowancePct  ALLOWANCE, for cuts and laps
 *  @problem out-of-range
 *  @source arithmetic; the allowance is the caller's
 *  @example 168 sf, rolls of 54 sf, 10 %: 3.42, so 4 rolls */
export function piecesForArea(areaM2: number, pieceM2: number, allowancePct: number): Outcome<number> {
  for (const check of [within(FLOOR_AREA, areaM2), within(PIECE_AREA, pieceM2), within(ALLOWANCE, allowancePct)])
    if (!check.ok) return check
  return fine(up((areaM2 * (1 + allowancePct / 100)) / pieceM2))
}

/** Seam length where only the area is known: each piece shares its edges with its neighbours. [m]
 *  Long rows of L x W pieces have (L + W) / (L W) of seam for each unit of area; the walls' share is taken off.
 *  @param perimeterM  of the floor, null: that of a square of this area
 *  @source geometry: (sum of the pieces' edges - perimeter) / 2
 *  @example 144 sf square, 4 x 4 ft sheets: (9 x 16 - 48) / 2 = 48 ft */
export function seamForArea(areaM2: number, lengthM: number, widthM: number, perimeterM: number | null = null): number {
  const edges = (2 * (lengthM + widthM) * areaM2) / (lengthM * widthM)
  return Math.max(0, (edges - (perimeterM ?? 4 * Math.sqrt(areaM2))) / 2)
}

/** Tape along the seams with something for the ends and overlaps. [m] */
export const tapeForSeam = (seamM: number, allowancePct = 5): number => seamM * (1 + allowancePct / 100)

export type FastenerPattern = {
  /** Along the edges and in the field [mm]. */
  readonly edgeMm: number
  readonly fieldMm: number
  /** How far from the edge the outer row stands [mm]. */
  readonly insetMm: number
}

/** Fasteners in one rectangular piece: a row round the edge, a grid inside it.
 *  @param pattern  FASTENER_SPACING for both spacings; inset less than half the piece
 *  @problem out-of-range
 *  @source geometry of the pattern; the pattern itself is the board's data sheet
 *  @example 3 x 5 ft board, 8 in both ways, 1/2 in from the edge: 9 along the length, 6 along the width, 54 in all */
export function fastenersInPiece(lengthMm: number, widthMm: number, pattern: FastenerPattern): Outcome<number> {
  for (const mm of [pattern.edgeMm, pattern.fieldMm]) {
    const check = within(FASTENER_SPACING, mm)
    if (!check.ok) return check
  }
  if (!(lengthMm > 0 && widthMm > 0))
    return refuse('out-of-range', { field: 'sheet-length', value: lengthMm, min: 1, max: 5000, unit: 'mm' })
  const inset = Math.min(pattern.insetMm, lengthMm / 2, widthMm / 2)
  const long = lengthMm - 2 * inset
  const wide = widthMm - 2 * inset
  const gaps = (mm: number, spacing: number) => Math.max(1, up(mm / spacing))
  const round = 2 * (gaps(long, pattern.edgeMm) + gaps(wide, pattern.edgeMm))
  const inside = (gaps(long, pattern.fieldMm) - 1) * (gaps(wide, pattern.fieldMm) - 1)
  return fine(round + inside)
}

/** Mortar that fills the cavities of an uncoupling membrane, flush with its top. [L]
 *  Bought on top of the tile's own bed and kept apart from it.
 *  @param litresPerM2  the sheet's cavity volume, 0.1 to 10
 *  @problem out-of-range
 *  @source the membrane's data sheet */
export function cavityFill(areaM2: number, litresPerM2: number): Outcome<number> {
  const area = within(FLOOR_AREA, areaM2)
  if (!area.ok) return area
  const fill = within({ field: 'cavity-fill', unit: 'L/m2', min: 0.1, max: 10 }, litresPerM2)
  return fill.ok ? fine(areaM2 * litresPerM2) : fill
}
