/** A straightedge on a floor: the gap under it when it lies on the high points.
 *  Flat is not level: a ramp shows no gap. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

/** A point of a profile: how far along the line, and the floor's height there. */
export type ProfilePoint = { readonly alongMm: number; readonly heightMm: number }

/** The largest gap, where along the profile it is, and whether the floor dips there or humps. */
export type Gap = { readonly gapMm: number; readonly alongMm: number; readonly shape: 'dip' | 'hump' }

/** What a published flatness limit says: a gap under a long edge, and one under a short edge where it has both. */
export type FlatnessLimit = {
  readonly longMm: number
  readonly longEdgeMm: number
  readonly shortMm?: number
  readonly shortEdgeMm?: number
}

export const READING: Range = { field: 'reading', unit: 'mm', min: 0, max: 150 }
export const EDGE: Range = { field: 'straightedge', unit: 'mm', min: 300, max: 6000 }

/** The gap under one straightedge that spans the whole profile. [mm]
 *  The edge lies above every point and is rocked until its largest gap is as small as it can be. That gap is the
 *  greatest vertical distance between the upper and the lower convex hull of the profile: a dip shows its depth under
 *  the edge, and a hump the same figure at both ends. It never falls below the gap between upper hull and floor.
 *  @param profile at least two points, in order along the line
 *  @source minimum-zone straightness, a term of geometrical tolerancing; derivation by linear-programming duality */
export function gapUnder(profile: readonly ProfilePoint[]): Gap {
  const upper = hull(profile, 1)
  const lower = hull(profile, -1)
  const dip = widest(lower, upper)
  const hump = widest(upper, lower)
  return hump.gapMm > dip.gapMm ? { ...hump, shape: 'hump' } : { ...dip, shape: 'dip' }
}

/** The worst gap as an edge of the given length slides along the profile; the whole profile where it is shorter. [mm]
 *  A longer edge never shows less, so only full-length places count: those that start or end at a point of the profile.
 *  @param at the floor's height anywhere along the line, straight between points unless the caller knows better */
export function slideEdge(
  profile: readonly ProfilePoint[],
  edgeMm: number,
  at: (alongMm: number) => number = (t) => between(profile, t),
): Gap {
  const first = profile[0]!.alongMm
  const last = profile.at(-1)!.alongMm
  if (last - first <= edgeMm) return gapUnder(profile)
  const starts = new Set<number>()
  for (const { alongMm } of profile)
    for (const start of [alongMm, alongMm - edgeMm]) if (start >= first && start + edgeMm <= last) starts.add(start)
  let worst: Gap = { gapMm: -1, alongMm: first, shape: 'dip' }
  let from = 0
  for (const start of [...starts].sort((a, b) => a - b)) {
    while (profile[from]!.alongMm <= start) from += 1
    const window = [{ alongMm: start, heightMm: at(start) }]
    for (let i = from; i < profile.length && profile[i]!.alongMm < start + edgeMm; i += 1) window.push(profile[i]!)
    window.push({ alongMm: start + edgeMm, heightMm: at(start + edgeMm) })
    const gap = gapUnder(window)
    if (gap.gapMm > worst.gapMm) worst = gap
  }
  return worst
}

export type ReadingVerdict = {
  readonly maxGapMm: number
  /** The limit that the readings were held against. */
  readonly limitMm: number
  readonly limitEdgeMm: number
  /** `unknown`: the edge was shorter than the limit's, so a small gap proves nothing yet. */
  readonly verdict: 'pass' | 'fail' | 'unknown'
  /** Which of the readings exceed it, from 0. */
  readonly over: readonly number[]
}

/** Judges gaps read under a straightedge against a limit.
 *  A gap under a shorter edge can only grow under the longer one, so it can fail a floor but not pass it; under a
 *  longer edge it can pass a floor but a larger gap is then "unknown".
 *  @param readingsMm the gaps, READING
 *  @param edgeMm length of the straightedge, EDGE
 *  @problem missing, out-of-range */
export function judgeReadings(
  readingsMm: readonly number[],
  edgeMm: number,
  limit: FlatnessLimit,
): Outcome<ReadingVerdict> {
  if (readingsMm.length === 0) return refuse('missing', { field: 'reading' })
  const edge = within(EDGE, edgeMm)
  if (!edge.ok) return edge
  for (const reading of readingsMm) {
    const read = within(READING, reading)
    if (!read.ok) return read
  }
  const short = limit.shortMm !== undefined && limit.shortEdgeMm !== undefined && edgeMm < limit.longEdgeMm / 2
  const limitMm = short ? limit.shortMm! : limit.longMm
  const limitEdgeMm = short ? limit.shortEdgeMm! : limit.longEdgeMm
  const maxGapMm = Math.max(...readingsMm)
  const over = readingsMm.flatMap((r, i) => (exceeds(r, limitMm) ? [i] : []))
  const near = Math.abs(edgeMm - limitEdgeMm) <= 0.02 * limitEdgeMm
  const certain = near || (over.length > 0 ? edgeMm < limitEdgeMm : edgeMm > limitEdgeMm)
  const verdict = !certain ? 'unknown' : over.length > 0 ? 'fail' : 'pass'
  return fine({ maxGapMm, limitMm, limitEdgeMm, verdict, over })
}

/** Whether a gap is over its limit by more than rounding. [mm] */
export const exceeds = (gapMm: number, limitMm: number): boolean => gapMm > limitMm + 0.01

function hull(profile: readonly ProfilePoint[], side: 1 | -1): ProfilePoint[] {
  const kept: ProfilePoint[] = []
  for (const p of profile) {
    while (kept.length >= 2 && side * turn(kept.at(-2)!, kept.at(-1)!, p) >= 0) kept.pop()
    kept.push(p)
  }
  return kept
}

const turn = (a: ProfilePoint, b: ProfilePoint, c: ProfilePoint): number =>
  (b.alongMm - a.alongMm) * (c.heightMm - a.heightMm) - (b.heightMm - a.heightMm) * (c.alongMm - a.alongMm)

/** The greatest vertical distance from the corners of one hull to the other hull; both run left to right. */
function widest(corners: readonly ProfilePoint[], other: readonly ProfilePoint[]): { gapMm: number; alongMm: number } {
  let best = { gapMm: 0, alongMm: corners[0]!.alongMm }
  let i = 0
  for (const c of corners) {
    while (i < other.length - 2 && other[i + 1]!.alongMm < c.alongMm) i += 1
    const gapMm = Math.abs(chord(other[i]!, other[i + 1]!, c.alongMm) - c.heightMm)
    if (gapMm > best.gapMm) best = { gapMm, alongMm: c.alongMm }
  }
  return best
}

function chord(a: ProfilePoint, b: ProfilePoint, alongMm: number): number {
  const length = b.alongMm - a.alongMm
  return length === 0 ? a.heightMm : a.heightMm + ((b.heightMm - a.heightMm) * (alongMm - a.alongMm)) / length
}

function between(profile: readonly ProfilePoint[], alongMm: number): number {
  let i = 0
  while (i < profile.length - 2 && profile[i + 1]!.alongMm < alongMm) i += 1
  return chord(profile[i]!, profile[i + 1]!, alongMm)
}
