/** The store of several instances: one PostgreSQL database. Each operation is one statement where it can be. */
import type { Entry } from '../../src/message.ts'
import type { Point, Snapshot } from './folding.ts'
import { isUniqueViolation, PostgresPool, type Value as PostgresValue, type Session } from './postgres-pool.ts'
import { ANSWERED, APPEND, APPEND_MORE, ENTRIES, LOAD, REMINDERS } from './postgres-statements.ts'
import { mapped, msOf, numbered, parseJson, plain } from './rows.ts'
import { type Dialect, MAKE_CHANNEL, SqlStore, type Statement, translator, type Value } from './sql-store.ts'
import { type Answered, type Appended, type Kept, type Loaded, type Moved, type Rules, workspaceOf } from './store.ts'

const DIALECT: Dialect = {
  tablePrefix: 'kneepad_',
  placeholder: '$',
  keyShare: ' FOR KEY SHARE',
  forUpdate: ' FOR UPDATE',
  skipLocked: ' FOR UPDATE SKIP LOCKED',
  byBytes: ' COLLATE "C"',
}
const translated = translator(DIALECT)

type LoadRow = {
  readonly id: number
  readonly last: number
  readonly answered: boolean
  readonly reply: string | null
  readonly seq: number | null
  readonly skipped: number | null
  readonly memory: string | null
  readonly entries: readonly string[] | null
}

/** How often an append is tried where others write into its channel at the same moment. */
const TRIES = 50

export class PostgresStore<Memory> extends SqlStore<Memory> {
  readonly #pool: PostgresPool

  /** Touches nothing: the first operation connects.
   *  @param connections  the most open at once, 8 where left out */
  constructor(url: string, rules: Rules<Memory>, connections?: number) {
    super(rules)
    this.#pool = new PostgresPool(url, connections, () => this.folding.doubt())
  }

  async load(channel: string, messageId?: string): Promise<Kept<Loaded<Memory>>> {
    const looked = await this.#pool.use((session) => this.#look(session, channel, messageId))
    return mapped(looked, (found) => {
      if (found === null) return { memory: this.folding.rules.emptyMemory, last: 0, skipped: 0, answered: null }
      const { memory, seq, skipped } = found.point
      return { memory, last: seq, skipped, answered: found.answered }
    })
  }

  append(channel: string, answered: Answered): Promise<Kept<Appended>> {
    const { after, messageId } = answered
    const next = this.#next(channel, answered)
    const values = appendValues(channel, answered, this.folding.version, next)
    const sql = values.length > PLAIN_VALUES ? APPEND_MORE : APPEND
    return this.#pool.use<Appended>(async (session) => {
      if (next?.point.id === 0) await this.#make(session, channel)
      if (after !== undefined && this.folding.doubtful(channel)) {
        // The connection was lost since the answer was worked out: of which past it is has to be seen.
        const last = (await this.#look(session, channel))?.point.seq ?? 0
        if (last > 0) return { state: 'moved', last }
      }
      for (let tries = 1; ; tries++) {
        const added = await tryAppend(session, sql, values, tries === TRIES)
        if (added) {
          if (next) this.folding.remember(channel, { ...next.point, id: added.id })
          return { state: 'kept', last: added.last }
        }
        const found = await this.#look(session, channel, messageId)
        if (found?.answered) return { state: 'already', reply: found.answered.reply }
        const last = found?.point.seq ?? 0
        // A channel of the same length may have been forgotten and begun anew: the answer is of the old one.
        const another = found !== null && next !== null && next.point.id > 0 && next.point.id !== found.point.id
        if (after !== undefined && (last !== after || another)) return { state: 'moved', last }
        if (found === null) await this.#make(session, channel)
      }
    })
  }

  restore(channel: string, moved: Moved): Promise<Kept<number>> {
    const { entries = [], answered = [], reminders = [] } = moved
    return this.#pool.transaction(async (session) => {
      await this.#make(session, channel)
      const sql = 'SELECT id, last FROM kneepad_channel WHERE key = $1 FOR UPDATE'
      const { id, last } = (await session<{ id: number; last: number }>(sql, [channel]))[0]!
      const parts = 'SELECT message, part FROM kneepad_entry WHERE channel = $1 AND message = ANY ($2::text[])'
      const messages = [...new Set(entries.map((e) => plain(e.messageId)))]
      const there = new Set(
        (await session<{ message: string; part: number }>(parts, [id, messages])).map((e) => partOf(e.message, e.part)),
      )
      const fresh = new Map(entries.map((e) => [partOf(plain(e.messageId), e.part), e]))
      for (const part of there) fresh.delete(part)
      const added = [...fresh.values()]
      await session(ENTRIES, [id, last, added.length, ...columnsOf(added)])
      await session('UPDATE kneepad_channel SET last = $2 WHERE id = $1', [id, last + added.length])
      // A reply may never come, or with a later batch: its message is known all the same.
      const unanswered = added.map((e) => ({ messageId: e.messageId, at: e.at, reply: undefined }))
      const replies = [...new Map([...unanswered, ...answered].map((a) => [a.messageId, a])).values()]
      const known = await session<{ reply: boolean }>(ANSWERED, [
        id,
        replies.map((a) => plain(a.messageId)),
        replies.map((a) => a.at),
        replies.map((a) => msOf(a.at)),
        replies.map((a) => (a.reply === undefined ? null : JSON.stringify(a.reply))),
      ])
      const asked = await session(REMINDERS, [id, ...reminderColumns(reminders)])
      return added.length + known.filter((row) => row.reply).length + asked.length
    })
  }

  close(): Promise<void> {
    return this.#pool.close()
  }

  protected read<Row>(sql: string, values: readonly Value[]): Promise<Kept<Row[]>> {
    return this.#pool.one<Row>(translated(sql), values)
  }

  protected write<Row>(...statements: Statement[]): Promise<Kept<Row[]>> {
    const [only, more] = statements
    if (only && !more) return this.#pool.one<Row>(translated(only[0]), only[1])
    return this.#pool.transaction(async (session) => {
      let rows: Row[] = []
      for (const [sql, values] of statements) rows = await session<Row>(translated(sql), values)
      return rows
    })
  }

  /** Where the channel stands now, which is remembered, and whether a message was answered; null for no channel. */
  async #look(session: Session, channel: string, messageId?: string) {
    for (;;) {
      const remembered = this.folding.current(channel)
      const message = messageId === undefined ? null : plain(messageId)
      const values = [channel, message, this.folding.version, remembered?.id ?? 0, remembered?.seq ?? 0]
      const row = (await session<LoadRow>(LOAD, values))[0]
      if (!row) {
        this.folding.drop(channel)
        return null
      }
      if (remembered?.id === row.id && remembered.seq > row.last) {
        // A server that lost entries (a restored backup): what is remembered here is of another past.
        this.folding.doubt()
        continue
      }
      const from = remembered?.id === row.id ? remembered : this.folding.fromSnapshot(row.id, snapshotOf(row))
      const entries = (row.entries ?? []).map((text) => JSON.parse(text) as Entry)
      const point = this.folding.advance(channel, from, numbered(from.seq, entries))
      this.folding.remember(channel, point)
      return { point, answered: row.answered ? { reply: parseJson(row.reply) } : null }
    }
  }

  /** Where the channel will stand after this append, if the memory it was worked out from is remembered; under row 0 where
   *  there is no channel yet. */
  #next(channel: string, { after, entries }: Answered): Next<Memory> | null {
    if (after === undefined) return null
    const before = this.folding.current(channel) ?? (after === 0 ? this.folding.empty(0) : null)
    if (before?.seq !== after) return null
    const point = this.folding.advance(channel, before, numbered(after, entries))
    const snapshot = this.folding.due(point)
    return { point: snapshot ? { ...point, snapshotSeq: snapshot.seq } : point, snapshot }
  }

  async #make(session: Session, channel: string): Promise<void> {
    await session(translated(MAKE_CHANNEL), [channel, workspaceOf(channel)])
  }
}

