/** What comes in from Discord: mentions and replies, direct messages, the command, autocomplete, buttons, the form. */
import type {
  APIApplicationCommandAutocompleteInteraction,
  APIChatInputApplicationCommandInteraction,
  APIInteraction,
  APIMessageComponentInteraction,
  APIModalSubmitInteraction,
  GatewayMessageCreateDispatchData,
} from 'discord.js'
import type { Backing, ChannelKey } from '../contract.ts'
import type { Desk, Found } from '../desk.ts'
import { formAsked, formMessage } from '../form.ts'
import type { Log } from '../logging.ts'
import { photosOf } from '../photos.ts'
import { channelKey, isThread } from './channel.ts'
import { languageOf, OPTION_NAME, suggest } from './command.ts'
import { decodeDiscord } from './escape.ts'
import { formModal, formValues } from './modal.ts'
import type { Place, Poster } from './post.ts'
import { CUSTOM_FORM, CUSTOM_OFFER } from './render.ts'

export type Inlet = {
  readonly desk: Desk
  readonly backing: Backing
  readonly log: Log
  readonly poster: Poster
  readonly botUserId: () => string
  /** The channel a thread belongs to; any other channel itself. */
  readonly homeOf: (channel: string) => Promise<string>
}

/** A plain message and a reply; joins, pins and the like are none. */
const SPOKEN: readonly number[] = [0, 19]

function isForUs(message: GatewayMessageCreateDispatchData, botUserId: string): boolean {
  if (message.author.bot || message.webhook_id !== undefined || message.author.id === botUserId) return false
  if (!SPOKEN.includes(message.type)) return false
  if (message.guild_id === undefined) return true
  const named = new RegExp(`<@!?${botUserId}>`)
  return (message.mentions ?? []).some((user) => user.id === botUserId) || named.test(message.content ?? '')
}

/** A message from the gateway. Edits never come here. */
export async function onMessage(message: GatewayMessageCreateDispatchData, inlet: Inlet): Promise<void> {
  if (!isForUs(message, inlet.botUserId())) return
  const home = message.guild_id === undefined ? message.channel_id : await inlet.homeOf(message.channel_id)
  const key = channelKey(message.guild_id, home)
  if (!inlet.desk.take(key, message.id)) return
  const place: Place = { is: 'message', channel: message.channel_id, replyTo: message.id }
  await inlet.desk.answer({
    channel: key,
    id: message.id,
    find: async () => ({
      text: decodeDiscord(message.content ?? '', inlet.botUserId(), message.mentions ?? []),
      photos: photosOf(
        message.attachments?.map(({ id, filename, content_type, url }) => ({
          id,
          name: filename,
          type: content_type,
          url,
        })),
      ),
    }),
    person: message.author.id,
    personName: message.member?.nick ?? message.author.global_name ?? message.author.username,
    post: (shown) => inlet.poster.reply(place, shown),
    sayOnly: (sentence) => inlet.poster.sentence(place, sentence),
  })
}

type Deferrable = APIChatInputApplicationCommandInteraction | APIMessageComponentInteraction | APIModalSubmitInteraction

function keyOf(interaction: Deferrable): ChannelKey {
  const channel = interaction.channel as { id?: string; type?: number; parent_id?: string | null } | undefined
  const id = interaction.channel_id ?? channel?.id ?? interaction.id
  const home = isThread(channel?.type) ? (channel?.parent_id ?? id) : id
  return channelKey(interaction.guild_id, home)
}

const personOf = (interaction: Deferrable) => {
  const user = interaction.member?.user ?? interaction.user
  return {
    person: user?.id ?? '',
    personName: interaction.member?.nick ?? user?.global_name ?? user?.username,
  }
}

/** Acknowledges at once, and answers in the channel's turn. */
async function deferred(
  interaction: Deferrable,
  inlet: Inlet,
  find: (key: ChannelKey) => Promise<Found | 'gone'>,
): Promise<void> {
  const key = keyOf(interaction)
  if (!inlet.desk.take(key, interaction.id)) return
  const { application_id: application, token } = interaction
  const channel = interaction.channel_id ?? interaction.channel?.id ?? ''
  // Not awaited here: what comes next in this channel must not overtake.
  const place = inlet.poster
    .acknowledge(interaction, { type: 5, data: {} })
    .then((taken): Place => (taken ? { is: 'interaction', channel, application, token } : { is: 'message', channel }))
  await inlet.desk.answer({
    channel: key,
    id: interaction.id,
    ...personOf(interaction),
    language: languageOf(interaction.locale, inlet.backing),
    find: () => find(key),
    post: async (shown) => inlet.poster.reply(await place, shown),
    sayOnly: async (sentence) => inlet.poster.sentence(await place, sentence),
    nothing: async () => inlet.poster.withdraw(await place),
  })
}

function optionOf(
  interaction: APIChatInputApplicationCommandInteraction | APIApplicationCommandAutocompleteInteraction,
): string {
  const option = interaction.data.options?.find((one) => one.name === OPTION_NAME)
  return option && 'value' in option ? String(option.value) : ''
}

async function openForm(interaction: Deferrable, language: string, inlet: Inlet): Promise<void> {
  if (!inlet.desk.take(keyOf(interaction), interaction.id)) return
  await inlet.poster.acknowledge(interaction, { type: 9, data: formModal(inlet.backing.words(language), language) })
}

async function onCommand(interaction: APIChatInputApplicationCommandInteraction, inlet: Inlet): Promise<void> {
  const text = decodeDiscord(optionOf(interaction), inlet.botUserId())
  const form = formAsked(text, inlet.backing)
  if (form !== null) return openForm(interaction, form, inlet)
  return deferred(interaction, inlet, async () => ({ text }))
}

async function onComponent(interaction: APIMessageComponentInteraction, inlet: Inlet): Promise<void> {
  const [kind, stored, index] = interaction.data.custom_id.split(':')
  if (kind === CUSTOM_FORM) {
    const language = languageOf(interaction.locale, inlet.backing) ?? inlet.backing.languages[0] ?? ''
    return openForm(interaction, language, inlet)
  }
  return deferred(interaction, inlet, async (key) => {
    return kind === CUSTOM_OFFER ? inlet.desk.recallPress(key, stored ?? '', Number(index)) : 'gone'
  })
}

async function onForm(interaction: APIModalSubmitInteraction, inlet: Inlet): Promise<void> {
  const [, language] = interaction.data.custom_id.split(':')
  const words = inlet.backing.words(language ?? '')
  return deferred(interaction, inlet, async () => ({ text: formMessage(words, formValues(interaction)) }))
}

async function onAutocomplete(interaction: APIApplicationCommandAutocompleteInteraction, inlet: Inlet): Promise<void> {
  const choices = suggest(optionOf(interaction), inlet.backing.choices)
  await inlet.poster.acknowledge(interaction, { type: 8, data: { choices } })
}

/** Any interaction from the gateway. */
export async function onInteraction(interaction: APIInteraction, inlet: Inlet): Promise<void> {
  switch (interaction.type) {
    case 2:
      if (interaction.data.type === 1) await onCommand(interaction as APIChatInputApplicationCommandInteraction, inlet)
      return
    case 3:
      return onComponent(interaction, inlet)
    case 4:
      return onAutocomplete(interaction, inlet)
    case 5:
      return onForm(interaction, inlet)
    default:
      return
  }
}
