/** Listed tiles and pieces against the count, the floor and each other. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { floorOf } from '../../../src/core/floor/check.ts'
import { shared } from '../../../src/core/floor/combine.ts'
import { floorArea, type Ring, ringArea } from '../../../src/core/floor/rings.ts'
import { cutList, cutPieces, tilesOf } from '../../../src/core/layout/pieces.ts'
import { type LayoutSpec, plainSpec } from '../../../src/core/layout/spec.ts'
import { must } from '../../support/must.ts'
import { EVERY_PATTERN, floors } from './floors.ts'

const specs: fc.Arbitrary<LayoutSpec> = fc.record({
  tile: fc.record({ lengthMm: fc.integer({ min: 250, max: 900 }), widthMm: fc.integer({ min: 150, max: 450 }) }),
  jointMm: fc.constantFrom(1.5875, 3, 4.7625),
  pattern: fc.constantFrom(...EVERY_PATTERN),
  angleDeg: fc.constantFrom(0, 45, 30),
  originMm: fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
  wallGapMm: fc.constantFrom(0, 6),
})
const area = (rings: readonly Ring[]) => rings.reduce((sum, ring) => sum + ringArea(ring), 0)

test('the list holds every tile and piece counted; none lies off the floor or on another', () => {
  fc.assert(
    fc.property(floors, specs, (floor, spec) => {
      const listed = tilesOf(floor, spec)
      if (!listed.ok) return expect(listed.problem.code).toBe('nothing-left')
      const { layout, whole, cuts } = listed.value
      expect([whole.length, cuts.length]).toEqual([layout.whole, layout.cutPieces])
      const rings = [...whole.map((t) => t.outlineMm), ...cuts.flatMap((c) => c.outlineMm)]
      expect(Math.abs(area(rings) - layout.tileAreaMm2)).toBeLessThan(4 * (rings.length + 1))
      const all = { rings: rings.map((ring) => ring) }
      const common = shared(floor, all)
      // Pieces that overlapped would count once in the common part; pieces off the floor not at all.
      if (rings.length > 0) expect(Math.abs(floorArea(must(common)) - area(rings))).toBeLessThan(4 * (rings.length + 1))
    }),
    { numRuns: 120 },
  )
})

test('a piece fits its tile and names its uncut edges', () => {
  fc.assert(
    fc.property(floors, specs, (floor, spec) => {
      const listed = cutPieces(floor, spec)
      if (!listed.ok) return
      for (const { lengthMm, widthMm, factory, shapeMm, areaMm2 } of listed.value.cuts) {
        expect(lengthMm).toBeLessThanOrEqual(spec.tile.lengthMm + 1e-6)
        // A hexagon reaches further from tip to tip than across its sides.
        const tips = spec.pattern.kind === 'hexagon' ? 2 / Math.sqrt(3) : 1
        expect(widthMm).toBeLessThanOrEqual(spec.tile.widthMm * tips + 1e-6)
        const { pattern, tile } = spec
        const sides = pattern.kind === 'two-size' ? [Math.min(tile.lengthMm, tile.widthMm), 110] : [tile.lengthMm]
        if (factory.start && factory.end)
          expect(Math.min(...sides.map((s) => Math.abs(s - lengthMm)))).toBeLessThan(0.05)
        if (shapeMm) expect(Math.abs(area(shapeMm) - areaMm2)).toBeLessThan(1)
        else expect(lengthMm * widthMm).toBeCloseTo(areaMm2, -1)
      }
    }),
  )
})

test('a small bakery wash-up: 2 rows of cuts, grouped, each with its wall', () => {
  const room = must(
    floorOf([
      [0, 0],
      [2000, 0],
      [2000, 1000],
      [0, 1000],
    ]),
  )
  // By hand: module 303; six tiles and 182 mm along, three tiles and 91 mm across.
  const { cuts, layout } = must(cutPieces(room, plainSpec(300, 300, 3)))
  expect([layout.whole, layout.cut]).toEqual([18, 6 + 3 + 1])
  const groups = cutList(cuts)
  expect(groups.map((g) => [g.count, Math.round(g.lengthMm), Math.round(g.widthMm)])).toEqual([
    [3, 182, 300],
    [6, 300, 91],
    [1, 182, 91],
  ])
  expect(groups[0]!.factory).toEqual({ start: true, end: false, near: true, far: true })
  const corner = cuts.find((c) => c.widthMm < 100 && c.lengthMm < 200)!
  expect(corner.walls).toEqual([1, 2])
})
