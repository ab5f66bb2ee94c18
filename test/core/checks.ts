/** Helpers of the tables of check values. */
import { expect } from 'vitest'
import type { Outcome } from '../../src/problem.ts'

/** Exact by law: NIST Handbook 44 App. C. */
export const IN = 25.4
export const FT2 = 0.09290304
export const LB = 0.45359237

export function good<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(`refused: ${JSON.stringify(outcome.problem)}`)
  return outcome.value
}

export const near = (got: number, want: number, tolerance: number): void =>
  expect(Math.abs(got - want), `${got} should be ${want} to ${tolerance}`).toBeLessThanOrEqual(tolerance)

export function refused(outcome: Outcome<unknown>, field: string): void {
  expect(outcome).toMatchObject({ ok: false, problem: { code: 'out-of-range', facts: { field } } })
}
