/** The form for those who would rather fill in boxes: its fields, and the message it stands for. */
import type { Reply } from '../src/reply.ts'
import { type Backing, fill, type Words } from './contract.ts'

export const FIELDS = ['room', 'tile', 'joint'] as const
export type Field = (typeof FIELDS)[number]

/** What is typed into a form as the message it stands for; what was left open is left out. */
export function formMessage(words: Words, values: Readonly<Partial<Record<Field, string>>>): string {
  const parts: Readonly<Record<Field, string>> = {
    room: words.formRoom,
    tile: words.formTile,
    joint: words.formJoint,
  }
  return FIELDS.flatMap((field) => {
    const value = values[field]?.trim()
    return value ? [fill(parts[field], { [field]: value })] : []
  }).join(', ')
}

/** The language whose word for the form this message is, or null. */
export const formAsked = (text: string, backing: Backing): string | null =>
  backing.languages.find((language) => text.trim().toLowerCase() === backing.words(language).formWord.toLowerCase()) ??
  null

/** The form helps where something was missing or help was asked for. */
export const offersForm = (reply: Reply): boolean => reply.topic === 'help' || reply.problem !== null
