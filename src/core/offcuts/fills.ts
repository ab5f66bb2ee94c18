/** The ways to fill one tile that are worth more than asked, found piece by piece from the largest. A branch ends where
 *  neither what fits nor what it can still be worth suffices: each of several measures (area, and sizes stretched by dual
 *  feasible functions) never adds up to more than 1 in a tile, so it is bounded by the dearest pieces for their measure
 *  that the room left takes, the last of them cut through. After Dantzig, "Discrete-variable extremum problems",
 *  Operations Research 5 (1957). From memory. */
import type { Group, Groups } from './groups.ts'

/** A share of the tile by kind: kinds that fit in one tile never add up to more than 1. */
export type Measure = Float64Array

const TINY = 1e-9
/** Rooms for which the bound is worked out, from 0 to 1; between two of them it goes on as steeply as at the lower. */
const ROOMS = 8
const ROW = 2 * (ROOMS + 1)
/** A walk that may spend more than this counts only on pieces that share a tile with its first. */
const LONG = 300

export class Fills {
  readonly groups: Groups
  /** Nodes looked at so far. */
  steps = 0
  /** Fills worth no more than this are left out; may be raised during a walk. */
  least = 0
  readonly #measures: readonly Measure[]
  /** By measure, kind from which on pieces may come, and room: what they can be worth, and how steeply that rises there. */
  #worths: readonly Float64Array[]
  /** The same for any first piece, and for that of one walk. */
  readonly #wide: readonly Float64Array[]
  readonly #narrow: readonly Float64Array[]
  #wideIsKnown = false
  /** By kind: how many may come in beside the first piece. */
  readonly #mates: Int32Array
  /** Kinds by their worth a measure, and that worth by kind. */
  readonly #order: Int32Array
  readonly #rate: Float64Array
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
    this.#wide = measures.map(() => new Float64Array((n + 1) * ROW))
    this.#narrow = measures.map(() => new Float64Array((n + 1) * ROW))
    this.#worths = this.#wide
    this.#mates = new Int32Array(n)
    this.#order = new Int32Array(n)
    this.#rate = new Float64Array(n)
    this.#room = new Float64Array(measures.length * (groups.shop.max + 1))
  }

  get spent(): number {
    return this.steps + this.groups.work
  }

  /** Sets the prices and the pieces there are for the walks that follow. */
  aim(price: ArrayLike<number>, left: number[]): void {
    this.#price = price
    this.#left = left
    this.#wideIsKnown = false
  }

  /** Works out what pieces can be worth beside the first, or beside any where that is -1. */
  #rank(first: number): void {
    this.#worths = first < 0 ? this.#wide : this.#narrow
    for (let k = Math.max(0, first); k < this.#mates.length; k++) {
      const n = k === first ? this.#left[k]! - 1 : this.#left[k]!
      this.#mates[k] = n > 0 && (first < 0 || this.groups.pair(first, k)) ? n : 0
    }
    for (let m = 0; m < this.#measures.length; m++)
      this.#rankBy(this.#measures[m]!, this.#worths[m]!, Math.max(0, first))
  }

  #rankBy(measure: Measure, worths: Float64Array, first: number): void {
    const [order, rate, mates, price] = [this.#order, this.#rate, this.#mates, this.#price]
    let free = 0
    let ranked = 0
    for (let k = mates.length - 1; k >= first; k--) {
      if (!mates[k]) {
        worths.copyWithin(k * ROW, (k + 1) * ROW, (k + 2) * ROW)
        continue
      }
      if (measure[k]! > TINY) {
        rate[k] = price[k]! / measure[k]!
        let at = ranked++
        for (; at > 0 && rate[order[at - 1]!]! < rate[k]!; at--) order[at] = order[at - 1]!
        order[at] = k
      } else free += price[k]! * mates[k]!
      this.#tabulate(measure, worths, k * ROW, ranked, free)
    }
  }

  /** What the ranked kinds are worth at most in each room, beside those that take none. */
  #tabulate(measure: Measure, worths: Float64Array, row: number, ranked: number, free: number): void {
    let worth = free
    let filled = 0
    let at = 0
    for (let i = 0; i <= ROOMS; i++) {
      const room = i / ROOMS
      for (; at < ranked; at++) {
        const kind = this.#order[at]!
        const takes = measure[kind]! * this.#mates[kind]!
        if (filled + takes > room) break
        filled += takes
        worth += this.#rate[kind]! * takes
      }
      const steep = at < ranked ? this.#rate[this.#order[at]!]! : 0
      worths[row + 2 * i] = worth + steep * (room - filled)
      worths[row + 2 * i + 1] = steep
    }
  }

  /** What pieces of this kind and later ones can be worth at most in a room of 0 to 1. */
  #most(m: number, kind: number, room: number): number {
    const scaled = room * ROOMS
    const i = scaled | 0
    const at = kind * ROW + 2 * i
    const worths = this.#worths[m]!
    return worths[at]! + (worths[at + 1]! * (scaled - i)) / ROOMS
  }

  /** What a tile can be worth at most whose largest piece is of this kind or a later one. */
  ceiling(kind: number): number {
    if (!this.#wideIsKnown) this.#rank(-1)
    this.#wideIsKnown = true
    this.#worths = this.#wide
    let most = Number.POSITIVE_INFINITY
    for (let m = 0; m < this.#measures.length; m++) most = Math.min(most, this.#most(m, kind, 1))
    return most
  }

  /** Visits the fills whose largest piece is of this kind; false where it stopped early, having spent up to `stop`, or
   *  where a group was too large to tell. */
  walk(first: number, stop: number, visit: (kinds: readonly number[], worth: number) => void): boolean {
    this.#stop = stop
    this.#visit = visit
    this.#whole = true
    if (!this.#wideIsKnown || stop - this.spent > LONG) this.#rank(first)
    else this.#worths = this.#wide
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
      if (more + this.#most(m, on, Math.max(0, room)) <= this.least) return true
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
    const narrow = this.#worths === this.#narrow
    let full = true
    if (this.#held.length < this.groups.shop.max)
      for (let kind = from; kind < this.#left.length; kind++) {
        this.steps++
        if (!this.#left[kind] || (narrow && !this.#mates[kind])) continue
        for (let m = 0; m < measures; m++) if (worth + this.#most(m, kind, this.#room[here + m]!) <= this.least) return
        if (this.spent > this.#stop) {
          this.#whole = false
          return
        }
        if (this.#add(group, kind, worth)) full = false
      }
    if (full && worth > this.least) this.#visit(this.#held, worth)
  }
}
