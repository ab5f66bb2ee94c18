import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as pause } from 'node:timers/promises'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { type AboutReminder, ReminderClock } from '../../adapters/reminders.ts'
import { SqliteStore } from '../../adapters/stores/sqlite.ts'
import type { Json } from '../../adapters/stores/store.ts'
import { Crew } from '../support/crew.ts'
import { got } from './stores/contract.ts'
import { toyRules } from './stores/toy.ts'

const SHOP = 'slack:T:shop'
let dir: string
let nowMs: number
let sent: { channel: string; body: Json; about: AboutReminder }[]
const stores: SqliteStore<unknown>[] = []
const store = () => {
  const one = new SqliteStore<unknown>(path.join(dir, 'jobs.db'), toyRules as never)
  stores.push(one)
  return one
}
const deliver = async (channel: string, body: Json, about: AboutReminder): Promise<'sent'> => {
  sent.push({ channel, body, about })
  return 'sent'
}
const clock = (more: Partial<ConstructorParameters<typeof ReminderClock>[0]> = {}) =>
  new ReminderClock({ store: store(), deliver, now: () => nowMs, ...more })

beforeEach(() => {
  dir = mkdtempSync(path.join(tmpdir(), 'kneepad-'))
  nowMs = Date.parse('2026-11-24T14:00:00-05:00')
  sent = []
})
afterEach(async () => {
  for (const one of stores.splice(0)) await one.close()
  rmSync(dir, { recursive: true })
})
const remind = async (id: string, inMs: number) =>
  got(await store().remind(SHOP, { id, dueMs: nowMs + inMs, body: { about: id } }))

test('each goes out once, when it is due and not before', async () => {
  await remind('slake', 10 * 60_000)
  const one = clock()
  expect(await one.scan()).toBe(0)
  nowMs += 10 * 60_000
  expect(await one.scan()).toBe(1)
  expect(await one.scan()).toBe(0)
  expect(sent).toEqual([
    { channel: SHOP, body: { about: 'slake' }, about: { id: 'slake', dueMs: nowMs, late: false, again: false } },
  ])
})

test('what was due while the laptop slept or nothing ran goes out late, and says so', async () => {
  await remind('grout', 60_000)
  nowMs += 9 * 3_600_000
  expect(await clock().scan()).toBe(1)
  expect(sent[0]!.about.late).toBe(true)
  expect(await clock().scan(), 'after another restart').toBe(0)
})

test('ten instances send 200 reminders once each', async () => {
  for (let i = 0; i < 200; i++)
    got(await store().remind(`slack:T:C${i % 40}`, { id: `r${i}`, dueMs: nowMs - i, body: i }))
  const counts = await Promise.all(Array.from({ length: 10 }, () => clock().scan()))
  expect(counts.reduce((a, b) => a + b)).toBe(200)
  expect(new Set(sent.map((s) => s.about.id)).size).toBe(200)
  expect(sent).toHaveLength(200)
})

test('one that cannot be sent is tried again, later each time, and is not lost', async () => {
  await remind('walk', 0)
  let refusals = 0
  const refusing = clock({
    deliver: async () => {
      refusals++
      throw new Error('rate limited')
    },
  })
  for (let i = 0; i < 60; i++) {
    await refusing.scan()
    nowMs += 1000
  }
  expect(refusals).toBe(4) // after 0, 5, 15 and 35 s
  nowMs += 15 * 60_000
  expect(await clock().scan()).toBe(1)
  expect(sent[0]!.about).toMatchObject({ id: 'walk', late: true, again: true })
})

test('an instance that dies while sending leaves it to another, once its hold is over', async () => {
  await remind('load', 0)
  got(await store().claimDue('the dead one', nowMs, nowMs + 60_000, 10))
  nowMs += 59_000
  expect(await clock().scan()).toBe(0)
  nowMs += 1000
  expect(await clock().scan()).toBe(1)
  expect(sent[0]!.about.again).toBe(true)
})

test('a slow platform does not make a second instance send it too', async () => {
  await remind('slow', 0)
  const real = () => Date.now()
  nowMs = Date.now()
  await remind('slow', 0)
  const slow = clock({
    holdMs: 150,
    now: real,
    deliver: async (...told) => {
      await pause(700)
      return deliver(...told)
    },
  })
  const other = clock({ holdMs: 150, now: real })
  const sending = slow.scan()
  for (let i = 0; i < 12; i++) {
    await pause(50)
    await other.scan()
  }
  expect(await sending).toBe(1)
  expect(sent).toHaveLength(1)
})

test('cancelled or put off while it waits its turn: not sent', async () => {
  await remind('first', -2)
  await remind('second', -1)
  const one = clock({
    deliver: async (...told) => {
      await store().cancelReminder(SHOP, 'second')
      return deliver(...told)
    },
  })
  expect(await one.scan()).toBe(1)
  expect(sent.map((s) => s.about.id)).toEqual(['first'])
})

test('started, it runs by itself; stopped, it sends nothing more', async () => {
  const one = clock({ now: () => Date.now(), everyMs: 20 })
  one.start()
  got(await store().remind(SHOP, { id: 'a', dueMs: Date.now() + 50, body: 1 }))
  await expect.poll(() => sent.length, { timeout: 5000 }).toBe(1)
  await one.stop()
  got(await store().remind(SHOP, { id: 'b', dueMs: Date.now(), body: 1 }))
  await pause(150)
  expect(sent).toHaveLength(1)
})

test('a store that is away is reported, and does not stop the clock', async () => {
  const told: unknown[] = []
  const broken = new SqliteStore<unknown>('/dev/null/jobs.db', toyRules as never)
  const one = clock({ store: broken, onTrouble: (trouble) => told.push(trouble) })
  expect(await one.scan()).toBe(0)
  expect(told).toMatchObject([{ code: 'unreachable' }])
})

/** Hands the store what a message promised and cancelled, as the answerer does. */
async function handed(crew: Crew, text: string): Promise<void> {
  crew.say(text, { now: new Date(nowMs).toISOString(), zone: 'America/New_York' })
  for (const one of crew.last?.reminders ?? []) got(await store().remind(SHOP, one))
  for (const id of crew.last?.cancels ?? []) got(await store().cancelReminder(SHOP, id))
}

test('one that comes again goes out once each day, and no more once it is cancelled', async () => {
  const crew = new Crew()
  await handed(crew, 'remind me every day at 7 to check moisture')
  await handed(crew, 'remind me tomorrow at 7 to call the inspector')
  const one = clock()
  expect(await one.scan()).toBe(0)
  const days: string[] = []
  for (let day = 0; day < 3; day++) {
    nowMs = Date.parse('2026-11-25T07:00:00-05:00') + day * 86_400_000
    await one.scan()
    expect(await one.scan()).toBe(0)
    days.push(
      ...sent
        .splice(0)
        .map(({ about, body }) => `${new Date(about.dueMs).getUTCDate()} ${(body as { text: string }).text}`),
    )
  }
  expect(days.toSorted()).toEqual([
    '25 Reminder: call the inspector',
    '25 Reminder: check moisture',
    '26 Reminder: check moisture',
    '27 Reminder: check moisture',
  ])
  await handed(crew, 'cancel the reminders')
  nowMs += 30 * 86_400_000
  expect(await one.scan()).toBe(0)
})
