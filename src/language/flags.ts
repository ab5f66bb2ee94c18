/** Facts that are words, not figures: the pattern, the stuff, the place. */
import type { Facts, Pattern, PatternName, TileKind } from '../facts.ts'
import type { Concept } from './concepts.ts'
import type { Draft } from './figure.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity, Reader } from './measures.ts'

function has(marks: readonly Mark[], ...concepts: readonly Concept[]): boolean {
  for (const { concept } of marks) if (concepts.includes(concept)) return true
  return false
}

/** "half offset", "1/3 offset", "offset 33%": the share as two whole numbers. */
function offsetOf(reader: Reader, marks: readonly Mark[]): readonly [number, number] | undefined {
  const mark = marks.find((m) => m.concept === 'offset')
  if (!mark) return undefined
  for (const i of [mark.first - 1, mark.first - 2, mark.first + mark.count, mark.first + mark.count + 1]) {
    const number = reader.number(i)
    if (!number) continue
    const percent = reader.sign(i + 1) === '%' || reader.is(i + 1, 'percent-word')
    const share = percent ? number.value / 100 : number.value
    if (share > 0 && share < 1) return exactShare(share)
  }
  return undefined
}

/** The fraction with a small denominator that is meant: 33 % is a third. */
export function exactShare(share: number): readonly [number, number] {
  for (const under of [2, 3, 4, 5, 6, 8, 10]) {
    const over = Math.round(share * under)
    if (over > 0 && Math.abs(share - over / under) < 0.006) return [over, under]
  }
  return [Math.round(share * 100), 100]
}

/** "on a 45", "at 45 degrees": the tile is turned. */
function isTurned(reader: Reader): boolean {
  return reader.tokens.some(
    (token, i) =>
      token.kind === 'number' &&
      token.value === 45 &&
      reader.is(i - 1, 'the', 'at') &&
      reader.is(i - 2, 'with', 'at', 'tile', 'is') &&
      !reader.unit(i + 1, token)?.unit.match(/^[fc]$/),
  )
}

function patternOf(reader: Reader, marks: readonly Mark[]): Pattern | undefined {
  const offset = offsetOf(reader, marks)
  const named: [Concept, PatternName][] = [
    ['herringbone', has(marks, 'double') ? 'double-herringbone' : 'herringbone'],
    ['basketweave', 'basketweave'],
    ['diagonal', 'diagonal'],
    ['random', 'random'],
    ['stacked', 'stacked'],
  ]
  const found = named.find(([concept]) => has(marks, concept))
  if (
    !found &&
    isTurned(reader) &&
    has(marks, 'tile', 'tile-kind', 'with') &&
    !has(marks, 'set-verb', 'cure-word', 'grout')
  )
    return { name: 'diagonal', angleDeg: 45 }
  const woven = found && found[1] !== 'diagonal' && found[1] !== 'stacked' && has(marks, 'diagonal')
  if (found) return found[1] === 'diagonal' || woven ? { name: found[1], angleDeg: 45 } : { name: found[1] }
  if (!has(marks, 'offset')) return undefined
  return {
    name: 'offset',
    ...(offset ? { offset } : {}),
    ...(has(marks, 'back-and-forth')
      ? { backAndForth: true }
      : has(marks, 'stair-step')
        ? { backAndForth: false }
        : {}),
    ...(has(marks, 'along-width') ? { along: 'width' as const } : {}),
  }
}

/** "at 30 degrees": a turn of the pattern, where one is spoken of, and no temperature. */
export function readAngle(reader: Reader, marks: readonly Mark[], quantities: readonly Quantity[], draft: Draft): void {
  if (!draft.pattern && !has(marks, 'layout-word', 'diagonal', 'start-line', 'picture')) return
  const angle = quantities.find((q) => q.unit === 'degree' && q.n > 0 && q.n < 90 && !reader.is(q.first - 1, 'slab'))
  if (!angle) return
  draft.pattern =
    draft.pattern && draft.pattern.name !== 'stacked'
      ? { ...draft.pattern, angleDeg: angle.n }
      : { name: 'diagonal', angleDeg: angle.n }
  delete draft.temperatures
}

const TILE_KINDS: readonly [Concept, TileKind][] = [
  ['glass', 'glass'],
  ['stone', 'stone'],
  ['porcelain', 'porcelain'],
  ['ceramic', 'ceramic'],
]

