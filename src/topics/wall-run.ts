/** Walls of one height whose courses are carried round the corners between them: from the facts to the run. */
import { carryCourses, type Run } from '../core/layout/courses.ts'
import type { Start } from '../core/layout/search.ts'
import type { LayoutSpec } from '../core/layout/spec.ts'
import type { Facts, Room } from '../facts.ts'
import type { Outcome } from '../problem.ts'

const SAME_HEIGHT_MM = 1

/** The walls of the facts, where they are to be laid as one run: all upright, plain and of one height. */
export function wallsInRun(facts: Facts): readonly Room[] | null {
  const rooms = facts.rooms ?? []
  const [first] = rooms
  const isWall = ({ upright, pieces, count, cornersMm }: Room): boolean =>
    upright === true && pieces.length === 1 && count === 1 && !cornersMm && pieces[0].sign === 1
  const high = first?.pieces[0]?.widthMm ?? 0
  const alike = rooms.every((room) => isWall(room) && Math.abs(room.pieces[0].widthMm - high) < SAME_HEIGHT_MM)
  return facts.roundCorners && rooms.length > 1 && alike ? rooms : null
}

/** The run of those walls. Level courses are of stacked rows or of rows moved along the tile.
 *  @problem as `carryCourses` */
export function runOf(walls: readonly Room[], spec: LayoutSpec, gapMm: number, facts: Facts): Outcome<Run> {
  const full = (facts.fullAt ?? []).find((side) => side === 'left' || side === 'right') ?? null
  return carryCourses({
    lengthsMm: walls.map((room) => room.pieces[0].lengthMm),
    heightMm: walls[0].pieces[0].widthMm,
    tile: spec.tile,
    jointMm: spec.jointMm,
    pattern: spec.pattern,
    gapMm,
    fullAt: full as 'left' | 'right' | null,
  })
}

/** A wall of a run as the layouts of rooms are told: its lines, and nothing promised of a wall by itself. */
export function startOf({ walls }: Run, k: number): Start {
  const { spec, layout, lengthMm, wall } = walls[k]
  const module = spec.tile.lengthMm + spec.jointMm
  const first = (((spec.originMm[0] % module) + module) % module) % module
  const high = wall.rings[0][2][1]
  const course = spec.tile.widthMm + spec.jointMm
  const line = spec.originMm[1] > 0 ? spec.originMm[1] : spec.originMm[1] + course
  return {
    spec,
    layout,
    firstLines: [
      { along: 'x', fromLowMm: first, fromHighMm: lengthMm - first },
      { along: 'y', fromLowMm: line, fromHighMm: high - line },
    ],
    middleLines: [],
    middleCorner: null,
    promises: [],
    measureAgain: null,
    turned: false,
  }
}
