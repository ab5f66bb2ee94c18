/** End to end: unmodified Bolt against a Slack on loopback, in Socket Mode. */
import { afterEach, expect, test } from 'vitest'
import type { Adapter } from '../../adapters/contract.ts'
import { createLog } from '../../adapters/logging.ts'
import { createSlack } from '../../adapters/slack/connect.ts'
import { replyOf, type TestBacking, type TestBackingOptions, testBacking, until } from '../support/backing.ts'
import { BOT, type SlackServer, startSlackServer, TOKENS } from '../support/slack-server.ts'
import { testWords } from '../support/words.ts'

const open: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

type Scene = { server: SlackServer; backing: TestBacking; adapter: Adapter; lines: string[] }

async function scene(options: TestBackingOptions = {}, server?: SlackServer): Promise<Scene> {
  const slack = server ?? (await startSlackServer())
  if (!server) open.push(() => slack.stop())
  const backing = testBacking(options)
  const lines: string[] = []
  const log = createLog('info', Object.values(TOKENS), (line) => void lines.push(line))
  const adapter = createSlack(
    { botToken: TOKENS.bot, mode: { is: 'socket', appToken: TOKENS.app }, apiUrl: slack.apiUrl },
    backing,
    log,
  )
  open.push(() => adapter.stop())
  await adapter.start()
  return { server: slack, backing, adapter, lines }
}

test('a mention is answered once in its thread, though it arrives as message and as mention', async () => {
  const { server, backing, lines } = await scene()
  const event = server.messageEvent(`<@${BOT.user}> 10x13 shop floor &amp; 18x18 &lt;3/16`)
  const envelope = server.pushEvent(event)
  server.pushEvent({ ...event, type: 'app_mention' })
  server.pushEvent(event, BOT.team, { retry_attempt: 1, retry_reason: 'timeout' })
  const post = await until('a post', () => server.posts()[0])
  expect(backing.heard[0]?.message.text).toBe('10x13 shop floor & 18x18 <3/16')
  expect(backing.heard[0]?.channel).toBe(`slack:${BOT.team}:CFLOOR001`)
  expect(post['thread_ts']).toBe(event.ts)
  expect(post['text']).toBe('heard: 10x13 shop floor &amp; 18x18 &lt;3/16')
  expect(post['link_names']).toBe('false')
  expect(envelope.acked).not.toBeNull()
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(server.posts()).toHaveLength(1)
  const answered = lines.map((line) => JSON.parse(line)).filter((line) => line.msg === 'answered')
  expect(answered).toHaveLength(1)
  expect(answered[0]).toMatchObject({ platform: 'slack', topic: 'tile', ok: true, ms: expect.any(Number) })
  expect(lines.join('')).not.toContain('shop floor')
})

test('a direct message, and a reply in the thread of an earlier answer, need no mention; other talk is left alone', async () => {
  const { server, backing } = await scene()
  server.pushEvent(server.messageEvent('water for half a bag', { channel: 'DASKER001', channel_type: 'im' }))
  await until('the direct answer', () => server.posts()[0])
  const asked = server.messageEvent(`<@${BOT.user}> 12x9`)
  server.pushEvent(asked)
  await until('the mention', () => server.posts()[1])
  server.pushEvent(server.messageEvent('make it 1/8', { thread_ts: asked.ts, parent_user_id: 'UASKER001' }))
  await until('the thread', () => server.posts()[2])
  server.pushEvent(server.messageEvent('lunch?'))
  server.pushEvent(server.messageEvent('lunch?', { thread_ts: server.nextTs(), parent_user_id: 'UOTHER001' }))
  server.pushEvent(server.messageEvent('I am a bot', { bot_id: 'BOTHER', channel_type: 'im', channel: 'D2' }))
  server.pushEvent(server.messageEvent('', { subtype: 'message_changed', channel_type: 'im', channel: 'D2' }))
  server.pushEvent(
    server.messageEvent(`<@${BOT.user}> x`, { type: 'app_mention', edited: { user: 'UASKER001', ts: '1' } }),
  )
  server.pushEvent(server.messageEvent('mine', { user: BOT.user, channel_type: 'im', channel: 'D2' }))
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(backing.heard.map((one) => one.message.text)).toEqual(['water for half a bag', '12x9', 'make it 1/8'])
  expect(server.posts()[0]?.['thread_ts']).toBeUndefined()
  expect(server.posts()[2]?.['thread_ts']).toBe(asked.ts)
})

