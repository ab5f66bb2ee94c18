/** Quantities that belong together: "12' x 14'", "30 x 72 inch", "12ft one way 350cm the other", "24x24x3/8". */
import { type Quantity, type Reader, toSi } from './measures.ts'
import type { NumberToken, Token } from './tokens.ts'

/** One figure, or two or three that make a size. */
export type Item = {
  readonly parts: readonly Quantity[]
  /** Tokens it takes, both ends in. */
  readonly first: number
  readonly last: number
}

export const isSize = (item: Item): boolean => item.parts.length > 1

/** "12x24 1/8 joint" is a tile and a joint, not 24 1/8: the mixed number is cut where its fraction has a noun of its own. */
export function splitMixed(tokens: readonly Token[], reader: Reader): readonly Token[] {
  const isCut = (token: Token, i: number): boolean =>
    token.kind === 'number' && token.whole !== null && isTwo(token, i, reader)
  if (!tokens.some(isCut)) return tokens
  return tokens.flatMap((token, i) => (token.kind === 'number' && isCut(token, i) ? cut(token) : [token]))
}

const FINE_PARTS = [1 / 16, 1 / 8, 3 / 16]
const FRACTION_NOUNS = [
  'offset',
  'joint',
  'spacer',
  'notch',
  'trowel',
  'thick',
  'porcelain',
  'ceramic',
  'stone',
  'glass',
  'square-notch',
  'u-notch',
  'v-notch',
  'plywood',
  'cement-board',
  'fibre-cement',
  'cork',
  'foam',
  'sheet',
] as const

function isTwo(token: NumberToken, i: number, reader: Reader): boolean {
  const whole = token.whole as number
  const inPair = reader.sign(i - 1) === 'x' || reader.is(i - 1, 'by')
  let next = i + 1
  const unit = reader.unit(next, token)
  if (unit) next += unit.count
  if (reader.is(next, 'of')) next++
  if (reader.is(next, ...FRACTION_NOUNS)) return inPair || whole >= 3
  // "self leveler 10x12 1/4 in": how deep it is poured.
  if (inPair && unit && reader.tokens.some((_, k) => reader.is(k, 'leveller'))) return true
  const other = reader.number(i - 2)
  // "18x18 1/4": square tile and a joint.
  if (inPair && other?.value === whole && whole >= 12 && Math.abs(token.value - whole - 1 / 4) < 1e-9) return true
  return inPair && other !== null && other.whole === null && !other.fraction && FINE_PARTS.includes(token.value - whole)
}

function cut(token: NumberToken): NumberToken[] {
  const [whole] = token.text.split(/\s/)
  const rest = token.text.slice(whole.length).trimStart()
  const middle = token.to - rest.length
  return [
    {
      ...token,
      text: whole,
      to: token.from + whole.length,
      value: token.whole as number,
      fraction: false,
      whole: null,
    },
    { ...token, text: rest, from: middle, value: token.value - (token.whole as number), whole: null },
  ]
}

/** "11-6 x 9-4" is feet and inches; a dash between two whole pairs is a minus. In a list of sides every dash joins. */
export function joinDashes(quantities: readonly Quantity[], reader: Reader, listed = false): Quantity[] {
  const out: Quantity[] = []
  for (let k = 0; k < quantities.length; k++) {
    const [feet, inches] = [quantities[k], quantities[k + 1]]
    if (inches && isFeetDashInches(feet, inches, out, reader, listed)) {
      const mm = feet.n * 304.8 + inches.n * 25.4
      out.push({
        ...feet,
        n: mm / 304.8,
        unit: 'ft',
        dimension: 'length',
        si: mm,
        last: inchesEnd(inches, reader),
        compound: true,
      })
      k++
    } else out.push(feet)
  }
  return out
}

/** The letter of "6 l" is the wall's way, no litre. */
const inchesEnd = (inches: Quantity, reader: Reader): number =>
  inches.unit !== null && inches.unit !== 'in' && isWay(inches.last, reader) ? inches.last - 1 : inches.last

function isFeetDashInches(
  feet: Quantity,
  inches: Quantity,
  before: readonly Quantity[],
  reader: Reader,
  listed: boolean,
): boolean {
  const tight =
    reader.sign(feet.last + 1) === '-' && reader.tokens[inches.first].from - reader.tokens[feet.last].to === 1
  if (!tight || inches.first !== feet.last + 2) return false
  if (
    feet.unit !== null ||
    (inches.unit !== null && inches.unit !== 'in' && !isWay(inches.last, reader)) ||
    inches.n >= 12 ||
    !Number.isInteger(feet.n)
  )
    return false
  if (listed) return true
  const follows = connects(reader, inches.last + 1) || isWay(inches.last, reader) || isWay(inches.last + 1, reader)
  const precedes = connects(reader, feet.first - 1)
  // "12x14-3x5": a dash with a pair on either hand takes away, unless the pair before it is dashed too.
  if (precedes && follows) return before.at(-1)?.compound === true
  return precedes || follows
}

