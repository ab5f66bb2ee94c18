/** Units and feet-inch-fraction arithmetic. */
import { type Conversion, conversionIn } from '../language/conversions.ts'
import { IMPERIAL, METRIC, toSi } from '../language/measures.ts'
import { number, type Phrase, quote, room, say, small, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { convert as between, sumInches } from '../units/convert.ts'
import type { UnitName } from '../units/names.ts'
import type { Brief, Told } from './topic.ts'

const talkArea = (brief: Brief): number | null => {
  const m2 = brief.memory.talk?.values['area_m2']
  return typeof m2 === 'number' ? m2 : null
}

export function convert(brief: Brief): Outcome<Told> {
  const asked = conversionIn(brief.heard, talkArea(brief) !== null)
  if (!asked) return refuse('question', { question: 'convert' })
  return asked.is === 'sum' ? sum(brief, asked) : one(brief, asked)
}

/** The last answer's area, shown in the other system than the one it is wanted in. */
const fromTalk = (m2: number, to: UnitName) =>
  METRIC.has(to) ? { n: m2 / toSi(1, 'sqft'), unit: 'sqft' as const } : { n: m2, unit: 'sqm' as const }

const digitsOf = (value: number): number => (Math.abs(value) >= 100 ? 1 : Math.abs(value) >= 10 ? 2 : 3)

function one(brief: Brief, asked: Extract<Conversion, { is: 'convert' }>): Outcome<Told> {
  const math = brief.libraries.math()
  const from = asked.from ? { n: asked.from.n, unit: asked.from.unit } : fromTalk(talkArea(brief) as number, asked.to)
  if (from.unit === null) return refuse('unit-unclear', { said: asked.from?.token.text ?? '' })
  const n = asked.from?.negative ? -from.n : from.n
  const value = between(n, from.unit, asked.to, math)
  if (value === null || !Number.isFinite(value)) return refuse('question', { question: 'convert' })
  const inches = asked.to === 'in' ? say('convert.fraction', { inches: small(value * 25.4) }) : null
  return fine({
    topic: 'convert',
    answer: say('convert.answer', { from: figureWith(n, from.unit), to: figureWith(value, asked.to) }),
    details: inches && IMPERIAL.has(asked.to) ? [inches] : [],
    working: [say('convert.work', { from: figureWith(n, from.unit), to: figureWith(value, asked.to) })],
    values: { value, unit: asked.to },
  })
}

const figureWith = (n: number, unit: string): Phrase =>
  say('convert.figure', { n: number(n, digitsOf(n)), unit: word(`unit-${unit}`) })

/** Inches for mathjs from our own reading of the figure: exact in sixty-fourths where it is, else the number itself. */
function exactInches(mm: number): string | number {
  const parts = (mm / 25.4) * 64
  return Math.abs(parts - Math.round(parts)) < 1e-6 ? `${Math.round(parts)}/64` : Math.round((mm / 25.4) * 1e9) / 1e9
}

function sum(brief: Brief, asked: Extract<Conversion, { is: 'sum' }>): Outcome<Told> {
  const math = brief.libraries.math()
  const parts = asked.terms.map(({ q, sign }) => ({ sign, inches: exactInches(q.si ?? q.n * 25.4) }))
  const inches = sumInches(parts, math) / asked.divideBy
  const mm = inches * 25.4
  const unit = asked.to ?? (brief.metric ? 'mm' : 'in')
  const value = between(inches, 'in', unit, math)
  return fine({
    topic: 'convert',
    answer: say('convert.sum', {
      total: brief.metric ? quote(`${Math.round(mm * 10) / 10} mm`) : room(mm),
      also: figureWith(value ?? inches, unit),
    }),
    values: { value: value ?? inches, unit },
  })
}
