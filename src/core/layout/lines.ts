/** Lines on a layout: the joint that loses a sliver, a story pole, movement joints snapped to grout joints. */
import { andThen, fine, type Outcome, type Range, refuse, within } from '../../problem.ts'
import { boxOf, type Floor, type Point } from '../floor/rings.ts'
import { type Laid, prepare, turn } from './prepare.ts'
import { isInRows, type LayoutSpec } from './spec.ts'

/** Marks on a pole are read to this [mm]: 1/16 in. */
export const POLE_STEP_MM = 25.4 / 16

/** The joint at which n whole tiles fill a span: j = (span - soft - n W) / (n - 1). [mm]
 *  @param softMm the soft joints at both ends together
 *  @param leastMm the least joint allowed, @param mostMm the greatest: a joint is no wider than the tile is thick
 *  @returns the n whose joint lies nearest to the present one, or null where none is allowed
 *  @source references 13.9: 97-1/4 in, 16 courses of 5-7/8 in, 1/8 in at the bottom: 0.208 in */
export function jointWithoutSliver(
  spanMm: number,
  softMm: number,
  sideMm: number,
  jointMm: number,
  leastMm: number,
  mostMm: number,
): { tiles: number; jointMm: number } | null {
  const about = Math.round((spanMm - softMm + jointMm) / (sideMm + jointMm))
  const fits = [about - 1, about, about + 1]
    .filter((tiles) => tiles >= 2)
    .map((tiles) => ({ tiles, jointMm: (spanMm - softMm - tiles * sideMm) / (tiles - 1) }))
    .filter((fit) => fit.jointMm >= leastMm && fit.jointMm <= mostMm)
    .sort((p, q) => Math.abs(p.jointMm - jointMm) - Math.abs(q.jointMm - jointMm))
  return fits[0] ?? null
}

export const POLE_MARKS: Range = { field: 'pole-marks', unit: '', min: 1, max: 1_000 }

export type PoleMark = {
  /** Where a tile ends and its joint begins, from zero. [mm] */
  readonly exactMm: number
  /** The same to 1/16 in. [mm] */
  readonly readMm: number
}

/** A story pole: the far edge of each tile from zero, every mark computed from zero so that no rounding adds up. [mm]
 *  @param firstMm extent of the first piece, which may be a cut @param count marks wanted, 1 to 1,000 @problem out-of-range */
export function storyPole(
  firstMm: number,
  sideMm: number,
  jointMm: number,
  count: number,
): Outcome<readonly PoleMark[]> {
  return andThen(within(POLE_MARKS, count), () =>
    fine(
      Array.from({ length: count }, (_, k) => {
        const exactMm = firstMm + k * (sideMm + jointMm)
        return { exactMm, readMm: Math.round(exactMm / POLE_STEP_MM) * POLE_STEP_MM }
      }),
    ),
  )
}

/** Movement joints wanted between the two walls of a length: ceil(length / spacing) - 1. */
export const movementLines = (lengthMm: number, spacingMm: number): number =>
  Math.max(0, Math.ceil(lengthMm / spacingMm - 1e-9) - 1)

export type MovementJoint = {
  /** 'x': the joint stands at this distance from the left wall and runs up; 'y': from the bottom wall, running across. */
  readonly along: 'x' | 'y'
  readonly fromLowMm: number
  /** Whether it falls on a grout joint that runs straight; else tiles are cut along it. */
  readonly onJoint: boolean
  /** Whether the slab's own joint put it there. */
  readonly ofSlab: boolean
  /** Its stretches on the floor, ends in floor coordinates. */
  readonly stretches: readonly (readonly [Point, Point])[]
}

export type MovementPlan = {
  readonly joints: readonly MovementJoint[]
  /** Joints inside the floor [mm]. */
  readonly insideMm: number
  /** The perimeter joint, round holes too [mm]. */
  readonly perimeterMm: number
  /** The widest field left in each direction [mm]. */
  readonly widestMm: { readonly x: number; readonly y: number }
}

export const SPACING: Range = { field: 'movement-spacing', unit: 'mm', min: 1_000, max: 20_000 }

/** Where the slab has joints of its own, by their distance from the left or bottom wall. [mm] */
export type SlabJoint = { readonly along: 'x' | 'y'; readonly fromLowMm: number }

/** Movement joints of a floor: spaced out evenly between the slab's own joints, snapped to the nearest grout joint.
 *  @param spacingMm 1,000 to 20,000 (SPACING): by exposure, see config
 *  @problem out-of-range; as `prepare` */
export function movementJoints(
  floor: Floor,
  spec: LayoutSpec,
  spacingMm: number,
  slab: readonly SlabJoint[] = [],
): Outcome<MovementPlan> {
  const spacing = within(SPACING, spacingMm)
  if (!spacing.ok) return spacing
  const ready = prepare(floor, spec)
  if (!ready.ok) return ready
  const box = boxOf(floor.rings)
  const x = linesAcross(floor, ready.value, spec, 'x', box.minX, box.maxX, spacingMm, slab)
  const y = linesAcross(floor, ready.value, spec, 'y', box.minY, box.maxY, spacingMm, slab)
  const joints = [...x.joints, ...y.joints]
  const long = (list: readonly (readonly [Point, Point])[]) =>
    list.reduce((sum, [p, q]) => sum + Math.hypot(q[0] - p[0], q[1] - p[1]), 0)
  return fine({
    joints,
    insideMm: joints.reduce((sum, joint) => sum + long(joint.stretches), 0),
    perimeterMm: floor.rings.reduce(
      (sum, ring) => sum + long(ring.map((p, k) => [p, ring[(k + 1) % ring.length]!] as const)),
      0,
    ),
    widestMm: { x: x.widest, y: y.widest },
  })
}

