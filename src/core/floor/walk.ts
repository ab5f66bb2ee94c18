/** A floor from walls walked one after the other, as a crew reads them off the tape. */
import { andThen, fine, type Outcome, refuse } from '../../problem.ts'
import { floorOf } from './check.ts'
import type { Floor, Point } from './rings.ts'

export type Direction = 'right' | 'up' | 'left' | 'down'
export type WallStep = { readonly toward: Direction; readonly lengthMm: number }
/** A wall and the turn taken at its end; the first wall runs to the right. */
export type TurnStep = { readonly lengthMm: number; readonly thenTurn: 'left' | 'right' }

const WAYS: Readonly<Record<Direction, Point>> = { right: [1, 0], up: [0, 1], left: [-1, 0], down: [0, -1] }
const ROUND: readonly Direction[] = ['right', 'up', 'left', 'down']

/** A walk that misses its start by no more than this is closed: 25 mm, or 0.5 % of its length if that is more. */
export const closable = (lengthMm: number): number => Math.max(25, 0.005 * lengthMm)

export type Walked = {
  readonly floor: Floor
  /** How far the last wall ended from the first one's start. [mm] */
  readonly closingErrorMm: number
}

/** A floor from walls, each towards right, up, left or down. A small closing error is shared out among the walls that run
 *  its way, by their length; a large one is a problem that says by how much and, where one wall would close it, which.
 *  @problem bad-floor walk-open with `closingErrorMm` and `lastWall` (or null); crosses-itself and the like */
export function walk(steps: readonly WallStep[]): Outcome<Walked> {
  if (steps.length < 3) return refuse('bad-floor', { why: 'too-few-corners' })
  if (!steps.every(({ lengthMm }) => Number.isFinite(lengthMm) && lengthMm > 0))
    return refuse('bad-floor', { why: 'no-area' })
  const run = [0, 0]
  const long = [0, 0]
  for (const { toward, lengthMm } of steps)
    for (const axis of [0, 1] as const) {
      run[axis]! += WAYS[toward][axis] * lengthMm
      long[axis]! += Math.abs(WAYS[toward][axis]) * lengthMm
    }
  const [dx, dy] = [run[0]!, run[1]!]
  const closingErrorMm = Math.hypot(dx, dy)
  if (closingErrorMm > closable(long[0]! + long[1]!))
    return refuse('bad-floor', { why: 'walk-open', closingErrorMm, lastWall: closingWall(dx, dy) })
  const corners: Point[] = []
  let at: Point = [0, 0]
  for (const { toward, lengthMm } of steps) {
    corners.push(at)
    const [wx, wy] = WAYS[toward]
    const fix = wx !== 0 ? (-dx * lengthMm) / long[0]! : (-dy * lengthMm) / long[1]!
    at = [at[0] + wx * lengthMm + Math.abs(wx) * fix, at[1] + wy * lengthMm + Math.abs(wy) * fix]
  }
  return andThen(floorOf(corners), (floor) => fine({ floor, closingErrorMm }))
}

/** The one wall that would close a walk, where there is one. */
function closingWall(dx: number, dy: number): WallStep | null {
  if (Math.abs(dx) < 1) return { toward: dy > 0 ? 'down' : 'up', lengthMm: Math.abs(dy) }
  if (Math.abs(dy) < 1) return { toward: dx > 0 ? 'left' : 'right', lengthMm: Math.abs(dx) }
  return null
}

/** The same from lengths and turns.
 *  @problem as `walk` */
export function walkByTurns(steps: readonly TurnStep[]): Outcome<Walked> {
  let facing = 0
  return walk(
    steps.map(({ lengthMm, thenTurn }) => {
      const toward = ROUND[facing]!
      facing = (facing + (thenTurn === 'left' ? 1 : 3)) % 4
      return { toward, lengthMm }
    }),
  )
}
