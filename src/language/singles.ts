/** Single figures and what each is of: a joint, a thickness, a bag, a box, an area, a temperature. */
import type { Facts, SaidTemperature } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Item } from './items.ts'
import { type Mark, unitAt } from './lexicon.ts'
import { type Quantity, type Reader, toSi } from './measures.ts'
import { type Noun, nounsNear } from './nouns.ts'

export type Draft = { -readonly [K in keyof Facts]: Facts[K] }

/** A figure nothing claimed, or one that a topic of its own may read: with the nouns beside it. */
export type Loose = { readonly q: Quantity; readonly nouns: readonly Noun[] }

export type Singles = {
  readonly loose: readonly Loose[]
  /** Durations ("24 hours") are for the waits. [h] */
  readonly durationsH: readonly number[]
  readonly percents: readonly number[]
}

type Context = {
  readonly reader: Reader
  readonly draft: Draft
  readonly nouns: readonly Noun[]
  readonly q: Quantity
  readonly metric: boolean
  readonly areas: number[]
}

const MOST_SMALL_MM = 32

/** Length in mm of a small figure: a bare fraction is inches, a bare whole number millimetres where the crew is metric. */
export function smallMm(q: Quantity, metric: boolean): number | null {
  if (q.dimension === 'length') return q.si
  if (q.dimension !== 'none') return null
  if (q.token.fraction || q.n < 1) return q.n * 25.4
  return metric || q.n > 2 ? q.n : q.n * 25.4
}

function noun(context: Context, ...concepts: readonly Concept[]): Noun | undefined {
  const first = context.reader.lexicon.locale.nounFirst
  const score = (n: Noun): number => n.distance + (n.after === first ? 0.6 : 0)
  return context.nouns.filter((n) => concepts.includes(n.mark.concept)).toSorted((a, b) => score(a) - score(b))[0]
}

const JOINT: readonly Concept[] = ['joint', 'spacer']
const NOTCH: readonly Concept[] = ['notch', 'trowel', 'square-notch', 'u-notch', 'v-notch']
const TILE: readonly Concept[] = [
  'tile',
  'tile-kind',
  'mosaic',
  'plank',
  'porcelain',
  'ceramic',
  'stone',
  'glass',
  'hexagon',
]

/** Small lengths: joint, notch, thickness. True when claimed. */
function small(context: Context): boolean {
  const { q, draft, metric } = context
  const mm = smallMm(q, metric)
  if (mm !== null && squareTile(context, mm)) return true
  if (mm !== null && mm > MOST_SMALL_MM && q.dimension === 'length' && isWideJoint(context)) {
    draft.jointMm ??= mm
    return true
  }
  if (mm === null || mm <= 0 || mm > MOST_SMALL_MM) return false
  const candidates: [Noun | undefined, (mm: number) => void][] = [
    [
      noun(context, ...JOINT),
      (v) => {
        draft.jointMm ??= v
      },
    ],
    [
      noun(context, ...NOTCH),
      (v) => {
        draft.trowel ??= { shape: 'square', widthMm: v, depthMm: v, spaceMm: v }
      },
    ],
    [
      noun(context, 'thick'),
      (v) => {
        if (draft.tile === undefined || draft.tile.thicknessMm === undefined)
          draft.tile = { lengthMm: 0, widthMm: 0, ...draft.tile, thicknessMm: v }
      },
    ],
  ]
  const first = context.reader.lexicon.locale.nounFirst
  const ranked = candidates
    .filter((c): c is [Noun, (mm: number) => void] => c[0] !== undefined)
    .toSorted(([a], [b]) => a.distance + (a.after === first ? 0.6 : 0) - (b.distance + (b.after === first ? 0.6 : 0)))
  if (ranked.length > 0) {
    ranked[0][1](mm)
    return true
  }
  // "3/8 tile" is its thickness.
  const tile = noun(context, ...TILE)
  if (tile?.after && tile.distance === 1 && (q.token.fraction || q.unit === 'mm') && mm >= 3) {
    draft.tile = { lengthMm: 0, widthMm: 0, ...draft.tile, thicknessMm: mm }
    return true
  }
  return false
}

/** "15 inch joint": no joint is that wide, and the topic says so. */
function isWideJoint(context: Context): boolean {
  const near = noun(context, ...JOINT)
  return near?.after === true && near.distance === 1
}

const LEAST_SQUARE_MM = 12
const MOST_SQUARE_MM = 1250

/** "12 inch tile", "2\" hex": one side of a square tile or across the flats. */
function squareTile(context: Context, mm: number): boolean {
  const { q, draft } = context
  const tile = noun(context, ...TILE)
  if (!tile || tile.distance > 2 || !tile.after || q.unit === null || q.unit === 'ft' || q.unit === 'm') return false
  const fine = mm < LEAST_SQUARE_MM || mm > MOST_SQUARE_MM || q.n < 1 || (q.unit === 'mm' && mm < 40)
  if (fine || (draft.tile && draft.tile.lengthMm > 0)) return false
  draft.tile = { ...draft.tile, lengthMm: mm, widthMm: mm }
  return true
}

