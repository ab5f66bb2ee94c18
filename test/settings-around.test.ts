/** config/around.json: it passes, every figure has a source, and a spoilt file is told with its path. */
import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { AROUND } from '../src/settings-around.ts'
import { readSettings } from '../src/settings-check.ts'

const folder = path.resolve(import.meta.dirname, '../config')
// biome-ignore lint/suspicious/noExplicitAny: the tests spoil files at any depth
const files = (): Record<string, any> =>
  Object.fromEntries(
    readdirSync(folder)
      .filter((f) => f.endsWith('.json'))
      .map((f) => [f, JSON.parse(readFileSync(path.join(folder, f), 'utf8'))]),
  )

// biome-ignore lint/suspicious/noExplicitAny: the tests spoil files at any depth
type Loose = any

test('it passes, and every figure names where it comes from', () => {
  const read = readSettings(files())
  if (!read.ok) throw new Error(read.message)
  const { around } = read.value
  const groups = Object.keys(AROUND) as (keyof typeof AROUND)[]
  const figures = groups.flatMap((group) => Object.values<{ source: string }>(around[group]))
  expect(figures).toHaveLength(groups.flatMap((group) => AROUND[group]).length)
  for (const { source } of [...figures, ...Object.values(around.underlayments), ...Object.values(around.layers)])
    expect(source).toMatch(/from memory|common practice, no source|ANSI|code|Council|Association|Adhesion Science/)
})

test.each([
  [
    'a sheet without a width',
    'underlayments.cork.sheets.0.widthMm',
    (a: Loose) => delete a.underlayments.cork.sheets[0].widthMm,
  ],
  [
    'a mortar that is none',
    'underlayments.foam.bond.material',
    (a: Loose) => (a.underlayments.foam.bond.material = 'primer'),
  ],
  [
    'rolls meant, none listed',
    'underlayments.cork.usual',
    (a: Loose) => Object.assign(a.underlayments.cork, { usual: 'roll', rolls: [] }),
  ],
  ['an unknown group', '', (a: Loose) => (a.paint = {})],
  ['a slope in words', 'shower.slopeMmPerM.value', (a: Loose) => (a.shower.slopeMmPerM.value = '1/4')],
  ['ends out of order', 'levelling.spacingMm', (a: Loose) => (a.levelling.spacingMm.low = 9000)],
])('%s is told at "%s"', (_, at, spoil) => {
  const spoilt = files()
  spoil(spoilt['around.json'])
  const read = readSettings(spoilt)
  expect(read.ok ? [] : read.faults.map((f) => `${f.file} ${f.path}`)).toContain(`around.json ${at}`)
})
