/** Tells a trouble in mid-job: stop, go on or lift; causes in order; the one test that tells them apart. */
import { cautionsFor } from '../../cautions.ts'
import { say } from '../../phrase.ts'
import { fine, type Outcome, refuse } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'
import { phraseOf, sourceOfRule } from './rule.ts'

export function troubleTold(brief: Brief, id: string): Outcome<Told> {
  const { troubles, cautions, book } = brief.settings
  const trouble = troubles.find((t) => t.id === id)
  if (!trouble) return refuse('not-understood', { said: id })
  const causes = Array.from({ length: trouble.causes }, (_, i) => say(`trouble.${id}.cause.${i + 1}`))
  const rules = book.rules.filter((rule) => trouble.rules?.includes(rule.id))
  const safety = cautionsFor(cautions, trouble.cautions ?? [], 'trouble', { ...brief, people: brief.memory.people })
  return fine({
    topic: 'trouble',
    answer: say(`trouble.${trouble.action}`, { what: say(`trouble.${id}`) }),
    details: [
      say('trouble.causes', { causes }),
      say('trouble.the-test', { test: say(`trouble.${id}.test`) }),
      say(`trouble.${id}.do`),
    ],
    warnings: safety.warnings,
    sources: [trouble, ...rules].map((one) => sourceOfRule(book, one)),
    working: rules.map(phraseOf),
    values: Object.assign({}, ...rules.map((rule) => (rule.limit ? { [rule.limit.key]: rule.limit.value } : {}))),
    entries: safety.entries,
  })
}
