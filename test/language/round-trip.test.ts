/** What a reply prints parses back to the same quantity, and metric and imperial tellings of one thing agree. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { feetInches, inchFigure } from '../../src/language/format.ts'
import { hear } from '../../src/language/hear.ts'
import { ask, tools } from '../support/crew.ts'

const lexicon = tools.languages.lexicon('en')
const lengthOf = (text: string): number | null => hear(text, lexicon).quantities[0]?.si ?? null

test('feet and inches to the sixteenth', () => {
  fc.assert(
    fc.property(fc.integer({ min: 16 * 12, max: 16 * 12 * 200 }), (sixteenths) => {
      const mm = (sixteenths * 25.4) / 16
      expect(lengthOf(feetInches(mm))).toBeCloseTo(mm, 4)
    }),
  )
})

test('inches to the sixteenth', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 16 * 60 }), (sixteenths) => {
      const mm = (sixteenths * 25.4) / 16
      expect(lengthOf(`${inchFigure(mm)} in`)).toBeCloseTo(mm, 4)
    }),
  )
})

test('a room told in feet, in inches, in metres and in millimetres has one area', () => {
  fc.assert(
    fc.property(fc.integer({ min: 3, max: 60 }), fc.integer({ min: 3, max: 60 }), (a, b) => {
      const told = [
        `${a}' x ${b}' room`,
        `${a * 12}" x ${b * 12}" room`,
        `${(a * 0.3048).toFixed(4)} m x ${(b * 0.3048).toFixed(4)} m room`,
        `${(a * 304.8).toFixed(1)} mm x ${(b * 304.8).toFixed(1)} mm room`,
      ]
      for (const text of told) expect(Number(ask(`${text} area`).values['area_m2'])).toBeCloseTo(a * b * 0.09290304, 2)
    }),
    { numRuns: 60 },
  )
})

test('tile for an area is the same told in feet or metres', () => {
  fc.assert(
    fc.property(fc.integer({ min: 20, max: 900 }), (sf) => {
      const feet = ask(`${sf} sf of 12x24 1/8 joint how many`).values['tile_count']
      const metres = ask(`${(sf * 0.09290304).toFixed(6)} m2 of 304.8 x 609.6 mm tile 3.175 mm joint how many`).values[
        'tile_count'
      ]
      expect(metres).toBe(feet)
    }),
    { numRuns: 60 },
  )
})
