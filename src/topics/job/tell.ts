/** A job in words: its facts, its log, its history. */
import { type FactName, type Facts, type Room, TILING, type Tiling } from '../../facts.ts'
import { type Change, type Job, logged, type Reading, type Stuff } from '../../jobs/job.ts'
import {
  type Amount,
  area,
  count,
  instant,
  number,
  type Phrase,
  percent,
  quote,
  say,
  small,
  temperature,
  word,
} from '../../phrase.ts'
import { isMixed, tilingOf } from '../../room-tiles.ts'
import { roomPhrase } from '../floors.ts'
import { tilePhrase, trowelPhrase } from '../stuff.ts'
import type { Brief } from '../topic.ts'

type Shown = Amount | Phrase | readonly (Amount | Phrase)[]

/** How the value of each fact is told; a fact that is not here is only named. */
const VALUES: Partial<{ readonly [K in FactName]: (value: NonNullable<Facts[K]>, metric: boolean) => Shown }> = {
  rooms: (rooms) => rooms.map(roomPhrase),
  areaM2: (m2) => area(m2),
  tile: (tile, metric) =>
    tile.lengthMm > 0 ? tilePhrase(tile, metric) : tile.thicknessMm ? small(tile.thicknessMm) : quote('?'),
  jointMm: (mm) => small(mm),
  pattern: (pattern) => word(`pattern-${pattern.name}`),
  trowel: (trowel) => trowelPhrase(trowel),
  boxTiles: (n) => count(n),
  boxM2: (m2) => area(m2),
  boxPrice: (n) => number(n, 2),
  mortar: (name) => word(`mortar-${name}`),
  grout: (name) => word(`grout-${name}`),
  siteC: (c) => temperature(c),
  siteSlabC: (c) => temperature(c),
  siteLowC: (c) => temperature(c),
  zone: (zone) => quote(zone),
  country: (country) => say(`rule.country-${country}`),
  outOfFlatMm: (mm) => small(mm),
  sparePct: (pct) => percent(pct),
}

const NAMED: readonly FactName[] = [
  'rooms',
  'areaM2',
  'tile',
  'jointMm',
  'pattern',
  'trowel',
  'backButter',
  'boxTiles',
  'boxM2',
  'boxPrice',
  'mortar',
  'grout',
  'siteC',
  'siteSlabC',
  'siteLowC',
  'zone',
  'country',
  'outOfFlatMm',
  'sparePct',
  'paceM2PerH',
  'goods',
  'wet',
  'exterior',
  'fullAt',
  'hideAt',
  'doorAt',
  'reuse',
  'roundCorners',
  'tileStands',
  'directional',
  'measuredMm',
  'slabJoints',
]

export const factWord = (name: FactName): Amount => word(NAMED.includes(name) ? `fact-${name}` : 'fact-other')

/** "mudroom 8' x 12' in 8x48 herringbone, 1/8 in joint" */
function tiledPhrase(room: Room, { tile, jointMm, pattern }: Tiling, metric: boolean): Phrase {
  const known = tile && tile.lengthMm > 0 ? tile : null
  const told = [
    ...(known ? [say('room.in-tile', { tile: tilePhrase(known, metric) })] : []),
    ...(pattern ? [say('room.in-pattern', { pattern: word(`pattern-${pattern.name}`) })] : []),
    ...(jointMm === undefined ? [] : [say('room.in-joint', { joint: small(jointMm) })]),
  ]
  return told.length === 0 ? roomPhrase(room) : say('room.tiled', { room: roomPhrase(room), tiling: told })
}

/** "the joint 3/16 in"; null where the fact is not there. */
export function factPhrase(name: FactName, facts: Facts, metric: boolean): Phrase | null {
  const value = facts[name]
  if (value === undefined) return null
  if (isMixed(facts)) {
    if (name === 'rooms')
      return say('job.fact', {
        what: factWord('rooms'),
        value: (facts.rooms ?? []).map((room) => tiledPhrase(room, tilingOf(facts, room), metric)),
      })
    // Told with each room.
    if ((TILING as readonly FactName[]).includes(name)) return null
  }
  const told = (VALUES[name] as ((value: unknown, metric: boolean) => Shown) | undefined)?.(value, metric)
  return told === undefined
    ? say('job.fact-only', { what: factWord(name) })
    : say('job.fact', { what: factWord(name), value: told })
}

/** Facts of a job in the order a crew tells them. */
export const factPhrases = (facts: Facts, metric: boolean, but: readonly FactName[] = []): Phrase[] =>
  NAMED.filter((name) => !but.includes(name)).flatMap((name) => factPhrase(name, facts, metric) ?? [])

export const jobName = (job: Job): Phrase =>
  job.name === null ? say('job.numbered', { n: count(job.n) }) : say('job.named', { name: quote(job.name) })

