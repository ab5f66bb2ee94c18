/** One job: what was stated of it, what was used, read and changed. Its lists are short: the full log is in the store. */
import { type FactName, type Facts, lessFacts, type Trowel } from '../facts.ts'
import type { Entry, Photo } from '../message.ts'

export type Stuff = 'mortar' | 'grout' | 'tile'

/** What a crew logs, as it was told. */
export type UseBody = {
  readonly stuff: Stuff
  /** Packs that went down. */
  readonly bags?: number
  readonly m2?: number
  readonly tiles?: number
  /** Rows that went down, and the room they are of where it has a name. */
  readonly rows?: number
  readonly room?: string
  /** The whole so far, not one more stretch. */
  readonly total?: boolean
  /** Bags newly opened: what is used lies between one less and all of them. */
  readonly opened?: number
  /** On hand now, opened ones too. */
  readonly leftBags?: number
  readonly leftBoxes?: number
  readonly leftTiles?: number
  /** Left out of the coverage. */
  readonly binnedBags?: number
  readonly broken?: number
  /** What it was done with: a crew's figures are offered for a job like it. */
  readonly trowel?: Trowel
  readonly backButter?: boolean
  readonly tileMm?: readonly [number, number]
  readonly packKg?: number
  readonly outOfFlatMm?: number
}

/** What an undo takes back of the log, by the ids of its uses; told so that figures learned elsewhere leave them out. */
export type UndoBody = { readonly uses?: readonly string[] }

/** The id of a log entry in its channel. */
export const useId = (entry: { readonly messageId: string; readonly part: number }): string =>
  `${entry.messageId}/${entry.part}`

type By = { readonly at: string; readonly person: string; readonly personName?: string; readonly messageId: string }

/** Who an entry is from, when it came and in which message. */
export const by = (entry: Entry): By => ({
  at: entry.at,
  person: entry.person,
  ...(entry.personName === undefined ? {} : { personName: entry.personName }),
  messageId: entry.messageId,
})

export type Use = UseBody & By & { readonly id: string }

export type ReadingKind = 'flatness' | 'moisture' | 'slab' | 'air' | 'lot' | 'contact' | 'owner' | 'photo' | 'note'
export type ReadingBody = {
  readonly what: ReadingKind
  /** In the crew's own words; empty for a photo sent without any. */
  readonly text: string
  readonly value?: number
  readonly photos?: readonly Photo[]
}
export type Reading = ReadingBody & By & { readonly id: string }

/** The job as it stood under a name, to compare with later. */
export type Point = By & { readonly name: string; readonly facts: Facts }

/** One line of the history, with what it takes to take it back. */
export type Change = By & {
  readonly undone?: boolean
} & (
    | { readonly is: 'facts'; readonly keys: readonly FactName[]; readonly was: Facts; readonly now: Facts }
    /** `use` where it was taken back: it is none of the log any more. */
    | { readonly is: 'use'; readonly id: string; readonly use?: UseBody }
    | { readonly is: 'reading'; readonly id: string }
    /** `was`: the point that the new one of its name took the place of. */
    | { readonly is: 'point'; readonly name: string; readonly was?: Point }
    | { readonly is: 'undo' }
  )

export type Totals = {
  readonly bags: number
  readonly m2: number
  readonly tiles: number
  /** Not in a sum that an older version made. */
  readonly rows?: number
  readonly binnedBags: number
  readonly broken: number
}

export type Job = {
  readonly n: number
  readonly name: string | null
  readonly uses: readonly Use[]
  /** What fell out of `uses`, by stuff. */
  readonly earlier: Readonly<Partial<Record<Stuff, Totals>>>
  readonly readings: readonly Reading[]
  readonly points: readonly Point[]
  readonly changes: readonly Change[]
}

export const emptyJob: Job = { n: 1, name: null, uses: [], earlier: {}, readings: [], points: [], changes: [] }

const MOST_USES = 200
const MOST_READINGS = 100
const MOST_POINTS = 20
const MOST_CHANGES = 100

