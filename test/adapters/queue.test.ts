/** Order within a channel, side by side across channels, and the memory of ids. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { pauseMs, persist } from '../../adapters/patience.ts'
import { createGuard, createQueue } from '../../adapters/queue.ts'

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

test('each channel in order, one at a time, whatever fails; channels side by side', async () => {
  await fc.assert(
    fc.asyncProperty(
      fc.array(
        fc.record({ channel: fc.constantFrom('a', 'b', 'c'), ms: fc.integer({ min: 0, max: 3 }), fails: fc.boolean() }),
        {
          maxLength: 30,
        },
      ),
      async (orders) => {
        const queue = createQueue()
        const ended: { channel: string; n: number }[] = []
        const running = new Map<string, number>()
        const all = orders.map((order, n) =>
          queue.run(order.channel, async () => {
            running.set(order.channel, (running.get(order.channel) ?? 0) + 1)
            expect(running.get(order.channel)).toBe(1)
            await pause(order.ms)
            running.set(order.channel, 0)
            ended.push({ channel: order.channel, n })
            if (order.fails) throw new Error('failed')
          }),
        )
        await Promise.allSettled(all)
        expect(await queue.drain(100)).toBe(true)
        expect(queue.size()).toBe(0)
        for (const channel of ['a', 'b', 'c']) {
          const mine = ended.filter((one) => one.channel === channel).map((one) => one.n)
          expect(mine).toEqual(mine.toSorted((x, y) => x - y))
        }
        expect(ended).toHaveLength(orders.length)
      },
    ),
    { numRuns: 30 },
  )
})

test('a slow channel does not hold up another, and draining waits or gives up', async () => {
  const queue = createQueue()
  const slow = queue.run('slow', () => pause(200))
  const started = performance.now()
  await queue.run('quick', async () => {})
  expect(performance.now() - started).toBeLessThan(150)
  expect(await queue.drain(20)).toBe(false)
  expect(await queue.drain(1000)).toBe(true)
  await slow
})

test('between two answers the event loop turns, so that an acknowledgement never waits behind several', async () => {
  const queue = createQueue()
  let turns = 0
  let counting = true
  const count = () => {
    turns += 1
    if (counting) setImmediate(count)
  }
  setImmediate(count)
  const seen: number[] = []
  const channels = Array.from({ length: 50 }, (_, n) => `c${n}`)
  await Promise.all(channels.map((channel) => queue.run(channel, async () => void seen.push(turns))))
  counting = false
  expect(new Set(seen).size).toBe(50)
})

test('the guard takes an id once, forgets the oldest, and takes a released one again', () => {
  const guard = createGuard(3)
  expect(['a', 'a', 'b', 'c', 'd', 'b', 'a'].map(guard.take)).toEqual([true, false, true, true, true, false, true])
  guard.release('b')
  expect(guard.take('b')).toBe(true)
})

test('pauses grow to a minute', () => {
  for (let attempt = 0; attempt < 12; attempt += 1) {
    const middle = Math.min(60_000, 1000 * 2 ** attempt)
    expect(pauseMs(attempt)).toBeGreaterThanOrEqual(middle * 0.85)
    expect(pauseMs(attempt)).toBeLessThanOrEqual(middle * 1.15)
  }
})

test('persisting ends with the attempts, with what is not worth it, and with the signal', async () => {
  let tries = 0
  const failing = async () => {
    tries += 1
    throw new Error(`try ${tries}`)
  }
  await expect(persist(failing, { attempts: 3, firstMs: 1, worthIt: () => true })).rejects.toThrow('try 3')
  await expect(persist(failing, { firstMs: 1, worthIt: () => false })).rejects.toThrow('try 4')
  const stop = new AbortController()
  const waiting = persist(failing, { firstMs: 60_000, worthIt: () => true, signal: stop.signal })
  await pause(10)
  stop.abort()
  await expect(waiting).rejects.toThrow()
  expect(tries).toBe(5)
})
