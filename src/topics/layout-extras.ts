/** What a layout says beside its lines: the pattern, nominal against measured tile, a joint that loses slivers, pole and cuts. */
import { leastJoint } from '../core/joints.ts'
import { compareSizes, offsetWarning, oftenMeasures, type SizeCompared } from '../core/layout/compare.ts'
import { jointWithoutSliver, storyPole } from '../core/layout/lines.ts'
import { weaveMismatch } from '../core/layout/patterns.ts'
import { type CutGroup, cutList, cutPieces } from '../core/layout/pieces.ts'
import { NO_WISHES } from '../core/layout/wishes.ts'
import type { Facts, Tile } from '../facts.ts'
import { count, type Phrase, percent, room as roomLength, say, small, word } from '../phrase.ts'
import { roomName, roomPhrase } from './floors.ts'
import { type LaidFloor, type LaidRoom, tiledFloor } from './plan.ts'
import { thicknessOf, tilePhrase } from './stuff.ts'
import type { Brief, Table } from './topic.ts'

/** A mismatch that a joint does not swallow. [mm] */
const TOLD_MISMATCH_MM = 0.5

/** Which way the rows step, how planks fall, what a weave leaves open. */
export function patternLines(facts: Facts, known: Tile, jointMm: number, laid: LaidFloor): Phrase[] {
  const { pattern, angleDeg } = laid.rooms[0].start.spec
  const lines: Phrase[] = []
  if (pattern.kind === 'offset') {
    const { offset } = facts.pattern ?? {}
    const [over, under] = offset ?? [1, 2]
    const side = facts.pattern?.along === 'width' ? known.widthMm : known.lengthMm
    const step = pattern.step === 'stair' ? 'stair' : 'back'
    lines.push(
      say(`layout.offset-${step}`, {
        step: small(((side + jointMm) * over) / under),
        share: percent((100 * over) / under),
      }),
    )
  }
  if (pattern.kind === 'hexagon') lines.push(say('layout.hexagon'))
  if (laid.bySize) {
    const [large, few] = laid.bySize
    const inset = small(few.tile.lengthMm)
    lines.push(
      say('layout.two-sizes', {
        large: count(large.tiles),
        small: count(few.tiles),
        side: inset,
      }),
    )
  }
  if (pattern.kind === 'random') lines.push(say('layout.random'))
  const woven = pattern.kind === 'herringbone' || pattern.kind === 'basketweave'
  const mismatchMm = woven ? weaveMismatch(known.lengthMm, known.widthMm, jointMm) : 0
  if (Math.abs(mismatchMm) > TOLD_MISMATCH_MM)
    lines.push(
      say(mismatchMm > 0 ? 'layout.mismatch-long' : 'layout.mismatch-short', { mismatch: small(Math.abs(mismatchMm)) }),
    )
  if (angleDeg !== 0 && angleDeg !== 90)
    lines.push(say('layout.angle', { angle: { is: 'number', n: angleDeg, digits: 1 } }))
  return lines
}

/** A long tile offset by more than a third. */
export function offsetWarnings(laid: LaidFloor | null): Phrase[] {
  const over = laid ? offsetWarning(laid.rooms[0].start.spec) : null
  return over
    ? [
        say('tile.offset-long', {
          side: small(over.sideMm),
          offset: percent(over.offsetPct),
          limit: percent(over.limitPct),
        }),
      ]
    : []
}

const isWholeInches = (mm: number): boolean => Math.abs(mm / 25.4 - Math.round(mm / 25.4)) < 1e-6

/** Told in whole inches and never measured: the tile in the box is likely smaller. */
const isNominal = (facts: Facts, tile: Tile): boolean =>
  facts.measuredMm === undefined &&
  facts.pattern?.name !== 'two-size' &&
  !tile.rectified &&
  isWholeInches(tile.lengthMm) &&
  isWholeInches(tile.widthMm)

