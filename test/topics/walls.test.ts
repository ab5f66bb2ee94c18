/** Walls from the message to the reply: courses round corners, openings on joints, the first course. Sums by hand beside each. */
import { describe, expect, test } from 'vitest'
import { replyText } from '../../src/speak.ts'
import { ask, Crew } from '../support/crew.ts'

const IN = 25.4
const said = (text: string) => replyText(ask(text))

describe('courses round the corners', () => {
  // By hand in test/core/layout/courses.test.ts: 48 tiles on the strip, 16 bent; no end piece pairs (17 11/16 twice); 10 % spares.
  const SHOWERS = [
    'shower walls 3 ft, 5 ft, 3 ft, 8 ft high, 12x24 tile, carry the courses round the corners',
    "shower 3' 5' 3' walls, 8' tall, 12x24, 1/8 joint, wrap the pattern around the corners",
    '36x60x36 shower walls 96 high, 12x24 tile, carry the grout lines through the corners',
    'walls 3x8, 5x8, 3x8 with 12x24 tile 1/8 joint, carry the courses around the corner',
    'paredes de regadera 3 pies, 5 pies, 3 pies, 8 pies de alto, loseta 12x24, seguir las hiladas a la vuelta de la esquina',
  ]
  test.each(SHOWERS)('%s', (text) => {
    const reply = ask(text)
    expect(reply.ok, reply.answer).toBe(true)
    expect(reply.topic).toBe('layout')
    expect(reply.values['area_m2']).toBeCloseTo(88 * 0.09290304, 6)
    expect(reply.values['tile_cells']).toBe(64)
    expect(reply.values['tile_count']).toBe(53)
    expect(reply.answer).toMatch(/^53 /)
    const text_ = replyText(reply)
    expect(text_).toMatch(/17 11\/16/)
    expect(text_).toMatch(/18 1\/8/)
    expect(text_).toMatch(/5 13\/16/)
    expect(text_).toMatch(/10 5\/8/)
  })

  test('offset rows tell each course that differs, a third of them three', () => {
    expect(
      said('shower walls 3 ft, 5 ft, 3 ft, 8 ft high, 12x24 half offset, wrap the offset around the corners'),
    ).toMatch(/course 1 at .*course 2 at .*then the same again/)
    expect(said('32x60x32 tub surround 72 high, 3x6 third offset, wrap the corners')).toMatch(/course 3 at/)
  })

  test('two walls of a backsplash, a whole tile at the end that is named, and what changes in the talk', () => {
    const crew = new Crew()
    const first = crew.say('backsplash 8 ft and 5 ft, 18 in high, 3x6 tile, full tiles at the left, turn the corner')
    expect(replyText(first)).toMatch(/Wall 1, 8'.*pieces 6 in at the left/)
    const next = crew.say('make it 1/16')
    expect(next.values['joint_mm']).toBeCloseTo(IN / 16, 6)
    expect(next.answer).toMatch(/courses level round 1 corner\./)
    expect(crew.say('and grout?').values['area_m2']).toBeCloseTo(19.5 * 0.09290304, 6)
  })

  test('walls and height that were not told are asked for', () => {
    expect(ask('carry the pattern round the corner').problem?.code).toBe('question')
    expect(ask('carry the pattern round the corner').answer).toMatch(/Which walls, and how high/)
    expect(ask('shower walls 3 ft, 5 ft, 3 ft, 8 ft high, carry it around the corners').answer).toMatch(
      /size is the tile/,
    )
  })

  test('walls told in a row are walls without a word of corners too', () => {
    const reply = ask('shower walls 3 ft, 5 ft and 3 ft, 8 ft high, 12x24 tile, how many')
    expect(reply.values['area_m2']).toBeCloseTo(88 * 0.09290304, 6)
    expect(reply.topic).toBe('tile')
  })
})

describe('openings on joints', () => {
  test('a niche: clear n (L + j) + j, rough with twice the lining', () => {
    const text =
      'niche about 12x24 in a wall 5 ft x 8 ft, 4x12 tile 1/8 joint, bottom around 42 in: where do I put it so the edges land on joints, what rough opening'
    const reply = ask(text)
    // 1 x 12 1/8 + 1/8 = 12 1/4; 6 x 4 1/8 + 1/8 = 24 7/8; lining 12.7 + 0.4 + 2.4 + 9.525 mm on each side
    const lining = 2 * (12.7 + 0.4 + 2.4 + 9.525)
    expect(reply.values['opening_width_mm']).toBeCloseTo(12.25 * IN + lining, 3)
    expect(reply.values['opening_height_mm']).toBeCloseTo(24.875 * IN + lining, 3)
    expect(replyText(reply)).toMatch(/Finished 12 1\/4 in x 24 7\/8 in, 1 wide and 6 high of 4x12/)
    expect(reply.values['opening_bottom_mm']).toBeGreaterThan(38 * IN)
    expect(reply.values['opening_bottom_mm']).toBeLessThan(46 * IN)
    // By the layout of the same wall: its first whole tile less a joint, and whole modules from there.
    const lines = /first whole tiles start ([\d /]+) in from the left and ([\d /]+) in up/.exec(replyText(reply))!
    const inches = (text: string) =>
      text
        .split(' ')
        .reduce(
          (sum, part) =>
            sum + (part.includes('/') ? Number(part.split('/')[0]) / Number(part.split('/')[1]) : Number(part)),
          0,
        )
    const off = (value: number, first: string, module: number) => {
      const rest = (value / IN - (inches(first) - 1 / 8)) / module
      return Math.abs(rest - Math.round(rest)) * module
    }
    expect(off(reply.values['opening_left_mm'] as number, lines[1], 12.125)).toBeLessThan(0.07)
    expect(off(reply.values['opening_bottom_mm'] as number, lines[2], 4.125)).toBeLessThan(0.07)
  })

  test('Spanish tells the same', () => {
    const en = ask('wall 5 ft x 8 ft, 4x12 tile, niche 12x24 in, 42 up from the floor, edges on joints')
    const es = ask('pared de 5 x 8 pies, loseta 4x12, nicho de 12x24 pulgadas, base a 42 del piso, que caiga en juntas')
    expect(es.language).toBe('es')
    expect(es.values).toEqual(en.values)
    expect(es.answer).toMatch(/^Arma el hueco/)
  })

  test('an outlet keeps its size, one side and its foot or head on joints; the caution comes with it', () => {
    const reply = ask(
      'wall 8 ft x 8 ft, 3x6 tile, outlet 4 1/2 x 2 3/4 at 20 in from the left 40 up, move the outlet onto a joint',
    )
    expect(reply.answer).toMatch(
      /^Set the box with its left side 19 1\/16 in from the left and its bottom 40 1\/8 in up/,
    )
    expect(reply.warnings.join()).toMatch(/electrician/)
    const bare = ask('wall 8 ft x 4 ft, 3x6 tile, move the outlet onto a joint, it is 30 from the left and 44 up')
    expect(bare.assumed.join()).toMatch(/single box/)
  })

  test('a window that keeps its place: the lines move instead', () => {
    const text = said(
      'window 30 x 40 at 24 from the left, 36 up in a 8 ft x 8 ft wall, 4x12 tile, line it up with the joints',
    )
    expect(text).toMatch(/^Frame the window 32 in wide x 42 in high/)
    expect(text).toMatch(/If it can’t move, move the lines instead/)
  })

  test('a valve goes onto the nearer joint, or where four tiles meet', () => {
    const reply = ask('5 ft x 8 ft wall 12x24 tile, valve centered 30 in from the left 44 up, move it onto a joint')
    expect(reply.answer).toMatch(/on a level joint, 30 in from the left as it is/)
    expect(replyText(reply)).toMatch(/Where four tiles meet/)
    expect(reply.warnings.join()).toMatch(/plumber/)
  })

  test('what is missing is asked for; what has no room is told', () => {
    expect(ask('niche 12x24 edges on joints, 4x12 tile').answer).toMatch(/How large is the wall/)
    expect(ask('wall 8 ft x 8 ft, 3x6 tile, move the outlet onto a joint').answer).toMatch(/Where is it about/)
    expect(ask('wall 8 ft x 8 ft, 3x6 tile, line the window up with the joints').answer).toMatch(
      /How large is the opening/,
    )
    expect(ask('wall 2 ft x 8 ft, 4x12 tile, niche 24x24 in at 40 up, edges on joints').answer).toMatch(
      /No place on joints/,
    )
  })

  test('the picture asked next shows the opening where it goes', () => {
    const crew = new Crew()
    crew.say('wall 5 ft x 8 ft, 4x12 tile, niche 12x24 in, 42 up from the floor, edges on joints')
    const reply = crew.say('picture')
    // 40 sf less the finished opening 12 1/4 x 24 7/8
    expect(reply.values['area_m2']).toBeCloseTo((60 * 96 - 12.25 * 24.875) * IN * IN * 1e-6, 4)
  })
})

test('walls told by their back and sides, by a shower’s pan, and one after the other with other words between', () => {
  // 32 + 60 + 32 in by 84 in
  expect(
    ask('back wall 60 in side walls 32 in, 84 in high, 12x24, keep the pattern going around the corner').values[
      'area_m2'
    ],
  ).toBeCloseTo(124 * 84 * IN * IN * 1e-6, 6)
  expect(ask('shower 3x5 walls 8 high 12x24 carry the courses round the corners').values['area_m2']).toBeCloseTo(
    88 * 0.09290304,
    6,
  )
  expect(
    ask('kitchen backsplash 10 ft then 4 ft, 18 high, 3x6 offset, go around the corner').values['area_m2'],
  ).toBeCloseTo(21 * 0.09290304, 6)
  expect(
    ask('pared de fondo 150 laterales 80 cm, alto 2.1 m, azulejo 20x60, hiladas a la vuelta de la esquina').values[
      'area_m2'
    ],
  ).toBeCloseTo(3.1 * 2.1, 6)
})

test('whole tiles at an end that leave a sliver in a corner are told, with what the best start leaves', () => {
  const reply = ask('walls 4 ft 6 ft, 7 ft high, 4x12, full tiles at the left, carry it around the corner')
  // 12 + 1/8 four times is 48 1/2: the corner at 48 - 1/16 cuts 11 9/16, and 12 - 11 9/16 - 1/8 = 5/16 go on
  expect(reply.warnings.join()).toMatch(/leave 5\/16 in in a corner/)
})

test('a niche by its framing, by tiles, and at the size it was asked', () => {
  // 14 x 24 less twice 0.985 in: 12.03 x 22.03; two of 6 with 1/16: 12 3/16; seven of 3: 21 1/2
  expect(said('niche 14x24 framed, 3x6 tile 1/16 joint what finished size')).toMatch(/leaves 12 in x 22 in/)
  expect(said('niche 14x24 framed, 3x6 tile 1/16 joint what finished size')).toMatch(
    /Finished 12 3\/16 in x 21 1\/2 in/,
  )
  expect(said('rough opening for a niche 2 tiles wide 3 tiles high 6x6 1/8 joint')).toMatch(/2 wide and 3 high of 6x6/)
  expect(said('where should I put a 12x12 niche in a 5x8 wall, 12x24 tile')).toMatch(/Kept at 12 in x 12 in/)
})

test('what changes in the talk goes on with the opening', () => {
  const crew = new Crew()
  crew.say('wall 5 ft x 8 ft, 4x12 tile, niche 12x24 in, 42 up from the floor, edges on joints')
  const next = crew.say('make the joint 1/16')
  // 12 1/16 + 1/16; 6 x 4 1/16 + 1/16
  expect(replyText(next)).toMatch(/Finished 12 1\/8 in x 24 7\/16 in/)
})

describe('the first course over a floor that is out', () => {
  test.each([
    // 1/4 gap + 12 + 1/8; cut down by 3/8
    [
      'floor is 3/8 out over the 5 ft wall, 12x24 tile, how high first course',
      /12 3\/8 in above the low point/,
      /11 5\/8 in at the high/,
    ],
    [
      'tub is out of level 1/4 over 5 ft, 3x6 tile, where does the ledger go',
      /3 3\/8 in above/,
      /2 3\/4 in at the high/,
    ],
    ['tub is 1/2 out of level, 4x12 tile, first row height', /4 3\/8 in above/, /3 1\/2 in at the high/],
    ['la tina tiene desnivel de 1/4 en 5 pies, loseta 3x6, primera hilada', /3 3\/8 pulg/, /2 3\/4 pulg/],
  ])('%s', (text, height, cut) => {
    const reply = ask(text)
    expect(reply.topic).toBe('layout')
    expect(reply.answer).toMatch(height)
    expect(replyText(reply)).toMatch(cut)
  })

  test('how much more each tile is cut, by the wall it runs along', () => {
    // 3/8 over 60 in, a tile with its joint 24 1/8: 0.151, told to the nearest 1/16 as 1/8 or 3/16
    expect(said('floor is 3/8 out over the 5 ft wall, 12x24 tile, how high first course')).toMatch(
      /Over 5' that is about (1\/8|3\/16|5\/32) in more/,
    )
  })

  test('tile stood up is a course as high as it is long', () => {
    expect(said('tub is 1/4 out of level, 12x24 set vertical on the walls, first course')).toMatch(/24 3\/8 in above/)
  })
})
