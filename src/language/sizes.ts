/** Which size is the room, which the tile, which the notch: by the words beside it, its units, its order and its magnitude. */
import type { CurveName } from '../facts.ts'
import type { Concept } from './concepts.ts'
import { type Item, isSize } from './items.ts'
import type { Mark } from './lexicon.ts'
import { METRIC, type Quantity, type Reader, toSi } from './measures.ts'
import { leadIn, type Noun, nounsNear } from './nouns.ts'

export type SizeRole = 'room' | 'hole' | 'bump' | 'tile' | 'notch' | 'sheet' | 'opening' | 'lumber' | 'void'

export type Size = {
  readonly item: Item
  readonly role: SizeRole
  readonly noun: Noun | null
  /** How far the next best reading was: small means it was a guess worth saying. */
  readonly margin: number
  /** A curve the figures measure: whether by its radius, and the words that name it. */
  /** So many alike, where they were counted. */
  readonly count?: number
  readonly curve?: { readonly name: CurveName; readonly radius: boolean; readonly mark: Mark }
}

/** What the talk already knows: a bare pair then rather fills the gap. */
export type SizeHints = {
  readonly hasRoom: boolean
  readonly hasTile: boolean
  readonly hasArea: boolean
  readonly wantsRoom: boolean
  /** Underlayment is spoken of, and no tile. */
  readonly goods: boolean
  /** A plus sign adds sizes up. */
  readonly sums: boolean
  /** A pattern of a large and a small tile is spoken of. */
  readonly twoSizes: boolean
  /** The tile is the one told before: "same tile". */
  readonly sameTile: boolean
  readonly metric: boolean
}

/** Sizes tile is sold in, in inches, shorter side first. Common practice, no source. */
const TILE_INCHES = new Set(
  '1x1 2x2 3x3 4x4 6x6 8x8 9x9 10x10 12x12 13x13 16x16 18x18 20x20 24x24 32x32 36x36 48x48 2x4 2x6 2x8 2x10 3x6 3x9 3x12 4x8 4x10 4x12 4x16 6x12 6x24 6x36 6x40 6x48 7x48 8x10 8x12 8x16 8x20 8x24 8x32 8x36 8x40 8x48 9x36 9x48 10x14 10x60 12x18 12x24 12x36 12x48 15x30 16x24 16x32 18x36 20x40 24x36 24x48 32x64'.split(
    ' ',
  ),
)

/** Sizes tile is sold in, in centimetres, shorter side first. Common practice, no source. */
const TILE_CM = new Set(
  '10x10 15x15 20x20 25x25 30x30 33x33 40x40 45x45 50x50 60x60 80x80 90x90 100x100 120x120 10x20 10x30 15x60 15x90 20x40 20x60 20x120 25x40 30x60 30x90 40x80 45x90 60x120 80x160'.split(
    ' ',
  ),
)

const ROLE_OF_NOUN: Partial<Record<Concept, SizeRole>> = {
  tile: 'tile',
  'tile-kind': 'tile',
  mosaic: 'tile',
  plank: 'tile',
  hexagon: 'tile',
  porcelain: 'tile',
  ceramic: 'tile',
  stone: 'tile',
  glass: 'tile',
  offset: 'tile',
  room: 'room',
  'house-part': 'room',
  floor: 'room',
  wall: 'room',
  backsplash: 'room',
  shower: 'room',
  slab: 'room',
  island: 'hole',
  bite: 'hole',
  'bump-out': 'bump',
  notch: 'notch',
  trowel: 'notch',
  'square-notch': 'notch',
  'u-notch': 'notch',
  'v-notch': 'notch',
  sheet: 'sheet',
  roll: 'sheet',
  cork: 'sheet',
  'cement-board': 'sheet',
  membrane: 'sheet',
  foam: 'sheet',
  underlayment: 'sheet',
  niche: 'opening',
  'window-word': 'opening',
  outlet: 'opening',
  door: 'opening',
  joist: 'lumber',
  lumber: 'lumber',
  void: 'void',
  leg: 'opening',
  footprint: 'opening',
}

const bySide = (a: number, b: number): string => `${Math.min(a, b)}x${Math.max(a, b)}`
export const isTypicalTile = (a: number, b: number): boolean => TILE_INCHES.has(bySide(a, b))
/** A size tile is sold in by the centimetre and not by the inch. */
export const isCentimetreTile = (a: number, b: number): boolean =>
  Math.min(a, b) >= 30 && TILE_CM.has(bySide(a, b)) && !isTypicalTile(a, b) && bySide(a, b) !== '30x60'
const isSoldAsTile = (a: number, b: number, metric: boolean): boolean =>
  isTypicalTile(a, b) || (metric && TILE_CM.has(bySide(a, b)))

const mm = (q: Quantity): number | null => (q.dimension === 'length' ? q.si : null)

