/** Curves told in words: a round column, a half-round bay, a quarter round, a corner rounded off, an oval, a round room. */
import type { CurveName } from '../facts.ts'
import type { Concept } from './concepts.ts'
import { type Item, isSize } from './items.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'
import { leadIn } from './nouns.ts'
import type { Size } from './sizes.ts'

export type CurvesHeard = {
  readonly sizes: readonly Size[]
  /** What is left for other readers. */
  readonly rest: readonly Item[]
}

const CURVES: readonly (readonly [Concept, CurveName])[] = [
  ['rounded-corner', 'rounded-corner'],
  ['cut-corner', 'cut-corner'],
  ['quarter-round', 'quarter'],
  ['half-round', 'arc'],
  ['oval-word', 'round'],
  ['round-shape', 'round'],
  ['radius', 'round'],
  ['diameter', 'round'],
]

const REACH = 6
const OVER_A_COMMA = 3
/** A lone round smaller than this is a pipe or a tile, no room; bare figures from this on are inches. [in] */
const LEAST_ROOM_IN = 23
const TILE_WORDS = ['tile', 'mosaic', 'joint', 'sheet', 'tile-kind', 'plank', 'thick', 'notch', 'trowel'] as const
const STANDING: readonly Concept[] = ['island', 'bite', 'drain', 'stands-there', 'column-word']
const OUT: readonly Concept[] = ['bump-out', 'alcove-word', 'plus', 'add']
/** Beside a pair they make it the room that a curve told before it belongs to. */
const ROOM_WORDS: readonly Concept[] = ['room', 'house-part', 'floor', 'of', 'in-a']
const JOINS: readonly Concept[] = ['with', 'and', 'in-a', 'at', 'holds', 'center']

type Shape = { readonly mark: Mark; readonly curve: CurveName }
type Found = { readonly mark: Mark; readonly curve: CurveName; readonly item: Item }

/** The shapes a message names, each once: the longest phrase where several overlap. */
function shapeMarks(marks: readonly Mark[], reader: Reader): Shape[] {
  const named = marks.flatMap((mark): Shape[] => {
    const known = CURVES.find(([concept]) => concept === mark.concept)
    return known ? [partOfRound(mark, reader) ?? { mark, curve: known[1] }] : []
  })
  const overlaps = (a: Mark, b: Mark): boolean => a.first < b.first + b.count && b.first < a.first + a.count
  return named.filter(
    ({ mark }, k) =>
      !named.some(
        (other, n) =>
          n !== k &&
          overlaps(mark, other.mark) &&
          (other.mark.count > mark.count || (other.mark.count === mark.count && n < k)),
      ),
  )
}

/** "a half circle", "1/4 of a round": a part written as a figure before the round. */
function partOfRound(mark: Mark, reader: Reader): Shape | null {
  if (mark.concept !== 'round-shape') return null
  let at = mark.first - 1
  while (at > mark.first - 3 && reader.is(at, 'of', 'the')) at--
  const part = reader.number(at)?.value
  if (part !== 1 / 2 && part !== 1 / 4) return null
  const whole = { ...mark, first: at, count: mark.count + mark.first - at }
  return part === 1 / 2
    ? { mark: { ...whole, concept: 'half-round' }, curve: 'arc' }
    : { mark: { ...whole, concept: 'quarter-round' }, curve: 'quarter' }
}

const MOST_ALIKE = 12

/** "2 round posts 10 in dia": a bare figure by itself right before the shape, where another measures it. */
function countItem(mark: Mark, items: readonly Item[], reader: Reader): Item | null {
  const found = items.find((item) => item.parts.length === 1 && item.last === mark.first - 1)
  const q = found?.parts[0]
  const bare = q !== undefined && q.unit === null && Number.isInteger(q.n) && q.n > 1 && q.n <= MOST_ALIKE
  const measured = items.some((other) => {
    const away = other.first - mark.first - mark.count
    return other.parts.length === 1 && away >= 0 && away < REACH && !reader.is(other.last + 1, ...TILE_WORDS)
  })
  return bare && measured ? (found as Item) : null
}

