/** "9 boxes left, 14 rows to go", "lot's gone, 6 short", "we broke 8, do we make it": what is left of the tile and of the floor. */
import type { Facts, Tile, WallSide } from '../../facts.ts'
import type { Memory } from '../../jobs/memory.ts'
import type { LogWord } from '../../language/command-words.ts'
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'
import type { Loose } from '../../language/singles.ts'
import { sidesIn } from '../../language/wishes.ts'
import { asksSomething } from '../job/asks.ts'

export type ShortRead = {
  readonly is: 'short'
  readonly boxes: number | null
  readonly tiles: number | null
  /** Rows to go, and rows that are set. */
  readonly rows: number | null
  readonly setRows: number | null
  readonly setTiles: number | null
  readonly broken: number | null
  /** Tiles told to be missing. */
  readonly missing: number | null
  /** Area still to do. [m2] */
  readonly leftM2: number | null
  /** How many it takes is asked, not whether they do. */
  readonly asksCount: boolean
  /** The wall the first row is at. */
  readonly from: WallSide | null
  /** The wall an appliance will stand at. */
  readonly covered: WallSide | null
}

export const TILE_NOUNS: readonly Concept[] = [
  'tile',
  'piece',
  'plank',
  'tile-kind',
  'hexagon',
  'mosaic',
  'porcelain',
  'ceramic',
]

const isCount = ({ q }: Loose): boolean => q.dimension === 'none' && Number.isInteger(q.n) && q.n > 0 && !q.negative
const nearest = ({ nouns }: Loose, of: readonly Concept[]): number =>
  Math.min(Infinity, ...nouns.filter((n) => of.includes(n.mark.concept)).map((n) => n.distance))

/** Counts that are of tiles, of rows, or of nothing named; boxes, beside rows also half ones. */
type Counts = {
  readonly tiles: readonly Loose[]
  readonly rows: readonly Loose[]
  readonly bare: readonly Loose[]
  readonly boxes: number | null
}

function countsOf(heard: Heard): Counts {
  const all = heard.loose.filter(isCount)
  const isRow = (l: Loose): boolean => nearest(l, ['row']) < nearest(l, TILE_NOUNS)
  const isTile = (l: Loose): boolean => nearest(l, TILE_NOUNS) < Infinity && !isRow(l)
  const parted = heard.loose.find(
    (l) => l.q.dimension === 'none' && !l.q.negative && nearest(l, ['box']) <= 2 && !isRow(l),
  )
  return {
    rows: all.filter(isRow),
    tiles: all.filter((l) => isTile(l)),
    bare: all.filter((l) => l.nouns.every((n) => n.mark.concept === 'left-to-do')),
    boxes: heard.facts.haveBoxes ?? (all.some(isRow) ? parted?.q.n : null) ?? null,
  }
}

const isLeft = (l: Loose | undefined): boolean => l !== undefined && nearest(l, ['left-to-do']) < Infinity

/** Words that ask how far the tile goes. */
const OFFERS: readonly LogWord[] = ['finish', 'how-far', 'running-short', 'ways']

