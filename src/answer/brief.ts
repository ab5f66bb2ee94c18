/** What a topic is asked with: the message, what is known, and the language, units and words it is heard in. */
import type { Facts } from '../facts.ts'
import type { Memory } from '../jobs/memory.ts'
import { hear } from '../language/hear.ts'
import type { HearContext, Heard } from '../language/heard.ts'
import type { Languages } from '../language/languages.ts'
import type { Lexicon } from '../language/lexicon.ts'
import { withOwnWords } from '../language/own-words.ts'
import type { Message } from '../message.ts'
import type { Settings } from '../settings.ts'
import type { Meaning } from '../talk.ts'
import { statesSite } from '../topics/site.ts'
import type { Brief } from '../topics/topic.ts'
import type { Libraries } from '../units/libraries.ts'

/** What the shell hands in, once. */
export type Tools = { readonly settings: Settings; readonly languages: Languages; readonly libraries: Libraries }

/** A language's words with the crew's own laid over them. */
export function lexiconOf(language: string, memory: Memory, tools: Tools): Lexicon {
  const lexicon = tools.languages.lexicon(language)
  return withOwnWords(lexicon, memory.words, (means) => hear(means, lexicon).facts)
}

/** The language a message is in: that of most of its words, else the channel's last. */
export const spokenIn = (text: string, memory: Memory, tools: Tools): string => {
  const last = memory.talk?.language ?? tools.settings.defaults.language
  return tools.languages.detect(text, last) ?? last
}

export function contextOf(memory: Memory, person: string, settings: Settings): HearContext {
  const facts = { ...memory.facts, ...memory.talk?.facts }
  return {
    hasRoom: facts.rooms !== undefined || facts.areaM2 !== undefined,
    hasTile: facts.tile !== undefined,
    roomRather: facts.tile === undefined && (memory.talk?.topic === 'underlayment' || memory.talk?.topic === 'shower'),
    metric: memory.talk?.metric ?? usuallyMetric(facts, settings),
    decimals: memory.people[person]?.decimals ?? null,
  }
}

/** Crews outside North America measure in metric, unless they write otherwise. */
const usuallyMetric = ({ country }: Facts, settings: Settings): boolean =>
  country === undefined ? settings.defaults.units === 'metric' : country !== 'US'

/** The units asked for in words, else those the message was written in, else those of the talk. */
function metricOf(heard: Heard, before: boolean | undefined, usual: boolean): boolean {
  if (heard.has('metric-word')) return true
  if (heard.has('imperial-word')) return false
  return heard.system === null ? (before ?? usual) || saysCelsius(heard) : heard.system === 'metric'
}

/** Temperatures in the figures they were told in are Celsius; they tell the units where nothing else does. */
function saysCelsius(heard: Heard): boolean {
  const { facts, quantities } = heard
  const said = facts.temperatures ?? []
  return (
    said.length > 0 &&
    said.every(({ c }) =>
      quantities.some((q) => q.n === c && (q.unit === 'c' || q.unit === 'degree' || statesSite(heard))),
    )
  )
}

export function briefOf(
  message: Message,
  heard: Heard,
  meaning: Meaning,
  memory: Memory,
  tools: Tools,
  language: string,
  zone: string | null,
): Brief {
  const { talk } = memory
  return {
    heard,
    facts: meaning.facts,
    carried: meaning.carried,
    settings: tools.settings,
    memory,
    learned: message.learned ?? [],
    person: message.person,
    now: message.now,
    zone,
    metric: metricOf(
      heard,
      heard.facts.country === undefined ? talk?.metric : undefined,
      usuallyMetric(meaning.facts, tools.settings),
    ),
    language,
    libraries: tools.libraries,
    has: (...concepts) =>
      heard.has(...concepts) ||
      (meaning.followsUp && talk?.topic === meaning.topic && concepts.some((c) => talk.cues.includes(c))),
  }
}
