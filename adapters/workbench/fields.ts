/** Fields of a line that came from outside: each is there and of its kind, or a problem names it. */
import { fine, type Outcome, refuse } from '../../src/problem.ts'

export type Fields = Readonly<Record<string, unknown>>

export const fieldsOf = (asked: unknown): Outcome<Fields> =>
  asked !== null && typeof asked === 'object' && !Array.isArray(asked)
    ? fine(asked as Fields)
    : refuse('not-understood', { said: JSON.stringify(asked).slice(0, 80) })

const wrong = (field: string, value: unknown) =>
  value === undefined
    ? refuse('missing', { field })
    : refuse('not-a-number', { field, said: (JSON.stringify(value) ?? '').slice(0, 80) })

/** A finite number, or the value it has when left out. */
export function numberIn(fields: Fields, field: string, usual?: number): Outcome<number> {
  const value = fields[field] === undefined ? usual : fields[field]
  return typeof value === 'number' && Number.isFinite(value) ? fine(value) : wrong(field, fields[field])
}

/** Two finite numbers. */
export function pairIn(
  fields: Fields,
  field: string,
  usual?: readonly [number, number],
): Outcome<readonly [number, number]> {
  const value = fields[field] === undefined ? usual : fields[field]
  return isPair(value) ? fine(value) : wrong(field, fields[field])
}

/** Lists of corners; what the numbers are is the floor's own check. */
export function ringsIn(fields: Fields, field: string): Outcome<readonly (readonly (readonly [number, number])[])[]> {
  const value = fields[field]
  const good = Array.isArray(value) && value.every((ring) => Array.isArray(ring) && ring.every(isTwo))
  return good ? fine(value) : wrong(field, value)
}

/** One of some words, or the first when left out. */
export function wordIn<W extends string>(fields: Fields, field: string, words: readonly W[]): Outcome<W> {
  const value = fields[field] === undefined ? words[0]! : fields[field]
  return words.includes(value as W)
    ? fine(value as W)
    : refuse('not-understood', { field, said: (JSON.stringify(value) ?? '').slice(0, 80), choices: words })
}

const isTwo = (value: unknown): boolean => Array.isArray(value) && value.length === 2
const isPair = (value: unknown): value is readonly [number, number] =>
  Array.isArray(value) && value.length === 2 && value.every((n) => typeof n === 'number' && Number.isFinite(n))
