/** Is the room square: from two diagonals, or from 3-4-5 marks. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

export const ROOM_SIDE: Range = { field: 'side', unit: 'mm', min: 100, max: 100_000 }

export type Squareness = {
  /** How far the corner is off 90 degrees; positive where it is wider than square. */
  readonly offDeg: number
  /** How far a line square to the first side runs out over the second. [mm] */
  readonly taperMm: number
}

/** From both sides and both diagonals, opposite walls taken as equal.
 *  d1² - d2² = 4 a b cos(angle), an identity of the parallelogram.
 *  @param aMm, bMm the sides, ROOM_SIDE
 *  @problem out-of-range, bad-floor (the diagonals cannot belong to these sides) */
export function fromDiagonals(aMm: number, bMm: number, d1Mm: number, d2Mm: number): Outcome<Squareness> {
  for (const side of [aMm, bMm]) {
    const good = within(ROOM_SIDE, side)
    if (!good.ok) return good
  }
  const meant = Math.hypot(aMm, bMm)
  const measured = Math.sqrt((d1Mm ** 2 + d2Mm ** 2) / 2)
  // Tape and walls are never exact: the two diagonals must agree with the sides to 3 %.
  if (!(Math.abs(measured - meant) <= 0.03 * meant)) return refuse('bad-floor', { why: 'diagonals' })
  return fromCosine((d1Mm ** 2 - d2Mm ** 2) / (4 * aMm * bMm), bMm)
}

/** From marks on two walls and the distance between them: 3-4-5 and its multiples.
 *  @param aMm, bMm along the walls from the corner; acrossMm between the marks
 *  @param runMm how long the second wall is, for the taper */
export function fromMarks(aMm: number, bMm: number, acrossMm: number, runMm: number = bMm): Outcome<Squareness> {
  for (const side of [aMm, bMm, acrossMm, runMm]) {
    const good = within(ROOM_SIDE, side)
    if (!good.ok) return good
  }
  const cosine = (acrossMm ** 2 - aMm ** 2 - bMm ** 2) / (2 * aMm * bMm)
  return Math.abs(cosine) <= 0.3 ? fromCosine(cosine, runMm) : refuse('bad-floor', { why: 'diagonals' })
}

/** What marks at 3 and 4 units must measure across, for any two legs. [mm] */
export const squareAcrossMm = (aMm: number, bMm: number): number => Math.hypot(aMm, bMm)

function fromCosine(cosine: number, runMm: number): Outcome<Squareness> {
  if (!(Math.abs(cosine) <= 0.3)) return refuse('bad-floor', { why: 'diagonals' })
  return fine({ offDeg: (Math.asin(cosine) * 180) / Math.PI, taperMm: Math.abs(runMm * cosine) })
}
