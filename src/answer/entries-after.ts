/** What is written down of a message: the talk, the job's facts, a question asked back, reminders. */
import type { Facts } from '../facts.ts'
import { ENTRY_VERSIONS, type NewEntry, type Promised, type Talk } from '../jobs/memory.ts'
import type { Heard } from '../language/heard.ts'
import { phraseText } from '../language/tell.ts'
import type { Problem } from '../problem.ts'
import type { Reply } from '../reply.ts'
import type { Speaker } from '../speak.ts'
import type { Meaning } from '../talk.ts'
import type { Brief, Told } from '../topics/topic.ts'

const cuesOf = (heard: Heard): Talk['cues'] => [...new Set(heard.marks.map((m) => m.concept))].slice(0, 60)

function talkOf(
  brief: Brief,
  meaning: Meaning,
  values: Talk['values'],
  text: string,
  learned: Partial<Facts> = {},
): NewEntry {
  const cues =
    meaning.followsUp && brief.memory.talk?.topic === meaning.topic
      ? [...new Set([...brief.memory.talk.cues, ...cuesOf(brief.heard)])]
      : cuesOf(brief.heard)
  const body: Talk = {
    topic: meaning.topic ?? 'help',
    facts: { ...meaning.facts, ...learned },
    values,
    language: brief.language,
    metric: brief.metric,
    text,
    person: brief.person,
    cues,
    lastSaid: meaning.said,
  }
  return { kind: 'talk', version: ENTRY_VERSIONS.talk, body }
}

const QUIET_TOPICS: readonly string[] = ['convert', 'help']

export const STEERING: readonly string[] = ['job', 'log']

/** Reminders in words. Their clock times are told with the day, since they are read later. */
export function promisesOf(told: Told, speaker: Speaker): Promised[] {
  return (told.reminders ?? []).map(({ id, about, at, due, late }) => {
    const dueMs = Temporal.Instant.from(at).epochMilliseconds
    const style = { ...speaker.style, now: new Date(dueMs - 3 * 86_400_000).toISOString() }
    return { id, about, dueMs, text: phraseText(due, style), late: phraseText(late, style) }
  })
}

export function entriesAfter(told: Told, reply: Reply, brief: Brief, meaning: Meaning, text: string): NewEntry[] {
  const entries: NewEntry[] = []
  // A conversion or a word of help in between does not end the talk before it.
  const quiet =
    STEERING.includes(meaning.topic ?? '') || (QUIET_TOPICS.includes(told.topic) && brief.memory.talk !== null)
  if (quiet && brief.memory.asked) entries.push({ kind: 'asked', version: 1, body: null })
  if (!quiet && !meaning.showMath) entries.push(talkOf(brief, meaning, reply.values, told.asks ?? text, told.learned))
  if (meaning.jobFacts)
    entries.push({ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts: meaning.jobFacts } })
  return [...entries, ...((told.entries ?? []) as readonly NewEntry[])]
}

/** A question asked back is waited for: the next message fills the gap. */
export function entriesAfterProblem(problem: Problem, brief: Brief, meaning: Meaning, text: string): NewEntry[] {
  if (problem.code !== 'question') return []
  const asked: NewEntry = {
    kind: 'asked',
    version: 1,
    body: { question: String(problem.facts['question']), text, person: brief.person },
  }
  return [
    ...(STEERING.includes(meaning.topic ?? '') ? [] : [talkOf(brief, meaning, {}, text)]),
    ...(meaning.jobFacts
      ? [{ kind: 'facts' as const, version: ENTRY_VERSIONS.facts, body: { facts: meaning.jobFacts } }]
      : []),
    asked,
  ]
}
