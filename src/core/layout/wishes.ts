/** What a crew wants of a layout: the least cut, walls with whole tiles, walls that may hide cuts. */
import type { Range } from '../../problem.ts'
import type { Side } from '../floor/shapes.ts'

export type Wishes = {
  /** No piece narrower than this where the room allows; null: 2 in or a third of the tile's side, the less [mm]. */
  readonly leastCutMm: number | null
  /** Walls that are to get whole tiles, and walls that may hide the cuts: by side, or by number as `wallsOf` lists them. */
  readonly fullAt: readonly (Side | number)[]
  readonly hideAt: readonly (Side | number)[]
  /** Whether the tile may be turned a quarter. */
  readonly mayTurn: boolean
}

export const NO_WISHES: Wishes = { leastCutMm: null, fullAt: [], hideAt: [], mayTurn: false }

/** The usual least cut: 2 in; common practice, no source. [mm] */
export const USUAL_LEAST_MM = 50.8

export const LEAST_CUT: Range = { field: 'least-cut', unit: 'mm', min: 0, max: 1_000 }
