/** Heights read on a grid, and a straightedge slid over the surface between them. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import { exceeds, type FlatnessLimit, type Gap, type ProfilePoint, slideEdge } from './straightedge.ts'

/** Floor heights at the corners of a grid: `heightsMm[row][column]`, rows along y and columns along x. */
export type HeightGrid = {
  readonly heightsMm: readonly (readonly number[])[]
  readonly stepXMm: number
  readonly stepYMm: number
}

export type GridGap = Gap & { readonly xMm: number; readonly yMm: number; readonly directionDeg: number }

export const GRID_STEP: Range = { field: 'grid-spacing', unit: 'mm', min: 50, max: 3048 }
export const GRID_HEIGHT: Range = { field: 'height', unit: 'mm', min: -1000, max: 1000 }
const MOST_POINTS = 2500
/** Directions that the edge is laid in: every 22.5 degrees, so 8. */
export const DIRECTIONS_DEG = [0, 22.5, 45, 67.5, 90, 112.5, 135, 157.5] as const

/** A checked grid: 2 x 2 points at least, rows of one length.
 *  @problem missing (a row too short), out-of-range, too-much-work (over 2,500 points) */
export function heightGrid(
  heightsMm: readonly (readonly number[])[],
  stepXMm: number,
  stepYMm: number = stepXMm,
): Outcome<HeightGrid> {
  const columns = heightsMm[0]?.length ?? 0
  if (heightsMm.length < 2 || columns < 2) return refuse('missing', { field: 'height' })
  if (heightsMm.length * columns > MOST_POINTS) return refuse('too-much-work', { what: 'height' })
  for (const step of [stepXMm, stepYMm]) {
    const good = within(GRID_STEP, step)
    if (!good.ok) return good
  }
  for (const row of heightsMm) {
    if (row.length !== columns) return refuse('missing', { field: 'height' })
    for (const height of row) {
      const good = within(GRID_HEIGHT, height)
      if (!good.ok) return good
    }
  }
  return fine({ heightsMm, stepXMm, stepYMm })
}

export const gridWidthMm = (grid: HeightGrid): number => (grid.heightsMm[0]!.length - 1) * grid.stepXMm
export const gridDepthMm = (grid: HeightGrid): number => (grid.heightsMm.length - 1) * grid.stepYMm

/** The height anywhere on the grid, bilinear within each cell. [mm] */
export function heightAt(grid: HeightGrid, xMm: number, yMm: number): number {
  const rows = grid.heightsMm
  const u = Math.min(Math.max(xMm / grid.stepXMm, 0), rows[0]!.length - 1)
  const v = Math.min(Math.max(yMm / grid.stepYMm, 0), rows.length - 1)
  const i = Math.min(Math.floor(u), rows[0]!.length - 2)
  const j = Math.min(Math.floor(v), rows.length - 2)
  const near = rows[j]!
  const far = rows[j + 1]!
  const [a, b] = [u - i, v - j]
  return (1 - b) * ((1 - a) * near[i]! + a * near[i + 1]!) + b * ((1 - a) * far[i]! + a * far[i + 1]!)
}

/** The worst gap under an edge of this length, slid over the grid in eight directions. [mm]
 *  Lines run through the grid's points, a quarter of a step apart at the closest; along a line the floor is bilinear,
 *  so each stretch between grid lines is divided in four. */
export function worstGap(grid: HeightGrid, edgeMm: number): GridGap {
  let worst: GridGap = { gapMm: -1, alongMm: 0, shape: 'dip', xMm: 0, yMm: 0, directionDeg: 0 }
  for (const directionDeg of DIRECTIONS_DEG) {
    const angle = (directionDeg * Math.PI) / 180
    const along = [Math.cos(angle), Math.sin(angle)] as const
    for (const offsetMm of lineOffsets(grid, along)) {
      const line = { along, offsetMm }
      const profile = profileOf(grid, line)
      if (profile.length < 2) continue
      const gap = slideEdge(profile, edgeMm, (t) => heightAt(grid, ...pointOn(line, t)))
      if (gap.gapMm <= worst.gapMm) continue
      const [xMm, yMm] = pointOn(line, gap.alongMm)
      worst = { ...gap, xMm, yMm, directionDeg }
    }
  }
  return worst
}

