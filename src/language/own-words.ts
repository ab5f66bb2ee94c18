/** The crew's own words: `when we say "mud" we mean our mortar`. What they mean is heard like any message and laid over the
 *  lexicon; no word can take the place of a number, a unit, or a word that reading a message needs. */
import type { Facts } from '../facts.ts'
import type { Concept } from './concepts.ts'
import { type Lexicon, marksOf, meaningsOf, withPhrases } from './lexicon.ts'
import { NOUNS } from './nouns.ts'
import { plainText } from './text.ts'
import { type Token, tokenize } from './tokens.ts'

/** How a language speaks of the crew's words: patterns over plain text with the groups `word` and `means`. */
export type OwnWordPatterns = {
  readonly define: readonly string[]
  readonly remove: readonly string[]
  readonly list: readonly string[]
  /** Words before a word or a meaning that are no part of it: "the tall bag", "our mortar". */
  readonly articles: readonly string[]
}

/** One word as it is kept: plain, without article; what it means as it was typed. */
export type OwnWord = { readonly word: string; readonly means: string }

export type OwnWordAsked =
  | { readonly is: 'define'; readonly word: string; readonly means: string }
  | { readonly is: 'remove'; readonly word: string }
  | { readonly is: 'list' }

const compiled = new WeakMap<OwnWordPatterns, Readonly<Record<'define' | 'remove' | 'list', readonly RegExp[]>>>()

function patternsOf(words: OwnWordPatterns): Readonly<Record<'define' | 'remove' | 'list', readonly RegExp[]>> {
  let found = compiled.get(words)
  if (!found) {
    const all = (sources: readonly string[]): RegExp[] => sources.map((source) => new RegExp(`^(?:${source})$`))
    found = { define: all(words.define), remove: all(words.remove), list: all(words.list) }
    compiled.set(words, found)
  }
  return found
}

const LONGEST_ASKED = 200

/** What a message asks about the crew's words, by one language's patterns; null where it asks nothing of the kind. */
export function ownWordAsked(text: string, words: OwnWordPatterns): OwnWordAsked | null {
  if (text.length > LONGEST_ASKED) return null
  const plain = plainText(text)
    .text.trim()
    .replaceAll(/\s+/g, ' ')
    .replace(/[.!?]+$/, '')
  const { define, remove, list } = patternsOf(words)
  const clean = (said: string | undefined): string => withoutArticle((said ?? '').replaceAll(/["']/g, '').trim(), words)
  for (const pattern of define) {
    const { word, means } = pattern.exec(plain)?.groups ?? {}
    if (word !== undefined) return { is: 'define', word: clean(word), means: clean(means) }
  }
  for (const pattern of remove) {
    const { word } = pattern.exec(plain)?.groups ?? {}
    if (word !== undefined) return { is: 'remove', word: clean(word) }
  }
  return list.some((pattern) => pattern.test(plain)) ? { is: 'list' } : null
}

function withoutArticle(said: string, { articles }: OwnWordPatterns): string {
  const [first, ...rest] = said.split(' ')
  return rest.length > 0 && articles.includes(first)
    ? withoutArticle(rest.join(' '), { articles } as OwnWordPatterns)
    : said
}

/** Stuff that crews have nicknames for: a nickname of it may be given another meaning. */
const STUFF: ReadonlySet<Concept> = new Set<Concept>([
  'mortar',
  'large-format',
  'modified',
  'unmodified',
  'rapid',
  'mastic',
  'adhesive',
  'grout',
  'sanded',
  'unsanded',
  'epoxy',
  'premium-grout',
  'leveller',
  'primer',
  'sealant',
  'membrane',
  'waterproofing',
  'underlayment',
  'cork',
  'foam',
  'cement-board',
  'mud-word',
  'tile-kind',
])

/** What may stand inside a word of the crew's: things and how they look, never a question, a command or a small word. */
const INSIDE: ReadonlySet<Concept> = new Set<Concept>([
  ...[...NOUNS].filter((c) => c !== 'left-to-do' && c !== 'price'),
  ...STUFF,
  'wide',
  'long',
  'deep',
  'high',
  'heavy',
  'the',
  'soft-face',
  'house-part',
  'night',
  'sun',
  'truck',
])

const MOST_WORDS = 4
const MOST_LETTERS = 40
/** Words kept in one channel. */
export const MOST_OWN_WORDS = 100

const isPlainWord = (token: Token): boolean => token.kind === 'word' && /^[a-z]+$/.test(token.text)

/** Whether a word can be the crew's own: not a number, a unit, a command, or a word needed to read a message. */
export function mayBeOwn(word: string, lexicons: readonly Lexicon[]): boolean {
  if (word.length < 2 || word.length > MOST_LETTERS) return false
  return lexicons.every((lexicon) => {
    const { tokens } = tokenize(word, lexicon.locale.numbers)
    if (tokens.length === 0 || tokens.length > MOST_WORDS || !tokens.every(isPlainWord)) return false
    if (tokens.some((t) => meaningsOf(lexicon, t.text).unit)) return false
    if (tokens.length === 1) {
      const { concepts, first } = meaningsOf(lexicon, tokens[0].text)
      return concepts.every((c) => STUFF.has(c)) && !first
    }
    return marksOf(lexicon, tokens).every((mark) => INSIDE.has(mark.concept)) && !meaningsOf(lexicon, word).first
  })
}

/** Meanings that a word may stand for: the things its explanation names. */
const meant = (lexicon: Lexicon, means: string): Concept[] => {
  const { tokens } = tokenize(plainText(means).text, lexicon.locale.numbers)
  const found = marksOf(lexicon, tokens).map((mark) => mark.concept)
  return [...new Set(found.filter((c) => (NOUNS.has(c) || STUFF.has(c)) && c !== 'left-to-do'))]
}

/** Whether an explanation names anything that kneepad knows. */
export const isUnderstood = (means: string, lexicon: Lexicon): boolean => meant(lexicon, means).length > 0

const overlaid = new WeakMap<readonly OwnWord[], WeakMap<Lexicon, Lexicon>>()

/** The lexicon with the crew's words laid over it. `factsOf` hears the figures in a meaning ("50 lb").
 *  A word of several keeps what its last one means: the tall bag is a bag still. */
export function withOwnWords(lexicon: Lexicon, own: readonly OwnWord[], factsOf: (means: string) => Facts): Lexicon {
  if (own.length === 0) return lexicon
  const known = overlaid.get(own) ?? new WeakMap<Lexicon, Lexicon>()
  overlaid.set(own, known)
  const found = known.get(lexicon)
  if (found) return found
  const made = withPhrases(
    lexicon,
    own.map(({ word, means }) => {
      const words = word.split(' ')
      const head = words.length > 1 ? meaningsOf(lexicon, words.at(-1) as string).concepts : []
      return { words, meanings: [...new Set([...meant(lexicon, means), ...head])], facts: factsOf(means) }
    }),
  )
  known.set(lexicon, made)
  return made
}

/** What the crew's words in a message say besides their meanings: figures that hold where the message tells none. */
export function factsOfOwnWords(lexicon: Lexicon, tokens: readonly Token[]): Facts {
  let facts: Facts = {}
  for (const { words, facts: told } of lexicon.own)
    for (let i = 0; i + words.length <= tokens.length; i++)
      if (words.every((w, k) => sameWord(tokens[i + k].text, w))) facts = { ...told, ...facts }
  return facts
}

const sameWord = (said: string, word: string): boolean => said === word || said === `${word}s` || said === `${word}es`
