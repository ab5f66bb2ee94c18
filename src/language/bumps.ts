/** Sizes that stand outside a wall of a room: "bump out 2x6 on the east wall", "with a 3x5 alcove", "plus a closet on the left". */
import type { Concept } from './concepts.ts'
import type { Mark } from './lexicon.ts'
import type { Reader } from './measures.ts'
import { placeBefore, placeOf } from './places.ts'
import type { Size } from './sizes.ts'

const JOINS: readonly Concept[] = ['plus', 'add', 'with', 'and', 'holds']
const LEAD = 4
const TAIL = 4

/** Sizes read as rooms that are said to stand against a wall of the room before them.
 *  @param known whether the talk or the job has a room already */
export function withBumps(
  sizes: readonly Size[],
  reader: Reader,
  marks: readonly Mark[],
  known: boolean,
): readonly Size[] {
  return sizes.map((size, k) => {
    if (size.role !== 'room') return size
    const before = sizes.slice(0, k).findLast((s) => s.role === 'room' || s.role === 'hole')
    if (!before && !(known && !sizes.some((s) => s !== size && s.role === 'room'))) return size
    return isOutside(size, before?.item.last ?? -1, reader, marks) ? { ...size, role: 'bump' as const } : size
  })
}

function isOutside(size: Size, from: number, reader: Reader, marks: readonly Mark[]): boolean {
  const { item } = size
  const near = (concepts: readonly Concept[], first: number, last: number): boolean => {
    for (let i = Math.max(first, from + 1); i <= last; i++) if (reader.is(i, ...concepts)) return true
    return false
  }
  if (near(['bump-out'], item.first - LEAD, item.first - 1) || near(['bump-out'], item.last + 1, item.last + TAIL))
    return true
  const joined = near(JOINS, item.first - LEAD, item.first - 1) || reader.sign(item.first - 1) === '+'
  const added = near(['add', 'plus'], item.last + 1, item.last + TAIL)
  if (!joined && !added) return false
  const alcove =
    near(['alcove-word'], item.first - LEAD, item.first - 1) || near(['alcove-word'], item.last + 1, item.last + 2)
  const place = placeOf(item, reader, marks) ?? placeBefore(item, reader, marks)
  // A closet has walls of its own unless its side is told; an alcove or a bay has not.
  return place?.side !== undefined || alcove
}
