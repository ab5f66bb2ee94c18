/** The record of a job on one page: rooms and tile, what it took against the plan, what was read, waits, cautions, lines to sign. */
import { cautionsOfTopic } from '../../cautions.ts'
import type { Pattern, Room } from '../../facts.ts'
import { type Logged, logged, type Reading, type Stuff, shownReadings } from '../../jobs/job.ts'
import { type Amount, area, count, instant, number, type Phrase, quote, say, small, word } from '../../phrase.ts'
import type { Page, PageTable } from '../../pictures/page.ts'
import { tilingOf } from '../../room-tiles.ts'
import { roomM2, roomPhrase } from '../floors.ts'
import { logValues } from '../log/values.ts'
import { tilePhrase } from '../stuff.ts'
import type { Brief, Cell, PageSketch, Told } from '../topic.ts'
import { countsOf, rounded } from './counts.ts'
import { factValues } from './holds.ts'
import { jobTitle, signatures } from './page-words.ts'
import { numberIn, type Values } from './quantities.ts'
import { isoAt } from './remind.ts'
import { changePhrase, factPhrases, jobName, logLines, readingText } from './tell.ts'

const MOST_LINES = 40
const MOST_CHANGES = 24

/** A one-page record: what was agreed, used, read and by whom. */
export function signOff(brief: Brief): Told {
  const { job, facts } = brief.memory
  const { all, values: planned } = countsOf(brief, facts)
  const values: Values = { ...planned, ...factValues(facts), ...logValues(job) }
  const readings = shownReadings(job)
  const mortar = logged(job, 'mortar')
  const waits = waitsOf(brief)
  const lines: Phrase[] = [
    ...factPhrases(facts, brief.metric),
    ...logLines(job),
    ...(mortar.bags > 0 && mortar.m2 > 0 ? [say('log.per-bag', { coverage: area(mortar.m2 / mortar.bags) })] : []),
    ...readings.map(readingLine),
    ...waits,
  ]
  return {
    topic: 'job',
    answer: say('job.record', { job: jobName(job), at: instant(brief.now), n: count(job.changes.length) }),
    details: lines.slice(0, MOST_LINES),
    values,
    pages: [recordPage(brief, values, readings, waits)],
    tables: [
      {
        name: 'record.csv',
        head: [say('job.column-what'), say('job.column-value')],
        rows: [
          ...lines.map((line): Cell[] => [line, null]),
          ...photoRows(readings),
          ...all.map(({ what, n }): Cell[] => [what, rounded(n)]),
          ...job.changes.slice(-MOST_CHANGES).map((c): Cell[] => [changePhrase(c, job, brief), null]),
        ],
      },
    ],
  }
}

const readingLine = (reading: Reading): Phrase =>
  say('job.reading-line', {
    what: word(`reading-${reading.what}`),
    text: readingText(reading),
    who: quote(reading.personName ?? reading.person),
    at: instant(reading.at),
  })

/** Where each photo is kept. */
const photoRows = (readings: readonly Reading[]): Cell[][] =>
  readings
    .flatMap(({ photos = [] }) => photos)
    .map((photo) => [
      say('job.reading-photo', { names: [quote(photo.name ?? photo.id)] }),
      quote(photo.url ?? photo.id),
    ])

const waitFrom = (about: string, at: string): Phrase => say(`job.from-${about}`, { at: instant(at) })

/** When it may be grouted, walked on, loaded, wetted: as it was last worked out, and what is still to be told of it. */
function waitsOf(brief: Brief): Phrase[] {
  const { memory } = brief
  const values = memory.talk?.values ?? {}
  const worked = (['grout', 'walk', 'heavy', 'water'] as const).flatMap((about) => {
    const at = values[`${about}_at`]
    return typeof at === 'string' ? [waitFrom(about, at)] : []
  })
  if (worked.length > 0) return worked
  return memory.promised
    .filter(({ about }) => about === 'grout' || about === 'walk' || about === 'heavy' || about === 'water')
    .map(({ about, dueMs }) => waitFrom(about, isoAt(dueMs, brief)))
}

/** Cautions that go with what was set, cut and mixed. */
const CAUTIONED = ['mortar', 'layout', 'order'] as const

