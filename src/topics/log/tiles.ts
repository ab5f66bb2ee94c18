/** Tiles on hand against the places still to be filled, and what breaks on the way. */
import { breakage } from '../../core/forecast.ts'
import type { Facts } from '../../facts.ts'
import { type Job, logged, tilesOnHand, type UseBody } from '../../jobs/job.ts'
import { count, type Phrase, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { numberIn, quantitiesOf, type Values } from '../job/quantities.ts'
import { logLines } from '../job/tell.ts'
import { knownTile, usualJointMm } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { after, useEntry } from './entries.ts'
import { rowsDone } from './rest-of-floor.ts'
import { logValues } from './values.ts'

type Rest = {
  /** Places of the floor, those still empty, and tiles on hand where they were told. */
  readonly places: number
  readonly toSet: number
  readonly onHand: number | null
  /** Tiles to keep for what breaks: at even odds, and safe. */
  readonly breaks: { readonly even: number; readonly safe: number }
}

function restOf(brief: Brief, job: Job, facts: Facts): Rest | null {
  const log = logged(job, 'tile')
  const values = quantitiesOf(brief, facts)
  const places = numberIn(values, 'tile_cells') ?? numberIn(values, 'tile_count')
  if (places === null) return null
  const tile = knownTile(facts)
  const rows = tile && rowsDone(job, facts, tile, facts.jointMm ?? usualJointMm(brief))
  const set = rows ? rows.places : log.tiles
  const toSet = Math.max(0, places - set)
  // A rate needs tiles that went down whole.
  const broken = log.broken > 0 && set > 0 ? breakage(log.broken, set, toSet) : null
  return {
    places,
    toSet,
    onHand: tilesOnHand(job, facts.boxTiles ?? null),
    breaks: broken?.ok ? broken.value : { even: 0, safe: 0 },
  }
}

const shortValues = (short: number, perBox: number | null): Values => ({
  tiles_short: short,
  ...(perBox ? { boxes_short: Math.ceil(short / perBox) } : {}),
})

/** What was said of tiles on hand against what the floor still takes; what breaks at the rate so far. */
export function tilesLeft(brief: Brief, job: Job, facts: Facts): { lines: Phrase[]; values: Values } {
  const log = logged(job, 'tile')
  if (log.tiles === 0 && log.broken === 0) return { lines: [], values: {} }
  const rest = restOf(brief, job, facts)
  if (rest === null) return { lines: [], values: {} }
  const breaks = rest.breaks.safe > 0 && rest.toSet > 0 ? [breaksLine(rest)] : []
  if (rest.onHand === null || log.tiles === 0) return { lines: breaks, values: {} }
  const short = Math.max(0, rest.toSet - rest.onHand)
  const line =
    short > 0
      ? say('log.tiles-short', { n: count(short) })
      : say('log.tiles-enough', { n: count(rest.toSet), have: count(rest.onHand) })
  return { lines: [line, ...breaks], values: shortValues(short, facts.boxTiles ?? null) }
}

const breaksLine = ({ toSet, breaks }: Rest): Phrase =>
  say('log.breaks', { n: count(toSet), even: count(breaks.even), safe: count(breaks.safe) })

/** "half a box left, enough?", "how many more tiles": for the rest of the floor. */
export function tilesToFinish(brief: Brief, left: UseBody | null): Outcome<Told> {
  const entries = left === null ? [] : [useEntry(left)]
  const { job, facts } = after(brief, entries)
  const perBox = facts.boxTiles ?? brief.facts.boxTiles ?? null
  if (left?.leftBoxes !== undefined && perBox === null) return refuse('question', { question: 'box' })
  const rest = restOf(brief, job, { ...facts, ...(perBox === null ? {} : { boxTiles: perBox }) })
  if (rest === null) return refuse('question', { question: brief.facts.tile ? 'area' : 'tile' })
  const { toSet, onHand, breaks } = rest
  const safe = toSet + breaks.safe
  const short = onHand === null ? null : Math.max(0, toSet + breaks.even - onHand)
  const verdict = onHand === null ? 'to-set' : onHand >= safe ? 'yes' : onHand >= toSet + breaks.even ? 'tight' : 'no'
  const numbers = {
    n: count(toSet),
    places: count(rest.places),
    have: count(onHand ?? 0),
    short: count(short ?? 0),
    safe: count(Math.max(0, safe - (onHand ?? 0))),
  }
  return fine({
    topic: 'log',
    answer: say(`log.rest-${verdict}`, numbers),
    details: [...(breaks.safe > 0 && toSet > 0 ? [breaksLine(rest)] : []), ...logLines(job, ['tile'])],
    values: { ...(short === null ? {} : shortValues(short, perBox)), ...logValues(job) },
    entries,
    offers: entries.length > 0 ? ['undo'] : [],
  })
}
