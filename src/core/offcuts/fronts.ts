/** The smallest boxes that hold a group of pieces, put together from those of two halves. Without sides to touch they make
 *  a front: as the width grows the height falls, so two fronts are joined in one walk along both. */
import { BOTTOM, type Box, LEFT, RIGHT, TOP } from './shop.ts'

/** Fronts one after the other in two lists, each by ascending width and falling height: no box of a front is both wider and
 *  higher than another. A front is named by where it starts and ends. */
export class Fronts {
  /** Points of joined fronts looked at so far: the measure of work. */
  work = 0
  #w = new Float64Array(2048)
  #h = new Float64Array(2048)
  /** Where the front in the making starts: what comes before is kept. */
  #start = 0
  #end = 0
  readonly #mostW: number
  readonly #mostH: number

  constructor(mostW: number, mostH: number) {
    this.#mostW = mostW
    this.#mostH = mostH
  }

  /** Where the front in the making starts, and where it ends so far. */
  get start(): number {
    return this.#start
  }

  get end(): number {
    return this.#end
  }

  /** Keeps the front made, and begins the next. */
  keep(): void {
    this.#start = this.#end
  }

  /** Lets go of the front in the making. */
  drop(): void {
    this.#end = this.#start
  }

  boxes(from: number, to: number): Box[] {
    const boxes: Box[] = []
    for (let i = from; i < to; i++) boxes.push({ w: this.#w[i]!, h: this.#h[i]!, needs: 0 })
    return boxes
  }

  /** Adds the boxes of two fronts side by side and one above the other. */
  join(a: number, aEnd: number, b: number, bEnd: number): void {
    this.work++
    const w = this.#w
    const h = this.#h
    const leastW = w[a]! + w[b]!
    const leastH = h[aEnd - 1]! + h[bEnd - 1]!
    if (leastW <= this.#mostW && !this.#beaten(leastW, Math.max(h[aEnd - 1]!, h[bEnd - 1]!)))
      this.#beside(a, aEnd, b, bEnd)
    if (leastH <= this.#mostH && !this.#beaten(Math.max(w[a]!, w[b]!), leastH)) this.#above(a, aEnd, b, bEnd)
  }

  #beside(a: number, aEnd: number, b: number, bEnd: number): void {
    for (let i = a, j = b; i < aEnd && j < bEnd; ) {
      const w = this.#w[i]! + this.#w[j]!
      if (w > this.#mostW) return
      this.work++
      const p = this.#h[i]!
      const q = this.#h[j]!
      this.add(w, Math.max(p, q))
      if (p >= q) i++
      if (q >= p) j++
    }
  }

  #above(a: number, aEnd: number, b: number, bEnd: number): void {
    for (let i = aEnd - 1, j = bEnd - 1; i >= a && j >= b; ) {
      const h = this.#h[i]! + this.#h[j]!
      if (h > this.#mostH) return
      this.work++
      const p = this.#w[i]!
      const q = this.#w[j]!
      this.add(Math.max(p, q), h)
      if (p >= q) i--
      if (q >= p) j--
    }
  }

  /** Whether a box of the front in the making is no wider and no higher. */
  #beaten(w: number, h: number): boolean {
    let at = this.#end - 1
    while (at >= this.#start && this.#w[at]! > w) at--
    return at >= this.#start && this.#h[at]! <= h
  }

  /** Adds a box to the front in the making, unless one there is as small. */
  add(w: number, h: number): void {
    const ws = this.#w
    const hs = this.#h
    const end = this.#end
    let from = end
    while (from > this.#start && ws[from - 1]! >= w) from--
    if ((from > this.#start && hs[from - 1]! <= h) || (from < end && ws[from] === w && hs[from]! <= h)) return
    let to = from
    while (to < end && hs[to]! >= h) to++
    if (to === from) {
      for (let i = end; i > from; i--) {
        ws[i] = ws[i - 1]!
        hs[i] = hs[i - 1]!
      }
      this.#end = end + 1
    } else if (to > from + 1) {
      for (let i = to; i < end; i++) {
        ws[i + from + 1 - to] = ws[i]!
        hs[i + from + 1 - to] = hs[i]!
      }
      this.#end = end + from + 1 - to
    }
    ws[from] = w
    hs[from] = h
    if (this.#end === ws.length) this.#grow()
  }

  #grow(): void {
    const [w, h] = [this.#w, this.#h]
    this.#w = new Float64Array(2 * w.length)
    this.#h = new Float64Array(2 * h.length)
    this.#w.set(w)
    this.#h.set(h)
  }
}

export const leftOf = (a: number, b: number) => !(a & RIGHT) && !(b & LEFT)
export const belowOf = (a: number, b: number) => !(a & TOP) && !(b & BOTTOM)
export const sideBySide = (a: number, b: number) => leftOf(a, b) || leftOf(b, a)
export const oneAbove = (a: number, b: number) => belowOf(a, b) || belowOf(b, a)

/** The same where parts must touch sides of the tile: a box that needs less is kept beside a smaller one.
 *  @returns the pairs looked at */
export function joinAnchored(
  most: { readonly w: number; readonly h: number },
  a: readonly Box[],
  b: readonly Box[],
  boxes: Box[],
): number {
  for (const p of a)
    for (const q of b) {
      const needs = p.needs | q.needs
      const w = p.w + q.w
      if (w <= most.w && (!needs || sideBySide(p.needs, q.needs))) keepSmallest(boxes, w, Math.max(p.h, q.h), needs)
      const h = p.h + q.h
      if (h <= most.h && (!needs || oneAbove(p.needs, q.needs))) keepSmallest(boxes, Math.max(p.w, q.w), h, needs)
    }
  return a.length * b.length
}

function keepSmallest(boxes: Box[], w: number, h: number, needs: number): void {
  let kept = 0
  for (let i = 0; i < boxes.length; i++) {
    const box = boxes[i]!
    if (box.w <= w && box.h <= h && (box.needs & needs) === box.needs) return
  }
  for (let i = 0; i < boxes.length; i++) {
    const box = boxes[i]!
    if (box.w < w || box.h < h || (box.needs & needs) !== needs) boxes[kept++] = box
  }
  boxes.length = kept
  boxes.push({ w, h, needs })
}
