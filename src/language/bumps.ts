/** Sizes that stand outside a wall of a room: "bump out 2x6 on the east wall", "with a 3x5 alcove", "plus a closet on the left". */
import type { Concept } from './concepts.ts'
import type { Mark } from './lexicon.ts'
import type { Reader } from './measures.ts'
import { placeBefore, placeOf } from './places.ts'
import type { Size } from './sizes.ts'

const JOINS: readonly Concept[] = ['plus', 'add', 'with', 'and', 'holds']
const LEAD = 4
const TAIL = 4

const TILE_WORDS: readonly Concept[] = ['tile', 'tile-kind', 'plank', 'mosaic']

/** Sizes that are said to stand against a wall of a room told beside them, and sizes taken away after another: "less 2x3 and 3x4".
 *  @param known whether the talk or the job has a room already */
export function withBumps(
  sizes: readonly Size[],
  reader: Reader,
  marks: readonly Mark[],
  known: boolean,
): readonly Size[] {
  const told: Size[] = []
  for (const [k, size] of sizes.entries()) {
    const before = told.findLast((s) => s.role === 'room' || s.role === 'hole' || s.role === 'bump')
    const others = sizes.some((s, n) => n !== k && s.role === 'room')
    if (before && takenToo(size, told.at(-1), sizes, reader)) told.push({ ...size, role: 'hole' })
    else if (
      couldBe(size, reader) &&
      (others || known) &&
      isOutside(size, before?.item.last ?? -1, reader, marks, others)
    )
      told.push({ ...size, role: 'bump' })
    else told.push(size)
  }
  return told
}

const couldBe = ({ role, item, noun }: Size, reader: Reader): boolean =>
  role === 'room' ||
  (role === 'opening' && noun !== null && reader.is(noun.mark.first, 'alcove-word', 'bump-out')) ||
  (role === 'tile' &&
    (noun === null || noun.mark.concept === 'window-word') &&
    !reader.is(item.last + 1, ...TILE_WORDS))

/** "less 2x3 and 3x4 corners": joined to a hole by nothing but an "and", and far smaller than the room. */
function takenToo(size: Size, last: Size | undefined, sizes: readonly Size[], reader: Reader): boolean {
  if (size.role !== 'room' || last?.role !== 'hole' || last.curve) return false
  let i = size.item.first - 1
  while (reader.is(i, 'the') && !reader.is(i, 'and')) i--
  const room = sizes.find((s) => s.role === 'room')
  const product = ({ item: { parts } }: Size): number => parts[0].n * parts[1].n
  const named = size.noun !== null && size.noun.mark.concept === 'house-part'
  return reader.is(i, 'and') && !named && room !== undefined && room !== size && product(size) < product(room) / 3
}

function isOutside(size: Size, from: number, reader: Reader, marks: readonly Mark[], others: boolean): boolean {
  const { item } = size
  const before = (concepts: readonly Concept[]): boolean => {
    for (let i = item.first - 1; i >= Math.max(item.first - LEAD, from + 1); i--) {
      if (/^[,;\n]$/.test(reader.sign(i))) return false
      if (reader.is(i, ...concepts)) return true
    }
    return false
  }
  const behind = (reach: number, concepts: readonly Concept[]): boolean => {
    for (let i = item.last + 1; i <= item.last + reach; i++) {
      if (/^[,;\n]$/.test(reader.sign(i))) return false
      if (reader.is(i, ...concepts)) return true
    }
    return false
  }
  if (before(['bump-out']) || behind(TAIL, ['bump-out'])) return true
  if (from < 0 && others) return false
  const joined = before(JOINS) || reader.sign(item.first - 1) === '+'
  const added = behind(TAIL, ['add', 'plus'])
  if (!joined && !added) return false
  const alcove = before(['alcove-word']) || behind(2, ['alcove-word'])
  if (size.role !== 'room') return alcove
  const place = placeOf(item, reader, marks) ?? placeBefore(item, reader, marks)
  // A closet has walls of its own unless its side is told; an alcove or a bay has not.
  return place?.side !== undefined || alcove
}
