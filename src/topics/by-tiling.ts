/** Rooms tiled differently: a topic asked of each tiling by itself, and what it tells put together. */
import type { Facts } from '../facts.ts'
import { type Phrase, say } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import { tilings } from '../room-tiles.ts'
import { roomPhrase } from './floors.ts'
import { type Brief, joinTold, type Table, type Told, type TopicAnswer } from './topic.ts'

export type TiledPart = { readonly brief: Brief; readonly told: Told }

/** A brief for each tiling of the facts. */
export const briefsByTiling = (brief: Brief): Brief[] =>
  tilings(brief.facts).map((facts) => (facts === brief.facts ? brief : { ...brief, facts }))

/** The topic as it is where all rooms are tiled alike, else of each tiling, joined.
 *  @problem those of the topic */
export function byTiling(
  brief: Brief,
  topic: TopicAnswer,
  join: (parts: readonly TiledPart[]) => Told = joinParts,
): Outcome<Told> {
  const briefs = briefsByTiling(brief)
  if (briefs.length === 1) return topic(briefs[0])
  const parts: TiledPart[] = []
  for (const one of briefs) {
    const told = topic(one)
    if (!told.ok) return told
    parts.push({ brief: one, told: told.value })
  }
  return fine(join(parts))
}

export const roomsOf = (facts: Facts): Phrase[] => (facts.rooms ?? []).map(roomPhrase)

/** Each part's answer under the names of its rooms, its details below. */
export function joinParts(parts: readonly TiledPart[]): Told {
  const lines = parts.map(({ brief, told }) => say('room.told', { rooms: roomsOf(brief.facts), told: told.answer }))
  const [first, ...others] = parts.map(({ told }) => told)
  return {
    ...joinTold(first, ...others),
    answer: lines[0],
    details: parts.flatMap(({ told }, k) => [...(k > 0 ? [lines[k]] : []), ...(told.details ?? [])]),
    values: joinedValues(parts.map(({ told }) => told.values ?? {})),
    tables: joinedTables(parts.flatMap(({ told }) => told.tables ?? [])),
  }
}

/** Keys of the contract that add up over rooms. */
const SUMS: ReadonlySet<string> = new Set([
  'area_m2',
  'perimeter_m',
  'tile_count',
  'tile_cells',
  'tile_whole',
  'tile_cut',
  'tile_boxes',
  'offcuts_reused',
  'joint_length_m',
  ...['mortar_kg', 'mortar_bags', 'grout_kg', 'grout_bags'].flatMap((key) => [key, `${key}_low`, `${key}_high`]),
  'bags_to_finish',
  'bags_to_finish_90',
  'bags_to_buy',
  'clips',
  'clip_packs',
])
/** Wedges go round from room to room. */
const MOST: ReadonlySet<string> = new Set(['wedges'])
const LEAST: ReadonlySet<string> = new Set(['smallest_cut_mm'])

type Values = NonNullable<Told['values']>

/** Sums where figures add up; of the rest only what is the same in all rooms. */
export function joinedValues(each: readonly Values[]): Values {
  const joined: Record<string, number | string | undefined> = {}
  for (const key of new Set(each.flatMap(Object.keys))) {
    const told = each.map((values) => values[key])
    const numbers = told.filter((value) => typeof value === 'number')
    if (SUMS.has(key)) joined[key] = numbers.length === each.length ? numbers.reduce((a, b) => a + b, 0) : undefined
    else if (LEAST.has(key)) joined[key] = numbers.length > 0 ? Math.min(...numbers) : undefined
    else if (MOST.has(key)) joined[key] = numbers.length > 0 ? Math.max(...numbers) : undefined
    else if (told.every((value) => value === told[0])) joined[key] = told[0]
  }
  return joined
}

/** Rows of tables of one name under one head. */
function joinedTables(tables: readonly Table[]): Table[] {
  const byName = new Map<string, Table>()
  for (const table of tables) {
    const known = byName.get(table.name)
    byName.set(table.name, known ? { ...known, rows: [...known.rows, ...table.rows] } : table)
  }
  return [...byName.values()]
}
