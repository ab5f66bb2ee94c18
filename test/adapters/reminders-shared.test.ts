/** Reminders of several instances on PostgreSQL: a server that goes away, instances that share, clocks that jump. */
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { type AboutReminder, ReminderClock } from '../../adapters/reminders.ts'
import { Keeper } from '../../adapters/stores/keep.ts'
import { PostgresStore } from '../../adapters/stores/postgres.ts'
import { startPostgres, type TestPostgres } from '../support/postgres.ts'
import { got } from './stores/contract.ts'
import { AT, entry, type Toy, toyRules } from './stores/toy.ts'

const SHOP = 'slack:T:shop'
const MINUTE_MS = 60_000
let server: TestPostgres
let url: string
let nowMs: number
let sent: { readonly id: string; readonly by: string; readonly about: AboutReminder }[]
let troubles: unknown[]
const stores: PostgresStore<Toy>[] = []

beforeAll(async () => {
  server = await startPostgres()
})
afterAll(() => server?.end())
beforeEach(async () => {
  url = await server.fresh()
  nowMs = Date.parse(AT)
  sent = []
  troubles = []
})
afterEach(async () => {
  for (const one of stores.splice(0)) await one.close()
})

const store = () => {
  const one = new PostgresStore<Toy>(url, toyRules, 3)
  stores.push(one)
  return one
}
/** An instance with a store, and if need be a clock, of its own. */
const instance = (by: string, aheadMs = 0) =>
  new ReminderClock({
    store: store(),
    now: () => nowMs + aheadMs,
    deliver: async (_channel, body, about) => {
      sent.push({ id: body as string, by, about })
      return 'sent'
    },
    onTrouble: (trouble) => troubles.push(trouble),
  })
const remind = async (id: string, inMs: number) =>
  got(await store().remind(SHOP, { id, dueMs: nowMs + inMs, body: id }))

test('one that falls due while the server is away comes late and once, in the conversation that goes on', async () => {
  const [one, two] = [instance('one'), instance('two')]
  const talk = new Keeper(store())
  const say = (id: string) =>
    talk.answer(SHOP, { id, now: AT }, (memory) => ({
      reply: memory.count,
      entries: [entry(id)],
      reminders: [{ id: `about ${id}`, dueMs: nowMs + 10 * MINUTE_MS, body: id }],
    }))
  expect(await say('m1')).toMatchObject({ state: 'kept', reply: 0 })
  await server.stop()
  nowMs += 30 * MINUTE_MS
  expect(await one.scan()).toBe(0)
  expect(troubles).toMatchObject([{ code: 'unreachable' }])
  expect(await say('m2'), 'answered meanwhile').toMatchObject({ state: 'lost', reply: 1 })
  await server.start()
  expect(await say('m3')).toMatchObject({ state: 'kept', reply: 1 })
  expect((await Promise.all([one.scan(), two.scan()])).toSorted()).toEqual([0, 1])
  expect(sent).toMatchObject([{ id: 'm1', about: { late: true, again: false } }])
  nowMs += 10 * MINUTE_MS
  await Promise.all([one.scan(), two.scan()])
  expect(
    sent.map((s) => s.id),
    'what was not kept sends nothing',
  ).toEqual(['m1', 'm3'])
  expect(sent[1]?.about.late).toBe(false)
})

test('a server that goes away between sending and writing that down: not lost, and a second one is marked', async () => {
  await remind('grout', 0)
  const fragile = new ReminderClock({
    store: store(),
    now: () => nowMs,
    holdMs: 1,
    deliver: async (_channel, body, about) => {
      sent.push({ id: body as string, by: 'fragile', about })
      await server.stop()
      nowMs += MINUTE_MS
      return 'sent'
    },
    onTrouble: (trouble) => troubles.push(trouble),
  })
  await fragile.scan()
  await server.start()
  expect(troubles.length).toBeGreaterThan(0)
  nowMs += 5 * MINUTE_MS
  await instance('next').scan()
  await instance('third').scan()
  expect(sent.map((s) => [s.by, s.about.again])).toEqual([
    ['fragile', false],
    ['next', true],
  ])
})

test('four instances send 100 reminders once each', async () => {
  const into = store()
  for (let i = 0; i < 100; i++)
    got(await into.remind(`slack:T:C${i % 9}`, { id: `r${i}`, dueMs: nowMs - i, body: `r${i}` }))
  await Promise.all(['a', 'b', 'c', 'd'].map((by) => instance(by).scan()))
  expect(sent.map((s) => s.id).toSorted()).toEqual(Array.from({ length: 100 }, (_, i) => `r${i}`).toSorted())
})

test('a clock that jumps back sends nothing twice, and what is not due again waits', async () => {
  await remind('grout', 0)
  await remind('walk', 10 * MINUTE_MS)
  const one = instance('one')
  await one.scan()
  nowMs -= 60 * MINUTE_MS
  await one.scan()
  await instance('restarted').scan()
  expect(sent.map((s) => s.id)).toEqual(['grout'])
  nowMs += 70 * MINUTE_MS
  await one.scan()
  expect(sent.map((s) => s.id)).toEqual(['grout', 'walk'])
})

test('two instances whose clocks differ send one each time: the one ahead sends first, the other nothing', async () => {
  const [ahead, behind] = [instance('ahead', 5 * MINUTE_MS), instance('behind', -5 * MINUTE_MS)]
  await remind('grout', 4 * MINUTE_MS)
  await Promise.all([behind.scan(), ahead.scan()])
  for (let i = 0; i < 12; i++) {
    nowMs += MINUTE_MS
    await Promise.all([behind.scan(), ahead.scan()])
  }
  expect(sent.map((s) => [s.by, s.id])).toEqual([['ahead', 'grout']])
})
