/** The shipped figures, taken through the formulas, against what the trade reports for whole jobs. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { cure } from '../src/core/cure.ts'
import { groutNeed, jointVolumeLPerM2 } from '../src/core/grout.ts'
import { bedParts, mortarNeed } from '../src/core/mortar.ts'
import { notchOf } from '../src/core/trowel.ts'
import { bedInput, cureLimits, groutPowder, PATTERNS, patternShares, potLifeInput, yielding } from '../src/practice.ts'
import { materialOf, SETTINGS_FILES, settingsFrom, usualPack } from '../src/settings.ts'
import { FT2, good, IN } from './core/checks.ts'

const folder = path.resolve(import.meta.dirname, '../config')
const settings = settingsFrom(
  Object.fromEntries(
    Object.values(SETTINGS_FILES).map((f) => [f, JSON.parse(readFileSync(path.join(folder, f), 'utf8'))]),
  ),
)
const mortar = materialOf(settings, 'mortar', 'large-format-mortar')!

describe('bags with the shipped figures', () => {
  // Derived coverage per 50 lb bag [ft2], no skim upright to 1 mm skim: 1/2 in 26 to 42, 1/4 x 3/8 33 to 56.
  test.each([
    [195, 0.5, 0.5, true, 26, 42],
    [195, 0.5, 0.5, false, 30, 42],
    [210, 0.25, 0.375, true, 33, 56],
    [210, 0.25, 0.375, false, 40, 56],
  ])('%d ft2 with %d x %d in, back-buttered %s: %d to %d ft2 a bag', (area, width, depth, butter, least, most) => {
    const notch = good(notchOf('square', width * IN, depth * IN, width * IN))
    const { bedMm } = good(bedParts(bedInput(settings, notch, butter, 0)))
    const waste = settings.practice.mortar.wasteShare.value
    const need = good(mortarNeed(area * FT2, bedMm, yielding(mortar, usualPack(mortar, 'imperial')), waste))
    expect(need.bagsToBuy).toBeGreaterThanOrEqual(area / most)
    expect(need.bagsToBuy).toBeLessThanOrEqual(Math.ceil(area / least))
  })
})

test('sanded grout, 300 x 600 at 3 mm, 10 deep: 0.24 kg/m2 at 1.6 kg/l, from memory', () => {
  const grout = materialOf(settings, 'grout', settings.defaults.grout.sanded)!
  const powder = groutPowder(settings, grout, usualPack(grout, 'metric'))
  const volume = good(jointVolumeLPerM2({ lengthMm: 600, widthMm: 300, jointMm: 3 }, 10))
  const perM2 = good(groutNeed(volume, { ...powder, wasteShare: 0 })).kg.usual
  expect(perM2).toBeCloseTo(0.24, 6)
})

test('every mixed material has what a wait and a mix need', () => {
  let seen = 0
  for (const material of Object.values(settings.materials)) {
    const limits = cureLimits(settings, material)
    expect(limits.coldC).toBeLessThan(limits.minC)
    if (material.kind !== 'mortar' && material.kind !== 'grout') continue
    seen++
    const { waits, setting, referenceC } = material
    const history = { kind: 'constant', c: 13 } as const
    const answer = good(cure<string>({ waits, setting, referenceC, history, longest: false, limits }))
    expect(answer.lengthened).toBe(setting === 'cement')
    expect(potLifeInput(settings, material) === null).toBe(material.potLifeMin === null)
  }
  expect(seen).toBeGreaterThan(5)
})

test('spares lie between 5 and 20 % for every pattern', () => {
  for (const pattern of PATTERNS) {
    const { spare, factor } = patternShares(settings, pattern)
    expect(spare.low).toBeGreaterThanOrEqual(0.05)
    expect(spare.high).toBeLessThanOrEqual(0.2)
    expect(factor.usual).toBeGreaterThanOrEqual(1)
  }
})
