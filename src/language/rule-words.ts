/** Reads a rule question in one locale's words: subject, conditions, stance, figures. */
import { type CueHit, type CuesFound, type CueTable, cueBook, cuesIn, mend, plainWords, vocabularyOf } from './cues.ts'
import { type MeasureWords, NO_MEASURE_WORDS } from './measure-words.ts'
import { type Measures, readMeasures } from './rule-measures.ts'
import { type Figures, type FigureWords, NO_FIGURE_WORDS, readFigures, tellingFigures } from './rule-numbers.ts'

/** What a locale gives: tables of cues and the words around figures. */
export type RuleLocale = {
  readonly subjects: CueTable
  readonly troubles: CueTable
  readonly stances: CueTable
  readonly sums: CueTable
  readonly sizes: CueTable
  readonly whys: CueTable
  readonly conditions: Readonly<Record<string, CueTable>>
  /** The trade's longer words, to mend slips by. */
  readonly trade: readonly string[]
  readonly figures: FigureWords
  /** What a message measured, by the words that go with it; only then are the figures looked for. */
  readonly measuring: CueTable
  readonly measures: MeasureWords
}

/** No word that finds a rule, for a language whose words for them are not written yet; figures are read as in English. */
export const NO_RULE_WORDS: RuleLocale = {
  subjects: {},
  troubles: {},
  stances: {},
  sums: {},
  whys: {},
  sizes: {},
  conditions: {},
  figures: NO_FIGURE_WORDS,
  measuring: {},
  trade: [],
  measures: NO_MEASURE_WORDS,
}

export type RuleWords = {
  readonly plain: string
  readonly subjects: readonly CueHit[]
  readonly troubles: readonly CueHit[]
  /** Values by condition, best first. */
  readonly conditions: Readonly<Record<string, readonly string[]>>
  readonly stances: readonly string[]
  /** A size by a word: `large`, `small` or null. */
  readonly size: 'large' | 'small' | null
  /** The cause or the cure is wanted. */
  readonly why: boolean
  /** A sum is wanted: bags, boxes, a picture. */
  readonly sum: boolean
  readonly figures: Figures
  /** Names of what seems to be measured. */
  readonly measuring: readonly string[]
  /** Joists, readings, voids, diagonals: what is worked out rather than looked up. */
  readonly measures: Measures
}

export type RuleReader = (text: string) => RuleWords

const readers = new WeakMap<RuleLocale, RuleReader>()

/** The reader of a locale's tables, compiled once. */
export function readerOf(locale: RuleLocale): RuleReader {
  const known = readers.get(locale)
  if (known) return known
  const made = ruleReader(locale)
  readers.set(locale, made)
  return made
}

/** A condition's table in the book: conditions share no name with the other tables. */
const conditionTable = (name: string): string => `condition ${name}`

/** Compiles a locale's tables once; the reader is a pure function of the text. */
export function ruleReader(locale: RuleLocale): RuleReader {
  const { subjects, troubles, stances, measuring, sizes, sums, whys } = locale
  const conditions = Object.keys(locale.conditions)
  const book = cueBook({
    ...{ subjects, troubles, stances, measuring, sizes, sums, whys },
    ...Object.fromEntries(conditions.map((name) => [conditionTable(name), locale.conditions[name]!])),
  })
  const vocabulary = vocabularyOf(locale.trade)
  return (text) => {
    const plain = mend(vocabulary, plainWords(text))
    const cues = cuesIn(book, plain)
    const figures = once(() => readFigures(plain, locale.figures))
    const all = once(() => withReadings(cues.hits('subjects'), tellingFigures(plain, locale.figures)))
    const said = once(() => conditionsIn(conditions, cues))
    return {
      plain,
      get subjects() {
        return all()
      },
      get troubles() {
        return cues.hits('troubles')
      },
      get conditions() {
        return said()
      },
      get stances() {
        return cues.names('stances')
      },
      get size() {
        return (cues.names('sizes')[0] as 'large' | 'small' | undefined) ?? null
      },
      get why() {
        return cues.hits('whys').length > 0
      },
      get sum() {
        return cues.hits('sums').length > 0
      },
      get measuring() {
        return ROWS.test(text) ? ['heights', ...cues.names('measuring')] : cues.names('measuring')
      },
      measures: readMeasures(text, plain, locale.measures, locale.figures),
      get figures() {
        return figures()
      },
    }
  }
}

/** Two lines of bare figures, one under the other. */
const ROWS = /^[-+\d./, \t|]+\n[-+\d./, \t|]+$/mu

/** Worked out when it is first asked for, and then kept: most messages are no rule questions. */
function once<T>(make: () => T): () => T {
  let made: { readonly value: T } | null = null
  return () => {
    made ??= { value: make() }
    return made.value
  }
}

/** Figures speak for themselves where no words do. */
const TELLING = {
  gap: { name: 'flatness', score: 5 },
  fall: { name: 'shower-slope', score: 3 },
  share: { name: 'offset', score: 1.5 },
  cold: { name: 'min-temperature', score: 1 },
  heat: { name: 'hot', score: 1 },
} as const

function withReadings(hits: readonly CueHit[], telling: readonly (keyof typeof TELLING)[]): readonly CueHit[] {
  if (telling.length === 0) return hits
  const all = [...hits, ...telling.map((figure) => TELLING[figure])].sort((a, b) => b.score - a.score)
  return all.filter((hit, i) => all.findIndex((other) => other.name === hit.name) === i)
}

function conditionsIn(conditions: readonly string[], cues: CuesFound): Record<string, readonly string[]> {
  const found: Record<string, readonly string[]> = {}
  for (const name of conditions) {
    const values = cues.names(conditionTable(name))
    if (values.length > 0) found[name] = values
  }
  return found
}
