/** Bounds on the tiles from sizes alone. A dual feasible function stretches large sizes and shrinks small ones so that
 *  no set that fits in one tile grows past it; the area after stretching both ways is still a bound.
 *  Fekete and Schepers, "New classes of fast lower bounds for bin packing problems", Mathematical Programming 91 (2001);
 *  the rounding one after Carlier, Clautiaux and Moukrim, Computers & Operations Research 34 (2007). From memory. */
import type { Shop } from './shop.ts'

type Stretch = { readonly most: number; readonly of: (size: number) => number }

/** Past this many kinds only a sample of the functions is tried. */
const MOST_FUNCTIONS = 40

export function sizeBound(shop: Shop): number {
  const across = stretches(
    shop.kinds.flatMap((k) => k.poses.map((p) => p.w)),
    shop.w,
  )
  const up = stretches(
    shop.kinds.flatMap((k) => k.poses.map((p) => p.h)),
    shop.h,
  )
  const widths = across.map((f) => shop.kinds.map((k) => k.poses.map((p) => f.of(p.w) / f.most)))
  const heights = up.map((g) => shop.kinds.map((k) => k.poses.map((p) => g.of(p.h) / g.most)))
  let best = Math.ceil(shop.pieces / shop.max)
  for (const w of widths)
    for (const h of heights) {
      let sum = 0
      for (let k = 0; k < shop.kinds.length; k++) {
        let least = Number.POSITIVE_INFINITY
        const [ws, hs] = [w[k]!, h[k]!]
        for (let p = 0; p < ws.length; p++) least = Math.min(least, ws[p]! * hs[p]!)
        sum += least * shop.kinds[k]!.qty
      }
      best = Math.max(best, Math.ceil(sum - 1e-6))
    }
  return best
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
