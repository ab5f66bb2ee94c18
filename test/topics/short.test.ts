/** Running short, from message to reply: counts held to the layout's own, to hand-worked rows and to the log. */
import { describe, expect, test } from 'vitest'
import type { Reply } from '../../src/reply.ts'
import { Crew } from '../support/crew.ts'

/** 20 ft of 18 in tile and 3/16 joint take 14 columns, 24 ft 16 places; all cuts are over half a tile, so each takes one. */
const SHOP = 'shop floor 20x24, 18x18 tile, 3/16 joint, 8 a box'
const PLANK = 'floor 20 x 10, 8x48 plank, 1/8 joint, 1/3 offset, 6 a box'

const talk = (...lines: readonly string[]): Reply => {
  const crew = new Crew()
  return lines.map((line) => crew.say(line)).at(-1) as Reply
}
const textOf = (reply: Reply): string =>
  [reply.answer, ...reply.details, ...reply.assumed.map((line) => `(${line})`)].join('\n')

describe('rows of the floor as it is laid', () => {
  test('boxes and rows to go: pieces short, the last row, each way out with its figure', () => {
    const reply = talk(SHOP, '9 boxes left, 6 rows to go')
    expect(reply.topic).toBe('log')
    // 6 rows of 16 take 96, 9 boxes are 72; four of them come out full, after the 8 that are set.
    expect(reply.values).toMatchObject({ tiles_short: 24, boxes_short: 3, last_row: 12 })
    expect(textOf(reply)).toMatch(/24 tiles short: the 6 rows to go take 96, you have 72/)
    expect(textOf(reply)).toMatch(/row 12 of 14/)
    // The last column holds 16: behind cover they save 16, and are the last row's.
    expect(textOf(reply)).toMatch(
      /1\. Another lot for the 16 pieces by the right wall.*saves 16\. Decide before row 14/,
    )
  })

  test('enough is said with what is over, and nothing is asked of the crew', () => {
    const reply = talk(SHOP, '9 boxes left, 4 rows to go')
    expect(reply.values).toMatchObject({ tiles_short: 0, last_row: 14 })
    expect(reply.answer).toMatch(/^Yes, enough.*64 tiles, you have 72; 8 over/)
    expect(reply.details).toEqual([])
  })

  test('rows set and tiles left', () => {
    expect(talk(SHOP, 'set 10 rows, 60 tiles left, will it make it?').values).toMatchObject({
      tiles_short: 4,
      last_row: 13,
    })
    expect(talk(SHOP, 'set 10 rows, 64 tiles left, will it make it?').answer).toMatch(/^Just/)
  })

  test('a lot that is gone: the pieces missing are taken from what the rest needs', () => {
    const reply = talk(SHOP, 'set 11 rows', "lot's gone, 6 short")
    expect(reply.values).toMatchObject({ tiles_short: 6, boxes_short: 1, last_row: 13 })
    expect(reply.answer).toMatch(/3 rows to go take 48, you have 42/)
  })

  test('broken tiles come off what is on hand, as logged or as it was to be bought', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('60 tiles left, 4 rows to go')
    expect(crew.say('we broke 8, do we make it').values).toMatchObject({ tiles_short: 12 })
    // 31 boxes of 8 are 248; all 224 places are still to set.
    const planned = talk(SHOP, 'we broke 8, do we make it')
    expect(planned.answer).toMatch(/you have 240; 16 over/)
    expect(planned.assumed.join()).toMatch(/248 tiles bought/)
  })

  test('rows told to go are remembered for the next question, and tiles set after them count on', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('9 boxes left, 3 rows to go')
    crew.say('set 16 tiles')
    expect(crew.say("lot's gone, 6 short").answer).toMatch(/2 rows to go take 32, you have 26/)
  })

  test('more rows than the floor has is said', () => {
    expect(textOf(talk(SHOP, '9 boxes left, 20 rows to go'))).toMatch(/has 14 rows in all/)
  })

  test('the wall of the first row and the one an oven will hide, both in one message', () => {
    const reply = talk(SHOP, 'started at the back wall, oven goes on the left wall, 8 rows set, 5 boxes left, make it?')
    // Rows of 14 down the 24 ft: 8 of 16 are set, 112 places to go, one of each row at the left wall.
    expect(reply.answer).toMatch(/8 rows to go take 112, you have 40/)
    expect(textOf(reply)).toMatch(/by the left wall where it is hidden, 8 pieces: saves 8\. Decide before row 9/)
  })

  test('how far they go, running short, cracked: the rest and what was logged before', () => {
    const crew = new Crew()
    crew.say(SHOP)
    expect(crew.say('10 rows in, 4 boxes left, will that do it').values).toMatchObject({
      tiles_short: 32,
      last_row: 12,
    })
    expect(crew.say('we cracked 5, still enough?').values).toMatchObject({ tiles_short: 37 })
    expect(crew.say('how far will 4 boxes get us').values).toMatchObject({ last_row: 12 })
    expect(crew.say('what row do we get to with 40 tiles').values).toMatchObject({ tiles_short: 24, last_row: 12 })
    expect(crew.say('running short, 2 boxes left').values).toMatchObject({ tiles_short: 48, last_row: 11 })
    crew.say('set 4 rows')
    expect(crew.say('2 boxes left, enough?').answer).toMatch(/all 14 rows are set/)
  })

  test('rows set and to go that do not add up to the layout are said, and not kept', () => {
    const crew = new Crew()
    crew.say(SHOP)
    expect(textOf(crew.say('22 rows down 14 to go 9 boxes left'))).toMatch(/has 14 rows in all/)
    expect(crew.memory.job.uses).toMatchObject([{ leftBoxes: 9 }])
  })

  test('the wall of the first row: told, else away from the door', () => {
    expect(textOf(talk(SHOP, 'set 3 rows, 60 tiles left, do we make it? started at the top wall'))).toMatch(
      /13 rows to go take 182/,
    )
    expect(textOf(talk(PLANK, '12 boxes left, 8 rows to go'))).toMatch(/row 1 at the top wall/)
    expect(textOf(talk(PLANK, 'door is on the top wall, draw it', '12 boxes left, 8 rows to go'))).toMatch(
      /row 1 at the bottom wall/,
    )
  })

  test('tile by the area left, where no rows are told', () => {
    // Half of the 480 sf: 7 of 14 columns.
    expect(talk(SHOP, '12 boxes left, 240 sf to go, enough?').answer).toMatch(/7 rows to go take 112, you have 96/)
  })
})

