/** Joists and the sheathing over them, as they were told. */
import type { MeasureWords } from './measure-words.ts'
import { END, INCH, inUnit, longIn, N, START, word } from './rule-lengths.ts'
import type { FigureWords } from './rule-numbers.ts'

export type SaidJoists = {
  readonly nominal: string
  readonly spacingMm: number | null
  readonly spanMm: number | null
  readonly species: 'spf' | 'dfl' | 'other' | null
  readonly grade: '1' | '2' | 'other' | null
  readonly livePsf: number | null
  readonly deadPsf: number | null
}

/** Sheathing over joists: the layers as told, none where their thickness is asked for. */
export type SaidSheathing = { readonly layersMm: readonly number[]; readonly spacingMm: number | null }

export function joistsIn(plain: string, w: MeasureWords, f: FigureWords): SaidJoists | null {
  const size = /(?<![\p{N}.])2 ?(?:x|by) ?(6|8|10|12)s?(?![\p{N}])/u.exec(plain)
  if (!size) return null
  const rest = plain.replace(size[0], ' ; ')
  const spacing = spacingIn(rest, w, f)
  const beyond = spacing ? rest.replace(spacing[0], ' ; ') : rest
  const wood = (['spf', 'dfl', 'other'] as const).find((s) => word(w.species[s]).test(plain)) ?? null
  const grade = (['1', '2', 'other'] as const).find((g) => word(w.grades[g]).test(plain)) ?? null
  const spanMm = longIn(beyond, f)
  const says = new RegExp(`${START}(?:${w.joist})${END}`, 'u').test(plain) || spacing !== null || wood !== null
  if (!says) return null
  return {
    nominal: `2x${size[1]}`,
    spacingMm: spacing ? spacingMm(spacing, f) : null,
    spanMm,
    species: wood,
    grade,
    livePsf: loadIn(plain, w.live, w),
    deadPsf: loadIn(plain, w.dead, w),
  }
}

/** "16 oc", "at 19.2", "400 centres": how far apart the joists are, as it was written. */
function spacingIn(plain: string, w: MeasureWords, f: FigureWords): RegExpExecArray | null {
  const unit = `(${f.inch}|${f.mm}|${f.cm})`
  const bare = `(?<![\\p{N}./])(12|16|19\\.2|24)(?: ?(${f.inch}))?(?= |$)`
  const noLength = `(?! ?(?:${f.foot}|${f.metre}|${w.psf}|${f.pound}|x|\\d+ ?(?:${w.psf})|\\d+/))`
  return (
    new RegExp(`${START}(${N}) ?${unit}? ?(?:${w.onCentre})${END}`, 'u').exec(plain) ??
    new RegExp(`${START}(?:${w.onCentre}) (?:\\p{L}+ )?(${N}) ?${unit}?${END}`, 'u').exec(plain) ??
    new RegExp(`${bare}${noLength}`, 'u').exec(plain)
  )
}

/** Nobody sets joists 100 in apart: such a bare figure is millimetres. */
const LEAST_BARE_MM = 100

function spacingMm(hit: RegExpExecArray, f: FigureWords): number | null {
  return inUnit(hit[1]!, hit[2], f, Number(hit[1]) >= LEAST_BARE_MM ? 1 : INCH)
}

/** "3/4 ply on 16 centers", "how thick osb for 19.2 oc": told or asked, only where the joists' spacing is told too. */
export function sheathingIn(plain: string, w: MeasureWords, f: FigureWords): SaidSheathing | null {
  if (!new RegExp(`${START}(?:${w.sheathing})${END}`, 'u').test(plain)) return null
  const unit = `(${f.inch}|${f.mm})`
  const noun = `(?:\\p{L}+ ){0,2}?(?:${w.sheathing})`
  // "5/8 and 1/2 ply", "subfloor is 3/4"
  const before = new RegExp(`${START}(?:(${N}) ?${unit}? (?:\\p{L}+ )?)?(${N}) ?${unit}? ?${noun}${END}`, 'u').exec(
    plain,
  )
  const after = new RegExp(`${START}(?:${w.sheathing}) (?:\\p{L}+ ){0,2}?(${N}) ?${unit}?(?![\\p{N}/])`, 'u').exec(
    plain,
  )
  const layer = (n: string | undefined, said: string | undefined): number =>
    n === undefined ? Number.NaN : (inUnit(n, said, f, n.includes('/') ? INCH : Number.NaN) ?? Number.NaN)
  const layersIn = (hit: RegExpExecArray): number[] =>
    [layer(hit[1], hit[2]), layer(hit[3], hit[4])].filter((mm) => mm <= THICKEST_MM)
  const told = [before, after].find((hit) => hit !== null && layersIn(hit).length > 0) ?? null
  const rest = told ? plain.replace(told[0], ' ; ') : plain
  const spacing = spacingIn(rest, w, f)
  return { layersMm: told ? layersIn(told) : [], spacingMm: spacing ? spacingMm(spacing, f) : null }
}

/** Sheathing comes no thicker. [mm] */
const THICKEST_MM = 40

function loadIn(plain: string, kind: string, w: MeasureWords): number | null {
  const hit =
    new RegExp(`(\\d+) ?(?:${w.psf})? ?(?:${kind})${END}`, 'u').exec(plain) ??
    new RegExp(`(?:${kind}) (?:\\p{L}+ )?(\\d+)(?: ?(?:${w.psf}))?`, 'u').exec(plain)
  return hit ? Number(hit[1]) : null
}
