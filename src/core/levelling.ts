/** Levelling clips and wedges: clips from the edges that two tiles share, wedges from what stands in fresh mortar at once. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const CLIP_SPACING: Range = { field: 'clip-spacing', unit: 'mm', min: 50, max: 1500 }
export const CLIP_EDGE: Range = { field: 'tile-edge', unit: 'mm', min: 20, max: 4000 }

export type ClipRule = {
  /** Most between two clips on an edge [mm]. */
  readonly spacingMm: number
  /** How far the outer clips stand from a corner [mm]. */
  readonly cornerMm: number
  /** Edges shorter than this take one clip in the middle [mm]. */
  readonly singleUnderMm: number
}

/** Clips on one edge between two tiles: one near each corner and as many between as the spacing asks for.
 *  @param edgeMm  CLIP_EDGE  @param rule  CLIP_SPACING; the corner distance at least 0
 *  @problem out-of-range
 *  @source common practice, no source: about 2 in from the corners; the hardware's sheet rules
 *  @example a 24 in edge, corners 2 in, spacing 24 in: 2; spacing 12 in: 3 */
export function clipsOnEdge(edgeMm: number, rule: ClipRule): Outcome<number> {
  for (const check of [within(CLIP_EDGE, edgeMm), within(CLIP_SPACING, rule.spacingMm)]) if (!check.ok) return check
  if (edgeMm < rule.singleUnderMm) return fine(1)
  const between = Math.max(0, edgeMm - 2 * rule.cornerMm)
  return fine(Math.max(1, Math.ceil(between / rule.spacingMm - 1e-9)) + 1)
}

/** Clips for edges counted by a layout: each shared edge once.
 *  @problem out-of-range */
export function clipsForEdges(
  edges: readonly { readonly lengthMm: number; readonly count: number }[],
  rule: ClipRule,
): Outcome<number> {
  let clips = 0
  for (const { lengthMm, count } of edges) {
    if (!(count >= 0)) return refuse('out-of-range', { field: 'edges', value: count, min: 0, max: 1e9, unit: '' })
    // A cut edge shorter than a clip's own reach still takes one.
    const on = clipsOnEdge(Math.max(lengthMm, CLIP_EDGE.min), rule)
    if (!on.ok) return on
    clips += on.value * count
  }
  return fine(clips)
}

/** Clips a tile, where only the number of tiles is known: each tile brings one long and one short edge of its own.
 *  A little high, as the tiles along the walls share fewer.
 *  @problem out-of-range
 *  @source geometry: every inner edge belongs to two tiles */
export function clipsPerTile(lengthMm: number, widthMm: number, rule: ClipRule): Outcome<number> {
  const long = clipsOnEdge(lengthMm, rule)
  if (!long.ok) return long
  const short = clipsOnEdge(widthMm, rule)
  return short.ok ? fine(long.value + short.value) : short
}

/** Edges that a grid of full rows shares: across the rows and along them.
 *  @example 4 x 5 tiles: 4 x 4 + 3 x 5 = 31 shared edges */
export function gridEdges(
  columns: number,
  rows: number,
  lengthMm: number,
  widthMm: number,
): { lengthMm: number; count: number }[] {
  return [
    { lengthMm, count: columns * Math.max(0, rows - 1) },
    { lengthMm: widthMm, count: rows * Math.max(0, columns - 1) },
  ]
}

export type WedgeNeed = {
  /** Clips set in the fullest day. */
  readonly clipsADay: number
  /** Hours from setting until the wedges may be kicked free. */
  readonly freeAfterH: number
  /** Hours from the start of one day's set to the next, 24 as a rule. */
  readonly betweenSetsH?: number
}

/** Wedges to have: one for every clip that still stands in mortar when the next is set.
 *  Freed overnight they serve again the next day; where the bed stays soft longer than that, a set for each day it does.
 *  @param need  clipsADay 0 or more; freeAfterH 1 to 720
 *  @problem out-of-range
 *  @source arithmetic; the wait is the mortar's */
export function wedgesFor(need: WedgeNeed): Outcome<number> {
  const free = within({ field: 'free-after', unit: 'h', min: 1, max: 720 }, need.freeAfterH)
  if (!free.ok) return free
  if (!(need.clipsADay >= 0))
    return refuse('out-of-range', { field: 'clips', value: need.clipsADay, min: 0, max: 1e9, unit: '' })
  const sets = Math.max(1, Math.ceil(need.freeAfterH / (need.betweenSetsH ?? 24) - 1e-9))
  return fine(Math.ceil(need.clipsADay * sets - 1e-9))
}
