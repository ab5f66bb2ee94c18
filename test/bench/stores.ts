/** A message with job memory in a store, against the bare insert and read of the same store in the same run. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import pg from 'pg'
import { Keeper } from '../../adapters/stores/keep.ts'
import { PostgresStore } from '../../adapters/stores/postgres.ts'
import { SqliteStore } from '../../adapters/stores/sqlite.ts'
import type { Rules, Store } from '../../adapters/stores/store.ts'
import type { Entry } from '../../src/message.ts'
import { startPostgres } from '../support/postgres.ts'

const MESSAGES = 3000
const CHANNELS = 100_000
const LONG_JOB = 2000
const REMINDERS = 100_000
const AT = '2026-11-24T08:30:00-05:00'

/** Of the size of a real one: a room, a tile, what was used so far. */
type Memory = { readonly rooms: Readonly<Record<string, unknown>>; readonly used: number; readonly last: unknown }
const rules: Rules<Memory> = {
  emptyMemory: { rooms: {}, used: 0, last: null },
  fold: (memory, entry) => {
    const body = entry.body as { room: string; bags: number }
    return { rooms: { ...memory.rooms, [body.room]: body }, used: memory.used + body.bags, last: body }
  },
}
const entryOf = (id: string, i: number): Entry => ({
  at: AT,
  person: 'U0123456789',
  personName: 'the lead',
  messageId: id,
  part: 0,
  kind: 'used',
  version: 1,
  body: {
    room: `room ${i % 6}`,
    bags: 1,
    area_m2: 12.077,
    joint_mm: 4.7625,
    tile: [457.2, 457.2, 9.525],
    said: 'x'.repeat(80),
  },
})
const REPLY = {
  ok: true,
  answer: 'a'.repeat(120),
  details: ['b'.repeat(200), 'c'.repeat(200)],
  values: { area_m2: 12 },
}

type Timing = { readonly p50: number; readonly p99: number; readonly perSecond: number }

function summed(ms: number[], wallMs: number): Timing {
  const sorted = ms.toSorted((a, b) => a - b)
  const at = (p: number) => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!
  return { p50: at(0.5), p99: at(0.99), perSecond: (1000 * ms.length) / wallMs }
}

async function timed(count: number, atOnce: number, one: (i: number) => unknown): Promise<Timing> {
  const ms: number[] = []
  let next = 0
  const begin = performance.now()
  await Promise.all(
    Array.from({ length: atOnce }, async () => {
      while (next < count) {
        const i = next++
        const start = performance.now()
        await one(i)
        ms.push(performance.now() - start)
      }
    }),
  )
  return summed(ms, performance.now() - begin)
}

/** One after the other, message by message, so that a disk that is slow for a while is slow for both. */
async function sideBySide(count: number, a: Work, b: Work): Promise<[Timing, Timing]> {
  const times: [number[], number[]] = [[], []]
  for (let i = 0; i < count; i++)
    for (const [which, work] of [a, b].entries()) {
      const start = performance.now()
      await work(i)
      times[which]!.push(performance.now() - start)
    }
  const own = (ms: number[]) =>
    summed(
      ms,
      ms.reduce((sum, one) => sum + one, 0),
    )
  return [own(times[0]), own(times[1])]
}
type Work = (i: number) => unknown

const shown = (t: Timing) => `p50 ${t.p50.toFixed(3)} ms, p99 ${t.p99.toFixed(3)} ms, ${t.perSecond.toFixed(0)}/s`
const against = (t: Timing, base: Timing) =>
  `throughput ${(t.perSecond / base.perSecond).toFixed(2)} x, p50 ${(t.p50 / base.p50).toFixed(2)} x, p99 ${(t.p99 / base.p99).toFixed(2)} x`
const line = (name: string, t: Timing, base?: Timing, of = 'bare') =>
  console.log(`  ${name.padEnd(44)} ${shown(t)}${base ? `  (${against(t, base)} of ${of})` : ''}`)

let messages = 0
/** One message, as an adapter has it answered: read the memory, keep the entry and the reply. */
const message = (keeper: Keeper<Memory>, channel: string) => {
  const id = `m${messages++}`
  return keeper.answer(channel, { id, now: AT }, (memory) => ({
    reply: { ...REPLY, used: memory.used },
    entries: [entryOf(id, messages)],
  }))
}

/** Fills a store through its own door, a page at a time. */
async function grow(store: Store<Memory>, channel: string, entries: number): Promise<void> {
  const all = Array.from({ length: entries }, (_, i) => entryOf(`old${i}`, i))
  const done = await store.restore(channel, { entries: all })
  if (!done.ok) throw new Error(done.failure.detail)
}

