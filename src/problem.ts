/** What a crew can get wrong is a value: a code and named facts, no sentence. Only a bug throws. */

/** From and to (exclusive) in the message as it was typed, in UTF-16 units. */
export type Span = readonly [from: number, to: number]

/** Each code with the facts its sentence needs. Every locale has a phrase `problem.CODE` with just these placeholders. */
export const PROBLEMS = {
  question: ['question'],
  empty: [],
  'too-long': ['length', 'limit'],
  'not-understood': ['said'],
  'not-a-number': ['said'],
  'unit-unclear': ['said'],
  missing: ['field'],
  'out-of-range': ['field', 'value', 'min', 'max'],
  'nothing-left': ['said'],
  'too-much-work': ['what'],
  'bad-floor': ['why'],
  'below-minimum-temperature': ['value', 'min'],
  'unknown-talk': [],
  'unknown-material': ['said'],
  'not-an-entry': ['why'],
  'not-kept': [],
  'word-taken': ['said'],
  'word-unclear': ['said'],
  'word-unknown': ['said'],
  'word-too-many': ['limit'],
  internal: [],
} as const satisfies Record<string, readonly string[]>

export type ProblemCode = keyof typeof PROBLEMS

/** A fact of a problem: a plain value here; the telling gives it words and units. */
export type ProblemFact = unknown

export type Problem = {
  readonly code: ProblemCode
  readonly facts: Readonly<Record<string, ProblemFact>>
  /** Where in the message, when it is one place. */
  readonly at: Span | null
}

export type Outcome<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem }

export const fine = <T>(value: T): Outcome<T> => ({ ok: true, value })

export const refuse = (
  code: ProblemCode,
  facts: Readonly<Record<string, ProblemFact>> = {},
  at: Span | null = null,
): { readonly ok: false; readonly problem: Problem } => ({ ok: false, problem: { code, facts, at } })

/** Goes on with a good value, passes a problem through. */
export const andThen = <A, B>(outcome: Outcome<A>, next: (value: A) => Outcome<B>): Outcome<B> =>
  outcome.ok ? next(outcome.value) : outcome

/** A valid range is data: the check, the docstring, the message and the edge tests read the same one. */
export type Range = { readonly field: string; readonly unit: string; readonly min: number; readonly max: number }

/** The value if it lies inside, ends included; NaN and infinities lie outside.
 *  @problem out-of-range */
export const within = (range: Range, value: number): Outcome<number> =>
  value >= range.min && value <= range.max
    ? fine(value)
    : refuse('out-of-range', { field: range.field, value, min: range.min, max: range.max, unit: range.unit })
