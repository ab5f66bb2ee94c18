/** What both databases do with the same statements. Placeholders are `$1`, tables `{entry}`; what a database says in its own
 *  words is a word of its `Dialect`. Loading, appending and restoring differ, and lie in the store of each. */
import type { Entry } from '../../src/message.ts'
import { Folding } from './folding.ts'
import {
  type EntryRow,
  entryOf,
  mapped,
  parseJson,
  plain,
  type RecordedRow,
  type ReminderRow,
  recordedOf,
  reminderOf,
} from './rows.ts'
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

export type Value = string | number | null
export type Statement = readonly [sql: string, values: readonly Value[]]

export type Dialect = {
  readonly tablePrefix: string
  readonly placeholder: '?' | '$'
  /** Keeps a channel's row from being deleted, or changed, until the transaction is over. */
  readonly keyShare: string
  readonly forUpdate: string
  /** Passes over rows that another instance is claiming at this moment. */
  readonly skipLocked: string
  /** Orders text by its bytes. */
  readonly byBytes: string
}

const TABLES = ['channel', 'entry', 'answered', 'snapshot', 'button', 'reminder'] as const

/** Puts a statement into the words of a database, once each. */
export function translator(dialect: Dialect): (sql: string) => string {
  const done = new Map<string, string>()
  const word = (name: string) =>
    (TABLES as readonly string[]).includes(name)
      ? `${dialect.tablePrefix}${name}`
      : dialect[name as Exclude<keyof Dialect, 'tablePrefix' | 'placeholder'>]
  return (sql) => {
    let own = done.get(sql)
    if (own === undefined) {
      own = sql.replace(/\{(\w+)\}/g, (_, name: string) => word(name)).replace(/\$(?=\d)/g, () => dialect.placeholder)
      done.set(sql, own)
    }
    return own
  }
}

/** How many channels are tidied in one transaction: none holds the store for long. */
const TIDY_CHANNELS = 500

export abstract class SqlStore<Memory> implements Store<Memory> {
  protected readonly folding: Folding<Memory>
  protected constructor(rules: Rules<Memory>) {
    this.folding = new Folding(rules)
  }

  abstract load(channel: string, messageId?: string): Promise<Kept<Loaded<Memory>>>
  abstract append(channel: string, answered: Answered): Promise<Kept<Appended>>
  abstract restore(channel: string, moved: Moved): Promise<Kept<number>>
  abstract close(): Promise<void>
  /** The rows of one statement that only reads. */
  protected abstract read<Row>(...statement: Statement): Promise<Kept<Row[]>>
  /** Statements in one transaction, durable when it comes back: the rows that the last one returns. */
  protected abstract write<Row>(...statements: Statement[]): Promise<Kept<Row[]>>

  lastKnown(channel: string): Memory {
    return this.folding.lastKnown(channel)
  }

  recall(channel: string): Loaded<Memory> | null {
    const point = this.folding.current(channel)
    return point && { memory: point.memory, last: point.seq, skipped: point.skipped, answered: null }
  }

  async entries(channel: string, after: number, limit: number): Promise<Kept<readonly Numbered[]>> {
    const sql = `SELECT e.seq, e.entry FROM {entry} e JOIN {channel} c ON c.id = e.channel
      WHERE c.key = $1 AND e.seq > $2 ORDER BY e.seq LIMIT $3`
    return mapped(await this.read<EntryRow>(sql, [channel, after, limit]), (rows) => rows.map(entryOf))
  }

  async learned(workspace: string, kinds: readonly string[], limit: number): Promise<Kept<readonly InChannel[]>> {
    // In the words of the index of some kinds, since neither database uses one for values that it does not know yet; and by
    // time, of which any will do, since SQLite would rather walk through all entries.
    const listed = kinds.map((kind) => `'${plain(kind).replaceAll("'", "''")}'`).join(', ')
    const sql = `SELECT c.key AS channel, e.entry FROM (
        SELECT e.channel, e.seq, e.at_ms FROM {channel} c JOIN {entry} e ON e.channel = c.id
        WHERE c.workspace = $1 AND e.kind IN (${listed}) AND e.at_ms >= ${EARLIEST_MS}
        ORDER BY e.at_ms DESC, e.channel DESC, e.seq DESC LIMIT $2
      ) AS newest JOIN {entry} e ON e.channel = newest.channel AND e.seq = newest.seq JOIN {channel} c ON c.id = e.channel
      ORDER BY newest.at_ms, newest.channel, newest.seq`
    return mapped(await this.read<{ channel: string; entry: string }>(sql, [workspace, limit]), (rows) =>
      rows.map(({ channel, entry }) => ({ channel, entry: JSON.parse(entry) as Entry })),
    )
  }

