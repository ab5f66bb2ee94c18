/** Times of benchmarks: two ways of working side by side in one run, told as ratios. */

export type Timing = { readonly p50: number; readonly p99: number; readonly perSecond: number }
export type Work = (i: number) => unknown

function summed(ms: readonly number[], wallMs: number): Timing {
  const sorted = ms.toSorted((a, b) => a - b)
  const at = (p: number) => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!
  return { p50: at(0.5), p99: at(0.99), perSecond: (1000 * ms.length) / wallMs }
}

/** `count` pieces of work, so many under way at once. */
export async function timed(count: number, atOnce: number, one: Work): Promise<Timing> {
  const ms: number[] = []
  let next = 0
  const begin = performance.now()
  await Promise.all(
    Array.from({ length: atOnce }, async () => {
      while (next < count) {
        const i = next++
        const start = performance.now()
        await one(i)
        ms.push(performance.now() - start)
      }
    }),
  )
  return summed(ms, performance.now() - begin)
}

/** Pieces of several works in turn, one at a time, so that a disk that is slow for a while is slow for all. */
export async function sideBySide(count: number, ...works: readonly Work[]): Promise<Timing[]> {
  const times = works.map((): number[] => [])
  for (let i = 0; i < count; i++)
    for (const [which, work] of works.entries()) {
      const start = performance.now()
      await work(i)
      times[which]!.push(performance.now() - start)
    }
  return times.map((ms) =>
    summed(
      ms,
      ms.reduce((sum, one) => sum + one, 0),
    ),
  )
}

/** Works in turns of `count` with so many under way at once: the middle turn of each, and the middle ratio of throughputs of a
 *  work against the first one's turn just before. */
export async function inTurns(
  turns: number,
  count: number,
  atOnce: number,
  ...works: readonly Work[]
): Promise<{ readonly timing: Timing; readonly ratio: number }[]> {
  const found = works.map((): Timing[] => [])
  for (let turn = -1; turn < turns; turn++)
    for (const [which, work] of works.entries()) {
      const one = await timed(count, atOnce, work)
      if (turn >= 0) found[which]!.push(one) // the first warms up
    }
  return found.map((own) => ({
    timing: middle(own),
    ratio: median(own.map((one, turn) => one.perSecond / found[0]![turn]!.perSecond)),
  }))
}

const median = (numbers: readonly number[]): number => numbers.toSorted((a, b) => a - b)[numbers.length >> 1]!

export const middle = (turns: readonly Timing[]): Timing => ({
  p50: median(turns.map((t) => t.p50)),
  p99: median(turns.map((t) => t.p99)),
  perSecond: median(turns.map((t) => t.perSecond)),
})

/** One line of a benchmark, against another timing of the same run where one is given. */
export function tell(name: string, t: Timing, base?: Timing, of = 'bare', ratio?: number): void {
  const shown = `p50 ${t.p50.toFixed(3)} ms, p99 ${t.p99.toFixed(3)} ms, ${t.perSecond.toFixed(0)}/s`
  const times = (a: number, b: number) => `${(a / b).toFixed(2)} x`
  const against = base
    ? `  (throughput ${(ratio ?? t.perSecond / base.perSecond).toFixed(2)} x, p50 ${times(t.p50, base.p50)}, p99 ${times(t.p99, base.p99)} of ${of})`
    : ''
  console.log(`  ${name.padEnd(46)} ${shown}${against}`)
}
