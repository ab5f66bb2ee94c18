/** Files as a crash or another program leaves them: half a write-ahead log, a lock that is held, rows begun and not ended. */
import { copyFileSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { setTimeout as pause } from 'node:timers/promises'
import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { Keeper } from '../../../adapters/stores/keep.ts'
import { SqliteStore } from '../../../adapters/stores/sqlite.ts'
import { type Folder, plainFolder } from '../../support/faults.ts'
import { got } from './contract.ts'
import { AT, entry, type Toy, toyRules } from './toy.ts'

const SHOP = 'slack:T:shop'
let folder: Folder
let file: string
beforeEach(() => {
  folder = plainFolder()
  file = path.join(folder.dir, 'jobs.db')
})
afterEach(() => folder.end())

const say = (id: string, to: SqliteStore<Toy>) =>
  new Keeper(to).answer(SHOP, { id, now: AT }, (memory) => ({
    reply: memory.count,
    entries: [entry(id), entry(id, 1, { part: 1 })],
  }))

describe('a crash image', () => {
  const MESSAGES = 30

  /** The file and its log as they lie on the disk while the store is open: what a crash of the machine leaves. */
  async function crashed(): Promise<{ readonly main: Buffer; readonly log: Buffer }> {
    const store = new SqliteStore(file, toyRules)
    for (let i = 0; i < MESSAGES; i++) expect((await say(`m${i}`, store)).state).toBe('kept')
    const image = { main: readFileSync(file), log: readFileSync(`${file}-wal`) }
    await store.close()
    return image
  }

  const opened = async (main: Buffer, log: Buffer) => {
    const copy = path.join(folder.dir, 'copy.db')
    for (const suffix of ['', '-wal', '-shm']) rmSync(copy + suffix, { force: true })
    writeFileSync(copy, main)
    writeFileSync(`${copy}-wal`, log)
    const store = new SqliteStore(copy, toyRules)
    const ids = got(await store.entries(SHOP, 0, 1000)).map((one) => `${one.entry.messageId}.${one.entry.part}`)
    const said = await say('after', store)
    await store.close()
    const raw = new DatabaseSync(copy)
    const check = raw.prepare('PRAGMA integrity_check').get()
    raw.close()
    return { ids, said, check }
  }
  const whole = (n: number) => Array.from({ length: n }, (_, i) => [`m${i}.0`, `m${i}.1`]).flat()

  test('with its whole log holds every message', async () => {
    const { main, log } = await crashed()
    expect(log.length).toBeGreaterThan(10_000)
    const { ids, said, check } = await opened(main, log)
    expect(ids).toEqual(whole(MESSAGES))
    expect(said).toMatchObject({ state: 'kept', reply: 2 * MESSAGES })
    expect(check).toEqual({ integrity_check: 'ok' })
  })

  test('with a log cut or spoilt anywhere holds the first messages, each whole, and takes new ones', async () => {
    const { main, log } = await crashed()
    const seen = new Set<number>()
    const holds = async (at: number, spoilt: boolean) => {
      const left = Buffer.from(log)
      if (spoilt) left.fill(0x5a, at)
      const { ids, said, check } = await opened(main, spoilt ? left : left.subarray(0, at))
      expect(ids).toEqual(whole(ids.length / 2))
      expect(said).toMatchObject({ state: 'kept', reply: ids.length })
      expect(check).toEqual({ integrity_check: 'ok' })
      seen.add(ids.length)
    }
    await fc.assert(fc.asyncProperty(fc.integer({ min: 0, max: log.length }), fc.boolean(), holds), { numRuns: 40 })
    expect(seen.size, 'the cuts must bite').toBeGreaterThan(3)
  })
})

test('a lock held for a moment is waited for', async () => {
  const store = new SqliteStore(file, toyRules)
  await say('m1', store)
  const other = new DatabaseSync(file)
  other.exec('BEGIN IMMEDIATE')
  const waiting = say('m2', store)
  await pause(700)
  other.exec('COMMIT')
  other.close()
  expect(await waiting).toMatchObject({ state: 'kept', reply: 2 })
  await store.close()
})

test('a lock that is never given up: answered, said to be lost, and kept again afterwards', {
  timeout: 60_000,
}, async () => {
  const store = new SqliteStore(file, toyRules)
  await say('m1', store)
  const other = new DatabaseSync(file)
  other.exec('BEGIN EXCLUSIVE')
  const begin = performance.now()
  expect(await say('m2', store)).toMatchObject({ state: 'lost', reply: 2, failure: { code: 'unreachable' } })
  expect(performance.now() - begin, 'a person waits').toBeLessThan(30_000)
  other.exec('ROLLBACK')
  other.close()
  expect(await say('m2', store)).toMatchObject({ state: 'kept', reply: 2 })
  await store.close()
})

test('an empty file is made into a store; one that is only the start of a store is not touched', async () => {
  writeFileSync(file, '')
  const store = new SqliteStore(file, toyRules)
  expect((await say('m1', store)).state).toBe('kept')
  await store.close()
  const half = path.join(folder.dir, 'half.db')
  copyFileSync(file, half)
  writeFileSync(half, readFileSync(file).subarray(0, 3000))
  const before = readFileSync(half)
  const broken = new SqliteStore(half, toyRules)
  expect(await say('m2', broken)).toMatchObject({ state: 'lost', failure: { code: 'corrupt' } })
  expect(readFileSync(half).equals(before)).toBe(true)
  expect(existsSync(`${half}-wal`)).toBe(false)
  await broken.close()
})
