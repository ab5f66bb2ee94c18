/** A page of a job as SVG: headings, lines, tables and lines to sign. As large a text as fits one page of letter paper, so that it
 *  reads on a phone and in print. Every word is handed in as it is to be read. */
import { escaped, textWidth, wrapped } from './lettering.ts'
import { PALETTES } from './theme.ts'

export type PageLines = { readonly heading: string; readonly lines: readonly string[] }
/** A table: the first column to the left, the others to the right. */
export type PageTable = {
  readonly heading: string
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}
export type PageSection = PageLines | PageTable

export type Page = {
  readonly title: string
  readonly under: string
  readonly sections: readonly PageSection[]
  /** What each line to sign is for, and the word under the date beside it. */
  readonly signatures: readonly string[]
  readonly date: string
  /** Says that so many lines of a section are left out. */
  readonly leftOut: (n: number) => string
}

/** The page's own width; the picture is drawn half as large again. */
export const PAGE_WIDTH = 1000
const DRAWN_WIDTH = 1500
/** Letter paper: 11 to 8.5. */
export const PAGE_TALLEST = Math.floor((PAGE_WIDTH * 11) / 8.5)
const MARGIN = 48
const LARGEST = 26
/** About 9 points on paper. */
export const PAGE_SMALLEST = 17
/** In text sizes. */
const LINE = 1.35
const HEADING = 1.9
const TITLE = 2.4
const SIGN = 3.4
const INDENT = 1
const COLUMN_GAP = 1.2
/** Shares of the table that its first column has at least, and may take from the others. */
const LEAST_FIRST = 0.2
const MOST_FIRST = 0.45

type Placed = { readonly parts: readonly string[]; readonly height: number }

const isTable = (section: PageSection): section is PageTable => 'rows' in section
const lengthOf = (section: PageSection): number => (isTable(section) ? section.rows.length : section.lines.length)
const round = (value: number): string => String(Math.round(value * 10) / 10)

/** The whole page. Where even the smallest text is too much, the longest sections lose their oldest lines, and say so. */
export function svgOfPage(page: Page): string {
  const shown = page.sections.map(lengthOf)
  let laid = fitting(page)
  while (laid.height > PAGE_TALLEST) {
    const longest = shown.reduce((at, n, k) => (n > shown[at]! ? k : at), 0)
    if (!((shown[longest] ?? 0) > LEAST_SHOWN)) break
    shown[longest]!--
    laid = laidOut({ ...page, sections: page.sections.map((s, k) => lastOf(s, shown[k]!, page)) }, PAGE_SMALLEST)
  }
  const height = Math.ceil(laid.height)
  const drawn = Math.round((height * DRAWN_WIDTH) / PAGE_WIDTH)
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${PAGE_WIDTH} ${height}" width="${DRAWN_WIDTH}" height="${drawn}" ` +
    `font-family="DejaVu Sans" role="img"><title>${escaped(page.title)}</title>` +
    `<rect width="${PAGE_WIDTH}" height="${height}" fill="${INK.page}"/>${laid.parts.join('')}</svg>`
  )
}

const LEAST_SHOWN = 2

/** The last lines of a section, under a line that says how many stand before them. */
function lastOf(section: PageSection, shown: number, { leftOut }: Page): PageSection {
  const left = lengthOf(section) - shown
  if (left <= 0) return section
  return isTable(section)
    ? { ...section, rows: [[leftOut(left)], ...section.rows.slice(-shown)] }
    : { ...section, lines: [leftOut(left), ...section.lines.slice(-shown)] }
}

const INK = PALETTES.light

/** The page in the largest text that fits. */
function fitting(page: Page): Placed {
  for (let size = LARGEST; size > PAGE_SMALLEST; size--) {
    const laid = laidOut(page, size)
    if (laid.height <= PAGE_TALLEST) return laid
  }
  return laidOut(page, PAGE_SMALLEST)
}

class Sheet {
  readonly parts: string[] = []
  y = MARGIN
  readonly size: number

  constructor(size: number) {
    this.size = size
  }

  text(words: string, x: number, size = this.size, bold = false, anchor: 'start' | 'end' = 'start'): void {
    this.parts.push(
      `<text x="${round(x)}" y="${round(this.y)}" font-size="${round(size)}" fill="${INK.ink}" text-anchor="${anchor}"` +
        `${bold ? ' font-weight="bold"' : ''}>${escaped(words)}</text>`,
    )
  }

