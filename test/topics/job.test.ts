/** Conversations: each line is said in turn, the last answer is looked at. Areas and lengths are worked out beside them. */
import { describe, expect, test } from 'vitest'
import { Crew, NOW } from '../support/crew.ts'
import { holds, inch, lastOf, sf, type Talk } from '../support/talks.ts'

const FLOOR = '10x13 shop floor, 18x18 tile, 3/16 joint'

const TALKS: readonly Talk[] = [
  // what the job holds
  [
    [FLOOR, 'what do we have so far'],
    {
      topic: 'job',
      values: { area_m2: sf(130), tile_length_mm: inch(18), joint_mm: inch(3 / 16), tile_count: [58, 75] },
    },
  ],
  [[FLOOR, 'what have we got'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'recap'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'whats the job'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'where are we'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'show me the job'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'status'], { topic: 'job' }],
  [['what do we have so far'], { topic: 'job', says: /Nothing in this job yet/ }],
  [
    ['mudroom is 6x9', 'washup 8x10', 'list the rooms'],
    { topic: 'job', values: { area_m2: sf(134) }, says: /mudroom[\s\S]*washup/ },
  ],
  // changes
  [[FLOOR, 'set the joint to 1/8', 'what do we have so far'], { topic: 'job', values: { joint_mm: inch(1 / 8) } }],
  [
    [FLOOR, 'make it 1/4'],
    { topic: 'tile', values: { joint_mm: inch(1 / 4), area_m2: sf(130) }, says: /Kept in the job: the joint/ },
  ],
  [[FLOOR, 'make it 1/4', 'undo'], { topic: 'job', values: { joint_mm: inch(3 / 16) } }],
  [
    [FLOOR, 'make it 1/4', 'undo', 'what do we have so far'],
    { topic: 'job', values: { joint_mm: inch(3 / 16), area_m2: sf(130) } },
  ],
  [[FLOOR, 'make it 1/4', 'take that back', 'how many tiles'], { topic: 'tile', values: { joint_mm: inch(3 / 16) } }],
  [[FLOOR, 'same but 12x12', 'undo', 'how many tiles'], { topic: 'tile', values: { tile_length_mm: inch(18) } }],
  [[FLOOR, 'same but 8x48', 'what do we have so far'], { topic: 'job', values: { tile_length_mm: inch(18) } }],
  [
    [FLOOR, 'same but 8x48', 'keep it in the job', 'what do we have so far'],
    { topic: 'job', values: { tile_length_mm: inch(48), tile_width_mm: inch(8) } },
  ],
  [['undo'], { topic: 'job', says: /Nothing to undo/ }],
  [[FLOOR, 'undo', 'undo'], { topic: 'job', says: /Nothing to undo/ }],
  [
    ['mudroom 6x9', 'washup 8x10', 'drop the washup', 'what do we have so far'],
    { topic: 'job', values: { area_m2: sf(54) } },
  ],
  [['mudroom 6x9', 'washup 8x10', 'drop the washup', 'undo'], { topic: 'job', values: { area_m2: sf(134) } }],
  [[FLOOR, 'add the closet 3x4', 'recap'], { topic: 'job', values: { area_m2: sf(142) } }],
  [[FLOOR, 'and grout?', 'make it 1/4', 'what do we have so far'], { topic: 'job', values: { joint_mm: inch(1 / 4) } }],
  [[FLOOR, '15% extra', 'what do we have so far'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'what do we have so far', 'and grout?'], { topic: 'grout', values: { grout_bags: [1, 3] } }],
  [[FLOOR, 'what do we have so far', 'make it 1/4'], { values: { joint_mm: inch(1 / 4), area_m2: sf(130) } }],
  [[FLOOR, 'undo that'], { topic: 'job', says: /Undone/ }],
  // history
  [[FLOOR, 'make it 1/8', 'who changed the joint'], { topic: 'job', says: /^lead, .*1\/8 in \(before: .*3\/16 in/ }],
  [[FLOOR, 'make it 1/8', 'undo', 'history'], { topic: 'job', says: /taken back/ }],
  [['mudroom 6x9', 'who changed the joint'], { topic: 'job', says: /Nobody has changed the joint/ }],
  // several jobs
  [
    [FLOOR, 'start over', 'what do we have so far'],
    { topic: 'job', says: /Nothing in this job yet/, values: { area_m2: null } },
  ],
  [[FLOOR, 'start over', 'reopen'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'start over', 'undo'], { topic: 'job', values: { area_m2: sf(130) } }],
  [[FLOOR, 'start over', 'how many 12x12 for 60 sf'], { topic: 'tile', values: { area_m2: sf(60) } }],
  [[FLOOR, 'start over', 'and grout?'], { ok: false }],
  [
    [FLOOR, 'call it bakery', 'new job called cafe', 'mudroom 6x9', 'switch to bakery'],
    { topic: 'job', values: { area_m2: sf(130) }, says: /bakery/ },
  ],
  [
    [
      FLOOR,
      'call it bakery',
      'new job called cafe',
      'mudroom 6x9',
      'switch to bakery',
      'switch to cafe',
      'what do we have so far',
    ],
    { topic: 'job', values: { area_m2: sf(54) } },
  ],
  [[FLOOR, 'new job called cafe', 'which jobs'], { topic: 'job', says: /On cafe now[\s\S]*job 1/ }],
  [[FLOOR, 'switch to hospital'], { topic: 'job', says: /no job called hospital/ }],
  [['new job called bakery'], { topic: 'job', says: /New job: bakery/ }],
  // the log
  [['used 3 bags on 130 sf'], { topic: 'log', values: { mortar_bags_used: 3, mortar_area_done_m2: sf(130) } }],
  [
    ['used 3 bags on 130 sf', 'used 2 bags on 60 sf'],
    { topic: 'log', values: { mortar_bags_used: 5, mortar_area_done_m2: sf(190) } },
  ],
  [
    ['used 3 bags on 130 sf', 'opened another bag'],
    { topic: 'log', values: { mortar_bags_used: [3, 4], mortar_bags_used_low: 3, mortar_bags_used_high: 4 } },
  ],
  [['went thru 4 bags', 'went through 4 bags on 150 sf'], { topic: 'log', values: { mortar_bags_used: [4, 8] } }],
  [[FLOOR, 'set 40 tiles so far'], { topic: 'log', values: { tiles_set: 40 } }],
  [[FLOOR, 'set 40 tiles so far', 'set 20 more tiles'], { topic: 'log', values: { tiles_set: 60 } }],
  [[FLOOR, 'set 40 tiles', 'set 55 tiles so far'], { topic: 'log', values: { tiles_set: 55 } }],
  [['half a bag left'], { topic: 'log', says: /0\.5 bags of mortar left/ }],
  [['broke 3 tiles'], { topic: 'log', says: /3 tiles broken/ }],
  [['used 3 bags on 130 sf', 'batch binned'], { topic: 'log', values: { mortar_bags_used: 3 }, says: /binned/ }],
  [
    ['used 2 bags of grout on 200 sf'],
    { topic: 'log', values: { grout_bags_used: 2, grout_area_done_m2: sf(200), mortar_bags_used: null } },
  ],
  [['used 3 bags on 130 sf', 'undo'], { topic: 'job', values: { mortar_bags_used: null } }],
  [
    ['used 3 bags on 130 sf', 'used 2 bags on 60 sf', 'undo', 'status'],
    { topic: 'job', values: { mortar_bags_used: 3 } },
  ],
  [
    ['used 3 bags on 130 sf', 'no it was 4 bags on 130 sf'],
    { topic: 'log', values: { mortar_bags_used: 4, mortar_area_done_m2: sf(130) } },
  ],
  [
    ['10x13 shop floor', 'used 5 bags on 300 sf'],
    { topic: 'log', values: { mortar_area_done_m2: sf(300) }, says: /more than the floor/ },
  ],
  // Prior 46 sf a bag at 1/4 x 3/8, log 43.3: between the two, so 3.5 to 3.7 bags.
  [
    ['260 sf, 1/4 x 3/8 trowel', 'used 3 bags on 100 sf', 'how many more bags to finish'],
    { topic: 'log', values: { bags_to_finish: [160 / 46, 160 / 33.3], mortar_bags_used: 3 } },
  ],
  [
    ['used 3 bags on 130 sf', '160 to go how many bags'],
    { topic: 'log', values: { bags_to_finish: [3.4, 3.8], bags_to_finish_90: [3.8, 4.8] } },
  ],
  [
    ['260 sf, 1/4 x 3/8 trowel', 'used 3 bags on 130 sf', '2 left, enough?'],
    { topic: 'log', values: { bags_to_buy: [1, 2] }, says: /^No, short/ },
  ],
  [
    ['260 sf, 1/4 x 3/8 trowel', 'used 3 bags on 130 sf', '5 bags left enough?'],
    { topic: 'log', values: { bags_to_buy: 0 }, says: /^Yes, enough/ },
  ],
  [['used 3 bags on 130 sf, 160 to go', 'status'], { topic: 'job', values: { mortar_bags_used: 3 } }],
  // who burns mud
  [["you're burning mud, 31 sf a bag"], { ok: false, says: /Which trowel/ }],
  [["you're burning mud, 31 sf a bag", '1/2 notch back-buttered'], { topic: 'log', says: /is right for a 1\/2 in/ }],
  [
    ["you're burning mud, 31 sf a bag", '1/4 x 3/8'],
    { topic: 'log', says: /is heavy for[\s\S]*upright[\s\S]*out of flat/ },
  ],
  [['130 sf, 1/4 x 3/8 trowel', 'burning mud, 31 sf a bag'], { topic: 'log', says: /is heavy/ }],
  // running short: 12 ft 2 in of 18 in tile and 3/16 joint take 9 a row
  [
    [`${FLOOR}, 6 per box`, '9 boxes left, 4 rows to go'],
    { topic: 'log', values: { tiles_short: 0, last_row: 7 }, says: /^Yes, enough/ },
  ],
  [
    [`${FLOOR}, 6 per box`, '3 boxes left, 4 rows to go'],
    { topic: 'log', values: { tiles_short: 18, boxes_short: 3, last_row: 5 }, says: /^18 tiles short/ },
  ],
  [["lot's gone, 6 short"], { topic: 'log', values: { tiles_short: 6 }, says: /1\. [\s\S]*2\. [\s\S]*3\. / }],
  // readings, points, record
  [['log moisture 82% RH at the door', 'sign off'], { topic: 'job', says: /moisture: .*82% rh/i }],
  [['lifted one, 75% contact'], { topic: 'log', values: { contact_pct: 75 }, says: /under the 80 %/ }],
  [
    [FLOOR, 'mark this as the bid', 'add the closet 3x4', 'change order since the bid'],
    { topic: 'job', values: { area_m2: sf(142) }, says: /Area 130 sf to 142 sf \(\+12 sf\)/ },
  ],
  [[FLOOR, 'change order'], { topic: 'job', says: /No point is marked/ }],
  // the clock and the way out
  [['we are in America/Chicago', 'what do we have so far'], { topic: 'job', says: /America\/Chicago/ }],
  [['central time'], { topic: 'job', says: /America\/Chicago/ }],
  [['forget this job'], { ok: false, topic: 'job', says: /Say yes/ }],
  [['forget this job', 'status', 'yes'], { ok: false }],
  [[FLOOR, 'plus 20%'], { topic: 'tile', values: { spare_pct: 20 } }],
  [[FLOOR, 'same thing in the mudroom 6x8'], { values: { area_m2: sf(48) } }],
  [['2 bags left 60 sf to go 1/2 notch enough?', 'and for 80 sf'], { topic: 'mortar', values: { area_m2: sf(80) } }],
  [
    ['used 3 bags on 130 sf', 'we used 2 more on 70'],
    { topic: 'log', values: { mortar_bags_used: 5, mortar_area_done_m2: sf(200) } },
  ],
  [['used 3 bags on 130 sf', 'how many bags have we used so far'], { topic: 'job', values: { mortar_bags_used: 3 } }],
  [['laid 25 tiles today'], { topic: 'log', values: { tiles_set: 25 } }],
  // in Spanish
  [['cuarto de 4 x 5 m con loseta 60x60 cm', 'que llevamos'], { topic: 'job', values: { area_m2: 20 } }],
  [
    ['cuarto de 4 x 5 m con loseta 60x60 cm', 'agrega el baño de 2 x 2 m', 'deshacer'],
    { topic: 'job', values: { area_m2: 20 } },
  ],
  [
    ['usamos 3 sacos en 12 m2', 'abrimos otro saco'],
    { topic: 'log', values: { mortar_bags_used: [3, 4], mortar_area_done_m2: 12 } },
  ],
  [['cuarto de 4 x 5 m', 'empezar de nuevo', 'que tenemos'], { topic: 'job', values: { area_m2: null } }],
]

test('the corpus is as large as it is meant to be', () => expect(TALKS.length).toBeGreaterThanOrEqual(60))

describe('talks', () => {
  test.each(TALKS)('%j', (said, expected) => holds(lastOf(said), expected))
})

describe('forgetting a channel', () => {
  test('is done only when the one who asked says yes to it', () => {
    const crew = new Crew()
    crew.say(FLOOR)
    crew.say('forget this job')
    crew.say('yes', { person: 'helper' })
    expect(crew.last?.forget).toBeUndefined()
    crew.say('forget this job')
    expect(crew.say('yes').ok).toBe(true)
    expect(crew.last?.forget).toBe(true)
  })

  test('yes to something else deletes nothing', () => {
    const crew = new Crew()
    crew.say('yes')
    expect(crew.last?.forget).toBeUndefined()
  })
})

describe('reminders', () => {
  const ids = (crew: Crew): readonly string[] => (crew.last?.reminders ?? []).map((r) => r.id.split('@')[0])
  const due = (crew: Crew, i = 0): string => new Date(crew.last?.reminders?.[i]?.dueMs ?? 0).toISOString()

  test('what is stated as set is told when its waits are over, with words for late', () => {
    const crew = new Crew()
    const reply = crew.say('set at 2pm, 58F')
    expect(ids(crew)).toContain('grout')
    expect(due(crew)).toBe(new Date(String(reply.values['grout_at'])).toISOString())
    const body = crew.last?.reminders?.[0]?.body
    expect(body?.text).toMatch(/can be grouted now/)
    expect(body?.late).toMatch(/^Late, sorry: it could be grouted from Thursday/)
  })

  test('a question sets none until it is asked to', () => {
    const crew = new Crew()
    crew.say('set at 2pm, 58F, when can we grout')
    expect(ids(crew)).toEqual([])
    crew.say('remind me')
    expect(ids(crew)).toContain('grout')
  })

  test('told anew, the promise for the time before is not sent', () => {
    const crew = new Crew()
    crew.say('set at 2pm, 58F')
    const before = (crew.last?.reminders ?? []).map((r) => r.id)
    crew.say('no, set at 3pm')
    expect(crew.last?.cancels).toEqual(before)
    expect(crew.memory.promised.every((p) => !before.includes(p.id))).toBe(true)
  })

  test('after a while, at a time, put off, cancelled', () => {
    const crew = new Crew()
    crew.say('remind me in 20 min to check the batch')
    expect(due(crew)).toBe('2026-03-10T21:50:00.000Z')
    expect(crew.last?.reminders?.[0]?.body.text).toBe('Reminder: check the batch')
    crew.say('snooze 30 min')
    expect(due(crew)).toBe('2026-03-10T22:20:00.000Z')
    expect(crew.memory.promised).toHaveLength(1)
    crew.say('remind me at 6pm')
    expect(due(crew)).toBe('2026-03-10T23:00:00.000Z')
    crew.say('cancel')
    expect(crew.last?.cancels).toHaveLength(2)
    expect(crew.memory.promised).toHaveLength(0)
  })

  test('one that went out is put off under a new id', () => {
    const crew = new Crew()
    crew.say('remind me in 20 min to check the batch')
    const id = crew.last?.reminders?.[0]?.id
    crew.say('snooze', { now: '2026-03-10T16:55:00-05:00' })
    expect(crew.last?.reminders?.[0]?.id).not.toBe(id)
    expect(due(crew)).toBe('2026-03-10T22:25:00.000Z')
  })

  test('a bucket is told when its slake and its life are over', () => {
    const crew = new Crew()
    crew.say('mixed a bag of thinset at 4:20pm', { now: NOW })
    expect(ids(crew)).toContain('pot-life')
  })

  test('the job’s zone tells the clock, over a change of daylight saving', () => {
    const crew = new Crew()
    crew.say('we are in America/Chicago')
    // 8 March 2026, 2:00: clocks go from 2 to 3 (US rule, second Sunday in March). 23:00 is UTC-6, noon next day UTC-5.
    crew.say('remind me at noon tomorrow', { now: '2026-03-07T23:00:00-06:00' })
    expect(due(crew)).toBe('2026-03-08T17:00:00.000Z')
  })
})
