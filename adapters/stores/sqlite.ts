/** The embedded store: one SQLite file, readable by its owner alone. */
import type { Point, Snapshot } from './folding.ts'
import { type EntryRow, entryOf, msOf, numbered, parseJson, plain } from './rows.ts'
import { type Dialect, MAKE_CHANNEL, SET_AGAIN, SqlStore, type Statement, translator, type Value } from './sql-store.ts'
import { SqliteFile } from './sqlite-file.ts'
import {
  type Answered,
  type Appended,
  type Kept,
  kept,
  type Loaded,
  type Moved,
  type Numbered,
  type Reminder,
  type Rules,
  workspaceOf,
} from './store.ts'

/** One writer at a time has the whole file: no row needs a lock of its own. */
const DIALECT: Dialect = {
  tablePrefix: '',
  placeholder: '?',
  keyShare: '',
  forUpdate: '',
  skipLocked: '',
  byBytes: '',
}
const translated = translator(DIALECT)

type ChannelRow = { readonly id: number; readonly last: number }

export class SqliteStore<Memory> extends SqlStore<Memory> {
  readonly #file: SqliteFile

  /** Touches nothing: the file is opened, or made, by the first operation. */
  constructor(file: string, rules: Rules<Memory>) {
    super(rules)
    this.#file = new SqliteFile(file, () => this.folding.doubt())
  }

