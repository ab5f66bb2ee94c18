/** Where the job is: its time zone and its country. */
import { ENTRY_VERSIONS } from '../../jobs/memory.ts'
import { quote, say } from '../../phrase.ts'
import type { Brief, Told } from '../topic.ts'
import { factValues } from './holds.ts'

export function setZone(brief: Brief, zone: string): Told {
  const facts = { ...brief.memory.facts, zone }
  return {
    topic: 'job',
    answer: say('job.zone', { zone: quote(zone), at: { is: 'quote', text: clockIn(brief.now, zone, brief.language) } }),
    values: factValues(facts),
    entries:
      zone === brief.memory.facts.zone ? [] : [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts } }],
  }
}

/** "we're in Germany": whose rules hold, until the crew says otherwise. */
export function setCountry(brief: Brief): Told {
  const { country } = brief.heard.facts
  const facts = { ...brief.memory.facts, ...(country === undefined ? {} : { country }) }
  return {
    topic: 'job',
    answer: say('job.country', { country: say(`rule.country-${country}`) }),
    values: factValues(facts),
    entries: country === brief.memory.facts.country ? [] : [{ kind: 'facts', version: 2, body: { facts } }],
  }
}

const clockIn = (now: string, zone: string, language: string): string =>
  new Intl.DateTimeFormat(language, { timeZone: zone, hour: 'numeric', minute: '2-digit' }).format(
    Temporal.Instant.from(now).epochMilliseconds,
  )
