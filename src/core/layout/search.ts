/** The start line: which origin gives the best layout, what it promises, and where to snap it from real walls. */
import { fine, type Outcome, within } from '../../problem.ts'
import { boxOf, type Floor, floorArea, type Point, ringArea } from '../floor/rings.ts'
import { type Axis, type AxisScore, bestStarts, scoreStart } from './axis.ts'
import { climbed, crossingOrigins, type Direction, slantedDirections, spreadOrigins } from './explore.ts'
import { type Layout, lay } from './lay.ts'
import { estimate, type Laid, prepare, turn } from './prepare.ts'
import { inClosedForm, layRectangle } from './rectangle.ts'
import { type AxisPromise, type MiddleCorner, type SnapLine, snapped } from './snap.ts'
import type { LayoutSpec } from './spec.ts'
import { axesOf } from './square-walls.ts'
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
  const tries = plain ? 1 : triesFor(ready.value, zero)
  const repeat = repeatOf(spec, axes)
  const us = startsOn(axes[0], tries, repeat[0])
  const vs = startsOn(axes[1], tries, repeat[1])
  const attempt: Attempt = (u, v) => {
    const tried: LayoutSpec = { ...zero, originMm: originFor(ready.value, u.originMm, v.originMm) }
    const laid = plain ? layBox(floor, tried) : layDrawnIn(floor, ready.value.floor, tried)
    return laid.ok ? fine({ layout: laid.value, spec: tried, u, v, marks: marksOf(laid.value, u, v, axes) }) : laid
  }
  const all: Tried[] = []
  for (const u of us)
    for (const v of vs) {
      const tried = attempt(u, v)
      if (!tried.ok) return tried
      all.push(tried.value)
    }
  all.sort(better)
  const lays = laysFor(ready.value, zero)
  const { layout, u, v, marks, spec: found } = plain ? all[0]! : explored(all, attempt, axes, ready.value, repeat, lays)
  return fine({ start: { ...snapped(floor, ready.value, found, axes, u, v), spec: found, layout, turned }, marks })
}

type Tried = {
  readonly layout: Layout
  readonly spec: LayoutSpec
  readonly u: AxisScore
  readonly v: AxisScore
  readonly marks: readonly number[]
}

type Attempt = (u: AxisScore, v: AxisScore) => Outcome<Tried>

const better = (p: Tried, q: Tried): number => lessOf(p.marks, q.marks)

/** Where walls are slanted, or the best start still leaves a sliver (corners of holes), more starts are tried: those at which
 *  something changes for two walls at once, some spread over the repeat, and the best few moved about by shrinking steps. */
function explored(
  from: readonly Tried[],
  attempt: Attempt,
  axes: readonly [Axis, Axis],
  ready: Laid,
  repeat: readonly [number, number],
  lays: number,
): Tried {
  const square = axes[0].walls.length > 0 || axes[1].walls.length > 0
  const isDone = ({ marks }: Tried): boolean => (square ? marks[0] === 0 : marks[0] === 0 && marks[1] === 0)
  if (isDone(from[0]!)) return from[0]!
  const at = (u: number, v: number): Tried | null => {
    const tried = attempt(startAt(axes[0], u), startAt(axes[1], v))
    return tried.ok ? tried.value : null
  }
  const originOf = (one: Tried): Point => [one.u.originMm, one.v.originMm]
  const slanted = slantedDirections(ready.walls, ready.lattice.families[0]!)
  const level = axes.flatMap((axis, k): Direction[] =>
    axis.walls.length > 0
      ? [{ u: 1 - k, v: k, places: bestStarts(axis, MOST_TRIES).map((start) => start.originMm) }]
      : [],
  )
  const spread = Math.max(2, Math.min(square ? 8 : MOST_SPREAD, Math.floor(Math.sqrt(lays / (square ? 3 : 4)))))
  const origins = [
    ...crossingOrigins(slanted, level).slice(0, lays / 3),
    ...spreadOrigins(originOf(from[0]!), repeat, spread),
  ]
  const starts = [...from]
  for (const [u, v] of origins) {
    const tried = at(u, v)
    if (tried) starts.push(tried)
  }
  starts.sort(better)
  const step: Point = square ? [repeat[0] / 16, repeat[1] / 16] : [repeat[0] / (2 * spread), repeat[1] / (2 * spread)]
  // A limit to be kept is found or missed by whole steps; the widest cut is gone after to the end.
  const leastStep = square ? Math.min(...repeat) / 80 : LEAST_STEP_MM
  return climbed(starts, { at, originOf, compare: better, isDone }, step, leastStep, lays - origins.length)
}

