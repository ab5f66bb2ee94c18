import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { coverageFromUse, remaining } from '../../src/core/stock.ts'
import { good, near, refused } from './checks.ts'

const COVERAGE = { low: 3, usual: 4, high: 5 }

describe('will it do', () => {
  // By hand: 24 m2 at 4 m2 a bag is 6 bags, at 3 m2 it is 8, at 5 m2 it is 4.8.
  test.each([
    [8, 'enough', 0, 0],
    [7, 'tight', 0, 1],
    [6, 'tight', 0, 2],
    [5.5, 'short', 1, 3],
    [0, 'short', 6, 8],
  ] as const)('%d bags for 24 m2: %s, buy %d, safe %d', (onHand, verdict, buy, buySafe) => {
    const left = good(remaining(onHand, 24, COVERAGE))
    expect(left).toMatchObject({ verdict, buy, buySafe })
    near(left.needed.usual, 6, 1e-12)
    near(left.spare, onHand - 6, 1e-12)
    near(left.reachesM2.low, onHand * 3, 1e-12)
  })

  test('nothing left takes nothing', () => expect(good(remaining(0, 0, COVERAGE)).verdict).toBe('enough'))

  test('refuses what cannot be', () => {
    refused(remaining(-1, 10, COVERAGE), 'packs')
    refused(remaining(1, -10, COVERAGE), 'area')
    refused(remaining(1, 10, { low: 0, usual: 1, high: 2 }), 'coverage')
    refused(coverageFromUse(0, 10), 'packs')
    refused(coverageFromUse(2, 0), 'area')
  })

  test('what was bought is enough', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.double({ min: 0, max: 1e5, noNaN: true }),
        (have, area) => {
          const first = good(remaining(have, area, COVERAGE))
          expect(good(remaining(have + first.buySafe, area, COVERAGE)).verdict).toBe('enough')
          expect(good(remaining(have + first.buy, area, COVERAGE)).verdict).not.toBe('short')
        },
      ),
    ))
})

test('3 bags on 12 m2: 4 m2 a bag', () => expect(good(coverageFromUse(3, 12))).toBe(4))
