/** What is told of an opening that was moved onto joints: where to frame it, how far it moved, what is left for the trades. */
import { boxOnJoints, crossingNear, type Moved, type OnWall } from '../core/layout/openings.ts'
import type { Facts, Room, Tile } from '../facts.ts'
import { count, type Phrase, room as roomLength, say, small } from '../phrase.ts'
import type { Spot, Wanted } from './opening-read.ts'
import { thicknessOf, tilePhrase } from './stuff.ts'
import type { Brief, Told } from './topic.ts'
import { LINING } from './wall.ts'

/** The wall by itself, without what opens in it. */
export function wallOf({ rooms = [] }: Facts): Room | null {
  const wall = rooms.find((room) => room.upright && room.pieces[0]?.sign === 1)
  return wall ? { ...wall, count: 1, pieces: wall.pieces.slice(0, 1) } : null
}

export type Asked = {
  readonly place: readonly [number, number]
  readonly size: readonly [number, number]
  readonly wanted: Wanted
}

const LEAST_MOVE_MM = 0.8

function movedLine(to: readonly [number, number], from: readonly [number, number]): Phrase {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const across = say(dx > 0 ? 'opening.right' : 'opening.left', { mm: small(Math.abs(dx)) })
  const up = say(dy > 0 ? 'opening.up' : 'opening.down', { mm: small(Math.abs(dy)) })
  const moves = [...(Math.abs(dx) > LEAST_MOVE_MM ? [across] : []), ...(Math.abs(dy) > LEAST_MOVE_MM ? [up] : [])]
  return moves.length > 0 ? say('opening.moved', { moves }) : say('opening.stays')
}

/** The point of an opening by which it was placed: the edge or the centre that was told. */
const pointOf = (
  { x, y }: Wanted,
  place: readonly [number, number],
  size: readonly [number, number],
): readonly [number, number] => {
  const share = (spot: Spot | null, untold: number): number =>
    spot === null ? untold : spot.of === 'centre' ? 1 / 2 : spot.of === 'high' ? 1 : 0
  return [place[0] + size[0] * share(x, 1 / 2), place[1] + size[1] * share(y, 0)]
}

export function framedTold(
  brief: Brief,
  kind: 'niche' | 'window',
  on: OnWall,
  moved: Moved,
  { place, size, wanted }: Asked,
  known: Tile,
  lines: readonly Phrase[],
  assumed: Phrase[],
): Told {
  const tileMm = thicknessOf(brief, known, assumed)
  const each = LINING.boardMm + LINING.membraneMm + LINING.mortarMm + tileMm
  const rough = [moved.widthMm + 2 * each, moved.heightMm + 2 * each] as const
  const { tiles } = moved
  const finished = {
    width: small(moved.widthMm),
    height: small(moved.heightMm),
    left: small(moved.fromLeftMm),
    up: small(moved.fromFootMm),
  }
  const to = pointOf(wanted, [moved.fromLeftMm, moved.fromFootMm], [moved.widthMm, moved.heightMm])
  return {
    topic: 'layout',
    answer: say(`opening.frame-${kind}`, {
      width: small(rough[0]),
      height: small(rough[1]),
      left: small(moved.fromLeftMm - each),
      up: small(moved.fromFootMm - each),
    }),
    details: [
      tiles
        ? say('opening.finished', {
            ...finished,
            across: count(tiles[0]),
            high: count(tiles[1]),
            tile: tilePhrase(known, brief.metric),
          })
        : say('opening.window', finished),
      movedLine(to, pointOf(wanted, place, size)),
      ...keptLine(on, moved, place, size, each),
      ...(kind === 'window' ? [shiftLine(on, moved, place)] : []),
      ...lines,
      say('opening.check'),
    ],
    assumed: [
      ...assumed,
      say('niche.lining', { board: small(LINING.boardMm), bed: small(LINING.mortarMm) }),
      wallNote(on),
    ],
    working: tiles ? [nicheWork(on, tiles[0], each, rough[0])] : [],
    values: {
      ...valuesOf(on, moved),
      opening_width_mm: rough[0],
      opening_height_mm: rough[1],
      tile_thickness_mm: tileMm,
    },
    learned: withOpening(brief.facts, moved),
    offers: tiles ? ['math', 'picture'] : ['picture'],
  }
}

/** The width of a niche's frame, from its tiles outwards. */
const nicheWork = ({ spec }: OnWall, tiles: number, each: number, roughMm: number): Phrase =>
  say('niche.work', {
    tiles: count(tiles),
    side: small(spec.tile.lengthMm),
    joint: small(spec.jointMm),
    lining: small(each),
    rough: small(roughMm),
  })

