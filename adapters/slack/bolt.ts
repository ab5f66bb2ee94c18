/** Bolt, loaded late, with its lines in our log and its clients set up for a bot that must not lose an answer. */
import type { Logger, LogLevel } from '@slack/bolt'
import { brief, type Log } from '../logging.ts'
import { SLACK_NAME } from './channel.ts'

export const loadBolt = () => import('@slack/bolt')
export type Bolt = Awaited<ReturnType<typeof loadBolt>>

/** Bolt's own lines: `loud` ones (a bad signature) as they are, its chatter at debug level. */
export function boltLogger(log: Log, level: LogLevel, loud: boolean): Logger {
  const text = (parts: unknown[]) => parts.map((part) => (part instanceof Error ? brief(part) : String(part))).join(' ')
  const from = { platform: SLACK_NAME }
  return {
    debug: (...parts) => log.trace(from, text(parts)),
    info: (...parts) => log.debug(from, text(parts)),
    warn: (...parts) => (loud ? log.warn(from, text(parts)) : log.debug(from, text(parts))),
    error: (...parts) => (loud ? log.error(from, text(parts)) : log.debug(from, text(parts))),
    setLevel: () => {},
    getLevel: () => level,
    setName: () => {},
  }
}

const address = (apiUrl: string | undefined) => (apiUrl === undefined ? {} : { slackApiUrl: apiUrl })

/** For calls that we repeat ourselves, with a line for each. */
export const onceOptions = (apiUrl: string | undefined, logger: Logger) => ({
  ...address(apiUrl),
  logger,
  retryConfig: { retries: 0 },
  timeout: 10_000,
})

/** For answers: rate limits and failures are waited out, about ten minutes long. */
export const patientOptions = (apiUrl: string | undefined, logger: Logger) => ({
  ...address(apiUrl),
  logger,
  retryConfig: { retries: 30, factor: 1.5, minTimeout: 300, maxTimeout: 30_000, randomize: true },
  timeout: 15_000,
})