  async forget(channel: string): Promise<Kept<boolean>> {
    // The channel's row first: whoever is adding to it is waited for, and what he added goes too.
    const rows = TABLES.filter((table) => table !== 'channel').map(
      (table): Statement => [
        `DELETE FROM {${table}} WHERE channel = (SELECT id FROM {channel} WHERE key = $1)`,
        [channel],
      ],
    )
    const done = await this.write(['SELECT id FROM {channel} WHERE key = $1{forUpdate}', [channel]], ...rows, [
      'DELETE FROM {channel} WHERE key = $1 RETURNING id',
      [channel],
    ])
    if (done.ok) this.folding.drop(channel)
    return mapped(done, some)
  }

  put(channel: string, key: string, value: Json, untilMs: number): Promise<Kept<null>> {
    const sql = `INSERT INTO {button} SELECT id, $2, $3, $4 FROM {channel} WHERE key = $1{keyShare}
      ON CONFLICT (channel, key) DO UPDATE SET value = excluded.value, until_ms = excluded.until_ms RETURNING channel`
    return this.#intoChannel(channel, sql, [channel, plain(key), JSON.stringify(value), Math.round(untilMs)])
  }

  async get(channel: string, key: string, nowMs: number): Promise<Kept<Json>> {
    const sql = `SELECT b.value FROM {button} b JOIN {channel} c ON c.id = b.channel
      WHERE c.key = $1 AND b.key = $2 AND b.until_ms > $3`
    const read = await this.read<{ value: string }>(sql, [channel, plain(key), Math.round(nowMs)])
    return mapped(read, (rows) => parseJson(rows[0]?.value ?? null))
  }

  remind(channel: string, { id, dueMs, body }: Reminder): Promise<Kept<null>> {
    const sql = `INSERT INTO {reminder} (channel, id, due_ms, next_ms, body, state, attempts)
      SELECT id, $2, $3, $3, $4, 'waiting', 0 FROM {channel} WHERE key = $1{keyShare} ${SET_AGAIN} RETURNING channel`
    return this.#intoChannel(channel, sql, [channel, plain(id), Math.round(dueMs), JSON.stringify(body)])
  }

  async cancelReminder(channel: string, id: string): Promise<Kept<boolean>> {
    const sql = `UPDATE {reminder} SET state = 'cancelled', holder = NULL
      WHERE channel = (SELECT id FROM {channel} WHERE key = $1) AND id = $2 AND state = 'waiting' RETURNING id`
    return mapped(await this.write([sql, [channel, plain(id)]]), some)
  }

  async snoozeReminder(channel: string, id: string, dueMs: number): Promise<Kept<boolean>> {
    const sql = `UPDATE {reminder} SET due_ms = $3, next_ms = $3, state = 'waiting', holder = NULL, attempts = 0
      WHERE channel = (SELECT id FROM {channel} WHERE key = $1) AND id = $2 AND state <> 'cancelled' RETURNING id`
    return mapped(await this.write([sql, [channel, plain(id), Math.round(dueMs)]]), some)
  }

  async reminders(channel: string): Promise<Kept<readonly Reminder[]>> {
    const sql = `SELECT r.id, r.due_ms, r.body FROM {reminder} r JOIN {channel} c ON c.id = r.channel
      WHERE c.key = $1 AND r.state = 'waiting' ORDER BY r.due_ms, r.id`
    return mapped(await this.read<ReminderRow>(sql, [channel]), (rows) => rows.map(reminderOf))
  }