export type GridVerdict = {
  readonly long: GridGap
  readonly short: GridGap | null
  /** The edges laid: never longer than the grid allows. */
  readonly longEdgeMm: number
  readonly verdict: 'pass' | 'fail'
}

/** Holds a grid against a flatness limit: its long edge, and its short edge where it has one. */
export function judgeGrid(grid: HeightGrid, limit: FlatnessLimit): GridVerdict {
  const long = worstGap(grid, limit.longEdgeMm)
  const short = limit.shortEdgeMm === undefined ? null : worstGap(grid, limit.shortEdgeMm)
  const over = exceeds(long.gapMm, limit.longMm) || (short !== null && exceeds(short.gapMm, limit.shortMm!))
  const longEdgeMm = Math.min(limit.longEdgeMm, Math.hypot(gridWidthMm(grid), gridDepthMm(grid)))
  return { long, short, longEdgeMm, verdict: over ? 'fail' : 'pass' }
}

type Line = { readonly along: readonly [number, number]; readonly offsetMm: number }

/** The point at t along a line: along x direction + offset x normal. */
const pointOn = ({ along: [c, s], offsetMm }: Line, t: number): [number, number] => [
  t * c - offsetMm * s,
  t * s + offsetMm * c,
]

function lineOffsets(grid: HeightGrid, [c, s]: readonly [number, number]): number[] {
  const offsets = grid.heightsMm.flatMap((row, j) => row.map((_, i) => j * grid.stepYMm * c - i * grid.stepXMm * s))
  const apart = Math.min(grid.stepXMm, grid.stepYMm) / 4
  const kept: number[] = []
  for (const offset of offsets.sort((a, b) => a - b))
    if (kept.length === 0 || offset - kept.at(-1)! > apart - 1e-6) kept.push(offset)
  return kept
}

const PARTS = 4

/** Heights along a line: at its crossings with the grid lines, and at three places between two crossings. */
function profileOf(grid: HeightGrid, line: Line): ProfilePoint[] {
  const span = clip(grid, line)
  if (span === null) return []
  const crossings = [...span]
  const [c, s] = line.along
  const columns = grid.heightsMm[0]!.length
  if (Math.abs(c) > 1e-9)
    for (let i = 0; i < columns; i += 1) crossings.push((i * grid.stepXMm + line.offsetMm * s) / c)
  if (Math.abs(s) > 1e-9)
    for (let j = 0; j < grid.heightsMm.length; j += 1) crossings.push((j * grid.stepYMm - line.offsetMm * c) / s)
  const inside = crossings.filter((t) => t >= span[0] && t <= span[1]).sort((a, b) => a - b)
  const profile: ProfilePoint[] = []
  let last = Number.NEGATIVE_INFINITY
  for (const t of inside) {
    if (t - last < 1e-6) continue
    const parts = profile.length === 0 ? 1 : PARTS
    for (let k = 1; k <= parts; k += 1) {
      const alongMm = profile.length === 0 ? t : last + ((t - last) * k) / parts
      profile.push({ alongMm, heightMm: heightAt(grid, ...pointOn(line, alongMm)) })
    }
    last = t
  }
  return profile
}

/** The stretch of a line over the grid, or null. */
function clip(grid: HeightGrid, line: Line): [number, number] | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
  const start = pointOn(line, 0)
  const extent = [gridWidthMm(grid), gridDepthMm(grid)]
  for (const axis of [0, 1] as const) {
    const step = line.along[axis]
    if (Math.abs(step) < 1e-9) {
      if (start[axis] < -1e-6 || start[axis] > extent[axis]! + 1e-6) return null
      continue
    }
    const [a, b] = [-start[axis] / step, (extent[axis]! - start[axis]) / step]
    from = Math.max(from, Math.min(a, b))
    to = Math.min(to, Math.max(a, b))
  }
  return to - from > 1e-6 ? [from, to] : null
}