/** Whole tiles that are far from the size asked: the place of that size too, one side and its foot or head on joints. */
function keptLine(
  on: OnWall,
  moved: Moved,
  place: readonly [number, number],
  size: readonly [number, number],
  each: number,
): Phrase[] {
  const off = Math.max(Math.abs(moved.widthMm - size[0]), Math.abs(moved.heightMm - size[1]))
  const kept = moved.tiles && off > FAR_MM ? boxOnJoints(on, size[0], size[1], place[0], place[1]) : null
  return kept
    ? [
        say('opening.kept', {
          width: small(size[0]),
          height: small(size[1]),
          left: small(kept.fromLeftMm),
          up: small(kept.fromFootMm),
          framed: small(size[0] + 2 * each),
          high: small(size[1] + 2 * each),
        }),
      ]
    : []
}

const FAR_MM = 51

/** A window that cannot move: the layout goes the other way. */
function shiftLine(on: OnWall, moved: Moved, place: readonly [number, number]): Phrase {
  const { spec } = on
  const gap = spec.wallGapMm
  // The first tile that begins at the wall's gap or behind it.
  const first = (mm: number, module: number) => ((((mm - gap) % module) + module) % module) + gap
  const [dx, dy] = [place[0] - moved.fromLeftMm, place[1] - moved.fromFootMm]
  return say('opening.shift', {
    left: small(first(spec.originMm[0] + dx, spec.tile.lengthMm + spec.jointMm)),
    up: small(first(spec.originMm[1] + dy, spec.tile.widthMm + spec.jointMm)),
  })
}

export function outletTold(
  on: OnWall,
  moved: Moved,
  { place }: Asked,
  lines: readonly Phrase[],
  assumed: readonly Phrase[],
): Told {
  return {
    topic: 'layout',
    answer: say('opening.outlet', { left: small(moved.fromLeftMm), up: small(moved.fromFootMm) }),
    details: [movedLine([moved.fromLeftMm, moved.fromFootMm], place), say('opening.notch'), ...lines],
    assumed: [...assumed, wallNote(on)],
    warnings: [say('opening.power')],
    values: valuesOf(on, moved),
    offers: ['picture'],
  }
}

/** A round hole goes onto the nearer of the two joints: two nipped tiles; onto both, where they cross, four corners. */
export function valveTold(
  on: OnWall,
  place: readonly [number, number],
  lines: readonly Phrase[],
  assumed: readonly Phrase[],
): Told {
  const [x, y] = crossingNear(on, place[0], place[1])
  const upright = Math.abs(x - place[0]) < Math.abs(y - place[1])
  const to = upright ? ([x, place[1]] as const) : ([place[0], y] as const)
  return {
    topic: 'layout',
    answer: say(upright ? 'opening.valve-upright' : 'opening.valve-level', { left: small(to[0]), up: small(to[1]) }),
    details: [
      movedLine(to, place),
      say('opening.nipped'),
      say('opening.crossing', { left: small(x), up: small(y) }),
      ...lines,
    ],
    assumed: [...assumed, wallNote(on)],
    warnings: [say('opening.plumber')],
    values: valuesOf(on, { fromLeftMm: to[0], fromFootMm: to[1], widthMm: 0, heightMm: 0, tiles: null }),
    offers: [],
  }
}

const wallNote = (on: OnWall): Phrase =>
  say('opening.wall', { length: roomLength(on.lengthMm), height: roomLength(on.heightMm) })

const valuesOf = ({ spec }: OnWall, moved: Moved): NonNullable<Told['values']> => ({
  opening_left_mm: moved.fromLeftMm,
  opening_bottom_mm: moved.fromFootMm,
  tile_length_mm: Math.max(spec.tile.lengthMm, spec.tile.widthMm),
  tile_width_mm: Math.min(spec.tile.lengthMm, spec.tile.widthMm),
  joint_mm: spec.jointMm,
})

/** The wall with the opening where it goes, for the layout and the picture that may be asked next. */
function withOpening(facts: Facts, { widthMm, heightMm, fromLeftMm, fromFootMm }: Moved): Partial<Facts> {
  const wall = wallOf(facts)
  if (!wall) return {}
  const place = { fromLeftMm, fromBottomMm: fromFootMm }
  const hole = { sign: -1 as const, kind: 'island' as const, lengthMm: widthMm, widthMm: heightMm, place }
  return { rooms: [{ ...wall, pieces: [...wall.pieces, hole] }] }
}
