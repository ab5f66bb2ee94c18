import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { memoryStore } from '../../../adapters/stores/memory.ts'
import { SqliteStore } from '../../../adapters/stores/sqlite.ts'
import { APPLICATION_ID, STEPS } from '../../../adapters/stores/sqlite-schema.ts'
import { contract, got } from './contract.ts'
import { AT, answered, entry, toyRules } from './toy.ts'

const folder = () => mkdtempSync(path.join(tmpdir(), 'kneepad-'))

contract('in memory', async () => {
  const store = memoryStore(toyRules)
  return { open: () => store, shared: false, end: async () => {} }
})

contract('SQLite', async () => {
  const dir = folder()
  return {
    open: (rules = toyRules) => new SqliteStore(path.join(dir, 'jobs.db'), rules),
    shared: true,
    end: async () => rmSync(dir, { recursive: true }),
  }
})

test('the file and its folder are made at first start, for their owner alone', async () => {
  const dir = folder()
  const file = path.join(dir, 'data', 'kneepad', 'jobs.db')
  const store = new SqliteStore(file, toyRules)
  got(await store.append('slack:T:C', answered('m1')))
  expect(statSync(path.dirname(file)).mode & 0o777).toBe(0o700)
  for (const suffix of ['', '-wal', '-shm']) expect(statSync(file + suffix).mode & 0o777, suffix).toBe(0o600)
  await store.close()
  rmSync(dir, { recursive: true })
})

test('a file of the first layout is brought up to the newest, and loses nothing', async () => {
  const dir = folder()
  const file = path.join(dir, 'jobs.db')
  const raw = new DatabaseSync(file)
  raw.exec(`${STEPS[0]} PRAGMA application_id = ${APPLICATION_ID}; PRAGMA user_version = 1`)
  raw.exec(`INSERT INTO channel (key, workspace) VALUES ('slack:T:C', 'slack:T')`)
  const learned = entry('m1', 5, { kind: 'use' })
  raw.prepare('INSERT INTO entry VALUES (1, 1, ?, 0, ?, 5, ?)').run('m1', 'use', JSON.stringify(learned))
  raw.prepare('INSERT INTO answered VALUES (1, ?, ?, 5, ?)').run('m1', AT, '"r1"')
  raw.close()
  const store = new SqliteStore(file, toyRules)
  expect(got(await store.append('slack:T:C', answered('m1')))).toEqual({ state: 'already', reply: 'r1' })
  expect(got(await store.append('slack:T:C', answered('m2', 7)))).toEqual({ state: 'kept', last: 2 })
  expect(got(await store.load('slack:T:C')).memory).toMatchObject({ count: 2, sum: 12 })
  expect(got(await store.learned('slack:T', ['use', 'undo'], 9)).map((e) => e.entry)).toEqual([learned])
  await store.close()
  rmSync(dir, { recursive: true })
})
