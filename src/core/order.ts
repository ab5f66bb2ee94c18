/** One list for the job: what to buy, at what price, and what is still missing beside what is on hand. */
import { fine, type Outcome, type Range, refuse, within } from '../problem.ts'

export const PRICE: Range = { field: 'price', unit: '', min: 0, max: 1_000_000 }
export const TAX: Range = { field: 'tax', unit: '%', min: 0, max: 50 }
const MOST_LINES = 500

/** A line of the order. `what` is a name from config or a word's key; the telling gives it words. */
export type OrderLine = {
  readonly what: string
  /** Which bed or part it is for, so that like goods for different uses stay apart. */
  readonly use?: string
  /** Need before rounding, in `unit`, and what it is bought in: `pack` units at a time. */
  readonly need: number
  readonly unit: string
  readonly pack?: number
  readonly priceEach?: number | null
  readonly kgEach?: number | null
}

export type PricedLine = OrderLine & {
  /** Whole packs to buy. */
  readonly buy: number
  readonly cost: number | null
  readonly kg: number | null
}

export type Order = {
  readonly lines: readonly PricedLine[]
  readonly goods: number
  readonly tax: number
  readonly cost: number
  /** Lines without a price; with some the total is a part of the bill only. */
  readonly unpriced: readonly string[]
  readonly kg: number
  readonly unweighed: readonly string[]
}

const cents = (money: number): number => Math.round((money + Number.EPSILON) * 100) / 100

/** The order with whole packs, lines of the same thing and use put together, totals and tax.
 *  Packs are rounded up once, after the needs are added; money to the cent on each line, so the parts add up.
 *  @param lines  needs 0 or more  @param taxPct  TAX
 *  @problem out-of-range, too-much-work
 *  @source arithmetic
 *  @example 2.2 and 1.5 bags at 20.00, tax 8 %: 4 bags, 80.00 + 6.40 */
export function orderOf(lines: readonly OrderLine[], taxPct = 0): Outcome<Order> {
  const rate = within(TAX, taxPct)
  if (!rate.ok) return rate
  if (lines.length > MOST_LINES) return refuse('too-much-work', { what: 'lines' })
  for (const line of lines) {
    const need = within({ field: line.what, unit: line.unit, min: 0, max: 1e7 }, line.need)
    if (!need.ok) return need
    const pack = within({ field: 'pack', unit: line.unit, min: 1e-6, max: 1e7 }, line.pack ?? 1)
    if (!pack.ok) return pack
    const price = within(PRICE, line.priceEach ?? 0)
    if (!price.ok) return price
  }
  const priced = together(lines)
    .map(priceLine)
    .filter((line) => line.buy > 0)
  const goods = cents(priced.reduce((sum, line) => sum + (line.cost ?? 0), 0))
  const tax = cents((goods * taxPct) / 100)
  return fine({
    lines: priced,
    goods,
    tax,
    cost: cents(goods + tax),
    unpriced: priced.filter((line) => line.cost === null).map((line) => line.what),
    kg: priced.reduce((sum, line) => sum + (line.kg ?? 0), 0),
    unweighed: priced.filter((line) => line.kg === null).map((line) => line.what),
  })
}

/** The same thing for the same use in the same pack is one line; its last known price and weight hold. */
function together(lines: readonly OrderLine[]): OrderLine[] {
  const byKey = new Map<string, OrderLine>()
  for (const line of lines) {
    const key = JSON.stringify([line.what, line.use ?? null, line.unit, line.pack ?? 1])
    const first = byKey.get(key)
    byKey.set(
      key,
      first
        ? {
            ...first,
            need: first.need + line.need,
            priceEach: line.priceEach ?? first.priceEach ?? null,
            kgEach: line.kgEach ?? first.kgEach ?? null,
          }
        : line,
    )
  }
  return [...byKey.values()]
}

function priceLine(line: OrderLine): PricedLine {
  const buy = Math.ceil(line.need / (line.pack ?? 1) - 1e-9)
  return {
    ...line,
    buy,
    cost: line.priceEach == null ? null : cents(buy * line.priceEach),
    kg: line.kgEach == null ? null : buy * line.kgEach,
  }
}

export type OnHand = { readonly what: string; readonly use?: string; readonly packs: number }
export type Missing = { readonly what: string; readonly use?: string; readonly unit: string; readonly packs: number }

/** What is still to be bought beside what is on hand; stock without a use serves every use, in the order of the lines.
 *  @example order 6 and 2 bags, 7 on hand: 1 bag missing on the second line */
export function missingFrom(lines: readonly PricedLine[], onHand: readonly OnHand[]): Missing[] {
  const left = onHand.map((stock) => ({ ...stock }))
  const missing: Missing[] = []
  for (const line of lines) {
    let packs: number = line.buy
    for (const stock of left) {
      if (stock.what !== line.what || (stock.use !== undefined && stock.use !== line.use)) continue
      const used = Math.min(packs, Math.max(0, stock.packs))
      packs -= used
      stock.packs -= used
    }
    // Half a bag on hand does not make half a bag to buy.
    const toBuy = Math.ceil(packs - 1e-9)
    if (toBuy > 0)
      missing.push({ what: line.what, ...(line.use !== undefined && { use: line.use }), unit: line.unit, packs: toBuy })
  }
  return missing
}

/** Whole boxes from one lot with spares kept back: pieces for the floor, cut spares, and stock for later repairs.
 *  @param atticPct  share of the floor's tile left with the owner; some specifications ask 5 % (references 1.14)
 *  @example 200 tiles, 2 % attic, 11 a box: 204 tiles, 19 boxes */
export function boxesForLot(tiles: number, perBox: number, atticPct: number): { tiles: number; boxes: number } {
  const all = Math.ceil(tiles * (1 + atticPct / 100) - 1e-9)
  return { tiles: all, boxes: Math.ceil(all / perBox - 1e-9) }
}
