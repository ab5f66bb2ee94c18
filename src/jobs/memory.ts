/** What a channel remembers: a fold of its entries. Two layers: the talk (what was asked last) and the job (what was stated). */
import type { FactName, Facts } from '../facts.ts'
import type { Concept } from '../language/concepts.ts'
import type { OwnWord } from '../language/own-words.ts'
import type { DecimalHabit } from '../language/room-sides.ts'
import type { Entry } from '../message.ts'
import type { Topic } from '../reply.ts'
import {
  type Change,
  differing,
  emptyJob,
  type Job,
  picked,
  type ReadingBody,
  reverted,
  type UndoBody,
  type UseBody,
  useId,
  withChange,
  withPoint,
  withReading,
  withUse,
} from './job.ts'

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

const MOST_PARKED = 30
/** Reminders that can run in one channel at a time. */
export const MOST_PROMISED = 50
/** How long one that went out can still be put off [ms]. */
const KEPT_AFTER_MS = 12 * 3_600_000
const PARKED_CHANGES = 20

type Folder = (memory: Memory, body: never, entry: Entry) => Memory

const by = (entry: Entry) => ({
  at: entry.at,
  person: entry.person,
  ...(entry.personName === undefined ? {} : { personName: entry.personName }),
  messageId: entry.messageId,
})

/** A change of the job makes the talk before it final, unless one message did both. */
const stands = (memory: Memory, entry: Entry): Pick<Memory, 'talkBefore'> => ({
  talkBefore: entry.messageId === memory.talkMessage ? memory.talkBefore : null,
})

const FOLDERS: Readonly<Record<EntryKind, Folder>> = {
  talk: (memory, talk: Talk, entry) => ({
    ...memory,
    talk,
    talkBefore: memory.talk,
    talkMessage: entry.messageId,
    asked: null,
  }),
  facts: (memory, body: { facts: Facts }, entry) => {
    const keys = differing(memory.facts, body.facts)
    if (keys.length === 0) return memory
    const change: Change = {
      ...by(entry),
      is: 'facts',
      keys,
      was: picked(memory.facts, keys),
      now: picked(body.facts, keys),
    }
    return { ...memory, ...stands(memory, entry), facts: body.facts, job: withChange(memory.job, change) }
  },
  person: (memory, person: Person, entry) => ({
    ...memory,
    people: { ...memory.people, [entry.person]: { ...memory.people[entry.person], ...person } },
  }),
  word: (memory, { word, means }: { word: string; means: string | null }) => ({
    ...memory,
    words: [...memory.words.filter((own) => own.word !== word), ...(means === null ? [] : [{ word, means }])],
  }),
  asked: (memory, asked: Memory['asked']) => ({ ...memory, asked }),
  use: (memory, use: UseBody, entry) => {
    const id = useId(entry)
    const job = withUse(memory.job, { ...use, ...by(entry), id })
    return { ...memory, ...stands(memory, entry), job: withChange(job, { ...by(entry), is: 'use', id }), asked: null }
  },
  reading: (memory, reading: ReadingBody, entry) => {
    const id = useId(entry)
    const job = withReading(memory.job, { ...reading, ...by(entry), id })
    return {
      ...memory,
      ...stands(memory, entry),
      job: withChange(job, { ...by(entry), is: 'reading', id }),
      asked: null,
    }
  },
  undo: (memory, _body, entry) => undone(memory, entry),
  job: (memory, body: JobBody, entry) => moved(memory, body, entry.at),
  point: (memory, body: { name: string }, entry) => ({
    ...memory,
    job: withPoint(memory.job, { ...by(entry), name: body.name, facts: memory.facts }),
  }),
  remind: (memory, promise: Promised, entry) => {
    const overMs = Temporal.Instant.from(entry.at).epochMilliseconds - KEPT_AFTER_MS
    const others = memory.promised.filter((p) => p.id !== promise.id && p.dueMs > overMs)
    return { ...memory, promised: [...others, promise].slice(-MOST_PROMISED) }
  },
  unremind: (memory, body: { ids: readonly string[] }) => ({
    ...memory,
    promised: memory.promised.filter((p) => !body.ids.includes(p.id)),
  }),
}

/** Older bodies brought up to the newest version, step by step. */
const UPGRADES: Readonly<Partial<Record<EntryKind, readonly ((body: never) => unknown)[]>>> = {
  // Before version 2 no room was tiled otherwise than the rest.
  talk: [(talk: Talk) => talk],
  // Version 1 was the facts themselves; before version 3 no room was tiled otherwise than the rest.
  facts: [(facts: Facts) => ({ facts }), (body: { facts: Facts }) => body],
  // Version 1 had no rows.
  use: [(use: UseBody) => use],
  // Version 1 had no photos.
  reading: [(reading: ReadingBody) => reading],
}

/** What undo would do now: the job's last change, the talk's, the job put aside, or nothing. */
export function undoable(memory: Memory): 'change' | 'talk' | 'parked' | null {
  const change = memory.job.changes.findLast(stillStands)
  const { talk, talkBefore, talkMessage } = memory
  if (talkBefore !== null && talk !== null && talk.lastSaid.length > 0 && talkMessage !== change?.messageId)
    return 'talk'
  if (change) return 'change'
  return memory.parked.length > 0 ? 'parked' : null
}

