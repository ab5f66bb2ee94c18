/** The start line: which origin gives the best layout, what it promises, and where to snap it from real walls. */
import { fine, type Outcome, within } from '../../problem.ts'
import { boxOf, type Floor, floorArea, type Point, ringArea } from '../floor/rings.ts'
import { type Axis, type AxisScore, bestStarts } from './axis.ts'
import { explored } from './explore.ts'
import { type Layout, lay } from './lay.ts'
import { type Laid, prepare } from './prepare.ts'
import { inClosedForm, layRectangle } from './rectangle.ts'
import { type AxisPromise, type MiddleCorner, type SnapLine, snapped } from './snap.ts'
import type { LayoutSpec } from './spec.ts'
import { axesOf } from './square-walls.ts'
import { type Attempt, type Axes, hasSquareWalls, laysFor, lessOf, marksOf, startAt, type Tried } from './tries.ts'
import { LEAST_CUT, type Wishes } from './wishes.ts'

export type Start = {
  readonly spec: LayoutSpec
  readonly layout: Layout
  /** Near edges of the first whole tiles, and of the tile nearest to the middle; none where no wall is square to the pattern. */
  readonly firstLines: readonly SnapLine[]
  readonly middleLines: readonly SnapLine[]
  /** For a pattern turned or woven, where single lines do not tell it: a tile's corner near the middle of the room, to snap
   *  lines through at the pattern's angle; null where the lines above tell all. */
  readonly middleCorner: MiddleCorner | null
  readonly promises: readonly AxisPromise[]
  /** The direction to measure again: the one with the least margin. */
  readonly measureAgain: 'x' | 'y' | null
  /** Whether the tile was turned against the spec asked for. */
  readonly turned: boolean
}

/** The best start of a layout, by the order in axis.ts; `spec.originMm` is not looked at.
 *  @problem as `lay`; out-of-range for the least cut */
export function searchStart(floor: Floor, spec: LayoutSpec, wishes: Wishes): Outcome<Start> {
  const least = within(LEAST_CUT, wishes.leastCutMm ?? 0)
  if (!least.ok) return least
  const here = searchOne(floor, spec, wishes, false)
  if (!here.ok || !wishes.mayTurn || spec.tile.lengthMm === spec.tile.widthMm)
    return here.ok ? fine(here.value.start) : here
  const across = searchOne(floor, { ...spec, angleDeg: (spec.angleDeg + 90) % 360 }, wishes, true)
  if (!across.ok) return across
  return fine(lessOf(here.value.marks, across.value.marks) <= 0 ? here.value.start : across.value.start)
}

type Found = { readonly start: Start; readonly marks: readonly number[] }

function searchOne(floor: Floor, spec: LayoutSpec, wishes: Wishes, turned: boolean): Outcome<Found> {
  const zero: LayoutSpec = { ...spec, originMm: [0, 0] }
  const ready = prepare(floor, zero)
  if (!ready.ok) return ready
  const axes = axesOf(floor, ready.value, zero, wishes)
  const plain = inClosedForm(spec) && isPlainRectangle(floor)
  // Where every wall is slanted they are explored from one.
  const tries = plain || !hasSquareWalls(axes) ? 1 : atMost(Math.sqrt(laysFor(ready.value, zero)), MOST_SPREAD)
  const repeat = repeatOf(spec, axes)
  const us = startsOn(axes[0], tries, repeat[0])
  const vs = startsOn(axes[1], tries, repeat[1])
  const marks = ({ smallestCutMm, cells }: Layout, u: AxisScore, v: AxisScore): number[] =>
    marksOf(smallestCutMm ?? Infinity, cells, u, v, axes)
  const attempt: Attempt = (u, v) => {
    const tried: LayoutSpec = { ...zero, originMm: originFor(ready.value, u.originMm, v.originMm) }
    const laid = plain ? layBox(floor, tried) : layDrawnIn(floor, ready.value.floor, tried)
    return laid.ok ? fine({ layout: laid.value, spec: tried, u, v, marks: marks(laid.value, u, v) }) : laid
  }
  const all: Tried[] = []
  for (const u of us)
    for (const v of vs) {
      const tried = attempt(u, v)
      if (!tried.ok) return tried
      all.push(tried.value)
    }
  all.sort((p, q) => lessOf(p.marks, q.marks))
  const best = plain ? all[0]! : explored(all, attempt, axes, ready.value, zero, repeat)
  const lines = snapped(floor, ready.value, best.spec, axes, best.u, best.v)
  return fine({ start: { ...lines, spec: best.spec, layout: best.layout, turned }, marks: best.marks })
}

/** The most starts that an axis tries at square walls, and without any. */
const MOST_STARTS = 5
const MOST_SPREAD = 8

const atMost = (tries: number, most: number): number => Math.max(1, Math.min(most, Math.floor(tries)))

/** The best starts of an axis, or some spread over the pattern's repeat where no wall is square to it. */
const startsOn = (axis: Axis, tries: number, repeatMm: number): AxisScore[] =>
  axis.walls.length > 0
    ? bestStarts(axis, Math.min(tries, MOST_STARTS))
    : Array.from({ length: tries }, (_, k) => startAt(axis, (k * repeatMm) / tries))

/** How far u and v run until a pattern repeats. */
function repeatOf(spec: LayoutSpec, [u, v]: Axes): Point {
  const { kind } = spec.pattern
  if (kind === 'herringbone') return [2 * u.moduleMm, spec.pattern.planks * v.moduleMm]
  if (kind === 'hexagon') return [u.moduleMm, 1.5 * v.moduleMm]
  if (kind === 'two-size') return [u.moduleMm + spec.pattern.smallMm + spec.jointMm, v.moduleMm]
  return kind === 'basketweave' ? [2 * u.moduleMm, u.moduleMm] : [u.moduleMm, v.moduleMm]
}

/** Lays on the floor already drawn in by the gap. */
function layDrawnIn(floor: Floor, drawnIn: Floor, spec: LayoutSpec): Outcome<Layout> {
  const laid = lay(drawnIn, { ...spec, wallGapMm: 0 })
  return laid.ok ? fine({ ...laid.value, floorAreaMm2: floorArea(floor) }) : laid
}

const originFor = (ready: Laid, u: number, v: number): Point => {
  const { insetU, insetV } = ready.lattice.families[0]!
  return ready.toFloor(u + insetU, v + insetV)
}

export function isPlainRectangle(floor: Floor): boolean {
  const ring = floor.rings[0]
  if (floor.rings.length !== 1 || ring?.length !== 4) return false
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  return Math.abs(ringArea(ring) - (maxX - minX) * (maxY - minY)) < 1e-6
}

function layBox(floor: Floor, spec: LayoutSpec): Outcome<Layout> {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const [x, y] = spec.originMm
  const laid = layRectangle(maxX - minX, maxY - minY, { ...spec, originMm: [x - minX, y - minY] })
  return laid.ok ? fine({ ...laid.value, originMm: spec.originMm }) : laid
}
