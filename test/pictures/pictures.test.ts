import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import path from 'node:path'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { pngLater, pngOf } from '../../adapters/pictures.ts'
import type { Drawing } from '../../src/pictures/drawing.ts'
import { plainFloor } from '../../src/pictures/plain.ts'
import { svgOf } from '../../src/pictures/svg.ts'
import { PALETTES } from '../../src/pictures/theme.ts'
import { ask } from '../support/crew.ts'
import { bakehouse, mudroom, shop, washUp } from './rooms.ts'

const { Resvg } = createRequire(import.meta.url)('@resvg/resvg-js') as typeof import('@resvg/resvg-js')
const THEMES = ['light', 'dark'] as const
const PHONE_WIDTH = 390

const heightOf = (svg: string) => Number(/viewBox="0 0 \d+ (\d+)"/.exec(svg)![1])
const textsOf = (svg: string) =>
  [...svg.matchAll(/<text x="([\d.-]+)" y="([\d.-]+)" font-size="([\d.]+)"[^>]*>([^<]*)<\/text>/g)].map((m) => ({
    y: Number(m[2]),
    size: Number(m[3]),
    words: m[4]!,
  }))

function png(svg: string, width?: number): Uint8Array {
  const made = pngOf(svg, width)
  if (!made.ok) throw new Error(JSON.stringify(made.problem))
  return made.value
}

describe('the picture', () => {
  test.each([shop, mudroom, washUp, bakehouse])('$title: no text under 3 % of the height, all of it there', (room) => {
    const svg = svgOf(room)
    const texts = textsOf(svg)
    for (const { size } of texts) expect(size / heightOf(svg)).toBeGreaterThanOrEqual(0.03)
    const all = texts.map((t) => t.words).join(' ')
    for (const word of room.legend.flatMap((l) => l.text.split(' '))) expect(all).toContain(word)
    for (const { label } of room.walls) expect(texts.filter((t) => t.words === label).length).toBeGreaterThan(0)
    for (const { measured } of room.starts) expect(all).toContain(measured!.label)
    expect(all).toContain(room.scale.label)
  })

  test('whatever the room and the legend, text keeps its share and stays inside', () => {
    const drawing = fc
      .record({
        w: fc.integer({ min: 300, max: 40_000 }),
        h: fc.integer({ min: 300, max: 40_000 }),
        title: fc.string({ unit: 'binary', maxLength: 200 }),
        legend: fc.array(fc.lorem({ maxCount: 14 }), { maxLength: 12 }),
      })
      .map(({ w, h, title, legend }): Drawing => {
        const floor = [
          [0, 0],
          [w, 0],
          [w, h],
          [0, h],
        ] as const
        return { ...washUp, title, floor, tiles: [], walls: [], legend: legend.map((text) => ({ mark: 'cut', text })) }
      })
    fc.assert(
      fc.property(drawing, (room) => {
        const svg = svgOf(room)
        for (const { size, y } of textsOf(svg)) {
          expect(size / heightOf(svg)).toBeGreaterThanOrEqual(0.03)
          expect(y).toBeLessThanOrEqual(heightOf(svg))
        }
        expect(() => new Resvg(svg, { font: { loadSystemFonts: false } })).not.toThrow()
      }),
      { numRuns: 60 },
    )
  })

  test('a hostile name stays text', () => {
    const svg = svgOf({ ...washUp, title: '</text><script>alert(1)</script>&\u0000"\ud800' })
    expect(svg).not.toContain('<script')
    expect(() => new Resvg(svg, { font: { loadSystemFonts: false } })).not.toThrow()
  })

  // The contrast ratio of WCAG 2.2: text at level AAA (7:1), signs at 1.4.11 (3:1).
  test.each(THEMES)('%s: enough contrast', (theme) => {
    const p = PALETTES[theme]
    expect(contrast(p.ink, p.page)).toBeGreaterThanOrEqual(7)
    expect(contrast(p.start, p.page)).toBeGreaterThanOrEqual(7)
    for (const fill of [p.whole, p.cut]) {
      for (const sign of [p.start, p.movement])
        expect(contrast(sign, fill), `${sign} on ${fill}`).toBeGreaterThanOrEqual(3)
    }
    expect(contrast(p.door, p.page)).toBeGreaterThanOrEqual(4.5)
    expect(contrast(p.joint, p.whole)).toBeGreaterThanOrEqual(3)
    // Cuts are told by lightness and by their hatching, not by hue.
    expect(contrast(p.whole, p.cut)).toBeGreaterThanOrEqual(1.5)
    expect(contrast(p.hatch, p.cut)).toBeGreaterThanOrEqual(2.5)
  })

  test('a PNG as wide as asked; a broken picture is a problem, not a crash', () => {
    const bytes = Buffer.from(png(svgOf(shop), 390))
    expect(bytes.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]))
    expect(bytes.readUInt32BE(16)).toBe(390)
    expect(pngOf('<svg')).toMatchObject({ ok: false, problem: { code: 'internal' } })
  })

  test('the same PNG from another thread, and a rejection for a broken picture', async () => {
    expect(Buffer.from(await pngLater(svgOf(shop), 390))).toEqual(Buffer.from(png(svgOf(shop), 390)))
    await expect(pngLater('<svg')).rejects.toThrow()
  })
})

