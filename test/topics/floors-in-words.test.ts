/** Floors told in words, from the message to the reply: curves, parts outside a wall, bites and changes in the talk, units of
 *  bare figures, lettered walks, and outlines that are none. Areas and walls by hand, beside each message. */
import { describe, expect, test } from 'vitest'
import { replyText } from '../../src/speak.ts'
import { ask, Crew } from '../support/crew.ts'

const FT = 304.8
const SF = 0.09290304
const IN = 25.4
const { PI } = Math
// A segment 6 ft wide and 1.5 ft deep: r = 36 / 12 + 0.75 = 3.75 ft
const HALF_ANGLE = Math.asin(3 / 3.75)
const SEGMENT = 3.75 ** 2 * (HALF_ANGLE - Math.sin(HALF_ANGLE) * Math.cos(HALF_ANGLE))
const SEGMENT_ARC = 2 * 3.75 * HALF_ANGLE

const FLOORS: readonly [text: string, sf: number, walls: number][] = [
  // 120 less a circle of 3 ft: pi x 1.5²; the outer walls stay
  ['10x12 with a 3 ft round column in the middle, area', 120 - PI * 2.25, 44],
  ['10x12 w/ a round post 36 inches across, sq ft', 120 - PI * 2.25, 44],
  ['10x12 less a 3 ft circle, area', 120 - PI * 2.25, 44],
  ['10 x 12 round column 18 in dia centered 4 ft from the left 5 ft from the bottom area', 120 - PI * 0.5625, 44],
  ['12x14 less a round pillar 1 ft radius, area', 168 - PI, 52],
  ['12x14 with an oval 3x5 tub in the middle, area', 168 - PI * 1.5 * 2.5, 52],
  // half a circle 6 ft wide: pi x 9 / 2; the wall loses 6 and gains pi x 3
  ['half round bay 6 ft wide on the north wall of a 12x14, area', 168 + (PI * 9) / 2, 52 - 6 + PI * 3],
  ['12x14 with a half circle bay 6 ft wide on the east wall area', 168 + (PI * 9) / 2, 52 - 6 + PI * 3],
  ['12x14 less a half round hearth 4 ft wide on the left wall, area', 168 - PI * 2, 52 - 4 + PI * 2],
  ['12x14, semicircle 3 ft radius off the south wall, area', 168 + (PI * 9) / 2, 52 - 6 + PI * 3],
  // a corner rounded at 2 ft loses 4 - pi; its walls lose 4 and gain pi
  ['12x14 quarter-round corner radius 2 ft, area', 168 - 4 + PI, 52 - 4 + PI],
  ['12x14 top left corner rounded 2 ft radius, area', 168 - 4 + PI, 52 - 4 + PI],
  [
    '12x14 less a quarter circle hearth 3 ft radius in the bottom left corner, area',
    168 - (PI * 9) / 4,
    52 - 6 + PI * 1.5,
  ],
  ['circle 8 ft across, area', PI * 16, PI * 8],
  ['area of a 10 ft diameter circle', PI * 25, PI * 10],
  ['circle 8 ft across less a 2x2 post, area', PI * 16 - 4, PI * 8],
  ['semicircle 8 ft wide area', PI * 8, 8 + PI * 4],
  // outside a wall: the longer side along it, twice the depth more wall
  ['12x14 bump out 2x6 on the east wall area', 180, 56],
  ['12x14, on the east wall a 2x6 bump out, area', 180, 56],
  ['12x14 with a 3x5 alcove on the left wall area', 183, 58],
  ['12x14 plus 3x5 closet on the north side, area', 183, 58],
  ['12x14 add a closet 5 wide 3 deep on the south wall, area', 183, 58],
  ['12x14 and a nook 6 ft wide by 4 ft deep on the left side, area', 192, 60],
  ['12x14 with a bump out 2x6 on the east wall 1 ft from the bottom, area', 180, 56],
  ['10x12 kitchen with a 2x5 bay window, area', 130, 44 + 4],
  ['arc 6 ft wide 18 in deep on the right wall of a 10x12, area', 120 + SEGMENT, 44 - 6 + SEGMENT_ARC],
  ['14x16 room minus half circle counter 8 ft wide on the back wall, area', 224 - PI * 8, 60 - 8 + PI * 4],
  // several alike
  ['12x14, 2 round posts 10 in dia, area', 168 - 2 * PI * (5 / 12) ** 2, 52],
  ['12x14 with two 2x2 posts, area', 160, 52],
  ['12x14 with a 2 ft column, area', 164, 52],
  ['10x12 all four corners rounded 1 ft radius, area', 120 - 4 + PI, 44 - 8 + 2 * PI],
  ['12x14 less 2x3 and 3x4 corners, area', 150, 52],
  // a corner cut off straight at 3 ft: half of 9; the walls lose 6 and gain 3 times the root of 2
  ['12x14 with a diagonal corner 3 ft, area', 168 - 4.5, 52 - 6 + 3 * Math.SQRT2],
  ['saliente de 2x6 pies en el muro este de un cuarto de 12x14 pies, área', 180, 56],
  ['cuarto 12x14 con esquina ochavada de 3 pies, área', 168 - 4.5, 52 - 6 + 3 * Math.SQRT2],
  // bites: a corner leaves the walls, a side adds twice the depth
  ['12x14 with a 2x3 jog in the top right corner, area', 162, 52],
  ['12x14 notch out 2x3, area', 162, 52],
  ['12x14 knock out a 2x2 corner, area', 164, 52],
  ['12x14 subtract 3x4, area', 156, 52],
  ['12x14 minus a 3x4 hearth on the left wall, area', 156, 52 + 6],
  ['12x14 take off a 3x3 island, area', 159, 52],
  // bare figures beside inches: 120 x 140 less 30 x 50 in
  ['120x140 less 30x50, area', (120 * 140 - 30 * 50) / 144, 520 / 12],
  ['120 x 140 in less 30x50, area', (120 * 140 - 30 * 50) / 144, 520 / 12],
  ['120x140 minus a 3x4 island area', (120 * 140) / 144 - 12, 520 / 12],
  ['10x12 less 24x36 island, area', 114, 44],
  // lettered walks: 12 x 12 less 5 x 4 at the bottom right... 12 x 8 + 7 x 4
  ['r 12, d 8, l 5, d 4, l 7, u 12, area', 124, 48],
  ['12r 8d 5l 4d 7l 12u area', 124, 48],
  ['12 r 8 d 5 l 4 d 7 l 12 u area', 124, 48],
  ['r12 d8 l5 d4 l7 u12 area', 124, 48],
  ["R 12' U 8'6 L 12' D 8'6 area", 102, 41],
  ['12-6 r 8 d 12-6 l 8 u area', 100, 41],
  ['walls 12 l, 8 d, 12 r, 8 u area', 96, 40],
  ['12e 10n 12w 10s area', 120, 44],
  ['piso 12x14 con medio circulo de 6 pies en la pared norte, área', 168 + (PI * 9) / 2, 52 - 6 + PI * 3],
  ['piso 10x12 con columna redonda de 3 pies en el centro, área', 120 - PI * 2.25, 44],
  ['piso 12x14 con esquina redondeada de radio 2 pies, área', 168 - 4 + PI, 52 - 4 + PI],
  ['óvalo de 6x8 pies, área', PI * 12, 22.1],
  ['piso 12x14 con saliente de 2x6 en la pared este, área', 180, 56],
  ['paredes: 12 d, 8 b, 5 i, 4 b, 7 i, 12 a, área', 124, 48],
  ['piso 120x140 menos 30x50, área', (120 * 140 - 30 * 50) / 144, 520 / 12],
]

