/** Posting to Slack so that nothing is lost: the client waits out rate limits, this tries again what it gives up on. */
import type { webApi } from '@slack/bolt'
import { type Attachment, attachments } from '../attachments.ts'
import type { Backing } from '../contract.ts'
import type { Shown } from '../desk.ts'
import { brief, type Log } from '../logging.ts'
import { persist } from '../patience.ts'
import { SLACK } from './limits.ts'
import { renderSentence, renderSlack, type SlackMessage } from './render.ts'

/** Where something is posted: a channel, in a thread where there is one. */
export type Place = { readonly channel: string; readonly thread?: string | undefined }

export type Poster = {
  readonly reply: (place: Place, shown: Shown, respondTo?: string) => Promise<void>
  readonly sentence: (place: Place, sentence: string, respondTo?: string) => Promise<void>
}

/** Slack's error codes that pass by themselves. */
const PASSING = new Set([
  'ratelimited',
  'rate_limited',
  'internal_error',
  'fatal_error',
  'service_unavailable',
  'request_timeout',
])
/** Codes that a slash command's own address gets around: the bot is not in that channel. */
const NOT_INSIDE = new Set(['not_in_channel', 'channel_not_found', 'is_archived', 'restricted_action', 'missing_scope'])

/** Codes of a channel that is no more, or that the bot was put out of. */
const GONE = new Set(['channel_not_found', 'not_in_channel', 'is_archived', 'cannot_dm_bot', 'user_not_found'])

/** The `error` of a Slack answer; a body that was not Slack's JSON stands there whole. */
export const slackCode = (error: unknown): string | null => {
  const data = (error as { data?: { error?: unknown } } | null)?.data
  return typeof data?.error === 'string' ? data.error : null
}

export const isGone = (error: unknown): boolean => GONE.has(slackCode(error) ?? '')

/** True for what may pass: no answer, a broken answer, a server error, a limit without a time. */
export function mayPass(error: unknown): boolean {
  const code = slackCode(error)
  if (code === null) return error instanceof Error
  return PASSING.has(code) || !/^[a-z][a-z0-9_.-]*$/.test(code)
}

/** No name is linked, no address unfurled, no markup read. */
const QUIET = { mrkdwn: false, parse: 'none', link_names: false, unfurl_links: false, unfurl_media: false } as const

const threaded = (place: Place) => (place.thread === undefined ? {} : { thread_ts: place.thread })

export function createPoster(client: webApi.WebClient, backing: Backing, log: Log, signal: AbortSignal): Poster {
  const patiently = <T>(what: string, task: () => Promise<T>): Promise<T> =>
    persist(task, {
      signal,
      attempts: 6,
      worthIt: mayPass,
      onPause: (error, ms, attempt) =>
        log.warn({ platform: 'slack', what, ms, attempt, error: brief(error) }, 'trying again'),
    })

  /** A slash command's own address takes answers where the bot is no member; five in half an hour. */
  const respond = async (url: string, message: SlackMessage): Promise<void> => {
    const { text, blocks } = message
    const response = await fetch(url, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ response_type: 'in_channel', replace_original: false, text, blocks, ...QUIET }),
      signal: AbortSignal.timeout(10_000),
    })
    await response.body?.cancel()
    if (!response.ok) throw new Error(`response address answered ${response.status}`)
  }

  /** The `ts` of what was posted; null where it went to the command's own address. */
  const post = async (place: Place, message: SlackMessage, respondTo?: string): Promise<string | null> => {
    const { text, blocks } = message
    try {
      const posted = await patiently('chat.postMessage', () =>
        client.chat.postMessage({ channel: place.channel, text, blocks, ...QUIET, ...threaded(place) }),
      )
      return posted.ts ?? null
    } catch (error) {
      if (respondTo === undefined || !NOT_INSIDE.has(slackCode(error) ?? '')) throw error
      await patiently('response address', () => respond(respondTo, message))
      return null
    }
  }

  const upload = async (place: Place, files: readonly Attachment[]): Promise<void> => {
    const [first, ...others] = files.map((file) => ({
      file: Buffer.from(file.bytes),
      filename: file.name,
      title: file.name,
      alt_text: file.alt.slice(0, 1000),
    }))
    if (first === undefined) return
    const destination =
      place.thread === undefined
        ? { channel_id: place.channel }
        : { channel_id: place.channel, thread_ts: place.thread }
    await patiently('files.uploadV2', () => client.files.uploadV2({ ...destination, file_uploads: [first, ...others] }))
  }

  const sentence = async (place: Place, text: string, respondTo?: string): Promise<void> => {
    await post(place, renderSentence(text), respondTo)
  }

  const reply = async (place: Place, shown: Shown, respondTo?: string): Promise<void> => {
    const words = backing.words(shown.reply.language)
    const message = renderSlack(shown.reply, shown.key, words)
    const making = attachments(shown.reply, message.overflow, SLACK.fileBytes, backing, log)
    const ts = await post(place, message, respondTo)
    const { files, left } = await making
    if (files.length === 0 && left === 0) return
    // Files go under the answer they belong to; in a direct message too, where the answer itself stands alone.
    const under: Place = { channel: place.channel, thread: place.thread ?? ts ?? undefined }
    try {
      await upload(under, files)
      if (left > 0) await sentence(under, words.noFile, respondTo)
    } catch (error) {
      log.error({ platform: 'slack', error: brief(error) }, 'files were not uploaded')
      await sentence(under, words.noFile, respondTo)
    }
  }

  return { reply, sentence }
}
