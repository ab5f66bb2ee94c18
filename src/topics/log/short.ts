/** Running short of tile: the floor not yet set is laid and cut as the job has it, and held against what is on hand. */
import { rowsReached } from '../../core/layout/rest.ts'
import { moduleM2 } from '../../core/tile.ts'
import type { Facts, Tile } from '../../facts.ts'
import { type Job, logged, tilesOnHand, type UseBody } from '../../jobs/job.ts'
import { area, count, type Phrase, percent, say, word } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { lasting, numberIn, quantitiesOf } from '../job/quantities.ts'
import { jointOf, knownTile } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { after, useEntry } from './entries.ts'
import { doneM2 } from './finish.ts'
import type { ShortRead } from './read-short.ts'
import { inOneRoom, type RestOfFloor, restOfFloor } from './rest-of-floor.ts'
import { logValues } from './values.ts'
import { waysOut } from './ways-out.ts'

export function runningShort(asked: Brief, read: ShortRead): Outcome<Told> {
  const { facts, others } = inOneRoom(asked)
  const brief: Brief = { ...asked, facts }
  const tile = knownTile(brief.facts)
  const perBox = brief.facts.boxTiles ?? boxPieces(brief.facts, tile)
  const entries = usesTold(read, roomOf(facts)).map(useEntry)
  const { job } = after(brief, entries)
  const floor = floorSum(brief.facts)
  if (!tile || !floor.ok || floor.value === null) {
    if (read.missing !== null) return fine({ ...missingOnly(read.missing, perBox, job), entries })
    return refuse('question', { question: tile ? 'area' : 'tile' })
  }
  if (read.boxes !== null && perBox === null) return refuse('question', { question: 'box' })
  const rest = restOfFloor(brief, read, tile, job, others)
  if (!rest.ok) return rest
  // A weave has no rows to count by.
  if (rest.value?.order.inRows === false && (read.rows !== null || read.setRows !== null))
    return refuse('question', { question: 'rest' })
  return rest.value === null
    ? byArea(brief, read, tile, { job, perBox, entries, floorM2: floor.value.areaM2 })
    : fine(laid(brief, read, rest.value, { job, perBox, entries }))
}

type Known = {
  readonly job: Job
  readonly perBox: number | null
  readonly entries: NonNullable<Told['entries']>
}

/** What the message tells for the log: rows set are the whole so far, counts on hand are as of now. */
function usesTold(
  { boxes, tiles, rows, setRows, setTiles, broken }: ShortRead,
  room: Pick<UseBody, 'room'>,
): UseBody[] {
  const uses: UseBody[] = []
  if (setRows !== null && rows === null) uses.push({ stuff: 'tile', rows: setRows, total: true, ...room })
  if (setTiles !== null) uses.push({ stuff: 'tile', tiles: setTiles })
  if (broken !== null) uses.push({ stuff: 'tile', broken })
  if (boxes !== null || tiles !== null)
    uses.push({
      stuff: 'tile',
      ...(boxes === null ? {} : { leftBoxes: boxes }),
      ...(tiles === null ? {} : { leftTiles: tiles }),
    })
  return uses
}

const shortValues = (short: number, { perBox, job }: Known): Told['values'] => ({
  tiles_short: short,
  ...(perBox ? { boxes_short: Math.ceil(short / perBox) } : {}),
  ...logValues(job),
})

function laid(brief: Brief, read: ShortRead, found: RestOfFloor, known: Known): Told {
  const { rest, rule, order } = found
  if (rest.rows.length === 0) return allSet(found, known)
  const cost = found.cost(rule)
  const need = cost(rest.rows)
  const assumed: Phrase[] = [...found.assumed]
  const have = read.missing === null ? onHand(brief, read, found, known, assumed) : Math.max(0, need - read.missing)
  const short = Math.max(0, need - (have ?? 0))
  const reached = rowsReached(rest.rows, have ?? 0, cost)
  const lastRow = rest.firstRow - 1 + reached
  const numbers = {
    need: count(need),
    have: count(have ?? 0),
    short: count(short),
    spare: count(Math.max(0, (have ?? 0) - need)),
    rows: count(rest.rows.length),
    row: count(lastRow),
    of: count(rest.totalRows),
  }
  const weave = order.inRows ? [] : [say('log.no-rows', { side: word(`side-${order.from}`) })]
  const told = order.inRows ? '' : '-places'
  const ways = short > 0 && have !== null ? waysOut(brief, read, found, { have, need }) : []
  return {
    topic: 'log',
    answer: say(
      `log.rest-${have === null ? 'takes' : short > 0 ? 'short' : have === need ? 'just' : 'enough'}${told}`,
      numbers,
    ),
    details: [
      ...(isOff(read, rest) ? [say('log.rows-beyond', numbers)] : []),
      ...(short > 0 && have !== null && order.inRows
        ? [say(reached > 0 ? 'log.reach' : 'log.reach-none', numbers)]
        : []),
      ...ways,
    ],
    assumed: [...assumed, ...weave, say('log.assumed-offcuts')],
    values: {
      ...(have === null ? logValues(known.job) : shortValues(short, known)),
      ...(order.inRows ? { last_row: have === null ? undefined : lastRow } : {}),
    },
    entries: [...rowsKept(read, found), ...known.entries],
    offers: ['undo'],
  }
}

