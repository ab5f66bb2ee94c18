/** Where walls are slanted, or the best start for square walls still leaves a sliver, many starts are looked at: where two
 *  slanted walls change at once, where corners of the room lie on joints, and a close grid over the repeat. The best that lie
 *  apart are climbed from, and the best of these are laid. */
import type { Point } from '../floor/rings.ts'
import { type AxisScore, bestStarts } from './axis.ts'
import { BestApart, climbed } from './climb.ts'
import { cornerOrigins, crossingOrigins, type Direction, slantedDirections, spreadOrigins } from './crossings.ts'
import { Narrowest } from './narrowest.ts'
import type { Laid } from './prepare.ts'
import { isInRows, type LayoutSpec } from './spec.ts'
import {
  type Attempt,
  type Axes,
  costOf,
  halfOf,
  hasSquareWalls,
  laysFor,
  leastOf,
  lessOf,
  marksOf,
  startAt,
  type Tried,
} from './tries.ts'

/** Meetings that the looks at starts may cost, if none ended early: most do. */
const MEETINGS_TO_LOOK = 120_000
const MOST_LOOKS = 2_304
/** Climbs go from so many starts, each for so many looks; so many of the tops are laid. */
const MOST_CLIMBS = 10
const MOST_TO_CLIMB = 300
const MOST_LAID = 6
/** Slots are looked for on the whole grid, hills on one so many times wider. */
const WIDER = 1.5
/** Slots looked into, by so many places to a step. */
const MOST_SLOTS = 12
const FINE = 3
const LOOKS_TO_A_SLOT = 100
/** No slot is narrower: a corner of a tile cut off by so much is more than none [mm]. */
const CLOSEST_MM = 3
const LEAST_STEP_MM = 0.05
/** Looks and layouts part by no more than this, or the layouts are climbed from [mm]. */
const SAME_MM = 0.02
/** Marks are told in hundredths [mm]. */
const NONE_MM = 0.005
/** Laid starts to climb from where looking did not tell, and the spread before. */
const MOST_LAID_CLIMBS = 3
/** Places on an axis with square walls. */
const MOST_PLACES = 5

type Marked = { readonly marks: readonly number[] }
type Looked = { readonly u: AxisScore; readonly v: AxisScore; readonly narrowestMm: number; readonly marks: number[] }

const originOf = ({ u, v }: { readonly u: AxisScore; readonly v: AxisScore }): Point => [u.originMm, v.originMm]
const compare = (p: Marked, q: Marked): number => lessOf(p.marks, q.marks)

/** @param from  layouts tried already, the best first
 *  @param repeat  how far u and v run until the pattern repeats [mm] */
export function explored(
  from: readonly Tried[],
  attempt: Attempt,
  axes: Axes,
  ready: Laid,
  spec: LayoutSpec,
  repeat: Point,
): Tried {
  const square = hasSquareWalls(axes)
  const isDone = ({ marks }: Marked): boolean => marks[0] === 0 && (square || marks[1] === 0)
  if (isDone(from[0]!)) return from[0]!
  const at = (u: number, v: number): Tried | null => {
    const tried = attempt(startAt(axes[0], u), startAt(axes[1], v))
    return tried.ok ? tried.value : null
  }
  const lays = laysFor(ready, spec)
  const stepMm = stepFor(repeat, Math.min(64, lays / 3))
  // Random rows lie otherwise at each start: only layouts tell.
  const tops = spec.pattern.kind === 'random' ? null : lookedUp(axes, ready, spec, repeat, isDone, originOf(from[0]!))
  const laid = [...from]
  for (const [u, v] of tops?.map(originOf) ?? spreadOrigins(originOf(from[0]!), repeat, stepMm)) {
    const tried = at(u, v)
    if (tried) laid.push(tried)
  }
  laid.sort(compare)
  const best = laid[0]!
  const asLooked = tops !== null && (best.layout.smallestCutMm ?? Infinity) >= tops[0]!.narrowestMm - SAME_MM
  if (asLooked || isDone(best)) return best
  return laid
    .slice(0, MOST_LAID_CLIMBS)
    .map((one) =>
      climbed(one, { at, originOf, compare, isDone }, stepMm / 2, LEAST_STEP_MM, lays / (2 * MOST_LAID_CLIMBS)),
    )
    .sort(compare)[0]!
}

