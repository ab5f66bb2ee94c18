/** Straightedge gaps against exact curves and surfaces. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { heightAt, heightGrid, judgeGrid, worstGap } from '../../../src/core/substrate/grid.ts'
import { gapUnder, judgeReadings, slideEdge } from '../../../src/core/substrate/straightedge.ts'

const TEN_FEET = 3048
const IN = 25.4
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const curve = (lengthMm: number, steps: number, height: (x: number) => number) =>
  Array.from({ length: steps + 1 }, (_, i) => {
    const alongMm = (lengthMm * i) / steps
    return { alongMm, heightMm: height(alongMm) }
  })
const surface = (columns: number, rows: number, step: number, height: (x: number, y: number) => number) => {
  const heights = Array.from({ length: rows }, (_, j) =>
    Array.from({ length: columns }, (_, i) => height(i * step, j * step)),
  )
  const grid = heightGrid(heights, step)
  if (!grid.ok) throw new Error(grid.problem.code)
  return grid.value
}

test('a straight ramp has no gap, however steep', () => {
  fc.assert(
    fc.property(real(-0.1, 0.1), real(-50, 50), (slope, start) => {
      expect(
        slideEdge(
          curve(6000, 40, (x) => start + slope * x),
          TEN_FEET,
        ).gapMm,
      ).toBeCloseTo(0, 8)
    }),
  )
})

test('a plane in any direction has no gap', () => {
  fc.assert(
    fc.property(real(-0.05, 0.05), real(-0.05, 0.05), (a, b) => {
      expect(
        worstGap(
          surface(9, 7, 600, (x, y) => a * x + b * y),
          TEN_FEET,
        ).gapMm,
      ).toBeCloseTo(0, 7)
    }),
    { numRuns: 20 },
  )
})

test('a parabolic dip or crown shows L² / (8 R), the sagitta', () => {
  fc.assert(
    fc.property(real(1e5, 1e7), fc.constantFrom(1, -1), fc.integer({ min: 2, max: 5 }), (radius, side, parts) => {
      // The edge is a whole number of steps, so that its middle and ends are points of the profile.
      const step = TEN_FEET / (2 * parts)
      const gap = slideEdge(
        curve(step * 4 * parts, 4 * parts, (x) => (side * x * x) / (2 * radius)),
        TEN_FEET,
      )
      expect(gap.gapMm).toBeCloseTo(TEN_FEET ** 2 / (8 * radius), 6)
      expect(gap.shape).toBe(side > 0 ? 'dip' : 'hump')
    }),
  )
})

test('a circular trough shows the exact sagitta R - sqrt(R² - L²/4)', () => {
  const radius = 200_000
  const dip = curve(TEN_FEET, 200, (x) => radius - Math.sqrt(radius ** 2 - (x - TEN_FEET / 2) ** 2))
  expect(gapUnder(dip).gapMm).toBeCloseTo(radius - Math.sqrt(radius ** 2 - (TEN_FEET / 2) ** 2), 6)
})

test('a step of 5 mm shows 5 mm, and a narrow ridge its own height', () => {
  const step = [0, 1499.999, 1500, 3048].map((alongMm) => ({ alongMm, heightMm: alongMm < 1500 ? 0 : 5 }))
  expect(gapUnder(step).gapMm).toBeCloseTo(5, 1)
  const ridge = [0, 1000, 1010, 1020, 3048].map((alongMm) => ({ alongMm, heightMm: alongMm === 1010 ? 4 : 0 }))
  expect(gapUnder(ridge)).toMatchObject({ shape: 'hump' })
  expect(gapUnder(ridge).gapMm).toBeCloseTo(4, 1)
})

test('the gap is the least that any line above the floor can leave (checked by trying lines)', () => {
  fc.assert(
    fc.property(fc.array(real(-10, 10), { minLength: 3, maxLength: 12 }), (heights) => {
      const profile = heights.map((heightMm, i) => ({ alongMm: i * 100, heightMm }))
      let least = Number.POSITIVE_INFINITY
      for (const a of profile)
        for (const b of profile) {
          if (a.alongMm >= b.alongMm) continue
          const slope = (b.heightMm - a.heightMm) / (b.alongMm - a.alongMm)
          const off = profile.map((p) => p.heightMm - slope * p.alongMm)
          least = Math.min(least, Math.max(...off) - Math.min(...off))
        }
      expect(gapUnder(profile).gapMm).toBeCloseTo(least, 9)
    }),
  )
})

test('an edge laid anywhere on a paraboloid bowl shows L² / (8 R) in every direction', () => {
  const radius = 400_000
  const bowl = surface(17, 17, 304.8, (x, y) => (x * x + y * y) / (2 * radius))
  const exact = TEN_FEET ** 2 / (8 * radius)
  const gap = worstGap(bowl, TEN_FEET)
  // Bilinear cells stand above the true bowl by up to step² / (8 R) each way.
  expect(Math.abs(gap.gapMm - exact)).toBeLessThan(304.8 ** 2 / (4 * radius) + 1e-9)
})

test('a trough at any angle is found: across it L² / (8 R)', () => {
  const radius = 300_000
  for (const deg of [0, 45, 90, 135]) {
    const [c, s] = [Math.cos((deg * Math.PI) / 180), Math.sin((deg * Math.PI) / 180)]
    const gap = worstGap(
      surface(21, 21, 254, (x, y) => (x * c + y * s) ** 2 / (2 * radius)),
      TEN_FEET,
    )
    expect(Math.abs(gap.gapMm - TEN_FEET ** 2 / (8 * radius))).toBeLessThan(254 ** 2 / (2 * radius))
  }
})

test('the place of a single low point is named', () => {
  const floor = surface(11, 11, 610, (x, y) => (x === 1830 && y === 3050 ? -6 : 0))
  const gap = worstGap(floor, TEN_FEET)
  expect(gap).toMatchObject({ shape: 'dip' })
  expect([gap.gapMm, gap.xMm, gap.yMm]).toEqual([
    expect.closeTo(6, 6),
    expect.closeTo(1830, 3),
    expect.closeTo(3050, 3),
  ])
})

test('a grid between its points is bilinear', () => {
  const floor = surface(2, 2, 1000, (x, y) => (x > 0 && y > 0 ? 8 : 0))
  expect(heightAt(floor, 500, 500)).toBeCloseTo(2, 12)
  expect(heightAt(floor, 1000, 250)).toBeCloseTo(2, 12)
})

// Limits: references 4.1, 4.2 (reported): 1/4 in 10 ft and 1/16 in 1 ft; from 15 in 1/8 in 10 ft and 1/16 in 2 ft.
const SMALL = { longMm: IN / 4, longEdgeMm: TEN_FEET, shortMm: IN / 16, shortEdgeMm: 304.8 }
const LARGE = { longMm: IN / 8, longEdgeMm: TEN_FEET, shortMm: IN / 16, shortEdgeMm: 609.6 }

test.each([
  { inches: [1 / 16, 3 / 32, 1 / 8], edge: 3048, limit: LARGE, verdict: 'pass' },
  { inches: [1 / 16, 3 / 16], edge: 3048, limit: LARGE, verdict: 'fail' },
  { inches: [3 / 16], edge: 3048, limit: SMALL, verdict: 'pass' },
  { inches: [5 / 16], edge: 3048, limit: SMALL, verdict: 'fail' },
  { inches: [1 / 16], edge: 609.6, limit: LARGE, verdict: 'pass' },
  { inches: [1 / 8], edge: 609.6, limit: LARGE, verdict: 'fail' },
  { inches: [1 / 8], edge: 1828.8, limit: LARGE, verdict: 'unknown' },
  { inches: [3 / 16], edge: 1828.8, limit: LARGE, verdict: 'fail' },
])('gaps $inches in under $edge mm: $verdict', ({ inches, edge, limit, verdict }) => {
  const judged = judgeReadings(
    inches.map((i) => i * IN),
    edge,
    limit,
  )
  expect(judged.ok && judged.value.verdict).toBe(verdict)
})

test('a floor out 3/16 in 10 ft passes for small tile and fails for large', () => {
  const depth = (3 / 16) * IN
  const floor = surface(11, 3, 304.8, (x) => depth * ((x - 1524) / 1524) ** 2)
  expect(judgeGrid(floor, SMALL)).toMatchObject({ verdict: 'pass' })
  expect(judgeGrid(floor, LARGE)).toMatchObject({ verdict: 'fail' })
  expect(judgeGrid(floor, LARGE).long.gapMm).toBeCloseTo(depth, 6)
})

test('ragged, empty, wild and huge grids are refused', () => {
  expect(heightGrid([], 600)).toMatchObject({ ok: false })
  expect(heightGrid([[1, 2], [1]], 600)).toMatchObject({ ok: false, problem: { code: 'missing' } })
  expect(
    heightGrid(
      [
        [1, Number.NaN],
        [1, 2],
      ],
      600,
    ),
  ).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
  expect(
    heightGrid(
      [
        [1, 2],
        [1, 2],
      ],
      0,
    ),
  ).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
  const many = Array.from({ length: 51 }, () => Array.from({ length: 51 }, () => 0))
  expect(heightGrid(many, 600)).toMatchObject({ ok: false, problem: { code: 'too-much-work' } })
})
