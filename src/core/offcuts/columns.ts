/** Prices by column generation: fills worth more than a tile at the present prices come in until there are none.
 *  What all pieces are worth, divided by the dearest fill, bounds the tiles at every round.
 *  Gilmore and Gomory, Operations Research 9 (1961); the bound on the way after Farley, Operations Research 38 (1990);
 *  new prices mixed with the best so far after Wentges, International Transactions in Operational Research 4 (1997).
 *  From memory. */

import { cover } from './cover.ts'
import type { Fills } from './fills.ts'
import { mayTell } from './groups.ts'
import { asPattern, type Pattern } from './patterns.ts'
import { Simplex, worth } from './prices.ts'

/** How much of the newest prices goes into those tried, at least. */
const FRESH = 0.5
/** How much of what they are worth above the bound is kept in those tried. */
const ABOVE = 0.5
/** What a walk may spend at first: a fill found soon does for the early rounds. */
const QUOTA = 300
const MORE_QUOTA = 4
/** Without as many new fills in a round walks may spend more. */
const FEW = 1
const MOST_PIVOTS = 400
/** By how much the bound must be passed, in tiles, against rounding. */
const PAST = 1e-4
const OVER = 1e-6
const TINY = 1e-9

export class Columns {
  /** By kind, no fill worth more than 1. */
  price: Float64Array
  /** No plan does with fewer tiles. */
  bound: number
  /** Prices can raise the bound no further. */
  spent = false
  readonly #fills: Fills
  readonly #demand: readonly number[]
  readonly #simplex: Simplex
  readonly #columns: Pattern[] = []
  #quota = QUOTA

  /** @param price by kind, such that no fill is worth more than 1 */
  constructor(fills: Fills, price: Float64Array, bound: number) {
    this.#fills = fills
    this.#demand = fills.groups.shop.kinds.map((k) => k.qty)
    this.#simplex = new Simplex(this.#demand)
    this.price = price
    this.bound = bound
  }

  /** Kinds that fit in one tile, in ascending order. */
  add(fills: readonly (readonly number[])[]): void {
    for (const kinds of fills) this.#columns.push(asPattern(this.#fills.groups.shop, kinds))
  }

  /** Raises the bound until it meets so many tiles, can rise no further, or so many steps are spent. */
  run(tiles: number, spend: number): void {
    const stop = this.#fills.spent + spend
    while (this.bound < tiles && !this.spent && this.#fills.spent <= stop) this.#round(stop)
  }

  /** A plan of so many tiles from the fills that came up, if they hold one. */
  pick(target: number, steps: number): readonly (readonly number[])[] | null {
    const price = this.#simplex.price.map((p) => Math.max(0, p))
    const dearest = this.#columns.reduce((most, column) => Math.max(most, worth(column, price)), 1)
    const patterns = this.#columns.filter(({ counts }) => mayTell(counts))
    return cover({ demand: this.#demand, patterns, price: price.map((p) => p / dearest) }, target, steps).tiles
  }

  #worthAt(price: Float64Array): number {
    return this.#demand.reduce((sum, n, kind) => sum + n * price[kind]!, 0)
  }

  #round(stop: number): void {
    const simplex = this.#simplex
    simplex.settle(this.#columns, MOST_PIVOTS)
    const most = this.#worthAt(simplex.price)
    this.spent = most <= this.bound + 2 * PAST || simplex.steps >= MOST_PIVOTS
    if (this.spent) return
    // Prices near those that are known to be good cost less to check, but must still be worth more than the bound.
    const best = this.#worthAt(this.price)
    const enough = (this.bound + ABOVE * (most - this.bound) - best) / (most - best)
    const mixed = mixture(simplex.price, this.price, Math.max(FRESH, enough))
    const least = this.#worthAt(mixed) / (this.bound + PAST)
    const round = dearFills(this.#fills, mixed, this.#demand, least, this.#quota, stop)
    const is = this.#worthAt(mixed) / round.dearest
    if (round.whole && is > best) {
      this.price = mixed.map((p) => p / round.dearest)
      this.bound = Math.max(this.bound, Math.ceil(is - OVER))
    }
    if (round.fills.length < FEW) this.#quota *= MORE_QUOTA
    this.#columns.push(...round.fills)
  }
}

function mixture(fresh: Float64Array, price: Float64Array, share: number): Float64Array {
  return fresh.map((p, kind) => {
    const mixed = share * Math.max(0, p) + (1 - share) * price[kind]!
    return mixed > OVER ? mixed : 0
  })
}

/** For each kind the dearest fill of which it is the largest piece, where that is over `least`; `whole` if nothing was missed. */
function dearFills(
  fills: Fills,
  price: Float64Array,
  demand: readonly number[],
  least: number,
  quota: number,
  stop: number,
) {
  const found: Pattern[] = []
  let whole = true
  let dearest = least
  // Pieces that cost nothing are left out: they make no fill dearer.
  const left = demand.map((n, kind) => (price[kind]! > 0 ? n : 0))
  fills.aim(price, left)
  for (let first = 0; first < left.length && fills.ceiling(first) > least; first++) {
    if (!left[first]) continue
    let kinds: number[] = []
    fills.least = least
    const told = fills.walk(first, Math.min(stop, fills.spent + quota), (held, worth) => {
      kinds = [...held]
      fills.least = worth + TINY
    })
    if (!told) whole = false
    if (kinds.length === 0) continue
    found.push(asPattern(fills.groups.shop, kinds))
    dearest = Math.max(dearest, fills.least)
  }
  return { fills: found, dearest, whole }
}
