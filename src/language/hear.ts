/** A crew's message heard: quantities found anywhere in it, each given its role, the words marked. Nothing is answered yet. */
import { type Facts, type Room, TILING, tilingIn } from '../facts.ts'
import { withBumps } from './bumps.ts'
import { stretchesByTile } from './by-room.ts'
import { readCommands } from './command-words.ts'
import type { Concept } from './concepts.ts'
import { type OutlineHeard, readOutline } from './corners.ts'
import { readCurves } from './curves.ts'
import type { Draft } from './figure.ts'
import { readAngle, readFlags } from './flags.ts'
import { readGoods } from './goods.ts'
import { type HearContext, type Heard, type HeardNote, NOTHING_KNOWN, type Stretched } from './heard.ts'
import { isSize, itemsOf, joinDashes, splitMixed } from './items.ts'
import { type Lexicon, type Mark, marksOf } from './lexicon.ts'
import { quantitiesOf, Reader } from './measures.ts'
import { withNicheTile } from './niche-sizes.ts'
import { factsOfOwnWords } from './own-words.ts'
import { readPrices } from './prices.ts'
import { roomsOf } from './rooms.ts'
import { asNamed, lessFromArea, panInInches, wallsOf, withPieces } from './rooms-meant.ts'
import { readerOf } from './rule-words.ts'
import { showerWalls } from './shower-walls.ts'
import { type Loose, readSingles } from './singles.ts'
import { hintsFor, hintsWith, wantsRoom } from './size-hints.ts'
import { type Size, sizesOf } from './sizes.ts'
import { originSpan, type PlainText, plainText } from './text.ts'
import { dropEmptyTile, readTile, readTwoSizes } from './tile-read.ts'
import { type Token, tokenize, type Unreadable } from './tokens.ts'
import { readTrowel } from './trowels.ts'
import { freeUnitsOf, systemMeasured, systemOf } from './unit-system.ts'
import { readWallRun, type WallRunHeard } from './wall-run.ts'
import { readWishes } from './wishes.ts'

export const MOST_CHARACTERS = 6000

/** A message in words: its text made plain and cut up, the meanings of its words marked. */
type Words = Pick<Heard, 'typed' | 'plain' | 'tokens' | 'reader' | 'marks' | 'unreadable' | 'has'> & {
  readonly lexicon: Lexicon
}

function readerOfTokens(lexicon: Lexicon, tokens: readonly Token[]): { reader: Reader; marks: readonly Mark[] } {
  const marks = marksOf(lexicon, tokens)
  return { reader: new Reader(lexicon, tokens, marks), marks }
}

function wordsOf(typed: string, lexicon: Lexicon): Words {
  const plain = plainText(typed)
  const { tokens: raw, unreadable } = tokenize(plain.text, lexicon.locale.numbers)
  const asWritten = readerOfTokens(lexicon, raw)
  const tokens = splitMixed(raw, asWritten.reader)
  const { reader, marks } = tokens === raw ? asWritten : readerOfTokens(lexicon, tokens)
  const meant = new Set(marks.map((m) => m.concept))
  const has = (...concepts: readonly Concept[]): boolean => {
    for (const concept of concepts) if (meant.has(concept)) return true
    return false
  }
  return { typed, lexicon, plain, tokens, reader, marks, unreadable, has }
}

/** Its figures with their units, less those of an outline, of curves and of a run of walls. */
type Figures = Pick<Heard, 'quantities' | 'items' | 'freeUnits' | 'system'> & {
  readonly outline: OutlineHeard | null
  readonly curves: readonly Size[]
  readonly run: WallRunHeard | null
  readonly metric: boolean
  readonly hasRoom: boolean
}

