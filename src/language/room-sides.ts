/** The sides of rooms and of what is taken from them or put beside them: which unit a bare figure is in. */

import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import { type Quantity, type Reader, toSi } from './measures.ts'
import { roomMm } from './side-mm.ts'
import type { Size } from './sizes.ts'

/** How a bare decimal in a room's size is read: "12.6" may be feet and tenths or feet and inches. */
export type DecimalHabit = 'tenths' | 'inches' | null

/** What was decided on the way, to be said: the key of a phrase with the words it was about. */
export type RoomNote = {
  readonly key:
    | 'read-inches'
    | 'read-half'
    | 'read-quarter'
    | 'read-as-unit'
    | 'read-square'
    | 'bite-corner'
    | 'centred'
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

/** The figures of a room as they were written: what stands bare beside it is in the same unit. */
export type Bare = { readonly unit: UnitName; readonly mm: readonly [number, number] } | null

export type SidesRead = {
  readonly mm: readonly [number, number]
  readonly notes: readonly RoomNote[]
  readonly unclear: Quantity | null
}

/** Both sides of a size; of a curve told by one figure, that figure for both. */
export function readSides(size: Size, metric: boolean, habit: DecimalHabit): SidesRead {
  const [a, b = a] = size.item.parts
  const larger = Math.max(a.n, b.n)
  const sides = [sideMm(a, larger, metric, habit), sideMm(b, larger, metric, habit)] as const
  return {
    mm: [sides[0].mm, sides[1].mm],
    notes: notesOf(size, sides),
    unclear: sides[0].unclear ?? sides[1].unclear,
  }
}

/** "a 2 ft column": told by one side. */
const squareNote = (q: Quantity): RoomNote => ({ key: 'read-square', said: q.token.text })

/** What was decided about a size: one note where both sides were read in the same unit. */
function notesOf({ item, curve }: Size, sides: readonly Side[]): RoomNote[] {
  const told = sides.flatMap((side) => (side.note ? [side.note] : []))
  if (item.parts.length === 1 && !curve) return [...told.slice(0, 1), squareNote(item.parts[0])]
  const [a, b] = told
  const alike = b !== undefined && a.key === 'read-as-unit' && b.key === 'read-as-unit' && a.unit === b.unit
  if (!alike || curve) return told
  return [{ ...a, said: `${item.parts[0].token.text}x${item.parts[1].token.text}` }]
}

export function bareOf({ item }: Size, mm: readonly [number, number], metric: boolean): Bare {
  const [a, b] = item.parts
  const larger = Math.max(a.n, b.n)
  const unit = a.unit && !a.compound ? a.unit : a.unit ? 'ft' : roomMm(a, larger, metric).as
  return unit === 'said' ? null : { unit, mm }
}

/** No bite or island is narrower: such a figure is in feet after all. [mm] */
const LEAST_BESIDE_MM = 250
/** "10x12 less 24x36" is told in inches; smaller figures may as well be a slip. */
const INCHES_BESIDE = [12, 24] as const

/** Bare figures of what is taken from a room are in the unit of the room, where that makes sense; else in inches or feet. */
export function besideRoom(size: Size, room: Bare, reader: Reader): SidesRead | null {
  const [a, b = a] = size.item.parts
  if (room === null || a.unit !== null || b.unit !== null || isOpening(size, reader)) return null
  const inUnit = (unit: UnitName) => [toSi(a.n, unit), toSi(b.n, unit)] as const
  const fits = ([p, q]: readonly [number, number]): boolean =>
    Math.min(p, q) <= Math.min(...room.mm) + 1 && Math.max(p, q) <= Math.max(...room.mm) + 1
  const large = (mm: readonly [number, number]): boolean => Math.max(...mm) >= LEAST_BESIDE_MM
  const inches = Math.min(a.n, b.n) >= INCHES_BESIDE[0] && Math.max(a.n, b.n) >= INCHES_BESIDE[1]
  const told = inches || size.curve !== undefined
  const decimals = a.token.decimals + b.token.decimals > 0
  let unit = room.unit
  if (unit === 'ft') {
    // "10x12 less 24x36": more feet than the room has.
    if (decimals || fits(inUnit('ft')) || !told || !fits(inUnit('in'))) return null
    unit = 'in'
  } else if (unit !== 'm' && !large(inUnit(unit)) && fits(inUnit('ft'))) unit = 'ft'
  else if (!fits(inUnit(unit))) return null
  const said = size.item.parts.length > 1 ? `${a.token.text}x${b.token.text}` : a.token.text
  const square = size.item.parts.length === 1 && !size.curve ? [squareNote(a)] : []
  return { mm: inUnit(unit), notes: [{ key: 'read-as-unit', said, unit }, ...square], unclear: null }
}

/** Width along the wall and depth from it, by the radius or by how far it goes across. */
export function curvedSides(size: Size, sides: { lengthMm: number; widthMm: number }): typeof sides {
  if (!size.curve) return sides
  const { name, radius } = size.curve
  if (size.item.parts.length > 1) return sides
  const mm = sides.lengthMm
  const across = radius && (name === 'round' || name === 'arc') ? 2 * mm : mm
  return { lengthMm: across, widthMm: name === 'arc' ? across / 2 : across }
}

const OPENINGS: readonly Concept[] = ['outlet', 'window-word', 'niche']
/** An outlet, a niche or a window told by bare figures from this on is told in inches. */
const LEAST_INCHES = 8

/** The sides of an opening: a bare outlet is in inches, a bare window or niche by its size. [mm] */
export function openingMm(size: Size, sides: { lengthMm: number; widthMm: number }, reader: Reader): typeof sides {
  const [a, b = a] = size.item.parts
  const bare = a.unit === null && b.unit === null
  const inInches = isBeside(size, reader, 'outlet') || (isOpening(size, reader) && Math.max(a.n, b.n) >= LEAST_INCHES)
  return bare && inInches ? { lengthMm: a.n * 25.4, widthMm: b.n * 25.4 } : sides
}

const isBeside = (size: Size, reader: Reader, concept: Concept): boolean =>
  [1, 2, 3].some((k) => reader.is(size.item.last + k, concept)) ||
  [-2, -1].some((k) => reader.is(size.item.first + k, concept))

export const isOpening = (size: Size, reader: Reader): boolean =>
  size.role === 'opening' || OPENINGS.some((concept) => isBeside(size, reader, concept))