const allSet = ({ rest, assumed }: RestOfFloor, known: Known): Told => ({
  topic: 'log',
  answer: say('log.all-set', { of: count(rest.totalRows) }),
  assumed,
  values: shortValues(0, known),
  entries: known.entries,
  offers: ['undo'],
})

/** Rows told that do not go with the rows the layout has. */
const isOff = ({ rows, setRows }: ShortRead, { beyond, totalRows }: RestOfFloor['rest']): boolean =>
  beyond > 0 || (rows !== null && setRows !== null && rows + setRows !== totalRows)

const roomOf = ({ rooms }: Facts): Pick<UseBody, 'room'> => (rooms?.[0]?.name ? { room: rooms[0].name } : {})

/** Rows to go are kept as the rows that are set, so that what is asked next goes on from there. */
const rowsKept = (read: ShortRead, { order, rest, facts }: RestOfFloor): NonNullable<Told['entries']> =>
  read.rows !== null && order.inRows && !isOff(read, rest)
    ? [useEntry({ stuff: 'tile', rows: rest.firstRow - 1, total: true, ...roomOf(facts) })]
    : []

/** Tiles on hand as told or logged; else what the plan had bought, less what is set and broken. Null where nothing tells it. */
function onHand(brief: Brief, read: ShortRead, found: RestOfFloor, known: Known, assumed: Phrase[]): number | null {
  const told = tilesOnHand(known.job, known.perBox)
  if (told !== null) return told
  if (read.asksCount || (found.rest.done.length === 0 && logged(known.job, 'tile').broken === 0)) return null
  const values = quantitiesOf(brief, found.facts)
  const boxes = numberIn(values, 'tile_boxes')
  const bought = boxes !== null && known.perBox !== null ? boxes * known.perBox : numberIn(values, 'tile_count')
  if (bought === null) return null
  assumed.push(say('log.assumed-bought', { n: count(bought) }))
  return Math.max(0, bought - found.cost(found.rule)([found.rest.done]) - logged(known.job, 'tile').broken)
}

/** No shape, or a tile that comes by the sheet: tiles by the area that is left, the usual spares in, and no rows. */
function byArea(brief: Brief, read: ShortRead, tile: Tile, known: Known & { floorM2: number }): Outcome<Told> {
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const { leftM2 } = read
  if (leftM2 === null && (read.rows !== null || read.setRows !== null)) return refuse('question', { question: 'rest' })
  const restM2 = leftM2 ?? Math.max(0, known.floorM2 - doneM2(known.job, 'mortar', lasting(brief.facts), jointMm))
  const spare = brief.facts.sparePct ?? brief.settings.practice.tile.spareStraight.value * 100
  const oneM2 = moduleM2({ shape: 'rectangle', lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm })
  const need = Math.ceil((restM2 * (1 + spare / 100)) / oneM2 - 1e-9)
  const have = read.missing === null ? tilesOnHand(known.job, known.perBox) : Math.max(0, need - read.missing)
  const short = Math.max(0, need - (have ?? 0))
  const numbers = { need: count(need), have: count(have ?? 0), short: count(short), rest: area(restM2) }
  return fine({
    topic: 'log',
    answer: say(have === null ? 'log.area-takes' : short > 0 ? 'log.area-short' : 'log.area-enough', numbers),
    details: short > 0 && have !== null ? generalWays() : [],
    assumed: [...assumed, say('log.assumed-by-area', { spare: percent(spare) })],
    values: have === null ? logValues(known.job) : shortValues(short, known),
    entries: known.entries,
  })
}

/** "lot's gone, 6 short" of a floor nobody has told: the pieces are known, and only the order of the ways out. */
const missingOnly = (tiles: number, perBox: number | null, job: Job): Told => ({
  topic: 'log',
  answer: say('log.missing', { short: count(tiles) }),
  details: generalWays(),
  values: shortValues(tiles, { perBox, job, entries: [] }),
})

const generalWays = (): Phrase[] =>
  ['log.way-offcuts', 'log.way-start-any', 'log.way-hidden-any', 'log.way-yard'].map((key, k) =>
    say(key, { n: say('log.way-number', { n: count(k + 1) }) }),
  )

function boxPieces({ boxM2 }: Facts, tile: Tile | null): number | null {
  return boxM2 !== undefined && tile ? Math.round((boxM2 * 1e6) / (tile.lengthMm * tile.widthMm)) : null
}
