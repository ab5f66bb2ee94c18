/** Which pieces fit together in one tile, by guillotine cuts of any number of stages, exactly.
 *  A group is put together from two smaller ones, side by side or one above the other; what is kept of it is every
 *  smallest box it fits in (no other box is smaller both ways), with the tile sides that its pieces must touch: in a
 *  left half nothing may need the right side, and so on. Groups live in a tree by their kinds in ascending order, so
 *  each is worked out once however many tiles ask for it. */
import { belowOf, Fronts, joinAnchored, leftOf } from './fronts.ts'
import { type Box, RIGHT, type Shop, TOP } from './shop.ts'

export type Group = {
  readonly kinds: readonly number[]
  readonly area: number
  /** Its boxes in `Fronts`. */
  readonly from: number
  readonly to: number
  /** Its boxes where pieces must touch sides. */
  readonly anchored: readonly Box[]
  readonly id: number
}

/** A group with all its sub-groups: that with n[i] pieces of kind[i] stands at the sum of n[i] x step[i]. */
export type Family = {
  /** Shared by all families: this one's are the first `size`, until a smaller family is grown another way, as `find` does. */
  readonly all: Group[]
  readonly size: number
  readonly kind: readonly number[]
  readonly step: readonly number[]
  /** One piece of each kind: then a place is a set of bits. */
  readonly single: boolean
}

/** Groups with more sub-groups than this are left to the quick rules. */
const MOST_SUBGROUPS = 300
const MISFIT = -1

/** Whether a group with so many pieces of each of its kinds is small enough to tell. */
export const mayTell = (counts: readonly number[]): boolean =>
  counts.reduce((groups, n) => groups * (n + 1), 1) <= MOST_SUBGROUPS

export class Groups {
  readonly shop: Shop
  readonly none: Family
  /** The group of no pieces. */
  readonly nothing: Group
  /** By two kinds: 0 not known yet, 1 they fit, 2 they do not. */
  readonly #pairs: Uint8Array
  readonly #all: Group[]
  readonly #byId: Group[]
  /** By a group's id and one more kind: the larger group's id, 0 not known yet, -1 where it fits in no tile. */
  #larger: Int32Array
  /** The families on the way to the one asked for last, one kind more each. */
  readonly #chain: { readonly last: number; readonly family: Family }[] = []
  readonly #fronts: Fronts
  readonly #anchored: boolean
  #pairsSeen = 0

