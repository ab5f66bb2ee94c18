/** The real floor of the facts, laid tile by tile: from rooms as they were told to floors, a pattern, the best start, the cuts. */
import { boxOf, type Floor } from '../core/floor/rings.ts'
import type { Run } from '../core/layout/courses.ts'
import { type CutPiece, cutPieces } from '../core/layout/pieces.ts'
import { inClosedForm } from '../core/layout/rectangle.ts'
import { type CutPieces, rectangleCuts } from '../core/layout/rectangle-cuts.ts'
import { isPlainRectangle, type Start, searchStart } from '../core/layout/search.ts'
import type { Pattern as LaidPattern, LayoutSpec } from '../core/layout/spec.ts'
import { NO_WISHES, type Wishes } from '../core/layout/wishes.ts'
import { halfOf, pairHalves } from '../core/offcuts/halves.ts'
import type { PieceWanted, Side } from '../core/offcuts/order.ts'
import { DEFAULT_KERF_MM, type Reuse, type ReuseRule, reuseOffcuts } from '../core/offcuts/reuse.ts'
import type { Facts, Pattern, Room, Tile } from '../facts.ts'
import type { Phrase } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import { remembered } from '../remembered.ts'
import { roomM2 } from './floors.ts'
import { type RoomPlan, roomPlan } from './room-floor.ts'
import { runOf, startOf, wallsInRun } from './wall-run.ts'

/** Perimeter joint at the walls: 1/4 in; config/practice.json will do for another. [mm] */
export const WALL_GAP_MM = 6.35

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

/** The crew's pattern as the layout takes it. */
export function laidPattern(pattern: Pattern | undefined): { pattern: LaidPattern; angleDeg: number } {
  const angleDeg = pattern?.angleDeg ?? 0
  switch (pattern?.name) {
    case 'offset': {
      const [over, under] = pattern.offset ?? [1, 2]
      return {
        pattern: {
          kind: 'offset',
          share: { over, under },
          step: pattern.backAndForth || under === 2 ? 'back-and-forth' : 'stair',
          along: pattern.along ?? 'length',
        },
        angleDeg,
      }
    }
    case 'herringbone':
      return { pattern: { kind: 'herringbone', planks: 1 }, angleDeg }
    case 'double-herringbone':
      return { pattern: { kind: 'herringbone', planks: 2 }, angleDeg }
    case 'basketweave':
      return { pattern: { kind: 'basketweave' }, angleDeg }
    case 'random':
      return { pattern: { kind: 'random', leastStaggerMm: null }, angleDeg }
    case 'two-size':
      return { pattern: { kind: 'two-size', smallMm: pattern.smallMm ?? 0 }, angleDeg }
    case 'diagonal':
      return { pattern: { kind: 'stacked' }, angleDeg: pattern.angleDeg ?? 45 }
    default:
      return { pattern: { kind: 'stacked' }, angleDeg }
  }
}

/** How tile is turned: on a floor its length runs along the longer side; on a wall it lies, unless the crew stands it up. */
export type Turned = 'floor' | 'lies' | 'stands'

export const turnedIn = (room: Room, facts: Facts): Turned =>
  room.upright ? (facts.tileStands ? 'stands' : 'lies') : 'floor'

export function specFor(
  floor: Floor,
  tile: Tile,
  jointMm: number,
  pattern: Pattern | undefined,
  turnedTo: Turned = 'floor',
): LayoutSpec {
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const laid = laidPattern(pattern)
  const gapMm = Math.min(WALL_GAP_MM, (maxX - minX) / 20, (maxY - minY) / 20)
  if (tile.shape === 'hexagon' || laid.pattern.kind === 'two-size') {
    const side = Math.min(tile.lengthMm, tile.widthMm)
    return {
      tile: { lengthMm: side, widthMm: side },
      jointMm,
      pattern: tile.shape === 'hexagon' ? { kind: 'hexagon' } : laid.pattern,
      angleDeg: laid.angleDeg,
      originMm: [0, 0],
      wallGapMm: gapMm,
    }
  }
  const stands = turnedTo === 'floor' ? maxY - minY > maxX - minX + 1 : turnedTo === 'stands'
  const upright = stands && tile.lengthMm > tile.widthMm && laid.angleDeg === 0
  // A quarter turn is told by swapping the sides for square rows, so that the closed form still serves.
  const turned = upright && laid.pattern.kind === 'stacked'
  return {
    tile: turned
      ? { lengthMm: tile.widthMm, widthMm: tile.lengthMm }
      : { lengthMm: tile.lengthMm, widthMm: tile.widthMm },
    jointMm,
    pattern:
      upright && !turned && laid.pattern.kind === 'offset'
        ? { ...laid.pattern, along: laid.pattern.along === 'width' ? 'length' : 'width' }
        : laid.pattern,
    angleDeg: upright && laid.pattern.kind === 'random' ? 90 : laid.angleDeg,
    originMm: [0, 0],
    wallGapMm: gapMm,
    ...(upright && laid.pattern.kind === 'offset' ? { tile: { lengthMm: tile.widthMm, widthMm: tile.lengthMm } } : {}),
  }
}

