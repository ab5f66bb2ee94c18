/** Every Spanish message comes to the figures of its English twin, to the digit, and is answered in its own language. */
import { describe, expect, test } from 'vitest'
import { ask, Crew } from '../../support/crew.ts'
import { TALKS, TWINS } from './corpus.ts'

test('the corpus is as large as it is meant to be', () => {
  expect(TWINS.length + TALKS.length).toBeGreaterThanOrEqual(150)
})

describe('messages', () => {
  test.each(TWINS)('$es', ({ es, en, language }) => {
    const [spanish, english] = [ask(es), ask(en)]
    expect(Object.keys(english.values).length, english.answer).toBeGreaterThan(0)
    expect(spanish.values).toEqual(english.values)
    expect(spanish.topic).toBe(english.topic)
    expect(spanish.language).toBe(language ?? 'es')
  })
})

describe('talks', () => {
  test.each(TALKS)('$es', ({ es, en }) => {
    const [crew, twin] = [new Crew(), new Crew()]
    const spanish = es.map((text) => crew.say(text)).at(-1)
    const english = en.map((text) => twin.say(text)).at(-1)
    expect(Object.keys(english?.values ?? {}).length).toBeGreaterThan(0)
    expect(spanish?.values).toEqual(english?.values)
    expect(spanish?.language).toBe('es')
  })
})
