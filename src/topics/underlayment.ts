/** Underlayment: sheets or rolls on the floor, and all that goes with them: bond, tape, fasteners, fill, the wait. */
import type { Spread } from '../core/spread.ts'
import { goodsKind } from '../language/goods.ts'
import { area, count, hours, number, type Phrase, percent, run, say, volume } from '../phrase.ts'
import { yielding } from '../practice.ts'
import { fine, type Outcome } from '../problem.ts'
import { materialOf, usualPack } from '../settings.ts'
import { aboutGoods } from './around/about.ts'
import { haveOf, verdictOf } from './around/enough.ts'
import { primer } from './around/primer.ts'
import { withCautions } from './around/safety.ts'
import { type Goods, goodsName, goodsOf, sizeName } from './around/sheet-goods.ts'
import { type UnderlaymentNeed, underlaymentNeed } from './around/underlayment-need.ts'
import { type Brief, type Source, sourceOf, type Told } from './topic.ts'

export function underlayment(brief: Brief): Outcome<Told> {
  const goods = goodsOf(brief)
  const isBoard = goods?.id === 'cement-board' || goods?.id === 'fibre-cement'
  const isBedded = goods?.underlayment.bond.kind === 'mortar'
  const aside = besideBoards(brief)
  if (aside) return aside
  const told = asked(brief)
  return withCautions(
    brief,
    told,
    ...(isBoard ? (['silica'] as const) : []),
    ...(isBedded ? (['cement'] as const) : []),
  )
}

function asked(brief: Brief): Outcome<Told> {
  const waitOnly = waitAlone(brief)
  if (waitOnly) return fine(waitOnly)
  const about = withoutFloor(brief)
  if (about) return fine(about)
  const worked = underlaymentNeed(brief)
  if (!worked.ok) return worked
  const need = worked.value
  const { goods } = need
  const lines = linesOf(brief, need)
  const first = firstAsked(brief, need)
  const order = [
    first,
    ...(['pieces', 'bond', 'tape', 'screws', 'fill', 'wait'] as const).filter((name) => name !== first),
  ]
  const beside = first === 'pieces' ? besideLine(need) : null
  const kept = beside ? order.filter((name) => !['bond', 'tape', 'screws'].includes(name)) : order
  const lined = kept.map((name) => lines[name]).filter((line): line is Phrase => line !== null)
  const told = beside ? [lined[0]!, beside, ...lined.slice(1)] : lined
  const verdict = verdictOf(haveOf(brief, goods.form), need.pieces)
  const [answer, ...details] = [...verdict, ...told] as [Phrase, ...Phrase[]]
  return fine({
    topic: 'underlayment',
    answer,
    details: [...details, ...(goods.form === 'sheet' ? [say('underlayment.stagger')] : [])],
    assumed: [
      ...goods.assumed,
      ...need.notes,
      ...(need.laid
        ? []
        : [
            say('underlayment.assumed-allowance', {
              allowance: percent(brief.heard.facts.sparePct ?? goods.underlayment.allowancePct),
            }),
          ]),
    ],
    warnings: warningsOf(goods),
    sources: sourcesOf(brief, goods),
    working: [
      ...need.working,
      say('underlayment.work-bond', {
        trowel: need.bond.trowel,
        litres: number(need.bond.litres.usual, 1),
        low: number(need.bond.litres.low, 1),
        high: number(need.bond.litres.high, 1),
      }),
    ],
    values: valuesOf(need),
    offers: ['math', 'keep'],
  })
}

/** Primer, the area of one sheet, panels of plywood: no board is bedded there. */
function besideBoards(brief: Brief): Outcome<Told> | null {
  const primed = primer(brief)
  if (primed) return primed
  const piece = areaOfPiece(brief)
  if (piece) return fine(piece)
  const { rooms, areaM2 } = brief.facts
  if ((!rooms && areaM2 === undefined) || goodsOf(brief)?.id !== 'plywood') return null
  const need = underlaymentNeed(brief)
  return need.ok ? fine(panels(need.value)) : need
}

const AREA_UNITS: readonly string[] = ['sqft', 'sqm', 'sqyd', 'sqin']