/** Pictures looked at once by eye, at phone size. UPDATE_GOLDEN=1 writes them anew: look again before keeping them. */
describe('golden', () => {
  const shown = [
    ['shop', shop, 'light'],
    ['shop', shop, 'dark'],
    ['mudroom', mudroom, 'dark'],
    ['wash-up', washUp, 'light'],
  ] as const
  test.each(shown)('%s, %#', (name, room, theme) => held(`${name}-${theme}`, svgOf(room, theme)))

  test.each([
    ['chat-diagonal', 'shop floor 10x13, 18x18 on the diagonal, picture'],
    [
      'chat-door',
      '12x14 less 3x5 island, 18x18, door is on the left wall, hide cuts on the top wall, full tiles at the door, picture',
    ],
  ])('%s', (name, text) => {
    const svg = ask(text).files.find((f) => f.media_type === 'image/svg+xml')?.text ?? ''
    expect(svg).toContain('line to snap')
    held(name, svg)
  })

  function held(name: string, svg: string): void {
    const file = path.join(import.meta.dirname, 'golden', `${name}.png`)
    const now = png(svg, PHONE_WIDTH)
    if (process.env['UPDATE_GOLDEN']) writeFileSync(file, now)
    expect(existsSync(file)).toBe(true)
    const [a, b] = [pixels(readFileSync(file)), pixels(now)]
    expect([b.width, b.height]).toEqual([a.width, a.height])
    let far = 0
    for (let i = 0; i < a.data.length; i++) if (Math.abs(a.data[i]! - b.data[i]!) > 48) far++
    expect(far / a.data.length).toBeLessThan(0.005)
  }
})

/** The pixels of a PNG, read by the renderer itself. */
function pixels(bytes: Uint8Array) {
  const file = Buffer.from(bytes)
  const [width, height] = [file.readUInt32BE(16), file.readUInt32BE(20)]
  const image = `<image width="${width}" height="${height}" href="data:image/png;base64,${file.toString('base64')}"/>`
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}">${image}</svg>`
  const drawn = new Resvg(svg, { font: { loadSystemFonts: false } }).render()
  return { width: drawn.width, height: drawn.height, data: drawn.pixels }
}

function contrast(a: string, b: string): number {
  const light = (hex: string) => {
    const [r, g, bl] = [1, 3, 5].map((i) => {
      const v = Number.parseInt(hex.slice(i, i + 2), 16) / 255
      return v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4
    })
    return 0.2126 * r! + 0.7152 * g! + 0.0722 * bl!
  }
  const [x, y] = [light(a), light(b)].sort((p, q) => q - p)
  return (x! + 0.05) / (y! + 0.05)
}

describe('plain characters', () => {
  test('walls, joints, cuts and start lines, no wider than asked', () => {
    const lines = plainFloor(shop, 60).split('\n')
    expect(Math.max(...lines.slice(1, -6).map((l) => l.length))).toBeLessThanOrEqual(60)
    const floor = lines.slice(1, -6).join('\n')
    for (const sign of ['#', '|', '_', '/', '*', 'x', 'D', '%', '=']) expect(floor, sign).toContain(sign)
    expect(lines.at(-6)).toContain('54 whole tiles')
  })

  test('the shape of an L shows', () => {
    const rows = plainFloor(washUp, 50).split('\n')
    expect(rows[1]!.length).toBeLessThan(rows.at(-4)!.length)
  })

  test('a name cannot steer the terminal', () => {
    expect(plainFloor({ ...washUp, title: 'a\u001b[2Jb\nc' })).toMatch(/^a \[2Jb c\n/)
  })

  test('whatever the floor, it is drawn', () => {
    const point = fc.tuple(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: -5000, max: 5000 }))
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 8 }), (floor) => {
        const text = plainFloor({ ...washUp, floor, tiles: [{ ring: floor, cut: true }], walls: [] }, 40)
        expect(
          Math.max(
            ...text
              .split('\n')
              .slice(1)
              .map((l) => l.length),
          ),
        ).toBeLessThanOrEqual(42)
      }),
    )
  })
})
