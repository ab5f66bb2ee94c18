/** "keep it in the job": what was only talked about becomes the job's. */
import type { Facts, Room, Tiling } from '../../facts.ts'
import { differing } from '../../jobs/job.ts'
import { ENTRY_VERSIONS, type Memory } from '../../jobs/memory.ts'
import { say } from '../../phrase.ts'
import { sameRoom, tiledBy, tilingOf, untiled } from '../../room-tiles.ts'
import type { Brief, Told } from '../topic.ts'
import { holdings } from './holds.ts'
import { lasting } from './quantities.ts'
import { factPhrase } from './tell.ts'

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
export function keep(brief: Brief): Told {
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
