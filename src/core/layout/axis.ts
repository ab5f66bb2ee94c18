/** One axis of a lattice against the walls square to it: how wide each wall's cut comes out, and the best place to start.
 *  The order of wishes: no piece under the limit; full tiles and hidden cuts where the crew names walls; cuts of at least half
 *  a tile; balanced; fewest tiles; then the larger margin. A named wall comes before the half-tile rule because the crew asked. */
import { wrap } from './random.ts'

/** A wall square to the axis. */
export type AxisWall = {
  /** Its place on the axis [mm]. */
  readonly at: number
  /** 1 where the floor lies beyond it (a low wall), -1 where before it. */
  readonly side: 1 | -1
  /** The outermost wall of its side. */
  readonly outer: boolean
  /** Bounds a hole: kept clear of slivers, but not balanced. */
  readonly ofHole: boolean
  readonly wantFull: boolean
  readonly mayHide: boolean
}

export type Axis = {
  /** Tile's extent and module on this axis [mm]. */
  readonly tileMm: number
  readonly moduleMm: number
  /** How far rows are moved, one of each kind; [0] where all rows agree [mm]. */
  readonly shifts: readonly number[]
  readonly walls: readonly AxisWall[]
  /** No piece narrower than this, where the room allows [mm]. */
  readonly leastMm: number
}

/** How a start at `originMm` does, in the order of the wishes: less is better, first things first. */
export type AxisScore = {
  readonly originMm: number
  /** The narrowest cut; the whole tile's extent where nothing is cut [mm]. */
  readonly worstMm: number
  readonly marks: readonly number[]
  /** How much less, and how much more, the room may measure before a promise breaks [mm]. */
  readonly lessMm: number
  readonly moreMm: number
}

/** A cut this near to whole, or to nothing, is none [mm]: tape and chalk are no finer. */
const NONE_MM = 0.01
/** Starts looked at, at most; fewer where there are many walls and kinds of row. */
const MOST_STARTS = 600
const MOST_CUTS = 300_000
/** Starts drawn, doubles with them. */
const MOST_DRAWN = 20_000

/** Width of the piece at a wall where rows are moved by `shift`; the whole tile where nothing is cut. [mm] */
export function cutAt(axis: Axis, wall: AxisWall, originMm: number, shift: number): number {
  const x = wrap(wall.at - originMm - shift, axis.moduleMm)
  const cut = wall.side === 1 ? axis.tileMm - x : x
  if (cut >= axis.tileMm - NONE_MM || cut <= NONE_MM) return axis.tileMm
  return cut
}

/** How far a high wall lies beyond the last module's start: with the line snapped from the low wall, this is what changes when
 *  the room measures otherwise. [mm] */
function reachOf(axis: Axis, wall: AxisWall, originMm: number, shift: number): number {
  const x = wrap(wall.at - originMm - shift, axis.moduleMm)
  return x <= NONE_MM ? axis.moduleMm : x
}

/** Scores one start. */
export function scoreStart(axis: Axis, originMm: number): AxisScore {
  const { tileMm, moduleMm, shifts, walls, leastMm } = axis
  const named = walls.some((wall) => wall.wantFull || wall.mayHide)
  let worstMm = tileMm
  let [notFull, underHalf, uneven, tiles] = [0, 0, 0, 0]
  let nearest = moduleMm
  let far = 0
  for (const wall of walls) {
    let least = tileMm
    for (const shift of shifts) {
      const cut = cutAt(axis, wall, originMm, shift)
      if (cut < least) least = cut
      if (wall.wantFull && cut < tileMm) notFull += 1 / shifts.length
      if (wall.side === -1) {
        const reach = reachOf(axis, wall, originMm, shift)
        if (reach > far) far = reach
        if (reach < nearest) nearest = reach
      }
    }
    if (least < worstMm) worstMm = least
    if (!wall.ofHole && !wall.mayHide && least < tileMm / 2 - NONE_MM) underHalf++
  }
  const low = walls.find((wall) => wall.outer && wall.side === 1)
  const high = walls.find((wall) => wall.outer && wall.side === -1)
  if (low && high)
    for (const shift of shifts) {
      const [c, d] = [cutAt(axis, low, originMm, shift), cutAt(axis, high, originMm, shift)]
      if (!named) uneven += Math.abs(c - d) / shifts.length
      // Inner span between the cuts, in modules; a whole tile at a wall is one of them.
      tiles += Math.round((high.at - low.at - c - d + 2 * tileMm - axis.tileMm) / moduleMm + 1) / shifts.length
    }
  const half = tileMm / 2
  const promise = worstMm >= half - NONE_MM ? half : worstMm >= leastMm - NONE_MM ? leastMm : 0
  const lessMm = Math.max(0, nearest - promise)
  const moreMm = Math.max(0, moduleMm - far)
  const sliver = worstMm < leastMm - NONE_MM ? 1 + leastMm - worstMm : 0
  const marks = [sliver, notFull, underHalf, uneven, tiles, -Math.min(lessMm, moreMm)].map(hundredths)
  return { originMm: wrap(originMm, moduleMm), worstMm, marks, lessMm, moreMm }
}

const hundredths = (value: number): number => Math.round(value * 100)

/** Starts at which something changes for a wall or a pair of walls: whole, half or least at a wall, even between two. */
function* starts({ tileMm, moduleMm, shifts, walls, leastMm }: Axis): Generator<number> {
  for (const wall of walls)
    for (const shift of shifts)
      for (const cut of [tileMm, tileMm / 2, leastMm])
        yield wall.side === 1 ? wall.at - shift - (tileMm - cut) : wall.at - shift - cut
  for (const low of walls)
    for (const high of walls) {
      if (low.side !== 1 || high.side !== -1) continue
      for (const s of shifts)
        for (const t of shifts) {
          const even = (low.at + high.at - s - t - tileMm) / 2
          yield even
          yield even + moduleMm / 2
        }
    }
}

/** The best starts, best first. */
export function bestStarts(axis: Axis, most: number): AxisScore[] {
  const best: AxisScore[] = []
  const seen = new Set<number>()
  const mostSeen = Math.max(8, Math.min(MOST_STARTS, MOST_CUTS / (1 + axis.walls.length * axis.shifts.length)))
  let drawn = 0
  for (const start of starts(axis)) {
    if (++drawn > MOST_DRAWN) break
    const key = Math.round(wrap(start, axis.moduleMm) * 1000)
    if (seen.has(key)) continue
    seen.add(key)
    if (seen.size > mostSeen) break
    const score = scoreStart(axis, start)
    let at = best.length
    while (at > 0 && compare(score, best[at - 1]!) < 0) at--
    if (at >= most) continue
    best.splice(at, 0, score)
    if (best.length > most) best.pop()
  }
  return best.length > 0 ? best : [scoreStart(axis, 0)]
}

export function compare(p: AxisScore, q: AxisScore): number {
  for (let k = 0; k < p.marks.length; k++) if (p.marks[k] !== q.marks[k]) return p.marks[k]! - q.marks[k]!
  return p.originMm - q.originMm
}