/** How ill a reading suits the figures themselves; 0 is natural, 9 impossible. */
function misfit(role: SizeRole, [a, b]: readonly Quantity[], hints: SizeHints): number {
  const [wide, long] = [Math.min(mm(a) ?? a.n, mm(b) ?? b.n), Math.max(mm(a) ?? a.n, mm(b) ?? b.n)]
  const bare = a.unit === null && b.unit === null
  const feet = [a, b].some((q) => q.unit === 'ft' || q.unit === 'yd')
  switch (role) {
    case 'room':
      if (a.compound || b.compound) return 0
      if (bare) return roomMisfit(wide, long, hints)
      if (feet || a.unit === 'm' || b.unit === 'm') return a.unit === 'm' && long < 1250 ? 2 : 0
      return long >= 1500 ? 0.5 : long >= 900 ? 2 : 4
    case 'tile':
      if (a.compound || b.compound) return 6
      if (bare) return tileMisfit(a.n, b.n, hints.metric)
      if (feet) return long <= 1300 ? 3.5 : 9
      if (a.unit === 'm' || b.unit === 'm') return long <= 3200 && wide <= 1600 ? 2.5 : 9
      return wide < 9 || long > 3300 ? 9 : long > 1850 ? 3 : 0
    case 'notch':
      if (wide <= 0) return 9
      return bare ? (long <= 1 ? 0 : long <= 15 ? 3 : 9) : long <= 30 ? 0 : 9
    case 'sheet':
      return sheetMisfit(a, b, wide, long)
    case 'opening':
    case 'lumber':
    case 'void':
      return 2.5
    case 'hole':
    case 'bump':
      return 1
  }
}

/** Sizes underlayment is sold in, in feet, shorter side first; and boards told in inches. Common practice, no source. */
const SHEETS = new Set('2x3 2x4 3x4 3x5 3x6 4x4 4x8 4x5 4x6 36x60 48x96 24x48 36x48 48x48'.split(' '))

function sheetMisfit(a: Quantity, b: Quantity, wide: number, long: number): number {
  const bare = a.unit === null && b.unit === null
  if (bare) return SHEETS.has(`${wide}x${long}`) ? 0.8 : wide >= 300 ? 1.5 : wide <= 4 ? 2.5 : 5
  // Written sides: a sheet, or a strip of roll.
  return wide >= 250 && wide <= 2100 && (long <= 3100 || long >= 4 * wide) ? 1.2 : 3.5
}

function roomMisfit(wide: number, long: number, hints: SizeHints): number {
  if (long < 2) return 9
  if (wide >= 100) return hints.metric || wide >= 1000 ? 2.5 : 1.5
  return (isSoldAsTile(wide, long, hints.metric) ? 1 : 0) + (wide < 3 ? 1.5 : 0)
}

function tileMisfit(a: number, b: number, metric: boolean): number {
  const [wide, long] = [Math.min(a, b), Math.max(a, b)]
  if (wide <= 0.49 || long <= 0.99) return 9
  if (isSoldAsTile(a, b, metric)) return 0
  if (wide >= 50) return long <= 3300 ? 0 : 9
  if (long > 48) return wide >= 10 && long <= 250 ? 0.8 : 9
  return Number.isInteger(a) && Number.isInteger(b) ? 1.2 : 0.9
}

/** Their sizes are of nothing that is tiled. */
const STANDS: ReadonlySet<Concept> = new Set<Concept>(['leg', 'footprint'])

const NO_NOUN_COST = 0
const NOUN_GAIN = 3.4

type Choice = {
  readonly role: SizeRole
  readonly noun: Noun | null
  readonly cost: number
  /** "in 18x18", "with 8x48": what stands before it says that a floor is laid in it. */
  readonly led: boolean
  /** It stands right behind the size before, nothing between. */
  readonly follows: boolean
}

/** "8 in hex 10x12": the hexagon belongs to the figure before it. */
function isOfFigure({ mark, after }: Noun, reader: Reader): boolean {
  if (after || mark.concept !== 'hexagon') return false
  const at = [1, 2].map((k) => mark.first - k).find((i) => reader.number(i) !== null)
  const number = at === undefined ? null : reader.number(at)
  return number !== null && at !== undefined && (at === mark.first - 1 || reader.unit(at + 1, number) !== null)
}

