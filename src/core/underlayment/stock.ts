/** How many sheets or rolls a set of rectangular pieces is cut from: straight cuts right across (guillotine). */

export type Piece = { readonly lengthMm: number; readonly widthMm: number }
type Rest = { readonly length: number; readonly width: number }

/** Pieces that differ by less than this from the stock fit it. [mm] */
const FIT_MM = 0.01

/** Whole sheets needed for the pieces, off-cuts reused.
 *  Each piece goes into the tightest rest that takes it; three orders are tried and the best kept, so the figure is
 *  one that a crew can cut, never below the area's own bound.
 *  @param pieces  each no larger than the stock  [mm]
 *  @param stock   one sheet, or one roll as length x width  [mm]
 *  @param kerfMm  lost at each cut: 0 for a knife or score-and-snap, about 3 for a blade  [mm]
 *  @param turn    pieces may be cut across the sheet
 *  @source common practice, no source (guillotine first fit) */
export function sheetsFor(pieces: readonly Piece[], stock: Piece, kerfMm = 0, turn = true): number {
  const orders: ((a: Piece, b: Piece) => number)[] = [
    (a, b) => b.lengthMm * b.widthMm - a.lengthMm * a.widthMm,
    (a, b) => b.lengthMm - a.lengthMm || b.widthMm - a.widthMm,
    (a, b) => b.widthMm - a.widthMm || b.lengthMm - a.lengthMm,
  ]
  return Math.min(...orders.map((order) => packed(pieces.toSorted(order), stock, kerfMm, turn)))
}

function packed(pieces: readonly Piece[], stock: Piece, kerfMm: number, turn: boolean): number {
  const rests: Rest[] = []
  let sheets = 0
  for (const piece of pieces) {
    const ways: Rest[] = [{ length: piece.lengthMm, width: piece.widthMm }]
    if (turn) ways.push({ length: piece.widthMm, width: piece.lengthMm })
    let best: { at: number; way: Rest; left: number } | null = null
    for (const [at, rest] of rests.entries())
      for (const way of ways) {
        if (way.length > rest.length + FIT_MM || way.width > rest.width + FIT_MM) continue
        const left = Math.min(rest.length - way.length, rest.width - way.width)
        if (!best || left < best.left) best = { at, way, left }
      }
    if (!best) {
      sheets++
      const fresh: Rest = { length: stock.lengthMm, width: stock.widthMm }
      const way = ways.find((w) => w.length <= fresh.length + FIT_MM && w.width <= fresh.width + FIT_MM) ?? ways[0]!
      rests.push(...split(fresh, way, kerfMm))
    } else rests.splice(best.at, 1, ...split(rests[best.at]!, best.way, kerfMm))
  }
  return sheets
}

/** What is left of a rest when a piece is cut from its corner; the first cut leaves the larger single rest. */
function split(rest: Rest, cut: Rest, kerfMm: number): Rest[] {
  const length = rest.length - cut.length - kerfMm
  const width = rest.width - cut.width - kerfMm
  const acrossFirst = length * rest.width >= width * rest.length
  const parts: Rest[] = acrossFirst
    ? [
        { length, width: rest.width },
        { length: cut.length, width },
      ]
    : [
        { length: rest.length, width },
        { length, width: cut.width },
      ]
  return parts.filter((part) => part.length > FIT_MM && part.width > FIT_MM)
}
