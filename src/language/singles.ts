/** Single figures and what each is of: a joint, a thickness, a bag, a box, an area, a temperature. */
import type { SaidTemperature } from '../facts.ts'
import type { Concept } from './concepts.ts'
import { type Draft, type Figure, near, noun, perBetween } from './figure.ts'
import type { Item } from './items.ts'
import { type Mark, unitAt } from './lexicon.ts'
import { type Quantity, type Reader, toSi } from './measures.ts'
import { type Noun, nounsNear } from './nouns.ts'
import { small } from './small-lengths.ts'

/** A figure nothing claimed, or one that a topic of its own may read: with the nouns beside it. */
export type Loose = { readonly q: Quantity; readonly nouns: readonly Noun[] }

export type Singles = {
  readonly loose: readonly Loose[]
  /** Durations ("24 hours") are for the waits. [h] */
  readonly durationsH: readonly number[]
  readonly percents: readonly number[]
}

/** "8 m2 per liter": what a litre covers is no floor. */
function perVolume({ q, reader }: Figure): boolean {
  const isPer = reader.is(q.last + 1, 'per', 'each') || reader.sign(q.last + 1) === '/'
  const unit = isPer ? unitAt(reader.lexicon, reader.tokens, q.last + 2)?.unit : undefined
  return unit === 'l' || unit === 'gal' || unit === 'qt' || unit === 'ml' || unit === 'pt'
}

function area(context: Figure): boolean {
  const { q, draft } = context
  const m2 = q.si as number
  const box = noun(context, 'box')
  const bag = noun(context, 'bag', 'kit')
  if (anHour(context)) draft.paceM2PerH ??= m2
  else if (box && perBetween(context, box)) draft.boxM2 ??= m2
  else if (bag && perBetween(context, bag) && !near(context, 2, 'used')) draft.coverageM2 ??= m2
  else if (noun(context, 'roll', 'sheet') || perVolume(context)) return false
  else if (near(context, 3, 'left-to-do')) draft.leftM2 ??= m2
  else if (near(context, 6, 'used')) draft.usedM2 ??= m2
  else context.areas.push(m2 * shareBefore(context))
  return true
}

/** "20 sf an hour", "20 sf/hr" */
function anHour({ q, reader }: Figure): boolean {
  const per = reader.is(q.last + 1, 'per', 'the') || reader.sign(q.last + 1) === '/'
  return per && unitAt(reader.lexicon, reader.tokens, q.last + 2)?.unit === 'hour'
}

/** "half of 300 sf" */
function shareBefore({ q, reader }: Figure): number {
  const share = reader.is(q.first - 1, 'of') ? reader.number(q.first - 2) : null
  return share?.spelled && share.value > 0 && share.value < 1 ? share.value : 1
}

/** "a third of a 50 lb bag": the part of it that is meant. */
function partOfBag({ q, reader }: Figure): number | null {
  const of = reader.is(q.first - 1, 'the', 'per') ? q.first - 2 : q.first - 1
  const share = reader.is(of, 'of') ? reader.number(of - 1) : null
  return share !== null && share.value > 0 && share.value < 1 ? share.value : null
}

function mass(context: Figure): boolean {
  const { q, draft } = context
  const bag = noun(context, 'bag', 'kit', 'mortar', 'grout', 'powder')
  const share = partOfBag(context)
  if (share !== null) draft.bagsToMix ??= share
  if (noun(context, 'bag', 'kit') || bag === undefined) draft.bagKg ??= q.si as number
  else draft.powderKg ??= q.si as number
  return true
}

function temperature(context: Figure): boolean {
  const { q, draft, reader } = context
  const at = (...concepts: readonly Concept[]): boolean =>
    [-3, -2, -1].some((k) => reader.is(q.first + k, ...concepts)) ||
    [1, 2].some((k) => reader.is(q.last + k, ...concepts))
  const of: SaidTemperature['of'] = isOfSheet(context)
    ? 'reference'
    : at('slab')
      ? 'slab'
      : at('low')
        ? 'low'
        : at('highest')
          ? 'high'
          : at('night')
            ? 'low'
            : 'air'
  const cold = q.unit === 'degree' && of === 'low' && !context.metric && q.n >= SITE_F[0]
  const c = cold ? toSi(q.n, 'f') : (q.si as number)
  draft.temperatures = [...(draft.temperatures ?? []), { c, of }]
  return true
}

