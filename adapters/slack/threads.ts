/** Threads the bot has answered in: a reply there needs no mention, after a restart too. */
import type { Backing } from '../contract.ts'
import { brief, type Log } from '../logging.ts'

export type Threads = {
  readonly remember: (channel: string, ts: string) => void
  readonly known: (channel: string, ts: string) => Promise<boolean>
}

const LIMIT = 2000

export function createThreads(backing: Backing, log: Log): Threads {
  const recent = new Set<string>()
  const note = (id: string) => {
    recent.delete(id)
    recent.add(id)
    if (recent.size > LIMIT) recent.delete(recent.values().next().value as string)
  }

  const remember = (channel: string, ts: string): void => {
    const id = `slack-thread:${channel}:${ts}`
    if (recent.has(id)) return
    note(id)
    backing.keep(id, '1').catch((error: unknown) => log.error({ error: brief(error) }, 'a thread was not remembered'))
  }

  const known = async (channel: string, ts: string): Promise<boolean> => {
    const id = `slack-thread:${channel}:${ts}`
    if (recent.has(id)) return true
    const kept = await backing.recall(id).catch((error: unknown) => {
      log.error({ error: brief(error) }, 'a thread could not be looked up')
      return null
    })
    if (kept !== null) note(id)
    return kept !== null
  }

  return { remember, known }
}
