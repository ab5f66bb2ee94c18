/** "are 12 sheets enough?": the verdict first. */
import type { Concept } from '../../language/concepts.ts'
import { count, type Phrase, say } from '../../phrase.ts'
import type { Brief } from '../topic.ts'
import { figureNear } from './read.ts'

/** What is on hand of something, where the message asks whether it is enough; else null. */
export function haveOf(brief: Brief, concept: Concept): number | null {
  if (!brief.heard.has('enough')) return null
  const q = figureNear(brief.heard, ['none'], concept)
  return q && Number.isInteger(q.n) && q.n >= 1 ? q.n : null
}

/** One line that settles it, or none where nothing is on hand. */
export function verdictOf(have: number | null, need: number): Phrase[] {
  if (have === null) return []
  const said = { have: count(have), need: count(need), short: count(Math.max(0, need - have)) }
  return [say(have >= need ? 'around.enough' : 'around.short', said)]
}
