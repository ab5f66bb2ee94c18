/** Whether a message asks rather than tells. */
import type { Concept } from '../../language/concepts.ts'
import type { Heard } from '../../language/heard.ts'

/** What a question asks for, in words. */
export const QUESTIONS: readonly Concept[] = [
  'how-many',
  'how-much',
  'what',
  'when',
  'how-long',
  'can-we',
  'enough',
  'which',
  'cover',
  'help',
  'math',
  'picture',
  'what-if',
]

export const asksSomething = (heard: Heard): boolean => heard.has(...QUESTIONS) || heard.plain.text.includes('?')
