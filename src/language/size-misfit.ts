/** How ill a reading of a size suits the figures themselves: their units and their magnitude. */
import type { Quantity } from './measures.ts'
import { isSoldAsTile, SHEETS } from './sold-sizes.ts'

export type SizeRole = 'room' | 'hole' | 'bump' | 'tile' | 'notch' | 'sheet' | 'opening' | 'lumber' | 'void'

/** What the talk already knows: a bare pair then rather fills the gap. */
export type SizeHints = {
  readonly hasRoom: boolean
  readonly hasTile: boolean
  readonly hasArea: boolean
  readonly wantsRoom: boolean
  /** Underlayment is spoken of, and no tile. */
  readonly goods: boolean
  /** A plus sign adds sizes up. */
  readonly sums: boolean
  /** A pattern of a large and a small tile is spoken of. */
  readonly twoSizes: boolean
  /** The tile is the one told before: "same tile". */
  readonly sameTile: boolean
  readonly metric: boolean
}

const mm = (q: Quantity): number | null => (q.dimension === 'length' ? q.si : null)

/** How ill a reading suits the figures themselves; 0 is natural, 9 impossible. */
export function misfit(role: SizeRole, [a, b]: readonly Quantity[], hints: SizeHints): number {
  const [wide, long] = [Math.min(mm(a) ?? a.n, mm(b) ?? b.n), Math.max(mm(a) ?? a.n, mm(b) ?? b.n)]
  const bare = a.unit === null && b.unit === null
  const feet = [a, b].some((q) => q.unit === 'ft' || q.unit === 'yd')
  switch (role) {
    case 'room':
      if (a.compound || b.compound) return 0
      if (bare) return roomMisfit(wide, long, hints)
      if (feet || a.unit === 'm' || b.unit === 'm') return a.unit === 'm' && long < 1250 ? 2 : 0
      return long >= 1500 ? 0.5 : long >= 900 ? 2 : 4
    case 'tile':
      if (a.compound || b.compound) return 6
      if (bare) return tileMisfit(a.n, b.n, hints.metric)
      if (feet) return long <= 1300 ? 3.5 : 9
      if (a.unit === 'm' || b.unit === 'm') return long <= 3200 && wide <= 1600 ? 2.5 : 9
      return wide < 9 || long > 3300 ? 9 : long > 1850 ? 3 : 0
    case 'notch':
      if (wide <= 0) return 9
      return bare ? (long <= 1 ? 0 : long <= 15 ? 3 : 9) : long <= 30 ? 0 : 9
    case 'sheet':
      return sheetMisfit(a, b, wide, long)
    case 'opening':
    case 'lumber':
    case 'void':
      return 2.5
    case 'hole':
    case 'bump':
      return 1
  }
}

function sheetMisfit(a: Quantity, b: Quantity, wide: number, long: number): number {
  const bare = a.unit === null && b.unit === null
  if (bare) return SHEETS.has(`${wide}x${long}`) ? 0.8 : wide >= 300 ? 1.5 : wide <= 4 ? 2.5 : 5
  // Written sides: a sheet, or a strip of roll.
  return wide >= 250 && wide <= 2100 && (long <= 3100 || long >= 4 * wide) ? 1.2 : 3.5
}

function roomMisfit(wide: number, long: number, hints: SizeHints): number {
  if (long < 2) return 9
  if (wide >= 100) return hints.metric || wide >= 1000 ? 2.5 : 1.5
  return (isSoldAsTile(wide, long, hints.metric) ? 1 : 0) + (wide < 3 ? 1.5 : 0)
}

function tileMisfit(a: number, b: number, metric: boolean): number {
  const [wide, long] = [Math.min(a, b), Math.max(a, b)]
  if (wide <= 0.49 || long <= 0.99) return 9
  if (isSoldAsTile(a, b, metric)) return 0
  if (wide >= 50) return long <= 3300 ? 0 : 9
  if (long > 48) return wide >= 10 && long <= 250 ? 0.8 : 9
  return Number.isInteger(a) && Number.isInteger(b) ? 1.2 : 0.9
}
