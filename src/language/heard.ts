/** A crew's message as it was heard, and what is known before it is. */
import type { Facts, Room, Tiling } from '../facts.ts'
import type { Problem, Span } from '../problem.ts'
import type { UnitName } from '../units/names.ts'
import type { CommandWords } from './command-words.ts'
import type { Concept } from './concepts.ts'
import type { Item } from './items.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'
import type { DecimalHabit, RoomNote } from './room-sides.ts'
import type { RuleWords } from './rule-words.ts'
import type { Loose } from './singles.ts'
import type { Size } from './sizes.ts'
import type { PlainText } from './text.ts'
import type { Token, Unreadable } from './tokens.ts'

export type Heard = {
  /** As it was typed. */
  readonly typed: string
  readonly plain: PlainText
  readonly reader: Reader
  readonly tokens: readonly Token[]
  readonly marks: readonly Mark[]
  readonly quantities: readonly Quantity[]
  readonly items: readonly Item[]
  readonly sizes: readonly Size[]
  readonly loose: readonly Loose[]
  readonly durationsH: readonly number[]
  readonly percents: readonly number[]
  readonly unreadable: readonly Unreadable[]
  readonly facts: Facts
  /** Where tiles were told for several rooms: each stretch's text, rooms and tiling. The facts hold the last one's. */
  readonly byRoom: readonly Stretched[]
  readonly notes: readonly HeardNote[]
  /** Metric or imperial by the units written; null where none were. */
  readonly system: 'metric' | 'imperial' | null
  /** Units named without a figure: "how many quarts". */
  readonly freeUnits: readonly UnitName[]
  readonly problem: Problem | null
  /** The message read as a question for the rule book; worked out when it is first looked at. */
  readonly rules: RuleWords
  /** What steers the job, and what was done. */
  readonly commands: CommandWords
  /** The same of another text, such as the message before. */
  rulesOf(text: string): RuleWords
  has(...concepts: readonly Concept[]): boolean
  /** Where a span of the plain text stands in the message as typed. */
  at(span: Span): Span
}

export type Stretched = { readonly text: string; readonly rooms: readonly Room[]; readonly tiling: Tiling }

export type HeardNote =
  | RoomNote
  | { readonly key: 'pair-is-room' | 'pair-is-tile' | 'tile-unit'; readonly said: string; readonly unit?: string }

/** What the channel knows already, as far as it helps to read a bare pair. */
export type HearContext = {
  readonly hasRoom: boolean
  readonly hasTile: boolean
  /** The talk is of something laid without tile: a bare pair is the floor. */
  readonly roomRather?: boolean
  readonly metric: boolean | null
  readonly decimals: DecimalHabit
}

export const NOTHING_KNOWN: HearContext = { hasRoom: false, hasTile: false, metric: null, decimals: null }
