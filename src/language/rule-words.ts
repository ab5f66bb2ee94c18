/** Reads a rule question in one locale's words: subject, conditions, stance, figures. */
import {
  type CueHit,
  type CueIndex,
  type CueTable,
  indexCues,
  matchCues,
  mend,
  namesIn,
  plainWords,
  vocabularyOf,
  type Wording,
  wordingOf,
} from './cues.ts'
import { type Measures, type MeasureWords, NO_MEASURE_WORDS, readMeasures } from './rule-measures.ts'
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

/** Compiles a locale's tables once; the reader is a pure function of the text. */
export function ruleReader(locale: RuleLocale): RuleReader {
  const subjects = indexCues(locale.subjects)
  const troubles = indexCues(locale.troubles)
  const stances = indexCues(locale.stances)
  const measuring = indexCues(locale.measuring)
  const sizes = indexCues(locale.sizes)
  const sums = indexCues(locale.sums)
  const whys = indexCues(locale.whys)
  const conditions = Object.entries(locale.conditions).map(([name, table]) => [name, indexCues(table)] as const)
  const vocabulary = vocabularyOf(locale.trade)
  return (text) => {
    const plain = mend(vocabulary, plainWords(text))
    const wording = wordingOf(plain)
    const figures = once(() => readFigures(plain, locale.figures))
    const all = once(() => withReadings(matchCues(subjects, wording), tellingFigures(plain, locale.figures)))
    const trouble = once(() => matchCues(troubles, wording))
    const said = once(() => conditionsIn(conditions, wording))
    const measures = once(() => readMeasures(text, plain, locale.measures, locale.figures))
    const asked = once(() => namesIn(stances, wording))
    return {
      plain,
      get subjects() {
        return all()
      },
      get troubles() {
        return trouble()
      },
      get conditions() {
        return said()
      },
      get stances() {
        return asked()
      },
      get size() {
        return (namesIn(sizes, wording)[0] as 'large' | 'small' | undefined) ?? null
      },
      get why() {
        return namesIn(whys, wording).length > 0
      },
      get sum() {
        return namesIn(sums, wording).length > 0
      },
      get measuring() {
        return ROWS.test(text) ? ['heights', ...namesIn(measuring, wording)] : namesIn(measuring, wording)
      },
      get measures() {
        return measures()
      },
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

function conditionsIn(tables: readonly (readonly [string, CueIndex])[], wording: Wording): Record<string, string[]> {
  const found: Record<string, string[]> = {}
  for (const [name, index] of tables) {
    const values = namesIn(index, wording)
    if (values.length > 0) found[name] = values
  }
  return found
}
