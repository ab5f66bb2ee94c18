/** Outlines as crews tell them (a walk along the walls, four sides and a diagonal, a circle) as rooms with corners. */

import { curvedFloor } from '../core/floor/curves.ts'
import type { Floor, Point } from '../core/floor/rings.ts'
import { boxOf } from '../core/floor/rings.ts'
import { fromDiagonal } from '../core/floor/shapes.ts'
import { walk, walkByTurns } from '../core/floor/walk.ts'
import type { Facts, Outline, Room } from '../facts.ts'
import { room as roomLength, say, word } from '../phrase.ts'
import { fine, type Outcome, type Problem, refuse } from '../problem.ts'

type Drawn = Pick<Room, 'cornersMm' | 'closingErrorMm' | 'outOfSquare'>

/** A closing error within this is none. [mm] */
const CLOSED_MM = 1
/** A corner within this of square is square. [degrees] */
const SQUARE_DEG = 0.01

/** Facts whose rooms have corners wherever an outline was told. */
export function settledFacts(facts: Facts): Facts {
  return facts.rooms?.some((room) => room.outline && !room.cornersMm)
    ? { ...facts, rooms: facts.rooms.map(settledRoom) }
    : facts
}

function settledRoom(room: Room): Room {
  if (!room.outline || room.cornersMm) return room
  const drawn = drawnOf(room.outline)
  return drawn.ok ? { ...room, ...drawn.value } : { ...room, fault: worded(drawn.problem) }
}

const cornersOf = (floor: Floor): Drawn => ({ cornersMm: floor.rings[0] ?? [] })

function drawnOf(outline: Outline): Outcome<Drawn> {
  switch (outline.told) {
    case 'walk':
      return walked(walk(outline.steps))
    case 'turns':
      return walked(walkByTurns(outline.steps))
    case 'four-sides':
      return fourSided(outline.sidesMm, outline.diagonalMm)
    case 'round': {
      const round = curvedFloor(outline.curve, outline.widthMm, outline.depthMm)
      return round.ok ? fine(cornersOf(round.value)) : round
    }
    case 'triangle': {
      const [across, up] = outline.legsMm
      const corners: Point[] = [
        [0, 0],
        [across, 0],
        [0, up],
      ]
      return fine({ cornersMm: corners })
    }
    case 'corners':
      return fine({})
  }
}

function walked(told: ReturnType<typeof walk>): Outcome<Drawn> {
  if (!told.ok) return told
  const { floor, closingErrorMm } = told.value
  return fine({ ...cornersOf(floor), ...(closingErrorMm > CLOSED_MM ? { closingErrorMm } : {}) })
}

function fourSided(sides: readonly [number, number, number, number], diagonalMm: number): Outcome<Drawn> {
  const told = fromDiagonal(...sides, diagonalMm)
  if (!told.ok) return told
  const offs = told.value.cornersOffDeg
  const offDeg = offs.reduce((worst, off) => (Math.abs(off) > Math.abs(worst) ? off : worst), 0)
  const { minX, maxX } = boxOf(told.value.floor.rings)
  // How much narrower or wider the room gets from one end to the other.
  const taperMm = maxX - minX - Math.min(sides[0], sides[2])
  return fine({
    ...cornersOf(told.value.floor),
    ...(Math.abs(offDeg) > SQUARE_DEG ? { outOfSquare: { offDeg: Math.abs(offDeg), taperMm } } : {}),
  })
}

/** The gap of an open walk, and the wall that would close it, as lengths. */
function worded(problem: Problem): Problem {
  const { why, closingErrorMm, lastWall } = problem.facts
  if (why !== 'walk-open') return problem
  const last = lastWall as { toward: string; lengthMm: number } | null
  const gap = roomLength(Number(closingErrorMm))
  return last
    ? refuse('bad-floor', {
        why: 'walk-open-wall',
        gap,
        wall: say('walk.wall', { length: roomLength(last.lengthMm), way: word(`way-${last.toward}`) }),
      }).problem
    : refuse('bad-floor', { why: 'walk-open', gap }).problem
}
