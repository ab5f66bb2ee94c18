/** The rooms of the facts as floors with corners, for what is laid out on them. */
import type { Floor } from '../../core/floor/rings.ts'
import type { Facts } from '../../facts.ts'
import type { Phrase } from '../../phrase.ts'
import { roomPlan } from '../room-floor.ts'
import type { Brief } from '../topic.ts'

/** A floor, how many of it there are, and what was guessed of its shape. */
export type LaidRoom = { readonly floor: Floor; readonly count: number; readonly notes: readonly Phrase[] }

/** Every room as a floor, or null where one is a bare area or does not close: the sums then go by area. */
export function laidRooms(facts: Facts): LaidRoom[] | null {
  const rooms = facts.rooms ?? []
  if (!rooms.length || facts.areaM2 !== undefined) return null
  const laid: LaidRoom[] = []
  for (const room of rooms) {
    if (room.areaM2 !== undefined) return null
    const plan = roomPlan(room)
    if (!plan.ok) return null
    laid.push({ floor: plan.value.floor, count: room.count, notes: plan.value.notes })
  }
  return laid
}

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
