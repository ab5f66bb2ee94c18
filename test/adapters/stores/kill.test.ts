/** kill -9 at random moments: what was answered is there, what was not is there whole or not at all, and once. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { setTimeout as pause } from 'node:timers/promises'
import { expect, test } from 'vitest'
import { PostgresStore } from '../../../adapters/stores/postgres.ts'
import { SqliteStore } from '../../../adapters/stores/sqlite.ts'
import type { Store } from '../../../adapters/stores/store.ts'
import { startPostgres } from '../../support/postgres.ts'
import { got } from './contract.ts'
import { type Toy, toyRules } from './toy.ts'

const ROUNDS = 200
const SHARED_ROUNDS = 40
/** Processes warming up beside the one being killed, so that a round need not wait for a start. */
const WARM = 2
const WRITER = path.join(import.meta.dirname, 'writer.ts')

type Writer = { readonly child: ChildProcessWithoutNullStreams; out: string; readonly gone: Promise<unknown> }

function startWriter(where: string): Writer {
  const child = spawn(process.execPath, [WRITER, where, Math.random() < 0.5 ? 'open' : 'closed'])
  const writer: Writer = { child, out: '', gone: new Promise((resolve) => child.once('close', resolve)) }
  child.stdin.on('error', () => {}) // it is killed with messages on their way
  child.stdout.on('data', (text) => {
    writer.out += text
  })
  return writer
}

test(`${ROUNDS} kills lose no answered message and double none, in SQLite`, { timeout: 300_000 }, async () => {
  const dir = mkdtempSync(path.join(tmpdir(), 'kneepad-'))
  const file = path.join(dir, 'jobs.db')
  const killed = await kill(file, ROUNDS)
  const raw = new DatabaseSync(file)
  expect(raw.prepare('PRAGMA integrity_check').get()).toEqual({ integrity_check: 'ok' })
  raw.close()
  await hold(new SqliteStore(file, toyRules), killed)
  rmSync(dir, { recursive: true })
})

test(`${SHARED_ROUNDS} kills of an instance on PostgreSQL do not either`, { timeout: 300_000 }, async () => {
  const server = await startPostgres()
  try {
    const url = await server.fresh()
    await hold(new PostgresStore(url, toyRules), await kill(url, SHARED_ROUNDS))
  } finally {
    await server.end()
  }
})

type Killed = {
  readonly rounds: number
  /** Replies by message, and the channel of each. */
  readonly answered: ReadonlyMap<string, string>
  readonly channelOf: ReadonlyMap<string, string>
  /** Kills between a message's arrival and its answer. */
  readonly midway: number
  readonly redelivered: number
}

/** Kills a writer at random moments, again and again, and delivers to the next what was left unanswered. */
async function kill(where: string, rounds: number): Promise<Killed> {
  const answered = new Map<string, string>()
  let unanswered: string[] = []
  const channelOf = new Map<string, string>()
  const warm: Writer[] = []
  let midway = 0
  let redelivered = 0
  for (let round = 0; round < rounds; round++) {
    while (warm.length < WARM + 1) warm.push(startWriter(where))
    const writer = warm.shift()!
    await expect.poll(() => writer.out.includes('ready'), { timeout: 20_000, interval: 2 }).toBe(true)
    // First what the killed one left unanswered, as a platform delivers again; then new messages without end.
    const again = unanswered
    const fresh = Array.from({ length: 400 }, (_, i) => `r${round}-${i}`)
    for (const id of fresh) channelOf.set(id, `slack:T:C${round % 3}`)
    for (const id of [...again, ...fresh]) writer.child.stdin.write(`${id} ${channelOf.get(id)}\n`)
    // A moment between answers, not a clock time: it means the same on a slow machine.
    const answers = Math.floor(Math.random() * 8)
    const seen = () => writer.out.includes('>') && writer.out.split('\n< ').length > answers
    await expect.poll(seen, { timeout: 20_000, interval: 1 }).toBe(true)
    await pause(Math.random() * 5)
    writer.child.kill('SIGKILL')
    await writer.gone

    const lines = writer.out.split('\n').slice(0, -1) // the last piece is cut or empty
    const arrived = new Set(lines.filter((l) => l.startsWith('> ')).map((l) => l.slice(2)))
    for (const line of lines.filter((l) => l.startsWith('< '))) {
      const [, id, state, reply] = line.split(' ') as [string, string, string, string]
      expect(state).toMatch(/^(kept|already)$/)
      if (state === 'already') redelivered++
      answered.set(id, reply)
      arrived.delete(id)
    }
    if (arrived.size > 0) midway++
    unanswered = [...arrived, ...again.filter((id) => !answered.has(id) && !arrived.has(id))]
  }
  for (const writer of warm) {
    writer.child.kill('SIGKILL')
    await writer.gone
  }
  return { rounds, answered, channelOf, midway, redelivered }
}

async function hold(store: Store<Toy>, { rounds, answered, channelOf, midway, redelivered }: Killed): Promise<void> {
  const parts = new Map<string, number[]>()
  for (const channel of ['slack:T:C0', 'slack:T:C1', 'slack:T:C2']) {
    const log = got(await store.entries(channel, 0, 1e9))
    expect(log.map((e) => e.seq)).toEqual(log.map((_, i) => i + 1))
    for (const { entry } of log) parts.set(entry.messageId, [...(parts.get(entry.messageId) ?? []), entry.part])
    expect(got(await store.load(channel)).memory.count).toBe(log.length)
  }
  for (const [id, reply] of answered) {
    expect(parts.get(id), id).toEqual([0, 1])
    expect(got(await store.load(channelOf.get(id)!, id)).answered?.reply, id).toBe(Number(reply))
  }
  for (const [id, found] of parts) expect(found, `${id} whole and once`).toEqual([0, 1])
  await store.close()
  console.log(
    `${rounds} kills, ${midway} between arrival and answer, ${answered.size} answered, ${redelivered} found kept`,
  )
  expect(answered.size).toBeGreaterThan(rounds)
  expect(midway, 'kills between arrival and answer').toBeGreaterThanOrEqual(rounds / 2)
}
