import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  ageRate,
  checkedHistory,
  equivalentAgeH,
  extremesC,
  type History,
  hoursToAge,
  maturityCH,
} from '../../src/core/age.ts'
import { good, near, refused } from './checks.ts'

describe('rate of hardening, Q 5000 K (Arrhenius form of ASTM C1074; values derived from the formula)', () => {
  test.each([
    [5, 0.3354],
    [10, 0.4606],
    [15, 0.6258],
    [20, 0.8413],
    [23, 1],
    [25, 1.1199],
    [30, 1.4768],
    [35, 1.9299],
    [40, 2.5006],
  ])('%d C against 23 C: %d', (c, rate) => near(ageRate(c, 23, 5000), rate, 5e-5))

  test.each([
    [5, 0.3986],
    [10, 0.5475],
    [15, 0.7438],
    [23, 1.1886],
    [30, 1.7553],
    [40, 2.9723],
  ])('%d C against 20 C: %d', (c, rate) => near(ageRate(c, 20, 5000), rate, 5e-5))
})

describe('hours equal to 24 h at 23 C: Q 5000, Nurse-Saul over 0 C and over -10 C', () => {
  test.each([
    [10, 52.1, 55.2, 39.6],
    [15, 38.4, 36.8, 31.7],
    [5, 71.6, 110.4, 52.8],
    [30, 16.3, 18.4, 19.8],
  ])('%d C: %d / %d / %d', (c, arrhenius, datum0, datumMinus10) => {
    near(24 / ageRate(c, 23, 5000), arrhenius, 0.06)
    for (const [datum, hours] of [
      [0, datum0],
      [-10, datumMinus10],
    ] as const) {
      const perHour = good(maturityCH([{ h: 1, c }], datum))
      near(good(maturityCH([{ h: 24, c: 23 }], datum)) / perHour, hours, 0.051)
    }
  })
})

test('12 h at 15 C and 12 h at 25 C: 20.948 h at 23 C, 24.899 h at 20 C', () => {
  const steps = [
    { h: 12, c: 15 },
    { h: 12, c: 25 },
  ]
  near(good(equivalentAgeH(steps, 23, 5000)), 20.948, 5e-4)
  near(good(equivalentAgeH(steps, 20, 5000)), 24.899, 5e-4)
})

test('Nurse-Saul: 28 d at 15 C over -11 C is 728 C days (an engineering licence question); 12 h at 20 and 25 C: 540', () => {
  near(good(maturityCH([{ h: 28 * 24, c: 15 }], -11)) / 24, 728, 1e-9)
  near(
    good(
      maturityCH(
        [
          { h: 12, c: 20 },
          { h: 12, c: 25 },
        ],
        0,
      ),
    ),
    540,
    1e-9,
  )
  expect(good(maturityCH([{ h: 5, c: -20 }], -10))).toBe(0)
})

describe('hours until a history has aged', () => {
  const constant = (c: number): History => ({ kind: 'constant', c })

  test('a constant: age over rate; warmth counts as the reference', () => {
    near(hoursToAge(24, constant(10), 23, 5000), 24 / 0.4606, 0.01)
    expect(hoursToAge(24, constant(40), 23, 5000)).toBe(24)
  })

  test('a list: the last temperature goes on', () => {
    const list: History = {
      kind: 'list',
      steps: [
        { h: 12, c: 15 },
        { h: 6, c: 10 },
      ],
    }
    // By hand: 12 h at 0.6258 and 6 h at 0.4606 make 10.273 h; the rest of 24 h at 0.4606 takes 29.80 h.
    near(hoursToAge(24, list, 23, 5000), 18 + (24 - 12 * 0.6258 - 6 * 0.4606) / 0.4606, 0.01)
    near(hoursToAge(6, list, 23, 5000), 6 / 0.6258, 0.01)
  })

  test('a day and night pair against the integral of its sine in steps of a second', () => {
    const pair: History = { kind: 'day-night', dayC: 18, nightC: 8, startMinute: 14 * 60 }
    let [age, hours] = [0, 0]
    while (age < 30) {
      const c = 13 + 5 * Math.cos(((14 + hours - 15) / 24) * 2 * Math.PI)
      age += ageRate(c, 21, 5000) / 3600
      hours += 1 / 3600
    }
    near(hoursToAge(30, pair, 21, 5000), hours, 0.02)
  })

  test('with the start unknown the mean rate of a day holds; whole days agree with any start', () => {
    const pair = (startMinute: number | null): History => ({ kind: 'day-night', dayC: 18, nightC: 8, startMinute })
    const unknown = hoursToAge(24, pair(null), 21, 5000)
    const starts = [0, 3, 9, 15, 21].map((h) => hoursToAge(24, pair(h * 60), 21, 5000))
    expect(Math.min(...starts)).toBeLessThan(unknown)
    expect(Math.max(...starts)).toBeGreaterThan(unknown)
    near(hoursToAge(24 * 20, pair(0), 21, 5000), hoursToAge(24 * 20, pair(null), 21, 5000), 4)
  })

  test('heat never shortens, cold never speeds up, more age takes longer', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 700, noNaN: true }),
        fc.double({ min: 4.4, max: 55, noNaN: true }),
        fc.double({ min: 4.4, max: 55, noNaN: true }),
        fc.option(fc.integer({ min: 0, max: 1439 })),
        (ageH, a, b, startMinute) => {
          const [nightC, dayC] = [Math.min(a, b), Math.max(a, b)]
          const hours = hoursToAge(ageH, { kind: 'day-night', dayC, nightC, startMinute }, 21, 5000)
          expect(hours).toBeGreaterThanOrEqual(ageH - 1e-9)
          expect(hours).toBeLessThanOrEqual(hoursToAge(ageH, constant(nightC), 21, 5000) + 1e-6)
          expect(hours).toBeGreaterThanOrEqual(hoursToAge(ageH, constant(dayC), 21, 5000) - 1e-6)
          expect(hoursToAge(ageH * 2, { kind: 'day-night', dayC, nightC, startMinute }, 21, 5000)).toBeGreaterThan(
            hours,
          )
        },
      ),
    ))
})

describe('histories', () => {
  test('their ends, and those of the first hours', () => {
    const list: History = {
      kind: 'list',
      steps: [
        { h: 24, c: 10 },
        { h: 12, c: 2 },
      ],
    }
    expect(extremesC(list)).toEqual({ lowC: 2, highC: 10 })
    expect(extremesC(list, 24)).toEqual({ lowC: 10, highC: 10 })
    expect(extremesC({ kind: 'day-night', dayC: 20, nightC: 5, startMinute: null })).toEqual({ lowC: 5, highC: 20 })
  })

  test('refused where they are none', () => {
    refused(checkedHistory({ kind: 'constant', c: 61 }), 'temperature')
    refused(checkedHistory({ kind: 'constant', c: Number.NaN }), 'temperature')
    refused(checkedHistory({ kind: 'day-night', dayC: 20, nightC: -41, startMinute: 0 }), 'temperature')
    refused(checkedHistory({ kind: 'list', steps: [{ h: 0, c: 20 }] }), 'hours')
    expect(checkedHistory({ kind: 'list', steps: [] })).toMatchObject({ ok: false, problem: { code: 'missing' } })
    refused(equivalentAgeH([{ h: -1, c: 20 }], 21, 5000), 'hours')
  })
})
