/** A message that tells a tile for each of several rooms, parted into stretches of one tile and its rooms. */
import type { Mark } from './lexicon.ts'
import type { Reader } from './measures.ts'
import type { Size } from './sizes.ts'

/** Tokens of one stretch, both ends in. */
export type Stretch = readonly [first: number, last: number]

const parts = (reader: Reader, i: number): boolean => /^[,;\n.]$/.test(reader.sign(i)) || reader.is(i, 'and', 'plus')

/** The token at which the next stretch begins: behind the last comma or "and" before it, else where its name or figure begins. */
function beginning(reader: Reader, from: number, start: number): number {
  for (let i = start - 1; i > from; i--) if (parts(reader, i)) return i + 1
  return start
}

const nameBefore = (size: Size, from: number): number => {
  const first = size.noun?.mark.first ?? size.item.first
  return first > from && first < size.item.first ? first : size.item.first
}

/** Tiles told for rooms that have been told before: "shop in 18x18, mudroom in 8x48". */
function byName(tiles: readonly Size[], reader: Reader, marks: readonly Mark[]): Stretch[] | null {
  const starts = [0]
  for (let k = 1; k < tiles.length; k++) {
    const from = tiles[k - 1].item.last
    const start = beginning(reader, from, tiles[k].item.first)
    if (start === tiles[k].item.first && !parts(reader, start - 1)) return null
    starts.push(start)
  }
  const found = ended(starts, reader)
  const isNamed = ([a, b]: Stretch) => marks.some((m) => m.concept === 'house-part' && m.first >= a && m.first <= b)
  return found.every(isNamed) ? found : null
}

const ended = (starts: readonly number[], reader: Reader): Stretch[] =>
  starts.map((start, k) => [start, (starts[k + 1] ?? reader.tokens.length) - 1])

/** The stretches of a message with two tiles or more, each for rooms of its own; null for any other message. */
export function stretchesByTile(sizes: readonly Size[], reader: Reader, marks: readonly Mark[]): Stretch[] | null {
  const told = sizes.filter((size) => size.role === 'room' || size.role === 'tile')
  const tiles = told.filter((size) => size.role === 'tile')
  if (tiles.length < 2) return null
  if (tiles.length === told.length) return byName(tiles, reader, marks)
  const opens = told[0].role
  const starts = [0]
  let [tilesHere, roomsHere] = [0, 0]
  const isWhole = () => tilesHere === 1 && roomsHere > 0
  for (let k = 0; k < told.length; k++) {
    if (k > 0 && told[k].role === opens && told[k - 1].role !== opens) {
      if (!isWhole()) return null
      const from = told[k - 1].item.last
      starts.push(beginning(reader, from, nameBefore(told[k], from)))
      tilesHere = 0
      roomsHere = 0
    }
    if (told[k].role === 'tile') tilesHere++
    else roomsHere++
  }
  return isWhole() && starts.length > 1 ? ended(starts, reader) : null
}
