/** Reminders asked for by the crew: at a time, after a while, when a wait is over; listed, put off, cancelled. */
import type { Promised } from '../../jobs/memory.ts'
import type { Reminding } from '../../jobs/reminders.ts'
import { remindersOf, waiting } from '../../jobs/reminders.ts'
import type { Heard } from '../../language/heard.ts'
import { spanIn, spokenClocks, timePlaces } from '../../language/spans.ts'
import { count, instant, type Phrase, quote, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { mix } from '../mix.ts'
import { momentTold } from '../moment-told.ts'
import type { Brief, Told } from '../topic.ts'
import { numberIn } from './quantities.ts'
import { type Series, seriesIn, seriesOf } from './series.ts'

const MINUTE_MS = 60_000
const HOUR_MS = 3_600_000
const USUAL_SNOOZE_MS = 30 * MINUTE_MS
/** How long after it went out a reminder can still be put off. */
const SNOOZABLE_MS = 12 * HOUR_MS
const MOST_DAYS = 400

const nowMs = (brief: Brief): number => Temporal.Instant.from(brief.now).epochMilliseconds

/** An instant as ISO 8601 with the offset of the job's zone, else of now. */
export function isoAt(ms: number, brief: Pick<Brief, 'now' | 'zone'>): string {
  const offset = /([+-]\d\d:?\d\d)(?:\[|$)/.exec(brief.now)?.[1] ?? 'UTC'
  return Temporal.Instant.fromEpochMilliseconds(Math.round(ms))
    .toZonedDateTimeISO(brief.zone ?? offset)
    .toString({ timeZoneName: 'never', smallestUnit: 'second' })
}

export function remind(brief: Brief): Outcome<Told> {
  const series = seriesIn(brief, upcoming(brief).length)
  if (series !== null) return fine(notedAgain(brief, series))
  const due = dueIn(brief)
  if (due !== null) {
    const days = (due - nowMs(brief)) / (24 * HOUR_MS)
    if (!(days <= MOST_DAYS))
      return refuse('out-of-range', { field: 'reminder', value: days, min: 0, max: MOST_DAYS, unit: '' })
    return fine(noted(brief, due))
  }
  const waits = remindersOf(brief.memory.talk?.values ?? {}, brief.memory.talk?.facts.when ?? null, brief)
  if (waits.length === 0) return refuse('question', { question: 'remind' })
  return fine({
    topic: 'job',
    answer: say('remind.promised', { list: waits.map(waitLine) }),
    reminders: waits,
    offers: ['cancel'],
  })
}

export const waitLine = (wait: Reminding): Phrase => say(`remind.line-${wait.about}`, { at: instant(wait.at) })

const LEAST_MINUTES = 5
const MOST_MINUTES = 180

/** "in 15": minutes, as nobody is reminded in 15 hours of a batch. [h] */
function bareMinutesH(heard: Heard): number | null {
  if (spokenClocks(heard).length > 0) return null
  const { loose, reader } = heard
  const one = loose.find(({ q }) => q.dimension === 'none' && reader.is(q.first - 1, 'convert-to'))
  const n = one?.q.n ?? 0
  return n >= LEAST_MINUTES && n <= MOST_MINUTES && !reader.is((one?.q.last ?? 0) + 1, 'time-word') ? n / 60 : null
}

/** When it is to be: after the time told, or at it. [ms since 1970] */
function dueIn(brief: Brief): number | null {
  const { heard } = brief
  const afterH = spanIn(heard)?.h ?? bareMinutesH(heard)
  if (afterH !== null) return nowMs(brief) + afterH * HOUR_MS
  const moment = momentTold(brief, false)
  if (moment === null) return null
  const at = Temporal.Instant.from(moment.iso).epochMilliseconds
  return at > nowMs(brief) ? at : null
}

const MOST_NOTE = 80

/** The crew's own words of what it is about, as they were typed: "check the batch" of "remind me in 20 min to check the
 *  batch". Null where nothing is left beside the asking and the time. */
function noteIn(heard: Heard): string | null {
  const { tokens, reader, quantities } = heard
  const { reminding, noteJoins } = reader.lexicon.locale.commands
  const places = timePlaces(heard)
  const isTime = (i: number): boolean =>
    places.some(({ from, to }) => tokens[i].from >= from && tokens[i].to <= to) ||
    reader.is(i, 'time-word', 'day-word', 'at', 'ago', 'night') ||
    /^[:.,]$/.test(reader.sign(i)) ||
    quantities.some((q) => q.dimension === 'time' && i >= q.first && i <= q.last) ||
    (tokens[i].kind === 'number' &&
      (reader.is(i - 1, 'at', 'convert-to') || reader.sign(i - 1) === ':' || reader.is(i + 1, 'time-word')))
  const joins = (i: number): boolean => noteJoins.includes(tokens[i].text)
  const words = tokens.map((token) => token.text)
  const asked = reminding
    .map((phrase) => phrase.split(' '))
    .map((phrase) => ({ phrase, at: words.findIndex((_, i) => phrase.every((word, k) => words[i + k] === word)) }))
    .find(({ at }) => at >= 0)
  let first = asked === undefined ? 0 : asked.at + asked.phrase.length
  let end = tokens.length
  while (first < end && (isTime(first) || joins(first))) first++
  while (end > first && (isTime(end - 1) || joins(end - 1))) end--
  if (first >= end) return null
  const [from, to] = heard.at([tokens[first].from, tokens[end - 1].to])
  return heard.typed.slice(from, to).trim().slice(0, MOST_NOTE) || null
}

/** A note that is due. @param id  unique in its channel */
function noteAt(dueMs: number, text: string | null, id: string, brief: Brief): Reminding {
  const at = isoAt(dueMs, brief)
  const [due, late] =
    text === null
      ? [say('remind.due-plain'), say('remind.late-plain', { at: instant(at) })]
      : [say('remind.due-note', { text: quote(text) }), say('remind.late-note', { text: quote(text), at: instant(at) })]
  return { id, about: 'note', at, due, late }
}

/** Two notes for one hour are two reminders, the same one told twice is one. */
const noteId = (dueMs: number, text: string | null): string =>
  `note@${Math.round(dueMs)}${text === null ? '' : ` ${text.replaceAll(/[+~@]/g, ' ')}`}`

function noted(brief: Brief, dueMs: number): Told {
  const text = noteIn(brief.heard)
  const reminder = noteAt(dueMs, text, noteId(dueMs, text), brief)
  const at = instant(reminder.at)
  const answer = text === null ? say('remind.set', { at }) : say('remind.set-note', { at, text: quote(text) })
  return { topic: 'job', answer, reminders: [reminder], offers: ['cancel'] }
}

function notedAgain(brief: Brief, { every, dueMs }: Series): Told {
  if (dueMs.length === 0) return { topic: 'job', answer: say('remind.full'), offers: ['cancel'] }
  const text = noteIn(brief.heard)
  const id = noteId(dueMs[0], text)
  const reminders = dueMs.map((ms, k) => noteAt(ms, text, `${id}+${k}`, brief))
  const ends = {
    every: say(`remind.every-${every}`),
    n: count(reminders.length),
    from: instant(reminders[0].at),
    to: instant(reminders[reminders.length - 1].at),
  }
  const answer = text === null ? say('remind.series', ends) : say('remind.series-note', { ...ends, text: quote(text) })
  return { topic: 'job', answer, details: [say('remind.series-end')], reminders, offers: ['cancel'] }
}

export const upcoming = (brief: Brief): Promised[] =>
  brief.memory.promised.filter((p) => p.dueMs > nowMs(brief)).toSorted((a, b) => a.dueMs - b.dueMs)

export function listReminders(brief: Brief): Told {
  const list = upcoming(brief)
  return {
    topic: 'job',
    answer: list.length === 0 ? say('remind.none') : say('remind.list', { n: count(list.length) }),
    details: [...Map.groupBy(list, seriesOf).values()].map(([p, ...more]) => {
      const at = instant(isoAt(p.dueMs, brief))
      const last = more.at(-1)
      if (last !== undefined)
        return say('remind.one-series', {
          at,
          n: count(more.length),
          to: instant(isoAt(last.dueMs, brief)),
          text: quote(p.text),
        })
      return p.about === 'note' ? say('remind.one', { at, text: quote(p.text) }) : say(`remind.line-${p.about}`, { at })
    }),
    offers: list.length > 0 ? ['cancel'] : [],
  }
}

const WORDS: Readonly<Partial<Record<Promised['about'], 'grout' | 'walk' | 'heavy' | 'slake' | 'pot-life'>>> = {
  grout: 'grout',
  walk: 'walk',
  heavy: 'heavy',
  slake: 'slake',
  'pot-life': 'pot-life',
}

export function cancelReminders(brief: Brief): Told {
  const all = upcoming(brief)
  const named = all.filter((p) => {
    const concept = WORDS[p.about]
    return concept !== undefined && brief.heard.has(concept)
  })
  const gone = named.length > 0 ? named : all
  if (gone.length === 0) return { topic: 'job', answer: say('remind.none') }
  const ids = gone.map((p) => p.id)
  return { topic: 'job', answer: say('remind.cancelled', { n: count(ids.length) }), cancels: ids }
}

/** "cancel that": what was promised last, all waits of one floor together. */
export function cancelLast(brief: Brief): Told {
  const running = upcoming(brief)
  const last = brief.memory.promised.findLast((p) => running.includes(p))
  const start = last?.about === 'note' ? undefined : last?.id.split('@')[1]
  const together = (p: Promised): boolean => last !== undefined && seriesOf(p) === seriesOf(last)
  const ids = running.filter((p) => together(p) || (start !== undefined && p.id.endsWith(`@${start}`))).map((p) => p.id)
  return { topic: 'job', answer: say('remind.cancelled', { n: count(ids.length) }), cancels: ids }
}

/** Puts off the one that went out last, else the next one. */
export function snooze(brief: Brief): Told {
  const now = nowMs(brief)
  const sent = brief.memory.promised
    .filter((p) => p.dueMs <= now && now - p.dueMs < SNOOZABLE_MS)
    .toSorted((a, b) => b.dueMs - a.dueMs)[0]
  const next = sent ?? upcoming(brief)[0]
  if (!next) return { topic: 'job', answer: say('remind.none') }
  const byH = spanIn(brief.heard)?.h ?? null
  const byMs = byH === null ? USUAL_SNOOZE_MS : byH * HOUR_MS
  const dueMs = Math.max(now, next.dueMs) + byMs
  const at = isoAt(dueMs, brief)
  const again: Reminding = {
    // One that went out is over in the store: its like comes under a new id.
    id: sent ? `${next.id.split('~')[0]}~${Math.round(dueMs)}` : next.id,
    about: next.about,
    at,
    due: say('remind.quoted', { text: quote(next.text) }),
    late: say('remind.quoted', { text: quote(next.late) }),
  }
  return {
    topic: 'job',
    answer: say('remind.snoozed', { at: instant(at), text: quote(next.text) }),
    reminders: [again],
    offers: ['cancel'],
  }
}

/** "mixed a bag at 2:10": when to remix, and when its life is over. */
export function bucket(brief: Brief): Outcome<Told> {
  const mixed = mix(brief)
  if (!mixed.ok) return mixed
  const moment = momentTold(brief, true)
  const startMs = moment === null ? nowMs(brief) : Temporal.Instant.from(moment.iso).epochMilliseconds
  const values = mixed.value.values ?? {}
  const [slakeMin, lifeMin] = [numberIn(values, 'slake_min'), numberIn(values, 'pot_life_min')]
  if (lifeMin === null) return mixed
  const start = isoAt(startMs, brief)
  const [slake, life] = [
    isoAt(startMs + (slakeMin ?? 0) * MINUTE_MS, brief),
    isoAt(startMs + lifeMin * MINUTE_MS, brief),
  ]
  const reminders = [
    ...(slakeMin === null ? [] : [waiting('slake', slake, start)]),
    waiting('pot-life', life, start),
  ].filter((r) => Temporal.Instant.from(r.at).epochMilliseconds > nowMs(brief))
  return fine({
    ...mixed.value,
    answer: say(slakeMin === null ? 'remind.mixed-no-slake' : 'remind.mixed', {
      slake: instant(slake),
      life: instant(life),
    }),
    details: reminders.length > 0 ? [say('remind.will')] : [],
    reminders,
    offers: ['math', 'cancel'],
  })
}
