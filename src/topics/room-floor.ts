/** A room of the facts as a floor with corners: parts joined, what is left out taken away where it stands. */
import { floorOf } from '../core/floor/check.ts'
import { union } from '../core/floor/combine.ts'
import { lessCurve, plusArc } from '../core/floor/curves.ts'
import { boxOf, type Floor, floorPerimeter, ringArea } from '../core/floor/rings.ts'
import {
  type Place as FloorPlace,
  type FromWall,
  inARow,
  lessRectangle,
  type Placed,
  plusRectangle,
  rectangle,
} from '../core/floor/shapes.ts'
import type { Piece, Place, Room, WallSide } from '../facts.ts'
import { count, number, type Phrase, quote, room as roomLength, say, small, word } from '../phrase.ts'
import { andThen, fine, type Outcome, refuse } from '../problem.ts'
import { remembered } from '../remembered.ts'

export type RoomPlan = { readonly room: Room; readonly floor: Floor; readonly notes: readonly Phrase[] }

const GAP_BETWEEN_PARTS_MM = 600

type Guessed = 'bite-corner' | 'centred' | 'spread' | null

/** Several alike stand evenly spaced along the longer middle line of the room. */
function spreadPlace(piece: Piece, [k, n]: readonly [number, number], floor: Floor): FloorPlace {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const along = maxX - minX >= maxY - minY
  const [span, side] = along ? [maxX - minX, piece.lengthMm] : [maxY - minY, piece.widthMm]
  const from: FromWall = { from: 'low', mm: ((k + 1) * span) / (n + 1) - side / 2 }
  return { at: 'inside', x: along ? from : null, y: along ? null : from }
}

const BITE_CORNERS = ['top-right', 'top-left', 'bottom-left', 'bottom-right'] as const

/** Where a piece that is taken away lies: as told, else a corner for a bite, the middle for a thing that stands there. */
function placeFor(piece: Piece, room: Room, bites: number, floor: Floor): { place: FloorPlace; guessed: Guessed } {
  const told = piece.place ? toldPlace(piece.place, piece) : null
  if (told) return { place: told, guessed: null }
  const spread = piece.nth && piece.kind === 'island' ? spreadPlace(piece, piece.nth, floor) : null
  if (spread) return { place: spread, guessed: 'spread' }
  if (piece.curve === 'arc') return { place: { at: 'side', side: 'top', alongMm: null }, guessed: null }
  if (piece.kind === 'island') return { place: { at: 'inside', x: null, y: null }, guessed: 'centred' }
  if (room.shape === 'U') return { place: { at: 'side', side: 'top', alongMm: null }, guessed: null }
  return { place: { at: 'corner', corner: BITE_CORNERS[bites % BITE_CORNERS.length] }, guessed: 'bite-corner' }
}

function toldPlace(place: Place, piece: Piece): FloorPlace | null {
  if (place.corner) return { at: 'corner', corner: place.corner }
  const { x, y } = distancesOf(place, piece)
  if (place.side) {
    const upright = place.side === 'left' || place.side === 'right'
    if (!(upright ? y : x)) return { at: 'side', side: place.side, alongMm: null }
    const against: FromWall = { from: place.side === 'left' || place.side === 'bottom' ? 'low' : 'high', mm: 0 }
    return { at: 'inside', x: upright ? against : x, y: upright ? y : against }
  }
  return x || y || place.centred ? { at: 'inside', x, y } : null
}

/** The distances told, from the walls to the near edge of the piece. */
function distancesOf(place: Place, piece: Piece): { x: FromWall | null; y: FromWall | null } {
  const from = (low: number | undefined, high: number | undefined, side: number): FromWall | null => {
    const half = place.toCentre ? side / 2 : 0
    if (low !== undefined) return { from: 'low', mm: low - half }
    return high === undefined ? null : { from: 'high', mm: high - half }
  }
  return {
    x: from(place.fromLeftMm, place.fromRightMm, piece.lengthMm),
    y: from(place.fromBottomMm, place.fromTopMm, piece.widthMm),
  }
}

/** Where a part outside a wall stands: on the wall told, else the top one. */
function outsidePlace(piece: Piece): { side: WallSide; along: FromWall | null } {
  const side = piece.place?.side ?? 'top'
  const { x, y } = piece.place ? distancesOf(piece.place, piece) : { x: null, y: null }
  return { side, along: side === 'left' || side === 'right' ? y : x }
}

export function sizeOf(p: Piece): Phrase {
  const across = p.curve === 'round' && Math.abs(p.lengthMm - p.widthMm) < 0.5
  const amounts = { length: roomLength(p.lengthMm), width: roomLength(p.widthMm) }
  if (!p.curve) return say('room.size', amounts)
  if (across) return say('room.across', { across: roomLength(p.lengthMm) })
  return say(p.curve === 'round' ? 'room.oval' : `room.${p.curve}`, amounts)
}

