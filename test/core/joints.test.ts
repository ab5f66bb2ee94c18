/** Joint rules beside their published figures. Sources as named in the references; most were read as reports. */
import { expect, test } from 'vitest'
import {
  allowedLippage,
  effectiveOffsetPct,
  exteriorJointMm,
  greatestOffsetPct,
  leastJoint,
  movementLines,
  movementSpacingM,
  sealantDepthMm,
  sealantTubes,
  sizeVariation,
  tubeFillsM,
  warpMetMm,
} from '../../src/core/joints.ts'

const IN = 25.4
const need = { variationMm: 0, edgeWarpMm: 0, facing: 'unknown', longestEdgeMm: 18 * IN, runningBond: false } as const

// ANSI A108.02-2017 s. 4.3.8 (4.6), A108.02 (4.7), s. 4.3.8.1 (4.8), each as reported.
test.each([
  { change: { variationMm: IN / 16 }, inches: 3 / 16, source: '4.6' },
  { change: { variationMm: 0 }, inches: 1 / 16, source: '4.6' },
  { change: { variationMm: IN / 64 }, inches: 1 / 16, source: '4.6' },
  { change: { runningBond: true, facing: 'rectified' }, inches: 1 / 8, source: '4.7' },
  { change: { runningBond: true, facing: 'calibrated' }, inches: 3 / 16, source: '4.7' },
  { change: { runningBond: true }, inches: 3 / 16, source: '4.7, the wider where not known' },
  { change: { runningBond: true, longestEdgeMm: 12 * IN }, inches: 1 / 16, source: '4.6' },
  { change: { runningBond: true, facing: 'rectified', edgeWarpMm: IN / 32 }, inches: 5 / 32, source: '4.8' },
] as const)('$change takes $inches in — references $source', ({ change, inches }) => {
  const least = leastJoint({ ...need, ...change })
  expect(least.ok && least.value.jointMm / IN).toBeCloseTo(inches, 9)
})

test('variation is the spread of the tiles measured; one tile has none', () => {
  expect(sizeVariation([449.5, 450.2, 449.9])).toEqual({ ok: true, value: expect.closeTo(0.7, 9) })
  expect(sizeVariation([450])).toMatchObject({ ok: false, problem: { code: 'missing' } })
  expect(sizeVariation([450, -3])).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
})

// ANSI A108.02, reported: 33 % where the offset side exceeds 15 in (4.9).
test('greatest offset by the offset side', () => {
  expect(greatestOffsetPct(48 * IN)).toBe(33)
  expect(greatestOffsetPct(15.01 * IN)).toBe(33)
  expect(greatestOffsetPct(15 * IN)).toBe(50)
  expect(greatestOffsetPct(6 * IN)).toBe(50)
  expect([70, 30, 50, 150, -30].map(effectiveOffsetPct)).toEqual([30, 30, 50, 50, 30])
})

test('half offset meets the whole bow, a third eight ninths of it', () => {
  expect(warpMetMm(50, 1.5)).toEqual({ ok: true, value: 1.5 })
  expect(warpMetMm(100 / 3, 0.9)).toEqual({ ok: true, value: expect.closeTo(0.8, 9) })
})

// ANSI A108.02-2013 s. 4.3.7, reported (4.5); NHBC 9.1.7 Jan 2025 (5.4).
test.each([
  { jointIn: 1 / 8, inches: 1 / 32 },
  { jointIn: 3 / 16, inches: 1 / 32 },
  { jointIn: 1 / 4, inches: 1 / 16 },
  { jointIn: 3 / 8, inches: 1 / 16 },
])('a $jointIn in joint may lip $inches in plus warp', ({ jointIn, inches }) => {
  expect(allowedLippage(jointIn * IN)).toEqual({ ok: true, value: expect.closeTo(inches * IN, 9) })
  expect(allowedLippage(jointIn * IN, 0.5)).toEqual({ ok: true, value: expect.closeTo(inches * IN + 0.5, 9) })
})

test('a British floor: 1 mm where the joint is 6 mm or less, 2 mm above', () => {
  const uk = { widthMm: 6.02, belowMm: 1, fromMm: 2 }
  expect(allowedLippage(6, 0, uk)).toEqual({ ok: true, value: 1 })
  expect(allowedLippage(8, 0, uk)).toEqual({ ok: true, value: 2 })
})

// TCNA EJ171 as reported (4.15, 4.16); BS 5385 as reported (5.1, 5.2).
test('movement joints by exposure and country', () => {
  expect(movementSpacingM('interior').highM).toBeCloseTo(25 * 0.3048, 9)
  expect(movementSpacingM('interior').lowM).toBeCloseTo(20 * 0.3048, 9)
  for (const exposure of ['exterior', 'sun', 'wet'] as const)
    expect([movementSpacingM(exposure).lowM, movementSpacingM(exposure).highM]).toEqual([
      expect.closeTo(2.4384, 9),
      expect.closeTo(3.6576, 9),
    ])
  expect(movementSpacingM('suspended').highM).toBeCloseTo(12 * 0.3048, 9)
  expect(movementSpacingM('interior', 'UK')).toEqual({ lowM: 8, highM: 10 })
  expect(movementSpacingM('exterior', 'UK')).toEqual({ lowM: 3, highM: 5 })
  expect([20, 25, 26, 50, 51].map((feet) => movementLines(feet, 25))).toEqual([0, 0, 1, 1, 2])
})

// TCNA EJ171 as reported (4.17).
test.each([
  { feet: 8, rangeF: 100, inches: 3 / 8 },
  { feet: 12, rangeF: 100, inches: 1 / 2 },
  { feet: 12, rangeF: 115, inches: 9 / 16 },
  { feet: 8, rangeF: 115, inches: 7 / 16 },
  { feet: 12, rangeF: 80, inches: 1 / 2 },
])('exterior joints $feet ft apart over $rangeF F: $inches in wide', ({ feet, rangeF, inches }) => {
  const width = exteriorJointMm(feet * 304.8, rangeF / 1.8)
  expect(width.ok && width.value / IN).toBeCloseTo(inches, 9)
})

test('a 300 mL tube fills 24 ft of 1/4 x 1/4 in — references 13.15', () => {
  const fills = tubeFillsM(IN / 4, IN / 4)
  expect(fills.ok && fills.value / 0.3048).toBeCloseTo(24.4, 1)
  // 48 ft with a tenth over, 24.4 ft a tube: 2.16, so 3.
  expect(sealantTubes(48 * 0.3048, IN / 4, IN / 4)).toEqual({ ok: true, value: 3 })
  expect(sealantDepthMm(IN / 2)).toBeCloseTo(IN / 4, 9)
  expect(sealantDepthMm(IN / 8)).toBeCloseTo(IN / 8, 9)
  expect(tubeFillsM(0, 6)).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
})

test('bad readings are refused', () => {
  expect(leastJoint({ ...need, variationMm: Number.NaN })).toMatchObject({ ok: false })
  expect(allowedLippage(-1)).toMatchObject({ ok: false })
  expect(exteriorJointMm(0, 50)).toMatchObject({ ok: false })
})
