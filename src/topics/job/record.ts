/** Points to compare with: the difference in quantities since one, and the record of a job on one page. */
import { logged, shownReadings } from '../../jobs/job.ts'
import { area, count, instant, type Phrase, quote, say, word } from '../../phrase.ts'
import { logValues } from '../log/values.ts'
import type { Brief, Cell, Told } from '../topic.ts'
import { factValues } from './index.ts'
import { numberIn, quantitiesOf, type Values } from './quantities.ts'
import { changePhrase, factPhrases, jobName, logLines, readingText } from './tell.ts'

export function markPoint(brief: Brief, name: string | null): Told {
  const point = name ?? 'bid'
  return {
    topic: 'job',
    answer: say('job.marked', { name: quote(point) }),
    values: factValues(brief.memory.facts),
    entries: [{ kind: 'point', version: 1, body: { name: point } }],
  }
}

/** What a change order lists, by key of the contract. */
const LISTED: readonly string[] = ['area_m2', 'tile_count', 'tile_boxes', 'mortar_bags', 'grout_bags']

const amount = (key: string, n: number): Cell => (key === 'area_m2' ? area(n) : count(n))

/** The difference in quantities between now and a point, the last one where none is named. */
export function changeOrder(brief: Brief, name: string | null): Told {
  const { memory } = brief
  const { points } = memory.job
  const point =
    (name === null ? undefined : points.find((p) => p.name === name || name.startsWith(p.name))) ?? points.at(-1)
  const now = quantitiesOf(brief, memory.facts)
  if (!point) return { topic: 'job', answer: say('job.no-point'), values: now ?? {} }
  const then = quantitiesOf(brief, point.facts)
  const rows = LISTED.flatMap((key) => {
    const [was, is] = [numberIn(then, key), numberIn(now, key)]
    return was === null && is === null ? [] : [{ key, was: was ?? 0, is: is ?? 0 }]
  })
  const changed = rows.filter((row) => Math.abs(row.is - row.was) > 1e-6)
  const line = (row: (typeof rows)[number]): Phrase =>
    say(row.is > row.was ? 'job.order-more' : 'job.order-less', {
      what: word(`quantity-${row.key}`),
      was: amount(row.key, row.was) as never,
      now: amount(row.key, row.is) as never,
      by: amount(row.key, Math.abs(row.is - row.was)) as never,
    })
  const lines = changed.map(line)
  const head = ['what', 'then', 'now', 'difference'].map((column) => say(`job.column-${column}`))
  return {
    topic: 'job',
    answer:
      lines.length > 0
        ? say('job.order', { name: quote(point.name), list: lines })
        : say('job.order-same', { name: quote(point.name) }),
    details: [
      say('job.order-since', { name: quote(point.name), at: instant(point.at) }),
      ...factChanges(brief, point.at),
    ],
    values: now ?? {},
    tables:
      rows.length > 0
        ? [
            {
              name: 'change-order.csv',
              head,
              rows: rows.map((r) => [
                say('job.cell', { what: word(`quantity-${r.key}`) }),
                round(r.was),
                round(r.is),
                round(r.is - r.was),
              ]),
            },
          ]
        : [],
  }
}

const round = (n: number): number => Math.round(n * 100) / 100
const MOST_LINES = 12

const factChanges = (brief: Brief, since: string): Phrase[] =>
  brief.memory.job.changes
    .filter(
      (c) =>
        c.is === 'facts' &&
        !c.undone &&
        Temporal.Instant.compare(Temporal.Instant.from(c.at), Temporal.Instant.from(since)) > 0,
    )
    .slice(-MOST_LINES)
    .map((c) => changePhrase(c, brief.memory.job, brief))

/** A one-page record: what was agreed, used, read and by whom. */
export function signOff(brief: Brief): Told {
  const { memory } = brief
  const { job, facts } = memory
  const values: Values = { ...quantitiesOf(brief, facts), ...factValues(facts), ...logValues(job) }
  const facts2 = factPhrases(facts, brief.metric)
  const readings = shownReadings(job).map((r) =>
    say('job.reading-line', {
      what: word(`reading-${r.what}`),
      text: readingText(r),
      who: quote(r.personName ?? r.person),
      at: instant(r.at),
    }),
  )
  const mortar = logged(job, 'mortar')
  const lines: Phrase[] = [
    ...facts2,
    ...logLines(job),
    ...(mortar.bags > 0 && mortar.m2 > 0 ? [say('log.per-bag', { coverage: area(mortar.m2 / mortar.bags) })] : []),
    ...readings,
  ]
  return {
    topic: 'job',
    answer: say('job.record', { job: jobName(job), at: instant(brief.now), n: count(job.changes.length) }),
    details: lines.slice(0, 40),
    values,
    tables: [
      {
        name: 'record.csv',
        head: [say('job.column-what'), say('job.column-value')],
        rows: [
          ...lines.map((line): Cell[] => [line, null]),
          ...LISTED.flatMap((key): Cell[][] => {
            const n = numberIn(values, key)
            return n === null ? [] : [[say('job.cell', { what: word(`quantity-${key}`) }), round(n)]]
          }),
          ...job.changes.slice(-MOST_LINES * 2).map((c): Cell[] => [changePhrase(c, job, brief), null]),
        ],
      },
    ],
  }
}
