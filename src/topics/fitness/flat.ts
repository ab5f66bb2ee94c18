/** Flatness from readings: gaps under a straightedge, heights on a grid, diagonals and 3-4-5 marks. */
import { cautionsFor } from '../../cautions.ts'
import { packYieldL } from '../../core/mortar.ts'
import { type Fill, fillerBags, fillFor, roughFillL } from '../../core/substrate/filler.ts'
import {
  type GridVerdict,
  gridDepthMm,
  gridWidthMm,
  type HeightGrid,
  heightGrid,
  judgeGrid,
} from '../../core/substrate/grid.ts'
import { fromDiagonals, fromMarks, type Squareness, squareAcrossMm } from '../../core/substrate/square.ts'
import { exceeds, type FlatnessLimit, judgeReadings } from '../../core/substrate/straightedge.ts'
import type { SaidSquare } from '../../language/rule-measures.ts'
import { area, count, number, type Phrase, room, say, small, volume } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Rule } from '../../rules/book.ts'
import { findRules } from '../../rules/judge.ts'
import { type Leveller, usualPack } from '../../settings.ts'
import { floorSum } from '../floors.ts'
import { packPhrase } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { countryOf, sourceOfRule } from './rule.ts'

type Limit = { readonly rule: Rule; readonly limit: FlatnessLimit; readonly assumed: Phrase[] }

const mm = (rule: Rule, name: string): number | undefined => {
  const amount = rule.amounts?.[name]
  return amount && 'mm' in amount ? amount.mm : undefined
}

/** The limit for the tile that is known; for the stricter class where none is, and that is said. */
export function flatnessLimit(brief: Brief): Limit {
  const { figures, size, conditions } = brief.heard.rules
  const { practice, book } = brief.settings
  const large = practice.tile.largeEdgeMm.value
  const known = figures.tileMm?.[0] ?? brief.facts.tile?.lengthMm
  const edge = known && known > 0 ? known : size === 'small' ? large / 2 : large
  const surface = conditions['surface']?.includes('wall') ? ['wall'] : ['floor']
  const found = findRules(book.rules, 'flatness', { edge, surface }, countryOf(brief))
  const rule = found.holding[0]!
  const [shortMm, shortEdgeMm] = [mm(rule, 'short'), mm(rule, 'shortedge')]
  return {
    rule,
    limit: {
      longMm: rule.limit!.value,
      longEdgeMm: mm(rule, 'long')!,
      ...(shortMm !== undefined && shortEdgeMm !== undefined ? { shortMm, shortEdgeMm } : {}),
    },
    assumed: known || size || rule.when?.edge === undefined ? [] : [say('flat.assumed-large', { edge: small(large) })],
  }
}

/** "gaps 1/16 3/32 1/8 under a 10ft edge" */
export function gapsTold(brief: Brief): Outcome<Told> {
  const { measures, figures } = brief.heard.rules
  const { rule, limit, assumed } = flatnessLimit(brief)
  const edgeMm = figures.edgeMm ?? figures.gap?.edgeMm ?? limit.longEdgeMm
  const judged = judgeReadings(measures.gapsMm, edgeMm, limit)
  if (!judged.ok) return judged
  const { maxGapMm, limitMm, limitEdgeMm, verdict, over } = judged.value
  const floor = floorSum(brief.facts)
  const fill = floor.ok && floor.value && verdict === 'fail' ? roughFillL(floor.value.areaM2, maxGapMm) : null
  const key = { pass: 'yes', fail: 'no', unknown: 'depends' }[verdict]
  return fine({
    topic: 'substrate',
    answer: say(`gaps.${key}`, { gap: small(maxGapMm), limit: small(limitMm), edge: room(limitEdgeMm) }),
    details: [
      ...(over.length > 0 ? [say('gaps.over', { n: count(over.length), all: count(measures.gapsMm.length) })] : []),
      ...(fill && floor.ok && floor.value
        ? [say('gaps.fill', { low: volume(fill.lowL), high: volume(fill.highL), area: area(floor.value.areaM2) })]
        : []),
    ],
    assumed,
    sources: [sourceOfRule(brief.settings.book, rule)],
    values: {
      max_gap_mm: maxGapMm,
      max_variation_mm: limit.longMm,
      ...(fill ? { fill_l: fill.highL, fill_l_low: fill.lowL, fill_l_high: fill.highL } : {}),
    },
  })
}

/** Rows of heights with a spacing. */
export function heightsTold(brief: Brief): Outcome<Told> {
  const said = brief.heard.rules.measures.grid!
  if (said.stepMm === null) return refuse('question', { question: 'grid-step' })
  const grid = heightGrid(said.heightsMm, said.stepMm)
  if (!grid.ok) return grid
  const flat = flatnessLimit(brief)
  const verdict = judgeGrid(grid.value, flat.limit)
  return fine(tellHeights(brief, grid.value, verdict, fillFor(grid.value, flat.limit.longMm), flat))
}

