/** Comma-separated text that a spreadsheet opens without running anything in it: the only writer of CSV there is. */

export type Cell = string | number | boolean | null | undefined

/** A cell that starts with one of these is read as a formula; a space, a tab or a return before it hides it from a check, not
 *  from every spreadsheet; full-width forms count too. */
const STARTS_FORMULA = /^[\s\u0000-\u001f]*[=+\-@\t\r\n＝＋－＠]/u

/** Commas, quotes and line ends must be quoted; so is what a reader of another country splits at (`;`, tab) or trims. */
const NEEDS_QUOTES = /[",\r\n\t;]|^\s|\s$/

/** One cell: numbers as they are, text made inert by an apostrophe and quoted where it must be.
 *  @source RFC 4180 for quoting; OWASP, "CSV Injection" (from memory), for the signs and the apostrophe */
export function csvCell(cell: Cell): string {
  if (cell === null || cell === undefined) return ''
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  if (typeof cell === 'boolean') return String(cell)
  const text = STARTS_FORMULA.test(cell) ? `'${cell}` : cell
  return NEEDS_QUOTES.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

/** One row ended by CRLF. @source RFC 4180 */
export const csvRow = (cells: readonly Cell[]): string => `${cells.map(csvCell).join(',')}\r\n`

export const csvText = (rows: readonly (readonly Cell[])[]): string => rows.map(csvRow).join('')