/** "24 hr wait at 70": what the sheet's hours are for. */
function isOfSheet({ q, reader }: Figure): boolean {
  if (!reader.is(q.first - 1, 'at', 'is')) return false
  for (let i = q.first - 2; i >= q.first - 6; i--) {
    const unit = unitAt(reader.lexicon, reader.tokens, i)?.unit
    if ((unit === 'hour' || unit === 'day') && reader.number(i - 1)) return true
    if (/^[,;.?]$/.test(reader.sign(i))) return false
  }
  return false
}

/** Bare counts: bags, boxes, pieces a box, areas left in the unit spoken before. */
/** "if they come 8": a word of holding right before the figure, not one of having. */
const holdsBefore = ({ reader, q }: Figure): boolean =>
  [1, 2].some((k) => reader.is(q.first - k, 'holds') && !reader.is(q.first - k, 'have', 'is'))

function bareCount(context: Figure): boolean {
  const { q, draft } = context
  if (q.dimension !== 'none') return false
  // Money is no count: the order reads it.
  if (context.reader.sign(q.first - 1) === '$') return false
  const boxes = context.nouns.filter((n) => n.mark.concept === 'box')
  // "how many boxes 8 a box": the box that a "per" ties to the figure comes first.
  const box = boxes.find((n) => perBetween(context, n)) ?? noun(context, 'box')
  // "2 boxes left 3 rows to go": the rows stand right behind their own figure.
  const row = noun(context, 'row')
  if (box && row?.after && row.distance < box.distance) return false
  if (box && q.n > 0 && coversBetween(context, box)) {
    draft.boxM2 ??= toSi(q.n, context.metric ? 'sqm' : 'sqft')
    return true
  }
  if (box && draft.haveBoxes !== undefined && isHour(context)) return false
  if (box && Number.isInteger(q.n) && q.n > 0) {
    // "have 12 boxes" is no box of 12.
    const owned = box.after && box.distance === 1 && near(context, 2, 'have')
    if (perBetween(context, box) || (near(context, 3, 'holds') && !owned)) draft.boxTiles ??= q.n
    else draft.haveBoxes ??= q.n
    return true
  }
  if (bareTemperature(context)) return true
  // "how many boxes for 22 m2 if they hold 8": the boxes may stand anywhere.
  const { reader } = context
  if (q.n > 1 && Number.isInteger(q.n) && holdsBefore(context) && reader.tokens.some((_, i) => reader.is(i, 'box'))) {
    draft.boxTiles ??= q.n
    return true
  }
  const bag = noun(context, 'bag', 'kit') !== undefined || (q.token.spelled && isAndAHalf(reader, q.first))
  if (bag && q.n >= 0 && !isBeside(context)) {
    const parts = partsOf(context)
    if (parts === null) return true
    if (near(context, 4, 'used', 'opened')) draft.usedBags ??= parts
    else if (near(context, 5, 'have', 'left', 'on-hand', 'will-do', 'enough')) draft.haveBags ??= parts
    else draft.bagsToMix ??= parts
    return true
  }
  return false
}

/** "drop 2 boxes off at 3": an hour, where nothing is told behind it that it could count. */
function isHour({ q, reader }: Figure): boolean {
  const clock = q.n >= 1 && q.n <= 12 && reader.is(q.first - 1, 'at')
  return clock && !reader.is(q.last + 1, 'per', 'the', 'box', 'piece', 'tile')
}

/** "4.5 bags 190 total": bags were told with their own figure, and this one is many times theirs. */
const isBeside = ({ q, draft: { bagsToMix, usedBags, haveBags }, reader }: Figure): boolean => {
  const told = usedBags ?? bagsToMix ?? haveBags
  const own = reader.is(q.last + 1, 'bag', 'kit') || reader.is(q.last + 2, 'bag', 'kit')
  return told !== undefined && !own && q.n >= 10 * told
}