describe('said in few words', () => {
  test.each([
    ['9 boxes left n 14 rows', 152],
    ['8 boxes, 5 rows. enough?', 80 - 64],
    ['60 left, 4 rows left', 64 - 60],
    ['ten rows to go nine boxes left', 160 - 72],
    ['half a box left and 1 row to go', 16 - 4],
    ['2 1/2 boxes left 2 rows to go', 32 - 20],
    ['will 2 boxes do the last 2 rows', 32 - 16],
    ['row 9 of 14 done, 3 boxes left, enough?', 80 - 24],
    ['tile count 45 left, rows left 4', 64 - 45],
    ['we got like 20 tiles n 3 rows left, cutting it close?', 48 - 20],
    ['need 6 more tiles, lots discontinued', 6],
    ['no more of this lot, 12 short', 12],
    ['dye lot is out, 2 boxes left, 5 rows to go', 80 - 16],
  ] as const)('%s', (said, short) => {
    const reply = talk(SHOP, said)
    expect(reply.values['tiles_short'], textOf(reply)).toBe(short)
  })

  test('a way out asked by itself goes by what was last told', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('6 rows to go, 9 boxes left')
    for (const asked of ['where can i hide the other lot', 'what if we use the offcuts', 'any way to save 24 tiles'])
      expect(crew.say(asked).values, asked).toMatchObject({ tiles_short: 24, last_row: 12 })
    expect(new Crew().say('can we use another lot').topic).not.toBe('log')
  })
})

