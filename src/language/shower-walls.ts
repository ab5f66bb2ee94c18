/** "shower walls 3x5, 8 ft high": the three walls round a shower or a tub, stood upright, in place of its floor. */
import type { Room } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Mark } from './lexicon.ts'
import { type Quantity, type Reader, toSi } from './measures.ts'
import type { Loose } from './singles.ts'
import type { Size } from './sizes.ts'

/** Boards, membranes and mud go by the shower's sides on their own. */
const OTHERS: readonly Concept[] = [
  'floor',
  'pan',
  'mud-word',
  'waterproofing',
  'coat',
  'membrane',
  'cement-board',
  'fibre-cement',
  'foam',
  'drain',
  'curb',
  'niche',
  'slope-word',
]
const LEAST_HIGH_MM = 600
const MOST_HIGH_MM = 4000

export function showerWalls(
  rooms: readonly Room[],
  marks: readonly Mark[],
  sizes: readonly Size[],
  loose: readonly Loose[],
  reader: Reader,
): readonly Room[] {
  const has = (...concepts: readonly Concept[]): boolean => marks.some((m) => concepts.includes(m.concept))
  const [room] = rooms
  const piece = room?.pieces[0]
  const isOne = rooms.length === 1 && room?.pieces.length === 1 && !room.cornersMm && !room.upright
  if (!isOne || !piece || !has('shower') || has(...OTHERS)) return rooms
  const highMm = heightOf(sizes, loose, reader)
  if (highMm === null || highMm < LEAST_HIGH_MM || highMm > MOST_HIGH_MM) return rooms
  const [short, long] = [Math.min(piece.lengthMm, piece.widthMm), Math.max(piece.lengthMm, piece.widthMm)]
  const wall = (lengthMm: number, count: number): Room => ({
    count,
    upright: true,
    pieces: [{ sign: 1, lengthMm, widthMm: highMm }],
  })
  return [wall(long, 1), wall(short, 2)]
}

/** Beside "high", or the third side of the size. [mm] */
function heightOf(sizes: readonly Size[], loose: readonly Loose[], reader: Reader): number | null {
  const third = sizes.find((s) => s.role === 'room' && s.item.parts.length > 2)?.item.parts[2]
  const said = loose.find(
    ({ q }) => q.dimension === 'length' && (reader.is(q.last + 1, 'high') || reader.is(q.first - 1, 'high')),
  )?.q
  const q: Quantity | undefined = said ?? third
  if (!q) return null
  return q.si ?? toSi(q.n, q.n < 12 ? 'ft' : 'in')
}
