/** Sums of a line that crews ask in passing: the bed of a notch, airflow at a grinder, end cuts, sag, floor numbers. */

import { LEAST_JOINT_MM } from '../../core/joints.ts'
import { cutFromSliverMm, endCuts } from '../../core/layout/end-cut.ts'
import { combedMm, combedRangeMm } from '../../core/trowel.ts'
import type { Heard } from '../../language/heard.ts'
import { count, number, type Phrase, room, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { spreadOf } from '../../settings.ts'
import { trowelPhrase, usualJointMm } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { sourceOfRule } from './rule.ts'

const IN = 25.4

/** "1/2 sq notch bed depth", "12 mm notch, litres per m2": the notch alone, pressed flat. */
export function bedTold(brief: Brief): Outcome<Told> {
  const { heard, settings } = brief
  const notch = heard.facts.trowel
  if (!notch) return refuse('question', { question: 'trowel' })
  const saidDeg = heard.quantities.find((q) => q.unit === 'degree' && q.n >= 20 && q.n <= 90)?.n
  const range = combedRangeMm(notch, spreadOf(settings.practice.mortar.trowelDeg))
  if (!range.ok) return range
  const usual = saidDeg === undefined ? range.value.usual : combedMm(notch, saidDeg)
  const leastMm = settings.practice.mortar.minBedMm.value
  const args = {
    notch: trowelPhrase(notch),
    usual: small(usual),
    low: small(range.value.low),
    high: small(range.value.high),
    litres: number(usual, 2),
    least: small(leastMm),
    ...(saidDeg === undefined ? {} : { angle: count(saidDeg) }),
  }
  return fine({
    topic: 'mortar',
    answer: say(saidDeg === undefined ? 'bed.answer' : 'bed.at-angle', args),
    details: [say('bed.litres', args), ...(usual < leastMm ? [say('bed.thin', args)] : [])],
    sources: [{ text: 'geometry' }, sourceOfRule(settings.book, { source: 'a108-5-bed' })],
    working: [say('bed.work')],
    values: {
      bed_mm: usual,
      ...(saidDeg === undefined ? { bed_mm_low: range.value.low, bed_mm_high: range.value.high } : {}),
      min_bed_mm: leastMm,
      notch_width_mm: notch.widthMm,
      notch_depth_mm: notch.depthMm,
    },
  })
}

/** 29 CFR 1926.1153 table 1: 25 cubic feet a minute for each inch of wheel. */
const CFM_PER_INCH = 25
const LPS_PER_CFM = 0.47194745

export function airflowTold(brief: Brief): Outcome<Told> {
  const wheelMm = wheelIn(brief.heard)
  if (wheelMm === null) return refuse('question', { question: 'wheel' })
  const cfm = (CFM_PER_INCH * wheelMm) / IN
  return fine({
    topic: 'trouble',
    answer: say(brief.metric ? 'airflow.metric' : 'airflow.answer', {
      cfm: number(cfm, 1),
      litres: number(cfm * LPS_PER_CFM, 0),
      wheel: small(wheelMm),
    }),
    details: [say('airflow.filter')],
    sources: [sourceOfRule(brief.settings.book, { source: 'silica-table' })],
    values: { airflow_cfm: cfm, airflow_l_per_s: cfm * LPS_PER_CFM },
  })
}

export const wheelIn = ({ loose }: Heard): number | null => {
  const q = loose.find(({ q: one }) => ['length', 'none'].includes(one.dimension))?.q
  if (!q) return null
  const mm = q.si ?? q.n * IN
  return mm >= 75 && mm <= 500 ? mm : null
}

/** "24 in tile leaves a 1 1/2 sliver", "wall 2630, 300 tile: end cuts?" */
export function endCutsTold(brief: Brief): Outcome<Told> {
  const { heard, metric } = brief
  const said = cutFiguresIn(heard, metric)
  if (!said) return refuse('question', { question: 'tile' })
  const { tileMm, otherMm } = said
  const sources = [{ text: 'NAVEDTRA 14044 p. 7-23' }, sourceOfRule(brief.settings.book, { source: 'a108-02-centre' })]
  if (otherMm < tileMm) {
    const cutMm = cutFromSliverMm(tileMm, otherMm)
    const args = { cut: small(cutMm), tile: small(tileMm), sliver: small(otherMm) }
    return fine({
      topic: 'layout',
      answer: say('end-cut.sliver', args),
      sources,
      working: [say('end-cut.work-sliver', args)],
      values: { end_cut_mm: cutMm, smallest_cut_mm: cutMm },
    })
  }
  const jointMm = heard.facts.jointMm ?? (heard.rules.subjects.some((hit) => hit.name === 'butt-joint') ? 0 : null)
  const used = jointMm ?? usualJointMm(brief)
  const cuts = endCuts(otherMm, tileMm, used)
  if (!cuts.ok) return cuts
  const args = {
    whole: count(cuts.value.whole),
    cut: small(cuts.value.cutMm),
    left: small(cuts.value.leftMm),
    wall: room(otherMm),
    joint: small(used),
  }
  return fine({
    topic: 'layout',
    answer: say(cuts.value.cutMm === 0 ? 'end-cut.none' : 'end-cut.answer', args),
    details: cuts.value.cutMm === 0 ? [] : [say('end-cut.left', args)],
    assumed: jointMm === null ? [say('assumed.joint', { joint: small(used) })] : [],
    warnings: used < LEAST_JOINT_MM - 0.1 ? [say('tile.joint-least', { least: small(LEAST_JOINT_MM) })] : [],
    sources,
    values: {
      joint_mm: used,
      tile_whole: cuts.value.whole,
      end_cut_mm: cuts.value.cutMm,
      ...(cuts.value.cutMm === 0 ? {} : { smallest_cut_mm: cuts.value.cutMm }),
    },
  })
}

type CutFigures = { readonly tileMm: number; readonly otherMm: number }

/** The tile's side and the other length: what is left, or the wall. */
export function cutFiguresIn(heard: Heard, metric: boolean): CutFigures | null {
  const tileMm = heard.facts.tile?.lengthMm || heard.rules.figures.tileMm?.[0]
  const other = heard.loose.find(({ q }) => q.dimension === 'length' || (q.dimension === 'none' && q.n > 0))?.q
  if (!tileMm || !other) return null
  const bare = metric ? 1 : other.n > 100 ? 1 : IN
  const otherMm = other.si ?? other.n * bare
  return otherMm > 3 && otherMm < 100_000 ? { tileMm, otherMm } : null
}

/** "10 ft span, how much may it sag": the limit as a length. */
export function sagTold(brief: Brief): Outcome<Told> {
  const { figures, conditions } = brief.heard.rules
  const spanMm = figures.longMm!
  const stone = conditions['material']?.includes('stone') === true || brief.facts.tile?.kind === 'stone'
  const limit = figures.ratio ?? (stone ? 720 : 360)
  const sagMm = spanMm / limit
  return fine({
    topic: 'substrate',
    answer: say('sag.answer', { sag: sagPhrase(sagMm, brief.metric), span: room(spanMm), limit: count(limit) }),
    details: [say('sag.also')],
    sources: [sourceOfRule(brief.settings.book, { source: 'tcna-deflection' })],
    values: { deflection_mm: sagMm, deflection_limit: limit },
  })
}

/** A third of an inch is no sixteenth. */
const sagPhrase = (mm: number, metric: boolean): Phrase =>
  metric ? say('sag.mm', { n: number(mm, 1) }) : say('sag.in', { n: number(mm / IN, 2), near: small(mm) })

/** Gap over 10 ft for a floor number: 6.25 / FF in, from FF 20 at 5/16 in. Approximate. */
const GAP_IN_TIMES_FF = 6.25
const LOCAL_SHARE = 3 / 5

export function floorNumberTold(brief: Brief): Outcome<Told> {
  const numbers = floorNumbersIn(brief.heard)
  const ff = numbers.find((n) => n.is === 'ff')?.n
  const local = numbers.map((n) => say(`ff.local-${n.is}`, { n: count(n.n), least: number(n.n * LOCAL_SHARE, 1) }))
  const gapMm = ff === undefined ? null : (GAP_IN_TIMES_FF / ff) * IN
  const gap = gapMm === null || ff === undefined ? null : say('ff.answer', { ff: count(ff), gap: small(gapMm) })
  const asksLocal = brief.heard.rules.plain.includes('local') || brief.heard.rules.plain.includes('min')
  const first = asksLocal || gap === null ? local : [gap]
  return fine({
    topic: 'substrate',
    answer: first[0]!,
    details: [...first.slice(1), ...(first[0] === gap ? local : gap ? [gap] : []), say('ff.straightedge')],
    sources: [
      sourceOfRule(brief.settings.book, { source: 'aci117' }),
      { text: 'common practice, no published source' },
    ],
    values: {
      ...(gapMm === null ? {} : { max_gap_mm: gapMm }),
      ...(ff === undefined ? {} : { local_min_ff: ff * LOCAL_SHARE }),
    },
  })
}

/** "FF20/FL15", "FF 25" */
export const floorNumbersIn = ({ rules }: Heard): { readonly is: 'ff' | 'fl'; readonly n: number }[] =>
  [...rules.plain.matchAll(/(?<![a-z])(f[fl]) ?(\d{2,3})(?!\d)/g)]
    .map(([, is, n]) => ({ is: is as 'ff' | 'fl', n: Number(n) }))
    .filter(({ n }) => n >= 10 && n <= 120)
