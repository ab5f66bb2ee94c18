/** What holds without a floor: how an underlayment goes down, whether clips are needed, coats, mud at the drain. */
import { count, hours, number, type Phrase, say, small } from '../../phrase.ts'
import { materialOf } from '../../settings.ts'
import { trowelPhrase } from '../stuff.ts'
import { type Brief, sourceOf, type Told } from '../topic.ts'
import { type Goods, goodsName } from './sheet-goods.ts'

/** How an underlayment is laid: what was asked first, the rest after it. */
export function aboutGoods(brief: Brief, goods: Goods): Told {
  const { underlayment: u, id } = goods
  const kind = goodsName(id, u)
  const isAdhesive = u.bond.kind === 'adhesive'
  const lines: readonly (readonly [asked: boolean, line: Phrase | null])[] = [
    [
      brief.heard.has('screw', 'apart'),
      u.fasteners
        ? say('about.fasteners', { field: small(u.fasteners.fieldMm), inset: small(u.fasteners.insetMm) })
        : null,
    ],
    [brief.heard.has('joint', 'spacer'), u.gapMm > 0 ? say('about.gap', { gap: small(u.gapMm) }) : say('about.butt')],
    [
      brief.heard.has('thick', 'build-up'),
      say('about.thick', { kind, usual: small(u.thicknessMm.usual), high: small(u.thicknessMm.high) }),
    ],
    [brief.heard.has('tape'), say(u.taped ? 'about.taped' : 'about.untaped')],
    [
      brief.heard.has('adhesive', 'mortar', 'trowel', 'notch'),
      say(isAdhesive ? 'about.glued' : 'about.bedded', { kind, trowel: trowelPhrase(u.bond.trowel) }),
    ],
  ]
  const told = lines.toSorted((a, b) => Number(b[0]) - Number(a[0])).flatMap(([, line]) => (line ? [line] : []))
  const [answer, ...details] = told as [Phrase, ...Phrase[]]
  return {
    topic: 'underlayment',
    answer,
    details: [...details, say('underlayment.stagger'), say('about.ask-floor')],
    warnings: [say('about.sheet-rules')],
    sources: [{ text: u.source }],
    values: { ...(u.gapMm > 0 ? { gap_mm: u.gapMm } : {}) },
  }
}

/** "are leveling clips required": no rule asks for them. */
export function clipsNeeded(brief: Brief): Told {
  const { practice, around } = brief.settings
  return {
    topic: 'levelling',
    answer: say('about.clips', { edge: small(practice.tile.largeEdgeMm.value) }),
    details: [say('about.clips-flat')],
    sources: [sourceOf(practice.tile.largeEdgeMm), sourceOf(around.levelling.spacingMm)],
  }
}

/** Coats, film and waits of the liquid membrane, where no area is told. */
export function aboutMembrane(brief: Brief): Told | null {
  const membrane = materialOf(brief.settings, 'coating', 'liquid-membrane')
  if (!membrane) return null
  const { waits } = membrane
  return {
    topic: 'shower',
    answer: say('about.coats', { coats: count(membrane.coats), film: number(membrane.coatLPerM2.usual, 2) }),
    details: [say('shower.recoat', { hours: hours(membrane.recoatH), tile: hours(waits.tile.h) })],
    warnings: [say('shower.film'), say('shower.code')],
    sources: [{ text: membrane.source }],
  }
}

/** Depth, mix and slope of deck mud, where no pan is told. */
export function aboutMud(brief: Brief): Told {
  const { shower: s } = brief.settings.around
  return {
    topic: 'shower',
    answer: say('about.mud', {
      drain: small(s.atDrainMm.value),
      parts: number(s.sandParts.value, 0),
      more: number(s.sandParts.high ?? s.sandParts.value, 0),
    }),
    details: [say('shower.slope', { slope: { is: 'slope', mmPerM: s.slopeMmPerM.value } }), say('about.ask-pan')],
    warnings: [say('shower.code')],
    sources: [sourceOf(s.atDrainMm), sourceOf(s.sandParts)],
    values: { slope_mm_per_m: s.slopeMmPerM.value },
  }
}
