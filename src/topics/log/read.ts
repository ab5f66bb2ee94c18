/** What a message logs: bags, boxes and tiles used, broken, left; readings; who burns what. */
import type { ReadingBody, Stuff, UseBody } from '../../jobs/job.ts'
import { logged } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/hear.ts'
import type { Loose } from '../../language/singles.ts'
import { roomM2 } from '../floors.ts'
import { asksSomething } from '../job/asks.ts'
import { readReading } from './read-reading.ts'
import { readShort, type ShortRead, TILE_NOUNS } from './read-short.ts'

export type LogRead =
  | { readonly is: 'use'; readonly uses: readonly UseBody[]; readonly corrects: boolean }
  | { readonly is: 'reading'; readonly reading: ReadingBody }
  /** Boxes of nobody knows how many. */
  | { readonly is: 'boxes' }
  | { readonly is: 'burning'; readonly m2PerBag: number | null }
  | ShortRead
  | { readonly is: 'finish'; readonly haveBags: number | null; readonly leftM2: number | null; readonly stuff: Stuff }

const CLOCK = /\d\s?[ap]\.?m\b|\d:\d\d|o'?clock/

/** What a message logs, or null where it logs nothing. */
export function readLog(heard: Heard, memory: Memory): LogRead | null {
  const { log } = heard.commands
  const { facts } = heard
  if (log.has('burning')) return { is: 'burning', m2PerBag: facts.coverageM2 ?? null }
  const short = readShort(heard, memory)
  if (short) return short
  const asks = asksSomething(heard)
  const reading = readReading(heard)
  if (reading) return { is: 'reading', reading }
  if (facts.rooms !== undefined || (facts.tile !== undefined && facts.tile.lengthMm > 0)) return null
  const finish = readFinish(heard, memory, asks)
  if (finish) return finish
  if (asks || facts.leftM2 !== undefined || facts.temperatures !== undefined) return null
  const corrects = isCorrection(heard, memory)
  const uses = readUses(heard, memory)
  if (uses.length === 0 && setsBoxes(heard)) return { is: 'boxes' }
  return uses.length > 0 ? { is: 'use', uses, corrects } : null
}

const firstFigure = (heard: Heard): number | undefined =>
  heard.quantities.find((q) => q.dimension === 'none' && !q.negative)?.n

/** "no, 2 bags on 40 sf" right after a log. */
function isCorrection(heard: Heard, memory: Memory): boolean {
  const last = memory.job.changes.findLast((c) => c.is !== 'undo' && !c.undone)
  return heard.has('no-correction') && last?.is === 'use'
}

const stuffOf = (heard: Heard): Stuff =>
  heard.has('grout', 'sanded', 'unsanded', 'epoxy', 'premium-grout') ? 'grout' : 'mortar'

const whole = ({ q }: Loose): boolean => q.dimension === 'none' && Number.isInteger(q.n) && q.n > 0 && !q.negative
const countOf = (heard: Heard, ...nouns: readonly Concept[]): number | null =>
  heard.loose.find((l) => whole(l) && l.nouns.some((n) => nouns.includes(n.mark.concept)))?.q.n ?? null
/** The only figure that is of nothing else. */
const bareCount = (heard: Heard): number | null =>
  heard.items.length !== 1
    ? null
    : (heard.loose.find((l) => whole(l) && l.nouns.every((n) => n.mark.concept === 'left-to-do'))?.q.n ?? null)

/** Bags of mortar or grout and what they went on, as the message tells them, in a statement or beside a question. */
export function readUses(heard: Heard, memory: Memory): UseBody[] {
  const { log } = heard.commands
  const { facts } = heard
  const stuff = stuffOf(heard)
  const total = log.has('total') || undefined
  const bag = heard.has('bag', 'kit')
  const uses: UseBody[] = []
  const m2 = facts.usedM2 ?? facts.areaM2 ?? roomNamed(heard, memory)
  const corrects = isCorrection(heard, memory)
  const told = corrects || (log.has('used') && !log.has('left'))
  const bags =
    facts.usedBags ??
    (told ? (facts.bagsToMix ?? (corrects ? (facts.haveBags ?? firstFigure(heard)) : undefined)) : undefined)
  const left = facts.haveBags ?? (log.has('left') ? facts.bagsToMix : undefined)
  if (log.has('binned')) {
    const binnedBags = facts.usedBags ?? facts.bagsToMix ?? facts.haveBags ?? (heard.has('half-word') ? 0.5 : undefined)
    if (bag || heard.has('bucket', 'mixed-verb') || BATCH.test(heard.plain.text))
      return [{ stuff, binnedBags: binnedBags ?? 0.5 }]
  }
  if (log.has('opened') && bag) {
    const opened = facts.usedBags ?? facts.bagsToMix ?? 1
    uses.push({ stuff, opened, ...(m2 === undefined ? {} : { m2 }), ...(left === undefined ? {} : { leftBags: left }) })
  } else if (bags !== undefined && bag && (told || facts.usedM2 !== undefined || facts.areaM2 !== undefined))
    uses.push({
      stuff,
      bags,
      ...(m2 === undefined ? {} : { m2 }),
      ...(total && { total }),
      ...(left === undefined ? {} : { leftBags: left }),
    })
  else if (left !== undefined && bag && (log.has('left') || heard.has('have'))) uses.push({ stuff, leftBags: left })
  const bare = uses.length === 0 ? bareUse(heard, memory, stuff) : null
  if (bare) return [bare]
  return [...uses, ...tileUses(heard, memory, m2)]
}

const BATCH = /\b(?:batch|batches|mix|mezcla|tanda)\b/

