/** The rooms as they stand after a message: corrected, added to, dropped from, narrowed to those named, or told anew. */
import { type Facts, type Piece, type Room, type Tiling, tilingIn } from '../facts.ts'
import type { Memory } from '../jobs/memory.ts'
import type { Concept } from '../language/concepts.ts'
import type { Heard } from '../language/heard.ts'
import { type InScope, roomsNamed, sameName, sameRoom, tilingOf } from '../room-tiles.ts'
import { settledFacts } from '../topics/outline.ts'
import { roomPlan } from '../topics/room-floor.ts'
import { CHANGE_WORDS, isQuestion } from './follow-up.ts'

export const toldAlike = (a: Room, b: Room): boolean =>
  JSON.stringify([a.name, a.count, a.pieces, a.areaM2]) === JSON.stringify([b.name, b.count, b.pieces, b.areaM2])

/** The rooms of the talk; "add the hall", after one room was asked about, speaks of the whole floor again. */
function knownRooms(heard: Heard, job: Facts, base: Facts): readonly Room[] {
  const [inTalk, inJob] = [base.rooms ?? job.rooms ?? [], job.rooms ?? []]
  const whole = heard.has('add', 'drop') && inJob.length > inTalk.length && isPartOf(base, job)
  return whole ? inJob.map((room) => ({ ...room, own: tilingOf(job, room) })) : inTalk
}

const isPartOf = ({ rooms }: Facts, whole: Facts): boolean =>
  (rooms ?? []).every((room) => (whole.rooms ?? []).some((one) => toldAlike(room, one)))

export type RoomsSaid = {
  readonly said: Facts
  /** The rooms that what is said of tile is said of; null: those asked about last. */
  readonly scope: InScope | null
  /** The talk turns to some of the job's rooms, which keeps them all. */
  readonly narrowed?: true
}

/** Rooms as they stand after this message: corrected, added to, dropped from, narrowed to those named, or told anew. */
export function withRooms(heard: Heard, memory: Memory, base: Facts): RoomsSaid {
  const said = settledFacts(heard.facts)
  const known = knownRooms(heard, memory.facts, base)
  if (!said.rooms) {
    const left = withoutNamed(heard, known) ?? withoutPiece(heard, known)
    return left ? { said: { ...said, rooms: left }, scope: null } : ofKnownRooms(heard, memory, said, base)
  }
  const told = said.rooms
  const rooms = told.map((room) => tiledAsBefore(room, known, base))
  const less = takenOff(rooms, known)
  if (less) return { said: { ...said, rooms: less }, scope: null }
  const fresh: InScope = (room) => {
    const at = rooms.indexOf(room)
    return at >= 0 && told[at].own === undefined
  }
  const joined = joinedTo(heard, rooms, known)
  if (joined) return { said: { ...said, rooms: joined }, scope: fresh }
  // "no its 11x14": the room keeps its name, what stands on it and what stands outside it.
  if (known.length === 1 && rooms.length === 1 && corrects(heard))
    return { said: { ...said, rooms: [measuredAgain(rooms[0], known[0])] }, scope: () => true }
  return { said: { ...said, rooms }, scope: heard.byRoom.length > 0 ? fresh : () => true }
}

const FEW_WORDS = 5

/** "drop the shower": a room of the job, whatever else its name could ask about. */
export const dropsRoom = (heard: Heard, job: Facts, base: Facts): boolean =>
  heard.has('drop') &&
  !heard.has('drain', 'slope-word') &&
  heard.tokens.length <= FEW_WORDS &&
  roomsNamed(heard.plain.text, knownRooms(heard, job, base)).length > 0

const corrects = (heard: Heard): boolean => heard.has('no-correction', 'make-it')

/** "drop the hall": the known rooms without those named, where some are left. */
function withoutNamed(heard: Heard, known: readonly Room[]): Room[] | null {
  if (!heard.has('drop')) return null
  const named = roomsNamed(heard.plain.text, known)
  const left = known.filter((room) => !named.includes(room))
  return left.length < known.length && left.length > 0 ? left : null
}

/** A room measured again keeps its tile; one told with its own tile keeps the joint. */
function tiledAsBefore(room: Room, known: readonly Room[], base: Facts): Room {
  if (room.own) return { ...room, own: { ...jointIn(base), ...room.own } }
  const before = known.find((k) => sameName(k.name, room.name))
  return before ? { ...room, own: tilingOf(base, before) } : room
}

