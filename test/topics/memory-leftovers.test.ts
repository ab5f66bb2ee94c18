/** Whole messages that were once taken for something else: what they log, ask, keep and take back. */
import { describe, expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'

const SHOP = '10x13 shop floor, 18x18 tile'
const SQFT_M2 = 0.09290304
const LB_KG = 0.45359237

/** The talk's last reply. */
function talk(...said: string[]): { crew: Crew; last: ReturnType<Crew['say']> } {
  const crew = new Crew()
  const replies = said.map((text) => crew.say(text))
  return { crew, last: replies.at(-1) as ReturnType<Crew['say']> }
}

describe('mixing for an area', () => {
  test.each(['mix for 30 sf', 'mix enough for 30 sf', 'mix up for 30 sf'])('%s: powder and water for it', (said) => {
    const { crew, last } = talk(said)
    expect(last).toMatchObject({ ok: true, topic: 'mix' })
    expect(last.answer).toContain('30 sf')
    expect(crew.memory.facts.areaM2).toBeUndefined()
  })

  test('more than a bucket: the next batch first, then what all of it takes, in proportion', () => {
    const { last } = talk(SHOP, 'mix for 130 sf')
    const [, batchLb, batchSf] = /^Mix (\d+) lb .* next (\d+) sf/.exec(last.answer) ?? []
    const [, wholeLb] = /^All 130 sf take ([\d,]+) lb/.exec(last.details[0] ?? '') ?? []
    expect(Number(wholeLb) / 130 / (Number(batchLb) / Number(batchSf))).toBeCloseTo(1, 1)
    expect(last.values['mix_powder_kg']).toBeCloseTo(Number(batchLb) * LB_KG, 0)
  })
})

describe("the crew's own coverage", () => {
  test.each([
    'whats my coverage',
    'what are we getting',
    'what’s our coverage?',
    'cuál es nuestro rendimiento',
    'qué rinde mi bolsa',
  ])('%s: over all that was logged with its area', (said) => {
    const { last } = talk(SHOP, 'used 2 bags on 70 sf', 'used 1 bag on 35 sf', said)
    expect(last.topic).toBe('log')
    expect(last.values['mortar_coverage_m2_per_bag']).toBeCloseTo(35 * SQFT_M2, 6)
    expect(last.answer).toContain('35')
  })

  test('nothing logged: says how to', () => expect(talk('whats my coverage').last.answer).toMatch(/3 bags on 120 sf/))

  test.each([
    'coverage with a 1/2 notch',
    'what coverage do we need under stone',
    'whats my contact coverage supposed to be',
  ])('%s is no question of the log', (said) => expect(talk('used 2 bags on 70 sf', said).last.topic).not.toBe('log'))
})

test.each(['4.5 bags 190 total', '4.5 bags 190 all told', '4.5 bultos 190 en total'])(
  '%s: a log of bags and feet',
  (said) => {
    const { crew } = talk('24x20 shop floor, 18x18 tile', said)
    expect(crew.memory.job.uses).toMatchObject([{ stuff: 'mortar', bags: 4.5, total: true }])
    expect(crew.memory.job.uses[0]?.m2).toBeCloseTo(190 * SQFT_M2, 6)
  },
)

test.each(['drop 2 boxes off at 3', 'drop off 2 boxes at 3', 'dropping 4 boxes at 10'])('%s: no other box', (said) => {
  const { crew } = talk(`${SHOP}, 6 a box`, said)
  expect(crew.memory.facts.boxTiles).toBe(6)
  const fresh = talk(SHOP, said).crew
  expect(fresh.memory.facts.boxTiles).toBeUndefined()
})

test('a box told with its per is still that', () => {
  expect(talk(SHOP, '12 boxes at 8 a box').crew.memory.facts.boxTiles).toBe(8)
})

test.each([
  ['contact 80% on a floor', 'surface temp 55F', 55],
  ['is 92% contact good', 'surface temp is 58', 58],
  ['¿está bien 80% de contacto?', 'temperatura de la superficie 13C', 55.4],
])('%s, then %s: a reading of the slab', (asked, said, f) => {
  const { crew, last } = talk(asked, said)
  expect(['job', 'log']).toContain(last.topic)
  expect(crew.memory.facts.siteSlabC).toBeCloseTo(((f - 32) * 5) / 9, 6)
  expect(crew.memory.job.readings).toMatchObject([{ what: 'slab', text: said }])
})

describe('a mark', () => {
  test('is taken back by undo, and the tile before it stays', () => {
    const { crew, last } = talk(SHOP, 'mark this as prep', 'undo')
    expect(last.answer).toBe('Undone: the mark “prep”.')
    expect(crew.memory.job.points).toEqual([])
    expect(crew.memory.facts.tile).toBeDefined()
    crew.say('undo')
    expect(crew.memory.facts.tile).toBeUndefined()
  })

  test('set again over its like: undo brings the first back', () => {
    const { crew } = talk(SHOP, 'mark this as prep', 'make it 8x48', 'mark this as prep', 'undo')
    expect(crew.memory.job.points.map((p) => p.facts.tile?.lengthMm)).toEqual([18 * 25.4])
  })

  test('in Spanish', () =>
    expect(talk(SHOP, 'marca esto como base', 'deshacer').last.answer).toMatch(/la marca “base”/))
})

test.each([
  ['2 extra boxes', /^With 2 extra boxes: (\d+) to order/],
  ['add 3 boxes extra', /^With 3 extra boxes: (\d+) to order/],
  ['1 extra box', /^With 1 extra box: (\d+) to order/],
  ['2 cajas extra', /^Con 2 cajas de más: pide (\d+)/],
])('%s: on top of what the floor takes', (said, line) => {
  const { crew, last } = talk(`${SHOP}, 6 a box`, said)
  const extra = Number(/\d/.exec(said)?.[0])
  expect(Number(line.exec(last.details[0] ?? '')?.[1])).toBe(Number(last.values['tile_boxes']) + extra)
  expect(crew.memory.facts.haveBoxes).toBeUndefined()
})

test('extra boxes of nobody knows how many tiles: asks for it', () => {
  expect(talk(SHOP, '2 extra boxes').last.details[0]).toMatch(/how many tiles a box holds/)
})

test.each([
  ['10x13 shop floor, 18x18 tile; 8x12 wash-up', 'whats in wash-up', 96],
  ['tienda de 10x13, bodega de 8x12, loseta 18x18', 'qué hay en la bodega', 96],
])('%s, %s: that room of the job', (floor, said, sqft) => {
  const { last } = talk(floor, said)
  expect(last).toMatchObject({ ok: true, topic: 'tile' })
  expect(last.values['area_m2']).toBeCloseTo(sqft * SQFT_M2, 4)
})
