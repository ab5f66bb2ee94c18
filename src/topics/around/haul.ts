/** What things weigh, how many trips they take, and what one person should not lift. */
import { liftingLimit, massOf, type Load as Pieces, pallets, tripsFor } from '../../core/truck.ts'
import { tilesKg } from '../../core/weight.ts'
import type { Concept } from '../../language/concepts.ts'
import type { Quantity } from '../../language/measures.ts'
import { area, count, mass, number, type Phrase, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { knownTile, thicknessOf, tilePhrase } from '../stuff.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { alone, figureNear } from './read.ts'

/** A load, and where its count stands in the message. */
type Load = Pieces & { readonly at: number }

const BAG_KG = 22.6796
const BOX_KG = 22.6796

const LB_KG = 0.45359237

/** The payload said: a mass beside the truck's words; a bare figure right beside "payload" is in the crew's own unit. */
export function payloadKg(brief: Brief): number | null {
  const { heard, metric } = brief
  const q = figureNear(heard, ['mass', 'none'], 'payload') ?? figureNear(heard, ['mass'], 'truck', 'trailer', 'trip')
  if (!q) return null
  if (q.si !== null) return q.unit === 'ton' && heard.reader.is(q.first, 'truck') ? null : q.si
  return q.n >= 200 ? q.n * (metric ? 1 : LB_KG) : null
}

const KINDS: readonly (readonly [concept: Concept, name: string, usualKg: number])[] = [
  ['bag', 'bag', BAG_KG],
  ['box', 'box', BOX_KG],
  ['sheet', 'sheet', 0],
  ['bucket', 'bucket', 25],
]
/** No bag or box is heavier. */
const MOST_PIECE_KG = 200

/** Bags, boxes and pails that the message counts, each with the weight said beside it; a pallet is its bags. */
export function saidLoads(brief: Brief, assumed: Phrase[]): Load[] {
  const { heard, settings } = brief
  const payload = payloadKg(brief)
  const isPiece = (q: Quantity | undefined | null): q is Quantity =>
    q?.dimension === 'mass' && q.si !== payload && q.unit !== 'ton' && (q.si as number) < MOST_PIECE_KG
  const masses = alone(heard).filter(isPiece)
  const loads: Load[] = []
  for (const [concept, name, usualKg] of KINDS) {
    const pieces = figureNear(heard, ['none'], concept)
    if (
      !pieces ||
      // "a box of 5": what it holds is no number of boxes.
      (concept === 'box' && heard.facts.boxTiles === pieces.n) ||
      !Number.isInteger(pieces.n) ||
      pieces.n <= 0 ||
      loads.some((l) => l.name !== name && l.at === pieces.first)
    )
      continue
    const beside = figureNear(heard, ['mass'], concept)
    const each = (isPiece(beside) ? beside : masses.length === 1 ? masses[0] : undefined)?.si ?? null
    if (each === null && usualKg === 0) continue
    if (each === null) assumed.push(say('order.assumed-each', { what: say(`order.each-${name}`), mass: mass(usualKg) }))
    loads.push({ name, pieces: pieces.n, kgEach: each ?? usualKg, at: pieces.first })
  }
  if (!loads.length && heard.has('pallet')) {
    const bags = settings.around.truck.bagsAPallet.value
    const kgEach = masses[0]?.si ?? BAG_KG
    assumed.push(say('order.assumed-pallet', { bags: count(bags), mass: mass(kgEach) }))
    return [{ name: 'bag', pieces: bags, kgEach, at: 0 }]
  }
  return loads
}

/** "70 tiles of 18x18", "a box of 5": how many pieces are to be weighed. */
export function piecesIn({ heard }: Brief): number | null {
  const q = figureNear(heard, ['none'], 'tile', 'piece', 'plank')
  const n = q && Number.isInteger(q.n) && q.n > 1 ? q.n : (heard.facts.boxTiles ?? null)
  return heard.facts.haveBoxes === undefined ? n : null
}

/** The tile of a floor as a load. */
function tileLoad(brief: Brief, assumed: Phrase[]): Outcome<{ kg: number; line: Phrase } | null> {
  const tile = knownTile(brief.facts)
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  const pieces = tile && !floor.value ? piecesIn(brief) : null
  const areaM2 =
    floor.value?.areaM2 ??
    (pieces === null || !tile ? null : (pieces * tile.lengthMm * tile.widthMm) / 1e6) ??
    (tile && brief.heard.has('each', 'per') ? (tile.lengthMm * tile.widthMm) / 1e6 : null)
  if (areaM2 === null) return fine(null)
  const kind = brief.settings.tiles[brief.facts.tile?.kind ?? brief.settings.defaults.tileKind]
  if (!kind) return fine(null)
  const thicknessMm = thicknessOf(brief, brief.facts.tile ?? null, assumed)
  const kg = tilesKg(1, areaM2, thicknessMm, kind.densityKgPerM3)
  if (!kg.ok) return kg
  const named = tile ? tilePhrase(tile, brief.metric) : say('order.layer-tile')
  return fine({
    kg: kg.value.usual,
    line: say(floor.value ? 'order.tile-mass' : pieces === null ? 'order.one-tile' : 'order.tiles-mass', {
      pieces: count(pieces ?? 1),
      mass: mass(kg.value.usual),
      area: area(areaM2),
      tile: named,
    }),
  })
}

export function weigh(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const tongue = tongueAlone(brief)
  if (tongue) return fine(tongue)
  const loads = saidLoads(brief, assumed)
  const full = loads.length ? null : bagsALoad(brief)
  if (full) return fine(full)
  const tile = loads.length ? fine(null) : tileLoad(brief, assumed)
  if (!tile.ok) return tile
  const kg = massOf(loads) + (tile.value?.kg ?? 0)
  if (!(kg > 0)) return refuse('question', { question: 'load' })
  const payload = payloadKg(brief)
  if (payload !== null || brief.has('trip', 'payload'))
    return haul(brief, loads.length ? loads : inBoxes(kg), payload, kg, assumed)
  return fine({
    topic: 'order',
    answer: asksTruck(brief)
      ? say('order.truck-ask', { mass: mass(kg) })
      : (tile.value?.line ?? say('order.mass', { mass: mass(kg) })),
    details: [...loadLines(loads), ...palletLines(brief, loads)],
    assumed,
    warnings: [],
    sources: [sourceOf(brief.settings.practice.weight.liftKg)],
    working: [say('order.work-mass', { mass: mass(kg) })],
    values: { weight_kg: kg },
    offers: ['math'],
  })
}

/** "can my half ton carry it": nobody but the sticker on the door knows. */
const asksTruck = ({ heard }: Brief): boolean =>
  (heard.has('truck', 'trailer') || heard.quantities.some((q) => q.unit === 'ton' && q.n <= 1.5)) &&
  (heard.has('can-we', 'enough') || heard.plain.text.includes('?'))

/** "tongue weight for 1500 lb": a load on a trailer and nothing else asked. */
function tongueAlone(brief: Brief): Told | null {
  const { heard } = brief
  const kg = alone(heard).find((q) => q.dimension === 'mass')?.si
  if (!kg || !heard.has('trailer') || heard.has('payload', 'trip', 'bag', 'box', 'truck')) return null
  const { tonguePctLow, tonguePctHigh } = brief.settings.around.truck
  return {
    topic: 'order',
    answer: say('order.tongue-alone', {
      low: mass((kg * tonguePctLow.value) / 100),
      high: mass((kg * tonguePctHigh.value) / 100),
      mass: mass(kg),
    }),
    warnings: [say('order.payload-rule')],
    sources: [sourceOf(tonguePctLow)],
    values: { weight_kg: kg },
  }
}

/** "how many bags can I carry with a 1200 lb payload" */
function bagsALoad(brief: Brief): Told | null {
  const payload = payloadKg(brief)
  if (payload === null || !brief.heard.has('bag') || !brief.heard.has('how-many')) return null
  const said = alone(brief.heard).find((q) => q.dimension === 'mass' && q.si !== payload)?.si ?? BAG_KG
  const bags = Math.floor(payload / said + 1e-9)
  return {
    topic: 'order',
    answer: say('order.bags-a-load', { bags: count(bags), mass: mass(said), payload: mass(payload) }),
    details: [say('order.payload-left')],
    warnings: [say('order.payload-rule')],
    sources: [{ text: brief.settings.around.truck.bagsAPallet.source }],
    working: [
      say('order.work-trips', {
        mass: mass(bags * said),
        payload: mass(payload),
        least: number((bags * said) / payload, 2),
      }),
    ],
    values: { weight_kg: bags * said, trips: 1, bags_a_load: bags },
  }
}

/** Tile without boxes known is loaded in boxes of 50 lb. */
const inBoxes = (kg: number): Load[] => [
  { name: 'box', kgEach: Math.min(kg, BOX_KG), pieces: Math.ceil(kg / BOX_KG), at: 0 },
]

const loadLines = (loads: readonly Load[]): Phrase[] =>
  loads.map((l) =>
    say('order.load-line', {
      pieces: count(l.pieces),
      what: say(`order.each-${l.name}`),
      each: mass(l.kgEach),
      mass: mass(l.kgEach * l.pieces),
    }),
  )

function palletLines(brief: Brief, loads: readonly Load[]): Phrase[] {
  const { bagsAPallet, palletKg } = brief.settings.around.truck
  const bags = loads.find((l) => l.name === 'bag')
  return bags && bags.pieces > bagsAPallet.value / 2
    ? [say('order.pallets', { pallets: count(pallets(bags.pieces, bagsAPallet.value, bags.kgEach, palletKg.value)) })]
    : []
}

function haul(
  brief: Brief,
  loads: readonly Load[],
  payload: number | null,
  kg: number,
  assumed: Phrase[],
): Outcome<Told> {
  if (payload === null) return refuse('question', { question: 'payload' })
  const trips = tripsFor(loads, payload)
  if (!trips.ok) return trips
  const { truck } = brief.settings.around
  const trailer = brief.has('trailer')
  return fine({
    topic: 'order',
    answer: say('order.trips', {
      trips: count(trips.value.trips),
      mass: mass(kg),
      payload: mass(payload),
      fullest: mass(trips.value.fullestKg),
    }),
    details: [
      ...loadLines(loads),
      ...palletLines(brief, loads),
      say('order.payload-left'),
      ...(trailer
        ? [
            say('order.tongue', {
              low: mass((trips.value.fullestKg * truck.tonguePctLow.value) / 100),
              high: mass((trips.value.fullestKg * truck.tonguePctHigh.value) / 100),
            }),
          ]
        : []),
    ],
    assumed,
    warnings: [say('order.payload-rule')],
    sources: trailer ? [sourceOf(truck.tonguePctLow)] : [sourceOf(truck.bagsAPallet)],
    working: [say('order.work-trips', { mass: mass(kg), payload: mass(payload), least: number(kg / payload, 2) })],
    values: { weight_kg: kg, trips: trips.value.trips },
    offers: ['math'],
  })
}

/** A bag off a pallet: hands 15 in ahead, from 6 in up, lifted 30 in. */
const USUAL_LIFT = { reachMm: 381, fromMm: 152.4, travelMm: 762 }

/** A limit kept to the pound as it is told: half of 50 lb against 24.5 lb. */
const MOST_INDEX = 1.03

export function lifting(brief: Brief): Outcome<Told> {
  const said = alone(brief.heard).find((q) => q.dimension === 'mass')?.si ?? BAG_KG
  const isShared = brief.heard.rules.conditions['hands']?.includes('two') === true
  const each = isShared ? said / 2 : said
  const limit = liftingLimit(each, USUAL_LIFT)
  if (!limit.ok) return limit
  return fine({
    topic: 'order',
    answer: say(`order.lift-${limit.value.index > MOST_INDEX ? 'over' : 'fine'}${isShared ? '-two' : ''}`, {
      mass: mass(said),
      each: mass(each),
      limit: mass(limit.value.limitKg),
      times: number(limit.value.index, 1),
    }),
    details: [say('order.lift-how')],
    assumed: [say('order.assumed-lift')],
    warnings: [],
    sources: [{ text: 'NIOSH 94-110, revised lifting equation' }],
    working: [
      say('order.work-lift', {
        limit: mass(limit.value.limitKg),
        mass: mass(each),
        times: number(limit.value.index, 2),
      }),
    ],
    values: { weight_kg: said },
    offers: ['math'],
  })
}