function recordPage(brief: Brief, values: Values, readings: readonly Reading[], waits: readonly Phrase[]): PageSketch {
  const { job } = brief.memory
  const { cautions } = brief.settings
  const ids = [...new Set(CAUTIONED.flatMap((topic) => cautionsOfTopic(cautions, topic)))]
  return {
    name: 'job-record.svg',
    alt: say('page.record-alt', { n: count(readings.length) }),
    page: (text): Page => ({
      title: text(say('page.record', { job: jobTitle(job) })),
      under: text(say('page.record-under', { at: instant(brief.now), n: count(job.changes.length) })),
      sections: [
        roomsTable(brief, text),
        materialsTable(brief, values, text),
        {
          heading: text(say('page.readings')),
          head: ['reading', 'who', 'when'].map((column) => text(say(`page.column-${column}`))),
          rows: readings.map((r) => [text(readingText(r)), r.personName ?? r.person, text(told(instant(r.at)))]),
        },
        {
          heading: text(say('page.waits')),
          lines: waits.length > 0 ? waits.map(text) : [text(say('page.waits-open'))],
        },
        { heading: text(say('page.cautions')), lines: [ids.map((id) => text(say(`caution.${id}.tag`))).join(' ')] },
      ],
      ...signatures(text),
    }),
  }
}

const told = (amount: Amount | Phrase): Phrase => say('job.cell', { what: amount })
const NONE = say('page.none')

function patternTold(pattern: Pattern | undefined): Phrase {
  const [over, under] = pattern?.offset ?? [1, 2]
  if (pattern?.name === 'offset') return say('page.offset', { over: count(over), under: count(under) })
  return !pattern || pattern.name === 'stacked' ? say('page.straight') : told(word(`pattern-${pattern.name}`))
}

function roomsTable({ memory: { facts }, metric }: Brief, text: (phrase: Phrase) => string): PageTable {
  const row = (what: Phrase, m2: number, tiling: ReturnType<typeof tilingOf>): string[] => [
    text(what),
    text(told(area(m2))),
    text(tiling.tile && tiling.tile.lengthMm > 0 ? tilePhrase(tiling.tile, metric) : NONE),
    text(tiling.jointMm === undefined ? NONE : told(small(tiling.jointMm))),
    text(patternTold(tiling.pattern)),
  ]
  const rooms = facts.rooms ?? []
  const many = (room: Room): Phrase =>
    room.count > 1 ? say('page.times', { n: count(room.count), room: roomPhrase(room) }) : roomPhrase(room)
  return {
    heading: text(say('page.rooms')),
    head: ['room', 'area', 'tile', 'joint', 'pattern'].map((column) => text(say(`page.column-${column}`))),
    rows:
      rooms.length > 0
        ? rooms.map((room) => row(many(room), roomM2(room), tilingOf(facts, room)))
        : facts.areaM2 === undefined
          ? []
          : [row(told(word('floor')), facts.areaM2, tilingOf(facts, { count: 1, pieces: [] }))],
  }
}

/** What was planned beside what was used; a stuff that was neither is left out. */
function materialsTable(brief: Brief, values: Values, text: (phrase: Phrase) => string): PageTable {
  const { job } = brief.memory
  const tiles = logged(job, 'tile')
  const planned = (key: string): string => {
    const n = numberIn(values, key)
    return text(n === null ? NONE : told(count(n)))
  }
  const bags = (stuff: Stuff, log: Logged): string[][] =>
    log.any || numberIn(values, `${stuff}_bags`) !== null
      ? [
          [
            text(say('job.cell', { what: word(`quantity-${stuff}_bags`) })),
            planned(`${stuff}_bags`),
            text(log.any ? told(number(log.bags, 1)) : NONE),
            text(log.bags > 0 && log.m2 > 0 ? say('page.per-bag', { coverage: area(log.m2 / log.bags) }) : NONE),
          ],
        ]
      : []
  const set: Phrase[] = [
    ...(tiles.tiles > 0 ? [say('log.use-tiles', { tiles: count(tiles.tiles) })] : []),
    ...(tiles.rows > 0 ? [say('log.use-rows', { rows: count(tiles.rows) })] : []),
  ]
  return {
    heading: text(say('page.materials')),
    head: ['what', 'planned', 'used', 'note'].map((column) => text(say(`page.column-${column}`))),
    rows: [
      ...countsOf(brief, brief.memory.facts)
        .all.filter(({ key }) => key.startsWith('tiles') || key.startsWith('boxes'))
        .map(({ what, n, tell }) => [text(what), text(told(tell(n))), text(NONE), text(NONE)]),
      ...(set.length > 0 || tiles.broken > 0
        ? [
            [
              text(say('page.tiles-set')),
              text(NONE),
              text(set[0] ?? NONE),
              text(tiles.broken > 0 ? say('log.use-broken', { tiles: count(tiles.broken) }) : NONE),
            ],
          ]
        : []),
      ...bags('mortar', logged(job, 'mortar')),
      ...bags('grout', logged(job, 'grout')),
    ],
  }
}