const perBetween = (context: Context, near: Noun): boolean => {
  const { reader, q } = context
  const [from, to] = near.after ? [q.last + 1, near.mark.first] : [near.mark.first + near.mark.count, q.first]
  for (let i = from; i < to; i++) {
    // "boxes of 8" ties; "a bag of grout left, 60 sf" does not.
    if (reader.is(i, 'of') && (near.after || i === q.first - 1)) return true
    if (reader.is(i, 'per', 'in-a', 'holds', 'each', 'is', 'cover') || reader.sign(i) === '/') return true
  }
  return false
}

/** Whether a meaning stands within a few tokens of the figure, in its clause. */
function near(context: Context, reach: number, ...concepts: readonly Concept[]): boolean {
  const { reader, q } = context
  for (let i = q.last + 1; i <= q.last + reach; i++) {
    if (/^[,;\n]$/.test(reader.sign(i)) || (reader.number(i) && !reader.number(i)?.spelled)) break
    if (reader.is(i, ...concepts)) return true
  }
  for (let i = q.first - 1; i >= q.first - reach; i--) {
    if (/^[,;\n]$/.test(reader.sign(i)) || (reader.number(i) && !reader.number(i)?.spelled)) break
    if (reader.is(i, ...concepts)) return true
  }
  return false
}

function area(context: Context): boolean {
  const { q, draft } = context
  const m2 = q.si as number
  const box = noun(context, 'box')
  const bag = noun(context, 'bag', 'kit')
  if (anHour(context)) draft.paceM2PerH ??= m2
  else if (box && perBetween(context, box)) draft.boxM2 ??= m2
  else if (bag && perBetween(context, bag) && !near(context, 2, 'used')) draft.coverageM2 ??= m2
  else if (noun(context, 'roll', 'sheet')) return false
  else if (near(context, 3, 'left-to-do')) draft.leftM2 ??= m2
  else if (near(context, 6, 'used')) draft.usedM2 ??= m2
  else context.areas.push(m2 * shareBefore(context))
  return true
}

/** "20 sf an hour", "20 sf/hr" */
function anHour({ q, reader }: Context): boolean {
  const per = reader.is(q.last + 1, 'per', 'the') || reader.sign(q.last + 1) === '/'
  return per && unitAt(reader.lexicon, reader.tokens, q.last + 2)?.unit === 'hour'
}

/** "half of 300 sf" */
function shareBefore({ q, reader }: Context): number {
  const share = reader.is(q.first - 1, 'of') ? reader.number(q.first - 2) : null
  return share?.spelled && share.value > 0 && share.value < 1 ? share.value : 1
}

function mass(context: Context): boolean {
  const { q, draft } = context
  const bag = noun(context, 'bag', 'kit', 'mortar', 'grout', 'powder')
  if (noun(context, 'bag', 'kit') || bag === undefined) draft.bagKg ??= q.si as number
  else draft.powderKg ??= q.si as number
  return true
}

function temperature(context: Context): boolean {
  const { q, draft, reader } = context
  const at = (...concepts: readonly Concept[]): boolean =>
    [-3, -2, -1].some((k) => reader.is(q.first + k, ...concepts)) ||
    [1, 2].some((k) => reader.is(q.last + k, ...concepts))
  const of: SaidTemperature['of'] = at('slab')
    ? 'slab'
    : at('low')
      ? 'low'
      : at('highest')
        ? 'high'
        : at('night')
          ? 'low'
          : 'air'
  draft.temperatures = [...(draft.temperatures ?? []), { c: q.si as number, of }]
  return true
}

/** Bare counts: bags, boxes, pieces a box, areas left in the unit spoken before. */
function bareCount(context: Context): boolean {
  const { q, draft } = context
  if (q.dimension !== 'none') return false
  // Money is no count: the order reads it.
  if (context.reader.sign(q.first - 1) === '$') return false
  const boxes = context.nouns.filter((n) => n.mark.concept === 'box')
  // "how many boxes 8 a box": the box that a "per" ties to the figure comes first.
  const box = boxes.find((n) => perBetween(context, n)) ?? noun(context, 'box')
  if (box && Number.isInteger(q.n) && q.n > 0) {
    if (perBetween(context, box) || near(context, 3, 'holds')) draft.boxTiles ??= q.n
    else draft.haveBoxes ??= q.n
    return true
  }
  if (bareTemperature(context)) return true
  const bag = noun(context, 'bag', 'kit')
  if (bag && q.n >= 0) {
    const parts = partsOf(context)
    if (parts === null) return true
    if (near(context, 4, 'used', 'opened')) draft.usedBags ??= parts
    else if (near(context, 5, 'have', 'left', 'on-hand', 'will-do', 'enough')) draft.haveBags ??= parts
    else draft.bagsToMix ??= parts
    return true
  }
  return false
}