/** "box covers 13.5": an area nobody gave a unit. */
function coversBetween({ reader, q }: Figure, box: Noun): boolean {
  const [from, to] = box.after ? [q.last + 1, box.mark.first] : [box.mark.first + box.mark.count, q.first]
  for (let i = from; i < to; i++) if (reader.is(i, 'cover')) return true
  return !Number.isInteger(q.n) && !q.token.fraction && perBetween({ reader, q } as Figure, box)
}

const isShare = (n: number | undefined): n is number => n !== undefined && n > 0 && n < 1

/** "bag and a half": one and the half, of a bag without a count. */
function isAndAHalf(reader: Reader, first: number): boolean {
  const and = reader.is(first - 1, 'the', 'per') ? first - 2 : first - 1
  if (!reader.is(and, 'and') || !reader.is(and - 1, 'bag', 'kit')) return false
  return reader.number(and - 2) === null && (reader.number(and - 3) === null || !reader.is(and - 2, 'of'))
}

/** "2 half bags" is one bag; the half itself was counted with its figure (null). */
function partsOf({ q, reader }: Figure): number | null {
  const [before, after] = [reader.number(q.first - 1), reader.number(q.last + 1)]
  if (q.token.spelled && isShare(q.n) && before && Number.isInteger(before.value)) return null
  if (q.token.spelled && isShare(q.n) && isAndAHalf(reader, q.first)) return 1 + q.n
  return after?.spelled && isShare(after.value) ? q.n * after.value : q.n
}

/** "high 70 low 45", "slab 62", "58 out": degrees nobody wrote. */
function bareTemperature(context: Figure): boolean {
  const { q, reader, metric } = context
  if (q.token.fraction || q.token.spelled || q.n > 125) return false
  const before = [1, 2].some(
    (k) => reader.is(q.first - k, 'slab', 'low', 'highest', 'temperature-word') && !reader.number(q.first - 1),
  )
  const after = reader.is(q.last + 1, 'outside-air', 'night', 'low', 'highest')
  const at =
    q.n >= 35 &&
    reader.is(q.first - 1, 'at') &&
    context.nouns.length === 0 &&
    !reader.is(q.last + 1, 'per', 'time-word', 'top-side', 'bottom-side')
  // "its 50, when can we grout"
  const waits = reader.is(q.first - 1, 'is') && q.n >= 35 && context.nouns.length === 0 && speaksOfWaits(reader)
  if (!before && !after && !at && !waits && !bareSite(context)) return false
  // A night of 38 among feet and inches is Fahrenheit; 14 can only be Celsius.
  const unit = metric || q.n < SITE_F[0] ? 'degree' : 'f'
  return temperature({ ...context, q: { ...q, unit, dimension: 'temperature', si: toSi(q.n, unit) } })
}

/** What it can be where tile is set, in either scale, where nobody says which. */
const SITE_F: readonly [number, number] = [25, 120]
const SITE_C: readonly [number, number] = [0, 40]
const LEAST_C = 5
const MOST_WEATHER_WORDS = 7
const BETWEEN_SITE_AND_FIGURE: readonly Concept[] = ['is', 'at', 'about', 'the', 'day-word', 'time-word', 'to']

