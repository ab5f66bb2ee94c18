/** What a crew can tell us about a job, in SI. Every field is optional: what is not said is not there. */
import type { Problem } from './problem.ts'

export type WallSide = 'left' | 'right' | 'bottom' | 'top'

export type Place = {
  /** Distances from real walls to the nearer edge of the piece, where they were said. */
  readonly fromLeftMm?: number
  readonly fromRightMm?: number
  readonly fromTopMm?: number
  readonly fromBottomMm?: number
  readonly corner?: 'top-left' | 'top-right' | 'bottom-left' | 'bottom-right'
  readonly side?: 'top' | 'bottom' | 'left' | 'right'
  readonly centred?: boolean
  /** The distances go to the piece's own centre. */
  readonly toCentre?: true
}

/** `round` is a circle or an oval, `arc` a half circle or less of one on its chord; lengthMm is then the width along the wall,
 *  widthMm the depth from it. `rounded-corner` is what a corner rounded off loses, `cut-corner` what one cut off
 *  straight loses. */
export type CurveName = 'round' | 'arc' | 'quarter' | 'rounded-corner' | 'cut-corner'

/** A rectangle, or a curve by its box, that adds to a room (sign 1) or is left out of it (sign -1). */
export type Piece = {
  readonly sign: 1 | -1
  readonly lengthMm: number
  readonly widthMm: number
  readonly name?: string
  /** What is left out: a thing that stands on the floor, or a bite out of the outline. */
  readonly kind?: 'island' | 'bite'
  readonly curve?: CurveName
  /** The k-th of n alike, from 0, where several were told at once. */
  readonly nth?: readonly [k: number, n: number]
  /** Added outside a wall of the room: a bay, an alcove, a closet. */
  readonly outside?: true
  /** Which of the two sides of a piece outside was said to be its depth. */
  readonly deep?: 'length' | 'width'
  readonly place?: Place
}

export type Way = 'right' | 'up' | 'left' | 'down'
/** An outline as it was told, lengths in mm. */
export type Outline =
  | { readonly told: 'corners' }
  | { readonly told: 'walk'; readonly steps: readonly { readonly toward: Way; readonly lengthMm: number }[] }
  | {
      readonly told: 'turns'
      readonly steps: readonly { readonly lengthMm: number; readonly thenTurn: 'left' | 'right' }[]
    }
  /** Four walls one after the other, and the diagonal between the first and third corner. */
  | {
      readonly told: 'four-sides'
      readonly sidesMm: readonly [number, number, number, number]
      readonly diagonalMm: number
    }
  | { readonly told: 'round'; readonly curve: CurveName; readonly widthMm: number; readonly depthMm: number }
  | { readonly told: 'triangle'; readonly legsMm: readonly [number, number] }

export type Room = {
  readonly name?: string
  /** Several alike: "two baths 5x8". */
  readonly count: number
  readonly pieces: readonly Piece[]
  readonly shape?: 'L' | 'U' | 'T'
  /** Corners in order, where the room was told corner by corner or wall by wall. */
  readonly cornersMm?: readonly (readonly [x: number, y: number])[]
  /** How an outline of its own was told; its corners are worked out from it. */
  readonly outline?: Outline
  /** Why what was told is no floor. */
  readonly fault?: Problem
  /** Where a wall-by-wall walk did not close: by how much. */
  readonly closingErrorMm?: number
  /** A room told by four sides and a diagonal: its worst corner, and how far a square line runs out over the room. */
  readonly outOfSquare?: { readonly offDeg: number; readonly taperMm: number }
  /** A backsplash or wall: a floor stood upright. */
  readonly upright?: boolean
  /** A bare area with a name: no shape known. */
  readonly areaM2?: number
  /** How this room is tiled where that is not as the job's facts say; whole then: what is not in it was not said of this room. */
  readonly own?: Tiling
}

export type TileKind = 'porcelain' | 'ceramic' | 'stone' | 'glass'

export type Tile = {
  readonly lengthMm: number
  readonly widthMm: number
  readonly thicknessMm?: number
  readonly shape?: 'hexagon' | 'mosaic' | 'plank'
  readonly kind?: TileKind
  readonly rectified?: boolean
  /** Mosaic by the sheet: the sheet's own size. */
  readonly sheetLengthMm?: number
  readonly sheetWidthMm?: number
}

export type PatternName =
  | 'stacked'
  | 'offset'
  | 'diagonal'
  | 'herringbone'
  | 'double-herringbone'
  | 'basketweave'
  | 'random'
  | 'two-size'
export type Pattern = {
  readonly name: PatternName
  /** Share of the tile's length each row steps by: 1/2, 1/3 … kept as two whole numbers. */
  readonly offset?: readonly [over: number, under: number]
  readonly backAndForth?: boolean
  /** Columns moved along the width, in place of rows along the length. */
  readonly along?: 'width'
  readonly angleDeg?: number
  /** Side of the small tile, in a pattern of two sizes. */
  readonly smallMm?: number
}

/** A notch as US trowels are read: width x depth x space. */
export type Trowel = {
  readonly shape: 'square' | 'u' | 'v'
  readonly widthMm: number
  readonly depthMm: number
  readonly spaceMm: number
}

