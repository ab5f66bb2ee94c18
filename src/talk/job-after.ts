/** What the job keeps of a message. */
import { type FactName, type Facts, lessFacts, ON_HAND } from '../facts.ts'
import type { Memory } from '../jobs/memory.ts'
import type { Heard } from '../language/heard.ts'
import type { Topic } from '../reply.ts'
import { type InScope, isMixed, sameName, sameRoom, sameTile } from '../room-tiles.ts'
import { keepsSite, siteFacts } from '../topics/site.ts'
import { CHANGE_WORDS, hasFloor, isQuestion } from './follow-up.ts'
import { merged } from './newer-facts.ts'
import { type RoomsSaid, toldAlike } from './rooms-after.ts'

/** Facts that belong to one question and go over only to the same topic. */
export const PASSING: readonly FactName[] = [
  ...ON_HAND,
  'coverageM2',
  'temperatures',
  'when',
  'done',
  'bagKg',
  'sparePct',
  'anyWay',
  'opening',
]

export const lastingFacts = (facts: Facts): Facts => lessFacts(facts, PASSING)

/** The rooms of the job that a change means: those named, else those asked about last; all of a job with one tile. */
export function jobScope(job: Facts, floor: RoomsSaid, talked: Facts): InScope {
  if (floor.scope === null && !isMixed(job)) return () => true
  const toldAnew = floor.narrowed ? undefined : floor.said.rooms
  const asked = (floor.said.rooms ?? talked.rooms ?? []).filter(floor.scope ?? sameTile(talked))
  const inJob: InScope = (room) => asked.some((one) => sameRoom(one, room))
  return (toldAnew ?? job.rooms ?? []).some(inJob) ? inJob : sameTile(job)
}

/** The job's rooms after this message, where the talk is of others than all of them: what the message changed of the
 *  talk's is changed in the job too, and the rest of the job stays. */
export function roomsOfJob(heard: Heard, job: Facts, talked: Facts, said: Facts): Facts['rooms'] {
  const [before, after, inJob] = [talked.rooms ?? [], said.rooms, job.rooms]
  if (!after || !inJob) return after
  const sameFloor = before.length === inJob.length && before.every((b) => inJob.some((j) => toldAlike(b, j)))
  const touched = after.filter((room) => !before.some((b) => toldAlike(b, room)))
  const mends = heard.has('no-correction', 'make-it')
  if (sameFloor || (!mends && !heard.has('add') && touched.some((room) => room.name === undefined))) return after
  const dropped = before.filter((b) => b.name !== undefined && !after.some((room) => sameName(room.name, b.name)))
  const kept = inJob
    .filter((room) => !dropped.some((gone) => sameName(gone.name, room.name)))
    .map((room) => touched.find((one) => sameName(one.name, room.name)) ?? room)
  // What mends a room that only the talk knows adds none to the job.
  return mends ? kept : [...kept, ...touched.filter((room) => !kept.includes(room))]
}

/** The job changes by a message that states facts without asking, by "make it" and "add", and by the first that names a floor. */
export function jobAfter(heard: Heard, memory: Memory, said: Facts, topic: Topic | null, scope: InScope): Facts | null {
  const states = !isQuestion(heard) && topic !== 'convert' && topic !== 'cure' && topic !== 'mix'
  const changes = heard.has(...CHANGE_WORDS) && !heard.has('what-if')
  const first = topic !== 'mix' && !hasFloor(memory.facts) && (said.rooms !== undefined || said.areaM2 !== undefined)
  // "same but 24x24" asks the last question with another figure: that is talk.
  const repeats = heard.has('same') && !heard.has('same-tile') && !changes && memory.talk !== null
  const stated = (states || changes || first) && !repeats
  const site = topic !== 'convert' && keepsSite(heard) ? siteFacts(said.temperatures) : {}
  const lasting = {
    ...site,
    ...Object.fromEntries(
      Object.entries(stated ? said : {}).filter(
        ([k, v]) => v !== undefined && !PASSING.includes(k as FactName) && k !== 'surface' && k !== 'wet',
      ),
    ),
  } as Facts
  return Object.keys(lasting).length > 0 ? merged(memory.facts, lasting, scope) : null
}
