import { expect, test } from 'vitest'
import { baseFromTile, cutLengths } from '../../../src/core/offcuts/lengths.ts'
import type { Side, Turn } from '../../../src/core/offcuts/order.ts'
import { type ReuseRule, reuseOffcuts } from '../../../src/core/offcuts/reuse.ts'
import { factoryRim } from './lists.ts'

const RIGHT_END: Side[] = ['left', 'top', 'bottom']
const LEFT_END: Side[] = ['right', 'top', 'bottom']
const tile = { tileWMm: 457, tileHMm: 457, kerfMm: 3 }

function reuse(rule: ReuseRule, turn: Turn, pieces: { wMm: number; hMm: number; qty: number; factory?: Side[] }[]) {
  const got = reuseOffcuts({ ...tile, rule, turn, pieces })
  if (!got.ok) throw new Error(JSON.stringify(got.problem))
  return got.value
}

const ends = (left: number, right: number) => [
  { wMm: 140, hMm: 457, qty: left, factory: LEFT_END },
  { wMm: 140, hMm: 457, qty: right, factory: RIGHT_END },
]

// By hand: three pieces of 140 with two kerfs of 3 are 426 of 457; the tile has a left and a right edge, no middle one.
test.each([
  ['fresh-tile', 'half', 12],
  ['factory-edge', 'none', 8], // four tiles give a left and a right end; the other four left ends have no partner
  ['factory-edge', 'half', 6], // any two
  ['any-offcut', 'none', 4], // any three
] as const)('%s, turn %s: 8 left ends and 4 right ends of 140 mm take %i tiles', (rule, turn, tiles) => {
  const got = reuse(rule, turn, ends(8, 4))
  expect(got).toMatchObject({ stockTiles: tiles, proven: true, offcutsReused: 12 - tiles })
})

test('corners: each takes a corner of its tile, so one tile gives all four', () => {
  const corner = (...factory: Side[]) => ({ wMm: 200, hMm: 200, qty: 1, factory })
  const four = [corner('left', 'bottom'), corner('right', 'bottom'), corner('left', 'top'), corner('right', 'top')]
  expect(reuse('factory-edge', 'none', four)).toMatchObject({ stockTiles: 1, offcutsReused: 3 })
  const same = Array.from({ length: 4 }, () => corner('left', 'bottom'))
  expect(reuse('factory-edge', 'none', same).stockTiles).toBe(4)
  expect(reuse('factory-edge', 'half', same).stockTiles).toBe(2)
  expect(reuse('factory-edge', 'quarter', same).stockTiles).toBe(1) // a square tile: each turned to its own corner
})

test('every piece of a plan lies with its factory sides on the tile edge', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const { stockWMm, stockHMm, kerfMm, pieces } = factoryRim(seed, 'none')
    const got = reuseOffcuts({
      tileWMm: stockWMm,
      tileHMm: stockHMm,
      kerfMm,
      pieces,
      rule: 'factory-edge',
      turn: 'none',
    })
    if (!got.ok) throw new Error(JSON.stringify(got.problem))
    for (const { cut } of got.value.plan)
      for (const p of cut) {
        const sides = pieces[p.piece]!.factory!
        if (sides.includes('left')) expect(p.xMm).toBe(0)
        if (sides.includes('bottom')) expect(p.yMm).toBe(0)
        if (sides.includes('right')) expect(p.xMm + p.wMm).toBeCloseTo(stockWMm, 6)
        if (sides.includes('top')) expect(p.yMm + p.hMm).toBeCloseTo(stockHMm, 6)
      }
  }
})

test('a looser rule never takes more', () => {
  for (let seed = 1; seed <= 80; seed++) {
    const { stockWMm, stockHMm, kerfMm, pieces } = factoryRim(seed, 'none')
    const counts = (
      [
        ['fresh-tile', 'none'],
        ['factory-edge', 'none'],
        ['factory-edge', 'half'],
        ['factory-edge', 'quarter'],
        ['any-offcut', 'quarter'],
      ] as const
    ).map(([rule, turn]) => {
      const got = reuseOffcuts({ tileWMm: stockWMm, tileHMm: stockHMm, kerfMm, pieces, rule, turn })
      return got.ok ? got.value.stockTiles : Number.NaN
    })
    expect(counts).toEqual(counts.toSorted((a, b) => b - a))
  }
})

test('what is left over is told by size', () => {
  const got = reuse('factory-edge', 'half', [{ wMm: 257, hMm: 457, qty: 2, factory: LEFT_END }])
  expect(got.leftOver).toEqual([{ wMm: 197, hMm: 457, qty: 2 }]) // 457 - 257 - 3
  expect(got.wasteMm2).toBe(2 * 200 * 457)
})

test('a floor without cuts takes no tile for them', () => {
  expect(reuse('factory-edge', 'none', [])).toMatchObject({ stockTiles: 0, offcutsReused: 0, leftOver: [] })
})

test('edge profile: bars cut by length, long runs butted', () => {
  // By hand: 2.5 m bars; 3 m is a bar and 0.5 m; 1.2 + 1.2 and 0.5 + 2.0 less a kerf each do not quite fit.
  const order = {
    stockMm: 2500,
    kerfMm: 2,
    runs: [
      { lengthMm: 3000, qty: 1 },
      { lengthMm: 1200, qty: 2 },
    ],
  }
  expect(cutLengths(order)).toMatchObject({
    ok: true,
    value: { bars: 3, bound: 3, proven: true, butts: 1, wasteMm: 2100 },
  })
  const exact = { stockMm: 2500, kerfMm: 2, runs: [{ lengthMm: 5000, qty: 1 }] }
  expect(cutLengths(exact)).toMatchObject({ ok: true, value: { bars: 2, butts: 1, wasteMm: 0 } })
  expect(cutLengths({ ...exact, stockMm: 0 })).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
  expect(cutLengths({ ...exact, runs: [{ lengthMm: -1, qty: 1 }] })).toMatchObject({ ok: false })
  expect(cutLengths({ ...exact, runs: [] })).toMatchObject({ ok: false, problem: { code: 'missing' } })
})

test('base from floor tile: two strips a tile, the moulded edge up', () => {
  const base = {
    tileLengthMm: 457,
    tileWidthMm: 457,
    heightMm: 100,
    jointMm: 3,
    kerfMm: 3,
    runs: [{ lengthMm: 4597, qty: 1 }],
  }
  // By hand: ten strips of 457 with nine joints of 3 are 4,597; two strips a tile, though four would fit by height.
  expect(baseFromTile(base)).toMatchObject({ ok: true, value: { stockTiles: 5, proven: true } })
  expect(baseFromTile({ ...base, heightMm: 300 })).toMatchObject({ ok: true, value: { stockTiles: 10 } })
  expect(baseFromTile({ ...base, heightMm: 500 })).toMatchObject({
    ok: false,
    problem: { facts: { field: 'base_height' } },
  })
})
