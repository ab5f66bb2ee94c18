/** Tiles and areas of a job with several rooms: the room they went into, told, found, or asked for once. */
import { describe, expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'

const TWO = '10x13 shop floor and 8x12 wash-up, 18x18 tile'
const TWO_ES = '10x13 tienda y 8x12 bodega, loseta 18x18'
const SQFT_M2 = 0.09290304

function crewAfter(...said: string[]): Crew {
  const crew = new Crew()
  for (const text of said) crew.say(text)
  return crew
}
const roomsOf = (crew: Crew): (string | undefined)[] => crew.memory.job.uses.map((use) => use.room)

test.each([
  ['set 30 tiles in the wash-up', 'wash up'],
  ['set 50 tiles', 'shop floor'],
  ['did 120 sf', 'shop floor'],
  ['did 20 sf in the wash-up', 'wash up'],
])('%s: %s', (said, room) => {
  const crew = crewAfter(TWO, said)
  expect(roomsOf(crew)).toEqual([room])
  expect(crew.say('undo').answer).toContain(`(${room})`)
})

test.each([
  [TWO, 'set 10 tiles', 'Which room: shop floor, wash up?', 'the wash-up', 'wash up', 'set 5 more tiles'],
  [TWO, 'did 60 sf', 'Which room: shop floor, wash up?', 'in the shop floor', 'shop floor', 'did 10 sf'],
  [TWO_ES, 'puse 10 piezas', '¿En qué cuarto: tienda, bodega?', 'en la bodega', 'bodega', 'puse 5 piezas más'],
])('%s, %s: asked for, told, and kept for what follows', (floor, said, question, answer, room, more) => {
  const crew = crewAfter(floor)
  expect(crew.say(said).details[0]).toBe(question)
  expect(crew.memory.job.uses).toHaveLength(1)
  crew.say(answer)
  expect(roomsOf(crew)).toEqual([room])
  expect(crew.say(more).details.join()).not.toContain(question)
  expect(roomsOf(crew)).toEqual([room, room])
})

test('asked for once: unanswered, the next is kept without', () => {
  const crew = crewAfter(TWO, 'set 10 tiles')
  expect(crew.say('set 5 more tiles').details.join()).not.toContain('Which room')
  expect(roomsOf(crew)).toEqual([undefined, undefined])
})

test('bags on a room told with a dash are on its area', () => {
  const crew = crewAfter(TWO, 'used 3 bags on the wash-up')
  expect(crew.memory.job.uses[0]?.m2).toBeCloseTo(96 * SQFT_M2, 6)
})

test('one room asks for none, and an area is logged there too', () => {
  const crew = crewAfter('10x13 shop floor, 18x18 tile', 'did 60 sf')
  expect(crew.memory.job.uses).toMatchObject([{ stuff: 'tile' }])
  expect(crew.memory.job.uses[0]?.m2).toBeCloseTo(60 * SQFT_M2, 6)
  expect(roomsOf(crew)).toEqual([undefined])
})

describe('running short in one of two rooms', () => {
  const short = (...said: string[]): number => {
    const crew = crewAfter('9x9 shop floor and 6x6 wash-up, 18x18 tile', ...said)
    return Number(crew.say('2 boxes left, 6 a box, running short in the shop floor').values['tiles_short'])
  }
  test('what went into it counts, what went into the other does not', () => {
    const none = short('set 10 tiles in the wash-up')
    const some = short('set 10 tiles in the wash-up', 'set 12 tiles in the shop floor')
    expect(none).toBeGreaterThan(0)
    expect(none - some).toBe(12)
  })
})
