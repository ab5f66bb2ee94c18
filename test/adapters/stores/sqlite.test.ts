import { mkdtempSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { memoryStore } from '../../../adapters/stores/memory.ts'
import { SqliteStore } from '../../../adapters/stores/sqlite.ts'
import { contract, got } from './contract.ts'
import { answered, toyRules } from './toy.ts'

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
