/** The log: what went down, what it takes to finish, who burns what, running short, readings. */
import { type Job, logged, type ReadingBody, type ReadingKind, type Stuff, type UseBody } from '../../jobs/job.ts'
import { undoEntry } from '../../jobs/undo.ts'
import { area, type Phrase, percent, quote, say, word } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { ruleTold } from '../fitness/rule.ts'
import { logLines, usePhrase } from '../job/tell.ts'
import { knownTile } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { burning, coverageLogged } from './burning.ts'
import { burningGrout } from './burning-grout.ts'
import { after, readingEntry, setupEntries, useEntry } from './entries.ts'
import { finishOf } from './finish.ts'
import { type LogRead, readLog } from './read.ts'
import { runningShort } from './short.ts'
import { tilesLeft, tilesToFinish } from './tiles.ts'
import { roomsToAsk } from './use-room.ts'
import { logValues } from './values.ts'

export function log(brief: Brief): Outcome<Told> {
  const read = readLog(brief.heard, brief.memory)
  if (read === null) return fine(standing(brief))
  switch (read.is) {
    case 'use':
      return keepUses(brief, read)
    case 'reading':
      return fine(keepReading(brief, read))
    case 'boxes':
      return refuse('question', { question: 'box' })
    case 'burning':
      return read.stuff === 'grout' ? burningGrout(brief, read.m2PerBag) : burning(brief, read.m2PerBag)
    case 'rate':
      return fine(ownRate(brief, read.stuff))
    case 'tiles':
      return tilesToFinish(brief, read.left)
    case 'short':
      return runningShort(brief, read)
    case 'finish':
      return finish(brief, read)
  }
}

const standing = (brief: Brief): Told => ({
  topic: 'log',
  answer: say('log.standing'),
  details: logLines(brief.memory.job),
  values: logValues(brief.memory.job),
})

/** What the crew's own bags covered, where they were logged with their area. */
function ownRate(brief: Brief, stuff: Stuff): Told {
  const { job } = brief.memory
  const { stretches } = logged(job, stuff)
  const m2 = coverageLogged(stretches)
  if (m2 === null) return { topic: 'log', answer: say('log.no-own-rate') }
  return {
    topic: 'log',
    answer: say('log.own-rate', { coverage: area(m2), stuff: word(`stuff-${stuff}`) }),
    details: logLines(job, [stuff]),
    values: { ...logValues(job), ...(stuff === 'mortar' ? { mortar_coverage_m2_per_bag: m2 } : {}) },
  }
}

/** What a use was done with, so that it can be told what such work takes. */
export function withSetup(use: UseBody, brief: Brief): UseBody {
  if (use.stuff === 'tile') return use
  const { trowel, backButter, outOfFlatMm } = brief.memory.facts
  const tile = knownTile(brief.memory.facts)
  return {
    ...use,
    ...(trowel && use.stuff === 'mortar' ? { trowel } : {}),
    ...(backButter === undefined || use.stuff !== 'mortar' ? {} : { backButter }),
    ...(outOfFlatMm === undefined || use.stuff !== 'mortar' ? {} : { outOfFlatMm }),
    ...(tile ? { tileMm: [tile.lengthMm, tile.widthMm] as const } : {}),
  }
}

function keepUses(brief: Brief, read: Extract<LogRead, { is: 'use' }>): Outcome<Told> {
  const takesBack =
    read.corrects && brief.memory.job.changes.findLast((c) => c.is !== 'undo' && !c.undone)?.is === 'use'
  const uses = read.uses.map((use) => withSetup(takesBack ? corrected(use, brief.memory.job) : use, brief))
  const entries = [...(takesBack ? [undoEntry(brief.memory)] : []), ...setupEntries(brief), ...uses.map(useEntry)]
  const { job, facts } = after(brief, entries)
  const stuff = uses[0].stuff === 'tile' ? 'mortar' : uses[0].stuff
  // What broke or is left of the tile says nothing of bags.
  const aside = uses.every(
    (use) => use.stuff === 'tile' && use.tiles === undefined && use.m2 === undefined && use.rows === undefined,
  )
  const told = aside ? fine(null) : finishOf(brief, job, facts, stuff, { leftM2: null, haveBags: null })
  // What was told is kept whatever comes of the sums.
  const sums = told.ok ? told.value : null
  const short = tilesLeft(brief, job, facts)
  const asked = roomsToAsk(uses, brief.memory)
  return fine({
    topic: 'log',
    answer: say(takesBack ? 'log.corrected' : 'log.kept', { list: uses.map(usePhrase) }),
    details: [
      ...(asked.length > 0 ? [say('log.which-room', { rooms: asked.map(quote) })] : []),
      ...(sums?.answer ? [sums.answer] : []),
      ...(uses.some((use) => use.stuff === 'tile') ? short.lines : []),
      ...sumLines(job, uses),
      ...(uses[0].stuff === 'tile' ? [] : (sums?.lines ?? [])),
    ],
    warnings: sums?.warnings ?? [],
    working: sums?.working ?? [],
    values: { ...sums?.values, ...short.values, ...logValues(job) },
    entries,
    offers: ['undo', ...(sums?.working?.length ? ['math'] : [])],
  })
}

