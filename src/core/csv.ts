/** Comma-separated text that a spreadsheet opens without running anything in it. */

/** A cell that starts with one of these is read as a formula, a tab or return hides one; full-width forms count too. */
const STARTS_FORMULA = /^[\s\u0000-\u001f]*[=+\-@\t\r\n＝＋－＠]/u

/** One cell: numbers as they are, text made inert by an apostrophe and quoted where it must be.
 *  @source RFC 4180 for quoting; the apostrophe against formulas is common practice, no source */
export function csvCell(cell: string | number | null): string {
  if (cell === null) return ''
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : ''
  const text = STARTS_FORMULA.test(cell) ? `'${cell}` : cell
  return /[",\r\n\t;']/.test(text) || text !== text.trim() ? `"${text.replaceAll('"', '""')}"` : text
}

/** Rows ended by CRLF. @source RFC 4180 */
export const csvText = (rows: readonly (readonly (string | number | null)[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')
