/** Sheathing over joists: the thickness that is common for their spacing, with the bending worked out beside it. */
import { cautionsFor } from '../../cautions.ts'
import { PSF_KPA, USUAL_LIVE_KPA } from '../../core/substrate/joists.ts'
import { panelDeflectionMm, panelFor } from '../../core/substrate/subfloor.ts'
import { type Amount, count, load, type Phrase, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'
import { spacingPhrase } from './joists.ts'
import { sourceOfRule } from './rule.ts'

const TILE_LIMIT = 360
/** Printed sizes are nominal: 23/32 is sold as 3/4. [mm] */
const NOMINAL_MM = 1
/** "24 oc" told as 600 mm and the like. [mm] */
const SPACING_SLACK_MM = 10

type Common = { readonly thickMm: number; readonly spacingMm: number }

/** What is common, by the spacing up to which it is; the rule holds the figures. */
function commonFor(brief: Brief, spacingMm: number): Common | null {
  const rule = brief.settings.book.rules.find((r) => r.id === 'subfloor')!
  const mm = (name: string): number => (rule.amounts as Record<string, { mm: number }>)[name]!.mm
  const rows: readonly Common[] = [
    { thickMm: mm('thin'), spacingMm: mm('near') },
    { thickMm: mm('thick'), spacingMm: mm('far') },
  ]
  return rows.find((row) => spacingMm <= row.spacingMm + SPACING_SLACK_MM) ?? null
}

export function sheathingTold(brief: Brief): Outcome<Told> {
  const said = brief.heard.rules.measures.sheathing
  if (!said || said.spacingMm === null) return refuse('question', { question: 'joist-span' })
  const common = commonFor(brief, said.spacingMm)
  const thickMm = said.layersMm.length === 0 ? null : said.layersMm.reduce((sum, mm) => sum + mm, 0)
  const livePsf = brief.heard.rules.figures.pounds
  const liveKpa = livePsf !== null && livePsf >= 20 && livePsf <= 250 ? livePsf * PSF_KPA : USUAL_LIVE_KPA
  const { panels } = brief.settings.lumber
  const judged = thickMm === null ? (common ? [common.thickMm] : []) : said.layersMm
  const panel = panelFor(panels.rows, judged)
  const bends = panel ? panelDeflectionMm(panel, said.spacingMm, liveKpa) : null
  if (bends && !bends.ok) return bends
  const ratio = bends ? said.spacingMm / bends.value : null
  const key = keyOf(thickMm, common, ratio)
  const args: Record<string, Amount | Phrase> = {
    spacing: spacingPhrase(said.spacingMm, brief.metric),
    ...(thickMm === null ? {} : { thick: small(thickMm) }),
    ...(common ? { common: small(common.thickMm), row: small(common.spacingMm) } : {}),
  }
  const bending =
    ratio === null
      ? []
      : [say('sheathing.bends', { ratio: count(Math.round(ratio)), limit: count(TILE_LIMIT), live: load(liveKpa) })]
  return fine({
    topic: 'substrate',
    answer: say(`sheathing.${key}`, args),
    details: [...bending, say('sheathing.method')],
    assumed: ratio === null || livePsf !== null ? [] : [say('sheathing.live', { live: load(liveKpa) })],
    warnings: cautionsFor(brief.settings.cautions, ['structure'], 'substrate', {
      ...brief,
      people: brief.memory.people,
    }).warnings,
    sources: [
      sourceOfRule(brief.settings.book, { source: 'practice' }),
      sourceOfRule(brief.settings.book, { source: 'tcna-deflection' }),
      { text: panels.source },
    ],
    working: ratio === null || !bends ? [] : [say('sheathing.work', { sag: small(bends.value), ...args })],
    values: {
      ...(bends && ratio !== null
        ? { deflection_mm: bends.value, deflection_ratio: ratio, deflection_limit: TILE_LIMIT }
        : {}),
      ...(common ? { min_sheathing_mm: common.thickMm } : {}),
    },
  })
}

function keyOf(thickMm: number | null, common: Common | null, ratio: number | null): string {
  if (common === null) return 'far'
  if (thickMm === null) return 'need'
  if (ratio !== null && ratio < TILE_LIMIT) return 'bends-too-much'
  return thickMm >= common.thickMm - NOMINAL_MM ? 'yes' : 'thin'
}
