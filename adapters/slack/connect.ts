/** The Slack adapter: Socket Mode or HTTP, told apart by the tokens. */
import type { App, HTTPReceiver, SocketModeReceiver } from '@slack/bolt'
import { type Adapter, type AdapterStatus, type Backing, type Deliver, TokenRefused } from '../contract.ts'
import { createDesk } from '../desk.ts'
import { healthPage } from '../health.ts'
import { brief, type Log } from '../logging.ts'
import { persist } from '../patience.ts'
import { type Bolt, boltLogger, loadBolt, onceOptions, patientOptions } from './bolt.ts'
import { channelOf, SLACK_NAME } from './channel.ts'
import { createPoster, isGone, type Poster, slackCode } from './post.ts'
import { type Identity, receive } from './receive.ts'
import { httpReceiver, socketReceiver } from './receivers.ts'
import { createThreads } from './threads.ts'

export type SlackOptions = {
  readonly botToken: string
  /** Socket Mode with an app token, HTTP with a signing secret and a port. */
  readonly mode:
    | { readonly is: 'socket'; readonly appToken: string }
    | { readonly is: 'http'; readonly signingSecret: string; readonly port: number }
  /** Ends in `/api/`; Slack's own by default. */
  readonly apiUrl?: string | undefined
  /** The health page, served beside `/slack/events` in HTTP mode. */
  readonly health?: () => { readonly status: number; readonly body: string }
  /** ms to let what is in flight finish. */
  readonly drainMs?: number
}

/** Slack's words for a token it does not take. */
const REFUSED = new Set([
  'invalid_auth',
  'not_authed',
  'account_inactive',
  'token_revoked',
  'token_expired',
  'not_allowed_token_type',
  'user_removed_from_team',
  'team_disabled',
  'no_permission',
  'org_login_required',
])

const isRefusal = (error: unknown): boolean => REFUSED.has(slackCode(error) ?? '')

type Receiver = SocketModeReceiver | HTTPReceiver

/** ms for the socket to close politely. */
const CLOSE_MS = 300

export function createSlack(options: SlackOptions, backing: Backing, log: Log): Adapter {
  const { botToken, mode, apiUrl } = options
  let status: AdapterStatus = 'idle'
  let receiver: Receiver | null = null
  let poster: Poster | null = null
  let identity: Identity = { teamId: '', botUserId: '', botId: '' }
  const known = Promise.withResolvers<Identity>()
  const stopping = new AbortController()
  const desk = createDesk(SLACK_NAME, backing, log)

  const patiently = <T>(what: string, task: () => Promise<T>): Promise<T> =>
    persist(task, {
      signal: stopping.signal,
      worthIt: (error) => !isRefusal(error),
      onPause: (error, ms, attempt) =>
        log.warn({ platform: SLACK_NAME, what, attempt, ms, error: brief(error) }, 'not reached, trying again'),
    }).catch((error: unknown) => {
      if (!isRefusal(error)) throw error
      status = 'stopped'
      throw new TokenRefused(`Slack refused ${what}: ${slackCode(error)}`)
    })

  const onUp = () => {
    if (status === 'connecting') status = 'connected'
  }
  const onDown = () => {
    if (status !== 'connected') return
    status = 'connecting'
    log.warn({ platform: SLACK_NAME }, 'connection lost, taking it up again')
  }

  const createReceiver = (bolt: Bolt): Receiver => {
    const quiet = boltLogger(log, bolt.LogLevel.INFO, false)
    if (mode.is === 'socket')
      return socketReceiver(bolt, { appToken: mode.appToken, apiUrl, patiently, onUp, onDown }, quiet, log)
    const health = options.health ?? (() => healthPage([adapter]))
    return httpReceiver(bolt, { ...mode, health }, boltLogger(log, bolt.LogLevel.INFO, true))
  }

  const createApp = (bolt: Bolt, made: Receiver): App => {
    const logger = boltLogger(log, bolt.LogLevel.INFO, false)
    return new bolt.App({
      receiver: made,
      logger,
      convoStore: false,
      // Requests wait here until the bot knows itself; Slack sends them again meanwhile, and doubles are dropped.
      authorize: async ({ teamId }) => {
        const { botUserId, botId, teamId: own } = await known.promise
        return { botToken, botUserId, botId, teamId: teamId ?? own }
      },
      clientOptions: patientOptions(apiUrl, logger),
    })
  }

  const identify = async (bolt: Bolt): Promise<Identity> => {
    const logger = boltLogger(log, bolt.LogLevel.INFO, false)
    const client = new bolt.webApi.WebClient(botToken, onceOptions(apiUrl, logger))
    const me = await patiently('SLACK_BOT_TOKEN', () => client.auth.test())
    return { teamId: me.team_id ?? '', botUserId: me.user_id ?? '', botId: me.bot_id ?? '' }
  }

  const start = async (): Promise<void> => {
    status = 'connecting'
    const bolt = await loadBolt()
    receiver = createReceiver(bolt)
    const app = createApp(bolt, receiver)
    const logger = boltLogger(log, bolt.LogLevel.INFO, false)
    const client = new bolt.webApi.WebClient(botToken, patientOptions(apiUrl, logger))
    poster = createPoster(client, backing, log, stopping.signal)
    receive(app, { desk, backing, log, poster, threads: createThreads(backing, log), identity: () => identity })
    if (mode.is === 'http') await app.start()
    identity = await identify(bolt)
    known.resolve(identity)
    if (mode.is === 'socket') await app.start()
    status = 'connected'
    log.info({ platform: SLACK_NAME, mode: mode.is, team: identity.teamId }, 'connected')
  }

  const stop = async (): Promise<void> => {
    status = 'stopped'
    const closing = Promise.resolve(receiver?.stop()).catch(() => {})
    if (!(await desk.drain(options.drainMs ?? 3500)))
      log.warn({ platform: SLACK_NAME }, 'some answers were still on their way')
    // Only now does what waits for a pause give up.
    stopping.abort()
    await Promise.race([closing, new Promise((resolve) => setTimeout(resolve, CLOSE_MS).unref())])
  }

  const deliver: Deliver = async (key, text) => {
    const channel = channelOf(key)
    if (channel === null || poster === null) throw new Error(`no Slack channel to post to: ${key}`)
    try {
      await poster.sentence({ channel }, text)
      return 'sent'
    } catch (error) {
      if (isGone(error)) return 'gone'
      throw error
    }
  }

  const adapter: Adapter = { name: SLACK_NAME, start, stop, status: () => status, deliver }
  return adapter
}