const SIDES: readonly [keyof CutPiece['factory'], Side][] = [
  ['start', 'left'],
  ['end', 'right'],
  ['near', 'bottom'],
  ['far', 'top'],
]

/** A plain rectangle's cuts in closed form; null for any other floor. */
function plainCuts(floor: Floor, spec: LayoutSpec): CutPieces[] | null {
  if (!inClosedForm(spec) || !isPlainRectangle(floor)) return null
  const { minX, minY, maxX, maxY } = boxOf(floor.rings)
  const [x, y] = spec.originMm
  return rectangleCuts(maxX - minX, maxY - minY, { ...spec, originMm: [x - minX, y - minY] })
}

/** A cut piece as the off-cut rules take it: its box, and the moulded sides it keeps. */
const wanted = (piece: Pick<CutPiece, 'lengthMm' | 'widthMm' | 'factory'>, qty: number): PieceWanted => ({
  wMm: piece.lengthMm,
  hMm: piece.widthMm,
  qty,
  factory: SIDES.flatMap(([edge, side]) => (piece.factory[edge] ? [side] : [])),
})

/** Pieces of one size and the same edges are one line of the order. */
function gather(pieces: readonly PieceWanted[]): PieceWanted[] {
  const lines = new Map<string, PieceWanted>()
  for (const p of pieces) {
    const key = `${Math.round(p.wMm * 2)} ${Math.round(p.hMm * 2)} ${p.factory?.join()}`
    const known = lines.get(key)
    lines.set(key, known ? { ...known, qty: known.qty + p.qty } : p)
  }
  return [...lines.values()]
}

export type LayOptions = { readonly rule: ReuseRule; readonly wishes: Wishes; readonly mayTurnFace: boolean }
export const USUAL_OPTIONS: LayOptions = { rule: 'factory-edge', wishes: NO_WISHES, mayTurnFace: true }

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

/** A cut by its box and the size of tile it comes from, and the piece itself where it was cut out one by one. */
type Cut = { readonly box: PieceWanted; readonly size: number; readonly piece: CutPiece | null }

/** Whether a room's tile lies across that of another: its cuts are turned before they come out of the same tiles. */
const liesAcross = (a: LayoutSpec['tile'], b: LayoutSpec['tile']): boolean =>
  a.lengthMm !== a.widthMm && a.lengthMm === b.widthMm && a.widthMm === b.lengthMm

const TURNED: Readonly<Record<Side, Side>> = { left: 'bottom', bottom: 'right', right: 'top', top: 'left' }

const quarterTurned = ({ wMm, hMm, factory = [], ...piece }: PieceWanted): PieceWanted => ({
  ...piece,
  wMm: hMm,
  hMm: wMm,
  factory: factory.map((side) => TURNED[side]),
})

/** Tiles for the cuts: by boxes, or with halves of slanting cuts paired where that takes fewer. A fresh tile each pairs none. */
function reused(cuts: readonly Cut[], stock: LayoutSpec['tile'], { rule, mayTurnFace }: LayOptions): Outcome<Reuse> {
  const planned = (some: readonly Cut[]): Outcome<Reuse> => {
    const pieces = some.map(({ box }) => box)
    return reuseOffcuts({
      tileWMm: Math.max(stock.lengthMm, ...pieces.map((p) => p.wMm)),
      tileHMm: Math.max(stock.widthMm, ...pieces.map((p) => p.hMm)),
      kerfMm: DEFAULT_KERF_MM,
      pieces: gather(pieces),
      rule,
      turn: mayTurnFace ? 'half' : 'none',
    })
  }
  const boxed = planned(cuts)
  if (!boxed.ok || rule === 'fresh-tile') return boxed
  const shaped = cuts.filter(({ piece }) => piece?.shapeMm)
  if (shaped.length === 0) return boxed
  // What falls away inside the box of such a piece might still be of use.
  const asBoxes = fine({ ...boxed.value, proven: false })
  if (shaped.some(({ box }) => box.qty > MOST_ALIKE)) return asBoxes
  const each = cuts.flatMap((cut) =>
    Array.from({ length: cut.piece?.shapeMm ? cut.box.qty : 1 }, () => (cut.piece?.shapeMm ? alone(cut) : cut)),
  )
  const halves = each.map(({ piece }) => {
    const { shapeMm = null, turned = false } = piece ?? {}
    const half = shapeMm?.length === 1 ? halfOf(shapeMm[0], stock.lengthMm, stock.widthMm) : null
    // Planks of the two families of a weave lie in their tiles mirrored to each other: they are not paired.
    return half && turned ? { ...half, direction: half.direction + 180 } : half
  })
  const pairs = pairHalves(halves, DEFAULT_KERF_MM, mayTurnFace)
  if (pairs.length === 0) return asBoxes
  const paired = new Set(pairs.flat())
  const rest = planned(each.flatMap((cut, k) => (paired.has(k) ? [] : [cut])))
  if (!rest.ok || rest.value.stockTiles + pairs.length >= boxed.value.stockTiles) return asBoxes
  return fine({
    ...rest.value,
    stockTiles: rest.value.stockTiles + pairs.length,
    bound: Math.min(boxed.value.bound, rest.value.bound),
    proven: false,
    offcutsReused: rest.value.offcutsReused + pairs.length,
  })
}

