/** The slow way, by a general library and by the workbench's words alone: every place, clipped by itself. */
import polygonClipping from 'polygon-clipping'
import { boxOf, type Floor, type Point, ringArea } from '../../../src/core/floor/rings.ts'
import type { LayoutSpec } from '../../../src/core/layout/spec.ts'

/** Whole and cut places; `unsure` are those within a hundredth of the 3 mm² that decide, and those with
 *  parts that meet in a point: one piece or two. */
export type Reference = {
  whole: number
  cut: number
  pieces: number
  unsure: number
  tileMm2: number
  smallestMm: number
}

type Place = { u: number; v: number; a: number; b: number; hexagon?: true }

/** Tiles that may meet the box u, v from `low` to `high`, from the pattern's own words. */
function places(spec: LayoutSpec, low: Point, high: Point): Place[] {
  const { lengthMm: L, widthMm: W } = spec.tile
  const [l, w] = [L + spec.jointMm, W + spec.jointMm]
  const found: Place[] = []
  const range = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, k) => from + k)
  const { pattern } = spec
  if (pattern.kind === 'stacked' || pattern.kind === 'offset') {
    const share =
      pattern.kind === 'stacked'
        ? 0
        : typeof pattern.share === 'number'
          ? pattern.share
          : pattern.share.over / pattern.share.under
    const part = (j: number) =>
      pattern.kind === 'offset' && pattern.step === 'back-and-forth' ? (((j % 2) + 2) % 2) * share : j * share
    const frac = (x: number) => x - Math.floor(x)
    const along = pattern.kind === 'offset' && pattern.along === 'width'
    if (along) {
      for (const i of range(Math.floor(low[0] / l) - 2, Math.ceil(high[0] / l) + 2))
        for (const j of range(Math.floor(low[1] / w) - 2, Math.ceil(high[1] / w) + 2))
          found.push({ u: i * l, v: j * w + frac(part(i)) * w, a: L, b: W })
    } else {
      for (const j of range(Math.floor(low[1] / w) - 2, Math.ceil(high[1] / w) + 2))
        for (const i of range(Math.floor(low[0] / l) - 2, Math.ceil(high[0] / l) + 2))
          found.push({ u: i * l + frac(part(j)) * l, v: j * w, a: L, b: W })
    }
  }
  if (pattern.kind === 'herringbone') {
    const t = pattern.planks * w
    const reach =
      Math.ceil((high[0] - low[0] + high[1] - low[1] + Math.abs(low[0]) + Math.abs(low[1])) / Math.min(t, l)) + 6
    for (const i of range(-reach, reach))
      for (const k of range(-reach, reach))
        for (const p of range(0, pattern.planks - 1)) {
          found.push({ u: i * t + k * l, v: i * t - k * l + p * w, a: L, b: W })
          found.push({ u: l + p * w + i * t + k * l, v: t - l + i * t - k * l, a: W, b: L })
        }
  }
  if (pattern.kind === 'hexagon') {
    // Across the sides F, two of them upright: rows three quarters of the tips' height apart, every other half a place on.
    const across = Math.min(L, W)
    const place = across + spec.jointMm
    const row = (place * Math.sqrt(3)) / 2
    for (const k of range(Math.floor(low[1] / row) - 2, Math.ceil(high[1] / row) + 2))
      for (const i of range(Math.floor(low[0] / place) - 2, Math.ceil(high[0] / place) + 2))
        found.push({
          u: i * place + (k % 2 === 0 ? 0 : place / 2),
          v: k * row,
          a: across,
          b: (2 * across) / Math.sqrt(3),
          hexagon: true,
        })
  }
  if (pattern.kind === 'two-size') {
    const [large, small] = [Math.min(L, W), pattern.smallMm]
    const [A, B] = [large + spec.jointMm, small + spec.jointMm]
    const far = Math.max(...[...low, ...high].map(Math.abs)) + A + B
    const reach = Math.ceil((far * (A + B)) / (A * A + B * B)) + 2
    for (const i of range(-reach, reach))
      for (const k of range(-reach, reach)) {
        found.push({ u: i * A - k * B, v: i * B + k * A, a: large, b: large })
        found.push({ u: A + i * A - k * B, v: i * B + k * A, a: small, b: small })
      }
  }
  return found.filter((p) => p.u < high[0] && p.v < high[1] && p.u + p.a > low[0] && p.v + p.b > low[1])
}

