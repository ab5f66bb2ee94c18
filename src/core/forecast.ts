/** What a pack will cover on the rest of a floor: the configured coverage, moved by what the crew has logged. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'
import { AREA, AREA_LEFT, COVERAGE, PACKS } from './stock.ts'

export const LOG_SD: Range = { field: 'log-sd', unit: '', min: 0.001, max: 2 }

/** A stretch of floor and the packs it took. */
export type LoggedUse = {
  readonly packs: number
  readonly areaM2: number
  /** How far the packs may be off as they were read [packs]; the rules' usual one where it is left out. */
  readonly readingPacks?: number
}

/** Judgements, not measurements: config/practice.json holds them. */
export type ForecastRules = {
  /** Standard deviation of the logarithm of coverage before anything is logged. */
  readonly priorLogSd: number
  /** The same for one stretch of floor against the crew's own mean. */
  readonly stretchLogSd: number
  /** How far a crew is off when it tells packs used [packs]. */
  readonly readingPacks: number
}

export type Breakage = {
  /** Tiles that break on the rest: as likely more as less, and enough nine times in ten. */
  readonly even: number
  readonly safe: number
}

export const TILES: Range = { field: 'tiles', unit: '', min: 0, max: 1_000_000 }

/** How many tiles will break on the rest of a floor, by how many broke so far.
 *  Breaking is a Poisson process of unknown rate; with Jeffreys' prior Gamma(1/2, 0) the count to come is negative binomial:
 *  P(k) = C(k + r - 1, k) p^r (1 - p)^k with r = broken + 1/2, p = handled / (handled + left).
 *  @param broken TILES    @param set TILES: laid whole    @param left TILES, still to lay
 *  @problem out-of-range; missing `tiles` where nothing was handled yet
 *  @source the gamma-Poisson model (any text on Bayesian statistics)
 *  @example 3 broken, 40 set, 20 left: 1 even, 4 safe */
export function breakage(broken: number, set: number, left: number): Outcome<Breakage> {
  for (const n of [broken, set, left]) {
    const check = within(TILES, n)
    if (!check.ok) return check
  }
  const handled = broken + set
  if (handled <= 0) return refuse('missing', { field: 'tiles' })
  const r = broken + 1 / 2
  const q = left / (handled + left)
  let p = (1 - q) ** r
  let sum = p
  let k = 0
  let even: number | null = sum >= EVEN ? 0 : null
  while (sum < SAFE && k < left) {
    p *= ((k + r) / (k + 1)) * q
    k++
    sum += p
    if (even === null && sum >= EVEN) even = k
  }
  return fine({ even: even ?? k, safe: k })
}

const EVEN = 0.5
const SAFE = 0.9

export type Forecast = {
  /** Median coverage. [m2 a pack] */
  readonly m2PerPack: number
  /** Standard deviation of its logarithm. */
  readonly logSd: number
  /** Packs the rest takes: as likely more as less. Not rounded. */
  readonly packsEven: number
  /** Packs that are enough nine times in ten. Not rounded. */
  readonly packs90: number
}

/** The 90 % quantile of the standard normal distribution. */
const Z90 = 1.2815515655446004

/** A log-normal mean with known spreads: precisions add, logarithms are weighed by them.
 *  The rest is one more stretch: its own spread is added for the 90 % figure.
 *  @param priorM2PerPack COVERAGE, the median before anything is logged
 *  @param leftM2 AREA_LEFT
 *  @problem out-of-range
 *  @source normal mean with known variance (any statistics handbook); the spreads are judgement
 *  @example 42 before, 130 on 3 and 60 on 2 logged: 38.3 a pack; 160 left: 4.2 even, 5.0 at 90 % */
export function forecast(
  priorM2PerPack: number,
  uses: readonly LoggedUse[],
  leftM2: number,
  rules: ForecastRules,
): Outcome<Forecast> {
  const checks = [
    within(COVERAGE, priorM2PerPack),
    within(AREA_LEFT, leftM2),
    within(LOG_SD, rules.priorLogSd),
    within(LOG_SD, rules.stretchLogSd),
    ...uses.flatMap((use) => [within({ ...PACKS, min: 0.01 }, use.packs), within(AREA, use.areaM2)]),
  ]
  for (const check of checks) if (!check.ok) return check
  let precision = 1 / rules.priorLogSd ** 2
  let weighed = Math.log(priorM2PerPack) * precision
  for (const use of uses) {
    const reading = (use.readingPacks ?? rules.readingPacks) / use.packs
    const one = 1 / (rules.stretchLogSd ** 2 + reading ** 2)
    precision += one
    weighed += one * Math.log(use.areaM2 / use.packs)
  }
  const m2PerPack = Math.exp(weighed / precision)
  const logSd = Math.sqrt(1 / precision)
  const packsEven = leftM2 / m2PerPack
  const spread = Math.sqrt(1 / precision + rules.stretchLogSd ** 2)
  return fine({ m2PerPack, logSd, packsEven, packs90: packsEven * Math.exp(Z90 * spread) })
}
