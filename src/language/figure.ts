/** A single figure with what stands round it: the nouns beside it, and whether a "per" ties it to one. */
import type { Facts } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Quantity, Reader } from './measures.ts'
import type { Noun } from './nouns.ts'

/** The facts of a message while they are being read. */
export type Draft = { -readonly [K in keyof Facts]: Facts[K] }

export type Figure = {
  readonly reader: Reader
  readonly draft: Draft
  readonly nouns: readonly Noun[]
  readonly q: Quantity
  readonly metric: boolean
  readonly areas: number[]
}

/** The nearest of some nouns, on the side where this language puts them. */
export function noun(context: Figure, ...concepts: readonly Concept[]): Noun | undefined {
  const first = context.reader.lexicon.locale.nounFirst
  const score = (n: Noun): number => n.distance + (n.after === first ? 0.6 : 0)
  return context.nouns.filter((n) => concepts.includes(n.mark.concept)).toSorted((a, b) => score(a) - score(b))[0]
}

export const perBetween = (context: Figure, near: Noun): boolean => {
  const { reader, q } = context
  const [from, to] = near.after ? [q.last + 1, near.mark.first] : [near.mark.first + near.mark.count, q.first]
  for (let i = from; i < to; i++) {
    // "boxes of 8" ties; "a bag of grout left, 60 sf" does not.
    if (reader.is(i, 'of') && (near.after || i === q.first - 1)) return true
    if (reader.is(i, 'per', 'in-a', 'holds', 'each', 'is', 'cover') || reader.sign(i) === '/') return true
  }
  return false
}

/** Whether a meaning stands within a few tokens of the figure, in its clause. */
export function near(context: Figure, reach: number, ...concepts: readonly Concept[]): boolean {
  const { reader, q } = context
  for (let i = q.last + 1; i <= q.last + reach; i++) {
    if (/^[,;\n]$/.test(reader.sign(i)) || (reader.number(i) && !reader.number(i)?.spelled)) break
    if (reader.is(i, ...concepts)) return true
  }
  for (let i = q.first - 1; i >= q.first - reach; i--) {
    if (/^[,;\n]$/.test(reader.sign(i)) || (reader.number(i) && !reader.number(i)?.spelled)) break
    if (reader.is(i, ...concepts)) return true
  }
  return false
}
