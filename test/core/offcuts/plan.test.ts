/** Plans against highs (a MILP solver, npm), against every subset tried, and against first-fit decreasing. */
import fc from 'fast-check'
import { beforeAll, expect, test } from 'vitest'
import type { CutOrder, Placed } from '../../../src/core/offcuts/order.ts'
import { planCuts } from '../../../src/core/offcuts/plan.ts'
import { faultOf } from '../../../src/core/offcuts/verify.ts'
import { fewestByLength, fewestBySubsets, firstFitByLength, type Highs, highs } from './exact.ts'
import { chanceLengths, chancePieces, dice, FAMILIES, type Family, familyList, roomRim, rowEnds } from './lists.ts'

let solver: Highs
beforeAll(async () => {
  solver = await highs()
})

function plan(order: CutOrder) {
  const planned = planCuts(order)
  if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
  expect(faultOf(order, planned.value)).toBeNull()
  return planned.value
}

const seeds = (n: number) => Array.from({ length: n }, (_, i) => i + 1)

test('lengths: as few tiles as the solver needs', () => {
  let compared = 0
  for (const seed of seeds(20))
    for (const order of [rowEnds(seed, 12), chanceLengths(seed, 0.1, 0.7, 10)]) {
      const mine = plan(order)
      const best = fewestByLength(solver, order, mine.stockTiles)
      if (best === null) continue
      compared++
      expect(mine.stockTiles, `seed ${seed}`).toBe(best)
      expect(mine.bound).toBeLessThanOrEqual(best)
    }
  expect(compared).toBeGreaterThan(30)
})

test.each([2, 3])('lengths, at most %i a tile: as few as the solver needs', (maxATile) => {
  for (const seed of seeds(15)) {
    const order = { ...chanceLengths(seed, 0.05, 0.6, 11), maxATile }
    const best = fewestByLength(solver, order, plan(order).stockTiles)
    if (best !== null) expect(plan(order).stockTiles, `seed ${seed}`).toBe(best)
  }
})

test.each(['none', 'quarter'] as const)('both ways, turn %s: as few as with every subset tried', (turn) => {
  for (const seed of seeds(60)) {
    const roll = dice(seed)
    const [stockWMm, stockHMm] = [roll(6, 16), roll(4, 12)]
    const pieces = Array.from({ length: roll(3, 7) }, () => ({
      wMm: Math.min(stockWMm, roll(2, stockWMm + 2)),
      hMm: Math.min(stockHMm, roll(2, stockHMm + 2)),
      qty: 1,
    }))
    for (const maxATile of [null, 2, 3]) {
      const order: CutOrder = { stockWMm, stockHMm, kerfMm: roll(0, 1), pieces, turn, maxATile }
      const mine = plan(order)
      const best = fewestBySubsets(solver, order)
      expect(mine.bound, `seed ${seed}`).toBeLessThanOrEqual(best)
      expect(mine.stockTiles, `seed ${seed}`).toBe(best)
    }
  }
})

test('nearly every list of up to 40 pieces is proven', () => {
  const share = (orders: CutOrder[]) => orders.filter((o) => plan(o).proven).length / orders.length
  expect(share(seeds(150).flatMap((s) => [rowEnds(s), chanceLengths(s)]))).toBeGreaterThanOrEqual(0.99)
  expect(share(seeds(150).flatMap((s) => [roomRim(s), roomRim(s, 'quarter')]))).toBeGreaterThanOrEqual(0.98)
  expect(share(seeds(150).map((s) => chancePieces(s)))).toBeGreaterThanOrEqual(0.95)
  expect(share(seeds(150).map((s) => chancePieces(s, 'quarter')))).toBeGreaterThanOrEqual(0.9)
  for (const [family, least] of [
    ['all sizes', 0.88],
    ['large pieces', 0.98],
    ['small to middling', 0.75],
    ['a few sizes', 0.97],
  ] as const)
    for (const turn of ['none', 'quarter'] as const)
      expect(share(seeds(60).map((s) => familyList(s, family, turn))), `${family}, ${turn}`).toBeGreaterThanOrEqual(
        least,
      )
})

test('plans of random lists can be cut and are never more than the pieces or fewer than their area', () => {
  for (const seed of seeds(40))
    for (const family of Object.keys(FAMILIES) as Family[])
      for (const turn of ['none', 'quarter'] as const)
        for (const maxATile of [null, 1, 2, 3]) {
          const order = { ...familyList(seed, family, turn), maxATile }
          const { plan: tiles, stockTiles } = plan(order)
          for (const { cut } of tiles) expect(cutsThrough(cut.map(asCells), order.kerfMm), `seed ${seed}`).toBe(true)
          const area = order.pieces.reduce((sum, p) => sum + p.wMm * p.hMm * p.qty, 0)
          expect(stockTiles * order.stockWMm * order.stockHMm).toBeGreaterThanOrEqual(area)
        }
})

