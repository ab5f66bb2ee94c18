/** Climbing: from the best of many starts by steps that shrink, and keeping the best that lie apart. */
import type { Point } from '../floor/rings.ts'
import { wrap } from './random.ts'

/** Sixteen directions: the best starts lie on narrow ridges, which eight miss. */
const AROUND: readonly Point[] = [-2, -1, 0, 1, 2].flatMap((p) =>
  [-2, -1, 0, 1, 2].flatMap((q): Point[] =>
    Math.max(Math.abs(p), Math.abs(q)) === 1 || Math.abs(p * q) === 2 ? [[p, q]] : [],
  ),
)

export type Climbing<T extends object> = {
  /** What an origin gives; null where there is nothing, or nothing better than the second. */
  readonly at: (u: number, v: number, than: T) => T | null
  readonly originOf: (one: T) => Point
  /** Below zero where the first is the better. */
  readonly compare: (p: T, q: T) => number
  /** Nothing better is wished for. */
  readonly isDone: (one: T) => boolean
}

/** Moves a start about by steps that shrink to the least, for as many looks as may be spent. */
export function climbed<T extends object>(
  from: T,
  { at, originOf, compare, isDone }: Climbing<T>,
  stepMm: number,
  leastStepMm: number,
  looks: number,
): T {
  let here = from
  let left = looks
  for (let share = 1; share * stepMm > leastStepMm; ) {
    if (isDone(here)) return here
    const before = here
    for (const [p, q] of AROUND) {
      if (--left < 0) return here
      const [u, v] = originOf(here)
      const tried = at(u + p * share * stepMm, v + q * share * stepMm, here)
      if (tried !== null && compare(tried, here) < 0) here = tried
    }
    if (here === before) share /= 2
  }
  return here
}

/** The best of what it is given, no two nearer than `apartMm` to each other both ways over the repeat. */
export class BestApart<T extends object> {
  readonly best: T[] = []
  private readonly most: number
  private readonly repeat: Point
  private readonly apartMm: number
  private readonly climbing: Pick<Climbing<T>, 'originOf' | 'compare'>

  constructor(most: number, repeat: Point, apartMm: number, climbing: Pick<Climbing<T>, 'originOf' | 'compare'>) {
    this.most = most
    this.repeat = repeat
    this.apartMm = apartMm
    this.climbing = climbing
  }

  /** The last that would still be kept; null while there is room. */
  get last(): T | null {
    return this.best.length < this.most ? null : this.best.at(-1)!
  }

  take(one: T): void {
    const { compare } = this.climbing
    for (const other of this.best) if (compare(other, one) <= 0 && this.near(one, other)) return
    for (let k = this.best.length - 1; k >= 0; k--) if (this.near(one, this.best[k]!)) this.best.splice(k, 1)
    let at = this.best.length
    while (at > 0 && compare(one, this.best[at - 1]!) < 0) at--
    this.best.splice(at, 0, one)
    if (this.best.length > this.most) this.best.pop()
  }

  private near(p: T, q: T): boolean {
    const [a, b] = [this.climbing.originOf(p), this.climbing.originOf(q)]
    return this.isClose(a[0] - b[0], this.repeat[0]) && this.isClose(a[1] - b[1], this.repeat[1])
  }

  private isClose(offMm: number, repeatMm: number): boolean {
    const off = wrap(offMm, repeatMm)
    return Math.min(off, repeatMm - off) < this.apartMm
  }
}
