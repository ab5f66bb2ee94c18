/** One page: hear, choose the topic, calculate, tell. Pure: what it needs of the world is handed in. */
import { resolveAsked } from './answer/asked-before.ts'
import { briefOf, contextOf, lexiconOf, spokenIn, type Tools } from './answer/brief.ts'
import { entriesAfter, entriesAfterProblem, promisesOf, STEERING } from './answer/entries-after.ts'
import { notUnderstood, unreadableIn } from './answer/not-answered.ts'
import { cautionsFor, cautionsOfTopic } from './cautions.ts'
import { completed, type Memory, type NewEntry } from './jobs/memory.ts'
import { hear, MOST_CHARACTERS } from './language/hear.ts'
import type { Heard } from './language/heard.ts'
import type { OwnWordAsked } from './language/own-words.ts'
import type { Message } from './message.ts'
import { say } from './phrase.ts'
import { fine, type Outcome, type Problem, refuse } from './problem.ts'
import type { Reply } from './reply.ts'
import { problemReply, type Speaker, speakerOf, toldReply } from './speak.ts'
import { type Meaning, meaningOf } from './talk.ts'
import { FITNESS_TOPICS } from './topics/fitness/route.ts'
import { TOPIC_ANSWERS } from './topics/index.ts'
import { withJobLines } from './topics/job/lines.ts'
import { readingEntry } from './topics/log/entries.ts'
import { photosKept, withPhotos } from './topics/log/photos.ts'
import { siteReading } from './topics/log/read-reading.ts'
import type { Brief, Told } from './topics/topic.ts'
import { ownWordsTold } from './topics/words.ts'

/** A reminder for the shell's clock: the same id again moves it. `text` is for on time, `late` for after it. */
export type ReminderDue = {
  readonly id: string
  readonly dueMs: number
  readonly body: { readonly text: string; readonly late: string; readonly language: string }
}

export type Answer = {
  readonly reply: Reply
  readonly entries: readonly NewEntry[]
  readonly reminders?: readonly ReminderDue[]
  /** Ids of reminders not to send after all. */
  readonly cancels?: readonly string[]
  /** The channel wants all about it deleted, and confirmed it: once the reply is out. */
  readonly forget?: boolean
}

/** Answers one message from what the channel remembers. Never throws for what a crew can type. */
export function answer(message: Message, remembered: Memory, tools: Tools): Answer {
  const memory = completed(remembered)
  const resolved = resolveAsked(message, memory, tools)
  const text = resolved?.text ?? message.text
  const known = resolved ? resolved.memory : memory
  const pinned = tools.languages.pinned(text)
  const spoken = spokenIn(text, known, tools)
  const language = pinned ?? known.people[message.person]?.language ?? spoken
  const zone = known.facts.zone ?? message.zone ?? tools.settings.defaults.timeZone
  const speakerIn = (metric: boolean): Speaker => speakerOf(tools.languages, language, metric, message, zone)
  if (text.length > MOST_CHARACTERS) return tooLong(text, speakerIn(false))
  const asked = tools.languages.ownWordAsked(text)
  if (asked) return wordsAnswer(asked, known, tools, spoken, speakerIn(false))
  const heard = hear(text, lexiconOf(spoken, known, tools), contextOf(known, message.person, tools.settings))
  const meant = meaningOf(heard, known)
  const brief = briefOf(message, heard, meant, known, tools, language, zone)
  const worded = calculated(meant, brief, pinned !== null, text)
  const outcome = withPhotos(withSiteRead(worded, heard), message.photos ?? [], brief, meant.topic !== null)
  // What only a photo's words are is no question of the trade.
  const meaning: Meaning = meant.topic === null && outcome.ok && !worded.ok ? { ...meant, topic: 'log' } : meant
  const before: NewEntry[] = [
    ...(pinned ? [{ kind: 'person' as const, version: 1, body: { language: pinned } }] : []),
    ...(resolved?.entries ?? []),
  ]
  const asking: Asking = { brief, meaning, text, before, speaker: speakerIn(brief.metric), pinned: pinned !== null }
  return outcome.ok ? toldAnswer(outcome.value, asking) : problemAnswer(outcome.problem, asking, message)
}

/** A message once its topic has answered. */
type Asking = {
  readonly brief: Brief
  readonly meaning: Meaning
  readonly text: string
  /** What is written down before all else. */
  readonly before: readonly NewEntry[]
  readonly speaker: Speaker
  /** The message asks for a language. */
  readonly pinned: boolean
}

function tooLong(text: string, speaker: Speaker): Answer {
  const { problem } = refuse('too-long', { length: text.length, limit: MOST_CHARACTERS })
  return { reply: problemReply(problem, 'help', speaker), entries: [] }
}

function problemAnswer(found: Problem, { brief, meaning, text, before, speaker }: Asking, message: Message): Answer {
  const problem = { ...found, at: found.at && brief.heard.at(found.at) }
  return {
    reply: problemReply(problem, meaning.topic ?? 'help', speaker),
    entries: [
      ...before,
      ...photosKept(message.photos ?? [], text),
      ...entriesAfterProblem(problem, brief, meaning, text),
    ],
  }
}

