/** The layout as a drawing: tiles, cuts, walls with their lengths, lines to snap, movement joints. Worded when told. */
import { boxOf, type Floor, type Point, type Ring, ringArea } from '../core/floor/rings.ts'
import { wallsOf, wallsOn } from '../core/floor/walls.ts'
import type { MovementPlan } from '../core/layout/lines.ts'
import { tilesOf } from '../core/layout/pieces.ts'
import type { Facts, WallSide } from '../facts.ts'
import { count, type Phrase, room as roomLength, say, small } from '../phrase.ts'
import type { Drawing } from '../pictures/drawing.ts'
import type { Theme } from '../pictures/theme.ts'
import { plainPhrase, roomPhrase } from './floors.ts'
import { type LaidFloor, type LaidRoom, tiledFloor } from './plan.ts'

type Box = ReturnType<typeof boxOf>
type Word = (phrase: Phrase) => string
/** A drawing without its words yet. */
export type Sketch = {
  readonly name: string
  readonly alt: Phrase
  readonly theme?: Theme
  readonly draw: (word: Word) => Drawing
}

/** Walls shorter than this carry no dimension. [mm] */
const LEAST_DIMENSION_MM = 250

const inBox = (ring: Ring, box: ReturnType<typeof boxOf>): boolean =>
  ring.every(([x, y]) => x >= box.minX - 1 && x <= box.maxX + 1 && y >= box.minY - 1 && y <= box.maxY + 1)

/** A picture for every part of every room. */
export function drawingsOf(laid: LaidFloor, movement: readonly (MovementPlan | null)[], facts: Facts): Sketch[] {
  return laid.rooms.flatMap((room, k) => {
    const outers = room.floor.rings.filter((ring) => ringArea(ring) > 0)
    return outers.map((outer, part): Sketch => {
      const number = laid.rooms.length + outers.length > 2 ? `-${k + 1}${outers.length > 1 ? `-${part + 1}` : ''}` : ''
      const { layout } = room.start
      const alt = say('picture.alt', {
        room: roomPhrase(room.room),
        cells: count(layout.cells),
        cut: count(layout.cut),
      })
      return {
        name: `layout${number}.svg`,
        alt,
        draw: (text) => drawingOf(room, titleOf(laid, k), outer, movement[k] ?? null, facts, text),
      }
    })
  })
}

/** A room by its name or size; a wall of a run by its number too. */
function titleOf({ rooms, run }: LaidFloor, k: number): Phrase {
  const room = plainPhrase(rooms[k].room)
  return run ? say('picture.wall', { n: count(k + 1), room }) : say('picture.title', { room })
}

function drawingOf(
  room: LaidRoom,
  title: Phrase,
  outer: Ring,
  movement: MovementPlan | null,
  facts: Facts,
  text: Word,
): Drawing {
  const box = boxOf([outer])
  const tiles = tilesOf(tiledFloor(room), room.start.spec)
  const drawn = tiles.ok
    ? [
        ...tiles.value.whole.map((t) => ({ ring: t.outlineMm, cut: false })),
        ...tiles.value.cuts.map((c) => ({ ring: c.outlineMm[0], cut: true })),
      ].filter((t) => inBox(t.ring, box))
    : []
  const holes = room.floor.rings.filter((ring) => ringArea(ring) < 0 && inBox(ring, box)).map((ring) => ({ ring }))
  const hidden = facts.hideAt ?? []
  const marks = new Set(holes.length > 0 ? ['hole'] : [])
  if (hidden.length > 0) marks.add('hidden')
  if (facts.doorAt) marks.add('door')
  const lines = (movement?.joints ?? []).flatMap((j) => j.stretches.map(([from, to]) => ({ from, to })))
  if (lines.length > 0) marks.add('movement')
  return {
    title: text(title),
    floor: outer,
    holes,
    tiles: drawn,
    walls: wallsDrawn(room.floor, outer, hidden, facts.doorAt ?? null, text),
    starts: startsDrawn(room, box, text),
    movement: lines,
    scale: scaleOf(box.maxX - box.minX, text),
    legend: (['whole', 'cut', 'start', 'movement', 'door', 'hidden', 'hole'] as const)
      .filter((mark) => mark === 'whole' || mark === 'cut' || mark === 'start' || marks.has(mark))
      .map((mark) => ({ mark, text: text(say(`picture.${mark}`)) })),
  }
}

function kindOf(side: WallSide | null, hidden: readonly WallSide[], isDoor: boolean): Drawing['walls'][number]['kind'] {
  if (isDoor) return 'door'
  return side !== null && hidden.includes(side) ? 'hidden' : 'plain'
}

