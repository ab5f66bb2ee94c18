/** Messages as crews type them, each with what must come of it. Arithmetic stands beside the figure. */
import { describe, expect, test } from 'vitest'
import { replyText } from '../../src/speak.ts'
import { ask, Crew } from '../support/crew.ts'

const IN = 25.4
const SF = 0.09290304

type Row = readonly [said: string, key: string, about: number, within?: number]

const figures = (rows: readonly Row[]) => {
  for (const [said, key, about, within = 0.005] of rows)
    test(`${said}: ${key}`, () => {
      const crew = new Crew()
      const reply = said
        .split(' ;; ')
        .map((one) => crew.say(one))
        .at(-1)!
      expect(reply.ok, reply.answer).toBe(true)
      const got = reply.values[key] as number
      expect(Math.abs(got - about), `${key} is ${got}`).toBeLessThanOrEqual(within * Math.max(1e-9, Math.abs(about)))
    })
}

describe('joists and sheathing — common practice for the thickness; bending by the three-span beam, E I from memory', () => {
  // By hand: 0.0069 x 1.915 N/mm x 406.4^4 / 3.7664e9 = 0.0957 mm, 406.4 / 0.0957 = 4246.
  figures([
    ['3/4 ply on 16 centers ok for 18x18?', 'deflection_ratio', 4246],
    ['is 23/32 osb fine w joists 16 oc', 'deflection_ratio', 4246],
    // 0.0069 x 1.915 x 609.6^4 / 2.1186e9 = 0.861 mm
    ['5/8 osb joists 24 oc', 'deflection_ratio', 708],
    ['triplay de 5/8 con vigas a 24 esta bien?', 'deflection_ratio', 708],
    ['how thick ply for 19.2 oc', 'min_sheathing_mm', 19.05],
    ['que grueso de triplay para vigas a 16', 'min_sheathing_mm', 15.875],
    // IRC table R502.3.1(2), references 8.4: 2x10 SPF at 16 in, 20 psf dead, 14-1; 2x8 at 24 in 9-5.
    ['max span 2x10 spf no2 16 oc for tile', 'max_span_m', (14 * 12 + 1) * 0.0254],
    ['2x8 spf #2 at 24 oc how far can they span under tile', 'max_span_m', (9 * 12 + 5) * 0.0254],
    ['hasta cuanto puede librar un 2x10 spf no. 2 a 16 pulgadas', 'max_span_m', (14 * 12 + 1) * 0.0254],
    // references 8.8: 0.1572 in
    ['deflection 2x10 df 16 oc 12ft 40 psf', 'deflection_mm', 0.1572 * IN],
  ])

  test.each([
    ['3/4 ply on 16 centers ok for 18x18?', /^Yes/],
    ['is half inch plywood enough w/ joists 16 oc', /^No/],
    ['7/16 osb with joists 24 apart is that ok', /^No: 7\/16 in bends too much/],
    ['5/8 plus 1/2 ply on 24 oc ok?', /^Yes: 1 1\/8 in/],
    ['triplay de 5/8 con vigas a 24 esta bien para loseta?', /^No/],
  ] as const)('%s', (said, verdict) => {
    const reply = ask(said)
    expect(reply.answer).toMatch(verdict)
    expect(reply.warnings.length).toBeGreaterThan(0)
    expect(reply.details.join(' ')).toMatch(/L\/\d/)
  })
})

