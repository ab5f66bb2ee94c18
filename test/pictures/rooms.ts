/** Floors to draw: a bakery's rooms, laid square by hand here so that the pictures need no layout. */
import type { Drawing, DrawnTile, DrawnWall, Point, Ring } from '../../src/pictures/drawing.ts'

const FOOT = 304.8

/** Tiles of a stacked lattice in a rectangle, those at its rim cut. */
function lattice(w: number, h: number, tw: number, th: number, x0: number, y0: number, joint = 5): DrawnTile[] {
  const tiles: DrawnTile[] = []
  for (let y = y0 - th - joint; y < h; y += th + joint)
    for (let x = x0 - tw - joint; x < w; x += tw + joint) {
      const [l, b, r, t] = [Math.max(0, x), Math.max(0, y), Math.min(w, x + tw), Math.min(h, y + th)]
      if (r - l < 1 || t - b < 1) continue
      const cut = r - l < tw - 1 || t - b < th - 1
      tiles.push({
        ring: [
          [l, b],
          [r, b],
          [r, t],
          [l, t],
        ],
        cut,
      })
    }
  return tiles
}

const ring = (...corners: readonly [number, number][]): Ring => corners.map(([x, y]): Point => [x * FOOT, y * FOOT])

function walls(floor: Ring, labels: readonly string[], kinds: Record<number, DrawnWall['kind']> = {}): DrawnWall[] {
  return floor.map((from, i) => ({
    from,
    to: floor[(i + 1) % floor.length]!,
    kind: kinds[i] ?? 'plain',
    label: labels[i]!,
  }))
}

const shopFloor = ring([0, 0], [14, 0], [14, 11], [0, 11])
export const shop: Drawing = {
  title: 'Shop floor · 18x18, 3/16 in joint',
  floor: shopFloor,
  holes: [{ ring: ring([8, 7], [10, 7], [10, 8.5], [8, 8.5]), label: 'column' }],
  tiles: lattice(14 * FOOT, 11 * FOOT, 457, 457, 310, 240),
  walls: walls(shopFloor, ['14 ft', '11 ft', '14 ft', '11 ft'], { 0: 'door', 2: 'hidden' }),
  starts: [
    {
      from: [310, 0],
      to: [310, 11 * FOOT],
      measured: { from: [0, 1400], to: [310, 1400], label: '12 3/16 in' },
    },
    { from: [0, 240], to: [14 * FOOT, 240], measured: { from: [2400, 0], to: [2400, 240], label: '9 7/16 in' } },
  ],
  movement: [{ from: [310 + 462 * 4 - 2.5, 0], to: [310 + 462 * 4 - 2.5, 11 * FOOT] }],
  scale: { mm: 4 * FOOT, label: '4 ft' },
  legend: [
    { mark: 'whole', text: '54 whole tiles' },
    { mark: 'cut', text: '32 cut tiles, the smallest 9 1/4 in' },
    { mark: 'start', text: 'snap here: 12 3/16 in from the left wall, 9 7/16 in from the front wall' },
    { mark: 'movement', text: 'movement joint' },
    { mark: 'door', text: 'door: full tiles' },
    { mark: 'hidden', text: 'behind the oven: cuts' },
  ],
}

const hall = ring([0, 0], [4, 0], [4, 19], [0, 19])
export const mudroom: Drawing = {
  title: 'Mudroom',
  floor: hall,
  holes: [],
  tiles: lattice(4 * FOOT, 19 * FOOT, 203, 1219, 100, 500, 3),
  walls: walls(hall, ['4 ft', '19 ft', '4 ft', '19 ft'], { 0: 'door' }),
  starts: [
    { from: [100, 0], to: [100, 19 * FOOT], measured: { from: [0, 2600], to: [100, 2600], label: '3 15/16 in' } },
  ],
  movement: [],
  scale: { mm: 2 * FOOT, label: '2 ft' },
  legend: [
    { mark: 'whole', text: '12 losas enteras' },
    { mark: 'cut', text: '18 losas cortadas' },
    { mark: 'start', text: 'línea de arranque: 3 15/16 in de la pared izquierda' },
    { mark: 'door', text: 'puerta' },
  ],
}

const lShape = ring([0, 0], [12, 0], [12, 8], [5, 8], [5, 14], [0, 14])
export const washUp: Drawing = {
  title: 'Wash-up',
  floor: lShape,
  holes: [],
  tiles: [
    ...lattice(12 * FOOT, 8 * FOOT, 457, 457, 200, 200),
    ...lattice(5 * FOOT, 14 * FOOT, 457, 457, 200, 200)
      .map((t) => ({ ...t, ring: t.ring.map(([x, y]): Point => [x, Math.max(y, 8 * FOOT + 3)]) }))
      .filter((t) => t.ring[2]![1] - t.ring[0]![1] > 1),
  ],
  walls: walls(lShape, ['12 ft', '8 ft', '7 ft', '6 ft', '5 ft', '14 ft']),
  starts: [],
  movement: [],
  scale: { mm: 4 * FOOT, label: '4 ft' },
  legend: [
    { mark: 'whole', text: 'whole' },
    { mark: 'cut', text: 'cut' },
  ],
}

/** 300 tiles, for the clock. */
const kitchen = ring([0, 0], [24, 0], [24, 26], [0, 26])
export const bakehouse: Drawing = {
  ...shop,
  title: 'Bakehouse',
  floor: kitchen,
  holes: [],
  tiles: lattice(24 * FOOT, 26 * FOOT, 457, 457, 200, 200),
  walls: walls(kitchen, ['24 ft', '26 ft', '24 ft', '26 ft']),
}
