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
  const round = has('carry-round')
  if (!high) return null
  const three = items.find((item) => item.parts.length === 3 && item.parts.every(isLength))
  const lengths = three && isRun(three) ? three.parts : oneAfterTheOther(singles, high, reader)
  const written = lengths.find((q) => q.unit !== null && !q.compound)?.unit ?? null
  const mm = lengths.map((q) => lengthMm(q, metric, written))
  const sound = mm.every((side) => side >= LEAST_WALL_MM && side <= MOST_WALL_MM)
  if (lengths.length < (round ? 2 : 3) || !sound) return null
  const highMm = lengthMm(high.parts[0], metric, null)
  const taken = new Set([
    high,
    ...(three && isRun(three) ? [three] : singles.filter((s) => lengths.includes(s.parts[0]))),
  ])
  return {
    rooms: mm.map((lengthMm) => ({ count: 1, upright: true, pieces: [{ sign: 1, lengthMm, widthMm: highMm }] })),
    rest: items.filter((item) => !taken.has(item)),
  }
}

/** "32x60x32": the sides and the back of a tub; a tile's third figure is its thickness. */
const isRun = (item: Item): boolean => item.parts[2].n > 3 && item.parts[0].n > 3

function oneAfterTheOther(singles: readonly Item[], high: Item, reader: Reader): Quantity[] {
  const walls: Quantity[] = []
  for (const item of singles) {
    const [q] = item.parts
    if (item === high || !isLength(q) || q.token.fraction || isOthers(q, reader) || isHigh(q, reader)) continue
    const previous = walls.at(-1)
    if (previous && parted(reader, previous.last + 1, q.first)) break
    walls.push(q)
  }
  return walls
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

/** Other words between two figures: they are no row of walls. */
function parted(reader: Reader, from: number, to: number): boolean {
  if (to - from > MOST_BETWEEN) return true
  for (let i = from; i < to; i++) if (!/^[,/;+-]$/.test(reader.sign(i)) && !reader.is(i, ...JOINING)) return true
  return false
}
