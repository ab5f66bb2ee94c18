/** Courses carried round the corners of a shower or a backsplash: where each wall's joints begin, what is cut at each corner. */
import { backWall, type CourseEnds, type Run } from '../core/layout/courses.ts'
import type { Facts } from '../facts.ts'
import { area, count, type Phrase, room as roomLength, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { floorSum } from './floors.ts'
import { WALL_GAP_MM } from './laid-spec.ts'
import { cutTable } from './layout-extras.ts'
import { drawingsOf } from './picture.ts'
import { laidFor } from './plan.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { laidValues } from './tile.ts'
import { tilesToBuy } from './tile-count.ts'
import type { Brief, Told } from './topic.ts'
import { runOf, wallsInRun } from './wall-run.ts'

/** Whether courses are to go round corners: the message says so, or changes the layout of walls of which it was said. */
export const coursesAsked = ({ facts, heard }: Brief): boolean =>
  heard.has('carry-round') || (facts.roundCorners === true && wallsInRun(facts) !== null)

/** @problem question: the tile, or the walls and their height; those of the layout */
export function courses(brief: Brief): Outcome<Told> {
  const { facts } = brief
  const known = knownTile(facts)
  if (!wallsInRun(facts)) return refuse('question', { question: 'walls-in-run' })
  if (!known) return refuse('question', { question: 'tile' })
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const laid = laidFor(facts, known, jointMm)
  if (laid === null) return refuse('question', { question: 'small-tile' })
  if (!laid.ok) return laid
  const { run, cells, whole, cut } = laid.value
  if (!run) return refuse('question', { question: 'level-pattern' })
  const tiles = tilesToBuy(brief, laid.value)
  const tile = tilePhrase(known, brief.metric)
  const areaM2 = floor.value?.areaM2 ?? 0
  return fine({
    topic: 'layout',
    answer: say('courses.answer', {
      tiles: count(tiles ?? cells),
      tile,
      walls: count(run.walls.length),
      corners: count(run.walls.length - 1),
    }),
    details: [
      ...run.walls.map((_, k) => wallLine(run, k)),
      ...cornerLine(run),
      ...meetingLine(run),
      courseLine(run, known.widthMm),
      say('courses.places', { area: area(areaM2), cells: count(cells), whole: count(whole), cut: count(cut) }),
      say('courses.caulk', { joint: small(jointMm) }),
    ],
    assumed: [
      ...assumed,
      ...(facts.pattern ? [] : [say('assumed.pattern', { pattern: word('pattern-stacked') })]),
      say(facts.tileStands ? 'courses.stands' : 'courses.lies'),
      say('courses.faces', { gap: small(WALL_GAP_MM) }),
      ...startNote(run, facts),
    ],
    warnings: sliverWarning(run, facts),
    values: {
      ...laidValues(laid.value),
      tile_count: tiles,
      area_m2: areaM2,
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      joint_mm: jointMm,
    },
    tables: [cutTable(laid.value)],
    drawings: drawingsOf(laid.value, [], facts),
    offers: ['keep'],
  })
}

/** The first joint and both end pieces of a wall, for each course that differs. */
function wallLine({ walls }: Run, k: number): Phrase {
  const { lengthMm, ends, spec } = walls[k]
  const base = { n: count(k + 1), length: roomLength(lengthMm) }
  const corner = k === 0 ? 0 : spec.jointMm / 2
  const told = ({ firstMm, lastMm }: CourseEnds) => ({
    joint: small(firstMm + corner),
    first: small(firstMm),
    last: small(lastMm),
  })
  if (ends.length === 1) return say('courses.wall', { ...base, ...told(ends[0]) })
  const rows = ends.map((end, row) => say('courses.row', { row: count(row + 1), ...told(end) }))
  return say('courses.wall-rows', { ...base, rows })
}

function cornerLine({ bent, walls }: Run): Phrase[] {
  if (bent === 0) return [say('courses.on-joints')]
  return [say('courses.bent', { bent: count(bent), corners: count(walls.length - 1) })]
}

/** Walls all round a room: in the last corner the pattern meets its own beginning. */
function meetingLine({ walls, strip }: Run): Phrase[] {
  const lengths = walls.map((wall) => wall.lengthMm)
  const around = lengths.length === 4 && Math.abs(lengths[0] - lengths[2]) < 1 && Math.abs(lengths[1] - lengths[3]) < 1
  if (!around) return []
  const module = strip.spec.tile.lengthMm + strip.spec.jointMm
  const rest = lengths.reduce((a, b) => a + b, 0) % module
  return rest < 1 || module - rest < 1 ? [] : [say('courses.meets', { off: small(Math.min(rest, module - rest)) })]
}

function courseLine({ courses, bottomMm, topMm }: Run, sideMm: number): Phrase {
  const whole = Math.abs(bottomMm - sideMm) < 0.5
  const amounts = { courses: count(courses), bottom: small(bottomMm), top: small(topMm) }
  if (courses === 1) return say('courses.one-course', amounts)
  if (Math.abs(topMm - bottomMm) < 0.5) return say(whole ? 'courses.all-whole' : 'courses.shared', amounts)
  return say('courses.courses', amounts)
}

/** Why the run begins where it does. */
function startNote({ balanced, walls }: Run, facts: Facts): Phrase[] {
  const full = (facts.fullAt ?? []).find((side) => side === 'left' || side === 'right')
  if (full) return [say('courses.full-at', { side: word(`side-${full}`) })]
  if (balanced === null) return [say('courses.widest')]
  return walls.length > 1 ? [say('courses.balanced', { n: count(backWall(walls.map((w) => w.lengthMm)) + 1) })] : []
}

/** Pieces too narrow to stay in a corner, whatever the start. [mm] */
const SLIVER_MM = 25.4

function sliverWarning(run: Run, facts: Facts): Phrase[] {
  const { narrowestMm, walls } = run
  if (narrowestMm >= SLIVER_MM) return []
  const named = (facts.fullAt ?? []).some((side) => side === 'left' || side === 'right')
  const rooms = named ? wallsInRun(facts) : null
  const free = rooms ? runOf(rooms, walls[0].spec, WALL_GAP_MM, { ...facts, fullAt: [] }) : null
  return free?.ok
    ? [say('courses.sliver-full', { mm: small(narrowestMm), best: small(free.value.narrowestMm) })]
    : [say('courses.sliver', { mm: small(narrowestMm) })]
}
