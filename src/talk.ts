/** What a message means here: its own facts, then those of the talk, then those of the job. */
import type { FactName, Facts } from './facts.ts'
import type { Memory, Talk } from './jobs/memory.ts'
import { conversionIn } from './language/conversions.ts'
import type { Heard } from './language/heard.ts'
import type { Phrase } from './phrase.ts'
import type { Topic } from './reply.ts'
import { sameTile } from './room-tiles.ts'
import { topicNamed, topicOf, topicOfFloor } from './router.ts'
import { withSmallAsked, withWallAsked } from './talk/asked-back.ts'
import { scaled, withBareCount, withBareFigure, withBareThird, withTilePair } from './talk/bare-figures.ts'
import { hasFloor, isFollowUp, narrows } from './talk/follow-up.ts'
import { jobAfter, jobScope, lastingFacts, PASSING, roomsOfJob } from './talk/job-after.ts'
import { merged } from './talk/newer-facts.ts'
import { type Carried, carriedNotes, heardNotes } from './talk/notes.ts'
import { dropsRoom, withRooms } from './talk/rooms-after.ts'
import { FITNESS_TOPICS } from './topics/fitness/route.ts'
import { steers } from './topics/job/route.ts'
import { retells, withBareDegrees } from './topics/retell.ts'

export type Meaning = {
  readonly topic: Topic | null
  readonly facts: Facts
  readonly carried: Carried
  readonly followsUp: boolean
  readonly showMath: boolean
  /** The job's facts after this message, where it changes them. */
  readonly jobFacts: Facts | null
  readonly notes: readonly Phrase[]
  /** The facts this message itself brought. */
  readonly said: readonly FactName[]
}

export function meaningOf(message: Heard, memory: Memory): Meaning {
  const asked = withSmallAsked(withWallAsked(message, memory), memory)
  const heard = withBareDegrees(asked, memory.talk)
  const { talk, facts: job } = memory
  if (heard.has('math') && talk && !hasFloor(heard.facts))
    return { ...unchanged(talk.topic, talk.facts), followsUp: true, showMath: true }
  const steered = steers(heard, memory)
  if (steered) return steering(heard, memory, steered)
  const named = topicNamed(heard)
  const converts =
    conversionIn(heard, typeof talk?.values['area_m2'] === 'number') !== null && (named === null || named === 'layout')
  // "slab is 50", "make it 4pm" after a wait: the wait, told again.
  const again = talk !== null && retells(heard, talk)
  const followsUp = !converts && talk !== null && (again || isFollowUp(heard, named) || narrows(heard, talk))
  const topic = converts
    ? 'convert'
    : again
      ? talk.topic
      : dropsRoom(heard, job, talk?.facts ?? job)
        ? topicOfFloor(talk, job)
        : topicOf(heard, talk, followsUp, talk?.facts ?? job)
  const fitness = topic !== null && FITNESS_TOPICS.has(topic)
  const base = followsUp && talk ? carry(talk, job, topic) : { facts: job, carried: fromJob(job) }
  const floor = fitness ? null : withRooms(heard, memory, base.facts)
  const said = floor
    ? withBareCount(
        heard,
        memory,
        withBareThird(heard, withBareFigure(heard, floor.said, topic, followsUp), topic),
        followsUp,
      )
    : withTilePair(heard)
  const scope = floor?.scope ?? sameTile(base.facts)
  const facts = merged(base.facts, said, scope)
  const carried = Object.fromEntries(Object.entries(base.carried).filter(([k]) => !(k in said)))
  const changed = scaled(heard, facts, followsUp, topic, memory)
  const jobFacts = floor
    ? jobAfter(
        heard,
        memory,
        { ...said, rooms: floor.narrowed ? undefined : roomsOfJob(heard, job, base.facts, said) },
        topic,
        jobScope(job, floor, base.facts),
      )
    : null
  return {
    topic,
    facts: changed,
    carried,
    followsUp,
    showMath: false,
    jobFacts,
    notes: fitness ? [] : [...heardNotes(heard), ...carriedNotes(carried, changed, topic)],
    said: Object.keys(said) as FactName[],
  }
}

/** A command or a log goes by the job; where that knows no floor or tile yet, by the talk. */
function steering(heard: Heard, memory: Memory, topic: 'job' | 'log'): Meaning {
  const talk = memory.talk ? lastingFacts(memory.talk.facts) : {}
  const facts = merged(merged(talk, memory.facts), lastingFacts(heard.facts))
  return unchanged(topic, facts)
}

/** Nothing of the talk or the job is another than before. */
const unchanged = (topic: Topic, facts: Facts): Meaning => ({
  topic,
  facts,
  carried: {},
  followsUp: false,
  showMath: false,
  jobFacts: null,
  notes: [],
  said: [],
})

/** What the question before and the job tell of what this message leaves out. */
function carry(talk: Talk, job: Facts, topic: Topic | null): { facts: Facts; carried: Carried } {
  const same = talk.topic === topic
  const kept = Object.fromEntries(
    Object.entries(talk.facts).filter(([k]) => same || !PASSING.includes(k as FactName)),
  ) as Facts
  const facts = merged(job, kept)
  const carried: Partial<Record<FactName, 'talk' | 'job'>> = {}
  for (const key of Object.keys(facts) as FactName[]) carried[key] = key in kept ? 'talk' : 'job'
  return { facts, carried }
}

const fromJob = (job: Facts): Carried => Object.fromEntries(Object.keys(job).map((k) => [k, 'job' as const]))
