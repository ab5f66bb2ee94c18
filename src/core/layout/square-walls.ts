/** The two axes of a lattice with the walls square to them, as the search for a start looks at them. */
import { boxOf, type Floor, type Point } from '../floor/rings.ts'
import type { Side } from '../floor/shapes.ts'
import { wallsOf } from '../floor/walls.ts'
import type { Axis, AxisWall } from './axis.ts'
import { wallNumbers } from './pieces.ts'
import type { Laid } from './prepare.ts'
import { isInRows, type LayoutSpec } from './spec.ts'
import { USUAL_LEAST_MM, type Wishes } from './wishes.ts'

const NO_NUMBERS = new Int32Array(0)

/** Both axes of the lattice with the walls square to them. */
export function axesOf(floor: Floor, ready: Laid, spec: LayoutSpec, wishes: Wishes): readonly [Axis, Axis] {
  const { lattice, walls } = ready
  const { a, b, insetU, insetV, tileA, tileB } = lattice.families[0]!
  const asked = wishes.fullAt.length + wishes.hideAt.length > 0
  const numbers = asked ? wallNumbers(floor, ready.floor, spec.wallGapMm) : NO_NUMBERS
  const full = named(floor, wishes.fullAt)
  const hidden = named(floor, wishes.hideAt)
  const holed = wallsOf(ready.floor).map((wall) => wall.ofHole)
  const us: AxisWall[] = []
  const vs: AxisWall[] = []
  for (let w = 0; w < walls.u0.length; w++) {
    const [du, dv] = [walls.u1[w]! - walls.u0[w]!, walls.v1[w]! - walls.v0[w]!]
    const rest = {
      outer: false,
      ofHole: holed[w]!,
      wantFull: full.has(numbers[w] ?? -1),
      mayHide: hidden.has(numbers[w] ?? -1),
    }
    // The floor is on a wall's left: beyond one that runs down, above one that runs to the right.
    if (Math.abs(du) < 1e-3) us.push({ at: walls.u0[w]! - insetU, side: dv < 0 ? 1 : -1, ...rest })
    else if (Math.abs(dv) < 1e-3) vs.push({ at: walls.v0[w]! - insetV, side: du > 0 ? 1 : -1, ...rest })
  }
  // Planks that lie and stand in turn meet a wall in many ways: their starts are tried, not reasoned out.
  const woven = !isInRows(spec.pattern)
  const least = (side: number) => wishes.leastCutMm ?? Math.min(USUAL_LEAST_MM, side / 3)
  return [
    {
      tileMm: tileA,
      moduleMm: a,
      shifts: shiftsOf(ready, spec),
      walls: woven ? [] : settled(us),
      leastMm: least(tileA),
    },
    { tileMm: tileB, moduleMm: b, shifts: [0], walls: woven ? [] : settled(vs), leastMm: least(tileB) },
  ]
}

/** Walls in their order, the outermost marked; a wall opposite to a hidden one is to be full. */
function settled(walls: readonly AxisWall[]): AxisWall[] {
  const once = new Map<string, AxisWall>()
  for (const wall of walls) {
    const key = `${wall.side} ${Math.round(wall.at * 100)}`
    const known = once.get(key)
    const merged = known && {
      wantFull: known.wantFull || wall.wantFull,
      mayHide: known.mayHide || wall.mayHide,
      ofHole: known.ofHole && wall.ofHole,
    }
    once.set(key, { ...wall, ...merged })
  }
  const kept = [...once.values()]
  const room = kept.filter((wall) => !wall.ofHole)
  const low = room.filter((wall) => wall.side === 1).sort((p, q) => p.at - q.at)[0]
  const high = room.filter((wall) => wall.side === -1).sort((p, q) => q.at - p.at)[0]
  const hiddenLow = kept.some((wall) => wall.mayHide && wall.side === 1)
  const hiddenHigh = kept.some((wall) => wall.mayHide && wall.side === -1)
  return kept
    .map((wall) => {
      const outer = wall === low || wall === high
      const opposite = outer && !wall.mayHide && (wall.side === 1 ? hiddenHigh && !hiddenLow : hiddenLow && !hiddenHigh)
      return { ...wall, outer, wantFull: wall.wantFull || opposite }
    })
    .sort((p, q) => Number(q.outer) - Number(p.outer) || Number(p.ofHole) - Number(q.ofHole))
}

/** The numbers of walls named by side or number: on a side, the outermost. */
function named(floor: Floor, walls: readonly (Side | number)[]): Set<number> {
  const all = wallsOf(floor)
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const edge: Record<Side, (p: Point) => number> = {
    left: (p) => p[0] - minX,
    right: (p) => maxX - p[0],
    bottom: (p) => p[1] - minY,
    top: (p) => maxY - p[1],
  }
  const found = new Set<number>()
  for (const name of walls) {
    if (typeof name === 'number') found.add(name)
    else
      all.forEach((wall, number) => {
        if (wall.side === name && !wall.ofHole && edge[name](wall.from) < 1) found.add(number)
      })
  }
  return found
}

/** One of each kind of row's shift, up to 24; random rows as they come. */
function shiftsOf(ready: Laid, spec: LayoutSpec): number[] {
  if (spec.pattern.kind !== 'offset' && spec.pattern.kind !== 'random') return [0]
  const { a, b } = ready.lattice.families[0]!
  const lowV = spec.pattern.kind === 'random' ? ready.walls.v0.reduce((low, v) => Math.min(low, v), Infinity) : 0
  const first = Math.floor(lowV / b)
  const kinds = new Map<number, number>()
  for (let j = first; j < first + 24; j++) {
    const shift = ready.lattice.originU(0, 0, j)
    const kind = Math.round(shift * 10) % Math.round(a * 10)
    if (!kinds.has(kind)) kinds.set(kind, shift)
  }
  return [...kinds.values()]
}
