/** A floor as SVG, to be read on a phone in the sun: no text under 3 % of the height. */
import { type Drawing, type DrawnWall, extentOf, type Mark, type Point, type Ring } from './drawing.ts'
import { type Frame, frameOf, type LegendItem, WIDTH, wordsAt } from './frame.ts'
import { escaped, fitted, textWidth } from './lettering.ts'
import { PALETTES, type Palette, type Theme } from './theme.ts'

const FONT = 'DejaVu Sans'

/** The whole picture. Sizes follow from the floor; the text grows with the height. */
export function svgOf(drawing: Drawing, theme: Theme = 'light'): string {
  const ink = PALETTES[theme]
  const frame = frameOf(drawing)
  const box = extentOf(drawing)
  const at = ([x, y]: Point): Point => [
    frame.left + (x - box.x) * frame.scale,
    frame.top + frame.floorH - (y - box.y) * frame.scale,
  ]
  const labels = new Labels(frame)
  const { size, height } = frame
  // Walls have first choice of the room for labels.
  const byLength = drawing.walls.toSorted((a, b) => span(b) - span(a))
  const dimensions = byLength.map((wall) => dimension(wall, drawing.floor, at, ink, size, labels))
  const parts = [
    `<rect width="${WIDTH}" height="${height}" fill="${ink.page}"/>`,
    text(
      fitted(drawing.title, size * 1.15, WIDTH - size * 1.6),
      size * 0.7,
      size * 1.45,
      size * 1.15,
      ink.ink,
      'start',
      true,
    ),
    tilesOf(drawing, at, ink),
    holesOf(drawing, at, ink),
    ...drawing.movement.map(({ from, to }) => line(at(from), at(to), ink.movement, 6, '2 9', 'round')),
    ...drawing.starts.map(({ from, to }) => halo(at(from), at(to), ink)),
    wallsOf(drawing, at, ink, size),
    ...dimensions,
    ...drawing.starts.map((start) => measureOf(start, at, ink, size, labels)),
    ...drawing.holes.map((hole) => holeLabel(hole, at, ink, size, labels)),
    ...frame.legend.map((item) => legendItem(item, frame, ink)),
  ]
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" width="${WIDTH}" height="${height}" ` +
    `font-family="${FONT}" role="img"><title>${escaped(drawing.title)}</title>${DEFS(ink)}${parts.join('')}</svg>`
  )
}

const DEFS = (ink: Palette) =>
  `<defs><pattern id="h" width="11" height="11" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">` +
  `<rect width="11" height="11" fill="${ink.cut}"/><rect width="2.4" height="11" fill="${ink.hatch}"/></pattern>` +
  `<pattern id="o" width="12" height="12" patternUnits="userSpaceOnUse" patternTransform="rotate(-45)">` +
  `<rect width="12" height="12" fill="${ink.page}"/><rect width="2" height="12" fill="${ink.joint}"/></pattern></defs>`

const n = (value: number): string => String(Math.round(value * 10) / 10)
const span = ({ from, to }: { from: Point; to: Point }) => Math.hypot(to[0] - from[0], to[1] - from[1])
const path = (ring: Ring, at: (p: Point) => Point): string => `M${ring.map((p) => at(p).map(n).join(' ')).join('L')}Z`

function tilesOf({ tiles, floor }: Drawing, at: (p: Point) => Point, ink: Palette): string {
  const of = (cut: boolean) =>
    tiles
      .filter((t) => t.cut === cut && t.ring.length > 2)
      .map((t) => path(t.ring, at))
      .join('')
  const edge = `stroke="${ink.joint}" stroke-width="1.5"`
  return (
    `<path d="${path(floor, at)}" fill="${ink.page}"/>` +
    `<path d="${of(false)}" fill="${ink.whole}" ${edge}/><path d="${of(true)}" fill="url(#h)" ${edge}/>`
  )
}

const holesOf = ({ holes }: Drawing, at: (p: Point) => Point, ink: Palette): string =>
  holes.map(({ ring }) => `<path d="${path(ring, at)}" fill="url(#o)" stroke="${ink.wall}" stroke-width="4"/>`).join('')

function holeLabel(
  { ring, label }: Drawing['holes'][number],
  at: (p: Point) => Point,
  ink: Palette,
  size: number,
  labels: Labels,
): string {
  if (!label) return ''
  const spots = ring.map(at)
  const mid = (i: 0 | 1) => (Math.min(...spots.map((p) => p[i])) + Math.max(...spots.map((p) => p[i]))) / 2
  return labels.chip(label, mid(0), mid(1), size, ink.ink, ink.page)
}

