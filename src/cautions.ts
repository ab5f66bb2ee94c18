/** Safety cautions: in full the first time for a topic, a person and a day, then as a tag; the gravest always in full. */
import type { NewEntry, Person } from './jobs/memory.ts'
import { type Phrase, say } from './phrase.ts'
import type { Topic } from './reply.ts'
import type { Caution } from './rules/book.ts'

export type CautionsSaid = { readonly warnings: readonly Phrase[]; readonly entries: readonly NewEntry[] }

type Asker = {
  readonly now: string
  readonly zone: string | null
  readonly person: string
  readonly people: Readonly<Record<string, Person>>
}

/** The cautions of these ids, those told in full today shrunk to their tags, and the entry that remembers it.
 *  @param always true for the answer to a question about safety itself */
export function cautionsFor(
  cautions: readonly Caution[],
  ids: readonly string[],
  topic: Topic,
  asker: Asker,
  always = false,
): CautionsSaid {
  const day = dayOf(asker.now, asker.zone)
  const told = asker.people[asker.person]?.cautions ?? {}
  const fresh: Record<string, string> = {}
  const warnings = [...new Set(ids)].flatMap((id) => {
    const caution = cautions.find((c) => c.id === id)
    if (!caution) return []
    const key = `${topic}:${id}`
    if (!always && !caution.always && told[key] === day) return [say(`caution.${id}.tag`)]
    if (!caution.always) fresh[key] = day
    return [say(`caution.${id}`)]
  })
  const today = Object.fromEntries(Object.entries(told).filter(([, when]) => when === day))
  const entries: NewEntry[] =
    Object.keys(fresh).length === 0
      ? []
      : [{ kind: 'person', version: 1, body: { cautions: { ...today, ...fresh } } satisfies Person }]
  return { warnings, entries }
}

/** The ids that belong to a topic whatever is asked. */
export const cautionsOfTopic = (cautions: readonly Caution[], topic: Topic): string[] =>
  cautions.filter((caution) => caution.topics.includes(topic)).map((caution) => caution.id)

/** The date at the asker's: in the zone, else as written in `now`. */
function dayOf(now: string, zone: string | null): string {
  if (zone === null) return now.slice(0, 10)
  return Temporal.Instant.from(now).toZonedDateTimeISO(zone).toPlainDate().toString()
}
