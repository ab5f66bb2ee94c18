/** Mortar: bags for a floor, a bag's coverage, and whether what is on hand will finish. */
import { mortarNeed } from '../core/mortar.ts'
import type { Spread } from '../core/spread.ts'
import { remaining } from '../core/stock.ts'
import { area, count, number, type Phrase, percent, say } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { briefsByTiling, byTiling } from './by-tiling.ts'
import { floorSum, roomM2, roomName } from './floors.ts'
import { type Basis, blended, coverageBasis, coverageOf, type Share } from './mortar-coverage.ts'
import { knownTile, packPhrase, tilePhrase, trowelPhrase } from './stuff.ts'
import type { Brief, Told, TopicAnswer } from './topic.ts'

const values = (basis: Basis): Record<string, number> => ({
  mortar_coverage_m2_per_bag: basis.coverageM2.usual,
  mortar_coverage_m2_per_bag_low: basis.coverageM2.low,
  mortar_coverage_m2_per_bag_high: basis.coverageM2.high,
  notch_width_mm: basis.notch.widthMm,
  notch_depth_mm: basis.notch.depthMm,
})

const ownCoverageValues = (c: Spread): Record<string, number> => ({
  mortar_coverage_m2_per_bag: c.usual,
  mortar_coverage_m2_per_bag_low: c.low,
  mortar_coverage_m2_per_bag_high: c.high,
})

const common = (basis: Basis): Pick<Told, 'topic' | 'assumed' | 'warnings' | 'sources' | 'working' | 'offers'> => ({
  topic: 'mortar',
  assumed: basis.assumed,
  warnings: basis.warnings,
  sources: basis.sources,
  working: basis.working,
  offers: ['math', 'keep'],
})

/** On hand against what is left: enough, tight or short, and by how much. */
function midJob(brief: Brief, basis: Basis, leftM2: number, haveBags: number): Outcome<Told> {
  const coverage = coverageOf(brief, basis)
  const rest = remaining(haveBags, leftM2, coverage)
  if (!rest.ok) return rest
  const { verdict, needed, buy, buySafe } = rest.value
  const bags = Math.ceil(needed.usual - 1e-9)
  const own = coverage !== basis.coverageM2
  return fine({
    ...common(basis),
    answer: say(brief.facts.haveBags === undefined ? 'mortar.to-finish' : `mortar.${verdict}`, {
      have: count(haveBags),
      need: number(needed.usual, 1),
      high: number(needed.high, 1),
      area: area(leftM2),
      buy: count(Math.max(1, buy)),
      safe: count(Math.max(1, buySafe)),
    }),
    details: [
      say(own ? 'mortar.own-coverage' : 'mortar.coverage-line', coverageArgs(coverage)),
      ...(verdict === 'enough' || brief.facts.haveBags === undefined
        ? []
        : [say('mortar.reaches', { area: area(rest.value.reachesM2.usual) })]),
    ],
    working: own
      ? [say('mortar.work-left', { area: area(leftM2), coverage: area(coverage.usual), need: number(needed.usual, 2) })]
      : basis.working,
    assumed: own ? [] : basis.assumed,
    values: {
      ...(own ? { mortar_coverage_m2_per_bag: coverage.usual } : values(basis)),
      area_m2: leftM2,
      mortar_bags: bags,
      bags_to_finish: needed.usual,
      bags_to_finish_90: needed.high,
      bags_to_buy: buy,
    },
  })
}

const coverageArgs = (c: Spread): Record<string, ReturnType<typeof area>> => ({
  usual: area(c.usual),
  low: area(c.low),
  high: area(c.high),
})

/** Trowel and tile, of each tiling. */
function withLines(shares: readonly Share[], metric: boolean): Phrase[] {
  return shares.map(({ brief, basis }) => {
    const tile = knownTile(brief.facts)
    const trowel = trowelPhrase(basis.notch)
    return tile ? say('mortar.with', { trowel, tile: tilePhrase(tile, metric) }) : say('mortar.with-trowel', { trowel })
  })
}

/** Bags of each room, where there are several. */
function byRoom(shares: readonly Share[], own: Spread | null, wasteShare: number): Phrase[] {
  const rooms = shares.flatMap(({ brief, basis }) => {
    const waste = own ? 1 : 1 + wasteShare
    const coverage = own ?? basis.coverageM2
    return (brief.facts.rooms ?? []).map((room) => ({ room, bags: (roomM2(room) * waste) / coverage.usual }))
  })
  if (rooms.length < 2) return []
  const list = rooms.map(({ room, bags }) => say('mortar.room', { room: roomName(room), bags: number(bags, 1) }))
  return [say('mortar.by-room', { list })]
}

