/** Squareness against geometry; slab and screed against published figures. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { holeDepthMm, humidityHoles, judgeMoisture, screedDays } from '../../../src/core/substrate/moisture.ts'
import { fromDiagonals, fromMarks, squareAcrossMm } from '../../../src/core/substrate/square.ts'
import { panelDeflectionMm, panelFor } from '../../../src/core/substrate/subfloor.ts'

const FT2_M2 = 0.09290304

test('a leaning room gives back its angle from both diagonals and from any two marks', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 2000, max: 9000, noNaN: true }),
      fc.double({ min: 2000, max: 9000, noNaN: true }),
      fc.double({ min: -3, max: 3, noNaN: true }),
      (a, b, off) => {
        const angle = ((90 + off) * Math.PI) / 180
        const corner = [b * Math.cos(angle), b * Math.sin(angle)] as const
        const d1 = Math.hypot(a - corner[0], corner[1])
        const d2 = Math.hypot(a + corner[0], corner[1])
        const diagonals = fromDiagonals(a, b, d1, d2)
        const marks = fromMarks(a, b, d1)
        expect(diagonals.ok && diagonals.value.offDeg).toBeCloseTo(off, 8)
        expect(marks.ok && marks.value.offDeg).toBeCloseTo(off, 8)
        expect(diagonals.ok && diagonals.value.taperMm).toBeCloseTo(Math.abs(corner[0]), 6)
      },
    ),
  )
})

test('3-4-5 and 33-44-55 are square — references 7.13', () => {
  for (const k of [1, 3, 11]) expect(squareAcrossMm(3 * k * 304.8, 4 * k * 304.8)).toBeCloseTo(5 * k * 304.8, 9)
  expect(fromMarks(914.4, 1219.2, 1524)).toMatchObject({ ok: true, value: { offDeg: expect.closeTo(0, 9) } })
})

test('diagonals that cannot belong to the sides are refused', () => {
  expect(fromDiagonals(3000, 4000, 5000, 7000)).toMatchObject({ ok: false, problem: { code: 'bad-floor' } })
  expect(fromDiagonals(3000, 4000, Number.NaN, 5000)).toMatchObject({ ok: false })
  expect(fromMarks(900, 1200, 2100)).toMatchObject({ ok: false })
})

// ASTM F2170 as reported, references 6.19 and 6.20.
test.each([
  { ft2: 200, holes: 3 },
  { ft2: 1000, holes: 3 },
  { ft2: 1001, holes: 4 },
  { ft2: 3500, holes: 6 },
])('$ft2 ft² takes $holes humidity holes', ({ ft2, holes }) => {
  expect(humidityHoles(ft2 * FT2_M2)).toEqual({ ok: true, value: holes })
})

test('4 in slab drying from one face: holes 1.6 in deep; from both 0.8 in', () => {
  expect(holeDepthMm(101.6, 1)).toEqual({ ok: true, value: expect.closeTo(1.6 * 25.4, 9) })
  expect(holeDepthMm(101.6, 2)).toEqual({ ok: true, value: expect.closeTo(0.8 * 25.4, 9) })
})

// NHBC Standards 9.3.5 (2022), references 5.6.
test.each([
  { mm: 35, days: 35 },
  { mm: 40, days: 40 },
  { mm: 60, days: 80 },
])('$mm mm of calcium sulfate screed dries $days days', ({ mm, days }) => {
  expect(screedDays(mm)).toEqual({ ok: true, value: days })
})

// References 6.18: commonly 75 to 80 % RH, 3 up to 12 lb.
test.each([
  { readings: [70, 74, 75], kind: 'humidity', range: [75, 80], verdict: 'pass' },
  { readings: [70, 78], kind: 'humidity', range: [75, 80], verdict: 'sheet' },
  { readings: [70, 85], kind: 'humidity', range: [75, 80], verdict: 'fail' },
  { readings: [3], kind: 'emission', range: [3, 12], verdict: 'pass' },
  { readings: [5], kind: 'emission', range: [3, 12], verdict: 'sheet' },
  { readings: [13], kind: 'emission', range: [3, 12], verdict: 'fail' },
] as const)('$kind $readings is $verdict', ({ readings, kind, range: [low, high], verdict }) => {
  const judged = judgeMoisture(readings, kind, { low, high }, 100 * FT2_M2)
  expect(judged).toMatchObject({ ok: true, value: { verdict, holesNeeded: 3, enoughHoles: readings.length >= 3 } })
})

test('no reading, or one past 100 %, is refused', () => {
  expect(judgeMoisture([], 'humidity', { low: 75, high: 80 })).toMatchObject({ ok: false })
  expect(judgeMoisture([104], 'humidity', { low: 75, high: 80 })).toMatchObject({ ok: false })
})

test('a panel over three spans bends as the sum of its moments says', () => {
  // By hand: w 2.873 N/mm per metre, L 406.4, EI 3.7664e9: 0.0069 x 2.873e0 x 2.728e10 / 3.7664e9 = 0.1436 mm.
  const judged = panelDeflectionMm({ thicknessMm: 18.3, stiffnessNmm2PerM: 3.7664e9 }, 406.4, 2.873)
  expect(judged.ok && judged.value).toBeCloseTo(0.1436, 3)
  expect(
    panelFor(
      [
        { thicknessMm: 15.1, stiffnessNmm2PerM: 1 },
        { thicknessMm: 18.3, stiffnessNmm2PerM: 2 },
      ],
      [15.9, 9],
    ),
  ).toEqual({
    thicknessMm: 15.1,
    stiffnessNmm2PerM: 1,
  })
  expect(panelFor([{ thicknessMm: 15.1, stiffnessNmm2PerM: 1 }], [9])).toBeNull()
})
