/** The rooms of the facts as floors with corners, for what is laid out on them. */
import type { Floor } from '../../core/floor/rings.ts'
import type { Facts } from '../../facts.ts'
import type { Phrase } from '../../phrase.ts'
import { roomPlan } from '../room-floor.ts'

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
