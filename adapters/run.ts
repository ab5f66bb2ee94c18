/** Runs adapters until a signal says to stop: starts them side by side, stops them in order, and never dies of a stray error. */
import { type Adapter, type Backing, type Deliver, TokenRefused } from './contract.ts'
import { WHERE } from './environment.ts'
import { brief, type Log } from './logging.ts'

/** ms after which the process goes, whatever is still on its way. */
const LAST_MS = 4700

export type Running = {
  readonly adapters: readonly Adapter[]
  readonly backing: Backing
  readonly log: Log
  /** Stopped last, after the adapters: the health page. */
  readonly closers?: readonly (() => Promise<void>)[]
  readonly onStarted?: (adapter: Adapter) => void
  readonly onRefused?: (error: TokenRefused) => void
}

const whereFor = (message: string): string | undefined =>
  Object.entries(WHERE).find(([variable]) => message.includes(variable))?.[1]

/** To the adapter whose platform the key names. */
export const deliverBy =
  (adapters: readonly Adapter[]): Deliver =>
  async (channel, text, id) => {
    const adapter = adapters.find((one) => channel.startsWith(`${one.name}:`))
    if (!adapter) throw new Error(`no adapter for ${channel.split(':')[0]}`)
    return adapter.deliver(channel, text, id)
  }

/** A stray error is logged and the rest goes on: what is kept is durable, and each message is answered by itself. */
export function catchStrays(log: Log): void {
  process.on('unhandledRejection', (error) => log.error({ error: brief(error) }, 'stray rejection'))
  process.on('uncaughtException', (error) => log.error({ error: brief(error), stack: error.stack }, 'stray error'))
  process.stdout.on('error', () => {})
  process.stderr.on('error', () => {})
}

/** Resolves never: the process ends by a signal, or with 1 when every platform refused its token. */
export async function run(running: Running): Promise<void> {
  const { adapters, backing, log } = running
  let stopping = false
  let stopReminders: (() => Promise<void> | void) | undefined

  const stop = async (code: number, why: string): Promise<void> => {
    if (stopping) process.exit(130)
    stopping = true
    log.info({ why }, 'stopping')
    setTimeout(() => process.exit(code), LAST_MS).unref()
    await stopReminders?.()
    await Promise.all(adapters.map((adapter) => adapter.stop().catch((error: unknown) => log.error(brief(error)))))
    await Promise.all((running.closers ?? []).map((close) => close()))
    await backing.close().catch((error: unknown) => log.error({ error: brief(error) }, 'the store did not close'))
    log.info('stopped')
    process.exit(code)
  }

  for (const signal of ['SIGTERM', 'SIGINT', 'SIGHUP'] as const) process.on(signal, () => void stop(0, signal))
  // A shard whose manager is gone has nobody to stop it.
  if (process.send) process.on('disconnect', () => void stop(0, 'disconnect'))

  await backing.warm?.().catch((error: unknown) => log.warn({ error: brief(error) }, 'warming up failed'))
  stopReminders = backing.remind?.(deliverBy(adapters))
  let left = adapters.length
  await Promise.all(
    adapters.map(async (adapter) => {
      try {
        await adapter.start()
        running.onStarted?.(adapter)
      } catch (error) {
        if (stopping) return
        const message = brief(error)
        const where = error instanceof TokenRefused ? whereFor(message) : undefined
        log.error({ platform: adapter.name, error: message, ...(where ? { where } : {}) }, 'left out')
        if (error instanceof TokenRefused) running.onRefused?.(error)
        left -= 1
      }
    }),
  )
  if (left === 0 && !stopping) await stop(1, 'no platform is left')
}
