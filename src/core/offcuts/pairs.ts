/** At most two pieces from a tile: as many pairs as possible, exactly. */
import { belowOf, leftOf, oneAbove, sideBySide } from './fronts.ts'
import type { Lying } from './groups.ts'
import { type Pose, RIGHT, type Shop, TOP } from './shop.ts'

type Pair = { readonly p: Pose; readonly q: Pose; readonly beside: boolean }

function pairOf({ w, h, kinds }: Shop, a: number, b: number): Pair | null {
  for (const p of kinds[a]!.poses)
    for (const q of kinds[b]!.poses) {
      if (p.w + q.w <= w && sideBySide(p.needs, q.needs)) return { p, q, beside: true }
      if (p.h + q.h <= h && oneAbove(p.needs, q.needs)) return { p, q, beside: false }
    }
  return null
}

/** Whether one piece each of two kinds comes out of one tile. */
export const pairFits = (shop: Shop, a: number, b: number): boolean => pairOf(shop, a, b) !== null

/** Where one piece, or two that fit, lie in the tile. */
export function layPair(shop: Shop, [a, b]: readonly number[]): Lying[] {
  const put = (kind: number, { w, h, needs }: Pose, farX: boolean, farY: boolean): Lying => ({
    kind,
    x: farX || needs & RIGHT ? shop.w - w : 0,
    y: farY || needs & TOP ? shop.h - h : 0,
    w,
    h,
  })
  if (b === undefined) return [put(a!, shop.kinds[a!]!.poses[0]!, false, false)]
  const { p, q, beside } = pairOf(shop, a!, b)!
  const first = (beside ? leftOf : belowOf)(p.needs, q.needs)
  return [put(a!, p, beside && !first, !beside && !first), put(b, q, beside && first, !beside && first)]
}

/** Partners by index, -1 for a piece on its own: a largest matching by Edmonds' blossom method (Canadian Journal of
 *  Mathematics 17, 1965), O(n^3). */
export function matchPairs(n: number, fits: (a: number, b: number) => boolean): Int32Array {
  const mate = new Int32Array(n).fill(-1)
  for (let a = 0; a < n; a++)
    for (let b = a + 1; b < n && mate[a] === -1; b++)
      if (mate[b] === -1 && fits(a, b)) {
        mate[a] = b
        mate[b] = a
      }
  const parent = new Int32Array(n)
  const base = new Int32Array(n)
  const used = new Uint8Array(n)
  const blossom = new Uint8Array(n)
  const seen = new Uint8Array(n)
  for (let root = 0; root < n; root++)
    if (mate[root] === -1) {
      let v = grow(root)
      while (v !== -1) {
        const before = parent[v]!
        const next = mate[before]!
        mate[v] = before
        mate[before] = v
        v = next
      }
    }
  return mate

  function grow(root: number): number {
    used.fill(0)
    parent.fill(-1)
    for (let i = 0; i < n; i++) base[i] = i
    used[root] = 1
    const queue = [root]
    for (const v of queue)
      for (let to = 0; to < n; to++) {
        if (to === v || base[v] === base[to] || mate[v] === to || !fits(v, to)) continue
        if (to === root || (mate[to] !== -1 && parent[mate[to]!] !== -1)) shrink(v, to, queue)
        else if (parent[to] === -1) {
          parent[to] = v
          if (mate[to] === -1) return to
          used[mate[to]!] = 1
          queue.push(mate[to]!)
        }
      }
    return -1
  }

  function shrink(v: number, to: number, queue: number[]): void {
    const stem = commonBase(v, to)
    blossom.fill(0)
    mark(v, stem, to)
    mark(to, stem, v)
    for (let i = 0; i < n; i++)
      if (blossom[base[i]!]) {
        base[i] = stem
        if (!used[i]) {
          used[i] = 1
          queue.push(i)
        }
      }
  }

  function commonBase(a: number, b: number): number {
    seen.fill(0)
    for (let v = a; ; v = parent[mate[v]!]!) {
      v = base[v]!
      seen[v] = 1
      if (mate[v] === -1) break
    }
    for (let v = b; ; v = parent[mate[v]!]!) {
      v = base[v]!
      if (seen[v]) return v
    }
  }

  function mark(from: number, stem: number, child: number): void {
    for (let v = from; base[v] !== stem; v = parent[mate[v]!]!) {
      blossom[base[v]!] = 1
      blossom[base[mate[v]!]!] = 1
      parent[v] = child
      child = mate[v]!
    }
  }
}

/** Kinds in each tile: the first piece left with the first other that fits beside it. Where sizes descend and only one
 *  direction counts this is the most pairs there are: the largest piece takes the largest that fits with it, and any
 *  other plan can be changed into that one without a tile more. */
export function greedyPairs(qty: readonly number[], fits: (a: number, b: number) => boolean): number[][] {
  const left = [...qty]
  const tiles: number[][] = []
  for (let a = 0; a < left.length; a++)
    for (let b = a; left[a]! > 0; ) {
      while (b < left.length && (left[b]! < (b === a ? 2 : 1) || !fits(a, b))) b++
      const n = b === a ? left[a]! >> 1 : b < left.length ? Math.min(left[a]!, left[b]!) : left[a]!
      left[a]! -= b === a ? 2 * n : n
      if (b !== a && b < left.length) left[b]! -= n
      for (let i = 0; i < n; i++) tiles.push(b < left.length ? [a, b] : [a])
    }
  return tiles
}