/** Bags for a whole area. */
function wholeArea(brief: Brief, basis: Basis, areaM2: number, shares: readonly Share[]): Outcome<Told> {
  const { practice } = brief.settings
  const coverage = coverageOf(brief, basis)
  const own = coverage !== basis.coverageM2
  const bedMm = own
    ? {
        low: basis.pack.yieldL / coverage.high,
        usual: basis.pack.yieldL / coverage.usual,
        high: basis.pack.yieldL / coverage.low,
      }
    : basis.bedMm
  const need = mortarNeed(areaM2, bedMm, basis.pack, own ? 0 : practice.mortar.wasteShare.value)
  if (!need.ok) return need
  const { bagsToBuy, bagsSafe, kg, bags } = need.value
  return fine({
    ...common(basis),
    answer: say(bagsSafe > bagsToBuy ? 'mortar.bags-safe' : 'mortar.bags', {
      bags: count(bagsToBuy),
      safe: count(bagsSafe),
      bag: packPhrase(basis.pack),
      area: area(areaM2),
    }),
    details: [
      say(own ? 'mortar.own-coverage' : 'mortar.coverage-line', coverageArgs(coverage)),
      ...withLines(shares, brief.metric),
      ...byRoom(shares, own ? coverage : null, practice.mortar.wasteShare.value),
    ],
    working: [
      ...basis.working,
      say('mortar.work-area', {
        area: number(areaM2, 2),
        bed: number(bedMm.usual, 2),
        litres: number(areaM2 * bedMm.usual, 1),
        waste: percent(own ? 0 : practice.mortar.wasteShare.value * 100),
        bags: number(bags.usual, 2),
      }),
    ],
    values: {
      ...values(basis),
      ...(own ? ownCoverageValues(coverage) : {}),
      area_m2: areaM2,
      mortar_bags: bagsToBuy,
      mortar_bags_low: Math.ceil(bags.low - 1e-9),
      mortar_bags_high: bagsSafe,
      mortar_kg: kg.usual,
      mortar_kg_low: kg.low,
      mortar_kg_high: kg.high,
    },
  })
}

/** Rooms tiled differently take one mortar together where it is the same for all, else each its own. */
export const mortar: TopicAnswer = (brief) => {
  const briefs = brief.facts.leftM2 === undefined ? briefsByTiling(brief) : []
  if (briefs.length < 2) return mortarOver(brief, null)
  const shares: Share[] = []
  for (const one of briefs) {
    const basis = coverageBasis(one)
    if (!basis.ok) return basis
    const floor = floorSum(one.facts)
    if (!floor.ok) return floor
    shares.push({ brief: one, basis: basis.value, areaM2: floor.value?.areaM2 ?? 0 })
  }
  const [first] = shares
  const isOne = shares.every((s) => s.basis.mortar === first.basis.mortar && s.basis.pack.kg === first.basis.pack.kg)
  return isOne ? mortarOver(brief, shares) : byTiling(brief, (one) => mortarOver(one, null))
}

function mortarOver(brief: Brief, rooms: readonly Share[] | null): Outcome<Told> {
  const basis = rooms ? fine(blended(rooms)) : coverageBasis(brief)
  if (!basis.ok) return basis
  const { facts } = brief
  const floor = floorSum(facts)
  if (!floor.ok) return floor
  const leftM2 = facts.leftM2 ?? (facts.haveBags !== undefined ? floor.value?.areaM2 : undefined)
  if (facts.haveBags !== undefined && leftM2 !== undefined) return midJob(brief, basis.value, leftM2, facts.haveBags)
  if (
    leftM2 !== undefined &&
    facts.leftM2 !== undefined &&
    (facts.usedBags !== undefined || facts.coverageM2 !== undefined)
  )
    return midJob(brief, basis.value, leftM2, 0)
  if (
    floor.value !== null &&
    !(
      brief.heard.has('cover') &&
      brief.heard.has('bag') &&
      brief.heard.facts.areaM2 === undefined &&
      brief.heard.facts.rooms === undefined
    )
  )
    return wholeArea(
      brief,
      basis.value,
      floor.value.areaM2,
      rooms ?? [{ brief, basis: basis.value, areaM2: floor.value.areaM2 }],
    )
  if (facts.usedBags !== undefined && facts.usedM2 !== undefined) return ownCoverage(brief, basis.value)
  if (!brief.has('cover', 'per', 'which') && facts.trowel === undefined) return refuse('question', { question: 'area' })
  return fine({
    ...common(basis.value),
    answer: say('mortar.covers', { bag: packPhrase(basis.value.pack), ...coverageArgs(basis.value.coverageM2) }),
    details: [say('mortar.with-trowel', { trowel: trowelPhrase(basis.value.notch) })],
    values: values(basis.value),
  })
}

/** "used 3 bags on 130 sf": what that is a bag. */
function ownCoverage(brief: Brief, basis: Basis): Outcome<Told> {
  const own = coverageOf(brief, basis)
  return fine({
    ...common(basis),
    answer: say('mortar.own-coverage', coverageArgs(own)),
    details: [say('mortar.expected', coverageArgs(basis.coverageM2))],
    values: {
      ...values(basis),
      mortar_coverage_m2_per_bag: own.usual,
      mortar_bags_used: brief.facts.usedBags,
      mortar_area_done_m2: brief.facts.usedM2,
    },
  })
}
