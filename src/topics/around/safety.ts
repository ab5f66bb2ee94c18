/** The cautions that a reply around the tile carries: in full once a day, then as a tag. */
import { cautionsFor } from '../../cautions.ts'
import { fine, type Outcome } from '../../problem.ts'
import type { Brief, Told } from '../topic.ts'

export type CautionId =
  | 'asbestos'
  | 'cement'
  | 'cutting'
  | 'electric'
  | 'gas'
  | 'gfci'
  | 'lifting'
  | 'silica'
  | 'structure'

/** The reply with its cautions put before its own warnings, and the entry that remembers them. */
export function withCautions(brief: Brief, outcome: Outcome<Told>, ...ids: readonly CautionId[]): Outcome<Told> {
  if (!outcome.ok) return outcome
  const told = outcome.value
  // Old resilient floor in the message: whatever else is asked, asbestos comes first.
  const all: readonly CautionId[] = brief.heard.has('vinyl') ? ['asbestos', ...ids] : ids
  const said = cautionsFor(brief.settings.cautions, all, told.topic, { ...brief, people: brief.memory.people })
  return fine({
    ...told,
    warnings: [...said.warnings, ...(told.warnings ?? [])],
    entries: [...(told.entries ?? []), ...said.entries],
  })
}
