/** A shower floor round a column as one ring, so that ways to the drain can be followed round it. */
import { less } from '../floor/combine.ts'
import { boxOf, type Point, type Ring, ringHolds, running } from '../floor/rings.ts'

/** Of the floor the slit takes. [mm] */
const WIDTH_MM = 0.5

/** The ring with the column joined to it by a hair-wide slit behind the column, away from the drain: there the bed has its ridge,
 *  as far from the drain one way round as the other, so no shortest way crosses it (exact for a round column in a convex floor).
 *  Null where the drain stands in the column or the slit parts the floor. */
export function slitBehind(outer: Ring, column: Ring, drain: Point): Ring | null {
  if (ringHolds(column, drain)) return null
  const box = boxOf([column])
  const [cx, cy] = [(box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2]
  const away = Math.hypot(cx - drain[0], cy - drain[1])
  const [ux, uy] = [(cx - drain[0]) / away, (cy - drain[1]) / away]
  const all = boxOf([outer])
  const far = Math.hypot(all.maxX - all.minX, all.maxY - all.minY) * 2
  const [nx, ny] = [(-uy * WIDTH_MM) / 2, (ux * WIDTH_MM) / 2]
  const slit: Ring = [
    [cx - nx, cy - ny],
    [cx + ux * far - nx, cy + uy * far - ny],
    [cx + ux * far + nx, cy + uy * far + ny],
    [cx + nx, cy + ny],
  ]
  const cut = less({ rings: [running(outer, 1)] }, [{ rings: [running(column, 1)] }, { rings: [running(slit, 1)] }])
  return cut.ok && cut.value.rings.length === 1 ? cut.value.rings[0]! : null
}
