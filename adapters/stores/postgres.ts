/** The store of several instances: one PostgreSQL database. Each operation is one statement where it can be. */
import type { Entry } from '../../src/message.ts'
import { Folding, numbered, type Point, parseJson, plain, unplain } from './folding.ts'
import { isUniqueViolation, PostgresPool, type Session, type Value } from './postgres-pool.ts'
import { APPEND, APPEND_MORE, CLAIM, LOAD, REMIND } from './postgres-statements.ts'
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

type LoadRow = {
  id: number
  last: number
  answered: boolean
  reply: string | null
  seq: number | null
  skipped: number | null
  memory: string | null
  entries: string[] | null
}

export class PostgresStore<Memory> implements Store<Memory> {
  readonly #pool: PostgresPool
  readonly #folding: Folding<Memory>

  /** Touches nothing: the first operation connects.
   *  @param connections  the most open at once, 8 where left out */
  constructor(url: string, rules: Rules<Memory>, connections?: number) {
    this.#folding = new Folding(rules)
    this.#pool = new PostgresPool(url, connections, () => this.#folding.doubt())
  }

  async load(channel: string, messageId?: string): Promise<Kept<Loaded<Memory>>> {
    const point = this.#folding.anyPoint(channel)
    const message = messageId === undefined ? null : plain(messageId)
    const values = [channel, message, this.#folding.version, point?.id ?? 0, point?.seq ?? 0]
    const read = await this.#pool.one<LoadRow>(LOAD, values)
    if (!read.ok) return read
    const row = read.value[0]
    if (!row) {
      this.#folding.drop(channel)
      return kept({ memory: this.#folding.rules.emptyMemory, last: 0, skipped: 0, answered: null })
    }
    if (point?.id === row.id && point.seq > row.last) {
      // A server that lost entries (a restored backup): what is remembered here is of another past.
      this.#folding.doubt()
      return this.load(channel, messageId)
    }
    const now = this.#pointOf(channel, point, row)
    this.#folding.remember(channel, now)
    const answered = row.answered ? { reply: parseJson(row.reply) } : null
    return kept({ memory: now.memory, last: now.seq, skipped: now.skipped, answered })
  }

  lastKnown(channel: string): Memory {
    return this.#folding.lastKnown(channel)
  }

  async append(channel: string, answered: Answered): Promise<Kept<Appended>> {
    const next = this.#next(channel, answered)
    const values = appendValues(channel, answered, this.#folding.version, next)
    const done = await this.#pool.use<Appended>(async (session) => {
      for (;;) {
        const [added] = await this.#tryAppend(session, values)
        if (added) return { state: 'kept', last: added.last }
        const found = await this.#found(session, channel, answered.messageId)
        if (found === null) await this.#make(session, channel)
        else if (found.answered) return { state: 'already', reply: parseJson(found.reply) }
        else if (added === null) return { state: 'already', reply: null }
        else if (answered.after !== undefined) {
          if (found.last !== answered.after) return { state: 'moved', last: found.last }
          // The channel was forgotten and began anew: the memory it was answered from is of the old one.
          if (next && next.point.id !== found.id) return { state: 'moved', last: found.last }
        }
      }
    })
    if (done.ok && done.value.state === 'kept' && next) this.#folding.remember(channel, next.point)
    return done
  }

  async entries(channel: string, after: number, limit: number): Promise<Kept<readonly Numbered[]>> {
    const sql = `SELECT e.seq, e.entry FROM kneepad_entry e JOIN kneepad_channel c ON c.id = e.channel
      WHERE c.key = $1 AND e.seq > $2 ORDER BY e.seq LIMIT $3`
    const read = await this.#pool.one<{ seq: number; entry: string }>(sql, [channel, after, limit])
    return mapped(read, (rows) => rows.map(({ seq, entry }) => ({ seq, entry: JSON.parse(entry) as Entry })))
  }

  async learned(workspace: string, kinds: readonly string[], limit: number): Promise<Kept<readonly InChannel[]>> {
    const sql = `SELECT c.key AS channel, e.entry FROM kneepad_channel c JOIN kneepad_entry e ON e.channel = c.id
      WHERE c.workspace = $1 AND e.kind = ANY ($2::text[]) ORDER BY e.at_ms DESC, e.channel DESC, e.seq DESC LIMIT $3`
    const read = await this.#pool.one<{ channel: string; entry: string }>(sql, [workspace, kinds.map(plain), limit])
    return mapped(read, (rows) =>
      rows.map(({ channel, entry }) => ({ channel, entry: JSON.parse(entry) as Entry })).reverse(),
    )
  }

  async forget(channel: string): Promise<Kept<boolean>> {
    const done = await this.#pool.transaction(async (session) => {
      const [row] = await session<{ id: number }>('SELECT id FROM kneepad_channel WHERE key = $1 FOR UPDATE', [channel])
      if (!row) return false
      for (const table of ['entry', 'answered', 'snapshot', 'button', 'reminder'])
        await session(`DELETE FROM kneepad_${table} WHERE channel = $1`, [row.id])
      await session('DELETE FROM kneepad_channel WHERE id = $1', [row.id])
      return true
    })
    if (done.ok) this.#folding.drop(channel)
    return done
  }