/** "no its 2 bags": what is not told anew stays as it was logged. */
function corrected(use: UseBody, job: Job): UseBody {
  const last = job.uses.at(-1)
  if (last === undefined || last.stuff !== use.stuff) return use
  const { bags, m2, tiles, total } = last
  const was = { bags, m2, tiles, total }
  return { ...Object.fromEntries(Object.entries(was).filter(([, value]) => value !== undefined)), ...use }
}

/** The sums of what was just logged, where they say more than the log itself. */
function sumLines(job: Job, uses: readonly UseBody[]): Phrase[] {
  const stuffs = [...new Set(uses.map((use) => use.stuff))]
  const first = stuffs.length === 1 && job.uses.filter((use) => use.stuff === stuffs[0]).length === 1
  return first ? [] : logLines(job, stuffs)
}

function finish(brief: Brief, read: Extract<LogRead, { is: 'finish' }>): Outcome<Told> {
  const { job, facts } = brief.memory
  const told = finishOf(brief, job, facts, read.stuff, read)
  if (!told.ok) return told
  const sums = told.value
  const entries = read.haveBags === null ? [] : [useEntry({ stuff: read.stuff, leftBags: read.haveBags })]
  if (!sums?.answer) {
    const known = after(brief, entries).job
    return fine({
      ...standing(brief),
      answer: say('log.no-floor'),
      details: logLines(known, [read.stuff]),
      warnings: sums?.warnings ?? [],
      values: logValues(known),
      entries,
    })
  }
  return fine({
    topic: 'log',
    answer: sums.answer,
    details: [...sums.lines, ...logLines(after(brief, entries).job, [read.stuff])],
    warnings: sums.warnings,
    working: sums.working,
    values: { ...sums.values, ...logValues(job) },
    entries,
    offers: ['math'],
  })
}

/** Keeps a reading and says how it stands against the rule for it, where there is one. */
function keepReading(brief: Brief, read: Extract<LogRead, { is: 'reading' }>): Told {
  const { reading } = read
  const entries = [readingEntry(reading)]
  const { job } = after(brief, entries)
  const judged = verdictOf(brief, reading)
  return {
    topic: 'log',
    answer: say('log.reading', { text: quote(reading.text) }),
    details: judged?.lines ?? [],
    assumed: judged?.told?.assumed ?? [],
    warnings: judged?.told?.warnings ?? [],
    sources: judged?.told?.sources ?? [],
    values: { ...judged?.told?.values, ...logValues(job) },
    entries: [...entries, ...(judged?.told?.entries ?? [])],
    offers: ['undo'],
  }
}

/** Readings that the rule book judges, with the subject they stand under. */
const RULED: Partial<Record<ReadingKind, string>> = { flatness: 'flatness', moisture: 'slab-humidity' }

const LEAST_RH_PCT = 30

function verdictOf(brief: Brief, reading: ReadingBody): { lines: Phrase[]; told: Told | null } | null {
  const { practice } = brief.settings
  if (reading.what === 'contact' && reading.value !== undefined) {
    const wet = brief.facts.wet === 'wet' || brief.facts.exterior === true
    const least = (wet ? practice.mortar.contactWetPct : practice.mortar.contactDryPct).value
    const args = {
      value: percent(reading.value),
      least: percent(least),
      wet: percent(practice.mortar.contactWetPct.value),
    }
    if (reading.value < least)
      return { lines: [say(wet ? 'log.contact-low-wet' : 'log.contact-low', args)], told: null }
    return { lines: [say(wet ? 'log.contact-wet' : 'log.contact-dry', args)], told: null }
  }
  // A meter's few percent are of water by weight, which no RH limit judges.
  const byWeight = reading.what === 'moisture' && (reading.value ?? 0) < LEAST_RH_PCT
  const subject = byWeight ? undefined : RULED[reading.what]
  const told = subject ? ruleTold(brief, brief.heard.rules, subject) : null
  return told?.ok ? { lines: [told.value.answer], told: told.value } : null
}
