/** What a reply says of how a message was read, and where the facts it left out came from. */
import type { FactName, Facts } from '../facts.ts'
import type { Heard } from '../language/heard.ts'
import { type Phrase, quote, room as roomLength, say, word } from '../phrase.ts'
import type { Topic } from '../reply.ts'

export function heardNotes(heard: Heard): Phrase[] {
  return heard.notes.map((note) =>
    say(`note.${note.key}`, {
      said: quote(note.said),
      unit: word(`unit-${note.unit ?? 'ft'}`),
      size: roomLength(('mm' in note ? note.mm : undefined) ?? 0),
    }),
  )
}

/** Where each fact that a message left out came from. */
export type Carried = Readonly<Partial<Record<FactName, 'talk' | 'job'>>>

/** Facts worth saying where they came from. */
const WORTH_SAYING: readonly FactName[] = ['rooms', 'areaM2', 'tile', 'jointMm', 'trowel', 'boxTiles', 'boxM2']

const FOR_TOPIC: Partial<Record<Topic, readonly FactName[]>> = {
  convert: [],
  help: [],
  mix: [],
  layout: ['rooms', 'areaM2'],
  cure: ['tile'],
}

export function carriedNotes(carried: Carried, facts: Facts, topic: Topic | null): Phrase[] {
  const wanted = topic ? (FOR_TOPIC[topic] ?? WORTH_SAYING) : []
  const from = (source: 'talk' | 'job'): Phrase[] => {
    const names = wanted.filter((n) => carried[n] === source && facts[n] !== undefined)
    return names.length > 0 ? [say(`carried.${source}`, { what: names.map((n) => word(`fact-${n}`)) })] : []
  }
  return [...from('talk'), ...from('job')]
}
