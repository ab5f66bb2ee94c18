/** Follow-ups in a word or two: what the talk repeats, what the job keeps, and that nothing else of the job is lost. */
import { describe, expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'
import { holds, inch, lastOf, sf, type Talk } from '../support/talks.ts'

const FLOOR = '10x13 shop floor, 18x18, 3/16 joint'
const PISO = 'piso de 10x13, loseta 18x18, junta 3/16'
const TWO = ['kitchen is 10x13', 'bath 5x8', '18x18 tile with 3/16 joint']

const TALKS: readonly Talk[] = [
  [[FLOOR, 'and grout?'], { topic: 'grout', values: { joint_mm: inch(3 / 16), area_m2: sf(130) } }],
  [[FLOOR, 'make it 1/4', 'and grout?'], { topic: 'grout', values: { joint_mm: inch(1 / 4) } }],
  [[FLOOR, 'and grout?', 'on the diagonal?', 'recap'], { topic: 'job', not: /diagonal/ }],
  [[FLOOR, '15% extra'], { topic: 'tile', values: { spare_pct: 15 } }],
  [[FLOOR, 'no its 11x14'], { topic: 'tile', values: { area_m2: sf(154) }, says: /Kept in the job: the floor/ }],
  [[FLOOR, 'no its 11x14', 'recap'], { says: /shop floor 11' x 14'/ }],
  [[FLOOR, 'same but 24x24', 'recap'], { topic: 'job', values: { tile_length_mm: inch(18) } }],
  [[FLOOR, 'what if its 24x24', 'recap'], { topic: 'job', values: { tile_length_mm: inch(18) } }],
  [[FLOOR, 'make it 24x24', 'recap'], { topic: 'job', values: { tile_length_mm: inch(24) } }],
  [[FLOOR, 'add the closet 3x4', 'drop the closet', 'recap'], { values: { area_m2: sf(130) } }],
  [[FLOOR, 'actually 8 in a box'], { topic: 'tile', values: { tile_length_mm: inch(18), tile_boxes: 9 } }],
  [[FLOOR, 'how much thinset', 'water?'], { topic: 'mix' }],
  // one room asked about, the job keeps the others
  [
    [...TWO, 'how many for just the bath', 'bath is 5x9', 'recap'],
    { topic: 'job', values: { area_m2: sf(175) }, says: /kitchen 10' x 13'.*bath 5' x 9'/ },
  ],
  [[...TWO, 'how many for just the bath', 'add hall 3x12'], { topic: 'tile', values: { area_m2: sf(206) } }],
  [[...TWO, 'how many for just the bath', 'no its 5x9', 'recap'], { values: { area_m2: sf(175) } }],
  [[...TWO, 'how many for just the bath', 'drop the bath', 'recap'], { values: { area_m2: sf(130) } }],
  // a room only talked about is none of the job's
  [
    ['shop floor 10x13 18x18', 'same thing in the mudroom 6x8', 'no its 6x9', 'recap'],
    { values: { area_m2: sf(130) } },
  ],
  [
    ['shop floor 10x13 18x18', 'same thing in the mudroom 6x8', 'add the closet 3x4', 'recap'],
    { values: { area_m2: sf(142) } },
  ],
  // a room whose tile runs across that of another: each alone takes 96 and 20 with spares, off-cuts of one may serve the other
  [['kitchen 10x13, bath 6x6, tile 12x24'], { topic: 'tile', values: { area_m2: sf(166), tile_count: [85, 116] } }],
  [
    ['10x13 shop floor 18x18', 'and for the wash-up 8x10', 'forget the wash-up'],
    { topic: 'tile', values: { area_m2: sf(130) } },
  ],
  [['set at 10am', 'slab is 52', 'recap'], { topic: 'job', says: /the slab at 52 °F/ }],
  [['set at 10am', 'slab is 52'], { topic: 'cure', values: { grout_after_h: [38, 50] } }],
  [['nights drop to 40', 'recap'], { says: /nights at 40 °F/ }],
  // jobs by name, and saying no
  [
    ['call it bakery', FLOOR, 'new job cafe', '8x10 12x12', 'go back to bakery'],
    { topic: 'job', values: { area_m2: sf(130) } },
  ],
  [[FLOOR, 'forget this job', 'no'], { topic: 'job', says: /Nothing is deleted/ }],
  [[FLOOR, 'forget this job', 'no', 'yes'], { ok: false }],
  [[FLOOR, 'who said 18x18'], { topic: 'job', says: /^lead, .*the tile 18x18/ }],

  [
    [PISO, 'y la boquilla?', 'que sea 1/8'],
    { topic: 'grout', values: { joint_mm: inch(1 / 8) }, says: /Guardado en el trabajo: la junta/ },
  ],
  [[PISO, 'en diagonal?', 'resumen'], { topic: 'job', not: /diagonal/ }],
  [[PISO, 'no, es de 11x14'], { topic: 'tile', values: { area_m2: sf(154) } }],
  [[PISO, 'lo mismo pero 24x24', 'qué tenemos hasta ahora'], { topic: 'job', values: { tile_length_mm: inch(18) } }],
  [[PISO, 'súmale el closet de 3x4', 'quita el closet', 'resumen'], { values: { area_m2: sf(130) } }],
  [[PISO, 'y el agua?'], { topic: 'mix' }],
  [
    ['esta obra se llama panadería', PISO, 'obra nueva llamada café', 'cuarto de 8x10', 'vuelve a la obra panadería'],
    { topic: 'job', values: { area_m2: sf(130) } },
  ],
  [[PISO, 'olvida esta obra', 'no'], { topic: 'job', says: /No se borra nada/ }],
]

describe('talks', () => {
  test.each(TALKS)('%j', (said, expected) => holds(lastOf(said), expected))
})

describe('the clock of a zone over a change of daylight saving', () => {
  // US rule: first Sunday in November, 1 November 2026, clocks go back from 2:00 to 1:00.
  const SATURDAY = '2026-10-31T20:00:00-05:00'
  const chicago = (): Crew => {
    const crew = new Crew()
    crew.say('we are in America/Chicago', { now: SATURDAY })
    return crew
  }
  const due = (crew: Crew): string => new Date(crew.last?.reminders?.[0]?.dueMs ?? 0).toISOString()

  test('eight in the morning is eight by the new clock; 24 hours are 24 hours', () => {
    const crew = chicago()
    crew.say('remind me tomorrow at 8 to check the heater', { now: SATURDAY })
    expect(due(crew)).toBe('2026-11-01T14:00:00.000Z')
    crew.say('remind me in 24 hours to grout', { now: SATURDAY })
    expect(due(crew)).toBe('2026-11-02T01:00:00.000Z')
  })

  test('a wait counts the hours that pass, and is told by the new clock', () => {
    const reply = chicago().say('set at 8pm, 70F', { now: SATURDAY })
    expect(reply.values['grout_at']).toBe('2026-11-01T19:00:00-06:00')
    expect(reply.answer).toMatch(/7 PM/)
  })

  test('an hour that the spring change leaves out is the next one there is', () => {
    // 8 March 2026: 2:00 is followed by 3:00.
    const crew = new Crew()
    const now = '2026-03-07T20:00:00-06:00'
    crew.say('we are in America/Chicago', { now })
    crew.say('remind me tomorrow at 2:30 am', { now })
    expect(due(crew)).toBe('2026-03-08T08:30:00.000Z')
  })

  test('without daylight saving nothing moves', () => {
    const crew = new Crew()
    crew.say('we are on Arizona time', { now: '2026-03-07T20:00:00-07:00' })
    crew.say('remind me tomorrow at 8', { now: '2026-03-07T20:00:00-07:00' })
    expect(due(crew)).toBe('2026-03-08T15:00:00.000Z')
  })
})

test('the history tells who and when in the zone of the job', () => {
  const crew = new Crew()
  crew.say('central time', { now: '2026-03-09T14:00:00Z' })
  crew.say(FLOOR, { now: '2026-03-09T14:00:00Z', person: 'ana' })
  crew.say('make it 1/8', { now: '2026-03-10T13:30:00Z', person: 'luis' })
  const told = crew.say('who changed the joint', { now: '2026-03-10T21:30:00Z' })
  expect(told.answer).toMatch(/^luis, 8:30 AM today: the joint 1\/8 in \(before: the joint 3\/16 in\)/)
  expect(told.details[0]).toMatch(/^ana, yesterday 9 AM|^ana, 9 AM yesterday/)
})
