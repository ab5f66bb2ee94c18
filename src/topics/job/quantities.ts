/** What a job takes, worked out by the topics that count: tile, mortar, grout. */
import type { Facts, Tile } from '../../facts.ts'
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
export function lasting(facts: Facts): Facts {
  const { haveBags, haveBoxes, haveTiles, leftM2, usedBags, usedM2, powderKg, bagsToMix, when, done, ...rest } = facts
  return rest
}

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

/** Tiles of each size, where rooms are tiled differently. */
export function tilesBySize(brief: Brief, facts: Facts): Phrase[] {
  if (!isMixed(facts)) return []
  const sizes = new Map<string, { n: number; tile: Tile }>()
  for (const one of briefsByTiling(quietly(brief, lasting(facts)))) {
    const told = tile(one)
    const n = told.ok ? numberIn(told.value.values ?? null, 'tile_count') : null
    const known = knownTile(one.facts)
    if (n === null || !known) continue
    const size = `${known.lengthMm}x${known.widthMm}`
    sizes.set(size, { n: n + (sizes.get(size)?.n ?? 0), tile: known })
  }
  return [...sizes.values()].map((of) =>
    say('job.takes-tiles-of', { n: count(of.n), tile: tilePhrase(of.tile, brief.metric) }),
  )
}

export const numberIn = (values: Values | null, key: string): number | null => {
  const value = values?.[key]
  return typeof value === 'number' ? value : null
}
