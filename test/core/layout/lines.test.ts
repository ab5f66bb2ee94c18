/** Lines, joints and warnings by published figures and by hand. */
import { expect, test } from 'vitest'
import { floorOf } from '../../../src/core/floor/check.ts'
import { rectangle } from '../../../src/core/floor/shapes.ts'
import { compareSizes, maxOffsetPct, offsetWarning, oftenMeasures } from '../../../src/core/layout/compare.ts'
import {
  jointWithoutSliver,
  movementJoints,
  movementLines,
  roundTheCorner,
  sealantTubes,
  storyPole,
} from '../../../src/core/layout/lines.ts'
import { weaveMismatch, weavePlanks } from '../../../src/core/layout/patterns.ts'
import { cutPieces } from '../../../src/core/layout/pieces.ts'
import { around, plankShifts, wrap } from '../../../src/core/layout/random.ts'
import { type LayoutSpec, plainSpec } from '../../../src/core/layout/spec.ts'
import { NO_WISHES } from '../../../src/core/layout/wishes.ts'
import { must } from '../../support/must.ts'

const IN = 25.4
const FT = 304.8

test('the joint that loses a sliver is 0.208 in — references 13.9', () => {
  const fit = jointWithoutSliver(97.25 * IN, 0.125 * IN, 5.875 * IN, 0.1875 * IN, IN / 16, 0.375 * IN)
  expect(fit?.tiles).toBe(16)
  expect(fit!.jointMm / IN).toBeCloseTo(0.2083, 4)
  expect(jointWithoutSliver(97.25 * IN, 0.125 * IN, 5.875 * IN, 0.1875 * IN, IN / 16, 0.2 * IN)).toBeNull()
})

test('a story pole reads to 1/16 in, each mark from zero', () => {
  const marks = must(storyPole(12 * IN, 12 * IN, 3, 30))
  marks.forEach(({ exactMm, readMm }, k) => {
    expect(exactMm).toBeCloseTo(12 * IN + k * (12 * IN + 3), 9) // by hand
    expect(Math.abs(readMm - exactMm)).toBeLessThanOrEqual(IN / 32 + 1e-9)
    expect((readMm / IN) * 16).toBeCloseTo(Math.round((readMm / IN) * 16), 9)
  })
  expect(storyPole(1, 1, 1, 0).ok).toBe(false)
})

test.each([
  [24, 25, 0],
  [25, 25, 0],
  [26, 25, 1],
  [50, 25, 1],
  [30, 12, 2],
])('%d ft at %d ft takes %d lines — ceil(L / spacing) - 1, TCNA EJ171 spacings as reported', (feet, spacing, lines) => {
  expect(movementLines(feet * FT, spacing * FT)).toBe(lines)
})

test('movement joints snap to straight grout joints, follow the slab’s own and stop at holes', () => {
  const hall = must(
    floorOf(
      [
        [0, 0],
        [12_000, 0],
        [12_000, 6000],
        [0, 6000],
      ],
      [
        [
          [5500, 2000],
          [6500, 2000],
          [6500, 3000],
          [5500, 3000],
        ],
      ],
    ),
  )
  const plan = must(movementJoints(hall, plainSpec(600, 300, 3), 7000))
  expect(plan.joints).toHaveLength(1)
  const [joint] = plan.joints
  // By hand: joints' centres at 601.5 + k 603; the nearest to 6000 is 6028.5 (k = 9).
  expect(joint).toMatchObject({ along: 'x', fromLowMm: 6028.5, onJoint: true, ofSlab: false })
  expect(plan.insideMm).toBeCloseTo(5000, 6)
  expect(plan.perimeterMm).toBe(36_000 + 4000)
  expect(plan.widestMm.x).toBeCloseTo(6028.5, 6)
  const third: LayoutSpec = {
    ...plainSpec(600, 300, 3),
    pattern: { kind: 'offset', share: { over: 1, under: 3 }, step: 'stair', along: 'length' },
  }
  expect(must(movementJoints(hall, third, 7000)).joints[0]).toMatchObject({ fromLowMm: 6000, onJoint: false })
  const turned = must(movementJoints(hall, { ...plainSpec(600, 300, 3), angleDeg: 90 }, 3500)).joints
  expect(turned.filter((j) => j.along === 'y').every((j) => j.onJoint)).toBe(true)
  const slab = must(movementJoints(hall, plainSpec(600, 300, 3), 7000, [{ along: 'x', fromLowMm: 4000 }])).joints
  expect(slab.filter((j) => j.along === 'x').map((j) => j.ofSlab)).toEqual([true, false])
})

