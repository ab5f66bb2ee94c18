/** Pan mud against exact sums and a numeric integral that shares no code with it; mixes against the rule they come from. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Point, type Ring, ringArea, ringHolds, running } from '../../src/core/floor/rings.ts'
import { mudBags, mudParts } from '../../src/core/shower/mud.ts'
import { panBed, planeBed, wayOverTriangle } from '../../src/core/shower/pan.ts'
import { type Fan, fansFrom } from '../../src/core/shower/sight.ts'
import { floodTest, membraneLitres, wetFaces } from '../../src/core/shower/waterproofing.ts'
import type { Outcome } from '../../src/problem.ts'

const IN = 25.4
const FT3_L = 28.316846592
const SLOPE = 1000 / 48
const value = <T>(outcome: Outcome<T>): T => {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value
}
const ringOf = (...corners: [number, number][]): Ring => corners.map(([x, y]) => [x, y])
const middleOf = (ring: Ring): Point => [
  ring.reduce((s, p) => s + p[0], 0) / ring.length,
  ring.reduce((s, p) => s + p[1], 0) / ring.length,
]

describe('a drain that sees every wall', () => {
  test('36 x 60 in, centre drain, 1/4 in per ft, 1-1/4 in (references 13.10: 0.73 in, 2.17 ft³)', () => {
    const ring = ringOf([0, 0], [60 * IN, 0], [60 * IN, 36 * IN], [0, 36 * IN])
    const bed = value(panBed({ ring, drain: middleOf(ring), slopeMmPerM: SLOPE, atDrainMm: 1.25 * IN }))
    expect(bed.kind).toBe('level')
    expect(bed.riseMm / IN).toBeCloseTo(0.73, 2)
    expect(bed.volumeL / FT3_L).toBeCloseTo(2.17, 2)
    // By hand: rise over the 18 in to the nearest wall.
    expect(bed.steepestMmPerM).toBeCloseTo((bed.riseMm / (18 * IN)) * 1000, 6)
    expect(bed.foldsMm).toHaveLength(4)
    expect(new Set(bed.marks.map((m) => m.lowMm.toFixed(6))).size).toBe(1)
  })

  test('round floor: the cone of school geometry', () => {
    const radius = 800
    const ring = Array.from(
      { length: 180 },
      (_, i): Point => [radius * Math.cos((i * Math.PI) / 90), radius * Math.sin((i * Math.PI) / 90)],
    )
    const bed = value(panBed({ ring, drain: [0, 0], slopeMmPerM: 20, atDrainMm: 30 }))
    // Cylinder of t + h less a cone of h: pi r² (t + h - h/3).
    expect(bed.volumeL).toBeCloseTo((Math.PI * radius ** 2 * (30 + 16 - 16 / 3)) / 1e6, 1)
  })

  test('any convex floor agrees with a numeric integral over rays', () => {
    const jitter = fc.array(fc.double({ min: -0.4, max: 0.4, noNaN: true }), { minLength: 4, maxLength: 9 })
    fc.assert(
      fc.property(jitter, fc.double({ min: 0, max: 0.8, noNaN: true }), (turns, off) => {
        const angles = turns.map((t, i) => ((i + t) * 2 * Math.PI) / turns.length)
        const ring = angles.map((a): Point => [900 * Math.cos(a), 700 * Math.sin(a)])
        const middle = middleOf(ring)
        const drain: Point = [
          middle[0] + (ring[0]![0] - middle[0]) * off * 0.5,
          middle[1] + (ring[0]![1] - middle[1]) * off * 0.5,
        ]
        const bed = value(panBed({ ring, drain, slopeMmPerM: 20, atDrainMm: 32 }))
        expect(bed.volumeL).toBeCloseTo(byRays(ring, drain, 32, bed.riseMm), 1)
      }),
      { numRuns: 40 },
    )
  })
})

/** Volume of the bed with a level edge: along each ray the height grows from t to t + h. Midpoint rule, 20,000 rays. */
function byRays(ring: Ring, drain: Point, t: number, h: number): number {
  const rays = 20_000
  let mm3 = 0
  for (let i = 0; i < rays; i++) {
    const angle = ((i + 0.5) * 2 * Math.PI) / rays
    const reach = Math.min(...ring.map((a, k) => meet(drain, angle, a, ring[(k + 1) % ring.length]!)))
    // Integral of (t + h r/R) r dr over 0..R.
    mm3 += ((t / 2 + h / 3) * reach * reach * 2 * Math.PI) / rays
  }
  return mm3 / 1e6
}

function meet(o: Point, angle: number, a: Point, b: Point): number {
  const [dx, dy, ex, ey] = [Math.cos(angle), Math.sin(angle), b[0] - a[0], b[1] - a[1]]
  const det = ex * dy - ey * dx
  const r = (ex * (a[1] - o[1]) - ey * (a[0] - o[0])) / det
  const t = (dx * (a[1] - o[1]) - dy * (a[0] - o[0])) / det
  return t >= 0 && t <= 1 && r > 0 ? r : Number.POSITIVE_INFINITY
}

