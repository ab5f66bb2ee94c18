/** The sides of rooms and tiles in mm, also where their figures have no unit. */
import { type Quantity, toSi } from './measures.ts'
import { isTypicalTile } from './sold-sizes.ts'

/** A room's side in mm. A bare figure is feet, or by its size inches, centimetres or millimetres; `as` tells which. */
export function roomMm(
  q: Quantity,
  larger: number,
  metric: boolean,
): { mm: number; as: 'ft' | 'in' | 'cm' | 'mm' | 'm' | 'said' } {
  if (q.dimension === 'length' && q.si !== null) return { mm: q.si, as: 'said' }
  if (larger >= 1000) return { mm: q.n, as: 'mm' }
  if (metric && larger >= 100) return { mm: q.n * 10, as: 'cm' }
  if (larger >= 250) return { mm: q.n * 10, as: 'cm' }
  if (larger >= 100) return { mm: q.n * 25.4, as: 'in' }
  if (metric && larger < 40) return { mm: q.n * 1000, as: 'm' }
  return { mm: toSi(q.n, 'ft'), as: 'ft' }
}

/** Chips of mosaic are told in millimetres where the crew is metric: 25x25 is no 25 cm. */
const LEAST_MOSAIC_MM = 10

/** A tile's side in mm. A bare figure is inches, or by its size centimetres or millimetres. */
export function tileMm(
  q: Quantity,
  [a, b]: readonly Quantity[],
  metric: boolean,
  mosaic = false,
): { mm: number; as: 'in' | 'cm' | 'mm' | 'said' } {
  if (q.dimension === 'length' && q.si !== null) return { mm: q.si, as: 'said' }
  if (mosaic && metric && Math.min(a.n, b.n) >= LEAST_MOSAIC_MM) return { mm: q.n, as: 'mm' }
  const [wide, long] = [Math.min(a.n, b.n), Math.max(a.n, b.n)]
  if (wide >= 50 && long > 122 && wide !== 60 && !(metric && long <= 180)) return { mm: q.n, as: 'mm' }
  if (long > 130 && wide >= 100) return { mm: q.n, as: 'mm' }
  if (long > 48 && !isTypicalTile(a.n, b.n)) return { mm: q.n * 10, as: 'cm' }
  if (metric && wide >= 10 && long >= 15) return { mm: q.n * 10, as: 'cm' }
  return { mm: q.n * 25.4, as: 'in' }
}
