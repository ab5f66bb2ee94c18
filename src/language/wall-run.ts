/** Walls told one after the other with one height: "shower walls 3 ft, 5 ft, 3 ft, 8 ft high", "32x60x32 surround, 84 high". */
import type { Room } from '../facts.ts'
import type { Concept } from './concepts.ts'
import { type Item, isSize } from './items.ts'
import type { Mark } from './lexicon.ts'
import { type Quantity, type Reader, toSi } from './measures.ts'

export type WallRunHeard = { readonly rooms: readonly Room[]; readonly rest: readonly Item[] }

const WALL_WORDS: readonly Concept[] = ['wall', 'walls-walk', 'shower', 'backsplash', 'carry-round', 'tub-word']
/** A figure beside one of these is something else's. */
const OTHERS: readonly Concept[] = [
  'tile',
  'joint',
  'thick',
  'plank',
  'mosaic',
  'trowel',
  'notch',
  'from',
  'out-of-level',
  'niche',
  'window-word',
  'outlet',
  'ledger',
]
const LEAST_WALL_MM = 150
const MOST_WALL_MM = 30_000
/** Bare figures up to this are feet, above it inches; from the next on they are centimetres or millimetres. */
const MOST_FEET = 20
const MOST_INCHES = 250

const isLength = (q: Quantity): boolean => (q.dimension === 'length' || q.dimension === 'none') && !q.token.spelled

const isHigh = (q: Quantity, reader: Reader): boolean =>
  reader.is(q.last + 1, 'high') ||
  reader.is(q.first - 1, 'high') ||
  (reader.is(q.first - 1, 'is', 'at', 'of', 'about') && reader.is(q.first - 2, 'high'))

const isOthers = (q: Quantity, reader: Reader): boolean =>
  reader.is(q.last + 1, ...OTHERS) || (reader.is(q.first - 1, ...OTHERS) && !reader.is(q.first - 1, ...WALL_WORDS))

/** A bare figure by its size; one unit that is written goes for all. */
function lengthMm(q: Quantity, metric: boolean, written: Quantity['unit']): number {
  if (q.si !== null) return q.si
  if (written) return toSi(q.n, written)
  if (q.n > MOST_INCHES) return q.n >= 1000 ? q.n : q.n * 10
  if (metric) return q.n < MOST_FEET ? q.n * 1000 : q.n * 10
  return q.n <= MOST_FEET ? q.n * 304.8 : q.n * 25.4
}

/** The walls, where a message tells two or more and their height; those alone where it carries courses round their corners. */
export function readWallRun(
  items: readonly Item[],
  reader: Reader,
  marks: readonly Mark[],
  metric: boolean,
): WallRunHeard | null {
  const has = (...concepts: readonly Concept[]): boolean => marks.some((m) => concepts.includes(m.concept))
  if (!has(...WALL_WORDS)) return null
  const singles = items.flatMap((item) => (isSize(item) ? [] : [item]))
  const high = singles.find(({ parts: [q] }) => isLength(q) && isHigh(q, reader))
  if (!high) return null
  const told = wallsTold(items, singles, high, reader, marks)
  if (!told) return null
  const written = told.walls.find((q) => q.unit !== null && !q.compound)?.unit ?? null
  const mm = told.walls.map((q) => lengthMm(q, metric, written))
  if (!mm.every((side) => side >= LEAST_WALL_MM && side <= MOST_WALL_MM)) return null
  const highMm = heightMm(high.parts[0], metric, has('backsplash'))
  const rooms = mm.map((side): Room => {
    return { count: 1, upright: true, pieces: [{ sign: 1, lengthMm: side, widthMm: highMm }] }
  })
  return { rooms, rest: items.filter((item) => item !== high && !told.items.includes(item)) }
}

type WallsTold = { readonly walls: readonly Quantity[]; readonly items: readonly Item[] }

