/** Newer facts over older ones: what is told anew, what goes with it, which rooms it is said of. */
import { type Facts, tilingIn } from '../facts.ts'
import { newerPrices } from '../language/prices.ts'
import { type InScope, isMixed, retiled, tiledBy, tilingOf } from '../room-tiles.ts'

/** Newer facts over older ones, what they say of tile going to the rooms in scope; without a scope to the facts alone. */
export function merged(old: Facts, fresh: Facts, scope?: InScope): Facts {
  const facts = overlaid(old, fresh)
  const rooms = facts.rooms ?? []
  if (!scope || rooms.length === 0 || (!isMixed(facts) && rooms.every(scope))) return facts
  const said = tilingIn(fresh)
  // What was never said of any room is said of all.
  const unsaid = Object.fromEntries(Object.entries(said).filter(([name]) => name === 'tile' && old.tile === undefined))
  return tiledBy(
    facts,
    (room) => {
      const before = tilingOf(old, room)
      return scope(room) ? retiled(before, said) : { ...before, ...(room.own ? {} : unsaid) }
    },
    scope,
  )
}

/** A floor told anew replaces the old one whole; a tile's thickness alone joins its size. */
function overlaid(old: Facts, fresh: Facts): Facts {
  const floor = fresh.rooms !== undefined || fresh.areaM2 !== undefined
  const { rooms: _r, areaM2: _a, leftM2: _l, ...rest } = old
  const base: Facts = floor ? rest : old
  const tile = fresh.tile
    ? fresh.tile.lengthMm > 0
      ? fresh.tile
      : old.tile
        ? { ...old.tile, ...definedTile(fresh.tile) }
        : fresh.tile
    : old.tile
  const goods = fresh.goods && old.goods ? { ...old.goods, ...fresh.goods } : (fresh.goods ?? old.goods)
  const prices = fresh.prices && old.prices ? newerPrices(old.prices, fresh.prices) : (fresh.prices ?? old.prices)
  // A tile told anew has not been measured, and cuts whose wall is named now are no longer homeless.
  const { measuredMm: _m, hideBehind: _h, ...unasked } = base
  const kept: Facts = {
    ...unasked,
    ...(base.measuredMm && !(fresh.tile && fresh.tile.lengthMm > 0) ? { measuredMm: base.measuredMm } : {}),
    ...(base.hideBehind && !fresh.hideAt ? { hideBehind: true as const } : {}),
  }
  return { ...kept, ...fresh, ...(tile ? { tile } : {}), ...(goods ? { goods } : {}), ...(prices ? { prices } : {}) }
}

function definedTile(tile: NonNullable<Facts['tile']>): Partial<NonNullable<Facts['tile']>> {
  const { lengthMm: _l, widthMm: _w, ...rest } = tile
  return rest
}
