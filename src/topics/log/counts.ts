/** Counts of a message by what stands beside them. */
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'
import type { Loose } from '../../language/singles.ts'
import { TILE_NOUNS } from './read-short.ts'

export { TILE_NOUNS }

/** A square foot. [m2] */
export const SQFT = 0.09290304

const isWhole = ({ q }: Loose): boolean => q.dimension === 'none' && Number.isInteger(q.n) && q.n > 0 && !q.negative

export const countOf = (heard: Heard, ...nouns: readonly Concept[]): number | null =>
  heard.loose.find((l) => isWhole(l) && l.nouns.some((n) => nouns.includes(n.mark.concept)))?.q.n ?? null

/** The only figure of a message, where it is of nothing else. */
export const bareCount = (heard: Heard): number | null =>
  heard.items.length !== 1
    ? null
    : (heard.loose.find((l) => isWhole(l) && l.nouns.every((n) => n.mark.concept === 'left-to-do'))?.q.n ?? null)
