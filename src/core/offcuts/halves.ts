/** Pieces that one straight saw cut makes of a tile, at any angle: what falls away may be the piece for the opposite wall.
 *  A piece lies in its tile as a half-plane cuts it off; two such pieces come out of one tile when they are cut in the same
 *  direction from opposite sides and leave a kerf between them. Both keep the moulded edges they have. */

export type Point = readonly [number, number]

/** A tile cut by one line. `direction` is where the line's normal points [degrees, 0 to 180), `side` which side is kept, and
 *  `keptMm` how far the piece reaches along the normal. */
export type Half = {
  readonly direction: number
  readonly side: 1 | -1
  readonly keptMm: number
  readonly wholeMm: number
}

const NEAR_MM = 0.05
const SAME_DEG = 0.01

/** The one cut of a piece from its outline on the tile; null where there are several, or the cut runs along the tile. */
export function halfOf(outline: readonly Point[], lengthMm: number, widthMm: number): Half | null {
  const onEdge = ([x, y]: Point, [u, v]: Point): boolean =>
    (near(x, 0) && near(u, 0)) ||
    (near(x, lengthMm) && near(u, lengthMm)) ||
    (near(y, 0) && near(v, 0)) ||
    (near(y, widthMm) && near(v, widthMm))
  const edges = outline
    .map((p, k) => [p, outline[(k + 1) % outline.length]!] as const)
    .filter(([p, q]) => Math.hypot(q[0] - p[0], q[1] - p[1]) > NEAR_MM)
  const cuts = edges.filter(([p, q]) => !onEdge(p, q))
  if (cuts.length !== 1) return null
  const [[p, q]] = cuts as [readonly [Point, Point]]
  const long = Math.hypot(q[0] - p[0], q[1] - p[1])
  const normal: Point = [(q[1] - p[1]) / long, -(q[0] - p[0]) / long]
  if (Math.abs(normal[0]) < 1e-6 || Math.abs(normal[1]) < 1e-6) return null
  const along = ([x, y]: Point): number => x * normal[0] + y * normal[1]
  const at = along(p)
  const reach = (points: readonly Point[]): readonly [number, number] => {
    const all = points.map(along)
    return [Math.min(...all), Math.max(...all)]
  }
  const [low, high] = reach(outline)
  const [least, most] = reach([
    [0, 0],
    [lengthMm, 0],
    [lengthMm, widthMm],
    [0, widthMm],
  ])
  // The kept part must be all of the tile on its side of the line.
  const keepsLow = near(high, at) && near(low, least)
  const keepsHigh = near(low, at) && near(high, most)
  if (keepsLow === keepsHigh) return null
  const degrees = (Math.atan2(normal[1], normal[0]) * 180) / Math.PI
  const turned = degrees < 0 || degrees >= 180 - SAME_DEG
  const direction = turned ? degrees + (degrees < 0 ? 180 : -180) : degrees
  const side = (keepsHigh ? 1 : -1) * (turned ? -1 : 1)
  return {
    direction: Math.abs(direction),
    side: side === 1 ? 1 : -1,
    keptMm: keepsHigh ? most - at : at - least,
    wholeMm: most - least,
  }
}

const near = (a: number, b: number): boolean => Math.abs(a - b) <= NEAR_MM

/** Pairs of pieces that come out of one tile each, as indexes; the most there can be for each direction.
 *  @param mayTurn a piece may be given half a turn, so that both may come from the same wall */
export function pairHalves(
  halves: readonly (Half | null)[],
  kerfMm: number,
  mayTurn: boolean,
): (readonly [number, number])[] {
  const groups = new Map<number, number[]>()
  halves.forEach((half, k) => {
    if (half === null) return
    const key = Math.round(half.direction / (10 * SAME_DEG))
    const group = groups.get(key)
    if (group) group.push(k)
    else groups.set(key, [k])
  })
  const fits = (i: number, j: number): boolean =>
    halves[i]!.keptMm + halves[j]!.keptMm + kerfMm <= halves[i]!.wholeMm + NEAR_MM
  const size = (k: number): number => halves[k]!.keptMm
  return [...groups.values()].flatMap((group) =>
    mayTurn ? anyTwo(group, size, fits) : opposite(group, halves, size, fits),
  )
}

type Fits = (i: number, j: number) => boolean

/** The largest with the smallest: if they do not fit, the largest fits with none. */
function anyTwo(group: readonly number[], size: (k: number) => number, fits: Fits): [number, number][] {
  const sorted = group.toSorted((i, j) => size(i) - size(j))
  const pairs: [number, number][] = []
  for (let low = 0, high = sorted.length - 1; low < high; high--)
    if (fits(sorted[low]!, sorted[high]!)) pairs.push([sorted[low++]!, sorted[high]!])
  return pairs
}

/** One from each side: the largest of one with the largest of the other that fits. */
function opposite(
  group: readonly number[],
  halves: readonly (Half | null)[],
  size: (k: number) => number,
  fits: Fits,
): [number, number][] {
  const of = (side: 1 | -1) => group.filter((k) => halves[k]!.side === side)
  const ones = of(1).toSorted((i, j) => size(j) - size(i))
  const others = of(-1).toSorted((i, j) => size(i) - size(j))
  const pairs: [number, number][] = []
  let next = 0
  // From the largest down, each takes the smallest that is left, as long as that fits.
  for (const one of ones) if (next < others.length && fits(one, others[next]!)) pairs.push([one, others[next++]!])
  return pairs
}
