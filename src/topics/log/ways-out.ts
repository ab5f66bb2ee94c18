/** The ways out when the tile runs short, in the order a crew would try them, each laid and cut anew. */
import { leanStart } from '../../core/layout/lean-start.ts'
import { cutPieces } from '../../core/layout/pieces.ts'
import { type Cost, latestRow } from '../../core/layout/rest.ts'
import { hiddenAt, oppositeSide, type Place } from '../../core/layout/rows.ts'
import { isInRows, type LayoutSpec } from '../../core/layout/spec.ts'
import { USUAL_LEAST_MM } from '../../core/layout/wishes.ts'
import type { ReuseRule } from '../../core/offcuts/reuse.ts'
import type { WallSide } from '../../facts.ts'
import { count, type Phrase, say, small, word } from '../../phrase.ts'
import { optionsOf } from '../plan.ts'
import { tilesForCuts } from '../tiles-for-cuts.ts'
import type { Brief } from '../topic.ts'
import type { ShortRead } from './read-short.ts'
import type { RestOfFloor } from './rest-of-floor.ts'

/** What is short: the tiles on hand, and those the rest takes as the crew cuts now. */
export type Shortage = { readonly have: number; readonly need: number }

const LOOSER: Readonly<Record<ReuseRule, ReuseRule | null>> = {
  'fresh-tile': 'factory-edge',
  'factory-edge': 'any-offcut',
  'any-offcut': null,
}

/** A way that saves something is told by `tell`, one that does not is only named. */
type Way = {
  readonly saves: number
  readonly tell: (n: Phrase) => Phrase
  readonly joint?: 'loose' | 'hidden'
}
type NoWay = { readonly saves: 0; readonly named: Phrase }

const helps = (way: Way | NoWay | null): way is Way => way !== null && way.saves > 0
const named = (way: Way | NoWay | null): Phrase[] => (way !== null && 'named' in way ? [way.named] : [])
const noWay = (key: string, args: Phrase['args'] = {}): NoWay => ({ saves: 0, named: say(key, args) })

export function waysOut(brief: Brief, read: ShortRead, rest: RestOfFloor, shortage: Shortage): Phrase[] {
  const hidden = hiddenPlaces(brief, read, rest)
  const all = [
    keptOffcuts(rest, shortage),
    looser(rest, shortage),
    otherStart(rest, shortage),
    otherLot(rest, shortage, hidden),
  ]
  const ways = all.filter(helps)
  const none = all.flatMap(named)
  return [
    ...ways.map((way, k) => way.tell(say('log.way-number', { n: count(k + 1) }))),
    say('log.way-yard', { n: say('log.way-number', { n: count(ways.length + 1) }) }),
    ...together(rest, shortage, ways, hidden),
    ...(none.length > 0 ? [say('log.no-way', { list: none })] : []),
  ]
}

/** "saves 5, enough" */
function saving(saves: number, { have, need }: Shortage): Phrase {
  return say(saves >= need - have ? 'log.saves-all' : 'log.saves', { saves: count(saves) })
}

/** Until when a way still saves what it can, told as a row; of a weave as what is still to set. */
function until(rest: RestOfFloor, other: Cost, saves: number, { have, need }: Shortage): Phrase {
  const { rows, firstRow } = rest.rest
  const at = latestRow(rows, rest.cost(rest.rule), other, need - Math.min(saves, need - have)) ?? 0
  return rest.order.inRows
    ? say('log.before-row', { row: count(firstRow + at) })
    : say('log.before-left', { n: count(rows.slice(at).flat().length) })
}

/** Off-cuts of what is set, where they were kept: the whole floor planned at once takes less than its two parts. */
function keptOffcuts({ rest, rule, cost }: RestOfFloor, shortage: Shortage): Way | null {
  if (rest.done.length === 0 || rule === 'fresh-tile') return null
  const takes = cost(rule)
  const saves = shortage.need - (takes([rest.done, ...rest.rows]) - takes([rest.done]))
  return saves > 0 ? { saves, tell: (n) => say('log.way-kept', { n, saving: saving(saves, shortage) }) } : null
}

/** Off-cuts by the next looser rule. */
function looser(rest: RestOfFloor, shortage: Shortage): Way | NoWay {
  const rule = LOOSER[rest.rule]
  const other = rule && rest.cost(rule)
  const saves = other ? shortage.need - other(rest.rest.rows) : 0
  if (!other || saves <= 0) return noWay('log.no-way-loose')
  const told = { saving: saving(saves, shortage), until: until(rest, other, saves, shortage) }
  return { saves, joint: 'loose', tell: (n) => say(`log.way-${rule}`, { n, ...told }) }
}

