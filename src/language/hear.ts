/** A crew's message heard: quantities found anywhere in it, each given its role, the words marked. Nothing is answered yet. */
import { type Facts, type Piece, type Room, TILING, type Tiling, tilingIn } from '../facts.ts'
import type { Problem, Span } from '../problem.ts'
import type { UnitName } from '../units/names.ts'
import { withBumps } from './bumps.ts'
import { stretchesByTile } from './by-room.ts'
import { type CommandWords, readCommands } from './command-words.ts'
import type { Concept } from './concepts.ts'
import { type OutlineHeard, readOutline } from './corners.ts'
import { readCurves } from './curves.ts'
import type { Draft } from './figure.ts'
import { readAngle, readFlags } from './flags.ts'
import { readGoods } from './goods.ts'
import { type Item, isSize, itemsOf, joinDashes, splitMixed } from './items.ts'
import { type Lexicon, type Mark, marksOf, unitAt } from './lexicon.ts'
import { dimensionOf, IMPERIAL, METRIC, type Quantity, quantitiesOf, Reader } from './measures.ts'
import { factsOfOwnWords } from './own-words.ts'
import { readPrices } from './prices.ts'
import type { DecimalHabit, RoomNote } from './room-sides.ts'
import { roomsOf } from './rooms.ts'
import { type RuleWords, readerOf } from './rule-words.ts'
import { showerWalls } from './shower-walls.ts'
import { type Loose, readSingles } from './singles.ts'
import { isCentimetreTile, isTypicalTile, type Size, type SizeHints, sizesOf, tileMm } from './sizes.ts'
import { originSpan, type PlainText, plainText } from './text.ts'
import { type Token, tokenize, type Unreadable } from './tokens.ts'
import { readTrowel } from './trowels.ts'
import { readWallRun } from './wall-run.ts'
import { readWishes } from './wishes.ts'

export const MOST_CHARACTERS = 6000

export type Heard = {
  /** As it was typed. */
  readonly typed: string
  readonly plain: PlainText
  readonly reader: Reader
  readonly tokens: readonly Token[]
  readonly marks: readonly Mark[]
  readonly quantities: readonly Quantity[]
  readonly items: readonly Item[]
  readonly sizes: readonly Size[]
  readonly loose: readonly Loose[]
  readonly durationsH: readonly number[]
  readonly percents: readonly number[]
  readonly unreadable: readonly Unreadable[]
  readonly facts: Facts
  /** Where tiles were told for several rooms: each stretch's text, rooms and tiling. The facts hold the last one's. */
  readonly byRoom: readonly Stretched[]
  readonly notes: readonly HeardNote[]
  /** Metric or imperial by the units written; null where none were. */
  readonly system: 'metric' | 'imperial' | null
  /** Units named without a figure: "how many quarts". */
  readonly freeUnits: readonly UnitName[]
  readonly problem: Problem | null
  /** The message read as a question for the rule book; worked out when it is first looked at. */
  readonly rules: RuleWords
  /** What steers the job, and what was done. */
  readonly commands: CommandWords
  /** The same of another text, such as the message before. */
  rulesOf(text: string): RuleWords
  has(...concepts: readonly Concept[]): boolean
  /** Where a span of the plain text stands in the message as typed. */
  at(span: Span): Span
}

export type Stretched = { readonly text: string; readonly rooms: readonly Room[]; readonly tiling: Tiling }

export type HeardNote =
  | RoomNote
  | { readonly key: 'pair-is-room' | 'pair-is-tile' | 'tile-unit'; readonly said: string; readonly unit?: string }

/** What the channel knows already, as far as it helps to read a bare pair. */
export type HearContext = {
  readonly hasRoom: boolean
  readonly hasTile: boolean
  /** The talk is of something laid without tile: a bare pair is the floor. */
  readonly roomRather?: boolean
  readonly metric: boolean | null
  readonly decimals: DecimalHabit
}

export const NOTHING_KNOWN: HearContext = { hasRoom: false, hasTile: false, metric: null, decimals: null }

