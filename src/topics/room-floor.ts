/** A room of the facts as a floor with corners: parts joined, what is left out taken away where it stands. */
import { floorOf } from '../core/floor/check.ts'
import { union } from '../core/floor/combine.ts'
import { boxOf, type Floor, floorPerimeter, ringArea } from '../core/floor/rings.ts'
import {
  type Place as FloorPlace,
  inARow,
  lessRectangle,
  type Placed,
  plusRectangle,
  rectangle,
} from '../core/floor/shapes.ts'
import type { Piece, Place, Room } from '../facts.ts'
import { number, type Phrase, quote, room as roomLength, say, small, word } from '../phrase.ts'
import { andThen, fine, type Outcome, refuse } from '../problem.ts'

export type RoomPlan = { readonly room: Room; readonly floor: Floor; readonly notes: readonly Phrase[] }

const GAP_BETWEEN_PARTS_MM = 600

const BITE_CORNERS = ['top-right', 'top-left', 'bottom-left', 'bottom-right'] as const

/** Where a piece that is taken away lies: as told, else a corner for a bite, the middle for a thing that stands there. */
function placeFor(
  piece: Piece,
  room: Room,
  bites: number,
): { place: FloorPlace; guessed: 'bite-corner' | 'centred' | null } {
  const told = piece.place ? toldPlace(piece.place) : null
  if (told) return { place: told, guessed: null }
  if (piece.kind === 'island') return { place: { at: 'inside', x: null, y: null }, guessed: 'centred' }
  if (room.shape === 'U') return { place: { at: 'side', side: 'top', alongMm: null }, guessed: null }
  return { place: { at: 'corner', corner: BITE_CORNERS[bites % BITE_CORNERS.length] }, guessed: 'bite-corner' }
}

function toldPlace(place: Place): FloorPlace | null {
  if (place.corner) return { at: 'corner', corner: place.corner }
  if (place.side) return { at: 'side', side: place.side, alongMm: null }
  const x =
    place.fromLeftMm !== undefined
      ? { from: 'low' as const, mm: place.fromLeftMm }
      : place.fromRightMm !== undefined
        ? { from: 'high' as const, mm: place.fromRightMm }
        : null
  const y =
    place.fromBottomMm !== undefined
      ? { from: 'low' as const, mm: place.fromBottomMm }
      : place.fromTopMm !== undefined
        ? { from: 'high' as const, mm: place.fromTopMm }
        : null
  return x || y || place.centred ? { at: 'inside', x, y } : null
}

const sizeOf = (p: Piece): Phrase => say('room.size', { length: roomLength(p.lengthMm), width: roomLength(p.widthMm) })

/** Rooms drawn lately: the same room is asked for its area, its walls and its layout. */
const drawn = new WeakMap<Room, Outcome<RoomPlan>>()

/** A room as a floor. @problem bad-floor, nothing-left, out-of-range */
export function roomPlan(room: Room): Outcome<RoomPlan> {
  const known = drawn.get(room)
  if (known) return known
  const plan = draw(room)
  drawn.set(room, plan)
  return plan
}

function outlineOf(room: Room): Outcome<Floor> {
  if (room.fault) return { ok: false, problem: room.fault }
  return room.cornersMm
    ? floorOf(room.cornersMm)
    : joinedOf(
        room.pieces.filter((p) => p.sign === 1),
        room,
      )
}

function outlineNotes(room: Room): Phrase[] {
  const notes = room.closingErrorMm ? [say('note.walk-closed', { gap: roomLength(room.closingErrorMm) })] : []
  const { outOfSquare } = room
  return outOfSquare
    ? [...notes, say('note.out-of-square', { off: number(outOfSquare.offDeg, 1), taper: small(outOfSquare.taperMm) })]
    : notes
}

function draw(room: Room): Outcome<RoomPlan> {
  const outline = outlineOf(room)
  if (!outline.ok) return outline
  let floor = outline.value
  const notes: Phrase[] = outlineNotes(room)
  let bites = 0
  for (const piece of room.pieces.filter((p) => p.sign === -1)) {
    const { place, guessed } = placeFor(piece, room, bites)
    if (piece.kind === 'bite') bites++
    const straight = lessRectangle(floor, piece.lengthMm, piece.widthMm, place)
    const less = straight.ok ? straight : lessRectangle(floor, piece.widthMm, piece.lengthMm, place)
    if (!less.ok) return { ok: false, problem: less.problem }
    floor = less.value.floor
    if (guessed || less.value.centredX || less.value.centredY) notes.push(guessNote(guessed, place, piece))
  }
  return andThen(besideIt(floor, room), (whole) => fine({ room, floor: whole, notes }))
}

function guessNote(guessed: 'bite-corner' | 'centred' | null, place: FloorPlace, piece: Piece): Phrase {
  const said = piece.name ? quote(piece.name) : sizeOf(piece)
  if (place.at === 'side') return say('note.side-middle', { said, side: word(`side-${place.side}`) })
  return guessed === 'bite-corner' && place.at === 'corner'
    ? say('note.bite-corner', { said, corner: word(`corner-${place.corner}`) })
    : say('note.centred', { said })
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
  const rest = room.shape || room.cornersMm ? [] : room.pieces.filter((p) => p.sign === 1).slice(1)
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
