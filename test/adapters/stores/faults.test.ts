/** What a disk does to a store: the answer is still given, "not kept" is said, and all is well again without a restart. */
import { execFileSync, spawn } from 'node:child_process'
import { copyFileSync, mkdirSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { Keeper } from '../../../adapters/stores/keep.ts'
import { SqliteStore } from '../../../adapters/stores/sqlite.ts'
import { type Folder, makeReadOnly, plainFolder, smallDisk } from '../../support/faults.ts'
import { got } from './contract.ts'
import { AT, entry, type Toy, toyRules } from './toy.ts'

const SHOP = 'slack:T:shop'
let folder: Folder
let file: string
let store: SqliteStore<Toy>
const opened: SqliteStore<Toy>[] = []
const open = (at = file) => {
  const one = new SqliteStore(at, toyRules)
  opened.push(one)
  return one
}
beforeEach(() => {
  folder = plainFolder()
  file = path.join(folder.dir, 'jobs.db')
  store = open()
})
afterEach(async () => {
  for (const one of opened.splice(0)) await one.close()
  folder.end()
})

/** Says a message; the answer is the number of entries before it. */
const say = (id: string, to = store, filler = '') =>
  new Keeper(to).answer(SHOP, { id, now: AT }, (memory) => ({
    reply: memory.count,
    entries: [entry(id, 1, { body: { n: 1, filler } })],
  }))
const order = async (from = open()) => got(await from.load(SHOP)).memory.order

/** Says messages until three in a row are lost: the first may be followed by others that are kept, in the room that closing
 *  the file has made. */
async function untilLost(to: SqliteStore<Toy>): Promise<{ kept: string[]; lost: Awaited<ReturnType<typeof say>> }> {
  const kept: string[] = []
  let inARow = 0
  for (let i = 0; i < 5000; i++) {
    const said = await say(`m${i}`, to, 'x'.repeat(2000))
    if (said.state === 'kept') kept.push(`m${i}.0`)
    inARow = said.state === 'lost' ? inARow + 1 : 0
    if (inARow === 3) return { kept, lost: said }
  }
  throw new Error('the fault did not bite')
}

test('a full disk', async (context) => {
  const disk = smallDisk(512)
  if (!disk) return context.skip('no file system may be mounted here; the file-size limit below stands for it')
  try {
    const full = open(path.join(disk.dir, 'jobs.db'))
    const { kept, lost } = await untilLost(full)
    expect(lost).toMatchObject({ state: 'lost', reply: kept.length, failure: { code: 'full' } })
    expect(await say('again', full, 'x'.repeat(2000)), 'still answered from the last memory').toMatchObject({
      state: 'lost',
      reply: kept.length,
    })
    disk.grow()
    expect(await say('after', full)).toMatchObject({ state: 'kept', reply: kept.length })
    expect((await order(open(path.join(disk.dir, 'jobs.db')))).slice(-2)).toEqual([kept.at(-1), 'after.0'])
    await Promise.all(opened.map((one) => one.close()))
  } finally {
    disk.end()
  }
})

test('a file-size limit', { timeout: 120_000 }, async () => {
  const limited = spawn(process.execPath, [path.join(import.meta.dirname, 'writer.ts'), file])
  let out = ''
  limited.stdout.on('data', (text) => {
    out += text
  })
  const answer = async (id: string) => {
    limited.stdin.write(`${id} ${SHOP}\n`)
    await expect.poll(() => out.includes(`< ${id} `), { timeout: 20_000, interval: 1 }).toBe(true)
    return out
      .split('\n')
      .find((line) => line.startsWith(`< ${id} `))!
      .split(' ')
      .slice(2)
  }
  // The soft limit only, of the running process.
  const limit = (bytes: string) => execFileSync('prlimit', ['--pid', String(limited.pid), `--fsize=${bytes}:`])
  try {
    expect(await answer('m1')).toEqual(['kept', '0'])
    limit('1024')
    expect(await answer('m2')).toEqual(['lost', '2', 'full'])
    expect(await answer('m3'), 'it must go on biting').toEqual(['lost', '2', 'full'])
    limit('unlimited')
    expect(await answer('m4')).toEqual(['kept', '2'])
    expect(await order()).toEqual(['m1.0', 'm1.1', 'm4.0', 'm4.1'])
  } finally {
    limited.stdin.end()
    await new Promise((resolve) => limited.once('exit', resolve))
  }
})

test('a read-only folder', async () => {
  await say('m1')
  await store.close()
  const undo = makeReadOnly(folder.dir)
  try {
    const started = open()
    expect(await say('m2', started)).toMatchObject({ state: 'lost', failure: { code: 'read-only' } })
    undo()
    expect(await say('m3', started)).toMatchObject({ state: 'kept', reply: 1 })
    expect(await order()).toEqual(['m1.0', 'm3.0'])
  } finally {
    undo()
  }
})

test('a file of rubbish is left as it lies, and a mended one is taken up', async () => {
  await say('m1')
  await store.close()
  copyFileSync(file, `${file}.backup`)
  const rubbish = Buffer.from('not a database '.repeat(1000))
  writeFileSync(file, rubbish)
  const started = open()
  expect(await say('m2', started)).toMatchObject({ state: 'lost', reply: 0, failure: { code: 'corrupt' } })
  expect(readFileSync(file).equals(rubbish)).toBe(true)
  copyFileSync(`${file}.backup`, file)
  expect(await say('m3', started)).toMatchObject({ state: 'kept', reply: 1 })
  expect(await order()).toEqual(['m1.0', 'm3.0'])
})

test('pages that turned to rubbish', async () => {
  for (let i = 0; i < 200; i++) await say(`m${i}`, store, 'x'.repeat(500))
  await store.close()
  const good = readFileSync(file)
  writeFileSync(file, Buffer.concat([good.subarray(0, 4096), Buffer.alloc(good.length - 4096, 0x5a)]))
  const started = open()
  expect(await say('n1', started)).toMatchObject({ state: 'lost', failure: { code: 'corrupt' } })
  writeFileSync(file, good)
  expect(await say('n2', started)).toMatchObject({ state: 'kept', reply: 200 })
})

test('a file cut short under an open store', async () => {
  for (let i = 0; i < 100; i++) await say(`m${i}`, store, 'x'.repeat(500))
  await store.close()
  const good = readFileSync(file)
  const running = open()
  expect(await say('n0', running)).toMatchObject({ state: 'kept', reply: 100 })
  await running.close()
  truncateSync(file, 5000)
  expect(await say('n1', running)).toMatchObject({ state: 'lost', reply: 101, failure: { code: 'corrupt' } })
  rmSync(file)
  writeFileSync(file, good)
  expect(await say('n2', running), 'what is remembered of the lost file is not built upon').toMatchObject({
    state: 'kept',
    reply: 100,
  })
})

test('a row whose text is no longer JSON', async () => {
  await say('m1')
  await store.close()
  const raw = new DatabaseSync(file)
  raw.exec(`UPDATE entry SET entry = '{"at":'`)
  raw.close()
  expect(await say('m2', open())).toMatchObject({ state: 'lost', failure: { code: 'corrupt' } })
})

test('a file taken away under a running store is made anew, and what is answered is in it', async () => {
  await say('m1')
  for (const suffix of ['', '-wal', '-shm']) rmSync(file + suffix, { force: true })
  expect(await say('m2')).toMatchObject({ state: 'kept', reply: 0 })
  expect(await order()).toEqual(['m2.0'])
})

test('a layout of a newer version is not touched', async () => {
  await say('m1')
  await store.close()
  const raw = new DatabaseSync(file)
  raw.exec('PRAGMA user_version = 99')
  raw.close()
  expect(await say('m2', open())).toMatchObject({ state: 'lost', failure: { code: 'newer' } })
})

test("some other program's file is not touched", async () => {
  const other = path.join(folder.dir, 'other.db')
  const raw = new DatabaseSync(other)
  raw.exec('CREATE TABLE channel (id INTEGER)')
  raw.close()
  expect(await say('m1', open(other))).toMatchObject({ state: 'lost', failure: { code: 'corrupt' } })
  const after = new DatabaseSync(other)
  expect(after.prepare('SELECT name FROM sqlite_schema').all()).toEqual([{ name: 'channel' }])
  after.close()
})

test('a folder where the file should be, a file where the folder should be', async () => {
  mkdirSync(path.join(folder.dir, 'd'))
  writeFileSync(path.join(folder.dir, 'f'), '')
  for (const at of ['d', 'f/jobs.db'])
    expect(await say('m1', open(path.join(folder.dir, at)))).toMatchObject({ failure: { code: 'unreachable' } })
})

test('eight starters at once lay the tables once', async () => {
  const script = path.join(import.meta.dirname, 'writer.ts')
  const outs = await Promise.all(
    Array.from({ length: 8 }, async (_, i) => {
      const child = spawn(process.execPath, [script, file])
      let out = ''
      child.stdout.on('data', (text) => {
        out += text
      })
      child.stdin.end(`m${i} ${SHOP}\n`)
      await new Promise((resolve) => child.once('close', resolve))
      return out
    }),
  )
  for (const [i, out] of outs.entries()) expect(out).toContain(`< m${i} kept`)
  expect(await order()).toHaveLength(16)
  expect(statSync(file).mode & 0o777).toBe(0o600)
})
