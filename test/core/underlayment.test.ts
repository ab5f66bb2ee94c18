/** Underlayment against the general polygon library, and against sums done by hand. */
import fc from 'fast-check'
import polygonClipping, { type Polygon } from 'polygon-clipping'
import { describe, expect, test } from 'vitest'
import {
  type Floor,
  floorArea,
  movedRing,
  type Point,
  type Ring,
  ringLength,
  running,
} from '../../src/core/floor/rings.ts'
import { cavityFill, fastenersInPiece, piecesForArea, seamForArea } from '../../src/core/underlayment/goods.ts'
import { layRolls } from '../../src/core/underlayment/rolls.ts'
import { rectangle, ringOf } from '../../src/core/underlayment/shape.ts'
import { laySheets, type SheetLayout } from '../../src/core/underlayment/sheets.ts'
import { sheetsFor } from '../../src/core/underlayment/stock.ts'
import type { Outcome } from '../../src/problem.ts'

const FT = 304.8
const value = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value
}
const toPolygon = (floor: Floor): Polygon => floor.rings.map((ring) => ring.map(([x, y]): [number, number] => [x, y]))

/** Floors with straight and slanted walls: an L with a chopped corner, sometimes with an island. */
const floors: fc.Arbitrary<Floor> = fc
  .record({
    w: fc.integer({ min: 1500, max: 6000 }),
    h: fc.integer({ min: 1500, max: 6000 }),
    notchW: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
    notchH: fc.double({ min: 0.1, max: 0.6, noNaN: true }),
    chop: fc.double({ min: 0, max: 0.3, noNaN: true }),
    island: fc.boolean(),
  })
  .map(({ w, h, notchW, notchH, chop, island }) => {
    const mm = Math.round
    const outer: Ring = [
      [mm(chop * w), 0],
      [w, 0],
      [w, mm(h * (1 - notchH))],
      [mm(w * (1 - notchW)), mm(h * (1 - notchH))],
      [mm(w * (1 - notchW)), h],
      [0, h],
      [0, mm(chop * h)],
    ]
    const hole = movedRing(running(rectangle(200, 150).rings[0]!, -1), mm(w * 0.2), mm(h * 0.2))
    return { rings: island ? [outer, hole] : [outer] }
  })
const plans = fc.record({
  lengthMm: fc.constantFrom(609.6, 914.4, 1219.2, 1524),
  widthMm: fc.constantFrom(609.6, 914.4, 1219.2),
  gapMm: fc.constantFrom(0, 3),
  stagger: fc.constantFrom(0, 1 / 3, 0.5),
})

/** Each sheet clipped by the polygon library: total area and total length round the pieces. */
function byLibrary(floor: Floor, layout: SheetLayout) {
  const turn = ([x, y]: Point): [number, number] => (layout.along === 'x' ? [x, y] : [y, x])
  let area = 0
  let round = 0
  for (const place of layout.places) {
    const sheet = ringOf(place).map(turn)
    for (const polygon of polygonClipping.intersection(toPolygon(floor), [sheet])) {
      const rings = polygon.map((ring, i) => running(ring.slice(0, -1), i === 0 ? 1 : -1))
      area += floorArea({ rings })
      round += rings.reduce((sum, ring) => sum + ringLength(ring), 0)
    }
  }
  return { area, round }
}

const shop = (wFt: number, hFt: number) => rectangle(wFt * FT, hFt * FT)

describe('sheets on the floor, beside the general polygon library', () => {
  test('butted sheets cover the floor, and their seams are half of what is not wall', () => {
    fc.assert(
      fc.property(floors, plans, (floor, plan) => {
        const layout = value(laySheets(floor, { ...plan, gapMm: 0 }))
        const library = byLibrary(floor, layout)
        const walls = floor.rings.reduce((sum, ring) => sum + ringLength(ring), 0)
        expect(library.area / floorArea(floor)).toBeCloseTo(1, 5)
        expect(layout.seamMm).toBeCloseTo((library.round - walls) / 2, -1)
      }),
      { numRuns: 60 },
    )
  })

  test('with gaps the sheets cover the floor less the gaps', () => {
    fc.assert(
      fc.property(floors, plans, (floor, plan) => {
        const layout = value(laySheets(floor, { ...plan, gapMm: 3 }))
        const covered = byLibrary(floor, layout).area
        const gaps = layout.seamMm * 3
        // A gap that straddles a wall has its middle off the floor and half its width on it.
        const walls = floor.rings.reduce((sum, ring) => sum + ringLength(ring), 0)
        expect(Math.abs(floorArea(floor) - covered - gaps)).toBeLessThan(1.5 * walls + 40 * layout.places.length)
      }),
      { numRuns: 40 },
    )
  })

  test('with gaps, by hand: 8 x 12 ft in 4 x 4 ft boards', () => {
    // Two lines of 8 ft and one of 12 ft, 3 mm wide, crossing twice.
    const layout = value(
      laySheets(shop(8, 12), { lengthMm: 4 * FT, widthMm: 4 * FT, gapMm: 3, stagger: 0, along: 'x' }),
    )
    const gaps = 3 * (2 * 8 * FT + 12 * FT) - 2 * 9
    expect(floorArea(shop(8, 12)) - byLibrary(shop(8, 12), layout).area).toBeCloseTo(gaps, -1)
  })

  test('the count lies between the area and a fresh sheet for every piece', () => {
    fc.assert(
      fc.property(floors, plans, (floor, plan) => {
        const layout = value(laySheets(floor, { ...plan, gapMm: 0 }))
        expect(layout.sheets).toBeGreaterThanOrEqual(Math.ceil(layout.areaMm2 / (plan.lengthMm * plan.widthMm) - 1e-6))
        expect(layout.sheets).toBeLessThanOrEqual(layout.whole + layout.cut)
      }),
      { numRuns: 60 },
    )
  })
})

