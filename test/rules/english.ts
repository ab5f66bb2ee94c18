/** The English rule reader and book, for tests of rules without the rest of the bot. */
import book from '../../config/rules.json' with { type: 'json' }
import * as cues from '../../src/language/en/cues.ts'
import { figures } from '../../src/language/en/figures.ts'
import { measures } from '../../src/language/en/measures.ts'
import { hear } from '../../src/language/hear.ts'
import { ruleReader } from '../../src/language/rule-words.ts'
import type { Country, Rule } from '../../src/rules/book.ts'
import { askOf } from '../../src/rules/read.ts'
import { type Settled, settle } from '../../src/rules/settle.ts'
import { tools } from '../support/crew.ts'

export const readEnglish = ruleReader({ ...cues, figures, measures })

/** Whose rules a message asks for. */
export const countryIn = (text: string, language: string): Country =>
  hear(text, tools.languages.lexicon(language)).facts.country ?? 'US'

/** The best subject's verdict, or null. */
export function settleEnglish(text: string): Settled | null {
  const words = readEnglish(text)
  const subject = words.subjects[0]?.name
  return subject === undefined
    ? null
    : settle(book.rules as unknown as Rule[], askOf(words, subject, {}, countryIn(text, 'en')))
}
