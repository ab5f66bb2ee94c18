/** Running short, whole messages: what is not set laid and cut anew, each way out with it; against the layout of the same floor. */
import { work } from '../../adapters/working.ts'
import { fold } from '../../src/jobs/fold.ts'
import { emptyMemory, type Memory } from '../../src/jobs/memory.ts'
import { tools } from '../support/crew.ts'
import { NOW } from '../support/now.ts'

const FLOORS = {
  'shop of 224 tiles': 'shop floor 20x24, 18x18 tile, 3/16 joint, 8 a box',
  'plank in an L': 'L shape 30x20 plus 12x10, 8x48 plank, 1/8 joint, 1/3 offset, 6 a box',
  'diagonal, 300 tiles': 'shop floor 15x20, 12x12 tile on the diagonal, 1/8 joint, 10 a box',
  'hall of 4,800 tiles': 'hall 60x80 ft, 12x12 tile, 1/8 joint, 10 a box',
}
const ROUNDS = 15
const median = (list: number[]): number => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)]!

/** Milliseconds of a message, by the processor's time: others may be at work on the machine. */
function timed(text: string, memory: Memory): { ms: number; after: Memory } {
  const start = process.cpuUsage()
  const { entries } = work({ text, id: text, person: 'lead', now: NOW, zone: null }, memory, tools)
  const { user, system } = process.cpuUsage(start)
  return { ms: (user + system) / 1000, after: entries.reduce(fold, memory) }
}

export default async function short(): Promise<void> {
  for (const [name, floor] of Object.entries(FLOORS)) {
    const { after } = timed(floor, emptyMemory)
    const run = (text: string): number =>
      median(Array.from({ length: ROUNDS }, (_, k) => timed(text.replace('N', String(k + 1)), after).ms))
    const [some, none] = [run('N boxes left, 5 rows to go'), run('N boxes left, do we make it')]
    console.log(
      `  ${name.padEnd(22)} rows to go ${some.toFixed(1)} ms, nothing set, start searched ${none.toFixed(1)} ms`,
    )
  }
}
