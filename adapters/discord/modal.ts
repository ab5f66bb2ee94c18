/** The form as a Discord modal, and what was typed into it. */
import type {
  APIModalInteractionResponseCallbackData,
  APIModalSubmitInteraction,
  APITextInputComponent,
} from 'discord.js'
import type { Words } from '../contract.ts'
import { FIELDS, type Field } from '../form.ts'
import { shorten } from '../text.ts'
import { DISCORD } from './limits.ts'
import { CUSTOM_FORM } from './render.ts'

const input = (field: Field, words: Words): APITextInputComponent => ({
  type: 4,
  style: 1,
  custom_id: field,
  label: shorten(words[field], DISCORD.inputLabel),
  placeholder: shorten(words[`${field}Example`], DISCORD.placeholder),
  required: field !== 'joint',
  max_length: DISCORD.inputValue,
})

/** `language` goes along in the custom id: the form is read in the language it was shown in. */
export const formModal = (words: Words, language: string): APIModalInteractionResponseCallbackData => ({
  custom_id: `${CUSTOM_FORM}:${language}`.slice(0, DISCORD.customId),
  title: shorten(words.formTitle, DISCORD.modalTitle),
  components: FIELDS.map((field) => ({ type: 1, components: [input(field, words)] })),
})

/** The values by field, whatever rows or labels they stand in. */
export function formValues(interaction: APIModalSubmitInteraction): Partial<Record<Field, string>> {
  const values: Partial<Record<Field, string>> = {}
  const read = (component: unknown): void => {
    if (component === null || typeof component !== 'object') return
    const { custom_id, value, components, component: inner } = component as Record<string, unknown>
    const field = FIELDS.find((one) => one === custom_id)
    if (field && typeof value === 'string') values[field] = value
    if (Array.isArray(components)) components.forEach(read)
    if (inner) read(inner)
  }
  read({ components: interaction.data.components })
  return values
}
