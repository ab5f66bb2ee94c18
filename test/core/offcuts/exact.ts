/** The optimum worked out another way: highs, a general MILP solver, and trying every subset. */
import { createRequire } from 'node:module'
import type { CutOrder } from '../../../src/core/offcuts/order.ts'

type Solved = { readonly Status: string; readonly ObjectiveValue: number }
export type Highs = { solve(model: string, options?: { time_limit?: number }): Solved }
/** Loaded by require: the package's types name a default export that its file has as `module.exports`. */
export const highs = (): Promise<Highs> => createRequire(import.meta.url)('highs')()

type Item = { readonly w: number; readonly h: number }

const items = (order: CutOrder): Item[] =>
  order.pieces.flatMap(({ wMm, hMm, qty }) => Array.from({ length: qty }, () => ({ w: wMm, h: hMm })))

/** The fewest bars for lengths, by the solver: amounts of each length in each bar. */
export function fewestByLength(solver: Highs, order: CutOrder, tilesAtMost: number, seconds = 0.5): number | null {
  const sizes = new Map<number, number>()
  for (const { w } of items(order)) sizes.set(w, (sizes.get(w) ?? 0) + 1)
  const bars = Array.from({ length: tilesAtMost }, (_, b) => b)
  const kinds = [...sizes.keys()]
  const room = order.stockWMm + order.kerfMm
  const rows = [
    ...kinds.map((w, k) => `${bars.map((b) => `x_${k}_${b}`).join(' + ')} >= ${sizes.get(w)}`),
    ...bars.map((b) => `${kinds.map((w, k) => `${w + order.kerfMm} x_${k}_${b}`).join(' + ')} - ${room} y_${b} <= 0`),
    ...bars.slice(1).map((b) => `y_${b} - y_${b - 1} <= 0`),
    ...(order.maxATile === null
      ? []
      : bars.map((b) => `${kinds.map((_, k) => `x_${k}_${b}`).join(' + ')} <= ${order.maxATile}`)),
  ]
  const whole = kinds.flatMap((_, k) => bars.map((b) => `x_${k}_${b}`))
  const model = `Minimize\n ${bars.map((b) => `y_${b}`).join(' + ')}\nSubject To\n ${rows.join('\n ')}
General\n ${whole.join(' ')}\nBinary\n ${bars.map((b) => `y_${b}`).join(' ')}\nEnd\n`
  const solved = solver.solve(model, { time_limit: seconds })
  return solved.Status === 'Optimal' ? Math.round(solved.ObjectiveValue) : null
}

/** The fewest tiles by covering the pieces with subsets that fit, all tried; for about 7 pieces and small whole sizes. */
export function fewestBySubsets(solver: Highs, order: CutOrder): number {
  const list = items(order)
  const known = new Map<string, boolean>()
  const fitting: number[] = []
  for (let set = 1; set < 1 << list.length; set++)
    if (bits(set) <= (order.maxATile ?? list.length) && fits(set, order.stockWMm, order.stockHMm)) fitting.push(set)
  const rows = list.map(
    (_, i) =>
      `${fitting
        .filter((s) => s & (1 << i))
        .map((s) => `z_${s}`)
        .join(' + ')} >= 1`,
  )
  const names = fitting.map((s) => `z_${s}`)
  const model = `Minimize\n ${names.join(' + ')}\nSubject To\n ${rows.join('\n ')}\nBinary\n ${names.join(' ')}\nEnd\n`
  return Math.round(solver.solve(model).ObjectiveValue)

  /** Whether straight cuts get these pieces out of w x h: each cut tried at each mm. */
  function fits(set: number, w: number, h: number): boolean {
    if (w <= 0 || h <= 0) return false
    if (bits(set) === 1) {
      const { w: a, h: b } = list[31 - Math.clz32(set)]!
      return (a <= w && b <= h) || (order.turn === 'quarter' && b <= w && a <= h)
    }
    const key = `${set} ${w} ${h}`
    const before = known.get(key)
    if (before !== undefined) return before
    let ok = false
    for (let a = (set - 1) & set; a > 0 && !ok; a = (a - 1) & set) {
      for (let x = 1; x < w && !ok; x++) ok = fits(a, x, h) && fits(set ^ a, w - x - order.kerfMm, h)
      for (let y = 1; y < h && !ok; y++) ok = fits(a, w, y) && fits(set ^ a, w, h - y - order.kerfMm)
    }
    known.set(key, ok)
    return ok
  }
}

function bits(set: number): number {
  let n = 0
  for (let s = set; s; s &= s - 1) n++
  return n
}

/** First-fit decreasing by length: the rule every plan is measured against. */
export function firstFitByLength(order: CutOrder): number {
  const bars: { room: number; count: number }[] = []
  for (const { w } of items(order).sort((a, b) => b.w - a.w)) {
    const size = w + order.kerfMm
    let bar = bars.find((b) => b.room >= size && b.count < (order.maxATile ?? Number.POSITIVE_INFINITY))
    if (!bar) {
      bar = { room: order.stockWMm + order.kerfMm, count: 0 }
      bars.push(bar)
    }
    bar.room -= size
    bar.count++
  }
  return bars.length
}