function figuresOf({ plain, reader, marks, has }: Words, context: HearContext): Figures {
  const quantities = joinDashes(quantitiesOf(reader), reader)
  const all = itemsOf(quantities, reader)
  const told = systemMeasured(quantities, all, has('sides-word', 'walls-walk', 'corners-list'))
  // "5 l" of a walk is a wall to the left: litres and days say nothing of how an outline was measured.
  const habit = told === null ? context.metric === true : told === 'metric'
  const outline = readOutline(plain.text, reader, marks, quantities, habit)
  const sized = all.some((item) => item.parts.length > 1)
  const system = told ?? (sized || outline ? null : systemOf(quantities))
  const metric = system === null ? context.metric === true : system === 'metric'
  // Figures of the outline are nothing else.
  const outside = outline ? all.filter((item) => item.last < outline.first || item.first > outline.last) : all
  const hasRoom = outline !== null || context.hasRoom
  const curves = readCurves(outside, reader, marks, hasRoom)
  const run = outline ? null : readWallRun(curves.rest, reader, marks, metric)
  const items = run?.rest ?? curves.rest
  const freeUnits = freeUnitsOf(reader, quantities)
  return { quantities, items, freeUnits, system, outline, curves: curves.sizes, run, metric, hasRoom }
}

function sizesIn({ reader, marks }: Words, figures: Figures, draft: Draft, context: HearContext): Size[] {
  const { items, quantities, freeUnits, outline, curves, run, metric, hasRoom } = figures
  const hints = hintsFor(draft, wantsRoom(reader, marks, quantities, freeUnits), reader, context, metric)
  const drawn = outline !== null || run !== null || curves.some((s) => s.role === 'room')
  const read = withNicheTile(sizesOf(items, reader, marks, hintsWith(hints, drawn, curves)), marks)
  const parts = [...withBumps(read, reader, marks, hasRoom), ...curves].toSorted((a, b) => a.item.first - b.item.first)
  // The corners or walls are the room; the sizes beside them are of the tile, or of what is left out.
  return outline || run ? parts.filter((s) => s.role !== 'room') : parts
}

/** All but the rooms, into the draft. */
function readFacts(
  words: Words,
  figures: Figures,
  sizes: readonly Size[],
  loose: readonly Loose[],
  draft: Draft,
): void {
  const { reader, marks, tokens, lexicon } = words
  const { quantities, items, outline, metric } = figures
  draft.trowel = readTrowel(sizes, marks, metric) ?? draft.trowel
  if (draft.trowel === undefined) delete draft.trowel
  readFlags(reader, marks, draft)
  // The diagonal of a room is no pattern.
  if (outline?.room.outline?.told === 'four-sides' && draft.pattern?.name === 'diagonal') delete draft.pattern
  readWishes(reader, marks, quantities, metric, draft)
  readAngle(reader, marks, quantities, draft)
  const goods = readGoods({ sizes, loose, marks, reader, metric }, draft)
  if (goods) draft.goods = goods
  const singles = items.flatMap((item) => (isSize(item) ? [] : item.parts))
  const prices = readPrices(singles, reader, marks)
  if (prices.length > 0) draft.prices = prices
  fillFrom(factsOfOwnWords(lexicon, tokens), draft)
  dropEmptyTile(draft)
}

/** The rooms told in sizes, an outline or a run of walls, as they are meant beside all else. */
function roomsIn(
  words: Words,
  figures: Figures,
  sizes: readonly Size[],
  loose: readonly Loose[],
  told: readonly Room[],
  draft: Draft,
): Room[] {
  const { typed, plain, reader, marks, has } = words
  const { outline, run, metric } = figures
  // "area" names no room.
  const named = marks.some(
    (m) => m.concept === 'house-part' || (m.concept === 'room' && !reader.is(m.first, 'area-word')),
  )
  const shower = has('shower', 'pan', 'mud-word', 'drain') && !named
  const floors = shower && !metric ? panInInches(told, sizes) : told
  const rooms = run?.rooms ?? lessFromArea(outline ? [withPieces(outline.room, told)] : wallsOf(floors, draft), draft)
  const faces = draft.tile ? showerWalls(rooms, marks, sizes, loose, reader) : rooms
  return faces.map((room) => asNamed(room, typed, plain))
}

