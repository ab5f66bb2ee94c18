/** Edges that tiles share, against closed forms, against Euler's count of neighbours, and against every pair of pieces looked at. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { floorOf } from '../../../src/core/floor/check.ts'
import type { Point, Ring } from '../../../src/core/floor/rings.ts'
import { sharedEdges } from '../../../src/core/layout/edges.ts'
import { tilesOf } from '../../../src/core/layout/pieces.ts'
import { type LayoutSpec, plainSpec } from '../../../src/core/layout/spec.ts'
import { clipsForEdges, gridEdges } from '../../../src/core/levelling.ts'
import { must } from '../../support/must.ts'
import { EVERY_PATTERN, floors } from './floors.ts'

const rectangle = (w: number, h: number) =>
  must(
    floorOf([
      [0, 0],
      [w, 0],
      [w, h],
      [0, h],
    ]),
  )
const total = (edges: readonly { count: number }[]) => edges.reduce((sum, e) => sum + e.count, 0)

test('full rows share what a grid shares, and take the same clips', () => {
  const [columns, rows] = [7, 5]
  const spec = plainSpec(600, 300, 3)
  const edges = must(sharedEdges(rectangle(columns * 603 - 3, rows * 303 - 3), spec))
  expect(edges).toEqual([
    { lengthMm: 600, count: 28 },
    { lengthMm: 300, count: 30 },
  ])
  const rule = { spacingMm: 609.6, cornerMm: 50.8, singleUnderMm: 203.2 }
  expect(must(clipsForEdges(edges, rule))).toBe(must(clipsForEdges(gridEdges(columns, rows, 600, 300), rule)))
})

test('an offset row shares each long side with two of the next', () => {
  // Two rows of 4 at a half: 7 stretches between them, 3 + 4 short sides.
  const spec: LayoutSpec = { ...plainSpec(600, 300, 0), pattern: EVERY_PATTERN[2] }
  const along: LayoutSpec = {
    ...spec,
    pattern: { kind: 'offset', share: { over: 1, under: 2 }, step: 'stair', along: 'length' },
  }
  expect(must(sharedEdges(rectangle(2400, 600), along))).toEqual([{ lengthMm: 300, count: 8 + 3 + 4 }])
})

describe('on a wide floor a tile has so many neighbours as Euler’s formula gives', () => {
  // Four where corners of four tiles meet, six where every joint ends on another: two and three edges a tile.
  test.each([
    ['stacked', EVERY_PATTERN[0], 2],
    ['third offset', EVERY_PATTERN[1], 3],
    ['herringbone', EVERY_PATTERN[4], 3],
    ['double herringbone', EVERY_PATTERN[5], 3],
    ['hexagon', EVERY_PATTERN[7], 3],
  ] as const)('%s', (_, pattern, each) => {
    const spec = { ...plainSpec(600, 145, 3), pattern, originMm: [31, 17] as Point, angleDeg: 15 }
    const floor = rectangle(60_000, 55_000)
    const cells = must(tilesOf(floor, spec)).layout.cells
    expect(total(must(sharedEdges(floor, spec))) / cells).toBeGreaterThan(each * 0.97)
    expect(total(must(sharedEdges(floor, spec))) / cells).toBeLessThanOrEqual(each)
  })
})

/** Sides of every piece against sides of every other. */
function byPairs(rings: readonly Ring[], jointMm: number): number[] {
  const found: number[] = []
  const sides = rings.map((ring) => ring.map((p, k) => [p, ring[(k + 1) % ring.length]] as const))
  for (let a = 0; a < sides.length; a++)
    for (let b = a + 1; b < sides.length; b++)
      for (const [p, q] of sides[a])
        for (const [r, s] of sides[b]) {
          const length = Math.hypot(q[0] - p[0], q[1] - p[1])
          const [cx, cy] = [(q[0] - p[0]) / length, (q[1] - p[1]) / length]
          const off = (o: Point) => (o[1] - p[1]) * cx - (o[0] - p[0]) * cy
          const along = (o: Point) => (o[0] - p[0]) * cx + (o[1] - p[1]) * cy
          // The other piece lies to the right, a joint away.
          if (Math.abs(off(r) + jointMm) > 0.1 || Math.abs(off(s) + jointMm) > 0.1) continue
          const mm = Math.min(length, Math.max(along(r), along(s))) - Math.max(0, Math.min(along(r), along(s)))
          if (mm > 0) found.push(mm)
        }
  return found
}

test('the same edges as every pair of pieces looked at by itself', () => {
  fc.assert(
    fc.property(
      floors,
      fc.constantFrom(...EVERY_PATTERN.filter(({ kind }) => kind !== 'basketweave')),
      fc.constantFrom(0, 45, 30),
      fc.integer({ min: 0, max: 400 }),
      (floor, pattern, angleDeg, at) => {
        const spec: LayoutSpec = {
          ...plainSpec(700, 320, 5),
          pattern,
          angleDeg,
          originMm: [at, at / 3],
          wallGapMm: 6,
        }
        const listed = tilesOf(floor, spec)
        if (!listed.ok || listed.value.layout.cells > 250) return
        const rings = [...listed.value.whole.map((t) => t.outlineMm), ...listed.value.cuts.map((c) => c.outlineMm[0])]
        const pairs = byPairs(rings, 5)
        const edges = must(sharedEdges(floor, spec))
        // Stretches about as short as the least that counts may fall either way.
        const sure = pairs.filter((mm) => mm > 10.5).length
        const most = pairs.filter((mm) => mm > 9.5).length
        expect(total(edges)).toBeGreaterThanOrEqual(sure)
        expect(total(edges)).toBeLessThanOrEqual(most)
      },
    ),
    { numRuns: 40 },
  )
})

test('the edges and the crossings make up the joints', () => {
  fc.assert(
    fc.property(floors, fc.constantFrom(...EVERY_PATTERN), (floor, pattern) => {
      const spec: LayoutSpec = { ...plainSpec(450, 225, 3), pattern, originMm: [11, 7] }
      const listed = tilesOf(floor, spec)
      if (!listed.ok) return
      const edges = must(sharedEdges(floor, spec))
      const shared = edges.reduce((sum, e) => sum + e.lengthMm * e.count, 0)
      expect(shared).toBeLessThanOrEqual(listed.value.layout.jointLengthMm + 0.3 * total(edges))
    }),
    { numRuns: 60 },
  )
})
