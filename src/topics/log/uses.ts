/** What a statement logs: bags of mortar or grout and what they went on, tiles and boxes set, broken, left. */
import type { Stuff, UseBody } from '../../jobs/job.ts'
import type { Memory } from '../../jobs/memory.ts'
import type { Heard } from '../../language/heard.ts'
import type { Loose } from '../../language/singles.ts'
import { roomsNamed } from '../../room-tiles.ts'
import { roomM2 } from '../floors.ts'
import { asksSomething } from '../job/asks.ts'
import { bareCount, countOf, SQFT, TILE_NOUNS } from './counts.ts'
import { inRoom } from './use-room.ts'

const CLOCK = /\d\s?[ap]\.?m\b|\d:\d\d|o'?clock/

/** "no, 2 bags on 40 sf" right after a log. */
export function isCorrection(heard: Heard, memory: Memory): boolean {
  const last = memory.job.changes.findLast((c) => c.is !== 'undo' && !c.undone)
  return heard.has('no-correction') && last?.is === 'use'
}

/** Grout or mortar: as it is called, else as in the log before; bags told with their area are of mortar. */
export function stuffOf(heard: Heard, memory: Memory): Stuff {
  if (heard.has('grout', 'sanded', 'unsanded', 'epoxy', 'premium-grout', 'kit')) return 'grout'
  if (heard.has('mortar', 'large-format', 'modified', 'unmodified', 'rapid')) return 'mortar'
  const whole = heard.has('bag') && (heard.facts.usedM2 ?? heard.facts.areaM2) !== undefined
  const before = memory.job.uses.findLast((use) => use.stuff !== 'tile')
  if (whole && before && !isCorrection(heard, memory)) return 'mortar'
  return before?.stuff ?? (memory.talk?.topic === 'grout' ? 'grout' : 'mortar')
}

/** Everything a message logs, in a statement or beside a question. */
export function readUses(heard: Heard, memory: Memory): UseBody[] {
  const renamed = renamedUse(heard, memory)
  if (renamed) return [renamed]
  const binned = binnedUse(heard, memory)
  if (binned) return [binned]
  const bags = bagUse(heard, memory) ?? bareUse(heard, memory)
  const tiles = heard.has('bag', 'kit') || !bags ? tileUses(heard, memory, areaOf(heard, memory)) : []
  return [...(bags ? [bags] : []), ...tiles.map((use) => inRoom(use, heard, memory))]
}

/** "that was grout not mud": the log before, of the other stuff. */
function renamedUse(heard: Heard, memory: Memory): UseBody | null {
  const last = memory.job.uses.at(-1)
  if (!last || last.stuff === 'tile' || heard.quantities.length > 0 || !isCorrection(heard, memory)) return null
  const other = last.stuff === 'mortar' ? 'grout' : 'mortar'
  if (!heard.has(other)) return null
  const { id: _i, at: _a, person: _p, personName: _n, messageId: _m, trowel: _t, backButter: _b, ...told } = last
  return { ...told, stuff: other }
}

const areaOf = (heard: Heard, memory: Memory): number | undefined =>
  heard.facts.usedM2 ?? heard.facts.areaM2 ?? roomNamed(heard, memory)

/** "used 3 bags on the hall": the room of the job that is named. */
function roomNamed(heard: Heard, memory: Memory): number | undefined {
  const named = roomsNamed(heard.plain.text, memory.facts.rooms ?? [])
  return named.length > 0 ? named.reduce((sum, r) => sum + roomM2(r), 0) : undefined
}

const MOST_BAGS = 60
/** An area stands at least so many times over the bags on it, in feet or metres, for nobody to take one for the other. */
const LEAST_SHARE = 2

const isCount = ({ q }: Loose): boolean => q.dimension === 'none' && q.n > 0 && !q.negative && !q.token.fraction

/** "on 130": an area in the units of the talk, where nothing else can be meant. [m2] */
function bareArea(figures: readonly Loose[], bags: number, memory: Memory): number | undefined {
  const one = figures.length === 1 && figures[0].nouns.every((n) => n.mark.concept === 'bag') ? figures[0].q.n : 0
  return one >= LEAST_SHARE * bags ? one * (memory.talk?.metric ? 1 : SQFT) : undefined
}

