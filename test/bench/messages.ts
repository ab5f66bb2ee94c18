/** Whole messages in one process: answers per second, p50 and p99, searched layouts apart, the parts of it cached; memory over
 *  100,000 messages; and the cold start of `ask` against bare Node in the same run. */
import { spawnSync } from 'node:child_process'
import path from 'node:path'
import { loadTools } from '../../adapters/tools.ts'
import { work } from '../../adapters/working.ts'
import { emptyMemory } from '../../src/jobs/memory.ts'
import { NOW } from '../support/now.ts'

const loaded = loadTools()
if (!loaded.ok) throw new Error(loaded.message)
const tools = loaded.value

/** A small generator of its own, so that runs are alike (mulberry32 by its common form, from memory). */
function numbers(seed: number): () => number {
  let a = seed
  return () => {
    a = (a + 0x6d2b79f5) | 0
    let t = Math.imul(a ^ (a >>> 15), 1 | a)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
const random = numbers(20261124)
const whole = (from: number, to: number) => from + Math.floor(random() * (to - from + 1))
const one = <T>(list: readonly T[]): T => list[Math.floor(random() * list.length)]!
const tile = () => one(['18x18', '8x48', '12x12', '6x24', '24x24', '3x6', '16x16'])
const joint = () => one(['1/8', '3/16', '1/4', '1/16'])
const notch = () => one(['1/2x1/2', '1/4x3/8', '1/4x1/4', '1/2 u-notch'])
const feet = () => `${whole(5, 30)}'${whole(0, 11)}"`

/** Questions of each kind that need no search; what is asked is the same, the figures hardly ever. */
const PLAIN: Readonly<Record<string, () => string>> = {
  'room, tile, joint': () => `${whole(5, 30)}x${whole(5, 30)} shop floor, ${tile()} tile, ${joint()} joint`,
  'room in feet and inches': () => `${feet()} x ${feet()} mudroom ${tile()} ${joint()} gap`,
  'metric room': () =>
    `${(whole(20, 80) / 10).toFixed(1)}m x ${(whole(20, 80) / 10).toFixed(1)}m, 60x60cm, 2mm spacers`,
  'bare area': () => `${whole(40, 900)} sf of ${tile()}, how many boxes at ${whole(8, 16)} sf a box`,
  mortar: () => `how many bags of thinset for ${whole(40, 900)} sf with a ${notch()} notch`,
  'bags left': () => `${whole(1, 6)} bags left ${whole(20, 300)} sf to go enough?`,
  grout: () => `grout for ${whole(40, 900)} sf of ${tile()}, ${joint()} joint, 3/8 thick`,
  mix: () => `water for ${one(['half', 'a quarter of', 'a third of'])} a ${one(['50 lb', '25 kg'])} bag`,
  cure: () => `thinset down at ${whole(50, 85)}F, when can we grout`,
  area: () => `area of ${whole(5, 40)}x${whole(5, 40)} plus ${whole(2, 9)}x${whole(2, 9)}`,
  rule: () => `is ${whole(60, 99)} percent coverage ok in a shower`,
  joists: () => `joists 2x10 at ${one([12, 16, 24])} spanning ${whole(8, 15)} ft, ok for porcelain?`,
  contact: () => `pulled a tile, ${whole(50, 99)}% contact, wet area, ok?`,
  offset: () => `is half offset ok on 8x48 plank, warp 1/${one([16, 32])}`,
}
/** These load a library with the first of their kind. */
const HEAVY: Readonly<Record<string, () => string>> = {
  'clock times': () => `set at ${whole(1, 11)}pm, ${whole(50, 85)}F, when can we grout?`,
  convert: () => `${whole(2, 900)} sf in m2`,
}
const SEARCHED: Readonly<Record<string, () => string>> = {
  'room less a counter': () =>
    `${whole(9, 20)}x${whole(9, 20)} shop floor less a ${whole(2, 5)}x${whole(2, 5)} counter, ${tile()}, 3/16 joint`,
  'L-shape': () => `L ${whole(10, 20)}x${whole(10, 20)} less ${whole(3, 8)}x${whole(3, 8)}, 18x18, 1/8 joint`,
  'third offset': () => `${whole(8, 16)}x${whole(8, 16)} mudroom, 8x48 plank, third offset, 1/8 joint`,
  diagonal: () => `${whole(8, 16)}x${whole(8, 16)} wash-up, 18x18 on the diagonal, 3/16`,
  herringbone: () => `${whole(6, 10)}x${whole(6, 10)} wash-up in herringbone, 6x24, 1/8`,
}

let asked = 0
function answer(text: string) {
  const message = { text, id: `m${++asked}`, person: 'lead', now: NOW, zone: null }
  return work(message, emptyMemory, tools)
}

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

const rssMb = () => process.memoryUsage().rss / 1e6

function memory(): void {
  const kinds = Object.values(PLAIN)
  let half = 0
  for (let i = 0; i < 100_000; i++) {
    answer(kinds[i % kinds.length]!())
    if (i === 50_000) half = rssMb()
  }
  const end = rssMb()
  console.log(
    `  memory after 100,000 messages ${shown(end)} MB resident, ${shown(end - half)} MB of it in the second half`,
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
