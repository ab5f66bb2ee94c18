/** End to end: unmodified discord.js against a Discord on loopback. */
import { afterEach, expect, test } from 'vitest'
import type { Adapter } from '../../adapters/contract.ts'
import { createDiscord } from '../../adapters/discord/connect.ts'
import { createLog } from '../../adapters/logging.ts'
import { replyOf, type TestBacking, type TestBackingOptions, testBacking, until } from '../support/backing.ts'
import {
  ASKER,
  BOT_USER,
  CHANNEL,
  type DiscordServer,
  GUILD,
  startDiscordServer,
  THREAD,
  TOKEN,
} from '../support/discord-server.ts'
import { testWords } from '../support/words.ts'

const open: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

type Scene = { server: DiscordServer; backing: TestBacking; adapter: Adapter; lines: string[] }

async function scene(options: TestBackingOptions = {}, server?: DiscordServer): Promise<Scene> {
  const discord = server ?? (await startDiscordServer())
  if (!server) open.push(() => discord.stop())
  const backing = testBacking(options)
  const lines: string[] = []
  const log = createLog('info', [TOKEN], (line) => void lines.push(line))
  const adapter = createDiscord({ token: TOKEN, apiUrl: discord.apiUrl }, backing, log)
  open.push(() => adapter.stop())
  await adapter.start()
  return { server: discord, backing, adapter, lines }
}

const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

test('a mention is answered once, as a reply that pings nobody; a thread shares the job of its channel', async () => {
  const { server, backing, lines } = await scene()
  const asked = server.say(`<@${BOT_USER}> 10x13 shop floor, 3/16 joint`)
  server.dispatch('MESSAGE_CREATE', asked)
  server.dispatch('MESSAGE_UPDATE', { ...asked, content: `<@${BOT_USER}> changed` })
  const post = await until('a post', () => server.posts()[0])
  expect(post.body).toMatchObject({
    content: 'heard: 10x13 shop floor, 3/16 joint',
    allowed_mentions: { parse: [], replied_user: false },
    message_reference: { message_id: asked.id },
    nonce: asked.id,
  })
  server.say(`<@!${BOT_USER}> and grout?`, { channel_id: THREAD })
  await until('the thread', () => server.posts()[1])
  await pause(50)
  expect(server.posts()).toHaveLength(2)
  expect(backing.heard.map((one) => one.channel)).toEqual([
    `discord:${GUILD}:${CHANNEL}`,
    `discord:${GUILD}:${CHANNEL}`,
  ])
  expect(backing.heard[0]?.message).toMatchObject({ id: asked.id, person: ASKER, personName: 'Asker' })
  expect(server.refused).toEqual([])
  const answered = lines.map((line) => JSON.parse(line)).filter((line) => line.msg === 'answered')
  expect(answered[0]).toMatchObject({ platform: 'discord', topic: 'tile', ok: true, ms: expect.any(Number) })
  expect(lines.join('')).not.toContain('shop floor')
})

test('direct messages and pinging replies are answered; other talk, bots and its own messages are not', async () => {
  const { server, backing } = await scene()
  server.dispatch('MESSAGE_CREATE', server.direct('water for half a bag'))
  const bot = { id: BOT_USER, username: 'kneepad', discriminator: '0', avatar: null, bot: true }
  server.say('make it 1/8', { type: 19, mentions: [bot] })
  server.say('lunch?')
  server.say(`<@${BOT_USER}> hi`, {
    author: { id: '5', username: 'other', discriminator: '0', avatar: null, bot: true },
  })
  server.say(`<@${BOT_USER}> hook`, { webhook_id: '55' })
  server.dispatch('MESSAGE_CREATE', server.direct('mine', { author: bot }))
  await until('both', () => server.posts().length === 2)
  await pause(50)
  expect(backing.heard.map((one) => one.message.text).toSorted()).toEqual(['make it 1/8', 'water for half a bag'])
  expect(backing.heard.map((one) => one.channel).toSorted()).toEqual([
    `discord:${GUILD}:${CHANNEL}`,
    'discord:direct:700000000000000009',
  ])
  // Guilds, guild messages, direct messages; nothing privileged.
  expect(server.gateway.intents).toBe((1 << 0) | (1 << 9) | (1 << 12))
})

