/** Floors as crews say them: rectangles, rectangles less or plus rectangles at a place, rooms out of square. */
import { andThen, fine, type Outcome, refuse } from '../../problem.ts'
import { floorOf } from './check.ts'
import { less, union } from './combine.ts'
import { boxOf, type Floor, floorArea, movedFloor, type Point, type Ring } from './rings.ts'

export type Side = 'left' | 'right' | 'bottom' | 'top'
export type Corner = 'bottom-left' | 'bottom-right' | 'top-left' | 'top-right'

/** Where a rectangle goes within the box round a floor. Distances are clear distances from the box's sides [mm];
 *  `null` leaves it to the middle, and the answer says so. */
export type Place =
  | { readonly at: 'corner'; readonly corner: Corner }
  /** Against a side; `alongMm` from the side's left or bottom end. */
  | { readonly at: 'side'; readonly side: Side; readonly alongMm: number | null }
  | { readonly at: 'inside'; readonly x: FromWall | null; readonly y: FromWall | null }
/** `mm` from the low wall (left, bottom) or from the high one (right, top). */
export type FromWall = { readonly from: 'low' | 'high'; readonly mm: number }

export const CENTRED: Place = { at: 'inside', x: null, y: null }

export type Placed = {
  readonly floor: Floor
  /** The rectangle's own corner, nearest to bottom-left. [mm] */
  readonly atMm: Point
  /** Which coordinates were put in the middle because nothing was said. */
  readonly centredX: boolean
  readonly centredY: boolean
}

const rectangleRing = (x: number, y: number, width: number, height: number): Ring => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
]

/** A rectangle with its bottom-left corner at (x, y). Sides above 0 [mm].
 *  @problem bad-floor no-area for a side of 0 or less; out-of-range */
export function rectangle(widthMm: number, heightMm: number, x = 0, y = 0): Outcome<Floor> {
  if (!(widthMm > 0 && heightMm > 0)) return refuse('bad-floor', { why: 'no-area', where: [x, y] })
  return floorOf(rectangleRing(x, y, widthMm, heightMm))
}

/** The corner of a box of that size for a place, and what was centred. */
export function spot(floor: Floor, width: number, height: number, place: Place): Omit<Placed, 'floor'> {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const [midX, midY] = [(minX + maxX - width) / 2, (minY + maxY - height) / 2]
  const lineX = (w: FromWall | null) => (w === null ? midX : w.from === 'low' ? minX + w.mm : maxX - w.mm - width)
  const lineY = (w: FromWall | null) => (w === null ? midY : w.from === 'low' ? minY + w.mm : maxY - w.mm - height)
  switch (place.at) {
    case 'corner': {
      const x = place.corner.endsWith('left') ? minX : maxX - width
      const y = place.corner.startsWith('bottom') ? minY : maxY - height
      return { atMm: [x, y], centredX: false, centredY: false }
    }
    case 'side': {
      const free = place.alongMm === null
      if (place.side === 'left' || place.side === 'right') {
        const x = place.side === 'left' ? minX : maxX - width
        return { atMm: [x, free ? midY : minY + place.alongMm], centredX: false, centredY: free }
      }
      const y = place.side === 'bottom' ? minY : maxY - height
      return { atMm: [free ? midX : minX + place.alongMm, y], centredX: free, centredY: false }
    }
    case 'inside':
      return { atMm: [lineX(place.x), lineY(place.y)], centredX: place.x === null, centredY: place.y === null }
  }
}

/** A floor less a rectangle at a place: an L at a corner, a U at a side, an island inside.
 *  @problem bad-floor does-not-fit where the rectangle is not wholly on the floor; nothing-left */
export function lessRectangle(floor: Floor, widthMm: number, heightMm: number, place: Place): Outcome<Placed> {
  const where = spot(floor, widthMm, heightMm, place)
  return andThen(rectangle(widthMm, heightMm, ...where.atMm), (taken) =>
    andThen(less(floor, [taken]), (left): Outcome<Placed> => {
      const gone = floorArea(floor) - floorArea(left)
      if (Math.abs(gone - widthMm * heightMm) > 1e-6 * widthMm * heightMm + 1)
        return refuse('bad-floor', { why: 'does-not-fit', where: where.atMm })
      return fine({ floor: left, ...where })
    }),
  )
}

/** A floor plus a rectangle outside one of its sides, joined along it; `along` from the side's low (left, bottom) or high end, null for its middle.
 *  @problem bad-floor does-not-fit where the rectangle does not touch the side */
export function plusRectangle(
  floor: Floor,
  widthMm: number,
  heightMm: number,
  side: Side,
  along: number | FromWall | null,
): Outcome<Placed> {
  const where = spotOutside(
    floor,
    widthMm,
    heightMm,
    side,
    typeof along === 'number' ? { from: 'low', mm: along } : along,
  )
  return andThen(rectangle(widthMm, heightMm, ...where.atMm), (added) =>
    andThen(union([floor, added]), (joined): Outcome<Placed> => {
      if (joined.rings.length > floor.rings.length)
        return refuse('bad-floor', { why: 'does-not-fit', where: where.atMm })
      return fine({ floor: joined, ...where })
    }),
  )
}

