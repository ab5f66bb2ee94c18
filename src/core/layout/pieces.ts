/** Every tile and every cut piece of a layout, for the cut list and the picture. Not on the counting path. */
import { fine, type Outcome, refuse } from '../../problem.ts'
import { unionOf } from '../floor/combine.ts'
import { type Floor, floorArea, type Point, type Ring } from '../floor/rings.ts'
import { type Wall, wallsOf } from '../floor/walls.ts'
import type { Walls } from './box-walls.ts'
import type { ClipPiece } from './clip.ts'
import { hexagonRing } from './hexagon.ts'
import { insideModules } from './inside.ts'
import { type Layout, layWith, type MetCell } from './lay.ts'
import { type Laid, prepare } from './prepare.ts'
import type { LayoutSpec } from './spec.ts'

/** A cell of the pattern by its numbers. */
export type Cell = { readonly family: number; readonly i: number; readonly j: number }

export type WholeTile = {
  readonly cell: Cell
  /** Its four corners on the floor. */
  readonly outlineMm: Ring
  /** Whether its length lies along the pattern's second axis. */
  readonly turned: boolean
}

/** Which sides of the piece's own box are the tile's uncut edges: along the length from `start` to `end`, across it from
 *  `near` to `far`. */
export type FactoryEdges = {
  readonly start: boolean
  readonly end: boolean
  readonly near: boolean
  readonly far: boolean
}

export type CutPiece = {
  readonly cell: Cell
  /** Extent along the tile's length [mm], at most the tile's length. */
  readonly lengthMm: number
  /** Extent along the tile's width [mm]. */
  readonly widthMm: number
  readonly areaMm2: number
  /** Outline on the tile, from the tile's corner, length first; null for a plain rectangle. */
  readonly shapeMm: readonly Ring[] | null
  readonly factory: FactoryEdges
  /** Outline on the floor: the outer ring, and holes if any. */
  readonly outlineMm: readonly Ring[]
  readonly turned: boolean
  /** The walls it is cut to, numbered as `wallsOf` lists them. */
  readonly walls: readonly number[]
}

export type Tiles = {
  readonly layout: Layout
  readonly whole: readonly WholeTile[]
  readonly cuts: readonly CutPiece[]
}

/** Tiles above which they are not listed one by one. */
export const MOST_LISTED = 100_000
/** Two measures closer than this are one [mm]. */
const SAME_MM = 0.01

/** The cut pieces of a layout, in the order of the cells. @problem as `lay` */
export function cutPieces(floor: Floor, spec: LayoutSpec): Outcome<{ layout: Layout; cuts: readonly CutPiece[] }> {
  const cuts: CutPiece[] = []
  let known: Int32Array | null = null
  const laid = layWith(floor, spec, (cell, on) => {
    known ??= wallNumbers(floor, on.floor, spec.wallGapMm)
    for (const piece of cell.pieces) cuts.push(cutPiece(cell, piece, on, known))
  })
  return laid.ok ? fine({ layout: laid.value, cuts }) : laid
}

/** All tiles of a layout, whole and cut.
 *  @problem as `lay`; too-much-work above MOST_LISTED tiles */
export function tilesOf(floor: Floor, spec: LayoutSpec): Outcome<Tiles> {
  const { lengthMm, widthMm } = spec.tile
  const about = floorArea(floor) / ((lengthMm + spec.jointMm) * (widthMm + spec.jointMm))
  if (!(about <= MOST_LISTED))
    return refuse('too-much-work', { what: 'tiles', count: Math.round(about), limit: MOST_LISTED })
  const cuts: CutPiece[] = []
  const whole: WholeTile[] = []
  const met = new Set<string>()
  const ready = prepare(floor, spec)
  if (!ready.ok) return ready
  let known: Int32Array | null = null
  const laid = layWith(
    floor,
    spec,
    (cell, on) => {
      known ??= wallNumbers(floor, on.floor, spec.wallGapMm)
      met.add(keyOf(cell))
      if (cell.whole) whole.push(wholeTile(cell, on))
      for (const piece of cell.pieces) cuts.push(cutPiece(cell, piece, on, known))
    },
    (family, i, j) => met.add(keyOf({ family, i, j })),
  )
  if (!laid.ok) return laid
  insideModules(
    ready.value,
    (family, i, j) => met.has(keyOf({ family, i, j })),
    (family, i, j) => whole.push(tileAt(ready.value, family, i, j)),
  )
  return fine({ layout: laid.value, whole, cuts })
}

