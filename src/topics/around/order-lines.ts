/** The lines of a job's order, out of the topics that work each out, so that the list and the topics never disagree. */
import { tubeFillsM } from '../../core/joints.ts'
import type { OrderLine } from '../../core/order.ts'
import { boxesForLot } from '../../core/order.ts'
import { faceM2 } from '../../core/tile.ts'
import { type FactName, lessFacts, ON_HAND } from '../../facts.ts'
import { type Amount, named, type Phrase, percent, say } from '../../phrase.ts'
import { yielding } from '../../practice.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import { type Coating, type Leveller, materialOf, usualPack } from '../../settings.ts'
import { briefsByTiling } from '../by-tiling.ts'
import { floorSum } from '../floors.ts'
import { grout } from '../grout.ts'
import { levelling } from '../levelling.ts'
import { mortar } from '../mortar.ts'
import { groutOf, knownTile, mortarOf, packOf, tilePhrase, trowelOf, trowelPhrase, usualJointMm } from '../stuff.ts'
import { tile } from '../tile.ts'
import type { Brief, Told } from '../topic.ts'
import { lengthNear } from './read.ts'
import { goodsName } from './sheet-goods.ts'
import { underlaymentNeed } from './underlayment-need.ts'

/** A line with how it is told. */
export type NamedLine = OrderLine & { readonly title: Phrase | Amount }

export type JobLines = {
  readonly lines: readonly NamedLine[]
  readonly assumed: readonly Phrase[]
  readonly values: Readonly<Record<string, number | string | undefined>>
  readonly areaM2: number
}

/** Facts of one question that would turn a topic into another answer. */
const MID_JOB: readonly FactName[] = [...ON_HAND, 'coverageM2']

export const plainJob = (brief: Brief, keepBag = false): Brief => ({
  ...brief,
  facts: lessFacts(brief.facts, keepBag ? MID_JOB : [...MID_JOB, 'bagKg']),
})

const TUBE_USES = { widthMm: 6.35, depthMm: 6.35 }

/** Everything for the job that the facts name.
 *  @problem question (no floor), and those of the topics */
export function jobLines(said: Brief): Outcome<JobLines> {
  const brief = plainJob(said)
  const floor = floorSum(brief.facts)
  if (!floor.ok) return floor
  if (!floor.value) return refuse('question', { question: 'area' })
  const { areaM2, perimeterM } = floor.value
  const lines: NamedLine[] = []
  const assumed: Phrase[] = []
  let values: Record<string, number | string | undefined> = { area_m2: areaM2 }
  const known = knownTile(brief.facts)
  if (known) {
    const parts: Outcome<Told>[] = [tile(brief), mortar(brief), grout(brief)]
    for (const part of parts) {
      if (!part.ok) return part
      values = { ...part.value.values, ...values }
      assumed.push(...(part.value.assumed ?? []))
    }
    const briefs = briefsByTiling(brief)
    for (const one of briefs) {
      const told = tile(one)
      if (!told.ok) return told
      // Tiles of one size and another are two lines.
      const size = knownTile(one.facts)
      const use = briefs.length > 1 && size ? { use: `${size.widthMm}x${size.lengthMm}` } : {}
      lines.push(...tileLines(one, told.value.values ?? {}).map((l) => ({ ...l, ...use })))
    }
    lines.push(...powderLines(brief, values))
    if (known.lengthMm >= brief.settings.practice.tile.largeEdgeMm.value || brief.has('clip', 'wedge')) {
      const clips = levelling(brief)
      if (clips.ok) {
        values = { ...clips.value.values, ...values }
        lines.push(
          line('order.item-clips', 'clips', values['clips']),
          line('order.item-wedges', 'wedges', values['wedges']),
        )
      }
    }
  }
  if (brief.facts.goods || brief.has('underlayment', 'cork', 'foam', 'cement-board', 'membrane', 'sheet', 'roll')) {
    const under = underlaymentNeed(brief)
    if (!under.ok) return under
    lines.push(...underLines(under.value))
    values = { ...values, [under.value.goods.form === 'sheet' ? 'sheets' : 'rolls']: under.value.pieces }
  }
  lines.push(...extraLines(brief, areaM2))
  if (!lines.length) return refuse('question', { question: 'tile' })
  lines.push(...sundries(brief, areaM2, perimeterM, known !== null))
  return fine({ lines: lines.filter((l) => l.need > 0), assumed, values, areaM2 })
}

/** Primer, leveller and waterproofing where the message names them. */
function extraLines(brief: Brief, areaM2: number): NamedLine[] {
  const { settings, metric } = brief
  const lines: NamedLine[] = []
  const add = (what: string, id: string, material: Coating | Leveller, litres: number): void => {
    const pack = usualPack(material, metric ? 'metric' : 'imperial')
    const packL = material.kind === 'coating' ? pack.kg / material.wetKgPerL : yielding(material, pack).yieldL
    const title = say('order.item-extra', { name: say(`goods.${id}`), pack: named(pack.name) })
    lines.push(
      line('order.item-extra', what, Math.ceil(litres / packL - 1e-9), { unit: 'pack', kgEach: pack.kg, title }),
    )
  }
  const primer = materialOf(settings, 'coating', 'primer')
  if (primer && brief.has('primer')) add('primer', 'primer', primer, areaM2 * primer.coatLPerM2.usual * primer.coats)
  const membrane = materialOf(settings, 'coating', 'liquid-membrane')
  if (membrane && brief.has('waterproofing'))
    add('waterproofing', 'liquid-membrane', membrane, areaM2 * membrane.coatLPerM2.usual * membrane.coats)
  const leveller = materialOf(settings, 'leveller', 'leveller')
  if (leveller && brief.has('leveller')) {
    const said = lengthNear(brief.heard, metric, 'leveller')
    const mm = said !== null && said <= 60 ? said : (settings.around.layers['leveller']?.thicknessMm ?? 6)
    add('leveller', 'leveller', leveller, areaM2 * mm)
  }
  return lines
}

