/** `npm run jobs`, as a user runs it. */
import { spawn } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { PostgresStore } from '../../../adapters/stores/postgres.ts'
import { SqliteStore } from '../../../adapters/stores/sqlite.ts'
import { type Folder, plainFolder } from '../../support/faults.ts'
import { startPostgres, type TestPostgres } from '../../support/postgres.ts'
import { got } from './contract.ts'
import { AT, answered, entry, toyRules } from './toy.ts'

const SCRIPT = path.resolve('adapters/stores/jobs.ts')
let folder: Folder
let file: string
let server: TestPostgres
beforeAll(async () => {
  server = await startPostgres()
})
afterAll(() => server?.end())
beforeEach(() => {
  folder = plainFolder()
  file = path.join(folder.dir, 'jobs.db')
})
afterEach(() => folder.end())

async function jobs(args: readonly string[], input = '', env: Record<string, string> = {}) {
  const { DATABASE_URL: _, ...inherited } = process.env
  const child = spawn(process.execPath, [SCRIPT, ...args], { env: { ...inherited, ...env } })
  let out = ''
  let err = ''
  child.stdout.on('data', (text) => {
    out += text
  })
  child.stderr.on('data', (text) => {
    err += text
  })
  child.stdin.on('error', () => {})
  child.stdin.end(input)
  const code = await new Promise((resolve) => child.once('close', resolve))
  return { out, err, code }
}

async function fill(): Promise<void> {
  const store = new SqliteStore(file, toyRules)
  for (let i = 0; i < 600; i++) await store.append('slack:T:shop', answered(`m${i}`, i))
  const notes = {
    ...entry('m1'),
    kind: 'note',
    body: { text: '=1+1', n: -5, rooms: [{ name: 'wash-up, back "room"' }] },
  }
  await store.append('slack:T:mudroom', { messageId: 'm1', at: AT, entries: [notes], reply: 'ok' })
  await store.remind('slack:T:mudroom', { id: 'r', dueMs: 123, body: { say: 'grout' } })
  await store.close()
}

test('all of a store goes to another and back, and an import may be run twice', async () => {
  await fill()
  const exported = await jobs(['export', '--store', file])
  expect(exported).toMatchObject({ code: 0, err: '' })
  expect(exported.out.trimEnd().split('\n')).toHaveLength(600 * 2 + 3)
  const url = await server.fresh()
  expect(await jobs(['import'], exported.out, { DATABASE_URL: url })).toMatchObject({ out: '', code: 0 })
  expect((await jobs(['import', '--store', url], exported.out)).err).toBe(
    '0 new, 1203 there already\n601 of a newer version: kept, but not read by this one\n',
  )
  const there = new PostgresStore(url, toyRules)
  expect(got(await there.load('slack:T:shop', 'm7'))).toMatchObject({
    memory: { count: 600, sum: (599 * 600) / 2 },
    answered: { reply: { text: 'answer to m7' } },
  })
  expect(got(await there.reminders('slack:T:mudroom'))).toEqual([{ id: 'r', dueMs: 123, body: { say: 'grout' } }])
  await there.close()
  expect((await jobs(['export', '--store', url])).out).toBe(exported.out)
  const one = await jobs(['export', '--store', url, '--channel', 'slack:T:mudroom'])
  expect(one.out.trimEnd().split('\n')).toHaveLength(3)
})

test('a spreadsheet gets a row for each entry, and no formulas', async () => {
  await fill()
  const to = path.join(folder.dir, 'out.csv')
  expect(await jobs(['export', '--csv', '--store', file, '--channel', 'slack:T:mudroom', '--file', to])).toMatchObject({
    code: 0,
    out: '',
  })
  const shown = await jobs(['export', '--csv', '--store', file, '--channel', 'slack:T:mudroom'])
  expect(shown.out).toBe(
    'channel,number,at,person,name,message,part,kind,version,n,rooms.0.name,text\r\n' +
      `slack:T:mudroom,1,${AT},U1,,m1,0,note,1,-5,"wash-up, back ""room""",'=1+1\r\n`,
  )
})

test('list, and forget when it is meant', async () => {
  await fill()
  expect((await jobs(['list', '--store', file])).out).toBe('slack:T:mudroom\nslack:T:shop\n')
  const unsure = await jobs(['forget', '--store', file, '--channel', 'slack:T:shop'])
  expect(unsure.code).toBe(2)
  expect(unsure.err).toContain('--yes')
  expect((await jobs(['forget', '--store', file, '--channel', 'slack:T:shop', '--yes'])).code).toBe(0)
  expect((await jobs(['forget', '--store', file, '--channel', 'slack:T:shop', '--yes'])).code).toBe(1)
  expect((await jobs(['list'], '', { DATABASE_URL: file })).out).toBe('slack:T:mudroom\n')
})

test.each([
  [[], /command is missing/],
  [['sell'], /no command "sell"/],
  [['export', '--loud'], /--loud/],
  [['export', 'jobs.db'], /--file/],
  [['list', '--csv'], /--csv/],
  [['forget', '--yes'], /--channel/],
  [['import', '--channel', 'x'], /import/],
  [['export', '--store'], /--store/],
])('%j is told what is wrong and how to use it, with 2', async (args, wrong) => {
  const { out, err, code } = await jobs(args)
  expect({ out, code }).toEqual({ out: '', code: 2 })
  expect(err).toMatch(wrong)
  expect(err).toContain('Usage:')
})

test('what cannot be read is told in a line, with 1', async () => {
  const bad = await jobs(
    ['import', '--store', file],
    `{"channel":"a","entry":${JSON.stringify(entry('m1'))}}\nrubbish\n`,
  )
  expect(bad).toMatchObject({ code: 1, err: 'line 2 is not JSON\n' })
  expect((await jobs(['import', '--store', file], '{"channel":"a","entry":{}}\n')).err).toMatch(
    /^line 1 is not a line of an export/,
  )
  expect(await jobs(['import', '--store', file, '--file', '/nowhere/x'])).toMatchObject({ code: 1 })
  writeFileSync(path.join(folder.dir, 'text'), 'no database at all, whatever its name may say. '.repeat(40))
  const broken = await jobs(['list', '--store', path.join(folder.dir, 'text')])
  expect(broken.code).toBe(1)
  expect(broken.err).toMatch(/damaged/)
  expect((await jobs(['list', '--store', 'postgres://kneepad@127.0.0.1:1/x'])).err).toMatch(/cannot be reached/)
})

test('--help is no error', async () => {
  expect(await jobs(['--help'])).toMatchObject({ code: 0, err: '' })
})