type Next<Memory> = { readonly point: Point<Memory>; readonly snapshot: Snapshot | null }

const snapshotOf = ({ seq, skipped, memory }: LoadRow): Snapshot | null =>
  memory === null ? null : { seq: seq ?? 0, skipped: skipped ?? 0, memory }

/** The row it added, if any. Where the same message is being added at this moment, that shows as a violation of its key. */
async function tryAppend(session: Session, sql: string, values: readonly PostgresValue[], lastTry: boolean) {
  try {
    return (await session<{ id: number; last: number }>(sql, values))[0]
  } catch (error) {
    if (isUniqueViolation(error) && !lastTry) return undefined
    throw error
  }
}

/** The number of values of `APPEND`. */
const PLAIN_VALUES = 13

/** The values of `APPEND`, or those of `APPEND_MORE`, in their order. */
function appendValues(channel: string, answered: Answered, fold: number, next: Next<unknown> | null): PostgresValue[] {
  const { entries } = answered
  const reminders = [...new Map((answered.reminders ?? []).map((r) => [r.id, r])).values()]
  const setAnew = new Set(reminders.map((r) => r.id))
  const values: PostgresValue[] = [
    channel,
    plain(answered.messageId),
    answered.at,
    msOf(answered.at),
    JSON.stringify(answered.reply),
    answered.after ?? null,
    next?.point.id || null,
    entries.length,
    ...columnsOf(entries),
  ]
  if (reminders.length === 0 && !answered.cancels?.length && !next?.snapshot) return values
  return [
    ...values,
    (answered.cancels ?? []).filter((id) => !setAnew.has(id)).map(plain),
    ...reminderColumns(reminders),
    fold,
    next?.snapshot?.skipped ?? 0,
    next?.snapshot?.memory ?? null,
  ]
}

const columnsOf = (entries: readonly Entry[]): (readonly (string | number)[])[] => [
  entries.map((e) => plain(e.messageId)),
  entries.map((e) => e.part),
  entries.map((e) => plain(e.kind)),
  entries.map((e) => msOf(e.at)),
  entries.map((e) => JSON.stringify(e)),
]

const reminderColumns = (reminders: NonNullable<Moved['reminders']>): (readonly (string | number)[])[] => [
  reminders.map((r) => plain(r.id)),
  reminders.map((r) => Math.round(r.dueMs)),
  reminders.map((r) => JSON.stringify(r.body)),
]

const partOf = (message: string, part: number): string => `${part} ${message}`
