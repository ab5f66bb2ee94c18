/** What the job adds to any answer: what is kept of it, what was logged beside a question, reminders of waits. */
import { differing } from '../../jobs/job.ts'
import { learnedFor } from '../../jobs/learned.ts'
import { type Reminding, remindersOf } from '../../jobs/reminders.ts'
import { area, number, say } from '../../phrase.ts'
import type { Meaning } from '../../talk.ts'
import { useEntry } from '../log/entries.ts'
import { withSetup } from '../log/index.ts'
import { readUses } from '../log/uses.ts'
import { knownTile, trowelOf } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { asksSomething } from './asks.ts'
import { waitLine } from './remind.ts'
import { factPhrase, factWord } from './tell.ts'

const MOST_NAMED = 4
/** Fewer bags than this say little about a crew. */
const LEAST_BAGS = 3

export function withJobLines(told: Told, brief: Brief, meaning: Meaning): Told {
  if (meaning.topic === 'job' || meaning.topic === 'log' || meaning.showMath) return told
  return withReminders(withUses(withLearned(withKept(told, brief, meaning), brief), brief), brief, meaning)
}

/** Says what of this message the job keeps. */
function withKept(told: Told, brief: Brief, meaning: Meaning): Told {
  if (!meaning.jobFacts) return told
  const keys = differing(brief.memory.facts, meaning.jobFacts)
  if (keys.length === 0) return told
  const { jobFacts } = meaning
  const what = keys
    .slice(0, MOST_NAMED)
    .map((key) => (key.startsWith('site') ? factPhrase(key, jobFacts, brief.metric) : null) ?? factWord(key))
  return { ...told, details: [...(told.details ?? []), say('job.kept', { what })] }
}

/** A crew's own figure for that trowel, from this and earlier jobs, beside what the notch says. */
function withLearned(told: Told, brief: Brief): Told {
  const { facts, learned } = brief
  if (told.topic !== 'mortar' || learned.length === 0 || facts.coverageM2 !== undefined || facts.usedBags !== undefined)
    return told
  const tile = knownTile(facts)
  const { notch, backButter } = trowelOf(brief, tile, [])
  const found = learnedFor(
    learned,
    {
      trowel: notch,
      backButter,
      tileMm: tile ? [tile.lengthMm, tile.widthMm] : null,
      ...(facts.outOfFlatMm === undefined ? {} : { outOfFlatMm: facts.outOfFlatMm }),
    },
    LEAST_BAGS,
  )
  if (!found) return told
  const coverage = area(found.m2PerBag)
  const args = { coverage, bags: number(found.bags, 1), say: say('learned.say', { coverage }) }
  return { ...told, details: [...(told.details ?? []), say('learned.line', args)] }
}

/** "used 3 bags on 130 sf, 160 to go": the use is logged beside the answer. */
function withUses(told: Told, brief: Brief): Told {
  const { facts } = brief.heard
  if (!['mortar', 'grout'].includes(told.topic) || facts.usedBags === undefined || facts.usedM2 === undefined)
    return told
  const uses = readUses(brief.heard, brief.memory).filter((use) => use.bags !== undefined)
  return {
    ...told,
    entries: [...(told.entries ?? []), ...uses.map((use) => useEntry(withSetup(use, brief)))],
    values: {
      mortar_bags_used: told.topic === 'mortar' ? facts.usedBags : undefined,
      mortar_area_done_m2: told.topic === 'mortar' ? facts.usedM2 : undefined,
      ...told.values,
    },
  }
}

/** Promised waits of a floor that are still to come. */
const runningFor = ({ memory, now }: Brief, start: string | undefined) =>
  memory.promised.filter(
    (p) => start !== undefined && p.id.endsWith(`@${start}`) && p.dueMs > Temporal.Instant.from(now).epochMilliseconds,
  )

/** What is stated as set, or asked to be reminded of, is told when its wait is over. */
function withReminders(told: Told, brief: Brief, meaning: Meaning): Told {
  if (told.topic !== 'cure') return told
  const { heard, memory } = brief
  const asked = heard.commands.command === 'remind'
  const states = heard.has('set-verb', 'grouted-verb') && !asksSomething(heard)
  const before = memory.talk?.facts.when
  const running = runningFor(brief, before)
  const moves = !asked && !states && !asksSomething(heard) && running.length > 0
  if (!asked && !states && !moves) return told
  const start = told.learned?.when ?? brief.facts.when ?? null
  const only = moves
    ? running.map((p) => p.about)
    : (['grout', 'walk', 'heavy'] as const).filter((w) => asked && heard.has(w))
  const reminders: Reminding[] = remindersOf(told.values ?? {}, start, brief, only)
  const alike = reminders.every(({ id, at }) =>
    running.some((p) => p.id === id && p.dueMs === Temporal.Instant.from(at).epochMilliseconds),
  )
  if (moves && alike) return told
  if (reminders.length === 0)
    return asked ? { ...told, details: [...(told.details ?? []), say('remind.when-set')] } : told
  // Told anew: what was promised for the time before is not sent.
  const ids = reminders.map((r) => r.id)
  const stale = meaning.followsUp && before !== start ? running.filter((p) => !ids.includes(p.id)).map((p) => p.id) : []
  const [firstLine, ...others] = told.details ?? []
  return {
    ...told,
    ...(asked ? { answer: say('remind.promised', { list: reminders.map(waitLine) }) } : {}),
    reminders,
    ...(stale.length > 0 ? { cancels: stale } : {}),
    details: asked
      ? [...(firstLine ? [firstLine] : []), ...others.filter((line) => !line.key.startsWith('cure.line'))]
      : [...(told.details ?? []), say(moves ? 'remind.moved' : 'remind.will')],
    offers: [...(told.offers ?? []), 'cancel'],
  }
}