function systemOf(quantities: readonly Quantity[]): 'metric' | 'imperial' | null {
  let metric = 0
  let imperial = 0
  for (const q of quantities) {
    if (q.unit === null || q.dimension === 'temperature') continue
    // How the floor was measured tells more than a notch or a joint.
    const thin = q.dimension === 'length' && (q.si as number) < 30
    const weight = q.dimension === 'area' ? 2 : thin && METRIC.has(q.unit) ? 0.5 : 1
    if (METRIC.has(q.unit)) metric += weight
    else if (IMPERIAL.has(q.unit)) imperial += weight
  }
  return metric === 0 && imperial === 0 ? null : metric > imperial ? 'metric' : 'imperial'
}

/** "5,20 x 3,80": who writes a decimal comma measures in metres. */
const hasDecimalComma = (q: Quantity): boolean => q.unit === null && q.token.decimals > 0 && q.token.text.includes(',')

const LEAST_WHOLE_FEET = 8

/** "cork 6mm, 10x13": a thickness in mm beside a room of whole feet says nothing of the room. */
function onlyThin(items: readonly Item[]): boolean {
  const pairs = items.filter(isSize)
  const singles = items.filter((item) => !isSize(item)).map((item) => item.parts[0])
  const units = singles.filter((q) => q.unit !== null && ['length', 'area'].includes(q.dimension))
  const thin = units.length > 0 && units.every((q) => q.unit === 'mm' && q.n < 30)
  const isBare = ({ parts: [a, b] }: Item): boolean =>
    [a, b].every((q) => q.unit === null && Number.isInteger(q.n) && q.n < 60) && !isCentimetreTile(a.n, b.n)
  const isFeet = ({ parts: [a, b] }: Item): boolean => Math.min(a.n, b.n) >= LEAST_WHOLE_FEET
  return thin && pairs.some(isFeet) && pairs.every(isBare)
}

const isDecimalPair = ({ parts: [a, b] }: Item): boolean =>
  b !== undefined && [a, b].every((q) => q.unit === null) && a.token.decimals + b.token.decimals > 0

/** "60x60" is sold in centimetres alone; beside "3.6 x 4.2" it says that the crew is metric. */
const isInCentimetres = ({ parts: [a, b] }: Item): boolean =>
  b !== undefined && [a, b].every((q) => q.unit === null) && isCentimetreTile(a.n, b.n)

/** A room's side of two decimals is in metres where in feet there would be no room: "2.74 x 1.75". */
const MOST_METRES = 6.1

const isInMetres = ({ parts: [a, b] }: Item): boolean =>
  b !== undefined &&
  [a, b].every((q) => q.unit === null && q.token.decimals === 2 && q.n > 1) &&
  Math.max(a.n, b.n) < MOST_METRES

function readerOfTokens(lexicon: Lexicon, tokens: readonly Token[]): { reader: Reader; marks: readonly Mark[] } {
  const marks = marksOf(lexicon, tokens)
  return { reader: new Reader(lexicon, tokens, marks), marks }
}

