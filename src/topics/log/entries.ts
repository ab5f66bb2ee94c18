/** Entries a log message makes, and the memory as it will be with them. */
import type { ReadingBody, UseBody } from '../../jobs/job.ts'
import { ENTRY_VERSIONS, fold, type Memory, type NewEntry } from '../../jobs/memory.ts'
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
