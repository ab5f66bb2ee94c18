/** Which messages ask of a layout without being one: a pole by its length, rules of off-cuts side by side. */
import type { Heard } from '../language/heard.ts'
import { alone } from './around/read.ts'

/** Bare figures from here on are a pole's. */
const LEAST_BARE = 24
const LEAST_POLE_MM = 300
const MOST_POLE_MM = 60_000

/** The length a pole is asked for, in mm: the longest that the message tells beside its tile; null where it tells a floor. */
export function poleLengthMm(heard: Heard): number | null {
  if (!heard.has('story-pole') || heard.facts.rooms !== undefined || heard.facts.areaM2 !== undefined) return null
  const figures = alone(heard)
  const lengths = figures.flatMap((q) => (q.dimension === 'length' && q.si !== null ? [q.si] : []))
  // "96 in 6x6": a bare figure too large to be feet is inches, or millimetres to a metric crew.
  const bare = figures.flatMap((q) => (q.dimension === 'none' && q.n >= LEAST_BARE ? [q.n] : []))
  const inches = heard.system === 'metric' ? 1 : 25.4
  const longest = Math.max(...lengths, ...bare.map((n) => n * inches))
  return longest >= LEAST_POLE_MM && longest <= MOST_POLE_MM ? longest : null
}

const RULES = ['trade-rule', 'any-offcut', 'fresh-tile'] as const

/** A rule of reuse held against others: "vs any off-cut", "trade rule or fresh tile". */
export const rulesCompared = (heard: Heard): boolean =>
  heard.has('any-offcut', 'fresh-tile') &&
  (heard.has('or', 'cost', 'compared') || RULES.filter((rule) => heard.has(rule)).length > 1)
