import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { latestPast, minuteOfDay, readyAt } from '../../src/core/clock.ts'
import { good, refused } from './checks.ts'

const RULES = { roundMinutes: 30, nightFromMinute: 20 * 60, nightToMinute: 7 * 60 }

describe('a wait as a clock time', () => {
  test.each([
    // start, wait h, zone, ready, moved
    ['2026-11-24T09:00:00-05:00', 24, null, '2026-11-25T09:00:00-05:00', false],
    ['2026-11-24T09:10:00-05:00', 24, null, '2026-11-25T09:30:00-05:00', false],
    ['2026-11-24T14:00:00-05:00', 36, null, '2026-11-26T07:00:00-05:00', true],
    ['2026-11-24T14:00:00-05:00', 6, null, '2026-11-25T07:00:00-05:00', true],
    ['2026-11-24T13:31:00-05:00', 6, null, '2026-11-25T07:00:00-05:00', true],
    ['2026-11-24T13:30:00-05:00', 6, null, '2026-11-24T19:30:00-05:00', false],
    ['2026-11-24T07:00:00-05:00', 24, null, '2026-11-25T07:00:00-05:00', false],
    ['2026-11-24T06:59:00-05:00', 24, null, '2026-11-25T07:00:00-05:00', false],
    ['2026-11-24T14:00:00Z', 24, 'America/Chicago', '2026-11-25T08:00:00-06:00', false],
    // Clocks go forward on 2026-03-08 and back on 2026-11-01 in the US (Energy Policy Act of 2005): 24 h are 24 h.
    ['2026-03-07T14:00:00-06:00', 24, 'America/Chicago', '2026-03-08T15:00:00-05:00', false],
    ['2026-10-31T14:00:00-05:00', 24, 'America/Chicago', '2026-11-01T13:00:00-06:00', false],
    // The hour that does not exist falls at night anyway.
    ['2026-03-07T14:00:00-06:00', 12.1, 'America/Chicago', '2026-03-08T07:00:00-05:00', true],
  ] as const)('%s and %d h in %s: %s', (start, hours, zone, iso, movedToMorning) =>
    expect(good(readyAt(start, hours, zone, RULES))).toEqual({ iso, movedToMorning }),
  )

  test('never early, never at night, on the half hour', () =>
    fc.assert(
      fc.property(
        fc.date({ min: new Date('2026-01-01'), max: new Date('2027-12-31'), noInvalidDate: true }),
        fc.double({ min: 0, max: 1000, noNaN: true }),
        fc.constantFrom('America/New_York', 'Europe/Berlin', 'Australia/Lord_Howe', '-03:30'),
        (date, hours, zone) => {
          const start = date.toISOString()
          const { iso } = good(readyAt(start, hours, zone, RULES))
          const minute = good(minuteOfDay(iso, zone))
          expect(minute).toBeGreaterThanOrEqual(RULES.nightToMinute)
          expect(minute).toBeLessThan(RULES.nightFromMinute)
          expect(minute % 30).toBe(0)
          const waitedH = (Date.parse(iso) - Date.parse(start)) / 3_600_000
          expect(waitedH).toBeGreaterThanOrEqual(hours - 1e-4)
          expect(waitedH).toBeLessThanOrEqual(hours + 13)
        },
      ),
    ))

  test('refuses what is no time, zone or wait', () => {
    for (const [iso, zone] of [
      ['yesterday', null],
      ['2026-11-24T09:00:00', null],
      ['2026-11-24T09:00:00Z', 'Middle/Earth'],
    ] as const)
      expect(readyAt(iso, 1, zone, RULES)).toMatchObject({ ok: false, problem: { code: 'not-understood' } })
    refused(readyAt('2026-11-24T09:00:00Z', Number.NaN, null, RULES), 'wait')
    refused(readyAt('2026-11-24T09:00:00Z', -1, null, RULES), 'wait')
  })
})

describe('set at 3pm: the latest such time that has passed', () => {
  test.each([
    ['2026-11-24T16:00:00-05:00', 15 * 60, null, '2026-11-24T15:00:00-05:00'],
    ['2026-11-24T15:00:00-05:00', 15 * 60, null, '2026-11-24T15:00:00-05:00'],
    ['2026-11-24T14:59:00-05:00', 15 * 60, null, '2026-11-23T15:00:00-05:00'],
    ['2026-11-24T02:00:00Z', 15 * 60, 'America/Chicago', '2026-11-23T15:00:00-06:00'],
    ['2026-03-08T09:00:00-05:00', 15 * 60, 'America/Chicago', '2026-03-07T15:00:00-06:00'],
  ] as const)('now %s, minute %d, %s: %s', (now, minute, zone, iso) =>
    expect(good(latestPast(now, minute, zone))).toBe(iso),
  )

  test('refuses a minute that is none', () => refused(latestPast('2026-11-24T09:00:00Z', 1440, null), 'minute-of-day'))
})