test('the slash command is registered only when it changed', async () => {
  const first = await scene()
  await until('the command', () => first.server.commands().length === 1)
  await first.adapter.stop()
  const second = await scene({}, first.server)
  await second.adapter.stop()
  expect(first.server.requests.filter((one) => one.method === 'PUT')).toHaveLength(1)
  first.server.setCommands([{ ...(first.server.commands()[0] as object), description: 'old' }])
  await scene({}, first.server)
  expect(first.server.requests.filter((one) => one.method === 'PUT')).toHaveLength(2)
  expect(first.server.commands()[0]).toMatchObject({
    name: 'kneepad',
    options: [{ name: 'message', required: true, max_length: 2000, autocomplete: true }],
  })
})

test('the command is deferred at once, then answered; a second delivery changes nothing', async () => {
  const { server, backing } = await scene({
    answer: async (message) => {
      await pause(200)
      return replyOf({ answer: message.text })
    },
  })
  const asked = server.interact(server.command('10x13 shop floor'))
  server.interact(asked)
  const callback = await until('the deferral', () => server.callbacks.get(asked.id))
  expect(callback.type).toBe(5)
  const post = await until('the answer', () => server.posts()[0])
  expect(post.path).toBe(`/webhooks/${asked.application_id}/${asked.token}/messages/@original`)
  expect(post.body).toMatchObject({ content: '10x13 shop floor', allowed_mentions: { parse: [] } })
  await pause(50)
  expect(backing.heard).toHaveLength(1)
  expect(server.posts()).toHaveLength(1)
})

test('a slow acknowledgement does not let the next command of the channel overtake', async () => {
  const { server, backing } = await scene()
  server.failures.push({ match: /callback/, times: 1, status: 204, body: '', delayMs: 300 })
  server.interact(server.command('one'))
  server.interact(server.command('two'))
  server.say(`<@${BOT_USER}> three`)
  await until('all', () => server.posts().length === 3)
  expect(backing.heard.map((one) => one.message.text)).toEqual(['one', 'two', 'three'])
  expect(server.posts().map((post) => post.body['content'])).toEqual(['heard: one', 'heard: two', 'heard: three'])
})

test('what another instance answered is taken back from view', async () => {
  const { server, backing } = await scene()
  const made = server.command('10x13')
  backing.answered.add(`discord:${GUILD}:${CHANNEL}/${made.id}`)
  server.interact(made)
  await until('the withdrawal', () => server.requests.find((one) => one.method === 'DELETE'))
  expect(server.posts()).toEqual([])
})

test('buttons keep working after a restart, and say so when their answer is gone', async () => {
  const kept = new Map<string, string>()
  const offers = Array.from({ length: 7 }, (_, n) => ({ id: `o${n}`, label: `Offer ${n}`, say: `do ${n}` }))
  const first = await scene({ kept, answer: () => replyOf({ offers }) })
  first.server.say(`<@${BOT_USER}> 12x9`)
  const post = await until('an answer', () => first.server.posts()[0])
  const rows = post.body['components'] as { components: { custom_id: string; label: string }[] }[]
  expect(rows.map((row) => row.components.length)).toEqual([5, 2])
  await first.adapter.stop()
  const second = await scene({ kept }, first.server)
  const pressed = second.server.interact(second.server.press(rows[1]!.components[1]!.custom_id))
  await until('the answer', () => second.server.posts()[1])
  expect(second.server.callbacks.get(pressed.id)?.type).toBe(5)
  expect(second.backing.heard[0]?.pressed).toEqual({ id: 'o6', say: 'do 6', about: '12x9' })
  second.server.interact(second.server.press('offer:nothing:0'))
  const gone = await until('the sentence', () => second.server.posts()[2])
  expect(gone.body).toMatchObject({ content: testWords.gone })
  second.server.interact(
    second.server.press(rows[0]!.components[0]!.custom_id, { channel_id: '71', channel: { id: '71', type: 0 } }),
  )
  const elsewhere = await until('the sentence', () => second.server.posts()[3])
  expect(elsewhere.body).toMatchObject({ content: testWords.gone })
})

