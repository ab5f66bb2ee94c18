/** The fold: what it makes of any entries, in any versions, and that undo is its inverse. */
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Facts } from '../../src/facts.ts'
import { checkEntry } from '../../src/jobs/check.ts'
import { fold, understands } from '../../src/jobs/fold.ts'
import { logged } from '../../src/jobs/job.ts'
import { learnedFor, learnedFrom } from '../../src/jobs/learned.ts'
import { completed, emptyMemory, type Memory } from '../../src/jobs/memory.ts'
import type { Entry } from '../../src/message.ts'
import { Crew } from '../support/crew.ts'

let made = 0
const entry = (kind: string, body: unknown, version = 1): Entry => {
  made++
  return { at: '2026-03-10T16:30:00-05:00', person: 'lead', messageId: `m${made}`, part: 0, kind, version, body }
}
const facts = (now: Facts): Entry => entry('facts', { facts: now }, 2)
const folded = (...entries: Entry[]): Memory => entries.reduce(fold, emptyMemory)

const jointMm = fc.integer({ min: 1, max: 12 })
const anyFacts = fc.record(
  { jointMm, areaM2: fc.integer({ min: 1, max: 500 }), boxTiles: fc.integer({ min: 1, max: 30 }) },
  { requiredKeys: [] },
)
const anyUse = fc.record(
  {
    stuff: fc.constantFrom('mortar', 'grout', 'tile'),
    bags: fc.integer({ min: 1, max: 9 }),
    m2: fc.integer({ min: 1, max: 90 }),
    total: fc.constant(true),
    opened: fc.integer({ min: 1, max: 3 }),
    leftBags: fc.constantFrom(0, 0.5, 2),
  },
  { requiredKeys: ['stuff'] },
)
const anyEntry = fc.oneof(
  anyFacts.map((f) => ({ kind: 'facts', version: 2, body: { facts: f } })),
  anyFacts.map((f) => ({ kind: 'facts', version: 1, body: f })),
  anyUse.map((u) => ({ kind: 'use', version: 1, body: u })),
  fc.constant({ kind: 'undo', version: 1, body: {} }),
  fc.constantFrom(null, 'bakery').map((name) => ({ kind: 'job', version: 1, body: { act: 'start', name } })),
  fc.integer({ min: 1, max: 4 }).map((n) => ({ kind: 'job', version: 1, body: { act: 'open', n } })),
  fc.constant({ kind: 'point', version: 1, body: { name: 'bid' } }),
  fc.constant({ kind: 'from-the-future', version: 9, body: { any: 'thing' } }),
  fc.constant({ kind: 'facts', version: 99, body: { facts: { jointMm: 99 } } }),
)
const numbered = (list: readonly { kind: string; version: number; body: unknown }[]): Entry[] =>
  list.map((one, i) => ({ at: '2026-03-10T16:30:00-05:00', person: 'lead', messageId: `p${i}`, part: 0, ...one }))