/** The corner of a box of that size outside a side of the floor. */
export function spotOutside(
  floor: Floor,
  width: number,
  height: number,
  side: Side,
  along: FromWall | null,
): Omit<Placed, 'floor'> {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const upright = side === 'left' || side === 'right'
  const inside = spot(floor, width, height, { at: 'inside', x: upright ? null : along, y: upright ? along : null })
  const [x, y] = inside.atMm
  const atMm: Point =
    side === 'left' ? [minX - width, y] : side === 'right' ? [maxX, y] : [x, side === 'top' ? maxY : minY - height]
  return { atMm, centredX: !upright && along === null, centredY: upright && along === null }
}

/** A T: a bar along the top, and a stem of the full height in the middle. Sides [mm].
 *  @problem bad-floor does-not-fit where the stem is wider than the bar or the bar higher than the whole */
export function tShape(barWidthMm: number, barHeightMm: number, stemWidthMm: number, heightMm: number): Outcome<Floor> {
  if (!(stemWidthMm < barWidthMm && barHeightMm < heightMm)) return refuse('bad-floor', { why: 'does-not-fit' })
  return andThen(rectangle(barWidthMm, barHeightMm, 0, heightMm - barHeightMm), (bar) =>
    andThen(rectangle(stemWidthMm, heightMm, (barWidthMm - stemWidthMm) / 2, 0), (stem) => union([bar, stem])),
  )
}

/** Rooms without a place of their own, set in a row from left to right with a gap, as one floor in parts. */
export function inARow(floors: readonly Floor[], gapMm: number): Floor {
  let x = 0
  const moved = floors.map((floor) => {
    const box = boxOf(floor.rings)
    const here = movedFloor(floor, x - box.minX, -box.minY)
    x += box.maxX - box.minX + gapMm
    return here
  })
  return { rings: moved.flatMap((floor) => floor.rings) }
}

export type OutOfSquare = {
  readonly floor: Floor
  /** The diagonal not measured, bottom-right to top-left. [mm] */
  readonly otherDiagonalMm: number
  /** How far each corner is off a right angle, from bottom-left counter-clockwise. [degrees] */
  readonly cornersOffDeg: readonly [number, number, number, number]
}

/** A room from its four walls and the diagonal from bottom-left to top-right [mm], by the law of cosines.
 *  @problem bad-floor diagonal-impossible where the sides cannot span the diagonal */
export function fromDiagonal(
  bottom: number,
  right: number,
  top: number,
  left: number,
  diagonal: number,
): Outcome<OutOfSquare> {
  const spans = (a: number, b: number) => a > 0 && b > 0 && diagonal < a + b && diagonal > Math.abs(a - b)
  if (!(spans(bottom, right) && spans(left, top))) return refuse('bad-floor', { why: 'diagonal-impossible' })
  const angle = (near: number, far: number) => Math.acos((near ** 2 + diagonal ** 2 - far ** 2) / (2 * near * diagonal))
  const tilt = angle(bottom, right)
  const [c, d]: [Point, Point] = [
    [diagonal * Math.cos(tilt), diagonal * Math.sin(tilt)],
    [left * Math.cos(tilt + angle(left, top)), left * Math.sin(tilt + angle(left, top))],
  ]
  const corners: Ring = [[0, 0], [bottom, 0], c, d]
  return andThen(floorOf(corners), (floor) =>
    fine({
      floor,
      otherDiagonalMm: Math.hypot(d[0] - bottom, d[1]),
      cornersOffDeg: [0, 1, 2, 3].map((k) => offSquareDeg(corners, k)) as [number, number, number, number],
    }),
  )
}

/** How far a room meant square leans over its depth: the top wall's sideways run, positive where the bottom-left to top-right
 *  diagonal is the longer. Sides and both diagonals [mm].
 *  @source derived: for a parallelogram e² - f² = 4 w (h cos), references 7.13 for the squaring itself */
export const runOut = (widthMm: number, risingDiagonalMm: number, fallingDiagonalMm: number): number =>
  (risingDiagonalMm ** 2 - fallingDiagonalMm ** 2) / (4 * widthMm)

/** The largest 3-4-5 triangle, in whole feet or in steps of `stepMm`, that fits a room: its two legs and the diagonal [mm]. */
export function squaringTriangle(
  widthMm: number,
  heightMm: number,
  stepMm = 304.8,
): readonly [number, number, number] | null {
  const [short, long] = widthMm < heightMm ? [widthMm, heightMm] : [heightMm, widthMm]
  const times = Math.floor(Math.min(short / 3, long / 4) / stepMm + 1e-9)
  return times < 1 ? null : [3 * times * stepMm, 4 * times * stepMm, 5 * times * stepMm]
}

function offSquareDeg(corners: Ring, k: number): number {
  const [p, q, r] = [corners[(k + 3) % 4]!, corners[k]!, corners[(k + 1) % 4]!]
  const [u, v] = [Math.atan2(r[1] - q[1], r[0] - q[0]), Math.atan2(p[1] - q[1], p[0] - q[0])]
  const inner = ((v - u) * 180) / Math.PI
  return ((inner + 360) % 360) - 90
}
