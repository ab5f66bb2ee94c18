/** Escaping and cutting: hostile text is inert on both platforms, whole and in pieces. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitBody, plainText } from '../../adapters/body.ts'
import { decodeDiscord, escapeDiscord } from '../../adapters/discord/escape.ts'
import { bodyOf, renderDiscord } from '../../adapters/discord/render.ts'
import { decodeSlack, escapeSlack } from '../../adapters/slack/escape.ts'
import { renderSlack } from '../../adapters/slack/render.ts'
import { BREAK, cut, shorten, split } from '../../adapters/text.ts'
import { replyOf } from '../support/backing.ts'
import { blockProblems } from '../support/block-kit.ts'
import { messageProblems } from '../support/discord-schema.ts'
import { testWords } from '../support/words.ts'

/** Pieces that platforms read as markup, and what joins them. */
const hostile = fc
  .array(
    fc.oneof(
      fc.constantFrom(
        '@everyone',
        '@here',
        '@channel',
        '<@U123ABC>',
        '<@!123456789012345678>',
        '<@&123456789012345678>',
        '<#C1|x>',
        '<!channel>',
        '<!here|here>',
        '<!subteam^S1>',
        '<!everyone>',
        '<https://evil.example|here>',
        '[a](https://evil.example)',
        'https://evil.example',
        'HTTP://evil.example',
        '<t:0>',
        '</kneepad:1>',
        '<:a:1>',
        '*',
        '_',
        '~~',
        '||',
        '`',
        '```',
        '> ',
        '# ',
        '- ',
        '&lt;',
        '&amp;lt;!channel&gt;',
        '\\',
        '\n',
        ' ',
        '1. ',
        '<',
        '>',
        '@',
        '&',
        '😀',
        '\ud800',
        '\u202e',
        '\u0000',
        BREAK,
      ),
      fc.string({ unit: 'binary', maxLength: 8 }),
    ),
    { maxLength: 60 },
  )
  .map((parts) => parts.join(''))

