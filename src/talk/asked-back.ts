/** Answers to what the bot asked back, where the question says what the figure or the wall is. */
import type { Memory } from '../jobs/memory.ts'
import type { Heard } from '../language/heard.ts'
import { sidesIn } from '../language/wishes.ts'

/** "the back wall", to the question where the fridge stands. */
export function withWallAsked(heard: Heard, memory: Memory): Heard {
  if (memory.asked?.question !== 'hide-wall' || heard.facts.hideAt) return heard
  const walls = sidesIn(heard.marks)
  return walls.length > 0 ? { ...heard, facts: { ...heard.facts, hideAt: walls } } : heard
}

/** "6x6", to the question how large the small tile of a pattern is. */
export function withSmallAsked(heard: Heard, memory: Memory): Heard {
  const { tile, ...rest } = heard.facts
  const pattern = memory.talk?.facts.pattern
  const asked = memory.asked?.question === 'small-size' && pattern?.name === 'two-size' && !rest.rooms
  if (!asked || !tile || tile.lengthMm <= 0) return heard
  return { ...heard, facts: { ...rest, pattern: { ...pattern, smallMm: Math.min(tile.lengthMm, tile.widthMm) } } }
}
