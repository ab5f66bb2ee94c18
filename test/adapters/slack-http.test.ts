/** Slack over signed HTTP: the same handlers, and what is refused. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { healthPage } from '../../adapters/health.ts'
import { createLog } from '../../adapters/logging.ts'
import { createSlack } from '../../adapters/slack/connect.ts'
import { testBacking, until } from '../support/backing.ts'
import { freePort } from '../support/http.ts'
import { BOT, startSlackServer, TOKENS } from '../support/slack-server.ts'

const open: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

async function scene(slackPort?: number) {
  const server = await startSlackServer(slackPort === undefined ? {} : { port: slackPort })
  open.push(() => server.stop())
  const port = await freePort()
  const backing = testBacking()
  const lines: string[] = []
  const adapter = createSlack(
    {
      botToken: TOKENS.bot,
      mode: { is: 'http', signingSecret: TOKENS.secret, port },
      apiUrl: server.apiUrl,
      health: () => healthPage([adapter]),
    },
    backing,
    createLog('info', Object.values(TOKENS), (line) => void lines.push(line)),
  )
  open.push(() => adapter.stop())
  await adapter.start()
  return {
    server,
    backing,
    lines,
    adapter,
    url: `http://127.0.0.1:${port}/slack/events`,
    base: `http://127.0.0.1:${port}`,
  }
}

test('events, commands, buttons and forms come in signed, and are acknowledged at once', async () => {
  const { server, backing, url, base } = await scene()
  const event = server.eventBody(server.messageEvent(`<@${BOT.user}> 10x13`), BOT.team)
  const started = performance.now()
  expect((await server.postSigned(url, event)).status).toBe(200)
  expect(performance.now() - started).toBeLessThan(3000)
  await until('the mention', () => server.posts()[0])
  const retry = { 'x-slack-retry-num': '1', 'x-slack-retry-reason': 'http_timeout' }
  expect((await server.postSigned(url, event, { headers: retry })).status).toBe(200)
  expect((await server.postSigned(url, server.commandBody('8x48'), { form: true })).status).toBe(200)
  await until('the command', () => server.posts()[1])
  const press = { payload: JSON.stringify(server.actionBody({ action_id: 'offer:0', value: 'none:0' })) }
  expect((await server.postSigned(url, press, { form: true })).status).toBe(200)
  await until('the press', () => server.posts()[2])
  expect(backing.heard.map((one) => one.message.text)).toEqual(['10x13', '8x48'])
  const challenge = await server.postSigned(url, { type: 'url_verification', challenge: 'abc' })
  expect(await challenge.json()).toEqual({ challenge: 'abc' })
  const page = await fetch(`${base}/healthz`)
  expect([page.status, await page.json()]).toEqual([200, { ok: true, adapters: { slack: 'connected' } }])
})

test('tampered, unsigned, old and wrongly signed requests are refused and logged, and nothing runs', async () => {
  const { server, backing, lines, url } = await scene()
  const event = server.eventBody(server.messageEvent(`<@${BOT.user}> 10x13`), BOT.team)
  const old = Math.floor(Date.now() / 1000) - 301
  expect((await server.postSigned(url, event, { tamper: true })).status).toBe(401)
  expect((await server.postSigned(url, event, { secret: 'f'.repeat(32) })).status).toBe(401)
  expect((await server.postSigned(url, event, { timestamp: old })).status).toBe(401)
  expect((await fetch(url, { method: 'POST', body: JSON.stringify(event) })).status).toBe(401)
  expect((await server.postSigned(url, '{broken', {})).status).toBe(400)
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(backing.heard).toEqual([])
  expect(server.posts()).toEqual([])
  const warned = lines.map((line) => JSON.parse(line)).filter((line) => line.level >= 40)
  expect(warned.length).toBeGreaterThanOrEqual(5)
  expect(lines.join()).not.toContain(TOKENS.secret)
})

test('what comes in before the Web API is reached is answered once, when it is', async () => {
  const slackPort = await freePort()
  const port = await freePort()
  const backing = testBacking()
  const adapter = createSlack(
    {
      botToken: TOKENS.bot,
      mode: { is: 'http', signingSecret: TOKENS.secret, port },
      apiUrl: `http://127.0.0.1:${slackPort}/api/`,
      health: () => healthPage([adapter]),
    },
    backing,
    createLog('silent', [], () => {}),
  )
  open.push(() => adapter.stop())
  const started = adapter.start()
  const base = `http://127.0.0.1:${port}`
  const page = await until(
    'the page',
    () => adapter.status() === 'connecting' && fetch(`${base}/healthz`).catch(() => null),
  )
  expect((await page)?.status ?? 503).toBe(503)
  await new Promise((resolve) => setTimeout(resolve, 300))
  const server = await startSlackServer({ port: slackPort })
  open.push(() => server.stop())
  const event = server.eventBody(server.messageEvent(`<@${BOT.user}> early`), BOT.team)
  const posting = [server.postSigned(`${base}/slack/events`, event), server.postSigned(`${base}/slack/events`, event)]
  await started
  for (const response of await Promise.all(posting)) expect(response.status).toBe(200)
  await until('the answer', () => server.posts()[0])
  expect(backing.heard).toHaveLength(1)
})

test('the manifest asks for the events it is sent and the scopes they need, and nothing else', () => {
  const file = path.join(import.meta.dirname, '../../config/slack-manifest.json')
  const manifest = JSON.parse(readFileSync(file, 'utf8'))
  // Each event with its scope, from Slack's event reference; the rest are chat.postMessage, uploads, the command, and what photos
  // a message brings.
  const needed: Record<string, string> = {
    app_mention: 'app_mentions:read',
    'message.channels': 'channels:history',
    'message.groups': 'groups:history',
    'message.im': 'im:history',
    'message.mpim': 'mpim:history',
  }
  const events = manifest.settings.event_subscriptions.bot_events as string[]
  expect(events.toSorted()).toEqual([...Object.keys(needed), 'app_home_opened'].toSorted())
  expect(manifest.oauth_config.scopes.bot.toSorted()).toEqual(
    [...Object.values(needed), 'chat:write', 'commands', 'files:read', 'files:write'].toSorted(),
  )
  expect(manifest.oauth_config.scopes.user).toBeUndefined()
  expect(manifest.features.slash_commands[0].command).toBe('/kneepad')
  expect(manifest.settings).toMatchObject({ socket_mode_enabled: true, interactivity: { is_enabled: true } })
})