test('the form opens from its word and from its button, and stands for a message', async () => {
  const { server, backing } = await scene({ answer: () => replyOf({ topic: 'help' }) })
  const asked = server.interact(server.command('Form'))
  const modal = await until('the form', () => server.callbacks.get(asked.id))
  expect(modal.type).toBe(9)
  const custom_id = modal.data['custom_id']
  const filled = { room: '10x13', tile: '18x18', joint: '3/16' }
  const components = Object.entries(filled).map(([field, value]) => ({
    type: 1,
    components: [{ type: 4, custom_id: field, value }],
  }))
  server.interact(server.interaction(5, { custom_id, components }))
  const heard = await until('the message', () => backing.heard[0])
  expect(heard.message.text).toBe('10x13 room, 18x18 tile, 3/16 joint')
  const post = await until('the answer', () => server.posts()[0])
  const rows = post.body['components'] as { components: { custom_id: string }[] }[]
  const again = server.interact(server.press(rows[0]!.components[0]!.custom_id))
  await until('the form again', () => server.callbacks.get(again.id)?.type === 9)
})

test('autocomplete offers tile sizes and materials', async () => {
  const { server } = await scene()
  const typing = server.interact(server.command('10x13, 18', 4))
  const callback = await until('choices', () => server.callbacks.get(typing.id))
  expect(callback).toMatchObject({ type: 8, data: { choices: [{ name: '10x13, 18x18', value: '10x13, 18x18' }] } })
})

test('pictures go as files with what they show', async () => {
  const files = [
    { name: 'layout.svg', media_type: 'image/svg+xml', text: '<svg/>', alt: 'The floor with its cuts' },
    { name: 'order.csv', media_type: 'text/csv', text: 'item,count\ntile,64\n' },
  ]
  const { server } = await scene({ answer: () => replyOf({ files }) })
  server.say(`<@${BOT_USER}> draw it`)
  server.interact(server.command('draw it'))
  await until('both', () => server.posts().length === 2)
  for (const post of server.posts()) {
    expect(post.files.map((file) => file.name)).toEqual(['layout.png', 'order.csv'])
    expect(post.files[1]?.bytes.toString()).toBe('item,count\ntile,64\n')
    expect(post.body['attachments']).toMatchObject([{ id: '0', description: 'The floor with its cuts' }, { id: '1' }])
  }
})

test('limits, server errors, broken bodies and cut connections are waited out without loss, in order', async () => {
  const { server } = await scene()
  const post = /POST \/channels/
  server.failures.push(
    {
      match: post,
      times: 1,
      status: 429,
      headers: { 'retry-after': '1', 'content-type': 'application/json' },
      body: '{"message":"You are being rate limited.","retry_after":0.5,"global":false}',
    },
    { match: post, times: 4, status: 500, body: 'oops' },
    { match: post, times: 1, status: 200, headers: { 'content-type': 'application/json' }, body: '<html>' },
    { match: post, times: 1, status: 0, body: '', cut: true },
  )
  for (const n of [1, 2, 3]) server.say(`<@${BOT_USER}> ${n}`)
  await until('three posts', () => server.posts().length === 3, 30_000)
  expect(server.posts().map((one) => one.body['content'])).toEqual(['heard: 1', 'heard: 2', 'heard: 3'])
})

