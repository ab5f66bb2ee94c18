/** The lattice of each pattern: rows, weaves, hexagons, two sizes. */
import { hexagons } from './hexagon.ts'
import { eachRow, type Family, type Lattice, meetsBox, NEAR_MM, within } from './lattice.ts'
import { plankShifts, USUAL_STAGGER_MM } from './random.ts'
import { fractionValue, type LayoutSpec, type Pattern } from './spec.ts'
import { twoSizes } from './two-size.ts'

/** What the floor lends to a sequence of random rows: a seed and where it lies in u and v. */
export type Extent = {
  readonly seed: number
  readonly minU: number
  readonly maxU: number
  readonly minV: number
  readonly maxV: number
}

export function latticeOf(spec: LayoutSpec, extent: Extent): Lattice {
  const { jointMm, pattern } = spec
  const { lengthMm, widthMm } = spec.tile
  switch (pattern.kind) {
    case 'stacked':
      return rows(lengthMm, widthMm, jointMm, () => 0, false)
    case 'offset':
      return pattern.along === 'length'
        ? rows(lengthMm, widthMm, jointMm, steps(pattern, lengthMm + jointMm), false)
        : rows(widthMm, lengthMm, jointMm, steps(pattern, widthMm + jointMm), true)
    case 'random':
      return randomRows(spec, pattern.leastStaggerMm ?? USUAL_STAGGER_MM, extent)
    case 'herringbone':
      return herringbone(lengthMm, widthMm, jointMm, pattern.planks)
    case 'basketweave':
      return basketweave(lengthMm, widthMm, jointMm)
    case 'hexagon':
      return hexagons(Math.min(lengthMm, widthMm), jointMm)
    case 'two-size':
      return twoSizes(Math.min(lengthMm, widthMm), pattern.smallMm, jointMm)
  }
}

/** How far row j is moved [mm]: frac(j share) of the module, by whole numbers where the share is exact. */
function steps(pattern: Extract<Pattern, { kind: 'offset' }>, module: number): (j: number) => number {
  const { share, step } = pattern
  const fold = step === 'stair' ? (j: number) => j : (j: number) => j & 1
  if (typeof share !== 'number') {
    const { over, under } = share
    return (j) => ((((fold(j) * over) % under) + under) % under) * (module / under)
  }
  const value = fractionValue(share)
  return (j) => {
    const moved = fold(j) * value
    return (moved - Math.floor(moved)) * module
  }
}

function randomRows(spec: LayoutSpec, leastMm: number, { seed, minU, maxU, minV, maxV }: Extent): Lattice {
  const { jointMm, tile } = spec
  const first = Math.floor(minV / (tile.widthMm + jointMm)) - 1
  const last = Math.floor(maxV / (tile.widthMm + jointMm)) + 1
  // Planks begin half a joint into their modules.
  const ends = { low: minU - jointMm / 2, high: maxU - jointMm / 2 }
  const shifts = plankShifts(last - first + 1, seed, tile.lengthMm, tile.lengthMm + jointMm, leastMm, ends)
  return rows(tile.lengthMm, tile.widthMm, jointMm, (j) => shifts[j - first] ?? 0, false)
}

const boxed = (of: Omit<Family, 'shape' | 'moduleMm2' | 'tileMm2'>): Family => ({
  shape: 'box',
  ...of,
  moduleMm2: of.a * of.b,
  tileMm2: of.tileA * of.tileB,
})

const family = (tileA: number, tileB: number, jointMm: number, turned: boolean): Family =>
  boxed({
    a: tileA + jointMm,
    b: tileB + jointMm,
    insetU: jointMm / 2,
    insetV: jointMm / 2,
    tileA,
    tileB,
    turned,
  })

function rows(tileA: number, tileB: number, jointMm: number, shift: (j: number) => number, swapped: boolean): Lattice {
  const only = family(tileA, tileB, jointMm, swapped)
  const { a, b } = only
  return {
    families: [only],
    swapped,
    originU: (_f, i, j) => i * a + shift(j),
    originV: (_f, _i, j) => j * b,
    along: (u0, v0, u1, v1, meet) =>
      eachRow(u0, v0, u1, v1, b, (j, low, high) => {
        const moved = shift(j)
        const last = Math.floor((high - moved + NEAR_MM) / a)
        for (let i = Math.floor((low - moved - NEAR_MM) / a); i <= last; i++) meet(0, i, j)
      }),
  }
}

/** Planks of module l by w, lying ones and standing ones: the corner of each repeats by (t, t) and (l, -l), t the width of the
 *  planks that act as one. Any ratio of l to w covers the plane without gap. */
