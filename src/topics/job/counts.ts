/** Quantities of a job for its record and its change orders: tiles by size, bags, area. */
import type { Facts } from '../../facts.ts'
import { type Amount, area, count, type Phrase, say, word } from '../../phrase.ts'
import { tilePhrase } from '../stuff.ts'
import type { Brief } from '../topic.ts'
import { numberIn, quantitiesOf, tilesBySize, type Values } from './quantities.ts'

/** One quantity: its name, how it is told, and how much there is. */
export type Quantity = {
  readonly key: string
  readonly what: Phrase
  readonly n: number
  readonly tell: (n: number) => Amount
}

const NAMED: readonly (readonly [key: string, tell: (n: number) => Amount])[] = [
  ['area_m2', area],
  ['mortar_bags', count],
  ['grout_bags', count],
]

/** What a job takes, tiles and boxes for each size by itself; empty where no floor is known. */
export function countsOf(brief: Brief, facts: Facts): { readonly all: readonly Quantity[]; readonly values: Values } {
  const values = quantitiesOf(brief, facts) ?? {}
  const named = NAMED.flatMap(([key, tell]): Quantity[] => {
    const n = numberIn(values, key)
    return n === null ? [] : [{ key, what: say('job.cell', { what: word(`quantity-${key}`) }), n, tell }]
  })
  const [floor, ...bags] = named
  return { all: floor?.key === 'area_m2' ? [floor, ...tilesOf(brief, facts), ...bags] : named, values }
}

function tilesOf(brief: Brief, facts: Facts): Quantity[] {
  if (facts.rooms === undefined && facts.areaM2 === undefined) return []
  return tilesBySize(brief, facts).flatMap((of): Quantity[] => {
    const key = `${Math.round(of.tile.lengthMm)} ${Math.round(of.tile.widthMm)}`
    const size = tilePhrase(of.tile, brief.metric)
    const tiles = { key: `tiles ${key}`, what: say('job.tiles-of', { tile: size }), n: of.tiles, tell: count }
    if (of.boxes === null) return [tiles]
    return [tiles, { key: `boxes ${key}`, what: say('job.boxes-of', { tile: size }), n: of.boxes, tell: count }]
  })
}

/** For a spreadsheet. */
export const rounded = (n: number): number => Math.round(n * 100) / 100
