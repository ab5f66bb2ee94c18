/** What is known of a message before its sizes get their roles. */
import type { UnitName } from '../units/names.ts'
import type { Concept } from './concepts.ts'
import type { Draft } from './figure.ts'
import type { HearContext } from './heard.ts'
import type { Mark } from './lexicon.ts'
import { dimensionOf, type Quantity, type Reader } from './measures.ts'
import type { SizeHints } from './size-misfit.ts'
import type { Size } from './sizes.ts'

/** Area or perimeter alone is asked for: the sizes are rooms. A unit behind a figure asks for nothing. */
export function wantsRoom(
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

export function hintsFor(
  draft: Draft,
  room: boolean,
  reader: Reader,
  context: HearContext,
  metric: boolean,
): SizeHints {
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

/** Where a curve is taken off or put beside, the pair told with it is rather the room than the tile. */
export const hintsWith = (hints: SizeHints, drawn: boolean, curves: readonly Size[]): SizeHints => {
  if (drawn) return { ...hints, hasRoom: true }
  return curves.length > 0 && !hints.hasRoom ? { ...hints, wantsRoom: hints.wantsRoom || hints.hasTile } : hints
}
