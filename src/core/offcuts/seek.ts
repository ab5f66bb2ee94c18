/** A plan of so many tiles, tile after tile: the largest piece left takes the fills that are worth most among the pieces
 *  still there. Narrow first, then wider: the best fill alone, then a few more at each tile. */
import { type Search, STATE_STEPS } from './fill.ts'
import type { Fills } from './fills.ts'

/** Fills tried for a tile, pass by pass. */
const WIDTHS = [1, 2, 4, 12, Number.POSITIVE_INFINITY]
/** How much of a price is the piece's area: it tells fills of equal worth apart. */
const BY_AREA = 0.03
const TINY = 1e-6

type Choice = { readonly kinds: readonly number[]; readonly worth: number }

export function seek(
  fills: Fills,
  price: ArrayLike<number>,
  demand: readonly number[],
  target: number,
  spend: number,
): Search {
  const { shop } = fills.groups
  const stop = fills.spent + spend
  const blend = Float64Array.from(shop.kinds, (k, i) => price[i]! * (1 - BY_AREA) + (BY_AREA * k.area) / shop.area)
  const total = demand.reduce((sum, n, k) => sum + n * blend[k]!, 0)
  const left = [...demand]
  const tiles: (readonly number[])[] = []
  let failed = new Map<string, number>()
  let exhausted = false
  for (const width of WIDTHS) {
    failed = new Map()
    exhausted = true
    if (next(target - total, width)) return { tiles, exhausted: false }
    if (exhausted || fills.spent > stop) break
  }
  return { tiles: null, exhausted: exhausted && fills.spent <= stop }

  function next(spare: number, width: number): boolean {
    const kind = left.findIndex((n) => n > 0)
    if (kind < 0) return true
    if (tiles.length >= target || spare < -TINY) return false
    fills.steps += STATE_STEPS
    const state = String.fromCharCode(...left)
    if ((failed.get(state) ?? -1) >= target - tiles.length) return false
    for (const { kinds, worth } of choices(kind, spare, width)) {
      for (const k of kinds) left[k]!--
      tiles.push(kinds)
      if (next(spare - (1 - worth), width)) return true
      tiles.pop()
      for (const k of kinds) left[k]!++
      if (fills.spent > stop) return false
    }
    failed.set(state, target - tiles.length)
    return false
  }

  function choices(kind: number, spare: number, width: number): Choice[] {
    const out: Choice[] = []
    fills.aim(blend, left)
    fills.least = 1 - spare - TINY
    const told = fills.walk(kind, stop, (kinds, worth) => {
      const at = out.findIndex((c) => c.worth < worth)
      out.splice(at < 0 ? out.length : at, 0, { kinds: [...kinds], worth })
      if (out.length > width) out.pop()
      if (out.length === width) fills.least = out.at(-1)!.worth
    })
    if (!told || out.length === width) exhausted = false
    return out
  }
}