/** The undo that the next entry would be, with what it takes back of the log. */
export function undoEntry(memory: Memory): { readonly kind: 'undo'; readonly version: 1; readonly body: UndoBody } {
  const change = undoable(memory) === 'change' ? memory.job.changes.findLast(stillStands) : undefined
  const uses = memory.job.changes.flatMap((c) =>
    c.is === 'use' && stillStands(c) && c.messageId === change?.messageId ? [c.id] : [],
  )
  return { kind: 'undo', version: 1, body: uses.length > 0 ? { uses } : {} }
}

const stillStands = (change: Change): boolean => change.is !== 'undo' && !change.undone

function undone(memory: Memory, entry: Entry): Memory {
  const what = undoable(memory)
  if (what === null) return memory
  if (what === 'talk') return { ...memory, talk: memory.talkBefore, talkBefore: null, talkMessage: null, asked: null }
  if (what === 'parked') {
    const last = memory.parked[memory.parked.length - 1]
    return moved(memory, { act: 'open', n: last.job.n }, entry.at)
  }
  const { messageId } = memory.job.changes.findLast(stillStands) as Change
  const base = { ...memory, talkBefore: null, talkMessage: null, asked: null }
  const without = memory.job.changes.reduceRight(
    (m, change) => (stillStands(change) && change.messageId === messageId ? withoutChange(m, change) : m),
    base as Memory,
  )
  const changes = memory.job.changes.map((c) =>
    stillStands(c) && c.messageId === messageId ? { ...c, ...takenUse(c, memory.job), undone: true } : c,
  )
  return { ...without, job: withChange({ ...without.job, changes }, { ...by(entry), is: 'undo' }) }
}

/** What a log entry told, for the history, once it is taken back. */
function takenUse(change: Change, job: Job): { readonly use?: UseBody } {
  const use = change.is === 'use' ? job.uses.find(({ id }) => id === change.id) : undefined
  if (use === undefined) return {}
  const { id: _i, at: _a, person: _p, personName: _n, messageId: _m, ...told } = use
  return { use: told }
}

function withoutChange(memory: Memory, change: Change): Memory {
  const { job, talk } = memory
  switch (change.is) {
    case 'facts':
      return {
        ...memory,
        talk: talk && { ...talk, facts: reverted(talk.facts, change.keys, change.was) },
        facts: reverted(memory.facts, change.keys, change.was),
      }
    case 'use':
      return { ...memory, job: { ...job, uses: job.uses.filter((use) => use.id !== change.id) } }
    case 'reading':
      return { ...memory, job: { ...job, readings: job.readings.filter((r) => r.id !== change.id) } }
    case 'undo':
      return memory
  }
}

/** Nothing was said of the current job yet. */
const isBlank = (memory: Memory): boolean =>
  memory.job.name === null && memory.job.changes.length === 0 && Object.keys(memory.facts).length === 0

function moved(memory: Memory, body: JobBody, at: string): Memory {
  if (body.act === 'name') return { ...memory, job: { ...memory.job, name: body.name } }
  const slim = { ...memory.job, changes: memory.job.changes.slice(-PARKED_CHANGES) }
  const aside = isBlank(memory) ? memory.parked : [...memory.parked, { job: slim, facts: memory.facts, at }]
  const fresh = { ...memory, talk: null, talkBefore: null, talkMessage: null, asked: null }
  if (body.act === 'start') {
    const n = Math.max(memory.job.n, ...memory.parked.map((p) => p.job.n)) + (isBlank(memory) ? 0 : 1)
    // The zone and the country are the channel's place, not the job's tile: they go along.
    const { zone, country } = memory.facts
    const facts = { ...(zone === undefined ? {} : { zone }), ...(country === undefined ? {} : { country }) }
    return { ...fresh, facts, job: { ...emptyJob, n, name: body.name }, parked: aside.slice(-MOST_PARKED) }
  }
  const found = memory.parked.find((p) => p.job.n === body.n)
  if (!found) return memory
  return {
    ...fresh,
    facts: found.facts,
    job: found.job,
    parked: aside.filter((p) => p !== found).slice(-MOST_PARKED),
  }
}

/** False for an entry that a newer version of the program wrote: it is kept in the store and left out here. */
export const understands = (entry: Pick<Entry, 'kind' | 'version'>): boolean =>
  Object.hasOwn(ENTRY_VERSIONS, entry.kind) && entry.version <= ENTRY_VERSIONS[entry.kind as EntryKind]

/** A memory with every field, also where an older version of the program made it. */
export const completed = (memory: Memory): Memory =>
  memory.job === undefined || memory.words === undefined ? { ...emptyMemory, ...memory } : memory

/** The memory after one more entry. An entry this version does not know is passed over. */
export function fold(memory: Memory, entry: Entry): Memory {
  if (!understands(entry)) return memory
  const kind = entry.kind as EntryKind
  const upgrades = UPGRADES[kind] ?? []
  const body = upgrades.slice(Math.max(0, entry.version - 1)).reduce((b, up) => up(b as never), entry.body)
  return FOLDERS[kind](completed(memory), body as never, entry)
}
