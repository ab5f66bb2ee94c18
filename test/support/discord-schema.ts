/** Request bodies against Discord's published OpenAPI document, and the limits where the platform is narrower. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { gunzipSync } from 'node:zlib'
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'

type Document = { components: { schemas: Record<string, unknown> } }

const document = JSON.parse(
  gunzipSync(readFileSync(path.join(import.meta.dirname, 'discord-openapi.json.gz'))).toString(),
) as Document

const ajv = new Ajv2020({ strict: false, validateFormats: false, allErrors: false })
ajv.addSchema({ $id: 'discord', components: document.components })

const compiled = new Map<string, ValidateFunction>()

/** What the published schema of that name refuses in the body; empty when it takes it. */
export function schemaProblems(name: string, body: unknown): string[] {
  let validate = compiled.get(name)
  if (!validate) {
    if (!(name in document.components.schemas)) return [`no schema ${name}`]
    validate = ajv.compile({ $ref: `discord#/components/schemas/${name}` })
    compiled.set(name, validate)
  }
  return validate(body) ? [] : (validate.errors ?? []).map((error) => `${error.instancePath} ${error.message}`)
}

type Embed = { title?: string; description?: string; fields?: { name: string; value: string }[] }
type Body = { content?: string; embeds?: Embed[]; components?: { components: { custom_id: string }[] }[] }

const embedLength = (embed: Embed): number =>
  (embed.title?.length ?? 0) +
  (embed.description?.length ?? 0) +
  (embed.fields ?? []).reduce((sum, field) => sum + field.name.length + field.value.length, 0)

/** A bot's limits on a message: Discord developer documentation, "Create Message" and "Embed limits". */
export function messageProblems(body: unknown, schema = 'MessageCreateRequest'): string[] {
  const { content = '', embeds = [], components = [] } = body as Body
  const found = schemaProblems(schema, body)
  if (content.length > 2000) found.push(`content ${content.length}`)
  if (embeds.reduce((sum, embed) => sum + embedLength(embed), 0) > 6000) found.push('embeds over 6000')
  if (components.length > 5) found.push('more than 5 rows')
  if (components.some((row) => row.components.length > 5)) found.push('more than 5 buttons in a row')
  const ids = components.flatMap((row) => row.components.map((one) => one.custom_id))
  if (new Set(ids).size !== ids.length) found.push('custom_id twice')
  if (content === '' && embeds.length === 0) found.push('empty message')
  return found
}
