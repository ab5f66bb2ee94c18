/** Modules that no wall meets and that lie wholly inside the floor. */
import type { Walls } from './box-walls.ts'
import type { MetModules } from './met.ts'
import type { Laid } from './prepare.ts'

/** How many modules of each family lie wholly inside: by area where all have one, told apart by looking where not. */
export function insideOf(laid: Laid, met: MetModules, unmetMm2: number): number[] {
  const { families } = laid.lattice
  const inside = families.map(() => 0)
  if (families.every((kind) => Math.abs(kind.moduleMm2 - families[0]!.moduleMm2) < 1e-6)) {
    inside[0] = Math.round(unmetMm2 / families[0]!.moduleMm2)
    return inside
  }
  insideModules(
    laid,
    (f, i, j) => met.has(f, i, j),
    (f) => inside[f]!++,
  )
  return inside
}

/** More rows than any floor has modules of 5 mm. */
const MOST_ROWS = 2 ** 22

/** Lines stop this short of walls, so that they meet nothing beyond [mm]. */
const CLEAR_MM = 1e-4

/** Tells of each module that no wall meets, found by lines drawn over the floor closer than the narrowest one is high. */
export function insideModules(
  { lattice, walls }: Laid,
  isMet: (family: number, i: number, j: number) => boolean,
  tell: (family: number, i: number, j: number) => void,
): void {
  // A hexagon is as wide as its box over the middle half of its height only.
  const reach = (f: number): number => (lattice.families[f]!.shape === 'hexagon' ? 0.25 : 0)
  const step = 0.99 * Math.min(...lattice.families.map((kind, f) => kind.b * (1 - 2 * reach(f))))
  let [low, high] = [Infinity, -Infinity]
  for (const v of walls.v0) {
    if (v < low) low = v
    if (v > high) high = v
  }
  // Rows of hexagons reach into each other, so that one may be met twice by a line.
  const seen = lattice.families[0]!.shape === 'hexagon' ? new Set<number>() : null
  const first = low + step * 0.4637
  for (let n = 0; first + n * step < high; n++) {
    const [v, before] = [first + n * step, first + (n - 1) * step]
    const crossings = crossingsAt(walls, v)
    for (let k = 0; k + 1 < crossings.length; k += 2)
      lattice.along(crossings[k]! + CLEAR_MM, v, crossings[k + 1]! - CLEAR_MM, v, (family, i, j) => {
        const { b } = lattice.families[family]!
        const foot = lattice.originV(family, i, j) + b * reach(family)
        // Told at the first line through it, which lies on the floor as all of it does.
        if (v < foot || before >= foot || v > foot + b * (1 - 2 * reach(family)) || isMet(family, i, j)) return
        const key = i * MOST_ROWS + j
        if (seen?.has(key)) return
        seen?.add(key)
        tell(family, i, j)
      })
  }
}

function crossingsAt({ u0, v0, u1, v1 }: Walls, v: number): number[] {
  const found: number[] = []
  for (let w = 0; w < u0.length; w++)
    if (v0[w]! > v !== v1[w]! > v) found.push(u0[w]! + ((v - v0[w]!) / (v1[w]! - v0[w]!)) * (u1[w]! - u0[w]!))
  return found.sort((p, q) => p - q)
}
