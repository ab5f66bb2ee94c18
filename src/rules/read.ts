/** From the words of a question to what the rule book is asked. */
import type { RuleWords } from '../language/rule-words.ts'
import type { Country } from './book.ts'
import type { Facts, Stance } from './judge.ts'
import type { RuleAsk } from './settle.ts'

/** How it is asked: a wrong verdict on a yes/no question costs more than none, so doubt reads as "tell me the rule". */
export function stanceOf({ stances, plain }: RuleWords): Stance {
  const has = (name: string) => stances.includes(name)
  for (const wrong of ['too-little', 'too-much', 'wrong'] as const) if (has(wrong)) return wrong
  if (has('skip')) return 'skip'
  if (has('need') && !has('may')) return 'need'
  if (has('ask')) return has('may') && YES_NO.test(plain) ? 'may' : 'ask'
  if (has('need')) return 'need'
  return 'may'
}

/** A question mark is gone from plain words; a comma clause like "ok for 24x48" still shows. */
const YES_NO = /(?:^|\s)(?:ok|okay|fine|good|alright|enough)(?:\s|$)/u

/** The question for one subject. Facts that the job knows fill what was not said. */
export function askOf(words: RuleWords, subject: string, known: Facts, country: Country): RuleAsk {
  const facts = words.conditions as Facts
  return {
    subject,
    facts: { ...known, ...exclusive(facts), ...sized(words) },
    figures: words.figures,
    stance: stanceOf(words),
    country,
  }
}

/** A large tile has an edge of 15 in or more, a small one less; the figure stands for the class. [mm] */
function sized({ size, figures }: RuleWords): Facts {
  if (size === null || figures.tileMm) return {}
  return { edge: size === 'large' ? 610 : 203 }
}

/** Of two values of one condition the better hit holds; outside beats wet and dry, wet beats dry, and "inside in the
 *  sun" is in the sun. */
function exclusive(facts: Facts): Facts {
  const { place, exposure } = facts
  const first = (['exterior', 'wet', 'dry'] as const).find((p) => place?.includes(p))
  return {
    ...facts,
    ...(place && place.length > 1 && first ? { place: [first] } : {}),
    ...(exposure && exposure.length > 1 ? { exposure: exposure.filter((one) => one !== 'interior') } : {}),
  }
}
