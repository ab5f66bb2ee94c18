/** The words of a locale that measurements are found by. */

/** Words of a locale; each is a regular-expression alternation without groups. */
export type MeasureWords = {
  readonly joist: string
  readonly onCentre: string
  readonly psf: string
  readonly live: string
  readonly dead: string
  readonly species: Readonly<Record<'spf' | 'dfl' | 'other', string>>
  readonly grades: Readonly<Record<'1' | '2' | 'other', string>>
  readonly gaps: string
  readonly heights: string
  readonly spacing: string
  readonly sixteenths: string
  readonly eighths: string
  readonly diagonals: string
  readonly marks: string
  readonly voids: string
  readonly vary: string
  readonly calipers: string
  readonly warp: string
  readonly lifted: string
  readonly holes: string
  readonly thick: string
  readonly sheathing: string
  readonly range: string
  readonly tube: string
  readonly to: string
}

const NEVER = '(?!)'

export const NO_MEASURE_WORDS: MeasureWords = {
  joist: NEVER,
  onCentre: NEVER,
  psf: NEVER,
  live: NEVER,
  dead: NEVER,
  species: { spf: NEVER, dfl: NEVER, other: NEVER },
  grades: { '1': NEVER, '2': NEVER, other: NEVER },
  gaps: NEVER,
  heights: NEVER,
  spacing: NEVER,
  sixteenths: NEVER,
  eighths: NEVER,
  diagonals: NEVER,
  marks: NEVER,
  voids: NEVER,
  vary: NEVER,
  calipers: NEVER,
  warp: NEVER,
  lifted: NEVER,
  holes: NEVER,
  thick: NEVER,
  sheathing: NEVER,
  range: NEVER,
  tube: NEVER,
  to: NEVER,
}
