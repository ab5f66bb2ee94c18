/** The flags of `ask`. */
import { parseArgs } from 'node:util'

export type Flags = {
  readonly json: boolean
  readonly channel: string
  /** ISO 8601 with offset, or null: the machine's clock. */
  readonly now: string | null
  readonly data: string | null
  readonly out: string | null
  readonly message: string | null
}

const USAGE =
  'usage: npm run -s ask -- [--json] [--channel NAME] [--data FILE] [--now ISO8601] [--out DIR] [MESSAGE...]'
const OFFSET = /(?:Z|[+-]\d\d:?\d\d)(?:\[[^\]]+\])?$/

type Read = { readonly ok: true; readonly value: Flags } | { readonly ok: false; readonly message: string }
const wrong = (what: string): Read => ({ ok: false, message: `${what}\n${USAGE}` })

/** @returns the flags, or what is wrong with them and how they go */
export function readFlags(args: readonly string[]): Read {
  let parsed: ReturnType<typeof parse>
  try {
    parsed = parse(args)
  } catch (error) {
    return wrong((error as Error).message.split('\n')[0])
  }
  const { values, positionals } = parsed
  for (const name of ['channel', 'now', 'data', 'out'] as const)
    if (values[name] === '') return wrong(`--${name} needs a value`)
  if (values.now !== undefined && !isInstant(values.now))
    return wrong(`--now ${values.now}: not an ISO 8601 time with offset, such as 2026-03-10T16:30:00-05:00`)
  const { json = false, channel = 'terminal', now = null, data = null, out = null } = values
  return {
    ok: true,
    value: { json, channel, now, data, out, message: positionals.length > 0 ? positionals.join(' ') : null },
  }
}

const parse = (args: readonly string[]) =>
  parseArgs({
    args: [...args],
    allowPositionals: true,
    options: {
      json: { type: 'boolean' },
      channel: { type: 'string' },
      now: { type: 'string' },
      data: { type: 'string' },
      out: { type: 'string' },
    },
  })

function isInstant(text: string): boolean {
  if (!OFFSET.test(text)) return false
  try {
    Temporal.Instant.from(text)
    return true
  } catch {
    return false
  }
}