/** Another start line, which only a floor with nothing set can still have. */
function otherStart(rest: RestOfFloor, shortage: Shortage): Way | NoWay | null {
  // A start would have to serve both sizes; and one found by count alone may undo what the crew asked for at a wall.
  const { fullAt = [], hideAt = [] } = rest.facts
  if (rest.room.start.spec.pattern.kind === 'two-size' || fullAt.length + hideAt.length > 0) return null
  if (rest.rest.done.length > 0) return noWay('log.no-way-start-held')
  const { floor, start } = rest.room
  const { tile } = start.spec
  const options = optionsOf(rest.facts)
  const tilesOf = (spec: LayoutSpec, { whole }: { whole: number }): number => {
    const cut = cutPieces(floor, spec)
    const planned = cut.ok ? tilesForCuts(cut.value.cuts, tile, options) : cut
    return planned.ok ? whole + planned.value.stockTiles : Number.POSITIVE_INFINITY
  }
  const least = Math.min(USUAL_LEAST_MM, Math.min(tile.lengthMm, tile.widthMm) / 3)
  const lean = leanStart(floor, start.spec, Math.min(least, start.layout.smallestCutMm ?? least), tilesOf)
  const saves = lean.ok && lean.value ? shortage.need - lean.value.tiles : 0
  if (!lean.ok || !lean.value || saves <= 0) return noWay('log.no-way-start')
  const lines = startLines(rest, lean.value.spec)
  const told = { saving: saving(saves, shortage) }
  return {
    saves,
    tell: (n) => (lines ? say('log.way-start', { n, ...told, ...lines }) : say('log.way-start-turned', { n, ...told })),
  }
}

/** Near edges of the first whole tiles, from the left and from the bottom wall; null where the pattern is turned. */
function startLines({ room: { floor } }: RestOfFloor, spec: LayoutSpec) {
  if (spec.angleDeg !== 0 || !isInRows(spec.pattern)) return null
  const low = (axis: 0 | 1): number => Math.min(...floor.rings.flat().map((p) => p[axis]))
  const line = (axis: 0 | 1, side: number): number => {
    const module = side + spec.jointMm
    const from = spec.originMm[axis] - low(axis)
    return from + Math.ceil((spec.wallGapMm - from) / module - 1e-6) * module
  }
  return { x: small(line(0, spec.tile.lengthMm)), y: small(line(1, spec.tile.widthMm)) }
}

/** Places not yet set that something will stand on or before. */
type Hidden = { readonly side: WallSide; readonly told: boolean; readonly holds: (place: Place) => boolean }

function hiddenPlaces(brief: Brief, read: ShortRead, { room: { floor }, facts, order }: RestOfFloor): Hidden {
  const depthMm = brief.settings.practice.tile.hiddenDepthMm.value
  const told = read.covered === null ? (facts.hideAt ?? []) : [read.covered]
  const sides = told.length > 0 ? told : [oppositeSide(order.from)]
  const tests = sides.map((side) => hiddenAt(floor, side, depthMm))
  return { side: sides[0]!, told: told.length > 0, holds: (place) => tests.some((test) => test(place)) }
}

const withoutHidden =
  (cost: Cost, { holds }: Hidden): Cost =>
  (rows) =>
    cost(rows.map((row) => row.filter((place) => !holds(place))))

/** Tile of another lot where nobody looks. */
function otherLot(rest: RestOfFloor, shortage: Shortage, hidden: Hidden): Way | NoWay | null {
  const pieces = rest.rest.rows.flat().filter(hidden.holds).length
  const side = word(`side-${hidden.side}`)
  if (pieces === 0) return hidden.told ? noWay('log.no-way-hidden-late', { side }) : null
  const other = withoutHidden(rest.cost(rest.rule), hidden)
  const saves = shortage.need - other(rest.rest.rows)
  if (saves <= 0) return noWay('log.no-way-hidden', { side })
  const told = { side, pieces: count(pieces), saving: saving(saves, shortage) }
  const when = until(rest, other, saves, shortage)
  return {
    saves,
    joint: 'hidden',
    tell: (n) => say(hidden.told ? 'log.way-hidden' : 'log.way-hidden-end', { n, ...told, until: when }),
  }
}

/** What off-cuts and the other lot do together, where neither is enough by itself. */
function together(rest: RestOfFloor, shortage: Shortage, ways: readonly Way[], hidden: Hidden): Phrase[] {
  const short = shortage.need - shortage.have
  const loose = LOOSER[rest.rule]
  if (loose === null || ways.some((way) => way.saves >= short)) return []
  if (ways.filter((way) => way.joint && way.saves > 0).length < 2) return []
  const left = withoutHidden(rest.cost(loose), hidden)(rest.rest.rows) - shortage.have
  return [left <= 0 ? say('log.ways-enough') : say('log.ways-short', { short: count(left) })]
}