function linesAcross(
  floor: Floor,
  ready: Laid,
  spec: LayoutSpec,
  along: 'x' | 'y',
  low: number,
  high: number,
  spacingMm: number,
  slab: readonly SlabJoint[],
): { joints: MovementJoint[]; widest: number } {
  const fixed = slab
    .filter((joint) => joint.along === along && joint.fromLowMm > 0 && joint.fromLowMm < high - low)
    .map((joint) => low + joint.fromLowMm)
    .sort((p, q) => p - q)
  const grid = gridOf(ready, spec, along)
  const places: { at: number; ofSlab: boolean; onJoint: boolean }[] = []
  const ends = [low, ...fixed, high]
  for (let k = 0; k + 1 < ends.length; k++) {
    const [from, to] = [ends[k]!, ends[k + 1]!]
    const lines = movementLines(to - from, spacingMm)
    for (let n = 1; n <= lines; n++) {
      const even = from + ((to - from) * n) / (lines + 1)
      const near = grid === null ? even : grid.at + Math.round((even - grid.at) / grid.module) * grid.module
      const inside = near > from && near < to
      places.push({ at: inside ? near : even, ofSlab: false, onJoint: grid !== null && inside })
    }
  }
  for (const at of fixed) {
    const off =
      grid === null ? Infinity : Math.abs(at - grid.at - Math.round((at - grid.at) / grid.module) * grid.module)
    places.push({ at, ofSlab: true, onJoint: off <= Math.max(1, spec.jointMm / 2) })
  }
  places.sort((p, q) => p.at - q.at)
  const stops = [low, ...places.map((place) => place.at), high]
  const widest = Math.max(...stops.slice(1).map((stop, k) => stop - stops[k]!))
  const joints = places.map(({ at, ofSlab, onJoint }) => ({
    along,
    fromLowMm: at - low,
    ofSlab,
    onJoint,
    stretches: stretchesAt(floor, along, at),
  }))
  return { joints, widest }
}

/** The straight grout joints square to a direction: one centre line and the module; null where none runs straight. */
function gridOf(ready: Laid, spec: LayoutSpec, along: 'x' | 'y'): { at: number; module: number } | null {
  const { kind } = spec.pattern
  if (!isInRows(spec.pattern)) return null
  const [cos, sin] = turn(spec.angleDeg)
  const level = Math.abs(sin) < 1e-12
  if (!level && Math.abs(cos) > 1e-12) return null
  const { a, b, insetU, insetV } = ready.lattice.families[0]!
  const axisIsLength = level === (along === 'x') // the direction of the tile's length, before any swap
  const axisIsU = axisIsLength !== ready.lattice.swapped
  // Joints along u are broken where rows are moved.
  if (axisIsU && kind !== 'stacked') return null
  const corner = spec.originMm[along === 'x' ? 0 : 1]
  const ahead = along === 'x' ? (axisIsLength ? cos : -sin) : axisIsLength ? sin : cos
  return { at: corner - ahead * (axisIsU ? insetU : insetV), module: axisIsU ? a : b }
}

/** The parts of an upright (x) or level (y) line that lie on the floor. */
function stretchesAt(floor: Floor, along: 'x' | 'y', at: number): (readonly [Point, Point])[] {
  const [axis, other] = along === 'x' ? [0, 1] : [1, 0]
  const crossings = floor.rings
    .flatMap((ring) =>
      ring.flatMap((p, k) => {
        const q = ring[(k + 1) % ring.length]!
        if (p[axis]! > at === q[axis]! > at) return []
        return [p[other]! + ((at - p[axis]!) / (q[axis]! - p[axis]!)) * (q[other]! - p[other]!)]
      }),
    )
    .sort((p, q) => p - q)
  const point = (value: number): Point => (along === 'x' ? [at, value] : [value, at])
  return crossings.flatMap((from, k) =>
    k % 2 === 0 && k + 1 < crossings.length ? [[point(from), point(crossings[k + 1]!)] as const] : [],
  )
}

/** Sealant tubes for joints: length x width x depth over the tube's volume, whole tubes. Widths above 0 [mm], volume [mL].
 *  @problem out-of-range @source geometry; references 13.15: 300 mL fills 24 ft of 1/4 x 1/4 in */
export function sealantTubes(lengthMm: number, widthMm: number, depthMm: number, tubeMl = 300): Outcome<number> {
  const ml = (lengthMm * widthMm * depthMm) / 1000
  if (!(ml >= 0 && tubeMl > 0)) return refuse('out-of-range', { field: 'sealant', value: ml, min: 0, max: 1e9 })
  return fine(Math.ceil(ml / tubeMl - 1e-9))
}

/** The pattern carried on round a corner: the next wall's spec, its courses level with the last one's and its first piece what
 *  the corner left over. Both walls are floors stood upright with x from left to right as the crew walks along them. */
export const roundTheCorner = (spec: LayoutSpec, lengthMm: number): LayoutSpec => ({
  ...spec,
  originMm: [spec.originMm[0] - lengthMm, spec.originMm[1]],
})
