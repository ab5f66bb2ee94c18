import { describe, expect, test } from 'vitest'
import type { History } from '../../src/core/age.ts'
import { type CureInput, cure } from '../../src/core/cure.ts'
import { good, near } from './checks.ts'

const f = (fahrenheit: number): number => (fahrenheit - 32) / 1.8
const LIMITS = {
  coldC: 4.4,
  minC: 10,
  maxC: 32.2,
  slowC: 18.3,
  freezeC: 0,
  freezeHours: 24,
  activationLowK: 4000,
  activationHighK: 5000,
}
const WAITS = { grout: { h: 24, longestH: 48 }, heavy: { h: 168, longestH: 336 } }
const ask = (history: History, more: Partial<CureInput<'grout' | 'heavy'>> = {}) =>
  cure<'grout' | 'heavy'>({
    waits: WAITS,
    setting: 'cement',
    referenceC: f(70),
    history,
    longest: false,
    limits: LIMITS,
    ...more,
  })
const at = (fahrenheit: number): History => ({ kind: 'constant', c: f(fahrenheit) })

describe('24 h at 70 F (derived, equivalent age with Q 4000 to 5000 K)', () => {
  test.each([
    [58, 33, 36],
    [50, 41, 47],
    [70, 24, 24],
    [69.8, 24, 24], // 21 C
    [95, 24, 24],
  ])('%d F: %d to %d h', (fahrenheit, low, high) => {
    const { grout } = good(ask(at(fahrenheit))).waits
    near(grout.lowH, low, 0.5)
    near(grout.highH, high, 0.5)
    expect(grout.sheetH).toBe(24)
  })
})

test('finishing time about doubles per 20 F colder (National Frame Building Association, Oct 2020, after ACI): same order', () => {
  const hours = (fahrenheit: number) => good(ask(at(fahrenheit))).waits.grout.highH
  expect(hours(50) / hours(70)).toBeGreaterThan(1.6)
  expect(hours(50) / hours(70)).toBeLessThan(2.4)
})

describe('cold', () => {
  test.each([39, 20, 0])('%d F is refused', (fahrenheit) =>
    expect(ask(at(fahrenheit))).toMatchObject({ ok: false, problem: { code: 'below-minimum-temperature' } }),
  )

  test('40 F is answered, with a warning below the material’s least', () => {
    const answer = good(ask(at(40)))
    expect(answer.warnings).toContainEqual({ code: 'below-material-minimum', valueC: f(40), minC: 10 })
    expect(good(ask(at(50))).warnings).toEqual([])
    expect(good(ask(at(50), { limits: { ...LIMITS, minC: 12 } })).warnings).toHaveLength(1)
  })

  test('a night below the least is refused whatever the day', () =>
    expect(ask({ kind: 'day-night', dayC: f(65), nightC: f(35), startMinute: 840 })).toMatchObject({
      problem: { facts: { why: 'cold', value: f(35) } },
    }))

  test('freezing within 24 h is named', () => {
    const steps = (firstH: number) => [
      { h: firstH, c: 12 },
      { h: 12, c: -2 },
    ]
    expect(ask({ kind: 'list', steps: steps(12) })).toMatchObject({ problem: { facts: { why: 'freeze', value: -2 } } })
    expect(ask({ kind: 'list', steps: steps(30) })).toMatchObject({ problem: { facts: { why: 'cold', value: -2 } } })
  })

  test('below 65 F the night’s low is asked for, unless it was told', () => {
    expect(good(ask(at(64))).askNightLow).toBe(true)
    expect(good(ask(at(66))).askNightLow).toBe(false)
    expect(good(ask({ kind: 'day-night', dayC: f(64), nightC: f(50), startMinute: null })).askNightLow).toBe(false)
  })
})

describe('other materials and bases', () => {
  test.each(['rapid', 'epoxy', 'drying'] as const)('%s keeps to its sheet and says so in the cold', (setting) => {
    const answer = good(ask(at(55), { setting }))
    expect(answer.waits).toMatchObject({ grout: { sheetH: 24, lowH: 24, highH: 24 } })
    expect(answer.warnings).toContainEqual({ code: 'sheet-only', valueC: f(55) })
    expect(answer.lengthened).toBe(false)
  })

  test('large tile over an impervious base takes the longest wait, and cold lengthens that', () => {
    const answer = good(ask(at(58), { longest: true }))
    expect(answer.waits).toMatchObject({ grout: { sheetH: 48 } })
    near(answer.waits.grout.highH, 72, 1)
    expect(answer.warnings).toContainEqual({ code: 'longest-wait' })
  })

  test('heat over the most is warned of', () =>
    expect(good(ask(at(95))).warnings).toEqual([{ code: 'above-material-maximum', valueC: f(95), maxC: 32.2 }]))

  test('no temperature that can be is out of range, not an exception', () => {
    expect(ask({ kind: 'constant', c: Number.NaN })).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
    expect(ask({ kind: 'list', steps: [] })).toMatchObject({ ok: false, problem: { code: 'missing' } })
  })
})