const NO_TOTALS: Totals = { bags: 0, m2: 0, tiles: 0, binnedBags: 0, broken: 0 }
const last = <T>(list: readonly T[], most: number): readonly T[] => (list.length > most ? list.slice(-most) : list)

export const withChange = (job: Job, change: Change): Job => ({
  ...job,
  changes: last([...job.changes, change], MOST_CHANGES),
})

export function withUse(job: Job, use: Use): Job {
  const uses = [...job.uses, use]
  if (uses.length <= MOST_USES) return { ...job, uses }
  const [oldest, ...rest] = uses
  const before = job.earlier[oldest.stuff] ?? NO_TOTALS
  return { ...job, uses: rest, earlier: { ...job.earlier, [oldest.stuff]: added(before, oldest) } }
}

export const withReading = (job: Job, reading: Reading): Job => ({
  ...job,
  readings: last([...job.readings, reading], MOST_READINGS),
})

export const withPoint = (job: Job, point: Point): Job => ({
  ...job,
  points: last([...job.points.filter((p) => p.name !== point.name), point], MOST_POINTS),
})

function added(sum: Totals, use: Use): Totals {
  const base = use.total
    ? {
        ...sum,
        ...(use.bags === undefined ? {} : { bags: 0 }),
        ...(use.m2 === undefined ? {} : { m2: 0 }),
        ...(use.tiles === undefined ? {} : { tiles: 0 }),
        ...(use.rows === undefined ? {} : { rows: 0 }),
      }
    : sum
  return {
    bags: base.bags + (use.bags ?? 0),
    m2: base.m2 + (use.m2 ?? 0),
    tiles: base.tiles + (use.tiles ?? 0),
    rows: (base.rows ?? 0) + (use.rows ?? 0),
    binnedBags: base.binnedBags + (use.binnedBags ?? 0),
    broken: base.broken + (use.broken ?? 0),
  }
}

export type Logged = Totals & {
  /** Bags used, ends of what the log allows: an opened bag may be full or empty. */
  readonly bagsLow: number
  readonly bagsHigh: number
  /** On hand as it was last told, less nothing since. */
  readonly leftBags: number | null
  readonly leftBoxes: number | null
  readonly leftTiles: number | null
  readonly rows: number
  readonly rowsOf: string | null
  /** Tiles logged after the last rows were. */
  readonly tilesSinceRows: number
  /** Stretches with both bags and area, for the forecast. */
  readonly stretches: readonly { readonly packs: number; readonly areaM2: number; readonly readingPacks?: number }[]
  readonly any: boolean
}

/** The standard deviation of an even spread over one bag. [bags] */
const OPEN_BAG_SD = 1 / Math.sqrt(12)