/** Mean shortest way to the drain by relaxing a graph of corners: straight where visible, else round corners.
 *  Sampled at cell centres; visibility by sampling the segment. Shares nothing with the fans. */
function meanWayByGrid(ring: Ring, drain: Point, step: number): number {
  const clear = (p: Point, q: Point) => {
    for (let k = 1; k < 60; k++) {
      const at: Point = [p[0] + ((q[0] - p[0]) * k) / 60, p[1] + ((q[1] - p[1]) * k) / 60]
      const middle = middleOf(ring)
      const inward: Point = [at[0] + Math.sign(middle[0] - at[0]) * 1e-7, at[1] + Math.sign(middle[1] - at[1]) * 1e-7]
      if (!ringHolds(ring, at) && !ringHolds(ring, inward)) return false
    }
    return true
  }
  const nodes = ring.map((p) => ({
    p,
    way: clear(drain, p) ? Math.hypot(p[0] - drain[0], p[1] - drain[1]) : Number.POSITIVE_INFINITY,
  }))
  for (let round = 0; round < ring.length; round++)
    for (const a of nodes)
      for (const b of nodes)
        if (a.way < b.way && clear(a.p, b.p))
          b.way = Math.min(b.way, a.way + Math.hypot(a.p[0] - b.p[0], a.p[1] - b.p[1]))
  const xs = ring.map((p) => p[0])
  const ys = ring.map((p) => p[1])
  let total = 0
  let n = 0
  for (let x = Math.min(...xs) + step / 2; x < Math.max(...xs); x += step)
    for (let y = Math.min(...ys) + step / 2; y < Math.max(...ys); y += step) {
      const p: Point = [x, y]
      if (!ringHolds(ring, p)) continue
      n++
      if (clear(drain, p)) total += Math.hypot(x - drain[0], y - drain[1])
      else
        total += Math.min(
          ...nodes
            .filter((node) => clear(node.p, p))
            .map((node) => node.way + Math.hypot(x - node.p[0], y - node.p[1])),
        )
    }
  return total / n
}

describe('a drain that does not see every wall', () => {
  const ell = ringOf([0, 0], [1600, 0], [1600, 700], [700, 700], [700, 1800], [0, 1800])
  const zed = ringOf([0, 0], [1000, 0], [1000, 900], [2000, 900], [2000, 1800], [1300, 1800], [1300, 1300], [0, 1300])

  test.each([
    ['L, drain in the long leg', ell, [1300, 300]],
    ['L, drain in a corner', ell, [350, 1500]],
    ['two bends', zed, [1700, 1650]],
    ['two bends, drain at the other end', zed, [300, 200]],
  ] as const)('%s: volume as by a grid of shortest ways', (_, ring, drain) => {
    const bed = value(panBed({ ring, drain, slopeMmPerM: SLOPE, atDrainMm: 30 }))
    expect(bed.kind).toBe('even')
    const byGrid = (ringArea(ring) * (30 + (SLOPE / 1000) * meanWayByGrid(ring, drain, 40))) / 1e6
    expect(bed.volumeL / byGrid).toBeCloseTo(1, 2)
    for (const mark of bed.marks) {
      expect(mark.lowMm).toBeLessThanOrEqual(Math.min(mark.startMm, mark.endMm) + 1e-6)
      expect(Math.max(mark.startMm, mark.endMm)).toBeLessThanOrEqual(30 + bed.riseMm + 1e-6)
    }
  })

  test('by hand: the far end of the short leg is reached round the inner corner', () => {
    const bed = value(panBed({ ring: ell, drain: [1300, 300], slopeMmPerM: 20, atDrainMm: 0 }))
    const toCorner = Math.hypot(600, 400)
    const beyond = Math.hypot(700, 1100)
    expect(bed.farthestMm).toBeCloseTo(toCorner + beyond, 3)
  })
})

test('fans cover any comb-shaped floor once, wherever the drain is', () => {
  const comb = fc.record({
    teeth: fc.array(fc.tuple(fc.integer({ min: 100, max: 900 }), fc.integer({ min: 100, max: 900 })), {
      minLength: 1,
      maxLength: 4,
    }),
    at: fc.double({ min: 0.03, max: 0.97, noNaN: true }),
    up: fc.integer({ min: 1, max: 99 }),
  })
  fc.assert(
    fc.property(comb, ({ teeth, at, up }) => {
      const ring: Point[] = [[0, 0]]
      const long = teeth.length * 600
      ring.push([long, 0])
      for (let i = teeth.length - 1; i >= 0; i--) {
        const [a, b] = teeth[i]!
        ring.push([i * 600 + 600, 200 + a], [i * 600 + 300, 200 + a])
        ring.push([i * 600 + 300, 200 + b * 0.9], [i * 600, 200 + b * 0.9])
      }
      const clean = running(ring, 1)
      const bed = panBed({ ring: clean, drain: [at * long, up], slopeMmPerM: 20, atDrainMm: 10 })
      const fans = fansFrom(clean, [at * long, up])
      const covered = fans.reduce(
        (s, f) =>
          s +
          Math.abs(
            (f.near[0] - f.from[0]) * (f.far[1] - f.from[1]) - (f.far[0] - f.from[0]) * (f.near[1] - f.from[1]),
          ) /
            2,
        0,
      )
      expect(bed.ok).toBe(true)
      expect(covered / ringArea(clean)).toBeCloseTo(1, 4)
    }),
    { numRuns: 300 },
  )
})

