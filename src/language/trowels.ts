/** Notches: "1/2 notch", "1/4 x 3/8 sq notch", "3/4 x 9/16 u", "10 mm notch". US trowels are read width x depth x space. */
import type { Trowel } from '../facts.ts'
import type { Mark } from './lexicon.ts'
import type { Quantity } from './measures.ts'
import type { Size } from './sizes.ts'
import { smallMm } from './small-lengths.ts'

/** The trowel of a message, from a size that is one; a lone "1/2" beside "notch" was taken with the single figures. */
export function readTrowel(sizes: readonly Size[], marks: readonly Mark[], metric: boolean): Trowel | undefined {
  const size = sizes.find((s) => s.role === 'notch')
  if (!size) return undefined
  const [width, depth, space] = size.item.parts.map((q: Quantity) => smallMm(q, metric))
  if (width === null || depth === null || width === undefined || depth === undefined) return undefined
  const shape = marks.some((m) => m.concept === 'u-notch')
    ? 'u'
    : marks.some((m) => m.concept === 'v-notch')
      ? 'v'
      : 'square'
  // Without a third figure the teeth stand as far apart as the notch is wide.
  return { shape, widthMm: width, depthMm: depth, spaceMm: space ?? width }
}
