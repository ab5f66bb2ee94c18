/** Cut lists as rooms and chance give them, the same at every run. Sizes of the trade in mm. */
import type { CutOrder, PieceWanted, Side, Turn } from '../../../src/core/offcuts/order.ts'

export function dice(seed: number): (from: number, to: number) => number {
  let s = seed * 2_654_435_761 + 1
  return (from, to) => {
    s = (s + 0x6d2b79f5) | 0
    let t = Math.imul(s ^ (s >>> 15), 1 | s)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return from + (((t ^ (t >>> 14)) >>> 0) % (to - from + 1))
  }
}

export const STOCK = [
  [1219, 203],
  [457, 457],
  [610, 305],
  [914, 152],
  [610, 610],
  [900, 150],
  [330, 330],
] as const

type Size = readonly [w: number, h: number]
const piece = (wMm: number, hMm: number, factory?: Side[]): PieceWanted =>
  factory ? { wMm, hMm, qty: 1, factory } : { wMm, hMm, qty: 1 }
const order = (stock: Size, pieces: PieceWanted[], turn: Turn = 'none', kerfMm = 3): CutOrder => ({
  stockWMm: stock[0],
  stockHMm: stock[1],
  kerfMm,
  pieces,
  turn,
  maxATile: null,
})

/** The two ends of each row, as an offset lattice leaves them, on walls a little out of square. */
export function rowEnds(seed: number, count = 40): CutOrder {
  const roll = dice(seed)
  const stock = STOCK[roll(0, STOCK.length - 1)]!
  const [w, h] = stock
  const first = roll(30, w - 1)
  const span = roll(3, 8) * (w + 3) + roll(0, w)
  const steps = roll(1, 4)
  const skew = roll(0, 3)
  const pieces: PieceWanted[] = []
  const wanted = roll(8, count)
  for (let row = 0; pieces.length + 2 <= wanted && row < count; row++) {
    const left = ((first + Math.round((row % steps) * (w / steps)) + row * skew) % w) + 1
    const right = ((span - left) % (w + 3)) + 1
    if (left < w) pieces.push(piece(left, h))
    if (right < w) pieces.push(piece(right, h))
  }
  if (pieces.length === 0) pieces.push(piece(first, h))
  return order(stock, pieces)
}

/** Lengths by chance from a range of the tile. */
export function chanceLengths(seed: number, low = 0.08, high = 0.98, count = 40): CutOrder {
  const roll = dice(seed)
  const stock = STOCK[roll(0, STOCK.length - 1)]!
  const n = roll(8, count)
  const pieces = Array.from({ length: n }, () =>
    piece(roll(Math.ceil(stock[0] * low), Math.floor(stock[0] * high)), stock[1]),
  )
  return order(stock, pieces, 'none', roll(0, 4))
}

/** A room's rim: row ends, the cut row along a wall, its corners, notches round pipes and cabinets. */
export function roomRim(seed: number, turn: Turn = 'none'): CutOrder {
  const roll = dice(seed)
  const stock = STOCK[roll(0, STOCK.length - 1)]!
  const [w, h] = stock
  const pieces: PieceWanted[] = []
  const top = roll(20, h - 1)
  const bottom = roll(0, 1) ? roll(20, h - 1) : h
  const [left, right] = [roll(20, w - 1), roll(20, w - 1)]
  const steps = roll(1, 3)
  const [rows, atTop, atBottom, odd] = [roll(3, 13), roll(0, 6), roll(0, 6), roll(0, 4)]
  for (let row = 0; row < rows; row++) {
    const shift = Math.round((row % steps) * (w / steps))
    pieces.push(piece(((left + shift) % (w - 1)) + 1, h), piece(((right + w - shift) % (w - 1)) + 1, h))
  }
  for (let i = 0; i < atTop; i++) pieces.push(piece(w, top))
  if (bottom < h) for (let i = 0; i < atBottom; i++) pieces.push(piece(w, bottom))
  pieces.push(piece(left, top), piece(right, top))
  for (let i = 0; i < odd; i++) pieces.push(piece(roll(40, w), roll(40, h)))
  return order(stock, pieces.slice(0, 40), turn)
}

/** Rectangles by chance from a range of the tile, both ways. */
export function chancePieces(seed: number, turn: Turn = 'none', low = 0.15, high = 0.95, count = 40): CutOrder {
  const roll = dice(seed)
  const stock = STOCK[roll(0, STOCK.length - 1)]!
  const size = (side: number) => roll(Math.ceil(side * low), Math.floor(side * high))
  const n = roll(6, count)
  return order(
    stock,
    Array.from({ length: n }, () => piece(size(stock[0]), size(stock[1]))),
    turn,
  )
}

const SIDES: readonly Side[] = ['left', 'right', 'bottom', 'top']

/** A room's rim with the sides that face neighbours. */
export function factoryRim(seed: number, turn: Turn): CutOrder {
  const plain = roomRim(seed, turn)
  const roll = dice(seed + 77)
  const pieces = plain.pieces.map((p) => {
    const cutX = p.wMm < plain.stockWMm ? (roll(0, 1) ? 'left' : 'right') : null
    const cutY = p.hMm < plain.stockHMm ? (roll(0, 1) ? 'bottom' : 'top') : null
    return { ...p, factory: SIDES.filter((s) => s !== cutX && s !== cutY) }
  })
  return { ...plain, pieces }
}

/** Tiles of the trade and a few of their metric likes, square and oblong, either way up. */
const TILES = [...STOCK, [305, 305], [600, 300], [600, 600], [203, 1219]] as const

export type Family = 'all sizes' | 'large pieces' | 'small to middling' | 'a few sizes'

/** Families of lists in both directions: sides as shares of the tile's, and how many sizes there are. */
export const FAMILIES: Record<Family, { readonly low: number; readonly high: number; readonly sizes?: number }> = {
  'all sizes': { low: 0.05, high: 0.95 },
  'large pieces': { low: 0.4, high: 0.98 },
  'small to middling': { low: 0.1, high: 0.7 },
  'a few sizes': { low: 0.1, high: 0.9, sizes: 8 },
}

/** Up to 40 pieces of a family, kerf 0, 2 or 3 mm. */
export function familyList(seed: number, family: Family, turn: Turn): CutOrder {
  const roll = dice(7 * seed + 1)
  const { low, high, sizes: mostSizes } = FAMILIES[family]
  const stock = TILES[roll(0, TILES.length - 1)]!
  const size = (side: number) => roll(Math.ceil(side * low), Math.floor(side * high))
  const count = roll(5, 40)
  const sizes = mostSizes ? roll(3, mostSizes) : count
  const most = Math.ceil((2 * count) / sizes)
  const pieces: PieceWanted[] = []
  for (let left = count; left > 0 && pieces.length < sizes; ) {
    const qty = sizes === count ? 1 : Math.min(left, roll(1, most))
    pieces.push({ wMm: size(stock[0]), hMm: size(stock[1]), qty })
    left -= qty
  }
  return order(stock, pieces, turn, [0, 2, 3][roll(0, 2)])
}
