/** The flags of `ask`. */
import { parseArgs } from 'node:util'

/** A clock that stands still: the instant with its offset, and the zone where one was named. */
export type FixedClock = { readonly now: string; readonly zone: string | null }

export type Flags = {
  readonly json: boolean
  readonly channel: string
  /** Null: the machine's clock. */
  readonly clock: FixedClock | null
  readonly data: string | null
  readonly out: string | null
  readonly message: string | null
}

const USAGE =
  'usage: npm run -s ask -- [--json] [--channel NAME] [--data FILE] [--now ISO8601] [--out DIR] [MESSAGE...]'
const OFFSET = /(Z|[+-]\d\d(?::?\d\d)?)(?:\[([^\]]+)\])?$/i

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
  const clock = values.now === undefined ? null : clockOf(values.now)
  if (values.now !== undefined && clock === null)
    return wrong(`--now ${values.now}: not an ISO 8601 time with offset, such as 2026-03-10T16:30:00-05:00`)
  const { json = false, channel = 'terminal', data = null, out = null } = values
  return {
    ok: true,
    value: { json, channel, clock, data, out, message: positionals.length > 0 ? positionals.join(' ') : null },
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

/** The instant in one spelling, at its own offset or in the zone in brackets; null where it is none. */
function clockOf(text: string): FixedClock | null {
  const [, offset, zone] = OFFSET.exec(text) ?? []
  if (offset === undefined) return null
  try {
    const at = zone
      ? Temporal.ZonedDateTime.from(text)
      : Temporal.Instant.from(text).toZonedDateTimeISO(/^z$/i.test(offset) ? 'UTC' : offset)
    return { now: at.toString({ timeZoneName: 'never' }), zone: zone === undefined ? null : at.timeZoneId }
  } catch {
    return null
  }
}
