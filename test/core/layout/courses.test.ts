/** Courses round corners and openings on joints, by hand and against the lattice itself. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { carryCourses, courseShifts, type RunAsked } from '../../../src/core/layout/courses.ts'
import { boxOnJoints, crossingNear, nicheOnJoints } from '../../../src/core/layout/openings.ts'
import { cutPieces, tilesOf } from '../../../src/core/layout/pieces.ts'
import { type LayoutSpec, type Pattern, plainSpec } from '../../../src/core/layout/spec.ts'
import { must } from '../../support/must.ts'

const FT = 304.8
const IN = 25.4
const HALF: Pattern = { kind: 'offset', share: { over: 1, under: 2 }, step: 'back-and-forth', along: 'length' }
const THIRD: Pattern = { kind: 'offset', share: { over: 1, under: 3 }, step: 'stair', along: 'length' }
const shower: RunAsked = {
  lengthsMm: [3 * FT, 5 * FT, 3 * FT],
  heightMm: 8 * FT,
  tile: { lengthMm: 24 * IN, widthMm: 12 * IN },
  jointMm: IN / 8,
  pattern: { kind: 'stacked' },
  gapMm: IN / 4,
  fullAt: null,
}

test('a 3, 5, 3 ft shower in 12x24, by hand', () => {
  // A joint stands in the middle of the back wall, 54 + 12... 5 ft / 2 = 30 in = 24 + 1/16 + 1/16 (corner) + 5 3/4 + joint 1/16.
  // Walls' ends: 36 - 1/16 - 18 1/8 - 1/8 = 17 11/16; at the corner 18 1/8 + 1/8 + 5 3/4 = 24, one tile.
  const run = must(carryCourses(shower))
  const inches = run.walls.map((w) => w.ends.flatMap(({ firstMm, lastMm }) => [firstMm / IN, lastMm / IN]))
  expect(inches[0]![0]).toBeCloseTo(17 + 11 / 16, 6)
  expect(inches[0]![1]).toBeCloseTo(18 + 1 / 8, 6)
  expect(inches[1]![0]).toBeCloseTo(5 + 3 / 4, 6)
  expect(inches[1]![1]).toBeCloseTo(5 + 3 / 4, 6)
  expect(inches[2]![0]).toBeCloseTo(18 + 1 / 8, 6)
  // 96 - 1/2 = 95 1/2 in; 7 courses of 12 1/8 leave 10 5/8; 8 courses bend one tile at each of two corners
  expect([run.courses, run.bent, run.balanced]).toEqual([8, 16, 1])
  expect(run.topMm / IN).toBeCloseTo(10 + 5 / 8, 6)
  // 6 places a course on the strip, one more on the walls for each tile bent
  expect(run.strip.layout.cells).toBe(48)
  expect(run.walls.reduce((sum, w) => sum + w.layout.cells, 0)).toBe(64)
})

test('a whole tile at the end the crew names, two halves in courses moved by half', () => {
  const left = must(carryCourses({ ...shower, fullAt: 'left', pattern: HALF }))
  expect(left.walls[0]!.ends[0]!.firstMm).toBeCloseTo(24 * IN, 6)
  // moved by half a module, 12 1/16, the tile before ends 1/8 short of it
  expect(left.walls[0]!.ends[1]!.firstMm / IN).toBeCloseTo(12 + 1 / 16 - 1 / 8, 6)
  const right = must(carryCourses({ ...shower, fullAt: 'right' }))
  expect(right.walls[2]!.ends[0]!.lastMm).toBeCloseTo(24 * IN, 6)
  expect(courseShifts(THIRD, 300)).toEqual([0, 100, 200])
})

const runs = fc.record({
  lengthsMm: fc.array(fc.integer({ min: 700, max: 4000 }), { minLength: 2, maxLength: 5 }),
  heightMm: fc.integer({ min: 400, max: 2600 }),
  tile: fc.constantFrom(
    { lengthMm: 600, widthMm: 300 },
    { lengthMm: 152, widthMm: 76 },
    { lengthMm: 400, widthMm: 400 },
  ),
  jointMm: fc.constantFrom(2, 3, 5),
  pattern: fc.constantFrom<Pattern>({ kind: 'stacked' }, HALF, THIRD),
  gapMm: fc.constantFrom(0, 6),
  fullAt: fc.constant(null),
})

test('in every corner the two pieces and the joint are one tile, and the walls’ own pieces are those told', () => {
  fc.assert(
    fc.property(runs, (asked) => {
      const run = must(carryCourses(asked))
      const side = asked.tile.lengthMm
      run.walls.slice(1).forEach((wall, k) => {
        wall.ends.forEach(({ firstMm }, row) => {
          const { lastMm } = run.walls[k]!.ends[row]!
          const bent = Math.abs(lastMm + asked.jointMm + firstMm - side) < 0.02
          // else a joint falls into the corner or beside it: one of the two pieces is a whole tile or lost in the joint
          expect(bent || Math.max(lastMm, firstMm) > side - asked.jointMm - 0.02).toBe(true)
        })
      })
      for (const wall of run.walls) {
        const tiles = must(tilesOf(wall.tiled, wall.spec))
        expect(tiles.whole.length).toBe(wall.layout.whole)
        const xs = wall.tiled.rings[0]!.map(([x]) => x)
        const [low, high] = [Math.min(...xs), Math.max(...xs)]
        expect(low).toBeGreaterThanOrEqual(0)
        expect(high).toBeLessThanOrEqual(wall.lengthMm)
        const cuts = must(cutPieces(wall.tiled, wall.spec)).cuts
        const widths = cuts.filter((c) => c.walls.some((w) => w === 1 || w === 3)).map((c) => c.lengthMm)
        const told = wall.ends.flatMap(({ firstMm, lastMm }) => [firstMm, lastMm])
        // every piece at an end is one of those told, apart from those under 3 mm2
        for (const mm of widths)
          expect(
            told.some((t) => Math.abs(t - mm) < 0.02),
            `${mm} of ${told}`,
          ).toBe(true)
      }
    }),
    { numRuns: 60 },
  )
})

test('no start on a fine grid leaves a wider least piece than the one chosen', () => {
  fc.assert(
    fc.property(runs, (asked) => {
      const run = must(carryCourses(asked))
      const module = asked.tile.lengthMm + asked.jointMm
      const least = Math.min(50.8, asked.tile.lengthMm / 3)
      if (run.balanced !== null && run.narrowestMm >= least) return
      const total = asked.lengthsMm.length
      const spans = asked.lengthsMm.map((_, k) => {
        const from = asked.lengthsMm.slice(0, k).reduce((a, b) => a + b, 0)
        const to = from + asked.lengthsMm[k]!
        return [k === 0 ? from : from + asked.jointMm / 2, k === total - 1 ? to : to - asked.jointMm / 2] as const
      })
      const shifts = courseShifts(asked.pattern, module)
      let best = 0
      for (let origin = 0; origin < module; origin += 0.5) {
        let narrowest: number = asked.tile.lengthMm
        for (const shift of shifts)
          for (const [from, to] of spans) {
            // pieces of one course of this wall
            const first = Math.floor((from - origin - shift) / module)
            for (let i = first; origin + shift + i * module < to; i++) {
              const at = origin + shift + i * module
              const piece = Math.min(to, at + asked.tile.lengthMm) - Math.max(from, at)
              if (piece > 0.01) narrowest = Math.min(narrowest, piece)
            }
          }
        best = Math.max(best, narrowest)
      }
      expect(run.narrowestMm).toBeGreaterThan(best - 0.01)
    }),
    { numRuns: 40 },
  )
})

test('a niche lands on joints: four tile edges of the lattice stand round it, within half a module of where it was wanted', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -300, max: 300 }),
      fc.integer({ min: -300, max: 300 }),
      fc.constantFrom<Pattern>({ kind: 'stacked' }, HALF),
      fc.integer({ min: 200, max: 900 }),
      fc.integer({ min: 300, max: 1400 }),
      (ox, oy, pattern, x, y) => {
        const spec: LayoutSpec = { ...plainSpec(300, 100, 3), pattern, originMm: [ox, oy], wallGapMm: 6 }
        const wall = { lengthMm: 1600, heightMm: 2400, spec }
        const niche = nicheOnJoints(wall, 330, 600, x, y)!
        expect(niche.widthMm).toBe(niche.tiles![0] * 303 + 3)
        expect(niche.heightMm).toBe(niche.tiles![1] * 103 + 3)
        // The course on which it stands: its tiles begin where the niche's inner edges are, a joint in.
        const course = Math.round((niche.fromFootMm + 3 - oy) / 103)
        expect(niche.fromFootMm + 3).toBeCloseTo(oy + course * 103, 6)
        const shift = pattern.kind === 'offset' && ((course % 2) + 2) % 2 === 1 ? 303 / 2 : 0
        const off = (((niche.fromLeftMm + 3 - ox - shift) % 303) + 303) % 303
        expect(Math.min(off, 303 - off)).toBeLessThan(1e-6)
        expect(niche.fromLeftMm).toBeGreaterThanOrEqual(6)
        expect(niche.fromLeftMm + niche.widthMm).toBeLessThanOrEqual(1594)
        expect(Math.abs(niche.fromFootMm - y)).toBeLessThan(52)
      },
    ),
  )
})

test('a box moves the least way that puts a side on a joint; a crossing is where four tiles meet', () => {
  // Tiles of 300 x 100, joint 3, from (0, 0): a tile ends at 300, the next begins at 303; courses end at 100, begin at 103.
  const wall = { lengthMm: 2000, heightMm: 2000, spec: { ...plainSpec(300, 100, 3), wallGapMm: 6 } }
  // left side 310 to 300 is 10; its right side 380 to 303 or 606 is farther. Foot 118 to 100 is 18; head 188 to 206 is 18.
  expect(boxOnJoints(wall, 70, 70, 310, 116)).toMatchObject({ fromLeftMm: 300, fromFootMm: 100, tiles: null })
  // right side 590 to 606: 16; left side 520 to 603: 83
  expect(boxOnJoints(wall, 70, 70, 520, 130)!.fromLeftMm).toBe(536)
  expect(crossingNear(wall, 310, 130)).toEqual([301.5, 101.5])
  const tight = { lengthMm: 330, heightMm: 2000, spec: { ...plainSpec(300, 100, 3), wallGapMm: 6 } }
  expect(nicheOnJoints(tight, 600, 600, 10, 500)).toBeNull()
})