function tellHeights(brief: Brief, grid: HeightGrid, judged: GridVerdict, fill: Fill, flat: Limit): Told {
  const { limit, rule, assumed } = flat
  const shortFails = judged.short !== null && exceeds(judged.short.gapMm, limit.shortMm!)
  const worst = exceeds(judged.long.gapMm, limit.longMm) || !shortFails ? judged.long : judged.short!
  const short = worst !== judged.long
  const key = judged.verdict === 'pass' ? 'yes' : short ? 'no-short' : 'no'
  const leveller = levellerOf(brief)
  const bags = fillerBags(fill.intoLimitL, leveller.yieldL)
  const safety = fill.grind ? cautionsFor(brief.settings.cautions, ['silica'], 'substrate', asker(brief)) : null
  const span = Math.hypot(gridWidthMm(grid), gridDepthMm(grid))
  return {
    topic: 'substrate',
    answer: say(`grid.${key}`, {
      gap: small(worst.gapMm),
      edge: room(short ? limit.shortEdgeMm! : Math.min(limit.longEdgeMm, span)),
      limit: small(short ? limit.shortMm! : limit.longMm),
      x: room(worst.xMm),
      y: room(worst.yMm),
      long: small(judged.long.gapMm),
    }),
    details: [
      ...(judged.verdict === 'fail' ? [say(`grid.shape-${worst.shape}`)] : []),
      fill.intoLimitL < 0.05
        ? say('grid.no-fill', { level: volume(fill.levelL) })
        : say('grid.fill', {
            into: volume(fill.intoLimitL),
            bags: count(bags.ok ? bags.value : 0),
            level: volume(fill.levelL),
          }),
      ...(fill.grind
        ? [
            say('grid.grind', {
              area: area(fill.grind.areaM2),
              depth: small(fill.grind.depthMm),
              fill: volume(fill.grind.fillL),
            }),
          ]
        : []),
      ...(fill.intoLimitL < 0.05 ? [] : [say('grid.primer')]),
    ],
    assumed: [
      ...assumed,
      ...(span < limit.longEdgeMm ? [say('grid.short-floor', { edge: room(span) })] : []),
      ...(fill.intoLimitL < 0.05 ? [] : [leveller.note]),
    ],
    warnings: safety?.warnings ?? [],
    sources: [sourceOfRule(brief.settings.book, rule)],
    working: [
      say('grid.work', {
        rows: count(grid.heightsMm.length),
        columns: count(grid.heightsMm[0]!.length),
        step: room(grid.stepXMm),
      }),
    ],
    values: {
      max_gap_mm: judged.long.gapMm,
      max_variation_mm: limit.longMm,
      fill_l: fill.intoLimitL,
      fill_level_l: fill.levelL,
      area_m2: fill.areaM2,
      ...(bags.ok ? { leveller_bags: bags.value } : {}),
    },
    ...(safety ? { entries: safety.entries } : {}),
  }
}

const asker = (brief: Brief) => ({ ...brief, people: brief.memory.people })

function levellerOf(brief: Brief): { readonly yieldL: number; readonly note: Phrase } {
  const found = Object.values(brief.settings.materials).find((m): m is Leveller => m.kind === 'leveller')!
  const pack = usualPack(found, brief.metric ? 'metric' : 'imperial')
  const yieldL = packYieldL(pack, found)
  return { yieldL, note: say('grid.assumed-yield', { yield: volume(yieldL), bag: packPhrase(pack) }) }
}

/** Diagonals with the room's sides, or 3-4-5 marks. */
export function squareTold(brief: Brief): Outcome<Told> {
  const said = brief.heard.rules.measures.square as SaidSquare
  if (said.is === 'marks') {
    const judged = fromMarks(said.aMm, said.bMm, said.acrossMm)
    if (!judged.ok) return judged
    const across = say('square.marks', { across: room(squareAcrossMm(said.aMm, said.bMm)) })
    return fine(tellSquare(judged.value, said.bMm, [across], []))
  }
  const sides = said.mm.length >= 4 ? said.mm.slice(2, 4) : sidesOf(brief)
  if (sides.length < 2) return refuse('question', { question: 'square-sides' })
  const [a, b] = sides as [number, number]
  const judged = fromDiagonals(a, b, said.mm[0]!, said.mm[1]!)
  return judged.ok ? fine(tellSquare(judged.value, b, [], [say('square.opposite')])) : judged
}

function sidesOf({ heard, facts }: Brief): number[] {
  const piece = (heard.facts.rooms ?? facts.rooms)?.[0]?.pieces[0]
  return piece ? [piece.lengthMm, piece.widthMm] : []
}

const SQUARE_MM = 3

function tellSquare(squareness: Squareness, runMm: number, details: Phrase[], assumed: Phrase[]): Told {
  return {
    topic: 'substrate',
    answer: say(squareness.taperMm <= SQUARE_MM ? 'square.square' : 'square.off', {
      off: number(Math.abs(squareness.offDeg), 2),
      taper: small(squareness.taperMm),
      run: room(runMm),
    }),
    details,
    assumed,
    sources: [{ text: 'geometry' }],
    values: { out_of_square_deg: squareness.offDeg, taper_mm: squareness.taperMm },
  }
}
