/** What a crew lead edits in config/, as plain types: no library is loaded here.
 *  `settings-check.ts` holds the strict checks; the JSON files have exactly these shapes. */
import type { Spread } from './core/spread.ts'
import type { Notch } from './core/trowel.ts'
import type { Caution, Country, LumberBook, RuleBook, Trouble } from './rules/book.ts'
import type { Around } from './settings-around.ts'

export type { Notch, Spread }

/** Where a figure comes from: a published text, a data sheet, "from memory" or "common practice, no source". */
type Sourced = {
  readonly source: string
  /** Sources of single figures, by key, where they differ from `source`. */
  readonly sources?: Readonly<Record<string, string>>
}

/** A bag, pail or kit as it is sold. `yieldL` [l] mixed, where the sheet gives it (light bags); else from kg. */
export type Pack = { readonly name: string; readonly kg: number; readonly yieldL?: number }

/** A wait of the sheet at its reference temperature [h]; `longestH` over an impervious base under large tile. */
export type Wait = { readonly h: number; readonly longestH: number }

/** How it hardens. Only `cement` is lengthened by equivalent age; the others keep to their sheet. */
export type Setting = 'cement' | 'rapid' | 'epoxy' | 'drying'

type Product = Sourced & {
  readonly name: string
  readonly packs: readonly Pack[]
  /** The `name` of the pack that is meant where none is said, for each unit system. */
  readonly usualPack: { readonly imperial: string; readonly metric: string }
  /** The temperature of its waits and lives [C]. */
  readonly referenceC: number
  /** Where the sheet states none, practice.cure.minC holds [C]. */
  readonly minC?: number
  readonly maxC?: number
}

type Mixed = Product & {
  readonly setting: Setting
  /** [l/kg]; null takes no water. */
  readonly waterLPerKg: Spread | null
  readonly slakeMin: Spread | null
  readonly potLifeMin: Spread | null
}

export type Mortar = Mixed & {
  readonly kind: 'mortar'
  readonly wetKgPerL: number
  /** From the sheet; else (1 + water) / wetKgPerL. */
  readonly yieldLPerKg?: number
  readonly openTimeMin: Spread
  readonly minBedMm: number
  readonly maxBedMm: number
  readonly maxTileEdgeMm?: number
  readonly waits: { readonly grout: Wait; readonly walk: Wait; readonly heavy: Wait; readonly water: Wait }
}

export type Grout = Mixed & {
  readonly kind: 'grout'
  readonly type: 'sanded' | 'unsanded' | 'high-performance' | 'epoxy'
  /** Dry powder, or mixed epoxy, in a litre of joint [kg/l]. */
  readonly powderKgPerJointL: Spread
  readonly minJointMm: number
  readonly maxJointMm: number
  readonly wholeKits: boolean
  /** Hours after grouting. */
  readonly waits: { readonly walk: Wait; readonly heavy: Wait; readonly water: Wait }
}

export type Leveller = Mixed & {
  readonly kind: 'leveller'
  readonly wetKgPerL: number
  readonly yieldLPerKg?: number
  readonly minBedMm: number
  readonly maxBedMm: number
  readonly waits: { readonly walk: Wait; readonly tile: Wait }
}

/** Spread with a trowel, not mixed on site. */
export type Adhesive = Product & {
  readonly kind: 'adhesive'
  readonly wetKgPerL: number
  readonly trowel: Notch
  readonly waits: { readonly tile: Wait }
}

/** Rolled or brushed: primers and liquid membranes. */
export type Coating = Product & {
  readonly kind: 'coating'
  readonly wetKgPerL: number
  /** One coat [l/m2]. */
  readonly coatLPerM2: Spread
  readonly coats: number
  readonly recoatH: number
  readonly waits: { readonly tile: Wait; readonly water?: Wait }
}

export type Material = Mortar | Grout | Leveller | Adhesive | Coating
export type Materials = Readonly<Record<string, Material>>

/** A limit or factor: the value to use, its ends where it is a range, and who says so. */
export type Figure = {
  readonly value: number
  readonly low?: number
  readonly high?: number
  readonly source: string
  /** The edition of a standard. */
  readonly edition?: string
  /** True where only a report of the standard was read. */
  readonly reported?: boolean
}

