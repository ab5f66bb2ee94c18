/** Whole messages in one process: answers per second, p50 and p99, searched layouts apart, the parts of it cached; memory over
 *  100,000 messages; and the cold start of `ask` against bare Node in the same run. */
import { spawnSync } from 'node:child_process'
import path from 'node:path'
import project from '../../package.json' with { type: 'json' }
import { answer, HEAVY, PLAIN, SEARCHED } from './messages/kinds.ts'

/** Time of this thread alone, so that what else the machine does counts for nothing; too coarse for a single message. [ms] */
const cpuMs = (): number => {
  const { user, system } = process.threadCpuUsage()
  return (user + system) / 1000
}
const quantile = (sorted: readonly number[], q: number) =>
  sorted[Math.min(sorted.length - 1, Math.floor(q * sorted.length))]!
const shown = (n: number) => (n >= 100 ? Math.round(n).toLocaleString('en') : n.toPrecision(3))

/** Answers `count` messages in turn. Each is made beforehand: the making is not measured. */
function measure(name: string, kinds: readonly (() => string)[], count: number): void {
  const messages = Array.from({ length: count }, (_, i) => kinds[i % kinds.length]!())
  for (const text of messages.slice(0, Math.min(3000, count / 4))) answer(text)
  const times = new Float64Array(count)
  const start = cpuMs()
  let fine = 0
  messages.forEach((text, i) => {
    const before = performance.now()
    if (answer(text).reply.ok) fine++
    times[i] = performance.now() - before
  })
  const perS = (count / (cpuMs() - start)) * 1000
  const sorted = [...times].sort((a, b) => a - b)
  console.log(
    `  ${name.padEnd(26)} ${shown(perS).padStart(8)}/s  p50 ${shown(quantile(sorted, 0.5))} ms  p99 ${shown(quantile(sorted, 0.99))} ms` +
      `  answered ${Math.round((fine / count) * 100)} %`,
  )
}

/** The flags of `npm start`. */
const startFlags = (): string[] => project.scripts.start.split(' ').filter((word) => word.startsWith('--'))

function memory(): void {
  const program = path.join(import.meta.dirname, 'messages/memory.js')
  const done = spawnSync(process.execPath, [...startFlags(), program], { encoding: 'utf8' })
  const { startMb, halfMb, endMb } = JSON.parse(done.stdout)
  console.log(
    `  memory with the flags of npm start: ${shown(startMb)} MB resident before, ${shown(endMb)} MB after 100,000 messages,` +
      ` ${shown(endMb - halfMb)} MB of it in the second half`,
  )
}

/** Median wall time of a command over several runs, each alternating with the others. [ms] */
function medians(commands: Readonly<Record<string, readonly string[]>>, runs: number): Record<string, number> {
  const times = Object.fromEntries(Object.keys(commands).map((name) => [name, [] as number[]]))
  for (let run = 0; run <= runs; run++)
    for (const [name, args] of Object.entries(commands)) {
      const start = performance.now()
      const done = spawnSync(process.execPath, args, { stdio: 'ignore' })
      if (done.status === null) throw new Error(`${name} did not run`)
      // The first run fills the compile cache.
      if (run > 0) times[name]!.push(performance.now() - start)
    }
  return Object.fromEntries(Object.entries(times).map(([name, list]) => [name, list.sort((a, b) => a - b)[runs >> 1]!]))
}

function coldStart(): void {
  const program = path.join(import.meta.dirname, '../../adapters/terminal/ask.js')
  const { bare, ...rest } = medians(
    {
      bare: ['-e', '0'],
      'tile question': [program, '10x13 shop floor, 18x18 tile, 3/16 joint'],
      'clock time': [program, 'set at 2pm, 58F, when can we grout?'],
      convert: [program, '130 sf in m2'],
      'room less a counter': [program, '10x13 less a 3x4 counter, 18x18'],
    },
    9,
  )
  console.log(`  bare node                  ${shown(bare!)} ms`)
  for (const [name, ms] of Object.entries(rest))
    console.log(`  cold start, ${name.padEnd(20)} ${shown(ms)} ms, ${(ms / bare!).toFixed(1)} x bare node`)
}

export default async function bench(): Promise<void> {
  coldStart()
  memory()
  console.log('  kept between messages: words already read out of the lexicon, Intl formats; no answer and no layout')
  measure('all kinds without search', Object.values(PLAIN), 20_000)
  for (const [name, kind] of Object.entries(PLAIN)) measure(name, [kind], 4000)
  for (const [name, kind] of Object.entries(HEAVY)) measure(name, [kind], 2000)
  for (const [name, kind] of Object.entries(SEARCHED)) measure(`searched: ${name}`, [kind], 200)
}
