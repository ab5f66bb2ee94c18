/** What a notched trowel leaves on the floor: from the notch's shape to the mean depth of the bed. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'
import type { Spread } from './spread.ts'

/** US trowels are read width x depth x space: the notch's width and depth, and the tooth between two notches. */
export type Notch = {
  readonly shape: 'square' | 'u' | 'v'
  readonly widthMm: number
  readonly depthMm: number
  readonly spaceMm: number
}

export const NOTCH_SIZE: Range = { field: 'notch', unit: 'mm', min: 0.5, max: 50 }
export const NOTCH_SPACE: Range = { field: 'notch-space', unit: 'mm', min: 0, max: 100 }
export const TROWEL_ANGLE: Range = { field: 'trowel-angle', unit: 'deg', min: 20, max: 90 }

/** A notch from what was said; depth and space are the width where they were not said (common practice, no source:
 *  it also gives the usual wall-adhesive coverage of a 3/16 x 5/32 in V, about 40 ft2 a gallon, from memory). [mm]
 *  @problem out-of-range  a size outside NOTCH_SIZE or NOTCH_SPACE; a U less deep than half its width, which is no U */
export function notchOf(shape: Notch['shape'], widthMm: number, depthMm = widthMm, spaceMm = widthMm): Outcome<Notch> {
  const width = within(NOTCH_SIZE, widthMm)
  if (!width.ok) return width
  const depth = within(shape === 'u' ? { ...NOTCH_SIZE, min: widthMm / 2 } : NOTCH_SIZE, depthMm)
  if (!depth.ok) return depth
  const space = within(NOTCH_SPACE, spaceMm)
  return space.ok ? fine({ shape, widthMm, depthMm, spaceMm }) : space
}

/** Area of one notch. [mm2]
 *  Square w d; U, round-bottomed, w d - w²/2 + pi w²/8; V w d / 2.
 *  @source geometry; the measures of a notch: German adhesives association briefing note TKB-6 (2007) s. 2.2
 *  @example 1/2 in U: 89 % of the 1/2 in square */
export function notchAreaMm2({ shape, widthMm: w, depthMm: d }: Notch): number {
  if (shape === 'v') return (w * d) / 2
  if (shape === 'u') return w * d - (w * w) / 2 + (Math.PI * w * w) / 8
  return w * d
}

/** Mean depth of the combed mortar, which is the bed once the ridges are pressed flat. [mm, = l/m2]
 *  Notch area / (width + space) x sin(angle): a leaning trowel combs lower ridges.
 *  @param angleDeg between trowel and floor, TROWEL_ANGLE; 90 is upright
 *  @source geometry    @example 1/2 in square upright: 6.35 mm; at 45 degrees 4.49 mm */
export const combedMm = (notch: Notch, angleDeg: number): number =>
  (notchAreaMm2(notch) / (notch.widthMm + notch.spaceMm)) * Math.sin((angleDeg * Math.PI) / 180)

/** The combed depth over the angles a setter holds. [mm]
 *  @param anglesDeg low, usual and high angle, TROWEL_ANGLE
 *  @problem out-of-range */
export function combedRangeMm(notch: Notch, anglesDeg: Spread): Outcome<Spread> {
  if (!(anglesDeg.low <= anglesDeg.usual && anglesDeg.usual <= anglesDeg.high))
    return refuse('out-of-range', { field: 'trowel-angle', value: anglesDeg.usual, min: 20, max: 90, unit: 'deg' })
  for (const angle of [anglesDeg.low, anglesDeg.high]) {
    const inside = within(TROWEL_ANGLE, angle)
    if (!inside.ok) return inside
  }
  return fine({
    low: combedMm(notch, anglesDeg.low),
    usual: combedMm(notch, anglesDeg.usual),
    high: combedMm(notch, anglesDeg.high),
  })
}