/** Rooms drawn lately: the same room is asked for its area, its walls and its layout. */
const drawn = remembered<Room, Outcome<RoomPlan>>(16)

/** A room as a floor. @problem bad-floor, nothing-left, out-of-range */
export const roomPlan = (room: Room): Outcome<RoomPlan> => drawn(room, () => draw(room))

function outlineOf(room: Room): Outcome<Floor> {
  if (room.fault) return { ok: false, problem: room.fault }
  return room.cornersMm
    ? floorOf(room.cornersMm)
    : joinedOf(
        room.pieces.filter((p) => p.sign === 1 && !p.outside),
        room,
      )
}

function outlineNotes(room: Room): Phrase[] {
  const notes = room.closingErrorMm ? [say('note.walk-closed', { gap: roomLength(room.closingErrorMm) })] : []
  const { outOfSquare, outline } = room
  if (outOfSquare)
    notes.push(say('note.out-of-square', { off: number(outOfSquare.offDeg, 1), taper: small(outOfSquare.taperMm) }))
  if (outline?.told === 'round') notes.push(say('note.curve', { sides: count(room.cornersMm?.length ?? 0) }))
  return notes
}

function draw(room: Room): Outcome<RoomPlan> {
  const outline = outlineOf(room)
  if (!outline.ok) return outline
  let floor = outline.value
  const notes: Phrase[] = outlineNotes(room)
  let bites = 0
  // Places go by the walls of the room itself, so what stands outside them is added last.
  for (const piece of room.pieces.filter((p) => p.sign === -1)) {
    const { place, guessed } = placeFor(piece, room, bites, floor)
    if (piece.kind === 'bite') bites++
    const at = cornered(piece, place)
    const tried = takenOff(floor, piece, at)
    const other = tried.ok ? null : elsewhere(floor, piece, guessed)
    const less = other ?? tried
    if (!less.ok) return less
    if (other?.ok) notes.push(putNote(floor, piece, other.value))
    const told = piece.nth === undefined || piece.nth[0] === 0
    const guess = guessed || at !== place || less.value.centredX || less.value.centredY
    if (told && guess && !other) notes.push(guessNote(at === place ? guessed : 'bite-corner', at, piece, less.value))
    if (told && piece.curve && piece.curve !== 'cut-corner') notes.push(curveNote(floor, less.value.floor))
    floor = less.value.floor
  }
  for (const piece of room.pieces.filter((p) => p.sign === 1 && p.outside)) {
    const more = putOutside(floor, piece)
    if (!more.ok) return more
    notes.push(more.value.note)
    if (piece.curve) notes.push(curveNote(floor, more.value.placed.floor))
    floor = more.value.placed.floor
  }
  return andThen(besideIt(floor, room), (whole) => fine({ room, floor: whole, notes }))
}

/** A corner form at a side alone stands in the corner there that is farther from the door. */
function cornered(piece: Piece, place: FloorPlace): FloorPlace {
  const ofCorner = piece.curve === 'rounded-corner' || piece.curve === 'cut-corner' || piece.curve === 'quarter'
  if (!ofCorner || place.at !== 'side') return place
  const corners = { left: 'top-left', right: 'top-right', top: 'top-right', bottom: 'bottom-right' } as const
  return { at: 'corner', corner: corners[place.side] }
}

const SHARES = [1 / 2, 1 / 4, 3 / 4] as const

/** Where a thing nobody placed, or one of several told at one place, stands clear of the others: quarters of the room. */
function elsewhere(floor: Floor, piece: Piece, guessed: Guessed): Outcome<Placed> | null {
  const several = piece.nth !== undefined && piece.nth[0] > 0
  if (piece.kind !== 'island' || (guessed === null && !several)) return null
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const from = (span: number, share: number, side: number): FromWall => ({ from: 'low', mm: span * share - side / 2 })
  for (const y of SHARES)
    for (const x of SHARES) {
      const place: FloorPlace = {
        at: 'inside',
        x: from(maxX - minX, x, piece.lengthMm),
        y: from(maxY - minY, y, piece.widthMm),
      }
      const tried = takenOff(floor, piece, place)
      if (tried.ok) return tried
    }
  return null
}

function putNote(floor: Floor, piece: Piece, { atMm: [x, y] }: Placed): Phrase {
  const { minX, minY } = boxOf(floor.rings)
  const said = piece.name ? quote(piece.name) : sizeOf(piece)
  return say('note.put', { said, left: roomLength(x - minX), up: roomLength(y - minY) })
}

function takenOff(floor: Floor, piece: Piece, place: FloorPlace): Outcome<Placed> {
  const { lengthMm, widthMm, curve } = piece
  if (curve) return lessCurve(floor, curve, lengthMm, widthMm, place)
  const straight = lessRectangle(floor, lengthMm, widthMm, place)
  return straight.ok ? straight : lessRectangle(floor, widthMm, lengthMm, place)
}

