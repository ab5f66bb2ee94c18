/** What was measured on tiles: contact, voids, sizes, warp; and the trowel for a tile. */
import { judgeContact, judgeTrowel, judgeVoids, LEAST_LIFTED } from '../../core/contact.ts'
import { allowedLippage, leastJoint, sizeVariation } from '../../core/joints.ts'
import { combedRangeMm } from '../../core/trowel.ts'
import { count, percent, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Rule } from '../../rules/book.ts'
import { findRules } from '../../rules/judge.ts'
import { askOf } from '../../rules/read.ts'
import { spreadOf, trowelFor } from '../../settings.ts'
import { trowelPhrase } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { countryOf, ruleTold, sourceOfRule } from './rule.ts'

/** The contact that the place needs; the strictest where the place is not known. */
function contactRule(brief: Brief): { readonly rule: Rule; readonly sure: boolean } {
  const { facts } = askOf(brief.heard.rules, 'contact', {}, countryOf(brief))
  const surface = facts.surface ?? ['floor']
  const found = findRules(brief.settings.book.rules, 'contact', { ...facts, surface }, countryOf(brief))
  const all = [...found.holding, ...found.open]
  const strictest = all.toSorted((a, b) => b.limit!.value - a.limit!.value)[0]!
  return found.holding[0] && found.open.length === 0
    ? { rule: found.holding[0], sure: true }
    : { rule: strictest, sure: false }
}

/** "lifted three: 85 90 88 percent, shower" */
export function contactsTold(brief: Brief): Outcome<Told> {
  const { rule, sure } = contactRule(brief)
  const judged = judgeContact(brief.heard.rules.measures.contactsPct, rule.limit!.value)
  if (!judged.ok) return judged
  const { averagePct, lowestPct, lifted, neededPct, verdict } = judged.value
  const args = {
    n: count(lifted),
    least: count(LEAST_LIFTED),
    average: percent(averagePct, 1),
    needed: percent(neededPct),
  }
  const enough = averagePct >= neededPct
  const key = verdict === 'not-yet' ? (enough ? 'not-yet-good' : 'not-yet-bad') : verdict === 'pass' ? 'yes' : 'no'
  if (!sure && verdict !== 'pass') return undecided(brief, averagePct)
  return fine({
    topic: 'contact',
    answer: say(`contact.${key}`, args),
    details: [say('contact.lowest', { lowest: percent(lowestPct) }), say('contact.how')],
    sources: [sourceOfRule(brief.settings.book, rule), sourceOfRule(brief.settings.book, { source: 'a108-5-check' })],
    values: { contact_pct: averagePct, min_contact_pct: neededPct },
  })
}

/** Not over the strictest limit and the place unknown: the rule book asks for it. */
function undecided(brief: Brief, averagePct: number): Outcome<Told> {
  const { figures } = brief.heard.rules
  const told = ruleTold(brief, { ...plainCopy(brief), figures: { ...figures, percents: [averagePct] } }, 'contact')
  return told.ok ? fine({ ...told.value, values: { ...told.value.values, contact_pct: averagePct } }) : told
}

const plainCopy = ({ heard: { rules } }: Brief) => ({
  plain: rules.plain,
  subjects: rules.subjects,
  troubles: rules.troubles,
  conditions: rules.conditions,
  stances: rules.stances,
  size: rules.size,
  why: rules.why,
  sum: rules.sum,
  figures: rules.figures,
  measuring: rules.measuring,
  measures: rules.measures,
})

/** "three 2x2 voids on a 12x24" */
export function voidsTold(brief: Brief): Outcome<Told> {
  const said = brief.heard.rules.measures.voids!
  const tile = tileBeside(brief, said)
  if (!tile) return refuse('question', { question: 'tile' })
  const judged = judgeVoids(tile[0], tile[1], [said])
  if (!judged.ok) return judged
  const { contactPct, tooLarge, good } = judged.value
  const { rule, sure } = contactRule(brief)
  const place = brief.heard.rules.conditions['place']?.[0]
  return fine({
    topic: 'contact',
    answer: say(good ? 'voids.good' : 'voids.bad', { contact: percent(contactPct, 1), n: count(tooLarge) }),
    details: [
      ...(sure && place
        ? [say('voids.needs', { place: say(`voids.place-${place}`), needed: percent(rule.limit!.value) })]
        : []),
      say('rule.voids', { edge: small(50.8) }),
    ],
    sources: [sourceOfRule(brief.settings.book, { source: 'training-2021' }), sourceOfRule(brief.settings.book, rule)],
    values: { contact_pct: contactPct, min_contact_pct: rule.limit!.value },
  })
}

/** The tile: the pair that is not the void, else the job's. [mm] */
function tileBeside(
  { heard, facts }: Brief,
  said: { lengthMm: number; widthMm: number },
): readonly [number, number] | null {
  const pairs = [...heard.rules.plain.matchAll(/(\d+(?:\.\d+)?) ?x ?(\d+(?:\.\d+)?)/g)]
    .map(([, a, b]) => [Number(a), Number(b)] as const)
    .map(([a, b]) => (Math.max(a, b) <= 72 ? ([a * 25.4, b * 25.4] as const) : ([a, b] as const)))
    .filter(([a, b]) => Math.abs(a - said.lengthMm) > 0.1 || Math.abs(b - said.widthMm) > 0.1)
  const largest = pairs.toSorted((a, b) => b[0] * b[1] - a[0] * a[1])[0]
  const job = facts.tile && facts.tile.lengthMm > 60 ? ([facts.tile.lengthMm, facts.tile.widthMm] as const) : null
  return largest ?? job
}