/** The best starts by the narrowest piece they would leave, climbed to. */
function lookedUp(
  axes: Axes,
  ready: Laid,
  spec: LayoutSpec,
  repeat: Point,
  isDone: (one: Marked) => boolean,
  around: Point,
): readonly Looked[] {
  const square = hasSquareWalls(axes)
  const narrowest = new Narrowest(ready, !isInRows(spec.pattern))
  // Nothing wider than this makes a start better.
  const fullMm = square ? leastOf(axes) : halfOf(axes)
  const look = (uMm: number, vMm: number, than: Looked | null, slackMm = 0): Looked | null => {
    const [u, v] = [startAt(axes[0], uMm), startAt(axes[1], vMm)]
    const enoughMm = than === null ? 0 : Math.min(fullMm, than.narrowestMm) - NONE_MM
    const narrowestMm = narrowest.at(uMm, vMm, Math.min(u.worstMm, v.worstMm), enoughMm, slackMm)
    return narrowestMm < enoughMm ? null : { u, v, narrowestMm, marks: marksOf(narrowestMm, 0, u, v, axes) }
  }
  const looks = Math.max(16, Math.min(MOST_LOOKS, MEETINGS_TO_LOOK / costOf(ready, spec)))
  const stepMm = Math.max(CLOSEST_MM, stepFor(repeat, looks))
  const kept = new BestApart<Looked>(MOST_CLIMBS, repeat, 1.5 * stepMm, { originOf, compare })
  const level = axes.flatMap((axis, k): Direction[] =>
    axis.walls.length > 0
      ? [{ u: 1 - k, v: k, places: bestStarts(axis, MOST_PLACES).map((start) => start.originMm) }]
      : [],
  )
  const family = ready.lattice.families[0]!
  const critical = [
    ...crossingOrigins(slantedDirections(ready.walls, family), level),
    ...cornerOrigins(ready.walls, family, level),
  ].slice(0, looks)
  for (const [u, v] of [...critical, ...spreadOrigins(around, repeat, WIDER * stepMm)]) {
    const one = look(u, v, kept.last)
    if (one) kept.take(one)
  }
  // Starts at which walls run through corners of tiles lie in slots narrower than the grid: found by looking with slack first.
  const slotted = new BestApart<Looked>(MOST_SLOTS, repeat, stepMm, { originOf, compare })
  const slackMm = stepMm / 2
  for (const [u, v] of spreadOrigins(around, repeat, stepMm)) {
    const one = look(u, v, slotted.last, slackMm)
    if (one) slotted.take(one)
  }
  for (const slot of slotted.best.slice(0, looks / LOOKS_TO_A_SLOT))
    for (const [u, v] of finely(originOf(slot), stepMm)) {
      const one = look(u, v, kept.last)
      if (one) kept.take(one)
    }
  return kept.best
    .map((one) =>
      climbed(
        one,
        { at: look, originOf, compare, isDone },
        stepMm / 2,
        LEAST_STEP_MM,
        Math.min(MOST_TO_CLIMB, looks / 4),
      ),
    )
    .sort(compare)
    .slice(0, MOST_LAID)
}

/** Places about one, a step each way. */
const finely = ([u, v]: Point, stepMm: number): Point[] => {
  const shares = Array.from({ length: 2 * FINE + 1 }, (_, k) => k / FINE - 1)
  return shares.flatMap((p) => shares.map((q): Point => [u + p * stepMm, v + q * stepMm]))
}

/** How far apart so many places over a repeat lie. [mm] */
const stepFor = (repeat: Point, places: number): number => Math.sqrt((repeat[0] * repeat[1]) / Math.max(4, places))
