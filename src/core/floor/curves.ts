/** Curved parts of a floor as many-sided polygons of the curve's own area: columns, half-round bays, rounded corners, ovals. */
import { andThen, fine, type Outcome, refuse } from '../../problem.ts'
import { floorOf } from './check.ts'
import { less, union } from './combine.ts'
import { type Floor, floorArea, type Point, type Ring, ringArea } from './rings.ts'
import { type Corner, type FromWall, type Place, type Placed, type Side, spot, spotOutside } from './shapes.ts'

/** `round` is a circle or an oval; `arc` a part of a circle on a chord, a half circle where it is half as deep as wide;
 *  `quarter` a quarter disc in a corner; `rounded-corner` what a rounded corner loses against a square one;
 *  `cut-corner` what one cut off straight loses. */
export type Curve = 'round' | 'arc' | 'quarter' | 'rounded-corner' | 'cut-corner'

/** How far a curve's chords may leave the curve [mm]. */
const CHORD_MM = 0.5
const LEAST_SIDES = 8

/** Corners along an arc, both ends on the curve and the others moved out so far that the fan over them has the curve's own area. */
function fairArc([cx, cy]: Point, radiusMm: number, fromRad: number, turnRad: number): Point[] {
  const step = 2 * Math.acos(Math.max(0, 1 - CHORD_MM / radiusMm))
  const n = Math.max(LEAST_SIDES, Math.ceil(Math.abs(turnRad) / step))
  const s = Math.sin(Math.abs(turnRad) / n)
  // (n - 2)/2 s R² + s r R = turn r²/2
  const [a, b, c] = [((n - 2) / 2) * s, s * radiusMm, (-Math.abs(turnRad) * radiusMm ** 2) / 2]
  const out = (-b + Math.sqrt(b * b - 4 * a * c)) / (2 * a)
  return Array.from({ length: n + 1 }, (_, k): Point => {
    const r = k === 0 || k === n ? radiusMm : out
    const angle = fromRad + (turnRad * k) / n
    return [cx + r * Math.cos(angle), cy + r * Math.sin(angle)]
  })
}

/** An oval of the given width and height, its box's corner at (0, 0); a circle where they are alike. */
function ovalRing(widthMm: number, heightMm: number): Ring {
  const longer = Math.max(widthMm, heightMm) / 2
  const n = Math.max(4 * LEAST_SIDES, Math.ceil(Math.PI / Math.acos(Math.max(0, 1 - CHORD_MM / longer))))
  const grow = Math.sqrt((2 * Math.PI) / (n * Math.sin((2 * Math.PI) / n)))
  return Array.from({ length: n }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / n
    return [(widthMm / 2) * (1 + grow * Math.cos(angle)), (heightMm / 2) * (1 + grow * Math.sin(angle))]
  })
}

/** A part of a circle standing on its chord along y = 0; deeper than half a circle it is half an oval. */
function arcRing(widthMm: number, depthMm: number): Ring {
  if (depthMm > widthMm / 2 + 1e-9) {
    const half = fairArc([widthMm / 2, 0], widthMm / 2, 0, Math.PI)
    return half.map(([x, y]): Point => [x, (y * depthMm) / (widthMm / 2)])
  }
  const radius = (widthMm ** 2 / 4 + depthMm ** 2) / (2 * depthMm)
  const halfTurn = Math.asin(Math.min(1, widthMm / (2 * radius)))
  return fairArc([widthMm / 2, depthMm - radius], radius, Math.PI / 2 - halfTurn, 2 * halfTurn)
}

/** A quarter disc in the bottom left corner, and what a corner rounded there loses. Stretched where width and height differ. */
function cornerRing(curve: 'quarter' | 'rounded-corner' | 'cut-corner', widthMm: number, heightMm: number): Ring {
  if (curve === 'cut-corner')
    return [
      [0, 0],
      [widthMm, 0],
      [0, heightMm],
    ]
  const tall = heightMm / widthMm
  const points =
    curve === 'quarter'
      ? [[0, 0] as const, ...fairArc([0, 0], widthMm, 0, Math.PI / 2)]
      : [[0, 0] as const, ...fairArc([widthMm, widthMm], widthMm, -Math.PI / 2, -Math.PI / 2)]
  return points.map(([x, y]): Point => [x, y * tall])
}

/** What a curve takes of the box round it: pi/4 for a circle, a half circle and a quarter, the rest of it for a rounded corner.
 *  Width along the chord and depth above 0 [mm, mm2]. */
