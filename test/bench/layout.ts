/** Laying against the general library polygon-clipping, tile by tile, and the times of large floors and of the search. */
import polygonClipping from 'polygon-clipping'
import { floorOf } from '../../src/core/floor/check.ts'
import type { Floor, Point, Ring } from '../../src/core/floor/rings.ts'
import { rectangle } from '../../src/core/floor/shapes.ts'
import { lay } from '../../src/core/layout/lay.ts'
import { tilesOf } from '../../src/core/layout/pieces.ts'
import { layRectangle } from '../../src/core/layout/rectangle.ts'
import { searchStart } from '../../src/core/layout/search.ts'
import { type LayoutSpec, plainSpec } from '../../src/core/layout/spec.ts'
import { NO_WISHES } from '../../src/core/layout/wishes.ts'
import { must } from '../support/must.ts'

const FT = 304.8

/** Median time of a call, after a warm-up. [ms] */
function median(call: (k: number) => unknown, runs: number): number {
  for (let k = 0; k < Math.min(runs, 50); k++) call(k)
  const times = Array.from({ length: runs }, (_, k) => {
    const start = performance.now()
    call(k)
    return performance.now() - start
  })
  return times.sort((a, b) => a - b)[runs >> 1]!
}

const square = (x: number, y: number, side: number): Ring => [
  [x, y],
  [x + side, y],
  [x + side, y + side],
  [x, y + side],
]

/** 2,000 sf: an L of 50 x 50 less 25 x 20 ft, with six holes of 2 ft. */
const ell = (): Floor =>
  must(
    floorOf(
      (
        [
          [0, 0],
          [50, 0],
          [50, 30],
          [25, 30],
          [25, 50],
          [0, 50],
        ] as const
      ).map(([x, y]): Point => [x * FT, y * FT]),
      [
        [5, 5],
        [15, 12],
        [30, 7],
        [42, 20],
        [8, 30],
        [16, 42],
      ].map(([x, y]) => square(x! * FT, y! * FT, 2 * FT)),
    ),
  )

/** About 100,000 sf: 60 corners round a wavy outline, 40 columns. */
function hall(): Floor {
  const corners = Array.from({ length: 60 }, (_, k): Point => {
    const angle = (2 * Math.PI * k) / 60
    const reach = (178 + 8 * Math.sin(5 * angle)) * FT
    return [reach * Math.cos(angle), reach * Math.sin(angle)]
  })
  const columns = Array.from({ length: 40 }, (_, k) =>
    square(((k % 8) - 3.5) * 30 * FT, (Math.floor(k / 8) - 2) * 40 * FT, 2 * FT),
  )
  return must(floorOf(corners, columns))
}

function byLibrary(floor: Floor, spec: LayoutSpec): number {
  const shape = floor.rings.map((ring) => ring as [number, number][])
  const { lengthMm, widthMm } = spec.tile
  const xs = floor.rings[0]!.map(([x]) => x)
  const ys = floor.rings[0]!.map(([, y]) => y)
  let cells = 0
  for (let u = 0; u < Math.max(...xs); u += lengthMm + spec.jointMm)
    for (let v = 0; v < Math.max(...ys); v += widthMm + spec.jointMm) {
      const tile: [number, number][] = [
        [u, v],
        [u + lengthMm, v],
        [u + lengthMm, v + widthMm],
        [u, v + widthMm],
      ]
      if (polygonClipping.intersection([tile], [shape[0]!, ...shape.slice(1)]).length > 0) cells++
    }
  return cells
}

export default async function bench(): Promise<void> {
  const spec = plainSpec(18 * 25.4, 18 * 25.4, 4.7625)
  const floor = ell()
  const ours = median(() => lay(floor, spec), 400)
  const cells = byLibrary(floor, spec)
  const theirs = median(() => byLibrary(floor, spec), 9)
  const same = must(lay(floor, spec)).cells === cells ? 'same count' : 'COUNTS DIFFER'
  console.log(
    `L of 2,000 sf, six holes, ${cells} places: ${ours.toFixed(3)} ms; polygon-clipping ${theirs.toFixed(0)} ms; ${(theirs / ours).toFixed(0)} x (${same})`,
  )

  const wide = hall()
  const small = plainSpec(16 * 25.4, 16 * 25.4, 3)
  for (const [name, one] of [
    ['stacked', small],
    ['turned 30', { ...small, angleDeg: 30 }],
    [
      'herringbone 8 x 48 turned 45',
      { ...plainSpec(48 * 25.4, 8 * 25.4, 3), angleDeg: 45, pattern: { kind: 'herringbone', planks: 1 } },
    ],
  ] as const)
    console.log(
      `hall of 100,000 sf, 60 corners, 40 columns, ${name}: ${median(() => lay(wide, one), 30).toFixed(2)} ms (${must(lay(wide, one)).cells} places)`,
    )

  const third: LayoutSpec = {
    ...plainSpec(48 * 25.4, 8 * 25.4, 3),
    pattern: { kind: 'offset', share: { over: 1, under: 3 }, step: 'stair', along: 'length' },
  }
  const house = must(
    floorOf(
      (
        [
          [0, 0],
          [18, 0],
          [18, 9],
          [11, 9],
          [11, 15],
          [0, 15],
        ] as const
      ).map(([x, y]): Point => [x * FT, y * FT]),
      [square(4 * FT, 4 * FT, 3 * FT)],
    ),
  )
  const room = must(rectangle(14 * FT, 12 * FT))
  console.log(
    `start line, L-shaped room with an island: ${median(() => searchStart(house, third, { ...NO_WISHES, mayTurn: true }), 40).toFixed(2)} ms, diagonal ${median(() => searchStart(house, { ...spec, angleDeg: 45 }, NO_WISHES), 40).toFixed(2)} ms, turned 30 ${median(() => searchStart(house, { ...spec, angleDeg: 30 }, NO_WISHES), 40).toFixed(2)} ms`,
  )
  const searches = median(() => searchStart(room, third, NO_WISHES), 2000)
  const closed = median((k) => layRectangle(14 * FT + k, 12 * FT, third), 2000)
  console.log(`plain rectangle: ${(1000 / searches).toFixed(0)} start lines/s, ${(1000 / closed).toFixed(0)} counts/s`)
  console.log(`every tile and piece of the L listed: ${median(() => tilesOf(floor, spec), 30).toFixed(2)} ms`)
}
