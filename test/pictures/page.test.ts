/** The page of a job: all of its words on one sheet, large enough to read, whatever it is given. */
import { createRequire } from 'node:module'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pngOf } from '../../adapters/pictures.ts'
import { textWidth } from '../../src/pictures/lettering.ts'
import { PAGE_SMALLEST, PAGE_TALLEST, PAGE_WIDTH, type Page, svgOfPage } from '../../src/pictures/page.ts'

const { Resvg } = createRequire(import.meta.url)('@resvg/resvg-js') as typeof import('@resvg/resvg-js')

const PAGE: Page = {
  title: 'Job record, corner bakery',
  under: 'As of Mar 10, 2026',
  sections: [
    {
      heading: 'Rooms',
      head: ['Room', 'Area', 'Tile'],
      rows: [
        ['shop floor', '480 sf', '18x18'],
        ['wash-up', '96 sf', '8x48'],
      ],
    },
    { heading: 'Readings', lines: ['RH 78', 'lot 4471'] },
    { heading: 'Empty', lines: [] },
  ],
  signatures: ['For the crew', 'For the owner'],
  date: 'Date',
  leftOut: (n) => `${n} earlier lines in the table`,
}

type Text = { x: number; y: number; size: number; anchor: string; words: string }
const textsOf = (svg: string): Text[] =>
  [
    ...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)" font-size="([\d.]+)"[^>]*text-anchor="(\w+)"[^>]*>([^<]*)</g),
  ].map(([, x, y, size, anchor, words]) => ({
    x: Number(x),
    y: Number(y),
    size: Number(size),
    anchor: anchor!,
    words: words!,
  }))
const heightOf = (svg: string): number => Number(/viewBox="0 0 \d+ (\d+)"/.exec(svg)![1])
const within = (svg: string): void => {
  for (const { x, y, size, anchor, words } of textsOf(svg)) {
    const width = textWidth(words, size)
    const [from, to] = anchor === 'end' ? [x - width, x] : [x, x + width]
    expect(from, words).toBeGreaterThanOrEqual(-1)
    expect(to, words).toBeLessThanOrEqual(PAGE_WIDTH + 1)
    expect(y, words).toBeLessThanOrEqual(heightOf(svg))
    expect(size).toBeGreaterThanOrEqual(PAGE_SMALLEST * 0.9 - 0.1)
  }
}

describe('a page', () => {
  test('has every word, headings of what is there, and a line for each to sign', () => {
    const svg = svgOfPage(PAGE)
    const words = textsOf(svg).map((t) => t.words)
    for (const word of ['Job record, corner bakery', 'shop floor', '480 sf', '8x48', 'RH 78', 'For the owner'])
      expect(words).toContain(word)
    expect(words).not.toContain('Empty')
    expect(words.filter((w) => w === 'Date')).toHaveLength(2)
    expect(svg.match(/<line /g)).toHaveLength(5)
    within(svg)
  })

  test('text is as large as one sheet takes: 14 points in print for a short one, 10 pixels on a phone of 390', () => {
    const [title] = textsOf(svgOfPage(PAGE))
    expect((title!.size / 1.5 / PAGE_WIDTH) * 390).toBeGreaterThan(10)
    expect((title!.size / 1.5 / PAGE_WIDTH) * 7.5 * 72).toBeGreaterThan(14)
  })

  test('a hundred readings stay on one sheet: the last ones, and how many are left out', () => {
    const lines = Array.from({ length: 100 }, (_, k) => `reading ${k + 1} of the shop floor, lifted one by the oven`)
    const svg = svgOfPage({ ...PAGE, sections: [PAGE.sections[0]!, { heading: 'Readings', lines }] })
    const words = textsOf(svg).map((t) => t.words)
    expect(heightOf(svg)).toBeLessThanOrEqual(PAGE_TALLEST + 1)
    expect(words.some((w) => w.startsWith('reading 100 '))).toBe(true)
    expect(words.some((w) => w.startsWith('reading 1 '))).toBe(false)
    const shown = words.filter((w) => /^reading \d+ /.test(w)).length
    expect(words).toContain(`${100 - shown} earlier lines in the table`)
    within(svg)
  })

  test('whatever it is given stays inside and is drawn', () => {
    const line = fc.string({ unit: 'binary', maxLength: 160 })
    const section = fc.oneof(
      fc.record({ heading: line, lines: fc.array(line, { maxLength: 40 }) }),
      fc.integer({ min: 1, max: 5 }).chain((n) =>
        fc.record({
          heading: line,
          head: fc.array(line, { minLength: n, maxLength: n }),
          rows: fc.array(fc.array(line, { minLength: n, maxLength: n }), { maxLength: 20 }),
        }),
      ),
    )
    fc.assert(
      fc.property(line, fc.array(section, { maxLength: 5 }), (title, sections) => {
        const svg = svgOfPage({ ...PAGE, title, sections })
        within(svg)
        expect(() => new Resvg(svg, { font: { loadSystemFonts: false } })).not.toThrow()
      }),
      { numRuns: 40 },
    )
  })

  test('a hostile word stays text', () => {
    const svg = svgOfPage({ ...PAGE, under: '</text><script>alert(1)</script>' })
    expect(svg).not.toContain('<script')
  })

  test('its PNG is as wide as it says, enough for print', () => {
    const png = pngOf(svgOfPage(PAGE))
    if (!png.ok) throw new Error(JSON.stringify(png.problem))
    expect(Buffer.from(png.value).readUInt32BE(16)).toBe(1500)
  })
})
