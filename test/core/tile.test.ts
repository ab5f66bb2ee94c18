import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { boxesFor, faceM2, moduleM2, type TileShape, tilesForArea, withSpares } from '../../src/core/tile.ts'
import { FT2, good, IN, near, refused } from './checks.ts'

const square = (mm: number, jointMm = 3): TileShape => ({ shape: 'rectangle', lengthMm: mm, widthMm: mm, jointMm })
const PLAIN = { patternFactor: 1, spareShare: 0, box: null }

describe('tile for a bare area', () => {
  test('128 ft2 + 15 % = 147.2 ft2 (Alabama distance-learning course, unit 9-01): 148 tiles of a square foot', () =>
    expect(good(tilesForArea(128 * FT2, square(12 * IN, 0), { ...PLAIN, spareShare: 0.15 })).count).toBe(148))

  test('by hand: 12 m2 over 0.603 x 0.603 m is 33.002 places; 10 % spares: 37', () => {
    const tiles = good(tilesForArea(12, square(600), { ...PLAIN, spareShare: 0.1 }))
    near(tiles.places, 33.002, 5e-4)
    expect(tiles.count).toBe(37)
  })

  test('a diagonal takes its factor', () =>
    near(good(tilesForArea(12, square(600), { ...PLAIN, patternFactor: 1.05 })).places, 33.002 * 1.05, 1e-3))

  test('a hexagon takes sqrt(3)/2 of its square', () => {
    const hexagon: TileShape = { shape: 'hexagon', lengthMm: 50, widthMm: 50, jointMm: 2 }
    near(moduleM2(hexagon), (Math.sqrt(3) / 2) * 0.052 ** 2, 1e-12)
    near(faceM2(hexagon), (Math.sqrt(3) / 2) * 0.05 ** 2, 1e-12)
  })

  test('refuses what is no area, tile, factor or share', () => {
    refused(tilesForArea(0, square(300), PLAIN), 'area')
    refused(tilesForArea(5, square(4), PLAIN), 'tile')
    refused(tilesForArea(5, square(300, -1), PLAIN), 'joint')
    refused(tilesForArea(5, square(300), { ...PLAIN, patternFactor: 0.5 }), 'pattern-factor')
    refused(tilesForArea(5, square(300), { ...PLAIN, spareShare: 1.5 }), 'spares')
    refused(tilesForArea(5, square(300), { ...PLAIN, box: { pieces: 0 } }), 'pieces')
    refused(tilesForArea(5, square(300), { ...PLAIN, box: { areaM2: 0 } }), 'area')
  })

  test('what is bought covers the area, and not by a whole tile too much', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 10_000, noNaN: true }),
        fc.double({ min: 20, max: 2000, noNaN: true }),
        fc.double({ min: 0, max: 0.3, noNaN: true }),
        (area, edge, spareShare) => {
          const { count } = good(tilesForArea(area, square(edge), { ...PLAIN, spareShare }))
          const covered = count * moduleM2(square(edge))
          expect(covered).toBeGreaterThanOrEqual(area * (1 + spareShare) * (1 - 1e-6))
          expect(covered).toBeLessThan(area * (1 + spareShare) + moduleM2(square(edge)) * (1 + 1e-6))
        },
      ),
    ))
})

describe('spares and boxes', () => {
  test.each([
    [108, 0.1, 119], // 118.8
    [100, 0.1, 110], // whole but for floating point: 110.00000000000001
    [0, 0.1, 0],
    [37, 0, 37],
  ])('%d places and %d: %d pieces', (places, share, pieces) => expect(good(withSpares(places, share))).toBe(pieces))

  test('119 pieces, 8 a box: 15; 49 of 18 x 18 in at 15.5 ft2 a box: 110.25 / 15.5 is 8', () => {
    expect(good(boxesFor(119, square(300), { pieces: 8 }))).toBe(15)
    expect(good(boxesFor(120, square(300), { pieces: 8 }))).toBe(15)
    expect(good(boxesFor(49, square(18 * IN), { areaM2: 15.5 * FT2 }))).toBe(8)
  })
})
