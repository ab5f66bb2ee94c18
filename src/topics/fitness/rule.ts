/** Tells a rule: the verdict first, then the rule with its number, why, its source and what kind of rule it is. */
import { cautionsFor } from '../../cautions.ts'
import type { RuleWords } from '../../language/rule-words.ts'
import { type Arg, type Phrase, say, small } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Country, Rule, RuleBook } from '../../rules/book.ts'
import type { Facts } from '../../rules/judge.ts'
import { askOf } from '../../rules/read.ts'
import { type Settled, settle } from '../../rules/settle.ts'
import type { Brief, Source, Told } from '../topic.ts'

/** Where a temperature was told, what is too cold for the work goes before how long it waits. */
const LIMIT_FIRST: Readonly<Record<string, string>> = { 'grout-wait': 'grout-temperature' }

/** The rule whose limit the coldest temperature of the message does not keep. */
function tooCold({ heard, settings }: Brief, subject: string): Rule | null {
  const coldestC = Math.min(...(heard.facts.temperatures ?? []).filter((t) => t.of !== 'reference').map((t) => t.c))
  const limits = settings.book.rules.filter((rule) => rule.subject === LIMIT_FIRST[subject])
  return limits.find(({ limit }) => limit?.sense === 'least' && coldestC < limit.value - 0.01) ?? null
}

/** The answer to a question on one subject of the rule book. */
export function ruleTold(brief: Brief, words: RuleWords, subject: string): Outcome<Told> {
  const { book } = brief.settings
  const cold = tooCold(brief, subject)
  if (cold) {
    const limited = ruleTold(brief, words, cold.subject)
    const waits = book.rules.filter((rule) => rule.subject === subject).map(phraseOf)
    if (!limited.ok) return limited
    const { details = [] } = limited.value
    return fine({ ...limited.value, answer: say('rule.no', { rule: phraseOf(cold) }), details: [...details, ...waits] })
  }
  const known = knownFacts(brief, words)
  const ask = askOf(words, subject, known, countryOf(brief))
  const judged = settle(book.rules, ask)
  const settled = judged && !asksVerdictOn(brief, words, judged) ? { ...judged, verdict: null } : judged
  if (settled === null) return refuse('not-understood', { said: brief.heard.plain.text.slice(0, 60) })
  return fine(tell(brief, settled, notesOf(brief, words, settled, ask.country)))
}

/** "thinset in eye" asks nothing: where no figure was proposed, no yes or no stands before the rule. */
const asksVerdictOn = ({ heard }: Brief, { stances }: RuleWords, { rules }: Settled): boolean =>
  stances.length > 0 || rules[0]?.limit !== undefined || heard.plain.text.includes('?')

/** Whose rules hold: named in the message, told of the job, or the crew's own. */
export const countryOf = ({ facts, settings }: Brief): Country => facts.country ?? settings.defaults.country ?? 'US'

/** What the talk or the job holds: its tile and joint. */
function knownFacts({ facts }: Brief, { figures, size }: RuleWords): Facts {
  const edge = figures.tileMm || size || !facts.tile || facts.tile.lengthMm <= 0 ? undefined : facts.tile.lengthMm
  const joint = figures.jointMm === null ? facts.jointMm : undefined
  const stone = facts.tile?.kind === 'stone' ? { material: ['stone'] } : {}
  return { ...stone, ...(edge ? { edge } : {}), ...(joint ? { joint } : {}) }
}

function tell(brief: Brief, settled: Settled, assumed: Phrase[]): Told {
  const [first, ...others] = settled.rules as readonly [Rule, ...Rule[]]
  const { verdict, unknown } = settled
  const question = unknown === null ? null : say(`rule.ask.${ASKED.has(unknown) ? unknown : 'other'}`)
  const rules = settled.rules.map(phraseOf)
  const asks = verdict === 'depends' && question !== null
  const answer = asks
    ? say('rule.depends-ask', { ask: question })
    : verdict === null
      ? rules[0]!
      : say(`rule.${verdict}`, { rule: rules[0]! })
  const told = asks ? rules : rules.slice(1)
  const because = say('rule.because', { why: whyOf(first), kind: say(`rule.kind-${first.kind}`) })
  const cautions = settled.rules.flatMap((rule) => rule.cautions ?? [])
  const safety = cautionsFor(brief.settings.cautions, cautions, first.topic, { ...brief, people: brief.memory.people })
  return {
    topic: first.topic,
    answer,
    details: [...told.slice(0, MOST_TOLD), because, ...(question !== null && !asks ? [question] : [])],
    assumed,
    warnings: safety.warnings,
    sources: [first, ...others].map((rule) => sourceOfRule(brief.settings.book, rule)),
    working: [...rules, because],
    values: settled.values,
    entries: safety.entries,
  }
}

const MOST_TOLD = 4
const ASKED: ReadonlySet<string> = new Set([
  'place',
  'edge',
  'edge-length',
  'joint',
  'surface',
  'facing',
  'exposure',
  'bound',
  'mortar',
  'grout',
])

const amountsOf = (rule: Rule) => (rule.amounts ?? {}) as Record<string, Arg>

const whyOf = (rule: Rule): Phrase => say(`rule.${rule.id}.why`, amountsOf(rule))

/** A rule's sentence with its figures in. */
export const phraseOf = (rule: Rule): Phrase => say(`rule.${rule.id}`, amountsOf(rule))

export function sourceOfRule(book: RuleBook, rule: Pick<Rule, 'source'>): Source {
  const source = book.sources[rule.source]!
  return {
    text: source.section ? `${source.name} ${source.section}` : source.name,
    ...(source.edition ? { edition: source.edition } : {}),
    ...(source.read === 'reported' ? { reported: true } : {}),
    ...(source.read === 'memory' ? { memory: true } : {}),
  }
}

/** What was taken for granted or brought from before. */
function notesOf(brief: Brief, words: RuleWords, settled: Settled, asked: Country): Phrase[] {
  const notes: Phrase[] = settled.assumed.map(({ condition, value }) =>
    condition === 'joint'
      ? say('rule.assumed-joint', { joint: small(value as number) })
      : say(`rule.assumed-${value as string}`),
  )
  const hangsOn = (name: 'edge' | 'joint') => settled.rules.some((rule) => rule.when?.[name] !== undefined)
  const { tile, jointMm } = brief.facts
  if (hangsOn('edge') && tile && brief.carried.tile && !words.figures.tileMm && !words.size)
    notes.push(say('rule.known-tile', { length: small(tile.lengthMm), width: small(tile.widthMm) }))
  if (hangsOn('joint') && jointMm && brief.carried.jointMm && words.figures.jointMm === null)
    notes.push(say('rule.known-joint', { joint: small(jointMm) }))
  if (asked !== 'US') notes.push(say(settled.country === asked ? `rule.country-${asked}` : 'rule.country-instead'))
  return notes
}
