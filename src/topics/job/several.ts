/** Several jobs of one channel: started, put aside, opened again, listed, named. */
import { ENTRY_VERSIONS, type JobBody, type Memory, type ParkedJob } from '../../jobs/memory.ts'
import { instant, quote, say } from '../../phrase.ts'
import type { Brief, Told } from '../topic.ts'
import { factValues, holdings, soFar } from './holds.ts'
import { lasting } from './quantities.ts'
import { factPhrases, jobName } from './tell.ts'

/** The name a command brings, without a size that follows it. */
export function nameIn(brief: Brief): string | null {
  const { name } = brief.heard.commands
  return name?.replace(/[,;:]?\s*\d+[\d'"/.\s-]*(?:x|by|sf|sq|ft|m2|metros)[\s\S]*$/, '').trim() || null
}

const jobEntry = (body: JobBody) => ({ kind: 'job', version: 1, body })

const isFresh = ({ job: current, facts }: Memory): boolean =>
  current.changes.length === 0 && Object.keys(facts).length === 0

export function start(brief: Brief, name: string | null): Told {
  const { memory } = brief
  if (name !== null && parkedNamed(memory, name)) return open(brief, name)
  const facts = lasting(brief.heard.facts)
  const told = Object.keys(facts).length > 0 && facts.rooms !== undefined
  const zone = memory.facts.zone === undefined ? {} : { zone: memory.facts.zone }
  return {
    topic: 'job',
    answer: name === null ? say('job.started-over') : say('job.started', { name: quote(name) }),
    details: isFresh(memory) ? [] : [say('job.put-aside', { job: jobName(memory.job) })],
    values: told ? factValues(facts) : {},
    entries: [
      jobEntry({ act: 'start', name }),
      ...(told ? [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts: { ...zone, ...facts } } }] : []),
    ],
  }
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase()

/** The latest job put aside under a name, or under its number. */
function parkedNamed({ parked }: Memory, name: string): ParkedJob | undefined {
  return (
    parked.findLast((p) => p.job.name !== null && same(p.job.name, name)) ??
    parked.findLast((p) => String(p.job.n) === name.replace(/^\D+/, '')) ??
    parked.findLast((p) => p.job.name?.toLowerCase().includes(name.toLowerCase()))
  )
}

/** Opens a job again: the one named, or the last one put aside. */
export function open(brief: Brief, name: string | null): Told {
  const { memory } = brief
  if (name && memory.job.name !== null && same(memory.job.name, name))
    return { ...soFar(brief), answer: say('job.already', { job: jobName(memory.job) }) }
  const found = name ? parkedNamed(memory, name) : memory.parked.at(-1)
  if (!found)
    return {
      ...listJobs(brief),
      answer: name ? say('job.unknown', { name: quote(name) }) : say('job.none-aside'),
      values: {},
    }
  const held = holdings(brief, found.facts, found.job)
  const list = factPhrases(found.facts, brief.metric)
  return {
    topic: 'job',
    answer: say('job.reopened', { job: jobName(found.job) }),
    details: [...(list.length > 0 ? [say('job.now', { list })] : []), ...(held.details ?? [])],
    values: held.values,
    entries: [jobEntry({ act: 'open', n: found.job.n })],
  }
}

const SHOWN_JOBS = 8

export function listJobs(brief: Brief): Told {
  const { memory } = brief
  const aside = memory.parked.toReversed().slice(0, SHOWN_JOBS)
  return {
    topic: 'job',
    answer: say('job.current', { job: jobName(memory.job) }),
    details: aside.map((p) =>
      say('job.aside', {
        job: jobName(p.job),
        at: instant(p.at),
        list: factPhrases(p.facts, brief.metric).slice(0, 3),
      }),
    ),
    values: factValues(memory.facts),
  }
}

export function rename(brief: Brief): Told {
  const name = nameIn(brief)
  if (name === null) return { ...soFar(brief), answer: say('job.name-it') }
  return {
    topic: 'job',
    answer: say('job.renamed', { name: quote(name) }),
    values: factValues(brief.memory.facts),
    entries: [jobEntry({ act: 'name', name })],
  }
}