const isTotal = (heard: Heard): { readonly total?: true } => (heard.commands.log.has('total') ? { total: true } : {})
const given = <K extends 'm2' | 'leftBags'>(key: K, value: number | undefined) =>
  (value === undefined ? {} : { [key]: value }) as Partial<Record<K, number>>

function binnedUse(heard: Heard, memory: Memory): UseBody | null {
  const { log } = heard.commands
  const bag = heard.has('bag', 'kit')
  if (!log.has('binned') || !(bag || log.has('batch') || heard.has('bucket', 'mixed-verb'))) return null
  const { usedBags, bagsToMix, haveBags } = heard.facts
  const told = usedBags ?? bagsToMix ?? haveBags ?? (heard.has('half-word') ? HALF : undefined)
  return { stuff: stuffOf(heard, memory), binnedBags: told ?? (bag && !log.has('batch') ? 1 : HALF) }
}

/** A batch nobody measured. [bags] */
const HALF = 0.5

/** Bags that the message calls so. */
function bagUse(heard: Heard, memory: Memory): UseBody | null {
  const { log } = heard.commands
  const { facts } = heard
  if (!heard.has('bag', 'kit')) return null
  const stuff = stuffOf(heard, memory)
  const corrects = isCorrection(heard, memory)
  const told = corrects || ((log.has('used') || log.has('total')) && !log.has('left'))
  const bags = facts.usedBags ?? (told ? (facts.bagsToMix ?? facts.haveBags) : undefined)
  const left = facts.usedBags === undefined && told ? undefined : facts.haveBags
  const onHand = left ?? (log.has('left') ? facts.bagsToMix : undefined)
  const m2 = areaOf(heard, memory)
  if (log.has('opened')) {
    const opened = facts.usedBags ?? facts.bagsToMix ?? 1
    return { stuff, opened, ...given('m2', m2), ...given('leftBags', onHand) }
  }
  if (bags !== undefined && (told || m2 !== undefined)) {
    const on = m2 ?? bareArea(heard.loose.filter(isCount), bags, memory)
    // "5 bags so far" of nothing that was used is what is on hand.
    if (!log.has('used') && !corrects && on === undefined && facts.usedBags === undefined) return null
    return { stuff, bags, ...given('m2', on), ...isTotal(heard), ...given('leftBags', onHand) }
  }
  return onHand !== undefined && (log.has('left') || heard.has('have')) ? { stuff, leftBags: onHand } : null
}

/** After a log, "used 2 more on 70", "went through 2 and a half", "opened another", "1 left": bags, since bags were the talk. */
function bareUse(heard: Heard, memory: Memory): UseBody | null {
  const { log } = heard.commands
  if (heard.has('bag', 'kit', 'box', ...TILE_NOUNS) || heard.facts.rooms !== undefined) return null
  const stuff = stuffOf(heard, memory)
  const corrects = isCorrection(heard, memory)
  const last = memory.job.uses.at(-1)
  const ofBags = last !== undefined && last.stuff !== 'tile'
  const spokenOf = ofBags || memory.talk?.topic === 'mortar' || memory.talk?.topic === 'grout'
  if (log.has('opened') && spokenOf && heard.quantities.length <= 1)
    return { stuff, opened: heard.quantities[0]?.n ?? 1 }
  const [first, ...others] = heard.loose.filter((l) => l.q.dimension === 'none' && l.q.n > 0 && !l.q.negative)
  if (!first || first.q.n > MOST_BAGS) return null
  const bags = first.q.n
  const m2 = areaOf(heard, memory) ?? bareArea(others, bags, memory)
  if (log.has('left') && ofBags && heard.items.length === 1) return { stuff, leftBags: bags }
  // "another 2 on 90", after bags.
  const more = ofBags && m2 !== undefined && heard.has('more-word')
  const told = log.has('used') || more || (corrects && ofBags)
  return told && (m2 !== undefined || (spokenOf && others.length === 0))
    ? { stuff, bags, ...given('m2', m2), ...isTotal(heard) }
    : null
}

/** Nothing of a time of day: "set at 40 past" logs no tiles. */
const isClocked = (heard: Heard): boolean =>
  heard.has('ago') || CLOCK.test(heard.plain.text) || heard.durationsH.length > 0

