/** Rooms tiled differently in one job. A room without tiling of its own goes by the facts, which are those of the room asked about
 *  last; every other room that differs holds its own whole. */
import { type Facts, type Room, TILING, type Tiling, tilingIn } from './facts.ts'
import { plainText } from './language/text.ts'
import { remembered } from './remembered.ts'

export type InScope = (room: Room) => boolean

/** How a room is tiled. */
export const tilingOf = (facts: Facts, room: Room): Tiling => room.own ?? tilingIn(facts)

export const untiled = (facts: Facts): Facts => {
  const { tile: _t, jointMm: _j, pattern: _p, boxTiles: _b, boxM2: _m, boxPrice: _c, measuredMm: _s, ...rest } = facts
  return rest
}

const bare = ({ own: _, ...room }: Room): Room => room

/** Tilings with the same key are alike. */
const keyOf = (tiling: Tiling): string => JSON.stringify(TILING.map((name) => tiling[name] ?? null))
const tileKey = ({ tile, measuredMm }: Tiling): string =>
  JSON.stringify([tile?.lengthMm, tile?.widthMm, tile?.shape ?? null, measuredMm ?? null])

/** The facts of each tiling, with the rooms it goes into, in the rooms' order; the facts themselves where there is only one. */
export function tilings(facts: Facts): readonly Facts[] {
  const rooms = facts.rooms ?? []
  return rooms.every((room) => room.own === undefined) ? [facts] : found(facts, () => grouped(facts))
}

const found = remembered<Facts, readonly Facts[]>(4)

function grouped(facts: Facts): readonly Facts[] {
  const rooms = facts.rooms ?? []
  const groups = new Map<string, { tiling: Tiling; rooms: Room[] }>()
  for (const room of rooms) {
    const tiling = tilingOf(facts, room)
    const key = keyOf(tiling)
    const group = groups.get(key) ?? { tiling, rooms: [] }
    group.rooms.push(bare(room))
    groups.set(key, group)
  }
  const rest = untiled(facts)
  return [...groups.values()].map((group) => ({ ...rest, ...group.tiling, rooms: group.rooms }))
}

/** The facts with each room's tiling given anew: those of the rooms in scope stand in the facts themselves. */
export function tiledBy(facts: Facts, tiling: (room: Room) => Tiling, inScope: InScope): Facts {
  const rooms = facts.rooms ?? []
  const asked = rooms.find(inScope) ?? rooms.at(-1)
  if (asked === undefined) return facts
  const now = tiling(asked)
  const key = keyOf(now)
  const settled = rooms.map((room): Room => {
    const its = tiling(room)
    return keyOf(its) === key ? bare(room) : { ...bare(room), own: its }
  })
  return { ...untiled(facts), ...now, rooms: settled }
}

/** Figures of a tile that another tile has not. */
const OF_THE_TILE = ['boxTiles', 'boxM2', 'boxPrice', 'measuredMm'] as const

/** A tiling changed by what was said; another tile comes in other boxes. */
export function retiled(old: Tiling, said: Tiling): Tiling {
  const sized = said.tile !== undefined && said.tile.lengthMm > 0
  const other = sized && old.tile !== undefined && tileKey({ tile: old.tile }) !== tileKey({ tile: said.tile })
  const kept = other
    ? (Object.fromEntries(
        Object.entries(old).filter(([k]) => !(OF_THE_TILE as readonly string[]).includes(k)),
      ) as Tiling)
    : old
  const { tile } = said
  if (!tile || sized || !old.tile) return { ...kept, ...said }
  const { lengthMm: _l, widthMm: _w, ...rest } = tile
  return { ...kept, ...said, tile: { ...old.tile, ...rest } }
}

/** Rooms that a change without a room's name means: all with the tile of the room asked about last. */
export const sameTile =
  (facts: Facts): InScope =>
  (room) =>
    room.own === undefined || tileKey(room.own) === tileKey(facts)

export const isMixed = (facts: Facts): boolean => (facts.rooms ?? []).some((room) => room.own !== undefined)

const singular = (name: string): string => plainText(name).text.replace(/s$/, '')

export const sameName = (a: string | undefined, b: string | undefined): boolean =>
  a !== undefined && b !== undefined && singular(a) === singular(b)

/** Whether two rooms are the same one of a job: by name, else by what was told of them. */
export const sameRoom = (a: Room, b: Room): boolean =>
  a.name !== undefined || b.name !== undefined
    ? sameName(a.name, b.name)
    : JSON.stringify(bare(a)) === JSON.stringify(bare(b))

const escaped = (text: string): string => text.replaceAll(/[.*+?^${}()|[\]\\]/g, '\\$&')

/** The rooms that a text names, none where it names one only as part of a longer name ("bath" in "bath 2"). */
export function roomsNamed(text: string, rooms: readonly Room[]): readonly Room[] {
  const spans = rooms.flatMap((room) => {
    if (room.name === undefined) return []
    const name = new RegExp(
      `(?<![\\p{L}\\p{N}])${escaped(singular(room.name)).replaceAll(' ', '[ -]?')}s?(?![\\p{L}\\p{N}])`,
      'gu',
    )
    return [...text.matchAll(name)].map((m) => ({ room, from: m.index, to: m.index + m[0].length }))
  })
  const whole = spans.filter(
    (s) => !spans.some((o) => o !== s && o.from <= s.from && o.to >= s.to && o.to - o.from > s.to - s.from),
  )
  return rooms.filter((room) => whole.some((s) => s.room === room))
}