describe('the plan behind it', () => {
  test.each([
    PLANK,
    '20x12 L shape plus 6x8, 8x48 plank, 1/8 joint, random',
    '14x11 floor less a 3x4 island, 8x48 plank, 3/16 joint, 1/3 offset, how many tiles',
    '13x17, 12x24 tile, 1/8 joint, herringbone',
    '12x15, 18x18 tile, 3/16 joint, diagonal',
    '12x15 floor less a 2x3 closet in the top right corner, 12x12 tile, 1/8 joint, use any offcut, how many tiles',
  ])('%s: with nothing set the rest takes what the layout takes', (floor) => {
    const crew = new Crew()
    crew.say(floor)
    const { values, details } = crew.say('draw the layout')
    const forCuts = details.map((line) => /^(?:Cuts by|Any off-cut).*?: (\d+) tiles/i.exec(line)).find((m) => m)
    const all = Number(values['tile_whole']) + Number(forCuts?.[1])
    const reply = crew.say('1 tile left, do we make it')
    expect(reply.values['tiles_short'], textOf(reply)).toBe(all - 1)
  })

  test('a fresh tile for each cut: using the off-cuts is the first way out', () => {
    const crew = new Crew()
    crew.say(PLANK)
    crew.say('a fresh tile for every cut, draw it')
    const reply = crew.say('60 tiles left, do we make it')
    // 48 whole and 37 cuts, 10 of them out of off-cuts where that is allowed.
    expect(reply.values['tiles_short']).toBe(25)
    expect(textOf(reply)).toMatch(/1\. Use the off-cuts, factory edge to the joint: saves 10\. Begin before row/)
  })

  test('once rows are set the start line is held; before that it is searched', () => {
    expect(textOf(talk(SHOP, '5 boxes left, 6 rows to go'))).toMatch(
      /Nothing to gain: .*the start line \(the rows set hold it\)/,
    )
    // 20 ft across: whole tiles at one wall leave a column less to cut in.
    expect(textOf(talk(SHOP, '27 boxes left, do we make it'))).toMatch(
      /1\. Another start line, .*: saves 8, enough\. Before row 1/,
    )
  })

  test('the wall that hides cuts is where the other lot goes, while something of it is unset', () => {
    const crew = new Crew()
    crew.say(SHOP)
    crew.say('hide cuts on the left wall')
    const first = textOf(crew.say('1 box left, 14 rows to go'))
    expect(first).toMatch(/by the left wall where it is hidden, \d+ pieces: saves \d+\. Decide before row \d+/)
    expect(textOf(crew.say('1 box left, 6 rows to go'))).toMatch(/another lot by the left wall \(all set there\)/)
  })

  test('a weave has no rows: reckoned tile by tile, and no last row is told', () => {
    const crew = new Crew()
    crew.say('12x14, 12x24 tile, 1/8 joint, herringbone')
    crew.say('set 40 tiles so far')
    const reply = crew.say('20 tiles left, enough to finish?')
    expect(reply.values['last_row']).toBeUndefined()
    expect(Number(reply.values['tiles_short'])).toBeGreaterThan(0)
    expect(textOf(reply)).toMatch(/no rows in this pattern/)
    expect(textOf(reply)).toMatch(/while \d+ tiles are still to set/)
    expect(crew.say('20 tiles left, 5 rows to go').problem?.message).toMatch(/No rows to count here/)
    const byArea = crew.say('20 tiles left, 60 sf to go, enough?')
    // 60 sf of 12 1/8 x 24 1/8 in are 29.5 places, some of them cut.
    expect(Number(byArea.values['tiles_short'])).toBeGreaterThanOrEqual(8)
    expect(Number(byArea.values['tiles_short'])).toBeLessThanOrEqual(16)
  })

  test('of a large tile with a small one the large runs short; hexagons go by rows', () => {
    const two = talk('10x13 floor, 18x18 tile with 6x6 inset, 1/8 joint', '1 tile left, enough to finish?')
    expect(textOf(two)).toMatch(/only the large tile counted/)
    // 130 sf in modules of an 18 1/8 and a 6 1/8 in square are 51, and some are cut at the walls.
    expect(Number(two.values['tiles_short'])).toBeGreaterThan(50)
    expect(Number(two.values['tiles_short'])).toBeLessThan(75)
    const hexagons = talk(
      '10x13 floor, 8 inch hexagon tile, 1/8 joint',
      'set 60 tiles so far',
      '40 tiles left, 4 rows to go',
    )
    expect(hexagons.answer).toMatch(/4 rows to go take \d+/)
  })

  test('of a bare area it goes by the area, and says so', () => {
    const reply = talk('200 sf, 12x12 tile, 1/8 joint', '50 tiles left, 60 sf to go, enough?')
    expect(reply.topic).toBe('log')
    // 60 sf x 1.1 / (12 1/8 in)² = 64.6
    expect(reply.values['tiles_short']).toBe(15)
    expect(textOf(reply)).toMatch(/by the area, 10 % spares, no rows/)
  })
})

