/** A figure the trade gives as a range: its ends and the value to plan with. `low` <= `usual` <= `high`. */
export type Spread = { readonly low: number; readonly usual: number; readonly high: number }

export const exactly = (value: number): Spread => ({ low: value, usual: value, high: value })

export const times = (spread: Spread, factor: number): Spread => ({
  low: spread.low * factor,
  usual: spread.usual * factor,
  high: spread.high * factor,
})

export const plus = (a: Spread, b: Spread): Spread => ({
  low: a.low + b.low,
  usual: a.usual + b.usual,
  high: a.high + b.high,
})

/** `of` divided by each end: the ends change places. */
export const per = (of: number, spread: Spread): Spread => ({
  low: of / spread.high,
  usual: of / spread.usual,
  high: of / spread.low,
})

/** Whole packs that hold a quantity; sums that are whole but for floating point stay whole. */
export const wholePacks = (packs: number): number => Math.max(0, Math.ceil(packs - 1e-9))
