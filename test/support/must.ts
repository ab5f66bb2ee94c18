/** The value of an outcome that a test counts on; a problem fails the test in its own words. */
import type { Outcome } from '../../src/problem.ts'

export function must<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problem))
  return outcome.value
}
