/** Is this floor fit, and who is right: substrate, joints, contact, trouble and every dispute about a rule. */
import type { Figures } from '../../language/rule-numbers.ts'
import type { RuleWords } from '../../language/rule-words.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'
import { fitnessAsk } from './route.ts'
import { ruleTold } from './rule.ts'
import { troubleTold } from './trouble.ts'

export function fitness(brief: Brief): Outcome<Told> {
  const ask = fitnessAsk(brief.heard)
  if (ask?.is === 'trouble') return troubleTold(brief, ask.name)
  if (ask) return ruleTold(brief, brief.heard.rules, ask.name)
  const { talk } = brief.memory
  if (!talk) return refuse('not-understood', { said: brief.heard.plain.text.slice(0, 60) })
  const questions = talk.text.split(NEXT).slice(-MOST_CHAINED)
  const before = questions.map((text) => brief.heard.rulesOf(text)).reduce(joined)
  const subject = before.subjects[0]?.name
  if (subject === undefined) return refuse('unknown-talk')
  const told = ruleTold(brief, joined(before, brief.heard.rules), subject)
  return told.ok ? fine({ ...told.value, asks: [...questions, brief.heard.plain.text].join(NEXT) }) : told
}

/** Stands between the questions that go on from each other, in what the talk keeps. */
const NEXT = '\u001e'
const MOST_CHAINED = 5

/** "and in a shower?": the question before, with what this message says anew. */
function joined(before: RuleWords, now: RuleWords): RuleWords {
  return {
    plain: before.plain,
    subjects: before.subjects,
    troubles: [],
    conditions: { ...before.conditions, ...now.conditions },
    stances: before.stances,
    size: now.size ?? (now.figures.tileMm ? null : before.size),
    why: false,
    sum: false,
    figures: joinedFigures(before.figures, now.figures),
  }
}

function joinedFigures(before: Figures, now: Figures): Figures {
  const fresh = Object.entries(now).filter(
    ([, value]) => value !== null && !(Array.isArray(value) && value.length === 0),
  )
  return { ...before, ...Object.fromEntries(fresh) }
}
