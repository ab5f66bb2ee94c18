/** Mortar mixed on site by parts, cement to sand: a level bed of a thickness, or a volume. */
import { CEMENT_SACK_KG, cementKgByTable, mudParts } from '../../core/shower/mud.ts'
import type { Heard } from '../../language/heard.ts'
import { area, mass, number, type Phrase, say, small, volume } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import type { Brief, Told } from '../topic.ts'
import { alone, lengthMm } from './read.ts'

const L_PER_FT3 = 28.316846592
const MOST_PARTS = 8

/** "1:3", "1 to 4", "3:1": parts of sand to one of cement. */
export function sandPartsIn({ tokens, reader }: Heard): number | null {
  for (let i = 0; i + 2 < tokens.length; i++) {
    const [a, b] = [reader.number(i), reader.number(i + 2)]
    const joined = reader.sign(i + 1) === ':' || reader.is(i + 1, 'to')
    if (!a || !b || !joined || (a.value !== 1 && b.value !== 1)) continue
    const parts = Math.max(a.value, b.value)
    if (parts >= 2 && parts <= MOST_PARTS && Number.isInteger(parts)) return parts
  }
  return null
}

/** Cement and sand are asked for, by parts or for a bed of mud that has no drain. */
export const asksParts = (heard: Heard): boolean =>
  (sandPartsIn(heard) !== null && heard.has('mud-word', 'mortar', 'cement-word', 'bed-word')) ||
  (heard.has('cement-word') && heard.has('how-many', 'how-much') && heard.has('mud-word', 'bed-word'))

export function mudBed(brief: Brief): Outcome<Told> {
  const { heard, metric } = brief
  const said = sandPartsIn(heard)
  const parts = said ?? brief.settings.around.shower.sandParts.value
  const told = heard.quantities.find(
    (q) => q.dimension === 'volume' && ['cuft', 'cuyd', 'cum', 'l'].includes(q.unit ?? ''),
  )
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  const thick = thicknessIn(brief)
  const litres = told?.si ?? oneOf(heard) ?? (floor.value && thick !== null ? floor.value.areaM2 * thick : null)
  if (litres === null) return refuse('question', { question: floor.value ? 'mud-thickness' : 'area' })
  const mixed = mudParts(litres, parts)
  if (!mixed.ok) return mixed
  const { cementSacks, sandL } = mixed.value
  const cementKg = cementSacks * CEMENT_SACK_KG
  const tableKg = cementKgByTable(litres, parts)
  const numbers = {
    mud: metric ? volume(litres) : say('shower.cubic-feet', { n: number(litres / L_PER_FT3, 2) }),
    sacks: number(cementSacks, 2),
    cement: mass(cementKg),
    sand: metric ? volume(sandL) : say('shower.cubic-feet', { n: number(sandL / L_PER_FT3, 2) }),
    parts: number(parts, 0),
    ...(tableKg === null ? {} : { least: mass(tableKg) }),
  }
  const bed: Phrase[] =
    floor.value && thick !== null && !told
      ? [say('mud.bed', { ...numbers, area: area(floor.value.areaM2), thickness: small(thick) })]
      : []
  return fine({
    topic: 'shower',
    answer: say(metric ? 'mud.answer-metric' : 'mud.answer', numbers),
    details: [...bed, ...(tableKg === null || !metric ? [] : [say('mud.table', numbers)]), say('mud.no-waste')],
    assumed: said === null ? [say('mud.assumed-parts', numbers)] : [],
    sources: [
      { text: 'US Navy Seabee masonry rule 38' },
      ...(tableKg === null || !metric ? [] : [{ text: 'CPWD cement-consumption coefficients, sub-head 3.0' }]),
    ],
    working: [say('mud.work', numbers)],
    values: {
      ...(floor.value ? { area_m2: floor.value.areaM2 } : {}),
      mud_l: litres,
      cement_sacks: cementSacks,
      cement_kg: cementKg,
      cement_kg_low: tableKg ?? undefined,
      cement_kg_high: tableKg === null ? undefined : cementKg,
      sand_l: sandL,
    },
  })
}

/** "for a cubic yard": one of it. [l] */
const oneOf = ({ freeUnits }: Heard): number | null =>
  freeUnits.includes('cuyd') ? L_PER_FT3 * 27 : freeUnits.includes('cum') ? 1000 : null

const THICKEST_MM = 150

/** The bed's thickness: the one length of the message that is no floor. [mm] */
function thicknessIn({ heard, metric }: Brief): number | null {
  const said = alone(heard)
    .filter(
      (q) =>
        (q.dimension === 'length' && !['ft', 'm', 'yd'].includes(q.unit ?? '')) ||
        (q.dimension === 'none' && q.token.fraction),
    )
    .map((q) => lengthMm(q, metric))
    .find((mm) => mm >= 5 && mm <= THICKEST_MM)
  return said ?? null
}
