/** Numbers as they are told, held to Intl.NumberFormat (ECMA-402) of the machine, in every locale that ships and the made-up one. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LOCALES } from '../../src/language/all.ts'
import { figure } from '../../src/language/format.ts'
import { madeUp } from '../support/made-up-locale.ts'

const digits = fc.integer({ min: 0, max: 3 })
/** Figures as reckoned, and figures as people write them, halves among them. */
const amount = fc.oneof(
  fc.double({ min: -1e9, max: 1e9, noNaN: true }),
  fc.tuple(fc.integer({ min: -1e8, max: 1e8 }), fc.integer({ min: 0, max: 5 })).map(([n, places]) => n / 10 ** places),
  fc.double({ min: -1, max: 1, noNaN: true }),
)

describe.each([...LOCALES, madeUp])('$code', ({ intl, separators }) => {
  const formats = [0, 1, 2, 3].map((most) => new Intl.NumberFormat(intl, { maximumFractionDigits: most }))

  it('writes what Intl writes', () => {
    fc.assert(
      fc.property(amount, digits, (n, most) => {
        expect(figure(n, most, separators)).toBe(formats[most]!.format(n))
      }),
      { numRuns: 3000 },
    )
  })

  it.each([0, -0, 0.5, 1.5, 6.35, 1.005, 2.675, 999.995, 1000, 1234.5, 999_999.9, 1e6, -0.3, 1e-7, 123_456_789.125])(
    'writes %d',
    (n) => {
      for (const most of [0, 1, 2, 3]) expect(figure(n, most, separators)).toBe(formats[most]!.format(n))
    },
  )
})