/** The floor seen from the lattice: moved to its origin and turned back. */
function seenFrom(floor: Floor, spec: LayoutSpec): Point[][] {
  const angle = (-spec.angleDeg * Math.PI) / 180
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const [ox, oy] = spec.originMm
  return floor.rings.map((ring) =>
    ring.map(([x, y]): Point => [even((x - ox) * c - (y - oy) * s), even((x - ox) * s + (y - oy) * c)]),
  )
}

/** To a ten-millionth of a millimetre: the library fails on walls that lie apart by floating noise alone. */
const even = (value: number): number => Math.round(value * 1e7) / 1e7

type Pair = [number, number]

export function reference(floor: Floor, spec: LayoutSpec): Reference {
  const rings = seenFrom(floor, spec)
  const outer = rings.filter((r) => ringArea(r) > 0)
  const inner = rings.filter((r) => ringArea(r) < 0)
  const shape = polygonClipping.difference(
    outer.map((r) => [r as Pair[]]),
    inner.map((r) => [r as Pair[]]),
  )
  const box = boxOf(rings)
  const result: Reference = { whole: 0, cut: 0, pieces: 0, unsure: 0, tileMm2: 0, smallestMm: Infinity }
  for (const { u, v, a, b, hexagon } of places(spec, [box.minX, box.minY], [box.maxX, box.maxY])) {
    const share: Pair[] = hexagon
      ? [
          [0.5, 0],
          [1, 0.25],
          [1, 0.75],
          [0.5, 1],
          [0, 0.75],
          [0, 0.25],
        ]
      : [
          [0, 0],
          [1, 0],
          [1, 1],
          [0, 1],
        ]
    const tile = share.map(([p, q]): Pair => [even(u + p * a), even(v + q * b)])
    const face = Math.abs(ringArea(tile))
    const parts = polygonClipping.intersection([[tile]], shape)
    const areas = parts.map(([first, ...holes]) => ring(first!) - holes.reduce((sum, h) => sum + ring(h), 0))
    const area = areas.reduce((sum, each) => sum + each, 0)
    const sliver = (mm2: number) => Math.abs(mm2 - 3) < 0.01
    if (sliver(face - area) || areas.some(sliver) || parts.some(([first]) => pinched(first!))) result.unsure++
    if (area < 3) continue
    result.tileMm2 += area
    if (area > face - 3) {
      result.whole++
      continue
    }
    result.cut++
    parts.forEach(([first], k) => {
      if (areas[k]! < 3) return
      result.pieces++
      const one = boxOf([first as Pair[]])
      result.smallestMm = Math.min(result.smallestMm, one.maxX - one.minX, one.maxY - one.minY)
    })
  }
  return result
}

const ring = (points: Pair[]): number => Math.abs(ringArea(points.slice(0, -1)))

/** Length of the joints inside the floor, side by side: each stretch of joint is the left or lower side of one place with half a
 *  joint round it. For floors and lattices of which no side lies on a wall. */
