/** Floors and layouts from a chat message to its reply. Areas, walls and counts are worked out by hand beside each message, or
 *  by clipping every tile with a general polygon library. */
import polygonClipping from 'polygon-clipping'
import { describe, expect, test } from 'vitest'
import { pngOf } from '../../adapters/pictures.ts'
import { replyText } from '../../src/speak.ts'
import { ask, Crew } from '../support/crew.ts'
import { sf } from '../support/talks.ts'

const FT = 304.8
const SF = 0.09290304

/** Area in square feet and outer walls in feet, by hand. */
const FLOORS: readonly [text: string, sf: number, walls: number][] = [
  // 12 x 14 - 4 x 6; a bite out of a corner leaves the walls as long as they were
  ['L 12x14 less 4x6 top right corner, sq ft?', 144, 52],
  ['L 12x14 less 4x6, area', 144, 52],
  ['12x14 less 4x6 bottom left corner area', 144, 52],
  // the bar 10 x 12, the stem 4 x 6 under it: 120 + 24; 44 + 2 x 6
  ['T shape 10x12 plus 4x6 area', 144, 56],
  // 12 x 10 with 4 x 6 at its side: 44 + 2 x 4
  ['L shaped 12x10 + 4x6 area', 144, 52],
  // a bite 4 wide and 6 deep out of the middle of a side: 52 + 2 x 6
  ['U 14x12 less 4x6 area', 144, 64],
  ['u shape 20x15 less 8x6 area', 252, 82],
  // an island does not touch a wall
  ['12x14 less 3x5 island 4 ft from the left, 2 from the bottom, area', 153, 52],
  ['12x14 less 3x5 island area', 153, 52],
  ['walls: 12 right, 8 down, 5 left, 4 down, 7 left, 12 up, area', 124, 48],
  ['walls right 12, down 8, left 12, up 8 area', 96, 40],
  ['12 right 8 down 5 left 4 down 7 left 12 up how many sf', 124, 48],
  ['walls: 12, turn left 8, turn left 5, turn right 4, turn left 7, turn left 12 area', 124, 48],
  ['walls 144 in right, 96 down, 144 left, 96 up perimeter', 96, 40],
  ["walls 12' right, 8'6 up, 12' left, 8'6 down area", 102, 41],
  ['walls 12 east, 10 north, 12 west, 10 south area', 120, 44],
  ['corners 0,0 12,0 12,8 5,8 5,14 0,14 area', 126, 52],
  ['corners in inches 0,0 144,0 144,96 60,96 60,168 0,168 area', 126, 52],
  ["corners 0,0 12'6,0 12'6,8' 0,8' how many sf", 100, 41],
  ['corners (0,0) (12,0) (12,8) (0,8) less 2x2 island area', 92, 40],
  ['corners 0,0 then 10,0 then 10,10 then 0,10 ft area', 100, 40],
  // sides 12 and 10 with a diagonal of sqrt(244) = 15.6205 ft = 15 ft 7.446 in are square
  ['four sides 12 10 12 10 diagonal 15.6205 area', 120, 44],
  // Heron: 12, 10, 15.5: s = 18.75, sqrt(18.75 x 6.75 x 8.75 x 3.25) = 59.992 twice
  ['sides 12 10 12 10 diagonal 15.5 area', 119.983, 44],
  ['right triangle 8 x 6 area', 24, 24],
  ['paredes: 12 derecha, 8 abajo, 12 izquierda, 8 arriba, área', 96, 40],
  ['piso en L 12x14 menos 4x6 esquina de arriba a la izquierda, área', 144, 52],
  ['esquinas 0,0 12,0 12,8 0,8 área', 96, 40],
  ['cuatro lados 12 10 12 10 diagonal 15.6205 área', 120, 44],
  ['triangulo 8 x 6 área', 24, 24],
  ['shop 12x14, wash-up 8x10, mudroom 5x7 area', 283, 112],
]

test.each(FLOORS)('%s', (text, sf, walls) => {
  const reply = ask(text)
  expect(reply.ok, reply.answer).toBe(true)
  expect(reply.values['area_m2']).toBeCloseTo(sf * SF, 2)
  expect(reply.values['perimeter_m']).toBeCloseTo((walls * FT) / 1000, 2)
})

