/** Area and outer walls of what was told. */
import { area, run, say } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { floorSum, roomPhrase } from './floors.ts'
import type { Brief, Told } from './topic.ts'

export function layout(brief: Brief): Outcome<Told> {
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  const { areaM2, perimeterM } = floor.value
  const rooms = brief.facts.rooms ?? []
  const perimeterFirst = brief.has('perimeter') && perimeterM > 0
  return fine({
    topic: 'layout',
    answer: say(perimeterFirst ? 'layout.perimeter' : 'layout.area', {
      area: area(areaM2),
      perimeter: run(perimeterM * 1000),
    }),
    details: [
      ...(rooms.length > 0 ? [say('layout.rooms', { rooms: rooms.map(roomPhrase) })] : []),
      ...(perimeterM > 0
        ? [
            perimeterFirst
              ? say('layout.area', { area: area(areaM2) })
              : say('layout.perimeter', { perimeter: run(perimeterM * 1000) }),
          ]
        : []),
    ],
    working: [say('layout.work', { area: { is: 'number', n: areaM2, digits: 3 } })],
    values: { area_m2: areaM2, perimeter_m: perimeterM > 0 ? perimeterM : undefined },
    offers: ['keep'],
  })
}
