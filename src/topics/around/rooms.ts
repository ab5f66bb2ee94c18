/** The rooms of the facts as floors with corners, for what is laid out on them. */
import { floorOf } from '../../core/floor/check.ts'
import type { Floor } from '../../core/floor/rings.ts'
import { CENTRED, type Corner, lessRectangle, type Place, plusRectangle, rectangle } from '../../core/floor/shapes.ts'
import type { Facts, Piece, Room } from '../../facts.ts'
import type { Brief } from '../topic.ts'

/** A floor and how many of it there are. */
export type LaidRoom = { readonly floor: Floor; readonly count: number }

/** Every room as a floor, or null where one is a bare area or does not close: the sums then go by area. */
export function laidRooms(facts: Facts): LaidRoom[] | null {
  const rooms = facts.rooms ?? []
  if (!rooms.length || facts.areaM2 !== undefined) return null
  const laid: LaidRoom[] = []
  for (const room of rooms) {
    const floor = floorOfRoom(room)
    if (!floor) return null
    laid.push({ floor, count: room.count })
  }
  return laid
}

function floorOfRoom(room: Room): Floor | null {
  if (room.areaM2 !== undefined) return null
  if (room.cornersMm) {
    const corners = floorOf(room.cornersMm)
    return corners.ok ? corners.value : null
  }
  const [first, ...rest] = room.pieces
  if (!first || first.sign === -1) return null
  let floor = rectangle(first.lengthMm, first.widthMm)
  for (const piece of rest) {
    if (!floor.ok) return null
    const next =
      piece.sign === 1
        ? plusRectangle(floor.value, piece.lengthMm, piece.widthMm, 'right', 0)
        : lessRectangle(floor.value, piece.lengthMm, piece.widthMm, placeOf(piece, room))
    if (!next.ok) return null
    floor = { ok: true, value: next.value.floor }
  }
  return floor.ok ? floor.value : null
}

/** Where a piece is left out: as said; else an island in the middle, a bite out of a corner, a U's out of a side. */
function placeOf(piece: Piece, room: Room): Place {
  const { place } = piece
  if (place?.corner) return { at: 'corner', corner: place.corner satisfies Corner }
  if (place?.side) return { at: 'side', side: place.side, alongMm: null }
  const x = fromWall(place?.fromLeftMm, place?.fromRightMm)
  const y = fromWall(place?.fromBottomMm, place?.fromTopMm)
  if (x || y) return { at: 'inside', x, y }
  if (piece.kind === 'island' || place?.centred) return CENTRED
  return room.shape === 'U' ? { at: 'side', side: 'top', alongMm: null } : { at: 'corner', corner: 'top-right' }
}

const fromWall = (low: number | undefined, high: number | undefined) =>
  low !== undefined
    ? ({ from: 'low', mm: low } as const)
    : high !== undefined
      ? ({ from: 'high', mm: high } as const)
      : null

/** No shower is 24 ft wide: a bare pair that large is in inches. */
const LEAST_INCHES = 24

export function inInches(brief: Brief): Brief {
  const size = brief.heard.sizes.find(
    (one) => one.role === 'room' && one.item.parts.every((part) => part.unit === null),
  )
  const rooms = brief.heard.facts.rooms
  if (!size || !rooms || rooms.length !== 1) return brief
  const [a, b] = size.item.parts
  const larger = Math.max(a?.n ?? 0, b?.n ?? 0)
  if (larger < LEAST_INCHES || larger >= 100 || brief.metric) return brief
  const pieces = rooms[0]!.pieces.map((p) => ({ ...p, lengthMm: p.lengthMm / 12, widthMm: p.widthMm / 12 }))
  return { ...brief, facts: { ...brief.facts, rooms: [{ ...rooms[0]!, pieces }] } }
}