/** Each room laid with the tile as such tile often measures: what changes, and the wish for a measured one. */
export function nominalLines(facts: Facts, known: Tile, laid: LaidFloor, metric: boolean): Phrase[] {
  if (!isNominal(facts, known)) return []
  const changed = laid.rooms.flatMap((room) => {
    const compared = comparedOf(facts, room)
    return compared?.matters ? [{ room, compared }] : []
  })
  const measured = { ...known, lengthMm: oftenMeasures(known.lengthMm), widthMm: oftenMeasures(known.widthMm) }
  const tile =
    known.shape === 'hexagon'
      ? say('layout.measured-across', { across: small(measured.widthMm) })
      : say('layout.measured-size', { width: small(measured.widthMm), length: small(measured.lengthMm) })
  if (changed.length === 0) return []
  const nominal =
    known.shape === 'hexagon' ? say('tile.one-hexagon', { across: small(known.widthMm) }) : tilePhrase(known, metric)
  const told = changed.map(({ room, compared }) => ({
    same: !compared.cellsChange,
    args: {
      tile,
      nominal,
      before: count(compared.nominal.layout.cells),
      cells: count(compared.actual.layout.cells),
      cut: small(compared.actual.layout.smallestCutMm ?? 0),
      room: roomName(room.room),
    },
  }))
  if (laid.rooms.length === 1)
    return told.map(({ same, args }) => say(same ? 'layout.nominal-same' : 'layout.nominal', args))
  const rooms = told.map(({ same, args }) => say(same ? 'layout.nominal-in-same' : 'layout.nominal-in', args))
  return [say('layout.nominal-rooms', { tile, nominal, rooms })]
}

function comparedOf(facts: Facts, { floor, start: { spec } }: LaidRoom): SizeCompared | null {
  const actual = { lengthMm: oftenMeasures(spec.tile.lengthMm), widthMm: oftenMeasures(spec.tile.widthMm) }
  const wishes = { ...NO_WISHES, fullAt: facts.fullAt ?? [], hideAt: facts.hideAt ?? [] }
  const compared = compareSizes(floor, spec, actual, wishes)
  return compared.ok ? compared.value : null
}

/** Which way the tile runs, where the crew asked. */
export function wayLines(facts: Facts, known: Tile, { start }: LaidRoom): Phrase[] {
  if (!facts.anyWay) return []
  if (Math.abs(known.lengthMm - known.widthMm) < 1) return [say('layout.way-square')]
  const { tile, angleDeg } = start.spec
  const across = tile.lengthMm > tile.widthMm === (angleDeg % 180 === 0)
  return [say(across ? 'layout.way-across' : 'layout.way-up')]
}

/** Walls that were to have whole tiles and do not, because a sliver would come out elsewhere. */
export function wishesNotKept(facts: Facts, { start }: LaidRoom): Phrase[] {
  const { spec, firstLines, promises } = start
  return (facts.fullAt ?? []).flatMap((side) => {
    const along = side === 'left' || side === 'right' ? 'x' : 'y'
    const line = firstLines.find((l) => l.along === along)
    const promise = promises.find((p) => p.along === along)
    if (!line || !promise) return []
    const module = promise.tileMm + spec.jointMm
    const low = side === 'left' || side === 'bottom'
    const off = low
      ? line.fromLowMm - spec.wallGapMm
      : (line.fromHighMm - spec.wallGapMm - promise.tileMm + module * 1000) % module
    const kept = Math.min(Math.abs(off), Math.abs(module - off)) < 1
    return kept ? [] : [say('layout.not-full', { side: word(`side-${side}`) })]
  })
}

export type Sliver = { readonly jointMm: number; readonly lines: readonly Phrase[] }

/** The joint at which whole tiles fill a direction, where a sliver is left or the crew asks to lose it. */
export function sliverJoint(brief: Brief, known: Tile, jointMm: number, laid: LaidFloor): Sliver | null {
  const [first] = laid.rooms
  if (!first || laid.rooms.length > 1) return null
  const { spec, promises } = first.start
  const straight = spec.pattern.kind === 'stacked' && spec.angleDeg % 90 === 0
  if (!straight || first.floor.rings.length !== 1 || first.floor.rings[0].length !== 4) return null
  const least = leastJoint({
    variationMm: 0,
    edgeWarpMm: 0,
    facing: known.rectified ? 'rectified' : 'unknown',
    longestEdgeMm: known.lengthMm,
    runningBond: false,
  })
  const mostMm = thicknessOf(brief, known, [])
  for (const promise of promises) {
    const cut = promise.worstMm < promise.tileMm - 0.5
    if (!cut || (!brief.has('sliver-word') && promise.leastKept)) continue
    const soft = 2 * spec.wallGapMm
    const fit = jointWithoutSliver(
      promise.spanMm,
      soft,
      promise.tileMm,
      jointMm,
      least.ok ? least.value.jointMm : 1.5,
      mostMm,
    )
    if (fit)
      return {
        jointMm: fit.jointMm,
        lines: [
          say(promise.along === 'x' ? 'layout.sliver-x' : 'layout.sliver-y', {
            joint: small(fit.jointMm),
            tiles: count(fit.tiles),
            span: roomLength(promise.spanMm),
          }),
        ],
      }
  }
  return brief.has('sliver-word') ? { jointMm, lines: [say('layout.no-sliver-joint')] } : null
}

const MOST_MARKS = 200
const MARKS_SHOWN = 24

