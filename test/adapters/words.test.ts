/** The platforms' own words in every language: all there, with the same places, within the platforms' limits. */
import { expect, test } from 'vitest'
import { WORDS } from '../../adapters/contract.ts'
import { commandBody } from '../../adapters/discord/command.ts'
import { formModal } from '../../adapters/discord/modal.ts'
import { formView, homeView } from '../../adapters/slack/views.ts'
import { PLATFORM_LANGUAGES, platformWords } from '../../src/language/platform.ts'
import { testBacking } from '../support/backing.ts'
import { viewProblems } from '../support/block-kit.ts'
import { schemaProblems } from '../support/discord-schema.ts'

const places = (text: string) => [...text.matchAll(/\{\w+\}/g)].map(([place]) => place).toSorted()

test.each(PLATFORM_LANGUAGES)('%s', (language) => {
  const words = platformWords(language)
  for (const key of WORDS) {
    expect(words[key]?.trim(), key).toBeTruthy()
    expect(places(words[key]), key).toEqual(places(platformWords('en')[key]))
  }
  // None is cut short by a limit.
  const view = formView(words, { channel: 'C', language })
  expect(viewProblems(view)).toEqual([])
  expect(JSON.stringify([view, homeView(words, { language, units: 'm' }, 'D')])).not.toContain('…')
  expect(JSON.stringify(formModal(words, language))).not.toContain('…')
})

test('the slash command has its texts in Spanish too', () => {
  const backing = { ...testBacking(), words: platformWords, languages: PLATFORM_LANGUAGES }
  const body = commandBody(backing)
  expect(schemaProblems('ApplicationCommandUpdateRequest', body)).toEqual([])
  expect(body.description_localizations).toEqual({
    'es-ES': platformWords('es').commandDescription,
    'es-419': platformWords('es').commandDescription,
  })
  expect(JSON.stringify(body)).not.toContain('…')
})

test('an unknown language has the default one', () => {
  expect(platformWords('xx', 'es')).toBe(platformWords('es'))
  expect(platformWords('xx')).toBe(platformWords('en'))
})