describe('sizes and figures as they are typed', () => {
  figures([
    // 12.5 ft x 9 1/3 ft
    ['room is twelve foot six by nine foot four tile is eight by forty eight how many', 'area_m2', 116.667 * SF],
    ['weight of 130 sf 18x18 3/8 porcelain', 'weight_kg', 130 * SF * 9.525 * 2.35],
    ['10 by 12 and a half, 18s, how many', 'tile_length_mm', 18 * IN],
    ['cuarto 2630 x 3540 mm, loseta de 300, sin junta, cuantas', 'tile_length_mm', 300],
    ['13-4x11-9 18x18 tile 3/16 jt boxes of 5', 'tile_boxes', 16],
    ['order list 10x13 18x18 3/16 at 3.89/sf tile thinset 22 a bag', 'joint_mm', (3 / 16) * IN],
    ['grout 25x25 mosaic 2mm joint 4mm thick 20 m2 kilos', 'tile_length_mm', 25],
    ['30 mil joint on 12x24 100 sf how many', 'joint_mm', 0.762],
    ['3.2m x 4.1m 600x600 porcelain how many', 'joint_mm', 3],
    ['qts of water for 50lb', 'mix_powder_kg', 22.68],
  ])

  test('a joint narrower than any is counted as told, with a warning', () => {
    expect(ask('30 mil joint on 12x24 100 sf how many').warnings.join()).toContain('1/16 in')
    expect(ask('2.63x3.54m 300x300 zero joint how many').values['joint_mm']).toBe(0)
  })
})

describe('boxes, sheets and areas without a tile', () => {
  figures([
    // 154 sf x 1.1 / 13.5 = 12.5
    ['box covers 13.5 how many boxes for 11x14', 'tile_boxes', 13],
    // 128 x 1.1 / 15.6 = 9.03
    ['i got 9 boxes at 15.6 sf each is that enuf for 128 sf', 'boxes_short', 1],
    ['tengo 9 cajas de 1.45 m2 cada una, alcanza para 12 m2?', 'tile_boxes', 10],
    // 45 sf x 1.1, a foot square each
    ['penny round sheets 12x12, 45 sf how many sheets', 'sheets', 50],
    ['45 sf penny tile how many sheets', 'sheets', 50],
  ])

  test('boxes on hand are judged', () => {
    expect(ask('have 12 boxes at 15.6 sf each enough for 128 sf?').answer).toMatch(/^Yes/)
    expect(ask('have 7 boxes at 15.6 sf each enough for 128 sf?').answer).toMatch(/^No/)
    expect(ask('i got 9 boxes at 15.6 sf each is that enuf for 128 sf').answer).toMatch(/^Just/)
  })
})

describe('waits and use', () => {
  figures([
    // references 13.8: 24 h at 70 F is 41 to 47 h at 50 F
    ['24 hr wait at 70, its 50 when can we grout', 'grout_after_h', 46.8, 0.01],
    ['its 50 when can we grout', 'grout_after_h', 46.7, 0.01],
    ['how long till i can walk on it if its 50 in here', 'walk_after_h', 46.7, 0.01],
    // 160 / (95 / 3) = 5.05
    ['used 3 bags on 95 sf how many for 160 more', 'bags_to_finish', 160 / (95 / 3)],
  ])

  test('a mixed bucket is judged by its age', () => {
    expect(ask('mixed grout 40 min ago still ok?').answer).toMatch(/^Yes/)
    expect(ask('mixed grout 2 hours ago still ok?').answer).toMatch(/^No/)
    expect(replyText(ask('mezcle la boquilla hace 3 horas, todavia sirve?'))).toMatch(/^No/)
  })
})

describe('where the job is', () => {
  test('the country is remembered when told once, and brings metres with it', () => {
    const crew = new Crew()
    expect(crew.say("job's in the uk").topic).toBe('job')
    expect(crew.say('how far apart movement joints').values['movement_spacing_m']).toBe(10)
    expect(crew.say('min joint floor').answer).toContain('3 mm')
    crew.say('start over')
    expect(crew.say('min joint floor').values['min_joint_mm']).toBe(3)
  })

  test('a country without rules of its own is told so, and measures in metric', () => {
    const crew = new Crew()
    crew.say('estamos en mexico')
    const reply = crew.say('de cuanto es la junta minima')
    expect(reply.answer).toContain('mm')
    expect(reply.assumed.join()).toContain('Norteamérica')
    expect(crew.say('cuarto de 4x5 loseta 60x60 cuantas').values['area_m2']).toBe(20)
  })
})

