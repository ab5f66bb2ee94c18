/** A platform that goes away whole and comes back: the adapters find it again by themselves, without a flood of lines. */
import { expect, test } from 'vitest'
import { createDiscord } from '../../adapters/discord/connect.ts'
import { createLog } from '../../adapters/logging.ts'
import { createSlack } from '../../adapters/slack/connect.ts'
import { testBacking, until } from '../support/backing.ts'
import { BOT_USER, startDiscordServer, TOKEN } from '../support/discord-server.ts'
import { BOT, startSlackServer, TOKENS } from '../support/slack-server.ts'

const AWAY_MS = 8000
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

test.concurrent('Slack', async () => {
  const first = await startSlackServer()
  const lines: string[] = []
  const adapter = createSlack(
    { botToken: TOKENS.bot, mode: { is: 'socket', appToken: TOKENS.app }, apiUrl: first.apiUrl },
    testBacking(),
    createLog('info', [], (line) => void lines.push(line)),
  )
  await adapter.start()
  await first.stop()
  await until('the loss', () => adapter.status() === 'connecting')
  await pause(AWAY_MS)
  expect(lines.length).toBeLessThan(12)
  const second = await startSlackServer({ port: first.port })
  await until('the return', () => adapter.status() === 'connected', 40_000)
  second.pushEvent(second.messageEvent(`<@${BOT.user}> back`))
  await until('an answer', () => second.posts()[0])
  await adapter.stop()
  await second.stop()
}, 90_000)

test.concurrent('Discord', async () => {
  const first = await startDiscordServer()
  const lines: string[] = []
  const adapter = createDiscord(
    { token: TOKEN, apiUrl: first.apiUrl },
    testBacking(),
    createLog('info', [], (line) => void lines.push(line)),
  )
  await adapter.start()
  await first.stop()
  await until('the loss', () => adapter.status() === 'connecting')
  await pause(AWAY_MS)
  expect(lines.length).toBeLessThan(12)
  const second = await startDiscordServer({ port: first.port })
  await until('the return', () => adapter.status() === 'connected', 40_000)
  second.say(`<@${BOT_USER}> back`)
  await until('an answer', () => second.posts()[0])
  await adapter.stop()
  await second.stop()
}, 90_000)
