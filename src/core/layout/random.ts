/** A fixed sequence of plank rows: it looks random and is the same at every run. */
import { movedRing, type Ring } from '../floor/rings.ts'

/** Least stagger between end joints of neighbouring rows [mm]: 6 in; common practice, no source. */
export const USUAL_STAGGER_MM = 152.4
/** A side longer than this keeps its offset to a third [mm]: 15 in, ANSI A108.02 (reported). */
export const LONG_SIDE_MM = 381
/** The greatest offset of a long side, as a share: ANSI A108.02 (reported). */
export const LONG_SIDE_SHARE = 0.33

/** What the floor puts into the sequence: its shape, wherever it lies. */
export function seedOf(rings: readonly Ring[]): number {
  const [x, y] = rings[0]?.[0] ?? [0, 0]
  let hash = 0x811c9dc5
  for (const ring of rings)
    for (const point of movedRing(ring, -x, -y))
      for (const value of point) hash = mix(hash ^ (Math.round(value * 10) | 0))
  return hash
}

const mix = (n: number): number => {
  let h = Math.imul(n ^ (n >>> 16), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return (h ^ (h >>> 16)) >>> 0
}

/** The room's ends as its rows meet them: from low to high along the length [mm]. */
export type Ends = { readonly low: number; readonly high: number }

/** A row's end piece is to be no narrower than this [mm]: 2 in; common practice, no source. */
const LEAST_END_MM = 50.8
const MOST_DRAWS = 24

/** Where planks begin in each of `rows` rows, in 0 to module [mm]. Neighbours are at least `leastMm` apart and, where the tile
 *  is longer than 15 in, at most a third of the length; a row meets neither the joint two rows off (an H) nor goes on in equal
 *  steps (a stair), and ends in no sliver at either wall. Of 24 candidates drawn from the row's own numbers the first that
 *  keeps all is taken, else the best. */
export function plankShifts(
  rows: number,
  seed: number,
  lengthMm: number,
  moduleMm: number,
  leastMm: number,
  ends: Ends | null,
): Float64Array {
  const mostMm = lengthMm > LONG_SIDE_MM ? LONG_SIDE_SHARE * lengthMm : moduleMm / 2
  const least = Math.min(leastMm, 0.9 * mostMm)
  const apart = Math.min(least / 2, 50)
  const shifts = new Float64Array(rows)
  for (let row = 0; row < rows; row++) {
    let best = -1
    for (let tried = 0; tried < MOST_DRAWS && best < 1; tried++) {
      const draw = mix(seed ^ mix(row * 64 + tried))
      const part = (draw >>> 1) / 2 ** 31
      const step = (draw & 1 ? 1 : -1) * (least + part * (mostMm - least))
      const shift = row === 0 ? part * moduleMm : wrap(shifts[row - 1]! + step, moduleMm)
      const clear = row < 2 ? 1 : keeping(shifts, row, shift, step, moduleMm, apart)
      // Joints that line up show more than a narrow end: they weigh first.
      const score = Math.min(1, clear) * 0.75 + 0.25 * endsKept(shift, lengthMm, moduleMm, ends)
      if (score > best) {
        best = score
        shifts[row] = shift
      }
    }
  }
  return shifts
}

/** 1 when both end pieces of a row are wide enough, else how nearly. */
function endsKept(shift: number, lengthMm: number, moduleMm: number, ends: Ends | null): number {
  if (ends === null) return 1
  const first = lengthMm - wrap(ends.low - shift, moduleMm)
  const last = wrap(ends.high - shift, moduleMm)
  const least = Math.min(LEAST_END_MM, lengthMm / 3)
  const end = (mm: number) => (mm <= 0.01 ? 1 : Math.min(1, mm / least))
  return Math.min(end(first), end(last))
}

/** 1 when a row keeps clear of H-joints and stairs by `apart`, else how nearly it does. */
function keeping(
  shifts: Float64Array,
  row: number,
  shift: number,
  step: number,
  moduleMm: number,
  apart: number,
): number {
  const h = around(shift - shifts[row - 2]!, moduleMm)
  const before = wrap(shifts[row - 1]! - shifts[row - 2]! + moduleMm / 2, moduleMm) - moduleMm / 2
  return Math.min(1, h / apart, Math.abs(step - before) / (apart / 2))
}

export const wrap = (value: number, module: number): number => value - Math.floor(value / module) * module
/** Distance round a module. */
export const around = (value: number, module: number): number => {
  const w = wrap(value, module)
  return Math.min(w, module - w)
}
