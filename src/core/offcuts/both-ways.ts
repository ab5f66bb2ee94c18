/** Pieces that lie beside and above each other: a plan reworked until it meets the bound, a bound raised by prices until
 *  it meets the plan, and last a search tile by tile, which can prove what prices cannot. */
import { Columns } from './columns.ts'
import { Fills } from './fills.ts'
import { type Groups, type Lying, layGroup } from './groups.ts'
import { Rework } from './rework.ts'
import { seek } from './seek.ts'

/** Steps of each part, turn by turn: most lists are done after the first. Together under 10 ms for 40 pieces. The search
 *  tile by tile has its turn only where prices raise the bound no further. */
const TURNS = [
  { rework: 12_000, prices: 5_000, seek: 8_000 },
  { rework: 46_000, prices: 74_000, seek: 30_000 },
] as const
/** Steps of the pick from the columns, and of reworking at last. */
const LAST = { pick: 10_000, rework: 12_000 } as const

export type Found = { readonly tiles: readonly Lying[][]; readonly bound: number }

/** A better plan, a better bound, or both.
 *  @param measures shares of a tile by kind that add up to no more than 1 in any tile, the strongest first */
export function bothWays(groups: Groups, measures: readonly Float64Array[], start: Found): Found {
  return new BothWays(groups, measures, start).run()
}

class BothWays {
  readonly groups: Groups
  readonly fills: Fills
  readonly columns: Columns
  readonly rework: Rework
  tiles: readonly Lying[][]

  constructor(groups: Groups, measures: readonly Float64Array[], start: Found) {
    this.groups = groups
    this.fills = new Fills(groups, measures)
    this.columns = new Columns(this.fills, measures[0]!, start.bound)
    this.columns.add(start.tiles.map((tile) => tile.map((l) => l.kind).sort((a, b) => a - b)))
    this.rework = new Rework(groups.shop, start.bound, start.tiles.length)
    this.tiles = start.tiles
  }

  get open(): boolean {
    return this.columns.bound < this.tiles.length
  }

  run(): Found {
    const { columns } = this
    for (const { rework, prices, seek } of TURNS) {
      if (this.open) this.#rework(rework)
      if (this.open && !columns.spent) {
        columns.add(this.rework.newFills())
        columns.run(this.tiles.length, prices)
      }
      if (this.open && columns.spent) this.#offer(columns.pick(columns.bound, LAST.pick))
      if (this.open && columns.spent) this.#seek(seek)
    }
    if (this.open) this.#rework(LAST.rework)
    return { tiles: this.tiles, bound: columns.bound }
  }

  #offer(plan: readonly (readonly number[])[] | null): void {
    if (plan && plan.length < this.tiles.length) this.tiles = plan.map((kinds) => layGroup(this.groups, kinds))
  }

  /** First for as many tiles as the bound, then for more as long as that is a better plan. */
  #rework(steps: number): void {
    const { rework } = this
    while (!rework.run(steps) || rework.target < this.columns.bound) {
      if (rework.target + 1 >= this.tiles.length) return
      rework.widen()
    }
    if (rework.target < this.tiles.length) this.tiles = rework.plan
  }

  /** Tile by tile; where nothing was left untried the bound rises. */
  #seek(steps: number): void {
    const { columns, fills, groups } = this
    const demand = groups.shop.kinds.map((k) => k.qty)
    for (let target = columns.bound; target < this.tiles.length; target++) {
      const { tiles, exhausted } = seek(fills, columns.price, demand, target, steps)
      this.#offer(tiles)
      if (!tiles && exhausted && target === columns.bound) columns.bound++
    }
  }
}
