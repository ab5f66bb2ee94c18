/** A child process of a test: its lines as they come, and how it ended. */
import { spawn } from 'node:child_process'
import path from 'node:path'

export type Child = {
  readonly lines: string[]
  readonly logs: () => Record<string, unknown>[]
  readonly ended: Promise<{ code: number | null; signal: string | null }>
  /** Writes a line to its input. */
  readonly type: (line: string) => void
  readonly kill: (signal: NodeJS.Signals) => void
}

/** Runs a TypeScript program with this Node and only the variables given. */
export function runProgram(file: string, env: Record<string, string>, cwd: string): Child {
  const child = spawn(process.execPath, [path.resolve(file)], {
    cwd,
    env: { PATH: process.env['PATH'] ?? '', HOME: cwd, ...env },
    stdio: ['pipe', 'pipe', 'pipe'],
  })
  const lines: string[] = []
  for (const stream of [child.stdout, child.stderr]) {
    let rest = ''
    stream.on('data', (chunk: Buffer) => {
      const parts = (rest + chunk.toString()).split('\n')
      rest = parts.pop() ?? ''
      lines.push(...parts)
    })
  }
  const ended = new Promise<{ code: number | null; signal: string | null }>((resolve) =>
    child.on('close', (code, signal) => resolve({ code, signal })),
  )
  const logs = () =>
    lines.filter((line) => line.startsWith('{')).map((line) => JSON.parse(line) as Record<string, unknown>)
  return {
    lines,
    logs,
    ended,
    type: (line) => void child.stdin.write(`${line}\n`),
    kill: (signal) => void child.kill(signal),
  }
}
