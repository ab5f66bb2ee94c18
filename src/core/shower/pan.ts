/** A sloped mortar bed to a drain: its volume, the heights to mark on the walls, the planes for large tile. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import { distance as apart, type Point, type Ring, ringArea, ringHolds, running } from '../floor/rings.ts'
import { type Fan, fansFrom, toSegmentMm } from './sight.ts'

/** 1/4 in per ft is 20.8; codes and standards ask for it to the drain (reported). */
export const SLOPE: Range = { field: 'slope', unit: 'mm/m', min: 5, max: 100 }
export const BED_AT_DRAIN: Range = { field: 'bed-at-drain', unit: 'mm', min: 0, max: 200 }
export const PAN_CORNERS: Range = { field: 'corners', unit: '', min: 3, max: 200 }

export type Pan = {
  /** Corners of the floor, in order [mm]. */
  readonly ring: Ring
  readonly drain: Point
  /** Least fall to the drain [mm a metre]. */
  readonly slopeMmPerM: number
  /** Bed at the drain [mm]. */
  readonly atDrainMm: number
}

export type WallMark = {
  readonly lengthMm: number
  /** Top of the bed at the wall's start, at its lowest point and at its end [mm above the bottom of the bed]. */
  readonly startMm: number
  readonly lowMm: number
  readonly endMm: number
  /** Where the lowest point lies, from the wall's start [mm]. */
  readonly lowAtMm: number
}

export type PanBed = {
  /** `level`: one height all round, which needs a drain that sees every wall. `even`: the same fall everywhere,
   *  so that the edge rises with its distance from the drain. */
  readonly kind: 'level' | 'even'
  readonly volumeL: number
  readonly areaMm2: number
  /** Rise from the drain to the farthest point of the edge [mm]. */
  readonly riseMm: number
  readonly farthestMm: number
  /** The steepest plane [mm a metre]; where the edge is level the nearest wall makes it. */
  readonly steepestMmPerM: number
  readonly marks: readonly WallMark[]
  /** Fold lines from the drain to each corner it sees: the cuts for large tile [mm]. */
  readonly foldsMm: readonly number[]
}

/** The same bed with its edge let rise evenly, where a level edge would make a plane too steep.
 *  @problem as panBed */
export function evenPanBed(pan: Pan): Outcome<PanBed> {
  const checked = checkedPan(pan)
  if (!checked.ok) return checked
  const { ring, areaMm2, fans } = checked.value
  return fine(evenBed(ring, pan, areaMm2, fans))
}

/** The mortar of a sloped floor.
 *  With a level edge the bed is a prism of the thickness at the drain and an upturned pyramid: A (t + 2 h / 3), h from
 *  the farthest run. Where a corner hides part of the floor no edge can be level, and the bed rises with the shortest
 *  way along the floor to the drain, integrated exactly.
 *  @param pan  SLOPE, BED_AT_DRAIN, PAN_CORNERS; the drain inside the floor or on its edge
 *  @problem out-of-range, bad-floor (drain outside, no area, walls that cross)
 *  @source references 13.10 (level), geometry (even)
 *  @example 36 x 60 in, drain in the middle, 1/4 in per ft, 1-1/4 in: rise 0.73 in, 2.17 ft³ */
export function panBed(pan: Pan): Outcome<PanBed> {
  const checked = checkedPan(pan)
  if (!checked.ok) return checked
  const { ring, areaMm2, fans } = checked.value
  const seesAll = fans.every((fan) => fan.awayMm === 0)
  return fine(seesAll ? levelBed(ring, pan, areaMm2) : evenBed(ring, pan, areaMm2, fans))
}

function checkedPan(pan: Pan): Outcome<{ ring: Ring; areaMm2: number; fans: readonly Fan[] }> {
  for (const check of [
    within(PAN_CORNERS, pan.ring.length),
    within(SLOPE, pan.slopeMmPerM),
    within(BED_AT_DRAIN, pan.atDrainMm),
  ])
    if (!check.ok) return check
  const ring = running(pan.ring, 1)
  const areaMm2 = ringArea(ring)
  if (!(areaMm2 > 0)) return refuse('bad-floor', { why: 'nothing-left' })
  const onEdge = ring.some((a, i) => toSegmentMm(pan.drain, a, ring[(i + 1) % ring.length]!) < 1e-6)
  if (!onEdge && !ringHolds(ring, pan.drain)) return refuse('bad-floor', { why: 'drain-outside' })
  const fans = coveringFans(ring, pan.drain, areaMm2)
  return fans ? fine({ ring, areaMm2, fans }) : refuse('bad-floor', { why: 'walls-cross' })
}

/** Fans whose areas add up to the floor's. A drain exactly in line with two corners is moved by a hair and tried again. */
function coveringFans(ring: Ring, drain: Point, areaMm2: number): Fan[] | null {
  for (const hair of [0, 1e-3, -1.3e-3, 7e-3]) {
    const fans = fansFrom(ring, [drain[0] + hair, drain[1] + hair * 0.7])
    const covered = fans.reduce((sum, fan) => sum + triangleMm2(fan), 0)
    if (Math.abs(covered - areaMm2) < 1e-4 * areaMm2) return fans
  }
  return null
}

const triangleMm2 = ({ from, near, far }: Fan): number =>
  Math.abs((near[0] - from[0]) * (far[1] - from[1]) - (far[0] - from[0]) * (near[1] - from[1])) / 2

