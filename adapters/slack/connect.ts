/** The Slack adapter: Socket Mode or HTTP, told apart by the tokens. */
import type { App, HTTPReceiver, Logger, LogLevel, SocketModeReceiver, webApi } from '@slack/bolt'
import { type Adapter, type AdapterStatus, type Backing, TokenRefused } from '../contract.ts'
import { createDesk } from '../desk.ts'
import { brief, type Log } from '../logging.ts'
import { persist } from '../patience.ts'
import { channelOf, SLACK_NAME } from './channel.ts'
import { createPoster, slackCode } from './post.ts'
import { type Identity, receive } from './receive.ts'
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

/** Bolt's own lines: warnings from outside (a bad signature) as they are, its chatter at debug level. */
function boltLogger(log: Log, level: LogLevel, loud: boolean): Logger {
  const text = (parts: unknown[]) => parts.map((part) => (part instanceof Error ? brief(part) : String(part))).join(' ')
  return {
    debug: (...parts) => log.trace({ platform: SLACK_NAME }, text(parts)),
    info: (...parts) => log.debug({ platform: SLACK_NAME }, text(parts)),
    warn: (...parts) => (loud ? log.warn({ platform: SLACK_NAME }, text(parts)) : log.debug(text(parts))),
    error: (...parts) => (loud ? log.error({ platform: SLACK_NAME }, text(parts)) : log.debug(text(parts))),
    setLevel: () => {},
    getLevel: () => level,
    setName: () => {},
  }
}

const loadBolt = () => import('@slack/bolt')
type Bolt = Awaited<ReturnType<typeof loadBolt>>
type Receiver = SocketModeReceiver | HTTPReceiver

export function createSlack(options: SlackOptions, backing: Backing, log: Log): Adapter {
  let status: AdapterStatus = 'idle'
  let app: App | null = null
  let receiver: Receiver | null = null
  const stopping = new AbortController()
  const desk = createDesk(SLACK_NAME, backing, log)
  const known = Promise.withResolvers<Identity>()
  known.promise.catch(() => {})
  let identity: Identity = { teamId: '', botUserId: '', botId: '' }

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

  const once = (logger: Logger) => ({
    ...(options.apiUrl ? { slackApiUrl: options.apiUrl } : {}),
    logger,
    retryConfig: { retries: 0 },
    timeout: 10_000,
  })

  const identify = async (client: webApi.WebClient): Promise<Identity> => {
    const me = await patiently('SLACK_BOT_TOKEN', () => client.auth.test())
    return { teamId: me.team_id ?? '', botUserId: me.user_id ?? '', botId: me.bot_id ?? '' }
  }

  const socketReceiver = (bolt: Bolt, appToken: string, logger: Logger): SocketModeReceiver => {
    const made = new bolt.SocketModeReceiver({
      appToken,
      logger,
      installerOptions: { clientOptions: once(logger) },
    })
    // Its own reconnecting gives up on some errors and lets them escape; ours goes on, with one line each.
    const open = made.client.start.bind(made.client)
    let first = true
    made.client.start = async () => {
      try {
        return await patiently('SLACK_APP_TOKEN', open)
      } catch (error) {
        if (first || stopping.signal.aborted) throw error
        log.error({ platform: SLACK_NAME, error: brief(error) }, 'the connection is not taken up again')
        return new Promise(() => {})
      } finally {
        first = false
      }
    }
    made.client.on('connected', () => {
      if (!stopping.signal.aborted) status = 'connected'
    })
    made.client.on('close', () => {
      if (status === 'connected') {
        status = 'connecting'
        log.warn({ platform: SLACK_NAME }, 'connection lost, taking it up again')
      }
    })
    return made
  }

  const httpReceiver = (bolt: Bolt, signingSecret: string, port: number, logger: Logger): HTTPReceiver =>
    new bolt.HTTPReceiver({
      signingSecret,
      port,
      logger,
      customRoutes: [
        {
          path: '/healthz',
          method: ['GET', 'HEAD'],
          handler: (_request, response) => {
            const page = options.health?.() ?? { status: 200, body: '{}' }
            response.writeHead(page.status, { 'content-type': 'application/json' })
            response.end(page.body)
          },
        },
      ],
    })

  const start = async (): Promise<void> => {
    status = 'connecting'
    const bolt = await loadBolt()
    const quiet = boltLogger(log, bolt.LogLevel.INFO, false)
    const loud = boltLogger(log, bolt.LogLevel.INFO, true)
    const { mode } = options
    const made: Receiver =
      mode.is === 'socket'
        ? socketReceiver(bolt, mode.appToken, quiet)
        : httpReceiver(bolt, mode.signingSecret, mode.port, loud)
    receiver = made
    app = new bolt.App({
      receiver: made,
      logger: quiet,
      convoStore: false,
      ignoreSelf: true,
      // Requests wait here until the bot knows itself; Slack sends them again meanwhile, and doubles are dropped.
      authorize: async ({ teamId }) => {
        const { botUserId, botId, teamId: own } = await known.promise
        return { botToken: options.botToken, botUserId, botId, teamId: teamId ?? own }
      },
      clientOptions: {
        ...(options.apiUrl ? { slackApiUrl: options.apiUrl } : {}),
        logger: quiet,
        timeout: 15_000,
        retryConfig: { retries: 30, factor: 1.5, minTimeout: 300, maxTimeout: 30_000, randomize: true },
      },
    })
    const client = new bolt.webApi.WebClient(options.botToken, {
      ...(options.apiUrl ? { slackApiUrl: options.apiUrl } : {}),
      logger: quiet,
      timeout: 15_000,
      retryConfig: { retries: 30, factor: 1.5, minTimeout: 300, maxTimeout: 30_000, randomize: true },
    })
    poster = createPoster(client, backing, log, stopping.signal)
    receive(app, { desk, backing, log, poster, threads: createThreads(backing, log), identity: () => identity })
    if (mode.is === 'http') await app.start()
    identity = await identify(new bolt.webApi.WebClient(options.botToken, once(quiet)))
    known.resolve(identity)
    if (mode.is === 'socket') await app.start()
    status = 'connected'
    log.info({ platform: SLACK_NAME, mode: mode.is, team: identity.teamId }, 'connected')
  }

  let poster: ReturnType<typeof createPoster> | null = null

  const stop = async (): Promise<void> => {
    const wasRunning = status !== 'idle'
    status = 'stopped'
    const drained = desk.drain(options.drainMs ?? 3500)
    // What still waits for a pause gives up at once only after the others had their time.
    const closing = wasRunning && receiver !== null ? Promise.resolve(receiver.stop()).catch(() => {}) : null
    if (!(await drained)) log.warn({ platform: SLACK_NAME }, 'some answers were still on their way')
    stopping.abort()
    await Promise.race([closing, new Promise((resolve) => setTimeout(resolve, 300).unref())])
  }

  const deliver = async (key: string, text: string): Promise<void> => {
    const channel = channelOf(key)
    if (channel === null || poster === null) throw new Error(`no Slack channel to post to: ${key}`)
    await poster.sentence({ channel }, text)
  }

  return { name: SLACK_NAME, start, stop, status: () => status, deliver }
}
