/** What to lay and how: tile, joint, pattern, angle, origin, wall gap. Lengths in mm. */
import { andThen, fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import type { Point } from '../floor/rings.ts'

/** An exact share of the module, such as one third: thirds kept as 0.3333 drift 12 mm over 300 rows. */
export type Fraction = { readonly over: number; readonly under: number }

export type Pattern =
  | { readonly kind: 'stacked' }
  /** Each row moved on from the last by a share of the module. `stair` goes on the same way row after row; `back-and-forth`
   *  returns in every second row. `along: 'length'` moves rows along the tile's length, `'width'` moves columns along its width.
   *  A share given as a number is taken as given. */
  | {
      readonly kind: 'offset'
      readonly share: Fraction | number
      readonly step: 'stair' | 'back-and-forth'
      readonly along: 'length' | 'width'
    }
  /** Planks whose joints follow a fixed sequence made from the floor and the row; null: the usual least stagger. */
  | { readonly kind: 'random'; readonly leastStaggerMm: number | null }
  /** Planks at right angles, each end against its neighbour's side; `planks` side by side act as one (1 single, 2 double). */
  | { readonly kind: 'herringbone'; readonly planks: 1 | 2 }
  /** Squares of planks lying and standing in turn. */
  | { readonly kind: 'basketweave' }
  /** Regular hexagons, the lesser side of the tile across two of their sides, which stand along the pattern's second axis. */
  | { readonly kind: 'hexagon' }
  /** A large square tile with a small square one at its corners. */
  | { readonly kind: 'two-size'; readonly smallMm: number }

/** Whether all tiles lie alike in straight rows or columns. */
export const isInRows = ({ kind }: Pattern): boolean => kind === 'stacked' || kind === 'offset' || kind === 'random'

export type LayoutSpec = {
  /** Actual size of the tile: along its own first axis, and across. */
  readonly tile: { readonly lengthMm: number; readonly widthMm: number }
  readonly jointMm: number
  readonly pattern: Pattern
  /** Turn of the pattern, counter-clockwise about the origin. [degrees] */
  readonly angleDeg: number
  readonly originMm: Point
  /** Perimeter joint left at every wall and hole. */
  readonly wallGapMm: number
}

export const TILE_SIDE: Range = { field: 'tile-side', unit: 'mm', min: 5, max: 5_000 }
export const JOINT: Range = { field: 'joint', unit: 'mm', min: 0, max: 100 }
export const ANGLE: Range = { field: 'angle', unit: 'degrees', min: -360, max: 360 }
export const WALL_GAP: Range = { field: 'wall-gap', unit: 'mm', min: 0, max: 100 }
export const ORIGIN: Range = { field: 'origin', unit: 'mm', min: -1_000_000, max: 1_000_000 }
export const SHARE: Range = { field: 'offset', unit: '', min: -100, max: 100 }
export const STAGGER: Range = { field: 'least-stagger', unit: 'mm', min: 0, max: 1_000 }

export const fractionValue = (share: Fraction | number): number =>
  typeof share === 'number' ? share : share.over / share.under

/** A lattice needs no more than this to be asked; the rest takes its plain value. */
export function plainSpec(lengthMm: number, widthMm: number, jointMm: number): LayoutSpec {
  return {
    tile: { lengthMm, widthMm },
    jointMm,
    pattern: { kind: 'stacked' },
    angleDeg: 0,
    originMm: [0, 0],
    wallGapMm: 0,
  }
}

/** The spec if every number in it lies in its range.
 *  @problem out-of-range */
export function soundSpec(spec: LayoutSpec): Outcome<LayoutSpec> {
  const checks: [Range, number][] = [
    [TILE_SIDE, spec.tile.lengthMm],
    [TILE_SIDE, spec.tile.widthMm],
    [JOINT, spec.jointMm],
    [ANGLE, spec.angleDeg],
    [WALL_GAP, spec.wallGapMm],
    [ORIGIN, spec.originMm[0]],
    [ORIGIN, spec.originMm[1]],
  ]
  const { pattern } = spec
  if (pattern.kind === 'offset') checks.push([SHARE, fractionValue(pattern.share)])
  if (pattern.kind === 'random' && pattern.leastStaggerMm !== null) checks.push([STAGGER, pattern.leastStaggerMm])
  if (pattern.kind === 'two-size') {
    checks.push([TILE_SIDE, pattern.smallMm])
    const least = Math.min(spec.tile.lengthMm, spec.tile.widthMm)
    if (!(pattern.smallMm <= least)) checks.push([{ ...TILE_SIDE, max: least }, pattern.smallMm])
  }
  let sound: Outcome<unknown> = fine(0)
  for (const [range, value] of checks) sound = andThen(sound, () => within(range, value))
  return sound.ok ? fine(spec) : refuse(sound.problem.code, sound.problem.facts)
}