export function jointLengthBySides(floor: Floor, spec: LayoutSpec): number {
  const rings = seenFrom(floor, spec)
  const box = boxOf(rings)
  const half = spec.jointMm / 2
  let length = 0
  for (const { u, v, a, b, hexagon } of places(spec, [box.minX - 50, box.minY - 50], [box.maxX + 50, box.maxY + 50])) {
    const tip = hexagon ? half * (2 / Math.sqrt(3)) : half
    const [lowU, lowV, wide, high] = [u - half, v - tip, a + 2 * half, b + 2 * tip]
    const sides: [Point, Point][] = hexagon
      ? [
          [
            [lowU, lowV + high / 4],
            [lowU, lowV + (3 * high) / 4],
          ],
          [
            [lowU, lowV + high / 4],
            [lowU + wide / 2, lowV],
          ],
          [
            [lowU + wide / 2, lowV],
            [lowU + wide, lowV + high / 4],
          ],
        ]
      : [
          [
            [lowU, lowV],
            [lowU, lowV + high],
          ],
          [
            [lowU, lowV],
            [lowU + wide, lowV],
          ],
        ]
    for (const [p, q] of sides) length += stretchInside(rings, p, q)
  }
  return length
}

/** How much of a stretch lies inside, by where it crosses the outline. */
function stretchInside(rings: Point[][], p: Point, q: Point): number {
  const [dx, dy] = [q[0] - p[0], q[1] - p[1]]
  const side = (o: Point): number => dx * (o[1] - p[1]) - dy * (o[0] - p[0])
  const crossings: number[] = []
  for (const r of rings)
    r.forEach((s, k) => {
      const t = r[(k + 1) % r.length]!
      if (side(s) > 0 === side(t) > 0) return
      const at = side(s) / (side(s) - side(t))
      const [x, y] = [s[0] + at * (t[0] - s[0]), s[1] + at * (t[1] - s[1])]
      crossings.push(((x - p[0]) * dx + (y - p[1]) * dy) / (dx * dx + dy * dy))
    })
  crossings.sort((x, y) => x - y)
  let share = 0
  for (let k = 0; k + 1 < crossings.length; k += 2)
    share += Math.max(0, Math.min(1, crossings[k + 1]!) - Math.max(0, crossings[k]!))
  return share * Math.hypot(dx, dy)
}

/** Length of the joints' centre lines inside the floor for stacked and offset rows, line by line. */
export function jointLength(floor: Floor, spec: LayoutSpec): number {
  const rings = seenFrom(floor, spec)
  const { jointMm: j, pattern } = spec
  const [l, w] = [spec.tile.lengthMm + j, spec.tile.widthMm + j]
  const box = boxOf(rings)
  const share =
    pattern.kind === 'offset'
      ? typeof pattern.share === 'number'
        ? pattern.share
        : pattern.share.over / pattern.share.under
      : 0
  let length = 0
  for (let row = Math.floor(box.minY / w) - 1; row <= Math.ceil(box.maxY / w) + 1; row++) {
    length += insideLength(rings, 1, row * w - j / 2, -Infinity, Infinity)
    const moved = (row * share - Math.floor(row * share)) * l
    for (let i = Math.floor(box.minX / l) - 2; i <= Math.ceil(box.maxX / l) + 2; i++)
      length += insideLength(rings, 0, i * l + moved - j / 2, row * w - j / 2, (row + 1) * w - j / 2)
  }
  return length
}

/** How much of the line with coordinate `axis` = at lies inside, between two values of the other coordinate. */
function insideLength(rings: Point[][], axis: 0 | 1, at: number, from: number, to: number): number {
  const other = axis === 0 ? 1 : 0
  const crossings: number[] = []
  for (const r of rings)
    r.forEach((p, k) => {
      const q = r[(k + 1) % r.length]!
      if (p[axis] > at !== q[axis] > at)
        crossings.push(p[other] + ((at - p[axis]) / (q[axis] - p[axis])) * (q[other] - p[other]))
    })
  crossings.sort((x, y) => x - y)
  let sum = 0
  for (let k = 0; k + 1 < crossings.length; k += 2)
    sum += Math.max(0, Math.min(to, crossings[k + 1]!) - Math.max(from, crossings[k]!))
  return sum
}

/** Whether an outline passes one point twice. */
const pinched = (points: Pair[]): boolean =>
  new Set(points.slice(1).map(([x, y]) => `${x.toFixed(4)} ${y.toFixed(4)}`)).size < points.length - 1
