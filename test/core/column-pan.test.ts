/** A shower floor round a column, against ways round a circle worked out by tangents and arc. */
import { expect, test } from 'vitest'
import { lessCurve } from '../../src/core/floor/curves.ts'
import { type Point, ringArea } from '../../src/core/floor/rings.ts'
import { rectangle } from '../../src/core/floor/shapes.ts'
import { panBed } from '../../src/core/shower/pan.ts'
import { slitBehind } from '../../src/core/shower/slit.ts'
import { must } from '../support/must.ts'

/** The shortest way from a to b round a circle: straight where it clears it, else two tangents and the arc between. */
function wayRound(a: Point, b: Point, c: Point, r: number): number {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const length = Math.hypot(dx, dy)
  const t = Math.max(0, Math.min(1, ((c[0] - a[0]) * dx + (c[1] - a[1]) * dy) / (length * length || 1)))
  if (Math.hypot(a[0] + t * dx - c[0], a[1] + t * dy - c[1]) >= r) return length
  const [da, db] = [Math.hypot(a[0] - c[0], a[1] - c[1]), Math.hypot(b[0] - c[0], b[1] - c[1])]
  const between = Math.acos(((a[0] - c[0]) * (b[0] - c[0]) + (a[1] - c[1]) * (b[1] - c[1])) / (da * db))
  const arc = between - Math.acos(r / da) - Math.acos(Math.min(1, r / db))
  return Math.sqrt(da * da - r * r) + Math.sqrt(Math.max(0, db * db - r * r)) + r * Math.max(0, arc)
}

test.each([
  [1500, 1500, 300, 600, [1200, 800]],
  [1500, 1500, 300, 600, [1350, 200]],
  [2400, 1200, 450, 300, [2000, 600]],
] as const)('%d x %d mm round a column of %d mm', (width, height, across, left, drain) => {
  const x = { from: 'low', mm: left } as const
  const { floor } = must(
    lessCurve(must(rectangle(width, height)), 'round', across, across, { at: 'inside', x, y: null }),
  )
  const [outer, column] = floor.rings
  const ring = slitBehind(outer!, column!, drain)!
  expect(Math.abs(ringArea(ring) - (width * height - (Math.PI * across ** 2) / 4))).toBeLessThan(0.5 * 2400 + 50)
  const bed = must(panBed({ ring, drain, slopeMmPerM: 20, atDrainMm: 30 }))
  const centre: Point = [left + across / 2, height / 2]
  let sum = 0
  const step = 5
  for (let i = step / 2; i < width; i += step)
    for (let j = step / 2; j < height; j += step)
      if (Math.hypot(i - centre[0], j - centre[1]) > across / 2)
        sum += step * step * (30 + 0.02 * wayRound(drain, [i, j], centre, across / 2))
  expect(bed.kind).toBe('even')
  expect(bed.volumeL / (sum / 1e6)).toBeCloseTo(1, 2)
})

test('a drain in the column is none', () => {
  const { floor } = must(lessCurve(must(rectangle(1500, 1500)), 'round', 300, 300, { at: 'inside', x: null, y: null }))
  expect(slitBehind(floor.rings[0]!, floor.rings[1]!, [750, 750])).toBeNull()
})