test('24 ft of 1/4 x 1/4 in take one 300 mL tube — references 13.15', () => {
  expect(must(sealantTubes(24 * FT, IN / 4, IN / 4))).toBe(1)
  expect(must(sealantTubes(25 * FT, IN / 4, IN / 4))).toBe(2)
})

test('half offset on a side over 15 in is warned of, a third is not — ANSI A108.02 (reported)', () => {
  const offset = (over: number, under: number, lengthMm: number): LayoutSpec => ({
    ...plainSpec(lengthMm, 200, 3),
    pattern: { kind: 'offset', share: { over, under }, step: 'stair', along: 'length' },
  })
  expect(offsetWarning(offset(1, 2, 48 * IN))).toMatchObject({ offsetPct: 50, limitPct: 33 })
  expect(offsetWarning(offset(1, 3, 48 * IN))).toBeNull()
  expect(offsetWarning(offset(2, 3, 48 * IN))).toBeNull()
  expect(offsetWarning(offset(1, 2, 15 * IN))).toBeNull()
  expect([maxOffsetPct(15 * IN), maxOffsetPct(15.1 * IN)]).toEqual([50, 33])
})

test('nominal 12 x 24 over 15 tiles is 5-5/8 in longer than 23-5/8 — references 13.14', () => {
  expect(oftenMeasures(24 * IN) / IN).toBeCloseTo(23.625, 9)
  expect(oftenMeasures(12 * IN) / IN).toBeCloseTo(11.8125, 9)
  const room = must(rectangle(30 * FT, 12 * FT))
  const compared = must(
    compareSizes(
      room,
      plainSpec(24 * IN, 12 * IN, 3),
      { lengthMm: oftenMeasures(24 * IN), widthMm: oftenMeasures(12 * IN) },
      NO_WISHES,
    ),
  )
  expect(compared.matters).toBe(true)
})

test('the mismatch of a woven square: L - n W - (n - 1) j', () => {
  expect(weavePlanks(300, 98, 3)).toBe(3)
  expect(weaveMismatch(300, 98, 3)).toBe(0)
  expect(weaveMismatch(48 * IN, 8 * IN, 3)).toBeCloseTo(-15, 9)
})

test('random planks keep their stagger, a third at most where long, and make neither H nor stair', () => {
  for (const seed of [1, 77, 123_456]) {
    const [module, least] = [1222, 152.4]
    const ends = { low: 40, high: 4307 }
    const shifts = plankShifts(400, seed, 1219, module, least, ends)
    expect(plankShifts(400, seed, 1219, module, least, ends)).toEqual(shifts)
    let stairs = 0
    let narrow = 0
    for (let row = 1; row < 400; row++) {
      const cuts = [1219 - wrap(ends.low - shifts[row]!, module), wrap(ends.high - shifts[row]!, module)]
      if (cuts.some((cut) => cut > 0.01 && cut < 50.8)) narrow++
      const apart = around(shifts[row]! - shifts[row - 1]!, module)
      expect(apart).toBeGreaterThanOrEqual(least - 1e-6)
      expect(apart).toBeLessThanOrEqual(0.33 * 1219 + 1e-6)
      if (row < 2) continue
      expect(around(shifts[row]! - shifts[row - 2]!, module)).toBeGreaterThan(25)
      const before = shifts[row - 1]! - shifts[row - 2]!
      if (around(shifts[row]! - shifts[row - 1]! - before, module) < 10) stairs++
    }
    expect([stairs, narrow]).toEqual([0, 0])
    expect(new Set(shifts.map((s) => Math.round(s / 10))).size).toBeGreaterThan(60)
  }
})

test('courses go on level round a corner, the first piece is what the corner left over', () => {
  // By hand: 2000 mm hold 6 x 303 and 182 mm of the seventh tile; 118 mm of it go on round the corner.
  const next = roundTheCorner(plainSpec(300, 300, 3), 2000)
  const wall = must(rectangle(1000, 900))
  const cuts = must(cutPieces(wall, next)).cuts.filter((cut) => cut.walls.includes(3))
  expect(cuts.map((cut) => Math.round(cut.lengthMm))).toEqual(cuts.map(() => 118))
  expect(cuts.length).toBe(3)
})
