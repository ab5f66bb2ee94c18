/** Places for tiles on the rooms of the facts. A rectangle has a closed form for each axis. */
import type { Pattern, Room, Tile } from '../facts.ts'

export type Places = {
  readonly cells: number
  readonly whole: number
  readonly cut: number
  /** The least width of a cut piece [mm]; null where nothing is cut. */
  readonly smallestCutMm: number | null
  readonly jointLengthM: number
}

type Axis = { readonly places: number; readonly whole: number; readonly cutMm: number | null }

/** One axis of a rectangle, cuts balanced at both ends and at least half a tile where there is room.
 *  Source of the half-tile rule: NAVEDTRA 14044, Builder 3 & 2 vol. 2, p. 7-23: cut = (rest + one tile) / 2. */
function axis(spanMm: number, tileMm: number, jointMm: number): Axis {
  const module = tileMm + jointMm
  const full = Math.floor((spanMm + jointMm + 1e-6) / module)
  const restMm = spanMm + jointMm - full * module - jointMm
  if (restMm < 1) return { places: Math.max(1, full), whole: full, cutMm: full === 0 ? spanMm : null }
  if (full === 0) return { places: 1, whole: 0, cutMm: spanMm }
  return { places: full + 1, whole: full - 1, cutMm: (restMm + tileMm) / 2 }
}

export function rectanglePlaces(lengthMm: number, widthMm: number, tile: Tile, jointMm: number, gapMm: number): Places {
  const innerLength = Math.max(1, lengthMm - 2 * gapMm)
  const innerWidth = Math.max(1, widthMm - 2 * gapMm)
  const along = axis(innerLength, tile.lengthMm, jointMm)
  const across = axis(innerWidth, tile.widthMm, jointMm)
  const cells = along.places * across.places
  const whole = along.whole * across.whole
  const cuts = [along.cutMm, across.cutMm].filter((c): c is number => c !== null)
  return {
    cells,
    whole,
    cut: cells - whole,
    smallestCutMm: cuts.length > 0 ? Math.min(...cuts) : null,
    jointLengthM: ((along.places - 1) * innerWidth + (across.places - 1) * innerLength) / 1000,
  }
}

/** Places of all rooms, or null where one of them is no plain rectangle. */
export function roomsPlaces(
  rooms: readonly Room[],
  tile: Tile,
  jointMm: number,
  gapMm: number,
  pattern: Pattern | undefined,
): Places | null {
  if (pattern && !['stacked', 'offset'].includes(pattern.name)) return null
  let sum: Places | null = null
  for (const room of rooms) {
    if (room.cornersMm || room.pieces.some((p) => p.sign === -1)) return null
    for (const piece of room.pieces) {
      const one = rectanglePlaces(piece.lengthMm, piece.widthMm, tile, jointMm, gapMm)
      sum = addPlaces(sum, one, room.count)
    }
  }
  return sum
}

function addPlaces(sum: Places | null, one: Places, times: number): Places {
  const smallest = [sum?.smallestCutMm, one.smallestCutMm].filter((c): c is number => typeof c === 'number')
  return {
    cells: (sum?.cells ?? 0) + one.cells * times,
    whole: (sum?.whole ?? 0) + one.whole * times,
    cut: (sum?.cut ?? 0) + one.cut * times,
    smallestCutMm: smallest.length > 0 ? Math.min(...smallest) : null,
    jointLengthM: (sum?.jointLengthM ?? 0) + one.jointLengthM * times,
  }
}
