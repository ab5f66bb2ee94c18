/** The channel's job: what it holds, who changed it, undo, several jobs, points to compare with, reminders. */
import type { FactName, Facts, Room, Tiling } from '../../facts.ts'
import { type Change, differing, type Job } from '../../jobs/job.ts'
import {
  ENTRY_VERSIONS,
  fold,
  type JobBody,
  type Memory,
  type ParkedJob,
  undoable,
  undoEntry,
} from '../../jobs/memory.ts'
import type { Concept } from '../../language/concepts.ts'
import { count, instant, type Phrase, quote, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { isMixed, sameRoom, tiledBy, tilingOf, untiled } from '../../room-tiles.ts'
import { floorSum } from '../floors.ts'
import { logValues } from '../log/values.ts'
import { statesSite } from '../site.ts'
import { knownTile } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { changeOrder, markPoint } from './change-order.ts'
import { lasting, numberIn, quantitiesOf, tilesBySize, type Values } from './quantities.ts'
import { signOff } from './record.ts'
import { bucket, cancelLast, cancelReminders, listReminders, remind, snooze, upcoming } from './remind.ts'
import { namesParked, startsBucket, tellsCountry } from './route.ts'
import { keepSite } from './site.ts'
import { changePhrase, factPhrase, factPhrases, factWord, jobName, logLines, whatChanged } from './tell.ts'

export function job(brief: Brief): Outcome<Told> {
  const { command, zone, yes } = brief.heard.commands
  if (startsBucket(brief.heard)) return bucket(brief)
  if (statesSite(brief.heard)) return fine(keepSite(brief))
  const { asked } = brief.memory
  if (asked?.question === 'forget' && asked.person === brief.person && (yes || (command === 'forget' && yes)))
    return fine({ topic: 'job', answer: say('job.forgotten'), forget: true })
  if (asked?.question === 'forget' && command === null && brief.heard.has('no-correction'))
    return fine({ topic: 'job', answer: say('job.not-forgotten') })
  if (command === null && namesParked(brief.heard, brief.memory)) return fine(open(brief, nameIn(brief)))
  switch (command) {
    case 'undo':
      return undo(brief)
    case 'history':
      return fine(history(brief))
    case 'start-over':
    case 'new-job':
      return fine(start(brief, command === 'new-job' ? nameIn(brief) : null))
    case 'switch-job':
      return fine(open(brief, nameIn(brief)))
    case 'reopen':
      return fine(open(brief, nameIn(brief) ?? ''))
    case 'list-jobs':
      return fine(listJobs(brief))
    case 'name-job':
      return fine(rename(brief))
    case 'keep':
      return fine(keep(brief))
    case 'forget':
      return refuse('question', { question: 'forget' })
    case 'point':
      return fine(markPoint(brief, nameIn(brief)))
    case 'change-order':
      return fine(changeOrder(brief, nameIn(brief)))
    case 'sign-off':
      return fine(signOff(brief))
    case 'remind':
      return remind(brief)
    case 'reminders':
      return fine(listReminders(brief))
    case 'cancel':
      return fine(cancelReminders(brief))
    case 'cancel-last':
      return upcoming(brief).length > 0 ? fine(cancelLast(brief)) : undo(brief)
    case 'snooze':
      return fine(snooze(brief))
    default:
      if (tellsCountry(brief.heard)) return fine(setCountry(brief))
      return fine(zone === null ? soFar(brief) : setZone(brief, zone))
  }
}

/** Keys of the contract that the facts of a job fill by themselves. */
export function factValues(facts: Facts): Values {
  const floor = floorSum(lasting(facts))
  const tile = knownTile(facts)
  return {
    area_m2: floor.ok ? floor.value?.areaM2 : undefined,
    tile_length_mm: tile?.lengthMm,
    tile_width_mm: tile?.widthMm,
    tile_thickness_mm: facts.tile?.thicknessMm,
    joint_mm: facts.jointMm,
    notch_width_mm: facts.trowel?.widthMm,
    notch_depth_mm: facts.trowel?.depthMm,
  }
}

/** A job without a floor of its own shows what the talk is about. */
const shownFacts = ({ facts, talk }: Memory): Facts =>
  facts.rooms === undefined && facts.areaM2 === undefined && talk ? { ...lasting(talk.facts), ...facts } : facts

function holdings(brief: Brief, facts: Facts, shown: Job): Pick<Told, 'details' | 'values'> {
  const values = quantitiesOf(brief, facts)
  const [tiles, boxes, mortar, grout] = ['tile_count', 'tile_boxes', 'mortar_bags', 'grout_bags'].map((k) =>
    numberIn(values, k),
  )
  const bySize = tilesBySize(brief, facts)
  const takes = [
    ...(boxes !== null ? [say('job.takes-boxes', { n: count(boxes) })] : []),
    ...(bySize.length > 0 ? bySize : tiles !== null ? [say('job.takes-tiles', { n: count(tiles) })] : []),
    ...(mortar !== null ? [say('job.takes-mortar', { n: count(mortar) })] : []),
    ...(grout !== null ? [say('job.takes-grout', { n: count(grout) })] : []),
  ]
  return {
    details: [
      ...(takes.length > 0 ? [say('job.takes', { list: takes })] : []),
      ...logLines(shown),
      ...(shown.readings.length > 0 ? [say('job.readings', { n: count(shown.readings.length) })] : []),
    ],
    values: { ...values, ...(isMixed(facts) ? {} : factValues(facts)), ...logValues(shown) },
  }
}

function soFar(brief: Brief): Told {
  const { memory } = brief
  const facts = shownFacts(memory)
  const list = factPhrases(facts, brief.metric)
  const { details, values } = holdings(brief, facts, memory.job)
  const nothing = list.length === 0 && (details ?? []).length === 0
  return {
    topic: 'job',
    answer: nothing
      ? say('job.empty')
      : say('job.holds', { job: jobName(memory.job), list: list.length > 0 ? list : [say('job.no-facts')] }),
    details,
    values,
    offers: nothing ? [] : ['undo'],
  }
}

function undo(brief: Brief): Outcome<Told> {
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
function history(brief: Brief): Told {
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

/** The name a command brings, without a size that follows it. */
function nameIn(brief: Brief): string | null {
  const { name } = brief.heard.commands
  return name?.replace(/[,;:]?\s*\d+[\d'"/.\s-]*(?:x|by|sf|sq|ft|m2|metros)[\s\S]*$/, '').trim() || null
}

const jobEntry = (body: JobBody) => ({ kind: 'job', version: 1, body })

const isFresh = ({ job: current, facts }: Memory): boolean =>
  current.changes.length === 0 && Object.keys(facts).length === 0

function start(brief: Brief, name: string | null): Told {
  const { memory } = brief
  if (name !== null && parkedNamed(memory, name)) return open(brief, name)
  const facts = lasting(brief.heard.facts)
  const told = Object.keys(facts).length > 0 && facts.rooms !== undefined
  const zone = memory.facts.zone === undefined ? {} : { zone: memory.facts.zone }
  return {
    topic: 'job',
    answer: name === null ? say('job.started-over') : say('job.started', { name: quote(name) }),
    details: isFresh(memory) ? [] : [say('job.put-aside', { job: jobName(memory.job) })],
    values: told ? factValues(facts) : {},
    entries: [
      jobEntry({ act: 'start', name }),
      ...(told ? [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts: { ...zone, ...facts } } }] : []),
    ],
  }
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase()

/** The latest job put aside under a name, or under its number. */
function parkedNamed({ parked }: Memory, name: string): ParkedJob | undefined {
  return (
    parked.findLast((p) => p.job.name !== null && same(p.job.name, name)) ??
    parked.findLast((p) => String(p.job.n) === name.replace(/^\D+/, '')) ??
    parked.findLast((p) => p.job.name?.toLowerCase().includes(name.toLowerCase()))
  )
}

/** Opens a job again: the one named, or the last one put aside. */
function open(brief: Brief, name: string | null): Told {
  const { memory } = brief
  if (name && memory.job.name !== null && same(memory.job.name, name))
    return { ...soFar(brief), answer: say('job.already', { job: jobName(memory.job) }) }
  const found = name ? parkedNamed(memory, name) : memory.parked.at(-1)
  if (!found)
    return {
      ...listJobs(brief),
      answer: name ? say('job.unknown', { name: quote(name) }) : say('job.none-aside'),
      values: {},
    }
  const held = holdings(brief, found.facts, found.job)
  const list = factPhrases(found.facts, brief.metric)
  return {
    topic: 'job',
    answer: say('job.reopened', { job: jobName(found.job) }),
    details: [...(list.length > 0 ? [say('job.now', { list })] : []), ...(held.details ?? [])],
    values: held.values,
    entries: [jobEntry({ act: 'open', n: found.job.n })],
  }
}

function listJobs(brief: Brief): Told {
  const { memory } = brief
  const aside = memory.parked.toReversed().slice(0, SHOWN_CHANGES)
  return {
    topic: 'job',
    answer: say('job.current', { job: jobName(memory.job) }),
    details: aside.map((p) =>
      say('job.aside', {
        job: jobName(p.job),
        at: instant(p.at),
        list: factPhrases(p.facts, brief.metric).slice(0, 3),
      }),
    ),
    values: factValues(memory.facts),
  }
}

function rename(brief: Brief): Told {
  const name = nameIn(brief)
  if (name === null) return { ...soFar(brief), answer: say('job.name-it') }
  return {
    topic: 'job',
    answer: say('job.renamed', { name: quote(name) }),
    values: factValues(brief.memory.facts),
    entries: [jobEntry({ act: 'name', name })],
  }
}

/** The job with what was talked about: the talk's floor in place of its own, unless the talk was of some of its rooms. */
function keptFacts({ facts, talk }: Memory): Facts {
  const talked = lasting(talk?.facts ?? {})
  const some = talked.rooms ?? []
  const inTalk = (room: Room): Room | undefined => some.find((one) => sameRoom(one, room))
  const rooms = facts.rooms ?? []
  const isPart = some.length > 0 && some.length < rooms.length && some.every((t) => rooms.some((r) => sameRoom(t, r)))
  if (!isPart) return { ...facts, ...talked }
  const tiling = (room: Room): Tiling => {
    const told = inTalk(room)
    return told ? tilingOf(talked, told) : tilingOf(facts, room)
  }
  const { rooms: _, ...rest } = untiled(talked)
  return tiledBy({ ...facts, ...rest }, tiling, (room) => inTalk(room) !== undefined)
}

/** "keep it in the job": what was only talked about becomes the job's. */
function keep(brief: Brief): Told {
  const { memory } = brief
  const facts = keptFacts(memory)
  const floor = memory.talk?.facts.rooms ?? memory.talk?.facts.areaM2
  if (floor !== undefined && memory.talk?.facts.rooms === undefined) delete (facts as { rooms?: unknown }).rooms
  if (floor !== undefined && memory.talk?.facts.areaM2 === undefined) delete (facts as { areaM2?: unknown }).areaM2
  const keys = differing(memory.facts, facts)
  const held = holdings(brief, facts, memory.job)
  return {
    topic: 'job',
    answer:
      keys.length > 0
        ? say('job.kept-now', { list: keys.flatMap((key) => factPhrase(key, facts, brief.metric) ?? []) })
        : say(Object.keys(facts).length > 0 ? 'job.kept-already' : 'job.empty'),
    details: held.details,
    values: held.values,
    entries: keys.length > 0 ? [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts } }] : [],
    offers: ['undo'],
  }
}

function setZone(brief: Brief, zone: string): Told {
  const facts = { ...brief.memory.facts, zone }
  return {
    topic: 'job',
    answer: say('job.zone', { zone: quote(zone), at: { is: 'quote', text: clockIn(brief.now, zone, brief.language) } }),
    values: factValues(facts),
    entries:
      zone === brief.memory.facts.zone ? [] : [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts } }],
  }
}

/** "we're in Germany": whose rules hold, until the crew says otherwise. */
function setCountry(brief: Brief): Told {
  const { country } = brief.heard.facts
  const facts = { ...brief.memory.facts, ...(country === undefined ? {} : { country }) }
  return {
    topic: 'job',
    answer: say('job.country', { country: say(`rule.country-${country}`) }),
    values: factValues(facts),
    entries: country === brief.memory.facts.country ? [] : [{ kind: 'facts', version: 2, body: { facts } }],
  }
}

const clockIn = (now: string, zone: string, language: string): string =>
  new Intl.DateTimeFormat(language, { timeZone: zone, hour: 'numeric', minute: '2-digit' }).format(
    Temporal.Instant.from(now).epochMilliseconds,
  )
