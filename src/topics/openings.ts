/** A niche, a window, an outlet or a valve in a wall, moved so that its finished edges fall on joints of the wall's layout. */
import { boxOnJoints, nicheOnJoints, type OnWall } from '../core/layout/openings.ts'
import type { SnapLine } from '../core/layout/snap.ts'
import type { Facts, Tile } from '../facts.ts'
import { type Phrase, say, small } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { type OpeningKind, openingKind, openingSize, type Spot, type Wanted, wantedSpot } from './opening-read.ts'
import { type Asked, framedTold, outletTold, valveTold, wallOf } from './opening-told.ts'
import { laidFor } from './plan.ts'
import { jointOf, knownTile } from './stuff.ts'
import type { Brief, Told } from './topic.ts'

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
