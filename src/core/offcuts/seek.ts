/** A plan of so many tiles, tile after tile: the largest piece left takes the fills that are worth most among the pieces
 *  still there. First the best fill every time, then plans that depart from it a little, then a little more, and at last
 *  everything. After Harvey and Ginsberg, "Limited discrepancy search", IJCAI 1995. From memory. */
import { type Search, STATE_STEPS } from './fill.ts'
import type { Fills } from './fills.ts'

/** Departures allowed in each pass: taking the second best fill is one, the third best two, and so on. */
const PASSES = [0, 1, 2, 3, 5, 8]
/** Fills thought of for a tile in these passes. */
const WIDTH = 5
/** How much of a price is the piece's area: it tells fills of equal worth apart. */
const BY_AREA = 0.03
const TINY = 1e-6

type Choice = { readonly kinds: readonly number[]; readonly worth: number }

/** Prices at which no fill is worth more than 1; at most `spend` steps. */
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
  let width = WIDTH
  /** By what is left and the tiles for it: the fills to try, and the departures with which they came to nothing. */
  let known = new Map<string, { choices: Choice[]; told: boolean; failed: number }>()
  let exhausted = true
  for (const departures of PASSES) {
    exhausted = true
    if (next(target - total, departures)) return { tiles, exhausted: false }
    if (exhausted || fills.spent > stop) return { tiles: null, exhausted: exhausted && fills.spent <= stop }
  }
  known = new Map()
  width = Number.POSITIVE_INFINITY
  exhausted = true
  if (next(target - total, width)) return { tiles, exhausted: false }
  return { tiles: null, exhausted: exhausted && fills.spent <= stop }

  function next(spare: number, departures: number): boolean {
    const kind = left.findIndex((n) => n > 0)
    if (kind < 0) return true
    if (tiles.length >= target || spare < -TINY) return false
    fills.steps += STATE_STEPS
    const state = String.fromCharCode(tiles.length, ...left)
    let here = known.get(state)
    if (here && here.failed >= departures) {
      if (width === WIDTH) exhausted = false
      return false
    }
    if (!here) {
      here = { ...choices(kind, spare), failed: -1 }
      known.set(state, here)
    }
    if (!here.told || here.choices.length === width || here.choices.length > departures + 1) exhausted = false
    for (const [rank, { kinds, worth }] of here.choices.entries()) {
      if (rank > departures) break
      for (const k of kinds) left[k]!--
      tiles.push(kinds)
      if (next(spare - (1 - worth), departures - rank)) return true
      tiles.pop()
      for (const k of kinds) left[k]!++
      if (fills.spent > stop) return false
    }
    here.failed = departures
    return false
  }

  function choices(kind: number, spare: number): { choices: Choice[]; told: boolean } {
    const out: Choice[] = []
    fills.aim(blend, left)
    fills.least = 1 - spare - TINY
    const told = fills.walk(kind, stop, (kinds, worth) => {
      const at = out.findIndex((c) => c.worth < worth)
      out.splice(at < 0 ? out.length : at, 0, { kinds: [...kinds], worth })
      if (out.length > width) out.pop()
      if (out.length === width) fills.least = out.at(-1)!.worth
    })
    return { choices: out, told }
  }
}
