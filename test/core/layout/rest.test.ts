/** Floors set row by row: hand-worked grids, and every place of random floors once. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { floorOf } from '../../../src/core/floor/check.ts'
import type { Floor, Ring } from '../../../src/core/floor/rings.ts'
import { leanStart } from '../../../src/core/layout/lean-start.ts'
import { cutPieces, tilesOf } from '../../../src/core/layout/pieces.ts'
import { type Cost, latestRow, restAfter, rowsReached } from '../../../src/core/layout/rest.ts'
import { firstWalls, hiddenAt, type Place, setOrder } from '../../../src/core/layout/rows.ts'
import { type LayoutSpec, type Pattern, plainSpec } from '../../../src/core/layout/spec.ts'
import { reuseOffcuts } from '../../../src/core/offcuts/reuse.ts'
import { must } from '../../support/must.ts'
import { floors } from './floors.ts'

const box = (w: number, h: number): Ring => [
  [0, 0],
  [w, 0],
  [w, h],
  [0, h],
]
const room = (w: number, h: number): Floor => must(floorOf(box(w, h)))

/** Tiles of 100 mm without joints. */
const GRID = plainSpec(100, 100, 0)
/** Whole tiles, and the fewest for cuts that run along one wall, by the planner. */
const cost =
  (rule: 'factory-edge' | 'any-offcut'): Cost =>
  (rows) => {
    const places = rows.flat()
    const pieces = places.flatMap(({ cuts }) =>
      cuts.map((c) => ({
        wMm: c.lengthMm,
        hMm: c.widthMm,
        qty: 1,
        factory: (['left', 'right', 'bottom', 'top'] as const).filter(
          (_, k) => [c.factory.start, c.factory.end, c.factory.near, c.factory.far][k],
        ),
      })),
    )
    const planned = must(reuseOffcuts({ tileWMm: 100, tileHMm: 100, kerfMm: 3, pieces, rule, turn: 'half' }))
    return places.filter((p) => p.cuts.length === 0).length + planned.stockTiles
  }

describe('a grid worked by hand: 1030 x 600 mm, ten tiles and a 30 mm cut in each of six rows', () => {
  const order = must(setOrder(room(1030, 600), GRID, 'top'))
  const low = (place: Place): number => Math.min(...place.outlinesMm.flat().map(([, y]) => y))

  test('rows run along the longer side, from the wall that is named, each from the left', () => {
    expect(order.rows.map((row) => row.length)).toEqual([11, 11, 11, 11, 11, 11])
    expect(order.rows.map((row) => low(row[0]!))).toEqual([500, 400, 300, 200, 100, 0])
    expect(order.rows[0]!.map((p) => p.cuts.length)).toEqual([...Array(10).fill(0), 1])
    const up = must(setOrder(room(1030, 600), GRID, 'bottom'))
    expect(up.rows.map((row) => low(row[0]!))).toEqual([0, 100, 200, 300, 400, 500])
  })

  test('of a plain grid rows can be told from a short wall too: eleven columns, the last of cuts', () => {
    const columns = must(setOrder(room(1030, 600), GRID, 'left'))
    expect(columns.rows.map((row) => row.length)).toEqual(Array(11).fill(6))
    expect(columns.rows[10]!.every((p) => p.cuts.length === 1)).toBe(true)
  })

  test('two ends with a factory edge come from a tile, three where any off-cut will do', () => {
    // 3 x 30 + 2 saw cuts of 3 mm = 96 mm.
    for (const [rows, strict, loose] of [
      [1, 11, 11],
      [2, 21, 21],
      [3, 32, 31],
      [6, 63, 62],
    ] as const) {
      expect(cost('factory-edge')(order.rows.slice(0, rows))).toBe(strict)
      expect(cost('any-offcut')(order.rows.slice(0, rows))).toBe(loose)
    }
  })

  test('what is set, told in rows, in rows to go, in tiles, by share', () => {
    const kept = (set: Parameters<typeof restAfter>[1]) => {
      const { done, rows, firstRow, beyond } = restAfter(order, set)
      return { done: done.length, open: rows.flat().length, firstRow, beyond }
    }
    expect(kept({ in: 'rows-set', n: 4 })).toEqual({ done: 44, open: 22, firstRow: 5, beyond: 0 })
    expect(kept({ in: 'rows-set', n: 4, more: 3 })).toEqual({ done: 47, open: 19, firstRow: 5, beyond: 0 })
    expect(kept({ in: 'rows-to-go', n: 2 })).toEqual({ done: 44, open: 22, firstRow: 5, beyond: 0 })
    expect(kept({ in: 'places', n: 25 })).toEqual({ done: 25, open: 41, firstRow: 3, beyond: 0 })
    expect(kept({ in: 'share', share: 0.5 })).toEqual({ done: 33, open: 33, firstRow: 4, beyond: 0 })
    expect(kept({ in: 'rows-to-go', n: 9 })).toEqual({ done: 0, open: 66, firstRow: 1, beyond: 3 })
    expect(kept({ in: 'places', n: 500 })).toEqual({ done: 66, open: 0, firstRow: 7, beyond: 0 })
    expect(kept({ in: 'share', share: 0 })).toEqual({ done: 0, open: 66, firstRow: 1, beyond: 0 })
  })

  test('tiles reach the last row they fill', () => {
    const reached = [0, 10, 11, 21, 31, 32, 62, 63, 99].map((n) => rowsReached(order.rows, n, cost('factory-edge')))
    expect(reached).toEqual([0, 0, 1, 2, 2, 3, 5, 6, 6])
  })

  test('a looser rule helps until too few ends are left to cut', () => {
    // All six ends the loose way take two tiles; with three cut the strict way before, two and one.
    expect(latestRow(order.rows, cost('factory-edge'), cost('any-offcut'), 62)).toBe(0)
    const two: Cost = (rows) => 10 * rows.length + Math.ceil(rows.length / 2)
    const three: Cost = (rows) => 10 * rows.length + Math.ceil(rows.length / 3)
    // Four rows of two ends a tile, 42, and two rows of one tile for both ends, 21.
    expect(latestRow(order.rows, two, three, 63)).toBe(4)
    expect(latestRow(order.rows, two, three, 61)).toBeNull()
    expect(latestRow([], two, three, 61)).toBeNull()
  })
})

