/** What the rest of a floor takes, by the crew's own log. */
import { type Forecast, forecast } from '../../core/forecast.ts'
import { moduleM2 } from '../../core/tile.ts'
import type { Facts } from '../../facts.ts'
import { type Job, logged, type Stuff } from '../../jobs/job.ts'
import { area, count, number, type Phrase, say, word } from '../../phrase.ts'
import { fine, type Outcome } from '../../problem.ts'
import { floorSum } from '../floors.ts'
import { grout } from '../grout.ts'
import { lasting, numberIn, quantitiesOf, quietly, type Values } from '../job/quantities.ts'
import { coverageBasis } from '../mortar-coverage.ts'
import { groutOf, knownTile, packOf, usualJointMm } from '../stuff.ts'
import type { Brief } from '../topic.ts'
import { rowsDone } from './rest-of-floor.ts'

export type Finish = {
  readonly lines: readonly Phrase[]
  readonly answer: Phrase | null
  readonly warnings: readonly Phrase[]
  readonly working: readonly Phrase[]
  readonly values: Values
}

/** What a bag covers by the figures of config, before anything is logged; null where that cannot be told. [m2 a bag] */
export function priorM2(brief: Brief, facts: Facts, stuff: Stuff): number | null {
  const quiet = quietly(brief, lasting(facts))
  if (stuff === 'mortar') {
    const basis = coverageBasis(quiet)
    return basis.ok ? basis.value.coverageM2.usual : null
  }
  if (!knownTile(facts)) return null
  const one = grout(quietly(brief, { ...lasting(facts), rooms: undefined, areaM2: 100 } as unknown as Facts))
  if (!one.ok) return null
  const kg = numberIn(one.value.values ?? null, 'grout_kg')
  const material = groutOf(brief, facts.grout ?? 'sanded')
  if (kg === null || kg <= 0 || !material.ok) return null
  return (packOf(quiet, material.value.grout, []).kg * 100) / kg
}

/** The area that is done: of the stuff itself, else by the tiles that are set. [m2] */
export function doneM2(job: Job, stuff: Stuff, facts: Facts, jointMm: number): number {
  const own = logged(job, stuff).m2
  if (own > 0 || stuff === 'grout') return own
  const tiles = logged(job, 'tile')
  if (tiles.m2 > 0) return tiles.m2
  const tile = knownTile(facts)
  const rows = tile && rowsDone(job, facts, tile, jointMm)
  if (rows) return rows.m2
  return tile && tiles.tiles > 0
    ? tiles.tiles * moduleM2({ shape: 'rectangle', lengthMm: tile.lengthMm, widthMm: tile.widthMm, jointMm })
    : 0
}

/** The forecast for what is left of the floor.
 *  @param told what the message itself says is left or on hand */
export function finishOf(
  brief: Brief,
  job: Job,
  facts: Facts,
  stuff: Stuff,
  told: { readonly leftM2: number | null; readonly haveBags: number | null },
): Outcome<Finish | null> {
  const rules = brief.settings.practice.forecast
  const log = logged(job, stuff)
  const prior = priorM2(brief, facts, stuff)
  const floor = floorSum(lasting(facts))
  const floorM2 = floor.ok ? (floor.value?.areaM2 ?? null) : null
  const counted = doneM2(job, stuff, facts, facts.jointMm ?? usualJointMm(brief))
  const done = floorM2 !== null && counted > floorM2 && isCutWaste(brief, job, stuff, facts) ? floorM2 : counted
  const leftM2 = told.leftM2 ?? (floorM2 === null ? null : Math.max(0, floorM2 - done))
  if (prior === null) return fine(null)
  const stretches =
    log.stretches.length === 0 && log.bags > 0 && log.m2 === 0 && done > 0
      ? [{ packs: log.bags, areaM2: done }]
      : log.stretches
  const worked = forecast(prior, stretches, leftM2 ?? 0, {
    priorLogSd: rules.priorLogSd.value,
    stretchLogSd: rules.stretchLogSd.value,
    readingPacks: rules.readingPacks.value,
  })
  if (!worked.ok) return worked
  const over = floorM2 !== null && done > floorM2 * OVER_SHARE
  const warnings = over ? [say('log.beyond', { done: area(done), floor: area(floorM2) })] : []
  const have = told.haveBags ?? log.leftBags
  const base = { ...(stuff === 'mortar' ? { mortar_coverage_m2_per_bag: worked.value.m2PerPack } : {}) }
  const learns = stretches.length > 0 ? [say('log.rate', { coverage: area(worked.value.m2PerPack) })] : []
  if (leftM2 !== null && leftM2 < NOTHING_M2 && !over)
    return fine({ lines: learns, answer: say('log.all-done'), warnings, working: [], values: base })
  if (leftM2 === null || over) return fine({ lines: learns, answer: null, warnings, working: [], values: base })
  return fine(tellFinish(worked.value, leftM2, have, prior, stuff, { lines: learns, warnings, values: base }))
}

/** Tiles counted by the box that cover more than the floor are its cuts, up to what the floor takes in all. */
function isCutWaste(brief: Brief, job: Job, stuff: Stuff, facts: Facts): boolean {
  const { tiles, m2 } = logged(job, 'tile')
  if (logged(job, stuff).m2 > 0 || m2 > 0) return false
  const takes = numberIn(quantitiesOf(brief, facts), 'tile_count')
  const box = facts.boxTiles ?? 1
  return takes !== null && tiles <= Math.ceil(takes / box) * box
}

/** Less than a hand's breadth of floor. [m2] */
const NOTHING_M2 = 0.01

/** Past the floor by more than a tape is off. */
const OVER_SHARE = 1.02

function tellFinish(
  f: Forecast,
  leftM2: number,
  have: number | null,
  prior: number,
  stuff: Stuff,
  so: Pick<Finish, 'warnings' | 'values'> & { readonly lines: readonly Phrase[] },
): Finish {
  const buy = Math.max(0, Math.ceil(f.packsEven - (have ?? 0) - 1e-9))
  const safe = Math.max(0, Math.ceil(f.packs90 - 1e-9))
  const even = Math.min(safe, Math.max(f.packsEven > 0.05 ? 1 : 0, Math.round(f.packsEven)))
  const args = {
    area: area(leftM2),
    stuff: word(`stuff-${stuff}`),
    even: count(even),
    safe: count(safe),
    need: number(f.packsEven, 1),
    have: number(have ?? 0, 2),
    buy: count(buy),
    safeBuy: count(Math.max(0, Math.ceil(f.packs90 - (have ?? 0) - 1e-9))),
  }
  const verdict = have === null ? 'finish' : have >= f.packs90 ? 'enough' : have >= f.packsEven ? 'tight' : 'not-enough'
  return {
    answer: say(`log.${verdict}`, args),
    lines: have === null ? so.lines : [say('log.odds', args), ...so.lines],
    warnings: so.warnings,
    working: [
      say('log.work', {
        prior: area(prior),
        coverage: area(f.m2PerPack),
        spread: number(f.logSd, 2),
        even: number(f.packsEven, 2),
        safe: number(f.packs90, 2),
      }),
    ],
    values: {
      ...so.values,
      bags_to_finish: f.packsEven,
      bags_to_finish_90: f.packs90,
      bags_to_buy: buy,
    },
  }
}