  put(channel: string, key: string, value: Json, untilMs: number): Promise<Kept<null>> {
    const sql = `INSERT INTO kneepad_button
      SELECT id, $2, $3, $4 FROM kneepad_channel WHERE key = $1 FOR KEY SHARE
      ON CONFLICT (channel, key) DO UPDATE SET value = excluded.value, until_ms = excluded.until_ms
      RETURNING channel`
    return this.#intoChannel(channel, sql, [channel, plain(key), JSON.stringify(value), Math.round(untilMs)])
  }

  async get(channel: string, key: string, nowMs: number): Promise<Kept<Json>> {
    const sql = `SELECT b.value FROM kneepad_button b JOIN kneepad_channel c ON c.id = b.channel
      WHERE c.key = $1 AND b.key = $2 AND b.until_ms > $3`
    const read = await this.#pool.one<{ value: string }>(sql, [channel, plain(key), Math.round(nowMs)])
    return mapped(read, (rows) => parseJson(rows[0]?.value ?? null))
  }

  remind(channel: string, { id, dueMs, body }: Reminder): Promise<Kept<null>> {
    return this.#intoChannel(channel, REMIND, [channel, plain(id), Math.round(dueMs), JSON.stringify(body)])
  }

  cancelReminder(channel: string, id: string): Promise<Kept<boolean>> {
    const sql = `UPDATE kneepad_reminder SET state = 'cancelled', holder = NULL
      WHERE channel = (SELECT id FROM kneepad_channel WHERE key = $1) AND id = $2 AND state = 'waiting' RETURNING id`
    return this.#changed(sql, [channel, plain(id)])
  }

  snoozeReminder(channel: string, id: string, dueMs: number): Promise<Kept<boolean>> {
    const sql = `UPDATE kneepad_reminder SET due_ms = $3, next_ms = $3, state = 'waiting', holder = NULL, attempts = 0
      WHERE channel = (SELECT id FROM kneepad_channel WHERE key = $1) AND id = $2 AND state <> 'cancelled' RETURNING id`
    return this.#changed(sql, [channel, plain(id), Math.round(dueMs)])
  }

