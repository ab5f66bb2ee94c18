/** The floor in plain characters, for a terminal. */
import { type Drawing, extentOf, type Mark, type Point, type Ring } from './drawing.ts'

/** A character cell is about twice as high as it is wide. */
const CELL_ASPECT = 2
const MOST_ROWS = 60
const SIGNS: Readonly<Record<Mark, string>> = {
  whole: ' ',
  cut: '/',
  start: '*',
  movement: '=',
  door: 'D',
  hidden: '%',
  hole: 'x',
  none: ' ',
}
const WALL = '#'

/** Rows of text at most `columns` wide: `#` walls, `|` and `_` joints, `/` cuts, `*` start lines, then the legend. */
export function plainFloor(drawing: Drawing, columns = 72): string {
  const box = extentOf(drawing)
  const scale = Math.min((columns - 2) / box.w, (MOST_ROWS * CELL_ASPECT) / box.h)
  const wide = Math.max(1, Math.round(box.w * scale))
  const high = Math.max(1, Math.round((box.h * scale) / CELL_ASPECT))
  const cellW = box.w / wide
  const cellH = box.h / high
  const grid: string[][] = Array.from({ length: high + 2 }, () => Array<string>(wide + 2).fill(' '))
  const column = (x: number) => (x - box.x) / cellW
  const row = (y: number) => (box.y + box.h - y) / cellH

  const owner = new Int32Array(wide * high).fill(-1)
  drawing.tiles.forEach(({ ring }, index) => {
    paint(ring, (c, r) => {
      owner[r * wide + c] = index
    })
  })
  for (let r = 0; r < high; r++)
    for (let c = 0; c < wide; c++) {
      const tile = owner[r * wide + c]!
      if (tile < 0) {
        // A joint that the middle of the cell fell into.
        const upright = c > 0 && c < wide - 1 && owner[r * wide + c - 1]! >= 0 && owner[r * wide + c + 1]! >= 0
        const level = r > 0 && r < high - 1 && owner[(r - 1) * wide + c]! >= 0 && owner[(r + 1) * wide + c]! >= 0
        if (upright || level) grid[r + 1]![c + 1] = upright ? '|' : '_'
        continue
      }
      const left = c > 0 ? owner[r * wide + c - 1]! : tile
      const below = r < high - 1 ? owner[(r + 1) * wide + c]! : tile
      const joint = left >= 0 && left !== tile ? '|' : below >= 0 && below !== tile ? '_' : null
      grid[r + 1]![c + 1] = joint ?? (drawing.tiles[tile]!.cut ? SIGNS.cut : SIGNS.whole)
    }
  for (const { from, to } of drawing.movement) stroke(from, to, SIGNS.movement)
  for (const { from, to } of drawing.starts) stroke(from, to, SIGNS.start)
  for (const { ring } of drawing.holes)
    paint(ring, (c, r) => {
      grid[r + 1]![c + 1] = SIGNS.hole
    })
  const { floor } = drawing
  floor.forEach((from, i) => {
    stroke(from, floor[(i + 1) % floor.length]!, WALL)
  })
  for (const { from, to, kind } of drawing.walls) if (kind !== 'plain') stroke(from, to, SIGNS[kind])
  const rows = grid.map((cells) => cells.join('').trimEnd())
  const legend = drawing.legend.map(({ mark, text }) =>
    mark === 'none' ? oneLine(text) : `[${SIGNS[mark]}] ${oneLine(text)}`,
  )
  return [oneLine(drawing.title), ...rows, ...legend].join('\n')

  /** Every cell whose middle lies in the ring. */
  function paint(ring: Ring, put: (c: number, r: number) => void): void {
    const ys = ring.map(([, y]) => row(y))
    const from = Math.max(0, Math.floor(Math.min(...ys)))
    const to = Math.min(high - 1, Math.ceil(Math.max(...ys)))
    for (let r = from; r <= to; r++) {
      const hits: number[] = []
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length]!
        const [ra, rb] = [row(a[1]), row(b[1])]
        if (ra <= r + 0.5 === rb <= r + 0.5) return
        hits.push(column(a[0] + ((b[0] - a[0]) * (r + 0.5 - ra)) / (rb - ra)))
      })
      hits.sort((a, b) => a - b)
      for (let i = 0; i + 1 < hits.length; i += 2)
        for (let c = Math.max(0, Math.ceil(hits[i]! - 0.5)); c < Math.min(wide, hits[i + 1]! - 0.5); c++) put(c, r)
    }
  }

  /** A line on the grid; what lies on the edge of the floor goes in the frame round it. */
  function stroke(from: Point, to: Point, sign: string): void {
    const place = ([x, y]: Point): [number, number] => [framed(column(x), wide), framed(row(y), high)]
    const [c0, r0] = place(from)
    const [c1, r1] = place(to)
    const steps = Math.max(Math.abs(c1 - c0), Math.abs(r1 - r0), 1)
    for (let i = 0; i <= steps; i++) {
      const r = Math.round(r0 + ((r1 - r0) * i) / steps)
      const c = Math.round(c0 + ((c1 - c0) * i) / steps)
      if (grid[r]?.[c] !== undefined) grid[r]![c] = sign
    }
  }
}

const framed = (at: number, cells: number): number => {
  if (at < 0.25) return 0
  return at > cells - 0.25 ? cells + 1 : Math.min(cells, Math.max(1, Math.round(at + 0.5)))
}

const oneLine = (text: string): string => text.replace(/[\u0000-\u001f\u007f-\u009f]+/g, ' ')
