/** A price for each kind such that no tile holds more than 1 of worth: the dual of covering the pieces with tiles in
 *  fractions. What all pieces are worth together is then a bound on the tiles.
 *  Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9 (1961). */
import type { Pattern } from './patterns.ts'

const TINY = 1e-9
const OVER = 1e-7

/** How many of the dearest patterns come into the working set at a time. */
const AT_A_TIME = 25

/** Prices per kind, scaled so that no pattern exceeds 1: the revised simplex method on a dense inverse, the patterns
 *  looked through as a whole only when none of a small working set is worth more than 1. */
export function prices(demand: readonly number[], patterns: readonly Pattern[], mostSteps: number): Float64Array {
  const simplex = new Simplex(demand)
  simplex.settle(patterns, mostSteps)
  return scaled(simplex.price, patterns)
}

/** Prices are changed step by step and worked out afresh after so many. */
const AFRESH = 16

/** The revised simplex method on a dense inverse. */
export class Simplex {
  readonly price: Float64Array
  steps = 0
  readonly #inverse: Float64Array
  readonly #amount: Float64Array
  readonly #cost: Float64Array
  readonly #column: Float64Array

  /** Begins with a tile for each piece. */
  constructor(demand: readonly number[]) {
    const m = demand.length
    this.#inverse = new Float64Array(m * m)
    for (let i = 0; i < m; i++) this.#inverse[i * m + i] = 1
    this.#amount = Float64Array.from(demand)
    this.#cost = new Float64Array(m).fill(1)
    this.price = new Float64Array(m).fill(1)
    this.#column = new Float64Array(m)
  }

  /** Brings one pattern, or one kind's surplus, into the plan; false when none of these makes it cheaper. */
  step(patterns: readonly Pattern[]): boolean {
    const entering = dearest(this.price, patterns)
    if (entering === null) return false
    this.steps++
    this.#expand(entering)
    const row = this.#leaving()
    if (row < 0) return false
    const saved = typeof entering === 'number' ? this.price[entering]! : 1 - worth(entering, this.price)
    pivot(this.#inverse, this.#amount, this.#column, row)
    this.#cost[row] = typeof entering === 'number' ? 0 : 1
    const m = this.price.length
    if (this.steps % AFRESH === 0) this.#reprice()
    else for (let j = 0; j < m; j++) this.price[j]! += saved * this.#inverse[row * m + j]!
    return true
  }

  /** Steps until none of the patterns makes the plan cheaper, or there were so many: the dearest few at a time, all of them
   *  looked through only when none of those is worth more than 1. */
  settle(patterns: readonly Pattern[], mostSteps: number): void {
    while (this.steps < mostSteps) {
      const over: { readonly pattern: Pattern; readonly worth: number }[] = []
      for (const pattern of patterns) {
        const is = worth(pattern, this.price)
        if (is > 1 + OVER) over.push({ pattern, worth: is })
      }
      if (over.length === 0 && !this.step([])) return
      over.sort((a, b) => b.worth - a.worth)
      const few = over.slice(0, AT_A_TIME).map((o) => o.pattern)
      while (this.steps < mostSteps && this.step(few));
    }
  }

  #expand(entering: Pattern | number): void {
    const m = this.price.length
    for (let i = 0; i < m; i++) {
      if (typeof entering === 'number') {
        this.#column[i] = -this.#inverse[i * m + entering]!
        continue
      }
      let sum = 0
      for (let k = 0; k < entering.kinds.length; k++)
        sum += this.#inverse[i * m + entering.kinds[k]!]! * entering.counts[k]!
      this.#column[i] = sum
    }
  }

  /** The row that runs out first; of several the one with the largest pivot. */
  #leaving(): number {
    let row = -1
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < this.price.length; i++) {
      const by = this.#column[i]!
      if (by <= TINY) continue
      const ratio = this.#amount[i]! / by
      if (ratio < least - TINY || (ratio < least + TINY && by > this.#column[row]!)) {
        least = ratio
        row = i
      }
    }
    return row
  }

  /** Prices anew from the whole plan, against rounding. */
  #reprice(): void {
    const m = this.price.length
    this.price.fill(0)
    for (let i = 0; i < m; i++)
      if (this.#cost[i]) for (let j = 0; j < m; j++) this.price[j]! += this.#inverse[i * m + j]!
  }
}

/** The pattern worth most above 1, the number of a kind with a negative price, or null when neither is left. */
function dearest(price: Float64Array, patterns: readonly Pattern[]): Pattern | number | null {
  let best: Pattern | number | null = null
  let gain = OVER
  for (let i = 0; i < price.length; i++)
    if (-price[i]! > gain) {
      gain = -price[i]!
      best = i
    }
  for (const pattern of patterns) {
    const over = worth(pattern, price) - 1
    if (over > gain) {
      gain = over
      best = pattern
    }
  }
  return best
}

export function worth({ kinds, counts }: Pattern, price: ArrayLike<number>): number {
  let sum = 0
  for (let k = 0; k < kinds.length; k++) sum += price[kinds[k]!]! * counts[k]!
  return sum
}

function pivot(inverse: Float64Array, amount: Float64Array, column: Float64Array, row: number): void {
  const m = column.length
  const by = 1 / column[row]!
  const used: number[] = []
  for (let j = 0; j < m; j++)
    if (inverse[row * m + j] !== 0) {
      inverse[row * m + j]! *= by
      used.push(j)
    }
  amount[row]! *= by
  for (let i = 0; i < m; i++) {
    const factor = column[i]!
    if (i === row || factor === 0) continue
    for (let u = 0; u < used.length; u++) inverse[i * m + used[u]!]! -= factor * inverse[row * m + used[u]!]!
    amount[i]! -= factor * amount[row]!
  }
}

/** Made safe against rounding and an early stop: any prices are good once the dearest pattern is worth 1. */
function scaled(fresh: Float64Array, patterns: readonly Pattern[]): Float64Array {
  const price = fresh.map((p) => Math.max(0, p))
  const most = patterns.reduce((dearest, pattern) => Math.max(dearest, worth(pattern, price)), 1)
  return price.map((p) => p / most)
}
