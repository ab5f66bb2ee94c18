/** Starting and stopping as `npm start` does: tokens, both platforms in one process, health, signals, platforms that are down. */
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { until } from '../support/backing.ts'
import { BOT_USER, startDiscordServer, TOKEN } from '../support/discord-server.ts'
import { freePort } from '../support/http.ts'
import { type Child, runProgram } from '../support/process.ts'
import { BOT, startSlackServer, TOKENS } from '../support/slack-server.ts'

const PROGRAM = path.join(import.meta.dirname, '../support/start-echo.ts')
const open: (() => Promise<unknown> | unknown)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

function start(env: Record<string, string>, dotEnv?: string): Child {
  const cwd = mkdtempSync(path.join(tmpdir(), 'kneepad-start-'))
  if (dotEnv !== undefined) writeFileSync(path.join(cwd, '.env'), dotEnv)
  const child = runProgram(PROGRAM, env, cwd)
  open.push(() => child.kill('SIGKILL'))
  return child
}

const said = (child: Child, msg: string | RegExp) =>
  child.logs().find((line) => (typeof msg === 'string' ? line['msg'] === msg : msg.test(String(line['msg']))))

async function slackUp(port?: number) {
  const server = await startSlackServer(port === undefined ? {} : { port })
  open.push(() => server.stop())
  return server
}

async function discordUp(port?: number) {
  const server = await startDiscordServer(port === undefined ? {} : { port })
  open.push(() => server.stop())
  return server
}

const slackEnv = (apiUrl: string) => ({
  SLACK_BOT_TOKEN: TOKENS.bot,
  SLACK_APP_TOKEN: TOKENS.app,
  SLACK_API_URL: apiUrl,
})
const discordEnv = (apiUrl: string) => ({ DISCORD_TOKEN: TOKEN, DISCORD_API_URL: apiUrl })

test('both platforms run in one process, the health page tells, and SIGTERM finishes what is in flight', async () => {
  const [slack, discord, port] = [await slackUp(), await discordUp(), await freePort()]
  const child = start({ ...slackEnv(slack.apiUrl), ...discordEnv(discord.apiUrl), HEALTH_PORT: String(port) })
  await until('both connected', () => child.logs().filter((line) => line['msg'] === 'connected').length === 2)
  const page = await fetch(`http://127.0.0.1:${port}/healthz`)
  expect(page.status).toBe(200)
  expect(await page.json()).toEqual({ ok: true, adapters: { slack: 'connected', discord: 'connected' } })
  expect((await fetch(`http://127.0.0.1:${port}/`)).status).toBe(404)
  // An envelope that Bolt itself stumbles over: a stray rejection, which ends nothing.
  slack.push('events_api', null)
  slack.pushEvent(slack.messageEvent(`<@${BOT.user}> slow 700`))
  discord.say(`<@${BOT_USER}> slow 700`)
  await until('both begun', () => child.logs().filter((line) => line['msg'] === 'begun').length === 2)
  const asked = performance.now()
  child.kill('SIGTERM')
  expect(await child.ended).toEqual({ code: 0, signal: null })
  expect(performance.now() - asked).toBeLessThan(5000)
  expect(slack.posts().map((post) => post['text'])).toEqual(['heard: slow 700'])
  expect(discord.posts().map((post) => post.body['content'])).toEqual(['heard: slow 700'])
  expect(said(child, 'stray rejection')).toBeTruthy()
  const all = child.lines.join('\n')
  for (const secret of [...Object.values(TOKENS), TOKEN]) expect(all).not.toContain(secret)
})

test('tokens come from .env too, and a platform without any is left out', async () => {
  const discord = await discordUp()
  const child = start({}, `DISCORD_TOKEN=${TOKEN}\nDISCORD_API_URL=${discord.apiUrl}\nSLACK_BOT_TOKEN=\n`)
  await until('connected', () => said(child, 'connected'))
  child.kill('SIGINT')
  expect((await child.ended).code).toBe(0)
})

