/** Floors by published examples and by hand. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { floorOf, floorOfRings } from '../../../src/core/floor/check.ts'
import { inset, less, shared, union } from '../../../src/core/floor/combine.ts'
import { floorArea, floorHolds, floorPerimeter, type Ring } from '../../../src/core/floor/rings.ts'
import {
  CENTRED,
  fromDiagonal,
  inARow,
  lessRectangle,
  plusRectangle,
  rectangle,
  runOut,
  squaringTriangle,
  tShape,
} from '../../../src/core/floor/shapes.ts'
import { walk, walkByTurns } from '../../../src/core/floor/walk.ts'
import { ledger, niche, onJoints, wallFace, wallsOn } from '../../../src/core/floor/walls.ts'
import type { Outcome } from '../../../src/problem.ts'
import { must } from '../../support/must.ts'
import { floors } from '../layout/floors.ts'

const FT = 304.8
const why = (outcome: Outcome<unknown>) =>
  outcome.ok ? 'fine' : (outcome.problem.facts['why'] ?? outcome.problem.code)

test('an L by two rectangles is 15.105 m² — Flooring Technology learner guide, lesson 6 (2013)', () => {
  const first = must(rectangle(2740, 1750))
  const joined = must(plusRectangle(first, 2630, 3920, 'top', 0))
  expect(floorArea(joined.floor) / 1e6).toBeCloseTo(2.74 * 1.75 + 2.63 * 3.92, 9)
  expect(joined.floor.rings[0]).toHaveLength(6)
})

test('a T of 4 x 12 and 8 x 10 ft is 128 ft² — Alabama distance-learning course, unit 9-01', () => {
  const t = must(tShape(12 * FT, 4 * FT, 8 * FT, 14 * FT))
  expect(floorArea(t) / FT ** 2).toBeCloseTo(128, 9)
  expect(floorPerimeter(t) / FT).toBeCloseTo(2 * (12 + 14), 9) // by hand: a notch at a corner leaves the perimeter
})

test('an L at a named corner, a U at a side, an island by its walls or centred', () => {
  const room = must(rectangle(12 * FT, 14 * FT))
  const l = must(lessRectangle(room, 4 * FT, 6 * FT, { at: 'corner', corner: 'top-right' }))
  expect(floorArea(l.floor) / FT ** 2).toBeCloseTo(144, 9)
  expect(floorHolds(l.floor, [11 * FT, 13 * FT])).toBe(false)
  expect(floorHolds(l.floor, [1 * FT, 13 * FT])).toBe(true)
  const u = must(lessRectangle(room, 4 * FT, 6 * FT, { at: 'side', side: 'bottom', alongMm: null }))
  expect(u.centredX).toBe(true)
  expect(u.atMm[0] / FT).toBeCloseTo(4, 9)
  expect(floorPerimeter(u.floor) / FT).toBeCloseTo(52 + 12, 9)
  const x = { from: 'low', mm: 4 * FT } as const
  const island = must(lessRectangle(room, 3 * FT, 5 * FT, { at: 'inside', x, y: { from: 'low', mm: 2 * FT } }))
  expect(island.floor.rings).toHaveLength(2)
  expect(floorHolds(island.floor, [5 * FT, 4 * FT])).toBe(false)
  expect(floorPerimeter(island.floor) / FT).toBeCloseTo(52, 9)
  expect(must(lessRectangle(room, 3 * FT, 5 * FT, CENTRED)).atMm[0] / FT).toBeCloseTo(4.5, 9)
  expect(why(lessRectangle(room, 13 * FT, 1 * FT, CENTRED))).toBe('does-not-fit')
})

test('walls walked: the issue of a corner list and a walk is one floor', () => {
  const corners: Ring = [
    [0, 0],
    [12, 0],
    [12, 8],
    [5, 8],
    [5, 14],
    [0, 14],
  ]
  const byCorners = must(floorOf(corners.map(([x, y]) => [x * FT, y * FT] as const)))
  const ways = ['right', 'up', 'left', 'up', 'left', 'down'] as const
  const walked = must(walk([12, 8, 7, 6, 5, 14].map((ft, k) => ({ toward: ways[k]!, lengthMm: ft * FT }))))
  const turns = ['left', 'left', 'right', 'left', 'left', 'left'] as const
  const turned = must(walkByTurns([12, 8, 7, 6, 5, 14].map((ft, k) => ({ lengthMm: ft * FT, thenTurn: turns[k]! }))))
  expect(floorArea(byCorners) / FT ** 2).toBeCloseTo(96 + 30, 9)
  for (const other of [walked, turned]) {
    expect(other.closingErrorMm).toBeLessThan(1e-6)
    expect(floorArea(must(shared(byCorners, other.floor)))).toBeCloseTo(floorArea(byCorners), 0)
  }
})

test('a small closing error is shared out and told, a large one is a problem that says what is missing', () => {
  const room = (last: number) =>
    walk([
      { toward: 'right', lengthMm: 3000 },
      { toward: 'down', lengthMm: 2000 },
      { toward: 'left', lengthMm: 3000 },
      { toward: 'up', lengthMm: last },
    ])
  expect(must(room(1990)).closingErrorMm).toBeCloseTo(10, 9)
  expect(floorArea(must(room(1990)).floor)).toBeCloseTo((3000 * 2 * 2000 * 1990) / 3990, 0) // by hand, shared out by length
  const open = room(1500)
  expect(open.ok ? null : open.problem.facts).toEqual({
    why: 'walk-open',
    closingErrorMm: 500,
    lastWall: { toward: 'up', lengthMm: 500 },
  })
})

test('four sides and a diagonal: a 3-4-5 room is square, a racked one is told', () => {
  const square = must(fromDiagonal(4000, 3000, 4000, 3000, 5000))
  expect(floorArea(square.floor)).toBeCloseTo(12e6, 0)
  for (const off of square.cornersOffDeg) expect(Math.abs(off)).toBeLessThan(1e-9)
  // Parallelogram law: e² + f² = 2 (a² + b²).
  const racked = must(fromDiagonal(4000, 3000, 4000, 3000, 5060))
  expect(racked.otherDiagonalMm ** 2 + 5060 ** 2).toBeCloseTo(2 * (4000 ** 2 + 3000 ** 2), 3)
  const [, , c] = racked.floor.rings[0]!
  expect(runOut(4000, 5060, racked.otherDiagonalMm)).toBeCloseTo(c![0] - 4000, 6)
  expect(squaringTriangle(12 * FT, 14 * FT)?.map((mm) => mm / FT)).toEqual([9, 12, 15]) // 3-4-5 three times over
  expect(squaringTriangle(2 * FT, 14 * FT)).toBeNull()
  expect(why(fromDiagonal(4000, 3000, 4000, 3000, 7100))).toBe('diagonal-impossible')
})

test.each([
  [
    'crosses-itself',
    [
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
    ],
  ],
  [
    'no-area',
    [
      [
        [0, 0],
        [10, 0],
        [20, 0],
      ],
    ],
  ],
  [
    'too-few-corners',
    [
      [
        [0, 0],
        [10, 0],
      ],
    ],
  ],
  [
    'touches-itself',
    [
      [
        [0, 0],
        [20, 0],
        [20, 10],
        [10, 0.0001],
        [0, 10],
      ],
    ],
  ],
  [
    'rings-touch',
    [
      [
        [0, 0],
        [20, 0],
        [20, 20],
        [0, 20],
      ],
      [
        [0, 5],
        [5, 5],
        [5, 9],
      ],
    ],
  ],
  [
    'rings-cross',
    [
      [
        [0, 0],
        [20, 0],
        [20, 20],
        [0, 20],
      ],
      [
        [-5, 5],
        [5, 5],
        [5, 9],
      ],
    ],
  ],
  [
    'hole-outside',
    [
      [
        [0, 0],
        [20, 0],
        [20, 20],
        [0, 20],
      ],
      [
        [30, 5],
        [35, 5],
        [35, 9],
      ],
    ],
  ],
  [
    'not-a-number',
    [
      [
        [0, 0],
        [20, Number.NaN],
        [20, 20],
        [0, 20],
      ],
    ],
  ],
  [
    'out-of-range',
    [
      [
        [0, 0],
        [1e7, 0],
        [1e7, 1e7],
        [0, 1e7],
      ],
    ],
  ],
  ['no-rings', []],
] as [string, Ring[]][])('%s is told', (fault, rings) => {
  expect(why(floorOfRings(rings))).toBe(fault)
})

test('too many corners are refused unread', () => {
  const many: Ring = Array.from({ length: 20_000 }, (_, k) => [k, k % 2] as const)
  expect(why(floorOf(many))).toBe('too-much-work')
})

test('union, difference and common part agree on areas; the gap is drawn in at every wall', () => {
  fc.assert(
    fc.property(floors, floors, (a, b) => {
      const [both, rest, sum] = [shared(a, b), less(a, [b]), union([a, b])]
      const area = (o: typeof both) => (o.ok ? floorArea(o.value) : 0)
      expect(Math.abs(area(both) + area(rest) - floorArea(a))).toBeLessThan(10)
      expect(Math.abs(area(sum) - area(rest) - floorArea(b))).toBeLessThan(10)
    }),
  )
  const room = must(rectangle(4000, 3000))
  expect(floorArea(must(inset(room, 6)))).toBeCloseTo(3988 * 2988, 3)
  expect(why(inset(room, 2000))).toBe('nothing-left')
  expect(inARow([room, room], 500).rings).toHaveLength(2)
})

test('walls: a backsplash with an outlet, a niche on joints, a ledger at the low point', () => {
  const face = must(wallFace(3000, 450, [{ widthMm: 70, heightMm: 115, fromLeftMm: 500, fromFootMm: 200 }]))
  expect(floorArea(face)).toBeCloseTo(3000 * 450 - 70 * 115, 3)
  expect(wallsOn(face, 'left').map((w) => w.lengthMm)).toEqual([450])
  expect(why(wallFace(3000, 450, [{ widthMm: 70, heightMm: 115, fromLeftMm: 2980, fromFootMm: 200 }]))).toBe(
    'does-not-fit',
  )
  // By hand: 3 tiles of 150 with joints of 2: 3 x 152 + 2 = 458; each side 12 + 1 + 3 + 8 = 24.
  const lining = { boardMm: 12, membraneMm: 1, mortarMm: 3, tileMm: 8 }
  expect(must(niche(3, 150, 2, lining))).toEqual({ clearMm: 458, roughMm: 506 })
  expect(onJoints(600, 450, 150, 2, 0)).toEqual({ fromMm: 606, clearMm: 458, tiles: 3 })
  expect(must(ledger(150, 2, 3, 12))).toEqual({ heightMm: 155, leastCutMm: 138 })
})
