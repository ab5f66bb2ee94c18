/** What a message means here: its own facts, then those of the talk, then those of the job. */
import { type FactName, type Facts, type Piece, type Room, type Tiling, tilingIn } from './facts.ts'
import { ENTRY_VERSIONS, type Memory, type NewEntry, type Talk } from './jobs/memory.ts'
import type { Concept } from './language/concepts.ts'
import { conversionIn } from './language/conversions.ts'
import type { Heard } from './language/hear.ts'
import { toSi } from './language/measures.ts'
import { newerPrices } from './language/prices.ts'
import { smallMm } from './language/small-lengths.ts'
import { sidesIn } from './language/wishes.ts'
import { type Phrase, quote, room as roomLength, say, word } from './phrase.ts'
import type { Topic } from './reply.ts'
import {
  type InScope,
  isMixed,
  retiled,
  roomsNamed,
  sameName,
  sameRoom,
  sameTile,
  tiledBy,
  tilingOf,
} from './room-tiles.ts'
import { topicNamed, topicOf } from './router.ts'
import { FITNESS_TOPICS } from './topics/fitness/route.ts'
import { roomM2 } from './topics/floors.ts'
import { steers } from './topics/job/route.ts'
import { settledFacts } from './topics/outline.ts'
import { retells, withBareDegrees } from './topics/retell.ts'
import { roomPlan } from './topics/room-floor.ts'
import { keepsSite, siteFacts } from './topics/site.ts'

/** Facts that belong to one question and go over only to the same topic. */
const PASSING: readonly FactName[] = [
  'haveBags',
  'haveBoxes',
  'haveTiles',
  'leftM2',
  'usedBags',
  'usedM2',
  'coverageM2',
  'powderKg',
  'bagsToMix',
  'temperatures',
  'when',
  'done',
  'bagKg',
  'sparePct',
  'anyWay',
  'opening',
]
/** What a question asks for, in words. */
const QUESTION_WORDS: readonly Concept[] = [
  'how-many',
  'how-much',
  'what',
  'when',
  'how-long',
  'can-we',
  'enough',
  'which',
  'buy',
  'cover',
  'help',
  'math',
  'so-far',
  'who',
  'picture',
  'what-if',
]
const CHANGE_WORDS: readonly Concept[] = ['make-it', 'add', 'drop', 'keep']

export type Meaning = {
  readonly topic: Topic | null
  readonly facts: Facts
  readonly carried: Readonly<Partial<Record<FactName, 'talk' | 'job'>>>
  readonly followsUp: boolean
  readonly showMath: boolean
  /** The job's facts after this message, where it changes them. */
  readonly jobFacts: Facts | null
  readonly notes: readonly Phrase[]
  /** The facts this message itself brought. */
  readonly said: readonly FactName[]
}

const isQuestion = (heard: Heard): boolean => heard.has(...QUESTION_WORDS) || heard.plain.text.includes('?')
const hasFacts = (facts: Facts): boolean =>
  Object.keys(facts).some((k) => k !== 'surface' && k !== 'wet' && k !== 'done')

/** "the back wall", to the question where the fridge stands. */
function withWallAsked(heard: Heard, memory: Memory): Heard {
  if (memory.asked?.question !== 'hide-wall' || heard.facts.hideAt) return heard
  const walls = sidesIn(heard.marks)
  return walls.length > 0 ? { ...heard, facts: { ...heard.facts, hideAt: walls } } : heard
}

/** "6x6", to the question how large the small tile of a pattern is. */
function withSmallAsked(heard: Heard, memory: Memory): Heard {
  const { tile, ...rest } = heard.facts
  const pattern = memory.talk?.facts.pattern
  const asked = memory.asked?.question === 'small-size' && pattern?.name === 'two-size' && !rest.rooms
  if (!asked || !tile || tile.lengthMm <= 0) return heard
  return { ...heard, facts: { ...rest, pattern: { ...pattern, smallMm: Math.min(tile.lengthMm, tile.widthMm) } } }
}

