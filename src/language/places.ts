/** Where a hole or a bite lies: "4 ft from the left, 2 from the bottom", "top right corner". */
import type { Place } from '../facts.ts'
import type { UnitName } from '../units/names.ts'
import type { Item } from './items.ts'
import type { Mark } from './lexicon.ts'
import { type Reader, toSi } from './measures.ts'

const SIDES = [
  ['left-side', 'left'],
  ['right-side', 'right'],
  ['top-side', 'top'],
  ['bottom-side', 'bottom'],
] as const
type SideName = (typeof SIDES)[number][1]
/** A side and the last token that names it. */
type SideTold = { readonly side: SideName; readonly last: number }
const FIELD = { left: 'fromLeftMm', right: 'fromRightMm', top: 'fromTopMm', bottom: 'fromBottomMm' } as const

/** The place told behind an item, up to the next size; null when none is told. */
export function placeOf(item: Item, reader: Reader, marks: readonly Mark[], bare: UnitName = 'ft'): Place | null {
  const end = endOfStretch(item, reader)
  const place: { -readonly [K in keyof Place]: Place[K] } = {}
  const taken = new Set<number>()
  let unit = item.parts[0].unit ?? bare
  for (let i = item.last + 1; i < end; i++) {
    const quantity = reader.quantity(i)
    if (!quantity) continue
    const told = upFrom(reader, quantity.last + 1) ?? sideAfter(reader, quantity.last + 1)
    if (told) {
      unit = quantity.unit ?? unit
      place[FIELD[told.side]] = quantity.si ?? toSi(quantity.n, unit)
      for (let k = quantity.first; k <= told.last; k++) taken.add(k)
    }
    i = quantity.last
  }
  const behind = marks.filter((m) => m.first > item.last && m.first < end && !taken.has(m.first))
  if (Object.keys(place).length === 0) return sidesOf(behind)
  const first = Math.min(...taken)
  // "centered 4 ft from the left": to its centre; "4 ft from the left, centered": in the middle the other way.
  if (behind.some((m) => m.concept === 'center' && m.first < first)) place.toCentre = true
  const against = sidesOf(behind)?.side
  return against ? { ...place, side: against } : place
}

/** The place told before an item, back to the size before it: "on the east wall a 2x6 bump out". */
export function placeBefore(item: Item, reader: Reader, marks: readonly Mark[]): Place | null {
  let from = item.first
  const parts = (i: number): boolean => /^[,;\n+]$/.test(reader.sign(i)) || reader.is(i, 'plus', 'minus', 'and')
  while (from > 0 && !parts(from - 1) && !isFigure(reader, from - 1)) from--
  return sidesOf(marks.filter((m) => m.first >= from && m.first < item.first))
}

const isFigure = (reader: Reader, i: number): boolean => {
  const token = reader.number(i)
  return token !== null && !token.spelled
}

/** A corner, a side or the middle, by its words alone. */
function sidesOf(marks: readonly Mark[]): Place | null {
  const here = marks.map((m) => m.concept)
  if (here.includes('center')) return { centred: true }
  const found = SIDES.filter(([concept]) => here.includes(concept)).map(([, side]) => side)
  const vertical = found.find((s) => s === 'top' || s === 'bottom')
  const horizontal = found.find((s) => s === 'left' || s === 'right')
  if (vertical && horizontal) return { corner: `${vertical}-${horizontal}` as Place['corner'] }
  const side = vertical ?? horizontal
  return side && !here.includes('corner') ? { side } : null
}

function endOfStretch(item: Item, reader: Reader): number {
  for (let i = item.last + 1; i < reader.tokens.length; i++) {
    if (/^[;\n+]$/.test(reader.sign(i)) || reader.is(i, 'minus', 'plus')) return i
    if (reader.sign(i) === 'x' || reader.is(i, 'by')) return Math.max(item.last + 1, i - 1)
  }
  return reader.tokens.length
}

/** "6 up", "2 ft down": counted from the other side, unless a wall is named behind it. */
function upFrom(reader: Reader, i: number): SideTold | null {
  const side = reader.is(i, 'top-side') ? 'bottom' : reader.is(i, 'bottom-side') ? 'top' : null
  return side && !reader.is(i + 1, 'from', 'of', 'top-side', 'bottom-side') ? { side, last: i } : null
}

function sideAfter(reader: Reader, from: number): SideTold | null {
  // "6 up from the bottom" is from the bottom.
  if (reader.is(from, 'top-side', 'bottom-side') && reader.is(from + 1, 'from', 'of')) from++
  for (let i = from; i < from + 5 && i < reader.tokens.length; i++) {
    if (reader.number(i) && !reader.number(i)?.spelled) return null
    for (const [concept, side] of SIDES) if (reader.is(i, concept)) return { side, last: i }
  }
  return null
}
