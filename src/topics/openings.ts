/** A niche, a window, an outlet or a valve in a wall, moved so that its finished edges fall on joints of the wall's layout. */
import { boxOnJoints, crossingNear, type Moved, nicheOnJoints, type OnWall } from '../core/layout/openings.ts'
import type { SnapLine } from '../core/layout/snap.ts'
import type { Facts, Room, Tile } from '../facts.ts'
import { count, type Phrase, room as roomLength, say, small } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { type OpeningKind, openingKind, openingSize, type Spot, type Wanted, wantedSpot } from './opening-read.ts'
import { laidFor } from './plan.ts'
import { jointOf, knownTile, thicknessOf, tilePhrase } from './stuff.ts'
import type { Brief, Told } from './topic.ts'
import { LINING } from './wall.ts'

/** A single box and its plate, as usual in North America; common practice, no source. [mm] */
const BOX_MM = [50.8, 76.2] as const
/** Where niches usually begin above the floor: 42 in; common practice, no source. [mm] */
const NICHE_UP_MM = 1066.8

/** Whether an opening is to be placed on a wall, rather than framed by itself. */
export function openingAsked(brief: Brief): OpeningKind | null {
  const { heard, facts } = brief
  // "make the joint 1/16" goes on with the opening asked about last.
  if (facts.opening && !openingKind(heard.has) && !heard.facts.rooms && !heard.has('picture'))
    return facts.opening.kind as OpeningKind
  const kind = openingKind(heard.has)
  const wall = wallOf(facts) !== null
  const placed = heard.has('on-joints', 'where-put') || (kind === 'niche' && heard.has('rough-opening'))
  return kind && placed && (wall || heard.has('on-joints', 'where-put')) ? kind : null
}

/** The wall by itself, without what opens in it. */
function wallOf({ rooms = [] }: Facts): Room | null {
  const wall = rooms.find((room) => room.upright && room.pieces[0]?.sign === 1)
  return wall ? { ...wall, count: 1, pieces: wall.pieces.slice(0, 1) } : null
}

/** @problem question: the tile, the wall, the size or the place; bad-floor does-not-fit */
export function opening(brief: Brief, kind: OpeningKind): Outcome<Told> {
  const known = knownTile(brief.facts)
  const room = wallOf(brief.facts)
  if (!known) return refuse('question', { question: 'tile' })
  if (!room) return refuse('question', { question: 'opening-wall' })
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const { lengthMm, widthMm: heightMm } = room.pieces[0]
  const laid = laidFor({ ...brief.facts, rooms: [room] }, known, jointMm)
  if (laid === null) return refuse('question', { question: 'small-tile' })
  if (!laid.ok) return laid
  const { spec } = laid.value.rooms[0].start
  const level = spec.pattern.kind === 'stacked' || (spec.pattern.kind === 'offset' && spec.pattern.along === 'length')
  if (!level || spec.angleDeg !== 0) return refuse('question', { question: 'level-pattern' })
  const on: OnWall = { lengthMm, heightMm, spec }
  const before = brief.heard.facts.rooms || openingKind(brief.heard.has) ? undefined : brief.facts.opening
  const size = before?.sizeMm ?? sizeOf(brief, kind, assumed)
  if (!size) return refuse('question', { question: 'opening-size' })
  const wanted = before ? toldBefore(before) : wantedSpot(brief)
  const place = placeOf(wanted, kind, on, size, assumed)
  if (!place) return refuse('question', { question: 'opening-place' })
  const lines = [lineOf(laid.value.rooms[0].start.firstLines), ...offsetLine(on, kind)]
  const asked = { place, size, wanted }
  const told = tell(brief, kind, on, asked, known, lines, assumed)
  const opening = { kind, sizeMm: size, fromLeftMm: place[0], fromFootMm: place[1] }
  return told.ok ? fine({ ...told.value, learned: { ...told.value.learned, opening } }) : told
}

function tell(
  brief: Brief,
  kind: OpeningKind,
  on: OnWall,
  asked: Asked,
  known: Tile,
  lines: readonly Phrase[],
  assumed: Phrase[],
): Outcome<Told> {
  const { place, size } = asked
  if (kind === 'valve') return fine(valveTold(on, place, lines, assumed))
  const moved = (kind === 'niche' ? nicheOnJoints : boxOnJoints)(on, size[0], size[1], place[0], place[1])
  if (!moved) return refuse('bad-floor', { why: 'opening-does-not-fit' })
  return fine(
    kind === 'outlet'
      ? outletTold(on, moved, asked, lines, assumed)
      : framedTold(brief, kind, on, moved, asked, known, lines, assumed),
  )
}

const toldBefore = ({ fromLeftMm, fromFootMm }: NonNullable<Facts['opening']>): Wanted => ({
  x: { mm: fromLeftMm, of: 'low', from: 'low' },
  y: { mm: fromFootMm, of: 'low', from: 'low' },
  centredX: false,
})

function sizeOf(brief: Brief, kind: OpeningKind, assumed: Phrase[]): readonly [number, number] | null {
  const told = openingSize(brief)
  if (told || (kind !== 'outlet' && kind !== 'valve')) return told
  if (kind === 'outlet') assumed.push(say('opening.box', { width: small(BOX_MM[0]), height: small(BOX_MM[1]) }))
  return kind === 'outlet' ? BOX_MM : [0, 0]
}

const lowEdge = (spot: Spot, side: number, span: number): number => {
  const at = spot.from === 'low' ? spot.mm : span - spot.mm
  return spot.of === 'centre' ? at - side / 2 : spot.of === 'high' ? at - side : at
}

/** The left and bottom edge wanted, what was not told filled in where there is a usual place; null where there is none. */
function placeOf(
  wanted: Wanted,
  kind: OpeningKind,
  { lengthMm, heightMm }: OnWall,
  [width, height]: readonly [number, number],
  assumed: Phrase[],
): readonly [number, number] | null {
  if (!wanted.y && kind !== 'niche') return null
  if (!wanted.x && !wanted.centredX) assumed.push(say('opening.centred'))
  if (!wanted.y) assumed.push(say('opening.usual-height', { up: small(NICHE_UP_MM) }))
  const x = wanted.x ? lowEdge(wanted.x, width, lengthMm) : (lengthMm - width) / 2
  return [x, wanted.y ? lowEdge(wanted.y, height, heightMm) : NICHE_UP_MM]
}

/** Where the first whole tiles of the wall begin. */
function lineOf(lines: readonly SnapLine[]): Phrase {
  const from = (along: 'x' | 'y'): number => lines.find((line) => line.along === along)?.fromLowMm ?? 0
  return say('opening.lines', { left: small(from('x')), up: small(from('y')) })
}

const offsetLine = ({ spec }: OnWall, kind: OpeningKind): Phrase[] =>
  spec.pattern.kind === 'offset' ? [say(kind === 'valve' ? 'opening.offset-valve' : 'opening.offset')] : []

type Asked = {
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

function framedTold(
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
    working: tiles
      ? [
          say('niche.work', {
            tiles: count(tiles[0]),
            side: small(on.spec.tile.lengthMm),
            joint: small(on.spec.jointMm),
            lining: small(each),
            rough: small(rough[0]),
          }),
        ]
      : [],
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

function outletTold(
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
function valveTold(
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
