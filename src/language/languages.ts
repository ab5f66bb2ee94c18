/** The languages at hand: which one a message is in, its words ready to look up. */
import { type Lexicon, lexiconOf, meantWord } from './lexicon.ts'
import type { Locale } from './locale.ts'
import { plainText } from './text.ts'

export type Languages = {
  readonly codes: readonly string[]
  lexicon(code: string): Lexicon
  locale(code: string): Locale
  /** The language most of the words are in; null for a message without words of any. */
  detect(text: string): string | null
}

const WORD = /[a-zñ]+/g

/** How much a word speaks for a language: a word of the trade or of its everyday list. A single letter says little. */
function weight(lexicon: Lexicon, word: string): number {
  if (word.length < 2) return 0
  if (lexicon.concepts.has(word) || lexicon.plain.has(word)) return 1
  if (lexicon.units.has(word)) return 0.4
  return word.length >= 5 && meantWord(lexicon, word) !== null ? 0.6 : 0
}

export function languagesOf(locales: readonly Locale[]): Languages {
  const lexicons = new Map<string, Lexicon>()
  const byCode = new Map(locales.map((l) => [l.code, l]))
  const fallback = locales[0]
  const lexicon = (code: string): Lexicon => {
    const known = lexicons.get(code)
    if (known) return known
    const made = lexiconOf(byCode.get(code) ?? fallback)
    lexicons.set(code, made)
    return made
  }
  return {
    codes: locales.map((l) => l.code),
    lexicon,
    locale: (code) => byCode.get(code) ?? fallback,
    detect(text) {
      if (locales.length === 1) return /[a-z]{2}/i.test(text) ? fallback.code : null
      const words = plainText(text).text.match(WORD) ?? []
      let best: string | null = null
      let bestScore = 0
      for (const locale of locales) {
        const lex = lexicon(locale.code)
        const score = words.reduce((sum, w) => sum + weight(lex, w), 0)
        if (score > bestScore) {
          best = locale.code
          bestScore = score
        }
      }
      return best
    },
  }
}
