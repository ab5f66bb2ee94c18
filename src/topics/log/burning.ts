/** "You're burning mud": what a bag covered against what that trowel should cover, and what would account for it. */
import { bedParts, mortarNeed } from '../../core/mortar.ts'
import { exactly, type Spread } from '../../core/spread.ts'
import { logged } from '../../jobs/job.ts'
import { area, type Phrase, percent, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { spreadOf } from '../../settings.ts'
import { coverageBasis } from '../mortar-coverage.ts'
import { packPhrase, trowelPhrase } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { setupEntries } from './entries.ts'

/** A hair outside the range is inside what a crew can read off its bags. */
const READING_SHARE = 0.03

export function burning(brief: Brief, saidM2PerBag: number | null): Outcome<Told> {
  if (brief.facts.trowel === undefined) return refuse('question', { question: 'trowel' })
  const basis = coverageBasis(brief)
  if (!basis.ok) return basis
  const b = basis.value
  const log = logged(brief.memory.job, 'mortar')
  const actual = saidM2PerBag ?? coverageLogged(log.stretches)
  const { low, usual, high } = b.coverageM2
  const common = {
    topic: 'log' as const,
    assumed: b.assumed,
    sources: b.sources,
    working: b.working,
    offers: ['math'],
    entries: setupEntries(brief),
    values: {
      mortar_coverage_m2_per_bag: usual,
      mortar_coverage_m2_per_bag_low: low,
      mortar_coverage_m2_per_bag_high: high,
      notch_width_mm: b.notch.widthMm,
      notch_depth_mm: b.notch.depthMm,
    },
  }
  const setup = {
    trowel: trowelPhrase(b.notch),
    buttered: say(b.backButter ? 'log.buttered' : 'log.bare'),
    low: area(low),
    usual: area(usual),
    high: area(high),
    bag: packPhrase(b.pack),
    actual: area(actual ?? usual),
  }
  if (actual === null) return fine({ ...common, answer: say('log.should-cover', setup) })
  const verdict = actual < low * (1 - READING_SHARE) ? 'heavy' : actual > high * (1 + READING_SHARE) ? 'light' : 'right'
  const reasons = verdict === 'heavy' ? reasonsFor(brief, b, actual) : []
  return fine({
    ...common,
    answer: say(`log.burn-${verdict}`, setup),
    details: [
      say('log.expected', setup),
      ...(verdict === 'heavy' ? [say('log.more-than', { more: percent((usual / actual - 1) * 100) }), ...reasons] : []),
      ...(verdict === 'light' ? [say('log.light-check')] : []),
    ],
  })
}

/** Over the stretches that were logged with their area. [m2 a bag] */
export function coverageLogged(
  stretches: readonly { readonly packs: number; readonly areaM2: number }[],
): number | null {
  const packs = stretches.reduce((sum, stretch) => sum + stretch.packs, 0)
  return packs > 0 ? stretches.reduce((sum, stretch) => sum + stretch.areaM2, 0) / packs : null
}

type Basis = Extract<ReturnType<typeof coverageBasis>, { ok: true }>['value']

/** What each cause by itself would bring a bag to. */
function reasonsFor(brief: Brief, basis: Basis, actualM2: number): Phrase[] {
  const { mortar } = brief.settings.practice
  const gap = brief.facts.outOfFlatMm ?? 0
  const coverage = (anglesDeg: Spread, skimMm: Spread | null): number | null => {
    const bed = bedParts({
      notch: basis.notch,
      anglesDeg,
      skimMm,
      deepestGapMm: gap,
      unevenFactor: spreadOf(mortar.unevenFactor),
    })
    const need = bed.ok ? mortarNeed(1, bed.value.bedMm, basis.pack, 0) : bed
    return need.ok ? need.value.coverageM2PerBag.usual : null
  }
  const usualAngle = exactly(spreadOf(mortar.trowelDeg).usual)
  const skim = spreadOf(mortar.skimMm)
  const upright = coverage(exactly(90), basis.backButter ? exactly(skim.usual) : null)
  const heavySkim = coverage(usualAngle, exactly(skim.high))
  const extraMm = basis.pack.yieldL / actualM2 - basis.pack.yieldL / basis.coverageM2.usual
  const hollowMm = extraMm / spreadOf(mortar.unevenFactor).usual
  return [
    ...(upright === null ? [] : [say('log.reason-upright', { coverage: area(upright) })]),
    ...(heavySkim === null
      ? []
      : [say(basis.backButter ? 'log.reason-heavy-skim' : 'log.reason-buttering', { coverage: area(heavySkim) })]),
    ...(hollowMm > 0 ? [say('log.reason-hollows', { gap: small(hollowMm) })] : []),
    say('log.reason-waste', { share: percent(Math.max(0, (1 - actualM2 / basis.coverageM2.usual) * 100)) }),
  ]
}
