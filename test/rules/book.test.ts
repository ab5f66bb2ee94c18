/** The rule book holds together, and its figures stand beside what was published. */
import { describe, expect, test } from 'vitest'
import cautions from '../../config/cautions.json' with { type: 'json' }
import lumber from '../../config/lumber.json' with { type: 'json' }
import book from '../../config/rules.json' with { type: 'json' }
import troubles from '../../config/trouble.json' with { type: 'json' }
import { subjects, troubles as troubleCues } from '../../src/language/en/cues.ts'
import { cautions as cautionPhrases } from '../../src/language/en/phrases/cautions.ts'
import { rules as rulePhrases } from '../../src/language/en/phrases/rules.ts'
import { trouble as troublePhrases } from '../../src/language/en/phrases/trouble.ts'
import type { Rule } from '../../src/rules/book.ts'
import { cautionList, lumberBook, ruleBook, troubleList } from '../../src/rules/check.ts'
import { readEnglish, settleEnglish } from './english.ts'

const rules = book.rules as unknown as readonly Rule[]
const byId = new Map(rules.map((rule) => [rule.id, rule]))
const phrase = (key: string): string | undefined =>
  (({ ...rulePhrases, ...cautionPhrases, ...troublePhrases }) as Readonly<Record<string, string>>)[key]

test('every file keeps its shape', () => {
  expect(ruleBook.safeParse(book).error?.issues).toBeUndefined()
  expect(cautionList.safeParse(cautions).error?.issues).toBeUndefined()
  expect(troubleList.safeParse(troubles).error?.issues).toBeUndefined()
  expect(lumberBook.safeParse(lumber).error?.issues).toBeUndefined()
})

test('a wrong file is refused with its place', () => {
  const broken = structuredClone(book) as { rules: { source: string; limt?: number }[] }
  broken.rules[3]!.limt = 3
  expect(ruleBook.safeParse(broken).error?.issues[0]?.path).toEqual(['rules', 3])
  const orphan = structuredClone(book) as typeof broken
  orphan.rules[0]!.source = 'nobody'
  expect(ruleBook.safeParse(orphan).success).toBe(false)
})

test('there are at least 60 rules, each with words, an example and a caution that exists', () => {
  expect(rules.length).toBeGreaterThanOrEqual(60)
  const known = new Set(cautions.map((c) => c.id))
  for (const rule of rules) {
    for (const key of [`rule.${rule.id}`, `rule.${rule.id}.why`, `rule.${rule.id}.example`])
      expect(phrase(key), key).toBeTruthy()
    for (const caution of rule.cautions ?? []) expect(known, rule.id).toContain(caution)
    expect(Object.keys(subjects), rule.id).toContain(rule.subject)
  }
})

test('a rule fills every gap of its phrase, and its phrase uses every amount but the limit alone', () => {
  for (const rule of rules) {
    const gaps = [
      ...phrase(`rule.${rule.id}`)!.matchAll(/\{(\w+)\}/g),
      ...phrase(`rule.${rule.id}.why`)!.matchAll(/\{(\w+)\}/g),
    ]
    expect(new Set(gaps.map((g) => g[1])), rule.id).toEqual(new Set(Object.keys(rule.amounts ?? {})))
  }
})

test('no phrase is left over', () => {
  const wanted = new Set([
    ...rules.flatMap((r) => [`rule.${r.id}`, `rule.${r.id}.why`, `rule.${r.id}.example`]),
    ...cautions.flatMap((c) => [`caution.${c.id}`, `caution.${c.id}.tag`]),
    ...troubles.flatMap((t) => [
      `trouble.${t.id}`,
      `trouble.${t.id}.test`,
      `trouble.${t.id}.do`,
      `trouble.${t.id}.example`,
      ...Array.from({ length: t.causes }, (_, i) => `trouble.${t.id}.cause.${i + 1}`),
    ]),
  ])
  for (const key of Object.keys({ ...rulePhrases, ...cautionPhrases, ...troublePhrases }))
    expect(wanted, key).toContain(key)
  for (const key of wanted) expect(phrase(key), key).toBeTruthy()
})

test('subjects and troubles have cues and no cue is without one', () => {
  expect(new Set(Object.keys(subjects))).toEqual(new Set(rules.map((r) => r.subject)))
  expect(new Set(Object.keys(troubleCues))).toEqual(new Set(troubles.map((t) => t.id)))
  for (const t of troubles) for (const rule of t.rules ?? []) expect(byId.has(rule), `${t.id}: ${rule}`).toBe(true)
  for (const t of [...troubles, ...cautions]) expect(Object.keys(book.sources), t.id).toContain(t.source)
})

test.each(rules.map((rule) => [rule.id, phrase(`rule.${rule.id}.example`)!]))('%s answers "%s"', (id, example) => {
  expect(settleEnglish(example)?.rules.map((rule) => rule.id)).toContain(id)
})

test.each(troubles.map((t) => [t.id, phrase(`trouble.${t.id}.example`)!]))('trouble %s answers "%s"', (id, example) => {
  expect(readEnglish(example).troubles[0]?.name).toBe(id)
})

