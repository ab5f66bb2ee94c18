/** From what a phone sends to plain lower-case text, remembering where each character stood. */
import type { Span } from '../problem.ts'

export type PlainText = {
  readonly text: string
  /** For each character of `text`, its place in the message as typed; one more for the end. */
  readonly origin: readonly number[]
}

const FRACTION_SIGNS: Readonly<Record<string, string>> = {
  '½': '1/2',
  '⅓': '1/3',
  '⅔': '2/3',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅙': '1/6',
  '⅕': '1/5',
}

const SIGNS: Readonly<Record<string, string>> = {
  '‘': "'",
  '’': "'",
  '′': "'",
  '`': "'",
  '´': "'",
  ʹ: "'",
  '“': '"',
  '”': '"',
  '″': '"',
  '„': '"',
  '«': '"',
  '»': '"',
  ʺ: '"',
  '×': 'x',
  '✕': 'x',
  '✖': 'x',
  '⨯': 'x',
  '∗': '*',
  '–': '-',
  '—': '-',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '⁄': '/',
  '∕': '/',
  '÷': '/',
  '²': '2',
  '³': '3',
  º: '°',
  '\n': '\n',
}

/** Marks that change the direction or join characters and carry no meaning for a measure. */
const INVISIBLE = /\ufe0f|[\u00ad\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff]/

/** One character made plain: lower case, no accent, one kind of quote; '' to drop it. */
function plainCharacter(c: string): string {
  const known = SIGNS[c]
  if (known !== undefined) return known
  const code = c.codePointAt(0) as number
  if (code < 0x80) return code < 0x20 || code === 0x7f ? ' ' : c.toLowerCase()
  if (INVISIBLE.test(c)) return ''
  if (/\s/.test(c)) return ' '
  const base = c.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()
  return base.length === 0 ? ' ' : base
}

/** The last message made plain: it is looked at for its language, for commands and for its words in turn. */
let last: { readonly raw: string; readonly plain: PlainText } | null = null

/** Plain text of a message, each character traced to its place in the original. */
export function plainText(raw: string): PlainText {
  if (last?.raw !== raw) last = { raw, plain: madePlain(raw) }
  return last.plain
}

function madePlain(raw: string): PlainText {
  let text = ''
  const origin: number[] = []
  let at = 0
  let afterFigure = false
  for (const c of raw) {
    const fraction = FRACTION_SIGNS[c]
    // "2½" is two and a half, so the glyph is set off from the figure before it.
    const plain = fraction === undefined ? plainCharacter(c) : (afterFigure ? ' ' : '') + fraction
    for (let i = 0; i < plain.length; i++) origin.push(at)
    text += plain
    afterFigure = c >= '0' && c <= '9'
    at += c.length
  }
  origin.push(at)
  return { text, origin }
}

/** The span in the message as typed of a span in its plain text. */
export const originSpan = (plain: PlainText, [from, to]: Span): Span => [
  plain.origin[from] ?? 0,
  plain.origin[to] ?? (plain.origin.at(-1) as number),
]