async function sqlite(dir: string): Promise<void> {
  const bareDb = new DatabaseSync(path.join(dir, 'bare.db'))
  bareDb.exec(
    'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; CREATE TABLE bare (id INTEGER PRIMARY KEY, text TEXT)',
  )
  const insert = bareDb.prepare('INSERT INTO bare (text) VALUES (?)')
  const select = bareDb.prepare('SELECT text FROM bare WHERE id = ?')
  const text = JSON.stringify([entryOf('m', 1), REPLY])
  const bare = (i: number) => {
    insert.run(text)
    JSON.parse((select.get(i + 1) as { text: string }).text)
  }
  const file = path.join(dir, 'jobs.db')
  const store = new SqliteStore(file, rules)
  const keeper = new Keeper(store)
  const small = (i: number) => message(keeper, `slack:T:small${i % 20}`)
  await sideBySide(300, bare, small)
  const [bares, smalls] = await sideBySide(MESSAGES, bare, small)
  line('SQLite FULL, bare insert and read', bares)
  line('SQLite FULL, message with job memory', smalls, bares)

  await grow(store, 'slack:T:long', LONG_JOB)
  await message(keeper, 'slack:T:long')
  const [longs, beside] = await sideBySide(MESSAGES, () => message(keeper, 'slack:T:long'), small)
  line(`the same in a job of ${LONG_JOB} entries`, longs, beside, 'a small job')
  const cold: Timing[] = []
  const coldBeside: Timing[] = []
  const opened = async (channel: string) => {
    const fresh = new SqliteStore(file, rules)
    const begin = performance.now()
    await fresh.load('slack:T:nothing') // opens the file
    const start = performance.now()
    await fresh.load(channel)
    const ms = performance.now() - start
    await fresh.close()
    return summed([ms], performance.now() - begin)
  }
  for (let i = 0; i < 30; i++) {
    cold.push(await opened('slack:T:long'))
    coldBeside.push(await opened('slack:T:small1'))
  }
  console.log(
    `  ${'its memory, read by a process just started'.padEnd(44)} p50 ${middle(cold).p50.toFixed(3)} ms; of a small job ${middle(coldBeside).p50.toFixed(3)} ms`,
  )

  const db = new DatabaseSync(file)
  db.exec(`PRAGMA synchronous = OFF; BEGIN;
    WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${CHANNELS})
      INSERT INTO channel (key, workspace) SELECT 'slack:W' || (i % 500) || ':C' || i, 'slack:W' || (i % 500) FROM n`)
  const fill = db.prepare(
    `INSERT INTO entry SELECT id, ?1, 'o' || ?1, 0, 'used', 0, ?2 FROM channel
      WHERE id NOT IN (SELECT channel FROM entry WHERE seq >= ?1)`,
  )
  for (let seq = 1; seq <= 3; seq++) fill.run(seq, JSON.stringify(entryOf(`o${seq}`, seq)))
  db.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)')
  const anywhere = (i: number) => {
    const n = ((i * 7919) % CHANNELS) + 1
    return message(keeper, `slack:W${n % 500}:C${n}`)
  }
  const [many, manyBeside] = await sideBySide(MESSAGES, anywhere, small)
  line(`the same, anywhere among ${CHANNELS} channels`, many, manyBeside, 'a small job')
  const [busyBares, busy] = await sideBySide(MESSAGES, bare, (i) =>
    message(keeper, `slack:W${(i % 50) + 1}:C${(i % 50) + 1}`),
  )
  line(`the same, 50 busy ones of ${CHANNELS} channels`, busy, busyBares)

  db.exec(`BEGIN; WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${REMINDERS})
    INSERT INTO reminder SELECT i, 'r', 1000000 + i, 1000000 + i, '{"say":"grout"}', 'waiting', NULL, 0 FROM n; COMMIT`)
  db.close()
  const idle = await timed(500, 1, () => store.nextReminder())
  line(`look for due reminders, ${REMINDERS} pending`, idle)
  const claim = await timed(100, 1, (i) => store.claimDue('a', 1_000_000 + 50 * i, 9e12, 50))
  line('claim 50 due ones of them', claim)
  await store.close()
  bareDb.close()
}

/** The turn in the middle by its median: a run of turns is told by it. */
function middle(turns: readonly Timing[]): Timing {
  const by = (pick: (t: Timing) => number) => turns.map(pick).toSorted((a, b) => a - b)[Math.floor(turns.length / 2)]!
  return { p50: by((t) => t.p50), p99: by((t) => t.p99), perSecond: by((t) => t.perSecond) }
}

async function postgres(): Promise<void> {
  const server = await startPostgres({ durable: true })
  try {
    if (!server.real) console.log('  (no PostgreSQL server here: the WebAssembly build, which has one session)')
    const url = await server.fresh()
    const text = JSON.stringify([entryOf('m', 1), REPLY])
    for (const connections of [1, 4, 16]) {
      const pool = new pg.Pool({ connectionString: url, max: connections })
      await pool.query(
        'CREATE TABLE IF NOT EXISTS bare (id bigint GENERATED ALWAYS AS IDENTITY PRIMARY KEY, text text)',
      )
      const bare = async () => {
        const insert = { name: 'insert', text: 'INSERT INTO bare (text) VALUES ($1) RETURNING id', values: [text] }
        const { rows } = await pool.query(insert)
        await pool.query({ name: 'select', text: 'SELECT text FROM bare WHERE id = $1', values: [rows[0].id] })
      }
      const store = new PostgresStore(url, rules, connections)
      const keeper = new Keeper(store)
      const ours = (i: number) => message(keeper, `slack:T:c${connections}-${i % 200}`)
      const bares: Timing[] = []
      const messagesTimed: Timing[] = []
      await timed(200, connections, bare)
      await timed(200, connections, ours)
      for (let turn = 0; turn < 5; turn++) {
        bares.push(await timed(400, connections, bare))
        messagesTimed.push(await timed(400, connections, ours))
      }
      line(`PostgreSQL, ${connections} connections, bare`, middle(bares))
      line(`PostgreSQL, ${connections} connections, message`, middle(messagesTimed), middle(bares))
      await store.close()
      await pool.end()
    }
  } finally {
    await server.end()
  }
}

export default async function stores(): Promise<void> {
  const dir = mkdtempSync(path.join(tmpdir(), 'kneepad-bench-'))
  try {
    await sqlite(dir)
  } finally {
    rmSync(dir, { recursive: true })
  }
  await postgres()
}