/** The longer side runs along the wall, unless it was said which is the depth or it does not fit so. */
function putOutside(floor: Floor, piece: Piece): Outcome<{ placed: Placed; note: Phrase }> {
  const { side, along } = outsidePlace(piece)
  const box = boxOf(floor.rings)
  const upright = side === 'left' || side === 'right'
  const wallMm = upright ? box.maxY - box.minY : box.maxX - box.minX
  const [short, long] = [Math.min(piece.lengthMm, piece.widthMm), Math.max(piece.lengthMm, piece.widthMm)]
  const deepMm = piece.curve
    ? piece.widthMm
    : piece.deep
      ? piece[`${piece.deep}Mm`]
      : long <= wallMm + 0.5
        ? short
        : long
  const wideMm = piece.curve || piece.deep ? piece.lengthMm + piece.widthMm - deepMm : deepMm === short ? long : short
  const placed = piece.curve
    ? plusArc(floor, wideMm, deepMm, side, along)
    : plusRectangle(floor, upright ? deepMm : wideMm, upright ? wideMm : deepMm, side, along)
  const centred = along === null ? 'note.outside-middle' : 'note.outside'
  const amounts = { wide: roomLength(wideMm), deep: roomLength(deepMm), side: word(`side-${side}`) }
  return andThen(placed, (value) => fine({ placed: value, note: say(centred, amounts) }))
}

const cornersIn = (floor: Floor): number => floor.rings.reduce((sum, ring) => sum + ring.length, 0)

const curveNote = (before: Floor, after: Floor): Phrase =>
  say('note.curve', { sides: count(Math.max(1, cornersIn(after) - cornersIn(before))) })

function guessNote(guessed: Guessed, place: FloorPlace, piece: Piece, placed: Placed): Phrase {
  const said = piece.name ? quote(piece.name) : sizeOf(piece)
  const [, n] = piece.nth ?? [0, 1]
  if (guessed === 'spread') return say('note.spread', { n: count(n), said })
  if (piece.curve === 'rounded-corner' && n > 1) return say('note.rounded-all', { n: count(n) })
  if ((piece.curve === 'rounded-corner' || piece.curve === 'cut-corner') && place.at === 'corner')
    return say(`note.${piece.curve}`, { corner: word(`corner-${place.corner}`) })
  if (place.at === 'side') return say('note.side-middle', { said, side: word(`side-${place.side}`) })
  return guessed === 'bite-corner' && place.at === 'corner'
    ? say('note.bite-corner', { said, corner: word(`corner-${place.corner}`) })
    : say(placed.centredX && placed.centredY ? 'note.centred' : `note.centred-${placed.centredX ? 'x' : 'y'}`, { said })
}

/** The parts joined where the shape says how; else the first alone: the others stand beside it (`besideIt`). */
function joinedOf(added: readonly Piece[], room: Room): Outcome<Floor> {
  const [first, ...rest] = added
  if (!first) return refuse('nothing-left', { said: sizeOf(room.pieces[0]) })
  let floor = rectangle(first.lengthMm, first.widthMm)
  const { shape } = room
  if (!shape) return floor
  for (const piece of rest) {
    floor = andThen(floor, (whole) =>
      andThen(joinedTo(whole, piece, shape, first), (joined): Outcome<Floor> => fine(joined.floor)),
    )
  }
  return floor
}

/** Parts that no shape joins, set beside the first as parts of their own. */
function besideIt(floor: Floor, room: Room): Outcome<Floor> {
  const rest = room.shape || room.cornersMm ? [] : room.pieces.filter((p) => p.sign === 1 && !p.outside).slice(1)
  if (rest.length === 0) return fine(floor)
  const parts: Floor[] = [floor]
  for (const piece of rest) {
    const part = rectangle(piece.lengthMm, piece.widthMm)
    if (!part.ok) return part
    parts.push(part.value)
  }
  return fine(inARow(parts, GAP_BETWEEN_PARTS_MM))
}

/** A T's stem hangs from the middle of its bar; a U's legs stand at both ends; an L's part stands at the right, at the foot. */
function joinedTo(floor: Floor, piece: Piece, shape: NonNullable<Room['shape']>, main: Piece): Outcome<Placed> {
  const { lengthMm, widthMm } = piece
  if (shape === 'T') return plusRectangle(floor, lengthMm, widthMm, 'bottom', null)
  if (shape === 'L') return plusRectangle(floor, lengthMm, widthMm, 'right', 0)
  const { maxY } = boxOf(floor.rings)
  const second = maxY > main.widthMm + 1
  const left = rectangle(lengthMm, widthMm, second ? main.lengthMm - lengthMm : 0, main.widthMm)
  return andThen(left, (leg) =>
    andThen(union([floor, leg]), (joined) =>
      fine({ floor: joined, atMm: [0, 0] as const, centredX: false, centredY: false }),
    ),
  )
}

/** The outer walls of a floor, holes left out. [m] */
export const outerWallsM = (floor: Floor): number =>
  floorPerimeter({ rings: floor.rings.filter((ring) => ringArea(ring) > 0) }) / 1000
