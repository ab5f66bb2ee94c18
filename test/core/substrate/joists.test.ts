/** Joists against printed spans and worked vectors, and against an independent numerical integration. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import table from '../../../config/lumber.json' with { type: 'json' }
import {
  bendingStressMpa,
  deflectionMm,
  type JoistFloor,
  judgeJoists,
  longestSpanMm,
  lumberFor,
  momentOfInertiaMm4,
  PSF_KPA,
  PSI_MPA,
  sectionModulusMm3,
} from '../../../src/core/substrate/joists.ts'

const IN = 25.4
const FT = 304.8
const section = (nominal: string) => table.sections.find((s) => s.nominal === nominal)!
const lumber = (species: string) => table.species.find((s) => s.species === species)!
const inches = (said: string) => {
  const [ft, inch] = said.split('-').map(Number)
  return ft! * 12 + inch!
}

// Published: IRC Table R502.3.1(2), SPF #1/#2, 40 psf live, L/360, as listed in references 8.4.
const PRINTED = [
  { dead: 10, spacing: 12, spans: ['10-3', '13-6', '17-3', '20-7'] },
  { dead: 10, spacing: 16, spans: ['9-4', '12-3', '15-5', '17-10'] },
  { dead: 10, spacing: 19.2, spans: ['8-9', '11-6', '14-1', '16-3'] },
  { dead: 10, spacing: 24, spans: ['8-1', '10-3', '12-7', '14-7'] },
  { dead: 20, spacing: 12, spans: ['10-3', '13-3', '16-3', '18-10'] },
  { dead: 20, spacing: 16, spans: ['9-1', '11-6', '14-1', '16-3'] },
  { dead: 20, spacing: 19.2, spans: ['8-3', '10-6', '12-10', '14-10'] },
  { dead: 20, spacing: 24, spans: ['7-5', '9-5', '11-6', '13-4'] },
]
const SIZES = ['2x6', '2x8', '2x10', '2x12']
const ROWS = PRINTED.flatMap(({ dead, spacing, spans }) =>
  spans.map((span, i) => ({ dead, spacing, size: SIZES[i]!, span })),
)

test('all 32 printed spans are here', () => expect(ROWS).toHaveLength(32))

test.each(ROWS)(
  '$size at $spacing in, $dead psf dead spans $span — IRC R502.3.1(2)',
  ({ dead, spacing, size, span }) => {
    const { spanMm } = longestSpanMm({
      section: section(size),
      lumber: lumber('spf'),
      spacingMm: spacing * IN,
      liveKpa: 40 * PSF_KPA,
      deadKpa: dead * PSF_KPA,
      limit: 360,
    })
    expect(Math.abs(spanMm / IN - inches(span))).toBeLessThan(0.5)
  },
)

// References 8.7, computed there from DF-L No. 2 values held from memory.
test.each([
  { size: '2x8', dead: 10, span: '12-9' },
  { size: '2x10', dead: 10, span: '15-7' },
  { size: '2x12', dead: 10, span: '18-1' },
  { size: '2x8', dead: 20, span: '11-8' },
  { size: '2x10', dead: 20, span: '14-3' },
  { size: '2x12', dead: 20, span: '16-6' },
])('DF-L $size at 16 in, $dead psf dead spans $span — references 8.7', ({ size, dead, span }) => {
  const floor = {
    section: section(size),
    lumber: lumber('dfl'),
    spacingMm: 16 * IN,
    liveKpa: 40 * PSF_KPA,
    deadKpa: dead * PSF_KPA,
    limit: 360,
  }
  expect(Math.abs(longestSpanMm(floor).spanMm / IN - inches(span))).toBeLessThan(0.5)
})

// Structural lumber table, references 8.1.
test.each([
  { size: '2x8', s: 13.14, i: 47.63 },
  { size: '2x10', s: 21.39, i: 98.93 },
  { size: '2x12', s: 31.64, i: 177.98 },
])('$size has S $s in³ and I $i in⁴ — references 8.1', ({ size, s, i }) => {
  expect(sectionModulusMm3(section(size)) / IN ** 3).toBeCloseTo(s, 2)
  expect(Math.abs(momentOfInertiaMm4(section(size)) / IN ** 4 - i)).toBeLessThanOrEqual(0.006)
})

// References 8.8 to 8.10, beam formula.
test.each([
  { size: '2x10', species: 'dfl', feet: 12, psf: 40, sag: 0.1572, ratio: 916 },
  { size: '2x10', species: 'dfl', feet: 12, psf: 50, sag: 0.1965, ratio: 733 },
  { size: '2x10', species: 'dfl', feet: 14, psf: 40, sag: 0.2912, ratio: 577 },
  { size: '2x10', species: 'dfl', feet: 14, psf: 60, sag: 0.4368, ratio: 385 },
  { size: '2x8', species: 'dfl', feet: 12, psf: 40, sag: 0.3265, ratio: 441 },
  { size: '2x10', species: 'spf', feet: 15 + 5 / 12, psf: 40, sag: 0.4894, ratio: 378 },
])('$size $species, $feet ft, $psf psf sags $sag in, L/$ratio — references 8.8 to 8.10', (row) => {
  const mm = deflectionMm(section(row.size), lumber(row.species).eMpa, 16 * IN, row.feet * FT, row.psf * PSF_KPA)
  expect(mm / IN).toBeCloseTo(row.sag, 4)
  expect(Math.round((row.feet * FT) / mm)).toBe(row.ratio)
})

const FIFTEEN_FEET: JoistFloor = {
  section: section('2x10'),
  lumber: lumber('spf'),
  spacingMm: 16 * IN,
  spanMm: 15 * FT,
  liveKpa: 40 * PSF_KPA,
  deadKpa: 20 * PSF_KPA,
  limit: 360,
}

test('2x10 SPF at 16 in over 15 ft is stiff enough and yet fails in bending — references 13.7', () => {
  const judged = judgeJoists(FIFTEEN_FEET)
  if (!judged.ok) throw new Error('refused')
  expect(judged.value.deflectionMm / IN).toBeCloseTo(0.439, 3)
  expect(Math.round(judged.value.ratio)).toBe(410)
  expect(judged.value.stressMpa / PSI_MPA).toBeCloseTo(1262, 0)
  expect(judged.value.allowedMpa / PSI_MPA).toBeCloseTo(1107, 0)
  expect(judged.value).toMatchObject({ stiffEnough: true, strongEnough: false, governs: 'bending' })
})

test('the same joists fail for stone at L/720', () => {
  const judged = judgeJoists({ ...FIFTEEN_FEET, spanMm: 12 * FT, limit: 720 })
  expect(judged.ok && judged.value.stiffEnough).toBe(judged.ok && judged.value.ratio >= 720)
})

/** Integrates EI y'' = M(x) twice by the trapezium rule, with both ends held. */
function sagByIntegration(loadNPerMm: number, spanMm: number, eiNmm2: number): number {
  const n = 4000
  const h = spanMm / n
  const slope = [0]
  const sag = [0]
  const moment = (x: number) => (loadNPerMm * x * (spanMm - x)) / 2
  for (let i = 1; i <= n; i += 1) {
    slope.push(slope[i - 1]! + (h * (moment((i - 1) * h) + moment(i * h))) / 2 / eiNmm2)
    sag.push(sag[i - 1]! + (h * (slope[i - 1]! + slope[i]!)) / 2)
  }
  const drift = sag[n]! / n
  return Math.max(...sag.map((y, i) => drift * i - y))
}

