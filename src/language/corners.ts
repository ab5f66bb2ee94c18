/** Rooms told otherwise than by two sides: corner by corner, wall by wall, or by four sides and a diagonal. */
import type { Outline, Room, Way } from '../facts.ts'
import type { UnitName } from '../units/names.ts'
import { joinDashes } from './items.ts'
import type { Mark } from './lexicon.ts'
import { unitAt } from './lexicon.ts'
import { dimensionOf, type Quantity, type Reader, toSi } from './measures.ts'
import { NOUNS } from './nouns.ts'

export type OutlineHeard = {
  readonly room: Room
  /** Tokens the outline takes, both ends in: no figure in between is of anything else. */
  readonly first: number
  readonly last: number
  /** Where its text ends: corners such as "3.6,2.4" are no tokens. */
  readonly to?: number
}

const LEAST_CORNERS = 3
const LEAST_WALLS = 4

/** The unit of bare figures: the one that is written, else by the largest figure and the crew's habit. */
function unitOfBare(written: UnitName | null, largest: number, metric: boolean): UnitName {
  if (written) return written
  if (largest >= 1000) return 'mm'
  if (largest >= 100) return metric || largest >= 250 ? 'cm' : 'in'
  return metric ? 'm' : 'ft'
}

/** A coordinate: 12, 12.5, 12', 12'6, 12'6", 144", -3. */
const COORDINATE = String.raw`(-?\d+(?:\.\d+)?)(?:\s?(?:(')(\d+(?:\.\d+)?(?![\d.]*'))?"?|("|ft\b|in\b|mm\b|cm\b|m\b)))?`
const POINT = new RegExp(String.raw`${COORDINATE}\s?,\s?${COORDINATE}(?![\d.'])`, 'g')
const MARK_UNIT: Readonly<Record<string, UnitName>> = {
  '"': 'in',
  ft: 'ft',
  in: 'in',
  mm: 'mm',
  cm: 'cm',
  m: 'm',
}

type Coordinate = { readonly n: number; readonly unit: UnitName | null; readonly inches: number }

const coordinate = ([n, feet, inches, mark]: readonly (string | undefined)[]): Coordinate => ({
  n: Number(n),
  unit: feet ? 'ft' : mark ? MARK_UNIT[mark] : null,
  inches: Number(inches ?? 0),
})

const coordinateMm = ({ n, unit, inches }: Coordinate, bare: UnitName): number =>
  toSi(n, unit ?? bare) + Math.sign(n || 1) * toSi(inches, 'in')

/** "corners 0,0 12,0 12,8 ...": points one after the other with nothing but signs, units and small words between. */
function cornerList(
  text: string,
  reader: Reader,
  marks: readonly Mark[],
  list: Mark,
  metric: boolean,
): OutlineHeard | null {
  const from = reader.tokens[list.first + list.count - 1].to
  const points: { readonly at: readonly [Coordinate, Coordinate]; readonly from: number; readonly to: number }[] = []
  for (const m of text.slice(from).matchAll(POINT)) {
    const start = from + m.index
    const before = points.at(-1)?.to ?? from
    if (!onlySmallWords(reader, marks, before, start)) break
    points.push({ at: [coordinate(m.slice(1, 5)), coordinate(m.slice(5, 9))], from: start, to: start + m[0].length })
  }
  if (points.length < LEAST_CORNERS) return null
  const end = points[points.length - 1].to
  const last = reader.tokens.findLastIndex((t) => t.from < end)
  const largest = Math.max(...points.flatMap(({ at }) => at.map((c) => Math.abs(c.n))))
  const bare = unitOfBare(unitWritten(reader, list.first + list.count, last + 3), largest, metric)
  const cornersMm = points.map(({ at: [x, y] }) => [coordinateMm(x, bare), coordinateMm(y, bare)] as const)
  return { room: { count: 1, pieces: [], cornersMm, outline: { told: 'corners' } }, first: list.first, last, to: end }
}

/** No figure and no noun stands between: "then", "to", "in feet" may. */
function onlySmallWords(reader: Reader, marks: readonly Mark[], from: number, to: number): boolean {
  return reader.tokens.every((token, i) => {
    if (token.from < from || token.from >= to || token.kind === 'sign') return true
    return token.kind === 'word' && !marks.some((m) => m.first === i && NOUNS.has(m.concept))
  })
}