function wallsDrawn(
  floor: Floor,
  outer: Ring,
  hidden: readonly WallSide[],
  door: WallSide | null,
  text: Word,
): Drawing['walls'] {
  return wallsOf(floor)
    .filter((wall) => !wall.ofHole && floor.rings[wall.ring] === outer)
    .map(({ from, to, lengthMm, side, index }) => ({
      from,
      to,
      kind: kindOf(side, hidden, side !== null && side === door && wallsOn(floor, side)[0]?.index === index),
      ...(lengthMm >= LEAST_DIMENSION_MM
        ? { label: text(say('picture.length', { length: roomLength(lengthMm) })) }
        : {}),
    }))
}

/** The chalk lines, each with its distance from the wall it is measured from. */
function startsDrawn({ start }: LaidRoom, box: ReturnType<typeof boxOf>, text: Word): Drawing['starts'] {
  const plain = start.firstLines.map((line) => {
    const label = text(say('picture.distance', { mm: small(line.fromLowMm) }))
    if (line.along === 'x') {
      const x = box.minX + line.fromLowMm
      const y = box.minY + (box.maxY - box.minY) * 0.3
      return {
        from: [x, box.minY] as Point,
        to: [x, box.maxY] as Point,
        measured: { from: [box.minX, y] as Point, to: [x, y] as Point, label },
      }
    }
    const y = box.minY + line.fromLowMm
    const x = box.minX + (box.maxX - box.minX) * 0.3
    return {
      from: [box.minX, y] as Point,
      to: [box.maxX, y] as Point,
      measured: { from: [x, box.minY] as Point, to: [x, y] as Point, label },
    }
  })
  return [...plain, ...throughCorner(start, box, text)]
}

/** Where single lines do not tell a start: lines through a tile's corner near the middle, at the pattern's angle. */
function throughCorner({ firstLines, middleCorner }: LaidRoom['start'], box: Box, text: Word): Drawing['starts'] {
  if (middleCorner === null || firstLines.length >= 2) return []
  const { fromLeftMm, fromBottomMm, angleDeg } = middleCorner
  const corner: Point = [box.minX + fromLeftMm, box.minY + fromBottomMm]
  const label = (mm: number): string => text(say('picture.distance', { mm: small(mm) }))
  const across = { from: [box.minX, corner[1]] as Point, to: corner, label: label(fromLeftMm) }
  const up = { from: [corner[0], box.minY] as Point, to: corner, label: label(fromBottomMm) }
  const [only] = firstLines
  if (only) {
    const [degrees, measured] = only.along === 'y' ? [90, across] : [0, up]
    return [{ ...chord(corner, degrees, box), measured }]
  }
  return [
    { ...chord(corner, angleDeg, box), measured: across },
    { ...chord(corner, angleDeg + 90, box), measured: up },
  ]
}

/** The line through a point at an angle, from one side of a box to the other. */
function chord([x, y]: Point, degrees: number, box: Box): { from: Point; to: Point } {
  const turn = (degrees * Math.PI) / 180
  const [dx, dy] = [Math.cos(turn), Math.sin(turn)]
  const reach = (d: number, low: number, high: number): readonly [number, number] =>
    Math.abs(d) < 1e-9 ? [-Infinity, Infinity] : d > 0 ? [low / d, high / d] : [high / d, low / d]
  const [a, b] = reach(dx, box.minX - x, box.maxX - x)
  const [c, e] = reach(dy, box.minY - y, box.maxY - y)
  const [from, to] = [Math.max(a, c), Math.min(b, e)]
  return { from: [x + from * dx, y + from * dy], to: [x + to * dx, y + to * dy] }
}

const METRIC_BARS_MM = [200, 500, 1000, 2000, 5000, 10_000, 20_000, 50_000]

/** A bar about a quarter of the floor, of a round length. */
function scaleOf(widthMm: number, text: Word): Drawing['scale'] {
  const bars = [...METRIC_BARS_MM, ...[1, 2, 3, 5, 10, 20, 50, 100].map((ft) => ft * 304.8)]
  const words = (mm: number): string => text(say('picture.length', { length: roomLength(mm) }))
  // Round in the asker's units: the shortest words of those near a quarter.
  const near = bars.filter((mm) => mm <= widthMm / 2.5 && mm >= widthMm / 10)
  const mm = (near.length > 0 ? near : [bars[0]]).toSorted(
    (a, b) => words(a).length - words(b).length || Math.abs(a - widthMm / 4) - Math.abs(b - widthMm / 4),
  )[0]
  return { mm, label: words(mm) }
}