  async claimDue(holder: string, nowMs: number, heldUntilMs: number, limit: number): Promise<Kept<readonly Claimed[]>> {
    const sql = `WITH due AS (
        SELECT channel AS due_channel, id AS due_id FROM {reminder} WHERE state = 'waiting' AND next_ms <= $2
        ORDER BY next_ms LIMIT $4{skipLocked}
      )
      UPDATE {reminder} SET holder = $1, next_ms = $3, attempts = attempts + 1
      FROM due WHERE channel = due_channel AND id = due_id
      RETURNING (SELECT c.key FROM {channel} c WHERE c.id = {reminder}.channel) AS channel, id, due_ms, body, attempts`
    type Row = ReminderRow & { channel: string; attempts: number }
    const values = [holder, Math.round(nowMs), Math.round(heldUntilMs), limit]
    return mapped(await this.write<Row>([sql, values]), (rows) =>
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
    const sql = `SELECT min(next_ms) AS next FROM {reminder} WHERE state = 'waiting'`
    return mapped(await this.read<{ next: number | null }>(sql, []), (rows) => rows[0]?.next ?? null)
  }

  async channels(after: string, limit: number): Promise<Kept<readonly string[]>> {
    const sql = 'SELECT key FROM {channel} WHERE key{byBytes} > $1 ORDER BY key{byBytes} LIMIT $2'
    return mapped(await this.read<{ key: string }>(sql, [after, limit]), (rows) => rows.map(({ key }) => key))
  }

  async recorded(channel: string, after: string, limit: number): Promise<Kept<readonly Recorded[]>> {
    const sql = `SELECT a.message, a.at, a.reply FROM {answered} a JOIN {channel} c ON c.id = a.channel
      WHERE c.key = $1 AND a.message{byBytes} > $2 ORDER BY a.message{byBytes} LIMIT $3`
    return mapped(await this.read<RecordedRow>(sql, [channel, plain(after), limit]), (rows) => rows.map(recordedOf))
  }

  async tidy(nowMs: number, repliesBeforeMs: number): Promise<Kept<null>> {
    const before = Math.round(repliesBeforeMs)
    const most = await this.read<{ id: number | null }>('SELECT max(id) AS id FROM {channel}', [])
    if (!most.ok) return most
    for (let from = 0; from < (most.value[0]?.id ?? 0); from += TIDY_CHANNELS) {
      const these = [from, from + TIDY_CHANNELS]
      const done = await this.write(
        ['DELETE FROM {button} WHERE channel > $1 AND channel <= $2 AND until_ms <= $3', [...these, Math.round(nowMs)]],
        [
          `DELETE FROM {reminder} WHERE channel > $1 AND channel <= $2 AND state <> 'waiting' AND due_ms < $3`,
          [...these, before],
        ],
        [
          'UPDATE {answered} SET reply = NULL WHERE channel > $1 AND channel <= $2 AND at_ms < $3 AND reply IS NOT NULL',
          [...these, before],
        ],
      )
      if (!done.ok) return done
      await new Promise(setImmediate)
    }
    return kept(null)
  }

  /** Runs an insert that finds its channel by key, after making the channel where there is none. */
  async #intoChannel(channel: string, sql: string, values: readonly Value[]): Promise<Kept<null>> {
    for (;;) {
      const done = await this.write([sql, values])
      if (!done.ok) return done
      if (some(done.value)) return kept(null)
      const made = await this.write([MAKE_CHANNEL, [channel, workspaceOf(channel)]])
      if (!made.ok) return made
    }
  }

  /** Changes a reminder that `holder` still holds. */
  async #held(
    holder: string,
    channel: string,
    id: string,
    state: 'waiting' | 'sent',
    nextMs: number | null,
    newHolder: string | null,
  ): Promise<Kept<boolean>> {
    const sql = `UPDATE {reminder} SET state = $4, next_ms = coalesce($5, next_ms), holder = $6
      WHERE channel = (SELECT id FROM {channel} WHERE key = $1) AND id = $2 AND holder = $3 AND state = 'waiting'
      RETURNING id`
    const next = nextMs === null ? null : Math.round(nextMs)
    return mapped(await this.write([sql, [channel, plain(id), holder, state, next, newHolder]]), some)
  }
}

/** The first instant that a `Date` holds [ms since 1970]. */
const EARLIEST_MS = -8_640_000_000_000_000

const some = (rows: readonly unknown[]): boolean => rows.length > 0

export const MAKE_CHANNEL = 'INSERT INTO {channel} (key, workspace) VALUES ($1, $2) ON CONFLICT DO NOTHING'

/** The end of an insert of reminders: the same id again moves it. */
export const SET_AGAIN = `ON CONFLICT (channel, id) DO UPDATE SET due_ms = excluded.due_ms, next_ms = excluded.next_ms,
  body = excluded.body, state = 'waiting', holder = NULL, attempts = 0`
