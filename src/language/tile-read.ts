/** The tile out of the sizes of a message: its sides, its thickness, the small one of two. */
import type { Draft } from './figure.ts'
import type { HeardNote } from './heard.ts'
import type { Mark } from './lexicon.ts'
import { tileMm } from './side-mm.ts'
import type { Size } from './sizes.ts'
import { isTypicalTile } from './sold-sizes.ts'

export function readTile(
  sizes: readonly Size[],
  metric: boolean,
  mosaic: boolean,
  draft: Draft,
  notes: HeardNote[],
): void {
  const told = sizes.filter((s) => s.role === 'tile')
  const size = draft.pattern?.name === 'two-size' ? largestOf(told) : told[0]
  if (!size) return
  const [a, b, third] = size.item.parts
  const sides = [tileMm(a, size.item.parts, metric, mosaic), tileMm(b, size.item.parts, metric, mosaic)]
  const typical = isTypicalTile(a.n, b.n)
  if (sides[0].as !== 'said' && !(sides[0].as === 'in' && typical) && a.unit === null)
    notes.push({ key: 'tile-unit', said: `${a.token.text}x${b.token.text}`, unit: sides[0].as })
  const thicknessMm = third ? (third.si ?? (third.n <= 2 ? third.n * 25.4 : third.n)) : draft.tile?.thicknessMm
  draft.tile = {
    ...draft.tile,
    lengthMm: Math.max(sides[0].mm, sides[1].mm),
    widthMm: Math.min(sides[0].mm, sides[1].mm),
    ...(thicknessMm ? { thicknessMm } : {}),
  }
}

/** Of the two sizes of a pattern the large one is the tile. */
const largestOf = (told: readonly Size[]): Size | undefined =>
  told.toSorted((p, q) => q.item.parts[0].n * q.item.parts[1].n - p.item.parts[0].n * p.item.parts[1].n)[0]

/** "18x18 with 6x6 pinwheel": the small tile of two. */
export function readTwoSizes(sizes: readonly Size[], marks: readonly Mark[], metric: boolean, draft: Draft): void {
  const told = sizes.filter((s) => s.role === 'tile')
  const inset = marks.some((m) => m.concept === 'inset-word') && told.length === 2
  if (!inset && !marks.some((m) => m.concept === 'two-size-word')) return
  const large = largestOf(told)
  const small = told.length === 2 ? told.find((s) => s !== large) : undefined
  const mm = small && Math.min(...small.item.parts.slice(0, 2).map((q) => tileMm(q, small.item.parts, metric).mm))
  draft.pattern = { ...draft.pattern, name: 'two-size', ...(mm ? { smallMm: mm } : {}) }
}

/** A thickness or a kind without a size stays only as such: the size is filled from the talk or the job. */
export function dropEmptyTile(draft: Draft): void {
  if (draft.tile && draft.tile.lengthMm === 0 && Object.keys(draft.tile).length === 2) delete draft.tile
}