describe('off-cuts of what is set', () => {
  test('kept, they save what the whole floor planned at once takes less than its two parts', () => {
    const crew = new Crew()
    crew.say(PLANK)
    const said = (text: string): number => Number(/take (\d+)/.exec(crew.say(text).answer)?.[1])
    const [rest, all] = [said('1 tile left, 7 rows to go'), said('1 tile left, 15 rows to go')]
    const reply = crew.say('1 tile left, 7 rows to go')
    const kept = /Off-cuts kept from the rows that are set: saves (\d+)/.exec(textOf(reply))
    // What the first eight rows take is not told by itself; at most what is left of the whole.
    if (kept) expect(rest - Number(kept[1])).toBeLessThanOrEqual(all)
    expect(textOf(crew.say('1 tile left, 15 rows to go'))).not.toMatch(/Off-cuts kept/)
  })
})

describe('several rooms', () => {
  const TWO = ['10x13 shop floor, 18x18 tile, 3/16 joint, 8 a box', '8x12 mudroom, 8x48 plank, 1/8 joint, 6 a box']

  test('each goes by its own tile and its own rows', () => {
    const crew = new Crew()
    for (const line of TWO) crew.say(line)
    expect(crew.say('shop floor: 2 boxes left, 4 rows to go').answer).toMatch(/4 rows to go take 36, you have 16/)
    const plank = crew.say('mudroom 1 box left, enough?')
    // Nothing of it was told to be set: the shop floor's rows are not its.
    expect(textOf(plank)).toMatch(/nothing set yet/)
    expect(plank.answer).toMatch(/you have 6/)
    expect(crew.say('1 box of the 18x18 left, enough?').answer).toMatch(/4 rows to go take 36, you have 8/)
  })
})

describe('without what it takes', () => {
  test('no floor: the pieces missing and the order of the ways out', () => {
    const reply = talk("lot's gone, 6 short")
    expect(reply.values['tiles_short']).toBe(6)
    expect(textOf(reply)).toMatch(/1\. [\s\S]*2\. [\s\S]*3\. [\s\S]*4\. /)
  })

  test('no tiles told: what the rest takes, and the count is asked for', () => {
    expect(talk(SHOP, '4 rows to go, how many more tiles').answer).toMatch(/4 rows to go take 64 tiles\. How many/)
  })

  test('no box size: asked, and the answer completes it', () => {
    const crew = new Crew()
    crew.say('shop floor 20x24, 18x18 tile, 3/16 joint')
    expect(crew.say('9 boxes left, 6 rows to go').problem?.code).toBe('question')
    expect(crew.say('8 a box').values).toMatchObject({ tiles_short: 24 })
  })
})

describe('en español', () => {
  const PISO = 'piso de 6 x 7.3 m, loseta 45x45 cm, junta 5 mm, 8 por caja'

  test('cajas y hileras, lote agotado, rotas', () => {
    const short = talk(PISO, 'quedan 9 cajas, faltan 6 hileras')
    // 7.3 m between gaps of 6.35 mm take 16.03 modules of 455 mm: 17 places in a row at a balanced start.
    expect(short.values).toMatchObject({ tiles_short: 6 * 17 - 72 })
    expect(textOf(short)).toMatch(/^Faltan 30 losetas: las 6 hileras por poner llevan 102, tienes 72/)
    expect(talk(PISO, 'me quedan 40 piezas y faltan 4 hileras, alcanza?').values['tiles_short']).toBe(4 * 17 - 40)
    expect(talk(PISO, 'llevamos 10 hileras, quedan 5 cajas, alcanza').values['tiles_short']).toBe(4 * 17 - 40)
    expect(talk(PISO, '10 hileras puestas', 'hasta donde llego con 4 cajas').values['last_row']).toBe(11)
    expect(talk(PISO, 'quedan 14 losetas y 2 hileras').values['tiles_short']).toBe(2 * 17 - 14)
    expect(talk(PISO, 'dos cajas y media, faltan 2 hileras').values['tiles_short']).toBe(2 * 17 - 20)
    expect(talk(PISO, 'quedan 2 cajas, faltan 2 hileras', 'y si usamos los recortes').values['tiles_short']).toBe(18)
    expect(talk(PISO, 'se acabo el lote, me faltan 6').values['tiles_short']).toBe(6)
    expect(talk(PISO, 'pusimos 10 hileras, quedan 60 losetas, alcanza?').values['tiles_short']).toBeGreaterThan(0)
    expect(textOf(talk(PISO, 'rompimos 8, alcanza?'))).toMatch(/losetas compradas/)
  })
})
