/** The shower's floor out of the facts, and where its drain stands. */
import { type Box, boxOf, distance, type Point, type Ring, ringHolds, running } from '../../core/floor/rings.ts'
import { toSegmentMm } from '../../core/shower/sight.ts'
import { slitBehind } from '../../core/shower/slit.ts'
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

/** Whether a point is on the floor of the shower. */
const holds = ({ ring, columns }: Pick<PanRoom, 'ring' | 'columns'>, p: Point): boolean =>
  ringHolds(ring, p) && !columns.some((column) => ringHolds(column, p))

/** The ring that the bed is worked out on: round a column, with a slit behind it; several are taken off by their face.
 *  Null where the drain stands in a column. */
export function panRing({ ring, columns }: PanRoom, drain: Point): Ring | null {
  const [column, ...more] = columns
  if (columns.some((one) => ringHolds(one, drain))) return null
  return column && more.length === 0 ? slitBehind(ring, column, drain) : ring
}

/** The marks on the walls of the room itself: those round a column and along the slit are none. */
export function wallMarks<T>(marks: readonly T[], bed: Ring, { ring, columns }: PanRoom): T[] {
  if (columns.length !== 1) return [...marks]
  const edges = running(bed, 1)
  const onWall = (p: Point): boolean => ring.some((a, i) => toSegmentMm(p, a, ring[(i + 1) % ring.length]) < 1)
  return marks.filter((_, i) => {
    const [a, b] = [edges[i], edges[(i + 1) % edges.length]]
    return onWall(a) && onWall(b) && distance(a, b) > LEAST_WALL_MM
  })
}
const LEAST_WALL_MM = 50

/** Where the drain is: so far from a side wall, in a corner, else in the middle. */
export function drainOf(brief: Brief, room: PanRoom, assumed: Phrase[]): Point {
  const h = brief.heard
  const { box, lengthMm, widthMm } = room
  const off = lengthNear(h, brief.metric, 'drain')
  const fromWall =
    off !== null && off > 40 && !drainCentred(brief) && h.has('from', 'wall', 'left-side', 'right-side') ? off : null
  if (fromWall !== null)
    return [h.has('right-side') ? box.maxX - fromWall : box.minX + fromWall, (box.minY + box.maxY) / 2]
  if (h.has('corner') && h.has('drain')) {
    const inset = Math.min(150, lengthMm / 4, widthMm / 4)
    assumed.push(say('shower.assumed-corner', { inset: small(inset) }))
    return [box.minX + inset, box.minY + inset]
  }
  const middle = middleOf(room)
  const moved = !holds(room, [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2])
  if (moved)
    assumed.push(say('shower.assumed-beside', { left: small(middle[0] - box.minX), up: small(middle[1] - box.minY) }))
  else if (!h.has('center')) assumed.push(say('shower.assumed-drain'))
  return middle
}

/** "drain in the center": a figure beside it is of something else. */
const drainCentred = ({ heard }: Brief): boolean =>
  heard.marks.some(
    (m) => m.concept === 'drain' && [0, 1, 2, 3].some((k) => heard.reader.is(m.first + m.count + k, 'center')),
  )

const SPOTS = 12

/** The middle; where that is cut out of the floor, the spot on the floor with the shortest farthest run. */
function middleOf(room: PanRoom): Point {
  const { ring, box } = room
  const middle: Point = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  if (holds(room, middle)) return middle
  const farthest = (p: Point) => Math.max(...ring.map((corner) => distance(corner, p)))
  let best: Point | null = null
  for (let i = 1; i < SPOTS; i++)
    for (let k = 1; k < SPOTS; k++) {
      const spot: Point = [
        box.minX + ((box.maxX - box.minX) * i) / SPOTS,
        box.minY + ((box.maxY - box.minY) * k) / SPOTS,
      ]
      if (holds(room, spot) && (best === null || farthest(spot) < farthest(best))) best = spot
    }
  return best ?? middle
}
