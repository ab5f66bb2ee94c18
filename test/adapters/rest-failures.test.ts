/** REST failures by nock: what is tried again, what is given up, and that the bodies keep the platforms' rules. */
import { REST } from 'discord.js'
import nock from 'nock'
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest'
import { mayPass as discordMayPass, createPoster as discordPoster } from '../../adapters/discord/post.ts'
import { createLog } from '../../adapters/logging.ts'
import { mayPass as slackMayPass, createPoster as slackPoster } from '../../adapters/slack/post.ts'
import { replyOf, testBacking } from '../support/backing.ts'
import { blockProblems } from '../support/block-kit.ts'
import { messageProblems } from '../support/discord-schema.ts'
import { testWords } from '../support/words.ts'

beforeAll(() => nock.disableNetConnect())
afterEach(() => {
  const pending = nock.pendingMocks()
  nock.cleanAll()
  expect(pending).toEqual([])
})
afterAll(() => {
  nock.enableNetConnect()
  nock.restore()
})

const silent = createLog('silent', [], () => {})
const never = new AbortController().signal
const shown = { reply: replyOf({ answer: '9 boxes', details: ['64 tiles'] }), key: null }

async function slack() {
  const { webApi } = await import('@slack/bolt')
  const retryConfig = { retries: 2, minTimeout: 5, maxTimeout: 10 }
  const client = new webApi.WebClient('xoxb-1', {
    slackApiUrl: 'http://slack.test/api/',
    retryConfig,
    timeout: 2000,
    logger: {
      ...console,
      debug() {},
      info() {},
      warn() {},
      error() {},
      setLevel() {},
      getLevel: () => 'error' as never,
      setName() {},
    },
  })
  return slackPoster(client, testBacking(), silent, never)
}

const discord = () =>
  discordPoster(
    new REST({ api: 'http://discord.test/api', timeout: 2000, retries: 1 }).setToken('t'),
    testBacking(),
    silent,
    never,
  )

const slackSeen: Record<string, unknown>[] = []
const slackApi = (method: string) =>
  nock('http://slack.test').post(`/api/${method}`, (body: Record<string, string>) => {
    slackSeen.push(body)
    return true
  })
const discordSeen: unknown[] = []
const discordMessages = () =>
  nock('http://discord.test').post('/api/v10/channels/1/messages', (body) => {
    discordSeen.push(body)
    return true
  })

const LIMIT = { message: 'You are being rate limited.', retry_after: 0.05, global: false }

describe('Slack', () => {
  const ok = { ok: true, ts: '1.2' }
  test.each<[string, (api: nock.Interceptor) => unknown]>([
    ['a limit with its time', (api) => api.reply(429, '', { 'retry-after': '0' })],
    ['a limit without a time', (api) => api.reply(429, '')],
    ['a server error', (api) => api.reply(500, 'oops')],
    ['a proxy page', (api) => api.reply(200, '<html>bad gateway</html>')],
    ['a cut connection', (api) => api.replyWithError(new Error('ECONNRESET'))],
    ['an inner error of Slack', (api) => api.reply(200, { ok: false, error: 'internal_error' })],
  ])('%s is tried again until it is posted', async (_, fail) => {
    fail(slackApi('chat.postMessage'))
    slackApi('chat.postMessage').reply(200, ok)
    await (await slack()).reply({ channel: 'C1' }, shown)
    expect(blockProblems(JSON.parse(String(slackSeen.at(-1)?.['blocks'])))).toEqual([])
    expect(slackSeen.at(-1)).toMatchObject({ text: '9 boxes\n64 tiles', parse: 'none', mrkdwn: 'false' })
  })

  test.each(['channel_not_found', 'invalid_auth', 'msg_too_long', 'not_in_channel'])('%s is not', async (error) => {
    slackApi('chat.postMessage').reply(200, { ok: false, error })
    await expect((await slack()).reply({ channel: 'C1' }, shown)).rejects.toThrow(error)
  })

  test('a failed upload is told, and the answer stands', async () => {
    slackApi('chat.postMessage').reply(200, ok)
    slackApi('files.getUploadURLExternal').reply(200, { ok: false, error: 'missing_scope' })
    slackApi('chat.postMessage').reply(200, ok)
    const files = [{ name: 'order.csv', media_type: 'text/csv', text: 'a' }]
    await (await slack()).reply({ channel: 'C1' }, { reply: replyOf({ files }), key: null })
    expect(slackSeen.at(-1)).toMatchObject({ text: testWords.noFile, thread_ts: '1.2' })
  })

  test('its codes are told apart', () => {
    const error = (code: string) => Object.assign(new Error(code), { data: { error: code } })
    expect(slackMayPass(error('ratelimited'))).toBe(true)
    expect(slackMayPass(error('<!doctype html>'))).toBe(true)
    expect(slackMayPass(error('no_text'))).toBe(false)
    expect(slackMayPass(new Error('socket'))).toBe(true)
  })
})

