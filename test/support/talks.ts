/** Conversations as tests: each line is said in turn in one channel, the last answer is looked at. */
import { expect } from 'vitest'
import type { Reply } from '../../src/reply.ts'
import { Crew } from './crew.ts'

export const SF = 0.09290304
export const sf = (n: number): number => n * SF
export const inch = (n: number): number => n * 25.4

export type Expected = {
  readonly ok?: false
  readonly topic?: string | readonly string[]
  /** A figure within half a percent, a range, or null for a key that must not be there. */
  readonly values?: Readonly<Record<string, number | string | readonly [least: number, most: number] | null>>
  readonly says?: string | RegExp
  readonly not?: RegExp
}
export type Talk = readonly [said: readonly string[], expected: Expected]

export function lastOf(said: readonly string[], crew = new Crew()): Reply {
  let reply: Reply | null = null
  for (const text of said) reply = crew.say(text)
  return reply as unknown as Reply
}

export function holds(reply: Reply, expected: Expected): void {
  const text = [reply.answer, ...reply.details, ...reply.assumed, ...reply.warnings].join('\n')
  expect(reply.ok, text).toBe(expected.ok ?? true)
  if (expected.topic) expect([expected.topic].flat(), text).toContain(reply.topic)
  for (const [key, value] of Object.entries(expected.values ?? {})) {
    const got = reply.values[key]
    if (value === null) expect(got, `${key}: ${text}`).toBeUndefined()
    else if (typeof value === 'string') expect(got, `${key}: ${text}`).toBe(value)
    else if (typeof value === 'number') {
      expect(got, `${key}: ${text}`).toBeTypeOf('number')
      expect(Math.abs(Number(got) - value), `${key} ${got}: ${text}`).toBeLessThanOrEqual(
        Math.abs(value) * 0.005 + 1e-9,
      )
    } else {
      expect(Number(got), `${key}: ${text}`).toBeGreaterThanOrEqual(value[0])
      expect(Number(got), `${key}: ${text}`).toBeLessThanOrEqual(value[1])
    }
  }
  if (expected.says) expect(text).toMatch(expected.says)
  if (expected.not) expect(text).not.toMatch(expected.not)
}