const line = (
  key: string,
  what: string,
  need: number | string | undefined,
  rest: Partial<NamedLine> = {},
): NamedLine => ({
  what,
  need: typeof need === 'number' ? need : 0,
  unit: 'piece',
  title: say(key),
  ...rest,
})

/** Tile by the box where the box is known, from one lot with stock for later repairs; else by the piece. */
function tileLines(brief: Brief, values: Record<string, unknown>): NamedLine[] {
  const known = knownTile(brief.facts)!
  const count = values['tile_count'] as number
  const { atticPct } = brief.settings.around.order
  const kind = brief.settings.tiles[known.kind ?? brief.settings.defaults.tileKind]
  const face = faceM2({ shape: 'rectangle', lengthMm: known.lengthMm, widthMm: known.widthMm, jointMm: 0 })
  const kgEach = kind
    ? (face * (known.thicknessMm ?? brief.settings.defaults.tileThicknessMm) * kind.densityKgPerM3.usual) / 1000
    : null
  const size = tilePhrase(known, brief.metric)
  const lot = { tile: size, attic: percent(atticPct.value) }
  const perBox =
    brief.facts.boxTiles ?? (brief.facts.boxM2 ? Math.max(1, Math.floor(brief.facts.boxM2 / face + 1e-6)) : null)
  if (perBox === null)
    return [
      line('order.item-tile', 'tile', boxesForLot(count, 1, atticPct.value).tiles, {
        title: say('order.item-tile', lot),
        kgEach,
      }),
    ]
  const boxes = boxesForLot(count, perBox, atticPct.value).boxes
  return [
    line('order.item-boxes', 'tile', boxes, {
      unit: 'box',
      title: say('order.item-boxes', lot),
      kgEach: kgEach === null ? null : kgEach * perBox,
    }),
  ]
}

function powderLines(brief: Brief, values: Record<string, unknown>): NamedLine[] {
  const known = knownTile(brief.facts)
  const lines: NamedLine[] = []
  const meant = mortarOf(brief, known)
  if (meant.ok) {
    const pack = packOf(brief, meant.value.mortar, [])
    lines.push(
      line('order.item-mortar', 'mortar', values['mortar_bags'] as number, {
        unit: 'bag',
        use: 'tile',
        kgEach: pack.kg,
        title: say('order.item-mortar', { name: named(meant.value.mortar.name), bag: bagName(pack) }),
      }),
    )
  }
  const joint = (values['joint_mm'] as number) ?? usualJointMm(brief)
  const type =
    brief.facts.grout ?? (joint >= brief.settings.practice.grout.sandedFromMm.value - 0.01 ? 'sanded' : 'unsanded')
  const groutMeant = groutOf(brief, type)
  if (groutMeant.ok) {
    const pack = packOf(brief, groutMeant.value.grout, [])
    lines.push(
      line('order.item-grout', 'grout', values['grout_bags'] as number, {
        unit: 'bag',
        kgEach: pack.kg,
        title: say('order.item-grout', { name: named(groutMeant.value.grout.name), bag: bagName(pack) }),
      }),
    )
  }
  return lines
}

const bagName = (pack: { name: string; kg: number }): Phrase | Amount =>
  pack.name ? named(pack.name) : { is: 'mass', kg: pack.kg }

function underLines(need: Extract<ReturnType<typeof underlaymentNeed>, { ok: true }>['value']): NamedLine[] {
  const { goods, bond } = need
  const kind = goodsName(goods.id, goods.underlayment)
  return [
    line(`order.item-${goods.form}s`, 'underlayment', need.pieces, {
      unit: goods.form,
      title: say(`order.item-${goods.form}s`, { kind, size: goods.name }),
    }),
    line('order.item-bond', bond.kind, bond.packs, {
      unit: 'bag',
      use: 'underlayment',
      title: say(bond.kind === 'adhesive' ? 'order.item-adhesive' : 'order.item-bond', {
        name: named(bond.name),
        pack: bond.pack,
        kind,
      }),
    }),
    line('order.item-tape', 'tape', Math.ceil(need.tapeM), { unit: 'm' }),
    line('order.item-screws', 'screws', need.fasteners),
  ]
}

/** What is always forgotten: sealant and rod for the perimeter, the trowel, sponges. */
function sundries(brief: Brief, areaM2: number, perimeterM: number, tiled: boolean): NamedLine[] {
  const { order } = brief.settings.around
  const tube = tubeFillsM(TUBE_USES.widthMm, TUBE_USES.depthMm, order.sealantTubeMl.value)
  const roundM = perimeterM || 4 * Math.sqrt(areaM2)
  const lines = [
    ...(tube.ok ? [line('order.item-sealant', 'sealant', Math.ceil(roundM / tube.value), { unit: 'tube' })] : []),
    line('order.item-rod', 'rod', Math.ceil(roundM), { unit: 'm' }),
  ]
  if (!tiled) return []
  const { notch } = trowelOf(brief, knownTile(brief.facts), [])
  return [
    ...lines,
    line('order.item-trowel', 'trowel', 1, { title: say('order.item-trowel', { trowel: trowelPhrase(notch) }) }),
    line('order.item-sponges', 'sponges', order.spongesADay.value),
  ]
}
