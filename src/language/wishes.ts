/** What the crew wants of the layout: "hide cuts on the north wall", "full tiles at the door", "any off-cut anywhere". */
import type { WallSide } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Draft } from './figure.ts'
import type { Mark } from './lexicon.ts'
import { type Quantity, type Reader, toSi } from './measures.ts'
import { smallMm } from './small-lengths.ts'

const SIDES: readonly [Concept, WallSide][] = [
  ['left-side', 'left'],
  ['right-side', 'right'],
  ['top-side', 'top'],
  ['bottom-side', 'bottom'],
]
const REACH = 8
/** A door nobody placed is taken to be in the bottom wall, where the drawing is read from. */
const USUAL_DOOR: WallSide = 'bottom'

const sideAt = (reader: Reader, i: number): WallSide | null =>
  SIDES.find(([concept]) => reader.is(i, concept))?.[1] ?? null

/** Every wall that is named, once. */
export const sidesIn = (marks: readonly Mark[]): WallSide[] => [
  ...new Set(marks.flatMap((m) => SIDES.filter(([concept]) => concept === m.concept).map(([, side]) => side))),
]

/** "the door is on the left wall" */
function doorOf(reader: Reader, marks: readonly Mark[]): WallSide | null {
  for (const mark of marks) {
    if (mark.concept !== 'door') continue
    for (let i = mark.first + mark.count; i < mark.first + mark.count + 5; i++) {
      if (/^[;,\n.]$/.test(reader.sign(i)) || reader.number(i) || reader.is(i, 'hide', 'full-tiles')) break
      const side = sideAt(reader, i)
      if (side) return side
    }
  }
  return null
}

type Walls = { readonly walls: WallSide[]; readonly door: boolean; readonly appliance: boolean }

/** The walls named after a wish, up to the next wish or the end of its clause. */
function wallsAfter(from: number, reader: Reader, door: WallSide): Walls {
  const walls: WallSide[] = []
  const found = { door: false, appliance: false }
  for (let i = from; i < Math.min(reader.tokens.length, from + REACH); i++) {
    if (/^[;\n.]$/.test(reader.sign(i)) || reader.is(i, 'hide', 'full-tiles')) break
    const side = reader.is(i, 'door') ? door : sideAt(reader, i)
    found.door ||= reader.is(i, 'door')
    found.appliance ||= reader.is(i, 'appliance')
    if (side && !walls.includes(side)) walls.push(side)
  }
  return { walls, ...found }
}

export function readWishes(
  reader: Reader,
  marks: readonly Mark[],
  quantities: readonly Quantity[],
  metric: boolean,
  draft: Draft,
): void {
  const has = (...concepts: readonly Concept[]): boolean => marks.some((m) => concepts.includes(m.concept))
  const door = doorOf(reader, marks)
  if (door) draft.doorAt = door
  for (const mark of marks) {
    if (mark.concept !== 'hide' && mark.concept !== 'full-tiles') continue
    const named = wallsAfter(mark.first + mark.count, reader, door ?? USUAL_DOOR)
    if (named.door) draft.doorAt ??= USUAL_DOOR
    if (named.walls.length === 0) {
      if (mark.concept === 'hide' && named.appliance && draft.hideAt === undefined) draft.hideBehind = true
      continue
    }
    if (mark.concept === 'hide') draft.hideAt = named.walls
    else draft.fullAt = named.walls
  }
  if (draft.hideAt) delete draft.hideBehind
  // "what do cuts cost me vs any off-cut" holds rules against each other and asks for none of them.
  const compares = has('or', 'cost', 'compared') || (has('any-offcut') && has('fresh-tile', 'trade-rule'))
  if (has('any-offcut') && !compares) draft.reuse = 'any-offcut'
  if (has('fresh-tile') && !compares) draft.reuse = 'fresh-tile'
  if (has('which-way')) draft.anyWay = true
  if (has('carry-round')) draft.roundCorners = true
  if (has('stood-up') && has('wall', 'backsplash', 'shower', 'tub-word', 'carry-round', 'niche'))
    draft.tileStands = true
  if (has('directional')) draft.directional = true
  const measured = measuredSide(reader, marks, quantities, metric)
  if (measured) draft.measuredMm = measured
  const slab = slabJoints(reader, marks, quantities, metric)
  if (slab.length > 0) draft.slabJoints = slab
}

const LEAST_SIDE_MM = 40
const MOST_SIDE_MM = 2500

const COUNTED: readonly Concept[] = [
  'in-a',
  'per',
  'each',
  'box',
  'bag',
  'piece',
  'row',
  'tile',
  'time-word',
  'more-word',
]

/** "tile measures 17 13/16": one side; a pair is a size and read as such. */
function measuredSide(
  reader: Reader,
  marks: readonly Mark[],
  quantities: readonly Quantity[],
  metric: boolean,
): number | null {
  const mark = marks.find((m) => m.concept === 'measured-size')
  if (!mark) return null
  const end = mark.first + mark.count
  const q = quantities.find((one) => one.first >= end && one.first <= end + 2)
  if (!q || (q.dimension !== 'length' && q.dimension !== 'none')) return null
  // "actually 8 in a box": a count, whatever comes after "actual".
  if (q.dimension === 'none' && reader.is(q.last + 1, ...COUNTED)) return null
  const paired = reader.sign(q.last + 1) === 'x' || reader.is(q.last + 1, 'by')
  const mm = q.token.fraction ? (q.si ?? q.n * 25.4) : q.si !== null ? q.si : metric ? q.n : q.n * 25.4
  return paired || smallMm(q, metric) === null || mm < LEAST_SIDE_MM || mm > MOST_SIDE_MM ? null : mm
}

/** "slab joint 8 ft from the left": each with the wall it is measured from. */
function slabJoints(reader: Reader, marks: readonly Mark[], quantities: readonly Quantity[], metric: boolean) {
  const found: { from: WallSide; mm: number }[] = []
  for (const mark of marks) {
    if (mark.concept !== 'slab-joint') continue
    const end = mark.first + mark.count
    for (const q of quantities) {
      if (q.first < end || q.first > end + 14 || (q.dimension !== 'length' && q.dimension !== 'none')) continue
      for (let i = q.last + 1; i <= q.last + 5 && !reader.number(i); i++) {
        const from = sideAt(reader, i)
        if (!from) continue
        found.push({ from, mm: q.si ?? toSi(q.n, metric ? 'm' : 'ft') })
        break
      }
    }
  }
  return found
}
