/** The talk in README.md: messages as quotes, each followed by its real reply in a block, in one channel; after the comment
 *  `<!-- apart -->` each in a channel of its own. `node test/support/readme.ts [FILE]` writes
 *  the replies of now into it; the test compares. */
import { readFileSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { replyText } from '../../src/speak.ts'
import { Crew } from './crew.ts'

const TALK = /^> (?<said>.+)\n\n```text\n(?<told>[\s\S]*?)\n```$/gm

const APART = '<!-- apart -->'

export type Turn = { readonly said: string; readonly told: string; readonly apart: boolean }

export function turnsOf(readme: string): Turn[] {
  const from = readme.indexOf(APART)
  return [...readme.matchAll(TALK)].map(({ groups, index }) => ({
    said: groups!['said']!,
    told: groups!['told']!,
    apart: from >= 0 && index > from,
  }))
}

/** The same messages asked in order, with what is answered now. */
export function askedAgain(turns: readonly Turn[]): Turn[] {
  const crew = new Crew()
  return turns.map((turn) => ({ ...turn, told: replyText((turn.apart ? new Crew() : crew).say(turn.said)) }))
}

export function refreshed(readme: string): string {
  const now = askedAgain(turnsOf(readme))
  let turn = 0
  return readme.replace(TALK, (_, said: string) => `> ${said}\n\n\`\`\`text\n${now[turn++]!.told}\n\`\`\``)
}

if (import.meta.main) {
  const file = path.resolve(process.argv[2] ?? path.join(import.meta.dirname, '../../README.md'))
  writeFileSync(file, refreshed(readFileSync(file, 'utf8')))
}