/** "less a 3x4 island": where nothing but parts was told, they are of the last known room. */
function takenOff(rooms: readonly Room[], known: readonly Room[]): Room[] | null {
  const last = known.at(-1)
  const parts = rooms.every((r) => r.pieces.length > 0 && r.pieces.every((p) => p.sign === -1 || p.outside))
  if (!last || !parts) return null
  return [...known.slice(0, -1), { ...last, pieces: [...last.pieces, ...rooms.flatMap((r) => r.pieces)] }]
}

/** The known rooms with those added, and those of a known name as they are told now. */
function joinedTo(heard: Heard, rooms: readonly Room[], known: readonly Room[]): Room[] | null {
  const names = rooms.every((r) => r.name !== undefined)
  const again = heard.has('same') && !heard.has('same-tile')
  const adds = heard.has('add') || (names && !isQuestion(heard) && !again && !corrects(heard))
  // "no, the mudroom is 8x14": of several rooms the one of that name.
  const renewed = rooms.every((r) => known.some((k) => sameName(r.name, k.name)))
  if (known.length === 0 || !(adds || (corrects(heard) && renewed && known.length > 1))) return null
  const kept = known.map((k) => rooms.find((r) => sameName(r.name, k.name)) ?? k)
  return [...kept, ...rooms.filter((r) => !kept.includes(r))]
}

function measuredAgain(fresh: Room, old: Room): Room {
  const name = fresh.name ?? old.name
  const parts = old.pieces.filter((p) => p.sign === -1 || p.outside)
  const plain = fresh.pieces.length === 1 && !fresh.outline && !fresh.cornersMm && !old.shape && !old.cornersMm
  const room = { ...fresh, ...(name ? { name } : {}) }
  const whole = { ...room, pieces: [...room.pieces, ...parts] }
  return plain && parts.length > 0 && roomPlan(whole).ok ? whole : room
}

const PIECE_WORDS: readonly (readonly [Concept, (piece: Piece) => boolean])[] = [
  ['column-word', (p) => p.sign === -1],
  ['island', (p) => p.sign === -1 && p.kind === 'island'],
  ['bite', (p) => p.sign === -1 && p.kind === 'bite'],
  ['bump-out', (p) => p.outside === true],
  ['alcove-word', (p) => p.outside === true],
]

/** "take off the island": the last room without the last of what was told to stand on it or outside it. */
function withoutPiece(heard: Heard, known: readonly Room[]): Room[] | null {
  const last = known.at(-1)
  const fits = PIECE_WORDS.find(([concept]) => heard.has(concept))?.[1]
  if (!heard.has('drop', 'minus') || !last || !fits || heard.quantities.length > 0) return null
  const at = last.pieces.findLastIndex(fits)
  return at < 0 ? null : [...known.slice(0, -1), { ...last, pieces: last.pieces.filter((_, k) => k !== at) }]
}

const jointIn = ({ jointMm }: Facts): Tiling => (jointMm === undefined ? {} : { jointMm })

/** A message without sizes of rooms: the known rooms it names, all where it says so. */
function ofKnownRooms(heard: Heard, memory: Memory, said: Facts, base: Facts): RoomsSaid {
  const known = base.rooms ?? []
  const job = memory.facts.rooms ? memory.facts : base
  const inJob = (job.rooms ?? []).map((room) => ({ ...room, own: tilingOf(job, room) }))
  const everyRoom = inJob.length > known.length ? { ...said, rooms: inJob } : said
  if (heard.has('all-rooms')) return { said: everyRoom, scope: () => true }
  const byName = heard.byRoom.map((part) => ({ ...part, named: roomsNamed(part.text, inJob) }))
  if (byName.length > 0 && byName.every((part) => part.named.length > 0)) {
    const rooms = inJob.map((room) => {
      const part = byName.slice(0, -1).find(({ named }) => named.includes(room))
      return part ? { ...room, own: part.tiling } : room
    })
    const last = byName[byName.length - 1].named
    return { said: { ...said, rooms }, scope: (room) => last.includes(room) }
  }
  const named = roomsNamed(heard.plain.text, inJob)
  if (named.length === 0 || inJob.length < 2) return { said, scope: null }
  const scope: InScope = (room) => named.some((one) => sameRoom(one, room))
  // A question narrows the talk to the rooms it names; a change goes on with all of them.
  const changes = heard.has(...CHANGE_WORDS) || (!isQuestion(heard) && Object.keys(tilingIn(said)).length > 0)
  return changes ? { said: everyRoom, scope } : { said: { ...said, rooms: named }, scope, narrowed: true }
}
