/** Walls: the niche whose finished edges fall on joints, with the rough opening to frame; the ledger for the bottom course. */
import { ledger, niche, nicheTiles } from '../core/floor/walls.ts'
import type { Tile } from '../facts.ts'
import type { Quantity } from '../language/measures.ts'
import { count, type Phrase, room as roomLength, say, small } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { alone, figureNear, lengthNear } from './around/read.ts'
import { WALL_GAP_MM } from './laid-spec.ts'
import { jointOf, knownTile, thicknessOf, tilePhrase } from './stuff.ts'
import type { Brief, Told } from './topic.ts'
import { ledgerAsked } from './wall-route.ts'

/** Backer board 1/2 in, sheet membrane 1/64 in, bed 3/32 in: what usually lines a niche; common practice, no source. [mm] */
export const LINING = { boardMm: 12.7, membraneMm: 0.4, mortarMm: 2.4 } as const
const MOST_NICHE_TILES = 40

/** Whether a message asks for a niche to frame or a ledger, rather than for tile. */
export function wallAsked(brief: Brief): 'niche' | 'ledger' | null {
  const { heard } = brief
  if (ledgerAsked(heard)) return 'ledger'
  return heard.has('niche') && (tilesAcross(brief) !== null || heard.has('rough-opening')) ? 'niche' : null
}

/** "2 tiles wide 3 high" */
function tilesAcross(brief: Brief): readonly [number, number] | null {
  const { heard } = brief
  const { reader } = heard
  const isCount = (q: Quantity): boolean =>
    q.dimension === 'none' && Number.isInteger(q.n) && q.n >= 1 && q.n <= MOST_NICHE_TILES
  // "4 high of" reads as the day's high too.
  const isSide = (i: number, side: 'wide' | 'high'): boolean =>
    reader.is(i, side) || (side === 'high' && reader.is(i, 'highest'))
  const beside = (q: Quantity, side: 'wide' | 'high'): boolean =>
    [1, 2].some((k) => isSide(q.last + k, side) && !reader.number(q.last + 1)) || isSide(q.first - 1, side)
  const wide = heard.quantities.find((q) => isCount(q) && beside(q, 'wide'))
  const high = heard.quantities.find((q) => isCount(q) && beside(q, 'high') && q !== wide)
  return wide && high ? [wide.n, high.n] : null
}

const LEAST_NICHE_MM = 50
const REACH = 3

/** "niche framed 14x24", "14x24 rough": the size is that of the framing. */
function saidRough({ heard }: Brief): boolean {
  const size = heard.sizes.find((s) => s.role === 'opening' || s.role === 'hole')
  if (!size) return false
  const { first, last } = size.item
  return Array.from({ length: REACH }, (_, k) => [first - 1 - k, last + 1 + k]).some(([before, after]) =>
    [before, after].some((i) => heard.reader.is(i, 'framed-word')),
  )
}

/** The opening asked for by its size, in mm: width and height as told. */
function nicheSize(brief: Brief): readonly [number, number] | null {
  const size = brief.heard.sizes.find((s) => s.role === 'opening' || s.role === 'hole')
  if (!size) return null
  const [a, b] = size.item.parts
  const mm = (q: Quantity): number => q.si ?? (brief.metric ? (q.n >= 100 ? q.n : q.n * 10) : q.n * 25.4)
  return [mm(a), mm(b)]
}

