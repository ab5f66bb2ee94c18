/** Moves channels between stores as lines of JSON, and out to a spreadsheet as CSV. Pages of bounded size: a store of any
 *  length goes through. */
import { z } from 'zod'
import { csvRow } from '../../src/core/csv.ts'
import { checkEntry } from '../../src/jobs/check.ts'
import type { Entry } from '../../src/message.ts'
import { BadLine } from './lines.ts'
import type { Failure, Kept, Recorded, Reminder, Store } from './store.ts'

const PAGE = 500

/** A store that failed half-way through a transfer. */
export class TransferFault extends Error {
  readonly failure: Failure
  constructor(failure: Failure) {
    super(failure.detail)
    this.failure = failure
  }
}

function value<T>(kept: Kept<T>): T {
  if (!kept.ok) throw new TransferFault(kept.failure)
  return kept.value
}

const entrySchema = z.strictObject({
  at: z.string(),
  person: z.string(),
  personName: z.string().optional(),
  messageId: z.string(),
  part: z.int().min(0),
  kind: z.string(),
  version: z.int().min(0),
  body: z.json(),
})
/** Keys are made by adapters out of plain ids; a database could not keep half a surrogate pair. */
const channelSchema = z
  .string()
  .min(1)
  .max(2000)
  .regex(/^[^\p{Control}\p{Surrogate}]+$/u)
const lineSchema = z.union([
  z.strictObject({ channel: channelSchema, entry: entrySchema }),
  z.strictObject({
    channel: channelSchema,
    answered: z.strictObject({ messageId: z.string(), at: z.string(), reply: z.json() }),
  }),
  z.strictObject({
    channel: channelSchema,
    reminder: z.strictObject({ id: z.string(), dueMs: z.int(), body: z.json() }),
  }),
])

/** All channels, or the one named. */
export async function* channelsOf(store: Store<unknown>, only: string | null): AsyncGenerator<string> {
  if (only !== null) {
    yield only
    return
  }
  let after = ''
  for (;;) {
    const page = value(await store.channels(after, PAGE))
    yield* page
    if (page.length < PAGE) return
    after = page.at(-1)!
  }
}

async function* entriesOf(store: Store<unknown>, channel: string): AsyncGenerator<{ seq: number; entry: Entry }> {
  let after = 0
  for (;;) {
    const page = value(await store.entries(channel, after, PAGE))
    yield* page
    if (page.length < PAGE) return
    after = page.at(-1)!.seq
  }
}

/** A line for each entry, in order, then for each recorded reply, then for each reminder still to be sent.
 *  @throws TransferFault */
export async function* exportLines(store: Store<unknown>, only: string | null): AsyncGenerator<string> {
  const line = (what: object) => `${JSON.stringify(what)}\n`
  for await (const channel of channelsOf(store, only)) {
    for await (const { entry } of entriesOf(store, channel)) yield line({ channel, entry })
    let after = ''
    for (;;) {
      const page = value(await store.recorded(channel, after, PAGE))
      for (const answered of page) yield line({ channel, answered })
      if (page.length < PAGE) break
      after = page.at(-1)!.messageId
    }
    for (const reminder of value(await store.reminders(channel))) yield line({ channel, reminder })
  }
}

export type Imported = {
  readonly added: number
  /** Lines whose content was in the store, or in an earlier line. */
  readonly already: number
  /** Entries of a version this program does not know: kept, and left out of what it works with. */
  readonly newer: number
}

type Line = z.infer<typeof lineSchema>
type Batch = { entries: Entry[]; answered: Recorded[]; reminders: Reminder[] }
const emptyBatch = (): Batch => ({ entries: [], answered: [], reminders: [] })

/** Adds what the lines hold; what is there already stays as it is, so that an import may be run again.
 *  @throws TransferFault, BadLine: what came before it is in the store */
