/** The rules, cautions and troubles of config/, as plain types. Words for each stand in the locales' phrases:
 *  `rule.ID`, `rule.ID.why`, `rule.ID.example`; `caution.ID`, `caution.ID.tag`; `trouble.ID` and what hangs on it.
 *  `rules/check.ts` holds the strict checks. */
import type { Lumber, Section } from '../core/substrate/joists.ts'
import type { Panel } from '../core/substrate/subfloor.ts'
import type { Amount } from '../phrase.ts'
import type { Topic } from '../reply.ts'

/** How a source is known: read itself, only reported by another text, from memory, a practice without a source,
 *  or the product's own sheet. */
export const SOURCE_READ = ['read', 'reported', 'memory', 'practice', 'sheet'] as const
export type SourceRead = (typeof SOURCE_READ)[number]
export type Source = {
  readonly name: string
  readonly section?: string
  readonly edition?: string
  readonly read: SourceRead
}

/** `other`: a country whose own rules the book does not hold. */
export const COUNTRIES = ['US', 'UK', 'AU', 'other'] as const
export type Country = (typeof COUNTRIES)[number]

/** What a rule can hang on. Words come from the locale's cues, numbers from what was heard. */
export const WORD_CONDITIONS = [
  'place',
  'surface',
  'material',
  'bond',
  'facing',
  'exposure',
  'grout',
  'face',
  'mortar',
  'bound',
  'base',
  'crack',
  'hands',
] as const
export const NUMBER_CONDITIONS = ['edge', 'joint'] as const
export type WordCondition = (typeof WORD_CONDITIONS)[number]
export type NumberCondition = (typeof NUMBER_CONDITIONS)[number]
export type Condition = WordCondition | NumberCondition

/** Words: one of these must hold; `-wet` means "not wet", which also holds where nothing was said;
 *  `+stone` must have been said, while `wet` is asked for where nothing was.
 *  Numbers [mm]: from (included) and below. */
export type When = { readonly [C in WordCondition]?: readonly string[] } & {
  readonly [C in NumberCondition]?: readonly [from: number | null, below: number | null]
}

export type Verdict = 'yes' | 'no' | 'depends'
export type Sense = 'least' | 'most'

export type Rule = {
  readonly id: string
  readonly topic: Topic
  /** Rules of one subject exclude each other by their conditions. */
  readonly subject: string
  readonly when?: When
  /** The figure of the rule under its key of the `ask` contract, SI; a proposal must be at least or at most this. */
  readonly limit?: { readonly key: string; readonly value: number; readonly sense: Sense }
  /** Only from here on is a proposal safe whatever the case; between this and the limit it depends. */
  readonly sure?: number
  /** More values to give, such as the ends of a range. */
  readonly values?: Readonly<Record<string, number>>
  /** The verdict on "may it be done?", where it needs no figure. */
  readonly ok?: Verdict
  /** The verdict on "must it be done?". */
  readonly need?: Verdict
  readonly amounts?: Readonly<Record<string, Amount>>
  /** A key of `sources`. */
  readonly source: string
  readonly kind: 'standard' | 'practice' | 'sheet'
  /** US where absent. */
  readonly country?: Country
  readonly cautions?: readonly string[]
}

export type RuleBook = {
  readonly sources: Readonly<Record<string, Source>>
  readonly rules: readonly Rule[]
}

/** `always`: told in full each time; else once a topic, person and day, then as its tag. */
export type Caution = {
  readonly id: string
  readonly always: boolean
  readonly topics: readonly Topic[]
  readonly source: string
}

/** A trouble in mid-job; `causes` counts its phrases `trouble.ID.cause.1` and on, likeliest first. */
export type Trouble = {
  readonly id: string
  readonly action: 'stop' | 'go-on' | 'lift'
  readonly causes: number
  readonly source: string
  readonly cautions?: readonly string[]
  readonly rules?: readonly string[]
}

export type LumberBook = {
  readonly note: string
  readonly sections: readonly Section[]
  /** `confirmed`: a printed span table was regenerated from these values. */
  readonly species: readonly (Lumber & { readonly confirmed: boolean; readonly source: string })[]
  readonly panels: { readonly source: string; readonly rows: readonly Panel[] }
}
