/** JSON lines in, JSON lines out: one answer a line, each as soon as its line is read; a problem is an answer too. */
import { createReadStream } from 'node:fs'
import { createInterface } from 'node:readline'
import { type Outcome, type Problem, refuse } from '../../src/problem.ts'

/** A line longer than this is refused unread [characters]. */
const LONGEST_LINE = 8_000_000

/** Answers every line of FILE, or of standard input without one. The exit code is 1 when a file cannot be read. */
export async function answerLines(answer: (asked: unknown) => Outcome<unknown>, file = process.argv[2]): Promise<void> {
  process.stdout.on('error', () => process.exit(0)) // the reader has gone
  const input = file === undefined ? process.stdin : createReadStream(file)
  input.on('error', () => {
    print({ problem: told(refuse('missing', { field: 'file', said: file ?? '' }).problem) })
    process.exitCode = 1
  })
  for await (const line of createInterface({ input, crlfDelay: Number.POSITIVE_INFINITY }))
    print(answered(line, answer))
}

/** One line's answer, whatever the line. */
export function answered(line: string, answer: (asked: unknown) => Outcome<unknown>): unknown {
  const outcome = heard(line, answer)
  return outcome.ok ? outcome.value : { problem: told(outcome.problem) }
}

function heard(line: string, answer: (asked: unknown) => Outcome<unknown>): Outcome<unknown> {
  if (line.trim() === '') return refuse('empty')
  if (line.length > LONGEST_LINE) return refuse('too-long', { length: line.length, limit: LONGEST_LINE })
  try {
    return answer(JSON.parse(line))
  } catch (error) {
    if (error instanceof SyntaxError) return refuse('not-understood', { said: line.slice(0, 80) })
    process.stderr.write(`${error instanceof Error ? error.stack : error}\n`)
    return refuse('internal')
  }
}

const told = ({ code, facts }: Problem) => ({ code, ...facts })

const print = (value: unknown): void => {
  process.stdout.write(`${JSON.stringify(value)}\n`)
}
