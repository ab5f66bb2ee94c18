/** The one place that reads the environment and joins things: the platforms whose tokens are there, else the terminal. */
import type { Adapter, Backing } from './contract.ts'
import { type Env, type Plan, readEnvironment } from './environment.ts'
import { dataFolder } from './folders.ts'
import { healthPage, serveHealth } from './health.ts'
import { brief, createLog, type Log } from './logging.ts'
import { catchStrays, run } from './run.ts'

export type Parts = {
  readonly load: (env: Env, log: Log) => Promise<Backing>
  /** The program of one shard; this project's own by default. */
  readonly shardProgram?: string
}

/** `.env` beside the program's working folder; what is set already stays. */
function readEnvFile(): string | null {
  try {
    process.loadEnvFile('.env')
    return null
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'ENOENT' ? null : brief(error)
  }
}

/** The adapters of a plan. Their libraries are loaded here, and only where there are tokens. */
async function adaptersOf(plan: Plan, parts: Parts, backing: Backing, log: Log): Promise<Adapter[]> {
  const adapters: Adapter[] = []
  if (plan.slack) {
    const { createSlack } = await import('./slack/connect.ts')
    adapters.push(createSlack({ ...plan.slack, health: () => healthPage(adapters) }, backing, log))
  }
  if (plan.discord) {
    const { shards, ...rest } = plan.discord
    if (shards === null) {
      const { createDiscord } = await import('./discord/connect.ts')
      adapters.push(createDiscord(rest, backing, log))
    } else {
      const { createShards } = await import('./discord/shards.ts')
      const program = parts.shardProgram ? { program: parts.shardProgram } : {}
      adapters.push(createShards({ ...rest, shards, ...program }, backing, log))
    }
  }
  return adapters
}

async function openTerminal(load: Parts['load'], log: Log): Promise<void> {
  const { connectTerminal } = await import('./terminal/connect.ts')
  const backing = await load(process.env, log)
  try {
    await connectTerminal(backing, log, { folder: dataFolder(process.env), env: process.env })
  } finally {
    await backing.close()
  }
}

async function openPlatforms(plan: Plan, parts: Parts, log: Log): Promise<void> {
  const backing = await parts.load(process.env, log)
  const adapters = await adaptersOf(plan, parts, backing, log)
  const closers = plan.health ? [await serveHealth(plan.health.host, plan.health.port, () => healthPage(adapters))] : []
  await run({ adapters, backing, log, closers })
}

/** Starts what the environment asks for. */
export async function main(parts: Parts): Promise<void> {
  const envProblem = readEnvFile()
  const plan = readEnvironment(process.env)
  const platforms = plan.slack !== null || plan.discord !== null
  const terminal = !platforms && plan.complaints.length === 0
  // In the terminal the answers have standard output to themselves, and only what is wrong is logged.
  const level = terminal && process.env['KNEEPAD_LOG'] === undefined ? 'warn' : plan.logLevel
  const log = createLog(level, plan.secrets, (line) => (terminal ? process.stderr : process.stdout).write(line))
  catchStrays(log)
  if (envProblem) log.error({ error: envProblem }, '.env could not be read')
  for (const { variable, wrong, where } of plan.complaints) log.error({ where }, `${variable} ${wrong}`)
  try {
    if (terminal) await openTerminal(parts.load, log)
    else if (platforms) await openPlatforms(plan, parts, log)
    else process.exitCode = 1
  } catch (error) {
    log.fatal({ error: brief(error) }, 'could not start')
    log.debug({ stack: error instanceof Error ? error.stack : null }, 'where')
    process.exit(1)
  }
}
