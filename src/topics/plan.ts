/** The real floor of the facts, laid tile by tile: from rooms as they were told to floors, a pattern, the best start, the cuts. */
import type { Floor } from '../core/floor/rings.ts'
import type { Run } from '../core/layout/courses.ts'
import type { Layout } from '../core/layout/lay.ts'
import { cutPieces } from '../core/layout/pieces.ts'
import { type Start, searchStart } from '../core/layout/search.ts'
import type { LayoutSpec } from '../core/layout/spec.ts'
import { NO_WISHES } from '../core/layout/wishes.ts'
import type { Reuse } from '../core/offcuts/reuse.ts'
import type { Facts, Room, Tile } from '../facts.ts'
import type { Phrase } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import { remembered } from '../remembered.ts'
import { roomM2 } from './floors.ts'
import { specFor, turnedIn, WALL_GAP_MM } from './laid-spec.ts'
import { type RoomPlan, roomPlan } from './room-floor.ts'
import {
  type Cut,
  cutsOf,
  type LayOptions,
  liesAcross,
  reusedBySize,
  tilesForCuts,
  together,
  USUAL_OPTIONS,
} from './tiles-for-cuts.ts'
import { runOf, startOf, wallsInRun } from './wall-run.ts'

export type LaidRoom = RoomPlan & {
  readonly start: Start
  /** The part of the floor that the spec is laid on, gaps at the walls left out, where they are not alike at all walls. */
  readonly tiled?: Floor
}

/** What the tiles of a room are cut to. */
export const tiledFloor = (room: LaidRoom): Floor => room.tiled ?? room.floor

/** All rooms laid, with the sums a crew asks for. */
export type LaidFloor = {
  readonly rooms: readonly LaidRoom[]
  readonly cells: number
  readonly whole: number
  readonly cut: number
  readonly smallestCutMm: number | null
  readonly jointLengthM: number
  readonly reuse: Reuse
  /** Tiles of each size, whole and for the cuts, where the pattern has two. */
  readonly bySize?: readonly { readonly tile: LayoutSpec['tile']; readonly tiles: number }[]
  readonly notes: readonly Phrase[]
  /** Walls whose courses go on round the corners. */
  readonly run?: Run
}

/** Layouts laid lately: a crew asks about the same floor several times over (and grout? show the math, picture). */
const laid = remembered<string, Outcome<LaidFloor>>(16)

/** The same layout laid once: `layRooms`, remembered for the last few floors. */
export function laidFloor(
  facts: Facts,
  tile: Tile,
  jointMm: number,
  options: LayOptions = USUAL_OPTIONS,
): Outcome<LaidFloor> {
  const { rooms, pattern, roundCorners, tileStands } = facts
  const { lengthMm, widthMm, shape } = tile
  const key = JSON.stringify([rooms, lengthMm, widthMm, shape, jointMm, pattern, roundCorners, tileStands, options])
  return laid(key, () => layRooms(facts, tile, jointMm, options))
}

/** Smaller tile comes by the sheet and is not laid one by one. */
export const LEAST_LAID_MM = 75

const MOST_LAID = 60_000

/** The layout of the facts where there is one: rooms with a shape and a tile laid one by one. Null where only the area counts. */
export function laidFor(facts: Facts, tile: Tile, jointMm: number): Outcome<LaidFloor> | null {
  const rooms = facts.rooms ?? []
  const shaped = rooms.length > 0 && facts.areaM2 === undefined && rooms.every((r) => r.areaM2 === undefined)
  if (!shaped || tile.shape === 'mosaic' || tile.lengthMm < LEAST_LAID_MM) return null
  if (facts.pattern?.name === 'two-size' && facts.pattern.smallMm === undefined) return null
  const areaMm2 = rooms.reduce((sum, r) => sum + roomM2(r), 0) * 1e6
  if (areaMm2 / (tile.lengthMm * tile.widthMm) > MOST_LAID) return null
  return laidFloor(facts, tile, jointMm, optionsOf(facts))
}

/** What the crew wishes of a layout. */
export const optionsOf = (facts: Facts): LayOptions => ({
  rule: facts.reuse ?? 'factory-edge',
  wishes: {
    ...NO_WISHES,
    fullAt: facts.fullAt ?? [],
    hideAt: facts.hideAt ?? [],
    mayTurn: facts.anyWay === true,
  },
  mayTurnFace: facts.directional !== true,
})

/** The sizes of tile a layout takes. */
const sizesOf = ({ tile, pattern }: LayoutSpec): LayoutSpec['tile'][] =>
  pattern.kind === 'two-size' ? [tile, { lengthMm: pattern.smallMm, widthMm: pattern.smallMm }] : [tile]

/** Lays every room from its best start and cuts the pieces by the rule.
 *  @problem bad-floor, nothing-left, out-of-range, too-much-work */
