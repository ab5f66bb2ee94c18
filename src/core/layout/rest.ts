/** What of a floor is not yet set, how far the tiles on hand reach in it, and until when a saving still helps. */
import { type Ring, ringArea } from '../floor/rings.ts'
import type { Place, SetOrder } from './rows.ts'

/** How much of a floor is set, in the terms it was told in; `toGo` counts rows from the last one. */
export type SetSoFar =
  | { readonly in: 'rows-to-go' | 'places'; readonly n: number }
  /** Full rows, and places of the next ones. */
  | { readonly in: 'rows-set'; readonly n: number; readonly more?: number }
  | { readonly in: 'share'; readonly share: number }

/** The rows that are not set, the first of them maybe begun. */
export type Rest = {
  readonly done: readonly Place[]
  readonly rows: readonly (readonly Place[])[]
  /** The number of the first of `rows`, counted from 1 at the first wall. */
  readonly firstRow: number
  readonly totalRows: number
  /** Rows told beyond those the layout has. */
  readonly beyond: number
}

/** Tiles that a stretch of places takes, whole ones and those for its cuts. */
export type Cost = (rows: readonly (readonly Place[])[]) => number

const faceMm2 = ({ outlinesMm }: Place): number =>
  outlinesMm.reduce((sum, ring: Ring) => sum + Math.abs(ringArea(ring)), 0)

/** Parts a floor into what is set and what is not. A row that is only begun stays in the rest with its open places. */
export function restAfter(order: SetOrder, set: SetSoFar): Rest {
  const { rows } = order
  const totalRows = rows.length
  const told = set.in === 'rows-set' || set.in === 'rows-to-go' ? Math.max(0, Math.round(set.n)) : 0
  const beyond = Math.max(0, told - totalRows)
  const whole = (n: number): Rest => ({
    done: rows.slice(0, n).flat(),
    rows: rows.slice(n),
    firstRow: n + 1,
    totalRows,
    beyond,
  })
  if (set.in === 'rows-set') {
    const full = Math.min(told, totalRows)
    return set.more ? begun(rows, rows.slice(0, full).flat().length + set.more) : whole(full)
  }
  if (set.in === 'rows-to-go') return whole(totalRows - Math.min(told, totalRows))
  return begun(rows, set.in === 'share' ? placesIn(rows, set.share) : set.n)
}

/** The places that a share of the tiles' face fills. */
function placesIn(rows: SetOrder['rows'], share: number): number {
  const faces = rows.flat().map(faceMm2)
  let left = share * faces.reduce((sum, mm2) => sum + mm2, 0)
  let n = 0
  while (n < faces.length && left >= faces[n]! - 1e-6) left -= faces[n++]!
  return n
}

function begun(rows: SetOrder['rows'], places: number): Rest {
  const count = Math.max(0, Math.round(places))
  let left = count
  let row = 0
  while (row < rows.length && left >= rows[row]!.length) left -= rows[row++]!.length
  const open = rows[row]?.slice(left)
  return {
    done: rows.flat().slice(0, count),
    rows: open ? [open, ...rows.slice(row + 1)] : [],
    firstRow: row + 1,
    totalRows: rows.length,
    beyond: 0,
  }
}

/** How many of the rows a number of tiles finishes, in order. */
export function rowsReached(rows: Rest['rows'], have: number, cost: Cost): number {
  let [low, high] = [0, rows.length]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (cost(rows.slice(0, middle)) <= have) low = middle
    else high = middle - 1
  }
  return low
}

/** The last row before which another way may begin so that the whole still takes no more than `atMost` tiles: rows before it
 *  the usual way, rows from it on the other. Its index in `rows`, or null where even the first is too late. */
export function latestRow(rows: Rest['rows'], usual: Cost, other: Cost, atMost: number): number | null {
  const takes = (k: number): number => usual(rows.slice(0, k)) + other(rows.slice(k))
  if (rows.length === 0 || takes(0) > atMost) return null
  let [low, high] = [0, rows.length - 1]
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if (takes(middle) <= atMost) low = middle
    else high = middle - 1
  }
  return low
}