/** By three figures of one size, by a back and its sides, by a shower's two sides, one after the other, or one wall by its width. */
function wallsTold(
  items: readonly Item[],
  singles: readonly Item[],
  high: Item,
  reader: Reader,
  marks: readonly Mark[],
): WallsTold | null {
  const round = marks.some((m) => m.concept === 'carry-round')
  const three = items.find((item) => item.parts.length === 3 && item.parts.every(isLength) && isRun(item))
  if (three) return { walls: three.parts, items: [three] }
  const back = backAndSides(singles, high, reader)
  if (back) return back
  const row = oneAfterTheOther(singles, high, reader, marks)
  if (row.length >= (round ? 2 : 3)) return { walls: row.map((item) => item.parts[0]), items: row }
  const pair = round ? items.find((item) => item.parts.length === 2 && isAround(item, reader)) : undefined
  if (pair) {
    const [a, b] = pair.parts.toSorted((p, q) => p.n - q.n)
    return { walls: [a, b, a], items: [pair] }
  }
  const [one] = row
  const wide = one && reader.is(one.last + 1, 'wide', 'long') && reader.is(one.last + 2, 'wall')
  return wide ? { walls: [one.parts[0]], items: [one] } : null
}

/** "shower 3x5 walls 8 high": the pan the walls stand round, open in front. */
const isAround = (item: Item, reader: Reader): boolean =>
  [item.first - 1, item.first - 2, item.last + 1].some((i) => reader.is(i, 'shower', 'tub-word')) &&
  item.parts.every(isLength)

/** "back wall 60 in, side walls 32 in": the side, the back, the other side. */
function backAndSides(singles: readonly Item[], high: Item, reader: Reader): WallsTold | null {
  const beside = (item: Item, concept: Concept): boolean =>
    reader.is(item.first - 1, concept) || reader.is(item.last + 1, concept)
  const lengths = singles.filter((item) => item !== high && isLength(item.parts[0]))
  const back = lengths.find((item) => beside(item, 'top-side'))
  const sides = lengths.find((item) => item !== back && beside(item, 'side-walls'))
  if (!back || !sides) return null
  return { walls: [sides.parts[0], back.parts[0], sides.parts[0]], items: [back, sides] }
}

/** A bare height: feet up to the height of a room, inches above it; a backsplash is always in inches. */
function heightMm(q: Quantity, metric: boolean, splash: boolean): number {
  const inches = q.si === null && !metric && (q.n > MOST_FEET_HIGH || (splash && q.n >= LEAST_SPLASH_IN))
  return inches && q.n < MOST_INCHES ? q.n * 25.4 : lengthMm(q, metric, null)
}
const MOST_FEET_HIGH = 11
const LEAST_SPLASH_IN = 4

/** "32x60x32": the sides and the back of a tub; a tile's third figure is its thickness. */
const isRun = (item: Item): boolean => item.parts[2].n > 3 && item.parts[0].n > 3

/** The longest row of figures with nothing but small words between. */
function oneAfterTheOther(singles: readonly Item[], high: Item, reader: Reader, marks: readonly Mark[]): Item[] {
  const rows: Item[][] = []
  for (const item of singles) {
    const [q] = item.parts
    if (item === high || !isLength(q) || q.token.fraction || isOthers(q, reader) || isHigh(q, reader)) continue
    const row = rows.at(-1)
    const previous = row?.at(-1)
    if (row && previous && !parted(reader, marks, previous.last + 1, item.first)) row.push(item)
    else rows.push([item])
  }
  return rows.toSorted((a, b) => b.length - a.length)[0] ?? []
}

const JOINING: readonly Concept[] = [
  'and',
  'with',
  'the',
  'wall',
  'walls-walk',
  'left-side',
  'right-side',
  'top-side',
  'plus',
  'by',
]
const MOST_BETWEEN = 4

/** "then", "next": a word that means nothing to us. */
const isSmallWord = (reader: Reader, marks: readonly Mark[], i: number): boolean =>
  /^[a-z]{2,4}$/.test(reader.word(i)) && !marks.some((m) => i >= m.first && i < m.first + m.count)

/** Other words between two figures: they are no row of walls. */
function parted(reader: Reader, marks: readonly Mark[], from: number, to: number): boolean {
  if (to - from > MOST_BETWEEN) return true
  for (let i = from; i < to; i++)
    if (!/^[,/;+-]$/.test(reader.sign(i)) && !reader.is(i, ...JOINING) && !isSmallWord(reader, marks, i)) return true
  return false
}
