/** Spanish messages through `answer`: the figures are worked out by hand, the language is the question's. */
import { expect, test } from 'vitest'
import { ask, Crew } from '../../support/crew.ts'

test('a Spanish line is answered in Spanish, with the figures of its English twin', () => {
  const es = ask('piso de 10x13, loseta 18x18, junta de 3/16')
  const en = ask('10x13 shop floor, 18x18 tile, 3/16 joint')
  expect(es.language).toBe('es')
  expect(es.values).toEqual(en.values)
  expect(es.answer).toMatch(/losetas/)
})

test('decimal comma and number words', () => {
  expect(ask('cuarto de 3,5 m x 4,2 m').values['area_m2']).toBeCloseTo(14.7, 9)
  expect(ask('piso de diez por trece pies').values['area_m2']).toBeCloseTo(130 * 0.09290304, 6)
})

test('each message in its own language, without words in that of the channel', () => {
  const crew = new Crew()
  expect(crew.say('cuarto de 4 x 5 metros con loseta 60x60 cm').language).toBe('es')
  expect(crew.say('60x60').language).toBe('es')
  expect(crew.say('how many tiles').language).toBe('en')
})

test('a person can pin a language, and is told so', () => {
  const crew = new Crew()
  const pinned = crew.say('en español', { person: 'setter' })
  expect(pinned.language).toBe('es')
  expect(pinned.answer).toContain('español')
  const asked = crew.say('how many 18x18 tiles for a 10x13 room', { person: 'setter' })
  expect(asked.language).toBe('es')
  expect(asked.values['tile_count']).toBe(ask('how many 18x18 tiles for a 10x13 room').values['tile_count'])
  expect(crew.say('how many 18x18 tiles for a 10x13 room', { person: 'lead' }).language).toBe('en')
  expect(crew.say('in English', { person: 'setter' }).language).toBe('en')
  expect(crew.say('cuantas losetas de 18x18 para 10x13', { person: 'setter' }).language).toBe('en')
})

test('a question that asks for a language is answered in it', () => {
  const reply = ask('in spanish please: how many 18x18 tiles for a 10x13 room')
  expect(reply.language).toBe('es')
  expect(reply.values['tile_count']).toBeGreaterThan(0)
  expect(reply.assumed.join(' ')).toContain('español')
})
