/** Photos sent with a message: kept with the reading it makes, else as a reading of their own, so that none is lost. */
import type { ReadingBody } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import type { Photo } from '../../message.ts'
import { count, quote, say } from '../../phrase.ts'
import { fine, type Outcome } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'
import { readingEntry } from './entries.ts'

const WAITED_FOR = 'photo'

/** A photo without a word: kept, and what it shows is asked, once for those that come one after the other. */
function photoAlone(photos: readonly Photo[], memory: Memory, person: string): Told {
  const again = memory.asked?.question === WAITED_FOR && memory.asked.person === person
  return {
    topic: 'log',
    answer: say(again ? 'log.photo-too' : 'log.photo-asks', { n: count(photos.length) }),
    entries: [
      readingEntry({ what: 'photo', text: '', photos }),
      { kind: 'asked', version: 1, body: { question: WAITED_FOR, text: '', person } },
    ],
    offers: ['undo'],
  }
}

/** Photos of this person that wait for their words. */
function waiting({ asked, job }: Memory, person: string): readonly Photo[] {
  if (asked?.question !== WAITED_FOR || asked.person !== person) return []
  const wordless: Photo[] = []
  for (const reading of job.readings.toReversed()) {
    if (reading.person !== person || reading.what !== 'photo' || reading.text !== '') break
    wordless.unshift(...(reading.photos ?? []))
  }
  return wordless
}

/** What was told, with the photos of this message kept, and those that waited where these are their words.
 *  @param understood  whether the message meant something to the bot by itself */
export function withPhotos(
  outcome: Outcome<Told>,
  photos: readonly Photo[],
  brief: Brief,
  understood: boolean,
): Outcome<Told> {
  const before = waiting(brief.memory, brief.person)
  const all = [...before, ...photos]
  if (all.length === 0) return outcome
  const entries = outcome.ok ? (outcome.value.entries ?? []) : []
  const reads = entries.findIndex(({ kind }) => kind === 'reading')
  if (outcome.ok && reads >= 0) {
    const body = { ...(entries[reads]!.body as ReadingBody), photos: all }
    return fine({
      ...outcome.value,
      details: [...(outcome.value.details ?? []), say('log.with-photos', { n: count(all.length) })],
      entries: entries.map((entry, k) => (k === reads ? readingEntry(body) : entry)),
    })
  }
  const text = brief.heard.typed.trim().slice(0, MOST_TEXT)
  if (text === '') return photos.length > 0 ? fine(photoAlone(photos, brief.memory, brief.person)) : outcome
  if (!understood) return fine(shows(text, all))
  if (photos.length === 0) return outcome
  const entry = readingEntry({ what: 'photo', text, photos })
  const kept = say('log.photos-kept', { n: count(photos.length) })
  return outcome.ok
    ? fine({ ...outcome.value, details: [...(outcome.value.details ?? []), kept], entries: [...entries, entry] })
    : outcome
}

/** Photos of a message that could not be answered yet. */
export const photosKept = (photos: readonly Photo[], text: string): ReturnType<typeof readingEntry>[] =>
  photos.length > 0 ? [readingEntry({ what: 'photo', text: text.slice(0, MOST_TEXT), photos })] : []

const MOST_TEXT = 200

const shows = (text: string, photos: readonly Photo[]): Told => ({
  topic: 'log',
  answer: say('log.reading', { text: quote(text) }),
  details: [say('log.with-photos', { n: count(photos.length) })],
  entries: [readingEntry({ what: 'photo', text, photos })],
  offers: ['undo'],
})
