/** From the rooms of the facts to areas and places for tiles. */
import type { Facts, Piece, Room } from '../facts.ts'
import { type Phrase, quote, room as roomLength, say, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'

export const LEAST_ROOM_MM = 101.6
export const MOST_ROOM_MM = 304_800

export type FloorSum = {
  readonly areaM2: number
  readonly perimeterM: number
  /** True where all of it has a shape; false where some is a bare area. */
  readonly shaped: boolean
}

const pieceM2 = (p: Piece): number => (p.lengthMm * p.widthMm) / 1e6

function shoelaceM2(corners: readonly (readonly [number, number])[]): number {
  let twice = 0
  corners.forEach(([x, y], i) => {
    const [nx, ny] = corners[(i + 1) % corners.length]
    twice += x * ny - nx * y
  })
  return Math.abs(twice) / 2e6
}

export function roomM2(room: Room): number {
  if (room.areaM2 !== undefined) return room.areaM2 * room.count
  if (room.cornersMm) return shoelaceM2(room.cornersMm) * room.count
  return room.pieces.reduce((sum, p) => sum + p.sign * pieceM2(p), 0) * room.count
}

function walkM(corners: readonly (readonly [number, number])[]): number {
  return (
    corners.reduce((sum, [x, y], i) => {
      const [nx, ny] = corners[(i + 1) % corners.length]
      return sum + Math.hypot(nx - x, ny - y)
    }, 0) / 1000
  )
}

/** Outer walls; holes are not counted. A bite out of a corner leaves the outer walls as long as they were; a bite out of
 *  the middle of a side adds twice its depth. */
export function roomPerimeterM(room: Room): number {
  if (room.cornersMm) return walkM(room.cornersMm) * room.count
  const outer = room.pieces.filter((p) => p.sign === 1).reduce((sum, p) => sum + 2 * (p.lengthMm + p.widthMm), 0)
  const sides =
    room.shape === 'U'
      ? room.pieces.filter((p) => p.sign === -1).reduce((sum, p) => sum + 2 * Math.min(p.lengthMm, p.widthMm), 0)
      : 0
  return ((outer + sides) / 1000) * room.count
}

function checkRoom(room: Room): Outcome<Room> {
  for (const piece of room.pieces)
    for (const mm of [piece.lengthMm, piece.widthMm])
      if (!(mm >= LEAST_ROOM_MM && mm <= MOST_ROOM_MM))
        return refuse('out-of-range', {
          field: 'room-side',
          value: mm,
          min: LEAST_ROOM_MM,
          max: MOST_ROOM_MM,
          unit: 'mm',
        })
  const largest = room.pieces.filter((p) => p.sign === 1)
  for (const hole of room.pieces.filter((p) => p.sign === -1)) {
    const fits = largest.some((p) => fitsIn(hole, p))
    if (largest.length > 0 && !fits && roomM2(room) <= 0) return refuse('nothing-left', { said: roomPieceName(hole) })
  }
  if (roomM2(room) <= 0)
    return refuse('nothing-left', {
      said: room.pieces.length > 0 ? roomPieceName(room.pieces[room.pieces.length - 1]) : '',
    })
  return fine(room)
}

const fitsIn = (a: Piece, b: Piece): boolean =>
  Math.min(a.lengthMm, a.widthMm) <= Math.min(b.lengthMm, b.widthMm) &&
  Math.max(a.lengthMm, a.widthMm) <= Math.max(b.lengthMm, b.widthMm)

const roomPieceName = (p: Piece): Phrase =>
  say('room.size', { length: roomLength(p.lengthMm), width: roomLength(p.widthMm) })

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

/** A room as it is repeated back: its name, or its size. */
export function roomPhrase(room: Room): Phrase {
  const size = room.pieces[0]
  const named = room.name ? quote(room.name) : word('floor')
  if (!size || room.cornersMm) return say('room.named', { name: named })
  const sizeText = say('room.size', { length: roomLength(size.lengthMm), width: roomLength(size.widthMm) })
  return room.name ? say('room.named-size', { name: named, size: sizeText }) : sizeText
}