describe('the fold', () => {
  test('never throws, never changes what it is given, and gives the same for the same entries', () => {
    fc.assert(
      fc.property(fc.array(anyEntry, { maxLength: 60 }), (list) => {
        const entries = numbered(list)
        let memory = emptyMemory
        for (const one of entries) {
          const before = JSON.stringify(memory)
          const next = fold(memory, one)
          expect(JSON.stringify(memory)).toBe(before)
          memory = next
        }
        expect(entries.reduce(fold, emptyMemory)).toEqual(memory)
        // A snapshot is the same memory.
        expect(fold(JSON.parse(JSON.stringify(memory)), facts({ jointMm: 1 })).facts).toEqual({ jointMm: 1 })
      }),
    )
  })

  test('undo takes back the last change, whatever it was', () => {
    const change = fc.oneof(
      anyFacts.map((f) => ({ kind: 'facts', version: 2, body: { facts: f } })),
      anyUse.map((u) => ({ kind: 'use', version: 1, body: u })),
    )
    fc.assert(
      fc.property(fc.array(change, { maxLength: 30 }), change, (list, last) => {
        const before = numbered(list).reduce(fold, emptyMemory)
        const changed = fold(before, { ...entry(last.kind, last.body, last.version) })
        if (changed === before || changed.job.changes.length === before.job.changes.length) return
        const back = fold(changed, entry('undo', {}))
        expect(back.facts).toEqual(before.facts)
        for (const stuff of ['mortar', 'grout', 'tile'] as const)
          expect(logged(back.job, stuff)).toEqual(logged(before.job, stuff))
      }),
    )
  })

  test('undoing every change leaves nothing, and one more does nothing', () => {
    let memory = folded(
      facts({ jointMm: 3 }),
      facts({ jointMm: 5, areaM2: 12 }),
      entry('use', { stuff: 'mortar', bags: 2, m2: 8 }),
    )
    for (let i = 0; i < 3; i++) memory = fold(memory, entry('undo', {}))
    expect(memory.facts).toEqual({})
    expect(logged(memory.job, 'mortar').bags).toBe(0)
    expect(fold(memory, entry('undo', {}))).toEqual(memory)
    expect(memory.job.changes.filter((c) => c.is === 'undo')).toHaveLength(3)
  })

  test('facts of the first version still fold; entries of newer versions and unknown kinds are left out', () => {
    const memory = folded(entry('facts', { jointMm: 4 }, 1))
    expect(memory.facts).toEqual({ jointMm: 4 })
    expect(fold(memory, entry('facts', { facts: { jointMm: 9 } }, 4))).toBe(memory)
    expect(fold(memory, entry('hologram', {}))).toBe(memory)
    expect(understands({ kind: 'facts', version: 4 })).toBe(false)
    expect(understands({ kind: 'constructor', version: 1 })).toBe(false)
    expect(understands({ kind: 'use', version: 1 })).toBe(true)
  })

  test('a memory of an older program gets the fields it lacks', () => {
    const old = { version: 1, talk: null, facts: { jointMm: 4 }, people: {}, asked: null } as unknown as Memory
    expect(completed(old)).toEqual({ ...emptyMemory, facts: { jointMm: 4 } })
    expect(fold(old, entry('use', { stuff: 'mortar', bags: 1 })).job.uses).toHaveLength(1)
  })

  test('a long log keeps its sums while its lists stay short', () => {
    const entries = Array.from({ length: 2000 }, () => entry('use', { stuff: 'mortar', bags: 1, m2: 4 }))
    const memory = entries.reduce(fold, emptyMemory)
    expect(logged(memory.job, 'mortar')).toMatchObject({ bags: 2000, m2: 8000 })
    expect(memory.job.uses.length).toBeLessThanOrEqual(200)
    expect(memory.job.changes.length).toBeLessThanOrEqual(100)
    expect(JSON.stringify(memory).length).toBeLessThan(120_000)
  })

  test('jobs put aside come back whole, as many as are kept', () => {
    let memory = folded(facts({ jointMm: 3 }), entry('use', { stuff: 'mortar', bags: 2, m2: 8 }))
    const { n } = memory.job
    memory = fold(memory, entry('job', { act: 'start', name: 'bakery' }))
    expect(memory.facts).toEqual({})
    memory = fold(memory, facts({ jointMm: 5 }))
    memory = fold(memory, entry('job', { act: 'open', n }))
    expect(memory.facts).toEqual({ jointMm: 3 })
    expect(logged(memory.job, 'mortar').bags).toBe(2)
    expect(memory.parked.map((p) => p.job.name)).toEqual(['bakery'])
    for (let i = 0; i < 100; i++)
      memory = fold(fold(memory, entry('job', { act: 'start', name: `j${i}` })), facts({ jointMm: i }))
    expect(memory.parked.length).toBeLessThanOrEqual(30)
  })
})

describe('what was logged', () => {
  test('an opened bag may be full or empty until what is left is told', () => {
    const used = entry('use', { stuff: 'mortar', bags: 3, m2: 12 })
    const opened = entry('use', { stuff: 'mortar', opened: 1 })
    expect(logged(folded(used, opened).job, 'mortar')).toMatchObject({ bags: 3.5, bagsLow: 3, bagsHigh: 4 })
    const half = entry('use', { stuff: 'mortar', leftBags: 0.5 })
    expect(logged(folded(used, opened, half).job, 'mortar')).toMatchObject({ bags: 3.5, bagsLow: 3.5, bagsHigh: 3.5 })
  })

  test('a count of the whole takes the place of what was before; what was binned stays out of the stretches', () => {
    const memory = folded(
      entry('use', { stuff: 'mortar', bags: 3, m2: 12 }),
      entry('use', { stuff: 'mortar', bags: 5, m2: 18, total: true }),
      entry('use', { stuff: 'mortar', binnedBags: 1 }),
    )
    const sums = logged(memory.job, 'mortar')
    expect(sums).toMatchObject({ bags: 5, m2: 18, binnedBags: 1 })
    expect(sums.stretches).toEqual([{ packs: 5, areaM2: 18 }])
  })
})