/** After a log, "used 2 more on 70": bags on an area, in the units before. */
function bareUse(heard: Heard, memory: Memory, stuff: Stuff): UseBody | null {
  if (!heard.commands.log.has('used') || !logged(memory.job, stuff).any || heard.has('bag', ...TILE_NOUNS, 'box'))
    return null
  const [bags, area] = heard.loose.filter((l) => l.q.dimension === 'none' && l.q.n > 0).map((l) => l.q.n)
  const m2 =
    heard.facts.usedM2 ??
    heard.facts.areaM2 ??
    (area === undefined ? undefined : area * (memory.talk?.metric ? 1 : SQFT))
  return bags === undefined || m2 === undefined || bags > MOST_BARE_BAGS ? null : { stuff, bags, m2 }
}

const MOST_BARE_BAGS = 60

function tileUses(heard: Heard, memory: Memory, m2: number | undefined): UseBody[] {
  const { log } = heard.commands
  const { facts } = heard
  const bag = heard.has('bag', 'kit')
  const total = log.has('total') || undefined
  const named = countOf(heard, ...TILE_NOUNS)
  const broken = log.has('broke') ? (named ?? (bag ? null : bareCount(heard))) : null
  if (log.has('broke') && (heard.has(...TILE_NOUNS) || broken !== null))
    return [{ stuff: 'tile', broken: broken ?? facts.haveTiles ?? 1 }]
  const uses: UseBody[] = []
  const rows = log.has('set-tiles') && !log.has('left') ? countOf(heard, 'row') : null
  if (rows !== null) return [{ stuff: 'tile', rows, ...(total && { total }) }]
  const perBox = facts.boxTiles ?? memory.facts.boxTiles ?? memory.talk?.facts.boxTiles
  const clocked = heard.has('ago') || CLOCK.test(heard.plain.text) || heard.durationsH.length > 0
  const timed = clocked || heard.has('time-word')
  if (setsBoxes(heard)) return boxUses(heard, perBox, facts.boxM2 ?? memory.facts.boxM2)
  const tiles = named ?? (log.has('set-tiles') && !bag && !log.has('left') ? bareCount(heard) : null)
  if (
    tiles !== null &&
    log.has('set-tiles') &&
    !log.has('left') &&
    facts.haveBoxes === undefined &&
    !(named === null ? timed : clocked)
  )
    uses.push({ stuff: 'tile', tiles, ...(m2 === undefined ? {} : { m2 }), ...(total && { total }) })
  else if (
    m2 !== undefined &&
    !bag &&
    facts.areaM2 !== undefined &&
    log.has('set-tiles') &&
    heard.has('set-verb') &&
    !timed
  )
    uses.push({ stuff: 'tile', m2, ...(total && { total }) })
  else if (log.has('left') && facts.haveBoxes !== undefined && !facts.boxTiles)
    uses.push({ stuff: 'tile', leftBoxes: facts.haveBoxes })
  else if (log.has('left') && tiles !== null && named !== null) uses.push({ stuff: 'tile', leftTiles: tiles })
  return uses
}

/** "set 12 boxes", with nothing told of a time to wait from. */
export const setsBoxes = (heard: Heard): boolean => {
  const { log } = heard.commands
  const clocked = heard.has('ago') || CLOCK.test(heard.plain.text) || heard.durationsH.length > 0
  return log.has('set-tiles') && !log.has('left') && !clocked && heard.facts.haveBoxes !== undefined
}

/** Boxes as the tiles, else as the area in them; none where neither is known. */
function boxUses(heard: Heard, perBox: number | undefined, boxM2: number | undefined): UseBody[] {
  const boxes = heard.facts.haveBoxes ?? 0
  const total = heard.commands.log.has('total') || undefined
  if (perBox !== undefined) return [{ stuff: 'tile', tiles: boxes * perBox, ...(total && { total }) }]
  return boxM2 === undefined ? [] : [{ stuff: 'tile', m2: boxes * boxM2, ...(total && { total }) }]
}

/** "used 3 bags on the hall": the room of the job that is named. */
function roomNamed(heard: Heard, memory: Memory): number | undefined {
  const named = (memory.facts.rooms ?? []).filter((r) => r.name && heard.plain.text.includes(r.name.replace(/s$/, '')))
  return named.length > 0 ? named.reduce((sum, r) => sum + roomM2(r), 0) : undefined
}

/** After a log: "160 to go, how many bags", "2 left, enough?" goes by what the crew used. */
function readFinish(heard: Heard, memory: Memory, asks: boolean): LogRead | null {
  const { log } = heard.commands
  const { facts } = heard
  const stuff = stuffOf(heard)
  if (!logged(memory.job, stuff).any || facts.trowel !== undefined || facts.usedBags !== undefined) return null
  if (heard.has('tile', 'piece', 'box', 'water', 'walk') || facts.areaM2 !== undefined) return null
  const ends = log.has('finish') || (asks && (log.has('left') || heard.has('enough', 'to-finish', 'left-to-do')))
  if (!ends || !(asks || facts.leftM2 !== undefined || bareLeft(heard) !== null)) return null
  if (stuff === 'grout' && heard.has('when', 'can-we')) return null
  const bare = bareLeft(heard)
  const haveBags = facts.haveBags ?? (facts.leftM2 !== undefined || (bare !== null && bare < 15) ? bare : null)
  const leftM2 = facts.leftM2 ?? (bare !== null && bare >= 15 && facts.haveBags !== bare ? bare * SQFT : null)
  return { is: 'finish', haveBags, leftM2, stuff }
}

const SQFT = 0.09290304
const bareLeft = (heard: Heard): number | null =>
  heard.loose.find((l) => l.q.dimension === 'none' && l.q.n >= 0 && l.q.n < 100_000)?.q.n ?? null
