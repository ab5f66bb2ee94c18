/** A layout as a crew sets it: row after row from one wall, so that what is not yet set can be told from what is. */
import { fine, type Outcome } from '../../problem.ts'
import { boxOf, type Floor, type Point, type Ring } from '../floor/rings.ts'
import type { Side } from '../floor/shapes.ts'
import { wallsOn } from '../floor/walls.ts'
import { type CutPiece, type Tiles, tilesOf } from './pieces.ts'
import { turn } from './prepare.ts'
import { isInRows, type LayoutSpec } from './spec.ts'

/** A place that takes a tile: its pieces where it is cut, none where it is whole. */
export type Place = {
  /** Which family of the lattice: of two sizes 0 is the large one. */
  readonly family: number
  readonly cuts: readonly CutPiece[]
  readonly outlinesMm: readonly Ring[]
}

/** Places row by row in the order they are set, each row from the left or from the foot. A weave has no rows: its places stand
 *  in bands of a few, nearest to the first wall first. */
export type SetOrder = {
  readonly rows: readonly (readonly Place[])[]
  /** False for a weave: `rows` are then bands of some places. */
  readonly inRows: boolean
  /** The wall of the first row. */
  readonly from: Side
  /** Whether rows run slanted to the walls. */
  readonly slanted: boolean
}

const AWAY: Readonly<Record<Side, Point>> = { left: [-1, 0], right: [1, 0], bottom: [0, -1], top: [0, 1] }
const OPPOSITE: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', bottom: 'top', top: 'bottom' }
export const oppositeSide = (side: Side): Side => OPPOSITE[side]

const dot = (p: Point, q: Point): number => p[0] * q[0] + p[1] * q[1]

/** The way rows follow each other on the floor, and which number of a cell tells its row. */
type Step = { readonly way: Point; readonly by: 'i' | 'j' }

/** Rows of a straight grid may be told either way; those of an offset only along the offset. */
function stepsOf({ pattern, angleDeg }: LayoutSpec): Step[] {
  if (!isInRows(pattern) && pattern.kind !== 'hexagon') return []
  const [cos, sin] = turn(angleDeg)
  const along: Point = [cos, sin]
  const across: Point = [-sin, cos]
  const columns = pattern.kind === 'offset' && pattern.along === 'width'
  const rows: Step = { way: columns ? along : across, by: 'j' }
  return pattern.kind === 'stacked' ? [rows, { way: along, by: 'i' }] : [rows]
}

/** The walls rows can start at, the likeliest first: rows run along the longer side where the pattern leaves it open. */
export function firstWalls(floor: Floor, spec: LayoutSpec): Side[] {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const longer: Point = maxX - minX >= maxY - minY ? [0, 1] : [1, 0]
  const steps = stepsOf(spec)
  const ways =
    steps.length > 0
      ? steps.map(({ way }) => way)
      : ([
          [0, 1],
          [1, 0],
        ] as Point[])
  return ways
    .toSorted((p, q) => Math.abs(dot(q, longer)) - Math.abs(dot(p, longer)))
    .flatMap((way): Side[] => (Math.abs(way[1]) >= Math.abs(way[0]) ? ['top', 'bottom'] : ['left', 'right']))
    .filter((side, k, all) => all.indexOf(side) === k)
}

/** A weave is looked at in so many steps at most. */
const MOST_BANDS = 100

/** A layout's places in the order they are set from a wall.
 *  @param from  one of `firstWalls`; another wall starts at the likeliest of them
 *  @problem as `tilesOf` */
export function setOrder(floor: Floor, spec: LayoutSpec, from: Side): Outcome<SetOrder> {
  const tiles = tilesOf(floor, spec)
  if (!tiles.ok) return tiles
  const walls = firstWalls(floor, spec)
  const first = walls.includes(from) ? from : walls[0]!
  const steps = stepsOf(spec)
  const away = AWAY[first]
  const step = steps.toSorted((p, q) => Math.abs(dot(q.way, away)) - Math.abs(dot(p.way, away)))[0]
  const places = placesOf(tiles.value)
  if (!step) {
    const far = (place: Place): number => Math.max(...place.outlinesMm.flat().map((p) => dot(p, away)))
    const sorted = places.toSorted((p, q) => far(q) - far(p))
    const band = Math.ceil(sorted.length / MOST_BANDS)
    const rows = Array.from({ length: Math.ceil(sorted.length / band) }, (_, k) =>
      sorted.slice(k * band, (k + 1) * band),
    )
    return fine({ rows, inRows: false, from: first, slanted: false })
  }
  const rising = dot(step.way, away) < 0
  const aside: Point = Math.abs(away[0]) > 0 ? [0, 1] : [1, 0]
  const start = (place: Place): number => Math.min(...place.outlinesMm.flat().map((p) => dot(p, aside)))
  const rows = new Map<number, Placed[]>()
  for (const place of places) {
    const number = place[step.by]
    const row = rows.get(number)
    if (row) row.push(place)
    else rows.set(number, [place])
  }
  return fine({
    rows: [...rows.entries()]
      .sort(([p], [q]) => (rising ? p - q : q - p))
      .map(([, row]) => row.toSorted((p, q) => start(p) - start(q))),
    inRows: true,
    from: first,
    slanted: Math.min(Math.abs(step.way[0]), Math.abs(step.way[1])) > 1e-6,
  })
}

type Placed = Place & { readonly i: number; readonly j: number }

/** Pieces of one cell, parted by a wall, are one place. */
function placesOf({ whole, cuts }: Tiles): Placed[] {
  const cells = new Map<string, CutPiece[]>()
  for (const cut of cuts) {
    const key = `${cut.cell.family} ${cut.cell.i} ${cut.cell.j}`
    const known = cells.get(key)
    if (known) known.push(cut)
    else cells.set(key, [cut])
  }
  return [
    ...whole.map(({ cell, outlineMm }) => ({
      family: cell.family,
      cuts: [],
      outlinesMm: [outlineMm],
      i: cell.i,
      j: cell.j,
    })),
    ...[...cells.values()].map((pieces) => ({
      family: pieces[0]!.cell.family,
      cuts: pieces,
      outlinesMm: pieces.map((piece) => piece.outlineMm[0]!),
      i: pieces[0]!.cell.i,
      j: pieces[0]!.cell.j,
    })),
  ]
}

/** Whether all of a place lies within a depth of the outermost walls on one side [mm]: what stands there hides it. */
export function hiddenAt(floor: Floor, side: Side, depthMm: number): (place: Place) => boolean {
  const [outermost, ...others] = wallsOn(floor, side)
  const away = AWAY[side]
  const walls = outermost
    ? [outermost, ...others.filter((w) => Math.abs(dot(w.from, away) - dot(outermost.from, away)) < 1)]
    : []
  const aside: Point = [Math.abs(away[1]), Math.abs(away[0])]
  return ({ outlinesMm }) =>
    walls.some(({ from, to }) => {
      const [low, high] = [dot(from, aside), dot(to, aside)].sort((p, q) => p - q) as [number, number]
      return outlinesMm.flat().every((p) => {
        const at = dot(p, aside)
        return dot(from, away) - dot(p, away) <= depthMm + 1e-6 && at >= low - 1e-6 && at <= high + 1e-6
      })
    })
}
