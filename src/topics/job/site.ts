/** How warm the site is, told and kept. */
import type { FactName } from '../../facts.ts'
import { differing } from '../../jobs/job.ts'
import { ENTRY_VERSIONS } from '../../jobs/memory.ts'
import { type Phrase, say, temperature } from '../../phrase.ts'
import { cureLimits } from '../../practice.ts'
import { siteFacts } from '../site.ts'
import { knownTile, mortarOf } from '../stuff.ts'
import type { Brief, Told } from '../topic.ts'
import { factValues } from './holds.ts'
import { factPhrase } from './tell.ts'

/** "site is 58F": what waits and mixing go by from now on. */
export function keepSite(brief: Brief): Told {
  const { memory } = brief
  const site = siteFacts(brief.heard.facts.temperatures)
  const facts = { ...memory.facts, ...site }
  const keys = Object.keys(site) as FactName[]
  const running = memory.promised.some(
    (p) => p.about !== 'note' && p.dueMs > Temporal.Instant.from(brief.now).epochMilliseconds,
  )
  return {
    topic: 'job',
    answer: say('job.site', { list: keys.flatMap((key) => factPhrase(key, facts, brief.metric) ?? []) }),
    details: [...(running ? [say('job.site-running')] : [])],
    warnings: outOfRange(
      brief,
      Object.values(site).flatMap((c) => c ?? []),
    ),
    values: factValues(facts),
    entries:
      differing(memory.facts, facts).length > 0
        ? [{ kind: 'facts', version: ENTRY_VERSIONS.facts, body: { facts } }]
        : [],
    offers: ['undo'],
  }
}

/** What the job's mortar should not be kept at, said before anything is set. */
function outOfRange(brief: Brief, told: readonly number[]): Phrase[] {
  const meant = mortarOf(brief, knownTile(brief.memory.facts))
  if (!meant.ok || told.length === 0) return []
  const { minC, maxC } = cureLimits(brief.settings, meant.value.mortar)
  const [coldest, warmest] = [Math.min(...told), Math.max(...told)]
  return [
    ...(coldest < minC ? [say('cure.below-minimum', { value: temperature(coldest), min: temperature(minC) })] : []),
    ...(maxC !== null && warmest > maxC
      ? [say('cure.above-maximum', { value: temperature(warmest), max: temperature(maxC) })]
      : []),
  ]
}
