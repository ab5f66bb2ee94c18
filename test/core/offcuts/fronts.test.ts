import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Fronts } from '../../../src/core/offcuts/fronts.ts'

const sides = fc.array(fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 })), {
  minLength: 1,
  maxLength: 6,
})
type Size = readonly [number, number]

function front(fronts: Fronts, sizes: readonly Size[]): [number, number] {
  for (const [w, h] of sizes) fronts.add(w, h)
  const ends: [number, number] = [fronts.start, fronts.end]
  fronts.keep()
  return ends
}

const smallest = (sizes: readonly Size[]): Size[] =>
  sizes.filter(([w, h], i) => !sizes.some(([a, b], j) => a <= w && b <= h && (a < w || b < h || j < i)))

test('two fronts joined hold the smallest of all boxes of a part of each, side by side or one above the other', () => {
  fc.assert(
    fc.property(sides, sides, (a, b) => {
      const most = 18
      const fronts = new Fronts(most, most)
      fronts.join(...front(fronts, a), ...front(fronts, b))
      const joined = fronts.boxes(fronts.start, fronts.end).map(({ w, h }): Size => [w, h])
      const all = a.flatMap(([w, h]) =>
        b.flatMap(([u, v]): Size[] => [
          [w + u, Math.max(h, v)],
          [Math.max(w, u), h + v],
        ]),
      )
      const expected = smallest(all.filter(([w, h]) => w <= most && h <= most)).toSorted(([v], [w]) => v - w)
      expect(joined).toEqual(expected)
    }),
  )
})
