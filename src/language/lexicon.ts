/** A locale's words, ready to be looked up: exact first, then forgiving the slips of a thumb. */

import type { Facts } from '../facts.ts'
import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import type { Locale } from './locale.ts'
import type { Token } from './tokens.ts'

/** A word or phrase of the message that means something. */
export type Mark = {
  readonly concept: Concept
  /** Token it starts at, and how many tokens it takes. */
  readonly first: number
  readonly count: number
}

type Entry<T> = { readonly words: readonly string[]; readonly meanings: T[] }

/** Entries by their first word, the longest first. They are made when the word is first looked up: few ever are. */
type Table<T> = {
  readonly get: (word: string) => readonly Entry<T>[]
  readonly has: (word: string) => boolean
  readonly words: () => Iterable<string>
}

export type Lexicon = {
  readonly locale: Locale
  readonly concepts: Table<Concept>
  readonly units: Table<UnitName>
  /** Single words that may be meant by a slip, by first letter. */
  readonly guessable: (letter: string) => readonly string[]
  readonly plain: ReadonlySet<string>
  /** The crew's own phrases, with the figures they stand for. */
  readonly own: readonly { readonly words: readonly string[]; readonly facts: Facts }[]
  /** What a misspelt word was found to mean; bounded. */
  readonly slips: Map<string, string | null>
}

const SLIPS_KEPT = 4000
const LEAST_GUESSED = 4

type Spelling<T> = { readonly said: string; readonly meaning: T }

function tableOf<T extends string>(source: Readonly<Record<T, readonly string[]>>, plurals: boolean): Table<T> {
  const spellings = new Map<string, Spelling<T>[]>()
  const put = (word: string, spelling: Spelling<T>): void => {
    const same = spellings.get(word)
    if (same) same.push(spelling)
    else spellings.set(word, [spelling])
  }
  for (const [meaning, all] of Object.entries(source) as [T, readonly string[]][])
    for (const said of all) {
      const space = said.indexOf(' ')
      put(space < 0 ? said : said.slice(0, space), { said, meaning })
      if (plurals && space < 0 && takesPlural(said)) put(`${said}s`, { said: `${said}s`, meaning })
    }
  const made = new Map<string, readonly Entry<T>[]>()
  return {
    get: (word) => {
      const known = made.get(word)
      if (known) return known
      const entries = entriesOf(spellings.get(word) ?? [], plurals)
      if (entries.length > 0) made.set(word, entries)
      return entries
    },
    has: (word) => spellings.has(word),
    words: () => spellings.keys(),
  }
}

const takesPlural = (word: string): boolean => word.length > 2 && !word.endsWith('s') && /[a-z]$/.test(word)

function entriesOf<T>(spellings: readonly Spelling<T>[], plurals: boolean): Entry<T>[] {
  const entries: Entry<T>[] = []
  const put = (words: readonly string[], meaning: T): void => {
    const same = entries.find((e) => e.words.length === words.length && e.words.every((w, i) => w === words[i]))
    if (!same) entries.push({ words, meanings: [meaning] })
    else if (!same.meanings.includes(meaning)) same.meanings.push(meaning)
  }
  for (const { said, meaning } of spellings) {
    const words = said.split(' ')
    put(words, meaning)
    const last = words.at(-1) as string
    // The plural of a single word stands under a word of its own.
    if (plurals && words.length > 1 && takesPlural(last)) put([...words.slice(0, -1), `${last}s`], meaning)
  }
  return entries.sort((a, b) => b.words.length - a.words.length)
}

export function lexiconOf(locale: Locale): Lexicon {
  const concepts = tableOf(locale.words, true)
  const units = tableOf(locale.units, false)
  return {
    locale,
    concepts,
    units,
    guessable: guessableIn([concepts, units], new Set(NAMES.flatMap((concept) => locale.words[concept]))),
    plain: new Set(locale.plain),
    own: [],
    slips: new Map(),
  }
}

/** Names of places are never meant by a slip: "span" is not Spain. */
const NAMES: readonly Concept[] = ['in-britain', 'in-australia', 'in-north-america', 'in-another-country']