describe('what stands on the floor — statics', () => {
  const LB = 0.45359237
  figures([
    ['oven 900 lb on 4 legs, ok on this tile?', 'leg_load_kg', 225 * LB],
    ['horno de 400 kg en cuatro patas aguanta la loseta?', 'leg_load_kg', 100],
    // 300 lb on one leg of three that stand, 2 x 2 in: 75 psi
    ['900lb deck oven sits on 4 legs 2x2 pads will the tile crack', 'pad_kpa', 75 * 6.894757],
    // 1200 lb over 12 sf is 100 psf
    ['oven 1200 lbs 4x3 footprint psf', 'floor_load_kpa', 100 * 0.04788026],
  ])

  test('the size of pads is no tile of the job', () => {
    const crew = new Crew()
    crew.say('900lb deck oven sits on 4 legs 2x2 pads will the tile crack')
    expect(crew.memory.facts).toEqual({})
  })
})

describe('self-leveler — litres are area by depth', () => {
  figures([
    ['how many bags leveler for 130 sf 1/4 thick', 'fill_l', 130 * SF * 6.35],
    ['nivelador para 12 m2 a 5 mm cuantos bultos', 'fill_l', 60],
    ['slu 10x13 avg 3/8 thick bags?', 'fill_l', 130 * SF * 9.525],
    ['leveler for 10x13 how many bags ;; 3/8 deep', 'fill_l', 130 * SF * 9.525],
    // a dip: between half and two thirds of the deepest gap
    ['slab is 1/4 out over 10 how many bags self leveler for 130sf', 'fill_l_low', 130 * SF * 6.35 * 0.5],
    ['hump 3/8 in 10ft how much leveler to fix 10x13', 'fill_l', (130 * SF * 9.525 * 2) / 3],
    ['poured self leveler at noon when can we tile', 'tile_after_h', 24],
    ['how thick can i pour self leveler', 'max_bed_mm', 38],
  ])
})

describe('costs, lists and what goes round a column', () => {
  figures([
    // 140 sf and 10 % over at 3: 462
    ['cuanto cuesta 140 pies a 3 dolares el pie', 'cost', 462],
    ['140 ft at 3 dollars a foot how much', 'cost', 462],
    ['cuanto me sale el piso de 10x12 a 4.50 el pie cuadrado', 'cost', 120 * 1.1 * 4.5],
    // 70 tiles at 2.25 sf and 5 bags at 22
    ['order list 10x13 18x18 3/16 at 3.89/sf tile thinset 22 a bag', 'cost', 72 * 2.25 * 3.89 + 110, 0.01],
    ['shower 5x5 with a 6x6 inch post in the middle, how much mud', 'area_m2', 24.75 * SF],
  ])

  test('what is missing leaves out what the log says was used and is on hand', () => {
    const crew = new Crew()
    crew.say('10x13 shop floor 18x18 3/16')
    crew.say('used 3 bags on 95 sf')
    crew.say('got 2 bags left')
    expect(crew.say('what are we missing').values['bags_to_buy']).toBe(0)
    expect(crew.say('i have 0 bags of thinset and 60 tiles, whats missing').values['bags_to_buy']).toBe(5)
  })

  test('a board is answered in few lines', () => {
    const { answer, details } = ask('backer board 1/2 on 10x12 floor how many')
    expect(answer).toMatch(/^8 sheets/)
    expect(details.length).toBeLessThanOrEqual(3)
  })

  test('workings keep to one system a line', () => {
    const crew = new Crew()
    crew.say('10x13 shop floor 18x18 3/16')
    crew.say('and grout?')
    for (const line of crew.say('show the math').details.slice(0, 2)) expect(line).not.toMatch(/\bft\b|\bin\b|\blb\b/)
  })

  test('the caution of the saw comes with a question about cuts, and not with every layout', () => {
    expect(ask('10x13 layout 18x18').warnings.join()).not.toMatch(/blade/)
    expect(ask('10x13 18x18 how many cuts').warnings.join()).toMatch(/blade/)
    expect(ask('10x13 layout 18x18 how many cuts').answer).toMatch(/28 cut/)
  })
})

