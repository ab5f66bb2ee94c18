import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  chooseGrout,
  groutCoverageM2PerBag,
  groutNeed,
  jointShare,
  jointVolumeExactLPerM2,
  jointVolumeL,
  jointVolumeLPerM2,
} from '../../src/core/grout.ts'
import { FT2, good, IN, LB, near, refused } from './checks.ts'

// Derived: exact share 1 - L W / ((L + j)(W + j)); short formula j (L + W) / (L W); litres per m2 = share x depth mm.
const METRIC = [
  [25, 25, 2, 4, 0.142661, 0.5706, 0.64],
  [100, 100, 2, 6, 0.038831, 0.233, 0.24],
  [150, 150, 3, 7, 0.038831, 0.2718, 0.28],
  [200, 200, 3, 8, 0.029338, 0.2347, 0.24],
  [300, 300, 3, 9, 0.019704, 0.1773, 0.18],
  [300, 600, 3, 10, 0.014827, 0.1483, 0.15],
  [600, 600, 2, 10, 0.006633, 0.0663, 0.0667],
  [600, 1200, 3, 10, 0.007456, 0.0746, 0.075],
  [200, 1200, 3, 10, 0.017235, 0.1724, 0.175],
] as const
const INCH = [
  [12, 12, 1 / 8, 3 / 8, 0.020512, 0.0641],
  [12, 24, 1 / 8, 3 / 8, 0.015437, 0.04824],
  [24, 24, 1 / 8, 3 / 8, 0.010336, 0.0323],
  [6, 36, 3 / 16, 3 / 8, 0.035327, 0.1104],
  [4.25, 4.25, 1 / 16, 5 / 16, 0.028775, 0.07494],
] as const

describe('joint volume', () => {
  test.each(METRIC)('%d x %d, joint %d, depth %d mm', (lengthMm, widthMm, jointMm, depth, share, exact, short) => {
    const grid = { lengthMm, widthMm, jointMm }
    near(jointShare(grid), share, 5e-7)
    near(good(jointVolumeExactLPerM2(grid, depth)), exact, 5e-5)
    near(good(jointVolumeLPerM2(grid, depth)), short, 5e-5)
  })

  test.each(INCH)('%d x %d, joint %d, depth %d in: share %d, %d ft3 per 100 ft2', (l, w, j, depth, share, ft3) => {
    const grid = { lengthMm: l * IN, widthMm: w * IN, jointMm: j * IN }
    near(jointShare(grid), share, 5e-7)
    const litres = good(jointVolumeExactLPerM2(grid, depth * IN)) * 100 * FT2
    near(litres / 28.316846592, ft3, 5e-6)
  })

  test('from the joints of a layout: 100 m of 3 x 10 mm is 3 l', () => {
    near(good(jointVolumeL(100, 3, 10)), 3, 1e-12)
    expect(good(jointVolumeL(0, 3, 10))).toBe(0)
  })

  test('a hexagon 50 mm across flats has the joints of a 50 mm square: 2/F a unit of area', () => {
    const [flats, area] = [50, (Math.sqrt(3) / 2) * 50 ** 2]
    const lengthPerArea = (6 * (flats / Math.sqrt(3))) / 2 / area
    near(good(jointVolumeLPerM2({ lengthMm: flats, widthMm: flats, jointMm: 2 }, 1)), lengthPerArea * 2, 1e-12)
  })

  test('refuses a joint as wide as the tile, no depth, no tile', () => {
    refused(jointVolumeLPerM2({ lengthMm: 100, widthMm: 20, jointMm: 20 }, 8), 'joint')
    refused(jointVolumeLPerM2({ lengthMm: 100, widthMm: 20, jointMm: 0 }, 8), 'joint')
    refused(jointVolumeExactLPerM2({ lengthMm: 0, widthMm: 20, jointMm: 2 }, 8), 'tile')
    refused(jointVolumeExactLPerM2({ lengthMm: 100, widthMm: 20, jointMm: 2 }, Number.NaN), 'joint-depth')
    refused(jointVolumeL(-1, 3, 10), 'joint-length')
  })

  test('the short formula is never below the exact share, and less than 1 % above it for small joints', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 20, max: 2000, noNaN: true }),
        fc.double({ min: 20, max: 2000, noNaN: true }),
        fc.double({ min: 0.5, max: 10, noNaN: true }),
        (lengthMm, widthMm, jointMm) => {
          const grid = { lengthMm, widthMm, jointMm }
          const excess = good(jointVolumeLPerM2(grid, 10)) / good(jointVolumeExactLPerM2(grid, 10)) - 1
          expect(excess).toBeGreaterThanOrEqual(-1e-12)
          expect(excess).toBeLessThanOrEqual(
            jointMm / Math.min(lengthMm, widthMm) + jointMm / Math.max(lengthMm, widthMm),
          )
        },
      ),
    ))
})

