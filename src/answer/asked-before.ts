/** The answer to a question the bot asked back makes one message with the one before. */
import type { Memory, NewEntry } from '../jobs/memory.ts'
import { hear } from '../language/hear.ts'
import type { Message } from '../message.ts'
import { spokenIn, type Tools } from './brief.ts'
import { SHOWN } from './not-answered.ts'

type Resolved = { readonly text: string; readonly memory: Memory; readonly entries: readonly NewEntry[] }

/** The answer to "12 ft 6 in, or 12.6 ft?": remembered for that person, and the message before is answered. */
export function resolveAsked(message: Message, memory: Memory, tools: Tools): Resolved | null {
  const { asked } = memory
  if (asked && COMPLETED.includes(asked.question)) return resolveSaid(message, memory, tools)
  if (asked?.question !== 'decimal' || asked.person !== message.person || message.text.length > SHOWN) return null
  const heard = hear(message.text, tools.languages.lexicon(spokenIn(message.text, memory, tools)))
  const inches = heard.quantities.some((q) => q.compound || q.unit === 'in') || heard.has('inches-word')
  const tenths = heard.quantities.some((q) => q.token.decimals > 0 && q.unit === 'ft') || heard.has('tenths-word')
  if (inches === tenths) return null
  const decimals = inches ? 'inches' : 'tenths'
  const people = { ...memory.people, [message.person]: { ...memory.people[message.person], decimals } as const }
  return {
    text: asked.text,
    memory: { ...memory, people, talk: null, asked: null },
    entries: [{ kind: 'person', version: 1, body: { decimals } }],
  }
}

/** Questions whose answer makes one message with the one before. */
const COMPLETED: readonly string[] = ['trowel', 'box', 'pour-depth']

/** "Which trowel?": a message that only tells it completes the one before. */
function resolveSaid(message: Message, memory: Memory, tools: Tools): Resolved | null {
  const { asked } = memory
  if (!asked || message.text.length > SHOWN) return null
  const { facts, items } = hear(message.text, tools.languages.lexicon(spokenIn(message.text, memory, tools)))
  const told = {
    trowel: facts.trowel,
    box: facts.boxTiles ?? facts.boxM2 ?? facts.haveBoxes,
    'pour-depth': items.length === 1 && items[0].parts.length === 1 ? items[0] : undefined,
  }[asked.question]
  if (told === undefined) return null
  return { text: `${asked.text}, ${message.text}`, memory: { ...memory, asked: null }, entries: [] }
}