describe('what a crew learned', () => {
  const trowel = { shape: 'square' as const, widthMm: 12.7, depthMm: 12.7, spaceMm: 12.7 }
  test('is summed by trowel, offered for the same one only, and not from a bag or two', () => {
    const all = learnedFrom([
      entry('use', { stuff: 'mortar', bags: 4, m2: 12, trowel }),
      entry('use', { stuff: 'mortar', bags: 2, m2: 6, trowel }),
      entry('use', { stuff: 'mortar', bags: 9, m2: 90 }),
      entry('use', { stuff: 'grout', bags: 9, m2: 90, trowel }),
      entry('use', null),
      entry('facts', { facts: {} }, 2),
    ])
    const setup = { trowel, backButter: true, tileMm: null }
    expect(learnedFor(all, setup, 3)).toEqual({ m2PerBag: 3, bags: 6 })
    expect(learnedFor(all, setup, 7)).toBeNull()
    expect(learnedFor(all, { ...setup, trowel: { ...trowel, depthMm: 9.5 } }, 1)).toBeNull()
  })

  test('leaves out what was taken back, wherever it was logged', () => {
    const crew = new Crew()
    crew.say('130 sf, 1/2 notch')
    crew.say('used 4 bags on 128 sf')
    expect(learnedFrom(crew.entries)).toMatchObject([{ bags: 4 }])
    crew.say('no it was 5 bags on 128 sf')
    expect(learnedFrom(crew.entries)).toMatchObject([{ bags: 5 }])
    crew.say('undo')
    expect(learnedFrom(crew.entries)).toEqual([])
    // As an older version wrote it: nothing is named, so the log still counts.
    const old = crew.entries.map((one) => (one.kind === 'undo' ? { ...one, body: {} } : one))
    expect(learnedFrom(old)).toMatchObject([{ bags: 9 }])
  })

  test('goes by floors as flat where some were', () => {
    const level = entry('use', { stuff: 'mortar', bags: 4, m2: 16, trowel, outOfFlatMm: 3 })
    const hollow = entry('use', { stuff: 'mortar', bags: 4, m2: 8, trowel, outOfFlatMm: 10 })
    const all = learnedFrom([level, hollow])
    const setup = { trowel, backButter: null, tileMm: null }
    expect(learnedFor(all, { ...setup, outOfFlatMm: 9 }, 3)).toEqual({ m2PerBag: 2, bags: 4 })
    expect(learnedFor(all, { ...setup, outOfFlatMm: 2 }, 3)).toEqual({ m2PerBag: 4, bags: 4 })
    expect(learnedFor(all, setup, 3)).toEqual({ m2PerBag: 3, bags: 8 })
    expect(checkEntry(hollow)).toEqual({ ok: true, value: 'known' })
  })

  test('is told beside what the notch says', () => {
    const crew = new Crew()
    crew.learned = learnedFrom([entry('use', { stuff: 'mortar', bags: 6, m2: 18, trowel })])
    const reply = crew.say('mortar for 130 sf, 1/2 notch')
    expect(reply.details.join('\n')).toContain('32 sf a bag (6 bags logged)')
    expect(crew.say('32 sf a bag').values['mortar_coverage_m2_per_bag']).toBeCloseTo(32 * 0.09290304, 6)
  })
})

describe('entries from outside', () => {
  test('all that a conversation makes pass, through JSON', () => {
    const crew = new Crew()
    for (const said of [
      '10x13 shop floor less a 3x4, 18x18 tile, 3/16 joint, 1/2 notch',
      'used 3 bags on 90 sf',
      'opened another bag',
      'undo',
      'mark this as the bid',
      'new job called bakery',
      'reopen',
      'set at 2pm, 58F',
      'cancel',
      'forget this job',
      'log moisture 82% RH',
      'what do we have so far',
    ])
      crew.say(said)
    expect(crew.entries.length).toBeGreaterThan(12)
    for (const one of crew.entries) {
      const checked = checkEntry(JSON.parse(JSON.stringify(one)))
      expect(checked, JSON.stringify(one)).toEqual({ ok: true, value: 'known' })
    }
  })

  test('a newer one passes by its frame', () => {
    expect(checkEntry(entry('facts', { whatever: 1 }, 7))).toEqual({ ok: true, value: 'newer' })
    expect(checkEntry(entry('hologram', 1))).toEqual({ ok: true, value: 'newer' })
  })

  test.each([
    [null, 'whole'],
    [{}, 'at'],
    [{ ...entry('undo', {}), at: 'yesterday' }, 'at'],
    [{ ...entry('undo', {}), version: 0 }, 'version'],
    [entry('use', { stuff: 'plaster' }), 'stuff'],
    [entry('use', { stuff: 'mortar', bags: -1 }), 'bags'],
    [entry('use', { stuff: 'mortar', bags: 'three' }), 'bags'],
    [entry('facts', { facts: { rooms: 7 } }, 2), 'rooms'],
    [entry('facts', { facts: { jointMm: Number.NaN } }, 2), 'jointMm'],
    [entry('job', { act: 'explode' }), 'act'],
  ])('%j is refused, naming %s', (one, where) => {
    const checked = checkEntry(one)
    expect(checked).toMatchObject({ ok: false, problem: { code: 'not-an-entry' } })
    expect(JSON.stringify(checked)).toContain(where)
  })
})
