/** From config to what the formulas take: the one place that knows which figure feeds which formula. */
import type { ClockRules } from './core/clock.ts'
import type { CureLimits } from './core/cure.ts'
import type { GroutPowder } from './core/grout.ts'
import type { HotRule, PotLifeInput } from './core/mix.ts'
import { type BedInput, packYieldL } from './core/mortar.ts'
import {
  type Grout,
  type Leveller,
  type Material,
  type Mortar,
  type Notch,
  type Pack,
  type Settings,
  type Spread,
  spreadOf,
} from './settings.ts'

export const PATTERNS = ['straight', 'offset', 'diagonal', 'herringbone'] as const
export type PatternKind = (typeof PATTERNS)[number]

/** Limits of a material's waits: its own least temperature, or practice's where its sheet has none. */
export const cureLimits = ({ practice: { cure } }: Settings, material: Material): CureLimits => ({
  coldC: cure.coldC.value,
  minC: material.minC ?? cure.minC.value,
  maxC: material.maxC ?? null,
  slowC: cure.slowC.value,
  freezeC: cure.freezeC.value,
  freezeHours: cure.freezeHours.value,
  activationLowK: cure.activationLowK.value,
  activationHighK: cure.activationHighK.value,
})

export const clockRules = ({ practice: { cure } }: Settings): ClockRules => ({
  roundMinutes: cure.roundMinutes.value,
  nightFromMinute: cure.nightFromMinute.value,
  nightToMinute: cure.nightToMinute.value,
})

export const hotRule = ({ practice: { mix } }: Settings): HotRule => ({
  hotC: mix.hotC.value,
  hotFactor: mix.hotFactor.value,
})

/** Null where the material has no pot life. */
export const potLifeInput = (settings: Settings, material: Mortar | Grout | Leveller): PotLifeInput | null =>
  material.potLifeMin === null
    ? null
    : {
        sheetMin: material.potLifeMin,
        referenceC: material.referenceC,
        setting: material.setting,
        activationLowK: settings.practice.cure.activationLowK.value,
        activationHighK: settings.practice.cure.activationHighK.value,
        hot: hotRule(settings),
      }

export const bedInput = (
  { practice: { mortar } }: Settings,
  notch: Notch,
  backButter: boolean,
  deepestGapMm: number,
): BedInput => ({
  notch,
  anglesDeg: spreadOf(mortar.trowelDeg),
  skimMm: backButter ? spreadOf(mortar.skimMm) : null,
  deepestGapMm,
  unevenFactor: spreadOf(mortar.unevenFactor),
})

/** A pack with what it makes, as `mortarNeed` takes it. */
export const yielding = (
  material: Mortar | Leveller,
  pack: Pack,
): { readonly kg: number; readonly yieldL: number } => ({
  kg: pack.kg,
  yieldL: packYieldL(pack, material),
})

export const groutPowder = ({ practice }: Settings, material: Grout, pack: Pack): GroutPowder => ({
  powderKgPerJointL: material.powderKgPerJointL,
  bagKg: pack.kg,
  wasteShare: practice.grout.wasteShare.value,
  openDepthShare: practice.grout.openDepthShare.value,
})

/** The cement grout's id for a choice of sanded or unsanded. */
export const groutId = ({ defaults }: Settings, type: 'sanded' | 'unsanded'): string => defaults.grout[type]

/** Spare share and area factor of a pattern. [share, factor] */
export function patternShares(
  { practice: { tile } }: Settings,
  pattern: PatternKind,
): { readonly spare: Spread; readonly factor: Spread } {
  const figures = {
    straight: [tile.spareStraight, tile.factorStraight],
    offset: [tile.spareOffset, tile.factorOffset],
    diagonal: [tile.spareDiagonal, tile.factorDiagonal],
    herringbone: [tile.spareHerringbone, tile.factorHerringbone],
  } as const
  const [spare, factor] = figures[pattern]
  return { spare: spreadOf(spare), factor: spreadOf(factor) }
}
