/** What was typed before, over restarts: one line each, appended, so that two terminals at once lose nothing. */
import { appendFileSync, chmodSync, readFileSync, writeFileSync } from 'node:fs'
import { inert } from './wrap.ts'

/** Lines that can be called back. */
export const MOST_LINES = 500

export type History = {
  /** Newest first. */
  readonly lines: readonly string[]
  readonly add: (line: string) => void
}

/** Reads the history, which only its owner may read. What the disk refuses is told once and the talk goes on without it. */
export function openHistory(file: string, onTrouble: (error: unknown) => void): History {
  let troubled = false
  const trying = <T>(act: () => T): T | undefined => {
    try {
      return act()
    } catch (error) {
      if (!troubled) onTrouble(error)
      troubled = true
      return undefined
    }
  }
  const all = trying(() => read(file)) ?? []
  if (all.length > 2 * MOST_LINES)
    trying(() => writeFileSync(file, `${all.slice(-MOST_LINES).join('\n')}\n`, { mode: 0o600 }))
  const lines = [...new Set(all.toReversed())].slice(0, MOST_LINES)
  let last = lines[0]
  return {
    lines,
    add(line) {
      const kept = inert(line).trim()
      if (kept === '' || kept === last) return
      last = kept
      trying(() => appendFileSync(file, `${kept}\n`, { mode: 0o600 }))
    },
  }
}

function read(file: string): string[] {
  try {
    const text = readFileSync(file, 'utf8')
    chmodSync(file, 0o600)
    return text
      .split('\n')
      .map(inert)
      .filter((line) => line !== '')
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return []
    throw error
  }
}
