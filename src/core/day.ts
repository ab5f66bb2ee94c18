/** The day's plan: rows split into days by pace, in an order that keeps the way out off fresh tile. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'
import { boxOf, type Floor } from './floor/rings.ts'
import { piecesIn, transposed } from './underlayment/shape.ts'

export const PACE: Range = { field: 'pace', unit: 'm2/day', min: 0.2, max: 500 }
const MOST_ROWS = 5000

/** One row of the layout. */
export type Row = {
  readonly areaM2: number
  readonly clips: number
  /** A movement joint runs along the row's far side: a good place to stop. */
  readonly joint: boolean
}

export type DayPlan = {
  /** Rows by their number in the layout, in the order they are set. */
  readonly rows: readonly number[]
  readonly areaM2: number
  readonly clips: number
  readonly stopsAt: 'end' | 'joint' | 'row'
}

/** The order to set rows in, the door's row last: from the far wall towards the door, and from the other side where rows
 *  lie beyond it. Whoever sets a row walks out over rows not yet set.
 *  @param count  rows, 1 to 5000  @param doorRow  the row at the door, 0 to count - 1
 *  @problem out-of-range
 *  @example 6 rows, door at row 4: 0 1 2 3 5 4 */
export function settingOrder(count: number, doorRow: number): Outcome<number[]> {
  const rows = within({ field: 'rows', unit: '', min: 1, max: MOST_ROWS }, count)
  if (!rows.ok) return rows
  const door = within({ field: 'door-row', unit: '', min: 0, max: count - 1 }, doorRow)
  if (!door.ok) return door
  const before = Array.from({ length: doorRow }, (_, i) => i)
  const beyond = Array.from({ length: count - 1 - doorRow }, (_, i) => count - 1 - i)
  // The longer side first: there the day's first bags are freshest and the walk is longest.
  const [first, second] = before.length >= beyond.length ? [before, beyond] : [beyond, before]
  return fine([...first, ...second, doorRow])
}

/** Rows split into days: each day as many full rows as the pace allows, stopping at a movement joint when one lies in
 *  the last quarter of it.
 *  @param rows  in layout order  @param order  from settingOrder  @param paceM2  PACE, a day's tile
 *  @problem out-of-range, too-much-work, missing
 *  @source arithmetic; stop on a full row or a movement joint: common practice, no source
 *  @example ten rows of 1 m² at 4 m² a day: 4, 4 and 2 rows */
export function splitDays(rows: readonly Row[], order: readonly number[], paceM2: number): Outcome<DayPlan[]> {
  const pace = within(PACE, paceM2)
  if (!pace.ok) return pace
  if (!rows.length) return refuse('missing', { field: 'rows' })
  if (rows.length > MOST_ROWS) return refuse('too-much-work', { what: 'rows' })
  const days: DayPlan[] = []
  for (let at = 0; at < order.length; ) {
    let end = at
    let area = 0
    let jointAt = -1
    while (end < order.length) {
      const row = rows[order[end]!]!
      // One row at least, however long; then no more than the pace.
      if (end > at && area + row.areaM2 > paceM2 + 1e-9) break
      area += row.areaM2
      end++
      if (row.joint && area >= 0.75 * paceM2) jointAt = end
    }
    const stop = end < order.length && jointAt > 0 ? jointAt : end
    const set = order.slice(at, stop)
    days.push({
      rows: set,
      areaM2: set.reduce((sum, i) => sum + rows[i]!.areaM2, 0),
      clips: set.reduce((sum, i) => sum + rows[i]!.clips, 0),
      stopsAt: stop === order.length ? 'end' : rows[set.at(-1)!]!.joint ? 'joint' : 'row',
    })
    at = stop
  }
  return fine(days)
}

const HALVINGS = 20

/** The same number of days as splitDays, none much fuller than the others: the least pace that needs no day more.
 *  @problem as splitDays
 *  @example eleven rows of 1 m² at 5 m² a day: 4, 4 and 3 rows in place of 5, 5 and 1 */
export function evenDays(rows: readonly Row[], order: readonly number[], paceM2: number): Outcome<DayPlan[]> {
  const plain = splitDays(rows, order, paceM2)
  if (!plain.ok) return plain
  let best = plain.value
  let [low, high] = [paceM2 / 2, paceM2]
  for (let i = 0; i < HALVINGS; i++) {
    const pace = (low + high) / 2
    const tried = splitDays(rows, order, Math.max(PACE.min, pace))
    if (tried.ok && tried.value.length <= plain.value.length) {
      best = tried.value
      high = pace
    } else low = pace
  }
  return fine(best)
}

/** Floor area in each row of a given pitch across the floor. [m²]
 *  @param along  the way the rows run
 *  @problem bad-floor, too-much-work
 *  @source geometry (general polygon clipping) */
export function rowAreas(floor: Floor, pitchMm: number, along: 'x' | 'y'): Outcome<number[]> {
  if (!floor.rings.length || !(pitchMm > 0)) return refuse('bad-floor', { why: 'nothing-left' })
  const laid = along === 'x' ? floor : transposed(floor)
  const box = boxOf(laid.rings)
  const count = Math.ceil((box.maxY - box.minY) / pitchMm - 1e-9)
  if (count > MOST_ROWS) return refuse('too-much-work', { what: 'rows' })
  return fine(
    Array.from({ length: count }, (_, i) => {
      const bottom = box.minY + i * pitchMm
      const parts = piecesIn(laid, {
        minX: box.minX - 1,
        maxX: box.maxX + 1,
        minY: bottom,
        maxY: bottom + pitchMm,
      })
      return parts.reduce((sum, part) => sum + part.areaMm2, 0) / 1e6
    }),
  )
}

/** A day's bags: its share of the job's powder, in whole bags opened. */
export const bagsADay = (day: DayPlan, kgPerM2: number, bagKg: number): number =>
  Math.ceil((day.areaM2 * kgPerM2) / bagKg - 1e-9)
