/** The room that runs short, laid as the job has it: what of it is set, what is not, and what that takes. */
import type { Cost, Rest, SetSoFar } from '../../core/layout/rest.ts'
import { restAfter } from '../../core/layout/rest.ts'
import { firstWalls, oppositeSide, type Place, type SetOrder, setOrder } from '../../core/layout/rows.ts'
import type { LayoutSpec } from '../../core/layout/spec.ts'
import type { ReuseRule } from '../../core/offcuts/reuse.ts'
import { moduleM2 } from '../../core/tile.ts'
import type { Facts, Room, Tile, WallSide } from '../../facts.ts'
import { type Job, logged } from '../../jobs/job.ts'
import { type Phrase, say, word } from '../../phrase.ts'
import { andThen, fine, type Outcome } from '../../problem.ts'
import { roomsNamed, tilingOf, untiled } from '../../room-tiles.ts'
import { roomM2, roomPhrase } from '../floors.ts'
import { type LaidRoom, laidFor, optionsOf } from '../plan.ts'
import { jointOf } from '../stuff.ts'
import { type LayOptions, tilesForCuts } from '../tiles-for-cuts.ts'
import type { Brief } from '../topic.ts'
import { type ShortRead, sameSize } from './read-short.ts'

export type RestOfFloor = {
  readonly room: LaidRoom
  readonly facts: Facts
  readonly order: SetOrder
  readonly rest: Rest
  readonly rule: ReuseRule
  /** What places take under a rule. [tiles] */
  readonly cost: (rule: ReuseRule) => Cost
  readonly assumed: readonly Phrase[]
}

/** The facts with the one room that is meant and its own tile: the room named, else the one with the tile named, else the
 *  largest of those asked about last. `others` where it had to be chosen. */
export function inOneRoom(brief: Brief): { facts: Facts; others: boolean } {
  const rooms = brief.facts.rooms ?? []
  const [named] = roomsNamed(brief.heard.plain.text, rooms)
  const size = brief.heard.facts.tile
  const bySize = rooms.filter((room) => size && isOfSize(tilingOf(brief.facts, room).tile, size))
  const last = rooms.filter(({ own }) => own === undefined)
  const room = named ?? largest(bySize) ?? largest(last) ?? largest(rooms)
  if (!room) return { facts: brief.facts, others: false }
  const { own: _, ...bare } = room
  return {
    facts: { ...untiled(brief.facts), ...tilingOf(brief.facts, room), rooms: [{ ...bare, count: 1 }] },
    others: rooms.length > 1 && !named,
  }
}

const isOfSize = (tile: Tile | undefined, size: Tile): boolean => tile !== undefined && sameSize(tile, size)

const largest = (rooms: readonly Room[]): Room | undefined =>
  rooms.toSorted((a, b) => roomM2(b) / b.count - roomM2(a) / a.count)[0]

/** Where the room has a shape and its tile is laid one by one; null where only the area is known.
 *  @param brief  with the facts of `inOneRoom`  @param job  with what this message logs  @param others  other rooms there are */
export function restOfFloor(
  brief: Brief,
  read: ShortRead,
  tile: Tile,
  job: Job,
  others: boolean,
): Outcome<RestOfFloor | null> {
  const { facts } = brief
  const [meant] = facts.rooms ?? []
  if (!meant) return fine(null)
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const laid = laidFor(facts, tile, jointMm)
  if (laid === null) return fine(null)
  const rooms = brief.memory.facts.rooms ?? [meant]
  return andThen(laid, ({ rooms: [room] }) => {
    const { floor, start } = room!
    const from = firstWall(facts, read.from, firstWalls(floor, start.spec))
    return andThen(setOrder(floor, start.spec, from), (whole) => {
      const order = ofTheLargeTile(whole, start.spec)
      if (order !== whole) assumed.push(say('log.assumed-large'))
      const set = setSoFar(read, job, tile, jointMm, meant, rooms.length === 1)
      if (others) assumed.push(say('log.assumed-room', { room: roomPhrase(meant) }))
      if (order.inRows && order.from !== read.from)
        assumed.push(say('log.assumed-first-row', { side: word(`side-${order.from}`) }))
      if (order.slanted) assumed.push(say('log.assumed-slanted'))
      if (set === null) assumed.push(say('log.assumed-none-set'))
      return fine({
        room: room!,
        facts,
        order,
        rest: restAfter(order, set ?? { in: 'rows-set', n: 0 }),
        rule: optionsOf(facts).rule,
        cost: costsOf(facts, start.spec.tile),
        assumed,
      })
    })
  })
}

/** What the logged rows of the largest room hold: places, and the floor they cover; null where no rows are logged or the room is not
 *  laid. Tiles logged after the rows are in the places. */