describe('Discord', () => {
  test.each<[string, (api: nock.Interceptor) => unknown]>([
    ['a limit with its time', (api) => api.reply(429, LIMIT, { 'retry-after': '1' })],
    [
      'a global limit',
      (api) => api.reply(429, { ...LIMIT, global: true }, { 'retry-after': '1', 'x-ratelimit-global': 'true' }),
    ],
    ['a server error', (api) => api.times(2).reply(502, 'oops')],
    ['a broken body', (api) => api.reply(200, '<html>', { 'content-type': 'application/json' })],
    ['a cut connection', (api) => api.replyWithError(Object.assign(new Error('reset'), { code: 'ECONNRESET' }))],
  ])('%s is tried again until it is posted, with the same nonce', async (_, fail) => {
    const before = discordSeen.length
    fail(discordMessages())
    discordMessages().reply(200, { id: '5' })
    await discord().reply({ is: 'message', channel: '1', replyTo: '77' }, shown)
    const seen = discordSeen.slice(before)
    expect(new Set(seen.map((body) => JSON.stringify(body))).size).toBe(1)
    expect(seen.at(-1)).toMatchObject({ nonce: '77', enforce_nonce: true, allowed_mentions: { parse: [] } })
    expect(messageProblems(seen.at(-1))).toEqual([])
  })

  test.each([
    [400, { code: 50035, message: 'Invalid Form Body' }],
    [403, { code: 50001, message: 'Missing Access' }],
    [404, { code: 10003, message: 'Unknown Channel' }],
  ])('%i is given up', async (status, body) => {
    discordMessages().reply(status, body)
    await expect(discord().reply({ is: 'message', channel: '1' }, shown)).rejects.toThrow(body.message)
  })

  test('without the right to attach files the answer goes without them, and says so', async () => {
    discordMessages().reply(403, { code: 50013, message: 'Missing Permissions' })
    discordMessages().reply(200, { id: '5' })
    const files = [{ name: 'order.csv', media_type: 'text/csv', text: 'a' }]
    await discord().reply({ is: 'message', channel: '1' }, { reply: replyOf({ files }), key: null })
    expect(discordSeen.at(-1)).toMatchObject({ embeds: [{ description: testWords.noFile }] })
  })

  test('an acknowledgement that was lost is repeated; one that was taken counts', async () => {
    const callback = () => nock('http://discord.test').post('/api/v10/interactions/9/tok/callback')
    callback().times(2).reply(500, '')
    callback().reply(400, { code: 40060, message: 'Interaction has already been acknowledged.' })
    expect(await discord().acknowledge({ id: '9', token: 'tok' }, { type: 5 })).toBe(true)
    callback().reply(404, { code: 10062, message: 'Unknown interaction' })
    expect(await discord().acknowledge({ id: '9', token: 'tok' }, { type: 5 })).toBe(false)
  })

  test('its errors are told apart', () => {
    expect(discordMayPass(Object.assign(new Error(), { status: 503 }))).toBe(true)
    expect(discordMayPass(Object.assign(new Error(), { status: 403 }))).toBe(false)
    expect(discordMayPass(new SyntaxError('json'))).toBe(true)
  })
})

test('no more than ten files go to Discord, and the rest is told', async () => {
  discordMessages().reply(200, { id: '5' })
  const files = Array.from({ length: 12 }, (_, n) => ({ name: `f${n}.csv`, media_type: 'text/csv', text: `${n}` }))
  await discord().reply({ is: 'message', channel: '1' }, { reply: replyOf({ files }), key: null })
  const form = String(discordSeen.at(-1))
  expect(form).toContain(testWords.noFile)
  expect(form.match(/filename="f\d+\.csv"/g) ?? []).toHaveLength(10)
})