/** "shop was 61", "site is at 58", "it's 45 in the wash-up": degrees nobody wrote, of where the work is. */
function bareSite({ q, reader, nouns, metric }: Figure): boolean {
  const [least, most] = metric ? SITE_C : SITE_F
  if (q.n > most || reader.number(q.last + 1)) return false
  const place: readonly Concept[] = ['site-word', 'house-part', 'room']
  const of = nouns.filter((n) => !place.includes(n.mark.concept))
  if (of.length > 0) return false
  let i = q.first - 1
  let verbs = 0
  while (reader.is(i, ...BETWEEN_SITE_AND_FIGURE)) {
    if (reader.is(i, 'is', 'at')) verbs++
    i--
  }
  // "is at", "esta a": nothing is counted so, and 14 can only be Celsius.
  if (q.n < least) return verbs > 1 && q.n >= LEAST_C && reader.is(i, 'site-word')
  if (verbs > 0 && reader.is(i, 'site-word')) return true
  // "it's 65 now", "no, its 48 today"
  if (
    (verbs > 0 ? i < 0 || reader.is(i, 'no-correction') : reader.is(q.first - 1, 'no-correction')) &&
    reader.is(q.last + 1, 'time-word', 'day-word')
  ) {
    const figures = reader.tokens.filter((token) => token.kind === 'number')
    return figures.length === 1 && reader.tokens.length <= MOST_WEATHER_WORDS
  }
  // "45 in the wash-up": the place behind the figure.
  const [first, second] = [q.last + 1, q.last + 2]
  const then = reader.is(second, 'the') || reader.is(second, 'for') ? q.last + 3 : second
  return (verbs > 0 || i < 0) && reader.is(first, 'for', 'convert-to', 'site-word', 'at') && reader.is(then, ...place)
}

const WAITS: readonly Concept[] = [
  'grout',
  'walk',
  'heavy',
  'wet-use',
  'cure-word',
  'set-verb',
  'grouted-verb',
  'pot-life',
]

const speaksOfWaits = (reader: Reader): boolean =>
  ['when', 'how-long', 'can-we', 'cure-word'].some((asks) =>
    reader.tokens.some((_, i) => reader.is(i, asks as Concept)),
  ) && reader.tokens.some((_, i) => reader.is(i, ...WAITS))

/** "grout for 8x48, 1/8 joint, 130 feet": at the end of it all, so many feet are the floor. */
const LEAST_LONE_FEET = 60
const LEAST_LOOSE_FEET = 20

/** "80 feet to go", "mezcla para 130 pies": said of stuff that goes by the area, feet are square feet. */
function looseFeet(context: Figure): boolean {
  const { q, draft, reader } = context
  if (q.unit !== 'ft' || q.compound || q.n < LEAST_LOOSE_FEET) return false
  const m2 = q.n * 0.09290304
  const lone = q.n >= LEAST_LONE_FEET && stuffNamed(reader) && reader.tokens[q.last + 1] === undefined
  if (near(context, 3, 'left-to-do')) draft.leftM2 ??= m2
  else if (lone || isPriced(reader) || (reader.is(q.first - 1, 'for') && stuffNamed(reader))) context.areas.push(m2)
  else return false
  return true
}

/** "140 feet at 3 dollars a foot": what is sold by the foot is sold by the square foot, trim apart. */
const isPriced = (reader: Reader): boolean =>
  reader.tokens.some((_, i) => reader.sign(i) === '$' || reader.is(i, 'price')) &&
  !reader.tokens.some((_, i) => reader.is(i, 'linear', 'perimeter', 'tape', 'base-trim', 'profile', 'step'))

const STUFF: readonly Concept[] = ['mortar', 'grout', 'bag', 'tile', 'box', 'clip', 'wedge', 'leveller']

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
    const context: Figure = { reader, draft, nouns: nounsNear(item, reader, marks), q, metric, areas }
    const taken = readOne(context, durationsH, percents, areaUnitM2)
    if (q.dimension === 'area') areaUnitM2 = (q.si as number) / q.n
    if (!taken) loose.push({ q, nouns: context.nouns })
  }
  // "used 3 bags on 130 sf": the area is what they went on.
  if (draft.usedBags !== undefined && draft.usedM2 === undefined && areas.length > 0) draft.usedM2 = areas.shift()
  if (areas.length > 0) draft.areaM2 = areas.reduce((a, b) => a + b, 0)
  return { loose, durationsH, percents }
}

function readOne(context: Figure, durationsH: number[], percents: number[], areaUnitM2: number | null): boolean {
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
        (draft.usedBags !== undefined && near(context, 2, 'other-way', 'plus', 'more-word'))
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
