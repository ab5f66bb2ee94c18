/** Underlayment: sheets or rolls on the floor, and all that goes with them: bond, tape, fasteners, fill, the wait. */
import { mortarNeed } from '../core/mortar.ts'
import { type Spread, times } from '../core/spread.ts'
import { combedRangeMm } from '../core/trowel.ts'
import { cavityFill, fastenersInPiece, piecesForArea, seamForArea, tapeForSeam } from '../core/underlayment/goods.ts'
import { layRolls } from '../core/underlayment/rolls.ts'
import { laySheets } from '../core/underlayment/sheets.ts'
import { area, count, hours, named, number, type Phrase, percent, run, say, volume } from '../phrase.ts'
import { yielding } from '../practice.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { materialOf, spreadOf, usualPack } from '../settings.ts'
import { haveOf, verdictOf } from './around/enough.ts'
import { figureNear } from './around/read.ts'
import { inInches, type LaidRoom, laidRooms } from './around/rooms.ts'
import { withCautions } from './around/safety.ts'
import { type Goods, goodsName, goodsOf, isStockSize, pieceM2 } from './around/sheet-goods.ts'
import { floorSum } from './floors.ts'
import { packPhrase, trowelPhrase } from './stuff.ts'
import { type Brief, type Source, sourceOf, type Told } from './topic.ts'

export type UnderlaymentNeed = {
  readonly goods: Goods
  readonly areaM2: number
  readonly pieces: number
  readonly seamM: number
  /** Tape to buy; 0 where the seams take none [m]. */
  readonly tapeM: number
  readonly fasteners: number
  readonly bond: Bond
  /** Mortar in the cavities of a membrane [l]; null where it has none. */
  readonly fillL: Spread | null
  /** Wait before tile where an adhesive holds it [h]. */
  readonly tileAfterH: Spread | null
  readonly laid: boolean
  readonly reused: number
  readonly working: readonly Phrase[]
}

type Bond = {
  readonly kind: 'adhesive' | 'mortar'
  readonly material: string
  readonly name: string
  readonly litres: Spread
  readonly packs: number
  readonly packsSafe: number
  readonly kg: Spread
  readonly pack: Phrase
  readonly trowel: Phrase
}

/** All that an underlayment takes, for its own topic and for the order.
 *  @problem question (no floor), out-of-range, too-much-work, unknown-material */
export function underlaymentNeed(said: Brief): Outcome<UnderlaymentNeed> {
  const brief = showerWalls(sizeAsRoom(said))
  const goods = goodsOf(brief)
  if (!goods) return refuse('unknown-material', { said: 'underlayment' })
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  const { areaM2, perimeterM } = floor.value
  const laid = laidOn(brief, goods)
  if (laid && !laid.ok) return laid
  const bare = laid ? null : byArea(brief, goods, areaM2, perimeterM || null)
  if (bare && !bare.ok) return bare
  const count = laid?.value ?? bare!.value
  const bond = bondOf(brief, goods, areaM2)
  if (!bond.ok) return bond
  const { cavityLPerM2, taped } = goods.underlayment
  const fill = cavityLPerM2 ? cavityFill(areaM2, cavityLPerM2.usual) : null
  if (fill && !fill.ok) return fill
  const adhesive = bond.value.kind === 'adhesive' ? materialOf(brief.settings, 'adhesive', bond.value.material) : null
  const wait = adhesive?.waits.tile
  return fine({
    goods,
    areaM2,
    ...count,
    tapeM: taped ? tapeForSeam(count.seamM) : 0,
    bond: bond.value,
    fillL: cavityLPerM2 ? times(cavityLPerM2, areaM2) : null,
    tileAfterH: wait ? { low: wait.h, usual: wait.h, high: wait.longestH } : null,
    laid: laid !== null,
  })
}