  async reminders(channel: string): Promise<Kept<readonly Reminder[]>> {
    const sql = `SELECT r.id, r.due_ms, r.body FROM kneepad_reminder r JOIN kneepad_channel c ON c.id = r.channel
      WHERE c.key = $1 AND r.state = 'waiting' ORDER BY r.due_ms, r.id`
    return mapped(await this.#pool.one<ReminderRow>(sql, [channel]), (rows) => rows.map(reminderOf))
  }

  async claimDue(holder: string, nowMs: number, heldUntilMs: number, limit: number): Promise<Kept<readonly Claimed[]>> {
    type Row = ReminderRow & { channel: string; attempts: number }
    const values = [holder, Math.round(nowMs), Math.round(heldUntilMs), limit]
    return mapped(await this.#pool.one<Row>(CLAIM, values), (rows) =>
      rows
        .map((row) => ({ ...reminderOf(row), channel: row.channel, attempt: row.attempts }))
        .toSorted((a, b) => a.dueMs - b.dueMs),
    )
  }

  holdReminder(holder: string, channel: string, id: string, heldUntilMs: number): Promise<Kept<boolean>> {
    return this.#held(holder, channel, id, 'waiting', heldUntilMs, holder)
  }

  finishReminder(holder: string, channel: string, id: string): Promise<Kept<boolean>> {
    return this.#held(holder, channel, id, 'sent', null, null)
  }

  releaseReminder(holder: string, channel: string, id: string, nextMs: number): Promise<Kept<boolean>> {
    return this.#held(holder, channel, id, 'waiting', nextMs, null)
  }

  async nextReminder(): Promise<Kept<number | null>> {
    const sql = `SELECT min(next_ms) AS next FROM kneepad_reminder WHERE state = 'waiting'`
    return mapped(await this.#pool.one<{ next: number | null }>(sql), (rows) => rows[0]?.next ?? null)
  }

  async channels(after: string, limit: number): Promise<Kept<readonly string[]>> {
    const sql = 'SELECT key FROM kneepad_channel WHERE key COLLATE "C" > $1 ORDER BY key COLLATE "C" LIMIT $2'
    return mapped(await this.#pool.one<{ key: string }>(sql, [after, limit]), (rows) => rows.map(({ key }) => key))
  }

  async recorded(channel: string, after: string, limit: number): Promise<Kept<readonly Recorded[]>> {
    const sql = `SELECT a.message, a.at, a.reply FROM kneepad_answered a JOIN kneepad_channel c ON c.id = a.channel
      WHERE c.key = $1 AND a.message COLLATE "C" > $2 ORDER BY a.message COLLATE "C" LIMIT $3`
    const read = await this.#pool.one<{ message: string; at: string; reply: string | null }>(sql, [
      channel,
      plain(after),
      limit,
    ])
    return mapped(read, (rows) =>
      rows.map((r) => ({ messageId: unplain(r.message), at: r.at, reply: parseJson(r.reply) })),
    )
  }

  restore(channel: string, moved: Moved): Promise<Kept<number>> {
    return this.#pool.transaction(async (session) => {
      await this.#make(session, channel)
      const sql = 'SELECT id, last FROM kneepad_channel WHERE key = $1 FOR UPDATE'
      const { id, last } = (await session<{ id: number; last: number }>(sql, [channel]))[0]!
      let seq = last
      for (const e of moved.entries ?? []) {
        const added = `INSERT INTO kneepad_entry VALUES ($1, $2, $3, $4, $5, $6, $7)
          ON CONFLICT (channel, message, part) DO NOTHING RETURNING seq`
        const row = [id, seq + 1, plain(e.messageId), e.part, plain(e.kind), msOf(e.at), JSON.stringify(e)]
        seq += (await session(added, row)).length
      }
      await session('UPDATE kneepad_channel SET last = $2 WHERE id = $1', [id, seq])
      let added = seq - last
      for (const { messageId, at, reply } of moved.answered ?? []) {
        const answer = `INSERT INTO kneepad_answered VALUES ($1, $2, $3, $4, $5) ON CONFLICT DO NOTHING RETURNING channel`
        added += (await session(answer, [id, plain(messageId), at, msOf(at), JSON.stringify(reply)])).length
      }
      for (const r of moved.reminders ?? []) {
        const remind = `INSERT INTO kneepad_reminder VALUES ($1, $2, $3, $3, $4, 'waiting', NULL, 0)
          ON CONFLICT DO NOTHING RETURNING channel`
        added += (await session(remind, [id, plain(r.id), Math.round(r.dueMs), JSON.stringify(r.body)])).length
      }
      return added
    })
  }

  tidy(nowMs: number, repliesBeforeMs: number): Promise<Kept<null>> {
    const before = [Math.round(repliesBeforeMs)]
    return this.#pool.transaction(async (session) => {
      await session('DELETE FROM kneepad_button WHERE until_ms <= $1', [Math.round(nowMs)])
      await session('UPDATE kneepad_answered SET reply = NULL WHERE at_ms < $1 AND reply IS NOT NULL', before)
      await session(`DELETE FROM kneepad_reminder WHERE state <> 'waiting' AND due_ms < $1`, before)
      return null
    })
  }

  close(): Promise<void> {
    return this.#pool.close()
  }

  #pointOf(channel: string, point: Point<Memory> | null, row: LoadRow): Point<Memory> {
    const stored = row.memory === null ? null : { seq: row.seq ?? 0, skipped: row.skipped ?? 0, memory: row.memory }
    const from = point?.id === row.id ? point : this.#folding.fromSnapshot(row.id, stored)
    const entries = (row.entries ?? []).map((text) => JSON.parse(text) as Entry)
    return this.#folding.advance(channel, from, numbered(from.seq, entries))
  }

  /** Where the channel will stand after this append, if the memory it was worked out from is remembered. */
  #next(channel: string, { after, entries }: Answered): Next<Memory> | null {
    const before = this.#folding.anyPoint(channel)
    if (after === undefined || before?.seq !== after || before.id <= 0) return null
    const point = this.#folding.advance(channel, before, numbered(after, entries))
    const snapshot = this.#folding.due(point)
    return { point: snapshot ? { ...point, snapshotSeq: snapshot.seq } : point, snapshot }
  }

  /** The row it added; none where nothing was added; null where a part of the message is there already. */
  async #tryAppend(session: Session, values: readonly Value[]): Promise<[{ last: number } | null | undefined]> {
    try {
      return [(await session<{ last: number }>(values.length > PLAIN_VALUES ? APPEND_MORE : APPEND, values))[0]]
    } catch (error) {
      if (isUniqueViolation(error)) return [null]
      throw error
    }
  }

  async #found(session: Session, channel: string, messageId: string) {
    const sql = `SELECT c.id, c.last, a.message IS NOT NULL AS answered, a.reply FROM kneepad_channel c
      LEFT JOIN kneepad_answered a ON a.channel = c.id AND a.message = $2 WHERE c.key = $1`
    type Row = { id: number; last: number; answered: boolean; reply: string | null }
    return (await session<Row>(sql, [channel, plain(messageId)]))[0] ?? null
  }

  async #make(session: Session, channel: string): Promise<void> {
    const sql = 'INSERT INTO kneepad_channel (key, workspace, last) VALUES ($1, $2, 0) ON CONFLICT DO NOTHING'
    await session(sql, [channel, workspaceOf(channel)])
  }

  /** Runs an insert that finds its channel by key, after making the channel where there is none. */
  async #intoChannel(channel: string, sql: string, values: readonly Value[]): Promise<Kept<null>> {
    return this.#pool.use(async (session) => {
      while ((await session(sql, values)).length === 0) await this.#make(session, channel)
      return null
    })
  }

  #held(
    holder: string,
    channel: string,
    id: string,
    state: 'waiting' | 'sent',
    nextMs: number | null,
    newHolder: string | null,
  ): Promise<Kept<boolean>> {
    const sql = `UPDATE kneepad_reminder SET state = $4, next_ms = coalesce($5, next_ms), holder = $6
      WHERE channel = (SELECT id FROM kneepad_channel WHERE key = $1) AND id = $2 AND holder = $3 AND state = 'waiting'
      RETURNING id`
    return this.#changed(sql, [
      channel,
      plain(id),
      holder,
      state,
      nextMs === null ? null : Math.round(nextMs),
      newHolder,
    ])
  }

  async #changed(sql: string, values: readonly Value[]): Promise<Kept<boolean>> {
    return mapped(await this.#pool.one(sql, values), (rows) => rows.length > 0)
  }
}

