/** Reminders that come again: as many as are told, by the calendar, listed as one and cancelled together. */
import { describe, expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'

const times = (crew: Crew): string[] => (crew.last?.reminders ?? []).map((r) => new Date(r.dueMs).toISOString())

test.each([
  [
    'remind me every day at 7 to check moisture',
    14,
    '2026-03-11T12:00',
    '2026-03-24T12:00',
    'Reminder: check moisture',
  ],
  [
    'every day at 7 remind me to check moisture',
    14,
    '2026-03-11T12:00',
    '2026-03-24T12:00',
    'Reminder: check moisture',
  ],
  ['remind us to wet the slab every morning', 14, '2026-03-11T12:00', '2026-03-24T12:00', 'Reminder: wet the slab'],
  ['remind me daily at half past 5 to lock up', 14, '2026-03-10T22:30', '2026-03-23T22:30', 'Reminder: lock up'],
  ['remind me every other day at 8 to check rh', 10, '2026-03-12T13:00', '2026-03-30T13:00', 'Reminder: check rh'],
  ['recuérdame cada tercer día a las 8 medir', 10, '2026-03-12T13:00', '2026-03-30T13:00', 'Recordatorio: medir'],
  ['remind me every weekday at 8 to open up', 10, '2026-03-11T13:00', '2026-03-24T13:00', 'Reminder: open up'],
  ['remind me every monday at 8 to order', 8, '2026-03-16T13:00', '2026-05-04T13:00', 'Reminder: order'],
  ['remind me every 2 hours to check the fan', 2, '2026-03-10T23:30', '2026-03-11T01:30', 'Reminder: check the fan'],
  [
    'recuérdame todos los días a las 7 revisar la humedad',
    14,
    '2026-03-11T12:00',
    '2026-03-24T12:00',
    'Recordatorio: revisar la humedad',
  ],
  [
    'recuérdame cada lunes a las 8 pedir loseta',
    8,
    '2026-03-16T13:00',
    '2026-05-04T13:00',
    'Recordatorio: pedir loseta',
  ],
  [
    'recuérdame cada 2 horas revisar el piso',
    2,
    '2026-03-10T23:30',
    '2026-03-11T01:30',
    'Recordatorio: revisar el piso',
  ],
])('%s', (said, n, first, last, text) => {
  const crew = new Crew()
  const reply = crew.say(said)
  expect(reply.ok).toBe(true)
  expect(times(crew)).toHaveLength(n)
  expect(new Set(crew.last?.reminders?.map((r) => r.id)).size).toBe(n)
  expect(times(crew)[0]).toContain(first)
  expect(times(crew).at(-1)).toContain(last)
  expect(crew.last?.reminders?.every((r) => r.body.text === text)).toBe(true)
  expect(reply.answer).toContain(String(n))
})

test('seven stays seven where the clocks change', () => {
  const crew = new Crew()
  crew.say('remind me every day at 7 to sweep', { now: '2026-10-30T12:00:00-04:00', zone: 'America/New_York' })
  // Summer time ends on 1 November 2026.
  expect(times(crew).slice(0, 2)).toEqual(['2026-10-31T11:00:00.000Z', '2026-11-01T12:00:00.000Z'])
})

describe('a series in the talk', () => {
  test('is listed as one, and cancelled alone where it was promised last', () => {
    const crew = new Crew()
    crew.say('remind me at 7pm to lock up')
    crew.say('remind me every day at 7 to check moisture')
    expect(crew.say('reminders').details).toHaveLength(2)
    crew.say('cancel that')
    expect(crew.last?.cancels).toHaveLength(14)
    expect(crew.memory.promised.map((p) => p.text)).toEqual(['Reminder: lock up'])
  })

  test('told twice it is the same; two for one hour are two', () => {
    const crew = new Crew()
    crew.say('remind me every day at 7 to check moisture')
    crew.say('remind me every day at 7 to check moisture')
    expect(crew.memory.promised).toHaveLength(14)
    crew.say('remind me every day at 7 to open the shop')
    expect(crew.memory.promised).toHaveLength(28)
  })

  test('every one that runs can still be cancelled, however many are asked for', () => {
    const crew = new Crew()
    const set = new Set<string>()
    for (const what of ['sweep', 'mop', 'lock up', 'call', 'order']) {
      crew.say(`remind me every day at 7 to ${what}`)
      for (const { id } of crew.last?.reminders ?? []) set.add(id)
    }
    expect(crew.say('remind me every day at 9 to rest').answer).toMatch(/^Too many reminders/)
    crew.say('cancel the reminders')
    expect(new Set(crew.last?.cancels)).toEqual(set)
  })
})