type Pole = { readonly along: 'x' | 'y'; readonly marks: readonly number[] }

/** Marks of a pole from a wall: the far edge of each piece, from the cut at that wall to the other. [mm] */
function poles({ start }: LaidRoom, jointMm: number): Pole[] {
  return start.firstLines.flatMap((line): Pole[] => {
    const promise = start.promises.find((p) => p.along === line.along)
    if (!promise) return []
    const { tileMm, spanMm } = promise
    const cutMm = line.fromLowMm - jointMm
    // A first line at the gap is the near edge of a whole tile: the first mark is its far edge.
    const firstMm = cutMm > start.spec.wallGapMm + 1 ? cutMm : line.fromLowMm + tileMm
    const wanted = Math.min(MOST_MARKS, Math.max(1, Math.floor((spanMm - firstMm) / (tileMm + jointMm)) + 1))
    const pole = storyPole(firstMm, tileMm, jointMm, wanted)
    return pole.ok ? [{ along: line.along, marks: pole.value.map((m) => m.exactMm) }] : []
  })
}

/** A story pole for each direction of the first room, every mark computed from zero. */
export function poleLines(room: LaidRoom, jointMm: number): Phrase[] {
  const found = poles(room, jointMm)
  if (found.length === 0) return [say('layout.no-pole')]
  return found.map(({ along, marks }) =>
    say(along === 'x' ? 'layout.pole-x' : 'layout.pole-y', { marks: marks.slice(0, MARKS_SHOWN).map(small) }),
  )
}

export function poleTable(room: LaidRoom, jointMm: number): Table {
  const rows = poles(room, jointMm).flatMap(({ along, marks }) =>
    marks.map((mm, k) => [word(along === 'x' ? 'pole-x' : 'pole-y'), k + 1, small(mm)]),
  )
  return { name: 'story-pole.csv', head: [say('table.direction'), say('table.mark'), say('table.distance')], rows }
}

const CUTS_SHOWN = 10
/** Sizes that read alike on the tape are one line. [mm] */
const READ_MM = 25.4 / 16

/** Groups of the cut list by size alone, whichever edges they keep. */
export function bySize(groups: readonly CutGroup[]): CutGroup[] {
  const merged = new Map<string, CutGroup>()
  for (const g of groups) {
    const key = `${Math.round(g.lengthMm / READ_MM)} ${Math.round(g.widthMm / READ_MM)} ${g.rectangle}`
    const known = merged.get(key)
    merged.set(key, known ? { ...known, count: known.count + g.count } : g)
  }
  return [...merged.values()]
}

/** The cut list in the reply: the largest pieces first. */
export function cutLines(laid: LaidFloor): Phrase[] {
  const groups = laid.rooms.flatMap((r) => {
    const cuts = cutPieces(tiledFloor(r), r.start.spec)
    return cuts.ok ? bySize(cutList(cuts.value.cuts)).map((g) => ({ ...g, count: g.count * r.room.count })) : []
  })
  const shown = groups.slice(0, CUTS_SHOWN).map((g) =>
    say(g.rectangle ? 'layout.cut-row' : 'layout.cut-row-shaped', {
      count: count(g.count),
      length: small(g.lengthMm),
      width: small(g.widthMm),
    }),
  )
  const rest = groups.length - shown.length
  return [...shown, ...(rest > 0 ? [say('layout.cut-rest', { rest: count(rest) })] : [])]
}

const LEFT_SHOWN = 6

/** What is left over of the tiles that were cut. */
export function leftLines(laid: LaidFloor): Phrase[] {
  const { leftOver } = laid.reuse
  if (leftOver.length === 0) return [say('layout.left-none')]
  return [
    say('layout.left', {
      pieces: leftOver
        .slice(0, LEFT_SHOWN)
        .map((l) => say('layout.left-row', { count: count(l.qty), length: small(l.wMm), width: small(l.hMm) })),
    }),
  ]
}

/** The cut list: sizes and how many of each, the largest first. */
export function cutTable(laid: LaidFloor): Table {
  const rows = laid.rooms.flatMap((r) => {
    const cuts = cutPieces(tiledFloor(r), r.start.spec)
    return cuts.ok
      ? bySize(cutList(cuts.value.cuts)).map((g) => [
          roomPhrase(r.room),
          small(g.lengthMm),
          small(g.widthMm),
          word(g.rectangle ? 'piece-rectangle' : 'piece-shaped'),
          count(g.count * r.room.count),
        ])
      : []
  })
  const head = [say('table.room'), say('table.length'), say('table.width'), say('table.shape'), say('table.count')]
  return { name: 'cut-list.csv', head, rows }
}