export async function importLines(store: Store<unknown>, lines: AsyncIterable<string>): Promise<Imported> {
  let added = 0
  let read = 0
  let newer = 0
  let number = 0
  let channel: string | null = null
  let batch = emptyBatch()
  /** Where each part of a message of this channel was told, and how. */
  let told = new Map<string, { readonly number: number; readonly text: string }>()
  const flush = async () => {
    if (channel !== null) added += value(await store.restore(channel, batch))
    batch = emptyBatch()
  }
  const take = async (text: string) => {
    const { line, known } = parsed(text, number)
    const full = batch.entries.length + batch.answered.length + batch.reminders.length >= PAGE
    if (line.channel !== channel || full) await flush()
    if (line.channel !== channel) told = new Map()
    channel = line.channel
    const before = 'entry' in line ? told.get(partOf(line.entry)) : undefined
    if (before && before.text !== text)
      throw new BadLine(
        `line ${number} says otherwise of what line ${before.number} has said: the same part of a message`,
      )
    read++
    if (!known) newer++
    if ('entry' in line) {
      told.set(partOf(line.entry), { number, text })
      batch.entries.push(line.entry as Entry)
    } else if ('answered' in line) batch.answered.push(line.answered as Recorded)
    else batch.reminders.push(line.reminder as Reminder)
  }
  try {
    for await (const text of lines) {
      number++
      if (text.trim() !== '') await take(text)
    }
  } catch (error) {
    if (error instanceof BadLine) await flush()
    throw error
  }
  await flush()
  return { added, already: read - added, newer }
}

const partOf = ({ messageId, part }: { messageId: string; part: number }): string => `${part} ${messageId}`

/** Deeper than any entry is, and far from what would overflow the stack of those who walk through it. */
const MOST_DEPTH = 60

const within = (json: unknown, depth: number): boolean =>
  typeof json !== 'object' || json === null || (depth > 0 && Object.values(json).every((one) => within(one, depth - 1)))

function parsed(text: string, number: number): { readonly line: Line; readonly known: boolean } {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    throw new BadLine(`line ${number} is not JSON`)
  }
  if (!within(json, MOST_DEPTH)) throw new BadLine(`line ${number} is nested more than ${MOST_DEPTH} deep`)
  const line = lineSchema.safeParse(json)
  if (line.success) {
    const checked = 'entry' in line.data ? checkEntry(line.data.entry) : null
    if (checked === null || checked.ok) return { line: line.data, known: checked?.value !== 'newer' }
    throw new BadLine(`line ${number} is no entry of a job: ${String(checked.problem.facts['why'])}`)
  }
  throw new BadLine(
    `line ${number} is not a line of an export: a channel with an entry, an answered or a reminder is expected`,
  )
}

const HEAD = ['channel', 'number', 'at', 'person', 'name', 'message', 'part', 'kind', 'version']

/** One row for each entry: who, when, what, and each figure of its body in a column of its own.
 *  @throws TransferFault */
export async function* csvRows(store: Store<unknown>, only: string | null): AsyncGenerator<string> {
  const columns = new Set<string>()
  for await (const channel of channelsOf(store, only))
    for await (const { entry } of entriesOf(store, channel))
      for (const [name] of leaves(entry.body)) if (columns.size < MOST_COLUMNS) columns.add(name)
  const names = [...columns].toSorted()
  yield csvRow([...HEAD, ...names])
  for await (const channel of channelsOf(store, only))
    for await (const { seq, entry } of entriesOf(store, channel)) {
      const body = new Map(leaves(entry.body))
      const { at, person, personName, messageId, part, kind, version } = entry
      const head = [channel, seq, at, person, personName, messageId, part, kind, version]
      yield csvRow([...head, ...names.map((name) => body.get(name))])
    }
}

/** What spreadsheets hold at least beside the fixed ones. */
const MOST_COLUMNS = 500

type Leaf = readonly [name: string, value: string | number | boolean | null]

/** The figures and words of a body with their paths: `rooms.0.name`. */
function leaves(body: unknown, path = 'body'): Leaf[] {
  if (typeof body !== 'object' || body === null)
    return body === undefined ? [] : [[path, body as string | number | boolean | null]]
  return Object.entries(body).flatMap(([key, inner]) => leaves(inner, path === 'body' ? key : `${path}.${key}`))
}
