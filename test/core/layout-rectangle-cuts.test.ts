/** The closed form lists the same cut pieces as the walk along the walls. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { rectangle } from '../../src/core/floor/shapes.ts'
import { cutPieces } from '../../src/core/layout/pieces.ts'
import { rectangleCuts } from '../../src/core/layout/rectangle-cuts.ts'
import { searchStart } from '../../src/core/layout/search.ts'
import type { LayoutSpec, Pattern } from '../../src/core/layout/spec.ts'
import { NO_WISHES } from '../../src/core/layout/wishes.ts'

const patterns: readonly Pattern[] = [
  { kind: 'stacked' },
  { kind: 'offset', share: { over: 1, under: 2 }, step: 'back-and-forth', along: 'length' },
  { kind: 'offset', share: { over: 1, under: 3 }, step: 'stair', along: 'length' },
]

const tally = (pieces: readonly { lengthMm: number; widthMm: number; factory: object; count: number }[]): string[] => {
  const counts = new Map<string, number>()
  for (const p of pieces) {
    const key = `${(p.lengthMm + 1e-6).toFixed(1)}x${(p.widthMm + 1e-6).toFixed(1)} ${Object.values(p.factory).join()}`
    counts.set(key, (counts.get(key) ?? 0) + p.count)
  }
  return [...counts].map(([key, n]) => `${n} of ${key}`).toSorted()
}

test('the groups are the pieces', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1300, max: 6000 }),
      fc.integer({ min: 1300, max: 6000 }),
      fc.constantFrom(...patterns),
      fc.constantFrom([609.6, 304.8], [457.2, 457.2], [1219.2, 203.2]),
      (w, h, pattern, [lengthMm, widthMm]) => {
        const floor = rectangle(w, h)
        if (!floor.ok) throw new Error('a rectangle')
        const spec: LayoutSpec = {
          tile: { lengthMm, widthMm },
          jointMm: 3.175,
          pattern,
          angleDeg: 0,
          originMm: [0, 0],
          wallGapMm: 6.35,
        }
        const start = searchStart(floor.value, spec, NO_WISHES)
        if (!start.ok) throw new Error(start.problem.code)
        const walked = cutPieces(floor.value, start.value.spec)
        if (!walked.ok) throw new Error(walked.problem.code)
        expect(tally(rectangleCuts(w, h, start.value.spec) ?? [])).toEqual(
          tally(walked.value.cuts.map((c) => ({ ...c, count: 1 }))),
        )
      },
    ),
    { numRuns: 150 },
  )
})
