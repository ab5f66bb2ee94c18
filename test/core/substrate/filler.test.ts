/** Filler volumes against exact solids. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import {
  areaAboveM2,
  fillerBags,
  fillFor,
  fillVolumeL,
  levelPlane,
  restingPlane,
  roughFillL,
} from '../../../src/core/substrate/filler.ts'
import { heightGrid } from '../../../src/core/substrate/grid.ts'

const real = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const surface = (columns: number, rows: number, step: number, height: (x: number, y: number) => number) => {
  const grid = heightGrid(
    Array.from({ length: rows }, (_, j) => Array.from({ length: columns }, (_, i) => height(i * step, j * step))),
    step,
  )
  if (!grid.ok) throw new Error(grid.problem.code)
  return grid.value
}

test('a ramp filled to level is a wedge: half of rise x area', () => {
  fc.assert(
    fc.property(real(0.001, 0.02), (slope) => {
      const ramp = surface(11, 6, 500, (x) => slope * x)
      expect(fillVolumeL(ramp, levelPlane(ramp))).toBeCloseTo(((slope * 5000) / 2) * 5 * 2.5, 6)
    }),
  )
})

test('a ramp needs nothing to come into the limit: flat is not level', () => {
  const fill = fillFor(
    surface(11, 6, 500, (x, y) => 0.01 * x - 0.004 * y),
    3,
  )
  expect(fill.intoLimitL).toBeCloseTo(0, 6)
  expect(fill.levelL).toBeGreaterThan(100)
  expect(fill.grind).toBeNull()
})

test('a plane cut slantwise: the part under a level target is a wedge with an exact volume', () => {
  // z = x / 100 over 4 m x 2 m; target 15 mm: floor is under it for 1.5 m. Wedge 15 mm x 1.5 m / 2 x 2 m = 22.5 l.
  const ramp = surface(5, 3, 1000, (x) => x / 100)
  expect(fillVolumeL(ramp, { a: 0, b: 0, c: 15 })).toBeCloseTo(22.5, 1)
  expect(areaAboveM2(ramp, { a: 0, b: 0, c: 15 })).toBeCloseTo(5, 2)
})

test('a paraboloid bowl filled to its rim: area x depth / 2 over the square it is cut from', () => {
  // z = h ((x/a)² + (y/a)²) / 2 on [-a, a]²: the mean of z is h / 3, so to level h: volume = h (1 - 1/3) x area.
  const [half, depth] = [2000, 12]
  const bowl = surface(41, 41, 100, (x, y) => (depth / 2) * (((x - half) / half) ** 2 + ((y - half) / half) ** 2))
  const exact = depth * (2 / 3) * 16
  expect(Math.abs(fillVolumeL(bowl, levelPlane(bowl)) - exact) / exact).toBeLessThan(0.001)
})

test('a circular trough (cylinder) filled to its rims holds the segment of the circle', () => {
  const [radius, width] = [100_000, 4000]
  const trough = surface(81, 3, 50, (x) => radius - Math.sqrt(radius ** 2 - (x - width / 2) ** 2))
  const half = Math.asin(width / 2 / radius)
  const segmentMm2 = (radius ** 2 * (2 * half - Math.sin(2 * half))) / 2
  const exact = (segmentMm2 * 100) / 1e6
  expect(Math.abs(fillVolumeL(trough, levelPlane(trough)) - exact) / exact).toBeLessThan(0.001)
})

test('into the limit, a bowl takes only what lies deeper than the limit', () => {
  // Floor z = -12 sin² inside; a box of depth 8 over one quarter: to a limit of 3 mm, 5 mm of it is filled.
  const pit = surface(9, 9, 500, (x, y) => (x >= 1000 && x <= 3000 && y >= 1000 && y <= 3000 ? -8 : 0))
  const fill = fillFor(pit, 3)
  // The pit's floor is 2 m x 2 m; its sloped rim of half a metre adds 5 mm deep at the edge down to nothing.
  expect(fill.intoLimitL).toBeGreaterThan(5 * 4)
  expect(fill.intoLimitL).toBeLessThan(5 * 9)
  expect(fill.levelL).toBeGreaterThan(8 * 4)
})

test('the resting plane lies on every reading and no plane above them is lower in the middle', () => {
  fc.assert(
    fc.property(
      fc.array(real(-10, 10), { minLength: 12, maxLength: 12 }),
      real(-0.01, 0.01),
      real(-0.01, 0.01),
      (z, da, db) => {
        const grid = surface(4, 3, 1000, (x, y) => z[x / 1000 + 4 * (y / 1000)]!)
        const p = restingPlane(grid)
        const above = (a: number, b: number) => {
          let c = Number.NEGATIVE_INFINITY
          for (const [j, row] of grid.heightsMm.entries())
            for (const [i, h] of row.entries()) c = Math.max(c, h - a * i * 1000 - b * j * 1000)
          return c + a * 1500 + b * 1000
        }
        expect(p.c + p.a * 1500 + p.b * 1000).toBeCloseTo(above(p.a, p.b), 6)
        expect(above(p.a, p.b)).toBeLessThanOrEqual(above(p.a + da, p.b + db) + 0.03)
      },
    ),
    { numRuns: 50 },
  )
})

test('one small hump over a flat floor: grinding it saves the filler', () => {
  const hump = surface(21, 21, 300, (x, y) => (x === 3000 && y === 3000 ? 5 : 0))
  const fill = fillFor(hump, 2)
  expect(fill.intoLimitL).toBeGreaterThan(50)
  expect(fill.grind).not.toBeNull()
  expect(fill.grind!.areaM2).toBeLessThan(4)
  expect(fill.grind!.fillL).toBeLessThan(fill.intoLimitL / 2)
})

test('bags are whole, and a yield of nothing is refused', () => {
  expect(fillerBags(30.01, 15)).toEqual({ ok: true, value: 3 })
  expect(fillerBags(30, 15)).toEqual({ ok: true, value: 2 })
  expect(fillerBags(10, 0)).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
  // References 3.11: 13 m² a bag at 1 mm, 3 mm wanted: bags = area / 13 x 3.
  expect(fillerBags(40 * 3, 13)).toEqual({ ok: true, value: Math.ceil((40 / 13) * 3) })
})

test('from readings alone the volume lies between a ridge and a bowl', () => {
  expect(roughFillL(12, 6)).toEqual({ lowL: 36, highL: 48 })
})
