/** Whole messages through `answer`, worked out by hand beside each. */
import { expect, test } from 'vitest'
import { replyText } from '../../src/speak.ts'
import { ask, Crew } from '../support/crew.ts'

test('room, tile and joint answer tile, mortar and grout at once', () => {
  const reply = ask('10x13 shop floor, 18x18 tile, 3/16 joint')
  expect(reply.topic).toBe('tile')
  expect(reply.values).toMatchObject({ area_m2: expect.closeTo(12.0774, 3), joint_mm: expect.closeTo(4.7625, 6) })
  for (const key of ['tile_count', 'mortar_bags', 'grout_kg']) expect(reply.values[key], key).toBeGreaterThan(0)
})

test('the first line is the answer and the reply fits a phone', () => {
  const text = replyText(ask('how many 18x18 tile for 10x13'))
  expect(text.split('\n')[0]).toMatch(/^\d+ tiles/)
  expect(text.split('\n').length).toBeLessThanOrEqual(8)
})

test('a follow-up changes one thing and repeats the question', () => {
  const crew = new Crew()
  crew.say('12x14 kitchen, 12x24 tile, 1/8 joint, how many')
  expect(crew.say('make it 3/16').values).toMatchObject({
    joint_mm: expect.closeTo(4.7625, 6),
    area_m2: expect.closeTo(15.6077, 3),
  })
  expect(crew.say('no its 11x14').values['area_m2']).toBeCloseTo(11 * 14 * 0.09290304, 4)
  expect(crew.say('and grout?').topic).toBe('grout')
})

test('the workings stand under the same answer', () => {
  const crew = new Crew()
  const first = crew.say('10x13 shop floor, 18x18 tile, 3/16 joint')
  const math = crew.say('show the math')
  expect(math.answer).toBe(first.answer)
  expect(math.details.join(' ')).toContain('places')
})
