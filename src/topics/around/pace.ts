/** A day's tile: said ("120 sf a day"), else the usual hours at the usual pace. */
import type { Facts } from '../../facts.ts'
import { area, type Phrase, say } from '../../phrase.ts'
import type { Brief } from '../topic.ts'
import { toldPer } from './read.ts'

/** The area said for a day [m²], or null. */
export const saidADayM2 = (brief: Brief): number | null =>
  brief.heard.quantities.find((q) => q.dimension === 'area' && toldPer(brief.heard, q) === 'day')?.si ?? null

/** A day's tile [m²]; an assumed one is told. */
export function dayM2(brief: Brief, assumed: Phrase[]): number {
  const said = saidADayM2(brief)
  if (said !== null) return said
  const { defaults, around } = brief.settings
  const m2 = (brief.facts.paceM2PerH ?? defaults.paceM2PerH) * around.day.hours.value
  assumed.push(say('around.assumed-pace', { area: area(m2) }))
  return m2
}

/** The facts without the day's area among the floor's. */
export function withoutDay(brief: Brief): Facts {
  const day = saidADayM2(brief)
  const { areaM2 } = brief.facts
  if (day === null || areaM2 === undefined || brief.heard.facts.areaM2 === undefined) return brief.facts
  const rest = areaM2 - day
  if (rest > 1e-6) return { ...brief.facts, areaM2: rest }
  // The day's area alone was said: the floor is what the talk knew.
  const { areaM2: _, ...others } = brief.facts
  return brief.memory.talk?.facts.areaM2 !== undefined ? { ...others, areaM2: brief.memory.talk.facts.areaM2 } : others
}
