/** When the store is tidied, by the handed-in clock, and what of a real one is gone then. */
import { expect, test } from 'vitest'
import { createLog } from '../../adapters/logging.ts'
import { memoryStore } from '../../adapters/stores/memory.ts'
import { kept, notKept } from '../../adapters/stores/store.ts'
import { KEPT_MS, keepTidy } from '../../adapters/tidying.ts'
import { got } from './stores/contract.ts'
import { AT, answered, toyRules } from './stores/toy.ts'

const HOUR_MS = 3_600_000

function scene() {
  const lines: string[] = []
  const at: number[] = []
  const world = { nowMs: 1_000 * HOUR_MS, down: false }
  const store = {
    tidy: async (nowMs: number, beforeMs: number) => {
      expect(beforeMs).toBe(nowMs - KEPT_MS)
      at.push(nowMs / HOUR_MS - 1000)
      return world.down ? notKept('unreachable', 'away') : kept(null)
    },
  }
  const tidying = keepTidy(
    store,
    () => world.nowMs,
    createLog('info', [], (line) => void lines.push(line)),
  )
  const after = async (hours: number) => {
    world.nowMs += hours * HOUR_MS
    await tidying.look()
  }
  return { world, tidying, at, lines, after }
}

test('at the start, then once a day', async () => {
  const { tidying, at, after } = scene()
  for (let hour = 0; hour < 73; hour++) await after(1)
  expect(at).toEqual([0, 24, 48, 72])
  tidying.stop()
})

test('not while somebody talks, unless it is never quiet', async () => {
  const { tidying, at, after } = scene()
  const talk = async (hours: number) => {
    tidying.heard()
    await after(hours)
  }
  for (let i = 0; i < 30 * 12; i++) await talk(1 / 12)
  expect(at).toEqual([0])
  await after(1 / 12)
  await after(1 / 12)
  expect(at).toHaveLength(2)
  for (let i = 0; i < 60 * 12; i++) await talk(1 / 12)
  expect(at).toHaveLength(3)
  expect(at[2]! - at[1]!).toBeCloseTo(48, 0)
  tidying.stop()
})

test('a store that is away is tried again at the next look, and a line is logged', async () => {
  const { world, tidying, at, lines, after } = scene()
  await after(0)
  world.down = true
  await after(24)
  expect(lines.join('')).toContain('could not be tidied')
  world.down = false
  await after(0.2)
  await after(0.2)
  expect(at.map((hours) => Math.round(hours * 10) / 10)).toEqual([0, 24, 24.2])
  tidying.stop()
})

test('a clock that is put back a year does not stop it for a year', async () => {
  const { tidying, at, after } = scene()
  await after(0)
  await after(-900)
  await after(24)
  expect(at).toHaveLength(2)
  tidying.stop()
})

test('a month later the replies are gone, a redelivery still adds nothing, what is waiting still waits', async () => {
  const store = memoryStore(toyRules)
  const channel = 'slack:T:shop'
  await store.append(channel, { ...answered('m1'), reminders: [{ id: 'r', dueMs: Date.parse(AT), body: 1 }] })
  await store.put(channel, 'button', 1, Date.parse(AT) + HOUR_MS)
  let nowMs = Date.parse(AT)
  const log = createLog('info', [], () => {})
  const tidying = keepTidy(store, () => nowMs, log)
  nowMs += KEPT_MS + HOUR_MS
  await tidying.look()
  await tidying.look()
  expect(got(await store.append(channel, answered('m1')))).toEqual({ state: 'already', reply: null })
  expect(got(await store.get(channel, 'button', 0))).toBeNull()
  expect(got(await store.reminders(channel))).toHaveLength(1)
  expect(got(await store.load(channel)).memory.count, 'the job stays').toBe(1)
  tidying.stop()
})
