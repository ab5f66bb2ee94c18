/** A platform that takes a request and does not answer in time: posted all the same, and once where the platform can tell. */
import { webApi } from '@slack/bolt'
import { REST } from 'discord.js'
import { expect, test } from 'vitest'
import { createPoster as discordPoster } from '../../adapters/discord/post.ts'
import { createLog } from '../../adapters/logging.ts'
import { createPoster as slackPoster } from '../../adapters/slack/post.ts'
import { replyOf, testBacking } from '../support/backing.ts'
import { CHANNEL, startDiscordServer, TOKEN } from '../support/discord-server.ts'
import { startSlackServer, TOKENS } from '../support/slack-server.ts'

const silent = createLog('silent', [], () => {})
const never = new AbortController().signal
const shown = { reply: replyOf(), key: null }

test('Slack', async () => {
  const server = await startSlackServer()
  server.failures.push({ match: /chat/, times: 3, status: 200, body: '{"ok":true}', delayMs: 2000 })
  const client = new webApi.WebClient(TOKENS.bot, {
    slackApiUrl: server.apiUrl,
    timeout: 700,
    retryConfig: { retries: 1, minTimeout: 5 },
  })
  await slackPoster(client, testBacking(), silent, never).reply({ channel: 'C1' }, shown)
  expect(server.posts()).toHaveLength(1)
  await server.stop()
})

test('Discord', async () => {
  const server = await startDiscordServer()
  server.failures.push({ match: /messages/, times: 3, status: 200, body: '{}', delayMs: 2000 })
  const rest = new REST({ api: server.apiUrl, timeout: 700, retries: 1 }).setToken(TOKEN)
  await discordPoster(rest, testBacking(), silent, never).reply(
    { is: 'message', channel: CHANNEL, replyTo: '7' },
    shown,
  )
  expect(server.posts().map((post) => post.body['nonce'])).toEqual(['7'])
  await server.stop()
})
