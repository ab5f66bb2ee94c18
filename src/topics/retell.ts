/** Messages that only tell a part of the last wait or mix anew: how warm it is, when it was set. */
import type { Talk } from '../jobs/memory.ts'
import type { Concept } from '../language/concepts.ts'
import type { Heard } from '../language/heard.ts'
import { toSi } from '../language/measures.ts'
import { mentionsTime } from '../language/moments.ts'
import { GOES_BY_SITE, statesSite } from './site.ts'

/** Whether the last question is to be answered again with what this message tells. */
export const retells = (heard: Heard, talk: Talk): boolean =>
  GOES_BY_SITE.includes(talk.topic) &&
  (statesSite(heard) || isDegreesOnly(heard) || retellsTime(heard, talk) || asksAgain(heard, talk))

const nothingElse = (heard: Heard): boolean =>
  Object.keys(heard.facts).every((key) => ['surface', 'wet', 'done', 'temperatures'].includes(key))

const isDegreesOnly = (heard: Heard): boolean =>
  heard.facts.temperatures !== undefined && heard.items.length === 1 && nothingElse(heard) && heard.tokens.length <= FEW

const FEW = 7

const WAITS: readonly Concept[] = ['grout', 'walk', 'heavy', 'wet-use']

/** "can we grout yet", with the setting known: when it is, and no rule. */
const asksAgain = (heard: Heard, talk: Talk): boolean =>
  talk.topic === 'cure' &&
  talk.facts.when !== undefined &&
  heard.has('can-we', 'when', 'how-long', 'what-if') &&
  heard.has(...WAITS) &&
  heard.quantities.length === 0 &&
  nothingElse(heard)

/** "make it 4pm", "actually it was 3". */
function retellsTime(heard: Heard, talk: Talk): boolean {
  if (talk.topic !== 'cure' || talk.facts.when === undefined || !nothingElse(heard)) return false
  if (!heard.has('make-it', 'no-correction', 'is') || heard.tokens.length > FEW) return false
  return mentionsTime(heard) || (bareFigure(heard) ?? MOST_HOUR + 1) <= MOST_HOUR
}

const MOST_HOUR = 12

/** The one figure of a message that is of nothing said. */
function bareFigure(heard: Heard): number | null {
  const [bare] = heard.loose
  const alone = heard.items.length === 1 && heard.loose.length === 1 && bare.nouns.length === 0
  return alone && bare.q.dimension === 'none' && Number.isInteger(bare.q.n) ? bare.q.n : null
}

const BESIDE_DEGREES: ReadonlySet<Concept> = new Set<Concept>([
  'about',
  'make-it',
  'what-if',
  'no-correction',
  'is',
  'the',
  'what',
  'will-do',
  'so-far',
  'time-word',
  'day-word',
  'night',
  'per',
])

const DEGREES_F: readonly [number, number] = [20, 120]
const DEGREES_C: readonly [number, number] = [MOST_HOUR + 1, 45]

/** "45", after a wait that asked for the night; "what if it was 75": degrees, since nothing else of a wait is told so. */
export function withBareDegrees(heard: Heard, talk: Talk | null): Heard {
  if (talk === null || !GOES_BY_SITE.includes(talk.topic) || heard.tokens.length > FEW || !nothingElse(heard))
    return heard
  const n = bareFigure(heard)
  const [least, most] = talk.metric ? DEGREES_C : DEGREES_F
  if (n === null || n < least || n > most || heard.facts.temperatures || heard.has('at', 'ago')) return heard
  const changes = heard.has('make-it', 'no-correction', 'is')
  if (heard.marks.some((m) => !BESIDE_DEGREES.has(m.concept))) return heard
  const { temperatures, siteC } = talk.facts
  const asksNight = talk.topic === 'cure' && (temperatures !== undefined || siteC !== undefined)
  const of = changes || !asksNight ? ('air' as const) : ('low' as const)
  return { ...heard, loose: [], facts: { ...heard.facts, temperatures: [{ c: toSi(n, talk.metric ? 'c' : 'f'), of }] } }
}
