/** Text in a picture: made harmless, and measured well enough to keep labels apart. */

/** Characters that XML cannot hold, and lone halves of a pair. */
const UNPRINTABLE = /[\u0000-\u001f\u007f-\u009f\ufffe\uffff]|\p{Cs}/gu
const ESCAPES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Inert text for SVG. */
export const escaped = (text: string): string => text.replace(UNPRINTABLE, ' ').replace(/[&<>"']/g, (c) => ESCAPES[c]!)

const NARROW = /[ijl.,:;'"|!()[\] ft/]/
const WIDE = /[mwMW@%—…]/

/** About how wide text runs in DejaVu Sans [the font size's own unit]. */
export function textWidth(text: string, size: number): number {
  let ems = 0
  for (const c of text) ems += NARROW.test(c) ? 0.4 : WIDE.test(c) ? 0.95 : 0.64
  return ems * size
}

/** The text, or as much of it as fits with three dots behind. */
export function fitted(text: string, size: number, width: number): string {
  if (textWidth(text, size) <= width) return text
  const letters = [...text]
  while (letters.length > 1 && textWidth(`${letters.join('')}…`, size) > width) letters.pop()
  return `${letters.join('').trimEnd()}…`
}

/** The text in lines that fit, broken at spaces. */
export function wrapped(text: string, size: number, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(/\s+/)) {
    const longer = line ? `${line} ${word}` : word
    if (line && textWidth(longer, size) > width) {
      lines.push(line)
      line = word
    } else line = longer
  }
  return [...lines, line].map((l) => fitted(l, size, width))
}