export function rowsDone(
  job: Job,
  facts: Facts,
  tile: Tile,
  jointMm: number,
): { readonly places: number; readonly m2: number } | null {
  const { rows, tilesSinceRows } = logged(job, 'tile')
  const room = largest(facts.rooms ?? [])
  const laid = rows > 0 && room ? laidFor({ ...facts, rooms: [{ ...room, count: 1 }] }, tile, jointMm) : null
  if (!room || !laid?.ok) return null
  const { floor, start } = laid.value.rooms[0]!
  const order = setOrder(floor, start.spec, firstWall(facts, null, firstWalls(floor, start.spec)))
  if (!order.ok || !order.value.inRows) return null
  const places = order.value.rows.slice(0, rows).flat().length + tilesSinceRows
  return { places, m2: (places / start.layout.cells) * (roomM2(room) / room.count) }
}

/** Where a small tile goes with a large one, the tiles that run short are the large ones: the small come by boxes of their own. */
function ofTheLargeTile(order: SetOrder, { pattern }: LayoutSpec): SetOrder {
  if (pattern.kind !== 'two-size') return order
  const rows = order.rows.map((row) => row.filter(({ family }) => family === 0)).filter((row) => row.length > 0)
  return { ...order, rows }
}

/** The wall that was told; else the far one, so that the door is reached last. */
function firstWall(facts: Facts, told: WallSide | null, walls: readonly WallSide[]): WallSide {
  if (told !== null) return told
  const far = facts.doorAt && oppositeSide(facts.doorAt)
  return far && walls.includes(far) ? far : walls[0]!
}

/** Rows told first, then what is told to be left, then what was logged. */
function setSoFar(read: ShortRead, job: Job, tile: Tile, jointMm: number, room: Room, only: boolean): SetSoFar | null {
  const floorM2 = roomM2(room)
  if (read.rows !== null) return { in: 'rows-to-go', n: read.rows }
  if (read.setRows !== null) return { in: 'rows-set', n: read.setRows }
  if (read.leftM2 !== null) return { in: 'share', share: Math.max(0, 1 - read.leftM2 / floorM2) }
  const log = logged(job, 'tile')
  if (log.rows > 0 && (log.rowsOf === null || log.rowsOf === (room.name ?? log.rowsOf)))
    return { in: 'rows-set', n: log.rows, more: log.tilesSinceRows }
  if (!only) return setInRoom(job, room, floorM2)
  if (log.tiles > 0) return { in: 'places', n: log.tiles }
  const doneM2 = log.m2 > 0 ? log.m2 : logged(job, 'mortar').m2
  const oneM2 = moduleM2({ shape: 'rectangle', lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm })
  return doneM2 > oneM2 / 2 ? { in: 'share', share: Math.min(1, doneM2 / floorM2) } : null
}

/** Of several rooms, what was logged with this one; null where any log left its room open. */
function setInRoom(job: Job, room: Room, floorM2: number): SetSoFar | null {
  const fills = job.uses.filter((use) => use.stuff === 'tile' && (use.tiles !== undefined || use.m2 !== undefined))
  if (job.earlier.tile !== undefined || fills.some((use) => use.room === undefined)) return null
  const { tiles, m2 } = logged({ ...job, uses: fills.filter((use) => use.room === room.name) }, 'tile')
  if (tiles > 0) return { in: 'places', n: tiles }
  return m2 > 0 ? { in: 'share', share: Math.min(1, m2 / floorM2) } : null
}

/** Whole tiles and the planner's tiles for the cuts; where there are too many to plan, one for each cut. Stretches planned before
 *  are remembered by their ends and their number: the searches ask for the same ones again. */
function costsOf(facts: Facts, stock: { lengthMm: number; widthMm: number }): RestOfFloor['cost'] {
  const options = optionsOf(facts)
  const known = new Map<ReuseRule, WeakMap<Place, Map<Place, Map<number, number>>>>()
  return (rule) => {
    const ofRule = known.get(rule) ?? new WeakMap<Place, Map<Place, Map<number, number>>>()
    known.set(rule, ofRule)
    return (rows) => {
      const places: readonly Place[] = rows.flat()
      const [first, last] = [places[0], places.at(-1)]
      if (!first || !last) return 0
      const byLast = ofRule.get(first) ?? new Map<Place, Map<number, number>>()
      ofRule.set(first, byLast)
      const byCount = byLast.get(last) ?? new Map<number, number>()
      byLast.set(last, byCount)
      const before = byCount.get(places.length)
      if (before !== undefined) return before
      const takes = tilesFor(places, stock, { ...options, rule })
      byCount.set(places.length, takes)
      return takes
    }
  }
}

function tilesFor(places: readonly Place[], stock: { lengthMm: number; widthMm: number }, options: LayOptions): number {
  const cuts = places.flatMap((place) => place.cuts)
  const whole = places.reduce((n, place) => n + (place.cuts.length === 0 ? 1 : 0), 0)
  const planned = tilesForCuts(cuts, stock, options)
  return whole + (planned.ok ? planned.value.stockTiles : cuts.length)
}
