/** `npm run -s layout -- [FILE]`: floors and lattices in millimetres as JSON lines, exact counts back.
 *
 *  Patterns: `stacked`, `offset` (with `offset`), `diagonal` (45 degrees where no angle is given), `random`, `herringbone`,
 *  `double-herringbone`, `basketweave`; `hexagon` (the lesser of `tile_mm` across two sides, which stand along the second axis;
 *  every other row half a place on); `two-size` (a large square with a small one of side `small_mm` at its corners: large ones
 *  at i (A, B) + j (-B, A), small ones at (A, 0) from them, A and B the sides with a joint; `by_size` tells both apart).
 *  The origin is a corner of the box round the tile of cell (0, 0). */
import { floorOfRings } from '../../src/core/floor/check.ts'
import type { Floor } from '../../src/core/floor/rings.ts'
import { type Layout, lay } from '../../src/core/layout/lay.ts'
import { searchStart } from '../../src/core/layout/search.ts'
import type { LayoutSpec, Pattern } from '../../src/core/layout/spec.ts'
import { NO_WISHES } from '../../src/core/layout/wishes.ts'
import { fine, type Outcome } from '../../src/problem.ts'
import { type Fields, fieldsOf, numberIn, pairIn, ringsIn, wordIn } from './fields.ts'
import { answerLines } from './lines.ts'

const PATTERNS = [
  'stacked',
  'offset',
  'diagonal',
  'random',
  'herringbone',
  'double-herringbone',
  'basketweave',
  'hexagon',
  'two-size',
] as const

/** The layout of one line's floor, or its problem. */
export function layLine(asked: unknown): Outcome<unknown> {
  const fields = fieldsOf(asked)
  if (!fields.ok) return fields
  const rings = ringsIn(fields.value, 'rings_mm')
  if (!rings.ok) return rings
  const spec = specOf(fields.value)
  if (!spec.ok) return spec
  const floor = floorOfRings(rings.value)
  if (!floor.ok) return floor
  const start = performance.now()
  const laid = fields.value['origin_mm'] === 'search' ? searched(floor.value, spec.value) : lay(floor.value, spec.value)
  const ms = performance.now() - start
  return laid.ok ? fine(figures(laid.value, ms)) : laid
}

function searched(floor: Floor, spec: LayoutSpec): Outcome<Layout> {
  const start = searchStart(floor, spec, NO_WISHES)
  return start.ok ? fine(start.value.layout) : start
}

function figures(layout: Layout, ms: number) {
  return {
    tile_cells: layout.cells,
    tile_whole: layout.whole,
    tile_cut: layout.cut,
    cut_pieces: layout.cutPieces,
    tile_area_mm2: layout.tileAreaMm2,
    floor_area_mm2: layout.floorAreaMm2,
    joint_length_mm: layout.jointLengthMm,
    smallest_cut_mm: layout.smallestCutMm,
    origin_mm: layout.originMm,
    ...(layout.bySize ? { by_size: layout.bySize } : {}),
    ms,
  }
}

/** The spec of a line; what a line leaves out is stacked, square to the axes, from zero and without a wall gap. */
function specOf(fields: Fields): Outcome<LayoutSpec> {
  const tile = pairIn(fields, 'tile_mm')
  if (!tile.ok) return tile
  const joint = numberIn(fields, 'joint_mm')
  if (!joint.ok) return joint
  const name = wordIn(fields, 'pattern', PATTERNS)
  if (!name.ok) return name
  const offset = numberIn(fields, 'offset', name.value === 'offset' ? 0.5 : 0)
  if (!offset.ok) return offset
  const angle = numberIn(fields, 'angle_deg', 0)
  if (!angle.ok) return angle
  const origin = fields['origin_mm'] === 'search' ? fine([0, 0] as const) : pairIn(fields, 'origin_mm', [0, 0])
  if (!origin.ok) return origin
  const small = name.value === 'two-size' ? numberIn(fields, 'small_mm') : fine(0)
  if (!small.ok) return small
  const gap = numberIn(fields, 'wall_gap_mm', 0)
  if (!gap.ok) return gap
  const [lengthMm, widthMm] = tile.value
  return fine({
    tile: { lengthMm, widthMm },
    jointMm: joint.value,
    pattern: patternOf(name.value, offset.value, small.value),
    angleDeg: name.value === 'diagonal' && angle.value === 0 ? 45 : angle.value,
    originMm: origin.value,
    wallGapMm: gap.value,
  })
}

function patternOf(name: (typeof PATTERNS)[number], share: number, smallMm: number): Pattern {
  switch (name) {
    case 'offset':
      return { kind: 'offset', share, step: 'stair', along: 'length' }
    case 'random':
      return { kind: 'random', leastStaggerMm: null }
    case 'herringbone':
      return { kind: 'herringbone', planks: 1 }
    case 'double-herringbone':
      return { kind: 'herringbone', planks: 2 }
    case 'basketweave':
      return { kind: 'basketweave' }
    case 'hexagon':
      return { kind: 'hexagon' }
    case 'two-size':
      return { kind: 'two-size', smallMm }
    default:
      return { kind: 'stacked' }
  }
}

if (import.meta.main) await answerLines(layLine)
