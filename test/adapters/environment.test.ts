/** Tokens and settings from the environment: what is left out, what is named, what is accepted. */
import { expect, test } from 'vitest'
import { readEnvironment } from '../../adapters/environment.ts'
import { dataFolder } from '../../adapters/folders.ts'
import { healthPage } from '../../adapters/health.ts'
import { createLog } from '../../adapters/logging.ts'

const socket = { SLACK_BOT_TOKEN: 'xoxb-1-a', SLACK_APP_TOKEN: 'xapp-1-a' }
const named = (env: Record<string, string>) => readEnvironment(env).complaints.map((one) => one.variable)

test('nothing set is no complaint', () => {
  expect(readEnvironment({ SLACK_BOT_TOKEN: '', DISCORD_TOKEN: '  ' })).toEqual({
    slack: null,
    discord: null,
    health: null,
    complaints: [],
    logLevel: 'info',
    secrets: [],
  })
})

test('the app token means Socket Mode, the signing secret alone HTTP', () => {
  expect(readEnvironment(socket).slack?.mode).toEqual({ is: 'socket', appToken: 'xapp-1-a' })
  expect(readEnvironment({ ...socket, SLACK_SIGNING_SECRET: 'abcdef0123' }).slack?.mode.is).toBe('socket')
  const http = { SLACK_BOT_TOKEN: 'xoxb-1-a', SLACK_SIGNING_SECRET: 'abcdef0123' }
  expect(readEnvironment(http).slack?.mode).toEqual({ is: 'http', signingSecret: 'abcdef0123', port: 3000 })
  expect(readEnvironment({ ...http, PORT: '8080' }).slack?.mode).toMatchObject({ port: 8080 })
  expect(named({ ...http, PORT: '80800' })).toEqual(['PORT'])
})

test.each([
  [{ SLACK_BOT_TOKEN: 'xoxb-1-a' }, ['SLACK_APP_TOKEN']],
  [{ SLACK_APP_TOKEN: 'xapp-1-a' }, ['SLACK_BOT_TOKEN']],
  [{ SLACK_SIGNING_SECRET: 'abcdef0123' }, ['SLACK_BOT_TOKEN']],
  [{ SLACK_BOT_TOKEN: 'xapp-1-a', SLACK_APP_TOKEN: 'xoxb-1-a' }, ['SLACK_BOT_TOKEN', 'SLACK_APP_TOKEN']],
  [{ SLACK_BOT_TOKEN: 'xoxb-1-a', SLACK_SIGNING_SECRET: 'xapp-1-abcdef' }, ['SLACK_SIGNING_SECRET']],
  [{ ...socket, SLACK_API_URL: 'nonsense' }, ['SLACK_API_URL']],
  [{ DISCORD_TOKEN: '123456789012345678' }, ['DISCORD_TOKEN']],
  [{ DISCORD_TOKEN: 'xoxb-1-abcdef' }, ['DISCORD_TOKEN']],
  [{ DISCORD_TOKEN: 'Bot abc.def.ghi' }, ['DISCORD_TOKEN']],
  [{ DISCORD_TOKEN: 'abc.def.ghi', DISCORD_SHARDS: 'many' }, ['DISCORD_SHARDS']],
  [{ HEALTH_PORT: '-1' }, ['HEALTH_PORT']],
])('%j complains of %j', (env, variables) => {
  const plan = readEnvironment(env)
  expect(plan.complaints.map((one) => one.variable)).toEqual(variables)
  for (const complaint of plan.complaints) {
    expect(complaint.where.length).toBeGreaterThan(10)
    expect(JSON.stringify(complaint)).not.toMatch(/xoxb-1|xapp-1|abc\.def|123456789012345678/)
  }
})

test('one broken platform does not take the other with it', () => {
  const plan = readEnvironment({ SLACK_BOT_TOKEN: 'xoxb-1-a', DISCORD_TOKEN: 'abc.def.ghi', DISCORD_SHARDS: 'auto' })
  expect(plan.slack).toBeNull()
  expect(plan.discord).toEqual({ token: 'abc.def.ghi', apiUrl: undefined, shards: 'auto' })
})

test('addresses end as the libraries want them', () => {
  const plan = readEnvironment({
    ...socket,
    SLACK_API_URL: 'http://127.0.0.1:1/api',
    DISCORD_TOKEN: '"abc.def.ghi"',
    DISCORD_API_URL: 'http://127.0.0.1:2/api/',
  })
  expect(plan.slack?.apiUrl).toBe('http://127.0.0.1:1/api/')
  expect(plan.discord).toMatchObject({ token: 'abc.def.ghi', apiUrl: 'http://127.0.0.1:2/api' })
})

test('the data folder is where each system keeps such', () => {
  expect(dataFolder({ KNEEPAD_DATA: '/srv/k' }, 'linux', '/home/a')).toBe('/srv/k')
  expect(dataFolder({}, 'linux', '/home/a')).toBe('/home/a/.local/share/kneepad')
  expect(dataFolder({ XDG_DATA_HOME: '/data' }, 'linux', '/home/a')).toBe('/data/kneepad')
  expect(dataFolder({ XDG_DATA_HOME: 'relative' }, 'linux', '/home/a')).toBe('/home/a/.local/share/kneepad')
  expect(dataFolder({}, 'darwin', '/Users/a')).toBe('/Users/a/Library/Application Support/kneepad')
})

test('the health page is 200 only while every adapter is connected', () => {
  const one = (name: string, status: 'connected' | 'connecting') => ({ name, status: () => status })
  expect(healthPage([one('slack', 'connected'), one('discord', 'connecting')])).toEqual({
    status: 503,
    body: '{"ok":false,"adapters":{"slack":"connected","discord":"connecting"}}',
  })
  expect(healthPage([]).status).toBe(503)
})

test('secrets are struck out of every line, and an unknown level is said', () => {
  const lines: string[] = []
  const log = createLog('loud', ['xoxb-secret-1'], (line) => void lines.push(line))
  log.info({ error: 'bad xoxb-secret-1' }, 'with xoxb-secret-1')
  expect(lines).toHaveLength(2)
  expect(lines[0]).toContain('unknown log level')
  expect(lines[1]).not.toContain('secret')
})
