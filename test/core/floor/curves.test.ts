/** Curved parts of floors against the closed forms of circle, ellipse and segment, and against a general polygon library. */
import polygonClipping from 'polygon-clipping'
import { expect, test } from 'vitest'
import { type Curve, curveArea, curvedFloor, lessCurve, plusArc } from '../../../src/core/floor/curves.ts'
import { type Floor, floorArea, floorPerimeter } from '../../../src/core/floor/rings.ts'
import { lessRectangle, type Place, rectangle } from '../../../src/core/floor/shapes.ts'
import type { Outcome } from '../../../src/problem.ts'
import { must } from '../../support/must.ts'

const why = (outcome: Outcome<unknown>) => (outcome.ok ? 'fine' : outcome.problem.facts['why'])
const room = must(rectangle(4000, 3000))

/** A segment of a circle with chord w and height d. */
const segment = (w: number, d: number): number => {
  const r = (w * w) / (8 * d) + d / 2
  return r * r * Math.acos((r - d) / r) - (r - d) * Math.sqrt(2 * r * d - d * d)
}

test.each([
  ['round', 900, 900, Math.PI * 450 ** 2],
  ['round', 1800, 2400, Math.PI * 900 * 1200],
  ['arc', 1800, 900, (Math.PI * 900 ** 2) / 2],
  ['arc', 2400, 450, segment(2400, 450)],
  // deeper than half a circle: half an oval
  ['arc', 1000, 800, (Math.PI * 500 * 800) / 2],
  ['quarter', 600, 600, (Math.PI * 600 ** 2) / 4],
  ['rounded-corner', 600, 600, 600 ** 2 * (1 - Math.PI / 4)],
] as const)('%s of %d x %d has the curve’s own area', (curve, width, depth, mm2) => {
  expect(floorArea(must(curvedFloor(curve, width, depth))) / mm2).toBeCloseTo(1, 6)
  expect(curveArea(curve, width, depth) / mm2).toBeCloseTo(1, 6)
})

test('no chord of a circle leaves it by more than half a millimetre, and its length is the circle’s', () => {
  const ring = must(curvedFloor('round', 3000, 3000)).rings[0]!
  ring.forEach(([x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]!
    expect(Math.abs(Math.hypot(x - 1500, y - 1500) - 1500)).toBeLessThan(0.5)
    expect(Math.abs(Math.hypot((x + u) / 2 - 1500, (y + v) / 2 - 1500) - 1500)).toBeLessThan(0.5)
  })
  expect(floorPerimeter({ rings: [ring] }) / (Math.PI * 3000)).toBeCloseTo(1, 3)
})

const PLACES: readonly [Curve, number, number, Place][] = [
  ['round', 900, 900, { at: 'inside', x: null, y: null }],
  ['round', 900, 900, { at: 'inside', x: { from: 'low', mm: 1200 }, y: { from: 'high', mm: 300 } }],
  ['round', 900, 900, { at: 'side', side: 'left', alongMm: null }],
  ['arc', 1800, 900, { at: 'side', side: 'top', alongMm: 500 }],
  ['arc', 1800, 900, { at: 'side', side: 'bottom', alongMm: null }],
  ['arc', 1800, 900, { at: 'side', side: 'right', alongMm: 100 }],
  ['arc', 1800, 900, { at: 'side', side: 'left', alongMm: null }],
  ['quarter', 700, 700, { at: 'corner', corner: 'bottom-right' }],
  ['rounded-corner', 700, 700, { at: 'corner', corner: 'top-left' }],
]

const poly = (floor: Floor) => floor.rings.map((ring) => ring.map(([x, y]) => [x, y] as [number, number]))
const area = (rings: readonly (readonly (readonly number[])[])[]) =>
  rings.reduce(
    (all, ring) =>
      all +
      ring.reduce((sum, [x, y], k) => {
        const [u, v] = ring[(k + 1) % ring.length]!
        return sum + (x! * v! - u! * y!) / 2
      }, 0),
    0,
  )

test.each(PLACES)('%s %d x %d taken off at %o', (curve, width, depth, place) => {
  const left = must(lessCurve(room, curve, width, depth, place)).floor
  const gone = (4000 * 3000 - floorArea(left)) / curveArea(curve, width, depth)
  expect(Math.abs(gone - 1)).toBeLessThan(2e-3)
  // The library finds the same floor left, and nothing of it outside the room.
  const kept = polygonClipping.intersection([poly(room)[0]!], poly(left)).flat()
  expect(area(kept) / floorArea(left)).toBeCloseTo(1, 6)
})

test('a rounded corner keeps the room’s box and its walls end where the curve begins', () => {
  const { floor } = must(lessCurve(room, 'rounded-corner', 700, 700, { at: 'corner', corner: 'top-left' }))
  const ring = floor.rings[0]!
  const has = (x: number, y: number) => ring.some(([u, v]) => Math.hypot(u - x, v - y) < 0.01)
  expect([has(0, 2300), has(700, 3000), has(0, 3000)]).toEqual([true, true, false])
})

test.each(['left', 'right', 'bottom', 'top'] as const)('a half-round bay on the %s wall adds half a circle', (side) => {
  const { floor } = must(plusArc(room, 1800, 900, side, null))
  expect(floorArea(floor) - 12e6).toBeCloseTo((Math.PI * 900 ** 2) / 2, -1)
  expect(floor.rings).toHaveLength(1)
  // the wall loses 1800 and gains half the circle
  expect(floorPerimeter(floor)).toBeCloseTo(14_000 - 1800 + Math.PI * 900, -1)
})

test('what does not fit is told', () => {
  expect(why(lessCurve(room, 'round', 900, 900, { at: 'inside', x: { from: 'low', mm: 3500 }, y: null }))).toBe(
    'does-not-fit',
  )
  expect(why(lessCurve(room, 'round', 0, 900, { at: 'inside', x: null, y: null }))).toBe('no-area')
  expect(why(curvedFloor('round', 900, -1))).toBe('no-area')
  const ell = must(lessRectangle(room, 2000, 1500, { at: 'corner', corner: 'top-right' })).floor
  // The right end of the top wall was bitten away: nothing to stand against.
  expect(why(plusArc(ell, 1000, 500, 'top', { from: 'high', mm: 100 }))).toBe('does-not-fit')
})
