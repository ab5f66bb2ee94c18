/** Plans made in one pass: each piece in turn into the first or tightest free rectangle, which is then cut in two.
 *  First-fit decreasing is among the rules, so the plan made here is never worse than that. */
import type { Lying } from './groups.ts'
import { ALL_SIDES, BOTTOM, LEFT, type Pose, RIGHT, type Shop, TOP } from './shop.ts'

type Free = { x: number; y: number; w: number; h: number; sides: number }
/** `widest` and `highest` of its free rectangles, so that most full tiles are passed over at a glance. */
type Tile = { free: Free[]; laid: Lying[]; widest: number; highest: number }

const SORTS = {
  area: (p: Pose) => p.w * p.h,
  width: (p: Pose) => p.w * 1e6 + p.h,
  height: (p: Pose) => p.h * 1e6 + p.w,
  longest: (p: Pose) => Math.max(p.w, p.h) * 1e6 + Math.min(p.w, p.h),
  rim: (p: Pose) => p.w + p.h,
} as const
/** Which way the rest of a rectangle is cut: the strip above runs its full width, the strip beside its full height, or
 *  whichever leaves the larger or the smaller single piece. */
const CUTS = ['above', 'beside', 'large', 'small'] as const
type Cut = (typeof CUTS)[number]
const FITS = ['first', 'snug'] as const
type Fit = (typeof FITS)[number]

/** Past this many pieces only the first-fit rules run. */
const MANY = 400
/** Past this many, one of them. */
const VERY_MANY = 4000

export type Rule = { readonly order: readonly number[]; readonly cut: Cut; readonly fit: Fit }

/** The rules to try, each a sequence of kinds with a way to cut and to choose. */
export function quickRules(shop: Shop): Rule[] {
  const kinds = shop.kinds.map((_, i) => i)
  const many = shop.pieces > MANY
  const rules: Rule[] = []
  const sorts = shop.pieces > VERY_MANY ? [SORTS.area] : many ? [SORTS.area, SORTS.width] : Object.values(SORTS)
  for (const sort of sorts) {
    const by = kinds.map((k) => sort(shop.kinds[k]!.poses[0]!))
    const order = kinds.toSorted((a, b) => by[b]! - by[a]!)
    for (const cut of shop.pieces > VERY_MANY ? (['large'] as const) : many ? (['above', 'beside'] as const) : CUTS)
      for (const fit of many ? (['first'] as const) : FITS) rules.push({ order, cut, fit })
  }
  return rules
}

export function quickPlan(shop: Shop, rule: Rule): Lying[][] {
  const tiles: Tile[] = []
  /** Those that something may still fit in. */
  const open: Tile[] = []
  const least = {
    w: shop.kinds.reduce((w, k) => Math.min(w, ...k.poses.map((p) => p.w)), shop.w),
    h: shop.kinds.reduce((h, k) => Math.min(h, ...k.poses.map((p) => p.h)), shop.h),
  }
  const begin = () => {
    const tile: Tile = {
      free: [{ x: 0, y: 0, w: shop.w, h: shop.h, sides: ALL_SIDES }],
      laid: [],
      widest: shop.w,
      highest: shop.h,
    }
    tiles.push(tile)
    open.push(tile)
    return tile
  }
  for (const kind of rule.order) {
    const { qty, poses } = shop.kinds[kind]!
    const narrow = poses.reduce((w, p) => Math.min(w, p.w), shop.w)
    const low = poses.reduce((h, p) => Math.min(h, p.h), shop.h)
    // What did not take this kind before has not grown since.
    let from = 0
    for (let n = 0; n < qty; n++) {
      let best: { tile: Tile; at: number; pose: Pose } | null = null
      let bestScore = Number.POSITIVE_INFINITY
      for (let t = from; t < open.length && !(best && rule.fit === 'first'); t++) {
        const tile = open[t]!
        if (tile.widest < narrow || tile.highest < low) continue
        for (let at = 0; at < tile.free.length; at++)
          for (const pose of poses) {
            const score = fitScore(tile.free[at]!, pose, rule.fit)
            if (score >= bestScore) continue
            bestScore = score
            best = { tile, at, pose }
            if (rule.fit === 'first') from = t
          }
      }
      if (!best) {
        const tile = begin()
        if (rule.fit === 'first') from = open.length - 1
        best = { tile, at: 0, pose: poses[0]! }
      }
      put(best.tile, best.at, best.pose, kind, rule.cut)
      trim(best.tile, least)
      if (best.tile.laid.length >= shop.max || best.tile.free.length === 0) open.splice(open.indexOf(best.tile), 1)
    }
  }
  return tiles.map((t) => t.laid)
}

function fitScore(free: Free, pose: Pose, fit: Fit): number {
  const [w, h] = [free.w - pose.w, free.h - pose.h]
  if (w < 0 || h < 0 || (pose.needs & free.sides) !== pose.needs) return Number.POSITIVE_INFINITY
  if (fit === 'snug') return Math.min(w, h)
  return free.w * free.h - pose.w * pose.h
}

function put(tile: Tile, at: number, pose: Pose, kind: number, cut: Cut): void {
  const room = tile.free[at]!
  const right = (pose.needs & RIGHT) !== 0
  const top = (pose.needs & TOP) !== 0
  const [restW, restH] = [room.w - pose.w, room.h - pose.h]
  tile.laid.push({ kind, x: right ? room.x + restW : room.x, y: top ? room.y + restH : room.y, w: pose.w, h: pose.h })
  const aboveWhole = cut === 'above' || (cut !== 'beside' && room.w * restH >= room.h * restW === (cut === 'large'))
  const beside = {
    x: right ? room.x : room.x + pose.w,
    y: aboveWhole && top ? room.y + restH : room.y,
    w: restW,
    h: aboveWhole ? pose.h : room.h,
    sides: room.sides & ~(right ? RIGHT : LEFT) & (aboveWhole && restH ? ~(top ? BOTTOM : TOP) : ALL_SIDES),
  }
  const above = {
    x: !aboveWhole && right ? room.x + restW : room.x,
    y: top ? room.y : room.y + pose.h,
    w: aboveWhole ? room.w : pose.w,
    h: restH,
    sides: room.sides & ~(top ? TOP : BOTTOM) & (!aboveWhole && restW ? ~(right ? LEFT : RIGHT) : ALL_SIDES),
  }
  tile.free.splice(at, 1, beside, above)
}

/** Rectangles that not even the smallest piece fits in are no use to anybody. */
function trim(tile: Tile, least: { w: number; h: number }): void {
  let kept = 0
  tile.widest = 0
  tile.highest = 0
  for (let i = 0; i < tile.free.length; i++) {
    const free = tile.free[i]!
    if (free.w < least.w || free.h < least.h) continue
    tile.free[kept++] = free
    tile.widest = Math.max(tile.widest, free.w)
    tile.highest = Math.max(tile.highest, free.h)
  }
  tile.free.length = kept
}
