/** Choices several topics share: the tile, the joint, the trowel and the bag that are meant, and what was assumed of them. */
import type { Facts, MortarName, Tile, Trowel } from '../facts.ts'
import { type Phrase, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { type Grout, type Mortar, materialOf, type Pack, trowelFor, usualPack } from '../settings.ts'
import type { Brief } from './topic.ts'

const POUND_KG = 0.45359237

/** A tile's size as the trade writes it: "18x18", "8x48", "600x600 mm"; a hexagon by what it measures across its sides. */
export function tilePhrase(tile: Tile, metric: boolean): Phrase {
  if (tile.shape === 'hexagon')
    return say('tile.size-hexagon', { across: small(Math.min(tile.lengthMm, tile.widthMm)) })
  const inches = [tile.lengthMm, tile.widthMm].map((mm) => mm / 25.4)
  const wholeInches = inches.every((n) => Math.abs(n * 4 - Math.round(n * 4)) < 0.02)
  const wholeMm = [tile.lengthMm, tile.widthMm].every((mm) => Math.abs(mm - Math.round(mm)) < 1e-6)
  if (wholeMm && (metric || !wholeInches))
    return say('tile.size-mm', {
      width: { is: 'number', n: tile.widthMm, digits: 0 },
      length: { is: 'number', n: tile.lengthMm, digits: 0 },
    })
  return say('tile.size-in', {
    width: { is: 'number', n: inches[1], digits: 2 },
    length: { is: 'number', n: inches[0], digits: 2 },
  })
}

/** The tile of the facts, if its size is known. */
export function knownTile(facts: Facts): Tile | null {
  const { tile, measuredMm } = facts
  if (!tile || tile.lengthMm <= 0) return null
  return measuredMm ? measuredTile(tile, measuredMm) : tile
}

/** A tile one side of which was measured: that side, both of a square, the other as it was told. */
function measuredTile(tile: Tile, mm: number): Tile {
  if (Math.abs(tile.lengthMm - tile.widthMm) < 1) return { ...tile, lengthMm: mm, widthMm: mm }
  const isLength = Math.abs(mm - tile.lengthMm) < Math.abs(mm - tile.widthMm)
  return isLength ? { ...tile, lengthMm: mm } : { ...tile, widthMm: mm }
}

/** The joint where none was told: 1/8 in, or 3 mm to a crew that measures in metric. */
export const usualJointMm = ({ settings, metric }: Brief): number =>
  settings.defaults.jointMm[metric ? 'metric' : 'imperial']

/** The joint that is meant: said, carried, or the usual one. */
export function jointOf(brief: Brief, assumed: Phrase[]): number {
  if (brief.facts.jointMm !== undefined) return brief.facts.jointMm
  const jointMm = usualJointMm(brief)
  assumed.push(say('assumed.joint', { joint: small(jointMm) }))
  return jointMm
}

/** The tile's thickness: said, or usual for its kind. */
export function thicknessOf(brief: Brief, tile: Tile | null, assumed: Phrase[]): number {
  if (tile?.thicknessMm) return tile.thicknessMm
  const kind = tile?.shape === 'mosaic' ? 'mosaic' : tile?.kind
  const configured =
    kind && Object.hasOwn(brief.settings.tiles, kind) ? brief.settings.tiles[kind].thicknessMm : undefined
  const thicknessMm = configured ?? brief.settings.defaults.tileThicknessMm
  assumed.push(say('assumed.thickness', { thickness: small(thicknessMm) }))
  return thicknessMm
}

const MORTAR_IDS: Readonly<Record<MortarName, string>> = {
  'large-format': 'large-format-mortar',
  modified: 'modified-thinset',
  unmodified: 'unmodified-thinset',
  rapid: 'rapid-mortar',
  mastic: 'mastic',
}

/** The mortar that is meant: named, else the one that goes with the tile's longest edge. */
export function mortarOf(brief: Brief, tile: Tile | null): Outcome<{ id: string; mortar: Mortar }> {
  const id = brief.facts.mortar
    ? MORTAR_IDS[brief.facts.mortar]
    : trowelFor(brief.settings, tile?.lengthMm ?? Infinity).mortar
  const mortar = materialOf(brief.settings, 'mortar', id)
  return mortar ? fine({ id, mortar }) : refuse('unknown-material', { said: id })
}

export function groutOf(
  brief: Brief,
  type: 'sanded' | 'unsanded' | 'high-performance' | 'epoxy',
): Outcome<{ id: string; grout: Grout }> {
  const { defaults } = brief.settings
  const id = type === 'sanded' ? defaults.grout.sanded : type === 'unsanded' ? defaults.grout.unsanded : `${type}-grout`
  const grout = materialOf(brief.settings, 'grout', id)
  return grout ? fine({ id, grout }) : refuse('unknown-material', { said: id })
}

/** The bag that is meant: of the weight said, else the usual one. A weight no sheet lists yields as its powder does. */
export function packOf(brief: Brief, material: Mortar | Grout, assumed: Phrase[]): Pack {
  const kg = brief.facts.bagKg
  if (kg !== undefined && kg > 0) return material.packs.find((p) => Math.abs(p.kg - kg) < 0.02 * kg) ?? { name: '', kg }
  const pack = usualPack(material, brief.metric ? 'metric' : 'imperial')
  assumed.push(say('assumed.bag', { bag: packPhrase(pack) }))
  return pack
}

/** "50 lb", "20 kg": the bag by the unit it is sold in, whatever units the crew measures in. */
export function packPhrase(pack: Pack): Phrase {
  const pounds = pack.kg / POUND_KG
  const inPounds = Math.abs(pounds - Math.round(pounds)) < 0.02 && Math.abs(pack.kg - Math.round(pack.kg)) > 0.001
  return inPounds
    ? say('bag.lb', { n: { is: 'number', n: pounds, digits: 0 } })
    : say('bag.kg', { n: { is: 'number', n: pack.kg, digits: 2 } })
}

export type TrowelMeant = { readonly notch: Trowel; readonly backButter: boolean }

/** The trowel that is meant: said, else the table's for the tile's longest edge. */
export function trowelOf(brief: Brief, tile: Tile | null, assumed: Phrase[]): TrowelMeant {
  const { facts } = brief
  const usual = trowelFor(brief.settings, tile?.lengthMm ?? brief.settings.practice.tile.largeEdgeMm.value - 1)
  if (facts.trowel) {
    const butter = facts.backButter ?? (tile !== null && usual.backButter)
    if (facts.backButter === undefined && butter) assumed.push(say('assumed.back-butter'))
    return { notch: facts.trowel, backButter: butter }
  }
  const backButter = facts.backButter ?? usual.backButter
  assumed.push(
    say(facts.backButter === undefined && backButter ? 'assumed.trowel-buttered' : 'assumed.trowel', {
      trowel: trowelPhrase(usual.notch),
    }),
  )
  return { notch: usual.notch, backButter }
}

/** "1/4 x 3/8 square notch" */
export function trowelPhrase(notch: Trowel): Phrase {
  const shape = word(`notch-${notch.shape}`)
  return notch.widthMm === notch.depthMm
    ? say('trowel.even', { width: small(notch.widthMm), shape })
    : say('trowel.uneven', { width: small(notch.widthMm), depth: small(notch.depthMm), shape })
}