function herringbone(lengthMm: number, widthMm: number, jointMm: number, planks: 1 | 2): Lattice {
  const [l, w] = [lengthMm + jointMm, widthMm + jointMm]
  const t = planks * w
  const lying = family(lengthMm, widthMm, jointMm, false)
  const standing = family(widthMm, lengthMm, jointMm, true)
  const families: Family[] = []
  const corners: [number, number][] = []
  for (let p = 0; p < planks; p++) {
    families.push(lying, standing)
    corners.push([0, p * w], [l + p * w, t - l])
  }
  const originU = (f: number, i: number, j: number) => corners[f]![0] + i * t + j * l
  const originV = (f: number, i: number, j: number) => corners[f]![1] + i * t - j * l
  return {
    families,
    swapped: false,
    originU,
    originV,
    along: (u0, v0, u1, v1, meet) => {
      for (let f = 0; f < families.length; f++) {
        const { a, b } = families[f]!
        const [cu, cv] = corners[f]!
        // Every plank of chain j lies in one diagonal strip of u - v, whatever i.
        const [d0, d1] = [u0 - v0, u1 - v1]
        const first = Math.ceil((Math.min(d0, d1) - (cu - cv + a) - NEAR_MM) / (2 * l))
        const last = Math.floor((Math.max(d0, d1) - (cu - cv - b) + NEAR_MM) / (2 * l))
        for (let j = first; j <= last; j++) {
          const low = cu - cv - b + 2 * j * l - NEAR_MM
          const high = cu - cv + a + 2 * j * l + NEAR_MM
          const [s0, s1] = within(d0, d1, low, high)
          if (s0 > s1) continue
          const across = b <= a
          const [c0, c1] = across ? [v0, v1] : [u0, u1]
          const base = across ? cv - j * l : cu + j * l
          const [p, q] = [c0 + s0 * (c1 - c0), c0 + s1 * (c1 - c0)]
          const from = Math.ceil((Math.min(p, q) - base - (across ? b : a) - NEAR_MM) / t)
          const to = Math.floor((Math.max(p, q) - base + NEAR_MM) / t)
          for (let i = from; i <= to; i++) {
            const [ou, ov] = [originU(f, i, j), originV(f, i, j)]
            if (meetsBox(u0, v0, u1, v1, ou, ov, ou + a, ov + b)) meet(f, i, j)
          }
        }
      }
    },
  }
}

/** Planks in a square of the basketweave, the nearest whole number. */
export const weavePlanks = (lengthMm: number, widthMm: number, jointMm: number): number =>
  Math.max(1, Math.round((lengthMm + jointMm) / (widthMm + jointMm)))

/** What a plank is longer than n planks with their joints: L - n W - (n - 1) j. [mm] */
export function weaveMismatch(lengthMm: number, widthMm: number, jointMm: number): number {
  const n = weavePlanks(lengthMm, widthMm, jointMm)
  return lengthMm - n * widthMm - (n - 1) * jointMm
}

/** Squares of n planks, lying where p + q is even and standing where it is odd. The mismatch widens the joints. */
function basketweave(lengthMm: number, widthMm: number, jointMm: number): Lattice {
  const n = weavePlanks(lengthMm, widthMm, jointMm)
  const s = Math.max(lengthMm, n * widthMm + (n - 1) * jointMm) + jointMm
  const strip = s / n
  const lying = boxed({
    a: s,
    b: strip,
    insetU: (s - lengthMm) / 2,
    insetV: (strip - widthMm) / 2,
    tileA: lengthMm,
    tileB: widthMm,
    turned: false,
  })
  const standing = boxed({
    a: strip,
    b: s,
    insetU: lying.insetV,
    insetV: lying.insetU,
    tileA: widthMm,
    tileB: lengthMm,
    turned: true,
  })
  const square = (k: number) => Math.floor(k / n)
  return {
    families: [lying, standing],
    swapped: false,
    originU: (f, i) => (f === 0 ? i * s : i * strip),
    originV: (f, _i, j) => (f === 0 ? j * strip : j * s),
    along: (u0, v0, u1, v1, meet) => {
      eachRow(u0, v0, u1, v1, strip, (j, low, high) => {
        for (let i = Math.floor((low - NEAR_MM) / s); i <= Math.floor((high + NEAR_MM) / s); i++)
          if (((i + square(j)) & 1) === 0) meet(0, i, j)
      })
      eachRow(v0, u0, v1, u1, strip, (i, low, high) => {
        for (let j = Math.floor((low - NEAR_MM) / s); j <= Math.floor((high + NEAR_MM) / s); j++)
          if (((square(i) + j) & 1) !== 0) meet(1, i, j)
      })
    },
  }
}
