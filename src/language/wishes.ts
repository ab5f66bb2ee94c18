/** What the crew wants of the layout: "hide cuts on the north wall", "full tiles at the door", "any off-cut anywhere". */
import type { WallSide } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Draft } from './figure.ts'
import type { Mark } from './lexicon.ts'
import type { Reader } from './measures.ts'

/** A door is taken to be in the bottom wall, where the drawing is read from. */
const SIDES: readonly [Concept, WallSide][] = [
  ['left-side', 'left'],
  ['right-side', 'right'],
  ['top-side', 'top'],
  ['bottom-side', 'bottom'],
  ['door', 'bottom'],
]
const REACH = 8

/** The walls named after a wish, up to the next wish or the end of its clause. */
function wallsAfter(from: number, reader: Reader): WallSide[] {
  const found: WallSide[] = []
  for (let i = from; i < Math.min(reader.tokens.length, from + REACH); i++) {
    if (/^[;\n.]$/.test(reader.sign(i)) || reader.is(i, 'hide', 'full-tiles')) break
    for (const [concept, side] of SIDES) if (reader.is(i, concept) && !found.includes(side)) found.push(side)
  }
  return found
}

export function readWishes(reader: Reader, marks: readonly Mark[], draft: Draft): void {
  for (const mark of marks) {
    const walls =
      mark.concept === 'hide' || mark.concept === 'full-tiles' ? wallsAfter(mark.first + mark.count, reader) : []
    if (walls.length === 0) continue
    if (mark.concept === 'hide') draft.hideAt = walls
    else draft.fullAt = walls
  }
  if (marks.some((m) => m.concept === 'any-offcut')) draft.reuse = 'any-offcut'
  if (marks.some((m) => m.concept === 'fresh-tile')) draft.reuse = 'fresh-tile'
}
