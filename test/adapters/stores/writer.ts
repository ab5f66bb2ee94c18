/** A process to be killed: takes messages as lines on stdin, keeps each through the store, and says so on stdout.
 *  `> ID` when a message has arrived, `< ID STATE REPLY` when it is answered. */
import { createInterface } from 'node:readline'
import { Keeper } from '../../../adapters/stores/keep.ts'
import { openStore, whereIs } from '../../../adapters/stores/open.ts'
import { AT, entry, toyRules } from './toy.ts'

const store = await openStore(whereIs(process.argv[2]!), toyRules)
const keeper = new Keeper(store)
const say = (line: string) => process.stdout.write(`${line}\n`)
// Half of them open the file before the first message comes, half with it.
if (process.argv[3] === 'open') await store.load('slack:T:C0')
say('ready')
for await (const line of createInterface({ input: process.stdin })) {
  const [id, channel] = line.split(' ') as [string, string]
  say(`> ${id}`)
  const { state, reply, failure } = await keeper.answer(channel, { id, now: AT }, (memory) => ({
    reply: memory.count,
    entries: [entry(id), entry(id, 1, { part: 1 })],
  }))
  say(`< ${id} ${state} ${reply}${failure ? ` ${failure.code}` : ''}`)
}