test.each([
  {
    room: [8, 12],
    sheet: [4, 4],
    stagger: 0.5,
    sheets: 6,
    seamFt: 32,
    by: 'three rows: 2 x 8 ft between, 4 + 8 + 4 ft of ends',
  },
  { room: [9, 9], sheet: [3, 3], stagger: 0, sheets: 9, seamFt: 36, by: 'four lines of 9 ft' },
  { room: [10, 12], sheet: [4, 4], stagger: 0, sheets: 8, seamFt: 0, by: '7.5 sheets of area; halves paired' },
  { room: [12, 20], sheet: [3, 2], stagger: 0.5, sheets: 40, seamFt: 0, by: '40 sheets of area, all rests are halves' },
])('$room ft floor in $sheet ft sheets: $sheets ($by)', ({ room, sheet, stagger, sheets, seamFt }) => {
  const plan = { lengthMm: sheet[0]! * FT, widthMm: sheet[1]! * FT, gapMm: 0, stagger }
  const layout = value(laySheets(shop(room[0]!, room[1]!), plan))
  expect(layout.sheets).toBe(sheets)
  if (seamFt) expect(layout.seamMm / FT).toBeCloseTo(seamFt, 6)
})

test('seams keep clear of the panel joints below where a shift allows it', () => {
  const panels = { x: { firstMm: 0, everyMm: 8 * FT }, y: { firstMm: 0, everyMm: 4 * FT }, clearMm: 150 }
  const plan = { lengthMm: 4 * FT, widthMm: 4 * FT, gapMm: 0, stagger: 0.5 }
  expect(value(laySheets(shop(16, 16), { ...plan, along: 'x' })).clearOfSeamsMm).toBeNull()
  expect(value(laySheets(shop(16, 16), { ...plan, under: panels })).clearOfSeamsMm).toBeGreaterThanOrEqual(150)
})

test('stock: rests are used, no piece twice', () => {
  expect(sheetsFor([], { lengthMm: 100, widthMm: 100 })).toBe(0)
  expect(sheetsFor(Array(4).fill({ lengthMm: 50, widthMm: 50 }), { lengthMm: 100, widthMm: 100 })).toBe(1)
  // By hand: with a 3 mm kerf two 50 mm pieces no longer come out of 100 mm, either way.
  expect(sheetsFor(Array(4).fill({ lengthMm: 50, widthMm: 50 }), { lengthMm: 100, widthMm: 100 }, 3)).toBe(4)
  expect(
    sheetsFor(
      [
        { lengthMm: 90, widthMm: 40 },
        { lengthMm: 60, widthMm: 90 },
      ],
      { lengthMm: 100, widthMm: 100 },
    ),
  ).toBe(1)
  expect(
    sheetsFor(
      [
        { lengthMm: 90, widthMm: 40 },
        { lengthMm: 60, widthMm: 90 },
      ],
      { lengthMm: 100, widthMm: 100 },
      0,
      false,
    ),
  ).toBe(2)
})