  async load(channel: string, messageId?: string): Promise<Kept<Loaded<Memory>>> {
    const read = await this.#file.read(() => {
      const row = this.#channel(channel)
      if (!row) return { point: null, answered: null }
      const reply = messageId === undefined ? undefined : this.#answered(row.id, messageId)
      return { point: this.#point(channel, row), answered: reply ? { reply: parseJson(reply.reply) } : null }
    })
    if (!read.ok) return read
    const { point, answered } = read.value
    if (point === null) this.folding.drop(channel)
    else this.folding.remember(channel, point)
    const { memory, seq, skipped } = point ?? this.folding.empty(0)
    return kept({ memory, last: seq, skipped, answered })
  }

  async append(channel: string, answered: Answered): Promise<Kept<Appended>> {
    let now: Point<Memory> | null = null
    const written = await this.#file.write<Appended>(
      () => {
        const row = this.#channelMade(channel)
        const { messageId, at, after } = answered
        if (!this.#run(ANSWER, row.id, plain(messageId), at, msOf(at), JSON.stringify(answered.reply)))
          return { state: 'already', reply: parseJson(this.#answered(row.id, messageId)!.reply) }
        if (after !== undefined && (after !== row.last || this.#ofAnother(channel, row))) {
          now = this.#point(channel, row)
          return { state: 'moved', last: row.last }
        }
        const added = numbered(row.last, answered.entries)
        for (const one of added) this.#addEntry(row.id, one)
        for (const id of answered.cancels ?? []) this.#run(CANCEL, row.id, plain(id))
        for (const reminder of answered.reminders ?? []) this.#remind(row.id, reminder, SET_AGAIN)
        now = this.#snapshotWith(channel, row, added)
        return { state: 'kept', last: row.last + added.length }
      },
      (result) => result.state === 'kept',
    )
    if (!written.ok || written.value.state === 'already') return written
    if (now === null || (written.value.state === 'moved' && written.value.last === 0)) this.folding.drop(channel)
    else this.folding.remember(channel, now)
    return written
  }

  override async forget(channel: string): Promise<Kept<boolean>> {
    const done = await super.forget(channel)
    if (done.ok && done.value) await this.#file.sweep()
    return done
  }

  async restore(channel: string, moved: Moved): Promise<Kept<number>> {
    return this.#file.write(() => {
      const row = this.#channelMade(channel)
      const there = this.#parts(row.id)
      let last = row.last
      for (const entry of moved.entries ?? []) {
        const part = partOf(plain(entry.messageId), entry.part)
        if (there.has(part)) continue
        there.add(part)
        this.#addEntry(row.id, { seq: ++last, entry })
        // Its reply may never come, or with a later batch: the message is known all the same.
        this.#run(ANSWER, row.id, plain(entry.messageId), entry.at, msOf(entry.at), null)
      }
      let added = last - row.last
      for (const { messageId, at, reply } of moved.answered ?? [])
        added += this.#run(REPLY, row.id, plain(messageId), at, msOf(at), JSON.stringify(reply))
      for (const reminder of moved.reminders ?? []) added += this.#remind(row.id, reminder, 'ON CONFLICT DO NOTHING')
      return added
    })
  }

  async close(): Promise<void> {
    this.#file.close()
  }

  protected read<Row>(sql: string, values: readonly Value[]): Promise<Kept<Row[]>> {
    return this.#file.read(() => this.#all<Row>(translated(sql), ...values))
  }

  protected write<Row>(...statements: Statement[]): Promise<Kept<Row[]>> {
    return this.#file.write(() => statements.map(([sql, values]) => this.#all<Row>(translated(sql), ...values)).at(-1)!)
  }

  // What follows runs inside a transaction.

  #get<Row>(sql: string, ...values: Value[]): Row | undefined {
    return this.#file.q(sql).get(...values) as Row | undefined
  }

  #all<Row>(sql: string, ...values: Value[]): Row[] {
    return this.#file.q(sql).all(...values) as Row[]
  }

  /** How many rows it changed. */
  #run(sql: string, ...values: Value[]): number {
    return Number(this.#file.q(sql).run(...values).changes)
  }

  #channel(channel: string): ChannelRow | undefined {
    return this.#get<ChannelRow>(CHANNEL, channel)
  }

  #channelMade(channel: string): ChannelRow {
    const found = this.#channel(channel)
    if (found) return found
    const made = this.#file.q(translated(MAKE_CHANNEL)).run(channel, workspaceOf(channel))
    return { id: Number(made.lastInsertRowid), last: 0 }
  }

  #answered(id: number, messageId: string): { reply: string | null } | undefined {
    return this.#get(ANSWERED, id, plain(messageId))
  }

  /** Whether what is remembered, though of the same length, is of a channel that was forgotten and began anew. */
  #ofAnother(channel: string, row: ChannelRow): boolean {
    const point = this.folding.anyPoint(channel)
    return row.last > 0 && point !== null && point.id !== row.id
  }

  #entriesAfter(id: number, after: number): Numbered[] {
    const sql = 'SELECT seq, entry FROM entry WHERE channel = ? AND seq > ? ORDER BY seq'
    return this.#all<EntryRow>(sql, id, after).map(entryOf)
  }

  /** The parts of messages that a channel has. */
  #parts(id: number): Set<string> {
    const sql = 'SELECT message, part FROM entry WHERE channel = ?'
    return new Set(this.#all<{ message: string; part: number }>(sql, id).map((e) => partOf(e.message, e.part)))
  }

  #addEntry(id: number, { seq, entry }: Numbered): void {
    const { messageId, part, kind, at } = entry
    const sql = 'INSERT INTO entry VALUES (?, ?, ?, ?, ?, ?, ?)'
    this.#run(sql, id, seq, plain(messageId), part, plain(kind), msOf(at), JSON.stringify(entry))
  }

  #remind(id: number, { id: name, dueMs, body }: Reminder, again: string): number {
    return this.#run(`${REMIND} ${again}`, id, plain(name), Math.round(dueMs), JSON.stringify(body))
  }

  /** The memory of a channel as of its last entry. */
  #point(channel: string, row: ChannelRow): Point<Memory> {
    const remembered = this.folding.point(channel, row.id)
    const from = remembered && remembered.seq <= row.last ? remembered : this.#fromSnapshot(row)
    if (from.seq === row.last) return from
    return this.folding.advance(channel, from, this.#entriesAfter(row.id, from.seq))
  }

  #fromSnapshot({ id, last }: ChannelRow): Point<Memory> {
    const sql = 'SELECT seq, skipped, memory FROM snapshot WHERE channel = ? AND fold = ? AND seq <= ?'
    return this.folding.fromSnapshot(id, this.#get<Snapshot>(sql, id, this.folding.version, last) ?? null)
  }

  /** Folds what an append adds onto a remembered memory, and writes a snapshot where one is due. */
  #snapshotWith(channel: string, row: ChannelRow, added: readonly Numbered[]): Point<Memory> | null {
    const before = row.last === 0 ? this.folding.empty(row.id) : this.folding.point(channel, row.id)
    if (before?.seq !== row.last) return null
    const point = this.folding.advance(channel, before, added)
    const due = this.folding.due(point)
    if (due === null) return point
    this.#run(SNAPSHOT, row.id, this.folding.version, due.seq, due.skipped, due.memory)
    this.#run('DELETE FROM snapshot WHERE channel = ? AND fold < ?', row.id, this.folding.version)
    return { ...point, snapshotSeq: due.seq }
  }
}

const CHANNEL = `SELECT id, coalesce((SELECT max(seq) FROM entry WHERE channel = c.id), 0) AS last
  FROM channel c WHERE key = ?`
const ANSWERED = 'SELECT reply FROM answered WHERE channel = ? AND message = ?'
const ANSWER = 'INSERT INTO answered VALUES (?, ?, ?, ?, ?) ON CONFLICT DO NOTHING'
const REPLY = `INSERT INTO answered VALUES (?, ?, ?, ?, ?)
  ON CONFLICT DO UPDATE SET reply = excluded.reply WHERE reply IS NULL`
const CANCEL = `UPDATE reminder SET state = 'cancelled', holder = NULL WHERE channel = ? AND id = ? AND state = 'waiting'`
const REMIND = `INSERT INTO reminder (channel, id, due_ms, next_ms, body, state, attempts)
  VALUES (?1, ?2, ?3, ?3, ?4, 'waiting', 0)`
const SNAPSHOT = `INSERT INTO snapshot VALUES (?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET
  seq = excluded.seq, skipped = excluded.skipped, memory = excluded.memory`

const partOf = (message: string, part: number): string => `${part} ${message}`
