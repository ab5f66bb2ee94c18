/** What a message logs: bags, boxes and tiles used, broken, left; readings; who burns what. */
import { logged, type ReadingBody, type Stuff, type UseBody } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import type { Heard } from '../../language/heard.ts'
import { asksSomething } from '../job/asks.ts'
import { SQFT } from './counts.ts'
import { readReading } from './read-reading.ts'
import { readShort, type ShortRead } from './read-short.ts'
import { roomedUse } from './use-room.ts'
import { isCorrection, readUses, setsBoxes, stuffOf } from './uses.ts'

export type LogRead =
  | { readonly is: 'use'; readonly uses: readonly UseBody[]; readonly corrects: boolean }
  | { readonly is: 'reading'; readonly reading: ReadingBody }
  /** Boxes of nobody knows how many. */
  | { readonly is: 'boxes' }
  | { readonly is: 'burning'; readonly m2PerBag: number | null; readonly stuff: Stuff }
  /** What a bag of theirs covers. */
  | { readonly is: 'rate'; readonly stuff: Stuff }
  /** Tile for the rest of the floor. */
  | { readonly is: 'tiles'; readonly left: UseBody | null }
  | ShortRead
  | { readonly is: 'finish'; readonly haveBags: number | null; readonly leftM2: number | null; readonly stuff: Stuff }

/** What a message logs, or null where it logs nothing. */
export function readLog(heard: Heard, memory: Memory): LogRead | null {
  const { facts } = heard
  // A burn on the skin is no mortar burnt, and a crack across the room no tile to count.
  if (heard.rules.subjects[0]?.name === 'cement-skin') return null
  const counts = heard.quantities.some((q) => Number.isInteger(q.n))
  if (heard.rules.troubles.length > 0 && !counts && heard.commands.log.has('broke')) return null
  if (isBurning(heard)) return { is: 'burning', m2PerBag: facts.coverageM2 ?? null, stuff: stuffOf(heard, memory) }
  if (asksRate(heard)) return { is: 'rate', stuff: stuffOf(heard, memory) }
  const reading = readReading(heard)
  // "lot 4471 on boxes 1-20, 4502 on the rest" counts nothing.
  const short = reading?.what === 'lot' ? null : readShort(heard, memory)
  if (short) return short
  const asks = asksSomething(heard)
  if (reading) return { is: 'reading', reading }
  if (facts.rooms !== undefined || (facts.tile !== undefined && facts.tile.lengthMm > 0)) return null
  const finish = readFinish(heard, memory, asks) ?? readTiles(heard, memory, asks)
  if (finish) return finish
  if (asks || facts.leftM2 !== undefined || facts.temperatures !== undefined) return null
  const roomed = roomedUse(heard, memory)
  if (roomed) return { is: 'use', uses: [roomed], corrects: true }
  const corrects = isCorrection(heard, memory)
  const uses = readUses(heard, memory)
  if (uses.length === 0 && setsBoxes(heard)) return { is: 'boxes' }
  return uses.length > 0 ? { is: 'use', uses, corrects } : null
}

/** "what's my coverage": nothing is told that it should be judged by or worked out from. */
const asksRate = (heard: Heard): boolean =>
  heard.commands.log.has('own-rate') &&
  heard.quantities.length === 0 &&
  heard.facts.trowel === undefined &&
  !heard.has('notch', 'trowel')

/** "you're burning mud"; "we get 31 sf a bag": a coverage to be judged. */
function isBurning(heard: Heard): boolean {
  const { log } = heard.commands
  if (log.has('burning')) return true
  const { coverageM2, areaM2, rooms, leftM2 } = heard.facts
  const judged = coverageM2 !== undefined && areaM2 === undefined && rooms === undefined && leftM2 === undefined
  return judged && log.has('gets') && !asksSomething(heard)
}

/** After a log of tile: "half a box left, enough?", "how many more tiles". */
function readTiles(heard: Heard, memory: Memory, asks: boolean): LogRead | null {
  const { log } = heard.commands
  if (!asks || memory.job.uses.at(-1)?.stuff !== 'tile' || heard.has('bag', 'grout', 'mortar', 'row')) return null
  const { tile, areaM2, rooms, boxTiles, boxM2 } = heard.facts
  if ([tile, areaM2, rooms, boxTiles, boxM2].some((fact) => fact !== undefined)) return null
  if (!(log.has('finish') || log.has('left') || heard.has('enough', 'to-finish', 'more-word'))) return null
  const told = log.has('left') ? readUses(heard, memory).find((use) => use.stuff === 'tile') : undefined
  return { is: 'tiles', left: told ?? null }
}

/** After a log: "160 to go, how many bags", "2 left, enough?" goes by what the crew used. */
function readFinish(heard: Heard, memory: Memory, asks: boolean): LogRead | null {
  const { log } = heard.commands
  const { facts } = heard
  const stuff = stuffOf(heard, memory)
  if (!logged(memory.job, stuff).any || facts.trowel !== undefined || facts.usedBags !== undefined) return null
  if (heard.has('tile', 'piece', 'box', 'water', 'walk') || facts.areaM2 !== undefined) return null
  if (memory.job.uses.at(-1)?.stuff === 'tile' && !heard.has('bag', 'mortar', 'grout')) return null
  const ends =
    log.has('finish') || (asks && (log.has('left') || heard.has('enough', 'to-finish', 'left-to-do', 'more-word')))
  if (!ends || !(asks || heard.has('will-do') || facts.leftM2 !== undefined || bareLeft(heard) !== null)) return null
  if (stuff === 'grout' && heard.has('when', 'can-we')) return null
  // "make it 1/8" changes the joint; "2 left, make it?" asks whether that will do.
  if (!asks && heard.has('make-it') && !log.has('left') && facts.haveBags === undefined) return null
  const bare = bareLeft(heard)
  const haveBags = facts.haveBags ?? (facts.leftM2 !== undefined || (bare !== null && bare < 15) ? bare : null)
  const leftM2 = facts.leftM2 ?? (bare !== null && bare >= 15 && facts.haveBags !== bare ? bare * SQFT : null)
  return { is: 'finish', haveBags, leftM2, stuff }
}

const bareLeft = (heard: Heard): number | null =>
  heard.loose.find((l) => l.q.dimension === 'none' && l.q.n >= 0 && l.q.n < 100_000)?.q.n ?? null
