/** Underlayment in sheets, laid out on the real floor: rows with staggered end joints, gaps, off-cuts reused. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import { type Box, boxOf, type Floor, floorArea } from '../floor/rings.ts'
import { piecesIn, type Stretch, shared, stretchesAlong, totalMm, transposed } from './shape.ts'
import { type Piece, sheetsFor } from './stock.ts'

export const SHEET_LENGTH: Range = { field: 'sheet-length', unit: 'mm', min: 100, max: 5000 }
export const SHEET_GAP: Range = { field: 'sheet-gap', unit: 'mm', min: 0, max: 20 }
/** Beyond this the layout is refused: no crew lays more by hand in one plan. */
const MOST_SHEETS = 20_000

export type SheetPlan = {
  readonly lengthMm: number
  readonly widthMm: number
  readonly gapMm: number
  /** Shift of each row against the one before, as a share of the sheet: 0 to below 1. */
  readonly stagger: number
  readonly kerfMm?: number
  /** Where the panels under it have their joints, if known: lines at first + n x every, across x and across y. */
  readonly under?: { readonly x: Lines | null; readonly y: Lines | null; readonly clearMm: number }
  /** Which way the sheet's length runs; both are tried without it. */
  readonly along?: 'x' | 'y'
}
export type Lines = { readonly firstMm: number; readonly everyMm: number }

export type SheetLayout = {
  readonly sheets: number
  readonly whole: number
  /** Cut pieces, each connected part of its own. */
  readonly cut: number
  /** Pieces that came from another sheet's rest. */
  readonly reused: number
  readonly seamMm: number
  readonly areaMm2: number
  readonly along: 'x' | 'y'
  /** Least distance of a seam from a parallel seam below it [mm]; null where none is known or none runs parallel. */
  readonly clearOfSeamsMm: number | null
  readonly pieces: readonly Piece[]
  readonly places: readonly Box[]
}

/** Sheets laid on the floor with the fewest sheets, then the shortest seams; seams clear of those below come first.
 *  @param floor  first ring the floor, the others holes  [mm]
 *  @param plan   SHEET_LENGTH for both sides, SHEET_GAP, stagger 0 to below 1
 *  @problem out-of-range, bad-floor, too-much-work
 *  @source geometry; stagger and clear seams: common practice, no source
 *  @example 12 x 14 ft with 4 x 4 ft sheets, no gap: 10.5 sheets of area, 11 sheets with the halves reused */
export function laySheets(floor: Floor, plan: SheetPlan): Outcome<SheetLayout> {
  for (const check of [
    within(SHEET_LENGTH, plan.lengthMm),
    within({ ...SHEET_LENGTH, field: 'sheet-width' }, plan.widthMm),
    within(SHEET_GAP, plan.gapMm),
    within({ field: 'stagger', unit: '', min: 0, max: 0.999 }, plan.stagger),
  ])
    if (!check.ok) return check
  const areaMm2 = floorArea(floor)
  if (!(areaMm2 > 0)) return refuse('bad-floor', { why: 'nothing-left' })
  const box = boxOf(floor.rings)
  const cells = ((box.maxX - box.minX) * (box.maxY - box.minY)) / (plan.lengthMm * plan.widthMm)
  if (cells > MOST_SHEETS) return refuse('too-much-work', { what: 'sheets' })
  const ways = plan.along ? [plan.along] : (['x', 'y'] as const)
  const tried = ways.flatMap((along) => candidates(floor, plan, along))
  return fine(tried.reduce((best, next) => (isBetter(next, best, plan.under?.clearMm ?? 0) ? next : best)))
}

function candidates(floor: Floor, plan: SheetPlan, along: 'x' | 'y'): SheetLayout[] {
  const row = plan.widthMm + plan.gapMm
  const unit = plan.lengthMm + plan.gapMm
  const shifts = plan.under ? [0, 0.25, 0.5, 0.75] : [0, 0.5]
  return shifts.flatMap((r) => shifts.map((u) => laidOnce(floor, plan, along, -r * row, -u * unit)))
}

function isBetter(a: SheetLayout, b: SheetLayout, clearMm: number): boolean {
  const clear = (l: SheetLayout) => l.clearOfSeamsMm === null || l.clearOfSeamsMm >= clearMm
  if (clear(a) !== clear(b)) return clear(a)
  return a.sheets === b.sheets ? a.seamMm < b.seamMm - 1e-6 : a.sheets < b.sheets
}

function laidOnce(real: Floor, plan: SheetPlan, along: 'x' | 'y', rowShift: number, unitShift: number): SheetLayout {
  const floor = along === 'x' ? real : transposed(real)
  const under = plan.under && (along === 'x' ? plan.under : { ...plan.under, x: plan.under.y, y: plan.under.x })
  const turned = transposed(floor)
  const uprights = kept((x) => stretchesAlong(turned, x))
  const box = boxOf(floor.rings)
  const { lengthMm, widthMm, gapMm, stagger } = plan
  const pieces: Piece[] = []
  const places: Box[] = []
  let whole = 0
  let seamMm = 0
  let clear = Number.POSITIVE_INFINITY
  for (let row = 0, bottom = box.minY + rowShift; bottom < box.maxY - 1e-6; row++, bottom += widthMm + gapMm) {
    const seamAt = bottom - gapMm / 2
    if (row > 0) {
      const run = totalMm(stretchesAlong(floor, seamAt))
      seamMm += run
      if (run > 0) clear = Math.min(clear, offLines(seamAt, under?.y))
    }
    const first = box.minX + unitShift - ((row * stagger) % 1) * (lengthMm + gapMm)
    const band: Stretch = [row > 0 ? seamAt : box.minY - 1, bottom + widthMm + gapMm / 2]
    for (let left = first; left < box.maxX - 1e-6; left += lengthMm + gapMm) {
      if (left + lengthMm + gapMm <= box.minX + 1e-9) continue
      const at = left - gapMm / 2
      const run = totalMm(shared(uprights(at), [band]))
      seamMm += run
      if (run > 0) clear = Math.min(clear, offLines(at, under?.x))
      const place = { minX: left, minY: bottom, maxX: left + lengthMm, maxY: bottom + widthMm }
      const parts = piecesIn(floor, place)
      if (parts.length) places.push(place)
      for (const part of parts)
        if (part.areaMm2 > lengthMm * widthMm - 1) whole++
        else pieces.push({ lengthMm: part.box.maxX - part.box.minX, widthMm: part.box.maxY - part.box.minY })
    }
  }
  const forCuts = sheetsFor(pieces, { lengthMm, widthMm }, plan.kerfMm ?? 0)
  return {
    sheets: whole + forCuts,
    whole,
    cut: pieces.length,
    reused: pieces.length - forCuts,
    seamMm,
    areaMm2: floorArea(real),
    along,
    clearOfSeamsMm: Number.isFinite(clear) ? clear : null,
    pieces,
    places,
  }
}

/** Distance from a seam to the nearest of the lines below it. [mm] */
function offLines(at: number, lines: Lines | null | undefined): number {
  if (!lines) return Number.POSITIVE_INFINITY
  const into = (((at - lines.firstMm) % lines.everyMm) + lines.everyMm) % lines.everyMm
  return Math.min(into, lines.everyMm - into)
}

/** Staggered rows share their lines every few rows: each is worked out once. */
function kept(work: (x: number) => Stretch[]): (x: number) => Stretch[] {
  const known = new Map<number, Stretch[]>()
  return (x) => {
    const found = known.get(x) ?? work(x)
    known.set(x, found)
    return found
  }
}
