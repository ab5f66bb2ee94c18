/** How a picture is divided: title, floor with its margin, legend. Its text is at least 3 % of its height, so the height
 *  is at most some 32 lines of text; of all text sizes the one is taken that leaves the floor largest. */
import { type Drawing, extentOf, type Mark } from './drawing.ts'
import { textWidth, wrapped } from './lettering.ts'

/** The picture's own width; a phone shows it at about half. */
export const WIDTH = 800
const TEXT_SIZES = Array.from({ length: 33 }, (_, i) => 28 + i / 2)
/** A little over the promised 3 %, so that rounding keeps it. */
const TEXT_SHARE = 0.0305
/** How high the floor may be drawn, in widths of the picture. */
const TALLEST = 1.15
/** In text sizes. */
const TITLE = 1.9
const MARGIN = 1.65
const LINE = 1.42
const SWATCH = 1.8
const GAP = 0.5
const EDGE = 0.7
const FOOT = 0.5
const MOST_LINES = 9

/** A mark or the scale bar with words behind it, or a further line of words. `x` and `y` from the legend's corner, in px. */
export type LegendItem = {
  readonly mark: Mark | 'scale' | null
  readonly words: string
  readonly x: number
  readonly y: number
  readonly swatch: number
}

export type Frame = {
  readonly size: number
  readonly height: number
  readonly margin: number
  readonly top: number
  readonly left: number
  /** Pixels a mm. */
  readonly scale: number
  readonly floorH: number
  readonly legendTop: number
  readonly legend: readonly LegendItem[]
}

export function frameOf(drawing: Drawing): Frame {
  const frames = TEXT_SIZES.map((size) => framed(drawing, size))
  return frames.reduce((best, frame) => (frame.scale > best.scale * 1.001 ? frame : best))
}

function framed(drawing: Drawing, size: number): Frame {
  const box = extentOf(drawing)
  const margin = size * MARGIN
  const across = (WIDTH - 2 * margin) / box.w
  const { items, lines } = legendOf(drawing, size, Math.min(across, (WIDTH * TALLEST) / box.h))
  const around = size * (TITLE + 2 * MARGIN + FOOT + lines * LINE)
  const roomH = size / TEXT_SHARE - around
  const scale = Math.min(across, (WIDTH * TALLEST) / box.h, roomH / box.h)
  const floorH = box.h * scale
  const top = size * TITLE + margin
  return {
    size,
    height: Math.floor(around + floorH),
    margin,
    top,
    left: (WIDTH - box.w * scale) / 2,
    scale,
    floorH,
    legendTop: top + floorH + margin,
    legend: items.map((item) => (item.mark === 'scale' ? { ...item, swatch: barLength(drawing, scale) } : item)),
  }
}

const barLength = ({ scale: { mm } }: Drawing, scale: number) => Math.min(mm * scale, WIDTH / 2)

/** Items one after the other, as many to a line as fit. */
function legendOf(drawing: Drawing, size: number, scale: number): { items: LegendItem[]; lines: number } {
  const items: LegendItem[] = []
  const right = WIDTH - size * EDGE
  let x = size * EDGE
  let line = 0
  const wanted = [
    { mark: 'scale' as const, text: drawing.scale.label, swatch: barLength(drawing, scale) },
    ...drawing.legend.map((l) => ({ ...l, swatch: l.mark === 'none' ? 0 : SWATCH * size })),
  ]
  for (const { mark, text, swatch } of wanted) {
    const lead = swatch ? swatch + GAP * size : 0
    const start = size * EDGE
    if (x > start && x + lead + textWidth(text, size) > right) {
      line++
      x = start
    }
    const rows = wrapped(text, size, right - x - lead)
    rows.forEach((words, i) => {
      if (i > 0) line++
      if (line < MOST_LINES)
        items.push({ mark: i ? null : mark, words, x: i ? x + lead : x, y: line * LINE * size, swatch: i ? 0 : swatch })
    })
    x = rows.length > 1 ? right : x + lead + textWidth(text, size) + size
  }
  return { items, lines: Math.min(MOST_LINES, line + 1) }
}

export const wordsAt = ({ x, swatch }: LegendItem, size: number) => x + (swatch ? swatch + GAP * size : 0)
