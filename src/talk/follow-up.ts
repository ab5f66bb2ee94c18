/** Whether a message asks, changes, or goes on with the talk before it. */
import type { Facts } from '../facts.ts'
import type { Talk } from '../jobs/memory.ts'
import type { Concept } from '../language/concepts.ts'
import type { Heard } from '../language/heard.ts'
import type { Topic } from '../reply.ts'
import { FITNESS_TOPICS } from '../topics/fitness/route.ts'
import { QUESTIONS } from '../topics/job/asks.ts'

/** In a talk that goes on these ask as well. */
const QUESTION_WORDS: readonly Concept[] = [...QUESTIONS, 'buy', 'so-far', 'who']

export const CHANGE_WORDS: readonly Concept[] = ['make-it', 'add', 'drop', 'keep']

export const isQuestion = (heard: Heard): boolean => heard.has(...QUESTION_WORDS) || heard.plain.text.includes('?')

const hasFacts = (facts: Facts): boolean =>
  Object.keys(facts).some((k) => k !== 'surface' && k !== 'wet' && k !== 'done')

export const hasFloor = (facts: Facts): boolean =>
  facts.rooms !== undefined || facts.areaM2 !== undefined || facts.leftM2 !== undefined

/** "plus 20%": nothing but a share. */
export const isBarePercent = (heard: Heard): boolean => heard.percents.length === 1 && heard.items.length === 1

/** "in a shower?" after a rule: only a condition of it. */
export const narrows = (heard: Heard, talk: Talk): boolean =>
  FITNESS_TOPICS.has(talk.topic) && Object.keys(heard.rules.conditions).length > 0

/** A message goes on with the talk when it leaves out what a question needs. */
export function isFollowUp(heard: Heard, named: Topic | null): boolean {
  const { facts } = heard
  if (heard.has('make-it', 'same', 'no-correction', 'instead', 'add', 'drop')) return true
  const complete = hasFloor(facts) && (facts.tile !== undefined || named === 'mortar' || named === 'layout')
  if (complete) return false
  return (
    // "and with 1/8"
    (heard.items.length === 1 && heard.loose.length === 1 && heard.tokens.length <= 4) ||
    isBarePercent(heard) ||
    hasFacts(facts) ||
    named !== null ||
    heard.has(...QUESTION_WORDS) ||
    heard.has(
      'half-word',
      'double',
      'diagonal',
      'herringbone',
      'offset',
      'water',
      'left-to-do',
      'walk',
      'heavy',
      'wet-use',
      'dry',
      'wet',
      'exterior',
      'sun',
      'heated',
      'metric-word',
      'imperial-word',
    )
  )
}
