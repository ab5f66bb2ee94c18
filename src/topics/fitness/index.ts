/** Is this floor fit, and who is right: substrate, joints, contact, trouble and every dispute about a rule. */
import type { Figures } from '../../language/rule-numbers.ts'
import type { RuleWords } from '../../language/rule-words.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Told, TopicAnswer } from '../topic.ts'
import { expansionTold } from './expansion.ts'
import { gapsTold, heightsTold, squareTold } from './flat.ts'
import { joistsTold } from './joists.ts'
import { type MeasureName, measureIn } from './measure.ts'
import { asksPour, pour } from './pour.ts'
import { fitnessAsk } from './route.ts'
import { ruleTold } from './rule.ts'
import { sheathingTold } from './sheathing.ts'
import { holesTold, humidityTold, screedTold, tubesTold, widthTold } from './slab.ts'
import { contactsTold, jointTold, lippageTold, notchTold, voidsTold } from './tiles.ts'
import { troubleTold } from './trouble.ts'
import { airflowTold, bedTold, endCutsTold, floorNumberTold, sagTold } from './worked.ts'

const MEASURED: Readonly<Record<MeasureName, TopicAnswer>> = {
  heights: heightsTold,
  joists: joistsTold,
  sheathing: sheathingTold,
  gaps: gapsTold,
  square: squareTold,
  voids: voidsTold,
  contacts: contactsTold,
  joint: jointTold,
  lippage: lippageTold,
  screed: screedTold,
  holes: holesTold,
  humidity: humidityTold,
  width: widthTold,
  expansion: expansionTold,
  tubes: tubesTold,
  bed: bedTold,
  airflow: airflowTold,
  ends: endCutsTold,
  sag: sagTold,
  'floor-number': floorNumberTold,
  notch: notchTold,
}

export function fitness(brief: Brief): Outcome<Told> {
  if (asksPour(brief.heard)) return pour(brief)
  const { talk, asked } = brief.memory
  // A photo that waits for its words asks nothing of the floor.
  const waited = asked && asked.question !== 'photo' && talk ? measuredBefore(brief, talk.text) : null
  if (waited) return waited
  const ask = fitnessAsk(brief.heard)
  if (ask?.is === 'measure') return MEASURED[ask.name](brief)
  if (ask?.is === 'trouble') return troubleTold(brief, ask.name)
  if (ask) return ruleTold(brief, brief.heard.rules, ask.name)
  if (!talk) return refuse('not-understood', { said: brief.heard.plain.text.slice(0, 60) })
  const measured = measuredBefore(brief, talk.text)
  if (measured) return measured
  const questions = talk.text.split(NEXT).slice(-MOST_CHAINED)
  const before = questions.map((text) => brief.heard.rulesOf(text)).reduce(joined)
  const subject = before.subjects[0]?.name
  if (subject === undefined) return refuse('unknown-talk')
  const told = ruleTold(brief, joined(before, brief.heard.rules), subject)
  return told.ok ? fine({ ...told.value, asks: [...questions, brief.heard.plain.text].join(NEXT) }) : told
}

/** "14 ft" after "how far do they span?": the figures of both messages together. */
function measuredBefore(brief: Brief, text: string): Outcome<Told> | null {
  const { heard } = brief
  const before = text.replaceAll(NEXT, ' ')
  const name = measureIn({ ...heard, rules: heard.rulesOf(before) })
  if (!name) return null
  const whole = `${before} ${heard.plain.text}`
  const told = MEASURED[name]({ ...brief, heard: { ...heard, rules: heard.rulesOf(whole) } })
  return told.ok ? fine({ ...told.value, asks: whole }) : told
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
    measuring: [],
    measures: before.measures,
  }
}

function joinedFigures(before: Figures, now: Figures): Figures {
  const fresh = Object.entries(now).filter(
    ([, value]) => value !== null && !(Array.isArray(value) && value.length === 0),
  )
  return { ...before, ...Object.fromEntries(fresh) }
}