const keyOf = ({ family, i, j }: Cell): string => `${family} ${i} ${j}`

function wholeTile(cell: MetCell, on: Laid): WholeTile {
  const { family, i, j, u, v, tileA, tileB, turned } = cell
  return { cell: { family, i, j }, outlineMm: tileOn(on, family, u, v, tileA, tileB), turned }
}

function tileOn(on: Laid, family: number, u: number, v: number, a: number, b: number): Ring {
  const isBox = on.lattice.families[family]!.shape === 'box'
  return onFloor(on, isBox ? boxRing(u, v, u + a, v + b) : hexagonRing(u, v, a, b))
}

/** An outline in lattice coordinates as it lies on the floor; swapped axes would run it backwards. */
function onFloor(on: Laid, ring: Ring): Ring {
  const there = ring.map(([u, v]) => on.toFloor(u, v))
  return on.lattice.swapped ? there.reverse() : there
}

const boxRing = (u0: number, v0: number, u1: number, v1: number): Ring => [
  [u0, v0],
  [u1, v0],
  [u1, v1],
  [u0, v1],
]

function tileAt(on: Laid, family: number, i: number, j: number): WholeTile {
  const { lattice } = on
  const kind = lattice.families[family]!
  const u = lattice.originU(family, i, j) + kind.insetU
  const v = lattice.originV(family, i, j) + kind.insetV
  return { cell: { family, i, j }, outlineMm: tileOn(on, family, u, v, kind.tileA, kind.tileB), turned: kind.turned }
}

function cutPiece(cell: MetCell, piece: ClipPiece, on: Laid, known: Int32Array): CutPiece {
  const { family, i, j, u, v, tileA, tileB, turned } = cell
  const { minU, maxU, minV, maxV, areaMm2 } = piece
  const [extentU, extentV] = [maxU - minU, maxV - minV]
  const plain = extentU * extentV - areaMm2 <= SAME_MM * Math.min(extentU, extentV)
  const local: readonly Ring[] = plain
    ? [boxRing(minU, minV, maxU, maxV)]
    : unionOf(
        piece.bands.map(
          ([va, la, ra, vb, lb, rb]): Ring => [
            [la, va],
            [ra, va],
            [rb, vb],
            [lb, vb],
          ],
        ),
      )
  const [lowU, highU] = [minU <= SAME_MM, maxU >= tileA - SAME_MM]
  const [lowV, highV] = [minV <= SAME_MM, maxV >= tileB - SAME_MM]
  // A standing plank is the lying one turned a quarter: its width runs against u. Swapped axes only trade names.
  const quarter = turned && !on.lattice.swapped
  const onTile = ([x, y]: Point): Point => (quarter ? [y, tileA - x] : turned ? [y, x] : [x, y])
  const shape = local.map((ring) => (turned && !quarter ? ring.map(onTile).reverse() : ring.map(onTile)))
  const isBox = on.lattice.families[family]!.shape === 'box'
  const [near, far] = turned ? (quarter ? [highU, lowU] : [lowU, highU]) : [lowV, highV]
  return {
    cell: { family, i, j },
    lengthMm: turned ? extentV : extentU,
    widthMm: turned ? extentU : extentV,
    areaMm2,
    shapeMm: plain ? null : shape,
    // A hexagon's piece has no side that a straight cut leaves whole.
    factory: isBox
      ? { start: turned ? lowV : lowU, end: turned ? highV : highU, near, far }
      : { start: false, end: false, near: false, far: false },
    outlineMm: local.map((ring) =>
      onFloor(
        on,
        ring.map(([x, y]): Point => [u + x, v + y]),
      ),
    ),
    turned,
    walls: wallsAt(cell, piece, on.walls, known),
  }
}

