/** How warm it is on site, when it was set, water for an answer in bags, boxes set: said once and used after, in both languages.
 *  The clock stands at 4:30 PM, Tuesday 10 March 2026, UTC-5. */
import { describe, expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'
import { holds, inch, lastOf, sf, type Talk } from '../support/talks.ts'

const at = (day: number, time: string): string => `2026-03-${day}T${time}:00-05:00`
/** The wait at a temperature, by a message that says all of it. */
const waits = (said: string): number => Number(lastOf([said]).values['grout_after_h'])
const AT_58 = waits('set at 2pm, 58F, when can we grout')
const AT_61 = waits('set at 2pm, 61F, when can we grout')
const AT_12C = waits('set at 2pm, 12 C, when can we grout')
const FLOOR = '10x13 shop floor, 18x18 tile, 3/16 joint'

const TALKS: readonly Talk[] = [
  // told once, used by every wait, and said so
  [['site is 58F'], { topic: 'job', says: /Kept: the site at 58 °F/ }],
  [
    ['site is 58F', 'set at 2pm'],
    { topic: 'cure', values: { grout_after_h: AT_58 }, says: /air 58 °F, kept in the job/ },
  ],
  [['shop was 61', 'set at 2pm'], { values: { grout_after_h: AT_61 } }],
  [["it's 12 C in here", 'set at 2pm'], { values: { grout_after_h: AT_12C } }],
  [["it's 12 C in here"], { says: /12 °C/ }],
  [['58 in here', 'set at 2pm'], { values: { grout_after_h: AT_58 } }],
  [['its 58 in the wash-up', 'set at 2pm'], { values: { grout_after_h: AT_58 } }],
  [['the shop is at 58 today', 'when can we grout, set at 2pm'], { values: { grout_after_h: AT_58 } }],
  [['heater died, its 58 in here', 'set at 2pm'], { values: { grout_after_h: AT_58 } }],
  [['jobsite is sitting at 58', 'set at 2pm'], { values: { grout_after_h: AT_58 } }],
  [['site is 58F', 'what do we have so far'], { topic: 'job', says: /the site at 58 °F/ }],
  [['site is 58F', 'undo', 'set at 2pm'], { values: { grout_after_h: 24 } }],
  [['site is 58F', 'set at 2pm, 61F'], { values: { grout_after_h: AT_61 } }],
  [['shop is 61, when can we grout, set at 2pm', FLOOR, 'set at 2pm'], { values: { grout_after_h: AT_61 } }],
  [
    ['site is 95F', 'how long does a bucket last'],
    { topic: 'mix', values: { pot_life_min: [30, 100] }, says: /at 95 °F/ },
  ],
  [['slab is 50', 'set at 2pm', 'what do we have so far'], { says: /the slab at 50 °F/ }],
  [
    ['set at 2pm', 'its 58 in here'],
    { topic: 'cure', values: { grout_after_h: AT_58 }, says: /Kept in the job: the site at 58/ },
  ],
  [['set at 2pm, 58F', 'what if it was 61', 'what do we have so far'], { topic: 'job', says: /the site at 58 °F/ }],
  [['set at 2pm, 58F', 'what if it was 61'], { topic: 'cure', values: { grout_after_h: AT_61 } }],
  // asked for the night, told in a word
  [['set at 2pm, 70F'], { values: { grout_after_h: 24 } }],
  [['site is 60F', 'set at 2pm', '45'], { topic: 'cure', says: /night|grout/i, not: /what’s the low/ }],
  [['site is 60F', 'set at 2pm', 'low 45', 'recap'], { says: /nights at 45 °F/ }],
  [['set at 2pm, high 60 low 38, when can we grout'], { ok: false, topic: 'cure', says: /38 °F is too cold/ }],
  [["it's 40 in here, is that ok"], { topic: 'job', says: /40 °F is below the 50 °F/ }],
  // no temperature
  [['shop has 61 tiles', 'recap'], { not: /°F/ }],
  [['shop is 61 sf', 'recap'], { not: /°F/, values: { area_m2: sf(61) } }],
  [['pot life at 90F', 'recap'], { not: /the site at/ }],
  [['can we set at 45F?', 'recap'], { not: /the site at/ }],
  // when it was set
  [['set at 2pm, 58F, when can we grout', 'make it 4pm'], { topic: 'cure', says: /from 4 PM today/ }],
  [['set at 2pm, 58F, when can we grout', 'make it 10am'], { says: /from 10 AM today/ }],
  [['set at 2pm, 58F, when can we grout', 'actually it was 3'], { says: /from 3 PM today/ }],
  [['set yesterday at 2pm, 70F', 'no, 4pm'], { says: /from yesterday 4 PM/ }],
  [['set at 9am, 60F', "no it's 65 now"], { says: /from 9 AM today/, values: { grout_after_h: [24, 30] } }],
  [['set at 9am, 70F', 'it was 58 this morning'], { says: /from 9 AM today/, values: { grout_after_h: AT_58 } }],
  [['set at 7 this morning, night low 45'], { says: /from 7 AM today/ }],
  [['set at 7 this morning, low of 45 tonight, when can we grout'], { says: /from 7 AM today/ }],
  [['laid it 7 this morning, 70F when can we grout'], { values: { grout_at: at(11, '07:00') } }],
  [['set last night at 7, when can i grout'], { says: /from yesterday 7 PM/ }],
  [['set around 2ish, 70F, when can we grout'], { values: { grout_at: at(11, '14:00') } }],
  // water for what was counted
  [
    ['130 sf, 1/4 x 3/8 trowel, how many bags', 'how much water for that'],
    { topic: 'mix', values: { mix_powder_kg: 150 * 0.45359237 } },
  ],
  [
    ['130 sf, 1/4 x 3/8 trowel, how many bags', 'how much water for that', 'half that'],
    { values: { mix_powder_kg: 75 * 0.45359237 } },
  ],
  [
    ['130 sf, 1/4 x 3/8 trowel, how many bags', 'how much water per bag'],
    { values: { mix_powder_kg: 50 * 0.45359237 } },
  ],
  [[FLOOR, 'and grout?', 'how much water for it'], { topic: 'mix', values: { mix_powder_kg: 25 * 0.45359237 } }],
  // boxes set
  [['set 12 boxes'], { ok: false, topic: 'log', says: /How many tiles in a box/ }],
  [['set 12 boxes', '6 to a box'], { topic: 'log', values: { tiles_set: 72 } }],
  [[`${FLOOR}, 6 per box`, 'set 4 boxes', 'put down 3 more boxes'], { values: { tiles_set: 42 } }],
  [[`${FLOOR}, 6 per box`, 'set 4 boxes', 'set 9 boxes so far'], { values: { tiles_set: 54 } }],
  [[`${FLOOR}, 6 per box`, 'set 12 boxes'], { values: { tiles_set: 72 }, not: /more than the floor/ }],
  [['set 12 boxes today, 10 sf a box'], { topic: 'log', says: /120 sf set/ }],
  // a question with other figures is talk, not the job
  [[FLOOR, 'what about 1/4', 'recap'], { topic: 'job', values: { joint_mm: inch(3 / 16) } }],
  [[FLOOR, 'how about 24x24'], { topic: 'tile', values: { tile_length_mm: inch(24) } }],

  // in Spanish
  [
    ['la obra esta a 12 grados', 'puesto a las 2 de la tarde'],
    { topic: 'cure', values: { grout_after_h: AT_12C }, says: /aire 12 °C|aire 54 °F/ },
  ],
  [['el taller estaba a 14'], { topic: 'job', says: /la obra a 14 °C/ }],
  [['aquí adentro hay 12 grados', 'puesto a las 2pm'], { values: { grout_after_h: AT_12C } }],
  [['puesto a las 2pm, 21 grados', 'mejor a las 4'], { topic: 'cure', says: /hoy, 4 p\.m\./ }],
  [['puesto a las 2pm, 21 grados', 'fue a las 3'], { says: /hoy, 3 p\.m\./ }],
  [['puesto hoy a las 7 de la mañana, mínima de la noche 45 F'], { says: /hoy, 7 a\.m\./ }],
  [['la losa está a 9 grados', 'qué llevamos'], { topic: 'job', says: /la losa a 9 °C|la losa a 48 °F/ }],
  [
    ['12 m2, llana de 1/4 x 3/8, cuántos bultos', 'cuánta agua lleva eso'],
    { topic: 'mix', values: { mix_powder_kg: [20, 120] } },
  ],
  [['pusimos 12 cajas'], { ok: false, topic: 'log' }],
  [['pusimos 12 cajas', '6 por caja'], { topic: 'log', values: { tiles_set: 72 } }],
  [[FLOOR, 'y si fuera 1/4', 'resumen'], { topic: 'job', values: { joint_mm: inch(3 / 16) } }],
]

describe('talks', () => {
  test.each(TALKS)('%j', (said, expected) => holds(lastOf(said), expected))
})

describe('reminders', () => {
  const due = (crew: Crew, i = 0): string => new Date(crew.last?.reminders?.[i]?.dueMs ?? 0).toISOString()
  const text = (crew: Crew): string | undefined => crew.last?.reminders?.[0]?.body.text

  test.each([
    ['remind me in 3 hours to grout', '2026-03-11T00:30:00.000Z', 'Reminder: grout'],
    ['remind me tomorrow at 8 to check the heater', '2026-03-11T13:00:00.000Z', 'Reminder: check the heater'],
    ['remind me at 6 to cover the floor', '2026-03-10T23:00:00.000Z', 'Reminder: cover the floor'],
    ['remind me in 15 to remix', '2026-03-10T21:45:00.000Z', 'Reminder: remix'],
    ['remind us monday at 7 to load the truck', '2026-03-16T12:00:00.000Z', 'Reminder: load the truck'],
    ['remind me thursday to order grout', '2026-03-12T12:00:00.000Z', 'Reminder: order grout'],
    ['recuérdame en 3 horas que hay que lechar', '2026-03-11T00:30:00.000Z', 'Recordatorio: hay que lechar'],
    [
      'recuérdame mañana a las 8 de revisar el calentón',
      '2026-03-11T13:00:00.000Z',
      'Recordatorio: revisar el calentón',
    ],
    ['avísame en media hora de la mezcla', '2026-03-10T22:00:00.000Z', 'Recordatorio: mezcla'],
    ['remind me in an hour and 20 min to wash the grout', '2026-03-10T22:50:00.000Z', 'Reminder: wash the grout'],
    ['remind me in an hour and a half to check the batch', '2026-03-10T23:00:00.000Z', 'Reminder: check the batch'],
    ['remind me in 2 and a half hours to sweep', '2026-03-11T00:00:00.000Z', 'Reminder: sweep'],
    ['remind me at half past 5 to cover the floor', '2026-03-10T22:30:00.000Z', 'Reminder: cover the floor'],
    ['remind me at quarter to six to load up', '2026-03-10T22:45:00.000Z', 'Reminder: load up'],
    ['remind me at a quarter past 6 to lock up', '2026-03-10T23:15:00.000Z', 'Reminder: lock up'],
    ['remind me at quarter to one to call', '2026-03-11T17:45:00.000Z', 'Reminder: call'],
    ['remind me at noon to order lunch', '2026-03-11T17:00:00.000Z', 'Reminder: order lunch'],
    [
      'recuérdame en una hora y 20 min lavar la boquilla',
      '2026-03-10T22:50:00.000Z',
      'Recordatorio: lavar la boquilla',
    ],
    ['recuérdame en hora y media revisar la mezcla', '2026-03-10T23:00:00.000Z', 'Recordatorio: revisar la mezcla'],
    ['recuérdame a las cinco y media cubrir el piso', '2026-03-10T22:30:00.000Z', 'Recordatorio: cubrir el piso'],
    ['recuérdame a las 6 menos cuarto barrer', '2026-03-10T22:45:00.000Z', 'Recordatorio: barrer'],
    ['recuérdame un cuarto para las 6 barrer', '2026-03-10T22:45:00.000Z', 'Recordatorio: barrer'],
    ['recuérdame al mediodía comer', '2026-03-11T17:00:00.000Z', 'Recordatorio: comer'],
  ])('%s', (said, when, what) => {
    const crew = new Crew()
    expect(crew.say(said).topic).toBe('job')
    expect(due(crew)).toBe(when)
    expect(text(crew)).toBe(what)
  })

  test.each(['ping me when I can grout', 'avísame cuando pueda lechar'])('%s: the wait', (said) => {
    const crew = new Crew()
    crew.say('set at 2pm, 58F, when can we walk on it')
    const reply = crew.say(said)
    expect(crew.last?.reminders?.map((r) => r.id.split('@')[0])).toEqual(['grout'])
    expect(due(crew)).toBe(new Date(String(reply.values['grout_at'])).toISOString())
    expect(reply.answer).toMatch(/^I’ll tell you: grout|^Te aviso: emboquillar/)
  })

  test('a time or temperature told anew moves what was promised', () => {
    const crew = new Crew()
    crew.say('set at 9am, 70F')
    expect(due(crew)).toBe('2026-03-11T14:00:00.000Z')
    crew.say('make it 11am')
    expect(due(crew)).toBe('2026-03-11T16:00:00.000Z')
    const moved = crew.say('its 60 in here')
    expect(due(crew)).toBe(new Date(String(moved.values['grout_at'])).toISOString())
    expect(crew.memory.promised.map((p) => p.about)).toEqual(['grout', 'heavy'])
    crew.say('what if it was 75')
    expect(crew.last?.reminders).toEqual([])
  })

  test.each([
    ['cancel that', 'cancel'],
    ['cancela eso', 'cancela todo'],
  ])('%s takes back the last one, %s all', (last, all) => {
    const crew = new Crew()
    crew.say('set at 9am, 70F')
    crew.say('remind me at 6 to cover the floor')
    crew.say(last)
    expect(crew.memory.promised.map((p) => p.about)).toEqual(['grout', 'heavy'])
    crew.say(all)
    expect(crew.memory.promised).toEqual([])
  })

  test('the grout one alone, and with none running what was said last', () => {
    const crew = new Crew()
    crew.say('set at 9am, 70F')
    crew.say('cancel the grout one')
    expect(crew.memory.promised.map((p) => p.about)).toEqual(['heavy'])
    crew.say('cancel all')
    crew.say(FLOOR)
    expect(crew.say('cancel that').answer).toMatch(/^Undone/)
  })
})
