/** The fold: a channel's memory after one more entry, older entries brought up to the newest version first. */
import type { Facts } from '../facts.ts'
import type { Entry } from '../message.ts'
import {
  by,
  type Change,
  differing,
  picked,
  type ReadingBody,
  type UseBody,
  useId,
  withChange,
  withPoint,
  withReading,
  withUse,
} from './job.ts'
import {
  completed,
  ENTRY_VERSIONS,
  type EntryKind,
  type JobBody,
  KEPT_AFTER_MS,
  type Memory,
  type Person,
  type Promised,
  type Talk,
} from './memory.ts'
import { moved } from './parked.ts'
import { undone } from './undo.ts'

/** Reminders that can run in one channel at a time. */
export const MOST_PROMISED = 50

type Folder = (memory: Memory, body: never, entry: Entry) => Memory

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
  point: (memory, { name }: { name: string }, entry) => {
    const was = memory.job.points.find((point) => point.name === name)
    const job = withPoint(memory.job, { ...by(entry), name, facts: memory.facts })
    const change: Change = { ...by(entry), is: 'point', name, ...(was ? { was } : {}) }
    return { ...memory, ...stands(memory, entry), job: withChange(job, change) }
  },
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

/** False for an entry that a newer version of the program wrote: it is kept in the store and left out here. */
export const understands = (entry: Pick<Entry, 'kind' | 'version'>): boolean =>
  Object.hasOwn(ENTRY_VERSIONS, entry.kind) && entry.version <= ENTRY_VERSIONS[entry.kind as EntryKind]

/** The memory after one more entry. An entry this version does not know is passed over. */
export function fold(memory: Memory, entry: Entry): Memory {
  if (!understands(entry)) return memory
  const kind = entry.kind as EntryKind
  const upgrades = UPGRADES[kind] ?? []
  const body = upgrades.slice(Math.max(0, entry.version - 1)).reduce((b, up) => up(b as never), entry.body)
  return FOLDERS[kind](completed(memory), body as never, entry)
}
