/** Tiles chosen one by one from the patterns, each for the largest piece left. What a pattern lacks to a worth of 1 is
 *  lost for good, and a plan of so many tiles can lose only so much. */
import { type Search, STATE_STEPS } from './fill.ts'
import type { Pattern } from './patterns.ts'
import { worth } from './prices.ts'

const TINY = 1e-6

type Task = {
  readonly demand: readonly number[]
  readonly patterns: readonly Pattern[]
  readonly price: ArrayLike<number>
}

type Ranked = Pattern & { readonly worth: number }

/** Which patterns hold a kind, those worth most first. */
function byKind({ demand, patterns, price }: Task, least: number): Ranked[][] {
  const lists: Ranked[][] = demand.map(() => [])
  const ranked = patterns.map((pattern) => ({ ...pattern, worth: worth(pattern, price) }))
  ranked.sort((a, b) => b.worth - a.worth || b.area - a.area)
  for (const pattern of ranked) if (pattern.worth >= least) for (const kind of pattern.kinds) lists[kind]!.push(pattern)
  return lists
}

/** A plan of at most `target` tiles, if the patterns hold one. */
export function cover(task: Task, target: number, mostSteps: number): Search {
  const { demand, price } = task
  const total = demand.reduce((sum, n, i) => sum + n * price[i]!, 0)
  const lists = byKind(task, 1 - (target - total) - TINY)
  // The kind with the fewest ways to be cut goes first.
  const sequence = demand.map((_, i) => i).sort((a, b) => lists[a]!.length - lists[b]!.length || a - b)
  const left = [...demand]
  const tiles: number[][] = []
  const failed = new Map<string, number>()
  let steps = 0
  const found = next(target - total)
  return { tiles: found ? tiles : null, exhausted: steps <= mostSteps }

  function next(spare: number): boolean {
    const kind = sequence.find((k) => left[k]! > 0)
    if (kind === undefined) return true
    if (tiles.length >= target || spare < -TINY) return false
    steps += STATE_STEPS
    const state = String.fromCharCode(...left)
    if ((failed.get(state) ?? -1) >= target - tiles.length) return false
    for (const { pattern, lost } of choices(kind, spare)) {
      const taken = take(pattern, left)
      tiles.push(taken)
      if (next(spare - lost)) return true
      tiles.pop()
      for (const k of taken) left[k]!++
      if (steps > mostSteps) return false
    }
    failed.set(state, target - tiles.length)
    return false
  }

  function choices(kind: number, spare: number): { pattern: Pattern; lost: number }[] {
    const out: { pattern: Pattern; lost: number; count: number }[] = []
    for (const pattern of lists[kind]!) {
      if (1 - pattern.worth > spare + TINY) break
      if (++steps > mostSteps) break
      let got = 0
      let count = 0
      for (let k = 0; k < pattern.kinds.length; k++) {
        const n = Math.min(pattern.counts[k]!, left[pattern.kinds[k]!]!)
        got += n * price[pattern.kinds[k]!]!
        count += n
      }
      if (1 - got <= spare + TINY) out.push({ pattern, lost: 1 - got, count })
    }
    return out.sort((a, b) => a.lost - b.lost || b.count - a.count)
  }
}

/** The pieces of a pattern that are still wanted, taken off what is left. */
function take({ kinds, counts }: Pattern, left: number[]): number[] {
  const taken: number[] = []
  for (let k = 0; k < kinds.length; k++)
    for (let n = 0; n < counts[k]! && left[kinds[k]!]! > 0; n++) {
      taken.push(kinds[k]!)
      left[kinds[k]!]!--
    }
  return taken
}

/** A plan without looking back: for the largest piece left, the pattern that is worth most among what is still wanted. */
export function dive(task: Task): number[][] {
  const lists = byKind(task, 0)
  const left = [...task.demand]
  const tiles: number[][] = []
  for (let kind = left.findIndex((n) => n > 0); kind >= 0; kind = left.findIndex((n) => n > 0)) {
    let best: Pattern | null = null
    let most = -1
    for (const pattern of lists[kind]!) {
      let got = 0
      for (let k = 0; k < pattern.kinds.length; k++)
        got += Math.min(pattern.counts[k]!, left[pattern.kinds[k]!]!) * (task.price[pattern.kinds[k]!]! + 1e-9)
      if (got > most) {
        most = got
        best = pattern
      }
    }
    tiles.push(take(best!, left))
  }
  return tiles
}
