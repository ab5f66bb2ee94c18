/** Export and import: every kind of entry there and back on both stores, and files that nobody vouches for. */
import { Readable } from 'node:stream'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { BadLine, boundedLines, LONGEST_LINE } from '../../../adapters/stores/lines.ts'
import { memoryStore } from '../../../adapters/stores/memory.ts'
import { PostgresStore } from '../../../adapters/stores/postgres.ts'
import type { Rules, Store } from '../../../adapters/stores/store.ts'
import { csvRows, exportLines, importLines } from '../../../adapters/stores/transfer.ts'
import { fold, understands } from '../../../src/jobs/fold.ts'
import { ENTRY_VERSIONS, emptyMemory, type Memory } from '../../../src/jobs/memory.ts'
import { Crew, NOW } from '../../support/crew.ts'
import { startPostgres, type TestPostgres } from '../../support/postgres.ts'
import { got } from './contract.ts'
import { answered, entry } from './toy.ts'

const rules: Rules<Memory> = { fold, emptyMemory, understands }
const SHOP = 'slack:T:shop'

/** A job in which every kind of entry there is was made by a message. */
function everyKind(): Crew {
  const crew = new Crew()
  for (const said of [
    'how much grout',
    '10x13 shop floor, 18x18 tile, 3/16 joint, 1/2 notch',
    'en español',
    'in english',
    'mud means thinset',
    'used 3 bags on 90 sf',
    'undo',
    'mark this as the bid',
    'new job called bakery',
    'set at 2pm, 58F, remind me when we can grout',
    'remind me at 7pm to cover the floor',
    'cancel',
    'log moisture 82% RH',
  ])
    crew.say(said)
  return crew
}

const collected = async (lines: AsyncIterable<string>): Promise<string> => {
  let all = ''
  for await (const line of lines) all += line
  return all
}
const linesOf = (text: string | Buffer, piece = 64) => {
  const bytes = Buffer.from(text)
  const pieces = Array.from({ length: Math.ceil(bytes.length / piece) }, (_, i) =>
    bytes.subarray(i * piece, (i + 1) * piece),
  )
  return boundedLines(Readable.from(pieces))
}
const bring = (text: string | Buffer, into: Store<Memory> = memoryStore(rules)) => importLines(into, linesOf(text))

describe('there and back', () => {
  let server: TestPostgres
  beforeAll(async () => {
    server = await startPostgres()
  })
  afterAll(() => server?.end())

  test('every kind of entry, and those of a newer version, from SQLite to PostgreSQL to SQLite', async () => {
    const crew = everyKind()
    const kinds = new Set(crew.entries.map((one) => one.kind))
    expect([...kinds].toSorted(), 'each kind that there is').toEqual(Object.keys(ENTRY_VERSIONS).toSorted())
    const newer = [
      { ...entry('n1', 1, { at: NOW }), kind: 'hologram', version: 1, body: { deep: [{ of: ['x', null, -0.5] }] } },
      { ...entry('n2', 1, { at: NOW }), kind: 'facts', version: 99, body: 'not even an object' },
    ]
    const from = memoryStore(rules)
    for (const [id, entries] of Map.groupBy([...crew.entries, newer[0]!], (one) => one.messageId))
      await from.append(SHOP, { ...answered(id), entries })
    const reminders = [{ id: 'r', dueMs: 9, body: 'x' }]
    await from.append(SHOP, { ...answered('n2'), entries: newer.slice(1), reminders })
    const exported = await collected(exportLines(from, null))
    const there = new PostgresStore(await server.fresh(), rules)
    const all = exported.trimEnd().split('\n').length
    expect(await bring(exported, there)).toEqual({ added: all, already: 0, newer: 2 })
    expect(await bring(exported, there)).toEqual({ added: 0, already: all, newer: 2 })
    expect((await collected(exportLines(there, null))).split('\n')).toEqual(exported.split('\n'))
    const back = memoryStore(rules)
    await importLines(back, linesOf(await collected(exportLines(there, null))))
    const loaded = got(await back.load(SHOP))
    expect(loaded.skipped).toBe(2)
    expect(loaded.memory).toEqual(crew.memory)
    await there.close()
  })
})

