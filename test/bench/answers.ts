/** A message on its whole way, answered and stored: the real answerer over a real store. On the bare side the same message is
 *  answered by the same code from a memory held in a variable, and one row of the same bytes is put in and read back. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { createAnswerer, STORE_FILE } from '../../adapters/answerer.ts'
import type { Backing } from '../../adapters/contract.ts'
import { createLog } from '../../adapters/logging.ts'
import { openStore } from '../../adapters/stores/open.ts'
import { work } from '../../adapters/working.ts'
import { fold } from '../../src/jobs/fold.ts'
import { emptyMemory, type Memory } from '../../src/jobs/memory.ts'
import type { Entry } from '../../src/message.ts'
import { type Bare, barePostgres, bareSqlite } from '../support/bare.ts'
import { Crew, NOW, tools } from '../support/crew.ts'
import { fillChannels } from '../support/many-channels.ts'
import { startPostgres } from '../support/postgres.ts'
import { inTurns, sideBySide, tell, type Work } from '../support/timing.ts'

const MESSAGES = 900
const CHANNELS = 100_000
const LONG_JOB = 2000

/** What a crew says in a job: questions, follow-ups, facts, the log. */
const TALK = [
  '10x13 shop floor, 18x18 tile, 3/16 joint, 1/2x1/2 notch',
  'and grout?',
  'make it 1/8',
  'used 1 bag on 40 sf',
  'how many bags of thinset',
  '5x8 mudroom, 8x48 plank, 1/8 joint',
  'set 12 tiles so far',
  'how many more',
]

let ids = 0
const messageOf = (i: number) => ({
  text: TALK[i % TALK.length]!,
  id: `b${ids++}`,
  person: 'U0123456789',
  personName: 'the lead',
  now: NOW,
  zone: null,
})

/** The bare side, with memories that begin as given. */
function bareOver(bare: Bare, begin: (channel: string) => Memory) {
  const memories = new Map<string, Memory>()
  return async (channel: string, i: number): Promise<void> => {
    const memory = memories.get(channel) ?? begin(channel)
    const { reply, entries } = work({ ...messageOf(i), learned: [] }, memory, tools)
    await bare.keep(JSON.stringify([entries, { ...reply, files: [] }]))
    memories.set(channel, entries.reduce(fold, memory))
  }
}

const log = createLog('error', [], (line) => void process.stderr.write(line))
const said =
  (backing: Backing, channel: (i: number) => string): Work =>
  async (i) => {
    const reply = await backing.answerer.handle(channel(i), messageOf(i))
    if (!reply || reply.warnings.some((one) => one === tools.languages.locale('en').phrases['problem.not-kept']))
      throw new Error('a message was not kept')
  }

/** A job as real messages make it. */
function longJob(): { readonly entries: readonly Entry[]; readonly memory: Memory } {
  const crew = new Crew()
  for (let i = 0; crew.entries.length < LONG_JOB; i++) crew.say(TALK[i % TALK.length]!)
  return crew
}

async function sqlite(dir: string): Promise<void> {
  const file = path.join(dir, STORE_FILE)
  const long = longJob()
  const store = await openStore<null>({ in: 'file', file }, { fold: () => null, emptyMemory: null })
  const restored = await store.restore('slack:TL:long', { entries: long.entries })
  if (!restored.ok) throw new Error(restored.failure.detail)
  await store.close()
  const started = new Crew()
  started.say(TALK[0]!)
  const db = new DatabaseSync(file)
  fillChannels(db, CHANNELS, started.entries)
  db.close()

  const bare = bareSqlite(path.join(dir, 'bare.db'))
  const without = bareOver(bare, (channel) =>
    channel === 'slack:TL:long' ? long.memory : channel.startsWith('slack:W') ? started.memory : emptyMemory,
  )
  const backing = await createAnswerer({ dataFolder: dir, databaseUrl: undefined, log })
  try {
    const small = (i: number) => `slack:TS:small${i % 20}`
    await sideBySide(160, said(backing, small), (i) => without(small(i), i))
    const compare = async (name: string, channel: (i: number) => string, beside = true) => {
      const works = [said(backing, channel), (i: number) => without(channel(i), i)]
      const [own, bared, smalls] = await sideBySide(MESSAGES, ...works, ...(beside ? [said(backing, small)] : []))
      tell(`${name}, answered and kept bare`, bared!)
      tell(`${name}, message to stored answer`, own!, bared)
      if (smalls) tell('', own!, smalls, 'a small job')
    }
    await compare('SQLite FULL', small, false)
    await compare(`job of ${LONG_JOB} entries`, () => 'slack:TL:long')
    const anywhere = (i: number) => ((i * 7919) % CHANNELS) + 1
    await compare(`anywhere in ${CHANNELS}`, (i) => `slack:W${anywhere(i) % 500}:C${anywhere(i)}`)
    await compare(`50 busy of ${CHANNELS}`, (i) => `slack:W${(i % 50) + 1}:C${(i % 50) + 1}`)
  } finally {
    await backing.close()
    await bare.end()
  }
}

async function postgres(dir: string): Promise<void> {
  const server = await startPostgres({ durable: true })
  const connections = 8 // what the answerer opens
  try {
    const url = await server.fresh()
    const bare = await barePostgres(url, connections)
    const backing = await createAnswerer({ dataFolder: dir, databaseUrl: url, log })
    const channel = (i: number) => `slack:TP:c${i % 200}`
    const without = bareOver(bare, () => emptyMemory)
    const [bares, own] = await inTurns(7, 300, connections, (i) => without(channel(i), i), said(backing, channel))
    tell('PostgreSQL, 8 at once, answered and kept bare', bares!.timing)
    tell('PostgreSQL, 8 at once, message to stored answer', own!.timing, bares!.timing, 'bare', own!.ratio)
    await backing.close()
    await bare.end()
  } finally {
    await server.end()
  }
}

export default async function answers(): Promise<void> {
  const dir = mkdtempSync(path.join(tmpdir(), 'kneepad-bench-'))
  try {
    await sqlite(dir)
    await postgres(dir)
  } finally {
    rmSync(dir, { recursive: true })
  }
}