test('metric corners and walks', () => {
  for (const text of [
    'corners 0,0 3.6,0 3.6,2.4 0,2.4 m area',
    'corners 0,0 3600,0 3600,2400 0,2400 mm area',
    'walls 3.6m right 2.4 up 3.6 left 2.4 down area',
    'paredes 3.6 m derecha, 2.4 arriba, 3.6 izquierda, 2.4 abajo, área',
  ]) {
    expect(ask(text).values['area_m2'], text).toBeCloseTo(8.64, 6)
    expect(ask(text).values['perimeter_m'], text).toBeCloseTo(12, 6)
  }
})

test('round floors have the area of the circle', () => {
  const reply = ask('circle 8 ft across 12x12 layout')
  expect(reply.values['area_m2']).toBeCloseTo(Math.PI * 16 * SF, 4)
  expect(reply.values['perimeter_m']).toBeCloseTo((Math.PI * 8 * FT) / 1000, 2)
  expect(ask('circulo de 8 pies loseta 12x12').values['area_m2']).toBeCloseTo(Math.PI * 16 * SF, 4)
  expect(ask('round 10 ft table area, 12x12 tile').values['area_m2']).toBeCloseTo(Math.PI * 25 * SF, 4)
  expect(ask('radius 4 ft circle, 12x12 tile').values['area_m2']).toBeCloseTo(Math.PI * 16 * SF, 4)
})

const FAULTS: readonly [text: string, says: RegExp][] = [
  ['corners 0,0 10,10 10,0 0,10 18x18 layout', /crosses itself/],
  ['corners 0,0 10,0 20,0 18x18 layout', /one line/],
  ['corners 0,0 12,0 12,8 0,8 5,0 18x18 layout', /runs back onto itself/],
  ['walls: 12 right, 8 down, 5 left, 4 down, 7 left, 9 up, 18x18', /miss closing by 3'.*3' up/],
  ['four sides 12 10 12 10 diagonal 30, 18x18', /can’t span that diagonal/],
  ['10x10 less 12x5, 18x18', /doesn’t fit/],
  ['esquinas 0,0 10,10 10,0 0,10 loseta 18x18', /se cruza/],
  ['paredes: 12 derecha, 8 abajo, 12 izquierda, 5 arriba, loseta 18x18', /faltan 3'|faltan 3 pies/],
]

test.each(FAULTS)('%s is told why', (text, says) => {
  const reply = ask(text)
  expect(reply.problem?.code).toBe('bad-floor')
  expect(reply.answer).toMatch(says)
})

test('a small closing error is told and closed, an assumed corner and a middle are said', () => {
  const walk = ask('walls: 12 right, 8 down, 5 left, 4 down, 7 left, 11.9 up, 18x18 layout')
  expect(walk.assumed.join()).toMatch(/miss closing by 1 3\/16"/)
  expect(ask('L 12x14 less 4x6, 18x18').assumed.join()).toMatch(/top right corner/)
  expect(ask('12x14 less 3x5 island, 18x18').assumed.join()).toMatch(/in the middle/)
  expect(ask('L 12x14 less 4x6 top left corner, 18x18').assumed.join()).not.toMatch(/corner/)
})

test('a room out of square: degrees off and taper', () => {
  // law of cosines: (144 + 100 - 15.5^2) / 240 = 0.015625, so 0.895 degrees off
  expect(ask('sides 12 10 12 10 diagonal 15.5, 18x18').assumed.join()).toMatch(/0\.9 degrees out of square/)
})

/** Places and joints by hand or by the library: every tile of the lattice clipped to the floor. */
type Poly = [number, number][]

function clipped(
  rings: readonly Poly[],
  tile: readonly [number, number],
  joint: number,
  [ox, oy]: readonly [number, number],
) {
  const xs = rings[0].map(([x]) => x)
  const ys = rings[0].map(([, y]) => y)
  const [a, b] = [tile[0] + joint, tile[1] + joint]
  let [whole, cut] = [0, 0]
  const low = (min: number, o: number, m: number) => Math.floor((min - o) / m) - 1
  const high = (max: number, o: number, m: number) => Math.ceil((max - o) / m) + 1
  for (let i = low(Math.min(...xs), ox, a); i <= high(Math.max(...xs), ox, a); i++)
    for (let j = low(Math.min(...ys), oy, b); j <= high(Math.max(...ys), oy, b); j++) {
      const [x, y] = [ox + i * a, oy + j * b]
      const square: Poly = [
        [x, y],
        [x + tile[0], y],
        [x + tile[0], y + tile[1]],
        [x, y + tile[1]],
      ]
      const left = polygonClipping.intersection([square], rings as Poly[])
      const mm2 = left.reduce(
        (sum, poly) => sum + Math.abs(area(poly[0])) - poly.slice(1).reduce((s, r) => s + Math.abs(area(r)), 0),
        0,
      )
      if (mm2 < 3) continue
      if (mm2 > tile[0] * tile[1] - 3) whole++
      else cut++
    }
  return { whole, cut }
}

const area = (ring: readonly (readonly number[])[]) =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length]
    return sum + (x * v - u * y) / 2
  }, 0)

