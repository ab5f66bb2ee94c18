/** Events with parts missing, of unknown kinds or of wild content: nothing runs that should not, and the next message is answered. */
import { afterEach, expect, test } from 'vitest'
import { createDiscord } from '../../adapters/discord/connect.ts'
import { createLog } from '../../adapters/logging.ts'
import { createSlack } from '../../adapters/slack/connect.ts'
import { testBacking, until } from '../support/backing.ts'
import { BOT_USER, startDiscordServer, TOKEN } from '../support/discord-server.ts'
import { BOT, startSlackServer, TOKENS } from '../support/slack-server.ts'

const open: (() => Promise<void>)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

const silent = createLog('silent', [], () => {})

test('Slack', async () => {
  const server = await startSlackServer()
  open.push(() => server.stop())
  const backing = testBacking()
  const mode = { is: 'socket', appToken: TOKENS.app } as const
  const adapter = createSlack({ botToken: TOKENS.bot, mode, apiUrl: server.apiUrl }, backing, silent)
  open.push(() => adapter.stop())
  await adapter.start()
  const mention = `<@${BOT.user}> x`
  const events = [
    { type: 'message' },
    { type: 'message', channel: 'C1', ts: '1.1' },
    { type: 'message', channel: 'C1', user: 'U1', text: mention },
    { type: 'message', channel: 'C1', user: 'U1', ts: '1.2', text: null },
    { type: 'app_mention', channel: 'C1', ts: '1.3', text: mention },
    { type: 'message', subtype: 'channel_join', channel: 'C1', user: 'U1', ts: '1.4', text: mention },
    { type: 'message', subtype: 'message_deleted', channel: 'D1', channel_type: 'im', ts: '1.5', previous_message: {} },
    { type: 'message', subtype: 'bot_message', channel: 'D1', channel_type: 'im', ts: '1.6', text: 'x', bot_id: 'B9' },
    { type: 'reaction_added', user: 'U1', item: {} },
    { type: 'app_home_opened', user: 'U1', channel: 'D1', tab: 'messages' },
    { type: 'something_new' },
  ]
  for (const event of events) server.pushEvent(event)
  server.push('interactive', { ...server.actionBody({ action_id: 'unknown', value: 'x' }) })
  server.push('interactive', { ...server.actionBody({ action_id: 'offer:0' }) })
  server.push('interactive', { ...server.actionBody({ action_id: 'offer:x', value: ':::' }) })
  server.push('interactive', { ...server.actionBody({}), actions: [] })
  server.push('interactive', {
    type: 'shortcut',
    callback_id: 'none',
    team: { id: 'T' },
    user: { id: 'U1' },
    trigger_id: '1',
  })
  server.push(
    'interactive',
    server.viewBody({ callback_id: 'quantities_form', private_metadata: 'not json', type: 'modal' }, {}),
  )
  server.push('slash_commands', server.commandBody('x', { command: '/other' }))
  server.push('new_kind', { a: 1 })
  const wild = server.pushEvent(server.messageEvent(`${mention} ${'<'.repeat(5000)}${'\u0000\ud800'.repeat(50)}`))
  await until('the wild one', () => wild.acked && backing.heard.length >= 1)
  server.pushEvent(server.messageEvent(`<@${BOT.user}> still there`))
  await until('an answer', () => server.posts().some((post) => post['text'] === 'heard: still there'))
  const texts = backing.heard.map((one) => one.message.text.slice(0, 12))
  expect(texts).toEqual(['x <<<<<<<<<<', 'still there'])
  // One sentence for the button that names a state there is none of; nothing else was said.
  expect(server.posts().filter((post) => post['text'] === backing.words('en').gone)).toHaveLength(1)
  expect(server.posts()).toHaveLength(3)
})

test('Discord', async () => {
  const server = await startDiscordServer()
  open.push(() => server.stop())
  const backing = testBacking()
  const adapter = createDiscord({ token: TOKEN, apiUrl: server.apiUrl }, backing, silent)
  open.push(() => adapter.stop())
  await adapter.start()
  const { mentions: _, member: __, ...bare } = server.message('no mentions listed')
  server.dispatch('MESSAGE_CREATE', bare)
  server.say(`<@${BOT_USER}> pinned`, { type: 6 })
  server.say(`<@${BOT_USER}> thread started`, { type: 18 })
  server.dispatch('SOMETHING_NEW', { a: 1 })
  const odd = [
    server.interaction(2, { id: '1', name: 'kneepad', type: 1 }),
    server.press('unknown'),
    server.press('offer'),
    server.press('offer:x:y'),
    server.interaction(5, { custom_id: 'form:xx', components: [] }),
    server.interaction(4, { id: '1', name: 'kneepad', type: 1, options: [] }),
    server.interaction(99, {}),
  ]
  for (const one of odd) server.interact(one)
  server.say(`<@${BOT_USER}> ${'*_<@everyone'.repeat(150)}`)
  server.say(`<@${BOT_USER}> still there`)
  await until('an answer', () => server.posts().some((post) => post.body['content'] === 'heard: still there'))
  const gone = server.posts().filter((post) => post.body['content'] === backing.words('en').gone)
  expect(gone).toHaveLength(3)
  expect(backing.heard.map((one) => one.message.text.slice(0, 5))).toEqual(['', '', '*_<@e', 'still'])
  expect(server.refused).toEqual([])
  expect(server.posts().every((post) => !JSON.stringify(post.body).includes('@everyone'))).toBe(true)
})
