/** How high the floor comes, and what that asks of doors, appliances, flanges and thresholds; what it weighs. */
import { applianceFit, deadLoad, doorCutMm, flangeRingMm, stackHeight, stepAt } from '../../core/buildup.ts'
import { area, load, mass, number, type Phrase, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { layersOf, type NamedLayer } from './layers.ts'
import { alone, figureNear, lengthMm, lengthNear } from './read.ts'

export function buildUp(brief: Brief): Outcome<Told> {
  const assumed: Phrase[] = []
  if (brief.heard.has('under-counter') && talls(brief).length < 2) return refuse('question', { question: 'appliance' })
  const layers = saidRise(brief) ?? layersOf(brief, assumed)
  if (!layers.ok) return layers
  const height = stackHeight(layers.value)
  if (!height.ok) return height
  const weight = deadLoad(layers.value)
  if (!weight.ok) return weight
  const { lowMm, usualMm, highMm } = height.value
  const asksLoad = brief.heard.has('floor-load') || brief.heard.has('weight-word')
  const range = { low: small(lowMm), high: small(highMm), usual: small(usualMm) }
  const heightLine = say('order.height', range)
  const isWeighed = weight.value.unknown.length < layers.value.length
  const loadLine = say('order.load', {
    load: load(weight.value.kpa),
    mass: mass(weight.value.kgPerM2 * (brief.metric ? 1 : 0.09290304)),
    unit: say(brief.metric ? 'order.per-m2' : 'order.per-sf'),
  })
  const fits = fitLines(brief, usualMm, highMm)
  const floor = floorSum(brief.facts)
  const areaM2 = floor.ok ? floor.value?.areaM2 : undefined
  return fine({
    topic: 'order',
    answer: fits.answer ?? (asksLoad ? loadLine : heightLine),
    details: [
      ...(fits.answer ? [heightLine] : []),
      ...fits.details,
      ...(asksLoad ? [heightLine] : isWeighed ? [loadLine] : []),
      ...(asksLoad && areaM2
        ? [say('order.whole-floor', { mass: mass(weight.value.kgPerM2 * areaM2), area: area(areaM2) })]
        : []),
    ],
    assumed,
    warnings: asksLoad ? [] : fits.warnings,
    sources: [sourceOf(brief.settings.practice.mortar.minBedMm), ...fits.sources],
    working: layers.value.map((l) =>
      say('order.work-layer', {
        layer: l.title,
        low: number(l.lowMm, 1),
        high: number(l.highMm, 1),
        density: number(l.kgPerL ?? 0, 2),
      }),
    ),
    values: {
      build_up_mm: usualMm,
      build_up_mm_low: lowMm,
      build_up_mm_high: highMm,
      floor_load_kpa: isWeighed ? weight.value.kpa : undefined,
      ...(areaM2 && isWeighed ? { weight_kg: weight.value.kgPerM2 * areaM2, area_m2: areaM2 } : {}),
    },
    offers: ['math'],
  })
}

/** "floor comes up 3/4": the rise itself was said, and no layer of it. */
function saidRise(brief: Brief): Outcome<NamedLayer[]> | null {
  const q = figureNear(brief.heard, ['length', 'none'], 'rise-word')
  const mm = q && (q.dimension === 'length' || q.token.fraction) ? lengthMm(q, brief.metric) : null
  if (mm === null || mm <= 0 || mm > 150 || brief.facts.tile?.thicknessMm !== undefined) return null
  return fine([{ name: 'rise', lowMm: mm, highMm: mm, kgPerL: null, title: say('order.layer-said') }])
}

/** "is a 3/8 threshold ok for a wheelchair": the rule, and the step that was said. */
export function accessStep(brief: Brief): Outcome<Told> {
  const { buildup: b } = brief.settings.around
  const said = alone(brief.heard).find((q) => q.dimension === 'length' || q.token.fraction)
  const stepMm = said ? lengthMm(said, brief.metric) : null
  const rule = {
    uprightMm: b.stepUprightMm.value,
    bevelMm: b.stepBevelMm.value,
    bevelRun: b.bevelRun.value,
    rampRun: b.rampRun.value,
  }
  const step = stepMm === null ? null : stepAt(stepMm, rule)
  if (step && !step.ok) return step
  const ruleLine = say('order.access-rule', { upright: small(rule.uprightMm), bevel: small(rule.bevelMm) })
  return fine({
    topic: 'order',
    answer: step
      ? say(`order.step-${step.value.kind}`, { step: small(stepMm as number), run: small(step.value.runMm) })
      : ruleLine,
    details: step ? [ruleLine] : [],
    warnings: [say('order.access-code')],
    sources: [sourceOf(b.stepUprightMm), sourceOf(b.stepBevelMm)],
  })
}

type Fits = {
  readonly answer: Phrase | null
  readonly details: Phrase[]
  readonly warnings: Phrase[]
  readonly sources: Told['sources'] & object
}

function fitLines(brief: Brief, usualMm: number, highMm: number): Fits {
  const { heard, metric } = brief
  const { buildup: b } = brief.settings.around
  if (heard.has('flange')) {
    const above = lengthNear(heard, metric, 'flange') ?? 0
    const ring = flangeRingMm(usualMm, above, b.flangeAboveMm.value)
    return {
      answer: say(ring > 0 ? 'order.flange' : 'order.flange-fine', { ring: small(ring), above: small(above) }),
      details: [],
      warnings: [say('order.plumber')],
      sources: [sourceOf(b.flangeAboveMm)],
    }
  }
  if (heard.has('under-counter')) return applianceLines(brief, highMm)
  if (heard.has('undercut')) {
    const gap = lengthNear(heard, metric, 'joint', 'undercut', 'door') ?? 0
    const cut = doorCutMm(gap, usualMm, b.doorClearMm.value)
    return {
      answer: say(cut > 0 ? 'order.door' : 'order.door-fine', {
        cut: small(Math.max(0, cut)),
        clear: small(b.doorClearMm.value),
      }),
      details: [],
      warnings: [],
      sources: [sourceOf(b.doorClearMm)],
    }
  }
  if (heard.has('step-to')) {
    const other = lengthNear(heard, metric, 'next-floor', 'step-to') ?? 0
    const step = stepAt(usualMm - other, {
      uprightMm: b.stepUprightMm.value,
      bevelMm: b.stepBevelMm.value,
      bevelRun: b.bevelRun.value,
      rampRun: b.rampRun.value,
    })
    if (!step.ok) return NOTHING
    return {
      answer: say(`order.step-${step.value.kind}`, {
        step: small(Math.abs(usualMm - other)),
        run: small(step.value.runMm),
      }),
      details: [],
      warnings: [say('order.access-code')],
      sources: [sourceOf(b.stepUprightMm), sourceOf(b.stepBevelMm)],
    }
  }
  return NOTHING
}

const NOTHING: Fits = { answer: null, details: [], warnings: [], sources: [] }
const APPLIANCE_FROM_MM = 500

/** Lengths as tall as an appliance, the tallest first. [mm] */
const talls = (brief: Brief): number[] =>
  alone(brief.heard)
    .filter((q) => q.dimension === 'length' || q.dimension === 'none')
    .map((q) => lengthMm(q, brief.metric))
    .filter((mm) => mm >= APPLIANCE_FROM_MM && mm <= 2500)
    .toSorted((a, c) => c - a)

/** Two lengths: the larger is the opening, the smaller the appliance with its feet in. */
function applianceLines(brief: Brief, riseMm: number): Fits {
  const [opening, least] = talls(brief)
  if (opening === undefined || least === undefined) return NOTHING
  const fit = applianceFit(opening, riseMm, least, true)
  if (!fit.ok) return NOTHING
  return {
    answer: say(fit.value.goesIn ? 'order.appliance-fits' : 'order.appliance-stuck', {
      spare: small(Math.abs(fit.value.spareMm)),
      opening: small(opening),
      least: small(least),
    }),
    details: [say('order.appliance-out')],
    warnings: [],
    sources: [],
  }
}
