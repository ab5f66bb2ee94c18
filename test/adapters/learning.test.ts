import { expect, test } from 'vitest'
import { learning } from '../../adapters/learning.ts'
import { type InChannel, type Kept, kept, notKept } from '../../adapters/stores/store.ts'
import { Crew } from '../support/crew.ts'

/** The log of "used N bags on M sf", as the crew's messages make it. */
function logged(bags: number, sf: number, messageId: string) {
  const crew = new Crew()
  crew.say('10x13 shop floor, 18x18 tile, 1/2x1/2 notch')
  crew.say(`used ${bags} bags on ${sf} sf`)
  const use = crew.entries.find((entry) => entry.kind === 'use')
  if (!use) throw new Error('no log was made')
  return { ...use, messageId }
}

function storeOf(entries: InChannel[]) {
  const asked: string[] = []
  const store = {
    down: false,
    learned: async (workspace: string): Promise<Kept<readonly InChannel[]>> => {
      asked.push(workspace)
      return store.down ? notKept('unreachable', 'away') : kept(entries.filter((e) => e.channel.startsWith(workspace)))
    },
  }
  return { store, asked }
}

const SHOP = 'slack:T1:shop'

test('a workspace is read once; each log of this process counts at once, and once', async () => {
  const first = logged(1, 40, 'a')
  const { store, asked } = storeOf([{ channel: SHOP, entry: first }])
  let nowMs = 0
  const learned = learning(store, () => nowMs)
  expect((await learned.of(SHOP))[0]).toMatchObject({ bags: 1 })
  learned.kept('slack:T1:yard', [logged(2, 90, 'b')])
  learned.kept(SHOP, [first])
  expect((await learned.of('slack:T1:yard'))[0]).toMatchObject({ bags: 3 })
  expect(await learned.of('slack:T2:shop')).toEqual([])
  expect(asked).toEqual(['slack:T1', 'slack:T2'])
  nowMs = 10 * 60_000
  expect((await learned.of(SHOP))[0], 'what another instance logged is read in time').toMatchObject({ bags: 1 })
})

test('a log that is kept while the store is being read counts once', async () => {
  const one = logged(1, 40, 'a')
  const { store, asked } = storeOf([{ channel: SHOP, entry: one }])
  const learned = learning(store)
  const both = [learned.of(SHOP), learned.of(SHOP)]
  learned.kept(SHOP, [one, logged(3, 120, 'b')])
  for (const found of await Promise.all(both)) expect(found[0]).toMatchObject({ bags: 4 })
  expect(asked).toHaveLength(1)
})

test('a store that is away is left alone for a while, and found again', async () => {
  const { store, asked } = storeOf([{ channel: SHOP, entry: logged(1, 40, 'a') }])
  let nowMs = 0
  const learned = learning(store, () => nowMs)
  store.down = true
  expect(await learned.of(SHOP)).toEqual([])
  store.down = false
  expect(await learned.of(SHOP)).toEqual([])
  expect(asked).toHaveLength(1)
  nowMs = 30_000
  expect(await learned.of(SHOP)).toHaveLength(1)
})

test('however many workspaces ask, each gets its own figures', async () => {
  const { store } = storeOf(
    [0, 1500, 2999].map((n) => ({ channel: `slack:T${n}:c`, entry: logged(n + 1, 40 * (n + 1), `m${n}`) })),
  )
  const learned = learning(store)
  for (let n = 0; n < 3000; n++) await learned.of(`slack:T${n}:c`)
  for (const n of [0, 1500, 2999]) expect((await learned.of(`slack:T${n}:c`))[0]).toMatchObject({ bags: n + 1 })
})
