/** Cutting text to a platform's limits without tearing a character or an escape apart. */

/** A zero-width space: breaks a mention or an address without being seen. */
export const BREAK = '\u200b'

/** Control characters and invisible direction marks out, line ends as \n. */
export const clean = (text: string): string =>
  text
    .replace(/\r\n?/g, '\n')
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f\u202a-\u202e\u2066-\u2069\ufeff]/g, '')
    .toWellFormed()

/** Mentions by name and addresses made inert; what each platform escapes beside that it does itself. */
export const inert = (text: string): string =>
  clean(text)
    .replace(/@/g, `@${BREAK}`)
    .replace(/:\/\//g, `:${BREAK}//`)
    .replace(/\b(www|mailto|tel|discord)([.:])/gi, `$1${BREAK}$2`)

/** The pieces that must not be torn: an escape, an entity, a whole character. */
const ATOMS = /\\.|&(?:amp|lt|gt);|./gsu

/** The longest beginning of at most `limit` UTF-16 units, at a line or word end where one is near, else between atoms. */
export function cut(text: string, limit: number): { head: string; rest: string } {
  if (text.length <= limit) return { head: text, rest: '' }
  let end = 0
  for (const [atom] of text.matchAll(ATOMS)) {
    if (end + atom.length > limit) break
    end += atom.length
  }
  const head = text.slice(0, end)
  const line = head.lastIndexOf('\n')
  const word = head.lastIndexOf(' ')
  const at = line > limit / 2 ? line : word > limit / 2 ? word : end
  return { head: text.slice(0, at), rest: text.slice(at).replace(/^[\n ]/, '') }
}

/** The text in pieces of at most `limit` units; together they hold all of it. */
export function split(text: string, limit: number): string[] {
  const pieces: string[] = []
  let rest = text
  while (rest !== '') {
    const step = cut(rest, limit)
    if (step.head.trim() !== '') pieces.push(step.head)
    rest = step.rest
  }
  return pieces
}

/** At most `limit` units, with an ellipsis where something was left out. */
export const shorten = (text: string, limit: number): string =>
  text.length <= limit ? text : `${cut(text, limit - 1).head.trimEnd()}…`
