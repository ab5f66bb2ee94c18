/** Text in the columns of a terminal: wide characters take two, marks that join others none. */

const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' })

/** East Asian wide and fullwidth (Unicode Standard Annex 11, by script and block), and what is shown as a coloured picture. */
const WIDE =
  /[\p{Script=Han}\p{Script=Hangul}\p{Script=Hiragana}\p{Script=Katakana}\u3000-\u303e\uff01-\uff60\uffe0-\uffe6]|\p{Emoji_Presentation}|\p{Extended_Pictographic}\ufe0f/u
const NOTHING = /^[\p{Mn}\p{Me}\p{Cf}\p{Cc}]*$/u

const columns = (grapheme: string): number => (NOTHING.test(grapheme) ? 0 : WIDE.test(grapheme) ? 2 : 1)

/** Columns a line takes. */
export function widthOf(text: string): number {
  if (/^[ -~]*$/.test(text)) return text.length
  let width = 0
  for (const { segment } of graphemes.segment(text)) width += columns(segment)
  return width
}

/** Breaks a word that is longer than a line. */
function pieces(word: string, most: number): string[] {
  const made: string[] = []
  let piece = ''
  let width = 0
  for (const { segment } of graphemes.segment(word)) {
    const wide = columns(segment)
    if (width + wide > most && piece !== '') {
      made.push(piece)
      piece = ''
      width = 0
    }
    piece += segment
    width += wide
  }
  return [...made, piece]
}

/** One line as lines of at most `width` columns, broken at spaces; those after the first are set in by two.
 *  @param width columns; null: never broken */
export function wrap(line: string, width: number | null): string[] {
  if (width === null || widthOf(line) <= width) return [line]
  const indent = width > 20 ? '  ' : ''
  const lines: string[] = []
  let current = ''
  for (const word of line.split(' ')) {
    const room = width - (lines.length > 0 ? indent.length : 0)
    const joined = current === '' ? word : `${current} ${word}`
    if (widthOf(joined) <= room) {
      current = joined
      continue
    }
    if (current !== '') lines.push(current)
    const parts = pieces(word, Math.max(2, width - indent.length))
    lines.push(...parts.slice(0, -1))
    current = parts[parts.length - 1]
  }
  if (current !== '') lines.push(current)
  return lines.map((one, i) => (i === 0 ? one : indent + one))
}

/** Without what could move the cursor, change colours or turn the reading direction. Line breaks stay. */
export const inert = (text: string): string =>
  text.replace(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]/g, '')
