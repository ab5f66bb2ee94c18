/** The store alone: one message kept by it against the bare insert and read of the same bytes in the same database, in the
 *  same run. What a message costs on its whole way is in `answers.ts`. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Keeper } from '../../adapters/stores/keep.ts'
import { PostgresStore } from '../../adapters/stores/postgres.ts'
import { SqliteStore } from '../../adapters/stores/sqlite.ts'
import type { Rules, Store } from '../../adapters/stores/store.ts'
import type { Entry } from '../../src/message.ts'
import { barePostgres, bareSqlite } from '../support/bare.ts'
import { fillChannels } from '../support/many-channels.ts'
import { startPostgres } from '../support/postgres.ts'
import { inTurns, middle, sideBySide, tell, timed, type Work } from '../support/timing.ts'

const MESSAGES = 2000
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
/** What the bare side puts in: the entry and the reply that the store keeps of a message. */
const kept = (i: number) => JSON.stringify([entryOf(`m${i}`, i), REPLY])

let messages = 0
/** One message, as an adapter has it answered: the memory, then the entry and the reply. */
const message = (keeper: Keeper<Memory>, channel: string) => {
  const id = `m${messages++}`
  return keeper.answer(channel, { id, now: AT }, (memory) => ({
    reply: { ...REPLY, used: memory.used },
    entries: [entryOf(id, messages)],
  }))
}

/** Fills a store through its own door. */
async function grow(store: Store<Memory>, channel: string, entries: number): Promise<void> {
  const done = await store.restore(channel, {
    entries: Array.from({ length: entries }, (_, i) => entryOf(`old${i}`, i)),
  })
  if (!done.ok) throw new Error(done.failure.detail)
}

const inChannel = (n: number) => `slack:W${n % 500}:C${n}`

async function sqlite(dir: string): Promise<void> {
  const bareDb = bareSqlite(path.join(dir, 'bare.db'))
  const bare = (i: number) => bareDb.keep(kept(i))
  const file = path.join(dir, 'jobs.db')
  const store = new SqliteStore(file, rules)
  const keeper = new Keeper(store)
  const small = (i: number) => message(keeper, `slack:T:small${i % 20}`)
  await sideBySide(300, bare, small)
  const [bares, smalls] = await sideBySide(MESSAGES, bare, small)
  tell('SQLite FULL, bare insert and read', bares!)
  tell('SQLite FULL, message with job memory', smalls!, bares)

  await grow(store, 'slack:T:long', LONG_JOB)
  const long = () => message(keeper, 'slack:T:long')
  await long()
  const three = async (name: string, work: Work) => {
    const [own, beside, bared] = await sideBySide(MESSAGES, work, small, bare)
    tell(name, own!, bared)
    tell('', own!, beside, 'a small job')
  }
  await three(`the same in a job of ${LONG_JOB} entries`, long)
  await justStarted(file)

  const db = new DatabaseSync(file)
  fillChannels(
    db,
    CHANNELS,
    [1, 2, 3].map((seq) => entryOf(`o${seq}`, seq)),
  )
  await three(`anywhere among ${CHANNELS} channels`, (i) => message(keeper, inChannel(((i * 7919) % CHANNELS) + 1)))
  await three(`50 busy ones of ${CHANNELS} channels`, (i) => message(keeper, inChannel((i % 50) + 1)))

  db.exec(`BEGIN; WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < ${REMINDERS})
    INSERT INTO reminder SELECT i, 'r', 1000000 + i, 1000000 + i, '{"say":"grout"}', 'waiting', NULL, 0 FROM n; COMMIT`)
  db.close()
  tell(`look for due reminders, ${REMINDERS} pending`, await timed(500, 1, () => store.nextReminder()))
  const claim = (i: number) => store.claimDue('a', 1_000_000 + 50 * i, 9e12, 50)
  tell('claim 50 due ones of them', await timed(100, 1, claim))
  await store.close()
  await bareDb.end()
}

/** The memory of a long job, read by a process that has only just started. */
async function justStarted(file: string): Promise<void> {
  const opened = async (channel: string) => {
    const fresh = new SqliteStore(file, rules)
    await fresh.load('slack:T:nothing') // opens the file
    const timing = await timed(1, 1, () => fresh.load(channel))
    await fresh.close()
    return timing
  }
  const cold = []
  const beside = []
  for (let i = 0; i < 30; i++) {
    cold.push(await opened('slack:T:long'))
    beside.push(await opened('slack:T:small1'))
  }
  const [long, small] = [middle(cold).p50, middle(beside).p50]
  console.log(
    `  ${'its memory, read by a process just started'.padEnd(46)} p50 ${long.toFixed(3)} ms; of a small job ${small.toFixed(3)} ms`,
  )
}

async function postgres(): Promise<void> {
  const server = await startPostgres({ durable: true })
  try {
    if (!server.real) console.log('  (no PostgreSQL server here: the WebAssembly build, which has one session)')
    const url = await server.fresh()
    for (const connections of [1, 4, 16]) {
      const bare = await barePostgres(url, connections)
      const store = new PostgresStore(url, rules, connections)
      const keeper = new Keeper(store)
      const ours = (i: number) => message(keeper, `slack:T:c${connections}-${i % 200}`)
      const [bares, own] = await inTurns(9, 400, connections, (i) => bare.keep(kept(i)), ours)
      tell(`PostgreSQL, ${connections} connections, bare`, bares!.timing)
      tell(`PostgreSQL, ${connections} connections, message`, own!.timing, bares!.timing, 'bare', own!.ratio)
      await store.close()
      await bare.end()
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
