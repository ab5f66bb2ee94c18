import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { batch, openTimeMin, potLifeMin, waterL } from '../../src/core/mix.ts'
import { good, near, refused } from './checks.ts'

const WATER = { low: 0.22, usual: 0.24, high: 0.26 }
const HOT = { hotC: 29.4, hotFactor: 0.5 }
const POT = {
  sheetMin: { low: 90, usual: 120, high: 180 },
  referenceC: 21,
  setting: 'cement',
  activationLowK: 4000,
  activationHighK: 5000,
  hot: HOT,
} as const

test('water for half a 20 kg bag: 2.2 to 2.6 l (by hand)', () => {
  const water = good(waterL(10, WATER))
  near(water.low, 2.2, 1e-12)
  near(water.usual, 2.4, 1e-12)
  near(water.high, 2.6, 1e-12)
  refused(waterL(0, WATER), 'powder')
  refused(waterL(Number.NaN, WATER), 'powder')
})

describe('pot life', () => {
  test('at the reference and in the cold: the sheet’s', () => {
    expect(good(potLifeMin(POT, 21))).toEqual(POT.sheetMin)
    expect(good(potLifeMin(POT, 8))).toEqual(POT.sheetMin)
  })

  // Rates derived from the Arrhenius form of ASTM C1074: 25 C against 21 C is 1.257 at Q 5000, 1.201 at Q 4000.
  test('at 25 C: divided by the rate', () => {
    const warm = good(potLifeMin(POT, 25))
    near(warm.low, 90 / 1.257, 0.2)
    near(warm.high, 180 / 1.201, 0.2)
  })

  test('over 85 F: at most half (common practice, no source)', () => {
    const hot = good(potLifeMin(POT, 30))
    expect(hot.usual).toBeLessThanOrEqual(60)
    near(good(potLifeMin({ ...POT, setting: 'epoxy' }, 30)).usual, 60, 1e-12)
    expect(good(potLifeMin({ ...POT, setting: 'epoxy' }, 25))).toEqual(POT.sheetMin)
  })

  test('never grows with heat, never passes the sheet', () =>
    fc.assert(
      fc.property(fc.double({ min: -40, max: 59, noNaN: true }), (c) => {
        const here = good(potLifeMin(POT, c))
        expect(here.low).toBeLessThanOrEqual(here.usual)
        expect(here.usual).toBeLessThanOrEqual(here.high)
        expect(here.high).toBeLessThanOrEqual(180)
        expect(good(potLifeMin(POT, c + 1)).usual).toBeLessThanOrEqual(here.usual + 1e-9)
      }),
    ))

  test('refuses what is no temperature', () => refused(potLifeMin(POT, 100), 'temperature'))
})

test('open time: half in sun, wind or over 85 F (common practice, no source)', () => {
  const sheet = { low: 20, usual: 20, high: 30 }
  expect(good(openTimeMin(sheet, { c: 21, sunOrWind: false }, HOT)).usual).toBe(20)
  expect(good(openTimeMin(sheet, { c: 21, sunOrWind: true }, HOT)).usual).toBe(10)
  expect(good(openTimeMin(sheet, { c: 30, sunOrWind: true }, HOT)).usual).toBe(10)
  expect(good(openTimeMin(sheet, { c: 29.4, sunOrWind: false }, HOT)).usual).toBe(20)
})

describe('a batch', () => {
  const input = {
    areaLeftM2: 10,
    paceM2PerH: 2,
    potLifeMin: 90,
    openTimeMin: 20,
    consumptionLPerM2: 6,
    yieldLPerKg: 0.75,
    waterLPerKg: WATER,
  }
  test('pot life x pace, by hand: 3 m2, 18 l, 24 kg, 5.76 l of water; spread 0.67 m2', () => {
    const mix = good(batch(input))
    expect(mix).toMatchObject({ areaM2: 3, limitedBy: 'pot-life', volumeL: 18, powderKg: 24 })
    near(mix.waterL!.usual, 5.76, 1e-9)
    near(mix.spreadM2!, 2 / 3, 1e-9)
  })

  test('no more than the area left', () =>
    expect(good(batch({ ...input, areaLeftM2: 0.5 }))).toMatchObject({
      areaM2: 0.5,
      limitedBy: 'area-left',
      volumeL: 3,
      spreadM2: 0.5,
    }))

  test('grout has no open time, epoxy takes no water', () =>
    expect(good(batch({ ...input, openTimeMin: null, waterLPerKg: null }))).toMatchObject({
      spreadM2: null,
      waterL: null,
    }))

  test('refuses no area, no pace, no life', () => {
    refused(batch({ ...input, areaLeftM2: 0 }), 'area')
    refused(batch({ ...input, paceM2PerH: Number.NaN }), 'pace')
    refused(batch({ ...input, potLifeMin: 0 }), 'pot-life')
    refused(batch({ ...input, openTimeMin: 0 }), 'open-time')
    refused(batch({ ...input, consumptionLPerM2: 0 }), 'consumption')
    refused(batch({ ...input, yieldLPerKg: 0 }), 'yield')
  })
})
