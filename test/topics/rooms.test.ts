/** Rooms tiled differently in one job: each is counted, cut, grouted and drawn by its own tile, and changes mean the room meant. */
import { describe, expect, test } from 'vitest'
import { fold } from '../../src/jobs/fold.ts'
import { emptyMemory } from '../../src/jobs/memory.ts'
import { tilings } from '../../src/room-tiles.ts'
import { ask, Crew } from '../support/crew.ts'

const SHOP = '10x13 shop floor, 18x18, 1/8 joint'
const MUDROOM = '8x12 mudroom, 8x48, 1/8 joint'

/** Both rooms told in one channel, one after the other. */
function bakery(): Crew {
  const crew = new Crew()
  crew.say(SHOP)
  crew.say(MUDROOM)
  return crew
}

const tilesIn = (crew: Crew) =>
  tilings(crew.memory.facts).map((f) => ({
    rooms: (f.rooms ?? []).map((r) => r.name),
    tile: f.tile && [f.tile.widthMm / 25.4, f.tile.lengthMm / 25.4].map((n) => Math.round(n * 100) / 100).join('x'),
    jointMm: f.jointMm === undefined ? undefined : Math.round(f.jointMm * 100) / 100,
    pattern: f.pattern?.name,
  }))

/** What each room takes when it is asked by itself. */
const alone = { shop: ask(SHOP), mudroom: ask(MUDROOM) }

