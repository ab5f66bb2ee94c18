/** Which size is the room, which the tile, which the notch: by the words beside it, its units, its order and its magnitude. */
import type { CurveName } from '../facts.ts'
import type { Concept } from './concepts.ts'
import { type Item, isSize } from './items.ts'
import type { Mark } from './lexicon.ts'
import type { Reader } from './measures.ts'
import { leadIn, type Noun, nounsNear } from './nouns.ts'
import { misfit, type SizeHints, type SizeRole } from './size-misfit.ts'

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
  const ofSheet =
    reader.is(item.last + 1, 'sheet', 'roll') ||
    (nounFirst && [1, 2].some((k) => reader.is(item.first - k, 'sheet', 'roll')))
  const purpose =
    (reader.is(item.first - 1, 'for', 'in-a') && !ofSheet) ||
    (reader.is(item.first - 1, 'the') && reader.is(item.first - 2, 'for'))
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
      // "a 4x8 sheet": the size right before it is the sheet's.
      const beside = role === 'sheet' && ofSheet && noun.distance <= 2 ? 1.5 : 0
      const stands = STANDS.has(noun.mark.concept) ? 2.5 : beside
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