describe('what is hidden', () => {
  test('only places that lie wholly within the depth of a wall, and beside it', () => {
    const order = must(setOrder(room(1030, 600), GRID, 'top'))
    const count = (side: 'left' | 'right' | 'top', mm: number) =>
      order.rows.flat().filter(hiddenAt(room(1030, 600), side, mm)).length
    expect([count('left', 100), count('left', 199), count('left', 200)]).toEqual([6, 6, 12])
    expect([count('right', 29), count('right', 30), count('right', 130)]).toEqual([0, 6, 12])
    expect(count('top', 100)).toBe(11)
  })

  test('in an L the outermost wall of the side counts, not the one round the corner', () => {
    const l = must(
      floorOf([
        [0, 0],
        [1000, 0],
        [1000, 400],
        [400, 400],
        [400, 1000],
        [0, 1000],
      ]),
    )
    const order = must(setOrder(l, GRID, 'bottom'))
    expect(order.rows.map((row) => row.length)).toEqual([10, 10, 10, 10, 4, 4, 4, 4, 4, 4])
    expect(order.rows.flat().filter(hiddenAt(l, 'right', 100)).length).toBe(4)
    expect(order.rows.flat().filter(hiddenAt(l, 'top', 100)).length).toBe(4)
  })
})

describe('a start that takes fewer tiles', () => {
  test('a whole tile at one wall in place of two cuts of 65 mm: 63 tiles for 66', () => {
    const floor = room(1030, 600)
    const balanced: LayoutSpec = { ...GRID, originMm: [65, 0] }
    const tiles = (spec: LayoutSpec): number => cost('factory-edge')(must(setOrder(floor, spec, 'top')).rows)
    expect(tiles(balanced)).toBe(66)
    const lean = must(leanStart(floor, balanced, 20, tiles))
    expect(lean?.tiles).toBe(63)
    expect(lean?.layout.smallestCutMm).toBeGreaterThanOrEqual(20)
  })

  test('no start where every one leaves a sliver', () => {
    expect(must(leanStart(room(1030, 600), GRID, 99, () => 1))).toBeNull()
  })
})

const PATTERNS: Pattern[] = [
  { kind: 'stacked' },
  { kind: 'offset', share: { over: 1, under: 3 }, step: 'stair', along: 'length' },
  { kind: 'offset', share: { over: 1, under: 2 }, step: 'back-and-forth', along: 'width' },
  { kind: 'random', leastStaggerMm: null },
  { kind: 'herringbone', planks: 1 },
  { kind: 'basketweave' },
]
const specs: fc.Arbitrary<LayoutSpec> = fc.record({
  tile: fc.record({ lengthMm: fc.integer({ min: 300, max: 900 }), widthMm: fc.integer({ min: 150, max: 300 }) }),
  jointMm: fc.constantFrom(1.5875, 3, 4.7625),
  pattern: fc.constantFrom(...PATTERNS),
  angleDeg: fc.constantFrom(0, 45, 90),
  originMm: fc.tuple(fc.integer({ min: -900, max: 900 }), fc.integer({ min: -900, max: 900 })),
  wallGapMm: fc.constantFrom(0, 6),
})

test('on any floor and pattern every place and every cut stands in one row, and rows follow each other from the wall', () => {
  fc.assert(
    fc.property(floors, specs, fc.constantFrom('left', 'right', 'top', 'bottom'), (floor, spec, from) => {
      const listed = tilesOf(floor, spec)
      if (!listed.ok) return
      const { layout } = listed.value
      const order = must(setOrder(floor, spec, from))
      const places = order.rows.flat()
      expect(places.length).toBe(layout.cells)
      expect(places.filter((p) => p.cuts.length === 0).length).toBe(layout.whole)
      expect(places.flatMap((p) => p.cuts).length).toBe(must(cutPieces(floor, spec)).cuts.length)
      expect(firstWalls(floor, spec)).toContain(order.from)
      if (!order.inRows || order.slanted) return
      // Square rows: all of a row lies beyond all of the row before it, seen from the first wall.
      const depth = (side: string, [x, y]: readonly [number, number]) =>
        side === 'left' ? x : side === 'right' ? -x : side === 'bottom' ? y : -y
      const spans = order.rows.map((row) => row.flatMap((p) => p.outlinesMm.flat()).map((p) => depth(order.from, p)))
      for (let k = 1; k < spans.length; k++)
        expect(Math.min(...spans[k]!)).toBeGreaterThan(Math.max(...spans[k - 1]!) - 1e-6)
    }),
    { numRuns: 150 },
  )
})
