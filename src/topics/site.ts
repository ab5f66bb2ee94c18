/** What it is like on site: told once, kept in the job, and used by whatever waits or mixes after that. */
import type { Facts, SaidTemperature } from '../facts.ts'
import type { Concept } from '../language/concepts.ts'
import type { Heard } from '../language/heard.ts'
import { type Phrase, say, temperature, word } from '../phrase.ts'
import type { Topic } from '../reply.ts'
import { asksSomething } from './job/asks.ts'
import type { Brief } from './topic.ts'

const FACT_OF = { air: 'siteC', high: 'siteC', slab: 'siteSlabC', low: 'siteLowC' } as const

/** The lasting facts that temperatures told of the site are. */
export function siteFacts(said: readonly SaidTemperature[] = []): Pick<Facts, 'siteC' | 'siteSlabC' | 'siteLowC'> {
  const facts: { siteC?: number; siteSlabC?: number; siteLowC?: number } = {}
  for (const { c, of } of said) if (of !== 'reference') facts[FACT_OF[of]] = c
  return facts
}

/** What is kept of the site, as it would be said. */
const keptOf = ({ siteC, siteSlabC, siteLowC }: Facts): SaidTemperature[] => [
  ...(siteC === undefined ? [] : [{ c: siteC, of: 'air' as const }]),
  ...(siteSlabC === undefined ? [] : [{ c: siteSlabC, of: 'slab' as const }]),
  ...(siteLowC === undefined ? [] : [{ c: siteLowC, of: 'low' as const }]),
]

export type Temperatures = {
  readonly all: readonly SaidTemperature[]
  /** Told where they come from the job, and not from the message or the talk. */
  readonly told: readonly Phrase[]
}

const onlyNight = (said: readonly SaidTemperature[]): boolean => said.length > 0 && said.every((t) => t.of === 'low')

/** Those of the question; where it has none, those of the site; a night low told alone goes with the day's that is kept. */
export function temperaturesOf({ facts }: Pick<Brief, 'facts'>): Temperatures {
  const said = (facts.temperatures ?? []).filter((t) => t.of !== 'reference')
  const kept = keptOf(facts).filter((t) => said.length === 0 || (onlyNight(said) && t.of !== 'low'))
  return {
    all: [...kept, ...said],
    told: kept.map((t) => say('site.kept-at', { of: word(`temperature-${t.of}`), temperature: temperature(t.c) })),
  }
}

/** The air that mortar is mixed and spread in, else what else was told. [C] */
export const airC = (all: readonly SaidTemperature[]): number | undefined =>
  (all.find((t) => t.of === 'air' || t.of === 'high') ?? all[0])?.c

/** Topics that tell their answer again when the site's temperature is told. */
export const GOES_BY_SITE: readonly Topic[] = ['cure', 'mix']

const PLACED: readonly Concept[] = ['site-word', 'outside-air', 'house-part', 'slab', 'low', 'highest', 'night', 'is']
const DONE: readonly Concept[] = ['set-verb', 'grouted-verb', 'mixed-verb']
const CORRECTS: readonly Concept[] = ['no-correction', 'make-it']
/** What else may stand in such a message; any other meaning makes it one of something else. */
const BESIDE: ReadonlySet<Concept> = new Set<Concept>([
  ...PLACED,
  ...CORRECTS,
  'room',
  'floor',
  'exterior',
  'heated',
  'temperature-word',
  'day-word',
  'time-word',
  'ago',
  'about',
  'per',
  'at',
  'the',
  'to',
  'from',
  'for',
  'of',
  'and',
  'with',
  'convert-to',
  'laid-in',
  'all-rooms',
  'so-far',
  'will-do',
  'have',
  'cure-word',
  'freeze',
])

/** "site is 58F", "shop was 61": tells how warm it is and nothing else. */
export function statesSite(heard: Heard): boolean {
  const { temperatures, ...rest } = heard.facts
  const others = Object.keys(rest).filter((key) => !['surface', 'wet', 'exterior', 'done'].includes(key))
  return (
    temperatures !== undefined &&
    others.length === 0 &&
    heard.loose.length === 0 &&
    heard.freeUnits.length === 0 &&
    heard.marks.every((m) => BESIDE.has(m.concept)) &&
    !asksSomething(heard) &&
    heard.commands.command === null &&
    !heard.commands.log.has('reading') &&
    heard.has(...PLACED, ...CORRECTS)
  )
}

/** Whether temperatures of a message are the site's to keep: told, not asked about. */
export const keepsSite = (heard: Heard): boolean =>
  heard.facts.temperatures !== undefined &&
  (heard.has('site-word', 'outside-air') ||
    (!asksSomething(heard) && (statesSite(heard) || heard.has(...DONE, ...CORRECTS))))
