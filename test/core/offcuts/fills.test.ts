import { expect, it } from 'vitest'
import { sizeBound } from '../../../src/core/offcuts/bounds.ts'
import { Fills } from '../../../src/core/offcuts/fills.ts'
import { Groups } from '../../../src/core/offcuts/groups.ts'
import { chance } from '../../../src/core/offcuts/rework.ts'
import { openShop } from '../../../src/core/offcuts/shop.ts'
import { chancePieces } from './lists.ts'

function shopOf(seed: number, turn: 'none' | 'quarter') {
  const order = chancePieces(seed, turn, 0.3, 0.8, 9)
  const shop = openShop({ ...order, pieces: order.pieces.map((p, i) => ({ ...p, qty: 1 + (i % 2) })) })
  if ('impossible' in shop) throw new Error('a piece larger than its tile')
  return shop
}

/** The worth of the dearest fill whose largest piece is of this kind, every group tried. */
function dearest(groups: Groups, price: Float64Array, first: number): number {
  const left = groups.shop.kinds.map((k) => k.qty)
  let most = 0
  const grow = (kinds: number[], worth: number) => {
    if (!groups.find(kinds)) return
    most = Math.max(most, worth)
    left[kinds.at(-1)!]!--
    for (let k = kinds.at(-1)!; k < left.length; k++) if (left[k]! > 0) grow([...kinds, k], worth + price[k]!)
    left[kinds.at(-1)!]!++
  }
  grow([first], price[first]!)
  return most
}

/** What the dearest fill found is worth, null where the walk stopped before its end. */
function walked(fills: Fills, first: number, spend: number): number | null {
  let found = 0
  fills.least = 0
  const whole = fills.walk(first, fills.spent + spend, (_, worth) => {
    found = worth
    fills.least = worth
  })
  return whole ? found : null
}

it.each(['none', 'quarter'] as const)('finds the dearest fill of every first piece, turn %s', (turn) => {
  let shortWalks = 0
  for (let seed = 1; seed <= 30; seed++) {
    const shop = shopOf(seed, turn)
    const random = chance(seed)
    const price = Float64Array.from(shop.kinds, (k) => (k.area / shop.area) * (0.5 + (random() % 1000) / 1000))
    const left = shop.kinds.map((k) => k.qty)
    const all = new Groups(shop)
    const fills = new Fills(new Groups(shop), sizeBound(shop).measures)
    for (let first = 0; first < left.length; first++) {
      const truth = dearest(all, price, first)
      fills.aim(price, left)
      expect(walked(fills, first, Number.POSITIVE_INFINITY)).toBeCloseTo(truth, 9)
      expect(fills.ceiling(first)).toBeGreaterThanOrEqual(truth - 1e-9)
      const short = walked(fills, first, 300)
      if (short === null) continue
      expect(short).toBeCloseTo(truth, 9)
      shortWalks++
    }
  }
  expect(shortWalks).toBeGreaterThan(50)
})
