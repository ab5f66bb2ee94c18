/** Courses carried level round inside corners: the walls of a shower or a backsplash as one strip, each wall beginning with what
 *  the corner before it left of the tile. */
import { andThen, fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import type { Floor } from '../floor/rings.ts'
import { rectangle } from '../floor/shapes.ts'
import { type Layout, lay } from './lay.ts'
import { roundTheCorner } from './lines.ts'
import { layRectangle } from './rectangle.ts'
import { fractionValue, type LayoutSpec, type Pattern } from './spec.ts'
import { USUAL_LEAST_MM } from './wishes.ts'

export const WALLS_IN_RUN: Range = { field: 'walls', unit: '', min: 2, max: 12 }

export type RunAsked = {
  /** Walls from left to right as one faces them, corner to corner; all of one height. [mm] */
  readonly lengthsMm: readonly number[]
  readonly heightMm: number
  /** Along the courses, and across. [mm] */
  readonly tile: LayoutSpec['tile']
  readonly jointMm: number
  /** Stacked, or rows moved along the tile's length. */
  readonly pattern: Pattern
  /** Left open at the floor and at the top. [mm] */
  readonly gapMm: number
  /** A whole tile at the free end on the left or on the right, where the crew asks for it. */
  readonly fullAt: 'left' | 'right' | null
}

/** Pieces of one course on one wall: the first and the last, the whole tile where nothing is cut. [mm] */
export type CourseEnds = { readonly firstMm: number; readonly lastMm: number }

export type RunWall = {
  readonly lengthMm: number
  /** The wall from its left end and its foot, and the part of it that is tiled. */
  readonly wall: Floor
  readonly tiled: Floor
  readonly spec: LayoutSpec
  readonly layout: Layout
  /** The ends of each course that differs, from the bottom course up; then they repeat. */
  readonly ends: readonly CourseEnds[]
}

export type Run = {
  readonly walls: readonly RunWall[]
  /** All walls unrolled into one: a tile bent round a corner is one tile there. */
  readonly strip: { readonly floor: Floor; readonly spec: LayoutSpec; readonly layout: Layout }
  readonly courses: number
  readonly bottomMm: number
  readonly topMm: number
  /** Tiles that go on round a corner. */
  readonly bent: number
  /** The narrowest piece at an end or a corner. [mm] */
  readonly narrowestMm: number
  /** The wall whose cuts are alike at both ends; null where none is. */
  readonly balanced: number | null
}

/** Closer than this two lines are one. [mm] */
const SAME_MM = 0.01

/** Carries the courses round the corners from the best start: whole at an end the crew names; else alike at both ends of the back
 *  wall where no piece at a corner comes out under 2 in or a third of the tile; else the widest least piece.
 *  The soft joint in each corner is as wide as the others: half of it on either wall.
 *  @problem out-of-range, bad-floor no-area, too-much-work, nothing-left
 *  @source common practice: level courses, the back wall balanced, caulk at changes of plane (references 4.15) */
export function carryCourses(asked: RunAsked): Outcome<Run> {
  const { lengthsMm, heightMm, tile, jointMm, gapMm, pattern } = asked
  const several = within(WALLS_IN_RUN, lengthsMm.length)
  if (!several.ok) return several
  if (!lengthsMm.every((mm) => mm > 2 * jointMm) || !(heightMm > 2 * gapMm + jointMm))
    return refuse('bad-floor', { why: 'no-area', where: null })
  const up = upright(heightMm - 2 * gapMm, tile.widthMm, jointMm)
  const start = bestStart(asked)
  const spec: LayoutSpec = {
    tile,
    jointMm,
    pattern,
    angleDeg: 0,
    originMm: [start.originMm, gapMm - (tile.widthMm - up.bottomMm)],
    wallGapMm: 0,
  }
  return andThen(wallsOf(asked, spec), (walls) =>
    andThen(stripOf(asked, spec), (strip) => {
      const cells = walls.reduce((sum, wall) => sum + wall.layout.cells, 0)
      const bent = cells - strip.layout.cells
      return fine({ walls, strip, ...up, bent, narrowestMm: start.narrowestMm, balanced: start.balanced })
    }),
  )
}

/** Courses in a height: whole from the bottom; where the top would be a sliver, bottom and top share it. [mm] */
function upright(spanMm: number, sideMm: number, jointMm: number) {
  const whole = Math.floor((spanMm + jointMm + SAME_MM) / (sideMm + jointMm))
  const top = Math.max(0, spanMm - whole * (sideMm + jointMm))
  if (whole === 0) return { courses: 1, bottomMm: sideMm, topMm: spanMm }
  if (top < SAME_MM) return { courses: whole, bottomMm: sideMm, topMm: sideMm }
  const least = Math.min(USUAL_LEAST_MM, sideMm / 3)
  if (top >= least || whole < 2) return { courses: whole + 1, bottomMm: sideMm, topMm: top }
  const shared = (sideMm + top) / 2
  return { courses: whole + 1, bottomMm: shared, topMm: shared }
}

/** How far each course is moved, from the bottom one up to where they repeat. [mm] */
export function courseShifts(pattern: Pattern, moduleMm: number): number[] {
  if (pattern.kind !== 'offset') return [0]
  const share = fractionValue(pattern.share)
  const under = typeof pattern.share === 'number' ? 2 : pattern.share.under
  if (pattern.step === 'back-and-forth') return [0, share * moduleMm]
  return Array.from({ length: under }, (_, k) => ((k * share) % 1) * moduleMm)
}

/** Where the tiled part of each wall begins and ends along the strip: free ends reach the edge, corners leave half a joint. */
function spansOf({ lengthsMm, jointMm }: RunAsked): (readonly [number, number])[] {
  let at = 0
  return lengthsMm.map((length, k) => {
    const from = at
    at += length
    return [k === 0 ? 0 : from + jointMm / 2, k === lengthsMm.length - 1 ? at : at - jointMm / 2] as const
  })
}

function endsIn([from, to]: readonly [number, number], origin: number, sideMm: number, module: number): CourseEnds {
  const piece = (k: number) => Math.min(to, origin + k * module + sideMm) - Math.max(from, origin + k * module)
  let first = Math.floor((from - origin) / module)
  if (piece(first) < SAME_MM) first++
  let last = Math.floor((to - origin) / module)
  if (piece(last) < SAME_MM) last--
  return { firstMm: piece(first), lastMm: piece(last) }
}

type Begin = { readonly originMm: number; readonly narrowestMm: number; readonly balanced: number | null }

function bestStart(asked: RunAsked): Begin {
  const { lengthsMm, tile, jointMm, pattern, fullAt } = asked
  const side = tile.lengthMm
  const module = side + jointMm
  const shifts = courseShifts(pattern, module)
  const spans = spansOf(asked)
  const total = lengthsMm.reduce((a, b) => a + b, 0)
  const narrowest = (origin: number): number =>
    Math.min(
      ...shifts.flatMap((shift) =>
        spans.flatMap((span) => {
          const { firstMm, lastMm } = endsIn(span, origin + shift, side, module)
          return [firstMm, lastMm]
        }),
      ),
    )
  const begin = (originMm: number, balanced: number | null): Begin => ({
    originMm,
    narrowestMm: narrowest(originMm),
    balanced,
  })
  const widest = (all: readonly Begin[]): Begin =>
    all.reduce((a, b) => (b.narrowestMm > a.narrowestMm + SAME_MM ? b : a))
  if (fullAt !== null) return begin(fullAt === 'left' ? 0 : total - side, null)
  const back = backWall(lengthsMm)
  const middle = (spans[back]![0] + spans[back]![1]) / 2
  const centred = shifts.length <= 2 ? [middle + jointMm / 2, middle - side / 2] : []
  // Halves mirror each other; any other step is only alike at both ends where it is stacked.
  const alike = shifts.length === 1 || Math.abs(shifts[1]! - module / 2) < SAME_MM ? centred : []
  const least = Math.min(USUAL_LEAST_MM, side / 3)
  if (alike.length > 0) {
    const best = widest(alike.map((origin) => begin(origin, back)))
    if (best.narrowestMm >= least - SAME_MM) return best
  }
  // The least piece grows or shrinks evenly between the starts at which a joint meets a wall's end: the best is at one of those
  // or halfway between two of them.
  const meets = spans.flatMap(([from, to]) =>
    shifts.flatMap((shift) => [from - shift, from - side - shift, to - shift, to - side - shift]),
  )
  const wrapped = (mm: number): number => Math.round((((mm % module) + module) % module) * 1000) / 1000
  const stops = [...new Set(meets.map(wrapped))]
  const halfway = stops.flatMap((a, k) => stops.slice(k).flatMap((b) => [(a + b) / 2, wrapped((a + b + module) / 2)]))
  return widest([...alike.map((o) => begin(o, back)), ...[...stops, ...halfway].map((o) => begin(o, null))])
}

/** The wall one faces: the middle one, of an even number the longest. */
export const backWall = (lengthsMm: readonly number[]): number =>
  lengthsMm.length % 2 === 1 ? (lengthsMm.length - 1) / 2 : lengthsMm.indexOf(Math.max(...lengthsMm))

function wallsOf(asked: RunAsked, strip: LayoutSpec): Outcome<RunWall[]> {
  const { lengthsMm, heightMm, gapMm, tile, jointMm } = asked
  const shifts = courseShifts(asked.pattern, tile.lengthMm + jointMm)
  const walls: RunWall[] = []
  let spec = strip
  for (const [k, span] of spansOf(asked).entries()) {
    const from = lengthsMm.slice(0, k).reduce((a, b) => a + b, 0)
    const wall = rectangle(lengthsMm[k]!, heightMm)
    if (!wall.ok) return wall
    const tiled = rectangle(span[1] - span[0], heightMm - 2 * gapMm, span[0] - from, gapMm)
    if (!tiled.ok) return tiled
    const layout = lay(tiled.value, spec)
    if (!layout.ok) return layout
    const module = tile.lengthMm + jointMm
    const ends = shifts.map((shift) => endsIn(span, strip.originMm[0] + shift, tile.lengthMm, module))
    walls.push({ lengthMm: lengthsMm[k]!, wall: wall.value, tiled: tiled.value, spec, layout: layout.value, ends })
    spec = roundTheCorner(spec, lengthsMm[k]!)
  }
  return fine(walls)
}

function stripOf({ lengthsMm, heightMm, gapMm }: RunAsked, spec: LayoutSpec): Outcome<Run['strip']> {
  const total = lengthsMm.reduce((a, b) => a + b, 0)
  const moved: LayoutSpec = { ...spec, originMm: [spec.originMm[0], spec.originMm[1] - gapMm] }
  return andThen(rectangle(total, heightMm - 2 * gapMm), (floor) =>
    andThen(layRectangle(total, heightMm - 2 * gapMm, moved), (layout) => fine({ floor, spec: moved, layout })),
  )
}