export function layRooms(
  facts: Facts,
  tile: Tile,
  jointMm: number,
  options: LayOptions = USUAL_OPTIONS,
): Outcome<LaidFloor> {
  const walls = wallsInRun(facts)
  const spec = walls ? runSpec(walls, facts, tile, jointMm) : null
  if (walls && spec) return layWallRun(walls, spec, facts, options)
  const rooms: LaidRoom[] = []
  const cuts: Cut[] = []
  for (const room of facts.rooms ?? []) {
    const plan = roomPlan(room)
    if (!plan.ok) return plan
    const { floor } = plan.value
    const asked = specFor(floor, tile, jointMm, facts.pattern, turnedIn(room, facts))
    const start = searchStart(floor, asked, options.wishes)
    if (!start.ok) return start
    const across = rooms.length > 0 && liesAcross(start.value.spec.tile, rooms[0].start.spec.tile)
    const here = cutsOf(floor, start.value, room.count, across)
    if (!here.ok) return here
    cuts.push(...here.value)
    rooms.push({ ...plan.value, start: start.value })
  }
  const first = rooms[0]?.start.spec
  // A hexagon's off-cuts fit nowhere else by a straight cut.
  const planned = first?.pattern.kind === 'hexagon' ? { ...options, rule: 'fresh-tile' as const } : options
  const sizes = first ? sizesOf(first) : [tile]
  const reuse = reusedBySize(cuts, sizes, planned)
  return reuse.ok ? fine(summed(rooms, sizes, reuse.value)) : reuse
}

/** All rooms together, each as often as there are rooms like it. */
function summed(rooms: readonly LaidRoom[], sizes: readonly LayoutSpec['tile'][], reuse: readonly Reuse[]): LaidFloor {
  const sum = (of: (layout: Layout) => number): number =>
    rooms.reduce((all, { room, start }) => all + of(start.layout) * room.count, 0)
  const smallest = Math.min(Infinity, ...rooms.map(({ start }) => start.layout.smallestCutMm ?? Infinity))
  const bySize = sizes.map((size, k) => ({
    tile: size,
    tiles: sum(({ bySize }) => bySize?.[k]?.whole ?? 0) + reuse[k].stockTiles,
  }))
  return {
    rooms,
    cells: sum(({ cells }) => cells),
    whole: sum(({ whole }) => whole),
    cut: sum(({ cut }) => cut),
    smallestCutMm: Number.isFinite(smallest) ? smallest : null,
    jointLengthM: sum(({ jointLengthMm }) => jointLengthMm) / 1000,
    reuse: together(reuse),
    ...(sizes.length > 1 ? { bySize } : {}),
    notes: rooms.flatMap((r) => r.notes),
  }
}

/** The spec of a run, where its rows are level; null for patterns that cannot go on round a corner. */
function runSpec(walls: readonly Room[], facts: Facts, tile: Tile, jointMm: number): LayoutSpec | null {
  const plan = roomPlan(walls[0])
  if (!plan.ok) return null
  const spec = specFor(plan.value.floor, tile, jointMm, facts.pattern, turnedIn(walls[0], facts))
  const { pattern, angleDeg } = spec
  const level = pattern.kind === 'stacked' || (pattern.kind === 'offset' && pattern.along === 'length')
  return level && angleDeg === 0 ? spec : null
}

/** Walls laid as one run: counted wall by wall, bought by the strip, where a tile bent round a corner is one tile. */
function layWallRun(walls: readonly Room[], spec: LayoutSpec, facts: Facts, options: LayOptions): Outcome<LaidFloor> {
  const told = runOf(walls, spec, WALL_GAP_MM, facts)
  if (!told.ok) return told
  const run = told.value
  const cuts = cutPieces(run.strip.floor, run.strip.spec)
  if (!cuts.ok) return cuts
  const reuse = tilesForCuts(cuts.value.cuts, spec.tile, options)
  if (!reuse.ok) return reuse
  const sum = (of: (layout: Run['strip']['layout']) => number): number =>
    run.walls.reduce((all, { layout }) => all + of(layout), 0)
  const whole = sum((l) => l.whole)
  const smallest = Math.min(...run.walls.map(({ layout }) => layout.smallestCutMm ?? Infinity))
  return fine({
    rooms: walls.map((room, k) => {
      const { wall, tiled } = run.walls[k]
      return { room, floor: wall, notes: [], start: startOf(run, k), tiled }
    }),
    cells: sum((l) => l.cells),
    whole,
    cut: sum((l) => l.cut),
    smallestCutMm: Number.isFinite(smallest) ? smallest : null,
    jointLengthM: sum((l) => l.jointLengthMm) / 1000,
    reuse: {
      ...reuse.value,
      stockTiles: reuse.value.stockTiles + run.strip.layout.whole - whole,
      bound: reuse.value.bound + run.strip.layout.whole - whole,
      proven: false,
      offcutsReused: reuse.value.offcutsReused + run.bent,
    },
    notes: [],
    run,
  })
}