export type MortarName = 'large-format' | 'modified' | 'unmodified' | 'rapid' | 'mastic'
export type GroutName = 'sanded' | 'unsanded' | 'high-performance' | 'epoxy'

/** A price the crew gave, in its own money: for one as it is bought, or for a square metre. */
export type Price = {
  readonly what: 'tile' | 'mortar' | 'grout' | 'clips' | 'wedges' | 'tape' | 'adhesive' | 'underlayment'
  readonly each: number
  readonly perM2: boolean
}

/** Underlayment as it was said: an id of config/around.json, and the sheet or roll by its sides or its area. */
export type SheetGoods = {
  readonly kind?: string
  readonly form?: 'sheet' | 'roll'
  readonly lengthMm?: number
  readonly widthMm?: number
  readonly m2?: number
}

/** A temperature that was said, with what it is of. */
export type SaidTemperature = { readonly c: number; readonly of: 'air' | 'slab' | 'low' | 'high' | 'reference' }

export type Facts = {
  readonly rooms?: readonly Room[]
  /** A bare area, no shape known. [m2] */
  readonly areaM2?: number
  readonly tile?: Tile
  readonly jointMm?: number
  readonly pattern?: Pattern
  readonly trowel?: Trowel
  readonly backButter?: boolean
  readonly sparePct?: number
  readonly boxTiles?: number
  readonly boxM2?: number
  readonly boxPrice?: number
  readonly bagKg?: number
  /** Bags or boxes on hand. */
  readonly haveBags?: number
  readonly haveBoxes?: number
  readonly haveTiles?: number
  /** Area still to do, told as such. [m2] */
  readonly leftM2?: number
  readonly usedBags?: number
  readonly usedM2?: number
  /** The crew's own figure. [m2 per bag] */
  readonly coverageM2?: number
  readonly mortar?: MortarName
  readonly grout?: GroutName
  /** A polished or soft face that sand would scratch. */
  readonly softFace?: boolean
  readonly temperatures?: readonly SaidTemperature[]
  readonly powderKg?: number
  /** Parts of a bag to mix: 0.5 is half a bag. */
  readonly bagsToMix?: number
  readonly wet?: 'wet' | 'dry'
  readonly exterior?: boolean
  readonly surface?: 'floor' | 'wall'
  /** Words of the message that tell when something was done, read against the clock later. */
  readonly when?: string
  readonly done?: 'set' | 'grouted' | 'mixed'
  /** Walls that are to get whole tiles, and walls that may hide the cuts. */
  readonly fullAt?: readonly WallSide[]
  readonly hideAt?: readonly WallSide[]
  /** The wall the door is in, where it was said. */
  readonly doorAt?: WallSide
  /** Cuts are to go behind an appliance whose wall nobody has named. */
  readonly hideBehind?: true
  /** The crew asks which way the tile should run. */
  readonly anyWay?: true
  /** A face with a direction: no piece may be turned. */
  readonly directional?: true
  /** One side of a tile as it was measured, where only one was told. */
  readonly measuredMm?: number
  /** The slab's own joints, by their distance from a wall. */
  readonly slabJoints?: readonly { readonly from: WallSide; readonly mm: number }[]
  /** An opening asked about last, for what is changed about it next. */
  readonly opening?: {
    readonly kind: string
    readonly sizeMm: readonly [number, number]
    readonly fromLeftMm: number
    readonly fromFootMm: number
  }
  /** The walls' courses are carried level round the corners between them. */
  readonly roundCorners?: true
  /** Tile stands on its short side on the walls; else it lies. */
  readonly tileStands?: true
  /** How off-cuts may be reused, where the crew said; else the trade's rule. */
  readonly reuse?: 'any-offcut' | 'fresh-tile'
  readonly paceM2PerH?: number
  readonly outOfFlatMm?: number
  readonly impervious?: boolean
  /** IANA time zone of the site. */
  readonly zone?: string
  /** What it is like on site from day to day. [C] */
  readonly siteC?: number
  readonly siteSlabC?: number
  /** What it falls to at night. [C] */
  readonly siteLowC?: number
  readonly goods?: SheetGoods
  readonly prices?: readonly Price[]
  /** Whose rules hold. */
  readonly country?: 'US' | 'UK' | 'AU' | 'other'
}

export type FactName = keyof Facts

/** What may differ from room to room, the tile's boxes with it. */
export const TILING = ['tile', 'jointMm', 'pattern', 'boxTiles', 'boxM2', 'boxPrice', 'measuredMm'] as const
export type Tiling = Pick<Facts, (typeof TILING)[number]>

/** What the facts themselves say of tile. */
export function tilingIn(facts: Facts): Tiling {
  const tiling: Record<string, unknown> = {}
  for (const name of TILING) if (facts[name] !== undefined) tiling[name] = facts[name]
  return tiling as Tiling
}

/** Told of what is on hand, used or left: facts of one question that turn a count into another answer. */
export const ON_HAND = [
  'haveBags',
  'haveBoxes',
  'haveTiles',
  'leftM2',
  'usedBags',
  'usedM2',
  'powderKg',
  'bagsToMix',
] as const satisfies readonly FactName[]

export const lessFacts = (facts: Facts, names: readonly FactName[]): Facts =>
  Object.fromEntries(Object.entries(facts).filter(([name]) => !names.includes(name as FactName))) as Facts
