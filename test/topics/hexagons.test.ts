/** Hexagons and patterns of two sizes, from a message to its reply: laid, counted, cut, grouted, drawn. */
import { describe, expect, test } from 'vitest'
import { layLine } from '../../adapters/workbench/layout.ts'
import { ask, Crew } from '../support/crew.ts'

const FT = 304.8
const room = (lengthFt: number, widthFt: number) => [
  [0, 0],
  [lengthFt * FT, 0],
  [lengthFt * FT, widthFt * FT],
  [0, widthFt * FT],
]

describe('hexagons', () => {
  test.each(['10x13 shop floor, 8x8 hexagon tile', '10x13 shop floor, 8 in hex', 'piso de 10x13 con hexágono de 8x8'])(
    '%s: laid one by one',
    (said) => {
      const { values } = ask(said)
      // What area and module alone give, and what the walls add at most: every place the outline meets.
      const places = (130 * 0.09290304) / ((Math.sqrt(3) / 2) * 0.206375 ** 2)
      expect(values['tile_cells']).toBeGreaterThan(places)
      expect(values['tile_cells']).toBeLessThan(places + (2 * (10 + 13) * FT) / 178)
      expect((values['tile_whole'] as number) + (values['tile_cut'] as number)).toBe(values['tile_cells'])
      // Sides of hexagons: sqrt(3) times the way across a place, by the places.
      expect(values['joint_length_m']).toBeCloseTo((places * Math.sqrt(3) * 0.206375) / 1, -1)
    },
  )

  test('the reply names the posture and cuts a fresh tile for each', () => {
    const { details, values } = ask('10x13 shop floor, 8x8 hexagon tile, layout')
    expect(details.join('\n')).toMatch(/two sides run up and down the room/)
    expect(details.join('\n')).toMatch(/A fresh tile for each cut: \d+ tiles/)
    expect(values['tile_count']).toBe(
      Math.ceil(((values['tile_whole'] as number) + (values['tile_cut'] as number)) * 1.1 - 1e-9),
    )
  })

  test('7x8, across and tip to tip, is a hexagon of 7', () => {
    expect(ask('10x12 mudroom 7x8 hex tile').values['tile_cells']).toBe(
      ask('10x12 mudroom 7x7 hex tile').values['tile_cells'],
    )
  })

  test('small ones come by the sheet and stay counted by area', () => {
    expect(ask('10x13 shop floor, 2x2 hexagon').values['tile_cells']).toBeUndefined()
  })

  test('the picture has six corners a tile', () => {
    const { files } = ask('6x7 wash-up, 10x10 hexagon picture')
    expect(files[0].text).toMatch(/M(?:[\d.]+ [\d.]+L){5}[\d.]+ [\d.]+Z/)
  })
})

describe('two sizes', () => {
  test.each([
    ['10x13 shop floor 18x18 with 6x6 pinwheel', '18x18', '6x6'],
    ['shop floor 10x13, hopscotch 18x18 and 6x6', '18x18', '6x6'],
    ['10x13 shop floor, 6x6 insets with 18x18', '18x18', '6x6'],
    ['piso de 10x13, loseta 18x18 con 6x6 en rehilete', '18x18', '6x6'],
  ])('%s', (said, large, small) => {
    const { answer, values } = ask(said)
    expect(answer).toContain(large)
    expect(answer).toContain(small)
    // One large and one small take up 18 1/8 and 6 1/8 in square together.
    const pairs = (130 * 144) / (18.125 ** 2 + 6.125 ** 2)
    expect(values['tile_cells']).toBeGreaterThan(2 * pairs)
    expect(values['tile_cells']).toBeLessThan(2.6 * pairs)
  })

  test('without the small one’s size it is asked for, and the answer fills it in', () => {
    const crew = new Crew()
    expect(crew.say('10x13 shop floor, 18x18 tile, pinwheel').problem?.code).toBe('question')
    expect(crew.say('6x6').answer).toMatch(/18x18 and \d+ of 6x6/)
    expect(crew.memory.facts.tile?.lengthMm).toBeCloseTo(457.2, 6)
  })

  test('a bare area takes as many of one as of the other', () => {
    const { answer } = ask('300 sf of 12x12 with 4x4 pinwheel')
    // 300 ft2 by 12 1/8 and 4 1/8 in square: 263.4 pairs, 15 % over.
    expect(answer).toMatch(/^303 tiles of 12x12 and 303 of 4x4/)
  })
})

describe('on the workbench', () => {
  const asked = { rings_mm: [room(10, 13)], tile_mm: [200, 200], joint_mm: 3 }
  const laid = (more: object) => layLine({ ...asked, ...more }) as { ok: boolean; value: Record<string, number> }

  test('hexagon', () => {
    const { ok, value } = laid({ pattern: 'hexagon' })
    expect(ok).toBe(true)
    expect(value['tile_cells']).toBe(value['tile_whole'] + value['tile_cut'])
  })

  test('two-size tells both sizes apart, and asks for the small one', () => {
    const { value } = laid({ pattern: 'two-size', small_mm: 100 }) as unknown as {
      value: { by_size: { whole: number; cut: number }[]; tile_whole: number }
    }
    expect(value.by_size).toHaveLength(2)
    expect(value.by_size[0].whole + value.by_size[1].whole).toBe(value.tile_whole)
    expect(laid({ pattern: 'two-size' }).ok).toBe(false)
    expect(laid({ pattern: 'two-size', small_mm: 300 }).ok).toBe(false)
  })
})
