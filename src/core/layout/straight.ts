/** The commonest cut by a short way: one wall, square to the tile, right through the module. What BoxClip finds, without bands. */
import type { Family } from './lattice.ts'

/** Nearer to the border than this is left to BoxClip, which knows what lies on it [mm]. */
const CLEAR_MM = 1e-5

export class StraightCut {
  /** The module inside the floor [mm²], and its border there [mm]. */
  moduleMm2 = 0
  borderMm = 0
  /** The tile's extents inside the floor; 0 where it is outside [mm]. */
  extentU = 0
  extentV = 0

  /** Whether a wall from (u0, v0) to (u1, v1), in the module's own coordinates, is such a cut; if so, the figures are set. */
  takes(kind: Family, u0: number, v0: number, u1: number, v1: number): boolean {
    const { a, b } = kind
    if (u0 === u1 && u0 > CLEAR_MM && u0 < a - CLEAR_MM) {
      const down = v1 < v0
      if ((down ? v1 : v0) > -CLEAR_MM || (down ? v0 : v1) < b + CLEAR_MM) return false
      const kept = down ? a - u0 : u0
      this.moduleMm2 = kept * b
      this.borderMm = 2 * kept + b
      this.extentU = part(down, u0, kind.insetU, kind.tileA)
      this.extentV = kind.tileB
      return true
    }
    if (v0 === v1 && v0 > CLEAR_MM && v0 < b - CLEAR_MM) {
      const above = u1 > u0
      if ((above ? u0 : u1) > -CLEAR_MM || (above ? u1 : u0) < a + CLEAR_MM) return false
      const kept = above ? b - v0 : v0
      this.moduleMm2 = kept * a
      this.borderMm = 2 * kept + a
      this.extentU = kind.tileA
      this.extentV = part(above, v0, kind.insetV, kind.tileB)
      return true
    }
    return false
  }
}

/** The part of a tile's extent beyond a place, or before it. */
function part(beyond: boolean, at: number, inset: number, extent: number): number {
  const kept = beyond ? inset + extent - at : at - inset
  return kept < 0 ? 0 : Math.min(kept, extent)
}
