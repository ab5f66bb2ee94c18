/** Whether a message is a question for the rule book or a trouble, by its words. */
import type { CueHit } from '../../language/cues.ts'
import type { Heard } from '../../language/heard.ts'
import type { RuleWords } from '../../language/rule-words.ts'
import { remembered } from '../../remembered.ts'
import type { Topic } from '../../reply.ts'
import { type MeasureName, measureIn } from './measure.ts'

export const FITNESS_TOPICS: ReadonlySet<Topic> = new Set(['substrate', 'joints', 'contact', 'trouble'])

/** Subjects that another topic answers when a figure is asked for; the rule book only settles disputes on them. */
const DISPUTES_ONLY: ReadonlySet<string> = new Set([
  'grout-type',
  'back-butter',
  'slake',
  'spares',
  'flood-test',
  'weep-holes',
  'primer',
  'grout-wait',
])
/** Subjects that may be asked with "how many" or "bags" and are no sum. */
const COUNTED: ReadonlySet<string> = new Set([
  'contact-check',
  'slab-holes',
  'bag-lift',
  'retemper',
  'cement-skin',
  'movement',
])

/** Where a floor was told, its own topic works them out. */
const OF_A_FLOOR: ReadonlySet<string> = new Set(['shower-slope', 'half-tile', 'movement'])

const VERDICTS = ['may', 'need', 'skip', 'wrong', 'too-much', 'too-little']

export type FitnessAsk =
  | { readonly is: 'rule' | 'trouble'; readonly name: string }
  | { readonly is: 'measure'; readonly name: MeasureName }

const asks = remembered<RuleWords, FitnessAsk | null>(4)

/** What the message asks of the rule book, or null; worked out once a message. */
export const fitnessAsk = (heard: Heard): FitnessAsk | null => asks(heard.rules, () => read(heard))

function read(heard: Heard): FitnessAsk | null {
  const words = heard.rules
  const measure = measureIn(heard)
  if (measure) return { is: 'measure', name: measure }
  if (words.subjects.length === 0 && words.troubles.length === 0) return null
  if (heard.has('math', 'picture')) return null
  // "a bow window on the south wall, area": only the floor is asked.
  if (heard.has(...ROUNDS) && heard.facts.rooms !== undefined && heard.has('area-word')) return null
  const bare = words.stances.length === 0 && heard.plain.text.includes('?')
  const disputed = bare || words.stances.some((stance) => VERDICTS.includes(stance))
  const subject = words.subjects.find((hit) => isAsked(hit, heard, disputed))
  const trouble = words.troubles[0]
  if (trouble && isTrouble(trouble.score, subject?.score ?? null, words, disputed && !bare))
    return { is: 'trouble', name: trouble.name }
  return subject && !isStatement(heard, words) ? { is: 'rule', name: subject.name } : null
}

/** A trouble is told as one, or the cause is asked; "is it ok?" and "how much?" ask for a rule where there is one. */
function isTrouble(score: number, rule: number | null, words: RuleWords, disputed: boolean): boolean {
  if (words.sum) return false
  if (rule === null) return true
  if (words.why) return score >= rule - WHY_WEIGHS
  if (score >= rule + PLAINLY && !words.stances.includes('need')) return true
  return score >= rule && !disputed && !words.stances.includes('ask')
}

function isAsked({ name, score }: CueHit, heard: Heard, disputed: boolean): boolean {
  if (heard.rules.sum && !COUNTED.has(name)) return false
  if (OF_A_FLOOR.has(name) && heard.facts.rooms !== undefined) return false
  // "a half circle on the left wall" is a floor, no half offset.
  if (name === 'offset' && heard.has(...ROUNDS) && !heard.has('offset')) return false
  if (score < LEAST_SCORE) return disputed && !heard.has(...NOT_SETTING)
  return disputed || !DISPUTES_ONLY.has(name)
}

const ROUNDS = ['half-round', 'quarter-round', 'rounded-corner', 'cut-corner', 'round-shape', 'oval-word'] as const

/** A lone temperature is a question of setting tile only where nothing else is spoken of. */
const LEAST_SCORE = 2
const NOT_SETTING = [
  'grout',
  'walk',
  'heavy',
  'pot-life',
  'open-time',
  'cure-word',
  'when',
  'how-long',
  'time-word',
] as const

/** So much better, and a trouble is meant even where it sounds like a question. */
const PLAINLY = 2.5

/** How much better a rule must fit to answer a message that asks for the cause. */
const WHY_WEIGHS = 2

/** "12x24 tile, third offset, 1/8 joint" tells the job, it asks nothing. */
function isStatement(heard: Heard, words: RuleWords): boolean {
  // Figures are looked for last: that costs most.
  if (words.stances.length > 0 || heard.plain.text.includes('?') || words.figures.gap !== null) return false
  const { facts } = heard
  const told = [facts.rooms, facts.areaM2, facts.tile, facts.jointMm, facts.trowel, facts.haveBags]
  const stated = told.filter((fact) => fact !== undefined).length
  return stated > 1 || (stated === 1 && heard.plain.text.includes(','))
}

/** Asks for a verdict in so many words, or what to do about a trouble: before any other topic. */
export function asksVerdict(heard: Heard): boolean {
  const ask = fitnessAsk(heard)
  if (ask === null) return false
  const { stances, subjects } = heard.rules
  if (ask.is === 'measure') return ask.name !== 'notch' || heard.rules.stances.includes('may')
  if (ask.is !== 'rule' || stances.some((stance) => VERDICTS.includes(stance))) return true
  const sure = (subjects.find((hit) => hit.name === ask.name)?.score ?? 0) >= SURE_SCORE
  return sure && stances.includes('ask') && heard.facts.rooms === undefined
}

/** Three words of a cue and more: nothing else can be meant. */
const SURE_SCORE = 6.5

/** Asks for a rule or its figure: after the topics that count things. */
export const asksRule = (heard: Heard): boolean => fitnessAsk(heard) !== null