const IN = 25.4
/** Rule, figure and the row of the references that holds it; "memory" where no text was read. */
const PUBLISHED: readonly (readonly [id: string, limit: number, source: string])[] = [
  ['contact-dry', 80, '3.6 ANSI A108.5 s. 2.2.3, reported'],
  ['contact-wet', 95, '3.6 ANSI A108.5 s. 2.2.3, reported'],
  ['contact-exterior', 95, '3.6 ANSI A108.5 s. 2.2.3, reported'],
  ['contact-panel-floor', 85, '3.10 ANSI A108.19, memory'],
  ['contact-panel-wall', 80, '3.10 ANSI A108.19, memory'],
  ['contact-au-wall', 80, '5.10 AS 3958.1, memory'],
  ['contact-au-floor', 90, '5.10 AS 3958.1, memory'],
  ['contact-au-out', 100, '5.10 AS 3958.1, memory'],
  ['bed-least', (3 / 32) * IN, '3.5 ANSI A108.5 s. 2.2.2, reported'],
  ['bed-most-thin', IN / 4, '3.4 CTEF, reported'],
  ['bed-most-large', IN / 2, '3.4 CTEF, reported'],
  ['flat-small', IN / 4, '4.1 ANSI A108.02, reported'],
  ['flat-large', IN / 8, '4.2 ANSI A108.02, reported'],
  ['flat-uk', 3, '5.4 NHBC 9.1.7'],
  ['flat-au', 4, '5.7 NSW guide, reported'],
  ['panel-edges', IN / 32, '4.3'],
  ['joint-three-times', IN / 16, '4.6 ANSI A108.02-2017 s. 4.3.8, reported'],
  ['joint-bond-rectified', IN / 8, '4.7 ANSI A108.02, reported'],
  ['joint-bond-calibrated', (3 / 16) * IN, '4.7 ANSI A108.02, reported'],
  ['joint-uk-floor', 3, '5.4 NHBC 9.1.7'],
  ['joint-uk-wall', 1.5, '5.4 NHBC 9.1.7'],
  ['lippage-narrow', IN / 32, '4.5 ANSI A108.02-2013 s. 4.3.7, reported'],
  ['lippage-wide', IN / 16, '4.5 ANSI A108.02-2013 s. 4.3.7, reported'],
  ['lippage-uk-narrow', 1, '5.4 NHBC 9.1.7'],
  ['lippage-uk-wide', 2, '5.4 NHBC 9.1.7'],
  ['lippage-au', 2, '5.7 NSW guide, reported'],
  ['offset-long', 33, '4.9 ANSI A108.02, reported'],
  ['perimeter-gap', IN / 8, '4.18 EJ171, reported'],
  ['perimeter-gap-uk', 6, '5.1 The Tile Association on BS 5385'],
  ['movement-inside', 25 * 0.3048, '4.15, 4.16 EJ171, reported'],
  ['movement-sun', 12 * 0.3048, '4.15, 4.16'],
  ['movement-outside', 12 * 0.3048, '4.15 EJ171, reported'],
  ['movement-suspended', 12 * 0.3048, '4.15 EJ171, reported'],
  ['movement-uk-inside', 10, '5.1 The Tile Association on BS 5385'],
  ['movement-uk-outside', 5, '5.2 BS 5385-3, reported'],
  ['movement-uk-heated', 8, '5.3 TTA, reported'],
  ['movement-au', 4.5, '5.10 AS 3958.1, memory'],
  ['grout-temperature', (60 - 32) / 1.8, '6.13 ANSI A108.10 per MMSA 9'],
  ['min-temperature', (40 - 32) / 1.8, '6.10 ACI'],
  ['slab-age', 28, '6.16 Tile Council FAQ'],
  ['slab-age-uk', 42, '5.5 NHBC 9.3.5'],
  ['screed-age-uk', 21, '5.5 NHBC 9.3.5'],
  ['screed-sulfate', 75, '5.6 NHBC 9.3.5'],
  ['slab-humidity', 80, '6.18'],
  ['deflection-tile', 360, '8.3, 4.20'],
  ['deflection-stone', 720, '4.21'],
  ['slope', (0.25 / 12) * 1000, '13.11 ANSI A108.1A, reported'],
  ['dcof', 0.42, '13.16 ANSI A326.3, memory'],
]

describe('published figures', () => {
  test.each(PUBLISHED)('%s is %d — references %s', (id, limit) => {
    expect(byId.get(id)?.limit?.value).toBeCloseTo(limit, 4)
  })

  test('a limit that is said is the limit that is judged', () => {
    for (const rule of rules) {
      const said = rule.amounts?.['limit']
      if (!said || !rule.limit || 'text' in said || 'kg' in said) continue
      const [shown] = Object.entries(said).flatMap(([key, value]) => (key === 'is' ? [] : [value as number]))
      const factor = rule.limit.key.endsWith('_spacing_m') ? 1000 : 1
      expect(shown, rule.id).toBeCloseTo(rule.limit.value * factor, 3)
    }
  })

  test('a source that was only reported or remembered says so', () => {
    const sources = book.sources as Readonly<Record<string, { read: string }>>
    for (const [id, , source] of PUBLISHED) {
      const read = sources[byId.get(id)!.source]!.read
      if (source.includes('memory')) expect(read, id).toBe('memory')
      if (source.includes('reported')) expect(read, id).toBe('reported')
    }
  })
})
