/** Entries a log message makes, and the memory as it will be with them. */

import { fold } from '../../jobs/fold.ts'
import { differing, type ReadingBody, type UseBody } from '../../jobs/job.ts'
import { ENTRY_VERSIONS, type Memory, type NewEntry } from '../../jobs/memory.ts'
import type { Brief, Told } from '../topic.ts'

export const useEntry = (use: UseBody): NewEntry => ({ kind: 'use', version: ENTRY_VERSIONS.use, body: use })
export const readingEntry = (reading: ReadingBody): NewEntry => ({
  kind: 'reading',
  version: ENTRY_VERSIONS.reading,
  body: reading,
})

export const after = (brief: Brief, entries: NonNullable<Told['entries']>): Memory =>
  entries.reduce(
    (memory, entry, part) => fold(memory, { ...entry, at: brief.now, person: brief.person, messageId: 'now', part }),
    brief.memory,
  )

/** What a log tells of the trowel or the box beside the work is the job's from then on. */
export function setupEntries({ heard, memory }: Brief): NonNullable<Told['entries']> {
  const { trowel, backButter, boxTiles, boxM2 } = heard.facts
  const told = Object.entries({ trowel, backButter, boxTiles, boxM2 }).filter(([, value]) => value !== undefined)
  const facts = { ...memory.facts, ...Object.fromEntries(told) }
  return differing(memory.facts, facts).length > 0
    ? [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts } }]
    : []
}
