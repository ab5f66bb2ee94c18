/** Rows of heights, one a line, with their unit and spacing. */
import type { MeasureWords } from './measure-words.ts'
import { END, FOOT, INCH, inUnit, N, word } from './rule-lengths.ts'
import { type FigureWords, numberOf } from './rule-numbers.ts'

export type SaidGrid = { readonly heightsMm: readonly (readonly number[])[]; readonly stepMm: number | null }

/** Lines that are nothing but figures, at least two each. */
export function rowsOf(text: string): number[][] {
  return text
    .split(/\n|;|\|(?=[^|]*\|)/)
    .map((line) => line.trim().replace(/[,\t|]+/g, ' '))
    .filter((line) => /^[-+\d./ ]+$/.test(line))
    .map((line) => cells(line))
    .filter((row) => row.length >= 2 && row.every(Number.isFinite))
}

function cells(line: string): number[] {
  return [...line.matchAll(/[-+]?(?:\d+-\d+\/\d+|\d+\/\d+|\d*\.?\d+)/g)].map(([said]) => {
    const value = numberOf(said.replace(/^[-+]/, ''))
    return value === null ? Number.NaN : said.startsWith('-') ? -value : value
  })
}

/** Rows of heights, one a line or parted by semicolons, with the unit and the spacing named beside them. */
export function gridIn(text: string, plain: string, w: MeasureWords, f: FigureWords): SaidGrid | null {
  const tail = text.replace(/^[^\n:]*:/, '')
  const rows = rowsOf(tail).length >= 2 ? rowsOf(tail) : rowsOf(text)
  if (rows.length < 2) return null
  const has = (words: string) => word(words).test(plain)
  const fractions = rows.some((row) => row.some((n) => !Number.isInteger(n)))
  const scale = has(w.sixteenths)
    ? INCH / 16
    : has(w.eighths)
      ? INCH / 8
      : has(f.mm) && !fractions
        ? 1
        : has(f.mm)
          ? 1
          : INCH
  const step = new RegExp(
    `(?:${w.spacing}) (?:of )?(${N}) ?(${f.foot}|${f.metre}|${f.mm}|${f.cm}|${f.inch})${END}|(${N}) ?(${f.foot}|${f.metre}|${f.mm}|${f.cm}|${f.inch}) (?:${w.spacing})`,
    'u',
  ).exec(plain)
  return {
    heightsMm: rows.map((row) => row.map((n) => n * scale)),
    stepMm: step ? inUnit((step[1] ?? step[3])!, step[2] ?? step[4], f, FOOT) : null,
  }
}
