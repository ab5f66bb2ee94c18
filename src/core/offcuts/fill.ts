/** Where only one direction counts: tile after tile filled around the largest piece left, within the waste that a plan
 *  of so many tiles can still afford. After Korf's bin completion ("A new algorithm for optimal bin packing", AAAI 2002). */

/** What looking up a state costs, in steps. */
export const STATE_STEPS = 12

export type Search = {
  /** Kinds in each tile, or null when no plan was found. */
  readonly tiles: readonly (readonly number[])[] | null
  /** Nothing was left untried: without a plan, there is none with so few tiles. */
  readonly exhausted: boolean
}

export type Fill = {
  /** Grown sizes by kind, in descending order. */
  readonly sizes: readonly number[]
  readonly qty: readonly number[]
  readonly capacity: number
  readonly max: number
}

export function fillTiles({ sizes, qty, capacity, max }: Fill, target: number, mostSteps: number): Search {
  const left = [...qty]
  const tiles: number[][] = []
  /** What was left, and the fewest tiles used by then, when it came to nothing. */
  const failed = new Map<string, number>()
  let steps = 0
  const total = sizes.reduce((sum, s, i) => sum + s * qty[i]!, 0)
  const found = total <= target * capacity && next(target * capacity - total)
  return { tiles: found ? tiles : null, exhausted: steps <= mostSteps }

  /** Opens a tile for the largest piece left. */
  function next(waste: number): boolean {
    const kind = left.findIndex((n) => n > 0)
    if (kind < 0) return true
    if (tiles.length >= target) return false
    steps += STATE_STEPS
    const state = String.fromCharCode(...left)
    if (tiles.length >= (failed.get(state) ?? target)) return false
    const tile: number[] = [kind]
    left[kind]!--
    tiles.push(tile)
    if (fill(tile, kind, capacity - sizes[kind]!, waste)) return true
    tiles.pop()
    left[kind]!++
    failed.set(state, tiles.length)
    return false
  }

  function fill(tile: number[], from: number, room: number, waste: number): boolean {
    if (++steps > mostSteps) return false
    let full = true
    if (tile.length < max)
      for (let kind = from; kind < sizes.length; kind++) {
        if (!left[kind] || sizes[kind]! > room) continue
        full = false
        left[kind]!--
        tile.push(kind)
        if (fill(tile, kind, room - sizes[kind]!, waste)) return true
        tile.pop()
        left[kind]!++
        if (steps > mostSteps) return false
      }
    return full && room <= waste && next(waste - room)
  }
}
