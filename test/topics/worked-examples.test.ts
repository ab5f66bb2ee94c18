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

published('US Navy Seabee masonry rule 38: 9.5 sacks and 28.5 cu ft a cubic yard at 1:3', [
  ['mortar 1:3 by rule 38, how many sacks of cement and how much sand for a cubic yard', 'cement_sacks', 9.5],
  ['100 sq ft of 1 inch mortar bed, 1:3 mix, how many sacks cement', 'cement_sacks', 2.932],
  ['100 sq ft of 1 inch mortar bed, 1:3 mix, how many sacks cement', 'sand_l', 8.796 * 28.316846592],
  ['mud bed 100 sf 1 1/4 thick, 3 to 1, how much sand', 'sand_l', 10.995 * 28.316846592],
  // 1:4 of the same rule: 7.6 sacks a yard, 10.417 cu ft
  ['deck mud 1 to 4 100 sf 1-1/4 in thick how much sand and cement', 'cement_sacks', (7.6 * 10.4167) / 27],
])

published('Government of India CPWD cement coefficients: 1:4 takes 380 kg a m3, so 76 kg for 10 m2 at 20 mm', [
  ['10 m2 20mm bed 1:4 how much cement', 'cement_kg_low', 76],
  ['cama de mortero 10 m2 de 20 mm mezcla 1:4 cuanto cemento', 'cement_kg_low', 76],
])

published('Flooring Technology guide, unit 5 lesson 5: 13 m2 a bag at 1 mm, bags are area / 13 x 3', [
  ['self leveler 13 m2 a bag at 1mm, need 3 mm over 40 m2 how many bags', 'leveller_bags', 10],
  ['bag does 13 m2 @1 mm. 52m2 3mm thick how many bags of leveler', 'leveller_bags', 12],
  ['nivelador rinde 13 m2 a 1 mm, 26 m2 a 3 mm cuantos bultos', 'leveller_bags', 6],
])

published('TCNA EJ171 and NTCA manual: inside in the sun every 8 to 12 ft; joints outside by their spacing', [
  ['movement joints inside in the sun, spacing', 'movement_spacing_m', 3.6576],
  ['exterior movement joint 12 ft yearly range 115 F how wide', 'movement_width_mm', (9 / 16) * 25.4],
  ['junta de movimiento afuera cada 8 pies, 115 F de rango, que ancho', 'movement_width_mm', (7 / 16) * 25.4],
])

published('joint tables of the references (geometry): sanded 1.6 kg/L, unsanded 1.4, and 10 % over, from memory', [
  ['grout 300x600 tile 3mm joint 10mm thick 100 m2', 'grout_kg', 0.15 * 100 * 1.76],
  ['boquilla para 100 m2 de 600x600 junta 2 mm espesor 10 mm', 'grout_kg', 0.0667 * 100 * 1.54],
  ['grout for 100 sf of 12x12 1/8 joint 3/8 thick', 'grout_kg', 0.0641 * 28.3168 * 1.76, 0.03],
])

published(
  'NAVEDTRA 14044 p. 7-23 half-tile rule on the guide’s room (its own split corrected): 7 whole and 2 x 265 mm',
  [
    ['wall 2630 mm, 300 tile butt joint, how big r the end cuts', 'end_cut_mm', 265],
    ['pared de 2630 mm, loseta de 300 mm sin junta, cortes en las orillas?', 'end_cut_mm', 265],
  ],
)

published('CTEF tip: a 24 in tile that leaves a 1 1/2 in sliver takes 12 3/4 in at each end', [
  ['24 in tile leaves 1 1/2 sliver whats the cut if i balance it', 'end_cut_mm', 12.75 * 25.4],
])

published('ANSI A108.02 s. 4.3.8.1 as reported: 1/8 + 1/32 = 5/32 in; three times the variation', [
  ['warpage 1/32 rectified 8x48 running bond min joint', 'min_joint_mm', (5 / 32) * 25.4],
  ['tile varies 1/16 in size how wide a grout joint', 'min_joint_mm', (3 / 16) * 25.4],
  ['la loseta varia 1/16 que junta minima', 'min_joint_mm', (3 / 16) * 25.4],
  ['caliper 11 15/16, 12, 11 31/32 smallest joint?', 'min_joint_mm', (3 / 16) * 25.4],
])

published('NHBC 9.3.5: a day a millimetre to 40 mm, then two', [
  ['anhydrite screed 35mm how long to dry', 'slab_days', 35],
  ['calcium sulfate screed 60 mm how many days', 'slab_days', 80],
  ['firme de anhidrita de 60 mm cuantos dias', 'slab_days', 80],
])

published('Tile Council FAQ on deflection: 10 ft at L/360 is 1/3 in', [
  ['10 ft joist span how much sag is allowed', 'deflection_mm', 25.4 / 3],
  ['claro de 10 pies en las vigas cuanta flecha se permite', 'deflection_mm', 25.4 / 3],
])

published('ACI 117-10: FF 20 is about 5/16 in over 10 ft, local minimum three fifths', [
  ['FF 25 how flat in 10ft', 'max_gap_mm', 6.35],
  ['FF20/FL15 slab whats the local minimum', 'local_min_ff', 12],
])

published('29 CFR 1926.1153 table 1: 25 cfm for each inch of wheel', [
  ['grinder 5 inch how many cfm', 'airflow_cfm', 125],
  ['how much cfm for a 7in grinder shroud', 'airflow_cfm', 175],
  ['esmeril de 4.5 pulgadas cuantos cfm', 'airflow_cfm', 112.5],
])

published('notch geometry (TKB-6): 1/4 in at 45 degrees 0.0884 in; a 300 mL tube in 1/4 x 1/4 in fills 24 ft', [
  ['1/4 x 1/4 trowel bed thickness at 45 degrees', 'bed_mm', 0.0884 * 25.4],
  ['12 mm notch how many liters per m2', 'bed_mm_high', 6],
  ['llana de 12 mm cuantos litros por m2', 'bed_mm_low', 4.24],
  ['tube of caulk 300 ml 1/4 x 1/4 joint how far', 'sealant_m_per_tube', 24.4 * 0.3048],
  ['silicone 1/4x1/4 48 ft how many tubes', 'sealant_tubes', 3],
])

published('three 2 x 2 in voids on 12 x 24 in: 95.8 % contact', [
  ['3 voids 2x2 on a 12x24 tile', 'contact_pct', 95.83],
  ['tres huecos de 2x2 en loseta 12x24, cobertura?', 'contact_pct', 95.83],
])

published('ASTM F2170 as reported: 3 holes for 1000 sf, one more for each further 1000; 40 % deep', [
  ['losa de 3500 pies cuadrados cuantos agujeros de humedad', 'test_holes', 6],
  ['rh holes for 1001 sf 4 in slab how deep', 'test_holes', 4],
  ['rh holes for 1001 sf 4 in slab how deep', 'hole_depth_mm', 1.6 * 25.4],
])
