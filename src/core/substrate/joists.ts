/** Wood joists under tile: deflection under live load and bending under live and dead, whichever governs.
 *  A sawn joist on two bearings with a uniform load; nothing else is judged here. */
import { fine, type Outcome, type Range, refuse, within } from '../../problem.ts'

/** Design values of one species group and grade, and where they come from. */
export type Lumber = {
  readonly species: string
  readonly grades: readonly string[]
  /** Modulus of elasticity. */
  readonly eMpa: number
  /** Reference bending strength, before factors. */
  readonly fbMpa: number
}

/** A sawn size, dressed, with its size factor for bending. */
export type Section = {
  readonly nominal: string
  readonly breadthMm: number
  readonly depthMm: number
  readonly sizeFactor: number
}

export type JoistFloor = {
  readonly section: Section
  readonly lumber: Lumber
  readonly spacingMm: number
  /** Clear between bearings. */
  readonly spanMm: number
  readonly liveKpa: number
  readonly deadKpa: number
  /** 360 for ceramic and porcelain tile, 720 for stone. */
  readonly limit: number
}

export type JoistVerdict = {
  readonly deflectionMm: number
  /** Span over deflection under live load. */
  readonly ratio: number
  readonly stressMpa: number
  readonly allowedMpa: number
  /** Stress over allowed: 1 or less holds. */
  readonly bendingRatio: number
  readonly stiffEnough: boolean
  readonly strongEnough: boolean
  readonly governs: 'deflection' | 'bending'
}

export const JOIST_SPACING: Range = { field: 'joist-spacing', unit: 'mm', min: 150, max: 812.8 }
export const JOIST_SPAN: Range = { field: 'joist-span', unit: 'mm', min: 600, max: 9144 }
export const FLOOR_LOAD: Range = { field: 'floor-load', unit: 'kpa', min: 0.2, max: 10 }
export const DEFLECTION_LIMIT: Range = { field: 'deflection-limit', unit: '', min: 180, max: 1440 }

export const PSI_MPA = 0.006894757293168
export const PSF_KPA = 0.04788025898
/** Common in houses; dead is double the code's least of 10 psf, for tile weighs. [kPa] */
export const USUAL_LIVE_KPA = 40 * PSF_KPA
export const USUAL_DEAD_KPA = 20 * PSF_KPA

/** Repetitive-member factor: three or more joists, not over 24 in apart. @source NDS, from memory; confirmed by the
 *  spans that it regenerates (references 8.4, 8.5) */
const REPETITIVE = 1.15
const REPETITIVE_SPACING_MM = 609.6

export const sectionModulusMm3 = (s: Section): number => (s.breadthMm * s.depthMm ** 2) / 6
export const momentOfInertiaMm4 = (s: Section): number => (s.breadthMm * s.depthMm ** 3) / 12

/** Deflection at midspan of a simple span under a uniform load: 5 w L^4 / (384 E I). [mm]
 *  @param loadKpa on the floor [kPa]; @param spacingMm width of floor that one joist carries [mm]
 *  @source elementary beam theory; vectors: references 8.8 to 8.10 */
export function deflectionMm(
  section: Section,
  eMpa: number,
  spacingMm: number,
  spanMm: number,
  loadKpa: number,
): number {
  const loadNPerMm = (loadKpa * spacingMm) / 1000
  return (5 * loadNPerMm * spanMm ** 4) / (384 * eMpa * momentOfInertiaMm4(section))
}

/** Bending stress at midspan: w L² / 8 over the section modulus. [MPa] */
export function bendingStressMpa(section: Section, spacingMm: number, spanMm: number, loadKpa: number): number {
  const loadNPerMm = (loadKpa * spacingMm) / 1000
  return (loadNPerMm * spanMm ** 2) / 8 / sectionModulusMm3(section)
}

/** Allowed bending stress: base value x size factor x repetitive factor, normal duration, dry. [MPa] */
export function allowedBendingMpa(lumber: Lumber, section: Section, spacingMm: number): number {
  return lumber.fbMpa * section.sizeFactor * (spacingMm <= REPETITIVE_SPACING_MM + 0.1 ? REPETITIVE : 1)
}

/** Judges a joist floor on both counts; it passes only where both pass.
 *  @problem out-of-range */
export function judgeJoists(floor: JoistFloor): Outcome<JoistVerdict> {
  const checks = [
    within(JOIST_SPACING, floor.spacingMm),
    within(JOIST_SPAN, floor.spanMm),
    within(FLOOR_LOAD, floor.liveKpa),
    within({ ...FLOOR_LOAD, field: 'dead-load' }, floor.deadKpa),
    within(DEFLECTION_LIMIT, floor.limit),
  ]
  for (const check of checks) if (!check.ok) return check
  const { section, lumber, spacingMm, spanMm, liveKpa, deadKpa, limit } = floor
  const sag = deflectionMm(section, lumber.eMpa, spacingMm, spanMm, liveKpa)
  const stressMpa = bendingStressMpa(section, spacingMm, spanMm, liveKpa + deadKpa)
  const allowedMpa = allowedBendingMpa(lumber, section, spacingMm)
  const ratio = spanMm / sag
  const bendingRatio = stressMpa / allowedMpa
  return fine({
    deflectionMm: sag,
    ratio,
    stressMpa,
    allowedMpa,
    bendingRatio,
    stiffEnough: ratio >= limit,
    strongEnough: bendingRatio <= 1,
    governs: longestSpanMm(floor).governs,
  })
}

/** The longest span that both checks allow. [mm]
 *  @source regenerates all 32 spans of IRC table R502.3.1(2) as listed in references 8.4 */
export function longestSpanMm(floor: Omit<JoistFloor, 'spanMm'>): {
  spanMm: number
  governs: 'deflection' | 'bending'
} {
  const { section, lumber, spacingMm, liveKpa, deadKpa, limit } = floor
  const live = (liveKpa * spacingMm) / 1000
  const total = ((liveKpa + deadKpa) * spacingMm) / 1000
  const stiff = ((384 * lumber.eMpa * momentOfInertiaMm4(section)) / (5 * live * limit)) ** (1 / 3)
  const strong = Math.sqrt((8 * allowedBendingMpa(lumber, section, spacingMm) * sectionModulusMm3(section)) / total)
  return strong < stiff ? { spanMm: strong, governs: 'bending' } : { spanMm: stiff, governs: 'deflection' }
}

/** What no table here answers: only whom to ask. */
export const NOT_JUDGED = ['i-joist', 'truss', 'notched', 'cantilever', 'grade-unknown', 'species-unknown'] as const
export type NotJudged = (typeof NOT_JUDGED)[number]

/** The design values for a species and grade, where they are confirmed.
 *  @problem unknown-material: anything not in the table; it goes to a licensed designer or the published tables */
export function lumberFor(table: readonly Lumber[], species: string, grade: string): Outcome<Lumber> {
  const found = table.find((l) => l.species === species && l.grades.includes(grade))
  return found ? fine(found) : refuse('unknown-material', { said: `${species} ${grade}` })
}