function toldAnswer(plain: Told, { brief, meaning, text, before, speaker, pinned }: Asking): Answer {
  const safe = meaning.showMath ? plain : withSafety(plain, brief)
  const told = withJobLines(safe, brief, meaning)
  const notes =
    pinned && told.answer.key !== 'language.pinned' ? [...meaning.notes, say('language.pinned')] : meaning.notes
  const reply = toldReply(meaning.showMath ? mathFirst(told) : told, notes, speaker)
  const promised = promisesOf(told, speaker)
  return {
    reply,
    entries: [
      ...before,
      ...entriesAfter(told, reply, brief, meaning, text),
      ...promised.map((body): NewEntry => ({ kind: 'remind', version: 1, body })),
      ...(told.cancels ? [{ kind: 'unremind' as const, version: 1, body: { ids: told.cancels } }] : []),
    ],
    reminders: promised.map(({ id, dueMs, text: sentence, late }) => ({
      id,
      dueMs,
      body: { text: sentence, late, language: brief.language },
    })),
    ...(told.cancels ? { cancels: told.cancels } : {}),
    ...(told.forget ? { forget: true } : {}),
  }
}

/** The site's temperature, told as such, is a reading too, whatever it changes. */
function withSiteRead(told: Outcome<Told>, heard: Heard): Outcome<Told> {
  const reading = told.ok ? siteReading(heard) : null
  const entries = (told.ok && told.value.entries) || []
  if (!told.ok || reading === null || entries.some(({ kind }) => kind === 'reading')) return told
  return fine({ ...told.value, entries: [...entries, readingEntry(reading)] })
}

function wordsAnswer(asked: OwnWordAsked, memory: Memory, tools: Tools, spoken: string, speaker: Speaker): Answer {
  const told = ownWordsTold(asked, memory, tools.languages, spoken)
  return told.ok
    ? { reply: toldReply(told.value, [], speaker), entries: (told.value.entries ?? []) as readonly NewEntry[] }
    : { reply: problemReply(told.problem, 'job', speaker), entries: [] }
}

/** A message with nothing but the wish for a language is no longer than this. */
const SHORT = 24

function calculated(meaning: Meaning, brief: Brief, pinned: boolean, text: string): Outcome<Told> {
  if (pinned && (meaning.topic === null || text.length <= SHORT))
    return fine({ topic: 'help', answer: say('language.pinned') })
  return meaning.topic === null ? notUnderstood(brief.heard) : answered(meaning, brief)
}

function answered(meaning: Meaning, brief: Brief): Outcome<Told> {
  const { heard } = brief
  // A rule or a check of the floor reads its own figures: rows of heights are no rooms and may lie below nothing.
  const ownFigures = meaning.topic !== null && FITNESS_TOPICS.has(meaning.topic)
  if (heard.problem && !ownFigures) return { ok: false, problem: heard.problem }
  const unreadable = ownFigures ? null : unreadableIn(heard)
  if (unreadable) return unreadable
  const [bare] = heard.loose
  // "make it 200" where nothing is counted in such figures: asked, not passed over.
  const isHour = meaning.topic === 'cure' && meaning.facts.when !== undefined && (bare?.q.n ?? 0) <= 12
  if (
    !isHour &&
    !STEERING.includes(meaning.topic ?? '') &&
    heard.has('make-it') &&
    meaning.said.length === 0 &&
    bare?.q.dimension === 'none' &&
    heard.items.length === 1
  )
    return refuse('unit-unclear', { said: bare.q.token.text }, [bare.q.token.from, bare.q.token.to])
  const topic = meaning.topic && TOPIC_ANSWERS[meaning.topic]
  return topic ? topic(brief) : notUnderstood(heard)
}

/** The cautions of a topic that counts or waits: in full once a person and day, then as their tags. */
function withSafety(told: Told, brief: Brief): Told {
  const { cautions } = brief.settings
  if (FITNESS_TOPICS.has(told.topic) || told.warnings?.some((w) => w.key.startsWith('caution.'))) return told
  // The saw's caution belongs to a question about cuts, not to every layout that has some.
  if (told.topic === 'layout' && !brief.heard.has('cut', 'cut-list', 'left-over', 'any-offcut')) return told
  const epoxy = brief.has('epoxy') && (told.topic === 'grout' || told.topic === 'mix') ? ['epoxy'] : []
  const ids = [...epoxy, ...cautionsOfTopic(cautions, told.topic)]
  if (ids.length === 0) return told
  const safety = cautionsFor(cautions, ids, told.topic, { ...brief, people: brief.memory.people })
  return {
    ...told,
    warnings: [...(told.warnings ?? []), ...safety.warnings],
    entries: [...(told.entries ?? []), ...safety.entries],
  }
}

/** "show the math": the workings in place of the details, under the same answer. */
const mathFirst = (told: Told): Told => ({ ...told, details: told.working ?? [], offers: [] })
