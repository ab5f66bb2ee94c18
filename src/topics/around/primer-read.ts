/** Primer in a message: whether an amount is asked for, and what a litre is said to cover. */
import type { Heard } from '../../language/heard.ts'
import { toSi } from '../../language/measures.ts'
import { toldPer } from './read.ts'

const VOLUMES: readonly string[] = ['l', 'ml', 'gal', 'qt', 'pt']

/** "8 m2 per liter", "200 sf a gallon" [m2/l]; null where it is not told. */
export function coverM2PerL(heard: Heard): number | null {
  for (const { q } of heard.loose) {
    const per = q.dimension === 'area' ? toldPer(heard, q) : null
    if (per && VOLUMES.includes(per) && q.si) return q.si / toSi(1, per)
  }
  return null
}

/** An amount of primer: a floor or a coverage is told and nothing else that takes it. */
export const primerAsked = (heard: Heard): boolean =>
  heard.has('primer') &&
  !heard.has('leveller', 'order-word', 'price', 'cost', 'when', 'how-long', 'tile', 'grout') &&
  heard.facts.tile === undefined &&
  (heard.facts.areaM2 !== undefined || heard.facts.rooms !== undefined || coverM2PerL(heard) !== null)
