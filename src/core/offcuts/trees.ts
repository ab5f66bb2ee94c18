/** Tiles as trees of straight cuts, for a search that takes pieces out and puts them elsewhere. A leaf is a piece, a node
 *  is two parts side by side or one above the other, as small as they can be; so a part may grow as long as its tile does
 *  not. `roomW` and `roomH` tell how far: what the tile leaves a part when all others stay as they are. */
import { belowOf, leftOf, oneAbove, sideBySide } from './fronts.ts'
import type { Lying } from './groups.ts'
import { type Pose, RIGHT, type Shop, TOP } from './shop.ts'

const LEAF = 0
const BESIDE = 1
const ABOVE = 2
const NONE = -1
/** One in so many places is passed over where that is asked for. */
const PASS_OVER = 64

export class Trees {
  /** By piece: its kind. */
  readonly kindOf: readonly number[]
  /** By piece: its tile, -1 where it lies in none. */
  readonly tile: Int32Array
  /** By tile: the area not yet taken. */
  readonly free: Float64Array
  /** How many tiles there are; may be raised to the most. */
  tiles: number
  /** Places looked at: the measure of work. */
  steps = 0
  readonly #shop: Shop
  readonly #anchored: boolean
  readonly #perW: number
  readonly #perH: number
  readonly #random: () => number
  // Leaves are numbered as their pieces, the other nodes come after them.
  readonly #w: Float64Array
  readonly #h: Float64Array
  readonly #roomW: Float64Array
  readonly #roomH: Float64Array
  readonly #parent: Int32Array
  readonly #a: Int32Array
  readonly #b: Int32Array
  readonly #cut: Int32Array
  readonly #needs: Int32Array
  readonly #root: Int32Array
  readonly #count: Int32Array
  /** A stack of unused nodes, its height first. */
  readonly #unused: Int32Array
  /** All that `save` keeps. */
  readonly #state: readonly [Float64Array, Int32Array]
  readonly #saved: readonly [Float64Array, Int32Array]
  // The best place found so far for the piece in hand.
  #least = 0
  #at = NONE
  #how = BESIDE
  #pose: Pose
  #skips = false

  constructor(shop: Shop, tiles: number, most: number, random: () => number) {
    this.tiles = tiles
    this.#shop = shop
    this.#random = random
    this.kindOf = shop.kinds.flatMap((k, kind) => Array<number>(k.qty).fill(kind))
    this.#anchored = shop.kinds.some((k) => k.poses.some((p) => p.needs))
    this.#perW = 1 / shop.w
    this.#perH = 1 / shop.h
    this.#pose = shop.kinds[0]!.poses[0]!
    const pieces = this.kindOf.length
    const nodes = 2 * pieces
    const sizes = new Float64Array(2 * nodes + most)
    this.#w = sizes.subarray(0, nodes)
    this.#h = sizes.subarray(nodes, 2 * nodes)
    this.free = sizes.subarray(2 * nodes).fill(shop.area)
    this.#roomW = new Float64Array(nodes)
    this.#roomH = new Float64Array(nodes)
    const links = new Int32Array(6 * nodes + 2 * most + pieces + 1).fill(NONE)
    let from = 0
    const next = (length: number) => {
      from += length
      return links.subarray(from - length, from)
    }
    this.#parent = next(nodes)
    this.#a = next(nodes)
    this.#b = next(nodes)
    this.#cut = next(nodes)
    this.#needs = next(nodes)
    this.tile = next(nodes)
    this.#root = next(most)
    this.#count = next(most).fill(0)
    this.#unused = next(pieces + 1)
    for (let i = 0; i < pieces; i++) this.#unused[i + 1] = pieces + i
    this.#unused[0] = pieces
    this.#state = [sizes, links]
    this.#saved = [sizes.slice(), links.slice()]
  }

  save(): void {
    this.#saved[0].set(this.#state[0])
    this.#saved[1].set(this.#state[1])
  }

  restore(): void {
    this.#state[0].set(this.#saved[0])
    this.#state[1].set(this.#saved[1])
  }