/** A unit of length named by itself between two tokens: "corners in inches", "... 0,14 feet". */
function unitWritten(reader: Reader, from: number, to: number): UnitName | null {
  let found: UnitName | null = null
  for (let i = from; i < Math.min(to, reader.tokens.length); i++) {
    if (i > from && reader.sign(i) === ',' && reader.number(i + 1) === null) break
    const unit = unitAt(reader.lexicon, reader.tokens, i)?.unit
    // "in" beside another unit is the small word.
    if (unit && dimensionOf(unit) === 'length' && (reader.word(i) !== 'in' || found === null)) found = unit
  }
  return found
}

const WAYS: readonly (readonly ['right-side' | 'left-side' | 'top-side' | 'bottom-side', Way])[] = [
  ['right-side', 'right'],
  ['left-side', 'left'],
  ['top-side', 'up'],
  ['bottom-side', 'down'],
]
/** A direction lettered as on a sketch; the letter stands by itself, so "12 a la derecha" is no walk up. */
function letterAt(reader: Reader, i: number): Way | null {
  const way = reader.lexicon.locale.wayLetters[reader.word(i)]
  return way !== undefined && !reader.is(i + 1, 'the', ...WAYS.map(([concept]) => concept)) ? way : null
}

const wayAt = (reader: Reader, i: number): Way | null =>
  letterAt(reader, i) ?? WAYS.find(([concept]) => reader.is(i, concept))?.[1] ?? null

/** The direction within two tokens of a figure, on one side of it, nothing but small words between. */
function wayBeside(reader: Reader, q: Quantity, step: 1 | -1): Way | null {
  const start = step === 1 ? q.last + 1 : q.first - 1
  for (let i = start; i !== start + 3 * step; i += step) {
    const way = wayAt(reader, i)
    if (way) return way
    if (!reader.is(i, 'the', 'to', 'in-a', 'turn-verb', 'for') && !/^[:-]$/.test(reader.sign(i))) return null
  }
  return null
}

/** A length; or one whose lettered direction reads as litres or days: "5 l", "8 d". */
const isWall = (reader: Reader, q: Quantity): boolean =>
  q.dimension === 'length' || q.dimension === 'none' || (q.last > q.first && letterAt(reader, q.last) !== null)

const withoutLetter = (q: Quantity): Quantity =>
  q.dimension === 'length' || q.dimension === 'none'
    ? q
    : { ...q, unit: null, dimension: 'none', si: null, last: q.last - 1 }

type WallSaid = { readonly q: Quantity; readonly way: Way }

/** The lengths of a walk in mm; bare figures take the unit that is written. */
function lengthsMm(walls: readonly Quantity[], metric: boolean, after: UnitName | null = null): number[] {
  const written =
    walls.find((q) => q.unit !== null && !q.compound)?.unit ?? (walls.some((q) => q.compound) ? 'ft' : after)
  const bare = unitOfBare(written, Math.max(...walls.map((q) => q.n)), metric)
  return walls.map((q) => q.si ?? toSi(q.n, bare))
}

/** "walls: 12 right, 8 down, ..." or "right 12, down 8, ..."; without the word from four walls on. */
function wallWalk(
  reader: Reader,
  quantities: readonly Quantity[],
  from: number,
  named: boolean,
  metric: boolean,
): OutlineHeard | null {
  // "r12 d8" and "12r 8d" both have a direction on either side of most figures: the reading with more walls is meant.
  const [walls] = ([1, -1] as const)
    .map((step) => wallsSaid(reader, quantities, from, step))
    .toSorted((p, q) => q.length - p.length)
  if (walls.length < (named ? LEAST_CORNERS : LEAST_WALLS)) return null
  const end = walls[walls.length - 1].q.last
  const lengths = lengthsMm(
    walls.map((w) => w.q),
    metric,
    // "... 4 a, metros": named behind the last wall.
    unitWritten(reader, end + 1, end + 4),
  )
  const steps = walls.map(({ way }, k) => ({ toward: way, lengthMm: lengths[k] }))
  return outlined({ told: 'walk', steps }, Math.min(from, walls[0].q.first), walls[walls.length - 1].q.last)
}

function turnsBetween(reader: Reader, from: number, to: number): boolean {
  for (let i = from + 1; i < to; i++) if (reader.is(i, 'turn-verb', 'from', 'minus')) return true
  return false
}