function guessableIn(
  tables: readonly Pick<Table<unknown>, 'words'>[],
  names: ReadonlySet<string>,
): Lexicon['guessable'] {
  const byLetter = new Map<string, readonly string[]>()
  return (letter) => {
    const known = byLetter.get(letter)
    if (known) return known
    const found = new Set<string>()
    for (const table of tables)
      for (const word of table.words())
        if (word.startsWith(letter) && word.length >= LEAST_GUESSED && /^[a-zñ]+$/.test(word) && !names.has(word))
          found.add(word)
    const list = [...found]
    byLetter.set(letter, list)
    return list
  }
}

/** Shorter words of another language are too often something else here. */
const LEAST_FOREIGN = 3

/** A lexicon with another language's words and number words added where its own has none of that spelling. */
export function withForeign(home: Lexicon, other: Lexicon): Lexicon {
  const knows = (word: string): boolean =>
    home.concepts.has(word) ||
    home.units.has(word) ||
    home.plain.has(word) ||
    Object.hasOwn(home.locale.numbers.words, word) ||
    Object.hasOwn(home.locale.numbers.parts, word)
  const foreign = (words: readonly string[]): boolean =>
    words.some((w) => !knows(w)) && words.some((w) => w.length >= LEAST_FOREIGN)
  const added = <T>(table: Table<T>, from: Table<T>): Table<T> => {
    const made = new Map<string, readonly Entry<T>[]>()
    const get = (word: string): readonly Entry<T>[] => {
      const known = made.get(word)
      if (known) return known
      const fresh = from.has(word) ? from.get(word).filter((e) => foreign(e.words)) : []
      const entries =
        fresh.length === 0
          ? table.get(word)
          : [...table.get(word), ...fresh].toSorted((a, b) => b.words.length - a.words.length)
      if (entries.length > 0) made.set(word, entries)
      return entries
    }
    return {
      get,
      has: (word) => table.has(word) || (from.has(word) && get(word).length > 0),
      words: () => [...new Set([...table.words(), ...from.words()])].filter((word) => get(word).length > 0),
    }
  }
  const numbersOf = (mine: Readonly<Record<string, number>>, theirs: Readonly<Record<string, number>>) => ({
    ...Object.fromEntries(Object.entries(theirs).filter(([word]) => foreign([word]))),
    ...mine,
  })
  const { numbers } = home.locale
  return {
    ...home,
    concepts: added(home.concepts, other.concepts),
    units: added(home.units, other.units),
    locale: {
      ...home.locale,
      numbers: {
        ...numbers,
        words: numbersOf(numbers.words, other.locale.numbers.words),
        parts: numbersOf(numbers.parts, other.locale.numbers.parts),
        stuckUnits: [...numbers.stuckUnits, ...other.locale.numbers.stuckUnits],
        powered: [...numbers.powered, ...other.locale.numbers.powered],
      },
    },
    slips: new Map(),
  }
}

/** What one spelling means: its concepts, whether it is a unit or a number, and whether it is a concept's plain name:
 *  the first single word that the locale lists for it. */
export function meaningsOf(
  lexicon: Lexicon,
  said: string,
): { readonly concepts: readonly Concept[]; readonly unit: boolean; readonly first: boolean } {
  const words = said.split(' ')
  const whole = <T>(table: Table<T>): Entry<T> | undefined =>
    table.get(words[0]).find((e) => e.words.length === words.length && e.words.every((w, i) => w === words[i]))
  const { words: numbers, parts } = lexicon.locale.numbers
  const concepts = whole(lexicon.concepts)?.meanings ?? []
  return {
    concepts,
    unit: whole(lexicon.units) !== undefined || Object.hasOwn(numbers, said) || Object.hasOwn(parts, said),
    first: concepts.some((c) => lexicon.locale.words[c].find((spelling) => !spelling.includes(' ')) === said),
  }
}