/** Tiles that some cut pieces take by a rule, whatever else is laid. @problem as `reuseOffcuts` */
export const tilesForCuts = (
  cuts: readonly CutPiece[],
  stock: LayoutSpec['tile'],
  options: LayOptions,
): Outcome<Reuse> =>
  reused(
    cuts.map((piece) => ({ box: wanted(piece, 1), size: 0, piece })),
    stock,
    options,
  )

const alone = (cut: Cut): Cut => ({ ...cut, box: { ...cut.box, qty: 1 } })

/** Rooms alike beyond this are not paired piece by piece. */
const MOST_ALIKE = 50

/** The sizes of tile a layout takes. */
const sizesOf = ({ tile, pattern }: LayoutSpec): LayoutSpec['tile'][] =>
  pattern.kind === 'two-size' ? [tile, { lengthMm: pattern.smallMm, widthMm: pattern.smallMm }] : [tile]

/** The cuts of both sizes as one. */
function together(each: readonly Reuse[]): Reuse {
  const sum = (of: (one: Reuse) => number): number => each.reduce((all, one) => all + of(one), 0)
  return {
    ...each[0],
    stockTiles: sum((one) => one.stockTiles),
    bound: sum((one) => one.bound),
    proven: each.every((one) => one.proven),
    offcutsReused: sum((one) => one.offcutsReused),
    leftOver: each.flatMap((one) => one.leftOver),
    wasteMm2: sum((one) => one.wasteMm2),
    plan: each.flatMap((one) => one.plan),
  }
}

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
  const pieces: Cut[] = []
  const sum = { cells: 0, whole: 0, cut: 0, jointMm: 0, smallest: Infinity, wholeBySize: [0, 0] }
  for (const room of facts.rooms ?? []) {
    const plan = roomPlan(room)
    if (!plan.ok) return plan
    const start = searchStart(
      plan.value.floor,
      specFor(plan.value.floor, tile, jointMm, facts.pattern, turnedIn(room, facts)),
      options.wishes,
    )
    if (!start.ok) return start
    const { layout, spec } = start.value
    const across = rooms.length > 0 && liesAcross(spec.tile, rooms[0].start.spec.tile)
    const grouped = layout.cut > 0 ? plainCuts(plan.value.floor, start.value.spec) : null
    if (grouped)
      for (const cut of grouped) {
        const box = wanted(cut, cut.count * room.count)
        pieces.push({ box: across ? quarterTurned(box) : box, size: 0, piece: null })
      }
    else if (layout.cut > 0) {
      const cuts = cutPieces(plan.value.floor, start.value.spec)
      if (!cuts.ok) return cuts
      const twoSizes = start.value.spec.pattern.kind === 'two-size'
      for (const piece of cuts.value.cuts)
        pieces.push({
          box: across ? quarterTurned(wanted(piece, room.count)) : wanted(piece, room.count),
          size: twoSizes ? piece.cell.family : 0,
          piece: across ? null : piece,
        })
    }
    rooms.push({ ...plan.value, start: start.value })
    sum.cells += layout.cells * room.count
    sum.whole += layout.whole * room.count
    sum.cut += layout.cut * room.count
    layout.bySize?.forEach((size, k) => {
      sum.wholeBySize[k] += size.whole * room.count
    })
    sum.jointMm += layout.jointLengthMm * room.count
    sum.smallest = Math.min(sum.smallest, layout.smallestCutMm ?? Infinity)
  }
  const first = rooms[0]?.start.spec
  // A hexagon's off-cuts fit nowhere else by a straight cut.
  const planned = first?.pattern.kind === 'hexagon' ? { ...options, rule: 'fresh-tile' as const } : options
  const sizes = first ? sizesOf(first) : [tile]
  const each: Reuse[] = []
  for (const [size, stock] of sizes.entries()) {
    const some = sizes.length === 1 ? pieces : pieces.filter((cut) => cut.size === size)
    const one = reused(some, stock, planned)
    if (!one.ok) return one
    each.push(one.value)
  }
  const bySize = each.map(({ stockTiles }, k) => ({ tile: sizes[k], tiles: sum.wholeBySize[k] + stockTiles }))
  return fine({
    rooms,
    cells: sum.cells,
    whole: sum.whole,
    cut: sum.cut,
    smallestCutMm: Number.isFinite(sum.smallest) ? sum.smallest : null,
    jointLengthM: sum.jointMm / 1000,
    reuse: together(each),
    ...(sizes.length > 1 ? { bySize } : {}),
    notes: rooms.flatMap((r) => r.notes),
  })
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
