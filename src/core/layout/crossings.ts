/** Starts to try where walls are slanted to the pattern.
 *
 *  Along a slanted wall the cuts go by where its line lies between the tiles' corners. Where those corners lie on lines of an
 *  even spacing (squares on a 45) the starts at which something changes are few: a wall on such a line, half way between two,
 *  or two opposite walls alike. Elsewhere corners lie ever denser and a spread of starts stands for them all. */
import type { Point } from '../floor/rings.ts'
import type { Walls } from './box-walls.ts'
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

/** Origins spread over a repeat, about a step apart each way, from one that is good already: its own row and column are among
 *  them. */
export function spreadOrigins(from: Point, repeat: Point, stepMm: number): Point[] {
  const [n, m] = [Math.max(2, Math.round(repeat[0] / stepMm)), Math.max(2, Math.round(repeat[1] / stepMm))]
  return Array.from(
    { length: n * m },
    (_, k): Point => [from[0] + ((k % n) * repeat[0]) / n, from[1] + (Math.floor(k / n) * repeat[1]) / m],
  )
}

/** Corners of the room that are asked about. */
const MOST_CORNERS = 8

/** Origins that bring two corners of the room, or one twice, on tiles' edges: one by its u, one by its v; or one of them beside
 *  a place known to be good on the other axis. */
export function cornerOrigins(
  { u0, v0 }: Walls,
  { insetU, insetV, tileA, tileB }: Family,
  level: readonly Direction[],
): Point[] {
  const edges = (at: Float64Array, inset: number, tile: number): number[] => {
    const corners = [...at.subarray(0, MOST_CORNERS)]
    return [
      ...new Set(corners.flatMap((x) => [x - inset, x - inset - tile].map((place) => Math.round(place * 100) / 100))),
    ]
  }
  const knownOn = (u: number): number[] => level.flatMap((one) => (one.u === u ? one.places : []))
  const us = [...knownOn(1), ...edges(u0, insetU, tileA)]
  const vs = [...knownOn(0), ...edges(v0, insetV, tileB)]
  return us.flatMap((u) => vs.map((v): Point => [u, v]))
}
