/** The `ask` contract: flags, messages, one answer each, exit codes. */

import { fold } from '../../src/jobs/fold.ts'
import { LEARNED_KINDS, learnedFrom } from '../../src/jobs/learned.ts'
import { emptyMemory, type Memory } from '../../src/jobs/memory.ts'
import type { Entry, Message } from '../../src/message.ts'
import type { Reply } from '../../src/reply.ts'
import { replyText } from '../../src/speak.ts'
import { loadTools } from '../tools.ts'
import { workSafely } from '../working.ts'
import { listFiles } from './ask-files.ts'
import { type Flags, readFlags } from './ask-flags.ts'
import { lines } from './lines.ts'
import { namesOnce } from './save.ts'

type Answering = {
  readonly answer: (channel: string, message: Message) => Promise<Reply> | Reply
  readonly close: () => Promise<void>
}
type Tools = Parameters<typeof workSafely>[2]

const BAD_FLAGS = 2

const complain = (what: string): void => void process.stderr.write(`${what}\n`)
const onBug = (error: unknown): void => complain(error instanceof Error ? String(error.stack) : String(error))

/** Runs `ask` and gives back its exit code: 0 all answered, 1 one was not, 2 bad flags. */
export async function main(args: readonly string[]): Promise<number> {
  const flags = readFlags(args)
  if (!flags.ok) {
    complain(flags.message)
    return BAD_FLAGS
  }
  const tools = loadTools()
  if (!tools.ok) {
    complain(tools.message)
    return BAD_FLAGS
  }
  process.stdout.on('error', () => {})
  const { data } = flags.value
  const answering = data === null ? inThisRun(tools.value) : await inFile(data, tools.value)
  try {
    return await answerAll(answering, tools.value, flags.value)
  } finally {
    await answering.close()
  }
}

async function answerAll(answering: Answering, tools: Tools, flags: Flags): Promise<number> {
  const nameOf = namesOnce()
  let failed = false
  for await (const { channel, text } of messagesOf(flags)) {
    const reply = await answering.answer(channel, messageOf(text, flags))
    if (!reply.ok) failed = true
    const said = flags.json ? await asJson(reply, tools, flags, nameOf) : await asText(reply, tools, flags, nameOf)
    // Nobody reads on: what is left would be answered for nothing.
    if (!(await write(`${said}\n`))) break
  }
  return failed ? 1 : 0
}

async function inFile(file: string, tools: Tools): Promise<Answering> {
  const { inFile } = await import('./ask-data.ts')
  return inFile(file, tools, onBug, ({ code, detail }) => complain(`not kept (${code}): ${detail}`))
}

function inThisRun(tools: Tools): Answering {
  const channels = new Map<string, { readonly memory: Memory; readonly logged: readonly Entry[] }>()
  return {
    answer(channel, message) {
      const { memory, logged } = channels.get(channel) ?? { memory: emptyMemory, logged: [] }
      const learned = logged.length > 0 ? learnedFrom(logged) : []
      const { reply, entries, forget } = workSafely({ ...message, learned }, memory, tools, onBug)
      if (forget) channels.delete(channel)
      else
        channels.set(channel, {
          memory: entries.reduce(fold, memory),
          logged: [...logged, ...entries.filter(({ kind }) => LEARNED_KINDS.includes(kind))],
        })
      return reply
    },
    close: async () => {},
  }
}

async function* messagesOf(flags: Flags): AsyncGenerator<{ channel: string; text: string }> {
  if (flags.message !== null) {
    yield { channel: flags.channel, text: flags.message }
    return
  }
  for await (const line of lines(process.stdin)) {
    const named = /^\s*#channel\s+(\S+)(?:\s+(.*))?$/s.exec(line)
    yield named ? { channel: named[1], text: named[2] ?? '' } : { channel: flags.channel, text: line }
  }
}

let given = 0
/** An id no other message of this machine has. The instant and the process tell runs apart; Node's crypto takes 4 ms to load. */
const newId = (): string => `${Date.now().toString(36)}-${process.pid}-${++given}`

/** The clock stands still with --now; else each message has its own instant, in the machine's zone. */
function messageOf(text: string, flags: Flags): Message {
  const id = newId()
  if (flags.clock) return { text, id, person: 'terminal', ...flags.clock }
  const at = Temporal.Now.zonedDateTimeISO()
  const now = at.toString({ timeZoneName: 'never', smallestUnit: 'second' })
  return { text, id, person: 'terminal', now, zone: at.timeZoneId }
}

type Naming = (name: string) => string

async function asText(reply: Reply, tools: Tools, flags: Flags, nameOf: Naming): Promise<string> {
  const { listed, warnings } = await listFiles(reply, tools, flags.out, nameOf)
  return [replyText({ ...reply, warnings }), ...listed.flatMap((file) => file.path ?? [])].join('\n')
}

async function asJson(reply: Reply, tools: Tools, flags: Flags, nameOf: Naming): Promise<string> {
  const { listed: files, warnings } = await listFiles(reply, tools, flags.out, nameOf)
  const { ok, topic, language, values, assumed, sources, problem } = reply
  const text = replyText({ ...reply, warnings })
  return JSON.stringify({ ok, topic, language, text, values, assumed, warnings, sources, files, problem })
}

/** False when the reader has gone. */
const write = (text: string): Promise<boolean> =>
  new Promise((done) => process.stdout.write(text, (error) => done(!error)))
