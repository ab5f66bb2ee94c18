/** Off-cut plans: how many are the proven optimum, how long they take, and against highs (npm), a general MILP solver. */
import type { CutOrder } from '../../src/core/offcuts/order.ts'
import { planCuts } from '../../src/core/offcuts/plan.ts'
import { fewestByLength, firstFitByLength, highs } from '../core/offcuts/exact.ts'
import {
  chanceLengths,
  chancePieces,
  FAMILIES,
  type Family,
  factoryRim,
  familyList,
  roomRim,
  rowEnds,
} from '../core/offcuts/lists.ts'

const LISTS = 300
const SOLVED = 25

const KINDS: Record<string, (seed: number) => CutOrder> = {
  'row ends': (seed) => rowEnds(seed),
  'lengths by chance': (seed) => chanceLengths(seed),
  'lengths, middling': (seed) => chanceLengths(seed, 0.2, 0.7),
  "a room's rim": (seed) => roomRim(seed),
  "a room's rim, turned": (seed) => roomRim(seed, 'quarter'),
  'factory edges': (seed) => factoryRim(seed, 'half'),
  'rectangles by chance': (seed) => chancePieces(seed),
  'rectangles, turned': (seed) => chancePieces(seed, 'quarter'),
  ...Object.fromEntries(
    (Object.keys(FAMILIES) as Family[]).flatMap((family) => [
      [family, (seed: number) => familyList(seed, family, 'none')],
      [`${family}, turned`, (seed: number) => familyList(seed, family, 'quarter')],
    ]),
  ),
}

const share = (sorted: readonly number[], p: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * p))]!

function timed(order: CutOrder) {
  // The process's own time: what else the machine does is not the planner's.
  const start = process.cpuUsage()
  const planned = planCuts(order)
  const { user, system } = process.cpuUsage(start)
  const ms = (user + system) / 1000
  if (!planned.ok) throw new Error(planned.problem.code)
  return { ms, ...planned.value }
}

export default async function offcuts(): Promise<void> {
  for (let seed = 1; seed <= 40; seed++) for (const list of Object.values(KINDS)) timed(list(seed + 10_000))
  for (const [name, list] of Object.entries(KINDS)) {
    const runs = Array.from({ length: LISTS }, (_, i) => timed(list(i + 1)))
    const ms = runs.map((r) => r.ms).sort((a, b) => a - b)
    const proven = (100 * runs.filter((r) => r.proven).length) / LISTS
    console.log(
      `  ${name.padEnd(26)} proven ${proven.toFixed(1)} %, p50 ${share(ms, 0.5).toFixed(2)} ms, p99 ${share(ms, 0.99).toFixed(2)} ms`,
    )
  }
  const solver = await highs()
  const mine: number[] = []
  const theirs: number[] = []
  let beatsFirstFit = 0
  for (let seed = 1; seed <= SOLVED; seed++) {
    const order = chanceLengths(seed, 0.15, 0.8, 16)
    const plan = timed(order)
    const start = performance.now()
    fewestByLength(solver, order, plan.stockTiles, 5)
    theirs.push(performance.now() - start)
    mine.push(plan.ms)
    if (plan.stockTiles < firstFitByLength(order)) beatsFirstFit++
  }
  const [a, b] = [mine, theirs].map((list) => list.sort((x, y) => x - y))
  console.log(
    `  against highs on ${SOLVED} lists of up to 16 lengths: median ${share(a!, 0.5).toFixed(2)} ms to ${share(b!, 0.5).toFixed(1)} ms ` +
      `(${(share(b!, 0.5) / share(a!, 0.5)).toFixed(0)} x), worst ${share(a!, 1).toFixed(1)} ms to ${share(b!, 1).toFixed(0)} ms; ` +
      `${beatsFirstFit} lists take fewer tiles than first-fit decreasing`,
  )
}
