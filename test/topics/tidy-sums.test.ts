/** Whole messages that ask for one small sum: a sheet's area, panels, primer, a pole, expansion, cuts by each rule. */
import { expect, test } from 'vitest'
import { ask, Crew } from '../support/crew.ts'

test.each([
  ['how many sf in a 4x8 sheet', 32],
  ['how many sf in a 3x5 sheet', 15],
  ['how many square feet in a 3x5 sheet of cement board', 15],
  ['cuantos pies cuadrados tiene una hoja de 4x8', 32],
])('%s', (said, ft2) => {
  const reply = ask(said)
  expect(reply.answer).toContain(String(ft2))
  expect(reply.values['area_m2']).toBeCloseTo(ft2 * 0.09290304, 6)
  expect(reply.values['sheets']).toBeUndefined()
})

test.each(['plywood sheets for 10x13', 'cuantas hojas de triplay para 10x13'])('%s', (said) => {
  const reply = ask(said)
  // 130 / 32 = 4.06: five panels, off-cuts and all.
  expect(reply.values['sheets']).toBe(5)
  expect(reply.answer).toMatch(/plywood, 4 x 8|triplay, 4 x 8/)
  expect([reply.answer, ...reply.details].join(' ')).not.toMatch(/cement|cemento/)
})

// 20 / 8 = 2.5: a Flooring Technology guide's worked example gives 8 m2 a litre, references.
test.each([
  ['primer at 8 m2 per liter for 20 m2', 2.5],
  ['cuanto imprimador para 20 m2 a 8 m2 por litro', 2.5],
])('%s', (said, litres) => {
  const reply = ask(said)
  expect(reply.values['primer_l']).toBeCloseTo(litres, 6)
  expect(reply.values['area_m2']).toBeCloseTo(20, 6)
})

test('what a litre covers is no floor', () => {
  const reply = ask('primer at 8 m2 per liter')
  expect(reply.values['area_m2']).toBeUndefined()
  expect(reply.problem?.code).toBe('question')
})

// By hand: n x 6 + (n - 1) x 1/8 in; 96 - 15 x 6 1/8 = 4 1/8 in.
test.each(['story pole for 8 ft wall 6x6 tile 1/8 joint', 'story pole 96 in 6x6 tile'])('%s', (said) => {
  const reply = ask(said)
  expect(reply.answer).toContain('last cut 4 1/8 in')
  expect(reply.details[0]).toMatch(/6 in, 12 1\/8 in, 18 1\/4 in, .*91 3\/4 in\.$/)
  expect(reply.values['tile_whole']).toBe(15)
  expect(reply.values['smallest_cut_mm']).toBeCloseTo(4.125 * 25.4, 6)
})

test('vara de hiladas para pared de 2.4 m, loseta de 15x15 cm, junta de 3 mm', () => {
  const reply = ask('vara de hiladas para pared de 2.4 m, loseta de 15x15 cm, junta de 3 mm')
  expect(reply.answer).toContain('último corte 105 mm')
  expect(reply.details[0]).toContain('150 mm, 303 mm, 456 mm')
})

// 6.0e-6 per K: Applied Adhesion Science 2018, table 1; 6 m over 30 K is 1.08 mm (references 7.7).
test.each([
  ['porcelain 6 m run from 10C to 40C how much does it expand', 1.08],
  ['cuanto se mueven 6 m de porcelanato en 30 grados c', 1.08],
  ['how much does 40 ft of porcelain move over 50 F', 6e-6 * 40 * 304.8 * (50 / 1.8)],
])('%s', (said, mm) => {
  const reply = ask(said)
  expect(reply.values['expansion_mm']).toBeCloseTo(mm, 6)
  expect(reply.sources.join(' ')).toContain('Applied Adhesion Science')
})

test.each([
  '18x18 shop floor 10x13 directional face, what do the cuts cost me vs any off-cut',
  '10x13 con 18x18, cuanto cuestan los cortes contra cualquier recorte',
])('rules of off-cuts are held against each other: %s', (said) => {
  const reply = ask(said)
  expect(reply.topic).toBe('layout')
  expect(reply.answer).toMatch(/28.*28.*28/)
  expect(reply.values['tile_count']).toBe(70)
})

test('any off-cut takes no more than the trade’s rule, which takes no more than fresh tile; the job keeps its rule', () => {
  const crew = new Crew()
  crew.say('shop floor 11x16, 8x48 plank, 1/3 offset, 1/8 joint')
  const counts = (text: string): number[] =>
    [...text.matchAll(/(\d+)(?= tiles? by|, | using| with)/g)].map(([n]) => Number(n))
  const [trade, any, fresh] = counts(crew.say('what do the cuts cost me vs any off-cut').answer) as [
    number,
    number,
    number,
  ]
  expect(any).toBeLessThanOrEqual(trade)
  expect(trade).toBeLessThan(fresh)
  expect(crew.say('layout').details.join(' ')).toContain('trade’s rule')
})