export function hear(text: string, lexicon: Lexicon, context: HearContext = NOTHING_KNOWN): Heard {
  const plain = plainText(text)
  const { tokens: raw, unreadable } = tokenize(plain.text, lexicon.locale.numbers)
  const asWritten = readerOfTokens(lexicon, raw)
  const tokens = splitMixed(raw, asWritten.reader)
  const { reader, marks } = tokens === raw ? asWritten : readerOfTokens(lexicon, tokens)
  const meant = new Set(marks.map((m) => m.concept))
  const has = (...concepts: readonly Concept[]): boolean => {
    for (const concept of concepts) if (meant.has(concept)) return true
    return false
  }
  const quantities = joinDashes(quantitiesOf(reader), reader)
  const all = itemsOf(quantities, reader)
  const comma = all.some((item) => item.parts.length > 1 && item.parts.some(hasDecimalComma))
  const metres = all.some(isInMetres)
  // A 25 kg bag says nothing of how the floor was measured.
  const measured = systemOf(quantities.filter((q) => q.dimension === 'length' || q.dimension === 'area'))
  const sized = all.some((item) => item.parts.length > 1)
  const told =
    (onlyThin(all) ? null : measured) ??
    (comma || metres || (all.some(isDecimalPair) && all.some(isInCentimetres)) ? 'metric' : null)
  // "5 l" of a walk is a wall to the left: litres and days say nothing of how an outline was measured.
  const habit = told === null ? context.metric === true : told === 'metric'
  const outline = readOutline(plain.text, reader, marks, quantities, habit)
  const system = told ?? (sized || outline ? null : systemOf(quantities))
  const metric = system === null ? context.metric === true : system === 'metric'
  // Figures of the outline are nothing else.
  const outside = outline ? all.filter((item) => item.last < outline.first || item.first > outline.last) : all
  const hasRoom = outline !== null || context.hasRoom
  const curves = readCurves(outside, reader, marks, hasRoom)
  const run = outline ? null : readWallRun(curves.rest, reader, marks, metric)
  const items = run?.rest ?? curves.rest
  const freeUnits = freeUnitsOf(reader, quantities)
  const draft: Draft = {}
  const notes: HeardNote[] = []
  const singles = readSingles(items, reader, marks, draft, metric)
  const hints = hintsFor(draft, wantsRoom(reader, marks, quantities, freeUnits), reader, context, metric)
  const drawn = outline !== null || run !== null || curves.sizes.some((s) => s.role === 'room')
  const read = withNicheTile(sizesOf(items, reader, marks, hintsWith(hints, drawn, curves.sizes)), marks)
  const parts = [...withBumps(read, reader, marks, hasRoom), ...curves.sizes].toSorted(
    (a, b) => a.item.first - b.item.first,
  )
  // The corners or walls are the room; the sizes beside them are of the tile, or of what is left out.
  const sizes = outline || run ? parts.filter((s) => s.role !== 'room') : parts
  const found = roomsOf(sizes, reader, marks, metric, context.decimals)
  notes.push(...found.notes)
  readTwoSizes(sizes, marks, metric, draft)
  readTile(sizes, metric, has('mosaic'), draft, notes)
  draft.trowel = readTrowel(sizes, marks, metric) ?? draft.trowel
  if (draft.trowel === undefined) delete draft.trowel
  readFlags(reader, marks, draft)
  // The diagonal of a room is no pattern.
  if (outline?.room.outline?.told === 'four-sides' && draft.pattern?.name === 'diagonal') delete draft.pattern
  readWishes(reader, marks, quantities, metric, draft)
  readAngle(reader, marks, quantities, draft)
  const goods = readGoods({ sizes, loose: singles.loose, marks, reader, metric }, draft)
  if (goods) draft.goods = goods
  const prices = readPrices(
    items.flatMap((item) => (isSize(item) ? [] : item.parts)),
    reader,
    marks,
  )
  if (prices.length > 0) draft.prices = prices
  fillFrom(factsOfOwnWords(lexicon, tokens), draft)
  dropEmptyTile(draft)
  // "area" names no room.
  const named = marks.some(
    (m) => m.concept === 'house-part' || (m.concept === 'room' && !reader.is(m.first, 'area-word')),
  )
  const shower = has('shower', 'pan', 'mud-word', 'drain') && !named
  const floors = shower && !metric ? panInInches(found.rooms, sizes) : found.rooms
  const rooms =
    run?.rooms ?? lessFromArea(outline ? [withPieces(outline.room, found.rooms)] : wallsOf(floors, draft), draft)
  const faces = draft.tile ? showerWalls(rooms, marks, sizes, singles.loose, reader) : rooms
  if (faces.length > 0) draft.rooms = faces.map((room) => asNamed(room, text, plain))
  const byRoom =
    outline || draft.pattern?.name === 'two-size'
      ? []
      : heardByRoom(text, plain, lexicon, context, sizes, reader, marks, draft)
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
    unreadable: outline ? unreadable.filter((one) => !isWithin(one, outline, tokens)) : unreadable,
    notes,
    system,
    has,
    loose: singles.loose,
    durationsH: singles.durationsH,
    percents: singles.percents,
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
function heardByRoom(
  text: string,
  plain: PlainText,
  lexicon: Lexicon,
  context: HearContext,
  sizes: readonly Size[],
  reader: Reader,
  marks: readonly Mark[],
  draft: Draft,
): Stretched[] {
  const stretches = stretchesByTile(sizes, reader, marks)
  if (!stretches) return []
  const toldRooms = sizes.some((size) => size.role === 'room')
  const known = { ...context, hasRoom: !toldRooms, hasTile: false }
  const found = stretches.map(([first, last]): Stretched => {
    const [from, to] = originSpan(plain, [reader.tokens[first].from, reader.tokens[last].to])
    const part = text.slice(from, to)
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

function freeUnitsOf(reader: Reader, quantities: readonly Quantity[]): UnitName[] {
  const found: UnitName[] = []
  reader.tokens.forEach((token, i) => {
    if (token.kind !== 'word' || token.text === 'in' || quantities.some((q) => q.first <= i && i <= q.last)) return
    const named = unitAt(reader.lexicon, reader.tokens, i)
    if (named) found.push(named.unit)
  })
  return found
}

/** Area or perimeter alone is asked for: the sizes are rooms. A unit behind a figure asks for nothing. */
function wantsRoom(
  reader: Reader,
  marks: readonly Mark[],
  quantities: readonly Quantity[],
  freeUnits: readonly UnitName[],
): boolean {
  const inFigure = (i: number): boolean => quantities.some((q) => i > q.first && i <= q.last)
  const total = freeUnits.some((unit) => dimensionOf(unit) === 'area')
  const asked =
    total || marks.some((m) => (m.concept === 'perimeter' || m.concept === 'area-word') && !inFigure(m.first))
  return (
    asked &&
    !marks.some(
      (m) =>
        ['tile', 'tile-kind', 'plank', 'piece', 'box', 'mosaic', 'bag'].includes(m.concept) &&
        !reader.is(m.first, 'area-word'),
    )
  )
}

function hintsFor(draft: Draft, room: boolean, reader: Reader, context: HearContext, metric: boolean): SizeHints {
  const hasArea = draft.areaM2 !== undefined || draft.leftM2 !== undefined
  const sums = reader.tokens.some((_, i) => reader.sign(i) === '+')
  const has = (...concepts: readonly Concept[]) => reader.tokens.some((_, i) => reader.is(i, ...concepts))
  const isUnder =
    has('cork', 'foam', 'cement-board', 'fibre-cement', 'crack-membrane', 'underlayment') ||
    (has('membrane') && has('roll', 'sheet'))
  const goods =
    isUnder &&
    !has('tile', 'plank', 'mosaic', 'porcelain', 'clip', 'flange', 'build-up', 'undercut', 'under-counter', 'step-to')
  const wantsRoom = room || (context.roomRather === true && !has('tile', 'plank', 'mosaic', 'clip'))
  const twoSizes = has('two-size-word', 'inset-word')
  const sameTile = has('same-tile')
  return {
    goods,
    twoSizes,
    sameTile,
    hasRoom: context.hasRoom,
    hasTile: context.hasTile,
    hasArea,
    wantsRoom,
    sums,
    metric,
  }
}

function readTile(sizes: readonly Size[], metric: boolean, mosaic: boolean, draft: Draft, notes: HeardNote[]): void {
  const told = sizes.filter((s) => s.role === 'tile')
  const size = draft.pattern?.name === 'two-size' ? largestOf(told) : told[0]
  if (!size) return
  const [a, b, third] = size.item.parts
  const sides = [tileMm(a, size.item.parts, metric, mosaic), tileMm(b, size.item.parts, metric, mosaic)]
  const typical = isTypicalTile(a.n, b.n)
  if (sides[0].as !== 'said' && !(sides[0].as === 'in' && typical) && a.unit === null)
    notes.push({ key: 'tile-unit', said: `${a.token.text}x${b.token.text}`, unit: sides[0].as })
  const thicknessMm = third ? (third.si ?? (third.n <= 2 ? third.n * 25.4 : third.n)) : draft.tile?.thicknessMm
  draft.tile = {
    ...draft.tile,
    lengthMm: Math.max(sides[0].mm, sides[1].mm),
    widthMm: Math.min(sides[0].mm, sides[1].mm),
    ...(thicknessMm ? { thicknessMm } : {}),
  }
}

/** Of the two sizes of a pattern the large one is the tile. */
const largestOf = (told: readonly Size[]): Size | undefined =>
  told.toSorted((p, q) => q.item.parts[0].n * q.item.parts[1].n - p.item.parts[0].n * p.item.parts[1].n)[0]

/** "18x18 with 6x6 pinwheel": the small tile of two. */
function readTwoSizes(sizes: readonly Size[], marks: readonly Mark[], metric: boolean, draft: Draft): void {
  const told = sizes.filter((s) => s.role === 'tile')
  const inset = marks.some((m) => m.concept === 'inset-word') && told.length === 2
  if (!inset && !marks.some((m) => m.concept === 'two-size-word')) return
  const large = largestOf(told)
  const small = told.length === 2 ? told.find((s) => s !== large) : undefined
  const mm = small && Math.min(...small.item.parts.slice(0, 2).map((q) => tileMm(q, small.item.parts, metric).mm))
  draft.pattern = { ...draft.pattern, name: 'two-size', ...(mm ? { smallMm: mm } : {}) }
}

/** Figures that the crew's own words stand for hold where the message tells none. */
function fillFrom(facts: Facts, draft: Draft): void {
  const { tile } = draft
  Object.assign(draft, { ...facts, ...draft })
  if (tile && facts.tile && tile.lengthMm === 0)
    draft.tile = { ...tile, ...facts.tile, ...(tile.thicknessMm ? { thicknessMm: tile.thicknessMm } : {}) }
}

/** A thickness or a kind without a size stays only as such: the size is filled from the talk or the job. */
function dropEmptyTile(draft: Draft): void {
  if (draft.tile && draft.tile.lengthMm === 0 && Object.keys(draft.tile).length === 2) delete draft.tile
}

const isWithin = (one: Unreadable, { first, last, to }: OutlineHeard, tokens: readonly Token[]): boolean =>
  one.from >= tokens[first].from && one.from <= (to ?? tokens[last].to)

/** "niche 2 tiles wide in 3x6 on a wall", "ledger for 4x16": beside these the one bare pair that tile is sold in is the tile. */
function withNicheTile(sizes: readonly Size[], marks: readonly Mark[]): Size[] {
  const rooms = sizes.filter((s) => s.role === 'room')
  const [a, b] = rooms[0]?.item.parts ?? []
  const isTile =
    marks.some((m) => m.concept === 'niche' || m.concept === 'ledger' || m.concept === 'first-course') &&
    !sizes.some((s) => s.role === 'tile') &&
    rooms.length === 1 &&
    a?.unit === null &&
    b?.unit === null &&
    isTypicalTile(a.n, b.n)
  if (isTile) return sizes.map((s) => (s.role === 'room' ? { ...s, role: 'tile' as const } : s))
  return withNicheSize(sizes, rooms, marks)
}

/** "niche in the back wall 60x96, about 16 x 28": of two sizes the smaller is the niche's. */
function withNicheSize(sizes: readonly Size[], rooms: readonly Size[], marks: readonly Mark[]): Size[] {
  const opens = marks.some((m) => m.concept === 'niche') && !sizes.some((s) => s.role === 'opening')
  if (!opens || rooms.length !== 2) return [...sizes]
  const product = ({ item: { parts } }: Size): number => (parts[0].si ?? parts[0].n) * (parts[1].si ?? parts[1].n)
  const [small, large] = rooms.toSorted((p, q) => product(p) - product(q))
  const wall = { ...large, noun: rooms.find((r) => r.noun?.mark.concept === 'wall')?.noun ?? large.noun }
  return sizes.map((s) => (s === small ? { ...s, role: 'opening' as const } : s === large ? wall : s))
}

/** Where a curve is taken off or put beside, the pair told with it is rather the room than the tile. */
const hintsWith = (hints: SizeHints, drawn: boolean, curves: readonly Size[]): SizeHints => {
  if (drawn) return { ...hints, hasRoom: true }
  return curves.length > 0 && !hints.hasRoom ? { ...hints, wantsRoom: hints.wantsRoom || hints.hasTile } : hints
}

/** "3x8, 5x8 and 3x8, carry it round the corners": sizes alike in height are walls. */
function wallsOf(rooms: readonly Room[], draft: Draft): readonly Room[] {
  const highs = rooms.map((room) => (room.pieces.length === 1 ? room.pieces[0].widthMm : Number.NaN))
  const walls = draft.roundCorners && rooms.length > 1 && highs.every((mm) => Math.abs(mm - highs[0]) < 1)
  return walls ? rooms.map((room) => ({ ...room, upright: true as const })) : rooms
}

/** What is told beside an outline comes off it, or stands outside it. */
const withPieces = (room: Room, rooms: readonly Room[]): Room => {
  const pieces = rooms.flatMap((r) => r.pieces.filter((p) => p.sign === -1 || p.outside))
  return pieces.length > 0 ? { ...room, pieces } : room
}

/** No shower is 24 ft wide: a bare pair that large is in inches. */
const LEAST_PAN_INCHES = 24
const MOST_PAN_INCHES = 100

function panInInches(rooms: readonly Room[], sizes: readonly Size[]): readonly Room[] {
  const isBare = (one: Size): boolean => one.item.parts.every((part) => part.unit === null)
  const size = sizes.find((one) => one.role === 'room' && isBare(one))
  const larger = Math.max(...(size?.item.parts.slice(0, 2).map((part) => part.n) ?? [0]))
  const [first] = rooms[0]?.pieces ?? []
  const inFeet = first !== undefined && Math.abs(first.lengthMm - (size?.item.parts[0].n ?? 0) * 304.8) < 1
  if (rooms.length !== 1 || !inFeet || larger < LEAST_PAN_INCHES || larger >= MOST_PAN_INCHES) return rooms
  // What was told with its unit keeps it.
  const written = sizes.filter((one) => !isBare(one)).map(({ item: { parts } }) => parts[0].si)
  const keeps = (p: Piece): boolean => written.some((mm) => mm !== null && Math.abs(mm - p.lengthMm) < 1)
  const pieces = rooms[0].pieces.map((p) =>
    keeps(p) ? p : { ...p, lengthMm: p.lengthMm / 12, widthMm: p.widthMm / 12 },
  )
  return [{ ...rooms[0], pieces }]
}

/** "200 sf less a 3x4 island": what is left out comes off the bare area. */
function lessFromArea(rooms: readonly Room[], draft: Draft): readonly Room[] {
  if (draft.areaM2 === undefined || rooms.length !== 1 || rooms[0].pieces.some((p) => p.sign === 1)) return rooms
  const rest = rooms[0].pieces.reduce((m2, p) => m2 - (p.lengthMm * p.widthMm) / 1e6, draft.areaM2)
  if (rest <= 0) return rooms
  draft.areaM2 = rest
  return []
}

/** A room's name as it was typed, accents and all, in small letters. */
function asNamed<T extends { readonly name?: string }>(named: T, typed: string, plain: PlainText): T {
  if (named.name === undefined) return named
  const at = plain.text.indexOf(named.name)
  if (at < 0) return named
  const [from, to] = originSpan(plain, [at, at + named.name.length])
  return { ...named, name: typed.slice(from, to).toLowerCase() }
}

const SURE = 1.2

function noteGuesses(sizes: readonly Size[], plain: PlainText, reader: Reader, notes: HeardNote[]): void {
  for (const size of sizes) {
    if (size.noun !== null || size.margin > SURE || (size.role !== 'room' && size.role !== 'tile')) continue
    const said = plain.text.slice(reader.tokens[size.item.first].from, reader.tokens[size.item.last].to)
    notes.push({ key: size.role === 'room' ? 'pair-is-room' : 'pair-is-tile', said })
  }
}
