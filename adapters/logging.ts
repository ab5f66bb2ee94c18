/** Logs by pino: one line an answered message, never its text unless the debug level is asked for, never a token. */
import { createRequire } from 'node:module'
import type { Logger } from 'pino'

export type Log = Logger

const require = createRequire(import.meta.url)

/** `info` unless KNEEPAD_LOG names another level; `secrets` are struck out of every line. */
export function createLog(level: string, secrets: readonly string[], write: (line: string) => void): Log {
  const { pino, levels } = require('pino') as typeof import('pino')
  const known = level === 'silent' || level in levels.values
  const scrub = (line: string): string =>
    secrets.filter((secret) => secret.length > 5).reduce((text, secret) => text.replaceAll(secret, '[token]'), line)
  const log = pino(
    { level: known ? level : 'info', base: null, timestamp: pino.stdTimeFunctions.isoTime },
    { write: (line: string) => write(scrub(line)) },
  )
  if (!known) log.warn({ KNEEPAD_LOG: level, levels: Object.keys(levels.values) }, 'unknown log level, taking info')
  return log
}

/** An error as a few words: its code or name and the first line of its message. */
export function brief(error: unknown): string {
  if (!(error instanceof Error)) return String(error).split('\n')[0]!.slice(0, 300)
  const cause = error.cause instanceof Error ? ` (${error.cause.message.split('\n')[0]})` : ''
  const named = 'code' in error && typeof error.code === 'string' && !error.message.includes(error.code)
  const code = named ? `${error.code}: ` : ''
  return `${code}${error.message.split('\n')[0]}${cause}`.slice(0, 300)
}
