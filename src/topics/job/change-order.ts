/** A change order: what the job takes now against a point before, as lines, a table and a page to sign. */

import { count, instant, type Phrase, quote, say } from '../../phrase.ts'
import type { Page } from '../../pictures/page.ts'
import type { Brief, PageSketch, Told } from '../topic.ts'
import { countsOf, type Quantity, rounded } from './counts.ts'
import { factValues } from './holds.ts'
import { jobTitle, signatures } from './page-words.ts'
import { type Since, sinceIn } from './since.ts'
import { changePhrase } from './tell.ts'

export function markPoint(brief: Brief, name: string | null): Told {
  const point = name ?? 'bid'
  return {
    topic: 'job',
    answer: say('job.marked', { name: quote(point) }),
    values: factValues(brief.memory.facts),
    entries: [{ kind: 'point', version: 1, body: { name: point } }],
  }
}

type Row = Pick<Quantity, 'key' | 'what' | 'tell'> & { readonly was: number; readonly is: number }

const TOO_SMALL = 1e-6
const differs = ({ was, is }: Row): boolean => Math.abs(is - was) > TOO_SMALL

/** The difference in quantities between now and a point, the last one where none is named. */
export function changeOrder(brief: Brief, name: string | null): Told {
  const { memory } = brief
  const since = sinceIn(brief, name)
  const now = countsOf(brief, memory.facts)
  if (since === null || typeof since === 'string') {
    const known = memory.job.points.map((p) => quote(p.name))
    return {
      topic: 'job',
      answer:
        since === null || known.length === 0
          ? say('job.no-point')
          : say('job.unknown-point', { name: quote(since), list: known }),
      values: now.values,
    }
  }
  const rows = compared(countsOf(brief, since.facts).all, now.all)
  const changed = rows.filter(differs)
  const lines = changed.map(rowLine)
  const changes = since.changes.slice(-MOST_CHANGES).map((c) => changePhrase(c, memory.job, brief))
  return {
    topic: 'job',
    answer:
      lines.length > 0
        ? say('job.order', { since: since.name, list: lines })
        : say('job.order-same', { since: since.name }),
    details: [...(since.by === null ? [] : [markedLine(since)]), ...changes],
    values: now.values,
    ...(lines.length > 0 ? { pages: [orderPage(brief, since, rows, changes)], tables: [orderTable(rows)] } : {}),
  }
}

const MOST_CHANGES = 12

const markedLine = ({ at, by }: Since): Phrase => say('job.order-since', { at: instant(at), who: quote(by ?? '') })

function compared(then: readonly Quantity[], now: readonly Quantity[]): Row[] {
  const rows = now.map(({ n, ...q }): Row => ({ ...q, was: then.find((one) => one.key === q.key)?.n ?? 0, is: n }))
  const gone = then.filter((q) => now.every((one) => one.key !== q.key))
  return [...rows, ...gone.map(({ n, ...q }): Row => ({ ...q, was: n, is: 0 }))]
}

const by = ({ was, is, tell }: Row): Phrase =>
  say(is >= was ? 'job.by-more' : 'job.by-less', { by: tell(Math.abs(is - was)) })

const rowLine = (row: Row): Phrase =>
  say('job.order-line', { what: row.what, was: row.tell(row.was), now: row.tell(row.is), by: by(row) })

const HEAD = ['what', 'then', 'now', 'difference'] as const

const orderTable = (rows: readonly Row[]): NonNullable<Told['tables']>[number] => ({
  name: 'change-order.csv',
  head: HEAD.map((column) => say(`job.column-${column}`)),
  rows: rows.map((r) => [r.what, rounded(r.was), rounded(r.is), rounded(r.is - r.was)]),
})

function orderPage(brief: Brief, since: Since, rows: readonly Row[], changes: readonly Phrase[]): PageSketch {
  const { job } = brief.memory
  return {
    name: 'change-order.svg',
    alt: say('page.order-alt', { n: count(rows.filter(differs).length) }),
    page: (text): Page => ({
      title: text(say('page.order', { job: jobTitle(job) })),
      under: text(say('page.order-under', { since: since.name, at: instant(since.at), now: instant(brief.now) })),
      sections: [
        {
          heading: text(say('page.quantities')),
          head: HEAD.map((column) => text(say(`job.column-${column}`))),
          rows: rows.map((row) => [
            text(row.what),
            text(say('job.cell', { what: row.tell(row.was) })),
            text(say('job.cell', { what: row.tell(row.is) })),
            differs(row) ? text(by(row)) : '0',
          ]),
        },
        { heading: text(say('page.changes')), lines: changes.map(text) },
      ],
      ...signatures(text),
    }),
  }
}