describe('a tile for each room', () => {
  test.each([
    ['in one channel, one after the other', () => bakery().say('how many tiles in all')],
    ['in one message, led in', () => ask('shop floor 10x13 in 18x18 and mudroom 8x12 in 8x48 planks, 1/8 joint')],
    ['in one message, bare', () => ask('shop floor 10x13 18x18, mudroom 8x12 8x48, 1/8 joint')],
    ['without a comma', () => ask('10x13 shop floor 18x18 8x12 mudroom 8x48 1/8 joint')],
    ['the tile first', () => ask('18x18 on the 10x13 shop floor, 8x48 on the 8x12 mudroom, 1/8 joint')],
    ['a name nobody knows', () => ask('shop 10x13 18x18, mudrm 8x12 8x48, 1/8 joint')],
    ['in Spanish', () => ask('tienda 10x13 con 18x18 y entrada 8x12 con 8x48, junta de 1/8')],
  ])('%s: the counts of both rooms, each in its own', (_, asked) => {
    const { values, ok } = asked()
    expect(ok).toBe(true)
    for (const key of ['tile_cells', 'tile_whole', 'tile_cut', 'tile_count', 'area_m2', 'joint_length_m'])
      expect(values[key], key).toBeCloseTo(
        (alone.shop.values[key] as number) + (alone.mudroom.values[key] as number),
        6,
      )
    expect(values['smallest_cut_mm']).toBeCloseTo(
      Math.min(alone.shop.values['smallest_cut_mm'] as number, alone.mudroom.values['smallest_cut_mm'] as number),
      6,
    )
    expect(values['tile_length_mm']).toBeUndefined()
  })

  test('the first line names each size with its room', () => {
    const { answer } = bakery().say('how many tiles in all')
    expect(answer).toBe(
      `${alone.shop.values['tile_count']} tiles of 18x18 (shop floor), ${alone.mudroom.values['tile_count']} tiles of 8x48 (mudroom), 10 % spares in.`,
    )
  })

  test('grout goes by each room’s own joints, and tells them room by room', () => {
    const told = bakery().say('how much grout')
    const kg = (alone.shop.values['grout_kg'] as number) + (alone.mudroom.values['grout_kg'] as number)
    expect(told.values['grout_kg']).toBeCloseTo(kg, 6)
    expect(told.details.join('\n')).toMatch(/By room: shop floor \d\S* lb, mudroom \d\S* lb/)
  })

  test('two kinds of grout are told apart by the joint of each room', () => {
    const crew = new Crew()
    crew.say('shop floor 10x13 18x18 3/16 joint, mudroom 8x12 8x48 1/16 joint')
    const told = crew.say('how much grout')
    expect(told.answer).toMatch(/^shop floor 10' x 13': .*sanded grout/)
    expect(told.details.join('\n')).toMatch(/mudroom 8' x 12': .*unsanded grout/)
  })

  test('mortar goes by each room’s own trowel', () => {
    const crew = new Crew()
    crew.say('shop floor 10x13 in 18x18, mudroom 8x12 in 4x8')
    const told = crew.say('how much mortar')
    const shop = ask('how much mortar for a 10x13 shop floor, 18x18 tile').values
    const mudroom = ask('how much mortar for a 8x12 mudroom, 4x8 tile').values
    const text = [told.answer, ...told.details].join('\n')
    expect(told.values['mortar_kg']).toBeCloseTo((shop['mortar_kg'] as number) + (mudroom['mortar_kg'] as number), 6)
    expect(text).toMatch(/18x18/)
    expect(text).toMatch(/4x8/)
  })

  test('rooms of one tile are told by room too', () => {
    const crew = new Crew()
    crew.say('10x13 shop floor and 8x12 mudroom, 18x18')
    expect(crew.say('how much mortar').details.join('\n')).toMatch(/By room: shop floor \d\.\d, mudroom \d\.\d bags/)
  })

  test('clips add up, the layout tells and draws each room', () => {
    const crew = bakery()
    const clips = crew.say('how many clips').values['clips'] as number
    const each = [SHOP, MUDROOM].map((room) => ask(`how many clips for ${room}`).values['clips'] as number)
    expect(clips).toBe(each[0] + each[1])
    const layout = crew.say('layout')
    expect(layout.answer).toMatch(/^shop floor 10' x 13': First lines/)
    expect(layout.details.join('\n')).toMatch(/mudroom 8' x 12': First lines/)
    expect(layout.files.map((f) => f.name)).toEqual(['layout-1.svg', 'layout-2.svg', 'cut-list.csv'])
    expect(layout.files[2].text).toMatch(/shop floor[\s\S]*mudroom/)
  })

  test('an order has a line for each size of tile', () => {
    const { files } = bakery().say('order list')
    const csv = files.find((f) => f.media_type === 'text/csv')?.text ?? ''
    expect(csv).toMatch(/18x18/)
    expect(csv).toMatch(/8x48/)
  })

  test('the job tells each room with its tile, and what it takes of each', () => {
    const told = bakery().say('what do we have so far')
    expect(told.answer).toContain("shop floor 10' x 13' (18x18 tile, 1/8 in joint)")
    expect(told.answer).toContain("mudroom 8' x 12' (8x48 tile, 1/8 in joint)")
    expect(told.details.join('\n')).toContain('70 tiles of 18x18, 40 tiles of 8x48')
  })
})

