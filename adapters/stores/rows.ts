/** How values lie in the rows of both databases. */
import type { Entry } from '../../src/message.ts'
import { type Json, type Kept, kept, type Recorded, type Reminder } from './store.ts'

/** Ids come from platforms: NUL and halves of surrogate pairs, which a database refuses, are written out. */
export const plain = (text: string): string =>
  text.replace(/[%\0]|\p{Surrogate}/gu, (c) => `%${c.charCodeAt(0).toString(16).padStart(4, '0')}`)

/** Undoes `plain`. */
export const unplain = (text: string): string =>
  text.replace(/%([0-9a-f]{4})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)))

export const parseJson = (text: string | null): Json => (text === null ? null : (JSON.parse(text) as Json))

/** An ISO time as an instant [ms since 1970], 0 where it is none. */
export const msOf = (at: string): number => Date.parse(at) || 0

/** Numbers the entries of an append after `last`. */
export const numbered = (last: number, entries: readonly Entry[]): { seq: number; entry: Entry }[] =>
  entries.map((entry, i) => ({ seq: last + 1 + i, entry }))

export type EntryRow = { readonly seq: number; readonly entry: string }
export const entryOf = ({ seq, entry }: EntryRow): { seq: number; entry: Entry } => ({
  seq,
  entry: JSON.parse(entry) as Entry,
})

export type ReminderRow = { readonly id: string; readonly due_ms: number; readonly body: string }
export const reminderOf = (row: ReminderRow): Reminder => ({
  id: unplain(row.id),
  dueMs: row.due_ms,
  body: JSON.parse(row.body) as Json,
})

export type RecordedRow = { readonly message: string; readonly at: string; readonly reply: string | null }
export const recordedOf = (row: RecordedRow): Recorded => ({
  messageId: unplain(row.message),
  at: row.at,
  reply: parseJson(row.reply),
})

export const mapped = <A, B>(read: Kept<A>, map: (value: A) => B): Kept<B> => (read.ok ? kept(map(read.value)) : read)
