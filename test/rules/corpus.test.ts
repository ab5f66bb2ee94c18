/** Questions of our own, read and settled without a job. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { RULE_CASES } from './corpus.ts'
import { readEnglish, settleEnglish } from './english.ts'

test('there are at least 120 of them, no two the same', () => {
  expect(RULE_CASES.length).toBeGreaterThanOrEqual(120)
  expect(new Set(RULE_CASES.map((c) => c.say)).size).toBe(RULE_CASES.length)
})

test.each(RULE_CASES)('$say', ({ say, rule, verdict }) => {
  const settled = settleEnglish(say)
  const ids = settled?.rules.map((r) => r.id) ?? []
  if (typeof rule === 'string') expect(ids).toEqual([rule])
  else expect(ids).toEqual(expect.arrayContaining([...rule]))
  expect(settled?.verdict ?? null).toBe(verdict)
})

test('any text at all is read without a throw', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 300 }), (text) => {
      expect(readEnglish(text).plain.length).toBeLessThanOrEqual(4 * text.length + 8)
      settleEnglish(text)
    }),
    { numRuns: 500 },
  )
})

test('questions cut, doubled and mixed are read without a throw', () => {
  const some = fc.constantFrom(...RULE_CASES.map((c) => c.say))
  fc.assert(
    fc.property(some, some, fc.nat(80), (a, b, at) => {
      settleEnglish(a.slice(at) + b.slice(0, at))
      settleEnglish(`${a} ${b}`)
    }),
    { numRuns: 500 },
  )
})