export function meaningOf(message: Heard, memory: Memory): Meaning {
  const asked = withSmallAsked(withWallAsked(message, memory), memory)
  const heard = withBareDegrees(asked, memory.talk)
  const { talk, facts: job } = memory
  if (heard.has('math') && talk && !hasFloor(heard.facts))
    return {
      topic: talk.topic,
      facts: talk.facts,
      carried: {},
      followsUp: true,
      showMath: true,
      jobFacts: null,
      notes: [],
      said: [],
    }
  const steered = steers(heard, memory)
  if (steered) return steering(heard, memory, steered)
  const named = topicNamed(heard)
  const converts =
    conversionIn(heard, typeof talk?.values['area_m2'] === 'number') !== null && (named === null || named === 'layout')
  // "slab is 50", "make it 4pm" after a wait: the wait, told again.
  const again = talk !== null && retells(heard, talk)
  const followsUp = !converts && talk !== null && (again || isFollowUp(heard, named) || narrows(heard, talk))
  const topic = converts ? 'convert' : again ? talk.topic : topicOf(heard, talk, followsUp)
  const fitness = topic !== null && FITNESS_TOPICS.has(topic)
  const base = followsUp && talk ? carry(talk, job, topic) : { facts: job, carried: fromJob(job) }
  const floor = fitness ? null : withRooms(heard, memory, base.facts)
  const said = floor
    ? withBareCount(heard, memory, withBareFigure(heard, floor.said, topic, followsUp), followsUp)
    : withTilePair(heard)
  const scope = floor?.scope ?? sameTile(base.facts)
  const facts = merged(base.facts, said, scope)
  const carried = Object.fromEntries(Object.entries(base.carried).filter(([k]) => !(k in said)))
  const changed = scaled(heard, facts, followsUp, topic, memory)
  const jobFacts = floor
    ? jobAfter(
        heard,
        memory,
        { ...said, rooms: floor.narrowed ? undefined : roomsOfJob(heard, job, base.facts, said) },
        topic,
        jobScope(job, floor, base.facts),
      )
    : null
  return {
    topic,
    facts: changed,
    carried,
    followsUp,
    showMath: false,
    jobFacts,
    notes: fitness ? [] : [...heardNotes(heard), ...carriedNotes(carried, changed, topic)],
    said: Object.keys(said) as FactName[],
  }
}

/** A command or a log goes by the job; where that knows no floor or tile yet, by the talk. */
function steering(heard: Heard, memory: Memory, topic: 'job' | 'log'): Meaning {
  const talk = memory.talk ? lastingFacts(memory.talk.facts) : {}
  const facts = merged(merged(talk, memory.facts), lastingFacts(heard.facts))
  return { topic, facts, carried: {}, followsUp: false, showMath: false, jobFacts: null, notes: [], said: [] }
}

const lastingFacts = (facts: Facts): Facts =>
  Object.fromEntries(Object.entries(facts).filter(([k]) => !PASSING.includes(k as FactName))) as Facts

const MOST_SPARES_PCT = 50

