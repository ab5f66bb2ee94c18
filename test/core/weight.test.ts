import { describe, expect, test } from 'vitest'
import { exactly } from '../../src/core/spread.ts'
import { layerKgPerM2, liftLimitKg, loadKpa, tilesKg, trips } from '../../src/core/weight.ts'
import { FT2, good, IN, LB, near, refused } from './checks.ts'

const PORCELAIN = { low: 2300, usual: 2350, high: 2400 }

describe('weight', () => {
  test('10 mm of porcelain at 2.35 (range 2.3 to 2.4 from memory): 23.5 kg/m2, 4.813 lb/ft2', () => {
    const perM2 = good(layerKgPerM2(10, PORCELAIN))
    near(perM2.usual, 23.5, 1e-9)
    near((perM2.usual * FT2) / LB, 4.813, 5e-4)
    expect([perM2.low, perM2.high]).toEqual([23, 24])
  })

  test('one tested ceramic cladding, 2200 kg/m3 (Applied Adhesion Science 2018, table 1): 8 mm is 17.6 kg/m2', () =>
    near(good(layerKgPerM2(8, exactly(2200))).usual, 17.6, 1e-9))

  test('66 tiles of 18 x 18 x 3/8 in, by hand: 66 x 0.20903 x 9.525 x 2.35 = 308.8 kg', () =>
    near(good(tilesKg(66, 0.4572 ** 2, 9.525, PORCELAIN)).usual, 308.8, 0.1))

  test('23.5 kg/m2 is 4.813 psf of 47.88026 Pa (NIST SP 811, from memory)', () =>
    near(loadKpa(23.5), (4.813 * 47.88026) / 1000, 5e-5))

  test('trips are whole', () => {
    expect(good(trips(1500, 600))).toBe(3)
    expect(good(trips(1200, 600))).toBe(2)
    expect(good(trips(0, 600))).toBe(0)
    refused(trips(100, 0), 'payload')
    refused(trips(-1, 600), 'mass')
  })

  test('refuses a thickness or density that is none', () => {
    refused(layerKgPerM2(-1, PORCELAIN), 'thickness')
    refused(layerKgPerM2(Number.NaN, PORCELAIN), 'thickness')
    refused(layerKgPerM2(10, exactly(0)), 'density')
  })
})

describe('one lift (NIOSH 94-110)', () => {
  const lift = { outMm: 15 * IN, heightMm: 6 * IN, raisedMm: 30 * IN, turnDeg: 0, frequency: 1, grip: 1 }
  test('H 15, V 6, D 30 in: 24.53 lb; a 50 lb bag is 2.04 times that', () => {
    const limit = good(liftLimitKg(lift))
    near(limit / LB, 24.53, 0.01)
    near((50 * LB) / limit, 2.04, 0.005)
  })
  test('the best there is: 51 lb close, at 30 in, hardly raised', () =>
    near(good(liftLimitKg({ ...lift, outMm: 200, heightMm: 762, raisedMm: 100 })) / LB, 51, 1e-9))
  test('out of reach is nothing, nonsense is refused', () => {
    expect(good(liftLimitKg({ ...lift, outMm: 700 }))).toBe(0)
    refused(liftLimitKg({ ...lift, raisedMm: -1 }), 'reach')
    refused(liftLimitKg({ ...lift, turnDeg: 200 }), 'turn')
    refused(liftLimitKg({ ...lift, grip: 2 }), 'multiplier')
  })
})