const commasBetween = (reader: Reader, from: number, to: number): number => {
  let commas = 0
  for (let i = Math.min(from, to); i < Math.max(from, to); i++) if (/^[,;\n]$/.test(reader.sign(i))) commas++
  return commas
}

const isLength = (q: Quantity): boolean => q.dimension === 'length' || q.dimension === 'none'

/** How far a figure stands from the shape it may belong to; null where it belongs to something else. */
function distanceTo(mark: Mark, item: Item, reader: Reader): number | null {
  if (!item.parts.every(isLength) || item.parts.some((q) => q.token.spelled && q.unit === null)) return null
  const after = item.first > mark.first
  const away = after ? item.first - mark.first - mark.count : mark.first - item.last - 1
  // "circle of 8 ft, 12 in tile": the tile behind a figure is what it measures, unless the language puts nouns first.
  const noun = reader.lexicon.locale.nounFirst ? item.first - 1 : item.last + 1
  if (away < 0 || reader.is(noun, ...TILE_WORDS)) return null
  const commas = after
    ? commasBetween(reader, mark.first + mark.count, item.first)
    : commasBetween(reader, item.last, mark.first)
  const distance = away + commas * OVER_A_COMMA
  return distance < REACH ? distance : null
}

/** The figure that measures a shape: one length, or two sides where the shape has two. */
function measureOf(mark: Mark, curve: CurveName, items: readonly Item[], reader: Reader): Item | null {
  const oval = mark.concept === 'oval-word'
  const near = items.flatMap((item) => {
    const distance = distanceTo(mark, item, reader)
    if (distance === null) return []
    const pair = isSize(item)
    if (oval ? !pair : pair && !pairFits(mark, curve, item, reader)) return []
    return [{ item, distance: distance + (pair === oval ? 0 : 1) - (item.first > mark.first ? 0.5 : 0) }]
  })
  return near.toSorted((p, q) => p.distance - q.distance)[0]?.item ?? null
}

/** "6 ft wide 18 in deep", "2x2 quarter round": sides of an arc or a quarter, told right beside it. */
function pairFits(mark: Mark, curve: CurveName, item: Item, reader: Reader): boolean {
  if (curve === 'round' || item.parts.length !== 2) return false
  const sided = [item.parts[0].last + 1, item.last].some((i) => reader.is(i, 'wide', 'deep'))
  const beside = item.last === mark.first - 1 || (item.first >= mark.first && item.first <= mark.first + mark.count + 1)
  return sided || beside
}

const anyNear = (reader: Reader, from: number, to: number, concepts: readonly Concept[]): boolean => {
  for (let i = from; i <= to; i++) if (reader.is(i, ...concepts)) return true
  return false
}

/** What a shape is: taken away, put outside a wall, or the room. */
function roleOf(found: Found, items: readonly Item[], reader: Reader, known: boolean): 'hole' | 'bump' | 'room' | null {
  const { mark, curve, item } = found
  const [from, to] = [Math.min(mark.first, item.first), Math.max(mark.first + mark.count - 1, item.last)]
  const asItem = (at: Mark): Item => ({ ...item, first: at.first, last: at.first + at.count - 1 })
  if (leadIn(item, reader, 'minus') || leadIn(asItem(mark), reader, 'minus')) return 'hole'
  if (curve === 'rounded-corner' || curve === 'cut-corner') return 'hole'
  if (anyNear(reader, from, to + 1, STANDING) || anyNear(reader, from - 2, from, STANDING)) return 'hole'
  const outside = curve === 'arc' && anyNear(reader, from - 3, to + 3, OUT)
  if (outside) return 'bump'
  const room = items.find((other) => other !== item && isRoomLike(other, reader))
  if (room && room.first > to && anyNear(reader, room.first - 4, room.last + 2, ROOM_WORDS))
    return curve === 'arc' ? 'bump' : 'hole'
  if (room && room.first < from) {
    const joined =
      anyNear(reader, room.last + 1, from - 1, JOINS) || anyNear(reader, from, to + 4, ['center', 'corner'])
    if (joined || curve !== 'round') return curve === 'arc' ? 'bump' : 'hole'
  }
  const big = isSize(item) || item.parts[0].unit !== 'in' || item.parts[0].n > LEAST_ROOM_IN
  if (!big) return null
  // A quarter or a half alone adds to or takes from a room that is known, else it is the room.
  return known && curve !== 'round' ? (curve === 'arc' ? 'bump' : 'hole') : 'room'
}

