/** A price for each kind such that no tile holds more than 1 of worth: the dual of covering the pieces with tiles in
 *  fractions. What all pieces are worth together is then a bound on the tiles.
 *  Gilmore and Gomory, "A linear programming approach to the cutting-stock problem", Operations Research 9 (1961). */
import type { Pattern } from './patterns.ts'

const TINY = 1e-9

/** Prices per kind, scaled so that no pattern exceeds 1; from the revised simplex method on a dense inverse. */
export function prices(demand: readonly number[], patterns: readonly Pattern[], mostSteps: number): Float64Array {
  const m = demand.length
  const inverse = new Float64Array(m * m)
  for (let i = 0; i < m; i++) inverse[i * m + i] = 1
  const amount = Float64Array.from(demand)
  const cost = new Float64Array(m).fill(1) // to begin with a tile for each piece
  const price = new Float64Array(m)
  const column = new Float64Array(m)
  for (let step = 0; step < mostSteps; step++) {
    price.fill(0)
    for (let i = 0; i < m; i++) if (cost[i]) for (let j = 0; j < m; j++) price[j]! += cost[i]! * inverse[i * m + j]!
    const entering = dearest(price, patterns)
    if (entering === null) break
    const pattern = typeof entering === 'number' ? null : entering
    for (let i = 0; i < m; i++) {
      if (pattern) {
        let sum = 0
        for (let k = 0; k < pattern.kinds.length; k++) sum += inverse[i * m + pattern.kinds[k]!]! * pattern.counts[k]!
        column[i] = sum
      } else column[i] = -inverse[i * m + (entering as number)]!
    }
    let row = -1
    let least = Number.POSITIVE_INFINITY
    for (let i = 0; i < m; i++) {
      if (column[i]! <= TINY) continue
      const ratio = amount[i]! / column[i]!
      if (ratio < least - TINY || (ratio < least + TINY && row >= 0 && column[i]! > column[row]!)) {
        least = ratio
        row = i
      }
    }
    if (row < 0) break
    pivot(inverse, amount, column, row, m)
    cost[row] = pattern ? 1 : 0
  }
  return scaled(price, patterns)
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

function pivot(inverse: Float64Array, amount: Float64Array, column: Float64Array, row: number, m: number): void {
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

/** Made safe against rounding and an early stop: any prices are good once the dearest pattern is worth 1. */
function scaled(price: Float64Array, patterns: readonly Pattern[]): Float64Array {
  for (let i = 0; i < price.length; i++) price[i] = Math.max(0, price[i]!)
  let most = 0
  for (const pattern of patterns) most = Math.max(most, worth(pattern, price))
  if (most > 1) for (let i = 0; i < price.length; i++) price[i]! /= most
  return price
}
