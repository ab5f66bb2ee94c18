/** A question for the rule book: what was said, held against the rules of its subject. Pure; no words of its own. */
import { effectiveOffsetPct } from '../core/joints.ts'
import { judgeReadings } from '../core/substrate/straightedge.ts'
import type { Figures } from '../language/rule-numbers.ts'
import type { Amount } from '../phrase.ts'
import type { Condition, Country, Rule, Verdict } from './book.ts'
import { type Facts, findRules, jointVerdict, type Stance, verdictOf } from './judge.ts'

export type RuleAsk = {
  readonly subject: string
  readonly facts: Facts
  readonly figures: Figures
  readonly stance: Stance
  readonly country: Country
}

export type Settled = {
  readonly verdict: Verdict | null
  /** The rules to tell, the one that decides first. */
  readonly rules: readonly Rule[]
  /** What to ask, where the rules differ by it. */
  readonly unknown: Condition | 'edge-length' | null
  /** What was taken for granted. */
  readonly assumed: readonly { readonly condition: Condition; readonly value: string | number }[]
  readonly country: Country
  readonly proposed: number | null
  readonly values: Readonly<Record<string, number>>
}

/** What is taken for granted where nothing was said, by subject; it is always told. */
const USUAL: Readonly<Record<string, Facts>> = {
  lippage: { joint: 3.175 },
  movement: { exposure: ['interior'] },
  'movement-width': { exposure: ['interior'] },
  flatness: { surface: ['floor'] },
  contact: { surface: ['floor'] },
}

/** Settles a question, or null where the book has no rule for it. */
export function settle(rules: readonly Rule[], ask: RuleAsk): Settled | null {
  const usual = USUAL[ask.subject] ?? {}
  const said = factsFor(ask)
  const facts: Facts = { ...usual, ...said }
  const found = findRules(rules, ask.subject, facts, ask.country)
  const told = decided([...found.holding.slice(0, 1), ...found.open], ask)
  if (told.length === 0) return null
  const proposed = proposedFor(told[0]!, ask.figures)
  const judged = told.length === 1 || found.open.length === 0 ? told.slice(0, 1) : told
  const { verdict, unknown } = verdictFor(judged, ask, proposed)
  const sure = judged.length === 1 || sameLimit(judged) || (verdict !== null && verdict !== 'depends')
  const agreed = verdict !== null && verdict !== 'depends' && found.holding.length > 0
  return {
    verdict,
    rules: agreed ? judged.slice(0, 1) : judged,
    unknown: unknown ?? (sure ? null : found.unknown),
    assumed: Object.entries(usual)
      .filter(([name]) => said[name as Condition] === undefined && isUsed(judged, name as Condition) && TOLD.has(name))
      .map(([name, value]) => ({
        condition: name as Condition,
        value: Array.isArray(value) ? (value[0] as string) : (value as number),
      })),
    country: found.country,
    proposed,
    values: valuesOf(judged, ask.figures),
  }
}

/** Nothing hangs on what is not known where all say the same. */
const sameLimit = (rules: readonly Rule[]): boolean =>
  rules[0]!.limit !== undefined &&
  rules.every((rule) => rule.limit?.key === rules[0]!.limit!.key && rule.limit.value === rules[0]!.limit!.value)

/** Taken for granted aloud; that a floor is a floor need not be said. */
const TOLD = new Set<string>(['joint', 'exposure'])

const isUsed = (rules: readonly Rule[], condition: Condition): boolean =>
  rules.some((rule) => rule.when?.[condition] !== undefined)

/** Where no kind of grout was named, the rules that say "yes" are the answer. */
function decided(rules: readonly Rule[], ask: RuleAsk): readonly Rule[] {
  if (ask.subject !== 'grout-type' || ask.facts.grout?.length === 1) return rules
  return rules.filter((rule) => rule.ok === 'yes')
}

function factsFor({ subject, facts, figures }: RuleAsk): Facts {
  const edge = facts.edge ?? figures.tileMm?.[0]
  const joint = figures.jointMm ?? (subject === 'grout-type' ? figures.smallMm[0] : undefined) ?? facts.joint
  const bound = subject === 'bed' && facts.bound === undefined ? boundOf(figures.smallMm[0]) : facts.bound
  return {
    ...facts,
    ...(bound ? { bound } : {}),
    ...(edge === undefined ? {} : { edge }),
    ...(joint === undefined ? {} : { joint }),
  }
}

/** A bed of 4 mm or more is asked about as too thick, a thinner one as too thin. */
const boundOf = (bedMm: number | undefined): readonly string[] | undefined =>
  bedMm === undefined ? undefined : [bedMm >= 4 ? 'most' : 'least']

