/** `npm start` itself with tokens, against the platforms on loopback: the real answers, over the real store, over a restart. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, expect, test } from 'vitest'
import { until } from '../support/backing.ts'
import { ask } from '../support/crew.ts'
import { BOT_USER, startDiscordServer, TOKEN } from '../support/discord-server.ts'
import { type Child, runProgram } from '../support/process.ts'
import { BOT, startSlackServer, TOKENS } from '../support/slack-server.ts'

const PROGRAM = path.join(import.meta.dirname, '../../adapters/start.js')
const ROOM = '10x13 shop floor, 18x18 tile, 3/16 joint'

const open: (() => Promise<unknown> | unknown)[] = []
afterEach(async () => {
  for (const close of open.splice(0).toReversed()) await close()
})

function folder(): string {
  const made = mkdtempSync(path.join(tmpdir(), 'kneepad-live-'))
  open.push(() => rmSync(made, { recursive: true, force: true }))
  return made
}

async function start(env: Record<string, string>, cwd: string): Promise<Child> {
  const child = runProgram(PROGRAM, { ...env, KNEEPAD_DATA: path.join(cwd, 'data') }, cwd)
  open.push(() => child.kill('SIGKILL'))
  await until('connected', () => child.logs().some((line) => line['msg'] === 'connected'))
  return child
}

async function stop(child: Child): Promise<void> {
  child.kill('SIGTERM')
  expect(await child.ended).toEqual({ code: 0, signal: null })
}

test('Slack: a room, its button, and a follow-up after a restart; a redelivered message is left alone', async () => {
  const slack = await startSlackServer()
  open.push(() => slack.stop())
  const env = { SLACK_BOT_TOKEN: TOKENS.bot, SLACK_APP_TOKEN: TOKENS.app, SLACK_API_URL: slack.apiUrl }
  const cwd = folder()
  const first = await start(env, cwd)
  const asked = slack.messageEvent(`<@${BOT.user}> ${ROOM}`)
  slack.pushEvent(asked)
  const post = await until('the answer', () => slack.posts()[0])
  expect(post['text']).toContain(ask(ROOM).answer)
  const blocks = post['blocks'] as { type: string; elements?: { action_id: string; value: string }[] }[]
  const button = blocks.find((block) => block.type === 'actions')?.elements?.[0]
  expect(button).toBeDefined()
  await stop(first)

  const second = await start(env, cwd)
  slack.pushEvent(asked)
  slack.push('interactive', slack.actionBody({ action_id: button!.action_id, value: button!.value }))
  const workings = await until('the workings', () => slack.posts()[1])
  expect(workings['text']).toContain(ask(ROOM).answer)
  slack.pushEvent(slack.messageEvent(`<@${BOT.user}> and grout?`))
  const grout = await until('the grout', () => slack.posts()[2])
  expect(grout['text']).toMatch(/grout/)
  expect(slack.posts()).toHaveLength(3)
  expect(slack.refused).toEqual([])
  await stop(second)
})

test('Discord: a room, and a follow-up after a restart; a redelivered message is left alone', async () => {
  const discord = await startDiscordServer()
  open.push(() => discord.stop())
  const env = { DISCORD_TOKEN: TOKEN, DISCORD_API_URL: discord.apiUrl }
  const cwd = folder()
  const first = await start(env, cwd)
  const asked = discord.say(`<@${BOT_USER}> ${ROOM}`)
  const post = await until('the answer', () => discord.posts()[0])
  expect(JSON.stringify(post.body)).toContain(ask(ROOM).answer)
  await stop(first)

  const second = await start(env, cwd)
  discord.dispatch('MESSAGE_CREATE', asked)
  discord.say(`<@${BOT_USER}> and grout?`)
  const grout = await until('the grout', () => discord.posts()[1])
  expect(JSON.stringify(grout.body)).toMatch(/grout/)
  expect(discord.posts()).toHaveLength(2)
  expect(discord.refused).toEqual([])
  await stop(second)
})

const PNG_START = Buffer.from([0x89, 0x50, 0x4e, 0x47])

test('Slack: a photo without words is asked about, its words go on record, and the record comes as a page', async () => {
  const slack = await startSlackServer()
  open.push(() => slack.stop())
  const env = { SLACK_BOT_TOKEN: TOKENS.bot, SLACK_APP_TOKEN: TOKENS.app, SLACK_API_URL: slack.apiUrl }
  const child = await start(env, folder())
  const say = (text: string, over: Record<string, unknown> = {}): void =>
    void slack.pushEvent(slack.messageEvent(text, { channel: 'DASKER001', channel_type: 'im', ...over }))
  say(ROOM)
  await until('the room', () => slack.posts()[0])
  say('', { subtype: 'file_share', files: [slack.file('label.jpg')] })
  expect((await until('the question', () => slack.posts()[1]))['text']).toMatch(/What does it show/)
  say('lot 4471')
  expect((await until('the lot', () => slack.posts()[2]))['text']).toMatch(/On record: lot 4471/)
  say('sign-off')
  expect((await until('the record', () => slack.posts()[3]))['text']).toMatch(/Record of job 1/)
  const uploaded = (name: string) =>
    until(name, () => [...slack.uploads.values()].find((one) => one.name === name && one.bytes.length === one.length))
  const [page, table] = [await uploaded('job-record.png'), await uploaded('record.csv')]
  expect(page.bytes.subarray(0, 4)).toEqual(PNG_START)
  expect(page.alt).toMatch(/1 reading, lines to sign/)
  expect(table.bytes.toString()).toMatch(/lot 4471 \(photo label\.jpg\)/)
  expect(slack.refused).toEqual([])
  await stop(child)
})

test('Discord: a change order comes as a page and a table', async () => {
  const discord = await startDiscordServer()
  open.push(() => discord.stop())
  const child = await start({ DISCORD_TOKEN: TOKEN, DISCORD_API_URL: discord.apiUrl }, folder())
  const said = [ROOM, 'mark this as quote', 'add the closet 3x4', 'change order since quote']
  for (const [k, text] of said.entries()) {
    discord.dispatch('MESSAGE_CREATE', discord.direct(text))
    await until(text, () => discord.posts()[k])
  }
  const files = discord.posts().at(-1)?.files ?? []
  expect(files.map((file) => file.name)).toEqual(['change-order.png', 'change-order.csv'])
  expect(files[0]?.bytes.subarray(0, 4)).toEqual(PNG_START)
  expect(files[1]?.bytes.toString()).toMatch(/^What,Then,Now,Difference\r\nArea,12\.08,13\.19,1\.11/)
  await stop(child)
})
