/** A cut list as CSV (RFC 4180) and as a table of plain text. Headings and cells come worded. */
export type Cell = string | number

/** A spreadsheet reads a cell that begins so as a formula: an apostrophe in front keeps it text. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/

function csvCell(cell: Cell): string {
  if (typeof cell === 'number') return String(cell)
  const inert = FORMULA.test(cell.trimStart()) || FORMULA.test(cell) ? `'${cell}` : cell
  return /[",\r\n;]/.test(inert) ? `"${inert.replaceAll('"', '""')}"` : inert
}

/** Rows as CSV, lines ended by CR LF. */
export const csvOf = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(csvCell).join(',')}\r\n`).join('')

/** Rows in columns, numbers to the right, two spaces between. */
export function tableOf(rows: readonly (readonly Cell[])[]): string {
  const clean = rows.map((row) => row.map((cell) => (typeof cell === 'number' ? cell : cell.replace(/\s+/g, ' '))))
  const columns = Math.max(0, ...clean.map((row) => row.length))
  const widths = Array.from({ length: columns }, (_, c) =>
    Math.max(...clean.map((row) => [...String(row[c] ?? '')].length)),
  )
  const padded = (cell: Cell, width: number) => {
    const gap = ' '.repeat(width - [...String(cell)].length)
    return typeof cell === 'number' ? gap + cell : cell + gap
  }
  return clean
    .map((row) =>
      row
        .map((cell, c) => padded(cell, widths[c]!))
        .join('  ')
        .trimEnd(),
    )
    .join('\n')
}
