/** Slack's text rules, both ways: what comes in is decoded, what goes out is escaped and cannot mention anyone. */
import { clean, inert } from '../text.ts'

/** `&`, `<` and `>` as entities: Slack's rule for text that is not markup. */
export const escapeSlack = (text: string): string =>
  inert(text).replace(/&/g, '&amp;').replace(/</g, '&lt;').replace(/>/g, '&gt;')

/** `<…>` in an incoming message: a person, channel, group, date or link. Any other "<" is one that was typed. */
const MARKUP = /<(?:([@#!])([^<>|]*)|((?:https?:\/\/|mailto:|tel:)[^<>|]*))(?:\|([^<>]*))?>/g

function readable(sign: string, target: string, label: string | undefined): string {
  if (sign === '@') return label ? `@${label}` : ''
  if (sign === '#') return label ? `#${label}` : ''
  if (sign === '!') return label ?? (target.startsWith('date^') ? '' : `@${target.split('^')[0]}`)
  // Phones and the desktop client turn "10.5x12.com" or a size into a link: the label is what was typed.
  return label ?? target.replace(/^(mailto|tel):/, '')
}

/** The text as the person typed it: the bot's own mention gone, entities decoded. */
export const decodeSlack = (text: string, botUserId: string): string =>
  clean(
    text
      .replace(new RegExp(`<@${botUserId.replace(/\W/g, '')}(\\|[^<>]*)?>[,:]?`, 'g'), ' ')
      .replace(MARKUP, (_, sign = '', target = '', link = '', label?: string) => readable(sign, target || link, label))
      .replace(/&lt;/g, '<')
      .replace(/&gt;/g, '>')
      .replace(/&amp;/g, '&'),
  ).trim()

export const mentions = (text: string, userId: string): boolean =>
  text.includes(`<@${userId}>`) || text.includes(`<@${userId}|`)
