/** Whether a plan can be cut: the proof of a plan is looked at apart from the search that made it. */
import type { CutOrder, CutPlan, Placed } from './order.ts'

const TINY = 1e-6

/** What is wrong with a plan, in code's terms, or null: every piece there in the right number and size, inside its tile,
 *  the tile parted by straight cuts a kerf wide, and no more pieces a tile than allowed. */
export function faultOf(order: CutOrder, plan: CutPlan): string | null {
  const tiles = plan.plan.reduce((n, tile) => n + tile.times, 0)
  if (tiles !== plan.stockTiles) return `${tiles} tiles planned, ${plan.stockTiles} counted`
  if (plan.bound > plan.stockTiles) return 'bound above the plan'
  for (const { cut } of plan.plan) {
    if (order.maxATile !== null && cut.length > order.maxATile) return 'too many pieces from a tile'
    const outside = cut.some(
      (p) =>
        p.xMm < -TINY ||
        p.yMm < -TINY ||
        p.xMm + p.wMm > order.stockWMm + TINY ||
        p.yMm + p.hMm > order.stockHMm + TINY,
    )
    if (outside) return 'a piece outside its tile'
    if (!guillotine(cut, order.kerfMm)) return 'not to be parted by straight cuts'
  }
  return miscounted(order, plan)
}

function miscounted(order: CutOrder, plan: CutPlan): string | null {
  const size = (w: number, h: number) => {
    const sides = order.turn === 'quarter' ? [w, h].sort((a, b) => a - b) : [w, h]
    return sides.map((s) => s.toFixed(4)).join(' x ')
  }
  const left = new Map<string, number>()
  const add = (key: string, n: number) => left.set(key, (left.get(key) ?? 0) + n)
  for (const p of order.pieces) add(size(p.wMm, p.hMm), p.qty)
  for (const { times, cut } of plan.plan) for (const p of cut) add(size(p.wMm, p.hMm), -times)
  const wrong = [...left].find(([, n]) => n !== 0)
  return wrong ? `${wrong[0]}: ${wrong[1]} missing` : null
}

/** Whether straight cuts of this width [mm], each right through what is left, part the pieces. */
export function guillotine(cut: readonly Placed[], kerfMm: number): boolean {
  if (cut.length < 2) return true
  return (
    parted(
      cut,
      (p) => p.xMm,
      (p) => p.xMm + p.wMm,
      kerfMm,
    ) ||
    parted(
      cut,
      (p) => p.yMm,
      (p) => p.yMm + p.hMm,
      kerfMm,
    )
  )
}

function parted(
  cut: readonly Placed[],
  low: (p: Placed) => number,
  high: (p: Placed) => number,
  kerfMm: number,
): boolean {
  const sorted = cut.toSorted((a, b) => low(a) - low(b))
  let end = Number.NEGATIVE_INFINITY
  for (let i = 0; i < sorted.length; i++) {
    // Any cut that goes through will do: parting never stands in the way of a later cut.
    if (i > 0 && low(sorted[i]!) >= end + kerfMm - TINY)
      return guillotine(sorted.slice(0, i), kerfMm) && guillotine(sorted.slice(i), kerfMm)
    end = Math.max(end, high(sorted[i]!))
  }
  return false
}
