/** From sizes with roles to rooms: sums, cut-outs, several alike, their names and shapes. */
import type { Piece, Place, Room } from '../facts.ts'
import type { Problem, Span } from '../problem.ts'
import type { Concept } from './concepts.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'
import { placeOf } from './places.ts'
import { roomMm, type Size } from './sizes.ts'

/** How a bare decimal in a room's size is read: "12.6" may be feet and tenths or feet and inches. */
export type DecimalHabit = 'tenths' | 'inches' | null

export type RoomsHeard = {
  readonly rooms: readonly Room[]
  readonly notes: readonly RoomNote[]
  readonly problem: Problem | null
}

/** What was decided on the way, to be said: the key of a phrase with the words it was about. */
export type RoomNote = {
  readonly key: 'read-inches' | 'read-half' | 'read-quarter' | 'read-as-unit' | 'bite-corner' | 'centred'
  readonly said: string
  readonly unit?: string
  /** What it was read as. */
  readonly mm?: number
}

type Side = { mm: number; note: RoomNote | null; unclear: Quantity | null }

/** One side of a room in mm. ".10" and ".11" are inches, ".5" a half, ".25" and ".75" quarters; other lone tenths are unclear. */
function sideMm(q: Quantity, larger: number, metric: boolean, habit: DecimalHabit): Side {
  const read = roomMm(q, larger, metric)
  if (read.as !== 'ft' || q.token.decimals === 0) {
    const note: RoomNote | null =
      read.as === 'said' || read.as === 'ft' ? null : { key: 'read-as-unit', said: q.token.text, unit: read.as }
    return { mm: read.mm, note, unclear: null }
  }
  const figures = q.token.text.split(/[.,]/)[1]
  const inchesMm = Math.floor(q.n) * 304.8 + Number(figures) * 25.4
  if (figures === '10' || figures === '11')
    return {
      mm: inchesMm,
      note: { key: 'read-inches', said: q.token.text, mm: inchesMm },
      unclear: null,
    }
  if (figures === '5')
    return { mm: read.mm, note: { key: 'read-half', said: q.token.text, mm: read.mm }, unclear: null }
  if (figures === '25' || figures === '75')
    return { mm: read.mm, note: { key: 'read-quarter', said: q.token.text, mm: read.mm }, unclear: null }
  if (figures.length !== 1 || figures === '0') return { mm: read.mm, note: null, unclear: null }
  if (habit === 'inches')
    return {
      mm: inchesMm,
      note: { key: 'read-inches', said: q.token.text, mm: inchesMm },
      unclear: null,
    }
  return { mm: read.mm, note: null, unclear: habit === null ? q : null }
}

/** Builds the rooms out of a message's sizes. */
export function roomsOf(
  sizes: readonly Size[],
  reader: Reader,
  marks: readonly Mark[],
  metric: boolean,
  habit: DecimalHabit,
): RoomsHeard {
  const rooms: Room[] = []
  const notes: RoomNote[] = []
  let unclear: Quantity | null = null
  let lastEnd = 0
  for (const size of sizes) {
    const opens = size.role === 'opening' && rooms.at(-1)?.upright === true
    if (size.role !== 'room' && size.role !== 'hole' && !opens) continue
    const [a, b] = size.item.parts
    const larger = Math.max(a.n, b.n)
    const sides = [sideMm(a, larger, metric, habit), sideMm(b, larger, metric, habit)]
    for (const side of sides) {
      if (side.note && !notes.some((n) => n.said === side.note?.said)) notes.push(side.note)
      unclear ??= side.unclear
    }
    const piece = { lengthMm: sides[0].mm, widthMm: sides[1].mm }
    if (size.role !== 'room') addHole(rooms, size, openingMm(size, piece, reader), reader, marks)
    else addRoom(rooms, size, piece, reader, lastEnd)
    lastEnd = size.item.last
  }
  // "two closets 3x4 and a 9x12": a room told by itself is none of the two.
  const apart = sizes
    .filter((s) => s.role === 'room')
    .slice(1)
    .some((s) => reader.is(s.item.first - 1, 'the', 'with'))
  return {
    rooms: (apart ? rooms : countedOnce(rooms)).map((r) => withShape(r, marks)),
    notes,
    problem: unclear ? askDecimal(unclear) : null,
  }
}

