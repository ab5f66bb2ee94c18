/** What a channel remembers: a fold of its entries. Two layers: the talk (what was asked last) and the job (what was stated). */
import type { FactName, Facts } from '../facts.ts'
import type { Concept } from '../language/concepts.ts'
import type { OwnWord } from '../language/own-words.ts'
import type { DecimalHabit } from '../language/rooms.ts'
import type { Entry } from '../message.ts'
import type { Topic } from '../reply.ts'

/** What the channel's last message asked and got. */
export type Talk = {
  readonly topic: Topic
  /** What the topic was answered from: said, then filled from the talk before and the job. */
  readonly facts: Facts
  readonly values: Readonly<Record<string, number | string>>
  readonly language: string
  readonly metric: boolean
  /** The message as typed, for what a topic of its own reads out of it. */
  readonly text: string
  readonly person: string
  /** The meanings heard in it: what a follow-up leaves unsaid. */
  readonly cues: readonly Concept[]
  /** The facts its last message itself brought. */
  readonly lastSaid: readonly FactName[]
}

export type Person = {
  readonly decimals?: DecimalHabit
  readonly language?: string
  readonly cautions?: Readonly<Record<string, string>>
}

export type Memory = {
  readonly version: 1
  readonly talk: Talk | null
  readonly facts: Facts
  readonly people: Readonly<Record<string, Person>>
  /** The crew's own words, in the order they were told. */
  readonly words: readonly OwnWord[]
  /** A short question the bot asked back, waiting for its answer. */
  readonly asked: { readonly question: string; readonly text: string; readonly person: string } | null
}

export const emptyMemory: Memory = { version: 1, talk: null, facts: {}, people: {}, words: [], asked: null }

/** A new entry as the core makes it; the shell adds who, when and the message id. */
export type NewEntry = { readonly kind: EntryKind; readonly version: number; readonly body: unknown }

export const ENTRY_KINDS = ['talk', 'facts', 'person', 'word', 'asked'] as const
export type EntryKind = (typeof ENTRY_KINDS)[number]

type Folder = (memory: Memory, body: never, entry: Entry) => Memory

const FOLDERS: Readonly<Record<EntryKind, Folder>> = {
  talk: (memory, talk: Talk) => ({ ...memory, talk, asked: null }),
  facts: (memory, facts: Facts) => ({ ...memory, facts }),
  person: (memory, person: Person, entry) => ({
    ...memory,
    people: { ...memory.people, [entry.person]: { ...memory.people[entry.person], ...person } },
  }),
  word: (memory, { word, means }: { word: string; means: string | null }) => ({
    ...memory,
    words: [...memory.words.filter((own) => own.word !== word), ...(means === null ? [] : [{ word, means }])],
  }),
  asked: (memory, asked: Memory['asked']) => ({ ...memory, asked }),
}

/** The memory after one more entry. An entry of a kind this version does not know is passed over. */
export function fold(memory: Memory, entry: Entry): Memory {
  const folder = Object.hasOwn(FOLDERS, entry.kind) ? FOLDERS[entry.kind as EntryKind] : undefined
  return folder ? folder(memory, entry.body as never, entry) : memory
}
