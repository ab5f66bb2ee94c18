/** Fetches what answers: `answerer.ts`, over the store in the data folder. */
import type { Backing, CreateAnswerer } from './contract.ts'
import type { Env } from './environment.ts'
import { dataFolder, makeFolder } from './folders.ts'
import type { Log } from './logging.ts'

/** @throws where the folder cannot be made, the settings are wrong or the database is not reached */
export async function loadBacking(env: Env, log: Log): Promise<Backing> {
  const folder = makeFolder(dataFolder(env))
  const file = './answerer.ts'
  const { createAnswerer } = (await import(file)) as { createAnswerer: CreateAnswerer }
  return createAnswerer({ dataFolder: folder, databaseUrl: env['DATABASE_URL'] || undefined, log })
}