/** What was used, set, broken and is left, one line for each stuff. */
export function logLines(job: Job, only: readonly Stuff[] = ['mortar', 'grout', 'tile']): Phrase[] {
  const lines: Phrase[] = []
  for (const stuff of (['mortar', 'grout'] as const).filter((one) => only.includes(one))) {
    const sums = logged(job, stuff)
    if (sums.bags > 0 || sums.m2 > 0)
      lines.push(
        say(sums.m2 > 0 ? 'log.line' : 'log.line-bags', {
          stuff: word(`stuff-${stuff}`),
          bags: number(sums.bags, 1),
          area: area(sums.m2),
        }),
      )
    if (sums.binnedBags > 0) lines.push(say('log.binned', { bags: number(sums.binnedBags, 1) }))
    if (sums.leftBags !== null)
      lines.push(say('log.left-bags', { bags: number(sums.leftBags, 1), stuff: word(`stuff-${stuff}`) }))
  }
  if (!only.includes('tile')) return lines
  const tiles = logged(job, 'tile')
  if (tiles.rows > 0) lines.push(say('log.rows', { rows: count(tiles.rows) }))
  if (tiles.tiles > 0) lines.push(say('log.tiles', { tiles: count(tiles.tiles) }))
  else if (tiles.m2 > 0) lines.push(say('log.set-area', { area: area(tiles.m2) }))
  if (tiles.broken > 0) lines.push(say('log.broken', { tiles: count(tiles.broken) }))
  if (tiles.leftBoxes !== null) lines.push(say('log.left-boxes', { boxes: number(tiles.leftBoxes, 2) }))
  if (tiles.leftTiles !== null) lines.push(say('log.left-tiles', { tiles: count(tiles.leftTiles) }))
  return lines
}

const who = (change: { readonly person: string; readonly personName?: string }): Amount =>
  quote(change.personName ?? change.person)

/** A reading in the crew's words, with the names of its photos. */
export function readingText({ text, photos = [] }: Pick<Reading, 'text' | 'photos'>): Phrase {
  const names = photos.map((photo) => quote(photo.name ?? photo.id))
  if (names.length === 0) return say('job.reading-text', { text: quote(text) })
  return text === '' ? say('job.reading-photo', { names }) : say('job.reading-with-photo', { text: quote(text), names })
}

/** One line of the history. */
export function changePhrase(change: Change, job: Job, brief: Brief, only: readonly FactName[] | null = null): Phrase {
  const at = { who: who(change), at: instant(change.at) }
  const undone = change.undone ? 'job.changed-undone' : 'job.changed'
  switch (change.is) {
    case 'facts': {
      const keys = only ? change.keys.filter((key) => only.includes(key)) : change.keys
      const what = keys.map((key) => {
        const [was, now] = [factPhrase(key, change.was, brief.metric), factPhrase(key, change.now, brief.metric)]
        if (now === null) return say('job.dropped', { what: factWord(key) })
        return was === null ? now : say('job.from-to', { now, was })
      })
      return say(undone, { ...at, what })
    }
    case 'use':
    case 'reading':
    case 'point':
      return say(undone, { ...at, what: whatChanged(change, job) })
    case 'undo':
      return say('job.changed', { ...at, what: say('job.an-undo', {}) })
  }
}

/** What a change told, without who and when. */
export function whatChanged(change: Exclude<Change, { readonly is: 'facts' }>, job: Job): Amount | Phrase {
  if (change.is === 'undo') return say('job.an-undo', {})
  if (change.is === 'point') return say('job.a-point', { name: quote(change.name) })
  if (change.is === 'reading') {
    const reading = job.readings.find((r) => r.id === change.id)
    return reading ? readingText(reading) : say('job.a-reading', {})
  }
  const use = job.uses.find((u) => u.id === change.id) ?? change.use
  return use ? usePhrase(use) : say('job.a-log', {})
}

/** What one log entry told. */
export function usePhrase(use: {
  readonly stuff: string
  readonly bags?: number
  readonly m2?: number
  readonly tiles?: number
  readonly rows?: number
  readonly opened?: number
  readonly leftBags?: number
  readonly leftBoxes?: number
  readonly leftTiles?: number
  readonly binnedBags?: number
  readonly broken?: number
  readonly room?: string
}): Phrase {
  const { room, ...bare } = use
  if (room !== undefined && use.rows === undefined)
    return say('log.use-in', { use: usePhrase(bare), room: quote(room) })
  const stuff = word(`stuff-${use.stuff}`)
  const bags = number(use.bags ?? use.leftBags ?? use.binnedBags ?? use.opened ?? 0, 2)
  if (use.bags !== undefined && use.m2 !== undefined) return say('log.use', { bags, stuff, area: area(use.m2) })
  if (use.bags !== undefined) return say('log.use-bags', { bags, stuff })
  if (use.opened !== undefined) return say('log.use-opened', { bags, stuff })
  if (use.binnedBags !== undefined) return say('log.use-binned', { bags, stuff })
  if (use.broken !== undefined) return say('log.use-broken', { tiles: count(use.broken) })
  if (use.rows !== undefined) return say('log.use-rows', { rows: count(use.rows) })
  if (use.tiles !== undefined) return say('log.use-tiles', { tiles: count(use.tiles) })
  if (use.leftBags !== undefined) return say('log.use-left', { bags, stuff })
  if (use.leftBoxes !== undefined) return say('log.use-left-boxes', { boxes: number(use.leftBoxes, 2) })
  if (use.leftTiles !== undefined) return say('log.use-left-tiles', { tiles: count(use.leftTiles) })
  return say('log.use-area', { area: area(use.m2 ?? 0) })
}
