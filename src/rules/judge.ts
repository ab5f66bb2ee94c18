/** From what was said to the rule that holds, and from the rule to a verdict. Pure; no words. */
import {
  type Condition,
  type Country,
  NUMBER_CONDITIONS,
  type NumberCondition,
  type Rule,
  type Sense,
  type Verdict,
  WORD_CONDITIONS,
  type WordCondition,
} from './book.ts'

/** What is known of the case: several words may hold at once; a number is one [mm]. */
export type Facts = { readonly [C in WordCondition]?: readonly string[] } & { readonly [C in NumberCondition]?: number }

/** How it was asked. `ask`: for the rule itself, not for a verdict. */
export type Stance = 'may' | 'need' | 'skip' | 'too-much' | 'too-little' | 'wrong' | 'ask'

export type Found = {
  /** Rules that hold for certain; the most specific first. */
  readonly holding: readonly Rule[]
  /** Rules that may hold, depending on what is not known. */
  readonly open: readonly Rule[]
  /** What to ask to settle it. */
  readonly unknown: Condition | null
  /** The country whose rules these are. */
  readonly country: Country
}

/** The rules of a subject for a country; another country's (the US) where it has none of its own. */
export function findRules(rules: readonly Rule[], subject: string, facts: Facts, country: Country): Found {
  const all = rules.filter((rule) => rule.subject === subject)
  const own = all.filter((rule) => (rule.country ?? 'US') === country)
  const used = own.length > 0 ? own : all.filter((rule) => rule.country === undefined)
  const judged = used.map((rule) => ({ rule, ...holds(rule, facts) })).filter((j) => j.state !== 'no')
  const holding = judged.filter((j) => j.state === 'yes').sort((a, b) => b.conditions - a.conditions)
  const open = judged.filter((j) => j.state === 'open')
  return {
    holding: holding.map((j) => j.rule),
    open: open.map((j) => j.rule),
    unknown: open[0]?.unknown ?? null,
    country: own.length > 0 ? country : 'US',
  }
}

type Held = { readonly state: 'yes' | 'no' | 'open'; readonly conditions: number; readonly unknown: Condition | null }

function holds(rule: Rule, facts: Facts): Held {
  let unknown: Condition | null = null
  let conditions = 0
  for (const name of WORD_CONDITIONS) {
    const wanted = rule.when?.[name]
    if (!wanted) continue
    conditions += 1
    const said = facts[name]
    const named = wanted.filter((w) => w.startsWith('+')).map((w) => w.slice(1))
    const refused = wanted.filter((w) => w.startsWith('-')).map((w) => w.slice(1))
    if (refused.length > 0) {
      if (said?.some((s) => refused.includes(s))) return { state: 'no', conditions, unknown: null }
      continue
    }
    if (!said || said.length === 0) {
      if (named.length > 0) return { state: 'no', conditions, unknown: null }
      unknown ??= name
    } else if (!said.some((s) => wanted.includes(s) || named.includes(s)))
      return { state: 'no', conditions, unknown: null }
  }
  for (const name of NUMBER_CONDITIONS) {
    const range = rule.when?.[name]
    if (!range) continue
    conditions += 1
    const value = facts[name]
    if (value === undefined) unknown ??= name
    else if (value < (range[0] ?? Number.NEGATIVE_INFINITY) || value >= (range[1] ?? Number.POSITIVE_INFINITY))
      return { state: 'no', conditions, unknown: null }
  }
  return { state: unknown === null ? 'yes' : 'open', conditions, unknown }
}

/** Whether a proposed figure keeps a rule's limit; null where either is missing. A whisker of rounding is forgiven. */
export function keeps(rule: Rule, proposed: number | null): boolean | null {
  if (!rule.limit || proposed === null) return null
  const slack = SLACK[rule.limit.key] ?? 1e-3 * Math.abs(rule.limit.value)
  return rule.limit.sense === 'least' ? proposed >= rule.limit.value - slack : proposed <= rule.limit.value + slack
}

/** A third is 33 % said otherwise. */
const SLACK: Readonly<Record<string, number>> = { max_offset_pct: 0.4 }

/** The verdict of one rule, by how it was asked; null where the rule settles nothing of the kind.
 *  A figure decides where one was proposed; `wrong` turns the verdict round ("too much?"). */
export function verdictOf(rule: Rule, stance: Stance, proposed: number | null): Verdict | null {
  if (stance === 'ask') return null
  const kept = keeps(rule, proposed)
  if (kept !== null && stance === 'need') return neededVerdict(rule, proposed!)
  if (kept !== null && !(stance === 'skip' && rule.limit?.sense === 'least')) {
    if (kept && rule.sure !== undefined && !keeps({ ...rule, limit: { ...rule.limit!, value: rule.sure } }, proposed))
      return 'depends'
    return keptVerdict(kept, stance, rule.limit!.sense)
  }
  if (stance === 'need') return rule.need ?? null
  if (stance === 'skip') return rule.need ? turned(rule.need) : null
  if (rule.ok === undefined) return null
  return stance === 'may' ? rule.ok : turned(rule.ok)
}

/** "Too much?" of a least, or "too little?" of a most, is another question than the rule answers. */
function keptVerdict(kept: boolean, stance: Stance, sense: Sense): Verdict | null {
  if ((stance === 'too-much' && sense === 'least') || (stance === 'too-little' && sense === 'most')) return null
  const fault = stance === 'wrong' || stance === 'too-much' || stance === 'too-little'
  return kept === fault ? 'no' : 'yes'
}

/** "Do I need 95 %?": yes where that is the limit, no where it is stricter than the limit. */
function neededVerdict(rule: Rule, proposed: number): Verdict | null {
  const { value, sense } = rule.limit!
  const slack = Math.max(SLACK[rule.limit!.key] ?? 0, 1e-3 * Math.abs(value))
  // A run of floor is held against the spacing: longer needs the joint, shorter needs it at the edges only.
  if (rule.limit!.key === 'movement_spacing_m') return proposed > value + slack ? 'yes' : 'depends'
  if (Math.abs(proposed - value) <= slack) return 'yes'
  return (sense === 'least' ? proposed > value : proposed < value) ? 'no' : null
}

const turned = (verdict: Verdict): Verdict => (verdict === 'depends' ? 'depends' : verdict === 'yes' ? 'no' : 'yes')

/** One verdict over several rules that may hold: the same from all, else it depends. */
export function jointVerdict(rules: readonly Rule[], stance: Stance, proposed: number | null): Verdict | null {
  const verdicts = new Set(rules.map((rule) => verdictOf(rule, stance, proposed)))
  if (verdicts.size === 1) return [...verdicts][0]!
  return verdicts.size === 0 || (verdicts.size === 1 && verdicts.has(null)) ? null : 'depends'
}