test('distance over a triangle: against a fine sum', () => {
  const fan: Pick<Fan, 'from' | 'near' | 'far'> = { from: [0, 0], near: [500, -120], far: [300, 800] }
  let total = 0
  const n = 600
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) {
      // Points u near + v far with u + v < 1, by folding the square.
      const [p, q] = [(i + 0.5) / n, (j + 0.5) / n]
      const [u, v] = p + q < 1 ? [p, q] : [1 - p, 1 - q]
      total += Math.hypot(u * 500 + v * 300, u * -120 + v * 800)
    }
  const twiceArea = 500 * 800 + 300 * 120
  expect(wayOverTriangle(fan) / ((total / n / n) * (twiceArea / 2))).toBeCloseTo(1, 4)
})

test('a channel along one wall: a wedge', () => {
  const bed = value(planeBed(1000, 1200, 20, 30))
  expect(bed.riseMm).toBe(24)
  expect(bed.volumeL).toBeCloseTo(1.2 * (30 + 12), 9)
})

test.each([
  // US Navy rule 38, references 1.1 to 1.3: sacks and ft³ of sand for a yard of mortar.
  { ft3: 27, parts: 3, sacks: 9.5, sand: 28.5 },
  { ft3: 27, parts: 2, sacks: 12.667, sand: 25.333 },
  { ft3: 27, parts: 4, sacks: 7.6, sand: 30.4 },
  { ft3: 27, parts: 5, sacks: 6.333, sand: 31.667 },
  { ft3: 100 / 12, parts: 3, sacks: 2.932, sand: 8.796 },
  { ft3: 125 / 12, parts: 3, sacks: 3.665, sand: 10.995 },
])('rule 38: $ft3 ft³ at 1:$parts takes $sacks sacks and $sand ft³ of sand', ({ ft3, parts, sacks, sand }) => {
  const mix = value(mudParts(ft3 * FT3_L, parts))
  expect(mix.cementSacks).toBeCloseTo(sacks, 3)
  expect(mix.sandL / FT3_L).toBeCloseTo(sand, 3)
})

test('wet faces by hand: 3 x 5 ft alcove, 7 ft walls on three sides, curb and one niche', () => {
  const faces = value(
    wetFaces(
      {
        floorM2: 1.5,
        wallRunMm: 3000,
        wallHeightMm: 2000,
        corners: 2,
        curb: { lengthMm: 1500, heightMm: 100, widthMm: 150 },
        niches: [{ widthMm: 300, heightMm: 400, depthMm: 90 }],
      },
      SLOPE,
    ),
  )
  expect(faces.wallM2).toBeCloseTo(6, 9)
  // Curb 1.5 x (0.1 + 0.15 + 0.1); niche sides 2 x 0.09 x (0.3 + 0.4).
  expect(faces.extraM2).toBeCloseTo(0.525 + 0.126, 9)
  expect(faces.totalM2).toBeCloseTo(8.151, 9)
  expect(faces.ledgeFallsMm[0]).toEqual({ what: 'curb', fallMm: (150 * SLOPE) / 1000 })
})

test('litres and flood test by hand', () => {
  expect(value(membraneLitres(10, 0.6, 2, 10))).toBeCloseTo(13.2, 9)
  expect(value(floodTest(2, 50))).toEqual({ waterL: 100, massKg: 100 })
  expect(value(mudBags(61.4, 14))).toBe(5)
})

test.each([
  ['drain outside', [5000, 0], 'bad-floor'],
  ['drain nowhere', [Number.NaN, 0], 'bad-floor'],
] as const)('%s is refused', (_, drain, code) => {
  const outcome = panBed({
    ring: ringOf([0, 0], [900, 0], [900, 900], [0, 900]),
    drain,
    slopeMmPerM: 20,
    atDrainMm: 30,
  })
  expect(outcome.ok ? null : outcome.problem.code).toBe(code)
})

test('a figure-of-eight and a slope of nothing are refused', () => {
  const eight = ringOf([0, 0], [900, 900], [900, 0], [0, 600])
  expect(panBed({ ring: eight, drain: [800, 400], slopeMmPerM: 20, atDrainMm: 30 }).ok).toBe(false)
  const square = ringOf([0, 0], [900, 0], [900, 900], [0, 900])
  expect(panBed({ ring: square, drain: [1, 1], slopeMmPerM: 0, atDrainMm: 30 }).ok).toBe(false)
})
