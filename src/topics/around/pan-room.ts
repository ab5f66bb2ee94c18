/** The shower's floor out of the facts, and where its drain stands. */
import { type Box, boxOf, distance, type Point, type Ring, ringHolds } from '../../core/floor/rings.ts'
import type { Facts } from '../../facts.ts'
import { type Phrase, say, small } from '../../phrase.ts'
import type { Brief } from '../topic.ts'
import { lengthNear } from './read.ts'
import { laidRooms } from './rooms.ts'

export type PanRoom = {
  readonly ring: Ring
  readonly box: Box
  readonly lengthMm: number
  readonly widthMm: number
  readonly notes: readonly Phrase[]
  /** Columns and posts that stand in it. */
  readonly columns: readonly Ring[]
}

/** The floor of the shower: its outer ring, and the columns in it. */
export function panRoom(facts: Facts): PanRoom | null {
  const [room] = laidRooms(facts) ?? []
  const ring = room?.floor.rings[0]
  if (!room || !ring) return null
  const columns = room.floor.rings.slice(1)
  // A second floor beside the first is no column.
  if (columns.some((column) => !ringHolds(ring, column[0]!))) return null
  const box = boxOf([ring])
  return { ring, box, lengthMm: box.maxX - box.minX, widthMm: box.maxY - box.minY, notes: room.notes, columns }
}

/** Where the drain is: so far from a side wall, in a corner, else in the middle. */
export function drainOf(brief: Brief, room: PanRoom, assumed: Phrase[]): Point {
  const h = brief.heard
  const { box, lengthMm, widthMm } = room
  const off = lengthNear(h, brief.metric, 'drain')
  const fromWall = off !== null && off > 40 && h.has('from', 'wall', 'left-side', 'right-side') ? off : null
  if (fromWall !== null)
    return [h.has('right-side') ? box.maxX - fromWall : box.minX + fromWall, (box.minY + box.maxY) / 2]
  if (h.has('corner') && h.has('drain')) {
    const inset = Math.min(150, lengthMm / 4, widthMm / 4)
    assumed.push(say('shower.assumed-corner', { inset: small(inset) }))
    return [box.minX + inset, box.minY + inset]
  }
  const drain = middleOf(room)
  const isMiddle = Math.abs(drain[0] - (box.minX + box.maxX) / 2) + Math.abs(drain[1] - (box.minY + box.maxY) / 2) < 1
  if (!isMiddle && room.columns.length > 0) assumed.push(say('shower.assumed-beside'))
  else if (!h.has('center')) assumed.push(say('shower.assumed-drain'))
  return drain
}

const SPOTS = 12

/** The middle; where that is cut out of the floor, the spot on the floor with the shortest farthest run. */
function middleOf({ ring, box, columns }: PanRoom): Point {
  const middle: Point = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  const isFree = (p: Point): boolean => ringHolds(ring, p) && !columns.some((column) => ringHolds(column, p))
  if (isFree(middle)) return middle
  const farthest = (p: Point) => Math.max(...ring.map((corner) => distance(corner, p)))
  let best: Point | null = null
  for (let i = 1; i < SPOTS; i++)
    for (let k = 1; k < SPOTS; k++) {
      const spot: Point = [
        box.minX + ((box.maxX - box.minX) * i) / SPOTS,
        box.minY + ((box.maxY - box.minY) * k) / SPOTS,
      ]
      if (isFree(spot) && (best === null || farthest(spot) < farthest(best))) best = spot
    }
  return best ?? middle
}
