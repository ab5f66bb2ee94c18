/** A plain rectangle under stacked or offset rows, in closed form: exactly what `lay` counts, without walls to walk. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { type Layout, LEAST_CELL_MM2 } from './lay.ts'
import { latticeOf } from './patterns.ts'
import { NO_EXTENT } from './prepare.ts'
import { type LayoutSpec, soundSpec } from './spec.ts'

/** Whether the closed form covers a spec: rows square to the walls. */
export const inClosedForm = (spec: LayoutSpec): boolean =>
  spec.angleDeg === 0 && (spec.pattern.kind === 'stacked' || spec.pattern.kind === 'offset')

/** The closed form walks rows; above this many it is refused. */
const MOST_ROWS = 200_000
/** A joint line this near to a wall lies on it [mm]. */
const ON_WALL_MM = 2e-6

/** Cells of one row: whole tiles, and up to two cut ones. */
type Row = { whole: number; cuts: [number, number]; lines: number }

/** The layout of a rectangle from (0, 0) to (width, height) [mm], for a spec that `inClosedForm` takes.
 *  @problem as `lay`; out-of-range where the closed form does not hold */
export function layRectangle(widthMm: number, heightMm: number, spec: LayoutSpec): Outcome<Layout> {
  const sound = soundSpec(spec)
  if (!sound.ok) return sound
  if (!inClosedForm(spec)) return refuse('out-of-range', { field: 'pattern', value: spec.angleDeg, min: 0, max: 0 })
  const gap = spec.wallGapMm
  const [w, h] = [widthMm - 2 * gap, heightMm - 2 * gap]
  if (!(w > 0 && h > 0)) return refuse('nothing-left', { said: 'wall-gap' })
  const lattice = latticeOf(spec, NO_EXTENT)
  const { a, b, insetU, insetV, tileA, tileB } = lattice.families[0]!
  const [ox, oy] = [spec.originMm[0] - gap, spec.originMm[1] - gap]
  // In lattice coordinates the room runs from (lowU, lowV), and tiles begin half a joint into their modules.
  const [spanU, spanV] = lattice.swapped ? [h, w] : [w, h]
  const [lowU, lowV] = lattice.swapped ? [insetU - oy, insetV - ox] : [insetU - ox, insetV - oy]
  const first = Math.floor(lowV / b)
  const last = Math.floor((lowV + spanV) / b)
  if (!(last - first <= MOST_ROWS))
    return refuse('too-much-work', { what: 'rows', count: last - first, limit: MOST_ROWS })
  const sum = { whole: 0, cut: 0, areaMm2: 0, jointMm: 0, smallest: Infinity }
  const row: Row = { whole: 0, cuts: [0, 0], lines: 0 }
  let shift = Number.NaN
  for (let j = first; j <= last; j++) {
    const moved = lattice.originU(0, 0, j)
    if (moved !== shift) fillRow(row, lowU - moved, spanU, a, insetU, tileA)
    shift = moved
    const [foot, head] = [Math.max(lowV, j * b), Math.min(lowV + spanV, (j + 1) * b)]
    sum.jointMm += row.lines * (head - foot)
    if (j * b > lowV + ON_WALL_MM && j * b < lowV + spanV - ON_WALL_MM) sum.jointMm += spanU
    const from = Math.max(lowV, j * b + insetV)
    const to = Math.min(lowV + spanV, j * b + insetV + tileB)
    if (to <= from) continue
    add(sum, row.whole, tileA, to - from, tileA * tileB)
    add(sum, 1, row.cuts[0], to - from, tileA * tileB)
    add(sum, 1, row.cuts[1], to - from, tileA * tileB)
  }
  return fine({
    cells: sum.whole + sum.cut,
    whole: sum.whole,
    cut: sum.cut,
    cutPieces: sum.cut,
    tileAreaMm2: sum.areaMm2,
    floorAreaMm2: widthMm * heightMm,
    jointLengthMm: sum.jointMm,
    smallestCutMm: sum.smallest === Infinity ? null : sum.smallest,
    originMm: spec.originMm,
  })
}

function add(
  sum: { whole: number; cut: number; areaMm2: number; smallest: number },
  count: number,
  lengthMm: number,
  heightMm: number,
  tileMm2: number,
): void {
  const areaMm2 = lengthMm * heightMm
  if (count === 0 || areaMm2 < LEAST_CELL_MM2) return
  sum.areaMm2 += count * areaMm2
  if (areaMm2 > tileMm2 - LEAST_CELL_MM2) {
    sum.whole += count
    return
  }
  sum.cut += count
  sum.smallest = Math.min(sum.smallest, lengthMm, heightMm)
}

/** The cells of a row from `low` over `span`, where modules begin at whole multiples of a. */
function fillRow(row: Row, low: number, span: number, a: number, inset: number, tile: number): void {
  const high = low + span
  const start = Math.floor(low / a)
  const end = Math.floor(high / a)
  // Tiles wholly inside are those whose both ends are; the two end cells are measured.
  const from = Math.max(low, start * a + inset)
  const startEnd = Math.min(high, start * a + inset + tile)
  row.cuts[0] = Math.max(0, startEnd - from)
  row.cuts[1] = end > start ? Math.max(0, Math.min(high, end * a + inset + tile) - Math.max(low, end * a + inset)) : 0
  row.whole = Math.max(0, end - start - 1)
  // Centre lines lie at whole multiples of a.
  let lines = end - start
  if (lines > 0 && end * a >= high - ON_WALL_MM) lines--
  if (low - start * a > a - ON_WALL_MM) lines--
  row.lines = Math.max(0, lines)
}
