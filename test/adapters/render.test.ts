/** Replies to platform messages, as tables; and the edges of each limit. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { ActionRowBuilder, type ButtonBuilder, EmbedBuilder, ModalBuilder, SlashCommandBuilder } from 'discord.js'
import { describe, expect, test } from 'vitest'
import { attachments } from '../../adapters/attachments.ts'
import { commandBody, holds, suggest } from '../../adapters/discord/command.ts'
import { formModal, formValues } from '../../adapters/discord/modal.ts'
import { inviteLink } from '../../adapters/discord/permissions.ts'
import { bodyOf, renderDiscord } from '../../adapters/discord/render.ts'
import { formMessage } from '../../adapters/form.ts'
import { createLog } from '../../adapters/logging.ts'
import { renderSlack } from '../../adapters/slack/render.ts'
import { formView, homeView } from '../../adapters/slack/views.ts'
import { replyOf, testBacking } from '../support/backing.ts'
import { blockProblems, viewProblems } from '../support/block-kit.ts'
import { messageProblems, schemaProblems } from '../support/discord-schema.ts'
import { testWords } from '../support/words.ts'

const full = replyOf({
  answer: '9 boxes, 4 bags',
  details: ['64 tiles on 117 sq ft', 'Smallest cut 9 1/2 in'],
  assumed: ['tile 3/8 in thick', 'spare 10 %'],
  warnings: ['dust. Cut wet.'],
  sources: ['grey mortar sheet, 2025'],
  offers: [
    { id: 'math', label: 'Show the math', say: 'show the math' },
    { id: 'keep', label: 'Keep in job', say: 'keep that' },
  ],
})

const plain = (text: string) => ({ type: 'plain_text', text, emoji: false })
const button = (n: number, label: string) => ({
  type: 'button',
  action_id: `offer:${n}`,
  text: plain(label),
  value: `key:${n}`,
})

test('a whole reply in Slack', () => {
  expect(renderSlack(full, 'key', testWords)).toEqual({
    text: [
      '9 boxes, 4 bags',
      '64 tiles on 117 sq ft',
      'Smallest cut 9 1/2 in',
      'Caution: dust. Cut wet.',
      'Assumed: tile 3/8 in thick; spare 10 %',
      'Sources: grey mortar sheet, 2025',
    ].join('\n'),
    blocks: [
      { type: 'section', text: plain('9 boxes, 4 bags') },
      { type: 'section', text: plain('64 tiles on 117 sq ft\nSmallest cut 9 1/2 in') },
      { type: 'section', text: plain('Caution: dust. Cut wet.') },
      { type: 'context', elements: [plain('Assumed: tile 3/8 in thick; spare 10 %')] },
      { type: 'context', elements: [plain('Sources: grey mortar sheet, 2025')] },
      { type: 'actions', elements: [button(0, 'Show the math'), button(1, 'Keep in job')] },
    ],
    overflow: null,
  })
})

test('a whole reply in Discord', () => {
  expect(renderDiscord(full, bodyOf(full), 'key', testWords)).toEqual({
    content: '9 boxes, 4 bags',
    embeds: [
      {
        description: [
          '64 tiles on 117 sq ft',
          'Smallest cut 9 1/2 in',
          'Caution: dust. Cut wet.',
          'Assumed: tile 3/8 in thick; spare 10 %',
          'Sources: grey mortar sheet, 2025',
        ].join('\n'),
      },
    ],
    components: [
      {
        type: 1,
        components: [
          { type: 2, style: 2, custom_id: 'offer:key:0', label: 'Show the math' },
          { type: 2, style: 2, custom_id: 'offer:key:1', label: 'Keep in job' },
        ],
      },
    ],
    allowed_mentions: { parse: [], replied_user: false },
  })
})

test('without a kept state there are no buttons; a question and help offer the form', () => {
  expect(renderSlack(full, null, testWords).blocks.some((block) => block.type === 'actions')).toBe(false)
  expect(renderDiscord(full, bodyOf(full), null, testWords).components).toEqual([])
  const asking = replyOf({ ok: false, problem: { code: 'question', message: 'What tile?', at: null } })
  for (const reply of [asking, replyOf({ topic: 'help' })]) {
    expect(renderSlack(reply, null, testWords).blocks.at(-1)).toMatchObject({ elements: [{ action_id: 'form' }] })
    expect(renderDiscord(reply, bodyOf(reply), null, testWords).components[0]).toMatchObject({
      components: [{ custom_id: 'form', label: 'Fill in boxes' }],
    })
  }
})

describe('at the edges', () => {
  const lengths = [0, 1, 1899, 1900, 1901, 1999, 2000, 2001, 2999, 3000, 3001, 4096, 6000, 9000, 12_000, 50_000]
  test.each(lengths)('an echo of %i characters keeps every limit of both', (length) => {
    for (const unit of ['a', '*', '<', '&', '😀', 'a b ', 'a\n']) {
      const text = unit.repeat(Math.ceil(length / unit.length)).slice(0, length)
      const reply = replyOf({ answer: text, details: [text, text], warnings: [text], assumed: [text] })
      const slack = renderSlack(reply, null, testWords)
      if (length > 0) expect(blockProblems(slack.blocks)).toEqual([])
      const body = bodyOf(reply)
      expect(messageProblems(renderDiscord(reply, body, null, testWords))).toEqual([])
      if (length >= 9000) expect(slack.overflow).toContain(text.slice(0, 1000).toWellFormed().slice(0, 900))
      if (length >= 2001) expect(body.overflow).not.toBeNull()
    }
  })

  test('a first line of 2,000 fits Discord whole, one of 2,001 goes on in the file', () => {
    expect(bodyOf(replyOf({ answer: 'a'.repeat(2000) }))).toMatchObject({ overflow: null })
    const over = replyOf({ answer: 'a'.repeat(2001) })
    expect(bodyOf(over).overflow).toBe('a'.repeat(2001))
    expect(bodyOf(over).answer).toHaveLength(2000)
    expect(renderDiscord(over, bodyOf(over), null, testWords).embeds[0]?.description).toContain(testWords.more)
  })

  test.each([24, 25, 26, 60])('%i offers and the form', (count) => {
    const offers = Array.from({ length: count }, (_, n) => ({ id: `${n}`, label: 'x'.repeat(100), say: 's' }))
    const reply = replyOf({ topic: 'help', offers })
    const slack = renderSlack(reply, 'k', testWords)
    expect(blockProblems(slack.blocks)).toEqual([])
    expect(slack.blocks.at(-1)).toMatchObject({ elements: { length: Math.min(count + 1, 25) } })
    const discord = renderDiscord(reply, bodyOf(reply), 'k', testWords)
    expect(messageProblems(discord)).toEqual([])
    expect(discord.components.flatMap((row) => row.components)).toHaveLength(Math.min(count + 1, 25))
  })
})

test('the builders of discord.js take what is sent', () => {
  const discord = renderDiscord(full, bodyOf(full), 'key', testWords)
  expect(EmbedBuilder.from(discord.embeds[0]!).toJSON()).toEqual(discord.embeds[0])
  expect(ActionRowBuilder.from<ButtonBuilder>(discord.components[0] as never).toJSON()).toMatchObject(
    discord.components[0] as object,
  )
  const modal = formModal(testWords, 'en')
  expect(new ModalBuilder(modal as never).toJSON()).toMatchObject({ custom_id: 'form:en' })
  const command = new SlashCommandBuilder()
    .setName('kneepad')
    .setDescription(testWords.commandDescription)
    .addStringOption((option) =>
      option
        .setName('message')
        .setDescription(testWords.commandHint)
        .setRequired(true)
        .setMaxLength(2000)
        .setAutocomplete(true),
    )
    .toJSON()
  const { integration_types, contexts, ...ours } = commandBody(testBacking())
  expect(
    holds(ours, {
      ...command,
      description_localizations: {},
      options: [{ ...command.options?.[0], description_localizations: {} }],
    }),
  ).toBe(true)
  expect(schemaProblems('ApplicationCommandUpdateRequest', commandBody(testBacking()))).toEqual([])
})

test('the views of Slack keep its limits, with long words too', () => {
  const long = Object.fromEntries(Object.entries(testWords).map(([key, word]) => [key, word.padEnd(400, 'x')]))
  for (const words of [testWords, long as typeof testWords]) {
    expect(viewProblems(formView(words, { channel: 'C1', thread: '1.2', language: 'en' }))).toEqual([])
    expect(viewProblems(homeView(words, { language: 'en', units: 'metres' }, 'D1'))).toEqual([])
    expect(schemaProblems('ModalInteractionCallbackRequest', { type: 9, data: formModal(words, 'en') })).toEqual([])
  }
})

test('a filled-in form is a message', () => {
  expect(formMessage(testWords, { room: ' 10x13 ', tile: '18x18', joint: '' })).toBe('10x13 room, 18x18 tile')
  expect(formMessage(testWords, {})).toBe('')
  const components = [
    { type: 1, components: [{ type: 4, custom_id: 'room', value: '9x9' }] },
    { type: 18, component: { type: 4, custom_id: 'tile', value: '8x48' } },
    { type: 1, components: [{ type: 4, custom_id: 'other', value: 'no' }] },
  ]
  expect(formValues({ data: { components } } as never)).toEqual({ room: '9x9', tile: '8x48' })
})

test.each([
  ['', ['18x18', '8x48', 'grey mortar', 'fine grout']],
  ['10x13, ', ['10x13, 18x18', '10x13, 8x48', '10x13, grey mortar', '10x13, fine grout']],
  ['10x13, 1', ['10x13, 18x18']],
  ['how much grey mo', ['how much grey mortar']],
  ['how much GREY', ['how much grey mortar']],
  ['18x18', []],
  ['zzz', []],
  ['x'.repeat(2000), []],
])('autocomplete of %j', (typed, offered) => {
  const choices = suggest(typed, testBacking().choices)
  expect(choices.map((choice) => choice.value)).toEqual(offered)
})

test('autocomplete gives no more than 25 choices of 100 characters', () => {
  const sizes = Array.from({ length: 60 }, (_, n) => `${n}x${n}`)
  expect(suggest('', { sizes, materials: [] })).toHaveLength(25)
  const typed = `${'x'.repeat(96)} 1`
  for (const choice of suggest(typed, { sizes, materials: [] })) expect(choice.value.length).toBeLessThanOrEqual(100)
})

test('the link asks for six permissions and no more', () => {
  const link = new URL(inviteLink('123'))
  // View channels 1024, send 2048, embed 16384, attach 32768, history 65536, send in threads 2^38.
  expect(link.searchParams.get('permissions')).toBe(String(1024 + 2048 + 16384 + 32768 + 65536 + 2 ** 38))
  expect(link.searchParams.get('scope')).toBe('bot applications.commands')
  const readme = readFileSync(path.join(import.meta.dirname, '../../README.md'), 'utf8')
  expect(readme).toContain(inviteLink('APPLICATION_ID'))
})

test('files that are too large are counted, names are made safe, a picture that fails goes as its drawing', async () => {
  const backing = testBacking({ picture: async () => Promise.reject(new Error('no font')) })
  const files = [
    { name: '../../etc/pass wd.svg', media_type: 'image/svg+xml', text: '<svg/>' },
    { name: 'big.csv', media_type: 'text/csv', text: 'x'.repeat(2000) },
  ]
  const made = await attachments(
    replyOf({ files }),
    'all',
    1000,
    backing,
    createLog('silent', [], () => {}),
  )
  expect(made.left).toBe(1)
  expect(made.files.map(({ name, alt }) => [name, alt])).toEqual([
    ['etc-pass-wd.svg', 'Picture: ../../etc/pass wd.svg'],
    ['answer.txt', testWords.moreAlt],
  ])
})