const asCells = (p: Placed) => ({ left: p.xMm, right: p.xMm + p.wMm, low: p.yMm, high: p.yMm + p.hMm })
type Cells = ReturnType<typeof asCells>

/** Whether straight cuts part the pieces, worked out apart from `verify.ts`: a cut a kerf wide right of some piece or above
 *  it that meets no other, and the same for what lies on either side. */
function cutsThrough(pieces: readonly Cells[], kerfMm: number): boolean {
  if (pieces.length < 2) return true
  const tiny = 1e-6
  for (const [from, to] of [
    ['left', 'right'],
    ['low', 'high'],
  ] as const)
    for (const { [to]: cut } of pieces) {
      const before = pieces.filter((p) => p[to] <= cut + tiny)
      const after = pieces.filter((p) => p[from] >= cut + kerfMm - tiny)
      if (after.length > 0 && before.length + after.length === pieces.length)
        return cutsThrough(before, kerfMm) && cutsThrough(after, kerfMm)
    }
  return false
}

test('never more than first-fit decreasing', () => {
  for (const seed of seeds(300)) {
    const order = chanceLengths(seed, 0.05, 0.6)
    expect(plan(order).stockTiles).toBeLessThanOrEqual(firstFitByLength(order))
  }
})

const anyOrder = fc
  .record({
    stockWMm: fc.integer({ min: 20, max: 1300 }),
    stockHMm: fc.integer({ min: 20, max: 1300 }),
    kerfMm: fc.constantFrom(0, 1.6, 3, 3.175),
    turn: fc.constantFrom('none' as const, 'half' as const, 'quarter' as const),
    maxATile: fc.constantFrom(null, 1, 2, 3, 5),
    shares: fc.array(fc.tuple(fc.integer({ min: 1, max: 64 }), fc.integer({ min: 1, max: 64 }), fc.nat(4)), {
      minLength: 1,
      maxLength: 30,
    }),
  })
  .map(
    ({ shares, ...order }): CutOrder => ({
      ...order,
      pieces: shares.map(([w, h, qty]) => ({
        wMm: Math.max(0.05, (order.stockWMm * w) / 64),
        hMm: Math.max(0.05, (order.stockHMm * h) / 64),
        qty: qty + (w === shares[0]![0] ? 1 : 0),
      })),
    }),
  )
  .filter((order) => order.pieces.some((p) => p.qty > 0))

test('any plan can be cut: straight cuts, kerf kept, every piece there, its bound below it', () => {
  fc.assert(
    fc.property(anyOrder, (order) => {
      plan(order)
    }),
    { numRuns: 800 },
  )
})

test('a list in another order, or mirrored, or turned with its tile takes as many tiles', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 5000 }), (seed) => {
      const order = roomRim(seed)
      const upright: CutOrder = {
        ...order,
        stockWMm: order.stockHMm,
        stockHMm: order.stockWMm,
        pieces: order.pieces.map((p) => ({ wMm: p.hMm, hMm: p.wMm, qty: p.qty })),
      }
      const shuffled = { ...order, pieces: order.pieces.toReversed() }
      const [a, b, c] = [plan(order), plan(upright), plan(shuffled)]
      if (a.proven && b.proven) expect(b.stockTiles).toBe(a.stockTiles)
      if (a.proven && c.proven) expect(c.stockTiles).toBe(a.stockTiles)
    }),
    { numRuns: 100 },
  )
})

const tile = { stockWMm: 609.6, stockHMm: 304.8, kerfMm: 3, turn: 'none', maxATile: null } as const
test.each([
  ['exactly the whole tile', { ...tile, pieces: [{ wMm: 609.6, hMm: 304.8, qty: 2 }] }, 2],
  ['two halves less a kerf', { ...tile, pieces: [{ wMm: 303.3, hMm: 304.8, qty: 2 }] }, 1],
  ['two halves, no room for the kerf', { ...tile, pieces: [{ wMm: 304.8, hMm: 304.8, qty: 2 }] }, 2],
  ['thirds with a kerf of nothing', { ...tile, kerfMm: 0, pieces: [{ wMm: 609.6 / 3, hMm: 304.8, qty: 3 }] }, 1],
  ['a last trim under a kerf', { ...tile, pieces: [{ wMm: 608, hMm: 304.8, qty: 1 }] }, 1],
  [
    'the largest piece by area not the widest',
    {
      ...tile,
      stockWMm: 320,
      stockHMm: 320,
      kerfMm: 0,
      pieces: [
        { wMm: 165, hMm: 165, qty: 2 },
        { wMm: 110, hMm: 250, qty: 2 },
        { wMm: 215, hMm: 165, qty: 2 },
      ],
    },
    4,
  ],
  // Five bars round a hole: no straight cut gets through the pinwheel, so guillotine cuts need a second tile.
  [
    'a pinwheel',
    {
      ...tile,
      stockWMm: 30,
      stockHMm: 30,
      kerfMm: 0,
      pieces: [
        { wMm: 20, hMm: 10, qty: 2 },
        { wMm: 10, hMm: 20, qty: 2 },
        { wMm: 10, hMm: 10, qty: 1 },
      ],
    },
    2,
  ],
] as const)('%s', (_, order, tiles) => {
  expect(plan(order)).toMatchObject({ stockTiles: tiles, bound: tiles, proven: true })
})

