/** The layers of a floor that a message names, from the bottom up, each with its thickness. */
import type { Layer } from '../../core/buildup.ts'
import type { Spread } from '../../core/spread.ts'
import { combedRangeMm } from '../../core/trowel.ts'
import type { Concept } from '../../language/concepts.ts'
import { named, type Phrase, say, small } from '../../phrase.ts'
import { fine, type Outcome } from '../../problem.ts'
import { spreadOf } from '../../settings.ts'
import { knownTile, thicknessOf, trowelOf } from '../stuff.ts'
import type { Brief } from '../topic.ts'
import { figureNear, lengthMm } from './read.ts'
import { goodsName } from './sheet-goods.ts'

export type NamedLayer = Layer & { readonly title: Phrase | ReturnType<typeof named> }

const PLAIN: readonly [Concept, string][] = [
  ['plywood', 'plywood'],
  ['osb', 'osb'],
  ['vinyl', 'vinyl'],
  ['old-tile', 'old-tile'],
  ['mud-word', 'mortar-bed'],
  ['leveller', 'leveller'],
  ['heated', 'heat-mat'],
]
const UNDER: readonly [Concept, string][] = [
  ['cork', 'cork'],
  ['foam', 'foam'],
  ['fibre-cement', 'fibre-cement'],
  ['cement-board', 'cement-board'],
  ['crack-membrane', 'crack-membrane'],
  ['membrane', 'uncoupling-membrane'],
]
const MOST_LAYER_MM = 150

/** A thickness that stands beside the layer's word [mm]. */
function saidMm(brief: Brief, concept: Concept): number | null {
  const q = figureNear(brief.heard, ['length', 'none'], concept)
  if (!q || (q.dimension === 'none' && !q.token.fraction && q.n > 3 && !brief.metric)) return null
  const mm = lengthMm(q, brief.metric)
  return mm > 0 && mm <= MOST_LAYER_MM ? mm : null
}

/** Everything named, and the tile with its bed on top unless the message leaves tile out.
 *  @problem out-of-range */
export function layersOf(brief: Brief, assumed: Phrase[]): Outcome<NamedLayer[]> {
  const layers: NamedLayer[] = []
  const { around, practice } = brief.settings
  for (const [concept, id] of PLAIN) {
    const kind = around.layers[id]
    if (!kind || !brief.has(concept)) continue
    const said = saidMm(brief, concept)
    if (said === null)
      assumed.push(say('order.assumed-layer', { layer: layerName(id, kind.name), thickness: small(kind.thicknessMm) }))
    layers.push(layer(layerName(id, kind.name), kind.name, said ?? kind.thicknessMm, kind.kgPerL))
  }
  for (const [concept, id] of UNDER) {
    const kind = around.underlayments[id]
    const isMeant = brief.has(concept) || (brief.facts.goods?.kind === id && !UNDER.some(([other]) => brief.has(other)))
    if (!kind || !isMeant || (id === 'uncoupling-membrane' && brief.has('crack-membrane'))) continue
    if (id === 'cement-board' && brief.has('fibre-cement')) continue
    const bed = combedRangeMm(kind.bond.trowel, spreadOf(practice.mortar.trowelDeg))
    if (!bed.ok) return bed
    const said = saidMm(brief, concept)
    if (said === null)
      assumed.push(say('order.assumed-layer', { layer: goodsName(id, kind), thickness: small(kind.thicknessMm.usual) }))
    layers.push(bedLayer(brief, say('order.layer-under', { layer: goodsName(id, kind) }), bed.value))
    layers.push(layer(goodsName(id, kind), kind.name, said ?? kind.thicknessMm.usual, kind.kgPerL))
  }
  const top = tileLayers(brief, assumed)
  return top.ok ? fine([...layers, ...top.value]) : top
}

type Title = NamedLayer['title']

/** Layers that every catalogue has a word for; a crew's own keeps the name config gives it. */
const layerName = (id: string, name: string): Title =>
  PLAIN.some(([, known]) => known === id) ? say(`layer.${id}`) : named(name)

const layer = (title: Title, name: string, mm: number, kgPerL: number): NamedLayer => ({
  name,
  lowMm: mm,
  highMm: mm,
  kgPerL,
  title,
})

const bedLayer = (brief: Brief, title: Phrase, mm: Spread): NamedLayer => ({
  name: 'bed',
  lowMm: mm.low,
  highMm: mm.high,
  kgPerL: brief.settings.around.bed.wetKgPerL.value,
  title,
})

/** Tile and the bed it is pressed into: what the trowel combs, upright to leaning, and no less than the least bed. */
function tileLayers(brief: Brief, assumed: Phrase[]): Outcome<NamedLayer[]> {
  const tile = knownTile(brief.facts)
  const { practice, tiles, defaults, around } = brief.settings
  const thicknessMm = thicknessOf(brief, brief.facts.tile ?? null, assumed)
  const { notch } = trowelOf(brief, tile, assumed)
  const bed = combedRangeMm(notch, spreadOf(practice.mortar.trowelDeg))
  if (!bed.ok) return bed
  const least = around.bed.leastMm.value
  const kind = tiles[brief.facts.tile?.kind ?? defaults.tileKind] ?? tiles[defaults.tileKind]
  const density = kind ? kind.densityKgPerM3.usual / 1000 : 2.35
  const pressed = {
    low: Math.max(least, bed.value.low),
    usual: Math.max(least, bed.value.usual),
    high: Math.max(least, bed.value.high),
  }
  return fine([
    bedLayer(brief, say('order.layer-bed'), pressed),
    { name: 'tile', lowMm: thicknessMm, highMm: thicknessMm, kgPerL: density, title: say('order.layer-tile') },
  ])
}
