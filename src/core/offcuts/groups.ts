/** Which pieces fit together in one tile, by guillotine cuts of any number of stages, exactly.
 *  A group is put together from two smaller ones, side by side or one above the other; what is kept of it is every
 *  smallest box it fits in (no other box is smaller both ways), with the tile sides that its pieces must touch: in a
 *  left half nothing may need the right side, and so on. Groups live in a tree by their kinds in ascending order, so
 *  each is worked out once however many tiles ask for it. */
import { BOTTOM, type Box, LEFT, RIGHT, type Shop, TOP } from './shop.ts'

export type Group = {
  readonly kinds: readonly number[]
  readonly boxes: readonly Box[]
  readonly next: (Group | null | undefined)[]
}

/** More pieces than this in one tile are left to the quick rules: the exact search doubles its work with each. */
export const MOST_TOGETHER = 8

const EMPTY: Group = { kinds: [], boxes: [], next: [] }

export class Groups {
  readonly shop: Shop
  readonly root: Group = { kinds: [], boxes: [], next: [] }
  /** Pairs of boxes looked at so far: the measure of work. */
  work = 0

  constructor(shop: Shop) {
    this.shop = shop
  }

  /** A group's sub-groups by bit set, with one more piece of a kind not before its last: null if it fits in no tile. */
  grow(subsets: readonly Group[], kind: number): Group[] | null {
    const size = subsets.length
    const grown: Group[] = subsets.slice()
    for (let set = 0; set < size; set++) {
      const parent = subsets[set]!
      let child = parent.next[kind]
      if (child === undefined) {
        child = this.#together(grown, set, size, kind)
        parent.next[kind] = child
      }
      if (child === null) return null
      grown.push(child)
    }
    return grown
  }

  start(): Group[] {
    return [this.root]
  }

  /** The sub-groups by bit set of kinds given in ascending order; null if they do not fit in one tile. */
  find(kinds: readonly number[]): Group[] | null {
    let subsets: Group[] | null = this.start()
    for (const kind of kinds) {
      subsets = this.grow(subsets, kind)
      if (!subsets) return null
    }
    return subsets
  }

  #together(grown: readonly Group[], set: number, bit: number, kind: number): Group | null {
    const { shop } = this
    const parent = grown[set] ?? EMPTY
    const kinds = [...parent.kinds, kind]
    if (set === 0) return { kinds, boxes: shop.kinds[kind]!.poses, next: [] }
    let area = 0
    for (const k of kinds) area += shop.kinds[k]!.area
    if (area > shop.area) return null
    const boxes: Box[] = []
    // Every way to part the group in two: the new piece with some of the others, and the rest.
    for (let rest = set; rest > 0; rest = (rest - 1) & set) {
      const a = grown[bit | (set ^ rest)]!.boxes
      const b = grown[rest]!.boxes
      this.work += a.length * b.length
      for (const p of a) for (const q of b) this.#join(p, q, boxes)
    }
    return boxes.length ? { kinds, boxes, next: [] } : null
  }

  #join(p: Box, q: Box, boxes: Box[]): void {
    const needs = p.needs | q.needs
    const w = p.w + q.w
    if (w <= this.shop.w && sideBySide(p.needs, q.needs)) keepSmallest(boxes, w, Math.max(p.h, q.h), needs)
    const h = p.h + q.h
    if (h <= this.shop.h && oneAbove(p.needs, q.needs)) keepSmallest(boxes, Math.max(p.w, q.w), h, needs)
  }
}

const leftOf = (a: number, b: number) => !(a & RIGHT) && !(b & LEFT)
const belowOf = (a: number, b: number) => !(a & TOP) && !(b & BOTTOM)
const sideBySide = (a: number, b: number) => leftOf(a, b) || leftOf(b, a)
const oneAbove = (a: number, b: number) => belowOf(a, b) || belowOf(b, a)

function keepSmallest(boxes: Box[], w: number, h: number, needs: number): void {
  for (const box of boxes) if (box.w <= w && box.h <= h && (box.needs & needs) === box.needs) return
  let kept = 0
  for (const box of boxes) if (!(box.w >= w && box.h >= h && (box.needs & needs) === needs)) boxes[kept++] = box
  boxes.length = kept
  boxes.push({ w, h, needs })
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
  const sorted = [...kinds].sort((a, b) => a - b)
  if (sorted.length === 0) return out
  const subsets = groups.find(sorted)
  if (!subsets) throw new Error('a group that does not fit was to be laid')
  const full = subsets.length - 1
  lay(full, subsets[full]!.boxes[0]!, 0, 0, shop.w, shop.h)
  return out

  function lay(set: number, box: Box, x: number, y: number, w: number, h: number): void {
    if ((set & (set - 1)) === 0) {
      const kind = sorted[31 - Math.clz32(set)]!
      const px = box.needs & RIGHT ? x + w - box.w : x
      const py = box.needs & TOP ? y + h - box.h : y
      out.push({ kind, x: px, y: py, w: box.w, h: box.h })
      return
    }
    const cut = parting(subsets!, set, box)
    const { a, p, b, q, across } = cut
    lay(a, p, x, y, across ? p.w : w, across ? h : p.h)
    if (across) lay(b, q, x + p.w, y, w - p.w, h)
    else lay(b, q, x, y + p.h, w, h - p.h)
  }
}

type Parting = { a: number; p: Box; b: number; q: Box; across: boolean }

/** The two halves that make up a box of a group: `a` to the left or below. */
function parting(subsets: readonly Group[], set: number, box: Box): Parting {
  const fits = (p: Box, q: Box, across: boolean) => {
    const w = across ? p.w + q.w : Math.max(p.w, q.w)
    const h = across ? Math.max(p.h, q.h) : p.h + q.h
    const order = across ? leftOf(p.needs, q.needs) : belowOf(p.needs, q.needs)
    return order && w === box.w && h === box.h && (p.needs | q.needs) === box.needs
  }
  for (let a = (set - 1) & set; a > 0; a = (a - 1) & set) {
    const b = set ^ a
    for (const p of subsets[a]!.boxes)
      for (const q of subsets[b]!.boxes)
        for (const across of [true, false]) if (fits(p, q, across)) return { a, p, b, q, across }
  }
  throw new Error('a box without the halves it came from')
}
