/** Reads a rule question in one locale's words: subject, conditions, stance, figures. */
import { type CueHit, type CueIndex, type CueTable, indexCues, matchCues, namesIn, plainWords } from './cues.ts'
import { type Figures, type FigureWords, readFigures } from './rule-numbers.ts'

/** What a locale gives: tables of cues and the words around figures. */
export type RuleLocale = {
  readonly subjects: CueTable
  readonly troubles: CueTable
  readonly stances: CueTable
  readonly sums: CueTable
  readonly conditions: Readonly<Record<string, CueTable>>
  readonly figures: FigureWords
}

export type RuleWords = {
  readonly plain: string
  readonly subjects: readonly CueHit[]
  readonly troubles: readonly CueHit[]
  /** Values by condition, best first. */
  readonly conditions: Readonly<Record<string, readonly string[]>>
  readonly stances: readonly string[]
  /** A sum is wanted: bags, boxes, a picture. */
  readonly sum: boolean
  readonly figures: Figures
}

export type RuleReader = (text: string) => RuleWords

/** Compiles a locale's tables once; the reader is a pure function of the text. */
export function ruleReader(locale: RuleLocale): RuleReader {
  const subjects = indexCues(locale.subjects)
  const troubles = indexCues(locale.troubles)
  const stances = indexCues(locale.stances)
  const sums = indexCues(locale.sums)
  const conditions = Object.entries(locale.conditions).map(([name, table]) => [name, indexCues(table)] as const)
  return (text) => {
    const plain = plainWords(text)
    const found = readFigures(plain, locale.figures)
    return {
      plain,
      subjects: withReadings(matchCues(subjects, plain), found),
      troubles: matchCues(troubles, plain),
      conditions: conditionsIn(conditions, plain),
      stances: namesIn(stances, plain),
      sum: namesIn(sums, plain).length > 0,
      figures: found,
    }
  }
}

/** A gap over an edge speaks of flatness whatever the words beside it. */
function withReadings(hits: readonly CueHit[], { gap }: Figures): readonly CueHit[] {
  if (!gap || hits[0]?.name === 'flatness') return hits
  const flat = { name: 'flatness', score: 5 }
  return [...hits.filter((hit) => hit.name !== 'flatness'), flat].sort((a, b) => b.score - a.score)
}

function conditionsIn(tables: readonly (readonly [string, CueIndex])[], plain: string): Record<string, string[]> {
  const found: Record<string, string[]> = {}
  for (const [name, index] of tables) {
    const values = namesIn(index, plain)
    if (values.length > 0) found[name] = values
  }
  return found
}