  /** Takes a piece out of its tile. */
  remove(piece: number): void {
    const tile = this.tile[piece]!
    const node = this.#parent[piece]!
    this.tile[piece] = NONE
    this.#count[tile]!--
    this.free[tile]! += this.#area(piece)
    if (node === NONE) {
      this.#root[tile] = NONE
      return
    }
    this.#replace(node, this.#a[node] === piece ? this.#b[node]! : this.#a[node]!, tile)
    this.#unused[++this.#unused[0]!] = node
  }

  #area(piece: number): number {
    return this.#shop.kinds[this.kindOf[piece]!]!.area
  }

  /** Puts one node in the place of another. */
  #replace(node: number, by: number, tile: number): void {
    const parent = this.#parent[node]!
    this.#parent[by] = parent
    if (parent === NONE) this.#root[tile] = by
    else if (this.#a[parent] === node) this.#a[parent] = by
    else this.#b[parent] = by
    this.#measure(parent)
  }

  /** Sizes of a node and all above it from their parts. */
  #measure(from: number): void {
    const [w, h] = [this.#w, this.#h]
    for (let node = from; node !== NONE; node = this.#parent[node]!) {
      const a = this.#a[node]!
      const b = this.#b[node]!
      const beside = this.#cut[node] === BESIDE
      w[node] = beside ? w[a]! + w[b]! : Math.max(w[a]!, w[b]!)
      h[node] = beside ? Math.max(h[a]!, h[b]!) : h[a]! + h[b]!
      this.#needs[node] = this.#needs[a]! | this.#needs[b]!
    }
  }

  /** The leaves at or below a node. */
  leaves(node: number, out: number[]): void {
    if (this.#cut[node] === LEAF) out.push(node)
    else {
      this.leaves(this.#a[node]!, out)
      this.leaves(this.#b[node]!, out)
    }
  }

  /** A node of a tile by chance, -1 where the tile is empty. */
  anyNode(tile: number): number {
    let node = this.#root[tile]!
    if (node !== NONE)
      while (this.#cut[node] !== LEAF && this.#random() % 3) node = this.#random() & 1 ? this.#a[node]! : this.#b[node]!
    return node
  }

  /** What parts may grow to, in every tile; to be called after `remove` or `restore`, before `put`. */
  spread(from = 0, to = this.tiles): void {
    for (let tile = from; tile < to; tile++)
      if (this.#root[tile] !== NONE) this.#room(this.#root[tile]!, this.#shop.w, this.#shop.h)
  }

  #room(node: number, w: number, h: number): void {
    this.#roomW[node] = w
    this.#roomH[node] = h
    const cut = this.#cut[node]
    if (cut === LEAF) return
    const a = this.#a[node]!
    const b = this.#b[node]!
    if (cut === BESIDE) {
      this.#room(a, w - this.#w[b]!, h)
      this.#room(b, w - this.#w[a]!, h)
    } else {
      this.#room(a, w, h - this.#h[b]!)
      this.#room(b, w, h - this.#h[a]!)
    }
  }

  /** Puts a piece where it fits best, into an empty tile only if it fits in no other; false if it fits in none.
   *  @param skips whether places are passed over now and then */
  put(piece: number, skips: boolean): boolean {
    const { poses, area } = this.#shop.kinds[this.kindOf[piece]!]!
    this.#least = Number.POSITIVE_INFINITY
    this.#at = NONE
    this.#skips = skips
    let empty = NONE
    for (let tile = 0; tile < this.tiles; tile++) {
      if (this.#root[tile] === NONE) empty = tile
      else if (area <= this.free[tile]! && this.#count[tile]! < this.#shop.max)
        for (let i = 0; i < poses.length; i++) this.#look(this.#root[tile]!, poses[i]!, poses[i]!.w, poses[i]!.h)
    }
    if (this.#at !== NONE) this.#join(piece)
    else if (empty !== NONE) this.#begin(piece, empty, poses[this.#random() % poses.length]!)
    return this.#at !== NONE || empty !== NONE
  }

  /** Every place at or below a node: a part has no more room than the whole, so the search ends where a piece is too large. */
  #look(node: number, pose: Pose, w: number, h: number): void {
    this.steps++
    const ownW = this.#w[node]!
    const ownH = this.#h[node]!
    const beside = this.#roomW[node]! - w - ownW
    const above = this.#roomH[node]! - h - ownH
    if (beside >= 0) this.#judge(node, pose, BESIDE, Math.min(beside * this.#perW, Math.abs(ownH - h) * this.#perH))
    if (above >= 0) this.#judge(node, pose, ABOVE, Math.min(above * this.#perH, Math.abs(ownW - w) * this.#perW))
    if (this.#cut[node] === LEAF) return
    const a = this.#a[node]!
    if (w <= this.#roomW[a]! && h <= this.#roomH[a]!) this.#look(a, pose, w, h)
    const b = this.#b[node]!
    if (w <= this.#roomW[b]! && h <= this.#roomH[b]!) this.#look(b, pose, w, h)
  }

  #judge(node: number, pose: Pose, how: number, score: number): void {
    if (score >= this.#least || (this.#skips && this.#random() % PASS_OVER === 0)) return
    if (this.#anchored && !this.#keepsSides(node, pose.needs, how)) return
    this.#least = score
    this.#at = node
    this.#how = how
    this.#pose = pose
  }

  /** Whether every part still reaches the tile sides it must touch when a piece joins a node. */
  #keepsSides(node: number, needs: number, how: number): boolean {
    let all = needs
    for (let other = node, cut = how; ; ) {
      if (all && !(cut === BESIDE ? sideBySide : oneAbove)(all, this.#needs[other]!)) return false
      all |= this.#needs[other]!
      const from = other === node ? node : this.#parent[other]!
      const parent = this.#parent[from]!
      if (parent === NONE) return true
      other = this.#a[parent] === from ? this.#b[parent]! : this.#a[parent]!
      cut = this.#cut[parent]!
    }
  }

  #leaf(piece: number, tile: number, pose: Pose): void {
    this.#w[piece] = pose.w
    this.#h[piece] = pose.h
    this.#needs[piece] = pose.needs
    this.#cut[piece] = LEAF
    this.tile[piece] = tile
    this.#count[tile]!++
    this.free[tile]! -= this.#area(piece)
  }

  #begin(piece: number, tile: number, pose: Pose): void {
    this.#leaf(piece, tile, pose)
    this.#parent[piece] = NONE
    this.#root[tile] = piece
    this.spread(tile, tile + 1)
  }

  #join(piece: number): void {
    const at = this.#at
    let top = at
    while (this.#parent[top] !== NONE) top = this.#parent[top]!
    const tile = this.#root.indexOf(top)
    this.#leaf(piece, tile, this.#pose)
    const node = this.#unused[this.#unused[0]!--]!
    this.#cut[node] = this.#how
    this.#a[node] = at
    this.#b[node] = piece
    this.#replace(at, node, tile)
    this.#parent[at] = node
    this.#parent[piece] = node
    this.#measure(node)
    this.spread(tile, tile + 1)
  }

  /** Where the pieces of a tile lie. */
  lay(tile: number): Lying[] {
    const out: Lying[] = []
    if (this.#root[tile] !== NONE) this.#layNode(this.#root[tile]!, 0, 0, this.#shop.w, this.#shop.h, out)
    return out
  }

  #layNode(node: number, x: number, y: number, w: number, h: number, out: Lying[]): void {
    const needs = this.#needs[node]!
    if (this.#cut[node] === LEAF) {
      const [ownW, ownH] = [this.#w[node]!, this.#h[node]!]
      const px = needs & RIGHT ? x + w - ownW : x
      const py = needs & TOP ? y + h - ownH : y
      out.push({ kind: this.kindOf[node]!, x: px, y: py, w: ownW, h: ownH })
      return
    }
    const beside = this.#cut[node] === BESIDE
    const [a, b] = [this.#a[node]!, this.#b[node]!]
    const [first, second] = (beside ? leftOf : belowOf)(this.#needs[a]!, this.#needs[b]!) ? [a, b] : [b, a]
    const [firstW, firstH] = [this.#w[first]!, this.#h[first]!]
    this.#layNode(first, x, y, beside ? firstW : w, beside ? h : firstH, out)
    if (beside) this.#layNode(second, x + firstW, y, w - firstW, h, out)
    else this.#layNode(second, x, y + firstH, w, h - firstH, out)
  }
}