function choicesFor(item: Item, nouns: readonly Noun[], reader: Reader, hints: SizeHints): Choice[] {
  const nounFirst = reader.lexicon.locale.nounFirst
  const holed = leadIn(item, reader, 'minus')
  // "12x10 + 4x6 - 3x3": a dash before a size may take it away, or only part two things told.
  const dashed = !holed && reader.sign(item.first - 1) === '-' && reader.number(item.first - 2) !== null
  // "how many for a 12x14": what the work is for is the room.
  const purpose =
    reader.is(item.first - 1, 'for', 'in-a') || (reader.is(item.first - 1, 'the') && reader.is(item.first - 2, 'for'))
  const led = reader.is(item.first - 1, 'laid-in', 'with')
  const follows = reader.number(item.first - 1) !== null
  // "120x140 less 30x50": what something is taken from is no tile.
  const lessened = reader.is(item.last + 1, 'minus')
  const choices: Choice[] = []
  const roles: SizeRole[] = ['room', 'tile', 'notch', 'sheet', 'opening', 'lumber', 'void']
  if (holed) choices.push({ role: 'hole', noun: nouns[0] ?? null, cost: -3, led, follows })
  if (dashed) choices.push({ role: 'hole', noun: null, cost: hints.sums ? -2.5 : -0.5, led, follows })
  for (const role of roles) {
    const base =
      misfit(role, item.parts, hints) +
      (holed ? 2 : 0) -
      (purpose && role === 'room' ? 1 : 0) -
      (led && role === 'tile' ? 1 : 0) +
      (lessened && role === 'tile' ? 1.5 : 0)
    choices.push({ role, noun: null, cost: base + NO_NOUN_COST, led, follows })
    for (const noun of nouns) {
      if (ROLE_OF_NOUN[noun.mark.concept] !== role || isOfFigure(noun, reader)) continue
      const side = noun.after === nounFirst ? 0.6 : 0
      const stands = STANDS.has(noun.mark.concept) ? 2.5 : 0
      choices.push({ role, noun, cost: base - NOUN_GAIN + 0.35 * (noun.distance - 1) + side - stands, led, follows })
    }
  }
  if (!holed)
    for (const noun of nouns)
      if (ROLE_OF_NOUN[noun.mark.concept] === 'hole') {
        // "2x4 island tile 18x18": the size right before it is the island's.
        const beside = noun.after && noun.distance === 1 ? 2.4 : 0
        choices.push({ role: 'hole', noun, cost: -1 - beside + 0.35 * (noun.distance - 1), led, follows })
      }
  for (const noun of nouns)
    if (ROLE_OF_NOUN[noun.mark.concept] === 'bump') choices.push({ role: 'bump', noun, cost: -1.5, led, follows })
  return choices
    .filter((c) => c.cost < 7)
    .toSorted((x, y) => x.cost - y.cost)
    .slice(0, 6)
}

/** Costs of a whole reading: one tile, rooms before tile, no noun counted twice. */
function joint(choices: readonly Choice[], hints: SizeHints): number {
  let cost = 0
  let tiles = 0
  let rooms = 0
  let sheets = 0
  const nouns = new Set<Mark>()
  choices.forEach((choice, k) => {
    cost += choice.cost
    if (choice.role === 'tile') {
      tiles++
      if (k === 0) cost += 0.4
    }
    if (choice.role === 'room') rooms++
    if (choice.role === 'sheet') sheets++
    if (choice.role === 'hole' && rooms === 0 && k === 0 && !hints.hasRoom) cost += 2
    if (choice.noun) {
      if (nouns.has(choice.noun.mark)) cost += 2.6
      nouns.add(choice.noun.mark)
    }
  })
  if (tiles > 1)
    cost += (hints.twoSizes && tiles === 2 ? 0 : isTileByRoom(choices, hints.hasRoom) ? 0.3 : 2) * (tiles - 1)
  if (hints.twoSizes && tiles < 2) cost += 0.8
  if (hints.sameTile) cost += 6 * tiles
  if (hints.goods && sheets === 0) cost += 1.6 * tiles
  if (sheets > 1) cost += 2 * (sheets - 1)
  if (sheets > 0 && rooms === 0 && !hints.hasRoom && !hints.hasArea) cost += 1.6
  if (tiles + sheets === 0 && !hints.hasTile && !hints.wantsRoom && (hints.hasArea || rooms > 1)) cost += 1.3
  if (rooms > 0 && hints.hasArea) cost += 0.8
  if (hints.wantsRoom) cost += 2 * tiles + (rooms === 0 ? 2 : 0)
  if (rooms > 0 && hints.hasRoom && !hints.hasTile) cost += 0.9
  return cost
}

/** Rooms each with a tile of its own: "shop 10x13 18x18, mudroom 8x12 8x48", or the tile first. Each is named, or its tile led
 *  in by a word or right behind it. */