describe('powder and bags', () => {
  const POWDER = {
    powderKgPerJointL: { low: 1.5, usual: 1.6, high: 1.7 },
    bagKg: 25 * LB,
    wasteShare: 0,
    openDepthShare: 2 / 3,
  }
  // kg/m2 at 1.6 kg/l (illustration, from memory), exact and short.
  test.each([
    [300, 300, 3, 9, 0.2837, 0.288],
    [300, 600, 3, 10, 0.2372, 0.24],
    [600, 600, 2, 10, 0.1061, 0.1067],
  ])('%d x %d, %d, %d mm: %d exact, %d kg/m2 short', (lengthMm, widthMm, jointMm, depth, exact, short) => {
    const grid = { lengthMm, widthMm, jointMm }
    near(good(groutNeed(good(jointVolumeExactLPerM2(grid, depth)), POWDER)).kg.usual, exact, 6e-5)
    near(good(groutNeed(good(jointVolumeLPerM2(grid, depth)), POWDER)).kg.usual, short, 6e-5)
  })

  test('bags are whole, with the waste; the low end has joints open to 2/3', () => {
    const need = good(groutNeed(10, { ...POWDER, wasteShare: 0.1 }))
    near(need.kg.usual, 17.6, 1e-9)
    near(need.kg.low, 10, 1e-9)
    near(need.kg.high, 18.7, 1e-9)
    expect(need.bagsToBuy).toBe(2)
    expect(good(groutNeed(0, POWDER)).bagsToBuy).toBe(0)
  })

  test('a bag covers what it needs: area / coverage = bags', () => {
    const coverage = good(groutCoverageM2PerBag(0.15, POWDER))
    near(20 / coverage.usual, good(groutNeed(20 * 0.15, POWDER)).bags.usual, 1e-9)
    expect(coverage.low).toBeLessThan(coverage.high)
    refused(groutCoverageM2PerBag(0, POWDER), 'joint-volume')
  })

  test('refuses what is no volume, bag or waste', () => {
    refused(groutNeed(-1, POWDER), 'joint-volume')
    refused(groutNeed(1, { ...POWDER, bagKg: 0 }), 'bag')
    refused(groutNeed(1, { ...POWDER, wasteShare: 2 }), 'waste')
  })
})

describe('which grout (Tile Council FAQ: under 1/8 in unsanded, 1/8 and over sanded, over 3/8 coarser sand)', () => {
  const LIMITS = { sandedFromMm: 3, coarseFromMm: 9.525 }
  test.each([
    [1 / 16, 'unsanded', false],
    [7 / 64, 'unsanded', false],
    [1 / 8, 'sanded', false],
    [3 / 16, 'sanded', false],
    [3 / 8, 'sanded', false],
    [7 / 16, 'sanded', true],
  ])('%d in: %s, coarse %s', (inches, type, coarse) =>
    expect(good(chooseGrout(inches * IN, false, LIMITS))).toMatchObject({ type, coarse, testPanel: false }),
  )

  test('3 mm spacers count as 1/8 in, 2 mm do not', () => {
    expect(good(chooseGrout(3, false, LIMITS)).type).toBe('sanded')
    expect(good(chooseGrout(2, false, LIMITS)).type).toBe('unsanded')
  })

  test('a soft face: unsanded and a test panel at any width (common practice, no source)', () => {
    for (const joint of [1.5, 3.175, 10])
      expect(good(chooseGrout(joint, true, LIMITS))).toMatchObject({ type: 'unsanded', testPanel: true })
  })

  test('refuses what is no joint', () => {
    refused(chooseGrout(0, false, LIMITS), 'joint')
    refused(chooseGrout(51, false, LIMITS), 'joint')
  })
})
