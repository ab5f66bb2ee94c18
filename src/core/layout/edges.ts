/** Edges that two tiles of a layout share across a joint, piece by piece: what levelling clips go by. */
import { fine, type Outcome } from '../../problem.ts'
import type { Floor, Point, Ring } from '../floor/rings.ts'
import { tilesOf } from './pieces.ts'
import { prepare } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'

export type SharedEdge = { readonly lengthMm: number; readonly count: number }

/** A stretch shorter than this is a corner, no edge [mm]. */
const LEAST_EDGE_MM = 10
/** Lengths closer than this are one [mm]. */
const ALIKE_MM = 0.5
/** Sides closer to one line than this lie on it [mm]. */
const ON_LINE_MM = 0.2

/** A side of a piece on its line: from s to t along it, the piece to its left (1) or right (-1). */
type Stretch = { readonly from: number; readonly to: number; readonly side: 1 | -1; readonly at: number }

/** The edges shared by two tiles or pieces, each once, by length; the longest first. Edges at walls are shared by none.
 *  @problem as `tilesOf` */
export function sharedEdges(floor: Floor, spec: LayoutSpec): Outcome<readonly SharedEdge[]> {
  const ready = prepare(floor, spec)
  if (!ready.ok) return ready
  const tiles = tilesOf(floor, spec)
  if (!tiles.ok) return tiles
  const { lattice, toLattice } = ready.value
  const lines = new Map<string, Stretch[]>()
  const take = (ring: Ring, family: number): void => {
    const kind = lattice.families[family]!
    // Half a joint stands off each side of a hexagon, upright or slanting.
    const across = kind.shape === 'hexagon' ? kind.insetU : kind.insetV
    const there = ring.map(toLattice)
    const corners = lattice.swapped ? there.reverse() : there
    for (let k = 0; k < corners.length; k++)
      note(lines, corners[k]!, corners[(k + 1) % corners.length]!, kind.insetU, across)
  }
  for (const tile of tiles.value.whole) take(tile.outlineMm, tile.cell.family)
  for (const piece of tiles.value.cuts) take(piece.outlineMm[0]!, piece.cell.family)
  const lengths = new Map<number, number>()
  for (const stretches of lines.values())
    for (const mm of overlaps(stretches)) {
      const key = Math.round(mm / ALIKE_MM)
      lengths.set(key, (lengths.get(key) ?? 0) + 1)
    }
  const edges = [...lengths].map(([key, count]) => ({ lengthMm: key * ALIKE_MM, count }))
  return fine(edges.sort((p, q) => q.lengthMm - p.lengthMm))
}

/** Notes a side under the direction of its line, moved out to the middle of the joint. */
function note(lines: Map<string, Stretch[]>, p: Point, q: Point, insetU: number, insetV: number): void {
  const [du, dv] = [q[0] - p[0], q[1] - p[1]]
  const length = Math.hypot(du, dv)
  if (length < LEAST_EDGE_MM) return
  const forward = du > 1e-6 * length || (Math.abs(du) <= 1e-6 * length && dv > 0)
  const [cu, cv] = forward ? [du / length, dv / length] : [-du / length, -dv / length]
  // The piece lies to the left of its outline.
  const inset = Math.abs(cu) < 1e-6 ? insetU : insetV
  const out = forward ? -inset : inset
  const at = cu * p[1] - cv * p[0] + out
  const [s, t] = [cu * p[0] + cv * p[1], cu * q[0] + cv * q[1]]
  const stretch: Stretch = { from: Math.min(s, t), to: Math.max(s, t), side: forward ? 1 : -1, at }
  const key = String(Math.round(Math.atan2(cv, cu) * 1e4))
  const known = lines.get(key)
  if (known) known.push(stretch)
  else lines.set(key, [stretch])
}

/** Lengths over which a side on one hand of a line faces a side on the other. */
function overlaps(stretches: Stretch[]): number[] {
  stretches.sort((p, q) => p.at - q.at)
  const found: number[] = []
  for (let first = 0; first < stretches.length; ) {
    let last = first + 1
    while (last < stretches.length && stretches[last]!.at - stretches[last - 1]!.at < ON_LINE_MM) last++
    const line = stretches.slice(first, last).sort((p, q) => p.from - q.from)
    const left = line.filter((s) => s.side === 1)
    const right = line.filter((s) => s.side === -1)
    let k = 0
    for (const one of left) {
      while (k < right.length && right[k]!.to <= one.from) k++
      for (let m = k; m < right.length && right[m]!.from < one.to; m++) {
        const mm = Math.min(one.to, right[m]!.to) - Math.max(one.from, right[m]!.from)
        if (mm >= LEAST_EDGE_MM) found.push(mm)
      }
    }
    first = last
  }
  return found
}
