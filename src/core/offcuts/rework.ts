/** A plan of so many tiles by taking pieces out and putting them back where they fit better, over and over: the pieces
 *  that fit nowhere are the goal, and a change stays if no more of them are left over than before.
 *  After Schrimpf and others, "Record breaking optimization results using the ruin and recreate principle", Journal of
 *  Computational Physics 159 (2000), and Gardeyn and Wauters, "A goal-driven ruin and recreate heuristic for the 2D
 *  variable-sized bin packing problem with guillotine constraints", European Journal of Operational Research 301 (2022).
 *  From memory. */
import type { Lying } from './groups.ts'
import type { Shop } from './shop.ts'
import { Trees } from './trees.ts'

/** Pieces taken out at a time, at most. */
const MOST_OUT = 20
/** What tiles may lose of their unevenness, in tiles squared. */
const LEVEL = 0.05
/** What a round costs besides the places looked at, in steps, and one more for each piece. */
const ROUND_STEPS = 60
const TINY = 1e-9

/** Numbers by chance, the same at every run. mulberry32. */
export function chance(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return (t ^ (t >>> 14)) >>> 0
  }
}

/** Fills noted, at most. */
const MOST_NOTED = 600
/** A tile with more than this share of it free is not worth noting. */
const LOOSE = 0.25

export class Rework {
  readonly #shop: Shop
  readonly #trees: Trees
  readonly #random: () => number
  readonly #area: Float64Array
  readonly #sorts: readonly Float64Array[]
  readonly #key: Float64Array
  /** Kinds of well filled tiles seen on the way, by a sum of their marks. */
  readonly #noted = new Map<number, readonly number[]>()
  readonly #marks: Int32Array
  #told = 0
  /** Area of the pieces that lie in no tile, in tiles. */
  #over: number
  #uneven: number

  /** @param most how many tiles there can be after `widen` */
  constructor(shop: Shop, tiles: number, most: number) {
    this.#shop = shop
    this.#random = chance(1)
    this.#trees = new Trees(shop, tiles, most, this.#random)
    const { kindOf } = this.#trees
    const by = (size: (kind: Shop['kinds'][number]) => number) =>
      Float64Array.from(kindOf, (kind) => size(shop.kinds[kind]!))
    this.#area = by((k) => k.area / shop.area)
    this.#sorts = [
      by((k) => k.poses[0]!.w),
      by((k) => k.poses[0]!.h),
      by((k) => Math.max(k.poses[0]!.w / shop.w, k.poses[0]!.h / shop.h)),
    ]
    this.#key = new Float64Array(kindOf.length)
    this.#marks = Int32Array.from(shop.kinds, () => this.#random())
    this.#over = this.#putBack([...kindOf.keys()], false)
    this.#uneven = this.#unevenness()
  }

  get done(): boolean {
    return this.#over === 0
  }

  get target(): number {
    return this.#trees.tiles
  }

  get plan(): Lying[][] {
    return Array.from({ length: this.target }, (_, tile) => this.#trees.lay(tile)).filter((t) => t.length > 0)
  }

  /** Ways to fill a tile that came up since the last call. */
  newFills(): (readonly number[])[] {
    const all = [...this.#noted.values()].slice(this.#told)
    this.#told += all.length
    return all
  }

  /** One tile more. */
  widen(): void {
    this.#trees.tiles++
    const out = this.#trees.kindOf.flatMap((_, piece) => (this.#trees.tile[piece]! < 0 ? [piece] : []))
    this.#trees.spread()
    this.#over = this.#putBack(out, false)
    this.#uneven = this.#unevenness()
  }

  /** Changes the tiles until all pieces lie in one, or so many steps are spent. */
  run(steps: number): boolean {
    const stop = this.#trees.steps + steps
    while (!this.done && this.#trees.steps < stop) this.#round()
    return this.done
  }

  #round(): void {
    const trees = this.#trees
    trees.save()
    trees.steps += this.#area.length + ROUND_STEPS
    const out: number[] = []
    for (let piece = 0; piece < this.#area.length; piece++) if (trees.tile[piece]! < 0) out.push(piece)
    if (this.#random() & 1) this.#takeSome(out)
    else this.#takeParts(out)
    trees.spread()
    const over = this.#putBack(out, true)
    const uneven = this.#unevenness()
    this.#note()
    if (over < this.#over - TINY || (over <= this.#over + TINY && uneven >= this.#uneven - LEVEL)) {
      this.#over = over
      this.#uneven = uneven
    } else trees.restore()
  }

  /** Single pieces from two tiles. */
  #takeSome(out: number[]): void {
    const trees = this.#trees
    const [one, other] = [this.#random() % trees.tiles, this.#random() % trees.tiles]
    const there: number[] = []
    for (let piece = 0; piece < this.#area.length; piece++)
      if (trees.tile[piece] === one || trees.tile[piece] === other) there.push(piece)
    for (let left = 1 + (this.#random() % MOST_OUT); left > 0 && there.length; left--) {
      const at = this.#random() % there.length
      const piece = there[at]!
      there[at] = there.at(-1)!
      there.pop()
      trees.remove(piece)
      out.push(piece)
    }
  }

  /** Whole parts of any tiles. */
  #takeParts(out: number[]): void {
    const trees = this.#trees
    for (let left = 1 + (this.#random() % MOST_OUT); left > 0; left--) {
      const node = trees.anyNode(this.#random() % trees.tiles)
      if (node < 0) continue
      const leaves: number[] = []
      trees.leaves(node, leaves)
      for (const piece of leaves) {
        trees.remove(piece)
        out.push(piece)
      }
      left -= leaves.length - 1
    }
  }

  /** Puts pieces where they fit, by area mostly; the area of those that fit nowhere. */
  #putBack(pieces: number[], skips: boolean): number {
    const rule = this.#random() % 8
    const key = this.#key
    const sort = this.#sorts[rule - 4]
    for (const piece of pieces) key[piece] = rule < 4 ? this.#area[piece]! : sort ? sort[piece]! : this.#random()
    pieces.sort((p, q) => key[q]! - key[p]!)
    let over = 0
    for (const piece of pieces) if (!this.#trees.put(piece, skips)) over += this.#area[piece]!
    return over
  }

  #note(): void {
    const { tile, free, kindOf, tiles } = this.#trees
    if (this.#noted.size > MOST_NOTED) return
    const marks = new Int32Array(tiles)
    for (let piece = 0; piece < kindOf.length; piece++)
      if (tile[piece]! >= 0) marks[tile[piece]!]! += this.#marks[kindOf[piece]!]!
    for (let t = 0; t < tiles; t++) {
      if (free[t]! > LOOSE * this.#shop.area || this.#noted.has(marks[t]!)) continue
      this.#noted.set(
        marks[t]!,
        kindOf.filter((_, piece) => tile[piece] === t),
      )
    }
  }

  #unevenness(): number {
    const { free, tiles } = this.#trees
    let sum = 0
    for (let tile = 0; tile < tiles; tile++) sum += (free[tile]! / this.#shop.area) ** 2
    return sum
  }
}
