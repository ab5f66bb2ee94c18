/** Property: the same quantities in English or Spanish words come to the same values. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ask } from '../../support/crew.ts'

/** A quantity in both languages, or a part of a message. */
type Pair = { readonly en: string; readonly es: string }

const pair = (en: string, es: string): Pair => ({ en, es })
const NUMBERS = [
  pair('six', 'seis'),
  pair('eight', 'ocho'),
  pair('nine', 'nueve'),
  pair('ten', 'diez'),
  pair('eleven', 'once'),
  pair('twelve', 'doce'),
  pair('fourteen', 'catorce'),
  pair('sixteen', 'dieciséis'),
  pair('twenty two', 'veintidós'),
  pair('twenty five', 'veinte y cinco'),
  pair('thirty', 'treinta'),
]
const side = fc.oneof(
  fc.integer({ min: 5, max: 40 }).map((n) => pair(`${n} ft`, `${n} pies`)),
  fc
    .tuple(fc.integer({ min: 5, max: 40 }), fc.integer({ min: 1, max: 11 }))
    .chain(([f, i]) =>
      fc.constantFrom(pair(`${f} ft ${i} in`, `${f} pies ${i} pulgadas`), pair(`${f}'${i}"`, `${f}'${i}"`)),
    ),
  fc.constantFrom(...NUMBERS).map(({ en, es }) => pair(`${en} feet`, `${es} pies`)),
  fc.integer({ min: 15, max: 120 }).map((n) => pair(`${n / 10} m`, `${String(n / 10).replace('.', ',')} m`)),
  fc.integer({ min: 2, max: 12 }).map((n) => pair(`${n}.5 meters`, `${n} metros y medio`)),
  fc.integer({ min: 150, max: 1200 }).map((n) => pair(`${n} cm`, `${n} centímetros`)),
)
const room = fc
  .tuple(side, side, fc.constantFrom(pair('x', 'x'), pair('by', 'por')))
  .map(([a, b, by]) => pair(`${a.en} ${by.en} ${b.en}`, `${a.es} ${by.es} ${b.es}`))
const tile = fc.constantFrom(
  pair('18x18 tile', 'loseta 18x18'),
  pair('8x48 plank', 'duela 8x48'),
  pair('60x60 cm tile', 'loseta 60x60 cm'),
  pair('12 by 24 inch tile', 'loseta de 12 por 24 pulgadas'),
)
const joint = fc.constantFrom(
  pair('1/8 joint', 'junta de un octavo'),
  pair('3/16 inch joint', 'junta de tres dieciseisavos de pulgada'),
  pair('1/4 joint', 'junta de un cuarto'),
  pair('1/4 inch joint', 'junta de un cuarto de pulgada'),
  pair('3 mm joint', 'junta de 3 milímetros'),
  pair('2.5 mm joint', 'junta de 2,5 mm'),
)
const spare = fc.integer({ min: 3, max: 25 }).map((n) => pair(`${n}% extra`, `${n} por ciento extra`))

const whole = (parts: readonly Pair[]): Pair =>
  pair(parts.map((p) => p.en).join(', '), parts.map((p) => p.es).join(', '))

function alike({ en, es }: Pair): void {
  const [english, spanish] = [ask(en), ask(es)]
  expect(spanish.values, `${en} | ${es}`).toEqual(english.values)
  expect(spanish.problem?.code).toBe(english.problem?.code)
}

test('rooms', () => {
  fc.assert(
    fc.property(room, (size) => alike(pair(`area of ${size.en}`, `área de ${size.es}`))),
    { numRuns: 150 },
  )
})

test('room, tile, joint and spares', () => {
  fc.assert(
    fc.property(room, tile, joint, spare, (size, t, j, s) =>
      alike(whole([pair(`${size.en} floor`, `piso de ${size.es}`), t, j, s])),
    ),
    { numRuns: 60 },
  )
})

test('bags, areas and water', () => {
  const bags = fc.constantFrom(
    pair('half a bag', 'medio bulto'),
    pair('two bags', 'dos bultos'),
    pair('1 1/2 bags', 'un bulto y medio'),
    pair('2 1/2 bags', 'dos bultos y medio'),
    pair('3 bags', '3 sacos'),
  )
  fc.assert(
    fc.property(bags, ({ en, es }) =>
      alike(pair(`how much water for ${en} of mortar`, `cuánta agua para ${es} de mezcla`)),
    ),
  )
  const area = fc.oneof(
    fc.integer({ min: 20, max: 2500 }).map((n) => pair(`${n} sq ft`, `${n} pies cuadrados`)),
    fc
      .integer({ min: 20, max: 2500 })
      .map((n) => pair(`${n / 10} m2`, `${String(n / 10).replace('.', ',')} metros cuadrados`)),
    fc.constantFrom(pair('1,200 square feet', '1,200 pies cuadrados')),
  )
  fc.assert(
    fc.property(area, (a) =>
      alike(
        pair(
          `how many bags of mortar for ${a.en}, 1/2 inch trowel`,
          `cuántos bultos de mezcla para ${a.es}, llana de media pulgada`,
        ),
      ),
    ),
    { numRuns: 60 },
  )
})
