/** The cut pieces of a plain rectangle under rows, in groups of one size and the same uncut edges, without walls to walk. */

import { LEAST_CELL_MM2 } from './lay.ts'
import { latticeOf } from './patterns.ts'
import type { FactoryEdges } from './pieces.ts'
import { NO_EXTENT } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'

export type CutPieces = {
  readonly lengthMm: number
  readonly widthMm: number
  readonly factory: FactoryEdges
  readonly count: number
}

/** What is left of a tile along one axis, and which of its two ends are uncut. */
type Stretch = { readonly mm: number; readonly start: boolean; readonly end: boolean; count: number }

const SAME_MM = 1e-6

/** The tiles of one axis over a span, alike ones together: at most one cut at either end, the rest whole. */
function stretches(low: number, span: number, module: number, inset: number, tile: number): Stretch[] {
  const high = low + span
  const [first, last] = [Math.floor(low / module), Math.floor(high / module)]
  const found: Stretch[] = []
  const add = (k: number, count: number): void => {
    const [from, to] = [k * module + inset, k * module + inset + tile]
    const [a, b] = [Math.max(from, low), Math.min(to, high)]
    if (b - a <= 0 || count <= 0) return
    found.push({ mm: b - a, start: a - from < SAME_MM, end: to - b < SAME_MM, count })
  }
  add(first, 1)
  if (last - first > 1) add(first + 1, last - first - 1)
  if (last > first) add(last, 1)
  return found
}

/** The cuts of a rectangle from (0, 0) to (width, height) [mm], for a spec that `inClosedForm` takes; null where the rows
 *  run across the tile, which only `cutPieces` lists. The same pieces as `cutPieces`, in groups. */
export function rectangleCuts(widthMm: number, heightMm: number, spec: LayoutSpec): CutPieces[] | null {
  const lattice = latticeOf(spec, NO_EXTENT)
  if (lattice.swapped) return null
  const { a, b, insetU, insetV, tileA, tileB } = lattice.families[0]!
  const gap = spec.wallGapMm
  const lowU = insetU - (spec.originMm[0] - gap)
  const lowV = insetV - (spec.originMm[1] - gap)
  const [spanU, spanV] = [widthMm - 2 * gap, heightMm - 2 * gap]
  const groups = new Map<string, CutPieces>()
  for (let j = Math.floor(lowV / b); j <= Math.floor((lowV + spanV) / b); j++) {
    const [row] = stretches(
      Math.max(lowV, j * b) - j * b,
      Math.min(lowV + spanV, (j + 1) * b) - Math.max(lowV, j * b),
      b,
      insetV,
      tileB,
    )
    if (!row) continue
    const moved = lattice.originU(0, 0, j)
    for (const column of stretches(lowU - moved, spanU, a, insetU, tileA)) {
      const areaMm2 = column.mm * row.mm
      if (areaMm2 < LEAST_CELL_MM2 || areaMm2 > tileA * tileB - LEAST_CELL_MM2) continue
      const factory = { start: column.start, end: column.end, near: row.start, far: row.end }
      const key = `${column.mm.toFixed(3)} ${row.mm.toFixed(3)} ${Object.values(factory).join()}`
      const known = groups.get(key)
      groups.set(key, { lengthMm: column.mm, widthMm: row.mm, factory, count: (known?.count ?? 0) + column.count })
    }
  }
  return [...groups.values()]
}
