/** The layout workbench as a process and line by line: exact figures, problems as answers, hostile floors within the limits. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { layLine } from '../../../adapters/workbench/layout.ts'
import { answered } from '../../../adapters/workbench/lines.ts'

const root = path.resolve(import.meta.dirname, '../../..')
const room = (w: number, h: number) => [
  [
    [0, 0],
    [w, 0],
    [w, h],
    [0, h],
  ],
]
const ask = (asked: unknown) =>
  answered(JSON.stringify(asked), layLine) as Record<string, unknown> & { problem?: { code: string; why?: string } }

test('a 12 x 14 ft room in 24 x 12 in tile with 1/8 in joints, stacked and by thirds', () => {
  const one = { rings_mm: room(3657.6, 4267.2), tile_mm: [609.6, 304.8], joint_mm: 3.175, pattern: 'stacked' }
  // By hand: 5 x 13 whole; a column of 13 and a row of 5 cut, and the corner.
  expect(ask(one)).toMatchObject({ tile_cells: 84, tile_whole: 65, tile_cut: 19, cut_pieces: 19, origin_mm: [0, 0] })
  // By hand: 13 level lines of 3657.6 and 5 upright ones of 4267.2.
  expect(ask(one)['joint_length_mm']).toBeCloseTo(13 * 3657.6 + 5 * 4267.2, 6)
  // By hand: 3657.6 - 5 x 612.775 = 593.725 and 4267.2 - 13 x 307.975 = 263.525.
  expect(ask(one)['smallest_cut_mm']).toBeCloseTo(263.525, 6)
  expect(ask({ ...one, pattern: 'offset', offset: 1 / 3 })).toMatchObject({ tile_whole: 65, tile_cut: 28 })
})

test('the search gives an origin whose layout is the one it reports', () => {
  const one = { rings_mm: room(2630, 3540), tile_mm: [300, 300], joint_mm: 0, pattern: 'stacked', origin_mm: 'search' }
  const { ms, ...found } = ask(one)
  const { ms: again, ...laid } = ask({ ...one, origin_mm: found['origin_mm'] })
  expect(found).toEqual(laid)
  expect([ms, again].every((t) => typeof t === 'number')).toBe(true)
  expect(found['smallest_cut_mm']).toBeCloseTo(265, 6)
})

test('every pattern name is laid', () => {
  for (const pattern of ['stacked', 'offset', 'diagonal', 'random', 'herringbone', 'double-herringbone', 'basketweave'])
    expect(
      ask({ rings_mm: room(3000, 2000), tile_mm: [600, 150], joint_mm: 3, pattern })['tile_cells'],
    ).toBeGreaterThan(60)
})

test.each([
  ['{', 'not-understood'],
  ['', 'empty'],
  ['[1]', 'not-understood'],
  ['{"tile_mm":[300,300],"joint_mm":3}', 'missing'],
  ['{"rings_mm":[[[0,0],[1,2]]],"tile_mm":[300],"joint_mm":3}', 'not-a-number'],
  ['{"rings_mm":[[[0,0],[900,0],[900,900]]],"tile_mm":[300,300],"joint_mm":"3"}', 'not-a-number'],
  ['{"rings_mm":[[[0,0],[900,0],[900,null]]],"tile_mm":[300,300],"joint_mm":3}', 'bad-floor'],
  ['{"rings_mm":[[[0,0],[900,0],[900,1e999]]],"tile_mm":[300,300],"joint_mm":3}', 'bad-floor'],
  ['{"rings_mm":[[[0,0],[900,900],[900,0],[0,900]]],"tile_mm":[300,300],"joint_mm":3}', 'bad-floor'],
  ['{"rings_mm":[[[0,0],[900,0],[900,900]]],"tile_mm":[300,300],"joint_mm":3,"pattern":"zigzag"}', 'not-understood'],
  ['{"rings_mm":[[[0,0],[900,0],[900,900]]],"tile_mm":[300,300],"joint_mm":-3}', 'out-of-range'],
  ['{"rings_mm":[[[0,0],[900,0],[900,900]]],"tile_mm":[1,1],"joint_mm":0}', 'out-of-range'],
  ['{"rings_mm":[[[0,0],[1e7,0],[1e7,1e7]]],"tile_mm":[300,300],"joint_mm":3}', 'out-of-range'],
  ['{"rings_mm":[],"tile_mm":[300,300],"joint_mm":3}', 'bad-floor'],
])('%s is answered with %s', (line, code) => {
  expect(answered(line, layLine)).toMatchObject({ problem: { code } })
})

/** A comb of n teeth: every level line crosses them all. */
const comb = (teeth: number, w: number, h: number): number[][] => {
  const up = Array.from({ length: teeth }, (_, k) => [
    [(k * w) / teeth, 100],
    [((k + 0.5) * w) / teeth, h],
  ]).flat()
  return [[0, 0], ...up, [w, 100], [w, 0]]
}

test.each([
  ['a comb of 10,000 corners on a room', { rings_mm: [comb(4998, 6000, 5000)], tile_mm: [300, 300], joint_mm: 3 }],
  [
    'a comb of 10,000 corners on a great floor',
    { rings_mm: [comb(4998, 400_000, 400_000)], tile_mm: [10, 10], joint_mm: 1 },
  ],
  ['20,000 corners', { rings_mm: [comb(10_000, 6000, 5000)], tile_mm: [300, 300], joint_mm: 3 }],
  ['a great floor in small tile', { rings_mm: room(400_000, 400_000), tile_mm: [5, 5], joint_mm: 1, angle_deg: 30 }],
  [
    'random planks on a great floor',
    { rings_mm: room(400_000, 400_000), tile_mm: [200, 5], joint_mm: 0, pattern: 'random' },
  ],
  [
    'a search on a comb',
    { rings_mm: [comb(600, 9000, 8000)], tile_mm: [300, 100], joint_mm: 3, origin_mm: 'search', angle_deg: 45 },
  ],
  [
    'the search on a great floor',
    {
      rings_mm: room(400_000, 300_000),
      tile_mm: [20, 5],
      joint_mm: 1,
      pattern: 'offset',
      offset: 0.37,
      origin_mm: 'search',
    },
  ],
])('%s is answered or refused', (_, asked) => {
  const answer = ask(asked)
  if (answer.problem) expect(answer.problem.code).toBe('too-much-work')
  else expect(answer['tile_cells']).toBeGreaterThan(0)
})

test('the script reads a file or its input, one answer a line', () => {
  const lines = [{ rings_mm: room(3000, 2000), tile_mm: [300, 300], joint_mm: 3 }, { nothing: true }].map((l) =>
    JSON.stringify(l),
  )
  const file = path.join(mkdtempSync(path.join(tmpdir(), 'layout-')), 'floors.jsonl')
  writeFileSync(file, `${lines.join('\n')}\n`)
  const script = path.join(root, 'adapters/workbench/layout.ts')
  const node = path.join(root, 'node_modules/.bin/node')
  const byFile = execFileSync(node, [script, file], { encoding: 'utf8' }).trim().split('\n')
  const byInput = execFileSync(node, [script], { encoding: 'utf8', input: lines.join('\n') })
    .trim()
    .split('\n')
  for (const out of [byFile, byInput]) {
    expect(out).toHaveLength(2)
    expect(JSON.parse(out[0]!)).toMatchObject({ tile_cells: 70, tile_whole: 54 }) // by hand: 9 x 6 whole of 10 x 7
    expect(JSON.parse(out[1]!)).toEqual({ problem: { code: 'missing', field: 'rings_mm' } })
  }
})
