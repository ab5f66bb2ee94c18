/** A reply to a Discord message: the answer as content, the rest as one embed, offers as buttons. */
import type { APIActionRowComponent, APIButtonComponentWithCustomId, APIEmbed } from 'discord.js'
import type { Reply } from '../../src/reply.ts'
import { type Body, fitBody } from '../body.ts'
import type { Words } from '../contract.ts'
import { offersForm } from '../form.ts'
import { shorten } from '../text.ts'
import { escapeDiscord } from './escape.ts'
import { DISCORD } from './limits.ts'

export const CUSTOM_OFFER = 'offer'
export const CUSTOM_FORM = 'form'

type Row = APIActionRowComponent<APIButtonComponentWithCustomId>

export type DiscordMessage = {
  readonly content: string
  readonly embeds: APIEmbed[]
  readonly components: Row[]
  /** Nobody is ever pinged, the asker included. */
  readonly allowed_mentions: { readonly parse: readonly []; readonly replied_user: false }
}

const NO_MENTIONS = { parse: [], replied_user: false } as const
/** Kept free in the embed for the lines that are added to a long answer. */
const RESERVE = 400

const button = (custom_id: string, label: string): APIButtonComponentWithCustomId => ({
  type: 2,
  style: 2,
  custom_id: custom_id.slice(0, DISCORD.customId),
  label: shorten(label.trim() || '…', DISCORD.buttonLabel),
})

function rows(buttons: readonly APIButtonComponentWithCustomId[]): Row[] {
  const made: Row[] = []
  for (let at = 0; at < buttons.length && made.length < DISCORD.rows; at += DISCORD.rowButtons)
    made.push({ type: 1, components: buttons.slice(at, at + DISCORD.rowButtons) })
  return made
}

function buttonsOf(reply: Reply, key: string | null, words: Words): Row[] {
  const offers = key === null ? [] : reply.offers.map((offer, n) => button(`${CUSTOM_OFFER}:${key}:${n}`, offer.label))
  const form = offersForm(reply) ? [button(CUSTOM_FORM, words.formButton)] : []
  return rows([...offers.slice(0, DISCORD.rows * DISCORD.rowButtons - form.length), ...form])
}

/** The reply escaped and cut to one message; `overflow` is the text of the file the rest goes to. */
export const bodyOf = (reply: Reply): Body =>
  fitBody(reply, {
    escape: escapeDiscord,
    answer: DISCORD.content,
    rest: DISCORD.embedDescription - RESERVE,
  })

/** The message of a body. `remark` is a sentence about files that could not be added. */
export function renderDiscord(
  reply: Reply,
  body: Body,
  key: string | null,
  words: Words,
  remark: string | null = null,
): DiscordMessage {
  const more = body.overflow === null ? [] : [escapeDiscord(words.more)]
  const said = remark === null ? [] : [escapeDiscord(remark)]
  const lines = [...body.details, ...more, ...body.warnings, ...body.notes, ...said]
  const description = shorten(lines.join('\n'), DISCORD.embedDescription)
  return {
    content: body.answer === '' ? '…' : body.answer,
    embeds: description.trim() === '' ? [] : [{ description }],
    components: buttonsOf(reply, key, words),
    allowed_mentions: NO_MENTIONS,
  }
}

export const renderSentence = (sentence: string): DiscordMessage => ({
  content: shorten(escapeDiscord(sentence), DISCORD.content),
  embeds: [],
  components: [],
  allowed_mentions: NO_MENTIONS,
})
