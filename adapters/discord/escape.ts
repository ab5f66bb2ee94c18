/** Discord's text rules, both ways: what comes in is made readable, what goes out is neither markup nor a mention. */
import type { APIUser } from 'discord.js'
import { BREAK, clean, inert } from '../text.ts'

/** Text as text: markdown escaped, mentions, timestamps, emoji and links broken. */
export const escapeDiscord = (text: string): string =>
  inert(text)
    .replaceAll('](', `]${BREAK}(`)
    .replace(/[\\*_~`|[\]<>]/g, '\\$&')
    // "<" opens mentions, emoji, timestamps and links when a sign or letter follows.
    .replace(/\\<(?=[^\s\d.\\])/g, `\\<${BREAK}`)
    // At the start of a line: headings, lists, small print.
    .replace(/^(\s*)(#{1,3}|[-+])(?=\s|#)/gm, '$1\\$2')
    .replace(/^(\s*\d+)([.)])(?=\s)/gm, '$1\\$2')

type Named = Pick<APIUser, 'id' | 'username'> & { global_name?: string | null }

/** The text as the person typed it: the bot's own mention gone, other mentions as names, custom emoji as their names. */
export function decodeDiscord(text: string, botUserId: string, named: readonly Named[] = []): string {
  const name = (id: string): string => {
    const found = named.find((one) => one.id === id)
    return found ? `@${found.global_name ?? found.username}` : ''
  }
  return clean(
    text
      .replace(new RegExp(`<@!?${botUserId.replace(/\D/g, '')}>[,:]?`, 'g'), ' ')
      .replace(/<@!?(\d+)>/g, (_, id: string) => name(id))
      .replace(/<(?:@&|#)\d+>/g, '')
      .replace(/<a?:(\w+):\d+>/g, '$1')
      .replace(/<(https?:\/\/[^\s>]+)>/g, '$1'),
  ).trim()
}
