/** What config/around.json holds, as plain types: underlayments, showers, clips, trim, build-up, truck, day and order. */
import type { Spread } from './core/spread.ts'
import type { Notch } from './core/trowel.ts'
import type { Figure } from './settings.ts'

/** A sheet or a roll as it is sold [mm]. */
export type StockSize = { readonly name: string; readonly lengthMm: number; readonly widthMm: number }

export type Underlayment = {
  readonly name: string
  readonly thicknessMm: Spread
  readonly kgPerL: number
  readonly sheets: readonly StockSize[]
  readonly rolls: readonly StockSize[]
  /** What is meant where the crew says neither. */
  readonly usual: 'sheet' | 'roll'
  readonly gapMm: number
  /** Shift of each row of sheets, as a share of the sheet. */
  readonly stagger: number
  readonly lapMm: number
  /** For cuts and laps where only the area is known [%]. */
  readonly allowancePct: number
  readonly kerfMm: number
  readonly taped: boolean
  /** What holds it down: an adhesive or a mortar of config/materials.json, and its trowel. */
  readonly bond: { readonly kind: 'adhesive' | 'mortar'; readonly material: string; readonly trowel: Notch }
  readonly fasteners?: { readonly edgeMm: number; readonly fieldMm: number; readonly insetMm: number }
  /** Mortar that its cavities take, on top of the tile's bed [L/m²]. */
  readonly cavityLPerM2?: Spread
  readonly source: string
}

/** A layer of a floor that is not tile, bed or underlayment. */
export type LayerKind = {
  readonly name: string
  readonly thicknessMm: number
  readonly kgPerL: number
  readonly source: string
}

/** Every figure that config/around.json must hold, by group. */
export const AROUND = {
  bed: ['wetKgPerL', 'leastMm'],
  shower: [
    'slopeMmPerM',
    'steepestMmPerM',
    'atDrainMm',
    'sandParts',
    'mudBagKg',
    'mudBagL',
    'seamLapMm',
    'wallHeightMm',
    'floodDepthMm',
    'floodH',
    'allowancePct',
    'largeTileMm',
  ],
  levelling: ['spacingMm', 'cornerMm', 'singleUnderMm', 'sparePct', 'freeAfterH'],
  trim: ['baseHeightMm', 'kerfMm', 'stockMm', 'sparePct'],
  buildup: ['doorClearMm', 'flangeAboveMm', 'stepUprightMm', 'stepBevelMm', 'bevelRun', 'rampRun', 'codeDeadKpa'],
  truck: ['bagsAPallet', 'palletKg', 'tonguePctLow', 'tonguePctHigh'],
  day: ['hours'],
  order: ['atticPct', 'spongesADay', 'sealantTubeMl', 'softJointMm'],
} as const

export type Around = {
  readonly [G in keyof typeof AROUND]: { readonly [F in (typeof AROUND)[G][number]]: Figure }
} & {
  readonly underlayments: Readonly<Record<string, Underlayment>>
  readonly layers: Readonly<Record<string, LayerKind>>
  readonly profileHeightsMm: readonly number[]
  readonly profileSource: string
}
