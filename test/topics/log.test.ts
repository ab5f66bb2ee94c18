/** The log in the words crews type, as conversations in both languages; areas and odds are worked out beside them. */
import { describe, expect, test } from 'vitest'
import { fold } from '../../src/jobs/fold.ts'
import { Crew } from '../support/crew.ts'
import { holds, lastOf, sf, type Talk } from '../support/talks.ts'

/** 260 sf; 1/4 x 3/8 covers 33 to 56, usually 41 sf a bag back-buttered (DEVELOPERS.md). */
const FLOOR = '260 sf shop floor, 18x18, 1/4 joint, 1/4 x 3/8 notch'
/** 10 ft by 13 ft of 18 in and 3/16 in joint: 7 columns of 9, 63 places. */
const TILED = '10x13 shop floor, 18x18, 3/16 joint, 6 a box'
const SUELO = 'piso de 4 x 6 m, loseta 45x45 cm, junta 5 mm, llana de 1/4 x 3/8'

const TALKS: readonly Talk[] = [
  // bags without the word, after bags
  [['used 3 on 130'], { topic: 'log', values: { mortar_bags_used: 3, mortar_area_done_m2: sf(130) } }],
  [['used 3 bags on 130 sf', 'went through 2 and a half'], { topic: 'log', values: { mortar_bags_used: 5.5 } }],
  [
    [FLOOR, 'used 3 bags on 130 sf', 'went thru 2 and a half on 90'],
    { values: { mortar_bags_used: 5.5, mortar_area_done_m2: sf(220) } },
  ],
  [
    ['used 3 bags on 130 sf', 'opened another'],
    { values: { mortar_bags_used: 3.5, mortar_bags_used_low: 3, mortar_bags_used_high: 4 } },
  ],
  [
    ['used 3 bags on 130 sf', "we're at 5 bags on 200 total"],
    { values: { mortar_bags_used: 5, mortar_area_done_m2: sf(200) } },
  ],
  [
    ['3 bags down, 110 sf done', '4 bags gone 150 sf'],
    { topic: 'log', values: { mortar_bags_used: 7, mortar_area_done_m2: sf(260) } },
  ],
  [['used 3 bags on 130 sf', 'bag and a half left'], { topic: 'log', says: /1\.5 bags of mortar left/ }],
  [['used 3 bags on 130 sf', '2 left'], { topic: 'log', says: /2 bags of mortar left/ }],
  [
    ['used 3 bags on 130 sf', 'chucked a bag it went off'],
    { values: { mortar_bags_used: 3 }, says: /1 bag of mortar binned/ },
  ],
  [
    ['used 3 bags on 130 sf', 'we binned a batch'],
    { values: { mortar_bags_used: 3 }, says: /0\.5 bags of mortar binned/ },
  ],
  [['used 3 bags on 130 sf', 'tossed half a bag'], { says: /0\.5 bags of mortar binned/ }],
  // mended
  [
    ['used 5 bags on 300 sf', 'no its 2 bags'],
    { topic: 'log', values: { mortar_bags_used: 2, mortar_area_done_m2: sf(300) } },
  ],
  [['used 5 bags on 300 sf', 'no its 2 bags', 'undo'], { topic: 'job', says: /Undone: 2 bags of mortar on 300 sf/ }],
  [
    ['mudroom 6x9', 'used 5 bags on 300 sf'],
    { values: { mortar_area_done_m2: sf(300) }, says: /300 sf logged is more than the floor’s 54 sf\. It is kept/ },
  ],
  [
    ['used 2 bags on 90 sf', 'that was grout not mud'],
    { topic: 'log', values: { grout_bags_used: 2, grout_area_done_m2: sf(90), mortar_bags_used: null } },
  ],
  [['hall is 3x12', 'used two bags on the hall'], { says: /The whole floor is logged/ }],
  [['used 2.5 bags on 100', 'another 2 on 90'], { values: { mortar_bags_used: 4.5, mortar_area_done_m2: sf(190) } }],
  [[TILED, 'laid 22 tiles', '24 more after'], { topic: 'log', values: { tiles_set: 46 } }],
  // enough?
  [['used 3 bags on 130 sf', '2 left, enough?'], { topic: 'log', says: /^How much floor is left/ }],
  [['used 3 bags on 130 sf', '2 left, enough?', '60 to go'], { says: /^Yes, enough mortar.*you have 2/ }],
  [
    [FLOOR, 'used 3 bags on 130 sf', 'used 2 bags on 60 sf', '2 left, enough?'],
    { values: { bags_to_finish: [70 / 46, 70 / 36] }, says: /70 sf to go: even money 2, safe 3/ },
  ],
  [[FLOOR, 'used 3 bags on 130 sf', 'gonna need more?'], { topic: 'log', says: /130 sf to go: even money 3, safe 4/ }],
  [[FLOOR, 'used 3 bags on 130 sf', 'will 2 bags do the rest'], { says: /^No, short: 130 sf takes/ }],
  // grout, by its own log
  [
    ['200 sf wash-up, 18x18, 1/4 joint', 'used 1 bag of grout on 90 sf', 'opened another'],
    { values: { grout_bags_used: 1.5, mortar_bags_used: null } },
  ],
  [['used 1 bag of grout on 90 sf', 'used 3 bags on 130 sf'], { values: { grout_bags_used: 1, mortar_bags_used: 3 } }],
  [
    ['200 sf wash-up, 18x18, 1/4 joint', 'used 1 bag of grout on 90 sf', 'half a bag left, enough?'],
    { topic: 'log', values: { bags_to_finish: [0.4, 1.3] }, says: /110 sf/ },
  ],
  [
    ['200 sf wash-up, 18x18, 1/4 joint', 'used 2 bags of grout on 90 sf', 'burning grout'],
    { topic: 'log', says: /^45 sf a bag is heavy for 18x18[\s\S]*wider joints/ },
  ],
  [
    ['200 sf wash-up, 18x18, 1/4 joint', 'used 1 bag of grout on 250 sf', 'burning thru grout'],
    { topic: 'log', says: /is right for 18x18/ },
  ],
  [['burning grout'], { ok: false, topic: 'log', says: /What size is the tile/ }],
  // tiles: set, broken, left
  [[TILED, 'set 40 so far', 'cracked 2'], { topic: 'log', says: /2 tiles broken/ }],
  [
    [TILED, 'set 40 so far', 'cracked 2', 'broke another one'],
    { topic: 'log', says: /23 to go at your breakage so far: even money 2 more broken, safe 4/ },
  ],
  [[TILED, 'set 40 so far', 'half a box left'], { topic: 'log', values: { tiles_short: 20 }, says: /0\.5 boxes left/ }],
  [
    [TILED, 'set 40 so far', '4 boxes left', 'enough tile?'],
    { topic: 'log', values: { tiles_short: 0 }, says: /^Yes, enough tile: 23 still to set, 24 on hand/ },
  ],
  [[TILED, 'set 40 so far', 'how many more tiles'], { topic: 'log', says: /^23 tiles still to set, of 63/ }],
  [[TILED, 'set 60 so far', 'broke 3', '3 left enough?'], { topic: 'log', says: /^Tight: 3 still to set, 3 on hand/ }],
  [['2 tiles cracked overnight, why'], { topic: ['trouble', 'substrate', 'joints', 'contact'] }],
  [['grout cracked along the wall'], { topic: ['trouble', 'joints'] }],
  // who burns mud
  [['you guys are burning mud', '1/4 x 3/8', 'we get 31 sf a bag'], { topic: 'log', says: /^31 sf a bag is heavy/ }],
  [['we get 31 sf a bag', '1/2 notch back buttered'], { topic: 'log', says: /^31 sf a bag is right/ }],
  [['you guys are burning mud', '1/4 x 3/8', 'recap'], { topic: 'job', says: /1\/4 in wide x 3\/8 in deep/ }],
  // said again without who and when; taken back, still told
  [['used 3 bags on 130 sf', 'undo', 'history'], { says: /3 bags of mortar on 130 sf \(taken back\)/ }],

  // in Spanish
  [[SUELO, 'usamos 3 sacos en 12 m2', 'abrimos otro'], { topic: 'log', values: { mortar_bags_used: 3.5 } }],
  [
    [SUELO, 'usamos 3 sacos en 12 m2', 'se fueron 2 y medio en 8 m2'],
    { values: { mortar_bags_used: 5.5, mortar_area_done_m2: 20 } },
  ],
  [[SUELO, 'usamos 3 sacos en 12 m2', 'queda bulto y medio'], { topic: 'log', says: /1\.5 bultos de mezcla/ }],
  [
    [SUELO, 'usamos 3 sacos en 12 m2', 'quedan 2, alcanza?'],
    { topic: 'log', says: /Faltan 12 m²: a la mitad \d, seguro \d/ },
  ],
  [
    [SUELO, 'usamos 3 sacos en 12 m2', 'echamos a perder un bulto'],
    { values: { mortar_bags_used: 3 }, says: /1 bulto de mezcla a la basura/ },
  ],
  [
    [SUELO, 'usamos 3 sacos en 12 m2', 'no, fueron 4 sacos'],
    { values: { mortar_bags_used: 4, mortar_area_done_m2: 12 } },
  ],
  [
    [SUELO, 'usé 1 bulto de boquilla en 10 m2'],
    { topic: 'log', values: { grout_bags_used: 1, grout_area_done_m2: 10 } },
  ],
  [[SUELO, 'usé 1 bulto de boquilla en 10 m2', 'recap'], { values: { joint_mm: 5, area_m2: 24 } }],
  [
    [SUELO, 'usé 1 bulto de boquilla en 10 m2', 'queda medio de boquilla, alcanza?'],
    { topic: 'log', says: /Faltan 14 m²/ },
  ],
  [
    [SUELO, 'usé 2 bultos de boquilla en 10 m2', 'están gastando mucha boquilla'],
    { topic: 'log', says: /mucha boquilla[\s\S]*juntas más anchas/ },
  ],
  [
    [`${SUELO}, 6 por caja`, 'pusimos 40 losetas', 'se rompieron 2', 'se quebró otra'],
    { topic: 'log', says: /3 losetas rotas/ },
  ],
  [[`${SUELO}, 6 por caja`, 'pusimos 40 losetas', 'queda media caja, alcanza?'], { topic: 'log', says: /^No alcanza/ }],
  [[`${SUELO}, 6 por caja`, 'pusimos 40 losetas', 'cuántas losetas más'], { topic: 'log', says: /^Faltan 86/ }],
  // "make it" with a fraction is the joint, not bags that will do
  [[TILED, 'used 1 bag on 40 sf', 'make it 1/8'], { topic: 'tile', values: { joint_mm: 3.175 } }],
  [[TILED, 'used 1 bag on 40 sf', '2 left, make it?'], { topic: 'log', says: /^No, short: 90 sf/ }],
  [['estás quemando mezcla', '1/4 x 3/8', 'sacamos 2.8 m2 por bulto'], { topic: 'log', says: /mucha mezcla/ }],
]

describe('talks', () => {
  test.each(TALKS)('%j', (said, expected) => holds(lastOf(said), expected))
})

test('an undo of an older version, and one of today, leave the same log', () => {
  const crew = new Crew()
  for (const said of [FLOOR, 'used 3 bags on 130 sf', 'undo']) crew.say(said)
  const old = crew.entries.map((entry) => (entry.kind === 'undo' ? { ...entry, body: {} } : entry))
  const memory = old.reduce(fold, new Crew().memory)
  expect(memory.job.uses).toEqual(crew.memory.job.uses)
  expect(memory.job.uses).toEqual([])
})
