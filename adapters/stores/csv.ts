/** Comma-separated values by RFC 4180, safe to open in a spreadsheet. */

/** A spreadsheet runs a cell that starts with one of these as a formula (OWASP, "CSV Injection", from memory); an
 *  apostrophe before it makes it text. */
const STARTS_FORMULA = /^[=+\-@\t\r\n\uff1d\uff0b\uff0d\uff20]/
const NEEDS_QUOTES = /[",\r\n]/

/** Numbers stay numbers; text never becomes a formula. */
export function csvCell(value: string | number | boolean | null | undefined): string {
  if (value === null || value === undefined) return ''
  if (typeof value !== 'string') return String(value)
  const inert = STARTS_FORMULA.test(value) ? `'${value}` : value
  return NEEDS_QUOTES.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert
}

export const csvLine = (cells: readonly (string | number | boolean | null | undefined)[]): string =>
  `${cells.map(csvCell).join(',')}\r\n`
