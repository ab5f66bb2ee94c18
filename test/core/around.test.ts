/** Clips, trim, build-up, weight, truck, order and the day's plan: sums by hand and published figures, then properties. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  applianceFit,
  deadLoad,
  doorCutMm,
  flangeRingMm,
  type Layer,
  spreadLoad,
  stackHeight,
  stepAt,
} from '../../src/core/buildup.ts'
import { bagsADay, evenDays, type Row, rowAreas, settingOrder, splitDays } from '../../src/core/day.ts'
import { floorArea } from '../../src/core/floor/rings.ts'
import { clipsForEdges, clipsOnEdge, clipsPerTile, gridEdges, wedgesFor } from '../../src/core/levelling.ts'
import { boxesForLot, missingFrom, type OrderLine, orderOf } from '../../src/core/order.ts'
import { profileHeight, stairTiles } from '../../src/core/trim.ts'
import { axleShare, liftingLimit, massOf, pallets, tongueShare, tripsFor } from '../../src/core/truck.ts'
import { rectangle } from '../../src/core/underlayment/shape.ts'
import type { Outcome } from '../../src/problem.ts'

const IN = 25.4
const KG_PER_LB = 0.45359237
const value = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value
}

describe('levelling', () => {
  const rule = { spacingMm: 24 * IN, cornerMm: 2 * IN, singleUnderMm: 6 * IN }
  test.each([
    [4, 1],
    [8, 2],
    [12, 2],
    [24, 2],
    [48, 3],
  ])('a %i in edge takes %i', (edge, clips) => expect(value(clipsOnEdge(edge * IN, rule))).toBe(clips))

  test('a closer spacing: 48 in, 2 in corners, 44 in between at 12 in is four gaps', () => {
    expect(value(clipsOnEdge(48 * IN, { ...rule, spacingMm: 12 * IN }))).toBe(5)
  })

  test('a grid of full rows counts each shared edge once, by walking the grid', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 30 }), fc.integer({ min: 1, max: 30 }), (columns, rows) => {
        let long = 0
        let short = 0
        for (let r = 0; r < rows; r++)
          for (let c = 0; c < columns; c++) {
            if (r + 1 < rows) long++
            if (c + 1 < columns) short++
          }
        expect(gridEdges(columns, rows, 1219.2, 203.2).map((e) => e.count)).toEqual([long, short])
        const exact = value(clipsForEdges(gridEdges(columns, rows, 1219.2, 203.2), rule))
        expect(value(clipsPerTile(1219.2, 203.2, rule)) * columns * rows).toBeGreaterThanOrEqual(exact)
      }),
    )
  })

  test('wedges: overnight they come back; 30 h in the cold ties up two sets', () => {
    expect(value(wedgesFor({ clipsADay: 120, freeAfterH: 16 }))).toBe(120)
    expect(value(wedgesFor({ clipsADay: 120, freeAfterH: 24 }))).toBe(120)
    expect(value(wedgesFor({ clipsADay: 120, freeAfterH: 30 }))).toBe(240)
  })
})

describe('trim', () => {
  test('by hand', () => {
    expect(profileHeight(9.5, 3, [8, 10, 12.5, 15])).toBe(12.5)
    expect(profileHeight(30, 3, [8, 10])).toBeNull()
  })

  test('stairs by hand: 3 treads 36 x 11 in, 4 risers of 7 in, from 18 x 18 in', () => {
    const stairs = { risers: 4, treads: 3, widthMm: 36 * IN, treadDepthMm: 11 * IN, riserHeightMm: 7 * IN }
    const got = value(stairTiles(stairs, { lengthMm: 18 * IN, widthMm: 18 * IN, jointMm: 3 }))
    // Two across (36 in of 18 1/8); 3 x 2 on the treads; 4 x 2 strips of 7 in, two from a tile.
    expect([got.treadTiles, got.riserTiles]).toEqual([6, 4])
    expect(got.areaM2 / (IN * IN)).toBeCloseTo((36 * (33 + 28)) / 1e6, 9)
    expect(got.nosingM).toBeCloseTo((108 * IN) / 1000, 9)
  })
})

describe('build-up and weight', () => {
  const porcelain: Layer = { name: 'porcelain', lowMm: 10, highMm: 10, kgPerL: 2.35 }
  test('10 mm at 2.35 kg/L is 23.5 kg/m², 4.813 psf (references 7.6)', () => {
    const load = value(deadLoad([porcelain]))
    expect(load.kgPerM2).toBeCloseTo(23.5, 9)
    // 1 psf = 47.88026 Pa (NIST SP 811, from memory).
    expect((load.kpa * 1000) / 47.88026).toBeCloseTo(4.813, 3)
  })
  test('a tested cladding of 2200 kg/m³ (Applied Adhesion Science 2018, table 1), 9 mm thick: 19.8 kg/m²', () => {
    expect(value(deadLoad([{ ...porcelain, lowMm: 9, highMm: 9, kgPerL: 2.2 }])).kgPerM2).toBeCloseTo(19.8, 9)
  })
  test('below the code figure of 1.10 kN/m² for 19 mm tile on 25 mm bed (ASCE 7-16 C3.1-1b), which is conservative', () => {
    const load = value(
      deadLoad([
        { name: 'tile', lowMm: 19, highMm: 19, kgPerL: 2.2 },
        { name: 'bed', lowMm: 25, highMm: 25, kgPerL: 2.08 },
      ]),
    )
    expect(load.kpa).toBeLessThan(1.1)
    expect(load.kpa).toBeGreaterThan(0.75)
  })
  test('stack, with a layer nobody weighed', () => {
    const layers = [porcelain, { name: 'bed', lowMm: 3, highMm: 5, kgPerL: null }]
    expect(value(stackHeight(layers))).toEqual({ lowMm: 13, usualMm: 14, highMm: 15 })
    expect(value(deadLoad(layers)).unknown).toEqual(['bed'])
    expect(stackHeight([]).ok).toBe(false)
    expect(stackHeight([{ ...porcelain, highMm: 9 }]).ok).toBe(false)
  })
  test('doors, appliances, flange, thresholds by hand', () => {
    expect(doorCutMm(10, 22, 6)).toBe(18)
    expect(value(applianceFit(876, 24, 838, true))).toEqual({ spareMm: 14, goesIn: true, comesOut: true })
    // Tile stops in front: it goes in, but 850 + 40 will not pass 876.
    expect(value(applianceFit(876, 40, 850, false))).toEqual({ spareMm: 26, goesIn: true, comesOut: false })
    expect(flangeRingMm(22, 6)).toBe(16)
    expect(flangeRingMm(4, 6)).toBe(0)
    const rule = { uprightMm: 6.35, bevelMm: 12.7, bevelRun: 2, rampRun: 12 }
    expect([0, 6, 10, 20].map((mm) => value(stepAt(mm, rule)).kind)).toEqual(['level', 'upright', 'bevel', 'ramp'])
    expect(value(stepAt(10, rule)).runMm).toBe(20)
    expect(spreadLoad(100, 2)).toBeCloseTo(0.4903, 4)
  })
})

describe('truck', () => {
  test('reach 15, from 6, travel 30 in: 24.53 lb; a 50 lb bag 2.04 times that (NIOSH 94-110, references 9.11)', () => {
    const lift = value(liftingLimit(50 * KG_PER_LB, { reachMm: 15 * IN, fromMm: 6 * IN, travelMm: 30 * IN }))
    expect(lift.limitKg / KG_PER_LB).toBeCloseTo(24.53, 2)
    expect(lift.index).toBeCloseTo(2.04, 2)
  })
  test('the best lift is 51 lb (NIOSH 94-110: load constant 23 kg)', () => {
    const lift = value(liftingLimit(10, { reachMm: 0, fromMm: 30 * IN, travelMm: 0 }))
    expect(lift.limitKg / KG_PER_LB).toBeCloseTo(51, 9)
  })
  test('trips by hand: 26 bags of 22.7 kg are 590 kg, so 40 bags need two', () => {
    const loads = [{ name: 'bag', kgEach: 22.7, pieces: 40 }]
    expect(value(tripsFor(loads, 600))).toMatchObject({ trips: 2 })
    expect(tripsFor([{ name: 'crate', kgEach: 900, pieces: 1 }], 600).ok).toBe(false)
    expect(value(tripsFor([], 600)).trips).toBe(0)
  })
  test('trips: never fewer than mass over payload, never fewer pieces aboard', () => {
    const loads = fc.array(
      fc.record({
        name: fc.constant('x'),
        kgEach: fc.integer({ min: 1, max: 60 }),
        pieces: fc.integer({ min: 0, max: 60 }),
      }),
      { maxLength: 6 },
    )
    fc.assert(
      fc.property(loads, (some) => {
        const { trips, kg, fullestKg } = value(tripsFor(some, 400))
        expect(kg).toBe(massOf(some))
        expect(trips).toBeGreaterThanOrEqual(Math.ceil(kg / 400 - 1e-9))
        // Pieces of up to 60 kg leave less than 60 kg empty on all trips but one.
        expect(trips).toBeLessThanOrEqual(Math.ceil(kg / 340) + 1)
        expect(fullestKg).toBeLessThanOrEqual(400)
      }),
    )
  })
  test('levers by hand', () => {
    expect(value(axleShare(500, 3600, 3000)).rearKg).toBeCloseTo(416.667, 2)
    expect(value(axleShare(500, 3600, 4320)).frontKg).toBeCloseTo(-100, 9)
    expect(value(tongueShare(800, 3200, 400))).toEqual({ tongueKg: 100, pct: 12.5 })
    expect(pallets(100, 64, 22.7, 1000)).toBe(3)
  })
})

const lines: fc.Arbitrary<OrderLine> = fc.record({
  what: fc.constantFrom('mortar', 'grout', 'tape', 'tile'),
  use: fc.constantFrom('floor', 'wall'),
  need: fc.double({ min: 0, max: 500, noNaN: true }),
  unit: fc.constantFrom('bag', 'm'),
  pack: fc.constantFrom(1, 11, 22.68),
  priceEach: fc.option(fc.integer({ min: 0, max: 9999 }).map((c) => c / 100)),
  kgEach: fc.option(fc.double({ min: 0, max: 50, noNaN: true })),
})

describe('order', () => {
  test('totals are the sum of the parts, and enough of everything is bought', () => {
    fc.assert(
      fc.property(fc.array(lines, { maxLength: 30 }), fc.double({ min: 0, max: 25, noNaN: true }), (some, tax) => {
        const order = value(orderOf(some, tax))
        const parts = order.lines.reduce((sum, line) => sum + (line.cost ?? 0), 0)
        expect(order.goods).toBeCloseTo(parts, 2)
        expect(order.cost).toBeCloseTo(order.goods + order.tax, 2)
        const needs = some.reduce((sum, line) => sum + line.need, 0)
        expect(order.lines.reduce((sum, line) => sum + line.buy * (line.pack ?? 1), 0)).toBeGreaterThanOrEqual(
          needs - 1e-3,
        )
        const keys = order.lines.map((l) => `${l.what} ${l.use} ${l.unit} ${l.pack}`)
        expect(new Set(keys).size).toBe(keys.length)
      }),
    )
  })
  test('by hand: 2.2 + 1.5 bags at 20.00 with 8 %', () => {
    const bag = { what: 'mortar', unit: 'bag', priceEach: 20 }
    const order = value(
      orderOf(
        [
          { ...bag, need: 2.2 },
          { ...bag, need: 1.5 },
        ],
        8,
      ),
    )
    expect(order).toMatchObject({ goods: 80, tax: 6.4, cost: 86.4, unpriced: [] })
    expect(order.lines[0]).toMatchObject({ buy: 4, cost: 80 })
  })
  test('missing: what is on hand is used once', () => {
    const order = value(
      orderOf([
        { what: 'mortar', use: 'board', need: 2, unit: 'bag' },
        { what: 'mortar', use: 'tile', need: 6, unit: 'bag' },
        { what: 'grout', need: 2, unit: 'bag' },
      ]),
    )
    const got = missingFrom(order.lines, [{ what: 'mortar', packs: 6.5 }])
    expect(got).toEqual([
      { what: 'mortar', use: 'tile', unit: 'bag', packs: 2 },
      { what: 'grout', unit: 'bag', packs: 2 },
    ])
  })
  test('boxes from one lot', () => expect(boxesForLot(200, 11, 2)).toEqual({ tiles: 204, boxes: 19 }))
  test('odd figures are refused', () => {
    expect(orderOf([{ what: 'grout', need: Number.NaN, unit: 'bag' }]).ok).toBe(false)
    expect(orderOf([{ what: 'grout', need: 1, unit: 'bag', priceEach: -1 }]).ok).toBe(false)
    expect(orderOf([], 80).ok).toBe(false)
  })
})

describe('the day', () => {
  const even = (n: number, joint: number[] = []): Row[] =>
    Array.from({ length: n }, (_, i) => ({ areaM2: 1, clips: 10, joint: joint.includes(i) }))

  test('by hand: ten rows of 1 m² at 4 m² a day', () => {
    const days = value(splitDays(even(10), value(settingOrder(10, 9)), 4))
    expect(days.map((d) => d.rows.length)).toEqual([4, 4, 2])
    expect(days.map((d) => d.stopsAt)).toEqual(['row', 'row', 'end'])
  })
  test('evened out it takes as many days, and no day is fuller', () => {
    const order = value(settingOrder(11, 10))
    expect(value(evenDays(even(11), order, 5)).map((d) => d.rows.length)).toEqual([4, 4, 3])
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.double({ min: 1, max: 15, noNaN: true }), (count, pace) => {
        const rows = even(count)
        const plain = value(splitDays(rows, value(settingOrder(count, 0)), pace))
        const evened = value(evenDays(rows, value(settingOrder(count, 0)), pace))
        const fullest = (days: typeof plain) => Math.max(...days.map((d) => d.areaM2))
        expect(evened.length).toBe(plain.length)
        expect(fullest(evened)).toBeLessThanOrEqual(fullest(plain) + 1e-9)
        expect(evened.flatMap((d) => d.rows)).toEqual(plain.flatMap((d) => d.rows))
      }),
    )
  })
  test('it stops at a movement joint near the end of the day', () => {
    const days = value(splitDays(even(10, [2]), value(settingOrder(10, 9)), 4))
    expect(days[0]).toMatchObject({ rows: [0, 1, 2], stopsAt: 'joint' })
  })
  test('the way out is never over fresh tile: from each row to the door all rows are unset', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.nat(), (count, at) => {
        const door = at % count
        const order = value(settingOrder(count, door))
        expect(order.toSorted((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i))
        const done = new Set<number>()
        for (const row of order) {
          const step = Math.sign(door - row)
          for (let r = row + step; step && r !== door + step; r += step) expect(done.has(r)).toBe(false)
          done.add(row)
        }
      }),
    )
  })
  test('days add up to the floor and keep to the pace', () => {
    const rows = fc.array(
      fc.record({ areaM2: fc.double({ min: 0.1, max: 3, noNaN: true }), clips: fc.nat(50), joint: fc.boolean() }),
      { minLength: 1, maxLength: 50 },
    )
    fc.assert(
      fc.property(rows, fc.nat(), fc.double({ min: 1, max: 20, noNaN: true }), (some, door, pace) => {
        const order = value(settingOrder(some.length, door % some.length))
        const days = value(splitDays(some, order, pace))
        expect(days.flatMap((d) => d.rows)).toEqual(order)
        for (const day of days) expect(day.rows.length === 1 || day.areaM2 <= pace + 1e-6).toBe(true)
      }),
    )
  })
  test('rows of a floor add up to it', () => {
    const floor = rectangle(4000, 3100)
    const rows = value(rowAreas(floor, 460, 'x'))
    expect(rows).toHaveLength(7)
    expect(rows.reduce((a, b) => a + b, 0)).toBeCloseTo(floorArea(floor) / 1e6, 6)
  })
  test('bags by hand: 10 m² at 6 kg/m² from 22.68 kg bags: 2.6, so 3', () => {
    expect(bagsADay({ rows: [], areaM2: 10, clips: 0, stopsAt: 'row' }, 6, 22.68)).toBe(3)
  })
})