  rule(x0: number, x1: number, width: number): void {
    this.parts.push(
      `<line x1="${round(x0)}" y1="${round(this.y)}" x2="${round(x1)}" y2="${round(this.y)}" stroke="${INK.ink}" ` +
        `stroke-width="${width}"/>`,
    )
  }

  down(sizes: number): void {
    this.y += sizes * this.size
  }
}

const RIGHT = PAGE_WIDTH - MARGIN

function laidOut(page: Page, size: number): Placed {
  const sheet = new Sheet(size)
  const room = RIGHT - MARGIN
  for (const line of wrapped(page.title, size * 1.5, room)) {
    sheet.down(1.5)
    sheet.text(line, MARGIN, size * 1.5, true)
  }
  for (const line of wrapped(page.under, size, room)) {
    sheet.down(LINE)
    sheet.text(line, MARGIN)
  }
  sheet.down(0.6)
  sheet.rule(MARGIN, RIGHT, 3)
  for (const section of page.sections) {
    if (lengthOf(section) === 0) continue
    sheet.down(HEADING)
    sheet.text(section.heading, MARGIN, size * 1.1, true)
    if (isTable(section)) table(sheet, section)
    else lines(sheet, section.lines)
  }
  sheet.down(TITLE - LINE)
  for (const label of page.signatures) signature(sheet, label, page.date)
  return { parts: sheet.parts, height: sheet.y + MARGIN * 0.7 }
}

function lines(sheet: Sheet, said: readonly string[]): void {
  const { size } = sheet
  for (const line of said)
    wrapped(line, size, RIGHT - MARGIN - 2 * INDENT * size).forEach((part, k) => {
      sheet.down(LINE)
      sheet.text(part, MARGIN + (k === 0 ? INDENT : 2 * INDENT) * size)
    })
}

/** Columns as wide as their words; where that is too much the widest are narrowed, and their words wrapped. */
function table(sheet: Sheet, { head, rows }: PageTable): void {
  const { size } = sheet
  const room = RIGHT - MARGIN - INDENT * size
  const natural = head.map((title, c) =>
    Math.max(
      textWidth(title, size * 1.05),
      ...rows.filter((r) => r.length > 1).map((r) => textWidth(r[c] ?? '', size)),
    ),
  )
  const gaps = (head.length - 1) * COLUMN_GAP * size
  const first = Math.max(room * LEAST_FIRST, Math.min(natural[0]!, room * MOST_FIRST))
  const widths = narrowed(natural.slice(1), room - gaps - first)
  const left = room - gaps - widths.reduce((sum, width) => sum + width, 0)
  const ends: number[] = []
  for (let c = head.length - 1, end = RIGHT; c >= 1; c--) {
    ends[c] = end
    end -= widths[c - 1]! + COLUMN_GAP * size
  }
  const row = (cells: readonly string[], bold: boolean): void => {
    const alone = cells.length === 1
    const wrappedCells = cells.map((cell, c) =>
      wrapped(cell, size, c > 0 ? widths[c - 1]! + size * 0.1 : alone ? room : left),
    )
    const height = Math.max(...wrappedCells.map((w) => w.length))
    for (let k = 0; k < height; k++) {
      sheet.down(LINE)
      wrappedCells.forEach((w, c) => {
        const words = w[k]
        if (words) sheet.text(words, c === 0 ? MARGIN + INDENT * size : ends[c]!, size, bold, c === 0 ? 'start' : 'end')
      })
    }
  }
  row(head, true)
  for (const cells of rows) row(cells, false)
}

/** Widths that together take no more than there is: the widest lose first. */
function narrowed(widths: readonly number[], room: number): number[] {
  const sorted = widths.toSorted((a, b) => a - b)
  let left = room
  for (const [k, width] of sorted.entries()) {
    const share = left / (sorted.length - k)
    if (width > share) return widths.map((w) => Math.min(w, share))
    left -= width
  }
  return [...widths]
}

function signature(sheet: Sheet, label: string, date: string): void {
  const { size } = sheet
  const split = MARGIN + (RIGHT - MARGIN) * 0.68
  sheet.down(SIGN - LINE)
  sheet.rule(MARGIN, split - size, 2)
  sheet.rule(split, RIGHT, 2)
  sheet.down(1.1)
  sheet.text(label, MARGIN, size * 0.9)
  sheet.text(date, split, size * 0.9)
}
