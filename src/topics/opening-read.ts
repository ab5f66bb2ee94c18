/** What a message says of an opening in a wall: what it is, its size, and about where it is to go. */
import type { Concept } from '../language/concepts.ts'
import type { Quantity } from '../language/measures.ts'
import { alone } from './around/read.ts'
import type { Brief } from './topic.ts'

export type OpeningKind = 'niche' | 'window' | 'outlet' | 'valve'

const KINDS: readonly (readonly [Concept, OpeningKind])[] = [
  ['niche', 'niche'],
  ['window-word', 'window'],
  ['valve-word', 'valve'],
  ['outlet', 'outlet'],
]

export const openingKind = (has: (...concepts: readonly Concept[]) => boolean): OpeningKind | null =>
  KINDS.find(([concept]) => has(concept))?.[1] ?? null

/** A length of an opening: a bare figure is inches, or centimetres and millimetres to a metric crew. [mm] */
export const openingLength = (q: Quantity, metric: boolean): number =>
  q.si ?? (metric ? (q.n >= LEAST_BARE_MM ? q.n : q.n * 10) : q.n * 25.4)
const LEAST_BARE_MM = 300

/** Its width and height, where they were told. [mm] */
export function openingSize({ heard, metric }: Brief): readonly [number, number] | null {
  const size = heard.sizes.find((s) => s.role === 'opening' || s.role === 'hole')
  if (!size || size.item.parts.length < 2) return null
  const [a, b] = size.item.parts
  // "24 high 12 wide"
  const turned = heard.reader.is(a.last + 1, 'high') || heard.reader.is(b.last + 1, 'wide')
  const sides = [openingLength(a, metric), openingLength(b, metric)] as const
  return turned ? [sides[1], sides[0]] : sides
}

/** Where on an axis: an edge, or the centre, from the low end or from the high one. [mm] */
export type Spot = { readonly mm: number; readonly of: 'low' | 'high' | 'centre'; readonly from: 'low' | 'high' }
export type Wanted = { readonly x: Spot | null; readonly y: Spot | null; readonly centredX: boolean }

const FLOOR_WORDS: readonly Concept[] = ['floor', 'tub-word', 'bottom-side', 'ledger', 'pan', 'slab']
const REACH = 4

/** Concepts beside a figure up to the next figure or comma, each with its token; words claimed by another figure are none of its. */
function beside(brief: Brief, q: Quantity, step: 1 | -1, claimed: ReadonlySet<number>): Map<Concept, number> {
  const { reader, marks } = brief.heard
  const found = new Map<Concept, number>()
  let i = step === 1 ? q.last + 1 : q.first - 1
  for (let k = 0; k < REACH; k++, i += step) {
    if (reader.number(i) || /^[,;\n]$/.test(reader.sign(i)) || claimed.has(i)) break
    for (const mark of marks)
      if (i >= mark.first && i < mark.first + mark.count && !found.has(mark.concept)) found.set(mark.concept, i)
  }
  return found
}

const hasAny = (map: ReadonlyMap<Concept, number>, concepts: readonly Concept[]): boolean =>
  concepts.some((c) => map.has(c))

type Axis = 'x' | 'y'
type Read = { readonly axis: Axis; readonly edge: 'low' | 'high'; readonly from: 'low' | 'high'; readonly at: number }

/** "24 from the left", "42 up", "6 down from the top": what stands behind a figure. */
function readBehind(after: ReadonlyMap<Concept, number>): Read | null {
  const at = (concept: Concept): number | undefined => after.get(concept)
  const left = at('left-side')
  const right = at('right-side')
  if (left !== undefined) return { axis: 'x', edge: 'low', from: 'low', at: left }
  if (right !== undefined) return { axis: 'x', edge: 'high', from: 'high', at: right }
  const top = at('top-side')
  if (top !== undefined && after.has('from') && (at('from') as number) < top)
    return { axis: 'y', edge: 'high', from: 'high', at: top }
  if (hasAny(after, FLOOR_WORDS) || top !== undefined) return { axis: 'y', edge: 'low', from: 'low', at: top ?? -1 }
  return null
}

/** "bottom around 42", "top at 66", "left edge at 24". */
function readBefore(before: ReadonlyMap<Concept, number>): Read | null {
  const told: readonly (readonly [Concept, Omit<Read, 'at'>])[] = [
    ['bottom-side', { axis: 'y', edge: 'low', from: 'low' }],
    ['top-side', { axis: 'y', edge: 'high', from: 'low' }],
    ['left-side', { axis: 'x', edge: 'low', from: 'low' }],
    ['right-side', { axis: 'x', edge: 'high', from: 'high' }],
    ['center', { axis: 'y', edge: 'low', from: 'low' }],
  ]
  const found = told.find(([concept]) => before.has(concept))
  return found ? { ...found[1], at: before.get(found[0]) as number } : null
}

/** "bottom around 42 in", "24 from the left", "centered at 48 up", "6 off the right wall". */
export function wantedSpot(brief: Brief): Wanted {
  const { heard, metric } = brief
  const spots: { x: Spot | null; y: Spot | null } = { x: null, y: null }
  const claimed = new Set<number>()
  for (const q of alone(heard)) {
    if ((q.dimension !== 'length' && q.dimension !== 'none') || q.token.spelled) continue
    const before = beside(brief, q, -1, claimed)
    const after = beside(brief, q, 1, claimed)
    const others =
      hasAny(before, ['joint', 'thick']) || heard.reader.is(q.last + 1, 'joint', 'thick', 'tile', 'high', 'wide')
    const read = others ? null : (readBehind(after) ?? readBefore(before))
    if (!read) continue
    if (read.at >= 0) claimed.add(read.at)
    const centre = before.has('center')
    spots[read.axis] ??= { mm: openingLength(q, metric), of: centre ? 'centre' : read.edge, from: read.from }
  }
  return { ...spots, centredX: spots.x === null && heard.has('center') }
}
