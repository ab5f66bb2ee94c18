/** Starts to try where walls are slanted to the pattern, and the climb from the best of them.
 *
 *  Along a slanted wall the cuts go by where its line lies between the tiles' corners. Where those corners lie on lines of an
 *  even spacing (squares on a 45) the starts at which something changes are few: a wall on such a line, half way between two,
 *  or two opposite walls alike. Elsewhere corners lie ever denser and a spread of starts stands for them all. */
import type { Point } from '../floor/rings.ts'
import type { Walls } from './clip.ts'
import type { Family } from './lattice.ts'
import { wrap } from './random.ts'

/** Lines across which starts are told: a unit vector, and the places on it to bring the origin to. */
export type Direction = { readonly u: number; readonly v: number; readonly places: readonly number[] }

/** Corners on more than so many lines to a module are as good as everywhere. */
const MOST_PARTS = 4
const MOST_PLACES = 9
/** Directions looked at, the longest walls' first. */
const MOST_DIRECTIONS = 3
/** A wall leaning less than this is square to an axis [mm over its run]. */
const SQUARE = 1e-6

type Seen = { u: number; v: number; lengthMm: number; at: number[] }

/** The directions of slanted walls whose lines of corners are evenly spaced, longest walls first. */
export function slantedDirections(walls: Walls, { a, b, insetU, insetV }: Family): Direction[] {
  const seen: Seen[] = []
  for (let w = 0; w < walls.u0.length; w++) {
    const [du, dv] = [walls.u1[w]! - walls.u0[w]!, walls.v1[w]! - walls.v0[w]!]
    const lengthMm = Math.hypot(du, dv)
    if (Math.abs(du) <= SQUARE * lengthMm || Math.abs(dv) <= SQUARE * lengthMm) continue
    // One way round for opposite walls.
    const flip = dv < 0 ? -1 : 1
    const [u, v] = [(flip * dv) / lengthMm, (-flip * du) / lengthMm]
    const at = u * (walls.u0[w]! - insetU) + v * (walls.v0[w]! - insetV)
    const known = seen.find((one) => Math.abs(one.u * v - one.v * u) < 1e-9)
    if (known) {
      known.lengthMm += lengthMm
      known.at.push(at)
    } else seen.push({ u, v, lengthMm, at: [at] })
  }
  seen.sort((p, q) => q.lengthMm - p.lengthMm)
  return seen.slice(0, MOST_DIRECTIONS).flatMap((one): Direction[] => {
    const spacing = spacingOf(a * one.u, b * Math.abs(one.v))
    if (spacing === null) return []
    // Tiles' corners lie off their modules' by their insets.
    const off = insetU * one.u + insetV * Math.abs(one.v)
    const places = one.at.flatMap((at, k) => [
      ...one.at.slice(0, k).flatMap((other) => [(at + other) / 2, (at + other + spacing) / 2]),
      ...[at - off, at + off, at + spacing / 2],
    ])
    const once = new Map(places.map((x) => [Math.round(wrap(x, spacing) * 10), wrap(x, spacing)]))
    return [{ u: one.u, v: one.v, places: [...once.values()].slice(0, MOST_PLACES) }]
  })
}

/** The spacing of lines through corners that lie p and q apart along two axes: null where they have no common measure. */
function spacingOf(p: number, q: number): number | null {
  for (let parts = 1; parts <= MOST_PARTS; parts++) {
    const measure = p / parts
    const others = q / measure
    if (Math.abs(others - Math.round(others)) < 1e-6 && Math.round(others) >= 1) return measure
  }
  return null
}

/** Origins at which two directions have each a place of theirs; two level ones have been tried as such. */
export function crossingOrigins(slanted: readonly Direction[], level: readonly Direction[]): Point[] {
  const found: Point[] = []
  slanted.forEach((one, k) => {
    for (const other of [...slanted.slice(k + 1), ...level]) {
      const turn = one.u * other.v - one.v * other.u
      if (Math.abs(turn) < 1e-6) continue
      for (const x of one.places)
        for (const y of other.places) found.push([(x * other.v - y * one.v) / turn, (y * one.u - x * other.u) / turn])
    }
  })
  return found
}

/** Origins spread evenly over a repeat, n each way, from one that is good already: its own rows and columns are among them. */
export const spreadOrigins = (from: Point, repeat: Point, n: number): Point[] =>
  Array.from(
    { length: n * n },
    (_, k): Point => [from[0] + ((k % n) * repeat[0]) / n, from[1] + (Math.floor(k / n) * repeat[1]) / n],
  )

const AROUND = [-1, 0, 1].flatMap((p) => [-1, 0, 1].map((q): Point => [p, q])).filter(([p, q]) => p !== 0 || q !== 0)
/** Climbs go from so many starts. */
const MOST_CLIMBS = 10

export type Climbing<T extends object> = {
  /** The layout at an origin; null where there is none. */
  readonly at: (u: number, v: number) => T | null
  readonly originOf: (one: T) => Point
  /** Below zero where the first is the better. */
  readonly compare: (p: T, q: T) => number
  /** Nothing better is wished for. */
  readonly isDone: (one: T) => boolean
}

/** Moves about the best starts by steps that shrink to the least, as long as layouts may be spent. `from` holds the
 *  best first. */
export function climbed<T extends object>(
  from: readonly T[],
  { at, originOf, compare, isDone }: Climbing<T>,
  stepMm: Point,
  leastStepMm: number,
  lays: number,
): T {
  let left = lays
  let best = from[0]!
  for (const start of from.slice(0, MOST_CLIMBS)) {
    let here = start
    for (let share = 1; share * Math.min(...stepMm) > leastStepMm && left > 0; share /= 2) {
      if (isDone(best)) return best
      for (const [p, q] of AROUND) {
        const [u, v] = originOf(here)
        const tried = at(u + p * share * stepMm[0], v + q * share * stepMm[1])
        left--
        if (tried !== null && compare(tried, here) < 0) here = tried
      }
    }
    if (compare(here, best) < 0) best = here
  }
  return best
}