/** "board for a 5x8": the one size that was said is no sheet that is sold, and no floor is known: it is the floor. */
function sizeAsRoom(brief: Brief): Brief {
  const { goods, rooms, areaM2, leftM2, ...rest } = brief.facts
  if (rooms || areaM2 !== undefined || leftM2 !== undefined || !goods?.lengthMm || !goods.widthMm) return brief
  const kind = goodsOf(brief)?.underlayment
  if (!kind || isStockSize(kind, goods.lengthMm, goods.widthMm)) return brief
  const { lengthMm, widthMm, ...others } = goods
  return {
    ...brief,
    facts: { ...rest, goods: others, rooms: [{ count: 1, pieces: [{ sign: 1, lengthMm, widthMm }] }] },
  }
}

/** "board for a tub surround 60x30, 5 ft high": the three walls round it, not its floor. */
function showerWalls(said: Brief): Brief {
  const { heard } = said
  const high = figureNear(heard, ['length'], 'high', 'wall')?.si
  if (!high || high < 600 || !heard.has('shower', 'pan') || !heard.facts.rooms) return said
  const brief = inInches(said)
  const [room] = brief.facts.rooms ?? []
  const [piece] = room?.pieces ?? []
  if (!piece) return said
  const runMm = Math.max(piece.lengthMm, piece.widthMm) + 2 * Math.min(piece.lengthMm, piece.widthMm)
  return {
    ...brief,
    facts: {
      ...brief.facts,
      rooms: [{ count: 1, upright: true, pieces: [{ sign: 1, lengthMm: runMm, widthMm: high }] }],
    },
  }
}

type Count = Pick<UnderlaymentNeed, 'pieces' | 'seamM' | 'fasteners' | 'reused' | 'working'>

/** Laid out on the rooms; null where a room or the goods have no sides to go by. */
function laidOn(brief: Brief, goods: Goods): Outcome<Count> | null {
  const rooms = laidRooms(brief.facts)
  const { size } = goods
  if (!rooms || 'm2' in size) return null
  let sum: Count = { pieces: 0, seamM: 0, fasteners: 0, reused: 0, working: [] }
  for (const room of rooms) {
    const one = goods.form === 'roll' ? rolled(room, goods, size) : sheeted(brief, room, goods, size)
    if (!one.ok) return one
    sum = {
      pieces: sum.pieces + one.value.pieces * room.count,
      seamM: sum.seamM + one.value.seamM * room.count,
      fasteners: sum.fasteners + one.value.fasteners * room.count,
      reused: sum.reused + one.value.reused * room.count,
      working: [...sum.working, ...one.value.working],
    }
  }
  const saidPct = brief.heard.facts.sparePct
  return fine(saidPct === undefined ? sum : { ...sum, pieces: Math.ceil(sum.pieces * (1 + saidPct / 100) - 1e-9) })
}

type Sides = { readonly lengthMm: number; readonly widthMm: number }

function rolled(room: LaidRoom, goods: Goods, size: Sides): Outcome<Count> {
  const layout = layRolls(room.floor, { ...size, lapMm: goods.underlayment.lapMm })
  if (!layout.ok) return layout
  const { rolls, strips, buttJoints, seamMm } = layout.value
  const working = [
    say('underlayment.work-rolls', {
      strips: count(strips),
      butts: count(buttJoints),
      rolls: count(rolls),
      seam: run(seamMm),
    }),
  ]
  return fine({ pieces: rolls, seamM: seamMm / 1000, fasteners: 0, reused: 0, working })
}

/** Plywood under it is taken to start in the corner with its length along the room: 8 x 4 ft (common practice, no source). */
const PANEL = { x: { firstMm: 0, everyMm: 2438.4 }, y: { firstMm: 0, everyMm: 1219.2 }, clearMm: 150 }

function sheeted(brief: Brief, room: LaidRoom, goods: Goods, size: Sides): Outcome<Count> {
  const { gapMm, stagger, kerfMm, fasteners } = goods.underlayment
  const under = brief.has('plywood') ? { under: PANEL } : {}
  const layout = laySheets(room.floor, { ...size, gapMm, stagger, kerfMm, ...under })
  if (!layout.ok) return layout
  const { sheets, whole, cut, reused, seamMm, pieces } = layout.value
  let screws = 0
  if (fasteners) {
    const inWhole = fastenersInPiece(size.lengthMm, size.widthMm, fasteners)
    if (!inWhole.ok) return inWhole
    screws = whole * inWhole.value
    for (const piece of pieces) {
      const inCut = fastenersInPiece(piece.lengthMm, piece.widthMm, fasteners)
      screws += inCut.ok ? inCut.value : 0
    }
  }
  const working = [
    say('underlayment.work-sheets', {
      whole: count(whole),
      cut: count(cut),
      reused: count(reused),
      sheets: count(sheets),
      seam: run(seamMm),
    }),
  ]
  return fine({ pieces: sheets, seamM: seamMm / 1000, fasteners: screws, reused, working })
}

