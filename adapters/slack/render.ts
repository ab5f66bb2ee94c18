/** A reply to Block Kit. Every text is plain text, so that nothing a crew typed becomes markup. */
import type { types } from '@slack/bolt'
import type { Reply } from '../../src/reply.ts'
import { type Body, fitBody, plainText } from '../body.ts'
import type { Words } from '../contract.ts'
import { offersForm } from '../form.ts'
import { shorten, split } from '../text.ts'
import { escapeSlack } from './escape.ts'
import { SLACK } from './limits.ts'

type KnownBlock = types.KnownBlock

export type SlackMessage = {
  readonly text: string
  readonly blocks: KnownBlock[]
  /** The whole answer for a file, when it was too long to show. */
  readonly overflow: string | null
}

export const ACTION_OFFER = 'offer'
export const ACTION_FORM = 'form'

const plain = (text: string) => ({ type: 'plain_text' as const, text, emoji: false })

const sections = (text: string): KnownBlock[] =>
  split(text, SLACK.textObject).map((piece) => ({ type: 'section' as const, text: plain(piece) }))

const contexts = (lines: readonly string[]): KnownBlock[] =>
  lines.flatMap((line) => split(line, SLACK.textObject)).map((piece) => ({ type: 'context', elements: [plain(piece)] }))

const button = (actionId: string, label: string, value: string) => ({
  type: 'button' as const,
  action_id: actionId.slice(0, SLACK.actionId),
  text: plain(shorten(escapeSlack(label) || '…', SLACK.buttonText)),
  value: value.slice(0, SLACK.buttonValue),
})

function buttons(reply: Reply, key: string | null, words: Words): KnownBlock[] {
  const offers =
    key === null ? [] : reply.offers.map((offer, n) => button(`${ACTION_OFFER}:${n}`, offer.label, `${key}:${n}`))
  const form = offersForm(reply) ? [button(ACTION_FORM, words.formButton, ACTION_FORM)] : []
  const elements = [...offers.slice(0, SLACK.actionElements - form.length), ...form]
  return elements.length === 0 ? [] : [{ type: 'actions', elements }]
}

function bodyBlocks(body: Body, words: Words): KnownBlock[] {
  const more = body.overflow === null ? [] : [escapeSlack(words.more)]
  return [
    ...sections(body.answer),
    ...sections([...body.details, ...more].join('\n')),
    ...sections(body.warnings.join('\n')),
    ...contexts(body.notes),
  ]
}

/** The message for `chat.postMessage`: blocks, and `text` for notifications and screen readers. */
export function renderSlack(reply: Reply, key: string | null, words: Words): SlackMessage {
  const body = fitBody(reply, { escape: escapeSlack, answer: SLACK.textObject, rest: SLACK.visible })
  const blocks = [...bodyBlocks(body, words), ...buttons(reply, key, words)].slice(0, SLACK.blocks)
  const text = shorten(escapeSlack(plainText(reply)), SLACK.messageText)
  return { text, blocks, overflow: body.overflow }
}

/** A plain sentence: a reminder, or why nothing was answered. */
export const renderSentence = (sentence: string): SlackMessage => {
  const text = escapeSlack(sentence)
  return { text: shorten(text, SLACK.messageText), blocks: sections(text).slice(0, SLACK.blocks), overflow: null }
}