/** Least joint from calipers or a told variation, with pattern, facing and warp. */
export function jointTold(brief: Brief): Outcome<Told> {
  const { measures, figures, conditions } = brief.heard.rules
  const variation =
    measures.calipersMm.length > 2 ? sizeVariation(measures.calipersMm) : fine(measures.variationMm ?? 0)
  if (!variation.ok) return variation
  const facing = (conditions['facing']?.[0] ?? (brief.facts.tile?.rectified ? 'rectified' : 'unknown')) as
    | 'rectified'
    | 'calibrated'
    | 'unknown'
  const runningBond = conditions['bond']?.includes('running') === true
  const least = leastJoint({
    variationMm: variation.value,
    edgeWarpMm: measures.warpMm ?? 0,
    facing,
    longestEdgeMm: figures.tileMm?.[0] ?? brief.facts.tile?.lengthMm ?? Math.max(0, ...measures.calipersMm),
    runningBond,
  })
  if (!least.ok) return least
  const why = say(`joint.why-${least.value.governs}`, { variation: small(variation.value) })
  const said = figures.jointMm !== null && Math.abs(figures.jointMm - variation.value) > 0.01 ? figures.jointMm : null
  const key = said === null ? 'least' : said >= least.value.jointMm - 0.01 ? 'yes' : 'no'
  return fine({
    topic: 'joints',
    answer: say(`joint.${key}`, {
      joint: small(least.value.jointMm),
      why,
      ...(said === null ? {} : { said: small(said) }),
    }),
    assumed: runningBond && facing === 'unknown' ? [say('joint.calibrated')] : [],
    sources: [
      sourceOfRule(brief.settings.book, { source: 'a108-02-joint' }),
      ...(runningBond ? [sourceOfRule(brief.settings.book, { source: 'a108-02-bond' })] : []),
    ],
    values: { min_joint_mm: least.value.jointMm, size_variation_mm: variation.value },
  })
}

/** Lippage for a joint plus measured warp. */
export function lippageTold(brief: Brief): Outcome<Told> {
  const { measures, figures } = brief.heard.rules
  const warpMm = measures.warpMm!
  const limit = allowedLippage(figures.jointMm!, warpMm)
  if (!limit.ok) return limit
  return fine({
    topic: 'joints',
    answer: say('lippage.warped', {
      limit: small(limit.value),
      base: small(limit.value - warpMm),
      warp: small(warpMm),
    }),
    sources: [sourceOfRule(brief.settings.book, { source: 'a108-02-lip' })],
    values: { max_lippage_mm: limit.value },
  })
}

/** Which trowel for a tile; or whether that trowel is enough for tile and floor. */
export function notchTold(brief: Brief): Outcome<Told> {
  const { facts, settings, heard } = brief
  const edgeMm = heard.rules.figures.tileMm?.[0] ?? facts.tile?.lengthMm
  if (!edgeMm) return refuse('question', { question: 'tile' })
  const usual = trowelFor(settings, edgeMm)
  const notch = heard.facts.trowel
  const sources = [sourceOfRule(settings.book, { source: 'practice' })]
  if (!notch)
    return fine({
      topic: 'contact',
      answer: say('notch.answer', {
        trowel: trowelPhrase(usual.notch),
        edge: small(edgeMm),
        butter: usual.backButter ? say('notch.butter') : { is: 'quote', text: '' },
      }),
      sources,
      values: { notch_width_mm: usual.notch.widthMm, notch_depth_mm: usual.notch.depthMm },
    })
  const bed = combedRangeMm(notch, spreadOf(settings.practice.mortar.trowelDeg))
  if (!bed.ok) return bed
  const gapMm = heard.rules.figures.gap?.gapMm ?? facts.outOfFlatMm ?? 0
  const large = edgeMm >= settings.practice.tile.largeEdgeMm.value - 0.01
  const judged = judgeTrowel(
    { lowMm: bed.value.low, highMm: bed.value.high },
    { gapMm, warpMm: heard.rules.measures.warpMm ?? 0 },
    large ? 'large' : 'thin',
  )
  if (!judged.ok) return judged
  const smaller = notch.widthMm * notch.depthMm < usual.notch.widthMm * usual.notch.depthMm * 0.8
  const key = judged.value.verdict === 'enough' && smaller ? 'small' : judged.value.verdict
  return fine({
    topic: 'contact',
    answer: say(`notch.${key}`, {
      low: small(bed.value.low),
      high: small(bed.value.high),
      needs: small(judged.value.needsMm),
      edge: small(edgeMm),
      trowel: trowelPhrase(usual.notch),
    }),
    sources: [...sources, sourceOfRule(settings.book, { source: 'a108-5-bed' })],
    values: { min_bed_mm: judged.value.needsMm, notch_width_mm: notch.widthMm, notch_depth_mm: notch.depthMm },
  })
}
