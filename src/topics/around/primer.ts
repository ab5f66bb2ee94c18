/** "primer at 8 m2 per litre for 20 m2": what a floor takes, by the coverage told or the usual one. */
import { area, count, number, say, volume } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { materialOf } from '../../settings.ts'
import { floorSum } from '../floors.ts'
import type { Brief, Told } from '../topic.ts'
import { coverM2PerL, primerAsked } from './primer-read.ts'

/** Null where the message asks for no primer. @problem question: the floor; out-of-range */
export function primer(brief: Brief): Outcome<Told> | null {
  if (!primerAsked(brief.heard)) return null
  const material = materialOf(brief.settings, 'coating', 'primer')
  if (!material) return refuse('unknown-material', { said: 'primer' })
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  const told = coverM2PerL(brief.heard)
  const { coatLPerM2, coats, source, sources } = material
  const perM2 = told === null ? coatLPerM2.usual : 1 / told
  const { areaM2 } = floor.value
  const litres = areaM2 * perM2 * coats
  const args = {
    litres: volume(litres),
    area: area(areaM2),
    cover: area(1 / perM2),
    coats: count(coats),
    m2: number(areaM2, 2),
    rate: number(perM2, 3),
    l: number(litres, 2),
  }
  return fine({
    topic: 'underlayment',
    answer: say('primer.answer', args),
    details: [say('primer.rules')],
    assumed: told === null ? [say('primer.assumed', args)] : [],
    sources: [{ text: sources?.['coatLPerM2'] ?? source }],
    working: [say('primer.work', args)],
    values: { area_m2: areaM2, primer_l: litres },
    offers: ['math', 'keep'],
  })
}
