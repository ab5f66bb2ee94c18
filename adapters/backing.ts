/** Fetches what answers: `answerer.ts`, over the store in the data folder. */
import type { Backing } from './contract.ts'
import type { Env } from './environment.ts'
import { dataFolder, makeFolder } from './folders.ts'
import type { Log } from './logging.ts'

/** @throws where the folder cannot be made, the settings are wrong or the database is not reached */
export async function loadBacking(env: Env, log: Log): Promise<Backing> {
  const folder = makeFolder(dataFolder(env))
  const { createAnswerer } = await import('./answerer.ts')
  return createAnswerer({ dataFolder: folder, databaseUrl: env['DATABASE_URL'] || undefined, log, now: Date.now })
}
