/** The languages at hand: which one a message is in, its words ready to look up. */
import { joinPhrases } from './join-phrases.ts'
import { type Lexicon, lexiconOf, meantWord, withForeign } from './lexicon.ts'
import type { Locale } from './locale.ts'
import { type OwnWordAsked, ownWordAsked } from './own-words.ts'
import { plainText } from './text.ts'

export type Languages = {
  readonly codes: readonly string[]
  /** The words of a language, and of the others what it has no word for: crews mix them. */
  lexicon(code: string): Lexicon
  locale(code: string): Locale
  /** The language most of the words are in, `inclined` where two have as many; null for a message without words of any. */
  detect(text: string, inclined?: string | null): string | null
  /** The language a message asks to be answered in from now on ("en español"); null where it asks for none. */
  pinned(text: string): string | null
  /** What a message asks about the crew's own words, in any language; null where it asks nothing of the kind. */
  ownWordAsked(text: string): OwnWordAsked | null
}

const WORD = /[a-zñ]+/g

/** How much a word speaks for a language: a word of the trade or of its everyday list. A single letter says little. */
function weight(lexicon: Lexicon, word: string): number {
  if (word.length < 2) return 0
  if (lexicon.concepts.has(word) || lexicon.plain.has(word)) return 1
  if (Object.hasOwn(lexicon.locale.numbers.words, word) || Object.hasOwn(lexicon.locale.numbers.parts, word)) return 0.7
  if (lexicon.units.has(word)) return 0.4
  return word.length >= 5 && meantWord(lexicon, word) !== null ? 0.35 : 0
}

/** How a language is asked for: as the whole message, or anywhere in one. */
type WishForLanguage = { readonly code: string; readonly alone: readonly string[]; readonly within: readonly string[] }

const wishFor = ({ code, askedFor }: Locale): WishForLanguage => ({
  code,
  alone: askedFor,
  within: askedFor.filter((phrase) => phrase.includes(' ')).map((phrase) => ` ${phrase} `),
})

export function languagesOf(locales: readonly Locale[]): Languages {
  const [fallback] = locales
  const byCode = new Map(locales.map((l) => [l.code, l]))
  const known = <T>(make: (code: string) => T): ((code: string) => T) => {
    const made = new Map<string, T>()
    return (code) => {
      const here = byCode.has(code) ? code : fallback.code
      const found = made.get(here) ?? make(here)
      made.set(here, found)
      return found
    }
  }
  // What a locale has no phrase for is told in the first one's words; a test sees to it that none lacks one.
  const locale = known((code) => {
    const found = byCode.get(code) ?? fallback
    return found === fallback ? found : { ...found, phrases: joinPhrases(fallback.phrases, found.phrases) }
  })
  const own = known((code) => lexiconOf(locale(code)))
  const lexicon = known((code) =>
    locales.filter((l) => l.code !== code).reduce((mixed, l) => withForeign(mixed, own(l.code)), own(code)),
  )
  const wishes = locales.map(wishFor)
  return {
    codes: locales.map((l) => l.code),
    lexicon,
    locale,
    detect(text, inclined = null) {
      if (locales.length === 1) return /[a-z]{2}/i.test(text) ? fallback.code : null
      const words = plainText(text).text.match(WORD) ?? []
      let best: string | null = null
      let bestScore = 0
      for (const { code } of locales) {
        const lex = own(code)
        const score = words.reduce((sum, w) => sum + weight(lex, w), 0)
        if (score > bestScore || (score === bestScore && score > 0 && code === inclined)) {
          best = code
          bestScore = score
        }
      }
      return best
    },
    ownWordAsked(text) {
      for (const { ownWords } of locales) {
        const asked = ownWordAsked(text, ownWords)
        if (asked) return asked
      }
      return null
    },
    pinned(text) {
      const words = (plainText(text).text.match(WORD) ?? []).join(' ')
      const spaced = ` ${words} `
      const asks = ({ alone, within }: WishForLanguage): boolean =>
        alone.includes(words) || within.some((phrase) => spaced.includes(phrase))
      return wishes.find(asks)?.code ?? null
    },
  }
}
