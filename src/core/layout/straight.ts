/** The commonest cut by a short way: one wall right through the module. What BoxClip finds, without bands. */
import type { Family } from './lattice.ts'

/** Nearer to the border than this is left to BoxClip, which knows what lies on it [mm]. */
const CLEAR_MM = 1e-5
/** A wall that leans by less than this is left to BoxClip too [mm]. */
const LEAN_MM = 1e-3

export class StraightCut {
  /** The module inside the floor [mm²], and its border there [mm]. */
  moduleMm2 = 0
  borderMm = 0
  /** The tile inside the floor [mm²], and its extents there [mm]; 0 where it is outside. */
  tileMm2 = 0
  extentU = 0
  extentV = 0

  // The last rectangle cut.
  private areaMm2 = 0
  private edgeMm = 0

  /** Whether a wall from (u0, v0) to (u1, v1), in the module's own coordinates, is such a cut; if so, the figures are set. */
  takes(kind: Family, u0: number, v0: number, u1: number, v1: number): boolean {
    if (u0 === u1) return this.upright(kind, u0, v0, v1)
    if (v0 === v1) return this.level(kind, v0, u0, u1)
    return this.slanted(kind, u0, v0, u1, v1)
  }

  private upright(kind: Family, u: number, v0: number, v1: number): boolean {
    const { a, b } = kind
    const down = v1 < v0
    if (u < CLEAR_MM || u > a - CLEAR_MM) return false
    if ((down ? v1 : v0) > -CLEAR_MM || (down ? v0 : v1) < b + CLEAR_MM) return false
    const kept = down ? a - u : u
    this.moduleMm2 = kept * b
    this.borderMm = 2 * kept + b
    this.extentU = part(down, u, kind.insetU, kind.tileA)
    this.extentV = kind.tileB
    this.tileMm2 = this.extentU * this.extentV
    return true
  }

  private level(kind: Family, v: number, u0: number, u1: number): boolean {
    const { a, b } = kind
    const above = u1 > u0
    if (v < CLEAR_MM || v > b - CLEAR_MM) return false
    if ((above ? u0 : u1) > -CLEAR_MM || (above ? u1 : u0) < a + CLEAR_MM) return false
    const kept = above ? b - v : v
    this.moduleMm2 = kept * a
    this.borderMm = 2 * kept + a
    this.extentU = kind.tileA
    this.extentV = part(above, v, kind.insetV, kind.tileB)
    this.tileMm2 = this.extentU * this.extentV
    return true
  }

  private slanted(kind: Family, u0: number, v0: number, u1: number, v1: number): boolean {
    const [du, dv] = [u1 - u0, v1 - v0]
    if (Math.abs(du) < LEAN_MM || Math.abs(dv) < LEAN_MM) return false
    // The stretch within the module must have both its ends on the border: no corner of the room inside.
    const [p, q] = [(-CLEAR_MM - u0) / du, (kind.a + CLEAR_MM - u0) / du]
    const [r, s] = [(-CLEAR_MM - v0) / dv, (kind.b + CLEAR_MM - v0) / dv]
    const from = Math.max(Math.min(p, q), Math.min(r, s))
    const to = Math.min(Math.max(p, q), Math.max(r, s))
    if (!(from >= 0 && to <= 1 && from < to)) return false
    const { insetU, insetV, tileA, tileB } = kind
    this.keepLeft(u0, v0, du, dv, insetU, insetV, insetU + tileA, insetV + tileB)
    this.tileMm2 = this.areaMm2
    const [extentU, extentV] = [this.extentU, this.extentV]
    this.keepLeft(u0, v0, du, dv, 0, 0, kind.a, kind.b)
    this.moduleMm2 = this.areaMm2
    this.borderMm = this.edgeMm
    this.extentU = extentU
    this.extentV = extentV
    return true
  }

  /** The part of a rectangle to the left of a line: area, extents, and how much of the rectangle's border it has. */
  private keepLeft(
    u0: number,
    v0: number,
    du: number,
    dv: number,
    au: number,
    av: number,
    bu: number,
    bv: number,
  ): void {
    let [minU, maxU, minV, maxV] = [Infinity, -Infinity, Infinity, -Infinity]
    let [twice, edge, firstU, firstV, lastU, lastV] = [0, 0, 0, 0, 0, 0]
    let points = 0
    const add = (u: number, v: number) => {
      if (points++ === 0) {
        firstU = u
        firstV = v
      } else twice += (lastU - firstU) * (v - firstV) - (u - firstU) * (lastV - firstV)
      lastU = u
      lastV = v
      if (u < minU) minU = u
      if (u > maxU) maxU = u
      if (v < minV) minV = v
      if (v > maxV) maxV = v
    }
    for (let k = 0; k < 4; k++) {
      const pu = k === 0 || k === 3 ? au : bu
      const pv = k < 2 ? av : bv
      const qu = k < 2 ? bu : au
      const qv = k === 0 || k === 3 ? av : bv
      const fp = du * (pv - v0) - dv * (pu - u0)
      const fq = du * (qv - v0) - dv * (qu - u0)
      const length = k % 2 === 0 ? bu - au : bv - av
      if (fp >= 0) add(pu, pv)
      if (fp >= 0 && fq >= 0) edge += length
      else if (fp >= 0 || fq >= 0) {
        const t = fp / (fp - fq)
        edge += length * (fp >= 0 ? t : 1 - t)
        add(pu + t * (qu - pu), pv + t * (qv - pv))
      }
    }
    this.areaMm2 = twice / 2
    this.edgeMm = edge
    this.extentU = points > 0 ? maxU - minU : 0
    this.extentV = points > 0 ? maxV - minV : 0
  }
}

/** The part of a tile's extent beyond a place, or before it. */
function part(beyond: boolean, at: number, inset: number, extent: number): number {
  const kept = beyond ? inset + extent - at : at - inset
  return kept < 0 ? 0 : Math.min(kept, extent)
}
