/** "what do the cuts cost me against any off-cut": tiles for the cuts by each rule of reuse, side by side. */
import type { Facts } from '../facts.ts'
import { count, type Phrase, say, word } from '../phrase.ts'
import { fine, type Outcome, refuse } from '../problem.ts'
import { type LaidFloor, laidFor } from './plan.ts'
import { jointOf, knownTile, tilePhrase } from './stuff.ts'
import { laidValues } from './tile.ts'
import { tilesToBuy } from './tile-count.ts'
import { type Brief, sourceOf, type Told } from './topic.ts'

const RULES = ['factory-edge', 'any-offcut', 'fresh-tile'] as const

/** @problem question: the tile, or a floor with a shape; those of the layout */
export function cutRules(brief: Brief): Outcome<Told> {
  const known = knownTile(brief.facts)
  if (!known) return refuse('question', { question: 'tile' })
  const assumed: Phrase[] = []
  const jointMm = jointOf(brief, assumed)
  const laid = new Map<(typeof RULES)[number], LaidFloor>()
  const buy: number[] = []
  for (const rule of RULES) {
    const { reuse: _, ...facts } = brief.facts
    const ruled: Facts = rule === 'factory-edge' ? facts : { ...facts, reuse: rule }
    const result = laidFor(ruled, known, jointMm)
    if (result === null) return refuse('question', { question: 'room' })
    if (!result.ok) return result
    laid.set(rule, result.value)
    buy.push(tilesToBuy({ ...brief, facts: ruled }, result.value) ?? 0)
  }
  const [trade, any, fresh] = RULES.map((rule) => laid.get(rule)!) as [LaidFloor, LaidFloor, LaidFloor]
  const stock = (one: LaidFloor): number => one.reuse.stockTiles
  const more = stock(trade) - stock(any)
  const args = {
    trade: count(stock(trade)),
    any: count(stock(any)),
    fresh: count(stock(fresh)),
    more: count(more),
    saved: count(stock(fresh) - stock(trade)),
    cut: count(trade.cut),
    whole: count(trade.whole),
    tile: tilePhrase(known, brief.metric),
    buyTrade: count(buy[0]!),
    buyAny: count(buy[1]!),
    buyFresh: count(buy[2]!),
  }
  return fine({
    topic: 'layout',
    answer: say('cut-rules.answer', args),
    details: [
      say(more > 0 ? 'cut-rules.more' : stock(fresh) > stock(trade) ? 'cut-rules.same' : 'cut-rules.alike', args),
      say('cut-rules.buy', args),
      ...(brief.facts.directional ? [say('layout.directional')] : []),
      say('cut-rules.meaning'),
    ],
    assumed: [
      ...assumed,
      ...trade.notes,
      ...(brief.facts.pattern ? [] : [say('assumed.pattern', { pattern: word('pattern-stacked') })]),
    ],
    sources: [sourceOf(brief.settings.practice.tile.spareStraight)],
    values: { ...laidValues(trade), tile_count: buy[0], joint_mm: jointMm },
    offers: ['math', 'keep'],
  })
}