test('platforms that are down at start are tried again with growing pauses, one line each, and do not hold up the other', async () => {
  const [slackPort, discord] = [await freePort(), await discordUp()]
  const child = start({ ...slackEnv(`http://127.0.0.1:${slackPort}/api/`), ...discordEnv(discord.apiUrl) })
  await until('discord', () => said(child, 'connected')?.['platform'] === 'discord')
  await until('two tries', () => child.logs().filter((line) => /trying again/.test(String(line['msg']))).length >= 2)
  const tries = child.logs().filter((line) => /trying again/.test(String(line['msg'])))
  expect(Number(tries[1]!['ms'])).toBeGreaterThan(Number(tries[0]!['ms']))
  expect(child.logs().filter((line) => line['level'] === 50)).toEqual([])
  const slack = await slackUp(slackPort)
  await until('slack', () => slack.connected(), 20_000)
  slack.pushEvent(slack.messageEvent(`<@${BOT.user}> hello`))
  await until('an answer', () => slack.posts()[0])
  child.kill('SIGTERM')
  expect((await child.ended).code).toBe(0)
})

test('SIGTERM while nothing is reached ends at once', async () => {
  const [slackPort, discordPort] = [await freePort(), await freePort()]
  const child = start({
    ...slackEnv(`http://127.0.0.1:${slackPort}/api/`),
    ...discordEnv(`http://127.0.0.1:${discordPort}/api`),
  })
  await until('a try', () => said(child, /trying again/))
  child.kill('SIGTERM')
  expect((await child.ended).code).toBe(0)
})

test('a token the platform refuses is named with where to get one, and the program ends with 1', async () => {
  const [slack, discord] = [await slackUp(), await discordUp()]
  const child = start({
    ...slackEnv(slack.apiUrl),
    SLACK_BOT_TOKEN: 'xoxb-wrong-one',
    DISCORD_TOKEN: 'not-the-right-one',
    DISCORD_API_URL: discord.apiUrl,
  })
  expect((await child.ended).code).toBe(1)
  const left = child.logs().filter((line) => line['msg'] === 'left out')
  expect(left.find((line) => line['platform'] === 'slack')).toMatchObject({
    error: expect.stringContaining('SLACK_BOT_TOKEN'),
    where: expect.stringContaining('api.slack.com'),
  })
  expect(left.find((line) => line['platform'] === 'discord')).toMatchObject({
    error: expect.stringContaining('DISCORD_TOKEN'),
    where: expect.stringContaining('discord.com'),
  })
  expect(slack.connections()).toBe(0)
})

test('a wrong app token is refused by name', async () => {
  const slack = await slackUp()
  const child = start({ ...slackEnv(slack.apiUrl), SLACK_APP_TOKEN: 'xapp-wrong-one' })
  expect((await child.ended).code).toBe(1)
  expect(said(child, 'left out')).toMatchObject({ error: expect.stringContaining('SLACK_APP_TOKEN') })
})

test('missing and malformed tokens are named, and nothing is started with them', async () => {
  const half = start({ SLACK_BOT_TOKEN: 'xoxb-1-abc' })
  expect((await half.ended).code).toBe(1)
  expect(half.lines.join()).toMatch(/SLACK_APP_TOKEN is missing/)
  expect(half.lines.join()).toContain('App-Level Tokens')
  const swapped = start({ SLACK_BOT_TOKEN: 'xapp-1-abc', SLACK_APP_TOKEN: 'xoxb-1-abc' })
  expect((await swapped.ended).code).toBe(1)
  expect(swapped.lines.join()).toMatch(/SLACK_BOT_TOKEN does not begin with xoxb-/)
  expect(swapped.lines.join()).toMatch(/SLACK_APP_TOKEN does not begin with xapp-/)
})

test('two shards of Discord run in two processes and end with their manager', async () => {
  const discord = await discordUp()
  const child = start({ ...discordEnv(discord.apiUrl), DISCORD_SHARDS: '2' })
  await until('both shards', () => discord.sessions.size === 2, 30_000)
  await until('connected', () => said(child, 'connected') && child.logs().some((line) => line['shards'] === 2), 30_000)
  expect([...discord.sessions.values()].map((session) => session.shard).toSorted()).toEqual([
    [0, 2],
    [1, 2],
  ])
  discord.say(`<@${BOT_USER}> hello`)
  await until('an answer', () => discord.posts()[0])
  child.kill('SIGTERM')
  expect((await child.ended).code).toBe(0)
  await until('no socket', () => [...discord.sessions.values()].every((one) => one.socket?.readyState === 3))
}, 60_000)
