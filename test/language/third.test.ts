/** A third language is one folder of data: this one is made up, and joined to the others by the list alone. */
import { expect, test } from 'vitest'
import { answer } from '../../src/answer.ts'
import { fold } from '../../src/jobs/fold.ts'
import { emptyMemory } from '../../src/jobs/memory.ts'
import { LOCALES } from '../../src/language/all.ts'
import { languagesOf } from '../../src/language/languages.ts'
import type { Reply } from '../../src/reply.ts'
import { ask, NOW, tools } from '../support/crew.ts'
import { madeUp } from '../support/made-up-locale.ts'

const three = { ...tools, languages: languagesOf([...LOCALES, madeUp]) }

function talk(...said: readonly string[]): Reply {
  let memory = emptyMemory
  let last: Reply | null = null
  said.forEach((text, n) => {
    const done = answer({ text, id: `m${n}`, person: 'setter', now: NOW, zone: null }, memory, three)
    memory = done.entries.reduce(
      (folded, { kind, version, body }, part) =>
        fold(folded, { at: NOW, person: 'setter', messageId: `m${n}`, part, kind, version, body }),
      memory,
    )
    last = done.reply
  })
  return last as unknown as Reply
}

test('it is heard, answered and told in its own words and figures', () => {
  const reply = talk('omeni 18x18 plakas fo ruma tenta x wuntiri fut')
  expect(reply.language).toBe('xo')
  expect(reply.values).toEqual(ask('how many 18x18 tiles for room ten x thirteen ft').values)
  expect(reply.answer).toMatch(/^\d+ plakas ofa 18x18/)
})

test('its numbers, units and parts are read', () => {
  expect(talk('ruma 1.200 x 3500 mm').values['area_m2']).toBeCloseTo(4.2, 9)
  expect(talk('ruma 3,5 x 4,2 m').values['area_m2']).toBeCloseTo(14.7, 9)
  expect(talk('plaka 18x18, leina kota insh, ruma 10x13 fut').values['joint_mm']).toBeCloseTo(6.35, 9)
})

test('what it has no phrase for is told in the first language, never thrown', () => {
  expect(talk('omeni sakata matara fo 200 fut2 palaka hafu insh').language).toBe('xo')
  expect(talk('hilfo').answer).toBe('Sei wata luka:')
})

test('it can be pinned, and the crew can name things in it', () => {
  const pinned = talk('sa xolo', 'how many 18x18 tiles for a 10x13 room')
  expect(pinned.language).toBe('xo')
  expect(talk('"goba" iza matara', 'omeni sakata goba fo 200 fut2 palaka hafu insh').values).toEqual(
    talk('omeni sakata matara fo 200 fut2 palaka hafu insh').values,
  )
})

test('the languages beside it are heard as before', () => {
  for (const text of ['how many 18x18 tiles for a 10x13 room', 'cuantas losetas de 18x18 para 10x13 pies'])
    expect(talk(text)).toEqual(ask(text))
})
