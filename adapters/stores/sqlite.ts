/** The embedded store: one SQLite file, readable by its owner alone. */
import type { Entry } from '../../src/message.ts'
import { Folding, numbered, type Point, parseJson, plain, type Snapshot, unplain } from './folding.ts'
import { SqliteFile } from './sqlite-file.ts'
import {
  type Answered,
  type Appended,
  type Claimed,
  type InChannel,
  type Json,
  type Kept,
  kept,
  type Loaded,
  type Moved,
  type Numbered,
  type Recorded,
  type Reminder,
  type Rules,
  type Store,
  workspaceOf,
} from './store.ts'

type ChannelRow = { id: number; last: number }

export class SqliteStore<Memory> implements Store<Memory> {
  readonly #file: SqliteFile
  readonly #folding: Folding<Memory>

  /** Touches nothing: the file is opened, or made, by the first operation. */
  constructor(file: string, rules: Rules<Memory>) {
    this.#folding = new Folding(rules)
    this.#file = new SqliteFile(file, () => this.#folding.doubt())
  }

  async load(channel: string, messageId?: string): Promise<Kept<Loaded<Memory>>> {
    const read = await this.#file.read(() => {
      const row = this.#channel(channel)
      if (!row) return { point: null, answered: null }
      const reply =
        messageId === undefined ? undefined : this.#get<{ reply: string | null }>(ANSWERED, row.id, plain(messageId))
      return { point: this.#point(channel, row), answered: reply ? { reply: parseJson(reply.reply) } : null }
    })
    if (!read.ok) return read
    const { point, answered } = read.value
    if (point === null) this.#folding.drop(channel)
    else this.#folding.remember(channel, point)
    const { memory, seq, skipped } = point ?? this.#folding.empty(0)
    return kept({ memory, last: seq, skipped, answered })
  }

  lastKnown(channel: string): Memory {
    return this.#folding.lastKnown(channel)
  }

  async append(channel: string, answered: Answered): Promise<Kept<Appended>> {
    let next: Point<Memory> | null = null
    const written = await this.#file.write<Appended>(
      () => {
        const row = this.#channelMade(channel)
        const message = plain(answered.messageId)
        const ms = msOf(answered.at)
        const reply = JSON.stringify(answered.reply)
        if (!this.#run(ANSWER, row.id, message, answered.at, ms, reply))
          return {
            state: 'already',
            reply: parseJson(this.#get<{ reply: string | null }>(ANSWERED, row.id, message)!.reply),
          }
        if (answered.after !== undefined && answered.after !== row.last) return { state: 'moved', last: row.last }
        const added = numbered(row.last, answered.entries)
        for (const one of added) this.#addEntry(row.id, one)
        const last = row.last + added.length
        for (const id of answered.cancels ?? []) this.#run(CANCEL, row.id, plain(id))
        for (const reminder of answered.reminders ?? []) this.#setReminder(row.id, reminder)
        next = this.#snapshotWith(channel, row, added)
        return { state: 'kept', last }
      },
      (result) => result.state === 'kept',
    )
    if (written.ok && written.value.state === 'kept' && next) this.#folding.remember(channel, next)
    return written
  }

  entries(channel: string, after: number, limit: number): Promise<Kept<readonly Numbered[]>> {
    return this.#file.read(() => {
      const row = this.#channel(channel)
      return row ? this.#entriesAfter(row.id, after, limit) : []
    })
  }

  learned(workspace: string, kinds: readonly string[], limit: number): Promise<Kept<readonly InChannel[]>> {
    const sql = `SELECT c.key AS channel, e.entry FROM channel c JOIN entry e ON e.channel = c.id
      WHERE c.workspace = ? AND e.kind IN (SELECT value FROM json_each(?))
      ORDER BY e.at_ms DESC, e.channel DESC, e.seq DESC LIMIT ?`
    return this.#file.read(() =>
      this.#all<{ channel: string; entry: string }>(sql, workspace, JSON.stringify(kinds.map(plain)), limit)
        .map(({ channel, entry }) => ({ channel, entry: JSON.parse(entry) as Entry }))
        .reverse(),
    )
  }

  async forget(channel: string): Promise<Kept<boolean>> {
    const done = await this.#file.write(() => {
      const row = this.#channel(channel)
      if (!row) return false
      for (const table of ['entry', 'answered', 'snapshot', 'button', 'reminder'])
        this.#run(`DELETE FROM ${table} WHERE channel = ?`, row.id)
      this.#run('DELETE FROM channel WHERE id = ?', row.id)
      return true
    })
    if (!done.ok) return done
    this.#folding.drop(channel)
    await this.#file.sweep()
    return done
  }

  put(channel: string, key: string, value: Json, untilMs: number): Promise<Kept<null>> {
    return this.#file.write(() => {
      const { id } = this.#channelMade(channel)
      this.#run(
        `INSERT INTO button VALUES (?, ?, ?, ?)
         ON CONFLICT DO UPDATE SET value = excluded.value, until_ms = excluded.until_ms`,
        id,
        plain(key),
        JSON.stringify(value),
        Math.round(untilMs),
      )
      return null
    })
  }

  get(channel: string, key: string, nowMs: number): Promise<Kept<Json>> {
    return this.#file.read(() => {
      const sql = `SELECT value FROM button WHERE channel = (SELECT id FROM channel WHERE key = ?) AND key = ? AND until_ms > ?`
      return parseJson(this.#get<{ value: string }>(sql, channel, plain(key), nowMs)?.value ?? null)
    })
  }

  remind(channel: string, reminder: Reminder): Promise<Kept<null>> {
    return this.#file.write(() => {
      this.#setReminder(this.#channelMade(channel).id, reminder)
      return null
    })
  }

  cancelReminder(channel: string, id: string): Promise<Kept<boolean>> {
    return this.#file.write(() => this.#run(CANCEL, this.#channel(channel)?.id ?? 0, plain(id)) > 0)
  }

  snoozeReminder(channel: string, id: string, dueMs: number): Promise<Kept<boolean>> {
    const sql = `UPDATE reminder SET due_ms = ?1, next_ms = ?1, state = 'waiting', holder = NULL, attempts = 0
      WHERE channel = ?2 AND id = ?3 AND state <> 'cancelled'`
    return this.#file.write(() => this.#run(sql, Math.round(dueMs), this.#channel(channel)?.id ?? 0, plain(id)) > 0)
  }

  reminders(channel: string): Promise<Kept<readonly Reminder[]>> {
    const sql = `SELECT id, due_ms, body FROM reminder WHERE channel = (SELECT id FROM channel WHERE key = ?)
      AND state = 'waiting' ORDER BY due_ms, id`
    return this.#file.read(() => this.#all<ReminderRow>(sql, channel).map(reminderOf))
  }

  claimDue(holder: string, nowMs: number, heldUntilMs: number, limit: number): Promise<Kept<readonly Claimed[]>> {
    const due = `SELECT r.channel AS row, c.key AS channel, r.id, r.due_ms, r.body, r.attempts
      FROM reminder r JOIN channel c ON c.id = r.channel
      WHERE r.state = 'waiting' AND r.next_ms <= ? ORDER BY r.next_ms LIMIT ?`
    const take = `UPDATE reminder SET holder = ?, next_ms = ?, attempts = attempts + 1 WHERE channel = ? AND id = ?`
    return this.#file.write(
      () =>
        this.#all<ReminderRow & { row: number; channel: string; attempts: number }>(due, nowMs, limit).map((r) => {
          this.#run(take, holder, Math.round(heldUntilMs), r.row, r.id)
          return { ...reminderOf(r), channel: r.channel, attempt: r.attempts + 1 }
        }),
      (claimed) => claimed.length > 0,
    )
  }

  holdReminder(holder: string, channel: string, id: string, heldUntilMs: number): Promise<Kept<boolean>> {
    return this.#held(holder, channel, id, { state: 'waiting', nextMs: heldUntilMs, holder })
  }

  finishReminder(holder: string, channel: string, id: string): Promise<Kept<boolean>> {
    return this.#held(holder, channel, id, { state: 'sent', nextMs: null, holder: null })
  }

  releaseReminder(holder: string, channel: string, id: string, nextMs: number): Promise<Kept<boolean>> {
    return this.#held(holder, channel, id, { state: 'waiting', nextMs, holder: null })
  }

  nextReminder(): Promise<Kept<number | null>> {
    const sql = `SELECT min(next_ms) AS next FROM reminder WHERE state = 'waiting'`
    return this.#file.read(() => this.#get<{ next: number | null }>(sql)?.next ?? null)
  }

  channels(after: string, limit: number): Promise<Kept<readonly string[]>> {
    const sql = 'SELECT key FROM channel WHERE key > ? ORDER BY key LIMIT ?'
    return this.#file.read(() => this.#all<{ key: string }>(sql, after, limit).map(({ key }) => key))
  }

  recorded(channel: string, after: string, limit: number): Promise<Kept<readonly Recorded[]>> {
    const sql = `SELECT message, at, reply FROM answered WHERE channel = (SELECT id FROM channel WHERE key = ?)
      AND message > ? ORDER BY message LIMIT ?`
    return this.#file.read(() =>
      this.#all<{ message: string; at: string; reply: string | null }>(sql, channel, plain(after), limit).map((r) => ({
        messageId: unplain(r.message),
        at: r.at,
        reply: parseJson(r.reply),
      })),
    )
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
      for (const r of moved.reminders ?? [])
        added += this.#run(
          `${NEW_REMINDER} ON CONFLICT DO NOTHING`,
          row.id,
          plain(r.id),
          Math.round(r.dueMs),
          JSON.stringify(r.body),
        )
      return added
    })
  }

  tidy(nowMs: number, repliesBeforeMs: number): Promise<Kept<null>> {
    return this.#file.write(() => {
      this.#run('DELETE FROM button WHERE until_ms <= ?', nowMs)
      this.#run('UPDATE answered SET reply = NULL WHERE at_ms < ? AND reply IS NOT NULL', repliesBeforeMs)
      this.#run(`DELETE FROM reminder WHERE state <> 'waiting' AND due_ms < ?`, repliesBeforeMs)
      return null
    })
  }

  async close(): Promise<void> {
    this.#file.close()
  }

  // What follows runs inside a transaction.

  #get<Row>(sql: string, ...values: (string | number | null)[]): Row | undefined {
    return this.#file.q(sql).get(...values) as Row | undefined
  }

  #all<Row>(sql: string, ...values: (string | number | null)[]): Row[] {
    return this.#file.q(sql).all(...values) as Row[]
  }

  /** How many rows it changed. */
  #run(sql: string, ...values: (string | number | null)[]): number {
    return Number(this.#file.q(sql).run(...values).changes)
  }

  #channel(channel: string): ChannelRow | undefined {
    return this.#get<ChannelRow>(CHANNEL, channel)
  }

  #channelMade(channel: string): ChannelRow {
    const found = this.#channel(channel)
    if (found) return found
    const made = this.#file.q('INSERT INTO channel (key, workspace) VALUES (?, ?)')
    return { id: Number(made.run(channel, workspaceOf(channel)).lastInsertRowid), last: 0 }
  }

  #entriesAfter(id: number, after: number, limit: number): Numbered[] {
    const sql = 'SELECT seq, entry FROM entry WHERE channel = ? AND seq > ? ORDER BY seq LIMIT ?'
    return this.#all<{ seq: number; entry: string }>(sql, id, after, limit).map(({ seq, entry }) => ({
      seq,
      entry: JSON.parse(entry) as Entry,
    }))
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

  #setReminder(id: number, { id: name, dueMs, body }: Reminder): void {
    this.#run(
      `${NEW_REMINDER} ON CONFLICT DO UPDATE SET due_ms = excluded.due_ms, next_ms = excluded.next_ms,
        body = excluded.body, state = 'waiting', holder = NULL, attempts = 0`,
      id,
      plain(name),
      Math.round(dueMs),
      JSON.stringify(body),
    )
  }

  /** Changes a reminder that `holder` still holds. */
  #held(
    holder: string,
    channel: string,
    id: string,
    to: { state: 'waiting' | 'sent'; nextMs: number | null; holder: string | null },
  ): Promise<Kept<boolean>> {
    const sql = `UPDATE reminder SET state = ?, next_ms = coalesce(?, next_ms), holder = ?
      WHERE channel = (SELECT id FROM channel WHERE key = ?) AND id = ? AND holder = ? AND state = 'waiting'`
    const nextMs = to.nextMs === null ? null : Math.round(to.nextMs)
    return this.#file.write(() => this.#run(sql, to.state, nextMs, to.holder, channel, plain(id), holder) > 0)
  }

  /** The memory of a channel as of its last entry. */
  #point(channel: string, row: ChannelRow): Point<Memory> {
    const from = this.#folding.point(channel, row.id) ?? this.#fromSnapshot(row.id)
    if (from.seq === row.last) return from
    return this.#folding.advance(channel, from, this.#entriesAfter(row.id, from.seq, -1))
  }

  #fromSnapshot(id: number): Point<Memory> {
    const sql = 'SELECT seq, skipped, memory FROM snapshot WHERE channel = ? AND fold = ?'
    return this.#folding.fromSnapshot(id, this.#get<Snapshot>(sql, id, this.#folding.version) ?? null)
  }

  /** Folds what an append adds onto a remembered memory, and writes a snapshot where one is due. */
  #snapshotWith(channel: string, row: ChannelRow, added: readonly Numbered[]): Point<Memory> | null {
    const before = this.#folding.point(channel, row.id)
    if (before?.seq !== row.last) return null
    const point = this.#folding.advance(channel, before, added)
    const due = this.#folding.due(point)
    if (due === null) return point
    this.#run(
      `INSERT INTO snapshot VALUES (?, ?, ?, ?, ?) ON CONFLICT DO UPDATE SET
        seq = excluded.seq, skipped = excluded.skipped, memory = excluded.memory`,
      row.id,
      this.#folding.version,
      due.seq,
      due.skipped,
      due.memory,
    )
    this.#run('DELETE FROM snapshot WHERE channel = ? AND fold < ?', row.id, this.#folding.version)
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
const NEW_REMINDER = `INSERT INTO reminder (channel, id, due_ms, next_ms, body, state, attempts)
  VALUES (?1, ?2, ?3, ?3, ?4, 'waiting', 0)`

const partOf = (message: string, part: number): string => `${part} ${message}`
const msOf = (at: string): number => Date.parse(at) || 0

type ReminderRow = { id: string; due_ms: number; body: string }
const reminderOf = (row: ReminderRow): Reminder => ({
  id: unplain(row.id),
  dueMs: row.due_ms,
  body: JSON.parse(row.body) as Json,
})
