/** From the rooms of the facts to areas and places for tiles. */
import { curveArea } from '../core/floor/curves.ts'
import { boxOf, type Floor, floorArea } from '../core/floor/rings.ts'
import type { Facts, Piece, Room } from '../facts.ts'
import { count, type Phrase, quote, room as roomLength, say, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { outerWallsM, roomPlan, sizeOf } from './room-floor.ts'

export const LEAST_ROOM_MM = 101.6
/** An outlet or a pipe is smaller than any room. */
const LEAST_HOLE_MM = 12.7
export const MOST_ROOM_MM = 304_800

export type FloorSum = {
  readonly areaM2: number
  readonly perimeterM: number
  /** True where all of it has a shape; false where some is a bare area. */
  readonly shaped: boolean
}

const pieceM2 = (p: Piece): number =>
  (p.curve ? curveArea(p.curve, p.lengthMm, p.widthMm) : p.lengthMm * p.widthMm) / 1e6

/** A rectangle told by its two sides, nothing taken away: no floor has to be drawn for it. */
const isPlain = (room: Room): boolean => !room.cornersMm && !room.fault && room.pieces.length === 1

const drawnFloor = (room: Room): Floor | null => {
  const plan = isPlain(room) || room.areaM2 !== undefined ? null : roomPlan(room)
  return plan?.ok ? plan.value.floor : null
}

export function roomM2(room: Room): number {
  if (room.areaM2 !== undefined) return room.areaM2 * room.count
  const drawn = drawnFloor(room)
  const m2 = drawn ? floorArea(drawn) / 1e6 : room.pieces.reduce((sum, p) => sum + p.sign * pieceM2(p), 0)
  return m2 * room.count
}

/** Outer walls of a room; walls of holes are not counted. */
export function roomPerimeterM(room: Room): number {
  const drawn = drawnFloor(room)
  const added = room.pieces.filter((p) => p.sign === 1)
  const walls = drawn ? outerWallsM(drawn) : added.reduce((sum, p) => sum + 2 * (p.lengthMm + p.widthMm), 0) / 1000
  return walls * room.count
}

const leastOf = (piece: Piece): number => (piece.sign === 1 ? LEAST_ROOM_MM : LEAST_HOLE_MM)

function checkRoom(room: Room): Outcome<Room> {
  if (room.fault) return { ok: false, problem: room.fault }
  for (const piece of room.pieces)
    for (const mm of [piece.lengthMm, piece.widthMm])
      if (!(mm >= leastOf(piece) && mm <= MOST_ROOM_MM))
        return refuse('out-of-range', {
          field: 'room-side',
          value: mm,
          min: leastOf(piece),
          max: MOST_ROOM_MM,
          unit: 'mm',
        })
  const largest = room.pieces.filter((p) => p.sign === 1)
  for (const hole of room.pieces.filter((p) => p.sign === -1)) {
    const fits = largest.some((p) => fitsIn(hole, p))
    if (largest.length > 0 && !fits && roomM2(room) <= 0) return refuse('nothing-left', { said: sizeOf(hole) })
  }
  // Corners that make no floor, or a cut-out that has no room there, are told as such.
  const plan = isPlain(room) || room.areaM2 !== undefined ? null : roomPlan(room)
  if (plan && !plan.ok && (room.cornersMm || roomM2(room) > 0)) return plan
  if (roomM2(room) <= 0)
    return refuse('nothing-left', {
      said: room.pieces.length > 0 ? sizeOf(room.pieces[room.pieces.length - 1]) : '',
    })
  return fine(room)
}

const fitsIn = (a: Piece, b: Piece): boolean =>
  Math.min(a.lengthMm, a.widthMm) <= Math.min(b.lengthMm, b.widthMm) &&
  Math.max(a.lengthMm, a.widthMm) <= Math.max(b.lengthMm, b.widthMm)

/** Area and outer walls of all that the facts name. Null where no floor is known at all.
 *  @problem out-of-range, nothing-left */
export function floorSum(facts: Facts): Outcome<FloorSum | null> {
  const rooms = facts.rooms ?? []
  for (const room of rooms) {
    const checked = checkRoom(room)
    if (!checked.ok) return checked
  }
  const bare = facts.areaM2 ?? (rooms.length === 0 ? facts.leftM2 : undefined)
  if (rooms.length === 0 && bare === undefined) return fine(null)
  const areaM2 =
    rooms.reduce((sum, r) => sum + roomM2(r), 0) + (facts.areaM2 ?? (rooms.length === 0 ? (facts.leftM2 ?? 0) : 0))
  if (!(areaM2 > 0.001 && areaM2 < 1e6))
    return refuse('out-of-range', { field: 'area', value: areaM2, min: 0.001, max: 1e6, unit: 'm2' })
  return fine({
    areaM2,
    perimeterM: rooms.reduce((sum, r) => sum + roomPerimeterM(r), 0),
    shaped: rooms.length > 0 && bare === undefined && rooms.every((r) => r.areaM2 === undefined),
  })
}

/** A room as it is repeated back: its name, or its size, and what comes off it or stands outside it. */
export function roomPhrase(room: Room): Phrase {
  const off = room.pieces.filter((p) => p.sign === -1)
  const out = room.pieces.filter((p) => p.sign === 1 && p.outside)
  const less =
    off.length > 0 ? say('room.less', { room: plainPhrase(room), pieces: off.map(sizeOf) }) : plainPhrase(room)
  return out.length > 0 ? say('room.plus', { room: less, pieces: out.map(sizeOf) }) : less
}

/** The same without what comes off it or stands outside: a picture shows those. */
export function plainPhrase(room: Room): Phrase {
  const size = room.pieces.find((p) => p.sign === 1 && !p.outside)
  const named = room.name ? quote(room.name) : word('floor')
  if (room.cornersMm) return outlinePhrase(room, named)
  if (!size) return say('room.named', { name: named })
  const sizeText = say('room.size', { length: roomLength(size.lengthMm), width: roomLength(size.widthMm) })
  return room.name ? say('room.named-size', { name: named, size: sizeText }) : sizeText
}

/** A room by its name alone where it has one. */
export const roomName = (room: Room): Phrase =>
  room.name ? say('room.named', { name: quote(room.name) }) : roomPhrase(room)

/** A room told by its outline: a circle by its size, others by their corners and what they measure over all. */
function outlinePhrase(room: Room, name: Phrase | ReturnType<typeof quote>): Phrase {
  const { outline, cornersMm = [] } = room
  if (outline?.told === 'round') {
    const size = sizeOf({ sign: 1, lengthMm: outline.widthMm, widthMm: outline.depthMm, curve: outline.curve })
    return room.name ? say('room.named-size', { name, size }) : size
  }
  const box = boxOf([cornersMm])
  return say('room.outline', {
    name,
    corners: count(cornersMm.length),
    length: roomLength(box.maxX - box.minX),
    width: roomLength(box.maxY - box.minY),
  })
}

/** What was taken for granted where the rooms were drawn: corners chosen, walks closed, rooms out of square. */
export const floorNotes = (facts: Facts): Phrase[] =>
  (facts.rooms ?? []).flatMap((room) => {
    const plan = isPlain(room) || room.areaM2 !== undefined ? null : roomPlan(room)
    return plan?.ok ? plan.value.notes : []
  })