function isTileByRoom(choices: readonly Choice[], roomsKnown: boolean): boolean {
  const told = choices.filter((c) => c.role === 'room' || c.role === 'tile')
  // "shop floor in 18x18, mudroom in 8x48": the rooms were told before.
  if (told.every((c) => c.role === 'tile')) return roomsKnown && told.every((c) => c.led)
  const opens = told[0]?.role
  const groups: Choice[][] = []
  told.forEach((c, k) => {
    if (k === 0 || (c.role === opens && told[k - 1].role !== opens)) groups.push([c])
    else groups.at(-1)!.push(c)
  })
  return groups.every(
    (group) =>
      group.filter((c) => c.role === 'tile').length === 1 &&
      group.some((c) =>
        c.role === 'room' ? c.noun !== null : c.led || c.follows || c.noun?.mark.concept === 'house-part',
      ) &&
      group.some((c) => c.role === 'room'),
  )
}

const MOST_TOGETHER = 5
/** Readings looked at for each size: all of them for a few sizes, the likeliest where many stand together. */
const MOST_READINGS = [6, 6, 6, 6, 4, 3]

/** Gives each size of a message its role. */
export function sizesOf(items: readonly Item[], reader: Reader, marks: readonly Mark[], hints: SizeHints): Size[] {
  const sizes = items.filter(isSize)
  const all = sizes.map((item) => choicesFor(item, nounsNear(item, reader, marks), reader, hints))
  const out: Size[] = []
  for (let start = 0; start < sizes.length; start += MOST_TOGETHER) {
    const together = all.slice(start, start + MOST_TOGETHER)
    const block = together.map((choices) =>
      choices.slice(0, sizes.length > 3 * MOST_TOGETHER ? 2 : MOST_READINGS[together.length]),
    )
    const best = bestTogether(block, hints)
    block.forEach((_choices, k) => {
      const item = sizes[start + k]
      out.push({
        item,
        role: best.choices[k]?.role ?? 'room',
        noun: best.choices[k]?.noun ?? null,
        margin: best.margin,
      })
    })
  }
  return out
}

function bestTogether(
  block: readonly (readonly Choice[])[],
  hints: SizeHints,
): { choices: readonly Choice[]; margin: number } {
  let best: readonly Choice[] = []
  let bestCost = Infinity
  let nextCost = Infinity
  const taken: Choice[] = []
  const walk = (k: number): void => {
    if (k === block.length) {
      const cost = joint(taken, hints)
      if (cost < bestCost) {
        if (best.some((c, i) => c.role !== taken[i].role)) nextCost = bestCost
        best = [...taken]
        bestCost = cost
      } else if (cost < nextCost && best.some((c, i) => c.role !== taken[i].role)) nextCost = cost
      return
    }
    for (const choice of block[k]) {
      taken[k] = choice
      walk(k + 1)
    }
  }
  walk(0)
  return { choices: best, margin: nextCost - bestCost }
}

/** A room's side in mm. A bare figure is feet, or by its size inches, centimetres or millimetres; `as` tells which. */
export function roomMm(
  q: Quantity,
  larger: number,
  metric: boolean,
): { mm: number; as: 'ft' | 'in' | 'cm' | 'mm' | 'm' | 'said' } {
  if (q.dimension === 'length' && q.si !== null) return { mm: q.si, as: 'said' }
  if (larger >= 1000) return { mm: q.n, as: 'mm' }
  if (metric && larger >= 100) return { mm: q.n * 10, as: 'cm' }
  if (larger >= 250) return { mm: q.n * 10, as: 'cm' }
  if (larger >= 100) return { mm: q.n * 25.4, as: 'in' }
  if (metric && larger < 40) return { mm: q.n * 1000, as: 'm' }
  return { mm: toSi(q.n, 'ft'), as: 'ft' }
}

/** Chips of mosaic are told in millimetres where the crew is metric: 25x25 is no 25 cm. */
const LEAST_MOSAIC_MM = 10

/** A tile's side in mm. A bare figure is inches, or by its size centimetres or millimetres. */
export function tileMm(
  q: Quantity,
  [a, b]: readonly Quantity[],
  metric: boolean,
  mosaic = false,
): { mm: number; as: 'in' | 'cm' | 'mm' | 'said' } {
  if (q.dimension === 'length' && q.si !== null) return { mm: q.si, as: 'said' }
  if (mosaic && metric && Math.min(a.n, b.n) >= LEAST_MOSAIC_MM) return { mm: q.n, as: 'mm' }
  const [wide, long] = [Math.min(a.n, b.n), Math.max(a.n, b.n)]
  if (wide >= 50 && long > 122 && wide !== 60 && !(metric && long <= 180)) return { mm: q.n, as: 'mm' }
  if (long > 130 && wide >= 100) return { mm: q.n, as: 'mm' }
  if (long > 48 && !isTypicalTile(a.n, b.n)) return { mm: q.n * 10, as: 'cm' }
  if (metric && wide >= 10 && long >= 15) return { mm: q.n * 10, as: 'cm' }
  return { mm: q.n * 25.4, as: 'in' }
}

export const isMetric = (q: Quantity): boolean => q.unit !== null && METRIC.has(q.unit)
