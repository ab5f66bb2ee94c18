/** Metric or imperial: what the units and figures of a message tell of how its crew measures. */
import type { UnitName } from '../units/names.ts'
import { type Item, isSize } from './items.ts'
import { unitAt } from './lexicon.ts'
import { IMPERIAL, METRIC, type Quantity, type Reader } from './measures.ts'
import { isCentimetreTile, isTileInMetric } from './sold-sizes.ts'

export function systemOf(quantities: readonly Quantity[]): 'metric' | 'imperial' | null {
  let metric = 0
  let imperial = 0
  for (const q of quantities) {
    if (q.unit === null || q.dimension === 'temperature') continue
    // How the floor was measured tells more than a notch or a joint.
    const thin = q.dimension === 'length' && (q.si as number) < 30
    const weight = q.dimension === 'area' ? 2 : thin && METRIC.has(q.unit) ? 0.5 : 1
    if (METRIC.has(q.unit)) metric += weight
    else if (IMPERIAL.has(q.unit)) imperial += weight
  }
  return metric === 0 && imperial === 0 ? null : metric > imperial ? 'metric' : 'imperial'
}

/** "5,20 x 3,80": who writes a decimal comma measures in metres. */
const hasDecimalComma = (q: Quantity): boolean => q.unit === null && q.token.decimals > 0 && q.token.text.includes(',')

const LEAST_WHOLE_FEET = 8

/** "cork 6mm, 10x13": a thickness in mm beside a room of whole feet says nothing of the room. */
function onlyThin(items: readonly Item[]): boolean {
  const pairs = items.filter(isSize)
  const singles = items.filter((item) => !isSize(item)).map((item) => item.parts[0])
  const units = singles.filter((q) => q.unit !== null && ['length', 'area'].includes(q.dimension))
  const thin = units.length > 0 && units.every((q) => q.unit === 'mm' && q.n < 30)
  const isBare = ({ parts: [a, b] }: Item): boolean =>
    [a, b].every((q) => q.unit === null && Number.isInteger(q.n) && q.n < 60) && !isCentimetreTile(a.n, b.n)
  const isFeet = ({ parts: [a, b] }: Item): boolean => Math.min(a.n, b.n) >= LEAST_WHOLE_FEET
  return thin && pairs.some(isFeet) && pairs.every(isBare)
}

const isDecimalPair = ({ parts: [a, b] }: Item): boolean =>
  b !== undefined && [a, b].every((q) => q.unit === null) && a.token.decimals + b.token.decimals > 0

/** "60x60" is sold in centimetres alone; beside "3.6 x 4.2" it says that the crew is metric. */
const isInCentimetres = ({ parts: [a, b] }: Item): boolean =>
  b !== undefined && [a, b].every((q) => q.unit === null) && isCentimetreTile(a.n, b.n)

/** Beside a tile sold by the centimetre, whole figures too small for a room of feet are metres: "kitchen 3x4, tile 30x60". */
function areFewMetres(items: readonly Item[]): boolean {
  const pairs = items.filter((item) => isSize(item) && item.parts.every((q) => q.unit === null))
  const tile = pairs.find(({ parts: [a, b] }) => isTileInMetric(a.n, b.n))
  const rooms = pairs.filter((pair) => pair !== tile)
  return (
    tile !== undefined &&
    rooms.length > 0 &&
    rooms.every(({ parts }) => parts.every((q) => q.n >= 1 && q.n < LEAST_WHOLE_FEET))
  )
}

/** "sides 3.10 3.66 3.05 3.70, tile 45x45": tenths and hundredths beside a tile sold by the centimetre. */
const areDecimalsByMetricTile = (items: readonly Item[]): boolean =>
  items.some(({ parts: [a, b] }) => b !== undefined && isTileInMetric(a.n, b.n)) &&
  items.some(({ parts }) => parts.some((q) => q.unit === null && q.token.decimals > 0))

/** A room's side of two decimals is in metres where in feet there would be no room: "2.74 x 1.75". */
const MOST_METRES = 6.1

const isInMetres = ({ parts: [a, b] }: Item): boolean =>
  b !== undefined &&
  [a, b].every((q) => q.unit === null && q.token.decimals === 2 && q.n > 1) &&
  Math.max(a.n, b.n) < MOST_METRES

/** By lengths and areas, by a decimal comma, or by figures that only one system writes so; null where nothing tells.
 *  A 25 kg bag says nothing of how the floor was measured. */
export function systemMeasured(
  quantities: readonly Quantity[],
  items: readonly Item[],
  isOutlined: boolean,
): 'metric' | 'imperial' | null {
  const measured = onlyThin(items)
    ? null
    : systemOf(quantities.filter((q) => q.dimension === 'length' || q.dimension === 'area'))
  if (measured !== null) return measured
  const comma = items.some((item) => item.parts.length > 1 && item.parts.some(hasDecimalComma))
  const metric = comma || items.some(isInMetres) || (items.some(isDecimalPair) && items.some(isInCentimetres))
  const small = areFewMetres(items) || (isOutlined && areDecimalsByMetricTile(items))
  return metric || small ? 'metric' : null
}

/** Units that no figure stands before: "how many quarts". */
export function freeUnitsOf(reader: Reader, quantities: readonly Quantity[]): UnitName[] {
  const found: UnitName[] = []
  reader.tokens.forEach((token, i) => {
    if (token.kind !== 'word' || token.text === 'in' || quantities.some((q) => q.first <= i && i <= q.last)) return
    const named = unitAt(reader.lexicon, reader.tokens, i)
    if (named) found.push(named.unit)
  })
  return found
}