/** Where the reply says to snap, as an origin: "17 11/16 in from the left wall". */
function snapped(text: string): readonly [number, number] {
  const inches = (side: string) => {
    const found = new RegExp(`(\\d+)?(?: ?(\\d+)/(\\d+))? in from the ${side} wall`).exec(text)
    return (Number(found?.[1] ?? 0) + (found?.[2] ? Number(found[2]) / Number(found[3]) : 0)) * 25.4
  }
  return [inches('left'), inches('bottom')]
}

const G = 6.35
const DRAWN: readonly [text: string, rings: readonly Poly[]][] = [
  // the floor drawn in by the 1/4 in gap, by hand
  [
    '10x13 18x18 layout',
    [
      [
        [G, G],
        [3048 - G, G],
        [3048 - G, 3962.4 - G],
        [G, 3962.4 - G],
      ],
    ],
  ],
  [
    'corners 0,0 12,0 12,8 5,8 5,14 0,14, 18x18 layout',
    [
      [
        [G, G],
        [3657.6 - G, G],
        [3657.6 - G, 2438.4 - G],
        [1524 - G, 2438.4 - G],
        [1524 - G, 4267.2 - G],
        [G, 4267.2 - G],
      ],
    ],
  ],
  [
    'layout 12x14 less 3x5 island 4 ft from the left, 2 from the bottom, 18x18',
    [
      [
        [G, G],
        [3657.6 - G, G],
        [3657.6 - G, 4267.2 - G],
        [G, 4267.2 - G],
      ],
      [
        [1219.2 - G, 609.6 - G],
        [1219.2 - G, 2133.6 + G],
        [2133.6 + G, 2133.6 + G],
        [2133.6 + G, 609.6 - G],
      ],
    ],
  ],
  [
    'L 12x14 less 4x6 bottom left corner, 18x18 layout',
    [
      [
        [1219.2 + G, G],
        [3657.6 - G, G],
        [3657.6 - G, 4267.2 - G],
        [G, 4267.2 - G],
        [G, 1828.8 + G],
        [1219.2 + G, 1828.8 + G],
      ],
    ],
  ],
]

test.each(DRAWN)('%s counts as a polygon library does', (text, rings) => {
  const reply = ask(text)
  const origin = snapped(reply.answer)
  const counted = clipped(rings, [457.2, 457.2], 3.175, origin)
  expect(reply.values['tile_whole']).toBe(counted.whole)
  expect(reply.values['tile_cut']).toBe(counted.cut)
  expect(reply.values['tile_cells']).toBe(counted.whole + counted.cut)
})

