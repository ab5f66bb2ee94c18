/** Spares, and boxes by the area they cover, where no size of tile is known. */
import { type Box, withSpares } from '../core/tile.ts'
import type { Pattern } from '../facts.ts'
import { area, count, percent, say } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import type { Figure } from '../settings.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

export type PatternRule = { readonly spare: Figure; readonly factor: Figure }

export function patternRule(brief: Brief, pattern: Pattern | undefined): PatternRule {
  const t = brief.settings.practice.tile
  switch (pattern?.name) {
    case 'diagonal':
      return { spare: t.spareDiagonal, factor: t.factorDiagonal }
    case 'herringbone':
    case 'two-size':
    case 'double-herringbone':
    case 'basketweave':
      return { spare: t.spareHerringbone, factor: t.factorHerringbone }
    case 'offset':
    case 'random':
      return { spare: t.spareOffset, factor: t.factorOffset }
    default:
      return { spare: t.spareStraight, factor: t.factorStraight }
  }
}

/** "how much extra for a diagonal?": the share itself. */
export function sparesOnly(brief: Brief): Told {
  const { spare } = patternRule(brief, brief.facts.pattern)
  return {
    topic: 'tile',
    answer: say('tile.spares', {
      usual: percent(spare.value * 100),
      low: percent((spare.low ?? spare.value) * 100),
      high: percent((spare.high ?? spare.value) * 100),
    }),
    sources: [sourceOf(spare)],
    values: { spare_pct: spare.value * 100 },
  }
}

/** "4x12 and 8x10 plus 15 %": how much tile to buy, by its area. */
export function areaToBuy(brief: Brief, areaM2: number): Told {
  const { facts } = brief
  const spare = patternRule(brief, facts.pattern).spare
  const spares = facts.sparePct === undefined ? spare.value : facts.sparePct / 100
  const numbers = {
    buy: area(areaM2 * (1 + spares)),
    floor: area(areaM2),
    over: area(areaM2 * spares),
    spares: percent(spares * 100),
  }
  return {
    topic: 'tile',
    answer: say('tile.buy-area', numbers),
    details: [say('tile.buy-box')],
    assumed: facts.sparePct === undefined ? [say('assumed.spares', { spares: percent(spares * 100) })] : [],
    sources: [sourceOf(spare)],
    values: { area_m2: areaM2, spare_pct: spares * 100, buy_m2: areaM2 * (1 + spares) },
  }
}

export const boxOf = (brief: Brief): Box | null =>
  brief.facts.boxTiles ? { pieces: brief.facts.boxTiles } : brief.facts.boxM2 ? { areaM2: brief.facts.boxM2 } : null

/** A box's area and the floor's are enough for the boxes: no tile size is needed. */
export function boxesOnly(brief: Brief, boxM2: number, areaM2: number): Outcome<Told> {
  const { facts } = brief
  const spare = patternRule(brief, facts.pattern).spare
  const spares = facts.sparePct === undefined ? spare.value : facts.sparePct / 100
  const pieces = withSpares(areaM2 / boxM2, spares)
  if (!pieces.ok) return pieces
  const bare = Math.ceil(areaM2 / boxM2 - 1e-9)
  const have = facts.haveBoxes
  const numbers = {
    boxes: count(pieces.value),
    bare: count(bare),
    area: area(areaM2),
    each: area(boxM2),
    spares: percent(spares * 100),
    have: count(have ?? 0),
    covers: area((have ?? 0) * boxM2),
    more: count(Math.max(0, pieces.value - (have ?? 0))),
  }
  const key =
    have === undefined ? 'boxes' : have < bare ? 'boxes-short' : have < pieces.value ? 'boxes-tight' : 'boxes-enough'
  return fine({
    topic: 'tile',
    answer: say(`tile.${key}`, numbers),
    details: [say('tile.boxes-bare', numbers)],
    assumed: facts.sparePct === undefined ? [say('assumed.spares', { spares: percent(spares * 100) })] : [],
    sources: [sourceOf(spare)],
    values: {
      area_m2: areaM2,
      tile_boxes: pieces.value,
      spare_pct: spares * 100,
      ...(have === undefined ? {} : { boxes_short: Math.max(0, pieces.value - have) }),
    },
  })
}
