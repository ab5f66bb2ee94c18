/** A point to compare with, as it is named: marked before, a day or a time, or the tile the job had. */
import type { Facts, Tile } from '../../facts.ts'
import { type Change, type Job, reverted } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import { momentIn } from '../../language/moments.ts'
import { instant, type Phrase, quote, say } from '../../phrase.ts'
import { sameSize } from '../log/read-short.ts'
import { tilePhrase } from '../stuff.ts'
import type { Brief } from '../topic.ts'

export type Since = {
  /** What it is called: in quotes, a day, a tile. */
  readonly name: Phrase
  /** Who marked it, where somebody did. */
  readonly by: string | null
  readonly at: string
  readonly facts: Facts
  /** What was changed after it, the oldest first. */
  readonly changes: readonly FactChange[]
}

/** The point a message names; the last one marked where it names none. Null where nothing is marked; the words where they name
 *  nothing known. */
export function sinceIn(brief: Brief, name: string | null): Since | string | null {
  const { memory, heard } = brief
  const { points } = memory.job
  const said = ` ${heard.plain.text} `
  const marked = points.toSorted((a, b) => b.name.length - a.name.length).find((p) => said.includes(` ${p.name} `))
  if (marked) return pointed(marked, memory)
  const tile = heard.facts.tile && sinceTile(brief, heard.facts.tile)
  if (tile) return tile
  if (heard.commands.log.has('from-start')) return sinceStart(memory)
  const moment = momentIn(heard, () => brief.libraries.times(brief.language), brief.now, brief.zone, true)
  const day = heard.has('day-word', 'time-word') ? brief.now : null
  const told = moment?.iso ?? day
  if (told !== null) return sinceTime(memory, moment?.clock ? told : dayStart(told, brief.zone), name)
  if (name !== null) return name
  const last = points.at(-1)
  return last ? pointed(last, memory) : null
}

const pointed = (point: Job['points'][number], memory: Memory): Since => ({
  name: say('job.since-point', { name: quote(point.name) }),
  by: point.personName ?? point.person,
  at: point.at,
  facts: point.facts,
  changes: changesSince(memory, point.at),
})

/** As the job stood at an instant; before it began, as it stood first. */
function sinceTime(memory: Memory, at: string, name: string | null): Since | null {
  const facts = factsAt(memory, at)
  if (facts.rooms === undefined && facts.areaM2 === undefined) return sinceStart(memory)
  return {
    name: name === null ? say('job.since-time', { at: instant(at) }) : say('job.since-point', { name: quote(name) }),
    by: null,
    at,
    facts,
    changes: changesSince(memory, at),
  }
}

/** As the job stood after the first message that told a floor. */
function sinceStart(memory: Memory): Since | null {
  const changes = memory.job.changes.filter(isFactChange)
  const first = changes.find(({ now }) => now.rooms !== undefined || now.areaM2 !== undefined)
  if (!first) return null
  const next = changes.findLastIndex((change) => change.messageId === first.messageId) + 1
  return {
    name: say('job.since-start', { at: instant(first.at) }),
    by: null,
    at: first.at,
    facts: before(memory, (change) => changes.indexOf(change) >= next),
    changes: changes.slice(next),
  }
}

/** The instant the day of another began, in the zone or at the offset it is written with. */
function dayStart(iso: string, zone: string | null): string {
  const at = Temporal.Instant.from(iso).toZonedDateTimeISO(zone ?? /[+-]\d\d:\d\d$/.exec(iso)?.[0] ?? 'UTC')
  return at.startOfDay().toString({ timeZoneName: 'never', smallestUnit: 'second' })
}

const isAfter = (a: string, b: string): boolean =>
  Temporal.Instant.compare(Temporal.Instant.from(a), Temporal.Instant.from(b)) > 0

export type FactChange = Extract<Change, { is: 'facts' }>
const isFactChange = (change: Change): change is FactChange => change.is === 'facts' && !change.undone

/** The job's facts as they stood at an instant: what was changed after it is taken back, the latest first. */
export const factsAt = (memory: Memory, at: string): Facts => before(memory, (change) => isAfter(change.at, at))

function before({ facts, job }: Memory, later: (change: FactChange) => boolean): Facts {
  return job.changes
    .filter(isFactChange)
    .filter(later)
    .reduceRight((now, change) => reverted(now, change.keys, change.was), facts)
}

const isSize = (tile: Tile | undefined, size: Tile): boolean => tile !== undefined && sameSize(tile, size)

/** As it was when this tile was the job's for the last time it came in. */
function sinceTile(brief: Brief, size: Tile): Since | null {
  const { memory } = brief
  const has = (facts: Facts): boolean =>
    isSize(facts.tile, size) || (facts.rooms ?? []).some((room) => isSize(room.own?.tile, size))
  const changes = memory.job.changes.filter(isFactChange)
  const at = changes.findLastIndex((change) => has(change.now) && !has(change.was))
  const came = changes[at]
  if (!came) return null
  // What was still told with it, until the tile left, belongs to it; after that only what came later counts.
  const left = changes.findIndex((change, k) => k > at && has(change.was) && !has(change.now))
  const first = left < 0 ? at + 1 : left
  return {
    name: say('job.since-tile', { tile: tilePhrase(size, brief.metric) }),
    by: null,
    at: came.at,
    facts: before(memory, (change) => changes.indexOf(change) >= first),
    changes: changes.slice(first),
  }
}

/** The fact changes after a point, the oldest first. */
const changesSince = ({ job }: Memory, at: string): FactChange[] =>
  job.changes.filter(isFactChange).filter((change) => isAfter(change.at, at))