describe('what is told beside a figure', () => {
  figures([
    ['10x13 with 2x4 island tile 18x18 3/16 how many tiles', 'area_m2', 122 * SF],
    // three walls: 5 + 3 + 3 ft, 8 ft high
    ['shower walls 3x5 8 ft high with 24x12, how many', 'area_m2', 88 * SF],
    ['muro de ducha 8 ft alto 3x5 cuantas losetas 3x6', 'area_m2', 88 * SF],
    ['bathtub surround 60x32x60 high 4x12 how many tiles', 'area_m2', (124 * 60 * SF) / 144],
    ['cuarto 3.6 x 4.2 menos closet .6 x 1.5, loseta 60x60', 'area_m2', 14.22],
    ['hex 8 inch 130 sf how many', 'tile_length_mm', 8 * IN],
    ['cuantos clips para 130 pies de 18x18', 'area_m2', 130 * SF],
    ['resane de 1/4 en 10 pies cuantos bultos de nivelador 130 pies', 'area_m2', 130 * SF],
    // 70 x 2.25 sf, 3/8 in of porcelain at 2.35
    ['70 tiles 18x18 how heavy', 'weight_kg', 70 * 2.25 * SF * 9.525 * 2.35],
    ['que pesa una caja de 5 losetas 18x18', 'weight_kg', 5 * 2.25 * SF * 9.525 * 2.35],
    ['do i need 10 or 15 percent extra for herringbone', 'spare_pct', 15],
    // 30 and 40 ft at 25 ft: a line each way
    ['expansion joint on a 30x40 ft dining room', 'movement_lines', 2],
    ['necesito junta de expansion en un piso de 30x40', 'movement_lines', 2],
    ['epoxy for 80 sf 12x24 1/8 ;; we got 1 kit is that short', 'bags_to_buy', 0],
    ['curb how high above the drain', 'curb_mm', 50.8],
  ])

  test.each([
    ['tile thickness 3/8 plus 1/4 cork plus thinset how high at the door', 'order'],
    ['transition from tile 3/8 on 1/4 backer to 3/4 oak', 'order'],
    ['thinset burn on my knee', 'trouble'],
    ['cracked tile along a line across room', 'trouble'],
    ['grout too dark in spots why', 'trouble'],
    ['joint for 12x24 calibrated', 'joints'],
    ['media junta en duela 8x48 se puede?', 'joints'],
  ] as const)('%s is about %s', (said, topic) => expect(ask(said).topic).toBe(topic))

  test('no yes or no where nothing was asked', () => {
    expect(ask('thinset in eye').answer).toMatch(/doctor/)
    for (const said of ['thinset in eye', 'gas oven coming back who hooks it up'])
      expect(ask(said).answer).not.toMatch(/^(Yes|No)\b/)
    expect(ask('rh 82 in slab can i tile').answer).toMatch(/^No/)
  })
})

describe('units and figures that lean on what stands beside them', () => {
  figures([
    ['is 2 bags of grout enough 130 sf 18x18 1/4', 'joint_mm', 6.35],
    // 3/8 x 3/8 would cover more; a 3/4 U notch: no floor of 24 by 48 ft
    ['3/4 u notch 24x48 how many sf per bag', 'notch_width_mm', 19.05],
    ['8 ft 4 3/8 plus 3 ft 9 7/8', 'value', 146.25],
    ['cork 6mm 10x13 how many sheets 2x3', 'area_m2', 130 * SF],
    ['cuanta boquilla 8x48 junta de 1/8 130 pies', 'area_m2', 130 * SF],
    ['cuanto thinset para 15 m2 con llana de media pulgada', 'area_m2', 15],
  ])

  test('mortar and grout asked together come together', () => {
    const reply = ask('18x18 130 sf joint 3/16 how many bags thinset n how many bags grout')
    expect(reply.values).toMatchObject({ mortar_bags: 5, grout_bags: 1 })
  })

  test('a night low of 40 is Fahrenheit', () => {
    const reply = ask('heater off tonight gets down to 40 set at 4pm grout when')
    expect(reply.ok ? (reply.values['grout_after_h'] as number) : 99).toBeGreaterThan(40)
  })
})
