/** The terminal as a platform: a prompt where someone types, line by line where the input is a file or a pipe. */
import { randomUUID } from 'node:crypto'
import path from 'node:path'
import type { ReadStream, WriteStream } from 'node:tty'
import { LOCALES } from '../../src/language/all.ts'
import type { Reply, ReplyFile } from '../../src/reply.ts'
import { type Backing, clock, type Deliver, fill } from '../contract.ts'
import { brief, type Log } from '../logging.ts'
import { lines } from './lines.ts'
import { openPrompt } from './prompt.ts'
import { namesOnce, save } from './save.ts'
import { type Look, offersShown, paragraph, shown } from './show.ts'

/** The job's channel, the same as `ask` has without `--channel`. */
export const CHANNEL = 'terminal'

export type TerminalOptions = {
  /** The data folder: history and pictures go there. */
  readonly folder: string
  readonly env: Readonly<Record<string, string | undefined>>
  readonly input?: NodeJS.ReadableStream
  readonly output?: NodeJS.WritableStream
}

/** Answers until the person leaves, the input ends, nobody reads on, or a signal says so. */
export async function connectTerminal(backing: Backing, log: Log, options: TerminalOptions): Promise<void> {
  const { folder, env, input = process.stdin, output = process.stdout } = options
  const session = await openSession(backing, log, { folder, env, output })
  const typed = (input as ReadStream).isTTY === true && (output as WriteStream).isTTY === true
  const source = typed
    ? openPrompt({ input, output, file: path.join(folder, 'history'), leaveHint: session.words('interrupted'), log })
    : piped(input)
  const leave = () => source.close()
  const signals = ['SIGTERM', 'SIGHUP'] as const
  for (const signal of signals) process.on(signal, leave)
  output.on('error', leave)
  const stopReminders = typed
    ? backing.remind?.(deliverTo((text) => source.interject(paragraph(text, 'strong', session.look()).join('\n'))))
    : undefined
  try {
    if (typed) session.say(session.hint())
    for await (const line of source.lines()) {
      if (typed && line.trim() === '') continue
      session.say([...(await session.answer(line)), ''])
    }
  } finally {
    for (const signal of signals) process.off(signal, leave)
    await stopReminders?.()
    source.close()
  }
}

/** Where messages come from. */
export type Source = {
  /** Ends when the person leaves. */
  readonly lines: () => AsyncIterable<string>
  /** Shows something that nobody asked for just now. */
  readonly interject: (text: string) => void
  readonly close: () => void
}

function piped(input: NodeJS.ReadableStream): Source {
  let closed = false
  const stream = input as NodeJS.ReadStream
  return {
    async *lines() {
      try {
        for await (const line of lines(stream)) yield line
      } catch (error) {
        // Taken away by `close`, in the middle of a read.
        if (!closed) throw error
      }
    },
    interject: () => {},
    close: () => {
      closed = true
      stream.destroy()
    },
  }
}

/** Reminders of other channels in the same store are for those who can reach them. */
const deliverTo =
  (interject: (text: string) => void): Deliver =>
  async (channel, text) => {
    if (channel !== CHANNEL) throw new Error(`${channel} is not reached from the terminal`)
    interject(text)
    return 'sent'
  }

type Words = (name: string) => string

const wordsOf = (language: string): Words => {
  const locale = LOCALES.find((one) => one.code === language) ?? LOCALES[0]
  return (name) => locale.phrases[`shell.${name}`] ?? LOCALES[0].phrases[`shell.${name}`]
}

async function openSession(
  backing: Backing,
  log: Log,
  { folder, env, output }: Pick<TerminalOptions, 'folder' | 'env'> & { readonly output: NodeJS.WritableStream },
) {
  const screen = output as WriteStream
  const { language } = await backing.answerer
    .setup(CHANNEL)
    .catch(() => ({ language: backing.languages[0] ?? LOCALES[0].code }))
  const words = wordsOf(language)
  const look = (): Look => ({
    width: screen.isTTY ? Math.max(20, screen.columns || 80) : null,
    // no-color.org: NO_COLOR with any text in it; a dumb terminal knows no colours.
    colour: screen.isTTY === true && !env['NO_COLOR'] && env['TERM'] !== 'dumb',
  })
  const nameOf = namesOnce()

  const saved = async (file: ReplyFile, said: Words): Promise<string[]> => {
    try {
      const written = await save(file, path.join(folder, 'files'), (name) => nameOf(dated(name)))
      return written.map((one) => fill(said('saved'), { path: one.path }))
    } catch (error) {
      log.warn({ error: brief(error) }, 'a file could not be saved')
      return [fill(said('not-saved'), { why: brief(error) })]
    }
  }

  return {
    words,
    look,
    say: (all: readonly string[]) => void output.write(`${all.join('\n')}\n`),
    hint: (): string[] => [
      ...paragraph(words('hint'), 'plain', look()),
      ...['example-1', 'example-2', 'example-3'].flatMap((name) => paragraph(`  ${words(name)}`, 'strong', look())),
      ...paragraph(words('hint-leave'), 'faint', look()),
      '',
    ],
    async answer(text: string): Promise<string[]> {
      const reply = await replyTo(backing, log, text)
      if (reply === null) return paragraph(backing.words(language).failed, 'warn', look())
      const said = wordsOf(reply.language)
      const paths = (await Promise.all(reply.files.map((file) => saved(file, said)))).flat()
      return [...shown(reply, look()), ...paths, ...offersShown(reply, said('next'), look())]
    },
  }
}

async function replyTo(backing: Backing, log: Log, text: string): Promise<Reply | null> {
  try {
    const { now, zone } = clock()
    return await backing.answerer.handle(CHANNEL, { text, id: randomUUID(), person: 'terminal', now, zone })
  } catch (error) {
    log.error({ error: brief(error) }, 'a message was not answered')
    return null
  }
}

/** `floor-20260310-163000.svg`: pictures of earlier days stay. */
function dated(name: string): string {
  const { name: stem, ext } = path.parse(name)
  const stamp = Temporal.Now.plainDateTimeISO()
    .toString({ smallestUnit: 'second' })
    .replace(/[-:]/g, '')
    .replace('T', '-')
  return `${stem}-${stamp}${ext}`
}