describe('patterns', () => {
  test('steps are named, with which way', () => {
    // (48 + 1/8) / 3 = 16.04 in
    expect(ask('10x13 8x48 third offset stair step layout').details.join()).toMatch(/16 1\/16 in \(33 %\) the same way/)
    expect(ask('10x13 8x48 1/3 offset back and forth layout').details.join()).toMatch(/over and back/)
    expect(ask('10x13 12x24 quarter offset layout').details.join()).toMatch(/\(25 %\)/)
    expect(ask('piso 10x13 loseta 12x24 trabada a un tercio, trazo').details.join()).toMatch(/en escalera/)
  })

  test('half offset of a long plank is warned of, a third and a short tile are not', () => {
    expect(ask('10x13 8x48 half offset layout').warnings.join()).toMatch(/33 %/)
    expect(ask('10x13 8x48 third offset layout').warnings.join()).not.toMatch(/33 %/)
    expect(ask('10x13 4x12 half offset layout').warnings.join()).not.toMatch(/33 %/)
  })

  test('any angle is read as a turn, not as weather', () => {
    const reply = ask('10x13 18x18 at 30 degrees layout')
    expect(reply.details.join()).toMatch(/Turned 30 degrees/)
    expect(ask('10x13 18x18 diagonal layout').details.join()).toMatch(/Turned 45 degrees/)
  })

  test('weaves tell their mismatch: 12 - 3 x 4 - 2 x 1/8 = -1/4, 8 - 2 x 4 - 1/8 = -1/8 in', () => {
    expect(ask('10x13 4x12 herringbone layout').details.join()).toMatch(/1\/4 in shorter/)
    expect(ask('10x13 4x8 basketweave layout').details.join()).toMatch(/1\/8 in shorter/)
  })

  test('rows along the width step by the width', () => {
    expect(ask('10x13 12x24 half offset along the width layout').details.join()).toMatch(/6 1\/16 in \(50 %\)/)
  })

  // Slanting cuts are planned by the boxes round them: nothing is proven of those.
  test('a cutting plan proven to take the fewest tiles is told as such, another is not', () => {
    expect(ask('10x13 8x48 third offset layout').details.join()).toMatch(/\d+ tiles, the fewest there can be, \d+ cuts/)
    expect(ask('10x13 8x48 third offset layout, any off-cut anywhere').details.join()).toMatch(/fewest there can be/)
    expect(ask('12x14 18x18 diagonal layout').details.join()).toMatch(/\d+ tiles, \d+ cuts out of off-cuts/)
    expect(ask('10x13 8x48 third offset layout, a fresh tile for each cut').details.join()).not.toMatch(/fewest/)
  })

  test('random planks are the same at every run', () => {
    const said = '10x13 8x48 random stagger layout'
    expect(ask(said).values).toEqual(ask(said).values)
    // Along the longer side of an upright room: rows are snapped from the left, 8 1/8 in apart at most.
    const [, across] = /([\d /]+) in from the left wall/.exec(ask(said).answer) ?? []
    const [whole, part = '0/1'] = (across ?? '99').trim().split(' ')
    const [over, under] = part.split('/').map(Number)
    expect(Number(whole) + over / under).toBeLessThanOrEqual(8.375)
    expect(ask(said).details.join()).not.toMatch(/Turned/)
  })
})

