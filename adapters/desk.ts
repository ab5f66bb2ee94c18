/** What the platforms do alike between receiving and posting: order, doubles, buttons' state, the log line, failures. */
import { randomBytes } from 'node:crypto'
import type { Message, Photo } from '../src/message.ts'
import type { Offer, Reply } from '../src/reply.ts'
import { type Backing, type ChannelKey, clock, type Pressed, type Words } from './contract.ts'
import { brief, type Log } from './logging.ts'
import { createGuard, createQueue } from './queue.ts'

/** A reply with the key its buttons' state is kept under; null: show no buttons. */
export type Shown = { readonly reply: Reply; readonly key: string | null }

/** What is to be answered; with `pressed` set, `text` is what the button says. */
export type Found = { readonly text: string; readonly photos?: readonly Photo[]; readonly pressed?: Pressed }

export type Ask = {
  readonly channel: ChannelKey
  readonly id: string
  readonly person: string
  readonly personName?: string | undefined
  /** The language where the channel's cannot be looked up. */
  readonly language?: string | undefined
  /** Looked up in the channel's turn, so that what takes time to find keeps its place. `gone`: a button whose answer is no longer
   *  kept. `not ours`: nobody asked the bot. */
  readonly find: () => Promise<Found | 'gone' | 'not ours'>
  readonly post: (shown: Shown) => Promise<void>
  /** Says a plain sentence instead of a reply. */
  readonly sayOnly: (sentence: string) => Promise<void>
  /** Called when it turns out to be answered already. */
  readonly nothing?: () => Promise<void>
}

export type Desk = {
  /** False for a second delivery within this process. */
  readonly take: (channel: ChannelKey, id: string) => boolean
  /** Answers a message that was taken, after those of its channel that came before; never rejects. */
  readonly answer: (ask: Ask) => Promise<void>
  /** What a button says, unless its answer is gone or belongs to another channel. */
  readonly recallPress: (channel: ChannelKey, key: string, index: number) => Promise<Found | 'gone'>
  /** The words of the channel's language; `otherwise` is the language where it cannot be looked up. */
  readonly wordsOf: (channel: ChannelKey, otherwise?: string) => Promise<{ words: Words; language: string }>
  readonly drain: (timeoutMs: number) => Promise<boolean>
}

type Kept = { readonly channel: ChannelKey; readonly about: string; readonly offers: readonly Offer[] }

const keptOf = (json: string): Kept | null => {
  try {
    return JSON.parse(json) as Kept
  } catch {
    return null
  }
}

const buttonsKey = (key: string) => `buttons:${key}`

export function createDesk(platform: string, backing: Backing, log: Log): Desk {
  const queue = createQueue()
  const guard = createGuard()

  const keepOffers = async (channel: ChannelKey, about: string, reply: Reply): Promise<string | null> => {
    if (reply.offers.length === 0) return null
    const key = randomBytes(12).toString('base64url')
    const kept: Kept = { channel, about, offers: reply.offers }
    try {
      await backing.keep(buttonsKey(key), JSON.stringify(kept))
      return key
    } catch (error) {
      log.error({ platform, error: brief(error) }, 'buttons are left out: their state could not be kept')
      return null
    }
  }

  const wordsOf = async (channel: ChannelKey, otherwise = backing.languages[0] ?? '') => {
    const setup = await backing.answerer.setup(channel).catch((error: unknown) => {
      log.error({ platform, error: brief(error) }, 'a channel could not be looked up')
      return null
    })
    const language = setup?.language ?? otherwise
    return { words: backing.words(language), language }
  }

  const work = async (ask: Ask, started: number): Promise<void> => {
    const found = await ask.find()
    if (found === 'not ours') return
    if (found === 'gone') {
      const { words } = await wordsOf(ask.channel, ask.language)
      await ask.sayOnly(words.gone)
      return
    }
    const { text, photos = [], pressed } = found
    const { now, zone } = clock()
    const message: Message = {
      text,
      id: ask.id,
      person: ask.person,
      ...(ask.personName ? { personName: ask.personName } : {}),
      ...(photos.length > 0 ? { photos } : {}),
      now,
      zone,
    }
    const reply = pressed
      ? await backing.answerer.press(ask.channel, pressed, message)
      : await backing.answerer.handle(ask.channel, message)
    if (reply === null) {
      log.debug({ platform, id: ask.id }, 'answered before')
      await ask.nothing?.()
      return
    }
    await ask.post({ reply, key: await keepOffers(ask.channel, pressed?.about ?? text, reply) })
    const ms = Math.round(performance.now() - started)
    log.info({ platform, topic: reply.topic, ms, ok: reply.ok }, 'answered')
    log.debug({ platform, text, answer: reply.answer }, 'said')
  }

  const answer = (ask: Ask): Promise<void> => {
    const started = performance.now()
    return queue.run(ask.channel, async () => {
      try {
        await work(ask, started)
      } catch (error) {
        guard.release(`${ask.channel}/${ask.id}`)
        log.error({ platform, error: brief(error) }, 'a message was not answered')
        log.debug({ platform, stack: error instanceof Error ? error.stack : null }, 'where')
        const { words } = await wordsOf(ask.channel, ask.language)
        await ask
          .sayOnly(words.failed)
          .catch((late: unknown) => log.error({ platform, error: brief(late) }, 'nor told'))
      }
    })
  }

  const recallPress = async (channel: ChannelKey, key: string, index: number): Promise<Found | 'gone'> => {
    const json = await backing.recall(buttonsKey(key)).catch((error: unknown) => {
      log.error({ platform, error: brief(error) }, 'a button could not be looked up')
      return null
    })
    const kept = json === null ? null : keptOf(json)
    const offer = kept?.offers[index]
    if (!kept || !offer || kept.channel !== channel) return 'gone'
    return { text: offer.say, pressed: { id: offer.id, say: offer.say, about: kept.about } }
  }

  return { take: (channel, id) => guard.take(`${channel}/${id}`), answer, recallPress, wordsOf, drain: queue.drain }
}