const startAt = (axis: Axis, originMm: number): AxisScore =>
  axis.walls.length > 0 ? scoreStart(axis, originMm) : { ...scoreStart(axis, 0), originMm }

/** Meetings of walls and modules that all tries together may cost: some 15 ms for a house, 0.3 s for the wildest floor. */
const MEETINGS_FOR_ALL = 20_000

const MOST_TRIES = 5

const MOST_SPREAD = 12

const LEAST_STEP_MM = 0.4

/** What a module of a pattern costs to cut beside one in rows. */
const WORTH: Readonly<Partial<Record<LayoutSpec['pattern']['kind'], number>>> = {
  hexagon: 8,
  'two-size': 2,
}

/** Layouts that may be tried, by what one costs. */
function laysFor(ready: Laid, spec: LayoutSpec): number {
  const [cos, sin] = turn(spec.angleDeg)
  // A wall across a turned pattern meets more of it.
  const slant = Math.abs(cos) + Math.abs(sin)
  return Math.floor(MEETINGS_FOR_ALL / (estimate(ready.floor, spec) * slant * (WORTH[spec.pattern.kind] ?? 1)))
}

/** How many starts an axis may try. */
const triesFor = (ready: Laid, spec: LayoutSpec): number =>
  Math.max(1, Math.min(MOST_STARTS, Math.floor(Math.sqrt(laysFor(ready, spec)))))

const MOST_STARTS = 8

/** On an axis without square walls a spread of starts over the pattern's repeat is tried. */
function startsOn(axis: Axis, tries: number, repeatMm: number): AxisScore[] {
  if (axis.walls.length > 0) return bestStarts(axis, Math.min(tries, MOST_TRIES))
  return Array.from({ length: tries }, (_, k) => ({ ...scoreStart(axis, 0), originMm: (k * repeatMm) / tries }))
}

/** How far u and v run until a pattern repeats. */
function repeatOf(spec: LayoutSpec, [u, v]: readonly [Axis, Axis]): readonly [number, number] {
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

/** Marks of a whole layout: both axes' together, the sliver as it really came out. */
function marksOf(layout: Layout, u: AxisScore, v: AxisScore, axes: readonly [Axis, Axis]): number[] {
  const least = Math.min(axes[0].leastMm, axes[1].leastMm)
  const worst = layout.smallestCutMm ?? Infinity
  const sliver = worst < least - 0.01 ? Math.round(100 * (1 + least - worst)) : 0
  const sums = u.marks.map((mark, k) => mark + v.marks[k]!)
  const square = axes[0].walls.length > 0 || axes[1].walls.length > 0
  // Where walls are slanted the narrowest piece is all there is to go by, up to half a tile.
  const half = Math.min(axes[0].tileMm, axes[1].tileMm) / 2
  const slanted = square ? 0 : Math.round(100 * Math.max(0, half - worst))
  return [sliver, slanted, ...sums.slice(1, 4), layout.cells, ...sums.slice(4)]
}

function lessOf(p: readonly number[], q: readonly number[]): number {
  for (let k = 0; k < p.length; k++) if (p[k] !== q[k]) return p[k]! - q[k]!
  return 0
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
