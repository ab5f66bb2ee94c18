/** What every store promises, run on each of them. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { Keeper } from '../../../adapters/stores/keep.ts'
import { type Kept, type Rules, type Store, workspaceOf } from '../../../adapters/stores/store.ts'
import type { Entry } from '../../../src/message.ts'
import { AT, answered, entry, type Toy, toyRules } from './toy.ts'

export type Bench = {
  /** A store on the same data; each call is another instance. Null where one process only can see it. */
  readonly open: (rules?: Rules<Toy>) => Store<Toy>
  /** Whether two instances see the same data. */
  readonly shared: boolean
  readonly end: () => Promise<void>
}

/** The value of what must have worked. */
export function got<T>(kept: Kept<T>): T {
  if (!kept.ok) throw new Error(`${kept.failure.code}: ${kept.failure.detail}`)
  return kept.value
}

const BAKERY = 'slack:T1:bakery'
const YARD = 'slack:T1:yard'
const ELSEWHERE = 'slack:T2:bakery'
const HOSTILE = 'a\u0000b\ud800c/%0041\'";--\u{1f9f1}'

export function contract(name: string, start: () => Promise<Bench>): void {
  describe(`a store: ${name}`, () => {
    let bench: Bench
    let store: Store<Toy>
    beforeEach(async () => {
      bench = await start()
      store = bench.open()
    })
    afterEach(async () => {
      await store.close()
      await bench.end()
    })
    /** Another process, as far as the data goes; in memory there is only the one. */
    const another = (rules: Rules<Toy> = toyRules) => (bench.shared ? bench.open(rules) : store)
    const memoryOf = async (channel: string, from = store) => got(await from.load(channel)).memory

    test('a channel nobody wrote in has the empty memory', async () => {
      expect(got(await store.load(BAKERY, 'm1'))).toEqual({
        memory: toyRules.emptyMemory,
        last: 0,
        skipped: 0,
        answered: null,
      })
      expect(got(await store.entries(BAKERY, 0, 10))).toEqual([])
      expect(got(await store.channels('', 10))).toEqual([])
    })

    test('what was kept is folded, here and by another instance', async () => {
      expect(got(await store.append(BAKERY, answered('m1', 5)))).toEqual({ state: 'kept', last: 1 })
      const two = [entry('m2', 7), entry('m2', 1, { part: 1 })]
      expect(got(await store.append(BAKERY, { ...answered('m2'), entries: two }))).toEqual({ state: 'kept', last: 3 })
      const expected = { count: 3, sum: 13, order: ['m1.0', 'm2.0', 'm2.1'] }
      expect(await memoryOf(BAKERY)).toEqual(expected)
      expect(await memoryOf(BAKERY, another())).toEqual(expected)
      expect(await memoryOf(YARD)).toEqual(toyRules.emptyMemory)
      expect(got(await another().entries(BAKERY, 1, 10))).toEqual([
        { seq: 2, entry: two[0] },
        { seq: 3, entry: two[1] },
      ])
    })

    test('a redelivery adds nothing and gets the recorded reply', async () => {
      await store.append(BAKERY, answered('m1', 5))
      const again = { ...answered('m1', 99), reply: { text: 'another answer' } }
      expect(got(await another().append(BAKERY, again))).toEqual({ state: 'already', reply: { text: 'answer to m1' } })
      expect(got(await another().load(BAKERY, 'm1')).answered).toEqual({ reply: { text: 'answer to m1' } })
      expect(got(await store.load(BAKERY, 'm2')).answered).toBeNull()
      expect((await memoryOf(BAKERY)).sum).toBe(5)
      expect(got(await store.append(YARD, answered('m1'))).state, 'the same id in another channel').toBe('kept')
    })

    test('a message that keeps nothing is still answered once', async () => {
      const empty = { ...answered('m1'), entries: [] }
      expect(got(await store.append(BAKERY, empty))).toEqual({ state: 'kept', last: 0 })
      expect(got(await store.append(BAKERY, empty)).state).toBe('already')
    })

    test('an answer worked out from an older memory is not kept', async () => {
      await store.append(BAKERY, answered('m1'))
      const { last } = got(await store.load(BAKERY))
      await another().append(BAKERY, answered('m2'))
      expect(got(await store.append(BAKERY, answered('m3', 1, last)))).toEqual({ state: 'moved', last: 2 })
      expect(got(await store.load(BAKERY, 'm3'))).toMatchObject({ last: 2, answered: null })
      expect(got(await store.append(BAKERY, answered('m3', 1, 2)))).toEqual({ state: 'kept', last: 3 })
    })

    test('what is recalled asks nobody, and an append finds out that it is out of date', async () => {
      expect(store.recall(BAKERY)).toBeNull()
      await store.append(BAKERY, answered('m1', 5, 0))
      expect(store.recall(BAKERY)).toEqual({ ...got(await store.load(BAKERY)), answered: null })
      if (!bench.shared) return
      const other = another()
      await other.append(BAKERY, answered('m2', 7))
      expect(store.recall(BAKERY)).toMatchObject({ last: 1, memory: { sum: 5 } })
      expect(got(await store.append(BAKERY, answered('m3', 1, 1)))).toEqual({ state: 'moved', last: 2 })
      expect(store.recall(BAKERY)).toMatchObject({ last: 2, memory: { sum: 12 } })
      expect(got(await store.append(BAKERY, answered('m2', 9, 2))), 'answered by the other').toMatchObject({
        state: 'already',
      })
      await other.forget(BAKERY)
      expect(got(await store.append(BAKERY, answered('m4', 1, 2)))).toEqual({ state: 'moved', last: 0 })
      expect(store.recall(BAKERY)).toBeNull()
      for (const id of ['n1', 'n2']) await other.append(BAKERY, answered(id, 50))
      await store.load(BAKERY)
      await other.forget(BAKERY)
      for (const id of ['o1', 'o2']) await other.append(BAKERY, answered(id, 90))
      expect(got(await store.append(BAKERY, answered('m5', 1, 2))), 'as long, but begun anew').toEqual({
        state: 'moved',
        last: 2,
      })
      expect(store.recall(BAKERY)).toMatchObject({ last: 2, memory: { sum: 180 } })
    })

    test('hostile text comes back as it was', async () => {
      const channel = `slack:'";--/%0041\u{1f9f1}:${'c'.repeat(900)}`
      const written = entry(HOSTILE, 3, { person: HOSTILE, personName: HOSTILE, kind: HOSTILE })
      const message = {
        messageId: HOSTILE,
        at: AT,
        entries: [{ ...written, body: { n: 3, text: HOSTILE } }],
        reply: HOSTILE,
      }
      expect(got(await store.append(channel, message)).state).toBe('kept')
      expect(got(await another().load(channel, HOSTILE)).answered).toEqual({ reply: HOSTILE })
      expect(got(await another().entries(channel, 0, 9))[0]!.entry).toEqual(message.entries[0])
      await store.put(channel, HOSTILE, HOSTILE, 10)
      expect(got(await another().get(channel, HOSTILE, 5))).toBe(HOSTILE)
      await store.remind(channel, { id: HOSTILE, dueMs: 5, body: HOSTILE })
      expect(got(await another().claimDue('a', 6, 99, 9))).toEqual([
        { id: HOSTILE, dueMs: 5, body: HOSTILE, channel, attempt: 1 },
      ])
    })

    test('direct messages share no workspace, nor do keys of no platform', () => {
      expect(workspaceOf('slack:T1:C1')).toBe('slack:T1')
      expect(workspaceOf('discord:direct:7')).toBe('discord:direct:7')
      for (const key of ['terminal', '', 'a:b', '::', ':x:y']) expect(workspaceOf(key)).toBe(key)
    })

    test('300 entries fold the same from snapshots as from the start', async () => {
      for (let i = 0; i < 300; i++) {
        const { last } = got(await store.load(BAKERY))
        await store.append(BAKERY, answered(`m${i}`, i, last))
      }
      const folded: Entry[] = []
      const counting: Rules<Toy> = {
        ...toyRules,
        fold: (memory, e) => {
          folded.push(e)
          return toyRules.fold(memory, e)
        },
      }
      const fresh = another(counting)
      expect(await memoryOf(BAKERY, fresh)).toEqual(await memoryOf(BAKERY))
      expect(await memoryOf(BAKERY, fresh)).toMatchObject({ count: 300, sum: (299 * 300) / 2 })
      if (bench.shared)
        expect(folded.length, 'a fresh instance reads a snapshot and the few entries after it').toBeLessThan(64)
      const newer = another({ ...counting, foldVersion: 2 })
      folded.length = 0
      expect((await memoryOf(BAKERY, newer)).count).toBe(300)
      if (bench.shared) expect(folded.length, 'another fold does not trust the snapshot').toBe(300)
    })

    test('an old version folds, a newer one is kept, left out and reported', async () => {
      const future = { ...answered('m2'), entries: [entry('m2', 50, { version: 3, body: { metres: 50 } })] }
      await store.append(BAKERY, answered('m1', 1))
      await store.append(BAKERY, future)
      await store.append(BAKERY, { ...answered('m3'), entries: [entry('m3', 4, { version: 2 })] })
      expect(got(await store.load(BAKERY))).toMatchObject({ memory: { count: 2, sum: 5 }, skipped: 1, last: 3 })
      expect(got(await store.entries(BAKERY, 1, 1))[0]!.entry).toEqual(future.entries[0])
      if (!bench.shared) return
      const told: string[] = []
      const watching = another({ ...toyRules, onSkipped: (channel, e) => told.push(`${channel} ${e.messageId}`) })
      await watching.load(BAKERY)
      expect(told).toEqual([`${BAKERY} m2`])
      const upgraded: Rules<Toy> = {
        ...toyRules,
        foldVersion: 2,
        understands: () => true,
        fold: (m, e) => ({ ...m, sum: m.sum + ((e.body as { n?: number; metres?: number }).n ?? 50) }),
      }
      expect(got(await another(upgraded).load(BAKERY))).toMatchObject({ memory: { sum: 55 }, skipped: 0 })
    })

    test('an entry the fold throws at does not take the channel down', async () => {
      const broken = { ...answered('m2'), entries: [entry('m2', 0, { body: null })] }
      await store.append(BAKERY, answered('m1', 1))
      await store.append(BAKERY, broken)
      await store.append(BAKERY, answered('m3', 4))
      expect(got(await store.load(BAKERY))).toMatchObject({ memory: { count: 2, sum: 5 }, skipped: 1 })
    })

    test('a forgotten channel is gone, its neighbours are not, and it may begin again', async () => {
      for (let i = 0; i < 70; i++) await store.append(BAKERY, answered(`m${i}`, 1, got(await store.load(BAKERY)).last))
      await store.append(YARD, answered('y1', 9))
      await store.put(BAKERY, 'k', 1, 10)
      await store.remind(BAKERY, { id: 'r', dueMs: 5, body: 1 })
      const other = another()
      await other.load(BAKERY)
      expect(got(await store.forget(BAKERY))).toBe(true)
      expect(got(await store.forget(BAKERY))).toBe(false)
      expect(got(await other.load(BAKERY, 'm1'))).toEqual({
        memory: toyRules.emptyMemory,
        last: 0,
        skipped: 0,
        answered: null,
      })
      expect(got(await other.get(BAKERY, 'k', 5))).toBeNull()
      expect(got(await other.claimDue('a', 6, 99, 9))).toEqual([])
      expect((await memoryOf(YARD)).sum).toBe(9)
      await store.append(BAKERY, answered('m1', 3))
      expect(await memoryOf(BAKERY, other)).toMatchObject({ count: 1, sum: 3 })
      expect(store.lastKnown(YARD)).toMatchObject({ sum: 9 })
    })

    test('what is learned stays in its workspace', async () => {
      await store.append(BAKERY, {
        ...answered('m1'),
        entries: [entry('m1', 1, { kind: 'use', at: '2026-11-02T08:00:00Z' })],
      })
      await store.append(YARD, {
        ...answered('m2'),
        entries: [entry('m2', 2, { kind: 'use', at: '2026-11-01T08:00:00Z' })],
      })
      await store.append(YARD, answered('m3', 3))
      await store.append(ELSEWHERE, { ...answered('m4'), entries: [entry('m4', 4, { kind: 'use' })] })
      const learned = got(await another().learned('slack:T1', ['use', 'undo'], 10))
      expect(learned.map((e) => [e.channel, e.entry.messageId])).toEqual([
        [YARD, 'm2'],
        [BAKERY, 'm1'],
      ])
      expect(got(await store.learned('slack:T', ['use'], 10))).toEqual([])
      for (const one of ['discord:direct:1', 'discord:direct:2'])
        await store.append(one, { ...answered('m5'), entries: [entry('m5', 5, { kind: 'use' })] })
      expect(got(await store.learned(workspaceOf('discord:direct:1'), ['use', "it's"], 10))).toHaveLength(1)
    })

    test('a button knows its meaning until its time is over', async () => {
      await store.put(BAKERY, 'k1', { say: 'and grout?' }, 1000)
      expect(got(await another().get(BAKERY, 'k1', 999))).toEqual({ say: 'and grout?' })
      expect(got(await store.get(BAKERY, 'k1', 1000))).toBeNull()
      expect(got(await store.get(YARD, 'k1', 1))).toBeNull()
      await store.put(BAKERY, 'k1', 2, 2000)
      expect(got(await store.get(BAKERY, 'k1', 1000))).toBe(2)
    })

    test('reminders come with their message, soonest first, and are claimed by one alone', async () => {
      const reminders = [
        { id: 'grout', dueMs: 2000, body: { say: 'grout' } },
        { id: 'slake', dueMs: 1000, body: { say: 'slake' } },
      ]
      await store.append(BAKERY, { ...answered('m1'), reminders })
      await store.append(BAKERY, { ...answered('m1'), reminders: [{ id: 'twice', dueMs: 1, body: 1 }] })
      expect(got(await another().reminders(BAKERY)).map((r) => r.id)).toEqual(['slake', 'grout'])
      expect(got(await store.nextReminder())).toBe(1000)
      expect(got(await store.claimDue('a', 999, 1500, 9))).toEqual([])
      expect(got(await store.claimDue('a', 1000, 1500, 9))).toEqual([{ ...reminders[1], channel: BAKERY, attempt: 1 }])
      const other = another()
      expect(got(await other.claimDue('b', 1200, 1800, 9))).toEqual([])
      expect(got(await store.holdReminder('a', BAKERY, 'slake', 1600))).toBe(true)
      expect(got(await other.claimDue('b', 1599, 1800, 9))).toEqual([])
      expect(got(await other.claimDue('b', 1600, 1800, 9)), 'a died over it').toMatchObject([
        { id: 'slake', attempt: 2 },
      ])
      expect(got(await store.finishReminder('a', BAKERY, 'slake')), 'no longer its own').toBe(false)
      expect(got(await other.releaseReminder('b', BAKERY, 'slake', 1700))).toBe(true)
      expect(got(await store.claimDue('a', 1699, 9999, 9))).toEqual([])
      expect(got(await store.claimDue('a', 1700, 9999, 9))).toHaveLength(1)
      expect(got(await store.finishReminder('a', BAKERY, 'slake'))).toBe(true)
      expect(got(await store.claimDue('a', 1e6, 1e7, 9)).map((r) => r.id)).toEqual(['grout'])
    })

    test('a reminder is cancelled, snoozed, and snoozed after it was sent', async () => {
      await store.remind(BAKERY, { id: 'r', dueMs: 1000, body: 1 })
      expect(got(await store.snoozeReminder(BAKERY, 'r', 5000))).toBe(true)
      expect(got(await store.claimDue('a', 4999, 9999, 9))).toEqual([])
      expect(got(await store.claimDue('a', 5000, 9999, 9))).toMatchObject([{ dueMs: 5000 }])
      await store.finishReminder('a', BAKERY, 'r')
      expect(got(await store.cancelReminder(BAKERY, 'r')), 'it was sent').toBe(false)
      expect(got(await store.snoozeReminder(BAKERY, 'r', 7000))).toBe(true)
      expect(got(await store.reminders(BAKERY))).toEqual([{ id: 'r', dueMs: 7000, body: 1 }])
      await store.append(BAKERY, { ...answered('m1'), cancels: ['r'] })
      expect(got(await store.reminders(BAKERY))).toEqual([])
      expect(got(await store.snoozeReminder(BAKERY, 'r', 8000)), 'it was cancelled').toBe(false)
      expect(got(await store.snoozeReminder(YARD, 'r', 8000))).toBe(false)
      expect(got(await store.nextReminder())).toBeNull()
    })

    test('tidying drops what is over, and a redelivery still adds nothing', async () => {
      await store.append(BAKERY, answered('m1'))
      await store.put(BAKERY, 'k', 1, 1000)
      await store.remind(BAKERY, { id: 'r', dueMs: 1000, body: 1 })
      await store.tidy(2000, Date.parse(AT) + 1)
      expect(got(await store.append(BAKERY, answered('m1')))).toEqual({ state: 'already', reply: null })
      expect(got(await store.get(BAKERY, 'k', 1))).toBeNull()
      expect(got(await store.reminders(BAKERY)), 'not sent yet').toHaveLength(1)
    })

    test('restoring adds what is missing and nothing twice', async () => {
      await store.append(BAKERY, answered('m1', 5))
      const moved = {
        entries: [entry('m1', 5), entry('m2', 6), entry('m2', 7, { part: 1 })],
        answered: [{ messageId: 'm2', at: AT, reply: 'r2' }],
        reminders: [{ id: 'r', dueMs: 10, body: 1 }],
      }
      expect(got(await store.restore(BAKERY, moved))).toBe(4)
      expect(got(await store.restore(BAKERY, moved))).toBe(0)
      expect(await memoryOf(BAKERY, another())).toEqual({ count: 3, sum: 18, order: ['m1.0', 'm2.0', 'm2.1'] })
      expect(got(await store.recorded(BAKERY, '', 10)).map((r) => r.messageId)).toEqual(['m1', 'm2'])
      expect(got(await store.recorded(BAKERY, 'm1', 10))).toEqual(moved.answered)
      await store.append(YARD, answered('y'))
      expect(got(await store.channels('', 1))).toEqual([BAKERY])
      expect(got(await store.channels(BAKERY, 9))).toEqual([YARD])
    })

    test('20 writers on one channel lose nothing and keep their order', async () => {
      const writers = 20
      const messages = 10
      const stores = Array.from({ length: bench.shared ? 4 : 1 }, () => another())
      await Promise.all(
        Array.from({ length: writers }, async (_, w) => {
          const mine = stores[w % stores.length]!
          for (let i = 0; i < messages; i++)
            expect(got(await mine.append(BAKERY, answered(`w${w}-${i}`, i))).state).toBe('kept')
        }),
      )
      const log = got(await another().entries(BAKERY, 0, 1000))
      expect(log.map((e) => e.seq)).toEqual(Array.from({ length: writers * messages }, (_, i) => i + 1))
      for (let w = 0; w < writers; w++) {
        const mine = log.map((e) => e.entry.messageId).filter((id) => id.startsWith(`w${w}-`))
        expect(mine).toEqual(Array.from({ length: messages }, (_, i) => `w${w}-${i}`))
      }
      await Promise.all(stores.filter((s) => s !== store).map((s) => s.close()))
    })

    test('answers of several instances each see all that came before', async () => {
      const stores = Array.from({ length: bench.shared ? 3 : 1 }, () => another())
      const keepers = stores.map((s) => new Keeper(s))
      const asked = Array.from({ length: 60 }, (_, i) => i)
      const replies = await Promise.all(
        asked.map((i) =>
          keepers[i % keepers.length]!.answer(BAKERY, { id: `m${i}`, now: AT }, (memory) => ({
            reply: memory.count,
            entries: [entry(`m${i}`, 1)],
          })),
        ),
      )
      expect(replies.map((r) => r.state)).toEqual(asked.map(() => 'kept'))
      expect(replies.map((r) => r.reply).toSorted((a, b) => a - b)).toEqual(asked)
      await Promise.all(stores.filter((s) => s !== store).map((s) => s.close()))
    })

    test('200 channels at once', async () => {
      const channels = Array.from({ length: 200 }, (_, i) => `slack:T${i % 7}:C${i}`)
      const keeper = new Keeper(store)
      await Promise.all(
        channels.flatMap((channel, c) =>
          [0, 1, 2].map((i) =>
            keeper.answer(channel, { id: `m${i}`, now: AT }, () => ({ reply: null, entries: [entry(`m${i}`, c)] })),
          ),
        ),
      )
      const fresh = another()
      for (const [c, channel] of channels.entries())
        expect(await memoryOf(channel, fresh)).toEqual({ count: 3, sum: 3 * c, order: ['m0.0', 'm1.0', 'm2.0'] })
      if (fresh !== store) await fresh.close()
    })
  })
}
