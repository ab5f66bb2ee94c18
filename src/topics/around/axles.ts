/** What a load does to the axles of a truck and to the tongue of a trailer, where the distances are told. */
import { axleShare, tongueShare } from '../../core/truck.ts'
import type { Quantity } from '../../language/measures.ts'
import { mass, type Phrase, room, say } from '../../phrase.ts'
import { fine, type Outcome } from '../../problem.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { alone, figureNear } from './read.ts'

const LEAST_MM = 100
const isDistance = (q: Quantity): boolean => q.dimension === 'length' && (q.si as number) >= LEAST_MM

/** "1000 lb 9 ft behind the front axle, wheelbase 12 ft"; "800 lb 15 in ahead of the trailer axle, hitch 10 ft".
 *  Null where the distances are not told. */
export function axles(brief: Brief): Outcome<Told> | null {
  const { heard } = brief
  const kg = alone(heard).find((q) => q.dimension === 'mass')?.si
  if (!kg) return null
  const span = figureNear(heard, ['length'], 'wheelbase', 'hitch-word')
  const place = alone(heard).find((q) => isDistance(q) && q !== span)
  if (!span || !place) return null
  return heard.has('wheelbase') ? onTruck(brief, kg, span, place) : onTrailer(brief, kg, span, place)
}

const told = (brief: Brief, answer: Phrase, kg: number, working: Phrase): Told => ({
  topic: 'order',
  answer,
  warnings: [say('order.payload-rule')],
  sources: [sourceOf(brief.settings.around.truck.tonguePctLow)],
  working: [working],
  values: { weight_kg: kg },
  offers: ['math'],
})

function onTruck(brief: Brief, kg: number, span: Quantity, place: Quantity): Outcome<Told> {
  const share = axleShare(kg, span.si as number, place.si as number)
  if (!share.ok) return share
  const { frontKg, rearKg } = share.value
  const parts = {
    rear: mass(rearKg),
    front: mass(Math.abs(frontKg)),
    load: mass(kg),
    place: room(place.si as number),
    span: room(span.si as number),
  }
  return fine(
    told(brief, say(frontKg < 0 ? 'order.axles-lifted' : 'order.axles', parts), kg, say('order.work-axles', parts)),
  )
}

function onTrailer(brief: Brief, kg: number, span: Quantity, place: Quantity): Outcome<Told> {
  const { tonguePctLow: low, tonguePctHigh: high } = brief.settings.around.truck
  const behind = brief.heard.has('behind-word')
  const share = tongueShare(kg, span.si as number, (behind ? -1 : 1) * (place.si as number))
  if (!share.ok) return share
  const { tongueKg, pct } = share.value
  const parts = {
    tongue: mass(Math.abs(tongueKg)),
    share: { is: 'percent', pct: Math.abs(pct), digits: 1 } as const,
    load: mass(kg),
    place: room(place.si as number),
    span: room(span.si as number),
  }
  const key =
    pct < 0
      ? 'order.tongue-lifts'
      : pct < low.value
        ? 'order.tongue-light'
        : pct > high.value
          ? 'order.tongue-heavy'
          : 'order.tongue-good'
  return fine(told(brief, say(key, parts), kg, say('order.work-tongue', parts)))
}
