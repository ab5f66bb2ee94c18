/** Base, edge profiles and stairs: runs of trim from the tile or from stock, treads and risers. */
import { baseFromTile, cutLengths } from '../../core/offcuts/lengths.ts'
import { profileHeight, stairTiles } from '../../core/trim.ts'
import type { Facts } from '../../facts.ts'
import { area, count, number, type Phrase, run, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { jointOf, knownTile, thicknessOf, tilePhrase } from '../stuff.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { alone, figureNear, lengthMm, lengthNear } from './read.ts'

export function trim(brief: Brief): Outcome<Told> {
  if (brief.has('step') && !brief.has('base-trim', 'profile')) return stairs(brief)
  return brief.has('profile') && !brief.has('base-trim') ? profile(brief) : base(brief)
}

const LEAST_RUN_MM = 900
const FOOT_MM = 304.8

/** "base around a 10x13": what it goes round is the room, not left out of one. */
function aroundTheRoom(facts: Facts): Facts {
  const rooms = facts.rooms?.map((room) => {
    const [piece, ...more] = room.pieces
    return piece && !more.length ? { ...room, pieces: [{ ...piece, sign: 1 as const }] } : room
  })
  return rooms ? { ...facts, rooms } : facts
}

/** The run said ("46 lf", "14 m of base"), else round the room. [mm] */
function runOf(brief: Brief): Outcome<number | null> {
  const linear = figureNear(brief.heard, ['none', 'length'], 'linear')
  if (linear) return fine(linear.si ?? linear.n * FOOT_MM)
  const long = alone(brief.heard).find((q) => q.dimension === 'length' && (q.si as number) >= LEAST_RUN_MM)
  if (long) return fine(long.si)
  const floor = floorSum(aroundTheRoom(brief.facts))
  if (!floor.ok) return floor
  return fine(floor.value?.perimeterM ? floor.value.perimeterM * 1000 : null)
}

/** A tile no wider than this is base already, bought by the piece. */
const BASE_TILE_MM = 170

function base(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const runMm = runOf(brief)
  if (!runMm.ok) return runMm
  if (runMm.value === null) return refuse('question', { question: 'run' })
  const tile = knownTile(brief.facts)
  if (!tile) return refuse('question', { question: 'tile' })
  const { trim: t } = brief.settings.around
  const jointMm = jointOf(brief, assumed)
  const bought = brief.has('bought-base') || tile.widthMm <= BASE_TILE_MM
  const heightMm = bought ? tile.widthMm : baseHeight(brief, assumed)
  const order = {
    tileLengthMm: tile.lengthMm,
    tileWidthMm: tile.widthMm,
    heightMm,
    jointMm,
    kerfMm: t.kerfMm.value,
    runs: [{ lengthMm: runMm.value, qty: 1 }],
  }
  const cut = baseFromTile(order)
  if (!cut.ok) return cut
  const strips = Math.ceil((runMm.value + jointMm) / (tile.lengthMm + jointMm) - 1e-9)
  const tiles = bought ? strips : cut.value.stockTiles
  const buy = Math.ceil(tiles * (1 + t.sparePct.value / 100) - 1e-9)
  return fine({
    topic: 'order',
    answer: say(bought ? 'trim.base-bought' : 'trim.base-cut', {
      tiles: count(buy),
      tile: tilePhrase(tile, brief.metric),
      run: run(runMm.value),
      height: small(heightMm),
      strips: count(strips),
    }),
    details: bought ? [] : [say('trim.factory-edge')],
    assumed,
    warnings: bought ? [] : [say('trim.wet-saw')],
    sources: [sourceOf(t.baseHeightMm)],
    working: [
      say('trim.work-base', {
        run: run(runMm.value),
        strips: count(strips),
        tiles: count(tiles),
        spare: number(t.sparePct.value, 0),
        buy: count(buy),
      }),
    ],
    values: {
      tile_count: buy,
      tile_length_mm: tile.lengthMm,
      tile_width_mm: tile.widthMm,
      perimeter_m: runMm.value / 1000,
    },
    offers: ['math'],
  })
}

function baseHeight(brief: Brief, assumed: Phrase[]): number {
  const said = lengthNear(brief.heard, brief.metric, 'base-trim', 'high')
  if (said !== null && said >= 40 && said <= 300) return said
  const { baseHeightMm } = brief.settings.around.trim
  assumed.push(say('trim.assumed-height', { height: small(baseHeightMm.value) }))
  return baseHeightMm.value
}

function profile(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const runMm = runOf(brief)
  if (!runMm.ok) return runMm
  if (runMm.value === null) return refuse('question', { question: 'run' })
  const { around } = brief.settings
  const thicknessMm = thicknessOf(brief, brief.facts.tile ?? null, assumed)
  const heightMm = profileHeight(thicknessMm, 0, around.profileHeightsMm)
  const bars = cutLengths({
    stockMm: around.trim.stockMm.value,
    kerfMm: around.trim.kerfMm.value,
    runs: [{ lengthMm: runMm.value, qty: 1 }],
  })
  if (!bars.ok) return bars
  assumed.push(say('trim.assumed-stock', { stock: run(around.trim.stockMm.value) }))
  return fine({
    topic: 'order',
    answer: say('trim.profile', {
      bars: count(bars.value.bars),
      run: run(runMm.value),
      joins: count(bars.value.butts),
    }),
    details: [
      heightMm === null
        ? say('trim.no-height')
        : say('trim.profile-height', { height: number(heightMm, 1), tile: small(thicknessMm) }),
    ],
    assumed,
    sources: [{ text: around.profileSource }, sourceOf(around.trim.stockMm)],
    working: [
      say('trim.work-profile', {
        run: run(runMm.value),
        stock: run(around.trim.stockMm.value),
        bars: count(bars.value.bars),
      }),
    ],
    values: { profiles: bars.value.bars, perimeter_m: runMm.value / 1000, tile_thickness_mm: thicknessMm },
    offers: ['math'],
  })
}

/** A usual flight where a side was not said [mm]: common practice, no source. */
const USUAL_STEP = { widthMm: 914.4, treadDepthMm: 279.4, riserHeightMm: 184.15 }

function stairs(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const { heard, metric } = brief
  const steps = figureNear(heard, ['none'], 'step')?.n
  if (!steps || !Number.isInteger(steps)) return refuse('question', { question: 'steps' })
  const tile = knownTile(brief.facts)
  if (!tile) return refuse('question', { question: 'tile' })
  // "40 wide 11 deep" also reads as the sides of a room: here the word behind the figure tells.
  const side = (concept: 'wide' | 'deep' | 'high'): number | null => {
    const q = heard.quantities.find((one) => heard.reader.is(one.last + 1, concept))
    return q ? lengthMm(q, metric) : null
  }
  const sides = {
    widthMm: side('wide') ?? USUAL_STEP.widthMm,
    treadDepthMm: side('deep') ?? USUAL_STEP.treadDepthMm,
    riserHeightMm: side('high') ?? USUAL_STEP.riserHeightMm,
  }
  assumed.push(
    say('trim.assumed-step', {
      width: small(sides.widthMm),
      deep: small(sides.treadDepthMm),
      high: small(sides.riserHeightMm),
    }),
  )
  const jointMm = jointOf(brief, assumed)
  const worked = stairTiles(
    { risers: steps, treads: steps, ...sides },
    { lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm },
  )
  if (!worked.ok) return worked
  const { areaM2, nosingM, treadTiles, riserTiles } = worked.value
  const spare = brief.settings.practice.tile.spareStraight.value
  const buy = Math.ceil((treadTiles + riserTiles) * (1 + spare) - 1e-9)
  return fine({
    topic: 'order',
    answer: say('trim.stairs', { tiles: count(buy), tile: tilePhrase(tile, metric), steps: count(steps) }),
    details: [
      say('trim.stair-parts', { treads: count(treadTiles), risers: count(riserTiles) }),
      say('trim.nosing', { run: run(nosingM * 1000) }),
    ],
    assumed,
    warnings: [say('trim.stair-code')],
    sources: [sourceOf(brief.settings.practice.tile.spareStraight)],
    working: [
      say('trim.work-stairs', {
        area: area(areaM2),
        treads: count(treadTiles),
        risers: count(riserTiles),
        buy: count(buy),
      }),
    ],
    values: { area_m2: areaM2, tile_count: buy, tile_length_mm: tile.lengthMm, tile_width_mm: tile.widthMm },
    offers: ['math'],
  })
}