/** What a message tells of running short, or null where it tells nothing of it. */
export function readShort(heard: Heard, memory: Memory): ShortRead | null {
  const { log } = heard.commands
  const { facts } = heard
  // Boxes beside rows are tile, whatever else sounds like a bag ("cuántas hileras saco").
  const otherStuff = heard.has('bag', 'kit', 'mortar', 'grout', 'sheet', 'roll')
  if (facts.rooms !== undefined || (otherStuff && !(facts.haveBoxes !== undefined && heard.has('row')))) return null
  const counts = countsOf(heard)
  const asksCount = heard.has('how-many', 'how-much') && !log.has('how-far')
  const { boxes } = counts
  const asks = asksSomething(heard) || OFFERS.some((word) => log.has(word))
  const broken = log.has('broke') ? ((counts.tiles[0] ?? counts.bare[0])?.q.n ?? null) : null
  const [rows, setRows] = rowsTold(heard, counts)
  const lacks = log.has('short') || log.has('lot-gone') || (log.has('ways') && !log.has('left'))
  const missing = lacks ? ((counts.tiles[0] ?? counts.bare[0])?.q.n ?? null) : null
  // "4 boxes left", "how far with 40 tiles": what is there, unless something of it was set, broken or is missing.
  const asksOfAll = log.has('left') || (asks && !log.has('set-tiles') && !asksCount)
  const left = counts.tiles.find((l) => l.q.n !== broken && l.q.n !== missing && isLeft(l)) ?? null
  const alone = broken === null && missing === null
  // "3 left, enough?" is of what was logged last; beside rows it is tile.
  const beside = boxes === null && (rows !== null || setRows !== null || log.has('running-short'))
  const bareLeft = beside && heard.has('left') ? counts.bare.find((l) => isLeft(l) && l.q.n !== rows) : undefined
  const tiles = left?.q.n ?? (alone ? ((asksOfAll ? counts.tiles[0] : undefined) ?? bareLeft)?.q.n : undefined) ?? null
  const setTiles = log.has('set-tiles')
    ? (counts.tiles.find((l) => l.q.n !== tiles && l.q.n !== broken && l.q.n !== missing)?.q.n ?? null)
    : null
  const { from, covered } = wallsNamed(heard)
  const leftM2 = facts.leftM2 ?? null
  const read: ShortRead = {
    is: 'short',
    ...{ boxes, tiles, rows, setRows, setTiles, broken, missing, leftM2, asksCount, from, covered },
  }
  const onHand = boxes !== null || tiles !== null
  const told = rows !== null || setRows !== null
  if (told && (onHand || asks || log.has('lot-gone') || missing !== null)) return read
  if (log.has('lot-gone') && (missing !== null || boxes !== null || heard.quantities.length === 0)) return read
  const { rooms, areaM2, tile } = memory.facts
  const known = (rooms !== undefined || areaM2 !== undefined) && tile !== undefined
  if (!known || facts.areaM2 !== undefined) return null
  if (missing !== null && (log.has('short') || log.has('ways'))) return read
  if (broken !== null && asks) return read
  const offered = log.has('left') || OFFERS.some((word) => log.has(word))
  // "can the other lot go under the fridge": of what was last told to be on hand.
  const follows = log.has('ways') && (onHand || memory.job.uses.some((use) => use.leftBoxes ?? use.leftTiles))
  return (onHand || follows || log.has('running-short')) && asks && offered && ofTheJob(facts.tile, memory.facts)
    ? read
    : null
}

/** No tile named, or one the job has: another is a question of its own. */
function ofTheJob(tile: Tile | undefined, job: Facts): boolean {
  const has = (known: Tile | undefined): boolean =>
    known !== undefined && tile !== undefined && sameSize(known, tile) && known.shape === (tile.shape ?? known.shape)
  return tile === undefined || has(job.tile) || (job.rooms ?? []).some((room) => has(room.own?.tile))
}

export const sameSize = (a: Tile, b: Tile): boolean =>
  Math.abs(a.lengthMm - b.lengthMm) < 1 && Math.abs(a.widthMm - b.widthMm) < 1

/** "at the left wall", "from the back": a side that is one by its own words or beside a wall ("9 left" is none). The first after an
 *  appliance is where that stands; where cuts are hidden no wall is one to start at. */
function wallsNamed({ marks, facts }: Heard): Pick<ShortRead, 'from' | 'covered'> {
  const walls = marks.filter((m) => m.concept === 'wall')
  const sides = marks
    .filter((m) => m.count > 1 || walls.some((wall) => Math.abs(wall.first - m.first) <= 2))
    .flatMap((m) => sidesIn([m]).map((side) => ({ side, at: m.first })))
  const appliance = marks.find((m) => m.concept === 'appliance')
  const covered = appliance && sides.find(({ at }) => at > appliance.first)
  const rest = sides.find(({ side }) => side !== covered?.side)
  const hides = facts.hideAt !== undefined || marks.some((m) => m.concept === 'hide')
  return { from: hides ? null : (rest?.side ?? null), covered: covered?.side ?? null }
}

/** Rows to go and rows set: "set 22 rows, 14 to go"; "row 9" is the one they are at; rows beside what is left are those to go. */
function rowsTold(heard: Heard, { rows, bare, tiles, boxes }: Counts): [toGo: number | null, set: number | null] {
  const { log } = heard.commands
  const [first, second] = rows
  if (!first) return [null, null]
  if (log.has('rows-to-go')) {
    const toGo = rows.find(isLeft) ?? rows.at(-1)!
    const set = rows.find((row) => row !== toGo)
    return [toGo.q.n, log.has('set-tiles') ? (set?.q.n ?? null) : null]
  }
  // "14 to go" are rows like those before; "90 left" are tiles.
  const rest = second ?? (heard.has('left') ? undefined : bare[0])
  const at = first.nouns.some((n) => n.mark.concept === 'row' && !n.after && n.distance === 1)
  if (at) return [null, heard.has('used') || log.has('set-tiles') ? first.q.n : first.q.n - 1]
  if (log.has('set-tiles')) return [isLeft(rest) ? rest!.q.n : null, first.q.n]
  const hasTile = boxes !== null || tiles.length > 0 || heard.has('left')
  return [hasTile ? first.q.n : null, null]
}