describe('rolls', () => {
  test.each([
    {
      room: [12, 14],
      roll: [1000, 5000],
      rolls: 4,
      by: '12 ft is 3.66 widths of 1 m: four strips of 4.27 m are 17.1 m',
    },
    { room: [10, 10], roll: [5 * FT, 30 * FT], rolls: 1, by: 'two strips of 10 ft from 30 ft' },
    {
      room: [6, 40],
      roll: [3 * FT, 30 * FT],
      rolls: 3,
      by: 'two strips of 40 ft: 80 ft from 30 ft rolls with butt joints',
    },
  ])('$room ft floor, roll $roll mm: $rolls ($by)', ({ room, roll, rolls }) => {
    const layout = value(layRolls(shop(room[0]!, room[1]!), { widthMm: roll[0]!, lengthMm: roll[1]!, lapMm: 0 }))
    expect(layout.rolls).toBe(rolls)
  })

  test('butt joints are seams too: 6 x 40 ft from 3 x 30 ft rolls', () => {
    const layout = value(layRolls(shop(6, 40), { widthMm: 3 * FT, lengthMm: 30 * FT, lapMm: 0, along: 'y' }))
    // One seam of 40 ft; the first strip is joined at 30 ft, the second, which starts with the 20 ft left, at 20 ft.
    expect(layout.buttJoints).toBe(2)
    expect(layout.seamMm / FT).toBeCloseTo(46, 9)
  })

  test('two strips, one seam of exactly the room; a lap costs width', () => {
    const butted = value(layRolls(shop(10, 12), { widthMm: 5 * FT, lengthMm: 100 * FT, lapMm: 0, along: 'y' }))
    expect([butted.strips, butted.seamMm / FT]).toEqual([2, 12])
    const lapped = value(layRolls(shop(10, 12), { widthMm: 5 * FT, lengthMm: 100 * FT, lapMm: 50, along: 'y' }))
    // The third strip is 100 mm wide (3048 - 2 x 1474): cut as three side by side, two butt joints of 100 mm.
    expect(lapped.strips).toBe(3)
    expect(lapped.seamMm).toBeCloseTo(2 * 12 * FT + 200, 6)
  })

  test('never less roll than floor, on any floor', () => {
    fc.assert(
      fc.property(floors, fc.constantFrom(0, 50), (floor, lapMm) => {
        const layout = value(layRolls(floor, { widthMm: 1000, lengthMm: 15_000, lapMm }))
        expect(layout.rolls * 15e6).toBeGreaterThanOrEqual(layout.areaMm2)
        expect(layout.seamMm).toBeGreaterThan(0)
      }),
      { numRuns: 40 },
    )
  })
})

test.each([
  { area: 168, piece: 54, pct: 10, count: 4, by: '168 x 1.1 / 54 = 3.42' },
  { area: 240, piece: 6, pct: 10, count: 44, by: '240 x 1.1 / 6 = 44' },
  { area: 240, piece: 6, pct: 0, count: 40, by: 'exactly 40, no rounding noise' },
])('$area sf in pieces of $piece sf at $pct %: $count ($by)', ({ area, piece, pct, count }) => {
  const SF = 0.09290304
  expect(value(piecesForArea(area * SF, piece * SF, pct))).toBe(count)
})

test('seams of a bare area agree with a layout of the same square', () => {
  expect(seamForArea(144, 4, 4)).toBeCloseTo(48, 9)
  const laid = value(laySheets(shop(12, 12), { lengthMm: 4 * FT, widthMm: 4 * FT, gapMm: 0, stagger: 0 }))
  expect(laid.seamMm / FT).toBeCloseTo(48, 6)
})

test('goods by hand', () => {
  // 8 in grid, 1/2 in in from the edge of a 3 x 5 ft board: 59 in / 8 = 8 gaps, 35 / 8 = 5 gaps; 9 x 6 = 54.
  expect(value(fastenersInPiece(1524, 914.4, { edgeMm: 203.2, fieldMm: 203.2, insetMm: 12.7 }))).toBe(54)
  expect(value(cavityFill(10, 2))).toBe(20)
})

test.each([
  ['no floor', () => laySheets({ rings: [] }, { lengthMm: 600, widthMm: 600, gapMm: 0, stagger: 0 }), 'bad-floor'],
  ['sheet too small', () => laySheets(shop(9, 9), { lengthMm: 1, widthMm: 600, gapMm: 0, stagger: 0 }), 'out-of-range'],
  [
    'not a number',
    () => laySheets(shop(9, 9), { lengthMm: Number.NaN, widthMm: 600, gapMm: 0, stagger: 0 }),
    'out-of-range',
  ],
  [
    'a hangar of small sheets',
    () => laySheets(shop(2000, 2000), { lengthMm: 600, widthMm: 600, gapMm: 0, stagger: 0 }),
    'too-much-work',
  ],
  [
    'lap wider than half the roll',
    () => layRolls(shop(9, 9), { widthMm: 300, lengthMm: 9000, lapMm: 200 }),
    'out-of-range',
  ],
  ['no area', () => piecesForArea(0, 1, 10), 'out-of-range'],
  ['spacing 0', () => fastenersInPiece(900, 900, { edgeMm: 0, fieldMm: 200, insetMm: 10 }), 'out-of-range'],
] as const)('%s is refused with a code', (_, run, code) => {
  const outcome = run()
  expect(outcome.ok ? null : outcome.problem.code).toBe(code)
})
