/** What the README shows is run: its talk, message by message. */
import { existsSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { askedAgain, turnsOf } from './support/readme.ts'

const read = (name: string) => readFileSync(path.join(import.meta.dirname, '..', name), 'utf8')

describe.each(['README.md', 'README.es.md'].filter((name) => existsSync(path.join(import.meta.dirname, '..', name))))(
  '%s',
  (name) => {
    const turns = turnsOf(read(name))

    test('has talk in it, and all of it was found', () => {
      expect(turns.length).toBeGreaterThanOrEqual(12)
      expect(turns).toHaveLength(
        read(name)
          .split('\n')
          .filter((line) => line.startsWith('> ')).length,
      )
    })

    test(`answers as it says (node test/support/readme.ts ${name} writes the answers of now)`, () => {
      expect(askedAgain(turns)).toEqual(turns)
    })
  },
)

test('the scripts and files the README names are there', () => {
  const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> }
  const named = [...read('README.md').matchAll(/npm run(?: -s)? ([a-z]+)/g)].map((found) => found[1]!)
  expect(named.length).toBeGreaterThan(1)
  for (const name of named) expect(Object.keys(scripts)).toContain(name)
  for (const [, file] of read('README.md').matchAll(/`((?:config|src|test|adapters)\/[\w/.-]+)`/g))
    expect(existsSync(path.join(import.meta.dirname, '..', file!)), file).toBe(true)
})
