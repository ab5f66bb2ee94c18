/** The Discord adapter: the gateway by discord.js with the least intents, answers by its REST client. */
import type { APIInteraction, Client, GatewayMessageCreateDispatchData } from 'discord.js'
import { type Adapter, type AdapterStatus, type Backing, TokenRefused } from '../contract.ts'
import { createDesk } from '../desk.ts'
import { brief, type Log } from '../logging.ts'
import { persist } from '../patience.ts'
import { DISCORD_NAME, isThread } from './channel.ts'
import { registerCommand } from './command.ts'
import { inviteLink } from './permissions.ts'
import { createPoster, deliverBy, type Poster } from './post.ts'
import { type Inlet, onInteraction, onMessage } from './receive.ts'

export type DiscordOptions = {
  readonly token: string
  /** Ends in `/api`; Discord's own by default. */
  readonly apiUrl?: string | undefined
  /** ms to let what is in flight finish. */
  readonly drainMs?: number
  /** Requests a second that the client allows itself; Discord's own 50 by default, more only on loopback. */
  readonly requestsPerSecond?: number
}

const SWEEP_MS = 10_000

const loadDiscord = () => import('discord.js')
type DiscordJs = Awaited<ReturnType<typeof loadDiscord>>

/** What trying again would not help: the token, or intents that the application does not have. */
const isRefusal = (error: unknown): boolean =>
  error instanceof Error &&
  (('code' in error && error.code === 'TokenInvalid') ||
    ('status' in error && (error.status === 401 || error.status === 403)) ||
    /^(Authentication failed|Used disallowed intents|Used invalid intents|Expected token to be set)/.test(
      error.message,
    ))

function createClient(discord: DiscordJs, options: DiscordOptions): Client {
  const { Client, GatewayIntentBits, Options, Partials } = discord
  return new Client({
    // Mentions and direct messages come with their text; the privileged message-content intent is not needed.
    intents: [GatewayIntentBits.Guilds, GatewayIntentBits.GuildMessages, GatewayIntentBits.DirectMessages],
    partials: [Partials.Channel],
    allowedMentions: { parse: [], repliedUser: false },
    // What is not looked at is not kept: memory stays level over any number of messages.
    makeCache: Options.cacheWithLimits({
      ...Options.DefaultMakeCacheSettings,
      MessageManager: 0,
      ReactionManager: 0,
      PresenceManager: 0,
      VoiceStateManager: 0,
      GuildMemberManager: { maxSize: 50 },
      UserManager: { maxSize: 50 },
      DMMessageManager: 0,
      GuildMessageManager: 0,
    }),
    rest: {
      // The client keeps a queue for each interaction it answered until this sweep; its own hour is long on a busy day.
      handlerSweepInterval: SWEEP_MS,
      ...(options.apiUrl ? { api: options.apiUrl } : {}),
      ...(options.requestsPerSecond ? { globalRequestsPerSecond: options.requestsPerSecond } : {}),
    },
  })
}

const PARENTS = 2000

/** The parent of a thread: from the client's cache, else asked for once. */
function createHomes(client: Client): (channel: string) => Promise<string> {
  const parents = new Map<string, Promise<string>>()
  const ask = async (channel: string): Promise<string> => {
    const found = (await client.rest.get(`/channels/${channel}`).catch(() => null)) as {
      type?: number
      parent_id?: string | null
    } | null
    return isThread(found?.type) ? (found?.parent_id ?? channel) : channel
  }
  return async (channel) => {
    const cached = client.channels.cache.get(channel)
    if (cached) return cached.isThread() ? (cached.parentId ?? channel) : channel
    const home = parents.get(channel) ?? ask(channel)
    parents.set(channel, home)
    if (parents.size > PARENTS) parents.delete(parents.keys().next().value as string)
    return home
  }
}