function byArea(brief: Brief, goods: Goods, areaM2: number, perimeterM: number | null): Outcome<Count> {
  const { underlayment: u, size, form } = goods
  const pct = brief.heard.facts.sparePct ?? u.allowancePct
  const pieces = piecesForArea(areaM2, pieceM2(goods), pct)
  if (!pieces.ok) return pieces
  const [long, wide] =
    'm2' in size ? [Math.sqrt(size.m2 * 5), Math.sqrt(size.m2 / 5)] : [size.lengthMm / 1000, size.widthMm / 1000]
  const seamM = seamForArea(areaM2, long, wide, perimeterM)
  const each =
    u.fasteners && form === 'sheet' && !('m2' in size)
      ? fastenersInPiece(size.lengthMm, size.widthMm, u.fasteners)
      : null
  const screws = each?.ok ? Math.ceil((each.value * areaM2) / pieceM2(goods)) : 0
  const working = [
    say('underlayment.work-area', {
      area: number(areaM2, 2),
      piece: number(pieceM2(goods), 3),
      allowance: percent(pct),
      pieces: count(pieces.value),
    }),
  ]
  return fine({ pieces: pieces.value, seamM, fasteners: screws, reused: 0, working })
}

function bondOf(brief: Brief, goods: Goods, areaM2: number): Outcome<Bond> {
  const { settings } = brief
  const { bond } = goods.underlayment
  const notch = brief.heard.facts.trowel ?? bond.trowel
  const combed = combedRangeMm(notch, spreadOf(settings.practice.mortar.trowelDeg))
  if (!combed.ok) return combed
  const material = materialOf(settings, bond.kind, bond.material)
  if (!material) return refuse('unknown-material', { said: bond.material })
  const pack = usualPack(material, brief.metric ? 'metric' : 'imperial')
  const yieldL = material.kind === 'adhesive' ? pack.kg / material.wetKgPerL : yielding(material, pack).yieldL
  const need = mortarNeed(areaM2, combed.value, { kg: pack.kg, yieldL }, settings.practice.mortar.wasteShare.value)
  if (!need.ok) return need
  return fine({
    kind: bond.kind,
    material: bond.material,
    name: material.name,
    litres: need.value.volumeL,
    packs: need.value.bagsToBuy,
    packsSafe: need.value.bagsSafe,
    kg: need.value.kg,
    pack: material.kind === 'adhesive' ? say('underlayment.pail', { pail: named(pack.name) }) : packPhrase(pack),
    trowel: trowelPhrase(notch),
  })
}

export function underlayment(brief: Brief): Outcome<Told> {
  const goods = goodsOf(brief)
  const isBoard = goods?.id === 'cement-board' || goods?.id === 'fibre-cement'
  const isBedded = goods?.underlayment.bond.kind === 'mortar'
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
  const told = order.map((name) => lines[name]).filter((line): line is Phrase => line !== null)
  const verdict = verdictOf(haveOf(brief, goods.form), need.pieces)
  const [answer, ...details] = [...verdict, ...told] as [Phrase, ...Phrase[]]
  return fine({
    topic: 'underlayment',
    answer,
    details: [...details, ...(goods.form === 'sheet' ? [say('underlayment.stagger')] : [])],
    assumed: [
      ...goods.assumed,
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

/** The bed of a layer of underlayment for the build-up: its mortar or adhesive pressed flat. [mm]
 *  @problem out-of-range */
export function underBed(brief: Brief, goods: Goods): Outcome<Spread> {
  return combedRangeMm(goods.underlayment.bond.trowel, spreadOf(brief.settings.practice.mortar.trowelDeg))
}
