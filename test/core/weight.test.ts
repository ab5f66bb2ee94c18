import { describe, expect, test } from 'vitest'
import { exactly } from '../../src/core/spread.ts'
import { layerKgPerM2, tilesKg } from '../../src/core/weight.ts'
import { FT2, good, LB, near, refused } from './checks.ts'

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

  test('refuses a thickness or density that is none', () => {
    refused(layerKgPerM2(-1, PORCELAIN), 'thickness')
    refused(layerKgPerM2(Number.NaN, PORCELAIN), 'thickness')
    refused(layerKgPerM2(10, exactly(0)), 'density')
    refused(tilesKg(-1, 0.2, 10, PORCELAIN), 'tiles')
  })
})
