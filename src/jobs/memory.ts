/** What a channel remembers: a fold of its entries. Two layers: the talk (what was asked last) and the job (what was stated). */
import type { FactName, Facts } from '../facts.ts'
import type { Concept } from '../language/concepts.ts'
import type { OwnWord } from '../language/own-words.ts'
import type { DecimalHabit } from '../language/room-sides.ts'
import type { Topic } from '../reply.ts'
import { emptyJob, type Job } from './job.ts'

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

/** A job that is not the channel's current one. */
export type ParkedJob = { readonly job: Job; readonly facts: Facts; readonly at: string }

/** A reminder that was promised. The store's clock sends it; here it can be listed, put off and cancelled. */
export type Promised = {
  readonly id: string
  /** Instant [ms since 1970]. */
  readonly dueMs: number
  /** What it is about: a wait, a bucket, or the crew's own words. */
  readonly about: 'grout' | 'walk' | 'heavy' | 'water' | 'slake' | 'pot-life' | 'note'
  readonly text: string
  readonly late: string
}

export type Memory = {
  readonly version: 1
  readonly talk: Talk | null
  /** The talk before, where the last message only changed it; what undo goes back to. */
  readonly talkBefore: Talk | null
  /** The message that changed the talk last. */
  readonly talkMessage: string | null
  /** What was stated of the current job. */
  readonly facts: Facts
  /** The rest of the current job. */
  readonly job: Job
  /** Jobs put aside, the latest last. */
  readonly parked: readonly ParkedJob[]
  readonly promised: readonly Promised[]
  readonly people: Readonly<Record<string, Person>>
  /** The crew's own words, in the order they were told. */
  readonly words: readonly OwnWord[]
  /** A short question the bot asked back, waiting for its answer. */
  readonly asked: { readonly question: string; readonly text: string; readonly person: string } | null
}

export const emptyMemory: Memory = {
  version: 1,
  talk: null,
  talkBefore: null,
  talkMessage: null,
  facts: {},
  job: emptyJob,
  parked: [],
  promised: [],
  people: {},
  words: [],
  asked: null,
}

/** A new entry as the core makes it; the shell adds who, when and the message id. */
export type NewEntry = { readonly kind: EntryKind; readonly version: number; readonly body: unknown }

/** The newest version of each kind that this program writes and reads. */
export const ENTRY_VERSIONS = {
  talk: 2,
  facts: 3,
  person: 1,
  word: 1,
  asked: 1,
  use: 2,
  reading: 2,
  undo: 1,
  job: 1,
  point: 1,
  remind: 1,
  unremind: 1,
} as const

export type EntryKind = keyof typeof ENTRY_VERSIONS

/** What a job entry does: starts one (the current one is put aside), opens one again, names the current one. */
export type JobBody =
  | { readonly act: 'start'; readonly name: string | null }
  | { readonly act: 'open'; readonly n: number }
  | { readonly act: 'name'; readonly name: string }

/** How long one that went out can still be put off [ms]. */
export const KEPT_AFTER_MS = 12 * 3_600_000

/** A memory with every field, also where an older version of the program made it. */
export const completed = (memory: Memory): Memory =>
  memory.job === undefined || memory.words === undefined ? { ...emptyMemory, ...memory } : memory
