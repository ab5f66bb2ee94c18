/** Discord over several processes: discord.js's own manager runs one `shard.ts` for each shard. */
import path from 'node:path'
import type { ShardingManager } from 'discord.js'
import { type Adapter, type AdapterStatus, type Backing, TokenRefused } from '../contract.ts'
import { brief, type Log } from '../logging.ts'
import { persist } from '../patience.ts'
import { DISCORD_NAME } from './channel.ts'
import { createPoster, deliverBy, type Poster } from './post.ts'

export type ShardsOptions = {
  readonly token: string
  readonly apiUrl?: string | undefined
  readonly shards: number | 'auto'
  /** The program of one shard; its `process.send` tells `{ refused: … }` when trying again would not help. */
  readonly program?: string
}

/** One IDENTIFY each five seconds is what Discord allows. */
const BETWEEN_MS = 5500

export function createShards(options: ShardsOptions, backing: Backing, log: Log): Adapter {
  let state: AdapterStatus = 'idle'
  let manager: ShardingManager | null = null
  let poster: Poster | null = null
  const stopping = new AbortController()
  const refused = Promise.withResolvers<never>()
  refused.promise.catch(() => {})

  const recommended = async (): Promise<number> => {
    const { REST, Routes } = await import('discord.js')
    const rest = new REST(options.apiUrl ? { api: options.apiUrl } : {}).setToken(options.token)
    // Posting needs no gateway: the manager itself delivers reminders, to the channels of every shard.
    poster = createPoster(rest, backing, log, stopping.signal)
    const is401 = (error: unknown) => (error as { status?: number }).status === 401
    const gateway = await persist(() => rest.get(Routes.gatewayBot()), {
      signal: stopping.signal,
      worthIt: (error) => !is401(error),
      onPause: (error, ms, attempt) =>
        log.warn({ platform: DISCORD_NAME, attempt, ms, error: brief(error) }, 'not reached, trying again'),
    }).catch((error: unknown) => {
      throw is401(error) ? new TokenRefused('Discord refused DISCORD_TOKEN') : error
    })
    return (gateway as { shards: number }).shards
  }

  const start = async (): Promise<void> => {
    state = 'connecting'
    const advised = await recommended()
    const { ShardingManager } = await import('discord.js')
    const made = new ShardingManager(options.program ?? path.join(import.meta.dirname, 'shard.ts'), {
      token: options.token,
      totalShards: options.shards === 'auto' ? advised : options.shards,
      mode: 'process',
    })
    manager = made
    made.on('shardCreate', (shard) => {
      shard.on('death', () => {
        if (!stopping.signal.aborted) log.warn({ platform: DISCORD_NAME, shard: shard.id }, 'a shard ended')
      })
      shard.on('error', (error) => log.error({ platform: DISCORD_NAME, shard: shard.id, error: brief(error) }, 'shard'))
      shard.on('message', (message: { refused?: string } | null) => {
        if (typeof message?.refused !== 'string') return
        made.respawn = false
        refused.reject(new TokenRefused(message.refused))
      })
    })
    await Promise.race([made.spawn({ delay: BETWEEN_MS, timeout: -1 }), refused.promise])
    const ready = () => made.shards.every((shard) => shard.ready)
    const waiting = Promise.withResolvers<void>()
    const timer = setInterval(() => {
      if (ready() || stopping.signal.aborted) waiting.resolve()
    }, 50)
    await Promise.race([waiting.promise, refused.promise]).finally(() => clearInterval(timer))
    state = 'connected'
    log.info({ platform: DISCORD_NAME, shards: made.shards.size }, 'connected')
  }

  const stop = async (): Promise<void> => {
    state = 'stopped'
    stopping.abort()
    if (!manager) return
    manager.respawn = false
    const ended = [...manager.shards.values()].map(
      (shard) =>
        new Promise<void>((resolve) => {
          if (!shard.process) return resolve()
          shard.process.once('exit', () => resolve())
          shard.process.kill('SIGTERM')
          return undefined
        }),
    )
    await Promise.all(ended)
  }

  const status = (): AdapterStatus =>
    state === 'connected' && !manager?.shards.every((shard) => shard.ready) ? 'connecting' : state

  return { name: DISCORD_NAME, start, stop, status, deliver: deliverBy(() => poster) }
}
