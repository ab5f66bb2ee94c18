/** What a crew's bags covered on earlier jobs, by trowel, back-buttering and tile: offered for a job like it. */
import type { Trowel } from '../facts.ts'
import type { Entry } from '../message.ts'
import { understands } from './fold.ts'
import { type UndoBody, type UseBody, useId } from './job.ts'

/** Bags and area of one set-up, all jobs together. */
export type Learned = {
  readonly trowel: Pick<Trowel, 'shape' | 'widthMm' | 'depthMm'>
  readonly backButter: boolean | null
  readonly tileMm: readonly [number, number] | null
  /** How far the floor was out of flat, where it was told. [mm] */
  readonly outOfFlatMm?: number
  readonly bags: number
  readonly m2: number
}

/** The kinds of entries that figures are learned from. */
export const LEARNED_KINDS: readonly string[] = ['use', 'undo']

const keyOf = (use: Omit<Learned, 'bags' | 'm2'>): string =>
  JSON.stringify([
    use.trowel.shape,
    use.trowel.widthMm.toFixed(1),
    use.trowel.depthMm.toFixed(1),
    use.backButter,
    use.tileMm?.map((mm) => Math.round(mm)) ?? null,
    use.outOfFlatMm === undefined ? null : Math.round(use.outOfFlatMm),
  ])

/** Sums the log entries of a workspace by what they were done with. Entries of other kinds are passed over, and so are
 *  those without a trowel, bags and area, those that an undo took back, and counts of a whole.
 *  @param entries of LEARNED_KINDS, in any order */
export function learnedFrom(
  entries: readonly Pick<Entry, 'kind' | 'version' | 'body' | 'messageId' | 'part'>[],
): Learned[] {
  const sums = new Map<string, Learned>()
  const gone = new Set(
    entries.flatMap(({ kind, body }) => (kind === 'undo' ? ((body as UndoBody | null)?.uses ?? []) : [])),
  )
  for (const entry of entries) {
    const { kind, body } = entry
    if (gone.has(useId(entry))) continue
    const use = body as Partial<UseBody> | null
    if (!understands(entry) || kind !== 'use' || !use || use.stuff !== 'mortar' || use.total || !use.trowel) continue
    if (!(typeof use.bags === 'number' && use.bags > 0 && typeof use.m2 === 'number' && use.m2 > 0)) continue
    const one: Learned = {
      trowel: use.trowel,
      backButter: use.backButter ?? null,
      tileMm: use.tileMm ?? null,
      ...(use.outOfFlatMm === undefined ? {} : { outOfFlatMm: use.outOfFlatMm }),
      bags: use.bags,
      m2: use.m2,
    }
    const key = keyOf(one)
    const sum = sums.get(key)
    sums.set(key, sum ? { ...sum, bags: sum.bags + one.bags, m2: sum.m2 + one.m2 } : one)
  }
  return [...sums.values()]
}

/** Floors out of flat by as much as this more or less take the same mortar, as near as a crew can tell. */
const SAME_FLATNESS_MM = 2

/** The figures nearest to a set-up: the same trowel, and of those the same back-buttering, tile and flatness of floor
 *  where there are any.
 *  Null where fewer than `leastBags` were logged. */
export function learnedFor(
  all: readonly Learned[],
  setup: {
    readonly trowel: Trowel
    readonly backButter: boolean | null
    readonly tileMm: readonly [number, number] | null
    readonly outOfFlatMm?: number
  },
  leastBags: number,
): { readonly m2PerBag: number; readonly bags: number } | null {
  const near = (a: number, b: number): boolean => Math.abs(a - b) < 0.5
  const trowels = all.filter(
    ({ trowel }) =>
      trowel.shape === setup.trowel.shape &&
      near(trowel.widthMm, setup.trowel.widthMm) &&
      near(trowel.depthMm, setup.trowel.depthMm),
  )
  const buttered = trowels.filter(
    (l) => l.backButter === null || setup.backButter === null || l.backButter === setup.backButter,
  )
  const tiles = buttered.filter(
    (l) => l.tileMm && setup.tileMm && l.tileMm.every((mm, i) => near(mm, setup.tileMm?.[i] ?? 0)),
  )
  const alike = tiles.length > 0 ? tiles : buttered
  const floors = alike.filter(
    (l) =>
      l.outOfFlatMm !== undefined &&
      setup.outOfFlatMm !== undefined &&
      Math.abs(l.outOfFlatMm - setup.outOfFlatMm) <= SAME_FLATNESS_MM,
  )
  const used = floors.length > 0 ? floors : alike
  const bags = used.reduce((sum, l) => sum + l.bags, 0)
  return bags >= leastBags ? { m2PerBag: used.reduce((sum, l) => sum + l.m2, 0) / bags, bags } : null
}