/** "how many sf in a 4x8 sheet": the piece's own area. */
function areaOfPiece({ heard, metric }: Brief): Told | null {
  const { goods, rooms, areaM2 } = heard.facts
  if (rooms || areaM2 !== undefined || !goods?.lengthMm || !goods.widthMm) return null
  const asksUnits =
    heard.freeUnits.some((unit) => AREA_UNITS.includes(unit)) && heard.has('how-many', 'how-much', 'what')
  if (!heard.has('area-word') && !asksUnits) return null
  const m2 = (goods.lengthMm * goods.widthMm) / 1e6
  const size = sizeName({ lengthMm: goods.lengthMm, widthMm: goods.widthMm }, metric)
  return {
    topic: 'underlayment',
    answer: say(`underlayment.area-of-${goods.form ?? 'sheet'}`, { area: area(m2), size }),
    sources: [{ text: 'geometry' }],
    values: { area_m2: m2 },
  }
}

/** "when can we tile over the cork": the wait needs no floor. */
function waitAlone(brief: Brief): Told | null {
  if (!brief.heard.has('when', 'how-long', 'can-we') || brief.heard.has('how-many', 'how-much')) return null
  const goods = goodsOf(brief)
  if (!goods) return null
  const { bond } = goods.underlayment
  const adhesive = bond.kind === 'adhesive' ? materialOf(brief.settings, 'adhesive', bond.material) : null
  const kind = goodsName(goods.id, goods.underlayment)
  const wait = adhesive?.waits.tile
  return {
    topic: 'underlayment',
    answer: wait
      ? say('underlayment.wait', { low: hours(wait.h), high: hours(wait.longestH) })
      : say('underlayment.no-wait', { kind }),
    warnings: warningsOf(goods),
    sources: [{ text: adhesive?.source ?? goods.underlayment.source }],
    values: wait ? { tile_after_h: wait.longestH, tile_after_h_low: wait.h } : {},
  }
}

/** How it is laid, where no floor is known and nothing is counted. */
function withoutFloor(brief: Brief): Told | null {
  const { rooms, areaM2, leftM2, goods: said } = brief.facts
  if (rooms || areaM2 !== undefined || leftM2 !== undefined || said?.lengthMm || brief.heard.has('how-many'))
    return null
  const isAmount = brief.heard.has('how-much') && brief.heard.has('adhesive', 'tape', 'mortar', 'sheet', 'roll')
  const goods = goodsOf(brief)
  return goods && !isAmount && goodsKind(brief.has) ? aboutGoods(brief, goods) : null
}

/** Panels of plywood are counted and no more: how they are fastened is the floor's own matter. */
const panels = (need: UnderlaymentNeed): Told => ({
  topic: 'underlayment',
  answer: say('underlayment.sheets', {
    count: count(need.pieces),
    kind: goodsName(need.goods.id, need.goods.underlayment),
    size: need.goods.name,
    area: area(need.areaM2),
  }),
  details: [say('underlayment.panels', { gap: { is: 'small', mm: need.goods.underlayment.gapMm } })],
  assumed: [...need.goods.assumed, ...need.notes],
  sources: [{ text: 'common practice, no published source' }],
  working: need.working,
  values: { area_m2: need.areaM2, sheets: need.pieces },
  offers: ['math', 'keep'],
})

type LineName = 'pieces' | 'bond' | 'tape' | 'screws' | 'fill' | 'wait'

/** What the message asks for first; the rest follows. */
function firstAsked(brief: Brief, need: UnderlaymentNeed): LineName {
  const h = brief.heard
  const asksPieces = h.has('sheet', 'roll') && h.has('how-many')
  if (need.tileAfterH && h.has('when', 'how-long', 'can-we') && !asksPieces) return 'wait'
  if (need.fillL && h.has('fill-word')) return 'fill'
  if (asksPieces) return 'pieces'
  if (need.tapeM > 0 && h.has('tape')) return 'tape'
  if (need.fasteners > 0 && h.has('screw')) return 'screws'
  if (h.has('adhesive', 'mortar') && (h.has('how-much', 'how-many', 'bag', 'bucket', 'buy') || !h.has('sheet', 'roll')))
    return 'bond'
  return 'pieces'
}

