/** The exact count against the general library polygon-clipping, place by place, and what must hold of any layout. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { type Floor, floorArea, type Point, type Ring } from '../../../src/core/floor/rings.ts'
import { lay } from '../../../src/core/layout/lay.ts'
import type { LayoutSpec, Pattern } from '../../../src/core/layout/spec.ts'
import { floors } from './floors.ts'
import { jointLength, jointLengthBySides, reference } from './reference.ts'

const shares = fc.constantFrom(0.5, 0.3333, 0.25, { over: 1, under: 3 }, { over: 2, under: 5 }, 0.37)
const rowPatterns: fc.Arbitrary<Pattern> = fc.oneof(
  fc.constant<Pattern>({ kind: 'stacked' }),
  fc.record({
    kind: fc.constant('offset' as const),
    share: shares,
    step: fc.constant('stair' as const),
    along: fc.constant('length' as const),
  }),
)
const shaped: fc.Arbitrary<Pattern> = fc.oneof(
  fc.constant<Pattern>({ kind: 'hexagon' }),
  fc.record({ kind: fc.constant('two-size' as const), smallMm: fc.integer({ min: 60, max: 150 }) }),
)
const patterns: fc.Arbitrary<Pattern> = fc.oneof(
  rowPatterns,
  fc.record({
    kind: fc.constant('offset' as const),
    share: shares,
    step: fc.constantFrom('stair' as const, 'back-and-forth' as const),
    along: fc.constantFrom('length' as const, 'width' as const),
  }),
  fc.record({ kind: fc.constant('herringbone' as const), planks: fc.constantFrom(1 as const, 2 as const) }),
  shaped,
)
const specs = (pattern: fc.Arbitrary<Pattern>): fc.Arbitrary<LayoutSpec> =>
  fc.record({
    tile: fc.record({ lengthMm: fc.integer({ min: 200, max: 1200 }), widthMm: fc.integer({ min: 150, max: 600 }) }),
    jointMm: fc.constantFrom(0, 1.5875, 3, 4.7625),
    pattern,
    angleDeg: fc.constantFrom(0, 0, 0, 90, 45, 30, 12.5),
    originMm: fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
    wallGapMm: fc.constant(0),
  })

const good = (floor: Floor, spec: LayoutSpec) => {
  const laid = lay(floor, spec)
  if (!laid.ok) throw new Error(JSON.stringify(laid.problem))
  return laid.value
}

test('counts and areas are those of clipping every place by a general library', () => {
  fc.assert(
    fc.property(floors, specs(patterns), (floor, spec) => {
      const [got, want] = [good(floor, spec), reference(floor, spec)]
      expect(Math.abs(got.tileAreaMm2 - want.tileMm2)).toBeLessThanOrEqual(1e-4 * want.tileMm2 + 3)
      expect(Math.abs(got.whole - want.whole)).toBeLessThanOrEqual(want.unsure)
      expect(Math.abs(got.cut - want.cut)).toBeLessThanOrEqual(want.unsure)
      expect(Math.abs(got.cutPieces - want.pieces)).toBeLessThanOrEqual(want.unsure)
      if (want.unsure === 0 && want.cut > 0) expect(got.smallestCutMm!).toBeCloseTo(want.smallestMm, 3)
      expect(got.cells).toBe(got.whole + got.cut)
    }),
    { numRuns: 150 },
  )
})

test('hexagons and two sizes: counts, areas and joints of clipping place by place and side by side', () => {
  fc.assert(
    fc.property(floors, specs(shaped), (floor, spec) => {
      const off: LayoutSpec = { ...spec, originMm: [spec.originMm[0] + 0.377, spec.originMm[1] + 0.519] }
      const [got, want] = [good(floor, off), reference(floor, off)]
      expect(Math.abs(got.tileAreaMm2 - want.tileMm2)).toBeLessThanOrEqual(1e-4 * want.tileMm2 + 3)
      expect(Math.abs(got.whole - want.whole)).toBeLessThanOrEqual(want.unsure)
      expect(Math.abs(got.cut - want.cut)).toBeLessThanOrEqual(want.unsure)
      if (want.unsure === 0 && want.cut > 0) expect(got.smallestCutMm!).toBeCloseTo(want.smallestMm, 3)
      const joints = jointLengthBySides(floor, off)
      expect(Math.abs(got.jointLengthMm - joints)).toBeLessThanOrEqual(1e-6 * joints + 0.01)
      if (got.bySize) expect(got.bySize.reduce((n, size) => n + size.whole, 0)).toBe(got.whole)
    }),
    { numRuns: 120 },
  )
})

test('the joints are as long as their lines measured one by one', () => {
  fc.assert(
    fc.property(floors, specs(rowPatterns), (floor, spec) => {
      // A joint line on a wall is no joint inside; the plain measure may count it, so lines keep off whole millimetres.
      const off: LayoutSpec = { ...spec, originMm: [spec.originMm[0] + 0.377, spec.originMm[1] + 0.519] }
      const want = jointLength(floor, off)
      expect(Math.abs(good(floor, off).jointLengthMm - want)).toBeLessThanOrEqual(1e-6 * want + 0.01)
    }),
    { numRuns: 150 },
  )
})

const each = (floor: Floor, change: (p: Point) => Point, flipped = false): Floor => ({
  rings: floor.rings.map((ring): Ring => (flipped ? ring.map(change).reverse() : ring.map(change))),
})

test('moving, turning or scaling floor and lattice together changes no count', () => {
  fc.assert(
    fc.property(floors, specs(patterns), fc.constantFrom(90, 180, 37), (floor, spec, deg) => {
      const want = good(floor, spec)
      const near = (other: typeof want, scale = 1) => {
        expect(Math.abs(other.tileAreaMm2 / scale ** 2 - want.tileAreaMm2)).toBeLessThanOrEqual(
          1e-6 * want.tileAreaMm2 + 3,
        )
        expect(Math.abs(other.jointLengthMm / scale - want.jointLengthMm)).toBeLessThanOrEqual(
          Math.max(1, spec.jointMm === 0 ? 1e9 : 0.01),
        )
        expect(Math.abs(other.cells - want.cells)).toBeLessThanOrEqual(reference(floor, spec).unsure)
      }
      const move = ([x, y]: Point): Point => [x + 1234, y - 777]
      near(good(each(floor, move), { ...spec, originMm: move(spec.originMm) }))
      const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
      const rotate = ([x, y]: Point): Point => [x * c - y * s, x * s + y * c]
      near(good(each(floor, rotate), { ...spec, originMm: rotate(spec.originMm), angleDeg: spec.angleDeg + deg }))
    }),
    { numRuns: 60 },
  )
})

test('a mirrored floor under a mirrored stacked lattice keeps its count', () => {
  fc.assert(
    fc.property(floors, specs(fc.constant({ kind: 'stacked' })), (floor, spec) => {
      const straight = { ...spec, angleDeg: 0 }
      const want = good(floor, straight)
      const mirrored = each(floor, ([x, y]) => [-x, y], true)
      const got = good(mirrored, { ...straight, originMm: [-spec.originMm[0] - spec.tile.lengthMm, spec.originMm[1]] })
      expect([got.whole, got.cut, got.cutPieces]).toEqual([want.whole, want.cut, want.cutPieces])
    }),
  )
})

test('tiles and joints cover the floor between them, and no tile covers another', () => {
  fc.assert(
    fc.property(floors, specs(patterns), (floor, spec) => {
      const { tileAreaMm2, jointLengthMm, whole, cut } = good(floor, spec)
      const rest = floorArea(floor) - tileAreaMm2
      expect(rest).toBeGreaterThanOrEqual(-3 * (cut + 1))
      // Without joints there is nothing but tile.
      if (spec.jointMm === 0) expect(rest).toBeLessThanOrEqual(3 * (cut + whole + 1))
      else expect(rest).toBeLessThanOrEqual(spec.jointMm * (jointLengthMm + 2 * perimeter(floor)) + 3 * (cut + whole))
    }),
  )
})

const perimeter = (floor: Floor): number =>
  floor.rings
    .flatMap((r) => r.map((p, k) => Math.hypot(r[(k + 1) % r.length]![0] - p[0], r[(k + 1) % r.length]![1] - p[1])))
    .reduce((a, b) => a + b, 0)