/** Every figure that config/practice.json must hold. A new one is a word here and an entry there. */
export const PRACTICE = {
  tile: [
    'spareStraight',
    'spareOffset',
    'spareDiagonal',
    'spareHerringbone',
    'factorStraight',
    'factorOffset',
    'factorDiagonal',
    'factorHerringbone',
    'hiddenDepthMm',
    'largeEdgeMm',
  ],
  mortar: [
    'minBedMm',
    'thinsetCapMm',
    'largeHeavyCapMm',
    'trowelDeg',
    'skimMm',
    'unevenFactor',
    'wasteShare',
    'backButterEdgeMm',
    'contactDryPct',
    'contactWetPct',
  ],
  grout: ['sandedFromMm', 'coarseFromMm', 'openDepthShare', 'wasteShare', 'minC', 'maxC'],
  mix: ['hotC', 'hotFactor', 'rpm'],
  cure: [
    'referenceC',
    'coldC',
    'minC',
    'freezeC',
    'slowC',
    'activationLowK',
    'activationHighK',
    'freezeHours',
    'nightFromMinute',
    'nightToMinute',
    'roundMinutes',
  ],
  weight: ['liftKg'],
  forecast: ['priorLogSd', 'stretchLogSd', 'readingPacks'],
} as const

export type Practice = {
  readonly [G in keyof typeof PRACTICE]: { readonly [F in (typeof PRACTICE)[G][number]]: Figure }
}

/** A kind of tile as the crew names it. `softFace`: sand may scratch it. */
export type TileKind = Sourced & {
  readonly name: string
  readonly thicknessMm: number
  readonly densityKgPerM3: Spread
  readonly softFace: boolean
}
export type TileKinds = Readonly<Record<string, TileKind>>

/** The trowel for a tile whose longest edge is at most `edgeUpToMm` (null: any), and the mortar that goes with it. */
export type TrowelChoice = {
  readonly edgeUpToMm: number | null
  readonly notch: Notch
  readonly backButter: boolean
  readonly mortar: string
}

export type Defaults = {
  readonly units: 'imperial' | 'metric'
  readonly language: string
  /** IANA name, or null: the machine's or the message's. */
  readonly timeZone: string | null
  /** Whose rules hold where nothing was said; US where absent. */
  readonly country?: Country
  readonly jointMm: { readonly imperial: number; readonly metric: number }
  readonly tileThicknessMm: number
  readonly tileKind: string
  readonly spareShare: number
  readonly grout: { readonly sanded: string; readonly unsanded: string }
  /** Area one setter covers in an hour where the crew's own pace is unknown [m2/h]. */
  readonly paceM2PerH: number
  /** Sizes to offer where a platform completes what is typed, as a crew types them. */
  readonly tileSizes: {
    readonly imperial: readonly string[]
    readonly metric: readonly string[]
    readonly source: string
  }
  readonly trowels: readonly TrowelChoice[]
}

export type Settings = {
  readonly materials: Materials
  readonly practice: Practice
  readonly tiles: TileKinds
  readonly defaults: Defaults
  readonly around: Around
  readonly book: RuleBook
  readonly cautions: readonly Caution[]
  readonly troubles: readonly Trouble[]
  readonly lumber: LumberBook
}

/** The files of config/ that make up the settings, by the key they fill. */
export const SETTINGS_FILES = {
  materials: 'materials.json',
  practice: 'practice.json',
  tiles: 'tiles.json',
  defaults: 'defaults.json',
  around: 'around.json',
  book: 'rules.json',
  cautions: 'cautions.json',
  troubles: 'trouble.json',
  lumber: 'lumber.json',
} as const

/** Joins parsed files that were checked before into settings, without checking again. */
export const settingsFrom = (files: Readonly<Record<string, unknown>>): Settings =>
  ({
    materials: files[SETTINGS_FILES.materials],
    practice: files[SETTINGS_FILES.practice],
    tiles: files[SETTINGS_FILES.tiles],
    defaults: files[SETTINGS_FILES.defaults],
    around: files[SETTINGS_FILES.around],
    book: files[SETTINGS_FILES.book],
    cautions: files[SETTINGS_FILES.cautions],
    troubles: files[SETTINGS_FILES.troubles],
    lumber: files[SETTINGS_FILES.lumber],
  }) as Settings

/** The pack that is meant where the crew named none. */
export const usualPack = (material: Material, units: 'imperial' | 'metric'): Pack =>
  material.packs.find((pack) => pack.name === material.usualPack[units]) ?? material.packs[0]!

/** The material of that kind under that id, or null. */
export const materialOf = <K extends Material['kind']>(
  settings: Settings,
  kind: K,
  id: string,
): Extract<Material, { kind: K }> | null => {
  const found = Object.hasOwn(settings.materials, id) ? settings.materials[id] : undefined
  return found?.kind === kind ? (found as Extract<Material, { kind: K }>) : null
}

/** The first trowel of the table that suits a tile's longest edge [mm]. */
export const trowelFor = (settings: Settings, longestEdgeMm: number): TrowelChoice => {
  const { trowels } = settings.defaults
  const fits = trowels.find((t) => t.edgeUpToMm === null || longestEdgeMm <= t.edgeUpToMm)
  return fits ?? trowels[trowels.length - 1]!
}

/** A figure's ends, the value itself where it has none. */
export const spreadOf = (figure: Figure): Spread => ({
  low: figure.low ?? figure.value,
  usual: figure.value,
  high: figure.high ?? figure.value,
})
