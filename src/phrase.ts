/** What a topic says, before it has words: a key of the catalogue and amounts in SI.
 *  `language/tell` gives it the asker's language and units. */

/** Amounts in SI. `room` lengths print in feet and inches or metres, `small` ones in inches to a sixteenth or mm. */
export type Amount =
  | { readonly is: 'count'; readonly n: number }
  | { readonly is: 'number'; readonly n: number; readonly digits: number }
  | { readonly is: 'room' | 'small' | 'run'; readonly mm: number }
  | { readonly is: 'area'; readonly m2: number }
  | { readonly is: 'volume'; readonly l: number }
  | { readonly is: 'mass'; readonly kg: number }
  | { readonly is: 'temperature'; readonly c: number }
  | { readonly is: 'hours'; readonly h: number }
  | { readonly is: 'minutes'; readonly min: number }
  | { readonly is: 'percent'; readonly pct: number; readonly digits?: number }
  | { readonly is: 'load'; readonly kpa: number }
  | { readonly is: 'slope'; readonly mmPerM: number }
  /** ISO 8601 with offset; told as a clock time, with the day where it is not today. */
  | { readonly is: 'instant'; readonly iso: string }
  /** A key `word.…` of the catalogue. */
  | { readonly is: 'word'; readonly word: string }
  /** The crew's own text: never translated, made inert by each platform. */
  | { readonly is: 'quote'; readonly text: string }
  /** A name from config ("sanded grout", "50 lb bag"): the catalogue's word for it (`name.…`, `pack.…`), else as it stands. */
  | { readonly is: 'named'; readonly text: string }

export type Arg = Amount | Phrase | readonly (Amount | Phrase)[]

export type Phrase = { readonly key: string; readonly args: Readonly<Record<string, Arg>> }

export const say = (key: string, args: Readonly<Record<string, Arg>> = {}): Phrase => ({ key, args })

export const count = (n: number): Amount => ({ is: 'count', n })
export const number = (n: number, digits = 2): Amount => ({ is: 'number', n, digits })
export const room = (mm: number): Amount => ({ is: 'room', mm })
export const small = (mm: number): Amount => ({ is: 'small', mm })
export const run = (mm: number): Amount => ({ is: 'run', mm })
export const area = (m2: number): Amount => ({ is: 'area', m2 })
export const volume = (l: number): Amount => ({ is: 'volume', l })
export const mass = (kg: number): Amount => ({ is: 'mass', kg })
export const temperature = (c: number): Amount => ({ is: 'temperature', c })
export const hours = (h: number): Amount => ({ is: 'hours', h })
export const minutes = (min: number): Amount => ({ is: 'minutes', min })
export const percent = (pct: number, digits = 0): Amount => ({ is: 'percent', pct, digits })
export const load = (kpa: number): Amount => ({ is: 'load', kpa })
export const slope = (mmPerM: number): Amount => ({ is: 'slope', mmPerM })
export const instant = (iso: string): Amount => ({ is: 'instant', iso })
export const word = (key: string): Amount => ({ is: 'word', word: key })
export const quote = (text: string): Amount => ({ is: 'quote', text })
export const named = (text: string): Amount => ({ is: 'named', text })
