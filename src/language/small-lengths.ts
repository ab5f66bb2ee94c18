/** Small lengths: a joint, a notch, a thickness, one side of a square tile. */
import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import { type Figure, noun, perBetween } from './figure.ts'
import type { Quantity } from './measures.ts'
import type { Noun } from './nouns.ts'

const MOST_SMALL_MM = 32

/** Length in mm of a small figure: a bare fraction is inches, a bare whole number millimetres where the crew is metric. */
export function smallMm(q: Quantity, metric: boolean): number | null {
  if (q.dimension === 'length') return q.si
  if (q.dimension !== 'none') return null
  if (q.token.fraction || q.n < 1) return q.n * 25.4
  return metric || q.n > 2 ? q.n : q.n * 25.4
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
export function small(context: Figure): boolean {
  const { q, draft, metric } = context
  if (squareByPlural(context)) return true
  if (isCount(context)) return false
  const mm = smallMm(q, metric)
  if (mm !== null && squareTile(context, mm)) return true
  if (mm !== null && mm > MOST_SMALL_MM && q.dimension === 'length' && isWideJoint(context)) {
    draft.jointMm ??= mm
    return true
  }
  if (mm === null || mm <= 0 || mm > MOST_SMALL_MM) return false
  const candidates: [Noun | undefined, (mm: number) => void][] = [
    [
      jointNoun(context),
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
      thicknessNoun(context),
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

/** The joint, but for a figure in words beside what is grout as well: "queda medio de boquilla". */
function jointNoun(context: Figure): Noun | undefined {
  const joint = noun(context, ...JOINT)
  const isGrout = joint !== undefined && context.reader.is(joint.mark.first, 'grout')
  return isGrout && context.q.token.spelled && context.q.unit === null ? undefined : joint
}

/** "3/16 jt boxes of 5": what a box or bag holds is a count, whatever else stands near. */
function isCount(context: Figure): boolean {
  const { q } = context
  if (q.dimension !== 'none' || !Number.isInteger(q.n)) return false
  const pack = noun(context, 'box', 'bag', 'kit')
  // "1 bulto de boquilla": grout by the bag, though the word is the joint's too.
  if (pack?.after && pack.distance === 1) return true
  return pack !== undefined && pack.distance <= 2 && perBetween(context, pack)
}

/** Beside a bed or a pour "thick" is said of that, unless tile stands next to the figure. */
function thicknessNoun(context: Figure): Noun | undefined {
  const { reader } = context
  const ofBed = reader.tokens.some((_, i) => reader.is(i, 'leveller', 'mud-word', 'bed-word'))
  return ofBed && !noun(context, ...TILE) ? undefined : noun(context, 'thick')
}

const SQUARES_IN = [4, 6, 8, 9, 12, 13, 16, 18, 20, 24, 32, 36, 48]

/** "18s": square tile by its side. */
function squareByPlural({ q, draft, reader }: Figure): boolean {
  const next = reader.tokens[q.last + 1]
  const tight = next !== undefined && reader.is(q.last + 1, 'plural-mark') && next.from - reader.tokens[q.last].to <= 1
  if (!tight || q.unit !== null || !SQUARES_IN.includes(q.n) || (draft.tile && draft.tile.lengthMm > 0)) return false
  draft.tile = { ...draft.tile, lengthMm: q.n * 25.4, widthMm: q.n * 25.4 }
  return true
}

/** "15 inch joint": no joint is that wide, and the topic says so. */
function isWideJoint(context: Figure): boolean {
  const near = noun(context, ...JOINT)
  return near?.after === true && near.distance === 1
}

const LEAST_SQUARE_MM = 12
const MOST_SQUARE_MM = 1250

/** "loseta de 300", "600 tile" of a crew that measures in metric; "loseta de 45 cm". */
function sideOfTile({ q, metric, draft, reader }: Figure, tile: Noun | undefined): boolean {
  if (!tile || (draft.tile && draft.tile.lengthMm > 0)) return false
  const behind =
    !tile.after && ((tile.distance <= 2 && reader.is(q.first - 1, 'of')) || reader.is(q.first - 1, 'hexagon'))
  if (q.unit !== null) return behind && SIDE_UNITS.includes(q.unit) && (q.si as number) >= LEAST_SIDE_MM
  const bare = metric && Number.isInteger(q.n) && q.n >= 100 && q.n <= MOST_SQUARE_MM
  return bare && (behind || (tile.after && tile.distance === 1))
}

const SIDE_UNITS: readonly UnitName[] = ['cm', 'mm', 'in']
/** A tile's side; what is less is its thickness. [mm] */
const LEAST_SIDE_MM = 40

/** "12 inch tile", "2\" hex": one side of a square tile or across the flats. */
function squareTile(context: Figure, mm: number): boolean {
  const { q, draft } = context
  const tile = noun(context, ...TILE)
  if (sideOfTile(context, tile)) {
    draft.tile = { ...draft.tile, lengthMm: mm, widthMm: mm }
    return true
  }
  if (!tile || tile.distance > 2 || !tile.after || q.unit === null || q.unit === 'ft' || q.unit === 'm') return false
  const fine = mm < LEAST_SQUARE_MM || mm > MOST_SQUARE_MM || q.n < 1 || (q.unit === 'mm' && mm < 40)
  if (fine || (draft.tile && draft.tile.lengthMm > 0)) return false
  draft.tile = { ...draft.tile, lengthMm: mm, widthMm: mm }
  return true
}
