import { spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { answered } from '../../../adapters/workbench/lines.ts'
import { offcuts } from '../../../adapters/workbench/offcuts.ts'

const root = path.resolve(import.meta.dirname, '../../..')
const run = (args: string[], input = '') =>
  spawnSync(process.execPath, ['adapters/workbench/offcuts.ts', ...args], { cwd: root, input, encoding: 'utf8' })

const list = { stock_mm: [457, 457], kerf_mm: 3, pieces: [{ w: 227, h: 457, qty: 4 }], turn: false, max_a_tile: null }

test('a list on stdin and the same list in a file get the same plan, a line each', () => {
  const file = path.join(mkdtempSync(path.join(os.tmpdir(), 'kneepad-')), 'lists.jsonl')
  const text = `${JSON.stringify(list)}\n${JSON.stringify({ ...list, max_a_tile: 1 })}\n`
  writeFileSync(file, text)
  for (const { stdout, status } of [run([], text), run([file])]) {
    const lines = stdout
      .trim()
      .split('\n')
      .map((l) => JSON.parse(l))
    expect(status).toBe(0)
    expect(lines).toHaveLength(2)
    expect(lines[0]).toMatchObject({ stock_tiles: 2, bound: 2, ms: expect.any(Number) })
    expect(lines[0].plan).toEqual([
      {
        times: 2,
        cut: [
          { x: 0, y: 0, w: 227, h: 457 },
          { x: 230, y: 0, w: 227, h: 457 },
        ],
      },
    ])
    expect(lines[1]).toMatchObject({ stock_tiles: 4, bound: 4 })
  }
})

test('a file that is not there ends with 1 and says so', () => {
  expect(run(['/nowhere/at/all.jsonl']).status).toBe(1)
})

test.each([
  ['{', 'not-understood'],
  ['[1]', 'not-understood'],
  ['{"stock_mm":[100],"pieces":[]}', 'not-a-number'],
  [JSON.stringify({ ...list, pieces: [null] }), 'not-a-number'],
  [JSON.stringify({ ...list, turn: 'yes' }), 'not-understood'],
  [JSON.stringify({ ...list, max_a_tile: 0 }), 'out-of-range'],
  [JSON.stringify({ ...list, pieces: [] }), 'missing'],
  [JSON.stringify({ ...list, pieces: [{ w: 1e9, h: 1 }] }), 'out-of-range'],
  [JSON.stringify({ ...list, pieces: [{ w: 1, h: 1, qty: 1e15 }] }), 'too-much-work'],
])('%s is answered with %s', (line, code) => {
  expect(answered(line, offcuts)).toMatchObject({ problem: { code } })
})