function askDecimal(q: Quantity): Problem {
  const whole = Math.floor(q.n)
  const span: Span = [q.token.from, q.token.to]
  return {
    code: 'question',
    facts: { question: 'decimal', whole, inches: Number(q.token.text.split(/[.,]/)[1]), said: q.token.text },
    at: span,
  }
}

function addRoom(
  rooms: Room[],
  size: Size,
  sides: { lengthMm: number; widthMm: number },
  reader: Reader,
  lastEnd: number,
): void {
  const name = roomName(size, reader)
  const piece: Piece = { sign: 1, ...sides }
  if (rooms.length > 0 && corrects(reader, lastEnd, size.item.first)) rooms.pop()
  const previous = rooms.at(-1)
  // "12x10 + 4x6" is one room of two parts; "kitchen 10x13, hall 4x12" are two rooms.
  const joined =
    previous !== undefined &&
    plusBetween(reader, lastEnd, size.item.first) &&
    (name === undefined || name === previous.name)
  if (joined) {
    rooms[rooms.length - 1] = { ...previous, pieces: [...previous.pieces, piece] }
    return
  }
  const count = countBehind(size, reader) ?? countBefore(size, reader)
  const upright = size.noun !== null && ['backsplash', 'wall'].includes(size.noun.mark.concept)
  // A lone "u" before a size is its shape, not the crew's "you".
  const shape = reader.word(size.item.first - 1) === 'u' ? { shape: 'U' as const } : {}
  rooms.push({ ...(name ? { name } : {}), count, pieces: [piece], ...shape, ...(upright ? { upright: true } : {}) })
}

/** What stands on a floor or opens in a wall, rather than being bitten out of its edge. */
const STANDING: readonly Concept[] = ['island', 'outlet', 'window-word', 'niche']
const OPENINGS: readonly Concept[] = ['outlet', 'window-word', 'niche']
/** An outlet, a niche or a window told by bare figures from this on is told in inches. */
const LEAST_INCHES = 8

/** The sides of an opening: a bare outlet is in inches, a bare window or niche by its size. [mm] */
function openingMm(size: Size, sides: { lengthMm: number; widthMm: number }, reader: Reader): typeof sides {
  const beside = (concept: Concept): boolean =>
    [1, 2, 3].some((k) => reader.is(size.item.last + k, concept)) ||
    [-2, -1].some((k) => reader.is(size.item.first + k, concept))
  const [a, b] = size.item.parts
  const bare = a.unit === null && b.unit === null
  const inInches = beside('outlet') || (OPENINGS.some(beside) && Math.max(a.n, b.n) >= LEAST_INCHES)
  return bare && inInches ? { lengthMm: a.n * 25.4, widthMm: b.n * 25.4 } : sides
}

function addHole(
  rooms: Room[],
  size: Size,
  sides: { lengthMm: number; widthMm: number },
  reader: Reader,
  marks: readonly Mark[],
): void {
  const previous = rooms.at(-1)
  const stands =
    size.role === 'opening' ||
    [-3, -2, -1, 0].some((k) => reader.is(size.item.first + k, ...STANDING)) ||
    [1, 2, 3].some((k) => reader.is(size.item.last + k, ...STANDING))
  const place: Place | null = placeOf(size.item, reader, marks)
  const name = roomName(size, reader)
  const piece: Piece = {
    sign: -1,
    ...sides,
    kind: stands ? 'island' : 'bite',
    ...(place ? { place } : {}),
    ...(name ? { name } : {}),
  }
  if (previous) rooms[rooms.length - 1] = { ...previous, pieces: [...previous.pieces, piece] }
  else rooms.push({ count: 1, pieces: [piece] })
}

