/** Rooms as they are meant, once all of the message is read: walls, pans in inches, an area less its islands, names as typed. */
import type { Piece, Room } from '../facts.ts'
import type { Draft } from './figure.ts'
import type { Size } from './sizes.ts'
import { originSpan, type PlainText } from './text.ts'

/** "3x8, 5x8 and 3x8, carry it round the corners": sizes alike in height are walls. */
export function wallsOf(rooms: readonly Room[], draft: Draft): readonly Room[] {
  const highs = rooms.map((room) => (room.pieces.length === 1 ? room.pieces[0].widthMm : Number.NaN))
  const walls = draft.roundCorners && rooms.length > 1 && highs.every((mm) => Math.abs(mm - highs[0]) < 1)
  return walls ? rooms.map((room) => ({ ...room, upright: true as const })) : rooms
}

/** What is told beside an outline comes off it, or stands outside it. */
export const withPieces = (room: Room, rooms: readonly Room[]): Room => {
  const pieces = rooms.flatMap((r) => r.pieces.filter((p) => p.sign === -1 || p.outside))
  return pieces.length > 0 ? { ...room, pieces } : room
}

/** No shower is 24 ft wide: a bare pair that large is in inches. */
const LEAST_PAN_INCHES = 24

const MOST_PAN_INCHES = 100

export function panInInches(rooms: readonly Room[], sizes: readonly Size[]): readonly Room[] {
  const isBare = (one: Size): boolean => one.item.parts.every((part) => part.unit === null)
  const size = sizes.find((one) => one.role === 'room' && isBare(one))
  const larger = Math.max(...(size?.item.parts.slice(0, 2).map((part) => part.n) ?? [0]))
  const [first] = rooms[0]?.pieces ?? []
  const inFeet = first !== undefined && Math.abs(first.lengthMm - (size?.item.parts[0].n ?? 0) * 304.8) < 1
  if (rooms.length !== 1 || !inFeet || larger < LEAST_PAN_INCHES || larger >= MOST_PAN_INCHES) return rooms
  // What was told with its unit keeps it.
  const written = sizes.filter((one) => !isBare(one)).map(({ item: { parts } }) => parts[0].si)
  const keeps = (p: Piece): boolean => written.some((mm) => mm !== null && Math.abs(mm - p.lengthMm) < 1)
  const pieces = rooms[0].pieces.map((p) =>
    keeps(p) ? p : { ...p, lengthMm: p.lengthMm / 12, widthMm: p.widthMm / 12 },
  )
  return [{ ...rooms[0], pieces }]
}

/** "200 sf less a 3x4 island": what is left out comes off the bare area. */
export function lessFromArea(rooms: readonly Room[], draft: Draft): readonly Room[] {
  if (draft.areaM2 === undefined || rooms.length !== 1 || rooms[0].pieces.some((p) => p.sign === 1)) return rooms
  const rest = rooms[0].pieces.reduce((m2, p) => m2 - (p.lengthMm * p.widthMm) / 1e6, draft.areaM2)
  if (rest <= 0) return rooms
  draft.areaM2 = rest
  return []
}

/** A room's name as it was typed, accents and all, in small letters. */
export function asNamed<T extends { readonly name?: string }>(named: T, typed: string, plain: PlainText): T {
  if (named.name === undefined) return named
  const at = plain.text.indexOf(named.name)
  if (at < 0) return named
  const [from, to] = originSpan(plain, [at, at + named.name.length])
  return { ...named, name: typed.slice(from, to).toLowerCase() }
}
