/** The form and the home page of the Slack app. */
import type { types } from '@slack/bolt'
import { fill, type Setup, type Words } from '../contract.ts'
import { FIELDS, type Field } from '../form.ts'
import { shorten, split } from '../text.ts'
import { escapeSlack } from './escape.ts'
import { SLACK } from './limits.ts'
import { ACTION_FORM } from './render.ts'

export const FORM = 'quantities_form'

type KnownBlock = types.KnownBlock

/** Where the answer to a form goes; kept in the view itself. */
export type FormTarget = { readonly channel: string; readonly thread?: string; readonly language: string }

const plain = (text: string, limit: number) => ({
  type: 'plain_text' as const,
  text: shorten(escapeSlack(text), limit),
  emoji: false,
})

const input = (field: Field, words: Words): KnownBlock => ({
  type: 'input',
  block_id: field,
  optional: field === 'joint',
  label: plain(words[field], SLACK.inputLabel),
  element: {
    type: 'plain_text_input',
    action_id: field,
    max_length: 500,
    placeholder: plain(words[`${field}Example`], SLACK.placeholder),
  },
})

export const formView = (words: Words, target: FormTarget): types.ModalView => ({
  type: 'modal',
  callback_id: FORM,
  private_metadata: JSON.stringify(target),
  title: plain(words.formTitle, SLACK.viewTitle),
  submit: plain(words.formSend, SLACK.viewTitle),
  close: plain(words.formCancel, SLACK.viewTitle),
  blocks: FIELDS.map((field) => input(field, words)),
})

const section = (text: string): KnownBlock[] =>
  split(escapeSlack(text), SLACK.textObject).map((piece) => ({
    type: 'section',
    text: { type: 'plain_text', text: piece, emoji: false },
  }))

/** Help by example, and the units of the person's direct message `direct`, where an answer to the form goes. */
export const homeView = (words: Words, setup: Setup, direct: string): types.HomeView => ({
  type: 'home',
  blocks: [
    { type: 'header', text: plain(words.homeTitle, 150) },
    ...section(words.homeIntro),
    { type: 'divider' },
    ...section(words.homeExamples),
    { type: 'divider' },
    ...section(fill(words.homeUnits, { units: setup.units })),
    {
      type: 'actions',
      elements: [
        {
          type: 'button',
          action_id: ACTION_FORM,
          value: `${ACTION_FORM}:${direct}`,
          text: plain(words.formButton, SLACK.buttonText),
        },
      ],
    },
  ],
})