/** Sums what was logged of one stuff. A new count of the whole takes the place of what was logged before it. */
export function logged(job: Job, stuff: Stuff): Logged {
  let totals = job.earlier[stuff] ?? NO_TOTALS
  let open = 0
  let inOpen: number | null = null
  let leftBags: number | null = null
  let leftBoxes: number | null = null
  let leftTiles: number | null = null
  let tilesSinceRows = 0
  let rowsOf: string | null = null
  let stretches: { packs: number; areaM2: number; readingPacks?: number }[] = whole(totals)
  const uses = job.uses.filter((use) => use.stuff === stuff)
  for (const use of uses) {
    if (use.total && (use.bags !== undefined || use.m2 !== undefined)) stretches = []
    totals = added(totals, use)
    if (use.rows !== undefined) {
      tilesSinceRows = 0
      rowsOf = use.room ?? rowsOf
    } else if (use.tiles !== undefined) tilesSinceRows = use.total ? 0 : tilesSinceRows + use.tiles
    if (use.bags !== undefined) {
      open = 0
      inOpen = null
      if (leftBags !== null) leftBags = use.total ? null : Math.max(0, leftBags - use.bags)
    }
    if (use.opened !== undefined) {
      open += use.opened
      inOpen = null
    }
    if (use.leftBags !== undefined) {
      leftBags = use.leftBags
      if (use.leftBags < 1) inOpen = use.leftBags
    }
    if (use.leftBoxes !== undefined || use.leftTiles !== undefined) {
      leftBoxes = use.leftBoxes ?? null
      leftTiles = use.leftTiles ?? null
    } else if (leftTiles !== null) leftTiles = Math.max(0, leftTiles - (use.tiles ?? 0) - (use.broken ?? 0))
    if (use.m2 !== undefined && use.m2 > 0) {
      if (use.bags !== undefined && use.bags > 0) stretches.push({ packs: use.bags, areaM2: use.m2 })
      else if (use.opened !== undefined)
        stretches.push({ packs: Math.max(0.25, use.opened - 0.5), areaM2: use.m2, readingPacks: OPEN_BAG_SD })
    } else if (use.total && use.bags !== undefined && use.bags > 0 && totals.m2 > 0) {
      stretches = [{ packs: use.bags, areaM2: totals.m2 }]
    }
  }
  const openUsed = open === 0 ? 0 : inOpen === null ? open - 0.5 : open - inOpen
  return {
    ...totals,
    bags: totals.bags + openUsed,
    bagsLow: totals.bags + (open === 0 ? 0 : inOpen === null ? open - 1 : openUsed),
    bagsHigh: totals.bags + (open === 0 ? 0 : inOpen === null ? open : openUsed),
    leftBags,
    leftBoxes,
    leftTiles,
    rows: totals.rows ?? 0,
    rowsOf,
    tilesSinceRows,
    stretches,
    any: uses.length > 0 || job.earlier[stuff] !== undefined,
  }
}

/** Tiles on hand: as last told, less what was set and broken since; null where it was never told.
 *  @param perBox  tiles in a box, null where that is not known */
export function tilesOnHand(job: Job, perBox: number | null): number | null {
  let onHand: number | null = null
  let set = 0
  for (const use of job.uses) {
    if (use.stuff !== 'tile') continue
    const before = set
    if (use.tiles !== undefined) set = use.total ? use.tiles : set + use.tiles
    const told = use.leftBoxes === undefined ? use.leftTiles : perBox === null ? undefined : use.leftBoxes * perBox
    if (told !== undefined) onHand = told + (use.leftBoxes === undefined ? 0 : (use.leftTiles ?? 0))
    else if (onHand !== null) onHand = Math.max(0, onHand - Math.max(0, set - before) - (use.broken ?? 0))
  }
  return onHand
}

const whole = (totals: Totals): { packs: number; areaM2: number }[] =>
  totals.bags > 0 && totals.m2 > 0 ? [{ packs: totals.bags, areaM2: totals.m2 }] : []

/** Readings as they are shown: a photo without words is left out where a later reading tells what it shows. */
export function shownReadings({ readings }: Job): readonly Reading[] {
  return readings.filter(({ text, photos = [] }, k) => {
    if (text !== '' || photos.length === 0) return true
    const later = readings.slice(k + 1).flatMap((r) => (r.photos ?? []).map((p) => p.id))
    return !photos.every((photo) => later.includes(photo.id))
  })
}

/** The keys in which two sets of facts differ. */
export function differing(was: Facts, now: Facts): FactName[] {
  const keys = [...new Set([...Object.keys(was), ...Object.keys(now)])] as FactName[]
  return keys.filter((key) => was[key] !== now[key] && JSON.stringify(was[key]) !== JSON.stringify(now[key]))
}

export const picked = (facts: Facts, keys: readonly FactName[]): Facts =>
  Object.fromEntries(keys.filter((key) => facts[key] !== undefined).map((key) => [key, facts[key]])) as Facts

/** Facts with some keys as they were before. */
export function reverted(facts: Facts, keys: readonly FactName[], was: Facts): Facts {
  return { ...lessFacts(facts, keys), ...picked(was, keys) }
}
