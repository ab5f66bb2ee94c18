/** Contact and voids beside their published figures (ANSI A108.5 as reported; good practice of a training institute). */
import { expect, test } from 'vitest'
import {
  allowedVoidMm2,
  backButter,
  judgeContact,
  judgeTrowel,
  judgeVoids,
  LEAST_BED_MM,
  startingNotchMm,
} from '../../src/core/contact.ts'

const IN = 25.4

test('three voids of 2 x 2 in on a 12 x 24 in tile: 95.8 % contact, and each void too large — references 13.13', () => {
  const checked = judgeVoids(12 * IN, 24 * IN, [{ lengthMm: 2 * IN, widthMm: 2 * IN, count: 3 }])
  if (!checked.ok) throw new Error('refused')
  expect(checked.value.contactPct).toBeCloseTo(95.8, 1)
  expect(checked.value.voidPct).toBeCloseTo(4.2, 1)
  expect(checked.value).toMatchObject({ tooLarge: 3, good: false })
})

test('voids near an edge are counted apart from their size — references 3.8', () => {
  const small = { lengthMm: IN, widthMm: IN }
  expect(judgeVoids(457.2, 457.2, [{ ...small, toEdgeMm: 51 }])).toMatchObject({
    ok: true,
    value: { tooNear: 0, good: true },
  })
  expect(judgeVoids(457.2, 457.2, [{ ...small, toEdgeMm: 25 }])).toMatchObject({
    ok: true,
    value: { tooNear: 1, good: false },
  })
})

test('12 x 12 in: 80 % leaves 28.8 in², 95 % leaves 7.2 in² — references 3.8', () => {
  expect(allowedVoidMm2(12 * IN, 12 * IN, 80) / IN ** 2).toBeCloseTo(28.8, 9)
  expect(allowedVoidMm2(12 * IN, 12 * IN, 95) / IN ** 2).toBeCloseTo(7.2, 9)
})

// ANSI A108.5 (2011) as reported, references 3.7: at least three tiles, averaged.
test.each([
  { tiles: [82, 85, 79], needs: 80, verdict: 'pass' },
  { tiles: [82, 85, 72], needs: 80, verdict: 'fail' },
  { tiles: [95, 95, 95], needs: 95, verdict: 'pass' },
  { tiles: [90, 92, 94], needs: 95, verdict: 'fail' },
  { tiles: [99, 99], needs: 80, verdict: 'not-yet' },
  { tiles: [50], needs: 80, verdict: 'not-yet' },
])('$tiles against $needs: $verdict', ({ tiles, needs, verdict }) => {
  const judged = judgeContact(tiles, needs)
  expect(judged.ok && judged.value.verdict).toBe(verdict)
})

test('no tiles, 130 % and voids larger than the tile are refused', () => {
  expect(judgeContact([], 80)).toMatchObject({ ok: false, problem: { code: 'missing' } })
  expect(judgeContact([130], 80)).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
  expect(judgeVoids(100, 100, [{ lengthMm: 200, widthMm: 100 }])).toMatchObject({
    ok: false,
    problem: { code: 'nothing-left' },
  })
})

test('1/4 in square at 45 degrees leaves 0.088 in, under the least bed of 3/32 in — references 13.6', () => {
  const judged = judgeTrowel({ lowMm: 0.0884 * IN, highMm: 0.125 * IN }, { gapMm: 0, warpMm: 0 }, 'thin')
  expect(LEAST_BED_MM).toBeCloseTo(0.09375 * IN, 9)
  expect(judged).toMatchObject({ ok: true, value: { verdict: 'tight', capMm: expect.closeTo(6.35, 9) } })
})

test.each([
  { low: 4.5, high: 6.35, gap: 2, warp: 1, verdict: 'enough' },
  { low: 3, high: 4.2, gap: 3.2, warp: 0, verdict: 'tight' },
  { low: 2.2, high: 3.2, gap: 3.2, warp: 0.5, verdict: 'short' },
])('bed $low to $high mm over $gap mm: $verdict', ({ low, high, gap, warp, verdict }) => {
  const judged = judgeTrowel({ lowMm: low, highMm: high }, { gapMm: gap, warpMm: warp }, 'large')
  expect(judged.ok && judged.value.verdict).toBe(verdict)
})

test('back-butter from 15 in; a notch to begin with by size — common practice, no source', () => {
  expect([14, 15, 18, 48].map((inches) => backButter(inches * IN))).toEqual([false, true, true, true])
  expect([4, 12, 18, 48].map((inches) => Math.round((startingNotchMm(inches * IN) / IN) * 1000))).toEqual([
    250, 375, 500, 500,
  ])
})
