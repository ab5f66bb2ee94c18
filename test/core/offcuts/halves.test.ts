/** Slanting cuts: what one piece leaves is the piece of the opposite wall. By hand, with a square tile of 300 mm. */
import { expect, test } from 'vitest'
import { halfOf, pairHalves } from '../../../src/core/offcuts/halves.ts'

const corner = (leg: number) =>
  [
    [0, 0],
    [leg, 0],
    [0, leg],
  ] as const
/** The rest of the tile beyond x + y = leg. */
const beyond = (leg: number) =>
  [
    [leg, 0],
    [300, 0],
    [300, 300],
    [0, 300],
    [0, leg],
  ] as const
const half = (outline: readonly (readonly [number, number])[]) => halfOf(outline, 300, 300)

test('a triangle reaches its legs over the root of two from its corner; the tile 300 times it', () => {
  const found = half(corner(200))
  expect(found?.keptMm).toBeCloseTo(200 / Math.SQRT2, 6)
  expect(found?.wholeMm).toBeCloseTo(300 * Math.SQRT2, 6)
  expect(half(beyond(200))?.keptMm).toBeCloseTo(400 / Math.SQRT2, 6)
  expect(half(beyond(200))?.side).toBe(-(found?.side ?? 0))
})

test('a straight cut, a whole tile and a piece cut twice are no halves', () => {
  expect(
    half([
      [0, 0],
      [200, 0],
      [200, 300],
      [0, 300],
    ]),
  ).toBeNull()
  expect(
    half([
      [0, 0],
      [300, 0],
      [300, 300],
      [0, 300],
    ]),
  ).toBeNull()
  expect(
    half([
      [100, 0],
      [300, 0],
      [300, 200],
      [200, 300],
      [0, 300],
      [0, 100],
    ]),
  ).toBeNull()
})

test('legs of 290 and 300 leave 10 / sqrt 2 = 7 mm between them: room for a kerf of 3; two of 300 leave none', () => {
  const turned = [half(corner(290)), half(corner(300))]
  expect(pairHalves(turned, 3, true)).toHaveLength(1)
  expect(pairHalves([half(corner(300)), half(corner(300))], 3, true)).toHaveLength(0)
})

test('without turning only opposite walls share a tile', () => {
  const same = [half(corner(200)), half(corner(200))]
  expect(pairHalves(same, 3, false)).toHaveLength(0)
  expect(pairHalves(same, 3, true)).toHaveLength(1)
  expect(pairHalves([half(corner(200)), half(beyond(210))], 3, false)).toHaveLength(1)
})

test('cuts of another direction are not paired', () => {
  expect(
    pairHalves(
      [
        half(corner(100)),
        half([
          [0, 0],
          [100, 0],
          [0, 50],
        ]),
      ],
      3,
      true,
    ),
  ).toHaveLength(0)
})

test('as many pairs as a search over all pairings finds', () => {
  let seed = 7
  const random = () => {
    seed = (seed * 16807) % 2147483647
    return seed / 2147483647
  }
  for (let round = 0; round < 200; round++) {
    const legs = Array.from({ length: 7 }, () => 20 + random() * 275)
    const halves = legs.map((leg) => half(random() < 0.5 ? corner(leg) : beyond(leg)))
    for (const mayTurn of [true, false]) {
      const fits = (i: number, j: number) =>
        halves[i]!.keptMm + halves[j]!.keptMm + 3 <= halves[i]!.wholeMm + 0.05 &&
        (mayTurn || halves[i]!.side !== halves[j]!.side)
      const best = (left: readonly number[]): number => {
        const [i, ...rest] = left
        if (i === undefined) return 0
        return Math.max(best(rest), ...rest.filter((j) => fits(i, j)).map((j) => 1 + best(rest.filter((k) => k !== j))))
      }
      const pairs = pairHalves(halves, 3, mayTurn)
      for (const [i, j] of pairs) expect(fits(i, j)).toBe(true)
      expect(new Set(pairs.flat()).size).toBe(2 * pairs.length)
      expect(pairs.length).toBe(best(halves.map((_, k) => k)))
    }
  }
})