/** "make it 250", "make it 10": a bare number changes what was said last, the spares or the area, in its own unit. */
function withBareCount(heard: Heard, memory: Memory, said: Facts, followsUp: boolean): Facts {
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
function withTilePair(heard: Heard): Facts {
  const { rooms: _, ...rest } = heard.facts
  const pair = heard.rules.figures.tileMm
  return pair && !rest.tile ? { ...rest, tile: { lengthMm: pair[0], widthMm: pair[1] } } : rest
}

const WIDEST_JOINT_MM = 13
const LEAST_NOTCH_MM = 6

/** "plus 20%": nothing but a share. */
const isBarePercent = (heard: Heard): boolean => heard.percents.length === 1 && heard.items.length === 1

const JOINTED: readonly Topic[] = ['grout', 'tile', 'order', 'layout', 'levelling']

/** "make it 3/16", "grout for 120 sf of 12x24 1/8": a small figure with no noun is the joint; after mortar it is the notch. */
function withBareFigure(heard: Heard, said: Facts, topic: Topic | null, followsUp: boolean): Facts {
  // "ledger for 12x24, floor out 3/8": how far it is out, no joint.
  if (heard.has('off-level', 'ledger', 'first-course')) return said
  if (isBarePercent(heard) && followsUp && topic === 'tile' && said.sparePct === undefined)
    return { ...said, sparePct: heard.percents[0] }
  if (!followsUp && !(topic !== null && JOINTED.includes(topic))) return said
  const bare = heard.loose.find(
    ({ q, nouns }) =>
      // "make the mudroom 3/16": the room tells where, not what.
      nouns.every((noun) => heard.has('make-it') && noun.mark.concept === 'house-part') &&
      (!q.token.spelled || q.unit !== null || q.token.value <= 1 / 4) &&
      (q.token.fraction || q.dimension === 'length'),
  )
  const mm = bare ? smallMm(bare.q, heard.system === 'metric') : null
  if (mm === null || mm <= 0.7 || mm > WIDEST_JOINT_MM) return said
  if (topic === 'mortar' && mm >= LEAST_NOTCH_MM && said.trowel === undefined)
    return { ...said, trowel: { shape: 'square', widthMm: mm, depthMm: mm, spaceMm: mm } }
  return said.jointMm === undefined ? { ...said, jointMm: mm } : said
}

const hasFloor = (facts: Facts): boolean =>
  facts.rooms !== undefined || facts.areaM2 !== undefined || facts.leftM2 !== undefined

/** "in a shower?" after a rule: only a condition of it. */
const narrows = (heard: Heard, talk: Talk): boolean =>
  FITNESS_TOPICS.has(talk.topic) && Object.keys(heard.rules.conditions).length > 0

/** A message goes on with the talk when it leaves out what a question needs. */
function isFollowUp(heard: Heard, named: Topic | null): boolean {
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

function carry(
  talk: Talk,
  job: Facts,
  topic: Topic | null,
): { facts: Facts; carried: Partial<Record<FactName, 'talk' | 'job'>> } {
  const same = talk.topic === topic
  const kept = Object.fromEntries(
    Object.entries(talk.facts).filter(([k]) => same || !PASSING.includes(k as FactName)),
  ) as Facts
  const facts = merged(job, kept)
  const carried: Partial<Record<FactName, 'talk' | 'job'>> = {}
  for (const key of Object.keys(facts) as FactName[]) carried[key] = key in kept ? 'talk' : 'job'
  return { facts, carried }
}

const fromJob = (job: Facts): Partial<Record<FactName, 'talk' | 'job'>> =>
  Object.fromEntries(Object.keys(job).map((k) => [k, 'job' as const]))

/** Newer facts over older ones, what they say of tile going to the rooms in scope; without a scope to the facts alone. */
export function merged(old: Facts, fresh: Facts, scope?: InScope): Facts {
  const facts = overlaid(old, fresh)
  const rooms = facts.rooms ?? []
  if (!scope || rooms.length === 0 || (!isMixed(facts) && rooms.every(scope))) return facts
  const said = tilingIn(fresh)
  // What was never said of any room is said of all.
  const unsaid = Object.fromEntries(Object.entries(said).filter(([name]) => name === 'tile' && old.tile === undefined))
  return tiledBy(
    facts,
    (room) => {
      const before = tilingOf(old, room)
      return scope(room) ? retiled(before, said) : { ...before, ...(room.own ? {} : unsaid) }
    },
    scope,
  )
}

/** A floor told anew replaces the old one whole; a tile's thickness alone joins its size. */
function overlaid(old: Facts, fresh: Facts): Facts {
  const floor = fresh.rooms !== undefined || fresh.areaM2 !== undefined
  const { rooms: _r, areaM2: _a, leftM2: _l, ...rest } = old
  const base: Facts = floor ? rest : old
  const tile = fresh.tile
    ? fresh.tile.lengthMm > 0
      ? fresh.tile
      : old.tile
        ? { ...old.tile, ...definedTile(fresh.tile) }
        : fresh.tile
    : old.tile
  const goods = fresh.goods && old.goods ? { ...old.goods, ...fresh.goods } : (fresh.goods ?? old.goods)
  const prices = fresh.prices && old.prices ? newerPrices(old.prices, fresh.prices) : (fresh.prices ?? old.prices)
  // A tile told anew has not been measured, and cuts whose wall is named now are no longer homeless.
  const { measuredMm: _m, hideBehind: _h, ...unasked } = base
  const kept: Facts = {
    ...unasked,
    ...(base.measuredMm && !(fresh.tile && fresh.tile.lengthMm > 0) ? { measuredMm: base.measuredMm } : {}),
    ...(base.hideBehind && !fresh.hideAt ? { hideBehind: true as const } : {}),
  }
  return { ...kept, ...fresh, ...(tile ? { tile } : {}), ...(goods ? { goods } : {}), ...(prices ? { prices } : {}) }
}

function definedTile(tile: NonNullable<Facts['tile']>): Partial<NonNullable<Facts['tile']>> {
  const { lengthMm: _l, widthMm: _w, ...rest } = tile
  return rest
}

/** The rooms of the job that a change means: those named, else those asked about last; all of a job with one tile. */
function jobScope(job: Facts, floor: RoomsSaid, talked: Facts): InScope {
  if (floor.scope === null && !isMixed(job)) return () => true
  const toldAnew = floor.narrowed ? undefined : floor.said.rooms
  const asked = (floor.said.rooms ?? talked.rooms ?? []).filter(floor.scope ?? sameTile(talked))
  const inJob: InScope = (room) => asked.some((one) => sameRoom(one, room))
  return (toldAnew ?? job.rooms ?? []).some(inJob) ? inJob : sameTile(job)
}

const toldAlike = (a: Room, b: Room): boolean =>
  JSON.stringify([a.name, a.count, a.pieces, a.areaM2]) === JSON.stringify([b.name, b.count, b.pieces, b.areaM2])

/** The rooms of the talk; "add the hall", after one room was asked about, speaks of the whole floor again. */
function knownRooms(heard: Heard, job: Facts, base: Facts): readonly Room[] {
  const [inTalk, inJob] = [base.rooms ?? job.rooms ?? [], job.rooms ?? []]
  const whole = heard.has('add', 'drop') && inJob.length > inTalk.length && isPartOf(base, job)
  return whole ? inJob.map((room) => ({ ...room, own: tilingOf(job, room) })) : inTalk
}

const isPartOf = ({ rooms }: Facts, whole: Facts): boolean =>
  (rooms ?? []).every((room) => (whole.rooms ?? []).some((one) => toldAlike(room, one)))

/** The job's rooms after this message, where the talk is of others than all of them: what the message changed of the
 *  talk's is changed in the job too, and the rest of the job stays. */
function roomsOfJob(heard: Heard, job: Facts, talked: Facts, said: Facts): Facts['rooms'] {
  const [before, after, inJob] = [talked.rooms ?? [], said.rooms, job.rooms]
  if (!after || !inJob) return after
  const sameFloor = before.length === inJob.length && before.every((b) => inJob.some((j) => toldAlike(b, j)))
  const touched = after.filter((room) => !before.some((b) => toldAlike(b, room)))
  const mends = heard.has('no-correction', 'make-it')
  if (sameFloor || (!mends && !heard.has('add') && touched.some((room) => room.name === undefined))) return after
  const dropped = before.filter((b) => b.name !== undefined && !after.some((room) => sameName(room.name, b.name)))
  const kept = inJob
    .filter((room) => !dropped.some((gone) => sameName(gone.name, room.name)))
    .map((room) => touched.find((one) => sameName(one.name, room.name)) ?? room)
  // What mends a room that only the talk knows adds none to the job.
  return mends ? kept : [...kept, ...touched.filter((room) => !kept.includes(room))]
}

type RoomsSaid = {
  readonly said: Facts
  /** The rooms that what is said of tile is said of; null: those asked about last. */
  readonly scope: InScope | null
  /** The talk turns to some of the job's rooms, which keeps them all. */
  readonly narrowed?: true
}

/** Rooms as they stand after this message: corrected, added to, dropped from, narrowed to those named, or told anew. */
function withRooms(heard: Heard, memory: Memory, base: Facts): RoomsSaid {
  const said = settledFacts(heard.facts)
  const known = knownRooms(heard, memory.facts, base)
  const all: InScope = () => true
  if (heard.has('drop') && known.length > 0 && !said.rooms) {
    const named = roomsNamed(heard.plain.text, known)
    const left = known.filter((room) => !named.includes(room))
    if (left.length < known.length && left.length > 0) return { said: { ...said, rooms: left }, scope: null }
  }
  const dropped = heard.has('drop', 'minus') && !said.rooms ? withoutPiece(heard, known) : null
  if (dropped) return { said: { ...said, rooms: dropped }, scope: null }
  if (!said.rooms) return ofKnownRooms(heard, memory, said, base)
  const heardOwn = said.rooms.map((room) => room.own !== undefined)
  const rooms = said.rooms.map((room): Room => {
    if (room.own) return { ...room, own: { ...jointIn(base), ...room.own } }
    // A room measured again keeps its tile.
    const before = known.find((k) => sameName(k.name, room.name))
    return before ? { ...room, own: tilingOf(base, before) } : room
  })
  const fresh: InScope = (room) => {
    const at = rooms.indexOf(room)
    return at >= 0 && !heardOwn[at]
  }
  const taken = rooms.every((r) => r.pieces.length > 0 && r.pieces.every((p) => p.sign === -1 || p.outside))
  if (taken && known.length > 0) {
    const last = known[known.length - 1]
    const less = { ...last, pieces: [...last.pieces, ...rooms.flatMap((r) => r.pieces)] }
    return { said: { ...said, rooms: [...known.slice(0, -1), less] }, scope: null }
  }
  const adds =
    heard.has('add') ||
    (!isQuestion(heard) &&
      (!heard.has('same') || heard.has('same-tile')) &&
      rooms.every((r) => r.name !== undefined) &&
      !heard.has('no-correction', 'make-it'))
  const corrects = heard.has('no-correction', 'make-it')
  // "no, the mudroom is 8x14": of several rooms the one of that name.
  const renewed = rooms.every((r) => known.some((k) => sameName(r.name, k.name)))
  if (known.length > 0 && (adds || (corrects && renewed && known.length > 1))) {
    const renewedOf = (old: Room): Room | undefined => rooms.find((r) => sameName(r.name, old.name))
    const kept = known.map((k) => renewedOf(k) ?? k)
    const added = rooms.filter((r) => !kept.includes(r))
    return { said: { ...said, rooms: [...kept, ...added] }, scope: fresh }
  }
  // "no its 11x14": the room keeps its name, what stands on it and what stands outside it.
  if (known.length === 1 && rooms.length === 1 && corrects)
    return { said: { ...said, rooms: [measuredAgain(rooms[0], known[0])] }, scope: all }
  return { said: { ...said, rooms }, scope: heard.byRoom.length > 0 ? fresh : all }
}

function measuredAgain(fresh: Room, old: Room): Room {
  const name = fresh.name ?? old.name
  const parts = old.pieces.filter((p) => p.sign === -1 || p.outside)
  const plain = fresh.pieces.length === 1 && !fresh.outline && !fresh.cornersMm && !old.shape && !old.cornersMm
  const room = { ...fresh, ...(name ? { name } : {}) }
  const whole = { ...room, pieces: [...room.pieces, ...parts] }
  return plain && parts.length > 0 && roomPlan(whole).ok ? whole : room
}

const PIECE_WORDS: readonly (readonly [Concept, (piece: Piece) => boolean])[] = [
  ['column-word', (p) => p.sign === -1],
  ['island', (p) => p.sign === -1 && p.kind === 'island'],
  ['bite', (p) => p.sign === -1 && p.kind === 'bite'],
  ['bump-out', (p) => p.outside === true],
  ['alcove-word', (p) => p.outside === true],
]

/** "take off the island": the last room without the last of what was told to stand on it or outside it. */
function withoutPiece(heard: Heard, known: readonly Room[]): Room[] | null {
  const last = known.at(-1)
  const fits = PIECE_WORDS.find(([concept]) => heard.has(concept))?.[1]
  if (!last || !fits || heard.quantities.length > 0) return null
  const at = last.pieces.findLastIndex(fits)
  return at < 0 ? null : [...known.slice(0, -1), { ...last, pieces: last.pieces.filter((_, k) => k !== at) }]
}

const jointIn = ({ jointMm }: Facts): Tiling => (jointMm === undefined ? {} : { jointMm })

/** A message without sizes of rooms: the known rooms it names, all where it says so. */
function ofKnownRooms(heard: Heard, memory: Memory, said: Facts, base: Facts): RoomsSaid {
  const known = base.rooms ?? []
  const job = memory.facts.rooms ? memory.facts : base
  const inJob = (job.rooms ?? []).map((room) => ({ ...room, own: tilingOf(job, room) }))
  const everyRoom = inJob.length > known.length ? { ...said, rooms: inJob } : said
  if (heard.has('all-rooms')) return { said: everyRoom, scope: () => true }
  const byName = heard.byRoom.map((part) => ({ ...part, named: roomsNamed(part.text, inJob) }))
  if (byName.length > 0 && byName.every((part) => part.named.length > 0)) {
    const rooms = inJob.map((room) => {
      const part = byName.slice(0, -1).find(({ named }) => named.includes(room))
      return part ? { ...room, own: part.tiling } : room
    })
    const last = byName[byName.length - 1].named
    return { said: { ...said, rooms }, scope: (room) => last.includes(room) }
  }
  const named = roomsNamed(heard.plain.text, inJob)
  if (named.length === 0 || inJob.length < 2) return { said, scope: null }
  const scope: InScope = (room) => named.some((one) => sameRoom(one, room))
  // A question narrows the talk to the rooms it names; a change goes on with all of them.
  const changes = heard.has(...CHANGE_WORDS) || (!isQuestion(heard) && Object.keys(tilingIn(said)).length > 0)
  return changes ? { said: everyRoom, scope } : { said: { ...said, rooms: named }, scope, narrowed: true }
}

/** "half that", "double that": so much of the area; after water for a bag, of the bag. */
function scaled(heard: Heard, facts: Facts, followsUp: boolean, topic: Topic | null, memory: Memory): Facts {
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

/** The job changes by a message that states facts without asking, by "make it" and "add", and by the first that names a floor. */
function jobAfter(heard: Heard, memory: Memory, said: Facts, topic: Topic | null, scope: InScope): Facts | null {
  const states = !isQuestion(heard) && topic !== 'convert' && topic !== 'cure' && topic !== 'mix'
  const changes = heard.has(...CHANGE_WORDS) && !heard.has('what-if')
  const first = !hasFloor(memory.facts) && (said.rooms !== undefined || said.areaM2 !== undefined)
  // "same but 24x24" asks the last question with another figure: that is talk.
  const repeats = heard.has('same') && !heard.has('same-tile') && !changes && memory.talk !== null
  const stated = (states || changes || first) && !repeats
  const site = topic !== 'convert' && keepsSite(heard) ? siteFacts(said.temperatures) : {}
  const lasting = {
    ...site,
    ...Object.fromEntries(
      Object.entries(stated ? said : {}).filter(
        ([k, v]) => v !== undefined && !PASSING.includes(k as FactName) && k !== 'surface' && k !== 'wet',
      ),
    ),
  } as Facts
  return Object.keys(lasting).length > 0 ? merged(memory.facts, lasting, scope) : null
}

function heardNotes(heard: Heard): Phrase[] {
  return heard.notes.map((note) =>
    say(`note.${note.key}`, {
      said: quote(note.said),
      unit: word(`unit-${note.unit ?? 'ft'}`),
      size: roomLength(('mm' in note ? note.mm : undefined) ?? 0),
    }),
  )
}

/** Facts worth saying where they came from. */
const WORTH_SAYING: readonly FactName[] = ['rooms', 'areaM2', 'tile', 'jointMm', 'trowel', 'boxTiles', 'boxM2']
const FOR_TOPIC: Partial<Record<Topic, readonly FactName[]>> = {
  convert: [],
  help: [],
  mix: [],
  layout: ['rooms', 'areaM2'],
  cure: ['tile'],
}

function carriedNotes(carried: Partial<Record<FactName, 'talk' | 'job'>>, facts: Facts, topic: Topic | null): Phrase[] {
  const wanted = topic ? (FOR_TOPIC[topic] ?? WORTH_SAYING) : []
  const from = (source: 'talk' | 'job'): Phrase[] => {
    const names = wanted.filter((n) => carried[n] === source && facts[n] !== undefined)
    return names.length > 0 ? [say(`carried.${source}`, { what: names.map((n) => word(`fact-${n}`)) })] : []
  }
  return [...from('talk'), ...from('job')]
}

export function talkEntry(talk: Talk): NewEntry {
  return { kind: 'talk', version: ENTRY_VERSIONS.talk, body: talk }
}
