/** One shard of Discord in a process of its own, started by the manager in `shards.ts`. */
import { loadBacking } from '../backing.ts'
import type { Backing } from '../contract.ts'
import { type Env, readEnvironment } from '../environment.ts'
import { createLog, type Log } from '../logging.ts'
import { catchStrays, run } from '../run.ts'
import { createDiscord } from './connect.ts'

/** Runs the shard that the manager's variables name. Reminders are the manager's. */
export async function runShard(load: (env: Env, log: Log) => Promise<Backing>): Promise<void> {
  const plan = readEnvironment(process.env)
  const log = createLog(plan.logLevel, plan.secrets, (line) => process.stdout.write(line))
  catchStrays(log)
  if (plan.discord === null) {
    log.error('no DISCORD_TOKEN reached the shard')
    process.exit(1)
  }
  const { remind: _, ...backing } = await load(process.env, log)
  const adapter = createDiscord(plan.discord, backing, log)
  await run({
    adapters: [adapter],
    backing,
    log,
    // A second client in this process is not noticed by discord.js's own message to the manager.
    onStarted: () => process.send?.({ _ready: true }),
    onRefused: (error) => process.send?.({ refused: error.message }),
  })
}

if (import.meta.main) await runShard(loadBacking)
