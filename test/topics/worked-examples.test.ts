/** Published worked examples as chat: each asked in several ways must come to the published figure. Sources beside them. */
import { describe, expect, test } from 'vitest'
import { Crew } from '../support/crew.ts'

const SF = 0.09290304

type Row = readonly [said: string, key: string, about: number, within?: number]

const published = (source: string, rows: readonly Row[]) =>
  describe(source, () => {
    for (const [said, key, about, within = 0.005] of rows)
      test(`${said}: ${key}`, () => {
        const reply = new Crew().say(said)
        expect(reply.ok, reply.answer).toBe(true)
        const got = reply.values[key] as number
        expect(Math.abs(got - about), `${key} is ${got}`).toBeLessThanOrEqual(within * Math.max(1e-9, Math.abs(about)))
      })
  })

published(
  'Flooring Technology learner guide, Planning and costing, lesson 6 (Commonwealth of Australia 2013): 15.11 m2',
  [
    ['L shaped floor 2.74 x 1.75 plus 2.63 x 3.92 area?', 'area_m2', 15.105],
    ['2.74m x 1.75m + 2.63m x 3.92m how many m2', 'area_m2', 15.105],
    ['2,74 x 1,75 mas 2,63 x 3,92 cuantos metros cuadrados', 'area_m2', 15.105],
  ],
)

published('same guide, lesson 4: room 2630 x 3540 mm, 300 mm tile, no joint: 9 x 12 = 108', [
  ['room 2630 x 3540 mm 300mm tile no joint how many tiles', 'tile_cells', 108],
  ['2.63x3.54m 300x300 zero joint how many', 'tile_cells', 108],
  ['cuarto 2630 x 3540 mm, loseta de 300, sin junta, cuantas', 'tile_cells', 108],
])

published('Alabama distance-learning course, unit 9-01: 128 sf and 15 % is 147.2 sf', [
  ['T shaped room 4x12 and 8x10 plus 15% waste how many sf to buy', 'buy_m2', 147.2 * SF],
  ['T shape 4 x 12 + 8 x 10, how many sq ft w 15 percent waste', 'buy_m2', 147.2 * SF],
])

published('NDS values and the beam formula: 2x10 DF-L at 16 in, 12 ft, 40 psf bends 0.1572 in', [
  ['deflection 2x10 df 16 oc 12ft 40 psf', 'deflection_mm', 0.1572 * 25.4],
  ['2x10 doug fir no 2 16 oc 12 ft span, deflection?', 'deflection_ratio', 916],
  ['2x10 DF-L #2 @16 14 ft', 'deflection_ratio', 577],
])
