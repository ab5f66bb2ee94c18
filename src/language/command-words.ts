/** Words that steer the job rather than ask for a figure: tables of cues, one for each locale. */
import { type CueBook, type CueTable, cueBook, cuesIn, plainWords } from './cues.ts'

export const COMMANDS = [
  'so-far',
  'undo',
  'history',
  'start-over',
  'new-job',
  'switch-job',
  'reopen',
  'list-jobs',
  'name-job',
  'keep',
  'forget',
  'point',
  'change-order',
  'sign-off',
  'remind',
  'reminders',
  'cancel',
  'cancel-last',
  'snooze',
] as const
export type Command = (typeof COMMANDS)[number]

/** What a message tells of the work that is done. */
export const LOG_WORDS = [
  'used',
  'opened',
  'set-tiles',
  'broke',
  'binned',
  /** A mix of a size nobody measured. */
  'batch',
  'gets',
  'left',
  'total',
  'burning',
  /** The crew's own coverage is asked for. */
  'own-rate',
  'rows-to-go',
  'lot-gone',
  'short',
  'running-short',
  'how-far',
  'ways',
  'finish',
  'reading',
  'lifted',
  'owner-word',
  'good-enough',
  'from-start',
  'flatness-read',
  'contact-read',
  'of-flatness',
  'of-moisture',
  'of-lot',
  'of-contact',
] as const
export type LogWord = (typeof LOG_WORDS)[number]

export type CommandLocale = {
  readonly commands: Readonly<Record<Command, readonly string[]>>
  readonly log: Readonly<Record<LogWord, readonly string[]>>
  /** By IANA zone. */
  readonly zones: CueTable
  /** "Yes, do it", as a whole message. */
  readonly yes: readonly string[]
  /** What stands before a name and before what is to be noted, longest first; the rest of the message is the name. */
  readonly beforeName: readonly string[]
  /** What a reminder is asked with, and the small words between that, its time and its text. */
  readonly reminding: readonly string[]
  readonly noteJoins: readonly string[]
  /** Words at the ends of a name that are none of it. */
  readonly notName: readonly string[]
}

export type CommandWords = {
  readonly command: Command | null
  readonly log: ReadonlySet<LogWord>
  readonly zone: string | null
  readonly yes: boolean
  /** The name or note that a command brings; null for none. */
  readonly name: string | null
}

const books = new WeakMap<CommandLocale, CueBook>()

function bookOf(locale: CommandLocale): CueBook {
  const known = books.get(locale)
  if (known) return known
  const { commands, log, zones } = locale
  const made = cueBook({ commands, log, zones })
  books.set(locale, made)
  return made
}

/** Reads a message for commands. What only a command needs is worked out when it is looked at.
 *  @param text plain text, lower case */
export function readCommands(text: string, locale: CommandLocale): CommandWords {
  const plain = plainWords(text)
  const cues = cuesIn(bookOf(locale), plain)
  return {
    command: (cues.names('commands')[0] as Command | undefined) ?? null,
    log: new Set(cues.names('log') as LogWord[]),
    zone: ianaZone(text) ?? cues.names('zones')[0] ?? null,
    yes: locale.yes.some((yes) => plain === yes || plain.startsWith(`${yes} `)),
    get name() {
      return nameIn(text, locale)
    },
  }
}

const IANA = /(?:^|[\s(])([a-z]{3,}(?:\/[a-z][a-z_-]+){1,2})(?=$|[\s.,!?)])/

/** "america/chicago", told as it is written in the database of zones. */
function ianaZone(text: string): string | null {
  const said = text.includes('/') ? IANA.exec(text)?.[1] : undefined
  if (!said) return null
  try {
    return new Intl.DateTimeFormat('en', { timeZone: said }).resolvedOptions().timeZone
  } catch {
    return null
  }
}

const MOST_NAME = 40

function nameIn(text: string, locale: CommandLocale): string | null {
  const spaced = ` ${text.replaceAll(/[\s:]+/g, ' ').trim()} `
  for (const before of locale.beforeName) {
    const at = spaced.indexOf(` ${before} `)
    if (at < 0) continue
    let words = spaced
      .slice(at + before.length + 2)
      .replace(/^[\s:]*["']?/, '')
      .replace(/["'.!?,;\s]+$/, '')
      .split(' ')
      .filter((word) => word !== '')
    while (words.length > 0 && locale.notName.includes(words[0])) words = words.slice(1)
    while (words.length > 0 && locale.notName.includes(words[words.length - 1])) words = words.slice(0, -1)
    const name = words.join(' ').slice(0, MOST_NAME).trim()
    if (name !== '') return name
  }
  return null
}
