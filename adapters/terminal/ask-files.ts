/** The files of a reply as the `ask` contract lists them. */
import type { Tools } from '../../src/answer/brief.ts'
import type { Reply } from '../../src/reply.ts'
import { fill } from '../contract.ts'
import { brief } from '../logging.ts'
import { isPicture, save } from './save.ts'

type Listed = { readonly name: string; readonly media_type: string; readonly text?: string; readonly path?: string }

/** With `out` a picture is written there, as SVG and PNG, and named by its path; without, and where it could not be written,
 *  it is text. A failure is said in the warnings. */
export async function listFiles(
  reply: Reply,
  tools: Tools,
  out: string | null,
  nameOf: (name: string) => string,
): Promise<{ listed: readonly Listed[]; warnings: readonly string[] }> {
  const listed: Listed[] = []
  const warnings = [...reply.warnings]
  for (const file of reply.files) {
    const { name, media_type, text } = file
    if (out === null || !isPicture(file)) {
      listed.push({ name, media_type, text })
      continue
    }
    try {
      listed.push(...(await save(file, out, nameOf)))
    } catch (error) {
      const { phrases } = tools.languages.locale(reply.language)
      listed.push({ name, media_type, text })
      warnings.push(fill(phrases['shell.not-saved'], { why: brief(error) }))
    }
  }
  return { listed, warnings }
}
