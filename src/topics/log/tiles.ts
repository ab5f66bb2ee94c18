/** Tiles on hand against the places still to be filled. */
import type { Facts } from '../../facts.ts'
import { type Job, logged, tilesOnHand } from '../../jobs/job.ts'
import { count, type Phrase, say } from '../../phrase.ts'
import { numberIn, quantitiesOf, type Values } from '../job/quantities.ts'
import type { Brief } from '../topic.ts'

/** What was said of tiles on hand against what the floor still takes; nothing where either is unknown. */
export function tilesLeft(brief: Brief, job: Job, facts: Facts): { lines: Phrase[]; values: Values } {
  const log = logged(job, 'tile')
  const perBox = facts.boxTiles ?? null
  const onHand = tilesOnHand(job, perBox)
  if (onHand === null || log.tiles === 0) return { lines: [], values: {} }
  const values = quantitiesOf(brief, facts)
  const places = numberIn(values, 'tile_cells') ?? numberIn(values, 'tile_count')
  if (places === null) return { lines: [], values: {} }
  const short = Math.max(0, places - log.tiles - onHand)
  return {
    lines: [
      short > 0
        ? say('log.tiles-short', { n: count(short) })
        : say('log.tiles-enough', { n: count(places - log.tiles), have: count(onHand) }),
    ],
    values: { tiles_short: short, ...(perBox ? { boxes_short: Math.ceil(short / perBox) } : {}) },
  }
}
