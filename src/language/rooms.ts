/** From sizes with roles to rooms: sums, cut-outs, several alike, their names and shapes. */
import type { Piece, Place, Room } from '../facts.ts'
import type { Problem, Span } from '../problem.ts'
import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'
import { placeBefore, placeOf } from './places.ts'
import {
  type Bare,
  bareOf,
  besideRoom,
  curvedSides,
  type DecimalHabit,
  isOpening,
  openingMm,
  type RoomNote,
  readSides,
} from './room-sides.ts'
import type { Size } from './sizes.ts'

export type RoomsHeard = {
  readonly rooms: readonly Room[]
  readonly notes: readonly RoomNote[]
  readonly problem: Problem | null
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
  let bare: Bare = null
  for (const size of inOrder(sizes)) {
    const opens = size.role === 'opening' && rooms.at(-1)?.upright === true
    const taken = size.role === 'hole' || size.role === 'bump' || opens
    if (size.role !== 'room' && !taken) continue
    const sides = (taken ? besideRoom(size, bare, reader) : null) ?? readSides(size, metric, habit)
    for (const fresh of sides.notes)
      if (!notes.some((n) => n.said === fresh.said && n.key === fresh.key)) notes.push(fresh)
    unclear ??= sides.unclear
    const piece = { lengthMm: sides.mm[0], widthMm: sides.mm[1] }
    if (taken)
      addPiece(rooms, size, curvedSides(size, openingMm(size, piece, reader)), reader, marks, bare?.unit ?? 'ft')
    else if (size.curve) rooms.push(roundRoom(size, curvedSides(size, piece)))
    else {
      addRoom(rooms, size, wallInInches(size, piece, reader), reader, lastEnd)
      bare = bareOf(size, sides.mm, metric)
    }
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

const LEAST_WALL_INCHES = 30

/** "the back wall 60x96": no wall is 96 ft high, so a bare pair that large is in inches. */
function wallInInches(size: Size, sides: { lengthMm: number; widthMm: number }, reader: Reader): typeof sides {
  const [a, b] = size.item.parts
  const large = Math.max(a.n, b.n) >= LEAST_WALL_INCHES && Math.min(a.n, b.n) >= LEAST_INCHES_HIGH
  const inFeet = Math.abs(sides.lengthMm - a.n * 304.8) < 1e-6 && Math.abs(sides.widthMm - b.n * 304.8) < 1e-6
  const bare = a.unit === null && b.unit === null
  return isUpright(size, reader) && large && inFeet && bare ? { lengthMm: a.n * 25.4, widthMm: b.n * 25.4 } : sides
}

const LEAST_INCHES_HIGH = 12
const UPRIGHT: readonly Concept[] = ['backsplash', 'wall']
const SIDES: readonly Concept[] = ['top-side', 'bottom-side', 'left-side', 'right-side']

/** A wall by its noun, or by the phrase that names which one: "the back wall 60x96". */
const isUpright = ({ noun, item: { first } }: Size, reader: Reader): boolean =>
  (noun !== null && UPRIGHT.includes(noun.mark.concept)) ||
  SIDES.some((side) => reader.is(first - 1, side) && reader.is(first - 2, side))

/** "a half round bay on the north wall of a 12x14": what is told before the first room is of that room. */
function inOrder(sizes: readonly Size[]): readonly Size[] {
  const first = sizes.findIndex((s) => s.role === 'room')
  if (first <= 0) return sizes
  const room = sizes[first]
  return [room, ...sizes.slice(0, first), ...sizes.slice(first + 1)]
}

function roundRoom(size: Size, { lengthMm, widthMm }: { lengthMm: number; widthMm: number }): Room {
  const curve = size.curve?.name ?? 'round'
  return { count: 1, pieces: [], outline: { told: 'round', curve, widthMm: lengthMm, depthMm: widthMm } }
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
  const upright = isUpright(size, reader)
  // A lone "u" before a size is its shape, not the crew's "you".
  const shape = reader.word(size.item.first - 1) === 'u' ? { shape: 'U' as const } : {}
  rooms.push({ ...(name ? { name } : {}), count, pieces: [piece], ...shape, ...(upright ? { upright: true } : {}) })
}

/** What stands on a floor or opens in a wall, rather than being bitten out of its edge. */
const STANDING: readonly Concept[] = ['island', 'outlet', 'window-word', 'niche']

const stands = (size: Size, reader: Reader): boolean =>
  size.role === 'opening' ||
  size.curve?.name === 'round' ||
  [-3, -2, -1, 0].some((k) => reader.is(size.item.first + k, ...STANDING)) ||
  [1, 2, 3].some((k) => reader.is(size.item.last + k, ...STANDING))

/** What is left out of a room, or stands outside one of its walls. */
function addPiece(
  rooms: Room[],
  size: Size,
  sides: { lengthMm: number; widthMm: number },
  reader: Reader,
  marks: readonly Mark[],
  bare: UnitName,
): void {
  const previous = rooms.at(-1)
  const outside = size.role === 'bump'
  // A wall's openings are placed in inches, or centimetres, as they are measured.
  const unit = previous?.upright && isOpening(size, reader) && bare === 'ft' ? 'in' : bare
  const place = placeOf(size.item, reader, marks, unit) ?? wordsBefore(size, reader, marks)
  const name = roomName(size, reader)
  const piece: Piece = {
    sign: outside ? 1 : -1,
    ...sides,
    ...(outside ? { outside: true } : { kind: stands(size, reader) ? 'island' : 'bite' }),
    ...(size.curve ? { curve: size.curve.name } : {}),
    ...(outside ? deepSide(size, reader) : {}),
    ...(place ? { place } : {}),
    ...(name ? { name } : {}),
  }
  const n = alike(size, reader)
  const pieces = Array.from({ length: n }, (_, k) => (n === 1 ? piece : { ...piece, nth: [k, n] as const }))
  if (previous) rooms[rooms.length - 1] = { ...previous, pieces: [...previous.pieces, ...pieces] }
  else rooms.push({ count: 1, pieces })
}

/** "two 2x2 posts", "4 columns 1x1": how many alike are left out. */
function alike(size: Size, reader: Reader): number {
  if (size.count !== undefined) return size.count
  const { first, last } = size.item
  const counted = (i: number): number | null => {
    const n = reader.number(i)?.value
    return n !== undefined && isCount(n) && n <= MOST_ALIKE ? n : null
  }
  if (reader.is(last + 1, 'column-word')) return counted(first - 1) ?? 1
  return reader.is(first - 1, 'column-word') ? (counted(first - 2) ?? 1) : 1
}

/** Curves and what stands outside are often placed before they are measured: "top left corner rounded, 2 ft radius". */
const wordsBefore = (size: Size, reader: Reader, marks: readonly Mark[]): Place | null =>
  size.curve || size.role === 'bump' ? placeBefore(size.item, reader, marks) : null

/** Which side is the depth, where it was said. */
function deepSide({ item, curve }: Size, reader: Reader): Pick<Piece, 'deep'> {
  const [a, b] = item.parts
  if (curve || !b) return {}
  if (reader.is(b.last + 1, 'deep') || reader.is(a.last + 1, 'wide', 'long')) return { deep: 'width' }
  return reader.is(a.last + 1, 'deep') || reader.is(b.last + 1, 'wide', 'long') ? { deep: 'length' } : {}
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