function tileUses(heard: Heard, memory: Memory, m2: number | undefined): UseBody[] {
  const { log } = heard.commands
  const { facts } = heard
  const named = countOf(heard, ...TILE_NOUNS)
  if (log.has('broke') && !heard.has('bag', 'kit')) {
    const broken = named ?? facts.haveTiles ?? bareCount(heard)
    // "broke another", after a log of tiles.
    const another = heard.quantities.length === 0 && memory.job.uses.at(-1)?.stuff === 'tile'
    if (broken !== null || another || heard.has(...TILE_NOUNS)) return [{ stuff: 'tile', broken: broken ?? 1 }]
  }
  const left = log.has('left')
  const rows = log.has('set-tiles') && !left ? countOf(heard, 'row') : null
  if (rows !== null) return [{ stuff: 'tile', rows, ...isTotal(heard) }]
  if (setsBoxes(heard)) return boxUses(heard, memory)
  if (left) return leftOver(heard, named ?? (memory.job.uses.at(-1)?.stuff === 'tile' ? bareCount(heard) : null))
  const bag = heard.has('bag', 'kit')
  const timed = isClocked(heard) || heard.has('time-word', 'at')
  const last = memory.job.uses.at(-1)
  // "24 more after", after tiles that were set.
  const more = last?.stuff === 'tile' && last.tiles !== undefined && heard.has('more-word') && !bag
  if (more && named === null && !timed && !asksSomething(heard)) {
    const count = bareCount(heard)
    return count === null ? [] : [{ stuff: 'tile', tiles: count }]
  }
  const tiles = named ?? (log.has('set-tiles') && !bag ? bareCount(heard) : null)
  if (
    tiles !== null &&
    log.has('set-tiles') &&
    facts.haveBoxes === undefined &&
    !(named === null ? timed : isClocked(heard))
  )
    return [{ stuff: 'tile', tiles, ...given('m2', facts.usedM2 ?? facts.areaM2), ...isTotal(heard) }]
  // "did 60 sf", of a floor that is known.
  const floor = memory.facts.rooms !== undefined || memory.facts.areaM2 !== undefined
  const did = floor && facts.usedM2 !== undefined && !heard.has('mortar', 'grout', 'sheet', 'roll')
  if (did && !bag && !timed) return [{ stuff: 'tile', m2: facts.usedM2, ...isTotal(heard) }]
  const setArea = m2 !== undefined && facts.areaM2 !== undefined && log.has('set-tiles') && heard.has('set-verb')
  return setArea && !bag && !timed ? [{ stuff: 'tile', m2, ...isTotal(heard) }] : []
}

/** Tiles or boxes on hand, parts of a box too. */
function leftOver(heard: Heard, named: number | null): UseBody[] {
  const { haveBoxes, boxTiles } = heard.facts
  const part = heard.loose.find((l) => l.q.dimension === 'none' && l.nouns.some((n) => n.mark.concept === 'box'))
  const boxes = haveBoxes ?? part?.q.n
  if (boxes !== undefined && (boxTiles === undefined || boxes === haveBoxes))
    return [{ stuff: 'tile', leftBoxes: boxes }]
  return named === null ? [] : [{ stuff: 'tile', leftTiles: named }]
}

/** "set 12 boxes", with nothing told of a time to wait from. */
export const setsBoxes = (heard: Heard): boolean => {
  const { log } = heard.commands
  return log.has('set-tiles') && !log.has('left') && !isClocked(heard) && heard.facts.haveBoxes !== undefined
}

/** Boxes as the tiles, else as the area in them; none where neither is known. */
function boxUses(heard: Heard, memory: Memory): UseBody[] {
  const { facts } = heard
  const boxes = facts.haveBoxes ?? 0
  const perBox = facts.boxTiles ?? memory.facts.boxTiles ?? memory.talk?.facts.boxTiles
  const boxM2 = facts.boxM2 ?? memory.facts.boxM2
  if (perBox !== undefined) return [{ stuff: 'tile', tiles: boxes * perBox, ...isTotal(heard) }]
  return boxM2 === undefined ? [] : [{ stuff: 'tile', m2: boxes * boxM2, ...isTotal(heard) }]
}