const isShare = (n: number | undefined): n is number => n !== undefined && n > 0 && n < 1

/** "2 half bags" is one bag; the half itself was counted with its figure (null). */
function partsOf({ q, reader }: Context): number | null {
  const [before, after] = [reader.number(q.first - 1), reader.number(q.last + 1)]
  if (q.token.spelled && isShare(q.n) && before && Number.isInteger(before.value)) return null
  return after?.spelled && isShare(after.value) ? q.n * after.value : q.n
}

/** "high 70 low 45", "slab 62", "58 out": degrees nobody wrote. */
function bareTemperature(context: Context): boolean {
  const { q, reader } = context
  if (q.token.fraction || q.token.spelled || q.n > 125) return false
  const before = [1, 2].some(
    (k) => reader.is(q.first - k, 'slab', 'low', 'highest', 'temperature-word') && !reader.number(q.first - 1),
  )
  const after = reader.is(q.last + 1, 'outside-air', 'night', 'low', 'highest')
  const at =
    q.n >= 35 &&
    reader.is(q.first - 1, 'at') &&
    context.nouns.length === 0 &&
    !reader.is(q.last + 1, 'per', 'time-word')
  if (!before && !after && !at) return false
  return temperature({ ...context, q: { ...q, unit: 'degree', dimension: 'temperature', si: toSi(q.n, 'degree') } })
}

const LEAST_LOOSE_FEET = 20

/** "80 feet to go", "mezcla para 130 pies": said of stuff that goes by the area, feet are square feet. */
function looseFeet(context: Context): boolean {
  const { q, draft, reader } = context
  if (q.unit !== 'ft' || q.compound || q.n < LEAST_LOOSE_FEET) return false
  const m2 = q.n * 0.09290304
  if (near(context, 3, 'left-to-do')) draft.leftM2 ??= m2
  else if (reader.is(q.first - 1, 'for') && stuffNamed(reader)) context.areas.push(m2)
  else return false
  return true
}

const STUFF: readonly Concept[] = ['mortar', 'grout', 'bag', 'tile', 'box']

const stuffNamed = (reader: Reader): boolean =>
  reader.tokens.some((_, i) => reader.is(i, ...STUFF)) &&
  !reader.tokens.some((_, i) => reader.is(i, 'linear', 'perimeter', 'tape'))

/** Reads the single figures of a message into the draft. */
export function readSingles(
  items: readonly Item[],
  reader: Reader,
  marks: readonly Mark[],
  draft: Draft,
  metric: boolean,
): Singles {
  const loose: Loose[] = []
  const durationsH: number[] = []
  const percents: number[] = []
  const areas: number[] = []
  let areaUnitM2: number | null = null
  for (const item of items) {
    const [q] = item.parts
    if (item.parts.length > 1 || reader.is(q.first - 1, 'unit-number')) continue
    const context: Context = { reader, draft, nouns: nounsNear(item, reader, marks), q, metric, areas }
    const taken = readOne(context, durationsH, percents, areaUnitM2)
    if (q.dimension === 'area') areaUnitM2 = (q.si as number) / q.n
    if (!taken) loose.push({ q, nouns: context.nouns })
  }
  // "used 3 bags on 130 sf": the area is what they went on.
  if (draft.usedBags !== undefined && draft.usedM2 === undefined && areas.length > 0) draft.usedM2 = areas.shift()
  if (areas.length > 0) draft.areaM2 = areas.reduce((a, b) => a + b, 0)
  return { loose, durationsH, percents }
}

function readOne(context: Context, durationsH: number[], percents: number[], areaUnitM2: number | null): boolean {
  const { q, draft } = context
  switch (q.dimension) {
    case 'area':
      return area(context)
    case 'mass':
      return mass(context)
    case 'temperature':
      return temperature(context)
    case 'time':
      // "65 day 45 night" is no time of 65 days.
      if (q.unit === 'day' && q.n >= 30 && context.reader.word(q.last) === 'day')
        return temperature({
          ...context,
          q: { ...q, unit: 'degree', dimension: 'temperature', si: toSi(q.n, 'degree') },
        })
      durationsH.push(q.si as number)
      return true
    case 'percent':
      percents.push(q.n)
      if (noun(context, 'spare') || near(context, 3, 'spare')) draft.sparePct ??= q.n
      return true
    case 'length':
      return small(context) || looseFeet(context)
    case 'none': {
      if (small(context) || bareCount(context)) return true
      // "120 sf done, 40 left": a bare figure left is in the unit of the area before it.
      const rest =
        near(context, 2, 'left-to-do', 'left') ||
        (draft.usedBags !== undefined && near(context, 2, 'other-way', 'plus'))
      if (areaUnitM2 !== null && rest && !q.token.fraction && q.n >= 3) {
        draft.leftM2 ??= q.n * areaUnitM2
        return true
      }
      return false
    }
    default:
      return false
  }
}