/** The tile lies: its length runs across. */
function nicheTold(brief: Brief, known: Tile): Outcome<Told> {
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const tileMm = thicknessOf(brief, known, assumed)
  const told = nicheSize(brief)
  const framed = told !== null && saidRough(brief)
  const each = LINING.boardMm + LINING.membraneMm + LINING.mortarMm + tileMm
  const wanted = framed ? ([told[0] - 2 * each, told[1] - 2 * each] as const) : told
  const tiles =
    tilesAcross(brief) ??
    (wanted &&
      ([nicheTiles(wanted[0], known.lengthMm, jointMm), nicheTiles(wanted[1], known.widthMm, jointMm)] as const))
  if (framed && wanted && Math.min(...wanted) < LEAST_NICHE_MM)
    return refuse('bad-floor', { why: 'opening-does-not-fit' })
  if (!tiles) return refuse('question', { question: 'niche' })
  const lining = { ...LINING, tileMm }
  const wide = niche(tiles[0], known.lengthMm, jointMm, lining)
  const high = niche(tiles[1], known.widthMm, jointMm, lining)
  if (!wide.ok) return wide
  if (!high.ok) return high
  return fine({
    topic: 'layout',
    answer: say('niche.rough', { width: small(wide.value.roughMm), height: small(high.value.roughMm) }),
    details: [
      ...(framed && wanted ? [say('niche.framed', { width: small(wanted[0]), height: small(wanted[1]) })] : []),
      say('niche.clear', {
        width: small(wide.value.clearMm),
        height: small(high.value.clearMm),
        across: count(tiles[0]),
        up: count(tiles[1]),
        tile: tilePhrase(known, brief.metric),
      }),
      say('niche.place'),
    ],
    assumed: [...assumed, say('niche.lining', { board: small(LINING.boardMm), bed: small(LINING.mortarMm) })],
    working: [
      say('niche.work', {
        tiles: count(tiles[0]),
        side: small(known.lengthMm),
        joint: small(jointMm),
        lining: small(LINING.boardMm + LINING.membraneMm + LINING.mortarMm + tileMm),
        rough: small(wide.value.roughMm),
      }),
    ],
    values: {
      opening_width_mm: wide.value.roughMm,
      opening_height_mm: high.value.roughMm,
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      tile_thickness_mm: tileMm,
      joint_mm: jointMm,
    },
    offers: ['math'],
  })
}

/** Less than this is lost in the joint at the floor; common practice, no source. [mm] */
const LOST_IN_JOINT_MM = 3.2
const LEAST_WALL_MM = 450

/** The bottom course is whole at the low point and cut along the rise; tile lies unless it is stood up. */
function ledgerTold(brief: Brief, known: Tile): Outcome<Told> {
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const riseMm = lengthNear(brief.heard, brief.metric, 'out-of-level', 'off-level') ?? loneRise(brief) ?? 0
  const [sideMm, acrossMm] = brief.facts.tileStands ? [known.lengthMm, known.widthMm] : [known.widthMm, known.lengthMm]
  const told = ledger(sideMm, jointMm, WALL_GAP_MM, riseMm)
  if (!told.ok) return told
  const overMm = wallLength(brief)
  const taper = riseMm > 0 && overMm !== null && overMm > acrossMm
  return fine({
    topic: 'layout',
    answer: say('ledger.height', { height: small(told.value.heightMm) }),
    details: [
      riseMm > 0 ? say('ledger.cut', { cut: small(told.value.leastCutMm), rise: small(riseMm) }) : say('ledger.level'),
      ...(taper
        ? [say('ledger.taper', { over: roomLength(overMm), each: small((riseMm * (acrossMm + jointMm)) / overMm) })]
        : []),
      ...(riseMm > 0 && riseMm <= LOST_IN_JOINT_MM ? [say('ledger.lost', { rise: small(riseMm) })] : []),
    ],
    assumed: [...assumed, say('ledger.lies', { course: small(sideMm), gap: small(WALL_GAP_MM) })],
    working: [say('ledger.work', { gap: small(WALL_GAP_MM), course: small(sideMm), joint: small(jointMm) })],
    values: {
      tile_length_mm: known.lengthMm,
      tile_width_mm: known.widthMm,
      joint_mm: jointMm,
      ledger_mm: told.value.heightMm,
      first_course_low_mm: sideMm,
      first_course_high_mm: told.value.leastCutMm,
    },
    offers: ['math'],
  })
}

const loneRise = (brief: Brief): number | null => figureNear(brief.heard, ['length'], 'ledger', 'floor')?.si ?? null

/** "over the 5 ft wall": the wall along which the floor runs out; else the wall of the facts. [mm] */
function wallLength({ heard, facts }: Brief): number | null {
  const told = alone(heard).find((q) => q.dimension === 'length' && (q.si as number) >= LEAST_WALL_MM)
  const [room] = facts.rooms ?? []
  return told?.si ?? (room?.upright ? (room.pieces[0]?.lengthMm ?? null) : null)
}

export function wall(brief: Brief, asked: 'niche' | 'ledger'): Outcome<Told> {
  const known = knownTile(brief.facts)
  if (!known) return refuse('question', { question: 'tile' })
  return asked === 'niche' ? nicheTold(brief, known) : ledgerTold(brief, known)
}