export function createDiscord(options: DiscordOptions, backing: Backing, log: Log): Adapter {
  const desk = createDesk(DISCORD_NAME, backing, log)
  const stopping = new AbortController()
  let state: AdapterStatus = 'idle'
  let current: Client | null = null
  let poster: Poster | null = null

  const watch = (client: Client, discord: DiscordJs): void => {
    const { Events } = discord
    const line = (event: string) => (shard: unknown) => log.debug({ platform: DISCORD_NAME, event, shard }, 'gateway')
    client.on(Events.Error, (error) => log.warn({ platform: DISCORD_NAME, error: brief(error) }, 'client error'))
    client.on(Events.ShardError, (error) => log.warn({ platform: DISCORD_NAME, error: brief(error) }, 'gateway error'))
    client.on(Events.ShardResume, (shard) => {
      state = 'connected'
      log.info({ platform: DISCORD_NAME, shard }, 'resumed')
    })
    client.on(Events.ShardReady, (shard) => {
      if (client === current && client.isReady()) state = 'connected'
      line('ready')(shard)
    })
    client.on(Events.ShardReconnecting, (shard) => {
      if (client === current && state === 'connected') {
        state = 'connecting'
        log.warn({ platform: DISCORD_NAME, shard }, 'connection lost, taking it up again')
      }
    })
    client.on(Events.ShardDisconnect, ({ code }, shard) => {
      if (client !== current || state === 'idle') return
      state = 'stopped'
      log.error({ platform: DISCORD_NAME, shard, code }, 'the gateway closed for good')
    })
    client.rest.on('rateLimited', ({ route, timeToReset }) =>
      log.debug({ platform: DISCORD_NAME, route, ms: timeToReset }, 'waiting for a rate limit'),
    )
  }

  const listen = (client: Client, inlet: Inlet, discord: DiscordJs): void => {
    const { GatewayDispatchEvents } = discord
    const taking = (what: string, task: () => Promise<void>): void => {
      // A client that was given up may come back to life; only the current one is listened to.
      if (client !== current || stopping.signal.aborted) return
      task().catch((error: unknown) =>
        log.error({ platform: DISCORD_NAME, error: brief(error) }, `${what} not handled`),
      )
    }
    client.ws.on(GatewayDispatchEvents.MessageCreate, (data: GatewayMessageCreateDispatchData) =>
      taking('a message was', () => onMessage(data, inlet)),
    )
    client.ws.on(GatewayDispatchEvents.InteractionCreate, (data: APIInteraction) =>
      taking('an interaction was', () => onInteraction(data, inlet)),
    )
  }

  const login = async (discord: DiscordJs): Promise<Client> => {
    const client = createClient(discord, options)
    current = client
    const made = createPoster(client.rest, backing, log, stopping.signal)
    poster = made
    const botUserId = () => client.user?.id ?? ''
    watch(client, discord)
    listen(client, { desk, backing, log, poster: made, botUserId, homeOf: createHomes(client) }, discord)
    const ready = new Promise<void>((resolve) => client.once(discord.Events.ClientReady, () => resolve()))
    await client.login(options.token)
    await ready
    return client
  }

  const announce = async (client: Client): Promise<void> => {
    const id = client.application?.id ?? client.user?.id ?? ''
    log.info({ platform: DISCORD_NAME, shards: client.ws.shards.size, invite: inviteLink(id) }, 'connected')
    if (!client.ws.shards.has(0)) return
    try {
      const changed = await registerCommand(client.rest, id, backing)
      log.info({ platform: DISCORD_NAME, changed }, 'slash command')
    } catch (error) {
      log.error({ platform: DISCORD_NAME, error: brief(error) }, 'the slash command could not be registered')
    }
  }

  const start = async (): Promise<void> => {
    state = 'connecting'
    const discord = await loadDiscord()
    try {
      const client = await persist(() => login(discord), {
        signal: stopping.signal,
        worthIt: (error) => !isRefusal(error),
        onPause: (error, ms, attempt) =>
          log.warn({ platform: DISCORD_NAME, attempt, ms, error: brief(error) }, 'not reached, trying again'),
      })
      state = 'connected'
      await announce(client)
    } catch (error) {
      state = 'stopped'
      throw isRefusal(error) ? new TokenRefused(`Discord refused DISCORD_TOKEN: ${brief(error)}`) : error
    }
  }

  const stop = async (): Promise<void> => {
    state = 'idle'
    const client = current
    // The gateway goes first, so that nothing new comes in; the REST client stays for what is in flight.
    const gateway = client?.ws as unknown as { destroy(): Promise<void> } | undefined
    const closed = gateway?.destroy().catch(() => {})
    if (!(await desk.drain(options.drainMs ?? 3500)))
      log.warn({ platform: DISCORD_NAME }, 'some answers were still on their way')
    stopping.abort()
    state = 'stopped'
    await Promise.race([closed, new Promise((resolve) => setTimeout(resolve, 300).unref())])
    await client?.destroy().catch(() => {})
  }

  const status = (): AdapterStatus => (state === 'idle' && current !== null ? 'stopped' : state)
  return { name: DISCORD_NAME, start, stop, status, deliver: deliverBy(() => poster) }
}