describe('wishes', () => {
  test('whole tiles begin at the gap of the wall that is named', () => {
    expect(ask('10x13 18x18 full tiles on the left wall layout').answer).toMatch(/1\/4 in from the left wall/)
    const door = ask('10x13 18x18 full tiles at the door layout')
    expect(door.answer).toMatch(/1\/4 in from the bottom wall/)
    expect(door.assumed.join()).toMatch(/door in the bottom wall/)
    const left = ask('10x13 18x18, door is on the left wall, full tiles at the door, layout')
    expect(left.answer).toMatch(/1\/4 in from the left wall/)
    expect(left.assumed.join()).not.toMatch(/door/)
  })

  test('cuts behind the fridge: its wall is asked for and taken', () => {
    const crew = new Crew()
    expect(crew.say('10x13 18x18 hide the cuts behind the fridge').problem?.code).toBe('question')
    expect(crew.say('its on the back wall').answer).toMatch(/1\/4 in from the bottom wall/)
    const spanish = new Crew()
    expect(spanish.say('piso 10x13 loseta 18x18, esconder cortes detras del refri').answer).toMatch(/qué pared/)
    expect(spanish.say('la de arriba').answer).toMatch(/1\/4 pulg de la pared de abajo/)
  })

  test('which way to run is answered', () => {
    expect(ask('10x13 12x24 which way should the tile run').details[0]).toMatch(/Run the long side/)
    expect(ask('10x13 18x18 which way should the tile run').details[0]).toMatch(/either way/)
  })

  test('a joint that loses the sliver: 16 tiles of 5 7/8 in fill 97 1/4 less 1/2 in with 0.183 in', () => {
    // (97.25 - 0.5 - 16 x 5.875) / 15 = 2.75 / 15 = 0.18333 in
    const reply = ask('97.25x60 in wall, 5 7/8 x 5 7/8 tile, lose the sliver, layout')
    expect(reply.values['joint_mm']).toBeCloseTo(0.183333 * 25.4, 3)
    expect(reply.details.join()).toMatch(/16 whole tiles/)
  })

  test('a story pole: every mark from zero', () => {
    // 120 in: gap 1/4, cut 14 3/8, then 18 1/8 a tile
    const pole = ask('10x13 18x18 story pole')
    expect(pole.details[0]).toMatch(/14 5\/8 in, 32 3\/4 in, 50 7\/8 in, 69 in, 87 1\/8 in, 105 1\/4 in/)
    expect(pole.files.map((f) => f.name)).toContain('story-pole.csv')
  })

  test('a whole-inch tile is laid as it often measures; a measured one is taken', () => {
    const crew = new Crew()
    expect(crew.say('layout 10x13 18x18').details.join()).toMatch(/Measure one and tell me/)
    const measured = crew.say('tile measures 17 13/16')
    expect(measured.values['tile_length_mm']).toBeCloseTo(17.8125 * 25.4, 6)
    expect(measured.details.join()).not.toMatch(/Measure one/)
  })
})

describe('pieces', () => {
  test('the cut list stands in the reply and in a file, and adds up', () => {
    const reply = ask('10x13 18x18 cut list')
    const rows = reply.details.flatMap((line) => /^(\d+) x /.exec(line)?.slice(1) ?? [])
    expect(rows.map(Number).reduce((a, b) => a + b, 0)).toBe(reply.values['tile_cut'])
    const csv = reply.files.find((f) => f.name === 'cut-list.csv')?.text ?? ''
    const counts = csv
      .trim()
      .split('\r\n')
      .slice(1)
      .map((line) => Number(line.split(',').at(-1)))
    expect(counts.reduce((a, b) => a + b, 0)).toBe(reply.values['tile_cut'])
  })

  test('rules in order: any off-cut takes no more than the trade, the trade no more than one-way faces and fresh tiles', () => {
    for (const floor of ['10x13 18x18', 'L 12x14 less 4x6, 12x12', '10x13 18x18 diagonal', '9x17 8x48 third offset']) {
      const count = (rule: string) => ask(`${floor} layout ${rule}`).values['tile_count'] as number
      const trade = count('')
      expect(count('any offcut anywhere'), floor).toBeLessThanOrEqual(trade)
      expect(count('all tiles face one way'), floor).toBeGreaterThanOrEqual(trade)
      expect(count('fresh tile each cut'), floor).toBeGreaterThanOrEqual(count('all tiles face one way'))
    }
  })

  test('a fresh tile for each cut: whole + cut + spares', () => {
    const { values } = ask('10x13 18x18 fresh tile each cut layout')
    expect(values['offcuts_reused']).toBe(0)
    expect(values['tile_count']).toBe(70) // 63 x 1.1 = 69.3
  })

  test('halves of diagonal cuts serve the opposite wall', () => {
    const { values } = ask('10x13 18x18 diagonal layout')
    const stock = (values['tile_cut'] as number) - (values['offcuts_reused'] as number)
    // No fewer than the area of the cuts asks for, and well under a tile each.
    const cutsMm2 = (3048 - 2 * G) * (3962.4 - 2 * G) - (values['tile_whole'] as number) * 460.375 ** 2
    expect(stock).toBeGreaterThanOrEqual(Math.floor(cutsMm2 / 460.375 ** 2))
    expect(stock).toBeLessThan(0.75 * (values['tile_cut'] as number))
  })

  test('what is left over is told on request', () => {
    expect(ask('10x13 18x18 layout what is left over').details.join()).toMatch(/Left over: \d+ x/)
  })
})

