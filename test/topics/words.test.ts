/** The crew's own words: told, used, listed, taken back, and never in the place of a word that reading needs. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { ask, Crew, tools } from '../support/crew.ts'

test('a word is kept for the channel and means what was said', () => {
  const crew = new Crew()
  expect(crew.say('when we say "soup" we mean our mortar').answer).toContain('soup')
  const own = crew.say('how many bags of soup for 200 sf with 1/2 trowel')
  expect(own.values).toEqual(ask('how many bags of mortar for 200 sf with 1/2 trowel').values)
  expect(ask('how many bags of soup for 200 sf with 1/2 trowel').values).not.toEqual({})
})

test('figures in a meaning hold where the message tells none', () => {
  const crew = new Crew()
  crew.say('"the tall bag" is large-format mortar 50 lb')
  expect(crew.say('2 tall bags left, 60 sf to go, 1/2 notch, enough?').values).toEqual(
    ask('2 bags large format mortar left, 60 sf to go, 1/2 notch, 50 lb bag, enough?').values,
  )
  crew.say('"bakery tile" is 18x18 porcelain 3/8 thick')
  expect(crew.say('how many bakery tile for 10x13').values['tile_length_mm']).toBeCloseTo(457.2, 6)
})

test('words are listed and taken back, in either language', () => {
  const crew = new Crew()
  expect(crew.say('our words').answer).toContain('No words')
  crew.say('cuando decimos "lodo" queremos decir nuestra mezcla')
  crew.say('le decimos "azulito" a la boquilla sin arena')
  expect(crew.say('nuestras palabras').details.join(' ')).toMatch(/lodo.*azulito/)
  expect(crew.say('cuanto lodo para 130 pies cuadrados con llana de 1/2').values).toEqual(
    ask('cuanta mezcla para 130 pies cuadrados con llana de 1/2').values,
  )
  expect(crew.say('olvida la palabra lodo').ok).toBe(true)
  expect(crew.say('our words').details).toHaveLength(1)
  expect(crew.say('forget the word lodo').problem?.code).toBe('word-unknown')
})

describe('a word that reading needs stays what it is', () => {
  test.each([
    '"half" is mortar',
    '"two" is mortar',
    '"foot" is tile',
    '"sf" is grout',
    '"help" is grout',
    '"how many" is mortar',
    '"grout" means mortar',
    '"tile" is grout',
    '"x" is mortar',
    '"10x13" is a tile',
    'when we say show the math we mean mortar',
    '"undo" is mortar',
    '"media" es mezcla',
    '"pulgada" es loseta',
    '"cuantos" es mezcla',
    '"boquilla" es mezcla',
    '"en español" es mezcla',
    '"english" is mortar',
  ])('%s', (text) => {
    const crew = new Crew()
    expect(crew.say(text).problem?.code).toBe('word-taken')
    expect(crew.memory.words).toEqual([])
  })
})

test('a meaning that nothing is made of is refused', () => {
  expect(ask('"soup" is a zzz').problem?.code).toBe('word-unclear')
})

test('whatever is said to be a word, sizes and counts are still read', () => {
  const plain = ask('10x13 shop floor, 18x18 tile, 3/16 joint').values
  const said = fc.constantFrom(
    ...Object.values(tools.languages.locale('en').words).flat(),
    ...tools.languages.locale('en').plain,
  )
  fc.assert(
    fc.property(said, (word) => {
      const crew = new Crew()
      crew.say(`"${word}" is rapid set mortar 20 kg`)
      if (crew.memory.words.length > 0 && /shop|floor|tile|joint/.test(word)) return
      const { values } = crew.say('10x13 shop floor, 18x18 tile, 3/16 joint')
      expect(values).toEqual(plain)
    }),
    { numRuns: 200 },
  )
})

test('hostile words do no harm', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'grapheme', maxLength: 60 }), fc.string({ maxLength: 60 }), (word, means) => {
      const crew = new Crew()
      crew.say(`"${word}" is ${means}`)
      crew.say(`when we say ${word} we mean ${means}`)
      crew.say(`how many ${word} for 10x13`)
    }),
    { numRuns: 200 },
  )
})
