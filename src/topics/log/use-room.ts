/** Which room of the job tiles or an area went into: the one that is named, the only one they fit, the one of the log before. */
import type { Room } from '../../facts.ts'
import type { UseBody } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import type { Heard } from '../../language/heard.ts'
import { roomsNamed, tilingOf } from '../../room-tiles.ts'
import { roomM2 } from '../floors.ts'

/** Cuts and a wall that is out of true: so much more than the room may go into it. */
const OVER_SHARE = 1.1
const SHORT_MESSAGE = 5

const named = (memory: Memory): readonly Room[] => (memory.facts.rooms ?? []).filter((room) => room.name !== undefined)

/** Whether a log tells of a floor, so that the room of it matters. */
const fillsFloor = (use: UseBody): boolean =>
  use.stuff === 'tile' && (use.tiles !== undefined || use.m2 !== undefined) && use.rows === undefined

function areaOf(use: UseBody, room: Room, memory: Memory): number {
  const { tile } = tilingOf(memory.facts, room)
  const oneM2 = tile ? (tile.lengthMm * tile.widthMm) / 1e6 : 0
  return use.m2 ?? (use.tiles ?? 0) * oneM2
}

/** The log with its room, where the job has several and one is meant. */
export function inRoom(use: UseBody, heard: Heard, memory: Memory): UseBody {
  const rooms = named(memory)
  if (rooms.length < 2 || !fillsFloor(use) || use.room !== undefined) return use
  const told = roomsNamed(heard.plain.text, rooms)
  const fits = rooms.filter((room) => areaOf(use, room, memory) <= roomM2(room) * OVER_SHARE)
  const before = memory.job.uses.findLast(fillsFloor)?.room
  const meant =
    told.length === 1
      ? told[0]
      : fits.length === 1
        ? fits[0]
        : fits.find((room) => told.length === 0 && room.name === before)
  return meant?.name === undefined ? use : { ...use, room: meant.name }
}

/** The rooms to ask about: where one was left open for the first time. */
export function roomsToAsk(uses: readonly UseBody[], memory: Memory): readonly string[] {
  const rooms = named(memory)
  const open = (use: UseBody): boolean => fillsFloor(use) && use.room === undefined
  if (rooms.length < 2 || !uses.some(open) || memory.job.uses.some(open)) return []
  return rooms.map((room) => room.name ?? '')
}

/** "in the wash-up", after a log whose room was asked for: that log with its room. */
export function roomedUse(heard: Heard, memory: Memory): UseBody | null {
  const last = memory.job.uses.at(-1)
  if (!last || !fillsFloor(last) || last.room !== undefined || heard.quantities.length > 0) return null
  const rooms = roomsNamed(heard.plain.text, named(memory))
  if (rooms.length !== 1 || heard.tokens.length > SHORT_MESSAGE) return null
  const { id: _i, at: _a, person: _p, personName: _n, messageId: _m, ...told } = last
  return { ...told, room: rooms[0].name ?? '' }
}