describe('walls', () => {
  test('an outlet in a backsplash: bare figures are inches', () => {
    const want = (120 * 18 - 15) * 25.4 ** 2 * 1e-6
    for (const text of [
      'backsplash 10 ft x 18 in less 3x5 in outlet, 3x6 tile',
      'backsplash 10 ft x 18 in less 3x5 outlet, 3x6 tile',
      'backsplash 10 ft x 18 in with outlet 3x5 in 24 in from the left 6 up, 3x6 tile layout',
    ])
      expect(ask(text).values['area_m2'], text).toBeCloseTo(want, 5)
  })

  test('a niche: n (L + j) + j + 2 (board + membrane + mortar + tile)', () => {
    // 2 x 6 1/8 + 1/8 = 12 3/8; 3 x 3 1/8 + 1/8 = 9 1/2; lining 12.7 + 0.4 + 2.4 + 9.525 = 25.025 mm a side
    for (const text of [
      'niche 2 tiles wide 3 high in 3x6 on a wall',
      'nicho de 2 losetas de ancho 3 de alto, loseta 3x6, que hueco',
    ]) {
      const { values } = ask(text)
      expect(values['opening_width_mm'], text).toBeCloseTo(12.375 * 25.4 + 50.05, 3)
      expect(values['opening_height_mm'], text).toBeCloseTo(9.5 * 25.4 + 50.05, 3)
    }
  })

  test('a ledger: gap + course + joint above the low point', () => {
    // 1/4 + 12 + 1/8; cut down by the rise of 1/2
    const reply = ask('ledger height 12x24 tile wall floor out 1/2 in')
    expect(reply.answer).toMatch(/12 3\/8 in/)
    expect(reply.details[0]).toMatch(/11 1\/2 in/)
  })
})

describe('movement joints', () => {
  test('ceil(L / spacing) - 1 each way: 40 x 60 ft at 25 ft has 1 + 2, in the sun at 12 ft 3 + 4', () => {
    expect(ask('40x60 18x18 layout').details.join()).toMatch(/^.*3 movement joints/s)
    const sun = ask('40x60 18x18 layout in the sun')
    expect(sun.details.join()).toMatch(/7 movement joints/)
    expect(sun.values['movement_spacing_m']).toBeCloseTo(3.6576, 4)
  })

  test('the exposure is asked for only where it matters', () => {
    expect(ask('40x60 18x18 layout').details.join()).toMatch(/Sun, wet or heated\?/)
    expect(ask('40x60 18x18 layout in the sun').details.join()).not.toMatch(/Sun, wet or heated\?/)
    expect(ask('6x7 12x12 layout').details.join()).not.toMatch(/Sun, wet or heated\?/)
  })

  test('the answer to it is one word', () => {
    const crew = new Crew()
    crew.say('40x22 hall 24x24 layout')
    expect(crew.say('its in full sun').values['movement_spacing_m']).toBeCloseTo(3.6576, 4)
    expect(crew.say('heated').topic).toBe('layout')
  })

  test('a joint in the slab is carried up', () => {
    expect(ask('40x60 18x18 layout slab joint 20 ft from the left').details.join()).toMatch(
      /follows a joint in the slab/,
    )
  })

  // 42 ft: ceil(42 / 25) - 1 = 1 and ceil(42 / 20) - 1 = 2; 40 x 60: 3 at 25 ft and 1 + 2 at 20 ft.
  test('where the two ends of the range differ both counts are told', () => {
    const both = ask('12x42 hall 18x18 layout').details.join('\n')
    expect(both).toMatch(/^1 movement joint inside/m)
    expect(both).toMatch(/^Every 20 ft instead: 2 inside/m)
    expect(ask('40x60 18x18 layout').details.join('\n')).not.toMatch(/instead/)
    const none = ask('12x22 hall 18x18 layout').details.join('\n')
    expect(none).toMatch(/^Leave 1\/4 in soft joint at every wall/m)
    expect(none).toMatch(/^Every 20 ft instead: 1 inside/m)
  })

  test('sun, wet or heat is asked for where it would make another count', () => {
    // 12 x 13: ceil(13 / 12) - 1 = 1 line at 12 ft, 1 + 1 at 8 ft.
    expect(ask('12x13 18x18 layout').details.join('\n')).toMatch(
      /Sun, wet or heated\? Say so: then every 8 ft to 12 ft, 1 to 2 lines inside/,
    )
    expect(ask('7x11 18x18 layout').details.join('\n')).not.toMatch(/Sun, wet/)
    expect(ask('12x13 18x18 layout, heated floor').details.join('\n')).not.toMatch(/Sun, wet/)
    expect(ask('plano de un piso de 12x13 con 18x18').details.join('\n')).toMatch(/sol, agua o calefacción/)
  })
})

