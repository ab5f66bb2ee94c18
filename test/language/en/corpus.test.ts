/** The English corpus: every wording of a meaning gives its figures. */
import { expect, test } from 'vitest'
import { ask } from '../../support/crew.ts'
import { CORPUS, type Meaning, NOT_ASKED } from './corpus.ts'

const SQFT = 0.09290304
const cases = CORPUS.flatMap(([means, ...said]) => said.map((text) => ({ text, means })))

/** What the contract's values must be, with how near: half a percent, or a range. */
function wanted(m: Meaning): Record<string, number | readonly [number, number]> {
  const sides = m.tileMm ?? m.tileIn?.map((n) => n * 25.4)
  return {
    ...(m.sf === undefined ? {} : { area_m2: m.sf * SQFT }),
    ...(m.m2 === undefined ? {} : { area_m2: m.m2 }),
    ...(m.perimeterFt === undefined ? {} : { perimeter_m: m.perimeterFt * 0.3048 }),
    ...(sides ? { tile_length_mm: Math.max(...sides), tile_width_mm: Math.min(...sides) } : {}),
    ...(m.thickIn === undefined ? {} : { tile_thickness_mm: m.thickIn * 25.4 }),
    ...(m.jointIn === undefined ? {} : { joint_mm: m.jointIn * 25.4 }),
    ...(m.jointMm === undefined ? {} : { joint_mm: m.jointMm }),
    ...(m.sparePct === undefined ? {} : { spare_pct: m.sparePct }),
    ...m.values,
  }
}

test.each(cases)('$text', ({ text, means }) => {
  const reply = ask(text)
  expect(reply.ok, reply.answer).toBe(true)
  if (means.topic) expect(reply.topic).toBe(means.topic)
  for (const [key, want] of Object.entries(wanted(means))) {
    const got = reply.values[key]
    expect(typeof got, `${key} of ${JSON.stringify(reply.values)}`).toBe('number')
    const [low, high] =
      typeof want === 'number' ? [want - Math.abs(want) * 0.005 - 1e-9, want + Math.abs(want) * 0.005 + 1e-9] : want
    expect(got, key).toBeGreaterThanOrEqual(low)
    expect(got, key).toBeLessThanOrEqual(high)
  }
})

test('at least 200 messages, none twice', () => {
  expect(cases.length).toBeGreaterThanOrEqual(200)
  expect(new Set(cases.map((c) => c.text)).size).toBe(cases.length)
})

test.each(NOT_ASKED)('“%s” gets no figures', (text) => {
  expect(Object.keys(ask(text).values)).toEqual([])
})
