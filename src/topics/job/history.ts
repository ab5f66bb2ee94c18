/** "who changed the joint": the changes of the job, newest first. */
import type { FactName } from '../../facts.ts'
import type { Change } from '../../jobs/job.ts'
import type { Concept } from '../../language/concepts.ts'
import { count, say } from '../../phrase.ts'
import type { Brief, Told } from '../topic.ts'
import { factValues } from './holds.ts'
import { changePhrase, factWord } from './tell.ts'

const HISTORY_OF: readonly (readonly [FactName, Concept])[] = [
  ['jointMm', 'joint'],
  ['jointMm', 'spacer'],
  ['trowel', 'trowel'],
  ['trowel', 'notch'],
  ['pattern', 'offset'],
  ['pattern', 'diagonal'],
  ['rooms', 'room'],
  ['rooms', 'house-part'],
  ['rooms', 'floor'],
  ['areaM2', 'area-word'],
  ['tile', 'tile'],
  ['boxTiles', 'box'],
  ['boxM2', 'box'],
]

const SHOWN_CHANGES = 8

/** Whether a change is a reading that speaks of what is asked: "who said ok on the offset". */
function isOf(change: Change, { heard, memory }: Brief): boolean {
  if (change.is !== 'reading') return false
  const text = memory.job.readings.find((r) => r.id === change.id)?.text.toLowerCase() ?? ''
  return heard.marks
    .filter((m) => HISTORY_OF.some(([, concept]) => concept === m.concept))
    .some((m) => text.includes(heard.tokens[m.first].text.toLowerCase()))
}

/** "who changed the joint": the changes of that, newest first; else the last few of all. */
export function history(brief: Brief): Told {
  const { job: current, facts } = brief.memory
  const { facts: said } = brief.heard
  const named = HISTORY_OF.filter(([name, concept]) => brief.heard.has(concept) || said[name] !== undefined).map(
    ([name]) => name,
  )
  const only = named.length > 0 ? named : null
  const changes = current.changes
    .filter((c) => only === null || (c.is === 'facts' ? c.keys.some((key) => only.includes(key)) : isOf(c, brief)))
    .toReversed()
  if (changes.length === 0)
    return {
      topic: 'job',
      answer: say(only ? 'job.never-changed' : 'job.no-history', { what: only ? factWord(only[0]) : say('job.a-log') }),
      values: factValues(facts),
    }
  const lines = changes.slice(0, SHOWN_CHANGES).map((c) => changePhrase(c, current, brief, only))
  return {
    topic: 'job',
    answer: lines[0],
    details: [
      ...lines.slice(1),
      ...(changes.length > SHOWN_CHANGES
        ? [say('job.more-changes', { n: count(changes.length - SHOWN_CHANGES) })]
        : []),
    ],
    values: factValues(facts),
    offers: ['undo'],
  }
}