/** The walls one after the other, the direction of each on one side of its figure. */
function wallsSaid(reader: Reader, quantities: readonly Quantity[], from: number, step: 1 | -1): WallSaid[] {
  const walls: WallSaid[] = []
  for (const said of quantities) {
    if (said.first < from || !isWall(reader, said)) continue
    const q = withoutLetter(said)
    const way = wayBeside(reader, q, step)
    if (way && !turnsBetween(reader, walls.at(-1)?.q.last ?? from, q.first)) walls.push({ q, way })
    else if (walls.length > 0) break
  }
  return walls
}

/** "walls: 12, turn left 8, turn left 5, ...": each wall with the turn taken after it. */
function wallTurns(
  reader: Reader,
  quantities: readonly Quantity[],
  from: number,
  metric: boolean,
): OutlineHeard | null {
  const walls: Quantity[] = []
  const turns: ('left' | 'right')[] = []
  for (const q of quantities) {
    if (q.first < from || (q.dimension !== 'length' && q.dimension !== 'none')) continue
    if (walls.length > 0) {
      const turn = turnBetween(reader, walls[walls.length - 1].last, q.first)
      if (!turn) break
      turns.push(turn)
    }
    walls.push(q)
  }
  if (walls.length < LEAST_WALLS) return null
  const last = walls[walls.length - 1].last
  const lengths = lengthsMm(walls, metric)
  // Back at the start the crew turns once more, the way that closes it; the last turn changes no wall.
  const steps = lengths.map((lengthMm, k) => ({ lengthMm, thenTurn: turns[k] ?? 'left' }))
  return outlined({ told: 'turns', steps }, Math.min(from, walls[0].first), last)
}

function turnBetween(reader: Reader, from: number, to: number): 'left' | 'right' | null {
  let turns = false
  for (let i = from + 1; i < to; i++) {
    turns ||= reader.is(i, 'turn-verb')
    const way = turns ? wayAt(reader, i) : null
    if (way === 'left' || way === 'right') return way
  }
  return null
}

/** "four sides 12, 10, 11'10, 10 diagonal 15-8". */
function fourSides(
  reader: Reader,
  quantities: readonly Quantity[],
  marks: readonly Mark[],
  metric: boolean,
): OutlineHeard | null {
  const sides = marks.find((m) => m.concept === 'sides-word' || m.concept === 'walls-walk')
  const diagonal = marks.find((m) => m.concept === 'one-diagonal' && (!sides || m.first > sides.first))
  if (!sides || !diagonal) return null
  const isLength = (q: Quantity): boolean => q.dimension === 'length' || q.dimension === 'none'
  const after = sides.first + sides.count
  const lengths = joinDashes(quantities, reader, true)
  const four = lengths.filter(
    (q) => q.first >= after && q.first < diagonal.first && isLength(q) && !reader.is(q.first, 'sides-word'),
  )
  const across = lengths.find(
    (q) => q.first >= diagonal.first + diagonal.count && q.first <= diagonal.first + diagonal.count + 2,
  )
  if (four.length !== 4 || !across || !isLength(across)) return null
  const [a, b, c, d, diagonalMm] = lengthsMm([...four, across], metric)
  return outlined({ told: 'four-sides', sidesMm: [a, b, c, d], diagonalMm }, sides.first, across.last)
}

const outlined = (outline: Outline, first: number, last: number): OutlineHeard => ({
  room: { count: 1, pieces: [], outline },
  first,
  last,
})

/** The outline a message tells, or null. Quantities are those of the whole message. */
export function readOutline(
  text: string,
  reader: Reader,
  marks: readonly Mark[],
  quantities: readonly Quantity[],
  metric: boolean,
): OutlineHeard | null {
  const list = marks.find((m) => m.concept === 'corners-list')
  const corners = list ? cornerList(text, reader, marks, list, metric) : null
  if (corners) return corners
  const sided = fourSides(reader, quantities, marks, metric)
  if (sided) return sided
  const walk = marks.find((m) => m.concept === 'walls-walk')
  const from = walk ? walk.first + walk.count : 0
  const turned = marks.some((m) => m.concept === 'turn-verb') ? wallTurns(reader, quantities, from, metric) : null
  return turned ?? wallWalk(reader, quantities, from, walk !== undefined, metric)
}
