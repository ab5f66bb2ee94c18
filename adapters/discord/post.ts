/** Posting to Discord so that nothing is lost: the REST client waits out rate limits, this tries again what it gives up on. */
import { createHash } from 'node:crypto'
import type { RawFile, REST } from 'discord.js'
import { type Attachment, attachments } from '../attachments.ts'
import type { Backing, Deliver } from '../contract.ts'
import type { Shown } from '../desk.ts'
import { brief, type Log } from '../logging.ts'
import { persist } from '../patience.ts'
import { channelOf } from './channel.ts'
import { DISCORD } from './limits.ts'
import { bodyOf, type DiscordMessage, renderDiscord, renderSentence } from './render.ts'

/** A channel, as a reply to a message where there is one; or the deferred answer of an interaction. */
export type Place =
  | { readonly is: 'message'; readonly channel: string; readonly replyTo?: string; readonly nonce?: string }
  | { readonly is: 'interaction'; readonly channel: string; readonly application: string; readonly token: string }

export type Poster = {
  readonly reply: (place: Place, shown: Shown) => Promise<void>
  readonly sentence: (place: Place, sentence: string) => Promise<void>
  /** Takes a deferred answer back. */
  readonly withdraw: (place: Place) => Promise<void>
  /** Answers an interaction within its three seconds: deferred, with choices or a form. */
  readonly acknowledge: (interaction: { id: string; token: string }, body: unknown) => Promise<boolean>
}

type Refusal = { readonly status?: number; readonly code?: number | string }

const refusal = (error: unknown): Refusal => (error ?? {}) as Refusal

/** True for what may pass: no answer, a broken answer, a server error. */
export const mayPass = (error: unknown): boolean => {
  const { status } = refusal(error)
  return error instanceof Error && (status === undefined || status >= 500 || status === 429)
}

const CODE = {
  unknownWebhook: 10015,
  unknownInteraction: 10062,
  alreadyAcknowledged: 40060,
  missingPermissions: 50013,
  missingAccess: 50001,
  invalidToken: 50027,
}
/** The interaction's own address no longer takes an answer. */
const EXPIRED: readonly (number | string | undefined)[] = [
  CODE.unknownWebhook,
  CODE.unknownInteraction,
  CODE.invalidToken,
]

/** The channel is no more, or the bot may not see it or write to the person. */
export const isGone = (error: unknown): boolean => [10003, 50001, 50007].includes(Number(refusal(error).code))

/** Posts plain text by a channel's key, as the reminders' clock wants it. */
export const deliverBy =
  (poster: () => Poster | null): Deliver =>
  async (key, text, id) => {
    const channel = channelOf(key)
    const to = poster()
    if (channel === null || to === null) throw new Error(`no Discord channel to post to: ${key}`)
    const nonce = id === undefined ? {} : { nonce: createHash('sha256').update(`${key}/${id}`).digest('base64url') }
    try {
      await to.sentence({ is: 'message', channel, ...nonce }, text)
      return 'sent'
    } catch (error) {
      if (isGone(error)) return 'gone'
      throw error
    }
  }

const rawFiles = (files: readonly Attachment[]): RawFile[] =>
  files.map((file) => ({ name: file.name, data: Buffer.from(file.bytes), contentType: file.type }))

const described = (files: readonly Attachment[]) =>
  files.map((file, id) => ({ id: String(id), filename: file.name, description: file.alt.slice(0, DISCORD.alt) }))

export function createPoster(rest: REST, backing: Backing, log: Log, signal: AbortSignal): Poster {
  const patiently = <T>(what: string, task: () => Promise<T>, attempts = 6, firstMs = 1000): Promise<T> =>
    persist(task, {
      signal,
      attempts,
      firstMs,
      worthIt: mayPass,
      onPause: (error, ms, attempt) =>
        log.warn({ platform: 'discord', what, ms, attempt, error: brief(error) }, 'trying again'),
    })

  const toChannel = (place: Place, message: DiscordMessage, files: readonly Attachment[]): Promise<unknown> => {
    const { replyTo, nonce = replyTo } = place.is === 'message' ? place : {}
    const body = {
      ...message,
      attachments: described(files),
      ...(replyTo === undefined ? {} : { message_reference: { message_id: replyTo, fail_if_not_exists: false } }),
      // With an enforced nonce a post that was repeated after a lost answer stays one message.
      ...(nonce === undefined ? {} : { nonce: nonce.slice(-DISCORD.nonce), enforce_nonce: true }),
    }
    const route = `/channels/${place.channel}/messages` as const
    return patiently('message', () => rest.post(route, { body, files: rawFiles(files) }))
  }

  const post = async (place: Place, message: DiscordMessage, files: readonly Attachment[] = []): Promise<void> => {
    if (place.is === 'message') {
      await toChannel(place, message, files)
      return
    }
    const route = `/webhooks/${place.application}/${place.token}/messages/@original` as const
    try {
      await patiently('interaction', () =>
        rest.patch(route, {
          body: { ...message, attachments: described(files) },
          files: rawFiles(files),
          auth: false,
        }),
      )
    } catch (error) {
      if (!EXPIRED.includes(refusal(error).code)) throw error
      log.warn({ platform: 'discord', error: brief(error) }, 'too late for the interaction, posting into the channel')
      await toChannel(place, message, files)
    }
  }

  const sentence = (place: Place, text: string): Promise<void> => post(place, renderSentence(text))

  const reply = async (place: Place, shown: Shown): Promise<void> => {
    const words = backing.words(shown.reply.language)
    const body = bodyOf(shown.reply)
    const made = await attachments(shown.reply, body.overflow, DISCORD.fileBytes, backing, log)
    const files = made.files.slice(0, DISCORD.files)
    const missing = made.left > 0 || files.length < made.files.length
    const render = (short: boolean) => renderDiscord(shown.reply, body, shown.key, words, short ? words.noFile : null)
    try {
      await post(place, render(missing), files)
    } catch (error) {
      if (files.length === 0 || refusal(error).code !== CODE.missingPermissions) throw error
      log.warn({ platform: 'discord' }, 'files may not be attached in this channel')
      await post(place, render(true))
    }
  }

  const withdraw = async (place: Place): Promise<void> => {
    if (place.is === 'message') return
    const route = `/webhooks/${place.application}/${place.token}/messages/@original` as const
    await rest.delete(route, { auth: false }).catch((error: unknown) => log.debug(brief(error)))
  }

  const acknowledge = async (interaction: { id: string; token: string }, body: unknown): Promise<boolean> => {
    const route = `/interactions/${interaction.id}/${interaction.token}/callback` as const
    try {
      await patiently('acknowledgement', () => rest.post(route, { body, auth: false }), 3, 100)
      return true
    } catch (error) {
      if (refusal(error).code === CODE.alreadyAcknowledged) return true
      log.warn({ platform: 'discord', error: brief(error) }, 'an interaction was not acknowledged')
      return false
    }
  }

  return { reply, sentence, withdraw, acknowledge }
}