/** The lexicon with phrases that go before its own. */
export function withPhrases(
  lexicon: Lexicon,
  phrases: readonly { readonly words: readonly string[]; readonly meanings: Concept[]; readonly facts: Facts }[],
): Lexicon {
  const fresh = new Map<string, readonly Entry<Concept>[]>()
  for (const { words, meanings } of phrases) {
    const last = words.at(-1) as string
    for (const form of [words, [...words.slice(0, -1), `${last}s`]]) {
      const known = fresh.get(form[0]) ?? lexicon.concepts.get(form[0])
      const others = known.filter((e) => e.words.join(' ') !== form.join(' '))
      fresh.set(
        form[0],
        [{ words: form, meanings }, ...others].toSorted((x, y) => y.words.length - x.words.length),
      )
    }
  }
  const { concepts } = lexicon
  return {
    ...lexicon,
    concepts: {
      get: (word) => fresh.get(word) ?? concepts.get(word),
      has: (word) => fresh.has(word) || concepts.has(word),
      words: () => new Set([...concepts.words(), ...fresh.keys()]),
    },
    own: phrases,
    slips: new Map(),
  }
}

/** The word of the lexicon that is meant: itself, or the nearest one a slip away, or null. */
export function meantWord(lexicon: Lexicon, said: string): string | null {
  if (lexicon.concepts.has(said) || lexicon.units.has(said)) return said
  if (said.length < LEAST_GUESSED || lexicon.plain.has(said)) return null
  const kept = lexicon.slips.get(said)
  if (kept !== undefined) return kept
  const found = nearest(lexicon.guessable(said[0]), said)
  if (lexicon.slips.size >= SLIPS_KEPT) lexicon.slips.clear()
  lexicon.slips.set(said, found)
  return found
}

function nearest(candidates: readonly string[], said: string): string | null {
  const allowed = said.length >= 8 ? 2 : 1
  let best: string | null = null
  let bestSlips = allowed + 1
  for (const word of candidates) {
    if (word.length < 4 || Math.abs(word.length - said.length) > allowed) continue
    // A four-letter word is a letter away from too many others: only swapped or doubled letters are forgiven.
    const slips = editDistance(word, said, bestSlips)
    if (
      said.length === 4 &&
      slips > 0 &&
      [...said].toSorted().join() !== [...word].toSorted().join() &&
      word.length !== 5
    )
      continue
    if (slips < bestSlips) {
      best = word
      bestSlips = slips
    }
  }
  return best
}

/** Letters wrong, missing, too many or swapped between two words, counted up to `limit`. */
export function editDistance(a: string, b: string, limit: number): number {
  let before: number[] = []
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j)
  for (let i = 1; i <= a.length; i++) {
    const row = [i]
    let least = i
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1]
      let slips = Math.min(previous[j] + 1, row[j - 1] + 1, previous[j - 1] + (same ? 0 : 1))
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) slips = Math.min(slips, before[j - 2] + 1)
      row.push(slips)
      if (slips < least) least = slips
    }
    if (least >= limit) return limit
    before = previous
    previous = row
  }
  return previous[b.length]
}

const textAt = (tokens: readonly Token[], i: number): string => {
  const token = tokens[i]
  return token === undefined || (token.kind === 'number' && !token.spelled) ? '' : token.text
}

function longestAt<T>(table: Table<T>, lexicon: Lexicon, tokens: readonly Token[], i: number): Entry<T> | null {
  const said = textAt(tokens, i)
  if (said === '') return null
  const word = tokens[i].kind === 'word' ? (meantWord(lexicon, said) ?? said) : said
  for (const entry of table.get(word)) {
    let fits = true
    for (let k = 1; fits && k < entry.words.length; k++) {
      const next = textAt(tokens, i + k)
      fits = next === entry.words[k] || (next.length >= LEAST_GUESSED && meantWord(lexicon, next) === entry.words[k])
    }
    if (fits) return entry
  }
  return null
}

/** The unit spelled at token i, and how many tokens it takes. */
export function unitAt(
  lexicon: Lexicon,
  tokens: readonly Token[],
  i: number,
): { unit: UnitName; count: number } | null {
  const entry = longestAt(lexicon.units, lexicon, tokens, i)
  return entry ? { unit: entry.meanings[0], count: entry.words.length } : null
}

/** Every meaning found in the tokens, in order. */
export function marksOf(lexicon: Lexicon, tokens: readonly Token[]): Mark[] {
  const marks: Mark[] = []
  let i = 0
  while (i < tokens.length) {
    const entry = longestAt(lexicon.concepts, lexicon, tokens, i)
    if (entry) for (const concept of entry.meanings) marks.push({ concept, first: i, count: entry.words.length })
    i += entry?.words.length ?? 1
  }
  return marks
}
