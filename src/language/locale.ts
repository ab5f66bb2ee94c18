/** What a language must bring: one folder of data. No code of a locale runs but its tables. */

import type { Way } from '../facts.ts'
import type { UnitName } from '../units/names.ts'
import type { CommandLocale } from './command-words.ts'
import type { Concept } from './concepts.ts'
import type { TimeWords } from './moments.ts'
import type { OwnWordPatterns } from './own-words.ts'
import type { RuleLocale } from './rule-words.ts'
import type { NumberWriting } from './tokens.ts'

/** What stands before decimals and between thousands in a number that is told. */
export type Separators = { readonly decimal: string; readonly thousands: string }

export type Locale = {
  readonly code: string
  /** As Intl wants it, for dates and plurals. */
  readonly intl: string
  readonly separators: Separators
  /** How a person asks for this language, in any language: phrases of two words or more anywhere in a message, single words alone. */
  readonly askedFor: readonly string[]
  readonly numbers: NumberWriting
  /** Spellings of each unit, of one or more words, without accents. A unit the language lacks has an empty list. */
  readonly units: Readonly<Record<UnitName, readonly string[]>>
  /** Spellings of each concept, of one or more words, without accents. */
  readonly words: Readonly<Record<Concept, readonly string[]>>
  /** Everyday words that are never a misspelling of a trade word. */
  readonly plain: readonly string[]
  /** Letters that stand for the way a wall runs, as on a sketch: "12 r, 8 d". */
  readonly wayLetters: Readonly<Record<string, Way>>
  readonly times: TimeWords
  /** The noun that says what a figure is comes before it ("junta de 3 mm") rather than after. */
  readonly nounFirst: boolean
  /** Words that find a rule, its conditions, trouble, and how it is asked. */
  readonly rules: RuleLocale
  /** How the crew's own words are told, listed and taken back. */
  readonly ownWords: OwnWordPatterns
  /** Words that steer the job: undo, start over, what was used. */
  readonly commands: CommandLocale
  /** The catalogue. */
  readonly phrases: Readonly<Record<string, string>>
}
