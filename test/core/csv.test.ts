/** CSV against RFC 4180 and against a reader that is none of ours: Python's csv module, in its strict mode. */
import { spawnSync } from 'node:child_process'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { csvCell, csvText } from '../../src/core/csv.ts'

/** What a reader gets of a text cell: itself, with an apostrophe before what would be a formula. */
const asRead = (text: string): string => (/^[\s\u0000-\u001f]*[=+\-@\t\r\n＝＋－＠]/u.test(text) ? `'${text}` : text)

test.each([
  ['=1+1', "'=1+1"],
  ['+1', "'+1"],
  ['-1', "'-1"],
  ['@SUM(A1)', "'@SUM(A1)"],
  ['\t=1', '"\'\t=1"'],
  ['\r=1', '"\'\r=1"'],
  ['\tx', '"\'\tx"'],
  [' =1', "' =1"],
  ['＝1', "'＝1"],
  ["\n-2+3|cmd'!A0", '"\'\n-2+3|cmd\'!A0"'],
  ['=a,b', '"\'=a,b"'],
])('%j is made inert: %j', (cell, written) => expect(csvCell(cell)).toBe(written))

// RFC 4180, section 2, rules 5 to 7.
test.each([
  ['a,b', '"a,b"'],
  ['say "x"', '"say ""x"""'],
  ['two\r\nlines', '"two\r\nlines"'],
  ['plain', 'plain'],
  ['', ''],
  ["it's 1-2", "it's 1-2"],
  ['9 1/4 x 18', '9 1/4 x 18'],
  ['a;b', '"a;b"'],
  [' edge', '" edge"'],
])('%j is written %j', (cell, written) => expect(csvCell(cell)).toBe(written))

test('numbers stay numbers, also negative ones; what is none is left empty', () => {
  expect(csvText([['bag', -2.5, 0, null, undefined, Number.NaN, Number.POSITIVE_INFINITY, true]])).toBe(
    'bag,-2.5,0,,,,,true\r\n',
  )
})

const cell = fc.oneof(
  fc.string(),
  fc.string({ unit: fc.constantFrom('"', ',', '\r', '\n', '=', '-', ' ', "'", ';', 'a', '½') }),
)
const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1, maxLength: 6 })

describe('round trip', () => {
  test('through a strict reader of our own', () => {
    const holds = (some: string[][]) => {
      expect(readCsv(csvText(some))).toEqual(some.map((row) => row.map(asRead)))
    }
    fc.assert(fc.property(rows, holds))
  })

  const python = spawnSync('python3', ['-c', 'import csv']).status === 0
  test.skipIf(!python)("through Python's csv module", () => {
    // NUL ends a line for some of its versions, and half a surrogate pair is no UTF-8.
    const some = fc
      .sample(rows, 300)
      .map((row) => row.map((cells) => cells.map((text) => text.replace(/[\0\p{Surrogate}]/gu, '?'))))
    const program =
      'import csv, io, json, sys\n' +
      'for text in json.load(sys.stdin): print(json.dumps(list(csv.reader(io.StringIO(text, newline=""), strict=True))))'
    const { stdout, stderr, status } = spawnSync('python3', ['-c', program], {
      input: JSON.stringify(some.map((one) => csvText(one))),
      encoding: 'utf8',
      env: { ...process.env, PYTHONIOENCODING: 'utf-8' },
    })
    expect(status, stderr).toBe(0)
    const read = stdout.trimEnd().split('\n')
    expect(read).toHaveLength(some.length)
    for (const [i, one] of some.entries()) expect(JSON.parse(read[i]!)).toEqual(one.map((row) => row.map(asRead)))
  })
})

/** A reader of quoted CSV that shares nothing with the writer. */
function readCsv(text: string): string[][] {
  const read: string[][] = [['']]
  let quoted = false
  for (let i = 0; i < text.length; i++) {
    const row = read.at(-1)!
    const c = text[i]!
    if (quoted && c === '"' && text[i + 1] === '"') row[row.length - 1] += text[++i]
    else if (c === '"') quoted = !quoted
    else if (!quoted && c === ',') row.push('')
    else if (!quoted && c === '\r' && text[i + 1] === '\n') {
      i++
      read.push([''])
    } else row[row.length - 1] += c
  }
  return read.slice(0, -1)
}