/** Writes into the draft what the words say. */
export function readFlags(reader: Reader, marks: readonly Mark[], draft: Draft): void {
  const pattern = patternOf(reader, marks)
  if (pattern && draft.pattern?.name !== 'two-size') draft.pattern = pattern
  if (
    draft.sparePct === undefined &&
    marks.some((m) => m.concept === 'spare' && [1, 2].some((k) => reader.is(m.first - k, 'negation')))
  )
    draft.sparePct = 0
  if (has(marks, 'back-butter')) draft.backButter = !negated(reader, marks, 'back-butter')
  if (draft.trowel)
    draft.trowel = { ...draft.trowel, shape: has(marks, 'v-notch') ? 'v' : has(marks, 'u-notch') ? 'u' : 'square' }
  for (const [concept, kind] of TILE_KINDS)
    if (has(marks, concept) && (draft.tile || has(marks, 'tile', 'grout', 'mortar')))
      draft.tile = { lengthMm: 0, widthMm: 0, ...draft.tile, kind }
  if (has(marks, 'rectified') && draft.tile) draft.tile = { ...draft.tile, rectified: true }
  if (has(marks, 'hexagon') && draft.tile) draft.tile = { ...draft.tile, shape: 'hexagon' }
  else if (has(marks, 'mosaic') && draft.tile) draft.tile = { ...draft.tile, shape: 'mosaic' }
  else if (has(marks, 'plank') && draft.tile) draft.tile = { ...draft.tile, shape: 'plank' }
  if (draft.jointMm === undefined && isJointless(reader, marks)) draft.jointMm = 0
  readStuff(marks, draft)
  readPlace(marks, draft)
}

/** "no joint", "zero joint", "sin junta": the tile is butted. */
const isJointless = (reader: Reader, marks: readonly Mark[]): boolean =>
  marks.some(
    ({ concept, first, count }) =>
      concept === 'joint' &&
      !reader.number(first + count) &&
      (reader.is(first - 1, 'negation') || reader.number(first - 1)?.value === 0),
  )

function readStuff(marks: readonly Mark[], draft: Draft): void {
  if (has(marks, 'rapid')) draft.mortar = 'rapid'
  else if (has(marks, 'mastic')) draft.mortar = 'mastic'
  else if (has(marks, 'unmodified')) draft.mortar = 'unmodified'
  else if (has(marks, 'large-format')) draft.mortar = 'large-format'
  else if (has(marks, 'modified')) draft.mortar = 'modified'
  if (has(marks, 'epoxy')) draft.grout = 'epoxy'
  else if (has(marks, 'premium-grout')) draft.grout = 'high-performance'
  else if (has(marks, 'sanded') && !has(marks, 'unsanded')) draft.grout = 'sanded'
  else if (has(marks, 'unsanded') && !has(marks, 'sanded')) draft.grout = 'unsanded'
  if (has(marks, 'soft-face', 'glass')) draft.softFace = true
}

const COUNTRIES: readonly [Concept, NonNullable<Facts['country']>][] = [
  ['in-britain', 'UK'],
  ['in-australia', 'AU'],
  ['in-north-america', 'US'],
  ['in-another-country', 'other'],
]

function readPlace(marks: readonly Mark[], draft: Draft): void {
  const country = COUNTRIES.find(([concept]) => has(marks, concept))
  if (country) draft.country = country[1]
  if (has(marks, 'wet', 'shower')) draft.wet = 'wet'
  else if (has(marks, 'dry')) draft.wet = 'dry'
  if (has(marks, 'exterior')) draft.exterior = true
  if (has(marks, 'backsplash', 'wall') && !has(marks, 'floor')) draft.surface = 'wall'
  else if (has(marks, 'floor')) draft.surface = 'floor'
  if (has(marks, 'grouted-verb')) draft.done = 'grouted'
  else if (has(marks, 'set-verb')) draft.done = 'set'
  else if (has(marks, 'mixed-verb')) draft.done = 'mixed'
  if (has(marks, 'impervious')) draft.impervious = true
}

function negated(reader: Reader, marks: readonly Mark[], concept: Concept): boolean {
  const mark = marks.find((m) => m.concept === concept)
  return mark !== undefined && [1, 2].some((k) => reader.is(mark.first - k, 'negation'))
}
