/** What comes in from Slack, by Socket Mode or HTTP alike: messages, mentions, the command, buttons, the form, the home page. */
import type { App, webApi } from '@slack/bolt'
import type { Backing } from '../contract.ts'
import type { Desk, Found } from '../desk.ts'
import { FIELDS, type Field, formAsked, formMessage } from '../form.ts'
import { brief, type Log } from '../logging.ts'
import { photosOf } from '../photos.ts'
import { channelKey } from './channel.ts'
import { decodeSlack, mentions } from './escape.ts'
import type { Place, Poster } from './post.ts'
import { ACTION_FORM, ACTION_OFFER } from './render.ts'
import type { Threads } from './threads.ts'
import { FORM, type FormTarget, formView, homeView } from './views.ts'

export type Identity = { readonly teamId: string; readonly botUserId: string; readonly botId: string }

export type Inlet = {
  readonly desk: Desk
  readonly backing: Backing
  readonly log: Log
  readonly poster: Poster
  readonly threads: Threads
  readonly identity: () => Identity
}

export const COMMAND = '/kneepad'

/** The fields of a message or mention event that count here. */
type SlackMessageEvent = {
  readonly type: string
  readonly subtype?: string
  readonly channel?: string
  readonly channel_type?: string
  readonly user?: string
  readonly bot_id?: string
  readonly text?: string
  readonly edited?: unknown
  readonly ts?: string
  readonly thread_ts?: string
  readonly parent_user_id?: string
  readonly files?: readonly SlackFile[]
}

type SlackFile = {
  readonly id?: string
  readonly name?: string | null
  readonly mimetype?: string
  readonly permalink?: string
}

/** The permalink opens in Slack for those who may see the file; the private address needs a token. */
const photosIn = (files: readonly SlackFile[] | undefined) =>
  photosOf(files?.map(({ id, name, mimetype, permalink }) => ({ id, name, type: mimetype, url: permalink })))

/** Edits, deletions, joins and the like are no messages; files and copies to the channel come with text of their own. */
const SPOKEN = new Set([undefined, 'file_share', 'thread_broadcast', 'me_message'])

/** Yes, no, or only if its thread is one the bot answered in, which may have to be looked up. */
function isForUs(event: SlackMessageEvent, botUserId: string): 'yes' | 'no' | 'by its thread' {
  if (!SPOKEN.has(event.subtype) || event.bot_id !== undefined || event.user === undefined) return 'no'
  // A mention that was edited comes again as a mention, with the edit in it.
  if (event.edited !== undefined || event.user === botUserId || event.user === 'USLACKBOT') return 'no'
  if (event.type === 'app_mention' || event.channel_type === 'im' || event.channel?.startsWith('D')) return 'yes'
  if (mentions(event.text ?? '', botUserId)) return 'yes'
  if (event.thread_ts === undefined || event.thread_ts === event.ts) return 'no'
  return event.parent_user_id === botUserId ? 'yes' : 'by its thread'
}

async function onMessage(event: SlackMessageEvent, team: string, inlet: Inlet): Promise<void> {
  const { channel, ts, user } = event
  const { botUserId } = inlet.identity()
  if (channel === undefined || ts === undefined || user === undefined) return
  const ours = isForUs(event, botUserId)
  const key = channelKey(team, channel)
  if (ours === 'no' || !inlet.desk.take(key, ts)) return
  const direct = event.channel_type === 'im' || channel.startsWith('D')
  const place: Place = { channel, thread: direct ? event.thread_ts : (event.thread_ts ?? ts) }
  const find = async (): Promise<Found | 'not ours'> => {
    if (ours !== 'yes' && !(await inlet.threads.known(key, event.thread_ts ?? ts))) return 'not ours'
    if (place.thread !== undefined) inlet.threads.remember(key, place.thread)
    return { text: decodeSlack(event.text ?? '', botUserId), photos: photosIn(event.files) }
  }
  await inlet.desk.answer({
    channel: key,
    id: ts,
    person: user,
    find,
    post: (shown) => inlet.poster.reply(place, shown),
    sayOnly: (sentence) => inlet.poster.sentence(place, sentence),
  })
}

function takeMessages(app: App, inlet: Inlet): void {
  const workspace = (body: { team_id?: string }) => body.team_id ?? inlet.identity().teamId
  app.event('message', ({ event, body }) => onMessage(event as SlackMessageEvent, workspace(body), inlet))
  app.event('app_mention', ({ event, body }) => onMessage(event as SlackMessageEvent, workspace(body), inlet))
}

async function openForm(client: webApi.WebClient, trigger: string, target: FormTarget, inlet: Inlet): Promise<void> {
  const view = formView(inlet.backing.words(target.language), target)
  await client.views.open({ trigger_id: trigger, view })
}

function takeCommand(app: App, inlet: Inlet): void {
  app.command(COMMAND, async ({ command, ack, client }) => {
    await ack()
    const key = channelKey(command.team_id, command.channel_id)
    const text = decodeSlack(command.text ?? '', inlet.identity().botUserId)
    const form = text === '' ? (await inlet.desk.wordsOf(key)).language : formAsked(text, inlet.backing)
    if (form !== null) {
      await openForm(client, command.trigger_id, { channel: command.channel_id, language: form }, inlet)
      return
    }
    const id = `command-${command.trigger_id}`
    if (!inlet.desk.take(key, id)) return
    const place: Place = { channel: command.channel_id }
    await inlet.desk.answer({
      channel: key,
      id,
      find: async () => ({ text }),
      person: command.user_id,
      personName: command.user_name,
      post: (shown) => inlet.poster.reply(place, shown, command.response_url),
      sayOnly: (sentence) => inlet.poster.sentence(place, sentence, command.response_url),
    })
  })
}