test('a thread is known after a restart, and a button too', async () => {
  const kept = new Map<string, string>()
  const offers = [{ id: 'math', label: 'Show the math', say: 'show the math' }]
  const first = await scene({ kept, answer: () => replyOf({ offers }) })
  const asked = first.server.messageEvent(`<@${BOT.user}> 12x9`)
  first.server.pushEvent(asked)
  const post = await until('an answer', () => first.server.posts()[0])
  const blocks = post['blocks'] as { type: string; elements?: { action_id: string; value: string }[] }[]
  const button = blocks.find((block) => block.type === 'actions')?.elements?.[0]
  expect(button?.action_id).toBe('offer:0')
  await first.adapter.stop()

  const second = await scene({ kept }, first.server)
  second.server.pushEvent(second.server.messageEvent('and grout?', { thread_ts: asked.ts }))
  await until('the thread', () => second.backing.heard[0])
  const envelope = second.server.push('interactive', second.server.actionBody({ ...button }))
  const heard = await until('the press', () => second.backing.heard[1])
  expect(heard.pressed).toEqual({ id: 'math', say: 'show the math', about: '12x9' })
  await until('the press answered', () => second.server.posts()[2])
  expect(second.server.posts()[2]?.['thread_ts']).toBe('1780000000.000001')
  expect(envelope.acked).not.toBeNull()
})

test('a thread that has to be looked up keeps its place before what comes after it', async () => {
  const kept = new Map([[`slack-thread:slack:${BOT.team}:CFLOOR001:1700000000.000100`, '1']])
  const { server, backing } = await scene({ kept, recallMs: 200 })
  server.pushEvent(server.messageEvent('one', { thread_ts: '1700000000.000100' }))
  server.pushEvent(server.messageEvent(`<@${BOT.user}> two`))
  await until('both', () => server.posts().length === 2)
  expect(backing.heard.map((one) => one.message.text)).toEqual(['one', 'two'])
})

test('a press whose answer is gone, or from another channel, gets a plain sentence', async () => {
  const kept = new Map([
    [
      'buttons:k1',
      JSON.stringify({ channel: 'slack:TOTHER:C9', about: 'x', offers: [{ id: 'a', label: 'a', say: 'a' }] }),
    ],
  ])
  const { server, backing } = await scene({ kept })
  server.push('interactive', server.actionBody({ action_id: 'offer:0', value: 'nothing:0' }))
  server.push('interactive', server.actionBody({ action_id: 'offer:0', value: 'k1:0' }))
  await until('two sentences', () => server.posts().length === 2)
  expect(server.posts().map((post) => post['text'])).toEqual([testWords.gone, testWords.gone])
  expect(backing.heard).toEqual([])
})

test('the slash command is acknowledged and answered; outside its channels by its own address', async () => {
  const server = await startSlackServer({ members: (channel) => channel !== 'CAWAY0001' })
  open.push(() => server.stop())
  const { backing } = await scene({}, server)
  const envelope = server.push('slash_commands', server.commandBody('10x13 shop floor'))
  await until('the answer', () => server.posts()[0])
  expect(envelope.acked).not.toBeNull()
  expect(backing.heard[0]?.message).toMatchObject({
    text: '10x13 shop floor',
    person: 'UASKER001',
    personName: 'asker',
  })
  server.push('slash_commands', server.commandBody('8x48', { channel_id: 'CAWAY0001' }))
  const response = await until('the response address', () => server.responses[0])
  expect(response).toMatchObject({ response_type: 'in_channel', text: 'heard: 8x48' })
})