test('a dropped socket and a reconnect asked for are resumed, and what was missed is answered once', async () => {
  const { server, backing, adapter } = await scene()
  server.say(`<@${BOT_USER}> before`)
  await until('the first', () => server.posts().length === 1)
  server.drop()
  server.say(`<@${BOT_USER}> missed`)
  await until('a resume', () => server.gateway.resumes === 1)
  await until('the missed', () => server.posts().length === 2)
  server.reconnect()
  await until('a second resume', () => server.gateway.resumes === 2)
  server.say(`<@${BOT_USER}> after`)
  await until('the last', () => server.posts().length === 3)
  expect(backing.heard.map((one) => one.message.text)).toEqual(['before', 'missed', 'after'])
  expect(server.gateway.identifies).toBe(1)
  await until('the state', () => adapter.status() === 'connected')
})

test('an interaction that cannot be acknowledged any more is answered in its channel', async () => {
  const { server } = await scene()
  const body = '{"code":10062,"message":"Unknown interaction"}'
  server.failures.push({
    match: /callback/,
    times: 1,
    status: 404,
    headers: { 'content-type': 'application/json' },
    body,
  })
  server.interact(server.command('10x13'))
  const post = await until('the answer', () => server.posts()[0])
  expect(post).toMatchObject({ path: `/channels/${CHANNEL}/messages`, body: { content: 'heard: 10x13' } })
})

test('a reminder is posted into its channel, inert', async () => {
  const { server, adapter } = await scene()
  const posted = await adapter.deliver(`discord:${GUILD}:${CHANNEL}`, 'Grout now @everyone <@123>', 'r1')
  expect(posted).toBe('sent')
  expect(server.posts()[0]?.body).toMatchObject({ enforce_nonce: true, nonce: expect.stringMatching(/^.{25}$/) })
  expect(server.posts()[0]?.body).toMatchObject({ content: 'Grout now @\u200beveryone \\<\u200b@\u200b123\\>' })
  await expect(adapter.deliver('slack:T:C', 'x')).rejects.toThrow()
  const headers = { 'content-type': 'application/json' }
  const body = '{"code":10003,"message":"Unknown Channel"}'
  server.failures.push({ match: /messages/, times: 1, status: 404, headers, body })
  expect(await adapter.deliver(`discord:${GUILD}:1`, 'x')).toBe('gone')
})

test('a wrong token is refused at once, by name', async () => {
  const server = await startDiscordServer()
  open.push(() => server.stop())
  const adapter = createDiscord(
    { token: 'wrong', apiUrl: server.apiUrl },
    testBacking(),
    createLog('silent', [], () => {}),
  )
  await expect(adapter.start()).rejects.toThrow(/DISCORD_TOKEN/)
  expect(adapter.status()).toBe('stopped')
})

test('stopping finishes what is in flight', async () => {
  let begun = false
  const { server, adapter } = await scene({
    answer: async (message) => {
      begun = true
      await pause(300)
      return replyOf({ answer: message.text })
    },
  })
  server.interact(server.command('slow'))
  await until('the work begun', () => begun)
  await adapter.stop()
  expect(server.posts().map((one) => one.body['content'])).toEqual(['slow'])
})

test('photos come along by id, name and link; other files do not; without a mention nothing is said', async () => {
  const { server, backing } = await scene()
  const photo = server.attachment('IMG_2041.jpg')
  server.say('', { attachments: [photo] })
  server.say(`<@${BOT_USER}> lot 4471`, { attachments: [photo, server.attachment('plan.pdf', 'application/pdf')] })
  await until('a post', () => server.posts()[0])
  server.dispatch('MESSAGE_CREATE', server.direct('', { attachments: [photo] }))
  await until('the photo alone in a direct message', () => server.posts()[1])
  const kept = [{ id: photo.id, name: 'IMG_2041.jpg', url: photo.url }]
  expect(backing.heard.map((one) => one.message)).toMatchObject([
    { text: 'lot 4471', photos: kept },
    { text: '', photos: kept },
  ])
})
