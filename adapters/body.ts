/** A reply as lines that fit a platform, the rest of a long one as the text of a file. Cautions are the last to go. */
import type { Reply } from '../src/reply.ts'
import { shorten } from './text.ts'

export type Body = {
  readonly answer: string
  readonly details: readonly string[]
  readonly warnings: readonly string[]
  readonly notes: readonly string[]
  /** The whole reply without any escape, when it did not fit. */
  readonly overflow: string | null
}

export type Room = {
  readonly escape: (text: string) => string
  /** UTF-16 units for the answer, and for the other lines together, after escaping. */
  readonly answer: number
  readonly rest: number
}

const labelled = (label: string, lines: readonly string[]): string[] =>
  lines.length === 0 ? [] : [`${label} ${lines.join('; ')}`]

/** Assumed values and sources, one line each. */
const notesOf = (reply: Reply): string[] => [
  ...labelled(reply.labels.assumed, reply.assumed),
  ...labelled(reply.labels.sources, reply.sources),
]

const warningsOf = (reply: Reply): string[] => reply.warnings.map((warning) => `${reply.labels.warning} ${warning}`)

/** All lines of a reply, as a crew reads them in plain text. */
export const plainText = (reply: Reply): string =>
  [reply.answer, ...reply.details, ...warningsOf(reply), ...notesOf(reply)].filter((line) => line !== '').join('\n')

const lengthOf = (lines: readonly string[]): number => lines.reduce((sum, line) => sum + line.length + 1, 0)

/** The first lines that fit, the last of them shortened. */
function fitting(lines: readonly string[], room: number): string[] {
  const kept: string[] = []
  let left = room
  for (const line of lines) {
    if (line.length + 1 <= left) kept.push(line)
    else {
      if (left > 20) kept.push(shorten(line, left - 1))
      return kept
    }
    left -= line.length + 1
  }
  return kept
}

/** The reply escaped and cut to the room there is. */
export function fitBody(reply: Reply, room: Room): Body {
  const escaped = (lines: readonly string[]) => lines.map(room.escape).filter((line) => line.trim() !== '')
  const answer = room.escape(reply.answer).trim()
  const [details, warnings, notes] = [escaped(reply.details), escaped(warningsOf(reply)), escaped(notesOf(reply))]
  if (answer.length <= room.answer && lengthOf([...details, ...warnings, ...notes]) <= room.rest)
    return { answer, details, warnings, notes, overflow: null }
  const keptWarnings = fitting(warnings, room.rest)
  const keptNotes = fitting(notes, Math.min(room.rest - lengthOf(keptWarnings), room.rest / 4))
  const left = room.rest - lengthOf(keptWarnings) - lengthOf(keptNotes)
  return {
    answer: shorten(answer, room.answer),
    details: fitting(details, left),
    warnings: keptWarnings,
    notes: keptNotes,
    overflow: plainText(reply),
  }
}
