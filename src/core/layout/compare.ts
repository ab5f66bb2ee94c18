/** What should be told beside a layout: nominal against actual size, and offsets that a long tile does not take. */
import { fine, type Outcome } from '../../problem.ts'
import type { Floor } from '../floor/rings.ts'
import { LONG_SIDE_MM } from './random.ts'
import { type Start, searchStart } from './search.ts'
import { fractionValue, type LayoutSpec } from './spec.ts'
import type { Wishes } from './wishes.ts'

export type SizeCompared = {
  readonly nominal: Start
  readonly actual: Start
  /** What changes between the two: then a measured tile is worth asking for. */
  readonly cellsChange: boolean
  readonly worstCutChangeMm: number
  readonly firstLineChangeMm: number
  readonly matters: boolean
}

/** A difference smaller than this is lost in the tape [mm]: 1/16 in. */
const TOLD_MM = 25.4 / 16

/** The layout at the nominal and at the actual size of the tile, each from its own best start.
 *  @problem as `searchStart` */
export function compareSizes(
  floor: Floor,
  nominal: LayoutSpec,
  actualTile: LayoutSpec['tile'],
  wishes: Wishes,
): Outcome<SizeCompared> {
  const one = searchStart(floor, nominal, wishes)
  if (!one.ok) return one
  const other = searchStart(floor, { ...nominal, tile: actualTile }, wishes)
  if (!other.ok) return other
  const [p, q] = [one.value, other.value]
  const cellsChange = p.layout.cells !== q.layout.cells
  const worstCutChangeMm = Math.abs((p.layout.smallestCutMm ?? 0) - (q.layout.smallestCutMm ?? 0))
  const lineOf = (start: Start, k: number) => start.firstLines[k]?.fromLowMm ?? 0
  const firstLineChangeMm = Math.max(...[0, 1].map((k) => Math.abs(lineOf(p, k) - lineOf(q, k))))
  const matters = cellsChange || worstCutChangeMm >= TOLD_MM || firstLineChangeMm >= TOLD_MM
  return fine({ nominal: p, actual: q, cellsChange, worstCutChangeMm, firstLineChangeMm, matters })
}

/** What a tile of a nominal size often measures: less by a sixty-fourth, as 11-13/16 x 23-5/8 for 12 x 24 in. [mm]
 *  @source references 13.14, common practice, no source */
export const oftenMeasures = (nominalMm: number): number => nominalMm - nominalMm / 64

/** The most a side over 15 in may be offset [%]: ANSI A108.02 (reported), references 4.9. */
export const LONG_OFFSET_PCT = 33
/** A third is said to be 33 %. */
const THIRD_PCT = 33.34

export type OffsetWarning = { readonly sideMm: number; readonly offsetPct: number; readonly limitPct: number }

/** The warning due where the offset side is over 15 in and the offset over 33 %, else null. */
export function offsetWarning(spec: LayoutSpec): OffsetWarning | null {
  if (spec.pattern.kind !== 'offset') return null
  const sideMm = spec.pattern.along === 'length' ? spec.tile.lengthMm : spec.tile.widthMm
  const share = Math.abs(fractionValue(spec.pattern.share)) % 1
  const offsetPct = 100 * Math.min(share, 1 - share)
  return sideMm > LONG_SIDE_MM && offsetPct > THIRD_PCT ? { sideMm, offsetPct, limitPct: LONG_OFFSET_PCT } : null
}

/** The most a tile may be offset [%]: 33 where the offset side is over 15 in, else 50. */
export const maxOffsetPct = (offsetSideMm: number): number => (offsetSideMm > LONG_SIDE_MM ? LONG_OFFSET_PCT : 50)