test('several rooms have their own start lines and pictures', () => {
  const reply = ask('shop 12x14, wash-up 8x10, mudroom 5x7, 18x18 tile layout')
  const text = replyText(reply)
  for (const name of ['shop', 'wash', 'mudroom']) expect(text).toMatch(new RegExp(`${name}[^\n]*First line`))
  expect(reply.files.filter((f) => f.media_type === 'image/svg+xml')).toHaveLength(3)
})

test('a picture names hidden walls, door and holes, and becomes a PNG', () => {
  const reply = ask(
    '12x14 less 3x5 island 18x18, door is on the left wall, full tiles at the door, hide cuts on the right wall, picture',
  )
  const svg = reply.files.find((f) => f.media_type === 'image/svg+xml')?.text ?? ''
  for (const word of ['door', 'cuts hidden here', 'no tile here', 'line to snap']) expect(svg).toContain(word)
  const png = pngOf(svg)
  expect(png.ok && [...png.value.slice(1, 4)]).toEqual([0x50, 0x4e, 0x47])
})

test('a turned layout draws its lines through a corner, with both distances', () => {
  const reply = ask('10x13 18x18 diagonal picture')
  const svg = reply.files.find((f) => f.media_type === 'image/svg+xml')?.text ?? ''
  const [left, bottom] = [...reply.answer.matchAll(/(\d+(?: \d+\/\d+)?) in/g)].map((m) => m[1])
  expect(svg).toContain(`${left} in`)
  expect(svg).toContain(`${bottom} in`)
})

test('a wish that would leave a sliver is said not to be kept', () => {
  // From the left gap tiles end at 54 1/2 in and 90 3/4 in: past the island, which ends at 7 ft, 5/8 in would be left.
  const said = '12x14 less 3x5 island, 18x18, full tiles on the left wall, layout'
  expect(ask(said).details.join()).toMatch(/left wall would leave a sliver/)
  expect(ask('10x13 18x18 full tiles on the right wall layout').details.join()).not.toMatch(/sliver/)
})

test('too much work and sheet tile are refused in a sentence', () => {
  // 900 x 900 ft of 4 x 4 in tile: 810,000 x 9
  const much = ask('corners 0,0 900,0 900,900 0,900 ft, 4x4 tile layout')
  expect(much.problem?.code).toBe('too-much-work')
  expect(much.answer).toMatch(/7,290,000 tiles/)
  expect(ask('10x13 2x2 tile herringbone layout').answer).toMatch(/by the sheet/)
  expect(ask('piso 10x13 loseta 2x2, trazo').answer).toMatch(/en malla/)
})

