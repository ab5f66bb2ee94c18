/** Sizes beside a niche or a ledger, where the pair that looks like a room is the tile or the niche. */
import type { Mark } from './lexicon.ts'
import type { Size } from './sizes.ts'
import { isTypicalTile } from './sold-sizes.ts'

/** "niche 2 tiles wide in 3x6 on a wall", "ledger for 4x16": beside these the one bare pair that tile is sold in is the tile. */
export function withNicheTile(sizes: readonly Size[], marks: readonly Mark[]): Size[] {
  const rooms = sizes.filter((s) => s.role === 'room')
  const [a, b] = rooms[0]?.item.parts ?? []
  const isTile =
    marks.some((m) => m.concept === 'niche' || m.concept === 'ledger' || m.concept === 'first-course') &&
    !sizes.some((s) => s.role === 'tile') &&
    rooms.length === 1 &&
    a?.unit === null &&
    b?.unit === null &&
    isTypicalTile(a.n, b.n)
  if (isTile) return sizes.map((s) => (s.role === 'room' ? { ...s, role: 'tile' as const } : s))
  return withNicheSize(sizes, rooms, marks)
}

/** "niche in the back wall 60x96, about 16 x 28": of two sizes the smaller is the niche's. */
function withNicheSize(sizes: readonly Size[], rooms: readonly Size[], marks: readonly Mark[]): Size[] {
  const opens = marks.some((m) => m.concept === 'niche') && !sizes.some((s) => s.role === 'opening')
  if (!opens || rooms.length !== 2) return [...sizes]
  const product = ({ item: { parts } }: Size): number => (parts[0].si ?? parts[0].n) * (parts[1].si ?? parts[1].n)
  const [small, large] = rooms.toSorted((p, q) => product(p) - product(q))
  const wall = { ...large, noun: rooms.find((r) => r.noun?.mark.concept === 'wall')?.noun ?? large.noun }
  return sizes.map((s) => (s === small ? { ...s, role: 'opening' as const } : s === large ? wall : s))
}