  constructor(shop: Shop) {
    this.shop = shop
    this.#pairs = new Uint8Array(shop.kinds.length ** 2)
    this.#fronts = new Fronts(shop.w, shop.h)
    this.#anchored = shop.kinds.some((k) => k.poses.some((p) => p.needs))
    this.#all = [{ kinds: [], area: 0, from: 0, to: 0, anchored: [], id: 0 }]
    this.nothing = this.#all[0]!
    this.#byId = [this.nothing]
    this.#larger = new Int32Array(256 * shop.kinds.length)
    this.none = { all: this.#all, size: 1, kind: [], step: [], single: true }
  }

  /** Boxes looked at so far: the measure of work. */
  get work(): number {
    return this.#pairsSeen + this.#fronts.work
  }

  /** A group with one more piece, of a kind not before its last: null if it fits in no tile, undefined if it is too large
   *  a group to tell. */
  child(group: Group, kind: number): Group | null | undefined {
    const key = group.id * this.shop.kinds.length + kind
    const id = this.#larger[key]!
    if (id) return id === MISFIT ? null : this.#byId[id]!
    const family = this.find(group.kinds)
    if (!family) return undefined
    const grown = this.#grow(family, kind)
    if (grown === null) this.#larger[key] = MISFIT
    return grown && grown.all[grown.size - 1]!
  }

  /** The family of kinds given in ascending order; null if they do not fit in one tile or are too many to tell. */
  find(kinds: readonly number[]): Family | null {
    const chain = this.#chain
    let known = 0
    while (known < kinds.length && known < chain.length && chain[known]!.last === kinds[known]) known++
    chain.length = known
    let family = known ? chain[known - 1]!.family : this.none
    for (const kind of known ? kinds.slice(known) : kinds) {
      const grown = this.#grow(family, kind)
      if (!grown) return null
      family = grown
      chain.push({ last: kind, family })
    }
    return family
  }

  #grow(family: Family, kind: number): Family | null | undefined {
    const again = family.kind.at(-1) === kind
    const { all, size } = family
    const kinds = this.shop.kinds.length
    const added = again ? family.step.at(-1)! : size
    const largest = all[size - 1]!
    if (largest.area + this.shop.kinds[kind]!.area > this.shop.area) return null
    if (this.#larger[largest.id * kinds + kind] === MISFIT) return null
    for (const other of family.kind) if (!this.pair(other, kind)) return null
    if (size + added > MOST_SUBGROUPS) return undefined
    const grown: Family = {
      all,
      size: size + added,
      kind: again ? family.kind : [...family.kind, kind],
      step: again ? family.step : [...family.step, size],
      single: family.single && !again,
    }
    for (let at = size; at < size + added; at++) {
      const parent = all[at - added]!
      const key = parent.id * kinds + kind
      let id = this.#larger[key]!
      if (id === 0) {
        id = this.#together(grown, at, parent, kind)
        this.#larger[key] = id
      }
      if (id === MISFIT) return null
      all[at] = this.#byId[id]!
    }
    return grown
  }

  /** Whether two pieces of these kinds fit together in one tile. */
  pair(a: number, b: number): boolean {
    const at = a * this.shop.kinds.length + b
    if (this.#pairs[at] === 0) {
      const [one, other] = [this.#piece(a), this.#piece(b)]
      const boxes: Box[] = []
      this.#join(one, other, boxes)
      this.#pairs[at] = this.#anchored ? (boxes.length ? 1 : 2) : this.#fronts.end > this.#fronts.start ? 1 : 2
      this.#fronts.drop()
    }
    return this.#pairs[at] === 1
  }

  /** The group of one piece. */
  #piece(kind: number): Group {
    const { area, poses } = this.shop.kinds[kind]!
    const known = this.#larger[kind]!
    if (known) return this.#byId[known]!
    if (!this.#anchored) for (const { w, h } of poses) this.#fronts.add(w, h)
    const id = this.#keep([kind], area, poses)
    this.#larger[kind] = id
    return this.#byId[id]!
  }

  /** The boxes of two halves put together: into the front in the making, or into `boxes` where pieces must touch sides. */
  #join(one: Group, other: Group, boxes: Box[]): void {
    if (this.#anchored) this.#pairsSeen += joinAnchored(this.shop, one.anchored, other.anchored, boxes)
    else this.#fronts.join(one.from, one.to, other.from, other.to)
  }

  boxesOf({ anchored, from, to }: Group): readonly Box[] {
    return this.#anchored ? anchored : this.#fronts.boxes(from, to)
  }

  #together(family: Family, at: number, parent: Group, kind: number): number {
    const { shop } = this
    if (parent === this.nothing) return this.#piece(kind).id
    const area = parent.area + shop.kinds[kind]!.area
    if (area > shop.area) return MISFIT
    const boxes: Box[] = []
    if (family.single)
      for (let half = (at - 1) & at; 2 * half > at; half = (half - 1) & at)
        this.#join(family.all[half]!, family.all[at - half]!, boxes)
    else for (const half of halves(family, at)) this.#join(family.all[half]!, family.all[at - half]!, boxes)
    const fits = this.#anchored ? boxes.length > 0 : this.#fronts.end > this.#fronts.start
    return fits ? this.#keep([...parent.kinds, kind], area, boxes) : MISFIT
  }

  /** Keeps the boxes just made as those of a new group. */
  #keep(kinds: readonly number[], area: number, anchored: readonly Box[]): number {
    const { start: from, end: to } = this.#fronts
    this.#fronts.keep()
    const group: Group = { kinds, area, from, to, anchored, id: this.#byId.length }
    this.#byId.push(group)
    const room = this.#byId.length * this.shop.kinds.length
    if (room > this.#larger.length) {
      const larger = new Int32Array(2 * room)
      larger.set(this.#larger)
      this.#larger = larger
    }
    return group.id
  }
}

/** Every way to part the sub-group at a place in two, each once: the places of the smaller halves. */
function halves({ step }: Family, at: number): number[] {
  let places = [0]
  let rest = at
  for (let i = step.length - 1; i >= 0; i--) {
    const n = Math.floor(rest / step[i]!)
    rest -= n * step[i]!
    if (n === 0) continue
    const more: number[] = []
    for (let count = 0; count <= n; count++) for (const place of places) more.push(place + count * step[i]!)
    places = more
  }
  return places.filter((place) => place > 0 && 2 * place <= at)
}

/** A piece lying in the tile, in units, its kerf included in the extents. */
export type Lying = {
  readonly kind: number
  readonly x: number
  readonly y: number
  readonly w: number
  readonly h: number
}

/** Where the pieces of a group that fits lie in the tile. */
export function layGroup(groups: Groups, kinds: readonly number[]): Lying[] {
  const { shop } = groups
  const out: Lying[] = []
  const family = groups.find([...kinds].sort((a, b) => a - b))
  if (!family) throw new Error('a group that does not fit was to be laid')
  const full = family.size - 1
  lay(full, groups.boxesOf(family.all[full]!)[0]!, 0, 0, shop.w, shop.h)
  return out

  function lay(at: number, box: Box, x: number, y: number, w: number, h: number): void {
    const group = family!.all[at]!
    if (group.kinds.length === 1) {
      const px = box.needs & RIGHT ? x + w - box.w : x
      const py = box.needs & TOP ? y + h - box.h : y
      out.push({ kind: group.kinds[0]!, x: px, y: py, w: box.w, h: box.h })
      return
    }
    const { a, p, b, q, across } = parting(groups, family!, at, box)
    lay(a, p, x, y, across ? p.w : w, across ? h : p.h)
    if (across) lay(b, q, x + p.w, y, w - p.w, h)
    else lay(b, q, x, y + p.h, w, h - p.h)
  }
}

type Parting = { a: number; p: Box; b: number; q: Box; across: boolean }

/** The two halves that make up a box of a group: `a` to the left or below. */
function parting(groups: Groups, family: Family, at: number, box: Box): Parting {
  const fits = (p: Box, q: Box, across: boolean) => {
    const w = across ? p.w + q.w : Math.max(p.w, q.w)
    const h = across ? Math.max(p.h, q.h) : p.h + q.h
    const order = across ? leftOf(p.needs, q.needs) : belowOf(p.needs, q.needs)
    return order && w === box.w && h === box.h && (p.needs | q.needs) === box.needs
  }
  for (const half of halves(family, at))
    for (const p of groups.boxesOf(family.all[half]!))
      for (const q of groups.boxesOf(family.all[at - half]!))
        for (const across of [true, false]) {
          if (fits(p, q, across)) return { a: half, p, b: at - half, q, across }
          if (fits(q, p, across)) return { a: at - half, p: q, b: half, q: p, across }
        }
  throw new Error('a box without the halves it came from')
}
