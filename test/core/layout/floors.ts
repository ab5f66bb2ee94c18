/** Random floors for property tests: plain numbers from fast-check, made into rings here. */
import fc from 'fast-check'
import { floorOf } from '../../../src/core/floor/check.ts'
import { less, union } from '../../../src/core/floor/combine.ts'
import type { Floor, Point, Ring } from '../../../src/core/floor/rings.ts'
import type { Pattern } from '../../../src/core/layout/spec.ts'
import { must } from '../../support/must.ts'

const rectangle = (x: number, y: number, w: number, h: number): Ring => [
  [x, y],
  [x + w, y],
  [x + w, y + h],
  [x, y + h],
]

const whole = (min: number, max: number) => fc.integer({ min, max })
const box = fc.tuple(whole(0, 3000), whole(0, 3000), whole(300, 3000), whole(300, 3000))

/** Rectangles joined and cut: every wall upright or level, holes and parts may come out. */
const squared: fc.Arbitrary<Floor> = fc
  .tuple(fc.array(box, { minLength: 1, maxLength: 4 }), fc.array(box, { maxLength: 3 }))
  .map(([sum, taken]) => {
    const floors = sum.map((b) => must(floorOf(rectangle(...b))))
    const joined = must(union(floors))
    const cut = less(
      joined,
      taken.map(([x, y, w, h]) => must(floorOf(rectangle(x, y, w / 4, h / 4)))),
    )
    return cut.ok ? cut.value : joined
  })

/** A star: corners at random distances round a middle, and a slanted hole where there is room. */
const slanted: fc.Arbitrary<Floor> = fc
  .tuple(fc.array(whole(900, 3500), { minLength: 5, maxLength: 14 }), fc.boolean(), whole(0, 359))
  .map(([reach, holed, turn]) => {
    const at = (r: number, k: number, n: number, deg = 0): Point => {
      const angle = (2 * Math.PI * k) / n + (deg * Math.PI) / 180
      return [2000 + Math.round(r * Math.cos(angle)), 1500 + Math.round(r * Math.sin(angle))]
    }
    const outer = reach.map((r, k) => at(r, k, reach.length))
    const hole = [0, 1, 2, 3].map((k) => at(250, k, 4, turn))
    const floor = floorOf(outer, holed ? [hole] : [])
    return floor.ok ? floor.value : must(floorOf(outer))
  })

export const floors: fc.Arbitrary<Floor> = fc.oneof(squared, slanted)

/** One of each pattern that can be laid. */
export const EVERY_PATTERN: readonly Pattern[] = [
  { kind: 'stacked' },
  { kind: 'offset', share: { over: 1, under: 3 }, step: 'stair', along: 'length' },
  { kind: 'offset', share: { over: 1, under: 2 }, step: 'back-and-forth', along: 'width' },
  { kind: 'random', leastStaggerMm: null },
  { kind: 'herringbone', planks: 1 },
  { kind: 'herringbone', planks: 2 },
  { kind: 'basketweave' },
  { kind: 'hexagon' },
  { kind: 'two-size', smallMm: 110 },
]