/** The fields of a pressed button that count here. */
type Press = {
  readonly team?: { id?: string } | null
  readonly user: { id: string; team_id?: string; name?: string; username?: string }
  readonly channel?: { id: string }
  readonly container?: { channel_id?: string; message_ts?: string; thread_ts?: string; type?: string }
  readonly message?: { ts?: string; thread_ts?: string }
  readonly trigger_id?: string
  readonly response_url?: string
}

const placeOf = (press: Press, user: string): Place => {
  const channel = press.channel?.id ?? press.container?.channel_id ?? user
  const ts = press.message?.thread_ts ?? press.container?.thread_ts
  const own = press.message?.ts ?? press.container?.message_ts
  return { channel, thread: ts ?? (channel.startsWith('D') ? undefined : own) }
}

const teamOf = (press: Press, inlet: Inlet): string => press.team?.id ?? press.user.team_id ?? inlet.identity().teamId

async function onPress(press: Press, value: string, actionTs: string, inlet: Inlet): Promise<void> {
  const place = placeOf(press, press.user.id)
  const key = channelKey(teamOf(press, inlet), place.channel)
  const id = `press-${press.user.id}-${actionTs}`
  if (!inlet.desk.take(key, id)) return
  const [stored, index] = value.split(':')
  await inlet.desk.answer({
    channel: key,
    id,
    find: () => {
      if (place.thread !== undefined) inlet.threads.remember(key, place.thread)
      return inlet.desk.recallPress(key, stored ?? '', Number(index))
    },
    person: press.user.id,
    personName: press.user.name ?? press.user.username,
    post: (shown) => inlet.poster.reply(place, shown, press.response_url),
    sayOnly: (sentence) => inlet.poster.sentence(place, sentence, press.response_url),
  })
}

function takeButtons(app: App, inlet: Inlet): void {
  app.action(new RegExp(`^${ACTION_OFFER}:\\d+$`), async ({ ack, body, action }) => {
    await ack()
    const { value, action_ts } = action as { value?: string; action_ts?: string }
    await onPress(body as unknown as Press, value ?? '', action_ts ?? (body as Press).trigger_id ?? '', inlet)
  })
  app.action(ACTION_FORM, async ({ ack, body, client, action }) => {
    await ack()
    const press = body as unknown as Press
    // On the home page there is no channel: the button names the person's direct message.
    const [, direct] = ((action as { value?: string }).value ?? '').split(':')
    const place: Place = direct ? { channel: direct } : placeOf(press, press.user.id)
    const target: FormTarget = {
      channel: place.channel,
      language: (await inlet.desk.wordsOf(channelKey(teamOf(press, inlet), place.channel))).language,
      ...(place.thread === undefined ? {} : { thread: place.thread }),
    }
    await openForm(client, press.trigger_id ?? '', target, inlet)
  })
  // Anything else that is pressed is acknowledged, so that Slack shows no warning sign.
  app.action(/.*/, async ({ ack, action }) => {
    const { action_id } = action as { action_id?: string }
    if (action_id !== ACTION_FORM && !action_id?.startsWith(`${ACTION_OFFER}:`)) await ack()
  })
}

type Values = Readonly<Record<string, Readonly<Record<string, { value?: string | null } | undefined>> | undefined>>

function takeForm(app: App, inlet: Inlet): void {
  app.view(FORM, async ({ ack, body, view }) => {
    await ack()
    const target = JSON.parse(view.private_metadata) as FormTarget
    const values = view.state.values as Values
    const read = (field: Field): [Field, string] => [field, values[field]?.[field]?.value ?? '']
    const text = formMessage(inlet.backing.words(target.language), Object.fromEntries(FIELDS.map(read)))
    const key = channelKey(body.team?.id ?? inlet.identity().teamId, target.channel)
    const id = `form-${view.id}`
    if (!inlet.desk.take(key, id)) return
    const place: Place = { channel: target.channel, thread: target.thread }
    await inlet.desk.answer({
      channel: key,
      id,
      find: async () => ({ text }),
      person: body.user.id,
      personName: body.user.name,
      post: (shown) => inlet.poster.reply(place, shown),
      sayOnly: (sentence) => inlet.poster.sentence(place, sentence),
    })
  })
}

function takeHome(app: App, inlet: Inlet): void {
  app.event('app_home_opened', async ({ event, body, client }) => {
    if (event.tab !== 'home') return
    const key = channelKey(body.team_id ?? inlet.identity().teamId, event.channel)
    const setup = await inlet.backing.answerer.setup(key)
    await client.views.publish({
      user_id: event.user,
      view: homeView(inlet.backing.words(setup.language), setup, event.channel),
    })
  })
}

/** Registers everything on the app. */
export function receive(app: App, inlet: Inlet): void {
  takeMessages(app, inlet)
  takeCommand(app, inlet)
  takeButtons(app, inlet)
  takeForm(app, inlet)
  takeHome(app, inlet)
  app.error(async (error) => {
    inlet.log.error({ platform: 'slack', error: brief(error) }, 'an event was not handled')
  })
}