test('a spreadsheet of every kind holds a row for each entry, none of it a formula', async () => {
  const crew = everyKind()
  const store = memoryStore(rules)
  await store.append(SHOP, { ...answered('a'), entries: crew.entries })
  await store.append(SHOP, { ...answered('b'), entries: [{ ...entry('b'), body: { text: "=cmd|' /C calc'!A0" } }] })
  const csv = await collected(csvRows(store, null))
  const rows = csv.split('\r\n')
  expect(rows.length).toBeGreaterThan(crew.entries.length + 1)
  expect(csv).toContain("'=cmd|")
  expect(csv).not.toMatch(/(^|,)"?[=+@]/m)
})

const line = (id: string, more: object = {}) => JSON.stringify({ channel: SHOP, entry: { ...entry(id), ...more } })
const use = { kind: 'use', version: 2 }
const DEEP = `${'['.repeat(5000)}${']'.repeat(5000)}`

test.each([
  ['no JSON', 'rubbish', /^line 3 is not JSON/],
  ['half a line', line('m3').slice(0, -5), /^line 3 is not JSON/],
  ['no line of an export', '{"channel":"a","entry":{}}', /^line 3 is not a line of an export/],
  ['a list', '[1]', /^line 3 is not a line of an export/],
  ['a channel without a name', JSON.stringify({ channel: '', entry: entry('m3') }), /^line 3 is not a line/],
  ['half a surrogate pair', JSON.stringify({ channel: 'a\ud800', entry: entry('m3') }), /^line 3 is not a line/],
  ['version 0', line('m3', { ...use, version: 0 }), /^line 3 is no entry of a job: version/],
  ['version "two"', line('m3', { ...use, version: 'two' }), /^line 3 is not a line of an export/],
  [
    'a body of no such kind',
    line('m3', { ...use, body: { stuff: 'plaster' } }),
    /^line 3 is no entry of a job: body: stuff/,
  ],
  ['a figure that is none', line('m3', { ...use, body: { stuff: 'mortar', bags: -4 } }), /^line 3 is no entry.*bags/],
  ['a time that is none', line('m3', { at: 'yesterday' }), /^line 3 is no entry of a job: at/],
  [
    'the same message told otherwise',
    line('m1', { body: { n: 99 } }),
    /^line 3 says otherwise of what line 1 has said/,
  ],
  [
    'an entry nested deep',
    line('m3', { body: 0 }).replace('"body":0', `"body":${DEEP}`),
    /^line 3 is nested more than/,
  ],
  ['a line without end', 'x'.repeat(LONGEST_LINE + 1), /^line 3 is longer than/],
  ['bytes that are no text', Buffer.from([0x7b, 0xff, 0xfe]), /^line 3 is not UTF-8/],
])('%s is told by its line, and what came before it is kept', async (_name, bad, told) => {
  const store = memoryStore(rules)
  const file = Buffer.concat([
    Buffer.from(`${line('m1')}\r\n${line('m2')}\n`),
    Buffer.from(bad),
    Buffer.from(`\n${line('m4')}\n`),
  ])
  const pieces = boundedLines(
    Readable.from([file.subarray(0, file.indexOf('\n') + 200), file.subarray(file.indexOf('\n') + 200)]),
  )
  const failed = await importLines(store, pieces).catch((error: unknown) => error)
  expect(failed).toBeInstanceOf(BadLine)
  expect((failed as BadLine).message).toMatch(told)
  expect(got(await store.entries(SHOP, 0, 9)).map((one) => one.entry.messageId)).toEqual(['m1', 'm2'])
})

test('the same line twice, empty lines, CRLF, a mark of the byte order and a last line without end are no trouble', async () => {
  const store = memoryStore(rules)
  const text = `\ufeff${line('m1')}\r\n\r\n${line('m1')}\n   \n${line('m2', { body: { text: '½ in — café 🧱' } })}`
  for (const piece of [1, 7, 4096])
    expect(await importLines(store, linesOf(text, piece))).toMatchObject({ added: piece === 1 ? 2 : 0 })
  expect(got(await store.entries(SHOP, 0, 9)).map((one) => one.entry.body)).toEqual([
    { n: 1 },
    { text: '½ in — café 🧱' },
  ])
})
