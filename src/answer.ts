/** One page: hear, choose the topic, calculate, tell. Pure: what it needs of the world is handed in. */

import { cautionsFor, cautionsOfTopic } from './cautions.ts'
import type { Facts } from './facts.ts'
import { completed, ENTRY_VERSIONS, type Memory, type NewEntry, type Promised, type Talk } from './jobs/memory.ts'
import { type HearContext, type Heard, hear, MOST_CHARACTERS } from './language/hear.ts'
import type { Languages } from './language/languages.ts'
import type { Lexicon } from './language/lexicon.ts'
import { type OwnWordAsked, withOwnWords } from './language/own-words.ts'
import { phraseText } from './language/tell.ts'
import type { Message } from './message.ts'
import { say } from './phrase.ts'
import { fine, type Outcome, type Problem, refuse } from './problem.ts'
import type { Reply } from './reply.ts'
import type { Settings } from './settings.ts'
import { problemReply, type Speaker, speakerOf, toldReply } from './speak.ts'
import { type Meaning, meaningOf } from './talk.ts'
import { FITNESS_TOPICS } from './topics/fitness/route.ts'
import { TOPIC_ANSWERS } from './topics/index.ts'
import { withJobLines } from './topics/job/lines.ts'
import { readingEntry } from './topics/log/entries.ts'
import { photosKept, withPhotos } from './topics/log/photos.ts'
import { siteReading } from './topics/log/read-reading.ts'
import { statesSite } from './topics/site.ts'
import type { Brief, Told } from './topics/topic.ts'
import { ownWordsTold } from './topics/words.ts'
import type { Libraries } from './units/libraries.ts'

