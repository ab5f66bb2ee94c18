/** A story pole from one length: nothing but the length, the tile and the joint is needed. */
import { endCuts } from '../core/layout/end-cut.ts'
import { storyPole } from '../core/layout/lines.ts'
import { count, type Phrase, room, say, small } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import type { Brief, Told } from './topic.ts'

/** Marks from zero, each computed from zero, and the piece that is left at the end.
 *  @problem question (the tile), out-of-range (a joint as wide as the tile, a length shorter than one) */
export function pole(brief: Brief, lengthMm: number): Outcome<Told> {
  const { facts, heard } = brief
  const known = knownTile(facts)
  if (!known) return refuse('question', { question: 'tile' })
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  // On a wall tile lies unless it is stood up: its width goes up the pole.
  const isUp = heard.has('wall', 'high', 'highest', 'shower', 'backsplash')
  const sideMm = isUp !== (facts.tileStands === true) ? known.widthMm : known.lengthMm
  if (jointMm >= sideMm)
    return refuse('out-of-range', { field: 'joint', value: jointMm, min: 0, max: sideMm / 2, unit: 'mm' })
  const ends = endCuts(lengthMm, sideMm, jointMm)
  if (!ends.ok) return ends
  const whole = Math.floor((lengthMm + jointMm + 1e-6) / (sideMm + jointMm))
  const marks = storyPole(sideMm, sideMm, jointMm, whole)
  if (!marks.ok) return marks
  const { leftMm, cutMm } = ends.value
  const args = {
    length: room(lengthMm),
    tile: tilePhrase(known, brief.metric),
    side: small(sideMm),
    joint: small(jointMm),
    whole: count(whole),
    left: small(leftMm),
    cut: small(cutMm),
    marks: marks.value.map((m) => small(m.exactMm)),
  }
  const isNarrow = leftMm > 0 && leftMm < sideMm / 2
  return fine({
    topic: 'layout',
    answer: say(leftMm > 0 ? 'pole.answer' : 'pole.all-whole', args),
    details: [
      say('pole.marks', args),
      ...(isNarrow && cutMm > leftMm ? [say('pole.shared', { ...args, whole: count(ends.value.whole) })] : []),
    ],
    assumed: [
      ...assumed,
      ...(known.lengthMm === known.widthMm ? [] : [say('pole.assumed-side', args)]),
      say('pole.assumed-zero'),
    ],
    working: [say('pole.work', args)],
    values: {
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      joint_mm: jointMm,
      tile_whole: whole,
      ...(leftMm > 0 ? { smallest_cut_mm: leftMm } : {}),
    },
    tables: [
      {
        name: 'story-pole.csv',
        head: [say('table.mark'), say('table.distance')],
        rows: marks.value.map((m, k) => [k + 1, small(m.exactMm)]),
      },
    ],
    offers: ['math'],
  })
}
