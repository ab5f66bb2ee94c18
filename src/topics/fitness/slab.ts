/** Slabs and soft joints: test holes, humidity readings, drying, the width of an exterior joint, tubes of sealant. */
import { exteriorJointMm, sealantDepthMm, sealantTubes, tubeFillsM } from '../../core/joints.ts'
import { holeDepthMm, humidityHoles, judgeMoisture, screedDays } from '../../core/substrate/moisture.ts'
import type { Figures } from '../../language/rule-numbers.ts'
import { area, count, type Phrase, percent, quote, room, run, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'
import { phraseOf, sourceOfRule } from './rule.ts'

/** Humidity test holes: how many for the slab, and how deep. */
export function holesTold(brief: Brief): Outcome<Told> {
  const { slabMm } = brief.heard.rules.measures
  const areaM2 = brief.heard.facts.areaM2
  const depths = slabMm === null ? null : ([holeDepthMm(slabMm, 1), holeDepthMm(slabMm, 2)] as const)
  if (depths && !depths[0].ok) return depths[0]
  const args = depths?.[0].ok && depths[1].ok ? { one: small(depths[0].value), both: small(depths[1].value) } : null
  const holes = areaM2 === undefined ? null : humidityHoles(areaM2)
  if (holes && !holes.ok) return holes
  const answer: Phrase =
    holes === null || areaM2 === undefined
      ? say('holes.depth-only', args!)
      : args
        ? say('holes.answer', { holes: count(holes.value), area: area(areaM2), depth: say('holes.depth', args) })
        : say('holes.answer', { holes: count(holes.value), area: area(areaM2), depth: quote('') })
  const set = brief.heard.rules.measures.holes
  const judged =
    set === null || holes === null
      ? answer
      : say(set >= holes.value ? 'holes.enough' : 'holes.too-few', { set: count(set), rule: answer })
  return fine({
    topic: 'substrate',
    answer: judged,
    sources: [sourceOfRule(brief.settings.book, { source: 'f2170' })],
    values: {
      ...(holes ? { test_holes: holes.value } : {}),
      ...(depths?.[0].ok ? { hole_depth_mm: depths[0].value } : {}),
    },
  })
}

export function screedTold(brief: Brief): Outcome<Told> {
  const thick = brief.heard.rules.measures.slabMm!
  const days = screedDays(thick)
  if (!days.ok) return days
  return fine({
    topic: 'substrate',
    answer: say('screed.days', { days: count(Math.round(days.value)), thick: small(thick), limit: percent(75) }),
    sources: [sourceOfRule(brief.settings.book, { source: 'nhbc-935' })],
    values: { slab_days: days.value, max_rh_pct: 75 },
  })
}

/** Several humidity readings against the range that sheets commonly set. */
export function humidityTold(brief: Brief): Outcome<Told> {
  const rule = brief.settings.book.rules.find((r) => r.id === 'slab-humidity')!
  const { value: high } = rule.limit!
  const range = { low: rule.values?.['max_rh_pct_low'] ?? high, high }
  const judged = judgeMoisture(
    brief.heard.rules.measures.humiditiesPct,
    'humidity',
    range,
    brief.heard.facts.areaM2 ?? null,
  )
  if (!judged.ok) return judged
  const { worst, verdict, holesNeeded, enoughHoles } = judged.value
  return fine({
    topic: 'substrate',
    answer: say(`humidity.${verdict}`, { worst: percent(worst), low: percent(range.low), high: percent(high) }),
    details: [
      phraseOf(rule),
      ...(enoughHoles === false && holesNeeded !== null
        ? [say('humidity.few-holes', { holes: count(holesNeeded) })]
        : []),
    ],
    sources: [sourceOfRule(brief.settings.book, rule)],
    values: { rh_pct: worst, max_rh_pct: high },
  })
}

/** A yearly range where none was told, the one up to which nothing is added: 100 F. [K] */
const USUAL_RANGE_K = 100 / 1.8

/** Width of an exterior movement joint by spacing and yearly range. */
export function widthTold(brief: Brief): Outcome<Told> {
  const { figures } = brief.heard.rules
  const spacingMm = figures.longMm!
  // A range in degrees was read as a temperature: in Fahrenheit its zero has to come off again.
  const saidK =
    figures.temperatureC === null ? null : brief.metric ? figures.temperatureC : figures.temperatureC + 32 / 1.8
  const width = exteriorJointMm(spacingMm, saidK ?? USUAL_RANGE_K)
  if (!width.ok) return width
  return fine({
    topic: 'joints',
    answer: say('width.answer', { width: small(width.value), spacing: room(spacingMm) }),
    assumed: saidK === null ? [say('width.assumed-range')] : [],
    sources: [sourceOfRule(brief.settings.book, { source: 'ej171-width' })],
    values: { movement_width_mm: width.value, movement_spacing_m: spacingMm / 1000 },
  })
}

const MOST_SECTION_MM = 51

/** The joint's width and, where it was told, its depth. [mm] */
export function sealantSectionMm(figures: Figures): readonly [number, number?] | null {
  const { tileMm, jointMm, smallMm } = figures
  // "1/4 x 1/4": a pair that small is no tile.
  if (tileMm && tileMm[0] <= MOST_SECTION_MM) return [tileMm[1], tileMm[0]]
  const [first, second] = jointMm === null ? smallMm : [jointMm, ...smallMm]
  return first === undefined || first > MOST_SECTION_MM ? null : [first, second]
}

/** Tubes of sealant for a length of soft joint. */
export function tubesTold(brief: Brief): Outcome<Told> {
  const { figures } = brief.heard.rules
  const section = sealantSectionMm(figures)
  if (section === null) return refuse('question', { question: 'tile' })
  const [first, second] = section
  const depthMm = second ?? sealantDepthMm(first)
  const said = brief.heard.quantities.find((q) => q.dimension === 'volume')
  const tubeMl = said ? (said.si as number) * 1000 : brief.settings.around.order.sealantTubeMl.value
  const fills = tubeFillsM(first, depthMm, tubeMl)
  if (!fills.ok) return fills
  const args = { width: small(first), depth: small(depthMm), fills: run(fills.value * 1000) }
  if (figures.longMm === null)
    return fine({
      topic: 'joints',
      answer: say('tubes.fills', args),
      sources: [{ text: 'geometry' }],
      values: { sealant_m_per_tube: fills.value },
    })
  const lengthM = figures.longMm / 1000
  const tubes = sealantTubes(lengthM, first, depthMm, tubeMl)
  if (!tubes.ok) return tubes
  return fine({
    topic: 'joints',
    answer: say('tubes.answer', {
      tubes: count(tubes.value),
      length: run(lengthM * 1000),
      ...args,
    }),
    sources: [{ text: 'geometry' }],
    values: { sealant_tubes: tubes.value, sealant_m_per_tube: fills.value },
  })
}
