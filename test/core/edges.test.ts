/** Any number at all, infinities and NaN too, gives a finite answer or a problem: never an exception, never NaN. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { cure } from '../../src/core/cure.ts'
import {
  chooseGrout,
  groutCoverageM2PerBag,
  groutNeed,
  jointVolumeExactLPerM2,
  jointVolumeL,
  jointVolumeLPerM2,
} from '../../src/core/grout.ts'
import { batch, openTimeMin, potLifeMin, waterL } from '../../src/core/mix.ts'
import { bedParts, mortarNeed } from '../../src/core/mortar.ts'
import { exactly } from '../../src/core/spread.ts'
import { coverageFromUse, remaining } from '../../src/core/stock.ts'
import { tilesForArea, withSpares } from '../../src/core/tile.ts'
import { notchOf } from '../../src/core/trowel.ts'
import { layerKgPerM2, tilesKg } from '../../src/core/weight.ts'

type N = readonly number[]
const HOT = { hotC: 29.4, hotFactor: 0.5 }
const WATER = { low: 0.22, usual: 0.24, high: 0.26 }
const LIMITS = {
  coldC: 4.4,
  minC: 10,
  maxC: 32.2,
  slowC: 18.3,
  freezeC: 0,
  freezeHours: 24,
  activationLowK: 4000,
  activationHighK: 5000,
}
const POWDER = (n: N) => ({ powderKgPerJointL: exactly(1.6), bagKg: n[1]!, wasteShare: n[2]!, openDepthShare: 0.67 })
const WAITS = { grout: { h: 24, longestH: 48 } }
const KINDS = ['square', 'u', 'v'] as const

const FORMULAS: Readonly<Record<string, (n: N) => unknown>> = {
  notchOf: (n) => notchOf(KINDS[Math.abs(Math.trunc(n[3]!)) % 3] ?? 'u', n[0]!, n[1], n[2]),
  bedParts: (n) =>
    bedParts({
      notch: { shape: 'square', widthMm: 6, depthMm: 6, spaceMm: 6 },
      anglesDeg: { low: n[0]!, usual: n[1]!, high: n[2]! },
      skimMm: null,
      deepestGapMm: n[3]!,
      unevenFactor: exactly(0.5),
    }),
  mortarNeed: (n) => mortarNeed(n[0]!, exactly(n[1]!), { kg: 20, yieldL: n[2]! }, n[3]!),
  jointVolumeLPerM2: (n) => jointVolumeLPerM2({ lengthMm: n[0]!, widthMm: n[1]!, jointMm: n[2]! }, n[3]!),
  jointVolumeExactLPerM2: (n) => jointVolumeExactLPerM2({ lengthMm: n[0]!, widthMm: n[1]!, jointMm: n[2]! }, n[3]!),
  jointVolumeL: (n) => jointVolumeL(n[0]!, n[1]!, n[2]!),
  groutNeed: (n) => groutNeed(n[0]!, POWDER(n)),
  groutCoverageM2PerBag: (n) => groutCoverageM2PerBag(n[0]!, POWDER(n)),
  chooseGrout: (n) => chooseGrout(n[0]!, n[1]! > 0, { sandedFromMm: 3, coarseFromMm: 9.525 }),
  remaining: (n) => remaining(n[0]!, n[1]!, exactly(n[2]!)),
  coverageFromUse: (n) => coverageFromUse(n[0]!, n[1]!),
  waterL: (n) => waterL(n[0]!, WATER),
  potLifeMin: (n) =>
    potLifeMin(
      {
        sheetMin: exactly(60),
        referenceC: 21,
        setting: 'cement',
        activationLowK: 4000,
        activationHighK: 5000,
        hot: HOT,
      },
      n[0]!,
    ),
  openTimeMin: (n) => openTimeMin(exactly(20), { c: n[0]!, sunOrWind: false }, HOT),
  batch: (n) =>
    batch({
      areaLeftM2: n[0]!,
      paceM2PerH: n[1]!,
      potLifeMin: n[2]!,
      openTimeMin: n[3]!,
      consumptionLPerM2: n[4]!,
      yieldLPerKg: n[5]!,
      waterLPerKg: WATER,
    }),
  'cure, constant': (n) =>
    cure({
      waits: WAITS,
      setting: 'cement',
      referenceC: 21,
      history: { kind: 'constant', c: n[0]! },
      longest: false,
      limits: LIMITS,
    }),
  'cure, day and night': (n) =>
    cure({
      waits: WAITS,
      setting: 'cement',
      referenceC: 21,
      history: { kind: 'day-night', dayC: n[0]!, nightC: n[1]!, startMinute: 600 },
      longest: false,
      limits: LIMITS,
    }),
  'cure, list': (n) =>
    cure({
      waits: WAITS,
      setting: 'cement',
      referenceC: 21,
      history: {
        kind: 'list',
        steps: [
          { h: n[0]!, c: n[1]! },
          { h: n[2]!, c: n[3]! },
        ],
      },
      longest: false,
      limits: LIMITS,
    }),
  withSpares: (n) => withSpares(n[0]!, n[1]!),
  tilesForArea: (n) =>
    tilesForArea(
      n[0]!,
      { shape: 'rectangle', lengthMm: n[1]!, widthMm: n[2]!, jointMm: n[3]! },
      { patternFactor: 1, spareShare: n[4]!, box: { areaM2: n[5]! } },
    ),
  layerKgPerM2: (n) => layerKgPerM2(n[0]!, exactly(n[1]!)),
  tilesKg: (n) => tilesKg(n[0]!, 0.2, n[1]!, exactly(n[2]!)),
}

const anything = fc.oneof(
  fc.double(),
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.constantFrom(0, -0, 1, -1, 1e99, -1e99, Number.MIN_VALUE, Number.MAX_VALUE),
)

function numbersIn(value: unknown): number[] {
  if (typeof value === 'number') return [value]
  if (typeof value !== 'object' || value === null) return []
  return Object.values(value).flatMap(numbersIn)
}

describe('any numbers', () => {
  test.each(Object.entries(FORMULAS))('%s', (_, formula) =>
    fc.assert(
      fc.property(fc.array(anything, { minLength: 6, maxLength: 6 }), (n) => {
        const outcome = formula(n) as { ok: boolean; value: unknown }
        if (outcome.ok) for (const got of numbersIn(outcome.value)) expect(Number.isFinite(got)).toBe(true)
      }),
      { numRuns: 500 },
    ),
  )
})
