/** What a job takes, worked out by the topics that count: tile, mortar, grout. */
import { type Facts, lessFacts, ON_HAND, type Tile } from '../../facts.ts'
import { count, type Phrase, say } from '../../phrase.ts'
import { isMixed } from '../../room-tiles.ts'
import { briefsByTiling } from '../by-tiling.ts'
import { floorSum } from '../floors.ts'
import { grout } from '../grout.ts'
import { mortar } from '../mortar.ts'
import { knownTile, tilePhrase } from '../stuff.ts'
import { tile } from '../tile.ts'
import type { Brief } from '../topic.ts'

export type Values = Readonly<Record<string, number | string | undefined>>

/** A brief that asks nothing of its own: only the facts count. */
export const quietly = (brief: Brief, facts: Facts): Brief => ({
  ...brief,
  facts,
  carried: {},
  has: () => false,
  heard: { ...brief.heard, facts: {}, has: () => false, loose: [], quantities: [], items: [], percents: [] },
})

/** Facts of one question that are none of the job's. */
export const lasting = (facts: Facts): Facts => lessFacts(facts, [...ON_HAND, 'when', 'done'])

/** Area, tile, mortar and grout of a job, as far as it is known; null where no floor is. */
export function quantitiesOf(brief: Brief, facts: Facts): Values | null {
  const plain = lasting(facts)
  const floor = floorSum(plain)
  if (!floor.ok || floor.value === null) return null
  const quiet = quietly(brief, plain)
  const parts = knownTile(plain) ? [grout(quiet), mortar(quiet), tile(quiet)] : [mortar(quiet)]
  const values = Object.assign({}, ...parts.map((part) => (part.ok ? part.value.values : {}))) as Values
  return {
    ...values,
    area_m2: floor.value.areaM2,
    ...(floor.value.perimeterM > 0 ? { perimeter_m: floor.value.perimeterM } : {}),
  }
}

/** What a job takes of one size of tile; boxes null where none tells how many a box holds. */
export type OfSize = { readonly tile: Tile; readonly tiles: number; readonly boxes: number | null }

/** Tiles of each size, rooms of the same tile together. */
export function tilesBySize(brief: Brief, facts: Facts): OfSize[] {
  const sizes = new Map<string, OfSize>()
  for (const one of briefsByTiling(quietly(brief, lasting(facts)))) {
    const known = knownTile(one.facts)
    const told = known ? tile(one) : null
    if (!known || !told?.ok) continue
    const tiles = numberIn(told.value.values ?? null, 'tile_count')
    const boxes = numberIn(told.value.values ?? null, 'tile_boxes')
    if (tiles === null) continue
    const size = `${Math.round(known.lengthMm)} ${Math.round(known.widthMm)}`
    const before = sizes.get(size)
    sizes.set(size, {
      tile: known,
      tiles: tiles + (before?.tiles ?? 0),
      boxes: boxes === null ? (before?.boxes ?? null) : boxes + (before?.boxes ?? 0),
    })
  }
  return [...sizes.values()]
}

/** "It takes 70 tiles of 18x18 …", where rooms are tiled differently. */
export const tilesTold = (brief: Brief, facts: Facts): Phrase[] =>
  isMixed(facts)
    ? tilesBySize(brief, facts).map((of) =>
        say('job.takes-tiles-of', { n: count(of.tiles), tile: tilePhrase(of.tile, brief.metric) }),
      )
    : []

export const numberIn = (values: Values | null, key: string): number | null => {
  const value = values?.[key]
  return typeof value === 'number' ? value : null
}