/** What goes with a board, in one line: mortar under it, tape, screws. */
function besideLine({ bond, tapeM, fasteners, goods }: UnderlaymentNeed): Phrase | null {
  if (bond.kind === 'adhesive' || tapeM <= 0 || fasteners <= 0) return null
  return say('underlayment.beside', {
    packs: count(bond.packs),
    pack: bond.pack,
    trowel: bond.trowel,
    tape: run(tapeM * 1000),
    screws: count(fasteners),
    spacing: { is: 'small', mm: goods.underlayment.fasteners?.fieldMm ?? 0 },
  })
}

function linesOf(brief: Brief, need: UnderlaymentNeed): Record<LineName, Phrase | null> {
  const { goods, bond } = need
  const kind = goodsName(goods.id, goods.underlayment)
  const fillPack = need.fillL ? fillBags(brief, need.fillL) : null
  return {
    pieces: say(`underlayment.${goods.form}s`, {
      count: count(need.pieces),
      kind,
      size: goods.name,
      area: area(need.areaM2),
    }),
    bond: say(bond.kind === 'adhesive' ? 'underlayment.adhesive' : 'underlayment.under', {
      litres: volume(bond.litres.usual),
      high: volume(bond.litres.high),
      packs: count(bond.packs),
      pack: bond.pack,
      trowel: bond.trowel,
      kind,
    }),
    tape:
      need.tapeM > 0 ? say('underlayment.tape', { tape: run(need.tapeM * 1000), seam: run(need.seamM * 1000) }) : null,
    screws:
      need.fasteners > 0
        ? say('underlayment.screws', {
            count: count(need.fasteners),
            spacing: { is: 'small', mm: goods.underlayment.fasteners?.fieldMm ?? 0 },
          })
        : null,
    fill: need.fillL
      ? say('underlayment.fill', {
          litres: volume(need.fillL.usual),
          low: volume(need.fillL.low),
          high: volume(need.fillL.high),
          bags: count(fillPack ?? 0),
        })
      : null,
    wait: need.tileAfterH
      ? say('underlayment.wait', { low: hours(need.tileAfterH.low), high: hours(need.tileAfterH.high) })
      : null,
  }
}

function fillBags(brief: Brief, fillL: Spread): number | null {
  const mortar = materialOf(brief.settings, 'mortar', 'unmodified-thinset')
  return mortar
    ? Math.ceil(fillL.usual / yielding(mortar, usualPack(mortar, brief.metric ? 'metric' : 'imperial')).yieldL - 1e-9)
    : null
}

function warningsOf(goods: Goods): Phrase[] {
  return [
    ...(goods.id === 'uncoupling-membrane' ? [say('underlayment.membrane-mortar')] : []),
    ...(goods.underlayment.bond.kind === 'adhesive' ? [say('underlayment.adhesive-sheet')] : []),
  ]
}

function sourcesOf(brief: Brief, goods: Goods): Source[] {
  return [{ text: goods.underlayment.source }, sourceOf(brief.settings.practice.mortar.trowelDeg)]
}

function valuesOf(need: UnderlaymentNeed): Record<string, number | undefined> {
  const { bond, goods } = need
  const isAdhesive = bond.kind === 'adhesive'
  return {
    area_m2: need.areaM2,
    [goods.form === 'sheet' ? 'sheets' : 'rolls']: need.pieces,
    seam_tape_m: need.tapeM > 0 ? need.tapeM : undefined,
    fasteners: need.fasteners || undefined,
    adhesive_l: isAdhesive ? bond.litres.usual : undefined,
    adhesive_l_low: isAdhesive ? bond.litres.low : undefined,
    adhesive_l_high: isAdhesive ? bond.litres.high : undefined,
    mortar_bags: isAdhesive ? undefined : bond.packs,
    mortar_kg: isAdhesive ? undefined : bond.kg.usual,
    fill_l: need.fillL?.usual,
    fill_l_low: need.fillL?.low,
    fill_l_high: need.fillL?.high,
  }
}
