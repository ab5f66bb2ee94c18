/** Bounds on the tiles from sizes alone. A dual feasible function stretches large sizes and shrinks small ones so that
 *  no set that fits in one tile grows past it; the area after stretching both ways is still a bound.
 *  Fekete and Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91 (2001);
 *  the rounding one after Carlier, Clautiaux and Moukrim, Computers & Operations Research 34 (2007). From memory. */
import type { Pose, Shop } from './shop.ts'

type Stretch = { readonly most: number; readonly of: (size: number) => number }

/** Past this many kinds only a sample of the functions is tried. */
const MOST_FUNCTIONS = 40
/** Measures kept besides the area. */
const MEASURES = 3
const TINY = 1e-6

/** The bound, and the measures of a tile that bound it most, the plain area last. */
export function sizeBound(shop: Shop): { readonly bound: number; readonly measures: readonly Float64Array[] } {
  const poses = shop.kinds.flatMap(twoPoses)
  const qty = Float64Array.from(shop.kinds, (k) => k.qty)
  const mirror = mayMirror(shop)
  const shares = (side: 'w' | 'h') => {
    const sizes = poses.map((p) => p[side])
    return stretches(sizes, shop[side]).map((stretch) => stretched(sizes, stretch))
  }
  const [widths, heights] = [shares('w'), shares('h')]
  const row = (at: number) => widths[Math.floor(at / heights.length)]!
  const column = (at: number) => heights[at % heights.length]!
  const sums = new Float64Array(widths.length * heights.length)
  for (let at = 0; at < sums.length; at++) sums[at] = total(qty, row(at), column(at), mirror)
  const strongest: number[] = []
  const bound = Math.max(Math.ceil(shop.pieces / shop.max), Math.ceil(sums.reduce((a, b) => Math.max(a, b)) - TINY))
  let below = Number.POSITIVE_INFINITY
  while (strongest.length < MEASURES) {
    let best = 0
    for (let at = 1; at < sums.length; at++) if (sums[at]! < below && (!best || sums[at]! > sums[best]!)) best = at
    if (!best) break
    strongest.push(best)
    below = sums[best]! - TINY
  }
  const measures = [...strongest, 0].map((at) => qty.map((_, k) => share(k, row(at), column(at), mirror)))
  return { bound, measures }
}

/** Each size as a share of the tile. */
function stretched(sizes: readonly number[], { of, most }: Stretch): Float64Array {
  const shares = new Float64Array(sizes.length)
  for (let i = 0; i < sizes.length; i++) shares[i] = of(sizes[i]!) / most
  return shares
}

/** A piece upright and turned; the same pose twice where it may lie one way alone. */
function twoPoses({ poses }: Shop['kinds'][number]): [Pose, Pose] {
  const [first] = poses
  return [first!, poses.find((p) => p.w !== first!.w || p.h !== first!.h) ?? first!]
}

/** Whether every fill may be mirrored about the tile's diagonal: then a piece takes the mean of both its poses. */
function mayMirror({ w, h, kinds }: Shop): boolean {
  return w === h && kinds.every(({ poses }) => poses.some((p) => p.w === poses[0]!.h && p.h === poses[0]!.w))
}

/** What a piece takes of a tile in the pose that takes least. */
function share(kind: number, w: Float64Array, h: Float64Array, mirror: boolean): number {
  const upright = w[2 * kind]! * h[2 * kind]!
  const turned = w[2 * kind + 1]! * h[2 * kind + 1]!
  return mirror ? (upright + turned) / 2 : Math.min(upright, turned)
}

/** What all pieces add up to. */
function total(qty: Float64Array, w: Float64Array, h: Float64Array, mirror: boolean): number {
  let sum = 0
  for (let kind = 0; kind < qty.length; kind++) sum += qty[kind]! * share(kind, w, h, mirror)
  return sum
}

function stretches(sizes: readonly number[], full: number): Stretch[] {
  const marks = thinned([...new Set(sizes.flatMap((s) => [s, full - s]))].filter((s) => s > 0 && s <= full / 2))
  const plain: Stretch = { most: full, of: (s) => s }
  const pushed = marks.map((mark): Stretch => ({ most: full, of: (s) => (s > full - mark ? full : s < mark ? 0 : s) }))
  const stepped = marks.map((mark): Stretch => {
    const whole = Math.floor(full / mark)
    return {
      most: 2 * whole,
      of: (s) => {
        if (s > full / 2) return 2 * (whole - Math.floor((full - s) / mark))
        return s === full / 2 ? whole : 2 * Math.floor(s / mark)
      },
    }
  })
  const counted = [2, 3, 4, 5, 6].map((n): Stretch => ({ most: full, of: (s) => portion(s, full, n) }))
  return [plain, ...pushed, ...stepped, ...counted]
}

/** Sizes rounded to n-ths of the tile, exact multiples of 1 / (n + 1) left as they are. */
function portion(size: number, full: number, n: number): number {
  const share = (size * (n + 1)) / full
  return Number.isInteger(share) ? size : (Math.floor(share) * full) / n
}

function thinned(marks: number[]): number[] {
  marks.sort((a, b) => a - b)
  const step = Math.ceil(marks.length / (MOST_FUNCTIONS / 2))
  return marks.filter((_, i) => i % step === 0)
}
