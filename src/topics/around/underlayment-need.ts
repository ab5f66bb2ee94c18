/** How much an underlayment takes, laid on the rooms or by area: for its own topic and for the order. */
import { mortarNeed } from '../../core/mortar.ts'
import { type Spread, times } from '../../core/spread.ts'
import { combedRangeMm } from '../../core/trowel.ts'
import { cavityFill, fastenersInPiece, piecesForArea, seamForArea, tapeForSeam } from '../../core/underlayment/goods.ts'
import { layRolls } from '../../core/underlayment/rolls.ts'
import { laySheets } from '../../core/underlayment/sheets.ts'
import { count, named, number, type Phrase, percent, run, say } from '../../phrase.ts'
import { yielding } from '../../practice.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { materialOf, spreadOf, usualPack } from '../../settings.ts'
import { floorSum } from '../floors.ts'
import { packPhrase, trowelPhrase } from '../stuff.ts'
import type { Brief } from '../topic.ts'
import { figureNear } from './read.ts'
import { type LaidRoom, laidRooms } from './rooms.ts'
import { type Goods, goodsOf, isStockSize, pieceM2 } from './sheet-goods.ts'

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
  /** What was guessed of the rooms' shapes. */
  readonly notes: readonly Phrase[]
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
    notes: laid ? (laidRooms(brief.facts) ?? []).flatMap((room) => room.notes) : [],
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
function showerWalls(brief: Brief): Brief {
  const { heard } = brief
  const high = figureNear(heard, ['length'], 'high', 'wall')?.si
  if (!high || high < 600 || !heard.has('shower', 'pan') || !heard.facts.rooms) return brief
  const [room] = brief.facts.rooms ?? []
  const [piece] = room?.pieces ?? []
  if (!piece) return brief
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