test('deflection agrees with a numerical integration of the beam equation', () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...table.sections),
      fc.double({ min: 200, max: 700, noNaN: true }),
      fc.double({ min: 1000, max: 7000, noNaN: true }),
      fc.double({ min: 0.5, max: 6, noNaN: true }),
      (size, spacingMm, spanMm, loadKpa) => {
        const eMpa = lumber('spf').eMpa
        const expected = sagByIntegration((loadKpa * spacingMm) / 1000, spanMm, eMpa * momentOfInertiaMm4(size))
        expect(deflectionMm(size, eMpa, spacingMm, spanMm, loadKpa) / expected).toBeCloseTo(1, 5)
      },
    ),
    { numRuns: 60 },
  )
})

test('stress is the bending moment at midspan over the section', () => {
  // By hand: 60 psf x 16 in = 80 lb/ft; 80 x 15² / 8 = 2250 lb ft = 27,000 lb in; / 21.39 = 1262 psi.
  expect(bendingStressMpa(section('2x10'), 16 * IN, 15 * FT, 60 * PSF_KPA) / PSI_MPA).toBeCloseTo(1262.2, 0)
})

test('a species or grade without confirmed values is refused', () => {
  expect(lumberFor(table.species, 'spf', '2').ok).toBe(true)
  for (const [species, grade] of [
    ['spf', '3'],
    ['hem-fir', '2'],
    ['unknown', '2'],
  ])
    expect(lumberFor(table.species, species!, grade!)).toMatchObject({
      ok: false,
      problem: { code: 'unknown-material' },
    })
})

test.each([
  { spacingMm: 0 },
  { spanMm: Number.NaN },
  { liveKpa: -1 },
  { deadKpa: Number.POSITIVE_INFINITY },
  { limit: 1 },
])('%j is out of range', (change) => {
  expect(judgeJoists({ ...FIFTEEN_FEET, ...change })).toMatchObject({ ok: false, problem: { code: 'out-of-range' } })
})
