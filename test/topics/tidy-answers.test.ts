/** Whole messages whose answers named the wrong thing: hexagons, beds at their limit, kits, masks, two on a bag, the cold. */
import { expect, test } from 'vitest'
import { ask, Crew } from '../support/crew.ts'

const whole = ({ answer, details, warnings }: ReturnType<typeof ask>): string =>
  [answer, ...details, ...warnings].join('\n')

test.each([
  ['8 inch hex 9x11 mudroom', /8 in hexagons/],
  ['piso de 9x11 con hexagono de 8 pulgadas, cuantas losetas', /hexágonos de 8 pulg/],
  ['6 inch hexagon tile, 5x8 bath, 1/8 joint', /6 in hexagons/],
])('a hexagon is told by what it measures across: %s', (said, named) => {
  const crew = new Crew()
  const first = crew.say(said)
  expect(whole(first)).toMatch(named)
  for (const next of ['grout', 'layout', 'order list']) expect(whole(crew.say(next))).not.toMatch(/\b[68]x[68]\b/)
})

// A 1/4 in square notch held low leaves less than 3/32 in by under half of the thirty-second it is told to.
test('a bed that reads the same as its limit is no warning; one that reads less is', () => {
  expect(whole(ask('8 inch hex 9x11 mudroom'))).not.toMatch(/held low/)
  expect(whole(ask('10x13 floor 12x12 tile 3/16 v notch mortar'))).toMatch(
    /held low that trowel leaves only 1\/32 in; the bed should be at least 3\/32 in/,
  )
})

test.each([
  ['epoxy grout 10x13 18x18 3/16 joint, have 1 kit', /kit/, /bag/],
  ['boquilla epoxica 10x13 18x18, tengo 1 kit', /kit/, /bulto/],
])('epoxy comes by the kit: %s', (said, kit, bag) => {
  const { answer } = ask(said)
  expect(answer).toMatch(kit)
  expect(answer).not.toMatch(bag)
})

test.each(['dust mask for mixing', 'do i need a dust mask mixing thinset', 'necesito cubrebocas para batir la mezcla'])(
  'a mask for mixing is no mask for raking: %s',
  (said) => {
    const reply = ask(said)
    expect(reply.answer).toMatch(/N95/)
    expect(reply.answer).not.toMatch(/[Rr]aking|[Rr]aspar/)
  },
)

// NIOSH 94-110: about 24.5 lb at arm's length off the floor for one person; two share 50 lb.
test.each([
  ['can i lift a 50 lb bag with my partner', /^Yes. Two people share a 50 lb bag: 25 lb each/],
  ['2 of us lifting a bag 50 lb', /^Two on it: 25 lb each/],
  ['lift an 80 lb bag, two guys', /^Not even two: 40 lb each/],
  ['podemos cargar un bulto de 50 libras entre dos', /^Sí. Entre dos/],
  ['can one guy lift a 50 lb bag', /^No/],
])('%s', (said, told) => expect(ask(said).answer).toMatch(told))

test.each([
  ['its 38 in the shop tonight ok to grout', /^No. Grout and let it cure between 60/, /two days/],
  ['38 tonight ok to grout', /^No. Grout and let it cure between 60/, /two days/],
  ['38 F in the shop tonight, can we grout', /^No. Grout and let it cure between 60/, /two days/],
  ['esta a 3 grados en la panaderia esta noche, se puede emboquillar', /^No. Emboquilla y deja curar/, /dos días/],
])('what is too cold for grout goes before the wait: %s', (said, cold, wait) => {
  const reply = ask(said)
  expect(reply.answer).toMatch(cold)
  expect(reply.details.join(' ')).toMatch(wait)
})

test('warm enough: the wait alone', () => {
  expect(ask('its 70 in the shop tonight ok to grout').answer).toMatch(/^Depends. Wait until/)
})

// Common practice, no source: a 2x4 is 3 1/2 in; board 1/2, bed 3/32 and tile 3/8 in leave about 2 1/2 in.
test.each([
  ['how deep should the niche be', /about 2 1\/2 in/],
  ['que tan hondo debe ser el nicho', /como 2 1\/2 pulg/],
  ['modified or unmodified thinset for porcelain', /^Modified for porcelain/],
  ['modificado o sin modificar para porcelanato', /^Modificado para porcelanato/],
])('%s', (said, told) => expect(ask(said).answer).toMatch(told))