test.each([
  ['larger than the tile', { ...tile, pieces: [{ wMm: 700, hMm: 100, qty: 1 }] }, 'out-of-range', 'w'],
  ['too high, turning not allowed', { ...tile, pieces: [{ wMm: 100, hMm: 400, qty: 1 }] }, 'out-of-range', 'h'],
  ['no piece', { ...tile, pieces: [] }, 'missing', 'pieces'],
  ['nothing wanted', { ...tile, pieces: [{ wMm: 100, hMm: 100, qty: 0 }] }, 'missing', 'pieces'],
  ['half a piece', { ...tile, pieces: [{ wMm: 100, hMm: 100, qty: 0.5 }] }, 'out-of-range', 'qty'],
  ['NaN', { ...tile, pieces: [{ wMm: Number.NaN, hMm: 100, qty: 1 }] }, 'out-of-range', 'w'],
  ['no tile', { ...tile, stockWMm: 0, pieces: [{ wMm: 1, hMm: 1, qty: 1 }] }, 'out-of-range', 'stock_mm'],
  ['a saw of minus 3', { ...tile, kerfMm: -3, pieces: [{ wMm: 1, hMm: 1, qty: 1 }] }, 'out-of-range', 'kerf_mm'],
  ['none a tile', { ...tile, maxATile: 0, pieces: [{ wMm: 1, hMm: 1, qty: 1 }] }, 'out-of-range', 'max_a_tile'],
] as const)('refuses %s', (_, order, code, field) => {
  expect(planCuts(order)).toMatchObject({ ok: false, problem: { code, facts: { field } } })
})

test('too many pieces are refused before any work', () => {
  const order = { ...tile, pieces: [{ wMm: 1, hMm: 1, qty: 1e9 }] }
  expect(planCuts(order)).toMatchObject({ ok: false, problem: { code: 'too-much-work' } })
})

test('the same order gets the same plan', () => {
  expect(planCuts(chancePieces(5, 'quarter'))).toEqual(planCuts(chancePieces(5, 'quarter')))
})

test.each(['none', 'quarter'] as const)(
  '3,000 different pieces, turn %s, get a plan within 15 in 100 of the bound',
  (turn) => {
    const many = seeds(100).flatMap((s) => chancePieces(s, turn, 0.1, 0.9, 60).pieces)
    const pieces = Array.from({ length: 3000 }, (_, i) => {
      const p = many[i % many.length]!
      return { wMm: Math.max(10, (p.wMm + i) % 609), hMm: Math.max(10, (p.hMm + i) % 304), qty: 1 }
    })
    const mine = plan({ ...tile, turn, pieces })
    expect(mine.stockTiles).toBeLessThanOrEqual(mine.bound * 1.15)
  },
)

test.each(['none', 'quarter'] as const)('thousands of a few sizes, tiny pieces, few a tile, turn %s', (turn) => {
  const sizes = [
    [200, 100],
    [150, 90],
    [300, 210],
    [57, 333],
  ]
  const many = sizes.map(([wMm, hMm]) => ({ wMm: wMm!, hMm: hMm!, qty: 2_500 }))
  for (const maxATile of [null, 1, 2]) plan({ ...tile, stockHMm: 457, turn, maxATile, pieces: many })
  const tiny = { ...tile, turn, pieces: [{ wMm: 1, hMm: 1, qty: 10_000 }] }
  expect(plan(tiny)).toMatchObject({ stockTiles: 1, proven: true })
  expect(plan({ ...tiny, maxATile: 3_000 })).toMatchObject({ stockTiles: 4, proven: true })
  const mixed = seeds(40).map((n) => ({ wMm: n % 2 ? n / 10 : 250 + n, hMm: n % 2 ? 1 : 150 + n, qty: 1 }))
  expect(plan({ ...tile, turn, pieces: mixed }).proven).toBe(true)
})

test('as many pieces as are taken, all different, still get a plan that can be cut', () => {
  const pieces = Array.from({ length: 10_000 }, (_, i) => ({
    wMm: 30 + ((i * 7919) % 2700) / 10,
    hMm: 30 + ((i * 104_729) % 1200) / 10,
    qty: 1,
  }))
  const mine = plan({ ...tile, turn: 'quarter', pieces })
  expect(mine.stockTiles).toBeLessThanOrEqual(mine.bound * 1.15)
})
