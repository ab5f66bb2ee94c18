/** "undo": what was said or logged last taken back, and what stands after it. */
import { fold } from '../../jobs/fold.ts'
import type { Memory } from '../../jobs/memory.ts'
import { undoable, undoEntry } from '../../jobs/undo.ts'
import { type Phrase, quote, say } from '../../phrase.ts'
import { fine, type Outcome } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'
import { holdings } from './holds.ts'
import { factPhrase, factPhrases, factWord, jobName, whatChanged } from './tell.ts'

export function undo(brief: Brief): Outcome<Told> {
  const { memory } = brief
  const what = undoable(memory)
  const entry = undoEntry(memory)
  if (what === null) return fine({ topic: 'job', answer: say('job.nothing-to-undo') })
  const after = fold(memory, { ...entry, at: brief.now, person: brief.person, messageId: '', part: 0 })
  const facts = what === 'talk' ? (after.talk?.facts ?? after.facts) : after.facts
  const held = holdings(brief, facts, after.job)
  const list = factPhrases(facts, brief.metric)
  return fine({
    topic: 'job',
    answer: undoneLine(brief, what, after),
    details: [
      ...(list.length > 0 ? [say('job.now', { list })] : (held.details ?? []).length > 0 ? [] : [say('job.now-empty')]),
      ...(held.details ?? []),
    ],
    values: held.values,
    entries: [entry],
  })
}

function undoneLine(brief: Brief, what: 'change' | 'talk' | 'parked', after: Memory): Phrase {
  const { job, talkBefore } = brief.memory
  if (what === 'parked') return say('job.reopened', { job: jobName(after.job) })
  if (what === 'talk') return say('job.undone-talk', { text: quote((talkBefore?.text ?? '').slice(0, 60)) })
  const change = job.changes.findLast((c) => c.is !== 'undo' && !c.undone)
  if (change?.is !== 'facts') return say('job.undone', { what: change ? whatChanged(change, job) : say('job.an-undo') })
  const what2 = change.keys.map((key) => {
    const back = factPhrase(key, change.was, brief.metric)
    const gone = factPhrase(key, change.now, brief.metric) ?? say('job.fact-only', { what: factWord(key) })
    return back === null ? say('job.taken-out', { what: gone }) : say('job.back-to', { what: back })
  })
  return say('job.undone', { what: what2 })
}
