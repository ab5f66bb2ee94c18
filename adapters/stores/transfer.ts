/** Moves channels between stores as lines of JSON, and out to a spreadsheet as CSV. Pages of bounded size: a store of any
 *  length goes through. */
import { z } from 'zod'
import { checkEntry } from '../../src/jobs/check.ts'
import type { Entry } from '../../src/message.ts'
import { csvLine } from './csv.ts'
import type { Failure, Json, Kept, Moved, Store } from './store.ts'

const PAGE = 500

/** A store that failed half-way through a transfer. */
export class TransferFault extends Error {
  readonly failure: Failure
  constructor(failure: Failure) {
    super(failure.detail)
    this.failure = failure
  }
}

/** A line that is no line of an export. */
export class BadLine extends Error {}

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
const lineSchema = z.union([
  z.strictObject({ channel: z.string(), entry: entrySchema }),
  z.strictObject({
    channel: z.string(),
    answered: z.strictObject({ messageId: z.string(), at: z.string(), reply: z.json() }),
  }),
  z.strictObject({
    channel: z.string(),
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

/** Adds what the lines hold; what is there already stays as it is, so that an import may be run again.
 *  @returns how much was new
 *  @throws TransferFault, BadLine: what came before it is in the store */
export async function importLines(store: Store<unknown>, lines: AsyncIterable<string>): Promise<number> {
  let added = 0
  let number = 0
  let channel: string | null = null
  let batch: {
    entries: Entry[]
    answered: NonNullable<Moved['answered']>[number][]
    reminders: NonNullable<Moved['reminders']>[number][]
  } = emptyBatch()
  const flush = async () => {
    if (channel !== null) added += value(await store.restore(channel, batch))
    batch = emptyBatch()
  }
  for await (const text of lines) {
    number++
    if (text.trim() === '') continue
    const line = parsed(text, number)
    const full = batch.entries.length + batch.answered.length + batch.reminders.length >= PAGE
    if (line.channel !== channel || full) await flush()
    channel = line.channel
    if ('entry' in line) batch.entries.push(line.entry as Entry)
    else if ('answered' in line) batch.answered.push(line.answered as { messageId: string; at: string; reply: Json })
    else batch.reminders.push(line.reminder as { id: string; dueMs: number; body: Json })
  }
  await flush()
  return added
}

const emptyBatch = () => ({ entries: [], answered: [], reminders: [] })

function parsed(text: string, number: number): z.infer<typeof lineSchema> {
  let json: unknown
  try {
    json = JSON.parse(text)
  } catch {
    throw new BadLine(`line ${number} is not JSON`)
  }
  const line = lineSchema.safeParse(json)
  if (line.success) {
    const checked = 'entry' in line.data ? checkEntry(line.data.entry) : null
    if (checked === null || checked.ok) return line.data
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
  yield csvLine([...HEAD, ...names])
  for await (const channel of channelsOf(store, only))
    for await (const { seq, entry } of entriesOf(store, channel)) {
      const body = new Map(leaves(entry.body))
      const { at, person, personName, messageId, part, kind, version } = entry
      const head = [channel, seq, at, person, personName, messageId, part, kind, version]
      yield csvLine([...head, ...names.map((name) => body.get(name))])
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