describe('soft joints, margins and units as crews say them', () => {
  const last = (...said: readonly string[]) => {
    const crew = new Crew()
    return said.map((text) => crew.say(text)).at(-1)!
  }

  test('movement joints of a known floor are counted and placed, not told as a rule', () => {
    const direct = ask('movement joints shop floor 40x60 18x18')
    // ceil(40 / 25) - 1 + ceil(60 / 25) - 1
    expect(direct.answer).toMatch(/^3 movement joints inside/)
    expect(direct.details.join('\n')).toMatch(/from the left wall: \d+'.*on grout joints/)
    expect(last('shop floor 40x60 18x18', 'where do the soft joints go').answer).toBe(direct.answer)
    // ceil(40 / 12) - 1 + ceil(60 / 12) - 1
    expect(last('shop floor 40x60 18x18', 'movement joints', 'in the sun').answer).toMatch(/^7 movement joints/)
    expect(last('movement joints shop floor 40x60', 'in the sun').answer).toMatch(/^7 to 11 soft joints/)
    expect(last('10x13 shop floor, 18x18', 'how far apart movement joints').answer).toMatch(/^Every 20' to 25'/)
    expect(last('piso 12 x 18 m loseta 60x60', 'juntas de movimiento').answer).toMatch(/^3 juntas de movimiento/)
  })

  test('how far the room may be off is told for both directions', () => {
    const told = last(
      '10x13 shop floor, 18x18',
      'full tiles at the door on the south wall',
      'how far off can the room be',
    )
    expect([told.answer, ...told.details].filter((line) => /room may be .* short to .* over/.test(line))).toHaveLength(
      2,
    )
    expect(last('cocina 3x4 m, loseta 60x60', 'cuánto puede variar el cuarto').answer).toMatch(
      /más corto o .* más largo/,
    )
  })

  test('a thin figure behind the tile is its joint, a third of nothing said is the offset', () => {
    const whole = ask('11x9 room 8x48 planks, 3/16 joint, third offset')
    const short = ask('11x9 room 8x48 planks 3/16, a third')
    expect(short.values['joint_mm']).toBeCloseTo(4.7625)
    expect(short.values['tile_cut']).toBe(whole.values['tile_cut'])
    expect(short.assumed.join()).not.toMatch(/stacked/)
    expect(last('10x12 8x48', 'on a third?').assumed.join()).not.toMatch(/stacked/)
    expect(ask('cuarto 10x12 tabla 8x48 3/16, a un tercio').assumed.join()).not.toMatch(/en línea/)
    // 3/8 is as thick as tile is; a third done is no pattern.
    expect(ask('10x12 18x18 tile 3/8').values['joint_mm']).toBeCloseTo(3.175)
    expect(ask('10x12 8x48, a third done').assumed.join()).toMatch(/stacked/)
  })

  test('a room goes by its name, whatever else the name could ask about', () => {
    const told = last('kitchen 10x10, pantry 4x5 12x24 1/8', 'drop the pantry')
    expect([told.topic, told.values['tile_count']]).toEqual([
      'tile',
      ask('kitchen 10x10 12x24 1/8').values['tile_count'],
    ])
    expect(last('wash-up 10x10, shower 4x5 12x24 1/8', 'drop the shower').values['area_m2']).toBeCloseTo(sf(100))
  })

  test('four sides and a diagonal, in feet and inches however written', () => {
    // Two triangles by Heron's formula: 12, 10, 15'8" and 11'10", 10, 15'8".
    for (const said of [
      `four sides 12', 10', 11'10", 10', diagonal 15'8", 18x18 tile`,
      'four sides 12, 10, 11-10, 10 diagonal 15-8, 18x18 tile',
      'sides 12-0, 10-0, 11-10, 10-0, diagonal 15-8, 18x18',
    ])
      expect(ask(said).values['area_m2']).toBeCloseTo(
        heron([12, 10, 15 + 8 / 12]) + heron([11 + 10 / 12, 10, 15 + 8 / 12]),
        3,
      )
  })

  test('small whole figures beside a tile sold by the centimetre are metres', () => {
    expect(ask('kitchen 3x4, tile 30x60').values['area_m2']).toBeCloseTo(12)
    expect(ask('cocina 3x3, regadera 1x2, loseta 30x60').values['area_m2']).toBeCloseTo(11)
    expect(ask('lados 3, 4.00, 3, 4.00, diagonal 5, loseta 45x45').values['area_m2']).toBeCloseTo(12)
    // 12x24 and 20x20 are sold by the inch as well; 10x12 is a room of feet.
    expect(ask('kitchen 3x4 tile 12x24').values['area_m2']).toBeCloseTo(sf(12))
    expect(ask('bath 5x7, 20x20 tile').values['area_m2']).toBeCloseTo(sf(35))
    expect(ask('10x12 shop floor, 60x60 tile').values['area_m2']).toBeCloseTo(sf(120))
  })
})

/** Area of a triangle of three sides [ft], in m2. */
function heron([a, b, c]: readonly [number, number, number]): number {
  const s = (a + b + c) / 2
  return Math.sqrt(s * (s - a) * (s - b) * (s - c)) * 0.09290304
}
