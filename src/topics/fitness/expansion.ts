/** "how much does 40 ft of porcelain move over 50 F": a run of tile between two temperatures. */
import type { Heard } from '../../language/heard.ts'
import type { Quantity } from '../../language/measures.ts'
import { number, run, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'

/** Expansion of one tested ceramic cladding tile [1/K]: Applied Adhesion Science 2018, table 1. */
const TILE_PER_K = 6.0e-6
const K_PER_F = 5 / 9
const LEAST_RUN_MM = 300

type RunAndRise = { readonly runMm: number; readonly riseK: number }

/** The longest length of a message and the temperatures it lies between: told as a difference, or as two. */
export function runAndRiseIn(heard: Heard): RunAndRise | null {
  const runMm = Math.max(...heard.quantities.flatMap((q) => (q.dimension === 'length' ? [q.si ?? 0] : [])))
  const degrees = heard.quantities.filter((q) => q.dimension === 'temperature')
  if (!(runMm >= LEAST_RUN_MM) || degrees.length === 0) return null
  const isCelsius = (q: Quantity): boolean => q.unit === 'c' || (q.unit !== 'f' && heard.system === 'metric')
  const inF = degrees.some((q) => !isCelsius(q))
  const figures = degrees.map((q) => (q.negative ? -q.n : q.n))
  const rise = figures.length === 1 ? Math.abs(figures[0]!) : Math.max(...figures) - Math.min(...figures)
  return rise > 0 ? { runMm, riseK: rise * (inF ? K_PER_F : 1) } : null
}

export function expansionTold(brief: Brief): Outcome<Told> {
  const told = runAndRiseIn(brief.heard)
  if (!told) return refuse('question', { question: 'room' })
  const moveMm = TILE_PER_K * told.runMm * told.riseK
  const args = {
    run: run(told.runMm),
    move: small(moveMm),
    mm: number(moveMm, 2),
    kelvin: number(told.riseK, 1),
    fahrenheit: number(told.riseK / K_PER_F, 0),
  }
  return fine({
    topic: 'joints',
    answer: say(brief.metric ? 'expansion.metric' : 'expansion.answer', args),
    details: [say('expansion.also')],
    sources: [{ text: 'Applied Adhesion Science 2018, table 1 (one tested tile)' }],
    working: [say('expansion.work', args)],
    values: { expansion_mm: moveMm },
    offers: ['math'],
  })
}
