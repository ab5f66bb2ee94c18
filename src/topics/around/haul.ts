/** What things weigh, how many trips they take, and what one person should not lift. */
import { type Load, liftingLimit, massOf, pallets, tripsFor } from '../../core/truck.ts'
import { tilesKg } from '../../core/weight.ts'
import type { Concept } from '../../language/concepts.ts'
import type { Quantity } from '../../language/measures.ts'
import { area, count, mass, number, type Phrase, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { knownTile, thicknessOf, tilePhrase } from '../stuff.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { alone, figureNear } from './read.ts'

const BAG_KG = 22.6796
const BOX_KG = 22.6796

/** The payload said: a mass beside the truck's words. */
export const payloadKg = (brief: Brief): number | null =>
  figureNear(brief.heard, ['mass'], 'payload', 'truck', 'trailer')?.si ??
  figureNear(brief.heard, ['mass'], 'trip')?.si ??
  null

/** Bags, boxes and buckets that the message counts, each with the weight said for it. */
export function saidLoads(brief: Brief, assumed: Phrase[]): Load[] {
  const payload = payloadKg(brief)
  const loads: Load[] = []
  const kinds: readonly [Concept, string, number][] = [
    ['bag', 'bag', BAG_KG],
    ['box', 'box', BOX_KG],
    ['sheet', 'sheet', 0],
    ['bucket', 'bucket', 25],
  ]
  const taken = new Set<Quantity>()
  for (const [concept, name, usualKg] of kinds) {
    const pieces = figureNear(brief.heard, ['none'], concept)
    if (!pieces || taken.has(pieces) || !Number.isInteger(pieces.n) || pieces.n <= 0) continue
    const said = alone(brief.heard).find(
      (q) => q.dimension === 'mass' && q.si !== payload && !taken.has(q) && (q.si as number) < 200,
    )
    if (!said && usualKg === 0) continue
    taken.add(pieces)
    if (said) taken.add(said)
    else assumed.push(say('order.assumed-each', { what: say(`order.each-${name}`), mass: mass(usualKg) }))
    loads.push({ name, pieces: pieces.n, kgEach: said?.si ?? usualKg })
  }
  return loads
}

/** The tile of a floor as a load. */
function tileLoad(brief: Brief, assumed: Phrase[]): Outcome<{ kg: number; line: Phrase } | null> {
  const tile = knownTile(brief.facts)
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return fine(null)
  const kind = brief.settings.tiles[brief.facts.tile?.kind ?? brief.settings.defaults.tileKind]
  if (!kind) return fine(null)
  const thicknessMm = thicknessOf(brief, brief.facts.tile ?? null, assumed)
  const kg = tilesKg(1, floor.value.areaM2, thicknessMm, kind.densityKgPerM3)
  if (!kg.ok) return kg
  const named = tile ? tilePhrase(tile, brief.metric) : say('order.layer-tile')
  return fine({
    kg: kg.value.usual,
    line: say('order.tile-mass', { mass: mass(kg.value.usual), area: area(floor.value.areaM2), tile: named }),
  })
}

export function weigh(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  const tongue = tongueAlone(brief)
  if (tongue) return fine(tongue)
  const loads = saidLoads(brief, assumed)
  const tile = loads.length ? fine(null) : tileLoad(brief, assumed)
  if (!tile.ok) return tile
  const kg = massOf(loads) + (tile.value?.kg ?? 0)
  if (!(kg > 0)) return refuse('question', { question: 'load' })
  const payload = payloadKg(brief)
  if (payload !== null || brief.has('trip', 'payload'))
    return haul(brief, loads.length ? loads : inBoxes(kg), payload, kg, assumed)
  return fine({
    topic: 'order',
    answer: tile.value?.line ?? say('order.mass', { mass: mass(kg) }),
    details: [...loadLines(loads), ...palletLines(brief, loads)],
    assumed,
    warnings: [],
    sources: [sourceOf(brief.settings.practice.weight.liftKg)],
    working: [say('order.work-mass', { mass: mass(kg) })],
    values: { weight_kg: kg },
    offers: ['math'],
  })
}

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

/** Tile without boxes known is loaded in boxes of 50 lb. */
const inBoxes = (kg: number): Load[] => [{ name: 'box', kgEach: Math.min(kg, BOX_KG), pieces: Math.ceil(kg / BOX_KG) }]

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

export function lifting(brief: Brief): Outcome<Told> {
  const said = alone(brief.heard).find((q) => q.dimension === 'mass')?.si ?? BAG_KG
  const limit = liftingLimit(said, USUAL_LIFT)
  if (!limit.ok) return limit
  return fine({
    topic: 'order',
    answer: say(limit.value.index > 1 ? 'order.lift-over' : 'order.lift-fine', {
      mass: mass(said),
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
        mass: mass(said),
        times: number(limit.value.index, 2),
      }),
    ],
    values: { weight_kg: said },
    offers: ['math'],
  })
}
