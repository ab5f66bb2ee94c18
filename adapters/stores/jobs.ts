/** `npm run jobs -- …`: moves, lists and deletes what the channels keep. */
import { createReadStream, createWriteStream } from 'node:fs'
import path from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { parseArgs } from 'node:util'
import { dataFolder } from '../folders.ts'
import { BadLine, boundedLines } from './lines.ts'
import { openStore, whereIs } from './open.ts'
import type { Failure, Store } from './store.ts'
import { channelsOf, csvRows, exportLines, importLines, TransferFault } from './transfer.ts'

const USAGE = `Usage: npm run -s jobs -- COMMAND [options]

  list                    the channels there are
  export                  all of them as lines of JSON
  export --csv            their entries as a spreadsheet
  import                  adds such lines; what is there already stays as it is
  forget --channel KEY --yes
                          deletes all there is about a channel, for good

  --store WHERE     an SQLite file, or the address of a PostgreSQL database (postgres://...)
                    by default DATABASE_URL, else the file in the data folder
  --channel KEY     that channel only (list shows the keys)
  --file FILE       write to, or read from, that file instead of the terminal

To move from one to the other:
  npm run -s jobs -- export --store jobs.db | npm run -s jobs -- import --store postgres://...
`

type Flags = {
  readonly store: string
  readonly channel: string | null
  readonly file: string | null
  readonly csv: boolean
}
type Command = 'list' | 'export' | 'import' | 'forget'
const COMMANDS: readonly string[] = ['list', 'export', 'import', 'forget'] satisfies Command[]

/** What was asked for, or what is wrong with it. */
function read(args: string[]): { command: Command; flags: Flags } | { wrong: string } {
  const options = {
    store: { type: 'string' },
    channel: { type: 'string' },
    file: { type: 'string' },
    csv: { type: 'boolean' },
    yes: { type: 'boolean' },
    help: { type: 'boolean' },
  } as const
  let given: ReturnType<typeof parseArgs<{ options: typeof options; allowPositionals: true }>>
  try {
    given = parseArgs({ args, options, allowPositionals: true })
  } catch (error) {
    return { wrong: (error as Error).message }
  }
  const { values, positionals } = given
  const [command, ...more] = positionals
  if (values.help) return { wrong: '' }
  if (command === undefined) return { wrong: 'a command is missing' }
  if (!COMMANDS.includes(command)) return { wrong: `there is no command "${command}"` }
  if (more.length > 0) return { wrong: `"${more[0]}" is one word too many; a file is given with --file` }
  if (values.csv && command !== 'export') return { wrong: '--csv goes with export' }
  if (command === 'import' && values.channel !== undefined) return { wrong: '--channel does not go with import' }
  if (command === 'forget' && !values.channel) return { wrong: 'forget needs --channel KEY' }
  if (command === 'forget' && !values.yes) return { wrong: 'forget cannot be undone: add --yes to mean it' }
  const file = path.join(dataFolder(process.env), 'jobs.db')
  const flags = {
    store: values.store ?? (process.env['DATABASE_URL'] || file),
    channel: values.channel ?? null,
    file: values.file ?? null,
    csv: values.csv ?? false,
  }
  return { command: command as Command, flags }
}

async function run(command: Command, flags: Flags, store: Store<unknown>): Promise<void> {
  const out = () => (flags.file === null ? process.stdout : createWriteStream(flags.file, { mode: 0o600 }))
  const write = (pieces: AsyncIterable<string>) => pipeline(Readable.from(pieces), out(), { end: flags.file !== null })
  switch (command) {
    case 'list':
      return write(linesOf(channelsOf(store, flags.channel)))
    case 'export':
      return write(flags.csv ? csvRows(store, flags.channel) : exportLines(store, flags.channel))
    case 'import': {
      const input = flags.file === null ? process.stdin : createReadStream(flags.file)
      const { added, already, newer } = await importLines(store, boundedLines(input))
      process.stderr.write(`${added} new${already > 0 ? `, ${already} there already` : ''}\n`)
      if (newer > 0) process.stderr.write(`${newer} of a newer version: kept, but not read by this one\n`)
      return
    }
    case 'forget': {
      const forgotten = await store.forget(flags.channel!)
      if (!forgotten.ok) throw new TransferFault(forgotten.failure)
      process.stderr.write(forgotten.value ? 'forgotten\n' : 'there is no such channel\n')
      if (!forgotten.value) process.exitCode = 1
    }
  }
}

async function* linesOf(texts: AsyncIterable<string>): AsyncGenerator<string> {
  for await (const text of texts) yield `${text}\n`
}

const WHY: Readonly<Record<Failure['code'], string>> = {
  full: 'there is no room left where it lies',
  'read-only': 'it cannot be written to',
  corrupt: 'it is damaged, or not a file of this program; it was left as it is',
  unreachable: 'it cannot be reached',
  newer: 'it was written by a newer version of this program',
  failed: 'it failed',
}

const asked = read(process.argv.slice(2))
if ('wrong' in asked) {
  if (asked.wrong === '') process.stdout.write(USAGE)
  else process.stderr.write(`${asked.wrong}\n\n${USAGE}`)
  process.exitCode = asked.wrong === '' ? 0 : 2
} else {
  // What entries mean is of no interest here: they are moved as they are.
  const store = await openStore<null>(whereIs(asked.flags.store), { fold: () => null, emptyMemory: null })
  try {
    await run(asked.command, asked.flags, store as Store<unknown>)
  } catch (error) {
    process.exitCode = 1
    const { code, message } = error as { code?: string; message: string }
    if (error instanceof TransferFault) process.stderr.write(`the store: ${WHY[error.failure.code]} (${message})\n`)
    else if (error instanceof BadLine) process.stderr.write(`${message}\n`)
    else if (code === 'EPIPE')
      process.exitCode = 0 // the reader had enough
    else if (code !== undefined) process.stderr.write(`${message}\n`)
    else throw error
  } finally {
    await store.close()
  }
}
