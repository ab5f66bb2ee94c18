/** Columns of a terminal. Widths: Unicode Standard Annex 11 (East Asian Width), checked on characters whose class it names. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { inert, widthOf, wrap } from '../../../adapters/terminal/wrap.ts'

describe('columns a text takes', () => {
  test.each([
    ['10x13 shop floor', 16, 'one for each letter'],
    ['½ × 3⁄16', 8, 'signs of the trade are narrow'],
    ['señor', 5, 'an accent of its own'],
    ['sen\u0303or', 5, 'an accent that joins'],
    ['漢字', 4, 'wide ideographs'],
    ['한국', 4, 'wide syllables'],
    ['\u1112\u1161\u11ab', 2, 'a syllable in parts'],
    ['ＡＢ', 4, 'fullwidth letters'],
    ['👍', 2, 'a picture'],
    ['👍🏽', 2, 'a picture with a skin tone'],
    ['👩‍🔧', 2, 'pictures joined to one'],
    ['a\u200bb', 2, 'a space of no width'],
    ['', 0, 'nothing'],
  ])('%j takes %i: %s', (text, width) => {
    expect(widthOf(text)).toBe(width)
  })
})

test('a line is broken at spaces, and set in by two from the second on', () => {
  expect(wrap('five bags of mortar for the floor, six to be safe', 24)).toEqual([
    'five bags of mortar for',
    '  the floor, six to be',
    '  safe',
  ])
  expect(wrap('a line that fits', 80)).toEqual(['a line that fits'])
  expect(wrap('  no terminal:   never touched, however long it may be  ', null)).toEqual([
    '  no terminal:   never touched, however long it may be  ',
  ])
})

test('no line is wider than the terminal, and no character is lost or split', () => {
  const words = fc.array(
    fc.oneof(fc.string({ unit: 'grapheme', maxLength: 30 }), fc.constantFrom('漢字漢字', '18x18', '👩‍🔧👍')),
  )
  fc.assert(
    fc.property(words, fc.integer({ min: 4, max: 90 }), (parts, width) => {
      const text = parts.join(' ')
      const lines = wrap(text, width)
      for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width)
      const bare = (t: string) => t.replace(/ /g, '')
      expect(bare(lines.join(''))).toBe(bare(text))
    }),
  )
})

test('what could move the cursor or turn the text is taken out', () => {
  expect(inert('a\u001b[31mb\u0007\u202ec\u009b2Jd\re\nf')).toBe('a[31mbc2Jde\nf')
})
