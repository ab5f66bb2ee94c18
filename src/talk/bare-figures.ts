/** Figures without a noun, read by what the talk is about: "make it 250", "make it 3/16", "half that". */
import type { Facts, Room } from '../facts.ts'
import type { Memory } from '../jobs/memory.ts'
import type { Concept } from '../language/concepts.ts'
import type { Heard } from '../language/heard.ts'
import { type Quantity, toSi } from '../language/measures.ts'
import type { Noun } from '../language/nouns.ts'
import { smallMm } from '../language/small-lengths.ts'
import type { Topic } from '../reply.ts'
import { roomM2 } from '../topics/floors.ts'
import { hasFloor, isBarePercent } from './follow-up.ts'

const MOST_SPARES_PCT = 50

/** "make it 250", "make it 10": a bare number changes what was said last, the spares or the area, in its own unit. */
export function withBareCount(heard: Heard, memory: Memory, said: Facts, followsUp: boolean): Facts {
  const { talk } = memory
  const [bare] = heard.loose
  const plain =
    heard.loose.length === 1 &&
    heard.items.length === 1 &&
    bare.nouns.length === 0 &&
    bare.q.dimension === 'none' &&
    !bare.q.token.fraction
  if (!followsUp || !talk || talk.topic === 'cure' || !plain || Object.keys(said).length > 0) return said
  if (talk.lastSaid.includes('sparePct') && bare.q.n <= MOST_SPARES_PCT) return { ...said, sparePct: bare.q.n }
  if (talk.facts.areaM2 !== undefined && bare.q.n >= 3)
    return { ...said, areaM2: toSi(bare.q.n, talk.metric ? 'sqm' : 'sqft') }
  return said
}

/** In a question about a rule a pair is the tile, never the room. */
export function withTilePair(heard: Heard): Facts {
  const { rooms: _, ...rest } = heard.facts
  const pair = heard.rules.figures.tileMm
  return pair && !rest.tile ? { ...rest, tile: { lengthMm: pair[0], widthMm: pair[1] } } : rest
}

const WIDEST_JOINT_MM = 13

const LEAST_NOTCH_MM = 6

const TILES: readonly Concept[] = ['tile', 'plank', 'tile-kind', 'porcelain', 'ceramic']
/** Topics that lay the tile. */
const LAID: readonly Topic[] = ['tile', 'layout', 'order']

const JOINTED: readonly Topic[] = ['grout', 'tile', 'order', 'layout', 'levelling']

const NO_TILE_IS_THINNER_MM = 6.35

/** "8x48 planks 3/16": too thin to be the tile's own thickness, which is "18x18 tile 3/8". */
function isTileBefore({ mark }: Noun, q: Quantity): boolean {
  const mm = smallMm(q, false)
  const ends = mark.first + mark.count === q.first
  return ends && TILES.includes(mark.concept) && mm !== null && mm < NO_TILE_IS_THINNER_MM
}

/** "8x48 planks, a third": a third of nothing said is how far the rows are offset. */
export function withBareThird(heard: Heard, said: Facts, topic: Topic | null): Facts {
  const [third] = heard.loose.filter(({ q, nouns }) => q.token.spelled && q.unit === null && nouns.length === 0)
  // "a third done": what follows says what it is of.
  const isThird =
    third !== undefined &&
    Math.abs(third.q.token.value - 1 / 3) < 1e-9 &&
    heard.tokens[third.q.last + 1]?.kind !== 'word'
  const laid = topic !== null && LAID.includes(topic)
  return isThird && laid && said.pattern === undefined ? { ...said, pattern: { name: 'offset', offset: [1, 3] } } : said
}

/** "make it 3/16", "grout for 120 sf of 12x24 1/8": a small figure with no noun is the joint; after mortar it is the notch. */
export function withBareFigure(heard: Heard, said: Facts, topic: Topic | null, followsUp: boolean): Facts {
  // "ledger for 12x24, floor out 3/8": how far it is out, no joint.
  if (heard.has('off-level', 'ledger', 'first-course')) return said
  if (isBarePercent(heard) && followsUp && topic === 'tile' && said.sparePct === undefined)
    return { ...said, sparePct: heard.percents[0] }
  if (!followsUp && !(topic !== null && JOINTED.includes(topic))) return said
  const bare = heard.loose.find(
    ({ q, nouns }) =>
      // "make the mudroom 3/16": the room tells where, not what.
      nouns.every((noun) => (heard.has('make-it') && noun.mark.concept === 'house-part') || isTileBefore(noun, q)) &&
      (!q.token.spelled || q.unit !== null || q.token.value <= 1 / 4) &&
      (q.token.fraction || q.dimension === 'length'),
  )
  const mm = bare ? smallMm(bare.q, heard.system === 'metric') : null
  if (mm === null || mm <= 0.7 || mm > WIDEST_JOINT_MM) return said
  if (topic === 'mortar' && mm >= LEAST_NOTCH_MM && said.trowel === undefined)
    return { ...said, trowel: { shape: 'square', widthMm: mm, depthMm: mm, spaceMm: mm } }
  return said.jointMm === undefined ? { ...said, jointMm: mm } : said
}

/** "half that", "double that": so much of the area; after water for a bag, of the bag. */
export function scaled(heard: Heard, facts: Facts, followsUp: boolean, topic: Topic | null, memory: Memory): Facts {
  const factor = heard.has('half-word') ? 0.5 : heard.has('double') ? 2 : null
  const own = heard.facts
  if (!followsUp || factor === null || own.pattern || hasFloor(own) || own.bagsToMix !== undefined || heard.has('bag'))
    return facts
  if (topic === 'mix') {
    const before = memory.talk?.values['mix_powder_kg']
    return typeof before === 'number' ? { ...facts, powderKg: before * factor } : { ...facts, bagsToMix: factor }
  }
  const { rooms, areaM2, ...rest } = facts
  const all = (rooms ?? []).reduce((sum: number, r: Room) => sum + roomM2(r), 0) + (areaM2 ?? 0)
  return all > 0 ? { ...rest, areaM2: all * factor } : facts
}