test('the form opens from an empty command and stands for a message', async () => {
  const { server, backing } = await scene()
  server.push('slash_commands', server.commandBody(''))
  const opened = await until('a view', () => server.calls.find((call) => call.method === 'views.open'))
  const view = opened.args['view'] as Record<string, unknown>
  const envelope = server.push('view_submission', server.viewBody(view, { room: '10x13', tile: '18x18', joint: '' }))
  const heard = await until('the message', () => backing.heard[0])
  expect(heard.message.text).toBe('10x13 room, 18x18 tile')
  expect(heard.channel).toBe(`slack:${BOT.team}:CFLOOR001`)
  await until('its ack', () => envelope.acked)
})

test('the home page shows examples and units', async () => {
  const { server } = await scene()
  server.pushEvent({ type: 'app_home_opened', user: 'UASKER001', channel: 'DASKER001', tab: 'home', event_ts: '1' })
  const published = await until('a home page', () => server.calls.find((call) => call.method === 'views.publish'))
  const text = JSON.stringify(published.args['view'])
  expect(text).toContain('Units here: feet and inches')
  expect(text).toContain('18x18')
})

test('pictures and tables are uploaded under the answer with what they show', async () => {
  const files = [
    { name: 'layout.svg', media_type: 'image/svg+xml', text: '<svg/>', alt: 'The floor with its cuts' },
    { name: 'order.csv', media_type: 'text/csv', text: 'item,count\ntile,64\n' },
  ]
  const { server } = await scene({ answer: () => replyOf({ files }) })
  const asked = server.messageEvent(`<@${BOT.user}> draw it`)
  server.pushEvent(asked)
  const done = await until('the upload', () =>
    server.calls.find((call) => call.method === 'files.completeUploadExternal'),
  )
  expect(done.args).toMatchObject({ channel_id: 'CFLOOR001', thread_ts: asked.ts })
  const uploads = [...server.uploads.values()]
  expect(uploads.map((one) => one.name).toSorted()).toEqual(['layout.png', 'order.csv'])
  expect(uploads.find((one) => one.name === 'layout.png')).toMatchObject({ alt: 'The floor with its cuts' })
  expect(uploads.find((one) => one.name === 'order.csv')?.bytes.toString()).toBe('item,count\ntile,64\n')
})

test('limits, server errors and broken bodies are waited out without loss, in order', async () => {
  const { server } = await scene()
  server.failures.push(
    { match: /chat\.postMessage/, times: 1, status: 429, headers: { 'retry-after': '1' }, body: '' },
    { match: /chat\.postMessage/, times: 1, status: 500, body: 'oops' },
    { match: /chat\.postMessage/, times: 1, status: 200, body: '<html>proxy</html>' },
    { match: /chat\.postMessage/, times: 1, status: 429, body: '' },
    { match: /chat\.postMessage/, times: 1, status: 200, body: '{"ok":false,"error":"internal_error"}' },
    { match: /chat\.postMessage/, times: 1, status: 0, body: '', cut: true },
  )
  for (const n of [1, 2, 3]) server.pushEvent(server.messageEvent(`<@${BOT.user}> ${n}`))
  await until('three posts', () => server.posts().length === 3, 30_000)
  expect(server.posts().map((post) => post['text'])).toEqual(['heard: 1', 'heard: 2', 'heard: 3'])
})

test('a socket that drops and a reconnect asked for are taken up again', async () => {
  const { server, backing } = await scene()
  server.drop()
  await until('a second connection', () => server.connections() === 2 && server.connected(), 15_000)
  server.pushEvent(server.messageEvent(`<@${BOT.user}> after the drop`))
  await until('the message', () => backing.heard.length === 1)
  server.refresh()
  await until('a third connection', () => server.connections() === 3 && server.connected(), 15_000)
  server.pushEvent(server.messageEvent(`<@${BOT.user}> after the refresh`))
  await until('the message', () => backing.heard.length === 2)
}, 60_000)