/** The walls that run along the piece's box or through it. */
function wallsAt(cell: MetCell, piece: ClipPiece, walls: Walls, known: Int32Array): number[] {
  const [lowU, highU] = [cell.u + piece.minU - SAME_MM, cell.u + piece.maxU + SAME_MM]
  const [lowV, highV] = [cell.v + piece.minV - SAME_MM, cell.v + piece.maxV + SAME_MM]
  const touched = cell.walls.filter((w) => {
    const [du, dv] = [walls.u1[w]! - walls.u0[w]!, walls.v1[w]! - walls.v0[w]!]
    const [a, b] = share(walls.u0[w]!, du, lowU, highU)
    const [c, d] = share(walls.v0[w]!, dv, lowV, highV)
    const [from, to] = [Math.max(a, c, 0), Math.min(b, d, 1)]
    return (to - from) * Math.hypot(du, dv) > 3 * SAME_MM
  })
  return [...new Set(touched.map((w) => known[w]!))].filter((w) => w >= 0).sort((p, q) => p - q)
}

function share(start: number, run: number, low: number, high: number): readonly [number, number] {
  if (Math.abs(run) < 1e-9) return start >= low && start <= high ? [-Infinity, Infinity] : [1, 0]
  const [p, q] = [(low - start) / run, (high - start) / run]
  return [Math.min(p, q), Math.max(p, q)]
}

/** Pairs of walls compared to number the drawn-in ones; a floor with more has them unnumbered. */
const MOST_COMPARED = 4_000_000

/** For each wall of the floor drawn in by the gap, the number of the real wall it follows, or -1. */
export function wallNumbers(floor: Floor, drawnIn: Floor, gapMm: number): Int32Array {
  const real = wallsOf(floor)
  const inner = wallsOf(drawnIn)
  if (gapMm === 0) return Int32Array.from(inner, (_, k) => k)
  if (real.length * inner.length > MOST_COMPARED) return new Int32Array(inner.length).fill(-1)
  return Int32Array.from(inner, (wall) => real.findIndex((other) => follows(wall, other, gapMm)))
}

function follows(wall: Wall, real: Wall, gapMm: number): boolean {
  const [dx, dy] = [(real.to[0] - real.from[0]) / real.lengthMm, (real.to[1] - real.from[1]) / real.lengthMm]
  const off = ([x, y]: Point) => (y - real.from[1]) * dx - (x - real.from[0]) * dy
  if (Math.abs(off(wall.from) - gapMm) > SAME_MM || Math.abs(off(wall.to) - gapMm) > SAME_MM) return false
  const along = ([x, y]: Point) => (x - real.from[0]) * dx + (y - real.from[1]) * dy
  const middle = (along(wall.from) + along(wall.to)) / 2
  return along(wall.to) > along(wall.from) && middle > 0 && middle < real.lengthMm
}

export type CutGroup = {
  readonly lengthMm: number
  readonly widthMm: number
  /** Whether the pieces are plain rectangles; else the size is that of the box round them. */
  readonly rectangle: boolean
  readonly factory: FactoryEdges
  readonly count: number
}

/** The cut list: pieces of one size and the same uncut edges together, the largest first. Sizes within `toMm` are one. */
export function cutList(cuts: readonly CutPiece[], toMm = 0.5): CutGroup[] {
  const groups = new Map<string, CutGroup>()
  for (const { lengthMm, widthMm, shapeMm, factory } of cuts) {
    const rectangle = shapeMm === null
    const { start, end, near, far } = factory
    const key = [Math.round(lengthMm / toMm), Math.round(widthMm / toMm), rectangle, start, end, near, far].join(' ')
    const known = groups.get(key)
    groups.set(key, { lengthMm, widthMm, rectangle, factory, ...known, count: (known?.count ?? 0) + 1 })
  }
  return [...groups.values()].sort((p, q) => q.lengthMm * q.widthMm - p.lengthMm * p.widthMm)
}
