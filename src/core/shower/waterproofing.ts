/** Wet areas: the faces to waterproof, litres by coats and film, band at seams and changes of plane, the flood test. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

export const WET_FILM: Range = { field: 'wet-film', unit: 'mm', min: 0.1, max: 5 }
export const COATS: Range = { field: 'coats', unit: '', min: 1, max: 5 }
export const SIDE: Range = { field: 'shower-side', unit: 'mm', min: 50, max: 50_000 }

export type Curb = { readonly lengthMm: number; readonly heightMm: number; readonly widthMm: number }
export type Niche = {
  readonly widthMm: number
  readonly heightMm: number
  readonly depthMm: number
  readonly count?: number
}
export type Bench = { readonly lengthMm: number; readonly depthMm: number; readonly heightMm: number }

export type WetRoom = {
  /** The floor's area and the length of wall round it that gets wet [m², mm]. */
  readonly floorM2: number
  readonly wallRunMm: number
  readonly wallHeightMm: number
  /** Upright inside corners between those walls. */
  readonly corners: number
  readonly curb?: Curb
  readonly niches?: readonly Niche[]
  readonly bench?: Bench
  readonly openingsM2?: number
}

export type WetFaces = {
  readonly floorM2: number
  readonly wallM2: number
  /** Curb, niches and bench beyond the plain walls and floor. */
  readonly extraM2: number
  readonly totalM2: number
  /** Lines where two planes meet: band and soft joint both follow them [m]. */
  readonly planeChangesM: number
  /** Corners where three planes meet, inside and outside. */
  readonly insideCorners: number
  readonly outsideCorners: number
  /** Least fall from the back to the front of each ledge, by the slope given [mm]. */
  readonly ledgeFallsMm: readonly { readonly what: 'curb' | 'niche' | 'bench'; readonly fallMm: number }[]
}

/** Faces, edges and corners of a wet area.
 *  A curb adds its inner face, top and outer face; a niche its four sides; a bench its front and the two ends stay wall.
 *  @param room  SIDE for every length; the floor above 0
 *  @param ledgeSlopeMmPerM  fall of curb, niche sill and bench towards the shower; 1/4 in per ft is 20.8
 *  @problem out-of-range, nothing-left (openings larger than the walls)
 *  @source geometry; the ledge slope: common practice, no source */
export function wetFaces(room: WetRoom, ledgeSlopeMmPerM: number): Outcome<WetFaces> {
  const { curb, bench } = room
  const niches = room.niches ?? []
  const lengths = [
    room.wallRunMm,
    room.wallHeightMm,
    ...(curb ? [curb.lengthMm, curb.heightMm, curb.widthMm] : []),
    ...(bench ? [bench.lengthMm, bench.depthMm, bench.heightMm] : []),
    ...niches.flatMap((n) => [n.widthMm, n.heightMm, n.depthMm]),
  ]
  for (const mm of lengths) {
    const check = within(SIDE, mm)
    if (!check.ok) return check
  }
  if (!(room.floorM2 > 0)) return refuse('bad-floor', { why: 'nothing-left' })
  const wallM2 = (room.wallRunMm * room.wallHeightMm) / 1e6 - (room.openingsM2 ?? 0)
  if (wallM2 <= 0) return refuse('nothing-left', { said: 'openings' })
  const count = (n: Niche) => n.count ?? 1
  const nicheM2 = sum(niches.map((n) => (2 * count(n) * n.depthMm * (n.widthMm + n.heightMm)) / 1e6))
  const curbM2 = curb ? (curb.lengthMm * (2 * curb.heightMm + curb.widthMm)) / 1e6 : 0
  const benchM2 = bench ? (bench.lengthMm * bench.heightMm) / 1e6 : 0
  const planeMm =
    room.wallRunMm +
    room.corners * room.wallHeightMm +
    (curb ? 3 * curb.lengthMm + 2 * curb.heightMm : 0) +
    sum(niches.map((n) => count(n) * (4 * (n.widthMm + n.heightMm) + 4 * n.depthMm))) +
    (bench ? 3 * bench.lengthMm + 2 * (bench.heightMm + bench.depthMm) : 0)
  const falls = [
    ...(curb ? [{ what: 'curb' as const, deep: curb.widthMm }] : []),
    ...niches.map((n) => ({ what: 'niche' as const, deep: n.depthMm })),
    ...(bench ? [{ what: 'bench' as const, deep: bench.depthMm }] : []),
  ]
  const nicheCount = sum(niches.map(count))
  return fine({
    floorM2: room.floorM2,
    wallM2,
    extraM2: nicheM2 + curbM2 + benchM2,
    totalM2: room.floorM2 + wallM2 + nicheM2 + curbM2 + benchM2,
    planeChangesM: planeMm / 1000,
    insideCorners: room.corners + (curb ? 2 : 0) + 4 * nicheCount + (bench ? 4 : 0),
    outsideCorners: (curb ? 2 : 0) + 4 * nicheCount,
    ledgeFallsMm: falls.map(({ what, deep }) => ({ what, fallMm: (deep * ledgeSlopeMmPerM) / 1000 })),
  })
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0)

/** Litres of liquid membrane. 1 mm over 1 m² is 1 L.
 *  @param filmMm  wet film of each coat, WET_FILM  @param coats  COATS, whole  @param allowancePct  for tools and texture
 *  @problem out-of-range
 *  @source geometry; film and coats from the membrane's data sheet */
export function membraneLitres(areaM2: number, filmMm: number, coats: number, allowancePct = 10): Outcome<number> {
  for (const check of [
    within({ field: 'area', unit: 'm2', min: 0.01, max: 100_000 }, areaM2),
    within(WET_FILM, filmMm),
    within(COATS, coats),
    within({ field: 'allowance', unit: '%', min: 0, max: 50 }, allowancePct),
  ])
    if (!check.ok) return check
  return fine(areaM2 * filmMm * coats * (1 + allowancePct / 100))
}

/** Water for a flood test and what it weighs on the floor. [L, kg]
 *  @param depthMm  mean depth over the floor, 10 to 150
 *  @problem out-of-range
 *  @source geometry, 1 L of water is 1 kg; how deep and how long: local code rules */
export function floodTest(areaM2: number, depthMm: number): Outcome<{ waterL: number; massKg: number }> {
  const depth = within({ field: 'flood-depth', unit: 'mm', min: 10, max: 150 }, depthMm)
  if (!depth.ok) return depth
  return fine({ waterL: areaM2 * depthMm, massKg: areaM2 * depthMm })
}