export function hear(text: string, lexicon: Lexicon, context: HearContext = NOTHING_KNOWN): Heard {
  const words = wordsOf(text, lexicon)
  const { plain, reader, tokens, marks, has } = words
  const figures = figuresOf(words, context)
  const { quantities, items, outline, metric, system, freeUnits } = figures
  const draft: Draft = {}
  const { loose, durationsH, percents } = readSingles(items, reader, marks, draft, metric)
  const sizes = sizesIn(words, figures, draft, context)
  const found = roomsOf(sizes, reader, marks, metric, context.decimals)
  const notes: HeardNote[] = [...found.notes]
  readTwoSizes(sizes, marks, metric, draft)
  readTile(sizes, metric, has('mosaic'), draft, notes)
  readFacts(words, figures, sizes, loose, draft)
  const rooms = roomsIn(words, figures, sizes, loose, found.rooms, draft)
  if (rooms.length > 0) draft.rooms = rooms
  const oneTile = outline !== null || draft.pattern?.name === 'two-size'
  const byRoom = oneTile ? [] : heardByRoom(words, sizes, draft, context)
  if (byRoom.length === 0) noteGuesses(sizes, plain, reader, notes)
  return {
    typed: text,
    plain,
    reader,
    tokens,
    marks,
    quantities,
    items,
    sizes,
    // "3.6,0" is no number, but may be a corner.
    unreadable: outline ? words.unreadable.filter((one) => !isWithin(one, outline, tokens)) : words.unreadable,
    notes,
    system,
    has,
    loose,
    durationsH,
    percents,
    freeUnits,
    facts: draft,
    byRoom,
    problem: found.problem,
    rules: readerOf(lexicon.locale.rules)(plain.text),
    commands: readCommands(plain.text, lexicon.locale.commands),
    rulesOf: (other) => readerOf(lexicon.locale.rules)(plainText(other).text),
    at: (span) => originSpan(plain, span),
  }
}

/** Each stretch of a message with a tile for each room heard by itself. The draft gets the rooms, all but the last stretch's with
 *  their tiling, and the last stretch's tile. */
function heardByRoom(words: Words, sizes: readonly Size[], draft: Draft, context: HearContext): Stretched[] {
  const { typed, plain, lexicon, reader, marks } = words
  const stretches = stretchesByTile(sizes, reader, marks)
  if (!stretches) return []
  const toldRooms = sizes.some((size) => size.role === 'room')
  const known = { ...context, hasRoom: !toldRooms, hasTile: false }
  const found = stretches.map(([first, last]): Stretched => {
    const [from, to] = originSpan(plain, [reader.tokens[first].from, reader.tokens[last].to])
    const part = typed.slice(from, to)
    const { facts } = hear(part, lexicon, known)
    return { text: plainText(part).text, rooms: facts.rooms ?? [], tiling: tilingIn(facts) }
  })
  const isSound = ({ rooms, tiling }: Stretched) =>
    (tiling.tile?.lengthMm ?? 0) > 0 && rooms.length > 0 === toldRooms && rooms.every((r) => !r.own)
  if (!found.every(isSound)) return []
  // A joint told once is meant for all.
  const { jointMm } = draft
  const each = found.map((one) => (jointMm === undefined ? one : { ...one, tiling: { jointMm, ...one.tiling } }))
  const last = each[each.length - 1]
  for (const name of TILING) delete draft[name]
  Object.assign(draft, last.tiling)
  if (toldRooms)
    draft.rooms = each.flatMap((one) => (one === last ? one.rooms : one.rooms.map((r) => ({ ...r, own: one.tiling }))))
  return each
}

/** Figures that the crew's own words stand for hold where the message tells none. */
function fillFrom(facts: Facts, draft: Draft): void {
  const { tile } = draft
  Object.assign(draft, { ...facts, ...draft })
  if (tile && facts.tile && tile.lengthMm === 0)
    draft.tile = { ...tile, ...facts.tile, ...(tile.thicknessMm ? { thicknessMm: tile.thicknessMm } : {}) }
}

const isWithin = (one: Unreadable, { first, last, to }: OutlineHeard, tokens: readonly Token[]): boolean =>
  one.from >= tokens[first].from && one.from <= (to ?? tokens[last].to)

const SURE = 1.2

function noteGuesses(sizes: readonly Size[], plain: PlainText, reader: Reader, notes: HeardNote[]): void {
  for (const size of sizes) {
    if (size.noun !== null || size.margin > SURE || (size.role !== 'room' && size.role !== 'tile')) continue
    const said = plain.text.slice(reader.tokens[size.item.first].from, reader.tokens[size.item.last].to)
    notes.push({ key: size.role === 'room' ? 'pair-is-room' : 'pair-is-tile', said })
  }
}
