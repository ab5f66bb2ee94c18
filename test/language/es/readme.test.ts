/** What README.es.md shows is what is answered. */
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { ask } from '../../support/crew.ts'

const readme = readFileSync(path.join(import.meta.dirname, '../../../README.es.md'), 'utf8')
const examples = [...readme.matchAll(/```text ejemplo\n(.+)\n→ (.+)\n```/g)].map(
  ([, said, told]) => [said, told] as const,
)

test('it shows a dozen examples', () => {
  expect(examples.length).toBeGreaterThanOrEqual(12)
})

test.each(examples)('%s', (said, told) => {
  const reply = ask(said)
  expect(reply.language).toBe('es')
  expect(reply.answer).toBe(told)
})