test('a failing answerer is told in a plain sentence, and the next message is answered', async () => {
  let first = true
  const { server } = await scene({
    answer: (message) => {
      if (!first) return replyOf({ answer: message.text })
      first = false
      throw new Error('disk full')
    },
  })
  server.pushEvent(server.messageEvent(`<@${BOT.user}> one`))
  server.pushEvent(server.messageEvent(`<@${BOT.user}> two`))
  await until('both', () => server.posts().length === 2)
  expect(server.posts().map((post) => post['text'])).toEqual([testWords.failed, 'two'])
})

test('channels of one name in two workspaces are two jobs', async () => {
  const { server, backing } = await scene()
  server.pushEvent(server.messageEvent(`<@${BOT.user}> a`), 'TONE')
  server.pushEvent(server.messageEvent(`<@${BOT.user}> b`), 'TTWO')
  await until('both', () => backing.heard.length === 2)
  expect(backing.heard.map((one) => one.channel).toSorted()).toEqual(['slack:TONE:CFLOOR001', 'slack:TTWO:CFLOOR001'])
})

test('a reminder is posted into its channel', async () => {
  const { server, adapter } = await scene()
  const posted = await adapter.deliver(`slack:${BOT.team}:CFLOOR001`, 'Grout now <!channel> @everyone')
  expect(posted).toBe('sent')
  expect(server.posts()[0]?.['text']).toBe('Grout now &lt;!channel&gt; @\u200beveryone')
  await expect(adapter.deliver('discord:1:2', 'x')).rejects.toThrow()
  server.failures.push({ match: /postMessage/, times: 1, status: 200, body: '{"ok":false,"error":"is_archived"}' })
  expect(await adapter.deliver(`slack:${BOT.team}:COLD00001`, 'x')).toBe('gone')
})

test('stopping finishes what is in flight', async () => {
  let begunAt = 0
  const { server, adapter } = await scene({
    answer: async (message) => {
      begunAt = performance.now()
      await new Promise((resolve) => setTimeout(resolve, 300))
      return replyOf({ answer: message.text })
    },
  })
  server.pushEvent(server.messageEvent(`<@${BOT.user}> slow`))
  await until('the work begun', () => begunAt > 0)
  const asked = performance.now()
  await adapter.stop()
  expect(server.posts().map((post) => post['text'])).toEqual(['slow'])
  expect(performance.now() - asked).toBeLessThan(4500)
})

test('photos come along by id, name and link, once; other files do not; without a mention nothing is said', async () => {
  const { server, backing } = await scene()
  const photo = server.file('IMG_2041.jpg')
  const files = [photo, server.file('plan.pdf', 'application/pdf'), server.file('IMG_2042.HEIC', 'image/heic')]
  server.pushEvent(server.messageEvent('', { subtype: 'file_share', files: [photo] }))
  const event = server.messageEvent(`<@${BOT.user}> lot 4471`, { subtype: 'file_share', files })
  server.pushEvent(event)
  server.pushEvent({ ...event, type: 'app_mention', subtype: undefined })
  await until('a post', () => server.posts()[0])
  await new Promise((resolve) => setTimeout(resolve, 100))
  expect(backing.heard.map((one) => one.message.text)).toEqual(['lot 4471'])
  expect(backing.heard[0]?.message.photos).toEqual([
    { id: photo.id, name: 'IMG_2041.jpg', url: photo.permalink },
    { id: files[2]!.id, name: 'IMG_2042.HEIC', url: files[2]!.permalink },
  ])
  server.pushEvent(
    server.messageEvent('', { subtype: 'file_share', files: [photo], channel: 'DASKER001', channel_type: 'im' }),
  )
  await until('the photo alone in a direct message', () => server.posts()[1])
  expect(backing.heard[1]?.message).toMatchObject({ text: '', photos: [{ id: photo.id }] })
})
