/** A price for each kind such that no tile holds more than 1 of worth: the dual of covering the pieces with tiles in
 *  fractions. What all pieces are worth together is then a bound on the tiles.
 *  Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9 (1961). */
import type { Pattern } from './patterns.ts'

const TINY = 1e-9

/** Patterns one after the other in flat lists: kind by kind with its count, pattern `p` from start[p] to start[p + 1]. */
type Flat = { readonly kind: Int32Array; readonly n: Int32Array; readonly start: Int32Array; readonly size: number }

function flat(patterns: readonly Pattern[]): Flat {
  const cells = patterns.reduce((sum, p) => sum + p.kinds.length, 0)
  const out = { kind: new Int32Array(cells), n: new Int32Array(cells), start: new Int32Array(patterns.length + 1) }
  let at = 0
  patterns.forEach(({ kinds, counts }, p) => {
    for (let k = 0; k < kinds.length; k++, at++) {
      out.kind[at] = kinds[k]!
      out.n[at] = counts[k]!
    }
    out.start[p + 1] = at
  })
  return { ...out, size: patterns.length }
}

/** How many of the dearest patterns come into the working set at a time. */
const AT_A_TIME = 40

/** Prices per kind, scaled so that no pattern exceeds 1: the revised simplex method on a dense inverse, the patterns
 *  looked through as a whole only when none of a small working set is worth more than 1. */
export function prices(demand: readonly number[], patterns: readonly Pattern[], mostSteps: number): Float64Array {
  const all = flat(patterns)
  const simplex = new Simplex(demand)
  const working: Pattern[] = []
  while (simplex.steps < mostSteps) {
    const worths = worthOfAll(all, simplex.price)
    const over = [...worths.keys()].filter((p) => worths[p]! > 1 + 1e-7)
    if (over.length === 0 && !simplex.step([])) break
    over.sort((a, b) => worths[b]! - worths[a]!)
    working.push(...over.slice(0, AT_A_TIME).map((p) => patterns[p]!))
    while (simplex.steps < mostSteps && simplex.step(working));
  }
  return scaled(simplex.price, worthOfAll(all, positive(simplex.price)))
}

function worthOfAll({ kind, n, start, size }: Flat, price: Float64Array): Float64Array {
  const worths = new Float64Array(size)
  for (let p = 0; p < size; p++) {
    let sum = 0
    for (let at = start[p]!; at < start[p + 1]!; at++) sum += price[kind[at]!]! * n[at]!
    worths[p] = sum
  }
  return worths
}

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
    pivot(this.#inverse, this.#amount, this.#column, row)
    this.#cost[row] = typeof entering === 'number' ? 0 : 1
    this.#reprice()
    return true
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
  let gain = 1e-7
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
  for (let j = 0; j < m; j++) inverse[row * m + j]! *= by
  amount[row]! *= by
  for (let i = 0; i < m; i++) {
    const factor = column[i]!
    if (i === row || factor === 0) continue
    for (let j = 0; j < m; j++) inverse[i * m + j]! -= factor * inverse[row * m + j]!
    amount[i]! -= factor * amount[row]!
  }
}

const positive = (price: Float64Array): Float64Array => price.map((p) => Math.max(0, p))

/** Made safe against rounding and an early stop: any prices are good once the dearest pattern is worth 1. */
function scaled(price: Float64Array, worths: Float64Array): Float64Array {
  const most = Math.max(
    1,
    worths.reduce((a, b) => Math.max(a, b), 0),
  )
  return positive(price).map((p) => p / most)
}