function levelBed(ring: Ring, pan: Pan, areaMm2: number): PanBed {
  const runs = ring.map((corner) => apart(corner, pan.drain))
  const farthestMm = Math.max(...runs)
  const riseMm = (pan.slopeMmPerM * farthestMm) / 1000
  const topMm = pan.atDrainMm + riseMm
  const nearest = Math.min(
    ...ring.map((a, i) => offLineMm(pan.drain, a, ring[(i + 1) % ring.length]!)).filter((d) => d > 1),
  )
  return {
    kind: 'level',
    volumeL: (areaMm2 * (pan.atDrainMm + (2 / 3) * riseMm)) / 1e6,
    areaMm2,
    riseMm,
    farthestMm,
    steepestMmPerM: (1000 * riseMm) / nearest,
    marks: ring.map((a, i) => {
      const lengthMm = apart(a, ring[(i + 1) % ring.length]!)
      return { lengthMm, startMm: topMm, lowMm: topMm, endMm: topMm, lowAtMm: lengthMm / 2 }
    }),
    foldsMm: runs.filter((run) => run > 1),
  }
}

/** Distance from a point to the whole line of a wall. [mm] */
const offLineMm = (p: Point, a: Point, b: Point): number =>
  Math.abs((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / (apart(a, b) || 1)

function evenBed(ring: Ring, pan: Pan, areaMm2: number, fans: readonly Fan[]): PanBed {
  const fall = pan.slopeMmPerM / 1000
  const ways = fans.reduce((sum, fan) => sum + fan.awayMm * triangleMm2(fan) + wayOverTriangle(fan), 0)
  const marks = ring.map((a, i) => evenMark(a, ring[(i + 1) % ring.length]!, pan, fans))
  const farthestMm = Math.max(...fans.flatMap((fan) => [fan.near, fan.far].map((p) => fan.awayMm + apart(fan.from, p))))
  return {
    kind: 'even',
    volumeL: (areaMm2 * pan.atDrainMm + fall * ways) / 1e6,
    areaMm2,
    riseMm: fall * farthestMm,
    farthestMm,
    steepestMmPerM: pan.slopeMmPerM,
    marks,
    foldsMm: fans.filter((fan) => fan.awayMm === 0).map((fan) => apart(fan.from, fan.near)),
  }
}

/** Integral of the distance from the apex over a triangle, exact. [mm³]
 *  With the foot of the height d on the base line and s along it: d/6 [R s] + d³/6 [asinh(s/d)]. */
export function wayOverTriangle({ from, near, far }: Pick<Fan, 'from' | 'near' | 'far'>): number {
  const base = apart(near, far)
  if (base < 1e-9) return 0
  const d = offLineMm(from, near, far)
  if (d < 1e-9) return 0
  const [ux, uy] = [(far[0] - near[0]) / base, (far[1] - near[1]) / base]
  const upTo = (p: Point) => {
    const s = (p[0] - from[0]) * ux + (p[1] - from[1]) * uy
    return (d * Math.hypot(s, d) * s + d ** 3 * Math.asinh(s / d)) / 6
  }
  return Math.abs(upTo(far) - upTo(near))
}

/** Heights along one wall of an even bed: its ends and the point of it with the shortest way. */
function evenMark(a: Point, b: Point, pan: Pan, fans: readonly Fan[]): WallMark {
  const ends = { start: wayTo(a, fans), end: wayTo(b, fans) }
  let low = ends.start <= ends.end ? { way: ends.start, at: 0 } : { way: ends.end, at: apart(a, b) }
  for (const fan of fans) {
    if (toSegmentMm(fan.near, a, b) > 0.1 || toSegmentMm(fan.far, a, b) > 0.1) continue
    const p = nearestOn(fan.from, fan.near, fan.far)
    const way = fan.awayMm + apart(fan.from, p)
    if (way < low.way) low = { way, at: apart(a, p) }
  }
  const top = (way: number) => pan.atDrainMm + (pan.slopeMmPerM / 1000) * way
  return { lengthMm: apart(a, b), startMm: top(ends.start), lowMm: top(low.way), endMm: top(ends.end), lowAtMm: low.at }
}

/** Shortest way from the drain to a corner of the floor: every corner is an end of some fan. [mm] */
function wayTo(corner: Point, fans: readonly Fan[]): number {
  const ways = fans.flatMap((fan) =>
    [fan.from, fan.near, fan.far].filter((p) => apart(p, corner) < 1).map((p) => fan.awayMm + apart(fan.from, p)),
  )
  return ways.length ? Math.min(...ways) : 0
}

function nearestOn(p: Point, a: Point, b: Point): Point {
  const length2 = (b[0] - a[0]) ** 2 + (b[1] - a[1]) ** 2 || 1
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / length2))
  return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
}

/** The mortar of a floor that falls in one plane to a channel along a wall. [L]
 *  @param depthMm  farthest run from the channel  @param widthMm  along the channel
 *  @problem out-of-range
 *  @source geometry: mean rise is half the rise */
export function planeBed(
  widthMm: number,
  depthMm: number,
  slopeMmPerM: number,
  atDrainMm: number,
): Outcome<{ volumeL: number; riseMm: number }> {
  for (const check of [
    within(SLOPE, slopeMmPerM),
    within(BED_AT_DRAIN, atDrainMm),
    within({ field: 'pan-side', unit: 'mm', min: 100, max: 50_000 }, widthMm),
    within({ field: 'pan-side', unit: 'mm', min: 100, max: 50_000 }, depthMm),
  ])
    if (!check.ok) return check
  const riseMm = (slopeMmPerM * depthMm) / 1000
  return fine({ volumeL: (widthMm * depthMm * (atDrainMm + riseMm / 2)) / 1e6, riseMm })
}