/** The figure that was proposed for this rule's limit, in the limit's unit. */
export function proposedFor(rule: Rule, f: Figures): number | null {
  const small = f.smallMm[0] ?? null
  switch (rule.limit?.key) {
    case 'min_contact_pct':
    case 'spare_pct':
    case 'max_rh_pct':
      return f.percents[0] ?? null
    case 'max_variation_mm':
      return f.gap?.gapMm ?? (f.readingsMm.length > 0 ? Math.max(...f.readingsMm) : null)
    case 'min_joint_mm':
      return f.jointMm ?? small
    case 'max_lippage_mm':
    case 'max_gap_mm':
    case 'min_bed_mm':
    case 'max_bed_mm':
      return small
    case 'wall_gap_mm':
      return f.jointMm ?? small
    case 'max_offset_pct': {
      const pct = f.offsetPct ?? f.percents[0] ?? null
      return pct === null ? null : effectiveOffsetPct(pct)
    }
    case 'movement_spacing_m':
      return f.longMm === null ? null : f.longMm / 1000
    case 'deflection_limit':
      return f.ratio
    case 'min_temp_c':
      return f.temperatureC
    case 'slab_days':
      return f.days
    case 'slope_mm_per_m':
      return f.slopeMmPerM ?? (f.percents[0] === undefined ? null : f.percents[0] * 10)
    case 'min_dcof':
      return f.decimal
    default:
      return null
  }
}

function verdictFor(
  rules: readonly Rule[],
  ask: RuleAsk,
  proposed: number | null,
): { verdict: Verdict | null; unknown: 'edge-length' | null } {
  if (rules[0]?.limit?.key === 'max_variation_mm' && proposed !== null && ask.stance !== 'ask') {
    const each = rules.map((rule) => flatnessVerdict(rule, ask))
    const same = each.every((v) => v === each[0]) ? each[0]! : 'depends'
    const unknown = same === 'depends' && rules.length === 1 ? 'edge-length' : null
    const verdict = ask.stance === 'may' ? same : FAULTS.has(ask.stance) ? turned(same) : null
    return { verdict, unknown }
  }
  return {
    verdict:
      rules.length === 1 ? verdictOf(rules[0]!, ask.stance, proposed) : jointVerdict(rules, ask.stance, proposed),
    unknown: null,
  }
}

const FAULTS: ReadonlySet<string> = new Set(['wrong', 'too-much'])

const turned = (verdict: Verdict): Verdict => (verdict === 'yes' ? 'no' : verdict === 'no' ? 'yes' : 'depends')

const mmOf = (amount: Amount | undefined): number | undefined => (amount && 'mm' in amount ? amount.mm : undefined)

/** A gap with its edge, judged as a reading; a gap without one fails where it is over the limit, and proves nothing under it. */
function flatnessVerdict(rule: Rule, { figures }: RuleAsk): Verdict {
  const longMm = rule.limit!.value
  const limit = {
    longMm,
    longEdgeMm: mmOf(rule.amounts?.['long']) ?? 3048,
    ...shortOf(rule),
  }
  const edgeMm = figures.gap?.edgeMm ?? figures.edgeMm
  const readings = figures.gap ? [figures.gap.gapMm] : figures.readingsMm
  const judged = judgeReadings(readings, edgeMm ?? limit.longEdgeMm, limit)
  if (!judged.ok || judged.value.verdict === 'unknown') return 'depends'
  if (judged.value.verdict === 'fail') return 'no'
  return edgeMm === null ? 'depends' : 'yes'
}

function shortOf(rule: Rule): { shortMm: number; shortEdgeMm: number } | object {
  const shortMm = mmOf(rule.amounts?.['short'])
  const shortEdgeMm = mmOf(rule.amounts?.['shortedge'])
  return shortMm === undefined || shortEdgeMm === undefined ? {} : { shortMm, shortEdgeMm }
}

/** The limit under its key; the strictest where several may hold, with both ends. */
function valuesOf(rules: readonly Rule[], figures: Figures): Record<string, number> {
  const values: Record<string, number> = {}
  const key = rules[0]?.limit?.key
  if (key) {
    const limits = rules.flatMap((rule) => (rule.limit?.key === key ? [rule.limit.value] : []))
    const [low, high] = [Math.min(...limits), Math.max(...limits)]
    values[key] = rules[0]!.limit!.sense === 'least' ? high : low
    if (low !== high) Object.assign(values, { [`${key}_low`]: low, [`${key}_high`]: high })
    if (key === 'max_variation_mm' && figures.gap) values['max_gap_mm'] = figures.gap.gapMm
  }
  for (const rule of rules) Object.assign(values, rule.values)
  return values
}
