/** Underlayment laid on a floor against clipping every sheet by polygon-clipping (npm), and pan mud against a ray sum. */
import polygonClipping from 'polygon-clipping'
import type { Floor, Point } from '../../src/core/floor/rings.ts'
import { panBed } from '../../src/core/shower/pan.ts'
import { rectangle, ringOf } from '../../src/core/underlayment/shape.ts'
import { laySheets, type SheetLayout } from '../../src/core/underlayment/sheets.ts'

const FT = 304.8
const RUNS = 200

const ELL: Floor = {
  rings: [
    [
      [0, 0],
      [24 * FT, 0],
      [24 * FT, 10 * FT],
      [14 * FT, 17 * FT],
      [14 * FT, 30 * FT],
      [0, 30 * FT],
    ],
  ],
}

const FLOORS: Readonly<Record<string, Floor>> = {
  'mudroom 9 x 11 ft': rectangle(9 * FT, 11 * FT),
  'shop floor 30 x 40 ft': rectangle(30 * FT, 40 * FT),
  'L with a slanted wall': ELL,
}

function sheets(floor: Floor): SheetLayout {
  const layout = laySheets(floor, { lengthMm: 5 * FT, widthMm: 3 * FT, gapMm: 3.175, stagger: 0.5 })
  if (!layout.ok) throw new Error(layout.problem.code)
  return layout.value
}

/** What one of the candidate layouts costs when each sheet is clipped by the library. */
function byLibrary(floor: Floor, layout: SheetLayout): void {
  const room = floor.rings.map((ring) => ring.map(([x, y]): [number, number] => [x, y]))
  const turn = ([x, y]: Point): [number, number] => (layout.along === 'x' ? [x, y] : [y, x])
  for (const place of layout.places) polygonClipping.intersection(room, [ringOf(place).map(turn)])
}

function median(work: () => void): number {
  for (let i = 0; i < 20; i++) work()
  const ms = Array.from({ length: RUNS }, () => {
    const start = performance.now()
    work()
    return performance.now() - start
  })
  return ms.sort((a, b) => a - b)[RUNS / 2]!
}

/** Layouts tried for each answer: two directions, two shifts of the rows, two of the sheets. */
const TRIED = 8

export default async function around(): Promise<void> {
  for (const [name, floor] of Object.entries(FLOORS)) {
    const layout = sheets(floor)
    const mine = median(() => sheets(floor))
    const theirs = median(() => byLibrary(floor, layout)) * TRIED
    console.log(
      `  ${name.padEnd(22)} ${layout.sheets} sheets, seams and off-cuts too: ${mine.toFixed(2)} ms; ` +
        `clipping alone by the library ${theirs.toFixed(2)} ms (${(theirs / mine).toFixed(1)} x)`,
    )
  }
  const pan = { ring: ELL.rings[0]!, drain: [20 * FT, 4 * FT] as const, slopeMmPerM: 20.83, atDrainMm: 30 }
  console.log(`  pan mud round a corner  ${(1000 * median(() => panBed(pan))).toFixed(0)} µs`)
}