/** A direction of a walk: "12-6 r 8 d". */
const isWay = (i: number, reader: Reader): boolean =>
  reader.word(i) in reader.lexicon.locale.wayLetters ||
  reader.is(i, 'right-side', 'left-side', 'top-side', 'bottom-side')

const connects = (reader: Reader, i: number): boolean =>
  reader.sign(i) === 'x' || reader.sign(i) === '*' || reader.is(i, 'by')

/** Groups quantities into sizes and single figures, in order. */
export function itemsOf(quantities: readonly Quantity[], reader: Reader): Item[] {
  const items: Item[] = []
  for (let k = 0; k < quantities.length; ) {
    const parts = [quantities[k]]
    while (
      parts.length < 3 &&
      k + parts.length < quantities.length &&
      belongs(parts, quantities[k + parts.length], reader)
    )
      parts.push(quantities[k + parts.length])
    k += parts.length
    items.push({ parts: shareUnits(parts), first: parts[0].first, last: lastToken(parts, reader) })
  }
  return items
}

const SIDE_WORDS = ['wide', 'long', 'high', 'deep'] as const

/** The figure's own side words ("14 long") are part of the size. */
function lastToken(parts: readonly Quantity[], reader: Reader): number {
  let last = (parts.at(-1) as Quantity).last
  if (parts.length > 1) while (reader.is(last + 1, ...SIDE_WORDS)) last++
  return last
}

function belongs(parts: readonly Quantity[], next: Quantity, reader: Reader): boolean {
  const previous = parts.at(-1) as Quantity
  if (previous.dimension !== 'length' && previous.dimension !== 'none') return false
  if (next.dimension !== 'length' && next.dimension !== 'none') return false
  let i = previous.last + 1
  // "12' strong by 14": a hair over or under changes nothing that is counted.
  while (reader.is(i, 'strong', 'shy') && !reader.number(i)) i++
  const sided = reader.is(i, ...SIDE_WORDS)
  while (reader.is(i, ...SIDE_WORDS)) i++
  if (connects(reader, i)) {
    i++
    while (reader.is(i, 'about', 'strong', 'shy')) i++
    return i === next.first
  }
  // "length 14 width 12"
  const named =
    parts.length === 1 &&
    !reader.is(previous.last + 1, 'tile', 'piece', 'row') &&
    reader.is(previous.first - 1, ...SIDE_WORDS) &&
    reader.is(next.first - 1, ...SIDE_WORDS)
  if (named && next.first - previous.last <= 4) return true
  // "12 wide 14 long", "14 feet long and 12 feet wide"
  if (sided && parts.length === 1) {
    while (reader.sign(i) === ',' || reader.is(i, 'and', 'with')) i++
    return i === next.first && reader.is(next.last + 1, ...SIDE_WORDS)
  }
  return parts.length === 1 && reader.is(i, 'one-way') && hasOtherWay(next, reader) && between(i, next.first, reader)
}

function hasOtherWay(next: Quantity, reader: Reader): boolean {
  for (let i = next.last + 1; i <= next.last + 3; i++) if (reader.is(i, 'other-way')) return true
  return false
}

function between(from: number, to: number, reader: Reader): boolean {
  for (let i = from; i < to; i++)
    if (!reader.is(i, 'one-way', 'and', 'the', 'by') && reader.sign(i) !== ',') return false
  return true
}

/** "350 x 420 cm": the one unit that is written goes for both. A third figure, the thickness, keeps to itself. */
function shareUnits(parts: readonly Quantity[]): Quantity[] {
  if (parts.length < 2) return [...parts]
  const [a, b, ...rest] = parts
  const unit = b.unit ?? a.unit ?? (rest[0]?.unit === 'mm' || rest[0]?.unit === 'cm' ? rest[0].unit : null)
  if (unit === null || (a.unit !== null && b.unit !== null)) return [...parts]
  const give = (q: Quantity): Quantity =>
    q.unit === null ? { ...q, unit, dimension: 'length', si: toSi(q.n, unit) } : q
  return [give(a), give(b), ...rest]
}
