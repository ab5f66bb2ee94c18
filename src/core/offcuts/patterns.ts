/** Every way to fill one tile where only one direction counts: kinds that fit together and take no further piece of a
 *  later kind. */
import type { Shop } from './shop.ts'

/** Kinds in ascending order and how many of each. */
export type Pattern = { readonly kinds: readonly number[]; readonly counts: readonly number[]; readonly area: number }

export type Patterns = {
  readonly list: readonly Pattern[]
  /** False where the search stopped early: then the list is good for finding plans, not for proving them. */
  readonly complete: boolean
}

type Limits = { readonly patterns: number; readonly work: number }

export function asPattern(shop: Shop, sorted: readonly number[]): Pattern {
  const kinds: number[] = []
  const counts: number[] = []
  let area = 0
  for (const kind of sorted) {
    area += shop.kinds[kind]!.area
    if (kinds.at(-1) === kind) counts[counts.length - 1]!++
    else {
      kinds.push(kind)
      counts.push(1)
    }
  }
  return { kinds, counts, area }
}

/** By sums of sizes alone. */
export function patternsOneWay(shop: Shop, sizes: readonly number[], capacity: number, limits: Limits): Patterns {
  const list: Pattern[] = []
  const held: number[] = []
  const left = shop.kinds.map((k) => k.qty)
  let steps = 0
  let complete = true
  fill(0, capacity)
  return { list, complete }

  function fill(from: number, room: number): void {
    if (!complete) return
    let leaf = true
    if (held.length < shop.max)
      for (let kind = from; kind < sizes.length; kind++) {
        if (++steps > limits.work || list.length >= limits.patterns) complete = false
        if (!left[kind] || sizes[kind]! > room) continue
        leaf = false
        left[kind]!--
        held.push(kind)
        fill(kind, room - sizes[kind]!)
        held.pop()
        left[kind]!++
      }
    if (leaf) list.push(asPattern(shop, held))
  }
}
