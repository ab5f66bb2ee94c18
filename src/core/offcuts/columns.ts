/** Prices by column generation: fills worth more than a tile at the present prices come in until there are none.
 *  What all pieces are worth, divided by the dearest fill, bounds the tiles at every round.
 *  Gilmore and Gomory, Operations Research 9 (1961); the bound on the way after Farley, Operations Research 38 (1990);
 *  new prices mixed with the best so far after Wentges, International Transactions in Operational Research 4 (1997).
 *  From memory. */
import type { Fills } from './fills.ts'
import { asPattern, type Pattern } from './patterns.ts'
import { Simplex } from './prices.ts'

export type Priced = {
  /** By kind, no fill worth more than 1. */
  readonly price: Float64Array
  readonly bound: number
}

type Start = {
  readonly demand: readonly number[]
  /** Kinds by tile, of the best plan so far. */
  readonly plan: readonly (readonly number[])[]
  /** Prices at which no fill is worth more than 1. */
  readonly price: Float64Array
  readonly bound: number
}

type Limits = { readonly simplex: number; readonly spend: number }

/** How much of new prices goes into the mixture. */
const FRESH = 0.5
/** What a walk may spend at first: a fill found soon does for the early rounds. */
const QUOTA = 100
const MORE_QUOTA = 4
/** With fewer new fills in a round than this, walks may spend more. */
const FEW = 3
/** Prices this near to the best there are, in tiles, are good enough. */
const NEAR = 0.01
const OVER = 1e-6
const TINY = 1e-9

/** Better prices and a bound; stops where the bound meets the plan or can rise no further. */
export function betterPrices(fills: Fills, start: Start, limits: Limits): Priced {
  const { demand, plan } = start
  const { shop } = fills.groups
  const worthAt = (price: Float64Array) => demand.reduce((sum, n, kind) => sum + n * price[kind]!, 0)
  const simplex = new Simplex(demand)
  const columns = plan.map((kinds) =>
    asPattern(
      shop,
      kinds.toSorted((a, b) => a - b),
    ),
  )
  const stop = fills.spent + limits.spend
  let { price, bound } = start
  let best = worthAt(price)
  let quota = QUOTA
  while (bound < plan.length && fills.spent <= stop) {
    while (simplex.steps < limits.simplex && simplex.step(columns));
    const most = worthAt(simplex.price)
    if (most <= bound + OVER || simplex.steps >= limits.simplex) break
    const mixed = mixture(simplex.price, price)
    const round = dearFills(fills, mixed, demand, Math.min(quota, stop - fills.spent))
    const worth = worthAt(mixed) / round.dearest
    if (round.whole && worth > best) {
      best = worth
      price = mixed.map((p) => p / round.dearest)
      bound = Math.max(bound, Math.ceil(worth - OVER))
    }
    if (round.whole && round.fills.length === 0 && best >= most - NEAR) break
    if (round.fills.length < FEW) quota *= MORE_QUOTA
    columns.push(...round.fills)
  }
  return { price, bound }
}

function mixture(fresh: Float64Array, price: Float64Array): Float64Array {
  return fresh.map((p, kind) => {
    const mixed = FRESH * Math.max(0, p) + (1 - FRESH) * price[kind]!
    return mixed > OVER ? mixed : 0
  })
}

/** For each kind the dearest fill of which it is the largest piece, where that is over 1; `whole` if nothing was missed. */
function dearFills(fills: Fills, price: Float64Array, demand: readonly number[], quota: number) {
  const found: Pattern[] = []
  let dearest = 1
  let whole = true
  // Pieces that cost nothing are left out: they make no fill dearer.
  const left = demand.map((n, kind) => (price[kind]! > 0 ? n : 0))
  fills.aim(price, left)
  for (let first = 0; first < left.length && fills.ceiling(first) > 1 + OVER; first++) {
    if (!left[first]) continue
    let kinds: number[] = []
    fills.least = 1 + OVER
    const told = fills.walk(first, fills.spent + quota, (held, worth) => {
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
