/** What the environment asks for: which platforms, with which tokens, and what is missing or wrong with them. */

export type Env = Readonly<Record<string, string | undefined>>

export type SlackPlan = {
  readonly botToken: string
  readonly mode:
    | { readonly is: 'socket'; readonly appToken: string }
    | { readonly is: 'http'; readonly signingSecret: string; readonly port: number }
  readonly apiUrl: string | undefined
}

export type DiscordPlan = {
  readonly token: string
  readonly apiUrl: string | undefined
  /** Null: one process. */
  readonly shards: number | 'auto' | null
}

/** One thing that is missing or wrong: the variable, what is wrong with it, and where a right one comes from. */
export type Complaint = { readonly variable: string; readonly wrong: string; readonly where: string }

export type Plan = {
  readonly slack: SlackPlan | null
  readonly discord: DiscordPlan | null
  readonly health: { readonly host: string; readonly port: number } | null
  readonly complaints: readonly Complaint[]
  readonly logLevel: string
  /** Struck out of every log line. */
  readonly secrets: readonly string[]
}

/** Where each token comes from, by the platforms' own pages. */
export const WHERE = {
  SLACK_BOT_TOKEN: 'api.slack.com/apps, your app, OAuth & Permissions, Bot User OAuth Token (xoxb-…)',
  SLACK_APP_TOKEN: 'api.slack.com/apps, your app, Basic Information, App-Level Tokens, with connections:write (xapp-…)',
  SLACK_SIGNING_SECRET: 'api.slack.com/apps, your app, Basic Information, App Credentials, Signing Secret',
  DISCORD_TOKEN: 'discord.com/developers/applications, your application, Bot, Reset Token',
  DISCORD_SHARDS: 'a whole number from 1, or auto',
  PORT: 'a free port from 1 to 65535',
  HEALTH_PORT: 'a free port from 1 to 65535',
  SLACK_API_URL: 'only for tests: an address that ends in /api/',
  DISCORD_API_URL: 'only for tests: an address that ends in /api',
} as const
type Variable = keyof typeof WHERE

const complain = (variable: Variable, wrong: string): Complaint => ({ variable, wrong, where: WHERE[variable] })

type Reading = { readonly get: (name: string) => string | undefined; readonly complaints: Complaint[] }

/** Set, trimmed and without the quotes some put around it; an empty value counts as none. */
const reader = (env: Env) => (name: string) => {
  const value = env[name]?.trim().replace(/^(["'])(.*)\1$/, '$2')
  return value === '' ? undefined : value
}

/** The value when it has the right look, else undefined and a complaint. */
function checked(reading: Reading, variable: Variable, right: RegExp, wrong: string): string | undefined {
  const value = reading.get(variable)
  if (value === undefined || right.test(value)) return value
  reading.complaints.push(complain(variable, wrong))
  return undefined
}

function port(reading: Reading, variable: 'PORT' | 'HEALTH_PORT'): number | undefined {
  const value = reading.get(variable)
  if (value === undefined) return undefined
  const number = Number(value)
  if (/^\d+$/.test(value) && number >= 1 && number <= 65_535) return number
  reading.complaints.push(complain(variable, `is no port: ${value.slice(0, 20)}`))
  return undefined
}

const address = (reading: Reading, variable: 'SLACK_API_URL' | 'DISCORD_API_URL'): string | undefined => {
  const value = reading.get(variable)
  if (value === undefined) return undefined
  if (!URL.canParse(value) || !/^https?:$/.test(new URL(value).protocol)) {
    reading.complaints.push(complain(variable, 'is no http address'))
    return undefined
  }
  const bare = value.replace(/\/+$/, '')
  return variable === 'SLACK_API_URL' ? `${bare}/` : bare
}

function slackPlan(reading: Reading): SlackPlan | null {
  const { get, complaints } = reading
  const names = ['SLACK_BOT_TOKEN', 'SLACK_APP_TOKEN', 'SLACK_SIGNING_SECRET'] as const
  if (names.every((name) => get(name) === undefined)) return null
  const before = complaints.length
  const botToken = checked(reading, 'SLACK_BOT_TOKEN', /^(xoxb-|xoxe\.xoxb-)\S+$/, 'does not begin with xoxb-')
  const appToken = checked(reading, 'SLACK_APP_TOKEN', /^xapp-\S+$/, 'does not begin with xapp-')
  const signingSecret = checked(reading, 'SLACK_SIGNING_SECRET', /^(?!xox|xapp)\S{6,}$/, 'is no signing secret')
  const apiUrl = address(reading, 'SLACK_API_URL')
  if (get('SLACK_BOT_TOKEN') === undefined) complaints.push(complain('SLACK_BOT_TOKEN', 'is missing'))
  if (get('SLACK_APP_TOKEN') === undefined && get('SLACK_SIGNING_SECRET') === undefined)
    complaints.push(
      complain('SLACK_APP_TOKEN', 'is missing (or, with a public address, SLACK_SIGNING_SECRET and PORT)'),
    )
  const httpPort = appToken === undefined ? (port(reading, 'PORT') ?? 3000) : 0
  if (complaints.length > before || botToken === undefined) return null
  if (appToken !== undefined) return { botToken, mode: { is: 'socket', appToken }, apiUrl }
  return signingSecret === undefined ? null : { botToken, mode: { is: 'http', signingSecret, port: httpPort }, apiUrl }
}

function discordPlan(reading: Reading): DiscordPlan | null {
  const { get, complaints } = reading
  const before = complaints.length
  // The look of a token is not published: only what surely is none is refused here, the rest by Discord.
  const token = checked(
    reading,
    'DISCORD_TOKEN',
    /^(?!xox|xapp|Bot\s|\d{17,20}$)\S{6,}$/,
    'is no bot token (an application id, a Slack token, or with spaces in it)',
  )
  const given = get('DISCORD_SHARDS')
  if (given !== undefined && given !== 'auto' && !/^[1-9]\d{0,4}$/.test(given))
    complaints.push(complain('DISCORD_SHARDS', `is neither: ${given.slice(0, 20)}`))
  const apiUrl = address(reading, 'DISCORD_API_URL')
  if (token === undefined || complaints.length > before) return null
  return { token, apiUrl, shards: given === undefined ? null : given === 'auto' ? 'auto' : Number(given) }
}

/** Reads everything the adapters need. A platform without any token is left out, which is no complaint. */
export function readEnvironment(env: Env): Plan {
  const reading: Reading = { get: reader(env), complaints: [] }
  const slack = slackPlan(reading)
  const discord = discordPlan(reading)
  const healthPort = port(reading, 'HEALTH_PORT')
  const secretNames = ['SLACK_BOT_TOKEN', 'SLACK_APP_TOKEN', 'SLACK_SIGNING_SECRET', 'DISCORD_TOKEN', 'DATABASE_URL']
  return {
    slack,
    discord,
    health: healthPort === undefined ? null : { host: reading.get('HEALTH_HOST') ?? '127.0.0.1', port: healthPort },
    complaints: reading.complaints,
    logLevel: reading.get('KNEEPAD_LOG')?.toLowerCase() ?? 'info',
    secrets: secretNames.flatMap((name) => reading.get(name) ?? []),
  }
}
