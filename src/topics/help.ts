/** Help by example, short. */
import { say } from '../phrase.ts'
import { fine, type Outcome } from '../problem.ts'
import type { Brief, Told } from './topic.ts'

const EXAMPLES = [
  'help.tile',
  'help.mortar',
  'help.grout',
  'help.mix',
  'help.cure',
  'help.follow',
  'help.math',
] as const

export function help(brief: Brief): Outcome<Told> {
  if (brief.heard.has('thanks') && !brief.heard.has('help')) return fine({ topic: 'help', answer: say('help.thanks') })
  if (brief.heard.has('greeting') && !brief.heard.has('help'))
    return fine({
      topic: 'help',
      answer: say('help.hello'),
      details: [say('help.tile'), say('help.mortar'), say('help.cure')],
    })
  return fine({ topic: 'help', answer: say('help.answer'), details: EXAMPLES.map((key) => say(key)) })
}