/** What the shell hands in, once. */
export type Tools = { readonly settings: Settings; readonly languages: Languages; readonly libraries: Libraries }

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
  if (text.length > MOST_CHARACTERS) {
    const speaker = speakerOf(tools.languages, language, false, message, zone)
    return {
      reply: problemReply(refuse('too-long', { length: text.length, limit: MOST_CHARACTERS }).problem, 'help', speaker),
      entries: [],
    }
  }
  const asked = tools.languages.ownWordAsked(text)
  if (asked) return wordsAnswer(asked, known, tools, spoken, speakerOf(tools.languages, language, false, message, zone))
  const heard = hear(text, lexiconOf(spoken, known, tools), contextOf(known, message.person, tools.settings))
  const meant = meaningOf(heard, known)
  const brief = briefOf(message, heard, meant, known, tools, language, zone)
  const speaker = speakerOf(tools.languages, language, brief.metric, message, zone)
  const pin: NewEntry[] = pinned ? [{ kind: 'person', version: 1, body: { language: pinned } }] : []
  const worded =
    pinned && (meant.topic === null || text.length <= SHORT)
      ? fine<Told>({ topic: 'help', answer: say('language.pinned') })
      : meant.topic === null
        ? notUnderstood(heard)
        : answered(meant, brief)
  const outcome = withPhotos(withSiteRead(worded, heard), message.photos ?? [], brief, meant.topic !== null)
  // What only a photo's words are is no question of the trade.
  const meaning: Meaning = meant.topic === null && outcome.ok && !worded.ok ? { ...meant, topic: 'log' } : meant
  if (!outcome.ok) {
    const problem = { ...outcome.problem, at: outcome.problem.at && heard.at(outcome.problem.at) }
    return {
      reply: problemReply(problem, meaning.topic ?? 'help', speaker),
      entries: [
        ...pin,
        ...(resolved?.entries ?? []),
        ...photosKept(message.photos ?? [], text),
        ...entriesAfterProblem(problem, brief, meaning, text),
      ],
    }
  }
  const safe = meaning.showMath ? outcome.value : withSafety(outcome.value, brief)
  const told = withJobLines(safe, brief, meaning)
  const notes =
    pinned && told.answer.key !== 'language.pinned' ? [...meaning.notes, say('language.pinned')] : meaning.notes
  const reply = toldReply(meaning.showMath ? mathFirst(told) : told, notes, speaker)
  const promised = promisesOf(told, speaker)
  return {
    reply,
    entries: [
      ...pin,
      ...(resolved?.entries ?? []),
      ...entriesAfter(told, reply, brief, meaning, text),
      ...promised.map((body): NewEntry => ({ kind: 'remind', version: 1, body })),
      ...(told.cancels ? [{ kind: 'unremind' as const, version: 1, body: { ids: told.cancels } }] : []),
    ],
    reminders: promised.map(({ id, dueMs, text: sentence, late }) => ({
      id,
      dueMs,
      body: { text: sentence, late, language },
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

/** A language's words with the crew's own laid over them. */
function lexiconOf(language: string, memory: Memory, tools: Tools): Lexicon {
  const lexicon = tools.languages.lexicon(language)
  return withOwnWords(lexicon, memory.words, (means) => hear(means, lexicon).facts)
}

function wordsAnswer(asked: OwnWordAsked, memory: Memory, tools: Tools, spoken: string, speaker: Speaker): Answer {
  const told = ownWordsTold(asked, memory, tools.languages, spoken)
  return told.ok
    ? { reply: toldReply(told.value, [], speaker), entries: (told.value.entries ?? []) as readonly NewEntry[] }
    : { reply: problemReply(told.problem, 'job', speaker), entries: [] }
}

/** A message with nothing but the wish for a language is no longer than this. */
const SHORT = 24

/** The language a message is in: that of most of its words, else the channel's last. */
const spokenIn = (text: string, memory: Memory, tools: Tools): string => {
  const last = memory.talk?.language ?? tools.settings.defaults.language
  return tools.languages.detect(text, last) ?? last
}

function contextOf(memory: Memory, person: string, settings: Settings): HearContext {
  const facts = { ...memory.facts, ...memory.talk?.facts }
  return {
    hasRoom: facts.rooms !== undefined || facts.areaM2 !== undefined,
    hasTile: facts.tile !== undefined,
    roomRather: facts.tile === undefined && (memory.talk?.topic === 'underlayment' || memory.talk?.topic === 'shower'),
    metric: memory.talk?.metric ?? usuallyMetric(facts, settings),
    decimals: memory.people[person]?.decimals ?? null,
  }
}

/** Crews outside North America measure in metric, unless they write otherwise. */
const usuallyMetric = ({ country }: Facts, settings: Settings): boolean =>
  country === undefined ? settings.defaults.units === 'metric' : country !== 'US'

/** The units asked for in words, else those the message was written in, else those of the talk. */
function metricOf(heard: Heard, before: boolean | undefined, usual: boolean): boolean {
  if (heard.has('metric-word')) return true
  if (heard.has('imperial-word')) return false
  return heard.system === null ? (before ?? usual) || saysCelsius(heard) : heard.system === 'metric'
}

/** Temperatures in the figures they were told in are Celsius; they tell the units where nothing else does. */
function saysCelsius(heard: Heard): boolean {
  const { facts, quantities } = heard
  const said = facts.temperatures ?? []
  return (
    said.length > 0 &&
    said.every(({ c }) =>
      quantities.some((q) => q.n === c && (q.unit === 'c' || q.unit === 'degree' || statesSite(heard))),
    )
  )
}

function briefOf(
  message: Message,
  heard: Heard,
  meaning: Meaning,
  memory: Memory,
  tools: Tools,
  language: string,
  zone: string | null,
): Brief {
  const { talk } = memory
  return {
    heard,
    facts: meaning.facts,
    carried: meaning.carried,
    settings: tools.settings,
    memory,
    learned: message.learned ?? [],
    person: message.person,
    now: message.now,
    zone,
    metric: metricOf(
      heard,
      heard.facts.country === undefined ? talk?.metric : undefined,
      usuallyMetric(meaning.facts, tools.settings),
    ),
    language,
    libraries: tools.libraries,
    has: (...concepts) =>
      heard.has(...concepts) ||
      (meaning.followsUp && talk?.topic === meaning.topic && concepts.some((c) => talk.cues.includes(c))),
  }
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

/** A figure that is no number, or one below nothing. */
function unreadableIn(heard: Heard): Outcome<Told> | null {
  const [bad] = heard.unreadable
  if (bad) return refuse('not-a-number', { said: bad.text }, [bad.from, bad.to])
  const negative = heard.quantities.find((q) => q.negative && q.dimension !== 'temperature')
  return negative
    ? refuse('not-a-number', { said: `-${negative.token.text}` }, [negative.token.from - 1, negative.token.to])
    : null
}

const SHOWN = 60

/** Words nothing was made of: say so, and what to type instead. */
function notUnderstood(heard: Heard): Outcome<Told> {
  const text = heard.plain.text.trim()
  if (text === '') return refuse('empty')
  return (
    unreadableIn(heard) ??
    refuse('not-understood', { said: text.length > SHOWN ? `${text.slice(0, SHOWN - 3)}...` : text }, [
      0,
      heard.plain.text.length,
    ])
  )
}

/** "show the math": the workings in place of the details, under the same answer. */
const mathFirst = (told: Told): Told => ({ ...told, details: told.working ?? [], offers: [] })

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
const STEERING: readonly string[] = ['job', 'log']

/** Reminders in words. Their clock times are told with the day, since they are read later. */
function promisesOf(told: Told, speaker: Speaker): Promised[] {
  return (told.reminders ?? []).map(({ id, about, at, due, late }) => {
    const dueMs = Temporal.Instant.from(at).epochMilliseconds
    const style = { ...speaker.style, now: new Date(dueMs - 3 * 86_400_000).toISOString() }
    return { id, about, dueMs, text: phraseText(due, style), late: phraseText(late, style) }
  })
}

function entriesAfter(told: Told, reply: Reply, brief: Brief, meaning: Meaning, text: string): NewEntry[] {
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
function entriesAfterProblem(problem: Problem, brief: Brief, meaning: Meaning, text: string): NewEntry[] {
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

type Resolved = { readonly text: string; readonly memory: Memory; readonly entries: readonly NewEntry[] }

/** The answer to "12 ft 6 in, or 12.6 ft?": remembered for that person, and the message before is answered. */
function resolveAsked(message: Message, memory: Memory, tools: Tools): Resolved | null {
  const { asked } = memory
  if (asked && COMPLETED.includes(asked.question)) return resolveSaid(message, memory, tools)
  if (asked?.question !== 'decimal' || asked.person !== message.person || message.text.length > SHOWN) return null
  const heard = hear(message.text, tools.languages.lexicon(spokenIn(message.text, memory, tools)))
  const inches = heard.quantities.some((q) => q.compound || q.unit === 'in') || heard.has('inches-word')
  const tenths = heard.quantities.some((q) => q.token.decimals > 0 && q.unit === 'ft') || heard.has('tenths-word')
  if (inches === tenths) return null
  const decimals = inches ? 'inches' : 'tenths'
  const people = { ...memory.people, [message.person]: { ...memory.people[message.person], decimals } as const }
  return {
    text: asked.text,
    memory: { ...memory, people, talk: null, asked: null },
    entries: [{ kind: 'person', version: 1, body: { decimals } }],
  }
}

/** Questions whose answer makes one message with the one before. */
const COMPLETED: readonly string[] = ['trowel', 'box', 'pour-depth']

/** "Which trowel?": a message that only tells it completes the one before. */
function resolveSaid(message: Message, memory: Memory, tools: Tools): Resolved | null {
  const { asked } = memory
  if (!asked || message.text.length > SHOWN) return null
  const { facts, items } = hear(message.text, tools.languages.lexicon(spokenIn(message.text, memory, tools)))
  const told = {
    trowel: facts.trowel,
    box: facts.boxTiles ?? facts.boxM2 ?? facts.haveBoxes,
    'pour-depth': items.length === 1 && items[0].parts.length === 1 ? items[0] : undefined,
  }[asked.question]
  if (told === undefined) return null
  return { text: `${asked.text}, ${message.text}`, memory: { ...memory, asked: null }, entries: [] }
}
