/** The slash command, registered only when it changed, and what autocomplete offers while it is typed. */
import type {
  APIApplicationCommandOptionChoice,
  REST,
  RESTPostAPIChatInputApplicationCommandsJSONBody,
} from 'discord.js'
import type { Backing, Choices } from '../contract.ts'
import { shorten } from '../text.ts'
import { DISCORD } from './limits.ts'

export const COMMAND_NAME = 'kneepad'
export const OPTION_NAME = 'message'

/** Discord's names of a language that we have. */
const LOCALES: Readonly<Record<string, readonly string[]>> = { es: ['es-ES', 'es-419'] }

const localized = (backing: Backing, word: 'commandDescription' | 'commandHint'): Record<string, string> =>
  Object.fromEntries(
    backing.languages.flatMap((language) =>
      (LOCALES[language] ?? []).map((locale) => [
        locale,
        shorten(backing.words(language)[word], DISCORD.commandDescription),
      ]),
    ),
  )

/** Our language for a locale of Discord's, or undefined. */
export const languageOf = (locale: string | undefined, backing: Backing): string | undefined =>
  backing.languages.find((language) => locale?.split('-')[0] === language)

/** One command with one required option: the whole message as free text. */
export function commandBody(backing: Backing): RESTPostAPIChatInputApplicationCommandsJSONBody {
  const words = backing.words(backing.languages[0] ?? '')
  return {
    type: 1,
    name: COMMAND_NAME,
    description: shorten(words.commandDescription, DISCORD.commandDescription),
    description_localizations: localized(backing, 'commandDescription'),
    options: [
      {
        type: 3,
        name: OPTION_NAME,
        description: shorten(words.commandHint, DISCORD.commandDescription),
        description_localizations: localized(backing, 'commandHint'),
        required: true,
        max_length: DISCORD.optionLength,
        autocomplete: true,
      },
    ],
    // In servers, and in direct messages with the bot.
    integration_types: [0],
    contexts: [0, 1],
  }
}

/** True when everything we say of the command is so already; Discord adds fields of its own. */
export function holds(ours: unknown, theirs: unknown): boolean {
  if (Array.isArray(ours))
    return Array.isArray(theirs) && ours.length === theirs.length && ours.every((one, n) => holds(one, theirs[n]))
  if (ours !== null && typeof ours === 'object') {
    const entries = Object.entries(ours)
    const other = (theirs ?? {}) as Record<string, unknown>
    return entries.every(([key, value]) => holds(value, other[key]))
  }
  return (ours ?? null) === (theirs ?? null)
}

/** Registers the command when Discord knows another one or none; tells whether it did. */
export async function registerCommand(rest: REST, applicationId: string, backing: Backing): Promise<boolean> {
  const body = commandBody(backing)
  const route = `/applications/${applicationId}/commands` as const
  const query = new URLSearchParams({ with_localizations: 'true' })
  const known = await rest.get(route, { query }).catch((error: { status?: number }) => {
    if (error.status === 404) return []
    throw error
  })
  if (Array.isArray(known) && known.length === 1 && holds(body, known[0])) return false
  await rest.put(route, { body: [body] })
  return true
}

/** What the last words of the text may become: tile sizes and materials that begin so, the longest beginning first. */
export function suggest(typed: string, choices: Choices): APIApplicationCommandOptionChoice<string>[] {
  const pieces = typed.split(/(?<=[\s,])/)
  const open = typed === '' || /[\s,]$/.test(typed)
  const beginnings = open
    ? [{ before: typed, begun: '' }]
    : [3, 2, 1]
        .filter((words) => words <= pieces.length)
        .map((words) => ({ before: pieces.slice(0, -words).join(''), begun: pieces.slice(-words).join('') }))
  const found = beginnings.flatMap(({ before, begun }) =>
    [...choices.sizes, ...choices.materials]
      .filter((offer) => offer.toLowerCase().startsWith(begun.toLowerCase()))
      .map((offer) => `${before}${offer}`),
  )
  return [...new Set(found)]
    .filter((text) => text.length <= DISCORD.choice && text !== typed)
    .slice(0, DISCORD.choices)
    .map((text) => ({ name: text, value: text }))
}
