/** The log: what went down, what it takes to finish, who burns what, running short, readings. */
import type { UseBody } from '../../jobs/job.ts'
import { undoEntry } from '../../jobs/memory.ts'
import { percent, quote, say, word } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { logLines, usePhrase } from '../job/tell.ts'
import { knownTile } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { burning } from './burning.ts'
import { after, readingEntry, useEntry } from './entries.ts'
import { finishOf } from './finish.ts'
import { type LogRead, readLog } from './read.ts'
import { runningShort } from './short.ts'
import { tilesLeft } from './tiles.ts'
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
      return burning(brief, read.m2PerBag)
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
  const uses = read.uses.map((use) => withSetup(use, brief))
  const takesBack =
    read.corrects && brief.memory.job.changes.findLast((c) => c.is !== 'undo' && !c.undone)?.is === 'use'
  const entries = [...(takesBack ? [undoEntry(brief.memory)] : []), ...uses.map(useEntry)]
  const { job, facts } = after(brief, entries)
  const stuff = uses[0].stuff === 'tile' ? 'mortar' : uses[0].stuff
  const told = finishOf(brief, job, facts, stuff, { leftM2: null, haveBags: null })
  // What was told is kept whatever comes of the sums.
  const sums = told.ok ? told.value : null
  const short = tilesLeft(brief, job, facts)
  return fine({
    topic: 'log',
    answer: say(takesBack ? 'log.corrected' : 'log.kept', { list: uses.map(usePhrase) }),
    details: [...logLines(job), ...(sums?.lines ?? []), ...(sums?.answer ? [sums.answer] : []), ...short.lines],
    warnings: sums?.warnings ?? [],
    working: sums?.working ?? [],
    values: { ...sums?.values, ...short.values, ...logValues(job) },
    entries,
    offers: ['undo', ...(sums?.working?.length ? ['math'] : [])],
  })
}

function finish(brief: Brief, read: Extract<LogRead, { is: 'finish' }>): Outcome<Told> {
  const { job, facts } = brief.memory
  const told = finishOf(brief, job, facts, read.stuff, read)
  if (!told.ok) return told
  const sums = told.value
  const entries = read.haveBags === null ? [] : [useEntry({ stuff: read.stuff, leftBags: read.haveBags })]
  if (!sums?.answer)
    return fine({
      ...standing(brief),
      details: [...logLines(job), say('log.no-floor')],
      warnings: sums?.warnings ?? [],
    })
  return fine({
    topic: 'log',
    answer: sums.answer,
    details: [...sums.lines, ...logLines(job)],
    warnings: sums.warnings,
    working: sums.working,
    values: { ...sums.values, ...logValues(job) },
    entries,
    offers: ['math'],
  })
}

function keepReading(brief: Brief, read: Extract<LogRead, { is: 'reading' }>): Told {
  const { reading } = read
  const entries = [readingEntry(reading)]
  const { job } = after(brief, entries)
  const { practice } = brief.settings
  const least = practice.mortar.contactDryPct.value
  const low = reading.what === 'contact' && reading.value !== undefined && reading.value < least
  return {
    topic: 'log',
    answer: say('log.reading', { what: word(`reading-${reading.what}`), text: quote(reading.text) }),
    details: low ? [say('log.contact-low', { value: percent(reading.value as number), least: percent(least) })] : [],
    values: logValues(job),
    entries,
    offers: ['undo'],
  }
}