describe('what a change means', () => {
  test('the room asked about last', () => {
    const crew = bakery()
    crew.say('make it 3/16')
    expect(tilesIn(crew)).toEqual([
      { rooms: ['shop floor'], tile: '18x18', jointMm: 3.18, pattern: undefined },
      { rooms: ['mudroom'], tile: '8x48', jointMm: 4.76, pattern: undefined },
    ])
  })

  test('a question of one room makes it the one that is meant', () => {
    const crew = bakery()
    const told = crew.say('how much grout for the shop floor?')
    expect(told.values['area_m2']).toBeCloseTo(130 * 0.09290304, 6)
    expect(told.values['joint_length_m']).toBeCloseTo(alone.shop.values['joint_length_m'] as number, 6)
    crew.say('make it 3/16')
    expect(tilesIn(crew).map((t) => t.jointMm)).toEqual([4.76, 3.18])
    expect(crew.memory.facts.rooms).toHaveLength(2)
  })

  test.each([
    ['mudroom in herringbone', [undefined, 'herringbone']],
    ['shop floor diagonal', ['diagonal', undefined]],
    ['both diagonal', ['diagonal', 'diagonal']],
  ])('%s', (said, patterns) => {
    const crew = bakery()
    crew.say(said)
    expect(tilesIn(crew).map((t) => t.pattern)).toEqual(patterns)
  })

  test('with one tile all rooms', () => {
    const crew = new Crew()
    crew.say('10x13 shop floor, 18x18')
    crew.say('8x12 mudroom')
    crew.say('how much grout for the mudroom?')
    crew.say('make it 3/16')
    expect(tilesIn(crew)).toEqual([
      { rooms: ['shop floor', 'mudroom'], tile: '18x18', jointMm: 4.76, pattern: undefined },
    ])
  })

  test('a tile told for rooms that had none is for all of them; told for each by name, for each', () => {
    const crew = new Crew()
    crew.say('10x13 shop floor')
    crew.say('8x12 mudroom')
    crew.say('18x18')
    expect(tilesIn(crew).map((t) => t.tile)).toEqual(['18x18'])
    crew.say('shop floor in 12x24, mudroom in 8x48')
    expect(tilesIn(crew).map((t) => t.tile)).toEqual(['12x24', '8x48'])
  })

  test('one more room goes by the tile told last; boxes stay with their tile', () => {
    const crew = new Crew()
    crew.say('10x13 shop floor, 18x18, 10 per box')
    crew.say('8x12 mudroom, 8x48')
    expect(crew.memory.facts.boxTiles).toBeUndefined()
    crew.say('add a 4x6 hall')
    expect(tilesIn(crew)).toMatchObject([
      { rooms: ['shop floor'], tile: '18x18' },
      { rooms: ['mudroom', 'hall'], tile: '8x48' },
    ])
  })

  test('a room measured again keeps its tile, and undo takes a tile back from one room', () => {
    const crew = bakery()
    crew.say('no the shop floor is 10x14')
    expect(tilesIn(crew)).toMatchObject([
      { rooms: ['shop floor'], tile: '18x18' },
      { rooms: ['mudroom'], tile: '8x48' },
    ])
    crew.say('mudroom in 12x24')
    crew.say('undo')
    expect(tilesIn(crew).map((t) => t.tile)).toEqual(['18x18', '8x48'])
  })

  test('one more room in the same tile is added to the job', () => {
    const crew = new Crew()
    crew.say('10x13 kitchen 12x24')
    crew.say('hall 4x16 same tile')
    expect(tilesIn(crew)).toMatchObject([{ rooms: ['kitchen', 'hall'], tile: '12x24' }])
  })

  test('in Spanish', () => {
    const crew = new Crew()
    crew.say('tienda de 10x13, loseta de 18x18, junta de 1/8')
    crew.say('entrada de 8x12, loseta de 8x48')
    crew.say('la entrada en espiga')
    expect(tilesIn(crew).map((t) => [t.tile, t.pattern])).toEqual([
      ['18x18', undefined],
      ['8x48', 'herringbone'],
    ])
    crew.say('las dos con junta de 3/16')
    expect(tilesIn(crew).map((t) => t.jointMm)).toEqual([4.76, 4.76])
  })
})

test('jobs stored before rooms had tiles of their own fold as they did', () => {
  const facts = {
    rooms: [{ name: 'shop floor', count: 1, pieces: [{ sign: 1, lengthMm: 3048, widthMm: 3962 }] }],
    jointMm: 3,
  }
  const entry = (version: number, body: unknown) =>
    ({
      kind: 'facts',
      version,
      body,
      at: '2026-03-10T16:30:00Z',
      person: 'lead',
      messageId: `m${version}`,
      part: 0,
    }) as const
  for (const [version, body] of [
    [1, facts],
    [2, { facts }],
    [3, { facts }],
  ] as const)
    expect(fold(emptyMemory, entry(version, body)).facts).toEqual(facts)
})

test.each(['10x13 shop floor 18x18 dark picture', 'plano oscuro de 10x13 con 18x18'])(
  '%s is drawn on black',
  (text) => {
    const page = (said: string) =>
      /<rect width="800" height="\d+" fill="(#\w+)"/.exec(ask(said).files[0].text ?? '')?.[1]
    expect(page(text)).toBe('#0c1014')
    expect(page('10x13 shop floor 18x18 picture')).toBe('#ffffff')
  },
)