function wallsOf({ floor, walls }: Drawing, at: (p: Point) => Point, ink: Palette, size: number): string {
  const outline = `<path d="${path(floor, at)}" fill="none" stroke="${ink.wall}" stroke-width="7" stroke-linejoin="miter"/>`
  const marked = walls.map(({ from, to, kind }) => {
    if (kind === 'plain') return ''
    const [a, b] = [at(from), at(to)]
    if (kind === 'hidden') return line(a, b, ink.page, 3.5, `${n(size * 0.35)} ${n(size * 0.35)}`)
    return line(a, b, ink.page, 11) + line(a, b, ink.door, 9, `${n(size * 0.7)} ${n(size * 0.25)}`)
  })
  return outline + marked.join('')
}

/** A start line stands out from hatching by a rim in the page's colour. */
const halo = (a: Point, b: Point, ink: Palette) => line(a, b, ink.page, 9) + line(a, b, ink.start, 5, '18 8')

function measureOf(
  { measured }: Drawing['starts'][number],
  at: (p: Point) => Point,
  ink: Palette,
  size: number,
  labels: Labels,
): string {
  if (!measured) return ''
  const [a, b] = [at(measured.from), at(measured.to)]
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const length = Math.hypot(dx, dy) || 1
  const tick = (p: Point): string => {
    const [tx, ty] = [(-dy / length) * size * 0.4, (dx / length) * size * 0.4]
    return line([p[0] - tx, p[1] - ty], [p[0] + tx, p[1] + ty], ink.start, 4)
  }
  const arrow = line(a, b, ink.page, 8) + line(a, b, ink.start, 4) + tick(a) + tick(b)
  const [x, y] = besideArrow(a, b, measured.label, size)
  return arrow + labels.chip(measured.label, x, y, size, ink.start, ink.page)
}

/** Where an arrow's words stand: above its middle, or behind its end where it is shorter than they are. */
function besideArrow(a: Point, b: Point, label: string, size: number): Point {
  const level = Math.abs(b[0] - a[0]) > Math.abs(b[1] - a[1])
  const width = textWidth(label, size) + size * 0.6
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2 - size * 0.85]
  if (level)
    return Math.abs(b[0] - a[0]) > width ? middle : [b[0] + Math.sign(b[0] - a[0]) * (width / 2 + size * 0.45), b[1]]
  return Math.abs(b[1] - a[1]) > size * 3 ? middle : [b[0], b[1] + Math.sign(b[1] - a[1]) * size * 1.1]
}

/** A wall's length along its outer side, a step further out where another label is in the way. */
function dimension(
  wall: DrawnWall,
  floor: Ring,
  at: (p: Point) => Point,
  ink: Palette,
  size: number,
  labels: Labels,
): string {
  if (!wall.label) return ''
  const [a, b] = [at(wall.from), at(wall.to)]
  const length = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (length === 0) return ''
  const normal = outward(wall, floor)
  const width = textWidth(wall.label, size)
  let angle = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI
  // Upright words read from the foot up, so that 60 is not 09.
  if (angle >= 89.99 || angle < -90.01) angle += angle > 0 ? -180 : 180
  for (const step of [0.85, 1.1]) {
    const x = (a[0] + b[0]) / 2 + normal[0] * size * step
    const y = (a[1] + b[1]) / 2 - normal[1] * size * step
    const cos = Math.abs(Math.cos((angle * Math.PI) / 180))
    const sin = Math.abs(Math.sin((angle * Math.PI) / 180))
    const half = { w: (width * cos + size * sin) / 2, h: (width * sin + size * cos) / 2 }
    if (!labels.take(x, y, half.w, half.h)) continue
    return (
      `<g transform="translate(${n(x)} ${n(y)}) rotate(${n(angle)})">` +
      `${text(wall.label, 0, size * 0.36, size, ink.ink, 'middle', true)}</g>`
    )
  }
  return ''
}

/** The unit vector away from the floor, whichever way round its corners go. */
function outward({ from, to }: DrawnWall, floor: Ring): Point {
  let turn = 0
  floor.forEach((p, i) => {
    const q = floor[(i + 1) % floor.length]!
    turn += p[0] * q[1] - q[0] * p[1]
  })
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const length = Math.hypot(dx, dy) * (turn >= 0 ? 1 : -1)
  return [dy / length, -dx / length]
}

