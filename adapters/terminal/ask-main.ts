/** The `ask` contract: flags, messages, one answer each, exit codes. */
import { randomUUID } from 'node:crypto'
import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { emptyMemory, fold, type Memory } from '../../src/jobs/memory.ts'
import type { Message } from '../../src/message.ts'
import type { Reply, ReplyFile } from '../../src/reply.ts'
import { replyText } from '../../src/speak.ts'
import { loadTools } from '../tools.ts'
import { work } from '../working.ts'
import { type Flags, readFlags } from './ask-flags.ts'
import { lines } from './lines.ts'

type Answering = {
  readonly answer: (channel: string, message: Message) => Promise<Reply> | Reply
  readonly close: () => Promise<void>
}

const BAD_FLAGS = 2

/** Runs `ask` and gives back its exit code: 0 all answered, 1 one was not, 2 bad flags. */
export async function main(args: readonly string[]): Promise<number> {
  const flags = readFlags(args)
  if (!flags.ok) {
    process.stderr.write(`${flags.message}\n`)
    return BAD_FLAGS
  }
  const tools = loadTools()
  if (!tools.ok) {
    process.stderr.write(`${tools.message}\n`)
    return BAD_FLAGS
  }
  const answering =
    flags.value.data === null
      ? inThisRun(tools.value)
      : await (await import('./ask-data.ts')).inFile(flags.value.data, tools.value)
  let failed = false
  try {
    for await (const said of messagesOf(flags.value)) {
      const reply = await answering.answer(said.channel, messageOf(said.text, flags.value))
      if (!reply.ok) failed = true
      await print(reply, flags.value)
    }
  } finally {
    await answering.close()
  }
  return failed ? 1 : 0
}

function inThisRun(tools: Parameters<typeof work>[2]): Answering {
  const memories = new Map<string, Memory>()
  return {
    answer(channel, message) {
      const before = memories.get(channel) ?? emptyMemory
      const { reply, entries } = work(message, before, tools)
      memories.set(channel, entries.reduce(fold, before))
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
    const named = /^#channel (\S+)(?: ([\s\S]*))?$/.exec(line)
    yield named ? { channel: named[1], text: named[2] ?? '' } : { channel: flags.channel, text: line }
  }
}

/** The clock stands still with --now; else each message has its own instant, in the machine's zone. */
function messageOf(text: string, flags: Flags): Message {
  const zoned = flags.now === null ? Temporal.Now.zonedDateTimeISO() : null
  return {
    text,
    id: randomUUID(),
    person: 'terminal',
    now: flags.now ?? (zoned as Temporal.ZonedDateTime).toString({ timeZoneName: 'never', smallestUnit: 'second' }),
    zone: zoned?.timeZoneId ?? null,
  }
}

async function print(reply: Reply, flags: Flags): Promise<void> {
  const files = await Promise.all(reply.files.map((file) => fileOf(file, flags)))
  if (!flags.json) return write(`${replyText(reply)}${files.map((f) => (f.path ? `\n${f.path}` : '')).join('')}\n`)
  const { ok, topic, language, values, assumed, warnings, sources, problem } = reply
  return write(
    `${JSON.stringify({ ok, topic, language, text: replyText(reply), values, assumed, warnings, sources, files, problem })}\n`,
  )
}

const write = (text: string): Promise<void> =>
  new Promise((done, fail) => process.stdout.write(text, (error) => (error ? fail(error) : done())))

type Listed = { name: string; media_type: string; text?: string; path?: string }

/** A file as the contract lists it: with --out a picture is written there, as SVG and PNG, and named by its path. */
async function fileOf(file: ReplyFile, flags: Flags): Promise<Listed> {
  if (flags.out === null || !file.media_type.startsWith('image/'))
    return { name: file.name, media_type: file.media_type, text: file.text }
  mkdirSync(flags.out, { recursive: true })
  const target = path.join(flags.out, path.basename(file.name))
  writeFileSync(target, file.text)
  return { name: file.name, media_type: file.media_type, path: target }
}
