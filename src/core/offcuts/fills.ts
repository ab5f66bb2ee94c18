/** The ways to fill one tile that are worth more than asked, found piece by piece from the largest. A branch ends where
 *  neither what fits nor what it can still be worth suffices: each of several measures (area, and sizes stretched by dual
 *  feasible functions) never adds up to more than 1 in a tile, so the room left times the best worth a measure bounds it. */
import type { Group, Groups } from './groups.ts'

/** A share of the tile by kind: kinds that fit in one tile never add up to more than 1. */
export type Measure = Float64Array

const TINY = 1e-9

export class Fills {
  readonly groups: Groups
  /** Nodes looked at so far. */
  steps = 0
  /** Fills worth no more than this are left out; may be raised during a walk. */
  least = 0
  readonly #measures: readonly Measure[]
  readonly #rates: readonly Float64Array[]
  /** What kinds that take no share of a measure are worth together, from each kind on. */
  readonly #free: readonly Float64Array[]
  readonly #room: Float64Array
  readonly #held: number[] = []
  #price: ArrayLike<number> = []
  #left: number[] = []
  #stop = 0
  /** Nothing was left out so far. */
  #whole = true
  #visit: (kinds: readonly number[], worth: number) => void = () => {}

  constructor(groups: Groups, measures: readonly Measure[]) {
    this.groups = groups
    this.#measures = measures
    const n = groups.shop.kinds.length
    this.#rates = measures.map(() => new Float64Array(n + 1))
    this.#free = measures.map(() => new Float64Array(n + 1))
    this.#room = new Float64Array(measures.length * (groups.shop.max + 1))
  }

  get spent(): number {
    return this.steps + this.groups.work
  }

  /** Sets the prices and the pieces there are for the walks that follow. */
  aim(price: ArrayLike<number>, left: number[]): void {
    this.#price = price
    this.#left = left
    this.#measures.forEach((measure, m) => {
      const [rates, free] = [this.#rates[m]!, this.#free[m]!]
      for (let k = left.length - 1; k >= 0; k--) {
        rates[k] = rates[k + 1]!
        free[k] = free[k + 1]!
        if (!left[k]) continue
        if (measure[k]! > TINY) rates[k] = Math.max(rates[k]!, price[k]! / measure[k]!)
        else free[k]! += price[k]! * left[k]!
      }
    })
  }

  /** What a tile can be worth at most whose largest piece is of this kind or a later one. */
  ceiling(kind: number): number {
    let most = Number.POSITIVE_INFINITY
    for (let m = 0; m < this.#rates.length; m++) most = Math.min(most, this.#free[m]![kind]! + this.#rates[m]![kind]!)
    return most
  }

  /** Visits the fills whose largest piece is of this kind; false where it stopped early, having spent up to `stop`, or
   *  where a group was too large to tell. */
  walk(first: number, stop: number, visit: (kinds: readonly number[], worth: number) => void): boolean {
    this.#stop = stop
    this.#visit = visit
    this.#whole = true
    for (let m = 0; m < this.#measures.length; m++) this.#room[m] = 1
    this.#add(this.groups.nothing, first, 0)
    return this.#whole
  }

  /** Takes one more piece and all that can be filled on; false where it does not fit. */
  #add(group: Group, kind: number, worth: number): boolean {
    const measures = this.#measures.length
    const more = worth + this.#price[kind]!
    const on = this.#left[kind]! > 1 ? kind : kind + 1
    const here = this.#held.length * measures
    for (let m = 0; m < measures; m++) {
      const room = this.#room[here + m]! - this.#measures[m]![kind]!
      if (room < -TINY) return false
      if (more + this.#free[m]![on]! + Math.max(0, room) * this.#rates[m]![on]! <= this.least) return true
      this.#room[here + measures + m] = Math.max(0, room)
    }
    const grown = this.groups.child(group, kind)
    if (grown === undefined) this.#whole = false
    if (!grown) return false
    this.#held.push(kind)
    this.#left[kind]!--
    this.#fill(grown, kind, more)
    this.#held.pop()
    this.#left[kind]!++
    return true
  }

  #fill(group: Group, from: number, worth: number): void {
    const measures = this.#measures.length
    const here = this.#held.length * measures
    let full = true
    if (this.#held.length < this.groups.shop.max)
      for (let kind = from; kind < this.#left.length; kind++) {
        this.steps++
        if (!this.#left[kind]) continue
        for (let m = 0; m < measures; m++)
          if (worth + this.#free[m]![kind]! + this.#room[here + m]! * this.#rates[m]![kind]! <= this.least) return
        if (this.spent > this.#stop) {
          this.#whole = false
          return
        }
        if (this.#add(group, kind, worth)) full = false
      }
    if (full && worth > this.least) this.#visit(this.#held, worth)
  }
}