export function curveArea(curve: Curve, widthMm: number, depthMm: number): number {
  if (curve === 'cut-corner') return (widthMm * depthMm) / 2
  if (curve !== 'arc') {
    const disc = (Math.PI / 4) * widthMm * depthMm
    return curve === 'rounded-corner' ? widthMm * depthMm - disc : disc
  }
  return Math.abs(ringArea(arcRing(widthMm, depthMm)))
}

/** A room of its own: a whole oval, or a half or quarter of a round.
 *  @problem bad-floor no-area for a side of 0 or less */
export function curvedFloor(curve: Curve, widthMm: number, depthMm: number): Outcome<Floor> {
  if (!(widthMm > 0 && depthMm > 0)) return refuse('bad-floor', { why: 'no-area', where: [0, 0] })
  if (curve === 'round') return floorOf(ovalRing(widthMm, depthMm))
  return floorOf(curve === 'arc' ? arcRing(widthMm, depthMm) : cornerRing(curve, widthMm, depthMm))
}

/** The curve in its box, bulging away from `from`; a quarter in its corner. Rings at (0, 0). */
function facing(curve: Curve, widthMm: number, depthMm: number, from: Side, corner: Corner): Ring {
  if (curve === 'round') return ovalRing(widthMm, depthMm)
  if (curve !== 'arc') {
    const ring = cornerRing(curve, widthMm, depthMm)
    const [right, top] = [corner.endsWith('right'), corner.startsWith('top')]
    return ring.map(([x, y]): Point => [right ? widthMm - x : x, top ? depthMm - y : y])
  }
  const ring = arcRing(widthMm, depthMm)
  switch (from) {
    case 'bottom':
      return ring
    case 'top':
      return ring.map(([x, y]): Point => [x, depthMm - y])
    case 'left':
      return ring.map(([x, y]): Point => [y, x])
    case 'right':
      return ring.map(([x, y]): Point => [depthMm - y, x])
  }
}

const boxOn = (curve: Curve, widthMm: number, depthMm: number, side: Side): readonly [number, number] =>
  curve === 'arc' && (side === 'left' || side === 'right') ? [depthMm, widthMm] : [widthMm, depthMm]

const movedRing = (ring: Ring, [x, y]: Point): Ring => ring.map(([a, b]): Point => [a + x, b + y])

/** A round that leans on a wall may stand out of it by its chords' error. */
const LEANS = 2e-3

/** A floor less a curve: width along the wall it stands on and depth from it, both above 0 [mm]. An arc inside the floor stands
 *  on a chord along the bottom of its box.
 *  @problem bad-floor does-not-fit where it is not on the floor; no-area; nothing-left */
export function lessCurve(floor: Floor, curve: Curve, widthMm: number, depthMm: number, place: Place): Outcome<Placed> {
  if (!(widthMm > 0 && depthMm > 0)) return refuse('bad-floor', { why: 'no-area', where: null })
  const side = place.at === 'side' ? place.side : 'bottom'
  const where = spot(floor, ...boxOn(curve, widthMm, depthMm, side), place)
  const corner = place.at === 'corner' ? place.corner : 'bottom-left'
  const ring = movedRing(facing(curve, widthMm, depthMm, side, corner), where.atMm)
  return andThen(floorOf(ring), (taken) =>
    andThen(less(floor, [taken]), (left): Outcome<Placed> => {
      const [gone, whole] = [floorArea(floor) - floorArea(left), floorArea(taken)]
      return Math.abs(gone - whole) > LEANS * whole + 1
        ? refuse('bad-floor', { why: 'does-not-fit', where: where.atMm })
        : fine({ floor: left, ...where })
    }),
  )
}

/** A floor plus an arc outside one of its sides.
 *  @problem bad-floor does-not-fit where it does not touch the side; no-area */
export function plusArc(
  floor: Floor,
  widthMm: number,
  depthMm: number,
  side: Side,
  along: FromWall | null,
): Outcome<Placed> {
  if (!(widthMm > 0 && depthMm > 0)) return refuse('bad-floor', { why: 'no-area', where: null })
  const where = spotOutside(floor, ...boxOn('arc', widthMm, depthMm, side), side, along)
  const opposite = { left: 'right', right: 'left', top: 'bottom', bottom: 'top' } as const
  const ring = movedRing(facing('arc', widthMm, depthMm, opposite[side], 'bottom-left'), where.atMm)
  return andThen(floorOf(ring), (added) =>
    andThen(union([floor, added]), (joined): Outcome<Placed> => {
      const apart = joined.rings.length > floor.rings.length
      return apart ? refuse('bad-floor', { why: 'does-not-fit', where: where.atMm }) : fine({ floor: joined, ...where })
    }),
  )
}