type Next<Memory> = { readonly point: Point<Memory>; readonly snapshot: ReturnType<Folding<Memory>['due']> }

/** The number of values of `APPEND`. */
const PLAIN_VALUES = 13

/** The values of `APPEND`, or those of `APPEND_MORE`, in their order. */
function appendValues(channel: string, answered: Answered, fold: number, next: Next<unknown> | null): Value[] {
  const { entries } = answered
  const reminders = [...new Map((answered.reminders ?? []).map((r) => [r.id, r])).values()]
  const setAnew = new Set(reminders.map((r) => r.id))
  const values: Value[] = [
    channel,
    plain(answered.messageId),
    answered.at,
    msOf(answered.at),
    JSON.stringify(answered.reply),
    answered.after ?? null,
    next?.point.id ?? null,
    entries.length,
    entries.map((e) => plain(e.messageId)),
    entries.map((e) => e.part),
    entries.map((e) => plain(e.kind)),
    entries.map((e) => msOf(e.at)),
    entries.map((e) => JSON.stringify(e)),
  ]
  if (reminders.length === 0 && !answered.cancels?.length && !next?.snapshot) return values
  return [
    ...values,
    (answered.cancels ?? []).filter((id) => !setAnew.has(id)).map(plain),
    reminders.map((r) => plain(r.id)),
    reminders.map((r) => Math.round(r.dueMs)),
    reminders.map((r) => JSON.stringify(r.body)),
    fold,
    next?.snapshot?.skipped ?? 0,
    next?.snapshot?.memory ?? null,
  ]
}

const msOf = (at: string): number => Date.parse(at) || 0

type ReminderRow = { id: string; due_ms: number; body: string }
const reminderOf = (row: ReminderRow): Reminder => ({
  id: unplain(row.id),
  dueMs: row.due_ms,
  body: JSON.parse(row.body) as Json,
})

const mapped = <A, B>(read: Kept<A>, map: (value: A) => B): Kept<B> => (read.ok ? kept(map(read.value)) : read)