/** What Slack would read as a mention or link: "<" with one of its signs. */
const SLACK_LIVE = /<[@#!a-z]|@(everyone|here|channel)\b/i
/** What Discord would read as a mention, timestamp, emoji, command or masked link: unescaped. */
const DISCORD_LIVE = /<(@|#|t:|a?:|\/|https?:)|@(everyone|here)\b|\]\(|https?:\/\//i
/** Formatting signs without a backslash before them. */
const DISCORD_BARE = /(?<!\\)(?:\\\\)*[*_~`|[\]<>]/

describe('hostile text', () => {
  test('is inert in Slack', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const escaped = escapeSlack(text)
        expect(escaped).not.toMatch(/[<>]/)
        expect(escaped).not.toMatch(SLACK_LIVE)
        expect(escaped.replace(/&(amp|lt|gt);/g, '')).not.toContain('&')
        expect(escaped.isWellFormed()).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })

  test('is inert in Discord', () => {
    fc.assert(
      fc.property(hostile, (text) => {
        const escaped = escapeDiscord(text)
        expect(escaped).not.toMatch(DISCORD_LIVE)
        expect(escaped).not.toMatch(DISCORD_BARE)
        expect(escaped).not.toMatch(/^\s*(#{1,3}|[-+]|\d+[.)]) /m)
        expect(escaped.isWellFormed()).toBe(true)
      }),
      { numRuns: 2000 },
    )
  })

  test('stays inert and within every limit in whole messages', () => {
    const long = fc.array(hostile, { maxLength: 25 })
    fc.assert(
      fc.property(hostile, long, long, long, long, fc.boolean(), (answer, details, warnings, assumed, labels, bad) => {
        const offers = labels.map((label, n) => ({ id: `o${n}`, label, say: label }))
        const problem = bad ? { code: 'question', message: answer, at: null } : null
        const reply = replyOf({ answer: `x${answer}`, details, warnings, assumed, sources: assumed, offers, problem })
        const slack = renderSlack(reply, 'k', testWords)
        expect(blockProblems(slack.blocks)).toEqual([])
        expect(slack.text.length).toBeLessThanOrEqual(4000)
        expect(JSON.stringify(slack)).not.toMatch(SLACK_LIVE)
        for (const text of JSON.stringify(slack.blocks).matchAll(/"type":"(mrkdwn|rich_text)/g)) expect(text).toBeNull()
        const body = bodyOf(reply)
        const discord = renderDiscord(reply, body, 'k', testWords)
        expect(messageProblems(discord)).toEqual([])
        expect(discord.content).not.toMatch(DISCORD_LIVE)
        expect(discord.embeds[0]?.description ?? '').not.toMatch(DISCORD_LIVE)
        expect(discord.allowed_mentions).toEqual({ parse: [], replied_user: false })
      }),
      { numRuns: 200 },
    )
  })
})

test('what was escaped for Slack reads again as it was typed', () => {
  fc.assert(
    fc.property(fc.string({ unit: fc.constantFrom(...'aé1 /×½"\'<>&;#!@') }), (text) => {
      expect(decodeSlack(escapeSlack(text), 'UBOT').replaceAll(BREAK, '')).toBe(text.trim())
    }),
  )
})

test.each([
  ['<@UBOT> 10x13', '10x13'],
  ['<@UBOT|kneepad>: 10x13', '10x13'],
  ['hey <@UBOT>, 3 &lt; 4 &amp;&amp; 5 &gt; 4', 'hey   3 < 4 && 5 > 4'],
  ['&amp;lt;', '&lt;'],
  ['<b> 1 < 2 | 3 > 2', '<b> 1 < 2 | 3 > 2'],
  ['ask <@U2|ana> in <#C1|floor>', 'ask @ana in #floor'],
  ['<mailto:a@b.example|a@b.example> <tel:+15551234|555-1234>', 'a@b.example 555-1234'],
  ['<https://x.example/a|sheet> <https://x.example>', 'sheet https://x.example'],
  ['<!date^1^{date}|today> <!here>', 'today @here'],
])('Slack text %j is heard as %j', (raw, heard) => {
  expect(decodeSlack(raw, 'UBOT')).toBe(heard)
})

test.each([
  ['<@42> 10x13', '10x13'],
  ['<@!42>: 10x13', '10x13'],
  ['<@42> is <@7> right? <#9> <:tile:123>', 'is @Ana right?  tile'],
  ['3 < 4 > 2', '3 < 4 > 2'],
])('Discord text %j is heard as %j', (raw, heard) => {
  expect(decodeDiscord(raw, '42', [{ id: '7', username: 'ana7', global_name: 'Ana' }])).toBe(heard)
})

test.each([
  ['joint < 1/8 in', 'joint \\< 1/8 in'],
  ['2*3_4', '2\\*3\\_4'],
  ['# big\n- one\n1. two', '\\# big\n\\- one\n1\\. two'],
  ['10.5 ft', '10.5 ft'],
  ['1-1/2 in, -5 C', '1-1/2 in, -5 C'],
  ['<@1>', `\\<${BREAK}@${BREAK}1\\>`],
])('%j is written for Discord as %j', (text, written) => {
  expect(escapeDiscord(text)).toBe(written)
})

describe('cutting', () => {
  test('loses nothing and tears nothing apart', () => {
    const text = fc
      .array(fc.constantFrom('a', ' ', '\n', '😀', '&amp;', '&lt;', '\\*', '\\\\', 'é'), { maxLength: 200 })
      .map((parts) => parts.join(''))
    fc.assert(
      fc.property(text, fc.integer({ min: 6, max: 50 }), (whole, limit) => {
        const pieces = split(whole, limit)
        for (const piece of pieces) {
          expect(piece.length).toBeLessThanOrEqual(limit)
          expect(piece.isWellFormed()).toBe(true)
          expect(piece).toMatch(/^(\\.|&(amp|lt|gt);|[^\\&])*$/su)
        }
        expect(pieces.join('').replace(/\s/g, '')).toBe(whole.replace(/\s/g, ''))
      }),
    )
  })

  test.each([1999, 2000, 2001])('at the edge: %i characters into 2,000', (length) => {
    const text = shorten('a'.repeat(length), 2000)
    expect(text.length).toBe(Math.min(length, 2000))
    expect(text.endsWith('…')).toBe(length > 2000)
  })

  test('prefers a line or word end that is near', () => {
    expect(cut('one two three', 9)).toEqual({ head: 'one two', rest: 'three' })
    expect(cut('one two\nthree four', 12)).toEqual({ head: 'one two', rest: 'three four' })
    expect(cut('x'.repeat(30), 10)).toEqual({ head: 'x'.repeat(10), rest: 'x'.repeat(20) })
  })
})

test('cautions stay when details have to go, and the file holds everything', () => {
  const details = Array.from({ length: 300 }, (_, n) => `detail ${n} ${'x'.repeat(40)}`)
  const reply = replyOf({ details, warnings: ['Old floor: have it tested for asbestos first.'], sources: ['sheet A'] })
  const body = fitBody(reply, { escape: (text) => text, answer: 2000, rest: 3000 })
  expect(body.warnings).toEqual(['Caution: Old floor: have it tested for asbestos first.'])
  expect(body.notes).toEqual(['Sources: sheet A'])
  expect(body.details.length).toBeGreaterThan(20)
  expect(body.overflow).toBe(plainText(reply))
  expect(body.overflow?.split('\n')).toHaveLength(303)
})