/** Where labels stand already. */
class Labels {
  readonly #taken: { x: number; y: number; w: number; h: number }[] = []
  readonly #frame: Frame

  constructor(frame: Frame) {
    this.#frame = frame
  }

  /** Whether there is room for a box of these half extents, which is then kept. */
  take(x: number, y: number, w: number, h: number): boolean {
    const { top, floorH, margin } = this.#frame
    const inside = x - w > 0 && x + w < WIDTH && y - h > top - margin && y + h < top + floorH + margin * 1.1
    const free = this.#taken.every((t) => Math.abs(t.x - x) > t.w + w || Math.abs(t.y - y) > t.h + h)
    if (!inside || !free) return false
    this.#taken.push({ x, y, w, h })
    return true
  }

  /** A label on a plate, moved to stay inside the picture and, if it can, off other labels. */
  chip(label: string, x: number, y: number, size: number, colour: string, plate: string): string {
    const words = fitted(label, size, WIDTH - size * 2)
    const [w, h] = [textWidth(words, size) / 2 + size * 0.3, size * 0.65]
    const px = Math.min(WIDTH - w - 4, Math.max(w + 4, x))
    const spot = [0, 1.5, -1.5, 3, -3].map((k) => y + k * size).find((py) => this.take(px, py, w, h)) ?? y
    return (
      `<rect x="${n(px - w)}" y="${n(spot - h)}" width="${n(2 * w)}" height="${n(2 * h)}" rx="5" fill="${plate}"/>` +
      text(words, px, spot + size * 0.36, size, colour, 'middle', true)
    )
  }
}

function legendItem(item: LegendItem, { size, legendTop }: Frame, ink: Palette): string {
  const y = legendTop + item.y
  const words = text(item.words, wordsAt(item, size), y + size * 0.9, size, ink.ink, 'start', false)
  if (item.mark === null) return words
  const mark =
    item.mark === 'scale'
      ? scaleBar(item, y, size, ink)
      : sample(item.mark, item.x, y + size * 0.15, item.swatch, size, ink)
  return mark + words
}

function scaleBar({ x, swatch }: LegendItem, y: number, size: number, ink: Palette): string {
  const half = swatch / 2
  const block = (from: number, fill: string) =>
    `<rect x="${n(from)}" y="${n(y + size * 0.35)}" width="${n(half)}" height="${n(size * 0.45)}" fill="${fill}" ` +
    `stroke="${ink.ink}" stroke-width="2.5"/>`
  return block(x, ink.ink) + block(x + half, ink.page)
}

function sample(mark: Mark, x: number, y: number, w: number, size: number, ink: Palette): string {
  const h = size * 0.9
  const [a, b]: [Point, Point] = [
    [x, y + h / 2],
    [x + w, y + h / 2],
  ]
  const box = (fill: string, edge: string, width: number) =>
    `<rect x="${n(x)}" y="${n(y)}" width="${n(w)}" height="${n(h)}" fill="${fill}" stroke="${edge}" stroke-width="${width}"/>`
  const DRAWN: Record<Mark, () => string> = {
    whole: () => box(ink.whole, ink.joint, 2),
    cut: () => box('url(#h)', ink.joint, 2),
    hole: () => box('url(#o)', ink.wall, 3),
    start: () => halo(a, b, ink),
    movement: () => line(a, b, ink.movement, 6, '2 9', 'round'),
    door: () => line(a, b, ink.door, 9, `${n(size * 0.7)} ${n(size * 0.25)}`),
    hidden: () => line(a, b, ink.wall, 7) + line(a, b, ink.page, 3.5, `${n(size * 0.35)} ${n(size * 0.35)}`),
    none: () => '',
  }
  return DRAWN[mark]()
}

function line(a: Point, b: Point, colour: string, width: number, dash = '', cap = 'butt'): string {
  const dashes = dash ? ` stroke-dasharray="${dash}"` : ''
  return (
    `<line x1="${n(a[0])}" y1="${n(a[1])}" x2="${n(b[0])}" y2="${n(b[1])}" stroke="${colour}" ` +
    `stroke-width="${width}" stroke-linecap="${cap}"${dashes}/>`
  )
}

function text(
  words: string,
  x: number,
  y: number,
  size: number,
  colour: string,
  anchor: string,
  bold: boolean,
): string {
  return (
    `<text x="${n(x)}" y="${n(y)}" font-size="${n(size)}" fill="${colour}" text-anchor="${anchor}"` +
    `${bold ? ' font-weight="bold"' : ''}>${escaped(words)}</text>`
  )
}
