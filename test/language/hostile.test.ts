/** Hostile and broken messages: a clear answer or a typed problem, never an exception, never a wrong shape. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { PROBLEMS } from '../../src/problem.ts'
import type { Reply } from '../../src/reply.ts'
import { ask, Crew } from '../support/crew.ts'
import { CORPUS } from './en/corpus.ts'

const said = CORPUS.flatMap(([, ...messages]) => messages)

function sound(reply: Reply): void {
  expect(reply.answer.trim()).not.toBe('')
  if (reply.ok) {
    expect(reply.problem).toBeNull()
    for (const [key, value] of Object.entries(reply.values)) {
      expect(key).toMatch(/^[a-z][a-z0-9_]*$/)
      if (typeof value === 'number') expect(Number.isFinite(value), key).toBe(true)
    }
    expect(reply.answer).not.toMatch(/NaN|undefined|Infinity|\{[a-z]/)
  } else {
    expect(Object.keys(PROBLEMS)).toContain(reply.problem?.code)
    expect(reply.values).toEqual({})
    const at = reply.problem?.at
    if (at) expect(at[0]).toBeLessThanOrEqual(at[1])
  }
}

test.each([
  '',
  '     ',
  '0x12 room 12x24',
  '-5 x 10 room 12x12',
  '1e99 x 12, 12x12',
  '1/0 x 12 room',
  '9^9^9 room 12x12',
  '__proto__',
  'constructor x toString 12x12',
  '<script>alert(1)</script>',
  "'; DROP TABLE jobs; --",
  '\u0000\u0001\u0007 12x14',
  '\u202e41x21 mta',
  '\ud800 12x14',
  '🙂🙂🙂',
  '10x10 minus 20x20, 12x12 tile, how many',
  '12x24 tile 15 inch joint 100 sf',
  '0x0',
  '99999999999999999999 x 2',
  '12x14x16x18x20x22',
  '10000000 ft x 10000000 ft 1x1 tile',
])('%j is answered soundly', (text) => sound(ask(text)))

test.each([
  ['0x12 room 12x24', 'out-of-range'],
  ['-5 x 10 room 12x12', 'not-a-number'],
  ['1e99 x 12, 12x12', 'not-a-number'],
  ['1/0 x 12 room', 'not-a-number'],
  ['10x10 minus 20x20, 12x12 tile, how many', 'nothing-left'],
  ['12x24 tile 15 inch joint 100 sf', 'out-of-range'],
  ['how many tiles for 10x12', 'question'],
  ['', 'empty'],
  ['x'.repeat(7000), 'too-long'],
  ['blargh blargh', 'not-understood'],
] as const)('%s is refused as %s', (text, code) => expect(ask(text).problem?.code).toBe(code))

test('a problem points at what was not understood', () => {
  const text = 'room is 1e99 x 12, 12x12 tile'
  const at = ask(text).problem?.at
  expect(at && text.slice(at[0], at[1])).toBe('1e99')
})

test('any text at all', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 300 }), (text) => sound(ask(text))),
    { numRuns: 400 },
  )
})

const mangled = fc
  .tuple(
    fc.constantFrom(...said),
    fc.array(
      fc.tuple(
        fc.nat(200),
        fc.constantFrom('', ' ', 'x', '0', '-', '/', "'", '"', '9', '.', ',', '%', 'less', '\n', '½'),
      ),
      { maxLength: 6 },
    ),
  )
  .map(([text, edits]) =>
    edits.reduce(
      (t, [at, put]) => t.slice(0, at % (t.length + 1)) + put + t.slice((at % (t.length + 1)) + (put === '' ? 1 : 0)),
      text,
    ),
  )

test('messages with letters lost, doubled and put in', () => {
  fc.assert(
    fc.property(mangled, (text) => sound(ask(text))),
    { numRuns: 800 },
  )
})

test('conversations in any order', () => {
  fc.assert(
    fc.property(
      fc.array(
        fc.constantFrom(
          ...said,
          'make it 3/16',
          'no its 11x14',
          'half that',
          'and grout?',
          'show the math',
          '15% extra',
          'drop the hall',
          'add the closet 3x4',
        ),
        { minLength: 2, maxLength: 8 },
      ),
      (messages) => {
        const crew = new Crew()
        for (const text of messages) sound(crew.say(text))
      },
    ),
    { numRuns: 150 },
  )
})
