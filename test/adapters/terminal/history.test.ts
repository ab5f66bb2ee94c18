/** What was typed before, over restarts. */
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterEach, expect, test, vi } from 'vitest'
import { MOST_LINES, openHistory } from '../../../adapters/terminal/history.ts'

const made: string[] = []
afterEach(() => {
  for (const folder of made.splice(0)) rmSync(folder, { recursive: true, force: true })
})
function file(): string {
  made.push(mkdtempSync(path.join(tmpdir(), 'kneepad-history-')))
  return path.join(made.at(-1)!, 'history')
}
const fail = (error: unknown) => {
  throw error
}

test('newest first, each once, without empty lines, readable by the owner only', () => {
  const at = file()
  const first = openHistory(at, fail)
  expect(first.lines).toEqual([])
  for (const line of ['10x13', 'and grout?', 'and grout?', '  ', '10x13']) first.add(line)
  expect(openHistory(at, fail).lines).toEqual(['10x13', 'and grout?'])
  expect(readFileSync(at, 'utf8')).toBe('10x13\nand grout?\n10x13\n')
  expect(statSync(at).mode & 0o777).toBe(0o600)
})

test('a file others could read is shut to them', () => {
  const at = file()
  writeFileSync(at, 'a\n')
  chmodSync(at, 0o644)
  expect(openHistory(at, fail).lines).toEqual(['a'])
  expect(statSync(at).mode & 0o777).toBe(0o600)
})

test('two terminals at once lose nothing', () => {
  const at = file()
  const [one, other] = [openHistory(at, fail), openHistory(at, fail)]
  one.add('a')
  other.add('b')
  one.add('c')
  expect(openHistory(at, fail).lines).toEqual(['c', 'b', 'a'])
})

test('it does not grow without end', () => {
  const at = file()
  const history = openHistory(at, fail)
  for (let i = 0; i < 3 * MOST_LINES; i++) history.add(`line ${i}`)
  const again = openHistory(at, fail)
  expect(again.lines).toHaveLength(MOST_LINES)
  expect(again.lines[0]).toBe(`line ${3 * MOST_LINES - 1}`)
  expect(readFileSync(at, 'utf8').split('\n')).toHaveLength(MOST_LINES + 1)
  expect(statSync(at).mode & 0o777).toBe(0o600)
})

test('control characters in the file do not reach the prompt', () => {
  const at = file()
  writeFileSync(at, 'a\u001b[2Jb\n')
  expect(openHistory(at, fail).lines).toEqual(['a[2Jb'])
})

test('what the disk refuses is told once, and typing goes on', () => {
  const at = file()
  mkdirSync(at)
  const trouble = vi.fn()
  const history = openHistory(at, trouble)
  history.add('a')
  history.add('b')
  expect(history.lines).toEqual([])
  expect(trouble).toHaveBeenCalledTimes(1)
})
