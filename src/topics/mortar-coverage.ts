/** The bed that trowel, skim and floor make, and what a bag covers at it, also over rooms tiled differently. */
import { type BedParts, bedParts, bedWarnings, mortarNeed, packYieldL } from '../core/mortar.ts'
import { exactly, type Spread } from '../core/spread.ts'
import { coverageFromUse } from '../core/stock.ts'
import type { Trowel } from '../facts.ts'
import { area, number, type Phrase, say, small } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import { type Mortar, type Pack, spreadOf } from '../settings.ts'
import { knownTile, mortarOf, packOf, packPhrase, trowelOf, trowelPhrase } from './stuff.ts'
import { type Brief, type Source, sourceOf } from './topic.ts'

/** A room's share: its floor at its own tile's bed. */
export type Share = { readonly brief: Brief; readonly basis: Basis; readonly areaM2: number }

export type Basis = {
  readonly mortar: Mortar
  readonly pack: Pack & { readonly yieldL: number }
  readonly notch: Trowel
  readonly backButter: boolean
  readonly bedMm: Spread
  readonly coverageM2: Spread
  readonly assumed: Phrase[]
  readonly warnings: Phrase[]
  readonly working: Phrase[]
  readonly sources: Source[]
}

/** A bed is told to a thirty-second of an inch; one that differs from its limit by less is at the limit. [mm] */
const readsAlike = (aMm: number, bMm: number): boolean => Math.round(aMm / TOLD_MM) === Math.round(bMm / TOLD_MM)
const TOLD_MM = 25.4 / 32

/** The bed, and what a bag covers at it. */
export function coverageBasis(brief: Brief): Outcome<Basis> {
  const { practice } = brief.settings
  const assumed: Phrase[] = []
  const tile = knownTile(brief.facts)
  const { notch, backButter } = trowelOf(brief, tile, assumed)
  const meant = mortarOf(brief, tile)
  if (!meant.ok) return meant
  const { mortar } = meant.value
  const pack = packOf(brief, mortar, assumed)
  const withYield = { ...pack, yieldL: packYieldL(pack, mortar) }
  const deepestGapMm = brief.facts.outOfFlatMm ?? 0
  const bed = bedParts({
    notch,
    anglesDeg: spreadOf(practice.mortar.trowelDeg),
    skimMm: backButter ? spreadOf(practice.mortar.skimMm) : null,
    deepestGapMm,
    unevenFactor: spreadOf(practice.mortar.unevenFactor),
  })
  if (!bed.ok) return bed
  const need = mortarNeed(1, bed.value.bedMm, withYield, practice.mortar.wasteShare.value)
  if (!need.ok) return need
  const leastMm = Math.max(practice.mortar.minBedMm.value, mortar.minBedMm)
  const warnings = bedWarnings(bed.value, deepestGapMm, leastMm, mortar.maxBedMm).flatMap((w) => {
    const limitMm = w.code === 'bed-thin' ? w.leastMm : w.mostMm
    if (readsAlike(w.bedMm, limitMm)) return []
    return w.code === 'bed-thin'
      ? [say('mortar.bed-thin', { bed: small(w.bedMm), least: small(limitMm) })]
      : [say('mortar.bed-thick', { bed: small(w.bedMm), most: small(limitMm) })]
  })
  return fine({
    mortar,
    pack: withYield,
    notch,
    backButter,
    bedMm: bed.value.bedMm,
    coverageM2: need.value.coverageM2PerBag,
    assumed,
    warnings,
    working: workingOf(
      { notch, backButter, pack: withYield },
      bed.value,
      deepestGapMm,
      need.value.coverageM2PerBag.usual,
    ),
    sources: [sourceOf(practice.mortar.minBedMm), { text: mortar.source }],
  })
}

/** The bed's parts and what a bag covers, in figures. */
function workingOf(
  { notch, backButter, pack }: Trowelled,
  bed: BedParts,
  deepestGapMm: number,
  coverageM2: number,
): Phrase[] {
  return [
    say('mortar.work-notch', {
      width: small(notch.widthMm),
      depth: small(notch.depthMm),
      space: small(notch.spaceMm),
      low: number(bed.combedMm.low, 2),
      usual: number(bed.combedMm.usual, 2),
      high: number(bed.combedMm.high, 2),
    }),
    ...(backButter
      ? [say('mortar.work-skim', { usual: number(bed.skimMm.usual, 1), high: number(bed.skimMm.high, 1) })]
      : []),
    ...(deepestGapMm > 0
      ? [say('mortar.work-uneven', { gap: small(deepestGapMm), usual: number(bed.unevenMm.usual, 1) })]
      : []),
    say('mortar.work-yield', {
      bag: packPhrase(pack),
      litres: number(pack.yieldL, 1),
      bed: number(bed.bedMm.usual, 2),
      m2: number(coverageM2, 2),
      coverage: area(coverageM2),
    }),
  ]
}

type Trowelled = Pick<Basis, 'notch' | 'backButter' | 'pack'>

const sum = (of: readonly number[]): number => of.reduce((a, b) => a + b, 0)

/** What each end of a spread comes to over rooms, in proportion to their floors. */
const overRooms = (
  shares: readonly Share[],
  of: (basis: Basis) => Spread,
  join: (parts: readonly [number, number][]) => number,
): Spread => {
  const at = (end: keyof Spread): number => join(shares.map((s) => [s.areaM2, of(s.basis)[end]]))
  return { low: at('low'), usual: at('usual'), high: at('high') }
}

/** The bed and coverage of rooms tiled differently with one mortar: beds by area, coverage by what the rooms take together. */
export function blended(shares: readonly Share[]): Basis {
  const [first] = shares.map((share) => share.basis)
  const m2 = sum(shares.map((share) => share.areaM2))
  const gather = <K extends 'assumed' | 'warnings' | 'working' | 'sources'>(key: K): Basis[K] =>
    shares.flatMap((share) => share.basis[key] as readonly unknown[]) as Basis[K]
  return {
    ...first,
    bedMm: overRooms(
      shares,
      (b) => b.bedMm,
      (parts) => sum(parts.map(([area, mm]) => area * mm)) / m2,
    ),
    coverageM2: overRooms(
      shares,
      (b) => b.coverageM2,
      (parts) => m2 / sum(parts.map(([area, each]) => area / each)),
    ),
    assumed: gather('assumed'),
    warnings: gather('warnings'),
    working: gather('working'),
    sources: gather('sources'),
  }
}

/** The crew's own coverage where they gave one, else the notch's. */
export function coverageOf(brief: Brief, basis: Basis): Spread {
  const { usedBags, usedM2, coverageM2 } = brief.facts
  if (coverageM2 !== undefined && coverageM2 > 0) return exactly(coverageM2)
  if (usedBags !== undefined && usedM2 !== undefined) {
    const own = coverageFromUse(usedBags, usedM2)
    if (own.ok) return exactly(own.value)
  }
  return basis.coverageM2
}

/** The bed that trowel and skim make together, as litres of mortar a square metre (mm). */
export function bedFor(brief: Brief, assumed: Phrase[]): Outcome<number> {
  const basis = coverageBasis(brief)
  if (!basis.ok) return basis
  assumed.push(say('mortar.with-trowel', { trowel: trowelPhrase(basis.value.notch) }))
  return fine(basis.value.bedMm.usual)
}