/** A pair of sides with no tile noun behind it. */
const isRoomLike = (item: Item, reader: Reader): boolean =>
  isSize(item) &&
  item.parts.slice(0, 2).every(isLength) &&
  !reader.is(item.last + 1, ...TILE_WORDS) &&
  !(reader.lexicon.locale.nounFirst && reader.is(item.first - 1, ...TILE_WORDS) && !reader.is(item.first - 1, 'floor'))

/** A small measure by itself ("round 3 in drain") or a word of going round something is no shape. */
const saysNothing = (mark: Mark, reader: Reader): boolean =>
  mark.concept === 'round-shape' && reader.is(mark.first + mark.count, 'the', 'top-side')

const isMeasure = ({ concept }: Mark): boolean => concept === 'radius' || concept === 'diameter'

/** The curves a message tells, as sizes with their roles, and the figures that are left.
 *  @param known whether the talk or the job has a room already */
export function readCurves(
  items: readonly Item[],
  reader: Reader,
  marks: readonly Mark[],
  known: boolean,
): CurvesHeard {
  const shapes = shapeMarks(marks, reader).filter(({ mark }) => !saysNothing(mark, reader))
  if (shapes.length === 0) {
    const square = squareColumns(items, reader, marks)
    return { sizes: square, rest: items.filter((item) => !square.some((size) => size.item === item)) }
  }
  const inMark = (item: Item): boolean =>
    shapes.some(({ mark }) => item.first >= mark.first && item.last < mark.first + mark.count)
  let rest = items.filter((item) => !inMark(item))
  const sizes: Size[] = []
  const hasRadius = marks.some((m) => m.concept === 'radius')
  const each = marks.some((m) => m.concept === 'each-corner')
  for (const { mark, curve } of shapes) {
    // A word of measure is a shape only where no other was named.
    if (isMeasure(mark) && shapes.some((s) => !isMeasure(s.mark))) continue
    const counted = countItem(mark, rest, reader)
    const free = rest.filter((item) => item !== counted)
    const item = measureOf(mark, curve, free, reader)
    const role = item && roleOf({ mark, curve, item }, rest, reader, known)
    if (!item || !role) continue
    const count = (curve === 'rounded-corner' || curve === 'cut-corner') && each ? 4 : (counted?.parts[0].n ?? 1)
    const radius = hasRadius && anyNear(reader, item.first - 3, item.last + 2, ['radius'])
    sizes.push({ item, role, noun: null, margin: Infinity, curve: { name: curve, radius, mark }, count })
    rest = free.filter((other) => other !== item)
  }
  return sizes.length > 0 ? { sizes, rest } : { sizes, rest: items }
}

const WIDEST_COLUMN_MM = 1600

/** "a 2 ft column": one measure is the side of a square. */
function squareColumns(items: readonly Item[], reader: Reader, marks: readonly Mark[]): Size[] {
  const room = items.find((item) => isRoomLike(item, reader))
  if (!room) return []
  return marks.flatMap((mark): Size[] => {
    if (mark.concept !== 'column-word') return []
    const item = items.find(({ parts: [q, second], first, last }) => {
      const beside = last === mark.first - 1 || first === mark.first + mark.count
      return second === undefined && beside && q.dimension === 'length' && (q.si as number) <= WIDEST_COLUMN_MM
    })
    return item ? [{ item, role: 'hole', noun: null, margin: Infinity }] : []
  })
}
