/** Layouts tried, and the order they are told by. */
import type { Outcome } from '../../problem.ts'
import { type Axis, type AxisScore, scoreStart } from './axis.ts'
import type { Layout } from './lay.ts'
import { estimate, type Laid, turn } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'

export type Axes = readonly [Axis, Axis]

export type Tried = {
  readonly layout: Layout
  readonly spec: LayoutSpec
  readonly u: AxisScore
  readonly v: AxisScore
  readonly marks: readonly number[]
}

export type Attempt = (u: AxisScore, v: AxisScore) => Outcome<Tried>

export const hasSquareWalls = (axes: Axes): boolean => axes.some((axis) => axis.walls.length > 0)

export const leastOf = (axes: Axes): number => Math.min(axes[0].leastMm, axes[1].leastMm)

export const halfOf = (axes: Axes): number => Math.min(axes[0].tileMm, axes[1].tileMm) / 2

/** The score of a place on an axis, which tells nothing where no wall is square to it. */
export const startAt = (axis: Axis, originMm: number): AxisScore =>
  axis.walls.length > 0
    ? scoreStart(axis, originMm)
    : { originMm, worstMm: axis.tileMm, marks: NO_MARKS, lessMm: axis.moduleMm, moreMm: axis.moduleMm }

const NO_MARKS: readonly number[] = [0, 0, 0, 0, 0, 0]

/** Marks of a start, less is better, first things first: both axes' together, the narrowest piece as it really comes out. */
export function marksOf(narrowestMm: number, cells: number, u: AxisScore, v: AxisScore, axes: Axes): number[] {
  const least = leastOf(axes)
  const sliver = narrowestMm < least - 0.01 ? Math.round(100 * (1 + least - narrowestMm)) : 0
  const sums = u.marks.map((mark, k) => mark + v.marks[k]!)
  // Where walls are slanted the narrowest piece is all there is to go by, up to half a tile.
  const slanted = hasSquareWalls(axes) ? 0 : Math.round(100 * Math.max(0, halfOf(axes) - narrowestMm))
  return [sliver, slanted, ...sums.slice(1, 4), cells, ...sums.slice(4)]
}

export function lessOf(p: readonly number[], q: readonly number[]): number {
  for (let k = 0; k < p.length; k++) if (p[k] !== q[k]) return p[k]! - q[k]!
  return 0
}

/** Meetings of walls and modules that all layouts tried together may cost: some 15 ms for a house, 0.3 s for the wildest
 *  floor. */
const MEETINGS_FOR_ALL = 20_000

/** What a module of a pattern costs to cut beside one in rows. */
const WORTH: Readonly<Partial<Record<LayoutSpec['pattern']['kind'], number>>> = {
  hexagon: 8,
  'two-size': 2,
}

/** Meetings of walls and modules in a layout, those dear to cut counted as more. */
export function costOf(ready: Laid, spec: LayoutSpec): number {
  const [cos, sin] = turn(spec.angleDeg)
  // A wall across a turned pattern meets more of it.
  const slant = Math.abs(cos) + Math.abs(sin)
  return estimate(ready.floor, spec) * slant * (WORTH[spec.pattern.kind] ?? 1)
}

/** Layouts that may be tried, by what one costs. */
export const laysFor = (ready: Laid, spec: LayoutSpec): number => Math.floor(MEETINGS_FOR_ALL / costOf(ready, spec))