test.each(FLOORS)('%s', (text, sf, walls) => {
  const reply = ask(text)
  expect(reply.ok, reply.answer).toBe(true)
  expect(reply.values['area_m2']).toBeCloseTo(sf * SF, 2)
  expect(Math.abs((reply.values['perimeter_m'] as number) - (walls * FT) / 1000)).toBeLessThan(0.02)
})

test('metres stay metres, and a lettered "5 l" makes no litres of them', () => {
  expect(ask('3.6 x 4.2 m con columna redonda de 60 cm en medio, área').values['area_m2']).toBeCloseTo(
    15.12 - PI * 0.09,
    4,
  )
  expect(ask('350x420 cm less 60x90, area').values['area_m2']).toBeCloseTo(14.7 - 0.54, 6)
  expect(ask('12 r 8 d 5 l 4 d 7 l 12 u area').answer).toMatch(/124 sf/)
  const layout = ask('12 r, 8 d, 12 l, 8 u, 18x18 tile')
  expect(replyText(layout)).toMatch(/96 sf/)
})

describe('where a part stands, and that it was guessed', () => {
  const assumed = (text: string) => ask(text).assumed.join('; ')
  test('a round hole by its edge, by its centre, and centred', () => {
    expect(assumed('10x12 with a 3 ft round column, area')).toMatch(/circle 3' across stands in the middle/)
    expect(assumed('10x12 with a 3 ft round column 2 ft from the left, area')).toMatch(
      /midway between the bottom and top/,
    )
    expect(assumed('10x12 with a 3 ft round column 2 ft from the left 4 ft from the bottom, area')).not.toMatch(/mid/)
    expect(assumed('10x12 with a 3 ft round column in the middle, area')).toMatch(
      /curve is laid as \d+ short straight sides/,
    )
  })
  test('to the edge and to the centre are different places', () => {
    const wall = (text: string) => ask(text)
    // edge 0.5 ft off the left wall stays on the floor; its centre there does not
    expect(wall('10x12 round column 3 ft across 0.5 ft from the left 4 ft from the bottom, area').ok).toBe(true)
    expect(
      wall('10x12 round column 3 ft across centered 1 ft from the left 4 ft from the bottom, area').problem?.code,
    ).toBe('bad-floor')
  })
  test('a bay in the middle of its wall, a rounded corner nobody named', () => {
    expect(assumed('12x14 bump out 2x6 on the east wall area')).toMatch(/6' along the middle of the right wall, 2' out/)
    expect(assumed('12x14 with a 3x5 alcove, area')).toMatch(/middle of the top wall/)
    expect(assumed('12x14 with a bump out 2x6 on the east wall 1 ft from the bottom, area')).not.toMatch(/middle/)
    expect(assumed('12x14 quarter-round corner radius 2 ft, area')).toMatch(/top right corner is the rounded one/)
  })
  test('the unit of bare figures is said', () => {
    expect(assumed('120x140 less 30x50, area')).toMatch(/120x140 read in in; 30x50 read in in/)
    expect(assumed('120x140 minus a 3x4 island area')).toMatch(/3x4 read in ft/)
  })
})

describe('changes to the room in the talk', () => {
  test.each([
    ['take off a 3x3 island', 159],
    ['knock out a 2x2 corner', 164],
    ['subtract 3x4', 156],
    ['minus a 3x4 hearth on the left wall', 156],
    ['bump out 2x6 on the east wall', 180],
    ['add a 3x5 closet on the north side', 183],
    ['less a 3 ft round column', 168 - PI * 2.25],
    ['quítale una isla de 3x3', 159],
  ])('%s', (text, sf) => {
    const crew = new Crew()
    crew.say('12x14 shop floor, 18x18 tile, 3/16 joint')
    const reply = crew.say(text)
    expect(reply.topic).toBe('tile')
    expect(reply.values['area_m2']).toBeCloseTo(sf * SF, 2)
    expect(reply.values['tile_cells']).toBeGreaterThan(50)
  })
})

test('a room measured again keeps what stands on it; what was told can be taken off', () => {
  const crew = new Crew()
  crew.say('12x14 shop floor, 18x18 tile, 3/16 joint')
  crew.say('with a 3 ft round column in the middle')
  expect(crew.say('make it 12x16').values['area_m2']).toBeCloseTo((192 - PI * 2.25) * SF, 3)
  expect(crew.say('bump out 2x4 on the left').values['area_m2']).toBeCloseTo((200 - PI * 2.25) * SF, 3)
  expect(crew.say('take off the column').values['area_m2']).toBeCloseTo(200 * SF, 3)
  const last = crew.say('drop the bump out')
  expect(last.values['area_m2']).toBeCloseTo(192 * SF, 3)
})

test('the reply says what comes off and what stands outside', () => {
  expect(replyText(ask('12x14 shop less a 3x4 hearth on the left wall, 18x18'))).toMatch(/shop 12' x 14' less 3' x 4'/)
  expect(replyText(ask('12x14 bump out 2x6 on the east wall area'))).toMatch(/12' x 14' plus 2' x 6'/)
})

test('what nobody placed stands clear of what stands there already, and where is said', () => {
  const reply = ask('10x13 less the oven base 3x4 and a 2 ft round post, area')
  expect(reply.values['area_m2']).toBeCloseTo((130 - 12 - PI) * SF, 3)
  expect(reply.assumed.join()).toMatch(
    /circle 2' across stands .* from the left and .* from the bottom; say where if not/,
  )
  const two = ask('12x14 two columns 1x1 at 4 ft and 8 ft from the left, area')
  expect(two.values['area_m2']).toBeCloseTo(166 * SF, 4)
})

test('corners by front and back, bites by what was knocked off', () => {
  expect(ask('room 12x14 but the front left corner is rounded 3ft radius, area').assumed.join()).not.toMatch(
    /rounded one/,
  )
  expect(ask('mudroom 8x10 corner knocked off 3x3, area').values['area_m2']).toBeCloseTo(71 * SF, 4)
  expect(ask('le quito una esquina de 2x2 a un cuarto de 12x14').values['area_m2']).toBeCloseTo(164 * SF, 4)
  expect(ask('4 d, 3 b, 2 i, 1 b, 2 i, 4 a metros, área').values['area_m2']).toBeCloseTo(14, 6)
})

test('mud for a pan round a column', () => {
  const plain = ask('pan 5x5 ft, how much mud').values['mud_l'] as number
  const round = ask('pan 5x5 ft, 12 in round column 6 in from the left wall, how much mud')
  expect(round.ok, round.answer).toBe(true)
  expect(round.values['area_m2']).toBeCloseTo((25 - PI / 4) * SF, 3)
  expect(round.values['mud_l'] as number).toBeLessThan(plain)
  expect(replyText(round)).toMatch(/The column hides part of the floor/)
  expect(ask('pan 5x5 ft, 12 in round column in the middle, how much mud').assumed.join()).toMatch(
    /drain beside the column/,
  )
})

describe('outlines that are no floor', () => {
  test.each([
    ['corners 0,0 10,10 10,0 0,10, area', /crosses itself/],
    ['corners 0,0 10,0 20,0, area', /one line/],
    ['12x14 less a 20 ft round column, area', /doesn’t fit|no floor/],
    ['12 r, 8 d, 5 l, 4 d, 7 l, 9 u, area', /miss closing by 3'.*3' up/],
    // the walk comes back over its own first wall
    ['walls 12 right, 8 up, 6 left, 10 down, 6 left, 2 up, area', /crosses itself/],
  ])('%s', (text, says) => {
    const reply = ask(text)
    expect(reply.ok).toBe(false)
    expect(reply.answer).toMatch(says)
  })

  test('a small closing error is told and closed', () => {
    const reply = ask('12 r, 8 d, 12 l, 7.9 u, area')
    // shared out over the walls that run its way: 7.95 ft deep
    expect(reply.values['area_m2']).toBeCloseTo(12 * 7.95 * SF, 3)
    expect(reply.assumed.join()).toMatch(/miss closing by 1 3\/16"/)
    expect((reply.values['perimeter_m'] as number) * 1000).toBeCloseTo((24 + 15.9) * 12 * IN, 0)
  })
})