function plusBetween(reader: Reader, from: number, to: number): boolean {
  for (let i = from + 1; i < to; i++) if (reader.sign(i) === '+' || reader.is(i, 'plus')) return true
  return false
}

/** Beyond it a figure before a size is something else. */
const MOST_ALIKE = 12

/** "two baths 5x8", "3 rooms at 10x12", "5x8 x2": how many alike. */
function countBefore(size: Size, reader: Reader): number {
  for (let i = size.item.first - 1; i >= Math.max(0, size.item.first - 4); i--) {
    const token = reader.number(i)
    if (token && reader.sign(i - 1) === 'x') return 1
    if (token) {
      // "two baths 5x8", and "two 5x8 baths".
      const named = reader.is(i + 1, 'room', 'house-part', 'shower', 'of', 'each')
      const follows =
        i === size.item.first - 1 &&
        token.value <= MOST_ALIKE &&
        reader.is(size.item.last + 1, 'room', 'house-part', 'shower')
      return isCount(token.value) && (named || follows) ? token.value : 1
    }
    if (/^[,;\n]$/.test(reader.sign(i))) break
  }
  return 1
}

/** "10x10 x 3 rooms": a third figure that counts. */
function countBehind(size: Size, reader: Reader): number | null {
  const third = size.item.parts[2]
  const counts =
    third !== undefined && third.unit === null && isCount(third.n) && reader.is(third.last + 1, 'room', 'house-part')
  return counts ? third.n : null
}

const isCount = (n: number): boolean => Number.isInteger(n) && n >= 2 && n <= 500

/** "two rooms 10x12 and 11x13": the count is of the sizes that follow, not of the first of them. */
function countedOnce(rooms: readonly Room[]): readonly Room[] {
  const [first, ...rest] = rooms
  return rest.length > 0 && first.count === rooms.length && rest.every((r) => r.count === 1)
    ? [{ ...first, count: 1 }, ...rest]
    : rooms
}

/** "12x14, no wait 12x15": the second corrects the first. */
function corrects(reader: Reader, from: number, to: number): boolean {
  for (let i = from + 1; i < to; i++) if (reader.is(i, 'no-correction')) return true
  return false
}

const GENERIC: readonly Concept[] = ['room', 'floor', 'wall']

/** The crew's own name of the room: the words of the noun beside it. A plain "room" names nothing. */
function roomName(size: Size, reader: Reader): string | undefined {
  const mark = size.noun?.mark
  if (!mark || !['house-part', 'shower', 'backsplash'].includes(mark.concept) || GENERIC.includes(mark.concept))
    return undefined
  const words = reader.tokens.slice(mark.first, mark.first + mark.count).map((t) => t.text)
  const next = reader.tokens[mark.first + mark.count]
  // "bath 2": a small number right behind a name is part of it, unless a size starts there.
  const numbered =
    next?.kind === 'number' &&
    Number.isInteger(next.value) &&
    next.value < 30 &&
    mark.first + mark.count < size.item.first
  return numbered ? `${words.join(' ')} ${next.text}` : words.join(' ')
}

const shapeless = ({ shape: _, ...room }: Room): Room => room

function withShape(room: Room, marks: readonly Mark[]): Room {
  const [first, second] = room.pieces
  if (first?.sign === 1 && !second && marks.some((m) => m.concept === 'triangle'))
    return { ...room, pieces: [], outline: { told: 'triangle', legsMm: [first.lengthMm, first.widthMm] } }
  if (!second) return shapeless(room)
  for (const [concept, shape] of [
    ['l-shape', 'L'],
    ['u-shape', 'U'],
    ['t-shape', 'T'],
  ] as const)
    if (marks.some((m) => m.concept === concept)) return { ...room, shape }
  return room
}
