/** What stands between a platform and the rest: an adapter knows these shapes and nothing behind them. */
import type { Message } from '../src/message.ts'
import type { Reply } from '../src/reply.ts'
import type { Log } from './logging.ts'

/** `PLATFORM:WORKSPACE:CHANNEL`: the key of a channel's job. A thread shares its channel's, a direct message has its own. */
export type ChannelKey = string

/** A button's state, kept under a short key. `about` is the message the answer was for. */
export type Pressed = { readonly id: string; readonly say: string; readonly about: string }

/** How a channel is set up, ready to show in its own language. */
export type Setup = { readonly language: string; readonly units: string }

/** Answers what comes in. The adapters call it for one message of a channel at a time. */
export type Answerer = {
  /** The reply, once its entries are durable; null for a message that was answered before. */
  readonly handle: (channel: ChannelKey, message: Message) => Promise<Reply | null>
  /** The same for a pressed button; `message.text` is what the button says. */
  readonly press: (channel: ChannelKey, pressed: Pressed, message: Message) => Promise<Reply | null>
  readonly setup: (channel: ChannelKey) => Promise<Setup>
}

/** Sentences of the catalogue that an adapter shows by itself; see `WORDS` for the keys. */
export type Words = Readonly<Record<Word, string>>

/** Every sentence an adapter needs, with the facts it fills in as `{name}`. */
export const WORDS = [
  /** A press whose answer is no longer kept. */
  'gone',
  /** A bug or a dead store: nothing was answered. */
  'failed',
  /** A picture or file could not be added. */
  'noFile',
  /** A long answer goes on in a file. */
  'more',
  /** What an attached file of a long answer is, for those who cannot see it. */
  'moreAlt',
  /** A picture without a description of its own: {name}. */
  'pictureAlt',
  'formButton',
  'formTitle',
  'formSend',
  'formCancel',
  'room',
  'roomExample',
  'tile',
  'tileExample',
  'joint',
  'jointExample',
  /** The parts of the message that a filled-in form stands for: {room}, {tile}, {joint}. */
  'formRoom',
  'formTile',
  'formJoint',
  /** The word that opens the form when it is the whole message. */
  'formWord',
  'commandDescription',
  'commandHint',
  'homeTitle',
  'homeIntro',
  /** Messages to try, one a line. */
  'homeExamples',
  /** {units} */
  'homeUnits',
] as const
export type Word = (typeof WORDS)[number]

/** What autocomplete can offer: tile sizes and materials as a crew types them. */
export type Choices = { readonly sizes: readonly string[]; readonly materials: readonly string[] }

/** Everything the adapters are handed. `answerer.ts` makes it; tests make a small one. */
export type Backing = {
  readonly answerer: Answerer
  /** Keeps a JSON value under a key for some weeks; resolves when it is durable. */
  readonly keep: (key: string, json: string) => Promise<void>
  readonly recall: (key: string) => Promise<string | null>
  /** The words of a language, those of the default language where it is unknown. */
  readonly words: (language: string) => Words
  readonly languages: readonly string[]
  readonly choices: Choices
  /** SVG text to the bytes of a PNG. */
  readonly picture: (svg: string) => Promise<Uint8Array>
  /** Loads what the first messages would otherwise wait for, and with them every acknowledgement. */
  readonly warm?: () => Promise<void>
  /** Starts the reminders' clock; what is due goes to `deliver`. Gives back how to stop it. */
  readonly remind?: (deliver: Deliver) => () => Promise<void> | void
  readonly close: () => Promise<void>
}

/** Posts plain text into a channel. `gone`: the channel is no more, or shut to the bot, and trying again is no use. Rejects when
 *  it could not be posted for now. The same `id` again, after a post that may have been lost, stays one message where the
 *  platform can tell (Discord, for some minutes). */
export type Deliver = (channel: ChannelKey, text: string, id?: string) => Promise<'sent' | 'gone'>

export type BackingOptions = {
  /** The folder for what is kept; it exists. */
  readonly dataFolder: string
  /** A PostgreSQL address, where several instances share the memory. */
  readonly databaseUrl: string | undefined
  readonly log: Log
  /** The shell's clock [ms since 1970]. */
  readonly now?: () => number
}

/** What `answerer.ts` exports as `createAnswerer`. */
export type CreateAnswerer = (options: BackingOptions) => Promise<Backing>

export type AdapterStatus = 'idle' | 'connecting' | 'connected' | 'stopped'

export type Adapter = {
  readonly name: string
  /** Resolves when connected; goes on trying while the platform is down.
   *  @throws TokenRefused when the platform does not take the token */
  readonly start: () => Promise<void>
  /** Takes nothing new, finishes what is in flight and closes. */
  readonly stop: () => Promise<void>
  readonly status: () => AdapterStatus
  /** Posts into a channel of this platform: a reminder that is due. */
  readonly deliver: Deliver
}

/** The platform refused a token: trying again would not help. */
export class TokenRefused extends Error {}

/** Fills `{name}` places. */
export const fill = (text: string, facts: Readonly<Record<string, string>>): string =>
  text.replace(/\{(\w+)\}/g, (whole, name: string) => facts[name] ?? whole)

/** The clock of the shell: ISO 8601 with the offset of its zone. */
export function clock(): { now: string; zone: string } {
  const now = Temporal.Now.zonedDateTimeISO()
  return {
    now: now.toString({ timeZoneName: 'never', smallestUnit: 'millisecond' }),
    zone: now.timeZoneId,
  }
}
