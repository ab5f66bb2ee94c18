/** An oven or a fridge on the finished floor: what each leg puts on the tile, and what the whole puts on the structure. */

import { standingLoad } from '../../core/standing-load.ts'
import { USUAL_LIVE_KPA } from '../../core/substrate/joists.ts'
import type { Size } from '../../language/sizes.ts'
import { count, load, mass, number, type Phrase, say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Source, Told } from '../topic.ts'
import { figureNear } from './read.ts'

const USUAL_LEGS = 4
/** From here on a size is what the appliance covers, below it a pad. [mm] */
const LEAST_FOOTPRINT_MM = 300
const PSI_KPA = 6.894757

export function standing(brief: Brief): Outcome<Told> {
  const { heard, metric } = brief
  const kg = heard.quantities.find((q) => q.dimension === 'mass')?.si
  if (kg === undefined || kg === null) return refuse('question', { question: 'load' })
  const said = figureNear(heard, ['none'], 'leg')
  const legs = said && Number.isInteger(said.n) ? said.n : USUAL_LEGS
  const sizes = heard.sizes.map((size) => sidesOf(size, metric))
  const pad = sizes.find(([a, b]) => Math.max(a, b) < LEAST_FOOTPRINT_MM)
  const footprint = sizes.find(([a, b]) => Math.min(a, b) >= LEAST_FOOTPRINT_MM)
  const m2 = (sides: readonly [number, number] | undefined): number | null =>
    sides ? (sides[0] * sides[1]) / 1e6 : null
  const worked = standingLoad({ kg, legs, padM2: m2(pad), footprintM2: m2(footprint) })
  if (!worked.ok) return worked
  const { legKg, worstLegKg, padKpa, averageKpa } = worked.value
  const hangs = worstLegKg > legKg
  const overPlan =
    averageKpa === null
      ? null
      : say(averageKpa > USUAL_LIVE_KPA ? 'standing.over' : 'standing.under', {
          load: load(averageKpa),
          live: load(USUAL_LIVE_KPA),
        })
  const byLeg = say(hangs ? 'standing.legs' : 'standing.leg', {
    weight: mass(kg),
    legs: count(legs),
    each: mass(legKg),
    worst: mass(worstLegKg),
  })
  const first = overPlan !== null && (heard.has('floor-load') || !heard.has('leg')) ? overPlan : null
  return fine({
    topic: 'order',
    answer: first ?? byLeg,
    details: [
      ...(first ? [byLeg] : overPlan ? [overPlan] : []),
      ...(padKpa === null ? [] : [say('standing.pad', { pressure: pressure(padKpa, metric) })]),
      say('standing.bed'),
      ...(overPlan ? [] : [say('standing.ask-footprint')]),
    ],
    assumed: said ? [] : [say('standing.assumed-legs', { legs: count(legs) })],
    sources: [{ text: 'common practice, no published source' }, ...(overPlan ? [HOUSE_FLOOR] : [])],
    values: {
      weight_kg: kg,
      leg_load_kg: legKg,
      leg_load_kg_high: worstLegKg,
      ...(averageKpa === null ? {} : { floor_load_kpa: averageKpa }),
      ...(padKpa === null ? {} : { pad_kpa: padKpa }),
    },
  })
}

/** references 7.9 */
const HOUSE_FLOOR: Source = { text: 'TCNA article on floor loads (2011)', reported: true }

const pressure = (kpa: number, metric: boolean): Phrase =>
  metric ? say('standing.kpa', { n: number(kpa, 0) }) : say('standing.psi', { n: number(kpa / PSI_KPA, 0) })

/** The sides of a size. [mm] Bare figures up to 10 are feet where "footprint" stands beside them, else inches. */
function sidesOf({ item, noun }: Size, metric: boolean): readonly [number, number] {
  const [a, b] = item.parts
  const bare = noun?.mark.concept === 'footprint' && Math.max(a.n, b.n) <= MOST_BARE_FEET ? 304.8 : 25.4
  const scale = metric ? (bare > 100 ? 1000 : 1) : bare
  return [a.si ?? a.n * scale, b.si ?? b.n * scale]
}

const MOST_BARE_FEET = 12
