import { createRequire } from 'node:module'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { breakage, forecast } from '../../src/core/forecast.ts'

const { gamma: mathGamma } = createRequire(import.meta.url)('mathjs/lib/browser/math.js') as {
  gamma: (n: number) => number
}

const RULES = { priorLogSd: 0.2, stretchLogSd: 0.1, readingPacks: 0.25 }
const SF = 0.09290304

const good = (...args: Parameters<typeof forecast>) => {
  const worked = forecast(...args)
  if (!worked.ok) throw new Error(worked.problem.code)
  return worked.value
}

describe('log-normal forecast', () => {
  // Derived by hand from the normal mean with known variance: precisions 25, 59.0 and 39.0.
  test('prior 42 sf a bag, 130 sf on 3 and 60 sf on 2: 38.3 sf a bag; 160 sf left take 4.2, 5.0 at 90 %', () => {
    const uses = [
      { packs: 3, areaM2: 130 * SF },
      { packs: 2, areaM2: 60 * SF },
    ]
    const f = good(42 * SF, uses, 160 * SF, RULES)
    expect(f.m2PerPack / SF).toBeCloseTo(38.3, 1)
    expect(f.packsEven).toBeCloseTo(4.2, 1)
    expect(f.packs90).toBeCloseTo(5.0, 1)
    expect(1 / f.logSd ** 2).toBeCloseTo(25 + 1 / (0.01 + (0.25 / 3) ** 2) + 1 / (0.01 + 0.125 ** 2), 6)
  })

  test('without a log the prior stands', () => {
    const f = good(4, [], 8, RULES)
    expect(f.m2PerPack).toBeCloseTo(4, 9)
    expect(f.packsEven).toBeCloseTo(2, 9)
    expect(f.logSd).toBeCloseTo(0.2, 9)
  })

  test('any log keeps the figure between the prior and the log, surer than before, in any order', () => {
    const use = fc.record({
      packs: fc.double({ min: 0.25, max: 50, noNaN: true }),
      areaM2: fc.double({ min: 0.5, max: 500, noNaN: true }),
    })
    fc.assert(
      fc.property(
        fc.array(use, { minLength: 1, maxLength: 20 }),
        fc.double({ min: 1, max: 10, noNaN: true }),
        (uses, prior) => {
          const f = good(prior, uses, 10, RULES)
          const rates = [prior, ...uses.map((u) => u.areaM2 / u.packs)]
          expect(f.m2PerPack).toBeGreaterThanOrEqual(Math.min(...rates) * (1 - 1e-9))
          expect(f.m2PerPack).toBeLessThanOrEqual(Math.max(...rates) * (1 + 1e-9))
          expect(f.logSd).toBeLessThan(0.2)
          expect(f.packs90).toBeGreaterThan(f.packsEven)
          expect(good(prior, uses.toReversed(), 10, RULES).m2PerPack).toBeCloseTo(f.m2PerPack, 9)
        },
      ),
    )
  })

  test.each([
    [0, [], 1],
    [Number.NaN, [], 1],
    [4, [{ packs: 0, areaM2: 1 }], 1],
    [4, [{ packs: 1, areaM2: -1 }], 1],
    [4, [], -1],
    [4, [], Number.POSITIVE_INFINITY],
  ])('prior %s, log %j, left %s is refused', (prior, uses, left) => {
    expect(forecast(prior, uses, left, RULES)).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
  })
})

describe('breakage', () => {
  /** Gamma functions of a general-purpose library, apart from the recursion. */
  const gamma = (n: number): number => Number(mathGamma(n))
  const cumulated = (k: number, r: number, p: number): number =>
    Array.from({ length: k + 1 }, (_, i) => (gamma(i + r) / (gamma(i + 1) * gamma(r))) * p ** r * (1 - p) ** i).reduce(
      (a, b) => a + b,
      0,
    )

  test.each([
    [3, 40, 20],
    [0, 40, 60],
    [1, 5, 80],
    [8, 200, 90],
  ])('%d broken of %d set, %d to go: the least counts with half and nine tenths of the odds', (broken, set, left) => {
    const got = breakage(broken, set, left)
    if (!got.ok) throw new Error(got.problem.code)
    const [r, p] = [broken + 0.5, (broken + set) / (broken + set + left)]
    for (const [k, odds] of [
      [got.value.even, 0.5],
      [got.value.safe, 0.9],
    ] as const) {
      expect(cumulated(k, r, p)).toBeGreaterThanOrEqual(odds)
      if (k > 0) expect(cumulated(k - 1, r, p)).toBeLessThan(odds)
    }
  })

  test('by hand: 3 broken, 40 set, 20 to go', () => {
    // p = 43/63, P(0) = p^3.5 = 0.263, then 0.292, 0.208, 0.121, 0.063: half is passed at 1, nine tenths at 4.
    expect(breakage(3, 40, 20)).toEqual({ ok: true, value: { even: 1, safe: 4 } })
  })

  test('nothing handled yet tells nothing; what is no count is refused', () => {
    expect(breakage(0, 0, 20)).toMatchObject({ ok: false })
    expect(breakage(Number.NaN, 40, 20)).toMatchObject({ ok: false })
    expect(breakage(1, 40, -1)).toMatchObject({ ok: false })
    expect(breakage(1, 40, 0)).toEqual({ ok: true, value: { even: 0, safe: 0 } })
  })
})
