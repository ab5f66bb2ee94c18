/** Jobs put aside and opened again. */
import { emptyJob } from './job.ts'
import type { JobBody, Memory } from './memory.ts'

const MOST_PARKED = 30

const PARKED_CHANGES = 20

/** Nothing was said of the current job yet. */
const isBlank = (memory: Memory): boolean =>
  memory.job.name === null && memory.job.changes.length === 0 && Object.keys(memory.facts).length === 0

export function moved(memory: Memory, body: JobBody, at: string): Memory {
  if (body.act === 'name') return { ...memory, job: { ...memory.job, name: body.name } }
  const slim = { ...memory.job, changes: memory.job.changes.slice(-PARKED_CHANGES) }
  const aside = isBlank(memory) ? memory.parked : [...memory.parked, { job: slim, facts: memory.facts, at }]
  const fresh = { ...memory, talk: null, talkBefore: null, talkMessage: null, asked: null }
  if (body.act === 'start') {
    const n = Math.max(memory.job.n, ...memory.parked.map((p) => p.job.n)) + (isBlank(memory) ? 0 : 1)
    // The zone and the country are the channel's place, not the job's tile: they go along.
    const { zone, country } = memory.facts
    const facts = { ...(zone === undefined ? {} : { zone }), ...(country === undefined ? {} : { country }) }
    return { ...fresh, facts, job: { ...emptyJob, n, name: body.name }, parked: aside.slice(-MOST_PARKED) }
  }
  const found = memory.parked.find((p) => p.job.n === body.n)
  if (!found) return memory
  return {
    ...fresh,
    facts: found.facts,
    job: found.job,
    parked: aside.filter((p) => p !== found).slice(-MOST_PARKED),
  }
}
